"""Finds what gives a client away: a street address, a phone number, an e-mail, a door code, in a visit's words."""

import re
from collections.abc import Iterator
from itertools import product
from typing import Final, NamedTuple

from howto.model.crew import Crew

STREETS: Final = "street|road|avenue|lane|crescent|terrace|boulevard|highway|parade"
ENDINGS: Final = STREETS + "|st|rd|ave|cres|tce|blvd|drive|dr|close|court|place|way|grove|mews|gardens|square|rise|hill"
_NAMES: Final = r"(?:[A-Z][\w'’.-]*\s+){1,3}"
_ADDRESS: Final = (
    re.compile(rf"\b\d{{1,5}}[a-zA-Z]?,?\s+{_NAMES}(?:{'|'.join(word.title() for word in ENDINGS.split('|'))})\b"),
    re.compile(
        rf"\b\d{{1,5}}[a-z]?,?\s+(?P<names>(?:[a-z'’]{{3,}}\s+){{1,2}})(?:{STREETS})\b(?!\s*-?(?:side|edge|end|face|gate))"
    ),
    re.compile(r"\b(?:flat|apartment|apt\.?|unit|suite|p\.?\s?o\.?\s+box)\s+#?\d{1,5}[a-z]?\b", re.IGNORECASE),
    re.compile(  # Spanish: the street, then the number
        r"\b(?:[Cc]alle|C/|Avda?\.?|[Aa]venida|Plaza|Paseo|Camino|Carretera)\s*"
        r"(?:(?:de|del|la|las|los|el)\s+)*(?:[A-ZÁÉÍÓÚÑ][\w'’-]*,?\s+){1,4}(?:n\.?\s?[º°o]\.?\s*)?\d{1,4}\b"
    ),
    re.compile(r"\b\d{1,5}[a-zA-Z]?,?\s+(?:đường|phố|ngõ|hẻm|Đường|Phố|Ngõ|Hẻm)\s+[A-ZÀ-ỸĐ]"),  # Vietnamese
    re.compile(r"\b[A-Z]{1,2}\d[A-Z\d]?\s+\d[A-Z]{2}\b"),  # a postcode of the United Kingdom
    re.compile(r"\b[A-Z]{2}\s+\d{5}(?:-\d{4})?\b"),  # a state and ZIP code of the United States
)
_STREET: Final = re.compile(
    rf"^(?:[A-Z][\w'’-]*\s+){{1,3}}(?:{'|'.join(word.title() for word in STREETS.split('|'))})$"
)
_COMMON: Final = frozenset(
    (
        "the", "and", "for", "with", "from", "along", "across", "into", "near", "over", "under", "off", "out", "two",
        "three", "both", "all", "metre", "feet", "foot", "side", "new", "old",
    )
)  # fmt: skip
_PHONE: Final = re.compile(r"(?<![\w.,/-])(?=(?P<number>\+?\(?\d[\d() .-]{5,18}\d)(?![\w/]))")
_CALLED: Final = re.compile(r"[+(]|0(?!00|\.)")
_LEADS: Final = re.compile(
    r"(?:call|phone|ring|text|tel|mob|mobile|cell|number|whats\w*|"
    r"ll[aá]m\w*|tel[eé]fono|m[oó]vil|gọi|điện thoại|waea)\W*(?:\w+\W+){0,3}$",
    re.IGNORECASE,
)
_LOOK_BACK: Final = 80  # letters: what leads to a number stands before it
_GROUPS: Final = re.compile(r"\(?\d{3}\)?[ .-]\d{3}[ .-]\d{4}")
_DATE: Final = re.compile(r"(?<![\d./-])(?:\d{4}-\d{1,2}-\d{1,2}|\d{1,2}[./-]\d{1,2}[./-]\d{2,4})(?![./-]?\d)")
_EMAIL: Final = re.compile(r"(?<![\w.+-])[\w.+-]+@[\w-]+(?:\.[\w-]+)+")
_UNITS: Final = (
    r"(?!\d|[.,]\d|\s*(?:mm|cm|m|km|l|ml|g|kg|ft|in|inch|inches|m2|sq|%|°|days?|weeks?|months?|min|h|hours?|plants?)\b)"
)
_LOCK: Final = (
    r"(?:(?:gate|door|alarm|entry|key|access|lock|padlock|garage|shed)\s*code|pin|keypad|combination|key\s?safe|"
    r"lock\s?box|alarm|padlock)"
)
_CODE: Final = (
    re.compile(rf"\b{_LOCK}\b[^.\n\d]{{0,24}}#?\*?\b\d{{3,8}}\b{_UNITS}[#*]?", re.IGNORECASE),
    re.compile(rf"\b\d{{4,8}}[#*]?\s+(?:on|at|into|for|opens|is)\s+(?:the\s+)?(?:{_LOCK}|gate|door)\b", re.IGNORECASE),
    re.compile(r"\bcode\s+(?:is\s+|=\s*)?#?\d{3,8}\b", re.IGNORECASE),
    re.compile(
        rf"\b(?:c[óo]digo|contraseña|clave de|mã(?:\s+(?:số|cửa|cổng|khóa))?)\b[^.\n\d]{{0,24}}\b\d{{3,8}}\b{_UNITS}",
        re.IGNORECASE,
    ),
    re.compile(
        r"\bllaves?\s+(?:está|están|quedan?)\s+(?:\w+\s+)?(?:bajo|debajo|detrás|dentro|encima|en)\b", re.IGNORECASE
    ),
    re.compile(r"\bchìa khóa\s+(?:\w+\s+)?(?:dưới|sau|trong|trên)\b", re.IGNORECASE),
    re.compile(r"\b(?:spare\s+|back\s+door\s+|front\s+door\s+|shed\s+|house\s+)?keys?\s+(?:is|are|lives?|kept|left|hidden|stays?)\s+"
               r"(?:\w+\s+)?(?:under|behind|beneath|inside|in|on top of)\s+the\b", re.IGNORECASE),
)  # fmt: skip


class Given(NamedTuple):
    """What gives someone away: the kind of thing, and the very words; `sure` where it could hardly be anything else."""

    kind: str
    words: str
    sure: bool = True


def given_away(text: str, crew: Crew, *, label: bool = False) -> Iterator[Given]:
    """Yield what a text gives away; the crew's own contact is theirs to print. A `label` is a site's name."""
    yield from _address(text, label=label)
    yield from _phone(text, crew)
    for found in _EMAIL.finditer(text):
        if found[0].casefold() not in crew.contact.casefold():
            yield Given("email", found[0])
    codes = (pattern.search(text) for pattern in _CODE)
    code = next((each[0] for each in codes if each), None)
    if code is not None:
        yield Given("door-code", code)


def _address(text: str, *, label: bool) -> Iterator[Given]:
    """Yield the first address; a label, and the name of a file, are read in any capitals."""
    told = (text, text.title(), text.upper()) if label else (text,)
    for pattern, words in product(_ADDRESS, told):
        found = pattern.search(words)
        if found is None:
            continue
        names = set((found.groupdict().get("names") or "").split())
        if not names & _COMMON and not any(name.endswith("s") for name in names):
            yield Given("address", text[slice(*found.span())])
            return
    if label and _STREET.match(text.strip().title()):
        yield Given("address", text.strip(), sure=False)


def _phone(text: str, crew: Crew) -> Iterator[Given]:
    """Yield the first phone number, with whatever digits in front of it; days are no digits of one."""
    own = _digits(crew.contact)
    for start in _PHONE.finditer(_DATE.sub(lambda day: "," * len(day[0]), text)):
        found = start["number"]
        digits = _digits(found)
        if not 7 <= len(digits) <= 15 or (own and digits in own):
            continue
        asked = _LEADS.search(text[max(0, start.start() - _LOOK_BACK) : start.start()])
        if _CALLED.match(found) or _GROUPS.fullmatch(found) or asked:
            yield Given("phone", found.strip())
            return


def _digits(text: str) -> str:
    return "".join(letter for letter in text if letter.isdigit())
