"""Words of time in Spanish, Vietnamese and te reo Māori, turned into the English ones that are read.

They are matched without their accents, since phones leave them out. The months of te reo Māori are both the loan
words and the twelve of the Māori year, as Te Taura Whiri i te Reo Māori (Māori Language Commission) lists them.
"""

import re
from typing import Final
from unicodedata import combining, normalize

from howto.languages.tags import base

Swaps = tuple[tuple[str, str], ...]
MONTHS: Final = (
    "january", "february", "march", "april", "may", "june",
    "july", "august", "september", "october", "november", "december",
)  # fmt: skip


def folded(text: str) -> str:
    """Return words as they are compared over languages: small letters, no accents, single spaces."""
    plain = "".join(letter for letter in normalize("NFD", text.casefold()) if not combining(letter))
    return " ".join(plain.replace("đ", "d").split())


def _named(names: str, words: tuple[str, ...] = MONTHS) -> Swaps:
    """Return a swap for each of the names, which stand in the order of the English words."""
    return tuple((rf"\b{name}\b", word) for name, word in zip(names.split(), words, strict=True))


def _counted(names: str) -> Swaps:
    """Return a swap for each number word, from one on."""
    return tuple((rf"\b{name}\b", str(number)) for number, name in enumerate(names.split(), 1))


SPANISH: Final[Swaps] = (
    (r"\b(?:en|a|por|durante) la (?:proxima|siguiente) visita\b|^(?:proxima|siguiente) visita$", "next visit"),
    (r"\ben (?:todo momento|cualquier epoca)\b|^siempre$", "always"),
    (r"^hoy(?: mismo)?$|^enseguida$", "today"),
    (r"^manana$|^al dia siguiente$", "tomorrow"),
    (r"\b(?:en cualquier momento|todo el ano)\b", "all year"),
    (r"\ben un plazo (?:de|maximo de) ", "dentro de "), (r"^a (?=principios|comienzos|mediados|finales|fines)", ""),
    (r"\bun[ao]?\b", "1"),
    *_counted("uno dos tres cuatro cinco seis siete ocho nueve diez once doce"),
    (r"\bdias?\b", "day"), (r"\bsemanas?\b", "week"), (r"\bquincenas?\b", "fortnight"),
    (r"\bmes(?:es)?\b", "month"), (r"\banos?\b", "year"),
    (r"\b(\d+) (day|week|month) siguientes\b", r"\1 \2"),
    (r"\b(?:proxim|primer)[ao]s ", ""),
    (r"\b(?:en|dentro de|antes de)(?: l[ao]s)? (?=\d+ (?:day|week|fortnight|month|year))", "within "),
    (r"\ben menos de (?=\d)", "within "),
    (r"\b(?:despues de|tras|al cabo de|a partir de|pasad[ao]s|a l[ao]s)(?: l[ao]s)? (?=\d+ (?:day|week|f|month|year))",
     "after "),
    (r"\b(?:durante|hasta)(?: l[ao]s)? (?=\d+ (?:day|week|fortnight|month|year))", "for "),
    (r"\bcada\b", "every"),
    (r"\b(?:principios|comienzos) de\b", "early"), (r"\bmediados de\b", "mid"), (r"\b(?:finales|fines) de\b", "late"),
    *_named("enero febrero marzo abril mayo junio julio agosto septiembre octubre noviembre diciembre"),
    (r"\bsetiembre\b", "september"),
    *_named("primavera verano otono invierno", ("spring", "summer", "autumn", "winter")),
    (r"^(?:de|desde) ", ""), (r" (?:a|hasta) ", " to "), (r" y ", " and "), (r" [ou] ", " or "),
    (r"\ben ", "in "), (r"\b(?:el|la) ", ""),
)  # fmt: skip
VIETNAMESE: Final[Swaps] = (
    (r"^(?:vao |khi )?(?:chung toi den )?(?:lan (?:toi|sau|den tiep theo|den sau|tham toi))$", "next visit"),
    (r"^luon(?: luon)?$|^moi luc$", "always"),
    (r"^(?:ngay )?hom nay$|^ngay lap tuc$", "today"), (r"^ngay mai$|^hom sau$", "tomorrow"),
    (r"\b(?:quanh nam|ca nam|bat cu luc nao)\b", "all year"),
    (r"\bthang muoi hai\b|\bthang chap\b|\bthang 12\b", "december"), (r"\bthang muoi mot\b|\bthang 11\b", "november"),
    (r"\bthang muoi\b|\bthang 10\b", "october"), (r"\bthang (?:chin|0?9)\b", "september"),
    (r"\bthang (?:tam|0?8)\b", "august"), (r"\bthang (?:bay|0?7)\b", "july"), (r"\bthang (?:sau|0?6)\b", "june"),
    (r"\bthang (?:nam|0?5)\b", "may"), (r"\bthang (?:tu|0?4)\b", "april"), (r"\bthang (?:ba|0?3)\b", "march"),
    (r"\bthang (?:hai|0?2)\b", "february"), (r"\bthang (?:mot|gieng|0?1)\b", "january"),
    *((rf"\b{name}(?= (?:ngay|tuan|thang|nam)\b)", str(number)) for number, name in enumerate(
        ["mot", "hai", "ba", "bon", "nam", "sau", "bay", "tam", "chin", "muoi"], 1)),
    (r"\bngay\b", "day"), (r"\btuan\b", "week"), (r"\bthang\b", "month"), (r"\bnam\b", "year"),
    (r"\b(\d+ (?:day|week|month|year)) mot lan\b", r"every \1"),
    (r"\bmoi\b", "every"),
    (r"(?<=[a-z]) (?:trong|den) (?=\d)", " for "),
    (r"\btrong(?: vong)? (?=\d)", "within "), (r"\bsau (?=\d)", "after "), (r"\btu (?=\d)", "from "),
    (r"\bdau\b", "early"), (r"\bgiua\b", "mid"), (r"\bcuoi\b", "late"),
    *((rf"\bmua {name}\b", word) for name, word in (
        ("xuan", "spring"), ("he", "summer"), ("ha", "summer"), ("thu", "autumn"), ("dong", "winter"))),
    (r"^tu ", ""), (r" den ", " to "), (r" va ", " and "), (r" hoac ", " or "), (r"^vao ", "in "),
)  # fmt: skip
MAORI: Final[Swaps] = (
    (r"^(?:i )?(?:te|to matou) (?:haerenga|hokinga) mai(?: e whai ake nei| ano)?$|^ina hoki mai matou$", "next visit"),
    (r"^i nga wa katoa$|^i te katoa o te wa$", "always"),
    (r"^i tenei ra$|^inaianei$", "today"), (r"^apopo$|^a te ra i muri mai$", "tomorrow"),
    (r"\b(?:i te tau katoa|ahakoa te wa)\b", "all year"),
    *_counted("(?:ko)?tahi rua toru wha rima ono whitu waru iwa tekau"),
    (r"\b(?:nga )?(ra|wiki|marama|tau) e (\d+)\b", r"\2 \1"),
    (r"\bra\b", "day"), (r"\bwiki\b", "week"), (r"\bmarama\b", "month"), (r"\btau\b", "year"),
    (r"\bi roto i (?:te |nga )?(?=\d|day|week|month|year)", "within "),
    (r"\bi muri i (?:te |nga )?(?=\d|day|week|month|year)", "after "),
    (r"\b(?:mo|tae noa ki) (?:te |nga )?(?=\d)", "for "),
    (r"\bia\b", "every"),
    (r"\b(?:te )?timatanga o\b", "early"), (r"\b(?:te )?(?:waenganui|waenga) o\b", "mid"),
    (r"\b(?:te )?mutunga o\b", "late"),
    *_named("hanuere pepuere maehe aperira mei hune hurae akuhata hepetema oketopa noema tihema"),
    *_named("kohi-?tatea hui-?tanguru poutu-?te-?rangi paenga-?whawha haratua pipiri hongongoi here-?turi-?koka "
            "mahuru whiringa-a-nuku whiringa-a-rangi hakihea"),
    *_named("koanga raumati (?:ngahuru|hauhake) (?:hotoke|takurua)", ("spring", "summer", "autumn", "winter")),
    (r"^mai i (?:te |a )?", ""), (r" ki (?:te |a )?", " to "), (r" me ", " and "), (r" ranei\b", ""),
    (r"^(?:i|a) (?:te |a )?", "in "), (r"\bte ", ""),
)  # fmt: skip
SWAPS: Final[dict[str, Swaps]] = {"es": SPANISH, "vi": VIETNAMESE, "mi": MAORI}


def in_english(text: str, language: str) -> str:
    """Return words of time in English, small letters; those of a language we do not know stay as they are."""
    found = folded(text).rstrip(" .:")
    for pattern, word in SWAPS.get(base(language), ()):
        found = re.sub(pattern, word, found)
    return " ".join(found.split())
