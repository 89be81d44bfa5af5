"""The words a carousel and its caption print of their own accord, beside those it shares with the pages."""

from typing import Final, TypedDict

from howto.languages.tags import base


class FrameWords(TypedDict):
    """Every word, in one language; braces are filled by the layout. `places` are the ninths of a picture."""

    tools_and_numbers: str
    take_care: str
    finish: str
    done_when: str
    afterwards: str
    frame_of: str
    step_of: str
    mark: str
    places: tuple[tuple[str, str, str], ...]
    cover: str
    photograph: str
    wear: str
    local_codes: str
    caution: str
    warning_sign: str


ENGLISH: Final[FrameWords] = {
    "tools_and_numbers": "Tools and numbers",
    "take_care": "Take care",
    "finish": "Finish",
    "done_when": "It is done when",
    "afterwards": "Afterwards",
    "frame_of": "{number} of {count}",
    "step_of": "Step {number} of {count}",
    "mark": "Mark {number}, {place}: {text}",
    "places": (
        ("top left", "top centre", "top right"),
        ("middle left", "centre", "middle right"),
        ("bottom left", "bottom centre", "bottom right"),
    ),
    "cover": "{title}",
    "photograph": "Photograph: {credit}",
    "wear": "Wear {things}",
    "local_codes": "Follow local codes and the product label. Leave electrical work, tree climbing, chainsaws and "
    "chemicals that need a licence to people who hold one.",
    "caution": "Take care: {cautions}",
    "warning_sign": "Yellow and black warning panel",
}

SPANISH: Final[FrameWords] = {
    "tools_and_numbers": "Herramientas y números",
    "take_care": "Con cuidado",
    "finish": "Acabado",
    "done_when": "Está terminado cuando",
    "afterwards": "Después",
    "frame_of": "{number} de {count}",
    "step_of": "Paso {number} de {count}",
    "mark": "Marca {number}, {place}: {text}",
    "places": (
        ("arriba a la izquierda", "arriba en el centro", "arriba a la derecha"),
        ("a la izquierda", "en el centro", "a la derecha"),
        ("abajo a la izquierda", "abajo en el centro", "abajo a la derecha"),
    ),
    "cover": "{title}",
    "photograph": "Fotografía: {credit}",
    "wear": "Llevar {things}",
    "local_codes": "Siga las normas locales y la etiqueta del producto. Deje la electricidad, el trabajo en altura en "
    "árboles, la motosierra y los productos químicos que exigen licencia a quien la tiene.",
    "caution": "Cuidado: {cautions}",
    "warning_sign": "Panel de advertencia amarillo y negro",
}

VIETNAMESE: Final[FrameWords] = {
    "tools_and_numbers": "Dụng cụ và số liệu",
    "take_care": "Cẩn thận",
    "finish": "Hoàn thành",
    "done_when": "Đã xong khi",
    "afterwards": "Sau đó",
    "frame_of": "{number} trên {count}",
    "step_of": "Bước {number} trên {count}",
    "mark": "Dấu {number}, {place}: {text}",
    "places": (
        ("trên bên trái", "trên ở giữa", "trên bên phải"),
        ("bên trái", "chính giữa", "bên phải"),
        ("dưới bên trái", "dưới ở giữa", "dưới bên phải"),
    ),
    "cover": "{title}",
    "photograph": "Ảnh: {credit}",
    "wear": "Mang {things}",
    "local_codes": "Hãy theo quy định địa phương và nhãn sản phẩm. Việc về điện, leo cây, cưa máy và hóa chất cần giấy "
    "phép, hãy để người có giấy phép làm.",
    "caution": "Cẩn thận: {cautions}",
    "warning_sign": "Bảng cảnh báo vàng đen",
}

MAORI: Final[FrameWords] = {
    "tools_and_numbers": "Ngā taputapu me ngā nama",
    "take_care": "Kia tūpato",
    "finish": "Te whakaoti",
    "done_when": "Kua oti ina",
    "afterwards": "I muri mai",
    "frame_of": "{number} o {count}",
    "step_of": "Hipanga {number} o {count}",
    "mark": "Tohu {number}, {place}: {text}",
    "places": (
        ("runga mauī", "runga waenganui", "runga matau"),
        ("te taha mauī", "te pūwaenga", "te taha matau"),
        ("raro mauī", "raro waenganui", "raro matau"),
    ),
    "cover": "{title}",
    "photograph": "Whakaahua: {credit}",
    "wear": "Kākahuria: {things}",
    "local_codes": "Whāia ngā ture ā-rohe me te tapanga o te hua. Waiho ngā mahi hiko, te piki rākau, te kani "
    "mekameka me ngā matū e hiahiatia ana he raihana ki te hunga whai raihana.",
    "caution": "Kia tūpato: {cautions}",
    "warning_sign": "Papa whakatūpato kōwhai, pango hoki",
}

LANGUAGES: Final[dict[str, FrameWords]] = {"en": ENGLISH, "es": SPANISH, "vi": VIETNAMESE, "mi": MAORI}


def frame_words(language: str) -> FrameWords:
    """Return the words of a language tag such as `en-NZ`; English where we have none of its own."""
    return LANGUAGES.get(base(language), ENGLISH)
