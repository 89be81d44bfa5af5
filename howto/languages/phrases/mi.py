"""The phrases in te reo Māori; the words are those of public dictionaries, and no speaker has read them over."""

from typing import Final

from howto.languages.time_words import MONTHS

_NUMBERS: Final = {"one": "tahi", "two": "rua", "three": "toru", "four": "whā", "five": "rima", "six": "ono"}
_NAMES: Final = (
    "Hānuere", "Pēpuere", "Māehe", "Āperira", "Mei", "Hune",
    "Hūrae", "Ākuhata", "Hepetema", "Oketopa", "Noema", "Tīhema",
)  # fmt: skip
_MONTHS: Final = dict(zip(MONTHS, _NAMES, strict=True))
_FULL: Final = {"a quarter": "te hauwhā", "half": "te haurua", "three quarters": "te toru hauwhā"}
_SHAPES: Final = {"ball": "poi", "dome": "poi haurua", "cone": "koeko", "cube": "mataono rite", "cylinder": "rango"}
_LINES: Final = {
    "widest ring": "te mowhiti whānui rawa", "line at the foot": "te rārangi i te pūtake",
    "finished line": "te rārangi whakaoti",
}  # fmt: skip

MAORI: Final[dict[str, str]] = {
    # trades
    "clipping": "tapahi hanga", "hedging": "taiapa tipu", "espalier": "rākau papatahi", "mowing": "tapahi pātītī",
    "feeding": "whāngai", "watering": "whakamākūkū", "soil": "oneone", "planting": "whakatō", "safety": "haumaru",
    # the tags of a caption
    "topiary": "rākau tārai",
    "fruit": "hua rākau",
    "fertiliser": "whakahaumako",
    "hedge": "taiapa",
    "lawn": "papa pātītī",
    "newplants": "tipu hou",
    "ppe": "kākahu haumaru",
    "compost": "wairākau",
    "mulch": "takapapa",
    "gardenwater": "wai māra",
    # what a client reads
    "clip before it stands": "tapahia i mua i te eke ki te",
    "next clip due": "te tapahanga e whai ake nei",
    "look at the ties again": "tirohia anō ngā here",
    "years until the frame is full": "ngā tau kia kī te anga",
    "top tier laid level": "ka whakapaparitia te papa o runga",
    "first spring in which blossom stays": "te kōanga tuatahi ka waiho ngā puāwai",
    "summer pruning begins": "ka tīmata te tapahi raumati",
    "what grows again comes off": "ka tapahia ngā mea ka tupu anō",
    "feeding dates": "ngā rā whāngai",
    "next feed": "te whāngaitanga e whai ake nei",
    "no nitrogen after": "kaua he hauota i muri i te",
    "seasons to the finished height": "ngā tau tupu ki te teitei whakamutunga",
    "at its finished height by": "ka eke ki te teitei whakamutunga i mua i te",
    "seasons to close the gaps": "ngā tau tupu kia kati ngā āputa",
    "next cut due": "te tapahanga e whai ake nei",
    "mow when it reaches": "tapahia te pātītī ina eke ki te",
    "cuts to come down": "ngā tapahanga kia heke",
    "days between cuts": "ngā rā i waenga i ngā tapahanga",
    "set height for now": "te teitei tapahi mō nāianei",
    "first cut of new turf": "te tapahanga tuatahi o te pātītī hou",
    "stakes off by": "tangohia ngā pou i mua i te",
    "order": "hei tono",
    "bags": "ngā pēke",
    "each plant, each time": "ia tipu, ia wā",
    "in a week without rain": "i te wiki kāore he ua",
    "watering, as it stands": "te whakamākūkū ināianei",
    "rooted, and left to the weather": "kua mau ngā pakiaka, kāti te whakamākūkū",
    "nobody goes in for (united states)": "kaua tētahi e kuhu mō te (Amerika)",
    "entry from": "ka āhei te kuhu mai i te",
    "spread it, before it sinks": "horahia, i mua i te totohu",
    "keep clear of every stem": "kia wātea i ia tātā",
    "days between waterings": "ngā rā i waenga i ngā whakamākūkūtanga",
    "put on each time": "te wai ia wā",
    "water a week without rain": "te wai mō te wiki kāore he ua",
    "in watering cans": "ki ngā kēne wai",
    "run time each watering": "te roa o ia whakamākūkūtanga",
    "watering in the first year": "te whakamākūkū i te tau tuatahi",
    "each plant, each watering": "ia tipu, ia whakamākūkūtanga",
    "all new plants, each watering": "ngā tipu hou katoa, ia whakamākūkūtanga",
    "rooted, and then watered by weather": "kua mau ngā pakiaka, ka whakamākūkū i runga i te huarere",
    **{f"water a week in {month}": f"te wai ia wiki i a {told}" for month, told in _MONTHS.items()},
    **{
        f"water a week in {month}, if no rain falls": f"te wai ia wiki i a {told}, ki te kore e ua"
        for month, told in _MONTHS.items()
    },
    "none, as the usual rain is enough": "kāore: ka nui te ua",
    "set the mower to": "whakaritea te mīhini tapahi pātītī ki te",
    "each watering": "ia whakamākūkūtanga",
    "{} deep in a tin set on the ground": "{} te hōhonu i roto i te tīni kei te whenua",
    # how much and how often
    "yes": "āe", "no": "kāo",
    "{} to {}": "{} ki te {}",
    "{} dose": "{} whāngaitanga", "{} doses": "{} whāngaitanga",
    "day": "rā", "{} day": "{} rā", "{} days": "{} rā", "{} to {} days": "{} ki te {} rā",
    "every day": "ia rā", "every {} days": "ia {} rā", "every {} to {} days": "ia {} ki te {} rā",
    "every day now": "ia rā ināianei", "every {} days now": "ia {} rā ināianei",
    "every {} to {} days now": "ia {} ki te {} rā ināianei",
    "once a week": "kotahi i te wiki", "twice a week": "e rua ngā wā i te wiki",
    "{} times a week": "e {} ngā wā i te wiki",
    "{} the same day": "{} i taua rā anō", "{} the next day": "{} i te rā i muri mai",
    "{} {} days later": "{}, e {} rā i muri mai",
    **{f"{full} full": f"kia kī ki {part}" for full, part in _FULL.items()},
    **{f"each {full} full": f"kia kī ia kēne ki {part}" for full, part in _FULL.items()},
    **{f"{one} full {{}} cans": f"e {number} ngā kēne {{}} kua kī" for one, number in _NUMBERS.items()},
    **{f"{one} {{}} cans": f"e {number} ngā kēne {{}}" for one, number in _NUMBERS.items()},
    "one full {} can": "kotahi te kēne {} kua kī", "one {} can": "kotahi te kēne {}",
    # clipping: its measures, and the words they may hold
    "shape": "hanga", "finished width": "whānui ina oti", "standing width": "whānui ināianei",
    "finished height": "teitei ina oti", "standing height": "teitei ināianei", "passes": "ngā haerenga",
    "growth": "tupunga", "gauge every": "ine ia", "clipping rate": "tere tapahi",
    "day temperature": "pāmahana o te rā", "first frost": "hukapapa tuatahi",
    **_SHAPES,
    # clipping: its figures
    "off each side": "tangohia i ia taha", "off the top": "tangohia i runga", "leaf taken off": "ngā rau ka tangohia",
    "light passes, at least": "ngā haerenga māmā, i te itinga",
    "gauge rings: width at each height": "ngā mowhiti ine: te whānui i ia teitei",
    "every {} up the stick": "ia {} ki runga i te rākau ine",
    "up from the foot": "mai i te pūtake", "width": "whānui", "out from the stem": "mai i te tātā",
    "surface to clip": "te mata hei tapahi", "time for one person": "te wā mā te tangata kotahi",
    # clipping: its drawings
    "{} off each side": "{} i ia taha",
    **_LINES,
    **{f"from above: the {line} first": f"Mai i runga: ko {told} i te tuatahi" for line, told in _LINES.items()},
    **{
        f"the plant from straight above: the {line}, {{}} across, drawn heavy{rest}":
        f"Te tipu mai i runga tonu: ko {told}, {{}} te whānui, he rārangi mātotoru{told_rest}"
        for line, told in _LINES.items()
        for rest, told_rest in (
            (" inside an outline {} across that is hatched where it comes off.",
             " i roto i te tapa {}, kua tāhaehaetia ngā wāhi ka tangohia."),
            ("; nothing stands outside it.", "; kāore he mea i waho."),
        )
    },
    **{
        f"section: {shape} {{}} wide when done": f"Topenga: he {told}, {{}} te whānui ina oti"
        for shape, told in _SHAPES.items()
    },
    **{
        f"a {shape} in section, {{}} wide and {{}} high when done. it stands {{}} wide; {off}":
        f"He {told} kua topea, {{}} te whānui, {{}} te teitei ina oti. Ināianei {{}} te whānui; {gone}"
        for shape, told in _SHAPES.items()
        for off, gone in (
            ("the hatched shell, {} a side and {} % of the leaf, comes off.",
             "ka tangohia te kiri kua tāhaehaetia, {} i ia taha, {} % o ngā rau."),
            ("the hatched shell, {} % of the leaf, comes off.",
             "ka tangohia te kiri kua tāhaehaetia, {} % o ngā rau."),
            ("nothing comes off.", "kāore he mea ka tangohia."),
        )
    },
}  # fmt: skip
MAORI_UNITS: Final[dict[str, str]] = {
    "day": "rā", "days": "rā", "month": "marama", "months": "marama", "people": "tāngata", "person": "tangata",
    "plant": "tipu", "plants": "tipu", "row": "rārangi", "rows": "rārangi", "seed": "kākano", "seeds": "kākano",
    "stake": "pou", "stakes": "pou", "tie": "here", "ties": "here", "time": "wā", "times": "wā", "tree": "rākau",
    "trees": "rākau", "week": "wiki", "weeks": "wiki", "year": "tau", "years": "tau",
}  # fmt: skip
