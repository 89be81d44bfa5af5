"""The words a page prints of its own accord: headings, short labels, and the caution at its foot."""

from typing import Final, TypedDict


class Labels(TypedDict):
    """Every label, in one language; braces are filled by the layout."""

    level: str
    minutes: str
    numbers: str
    setting_out: str
    more: str
    spare: str
    tools: str
    materials: str
    needs: str
    plants: str
    season: str
    cautions: str
    steps: str
    step: str
    key_point: str
    reason: str
    check: str
    wear: str
    scale: str
    side: str
    page: str
    tick: str
    opens: str
    all_cards: str
    shelf_title: str
    shelf_find: str
    shelf_one: str
    shelf_many: str
    shelf_empty: str
    finish: str
    aftercare: str
    newest: str
    newest_label: str
    version: str
    done: str
    todo: str
    no_tasks: str
    never: str
    call: str
    call_signs: str
    your_numbers: str
    year: str
    pictures: str
    visit_over: str
    next_visit: str
    by: str
    from_: str
    between: str
    each_days: str
    each_until: str
    at_visit: str
    for_what: str
    count: str
    strip_alt: str
    strip_task: str
    always: str
    footer: str
    leaflet_footer: str


ENGLISH: Final[Labels] = {
    "level": "Level {level}",
    "minutes": "{minutes} minutes",
    "numbers": "Numbers",
    "setting_out": "Setting out",
    "more": "More numbers",
    "spare": "More worked numbers stand on the card's page.",
    "tools": "Tools",
    "materials": "Materials",
    "needs": "Know first",
    "plants": "Plants",
    "season": "When",
    "cautions": "Caution",
    "steps": "Steps",
    "step": "Step",
    "key_point": "Key point",
    "reason": "Reason",
    "check": "Check",
    "wear": "Wear",
    "scale": "Scale {scale} on this sheet",
    "side": "Side {page} of {pages}",
    "page": "Page {page} of {pages}",
    "tick": "Tick off: {what}",
    "opens": "Opens {url}",
    "all_cards": "All cards",
    "shelf_title": "All our cards",
    "shelf_find": "Find a card by task, plant or trade",
    "shelf_one": "1 card",
    "shelf_many": "{count} cards",
    "shelf_empty": "No cards yet.",
    "finish": "Finish standard",
    "aftercare": "Aftercare",
    "newest": "Newest card",
    "newest_label": "The code opens the newest version of this card; where the two differ, use that one.",
    "version": "Version {version}",
    "done": "What we did",
    "todo": "What to do, and by when",
    "no_tasks": "Nothing needs doing before our next visit.",
    "never": "Please do not",
    "call": "When to call us",
    "call_signs": "Call if leaves turn brown or yellow within two weeks, if a plant wilts and does not recover "
    "by morning, or if you are not sure what to do.",
    "your_numbers": "Numbers for your garden",
    "year": "Your dates on a line. The triangle is our visit.",
    "pictures": "Before and after",
    "visit_over": "Care leaflet · our visit of {date}",
    "next_visit": "Our next visit: {date}",
    "by": "by {date}",
    "from_": "from {date}",
    "between": "{start} to {end}",
    "each_days": "every {days} days",
    "each_until": "every {days} days until {date}",
    "at_visit": "at our next visit, {date}",
    "for_what": "for {what}",
    "count": "{count} ×",
    "strip_alt": "A line of twelve months from {date} with each dated task on its day: {tasks}.",
    "strip_task": "{number}, {when}",
    "always": "always",
    "footer": "Follow local codes and the product label. Electrical work, tree climbing, chainsaw work and "
    "chemicals that need a licence are for people who hold one: leave those jobs to them.",
    "leaflet_footer": "Follow local codes and the product label. Leave electrical work, tree climbing, "
    "chainsaws and chemicals that need a licence to people who hold one.",
}

SPANISH: Final[Labels] = {
    "level": "Nivel {level}",
    "minutes": "{minutes} minutos",
    "numbers": "Números",
    "setting_out": "Trazado",
    "more": "Más números",
    "spare": "Hay más cálculos en la página de la ficha.",
    "tools": "Herramientas",
    "materials": "Materiales",
    "needs": "Saber antes",
    "plants": "Plantas",
    "season": "Cuándo",
    "cautions": "Precaución",
    "steps": "Pasos",
    "step": "Paso",
    "key_point": "Punto clave",
    "reason": "Razón",
    "check": "Comprobar",
    "wear": "Llevar",
    "scale": "Escala {scale} en esta hoja",
    "side": "Cara {page} de {pages}",
    "page": "Página {page} de {pages}",
    "tick": "Marcar: {what}",
    "opens": "Abre {url}",
    "all_cards": "Todas las fichas",
    "shelf_title": "Todas nuestras fichas",
    "shelf_find": "Buscar una ficha por tarea, planta u oficio",
    "shelf_one": "1 ficha",
    "shelf_many": "{count} fichas",
    "shelf_empty": "Todavía no hay fichas.",
    "finish": "Acabado",
    "aftercare": "Cuidados posteriores",
    "newest": "Ficha actual",
    "newest_label": "El código abre la versión más reciente de esta ficha; si no coinciden, siga aquella.",
    "version": "Versión {version}",
    "done": "Lo que hicimos",
    "todo": "Qué hacer y para cuándo",
    "no_tasks": "No hay nada que hacer antes de nuestra próxima visita.",
    "never": "Por favor, no",
    "call": "Cuándo llamarnos",
    "call_signs": "Llame si las hojas se ponen marrones o amarillas en las dos primeras semanas, si una planta "
    "se marchita y no se recupera por la mañana, o si tiene dudas.",
    "your_numbers": "Números de su jardín",
    "year": "Sus fechas en una línea. El triángulo es nuestra visita.",
    "pictures": "Antes y después",
    "visit_over": "Hoja de cuidados · nuestra visita del {date}",
    "next_visit": "Nuestra próxima visita: {date}",
    "by": "a más tardar el {date}",
    "from_": "a partir del {date}",
    "between": "de {start} a {end}",
    "each_days": "cada {days} días",
    "each_until": "cada {days} días hasta el {date}",
    "at_visit": "en nuestra próxima visita, el {date}",
    "for_what": "para {what}",
    "count": "{count} ×",
    "strip_alt": "Una línea de doce meses desde el {date} con cada tarea en su día: {tasks}.",
    "strip_task": "{number}, {when}",
    "always": "siempre",
    "footer": "Siga las normas locales y la etiqueta del producto. La electricidad, el trabajo en altura en "
    "árboles, la motosierra y los productos químicos que exigen licencia son para quien la tiene: déjeselos.",
    "leaflet_footer": "Siga las normas locales y la etiqueta del producto. Deje la electricidad, el trabajo en "
    "altura en árboles, la motosierra y los productos químicos que exigen licencia a quien la tiene.",
}

VIETNAMESE: Final[Labels] = {
    "level": "Bậc {level}",
    "minutes": "{minutes} phút",
    "numbers": "Số liệu",
    "setting_out": "Lấy dấu",
    "more": "Số liệu khác",
    "spare": "Trang của thẻ có thêm số liệu đã tính.",
    "tools": "Dụng cụ",
    "materials": "Vật liệu",
    "needs": "Cần biết trước",
    "plants": "Cây",
    "season": "Khi nào",
    "cautions": "Chú ý",
    "steps": "Các bước",
    "step": "Bước",
    "key_point": "Điểm chính",
    "reason": "Lý do",
    "check": "Kiểm tra",
    "wear": "Mang",
    "scale": "Tỷ lệ {scale} trên tờ này",
    "side": "Mặt {page} trên {pages}",
    "page": "Trang {page} trên {pages}",
    "tick": "Đánh dấu: {what}",
    "opens": "Mở {url}",
    "all_cards": "Tất cả thẻ",
    "shelf_title": "Tất cả thẻ của chúng tôi",
    "shelf_find": "Tìm thẻ theo việc, cây hoặc nghề",
    "shelf_one": "1 thẻ",
    "shelf_many": "{count} thẻ",
    "shelf_empty": "Chưa có thẻ nào.",
    "finish": "Tiêu chuẩn hoàn thành",
    "aftercare": "Chăm sóc sau đó",
    "newest": "Thẻ mới nhất",
    "newest_label": "Mã này mở bản mới nhất của thẻ; nếu khác nhau, hãy làm theo bản đó.",
    "version": "Phiên bản {version}",
    "done": "Việc chúng tôi đã làm",
    "todo": "Việc cần làm và thời hạn",
    "no_tasks": "Không có việc gì cần làm trước lần tới của chúng tôi.",
    "never": "Xin đừng",
    "call": "Khi nào gọi cho chúng tôi",
    "call_signs": "Hãy gọi nếu lá chuyển nâu hoặc vàng trong hai tuần đầu, nếu cây héo mà sáng hôm sau không "
    "tươi lại, hoặc nếu bạn không chắc phải làm gì.",
    "your_numbers": "Số liệu cho vườn của bạn",
    "year": "Các ngày của bạn trên một đường. Hình tam giác là ngày chúng tôi đến.",
    "pictures": "Trước và sau",
    "visit_over": "Tờ chăm sóc · lần đến ngày {date}",
    "next_visit": "Lần đến tiếp theo: {date}",
    "by": "chậm nhất {date}",
    "from_": "từ {date}",
    "between": "{start} đến {end}",
    "each_days": "mỗi {days} ngày",
    "each_until": "mỗi {days} ngày đến {date}",
    "at_visit": "khi chúng tôi đến lần sau, {date}",
    "for_what": "cho {what}",
    "count": "{count} ×",
    "strip_alt": "Một đường mười hai tháng từ {date} với mỗi việc vào đúng ngày: {tasks}.",
    "strip_task": "{number}, {when}",
    "always": "luôn luôn",
    "footer": "Hãy theo quy định địa phương và nhãn sản phẩm. Việc về điện, leo cây, cưa máy và hóa chất cần "
    "giấy phép là của người có giấy phép: hãy để họ làm.",
    "leaflet_footer": "Hãy theo quy định địa phương và nhãn sản phẩm. Việc về điện, leo cây, cưa máy và hóa chất "
    "cần giấy phép, hãy để người có giấy phép làm.",
}

LANGUAGES: Final[dict[str, Labels]] = {"en": ENGLISH, "es": SPANISH, "vi": VIETNAMESE}


def labels(language: str) -> Labels:
    """Return the labels of a language tag such as `en-NZ`; English where we have none of its own."""
    return LANGUAGES.get(language.partition("-")[0].casefold(), ENGLISH)
