"""The phrases in Vietnamese; no speaker has read them over."""

from typing import Final

from howto.languages.time_words import MONTHS

_NUMBERS: Final = {"one": "một", "two": "hai", "three": "ba", "four": "bốn", "five": "năm", "six": "sáu"}
_MONTHS: Final = {month: f"tháng {number}" for number, month in enumerate(MONTHS, 1)}
_FULL: Final = {"a quarter": "một phần tư", "half": "một nửa", "three quarters": "ba phần tư"}
_SHAPES: Final = {
    "ball": "hình cầu", "dome": "hình vòm", "cone": "hình nón", "cube": "hình khối", "cylinder": "hình trụ",
}  # fmt: skip
_LINES: Final = {
    "widest ring": "vòng rộng nhất", "line at the foot": "đường ở gốc", "finished line": "đường hoàn thành",
}  # fmt: skip

VIETNAMESE: Final[dict[str, str]] = {
    # trades
    "clipping": "cắt tạo hình", "hedging": "hàng rào cây", "espalier": "cây ép giàn", "mowing": "cắt cỏ",
    "feeding": "bón phân", "watering": "tưới nước", "soil": "đất", "planting": "trồng cây", "safety": "an toàn",
    # the tags of a caption
    "topiary": "tạo dáng cây",
    "fruit": "cây ăn quả",
    "fertiliser": "phân bón",
    "hedge": "hàng rào",
    "lawn": "bãi cỏ",
    "newplants": "cây mới trồng",
    "ppe": "đồ bảo hộ",
    "compost": "phân ủ",
    "mulch": "lớp phủ gốc",
    "gardenwater": "nước tưới vườn",
    # what a client reads
    "clip before it stands": "cắt tỉa trước khi cao tới",
    "next clip due": "lần cắt tỉa tới",
    "look at the ties again": "xem lại dây buộc",
    "years until the frame is full": "số năm đến khi khung đầy",
    "top tier laid level": "tầng trên cùng được uốn ngang",
    "first spring in which blossom stays": "mùa xuân đầu tiên được giữ hoa",
    "summer pruning begins": "bắt đầu tỉa mùa hè",
    "what grows again comes off": "cắt bỏ phần mọc lại",
    "feeding dates": "các ngày bón phân",
    "next feed": "lần bón phân tới",
    "no nitrogen after": "không bón đạm sau ngày",
    "seasons to the finished height": "số mùa đến chiều cao cuối cùng",
    "at its finished height by": "đạt chiều cao cuối cùng vào",
    "seasons to close the gaps": "số mùa để lấp kín chỗ trống",
    "next cut due": "lần cắt tới",
    "mow when it reaches": "cắt cỏ khi cao tới",
    "cuts to come down": "số lần cắt để hạ thấp",
    "days between cuts": "số ngày giữa các lần cắt",
    "set height for now": "chiều cao cắt hiện nay",
    "first cut of new turf": "lần cắt đầu của cỏ mới",
    "stakes off by": "tháo cọc trước ngày",
    "order": "đặt mua",
    "bags": "số bao",
    "each plant, each time": "mỗi cây, mỗi lần",
    "in a week without rain": "trong một tuần không mưa",
    "watering, as it stands": "tưới nước hiện nay",
    "rooted, and left to the weather": "đã bén rễ, không cần tưới nữa",
    "nobody goes in for (united states)": "không ai vào trong (Hoa Kỳ)",
    "entry from": "được vào từ",
    "spread it, before it sinks": "rải dày, trước khi lún",
    "keep clear of every stem": "để cách mỗi thân cây",
    "days between waterings": "số ngày giữa các lần tưới",
    "put on each time": "lượng nước mỗi lần",
    "water a week without rain": "nước cho một tuần không mưa",
    "in watering cans": "tính theo bình tưới",
    "run time each watering": "thời gian mỗi lần tưới",
    "watering in the first year": "tưới nước năm đầu",
    "each plant, each watering": "mỗi cây, mỗi lần tưới",
    "all new plants, each watering": "tất cả cây mới, mỗi lần tưới",
    "rooted, and then watered by weather": "đã bén rễ, rồi tưới theo thời tiết",
    **{f"water a week in {month}": f"lượng nước mỗi tuần trong {told}" for month, told in _MONTHS.items()},
    **{
        f"water a week in {month}, if no rain falls": f"lượng nước mỗi tuần trong {told}, nếu không mưa"
        for month, told in _MONTHS.items()
    },
    "none, as the usual rain is enough": "không: lượng mưa thường lệ là đủ",
    "set the mower to": "chỉnh máy cắt cỏ ở mức",
    "each watering": "mỗi lần tưới",
    "{} deep in a tin set on the ground": "sâu {} trong một lon đặt trên mặt đất",
    # how much and how often
    "yes": "có", "no": "không",
    "{} to {}": "{} đến {}",
    "{} dose": "{} lần bón", "{} doses": "{} lần bón",
    "day": "ngày", "{} day": "{} ngày", "{} days": "{} ngày", "{} to {} days": "{} đến {} ngày",
    "every day": "mỗi ngày", "every {} days": "{} ngày một lần", "every {} to {} days": "{} đến {} ngày một lần",
    "every day now": "hiện nay mỗi ngày", "every {} days now": "hiện nay {} ngày một lần",
    "every {} to {} days now": "hiện nay {} đến {} ngày một lần",
    "once a week": "một lần mỗi tuần", "twice a week": "hai lần mỗi tuần", "{} times a week": "{} lần mỗi tuần",
    "{} the same day": "{} cùng ngày", "{} the next day": "{} ngày hôm sau", "{} {} days later": "{}, {} ngày sau",
    **{f"{full} full": f"đổ {part}" for full, part in _FULL.items()},
    **{f"each {full} full": f"mỗi bình đổ {part}" for full, part in _FULL.items()},
    **{f"{one} full {{}} cans": f"{number} bình {{}} đầy" for one, number in _NUMBERS.items()},
    **{f"{one} {{}} cans": f"{number} bình {{}}" for one, number in _NUMBERS.items()},
    "one full {} can": "một bình {} đầy", "one {} can": "một bình {}",
    # clipping: its measures, and the words they may hold
    "shape": "hình", "finished width": "bề rộng khi xong", "standing width": "bề rộng hiện nay",
    "finished height": "chiều cao khi xong", "standing height": "chiều cao hiện nay", "passes": "số lượt",
    "growth": "mức mọc", "gauge every": "đo cách mỗi", "clipping rate": "năng suất cắt",
    "day temperature": "nhiệt độ trong ngày", "first frost": "sương giá đầu tiên",
    **_SHAPES,
    # clipping: its figures
    "off each side": "cắt bớt mỗi bên", "off the top": "cắt bớt phía trên", "leaf taken off": "phần lá cắt bỏ",
    "light passes, at least": "số lượt cắt nhẹ, ít nhất",
    "gauge rings: width at each height": "các vòng đo: bề rộng ở mỗi độ cao",
    "every {} up the stick": "cách mỗi {} trên gậy",
    "up from the foot": "tính từ gốc", "width": "bề rộng", "out from the stem": "tính từ thân",
    "surface to clip": "diện tích cần cắt", "time for one person": "thời gian cho một người",
    # clipping: its drawings
    "{} off each side": "{} mỗi bên",
    **_LINES,
    **{f"from above: the {line} first": f"Nhìn từ trên: {told} trước" for line, told in _LINES.items()},
    **{
        f"the plant from straight above: the {line}, {{}} across, drawn heavy{rest}":
        f"Cây nhìn thẳng từ trên: {told}, {{}}, vẽ nét đậm{told_rest}"
        for line, told in _LINES.items()
        for rest, told_rest in (
            (" inside an outline {} across that is hatched where it comes off.",
             " bên trong đường viền {}, gạch chéo ở phần cắt bỏ."),
            ("; nothing stands outside it.", "; không có gì nằm ngoài."),
        )
    },
    **{
        f"section: {shape} {{}} wide when done": f"Mặt cắt: {told} rộng {{}} khi xong"
        for shape, told in _SHAPES.items()
    },
    **{
        f"a {shape} in section, {{}} wide and {{}} high when done. it stands {{}} wide; {off}":
        f"{told.capitalize()} nhìn theo mặt cắt, rộng {{}} và cao {{}} khi xong. Hiện nay rộng {{}}; {gone}"
        for shape, told in _SHAPES.items()
        for off, gone in (
            ("the hatched shell, {} a side and {} % of the leaf, comes off.",
             "lớp gạch chéo, mỗi bên {} và {} % lá, được cắt bỏ."),
            ("the hatched shell, {} % of the leaf, comes off.", "lớp gạch chéo, {} % lá, được cắt bỏ."),
            ("nothing comes off.", "không cắt bỏ gì."),
        )
    },
}  # fmt: skip
VIETNAMESE_UNITS: Final[dict[str, str]] = {
    "bulb": "củ", "bulbs": "củ", "bush": "bụi", "bushes": "bụi", "cut": "lần cắt", "cuts": "lần cắt",
    "cutting": "cành giâm", "cuttings": "cành giâm", "day": "ngày", "days": "ngày", "month": "tháng",
    "months": "tháng", "pass": "lượt", "passes": "lượt", "people": "người", "person": "người", "piece": "miếng",
    "pieces": "miếng", "plant": "cây", "plants": "cây", "pot": "chậu", "pots": "chậu", "row": "hàng", "rows": "hàng",
    "seed": "hạt", "seeds": "hạt", "shrub": "bụi", "shrubs": "bụi", "stake": "cọc", "stakes": "cọc",
    "tie": "dây buộc", "ties": "dây buộc", "time": "lần", "times": "lần", "tree": "cây", "trees": "cây",
    "vine": "dây leo", "vines": "dây leo", "week": "tuần", "weeks": "tuần", "year": "năm", "years": "năm",
}  # fmt: skip
