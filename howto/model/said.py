"""What families say in English, told in a reader's language: phrases, units that are words, decimal marks."""

import re
from collections.abc import Mapping
from functools import lru_cache
from typing import Final

from babel import Locale, UnknownLocaleError
from babel.numbers import get_decimal_symbol

from howto.languages.phrases import PHRASES, UNIT_WORDS, UNITS
from howto.languages.tags import base
from howto.model.crew import Crew

# An amount as it is printed: a sign, digits with points or colons, and the units that are tied to it.
_AMOUNT: Final = re.compile(r"(?:[±−-]\u00a0?)?(?:\d+(?:[.:]\d+)*[¼½¾]?|[¼½¾])(?:\u00a0[^\s,;()]+)*")
_POINT: Final = re.compile(r"(?<=\d)\.(?=\d)")
_WORD: Final = re.compile(r"[A-Za-z]+")
_PARTS: Final = ", "


def locale_of(language: str) -> Locale:
    """Return the locale of a language tag such as `en-NZ`; English where it is not known."""
    for tag in (language, base(language)):
        try:
            return Locale.parse(tag, sep="-")
        except (UnknownLocaleError, ValueError):
            continue
    return Locale("en", "GB")


def said(text: str, crew: Crew) -> str:
    """Return what a family says in the crew's language; as it stands, but for its amounts, where it has no words."""
    return _told(text, crew) or amounts_said(text, crew.language)


def unsaid(text: str, crew: Crew) -> bool:
    """Tell whether a text stays English though its reader reads another language."""
    if base(crew.language) == "en" or not _WORD.search(_AMOUNT.sub("", text)):
        words = {word for amount in _AMOUNT.findall(text) for word in _WORD.findall(amount)} & UNIT_WORDS
        return base(crew.language) != "en" and bool(words - UNITS.get(base(crew.language), {}).keys())
    return _told(text, crew) is None


def phrase_key(text: str) -> str:
    """Return a phrase as tables know it: small letters, single spaces, `{}` for each amount."""
    return " ".join(_AMOUNT.sub("{}", text).replace("\u00a0", " ").split()).casefold()


def amounts_said(text: str, language: str) -> str:
    """Return a text with the decimal marks of a language, and the units tied to its amounts in its words."""
    if base(language) == "en":
        return text
    units = UNITS.get(base(language), {})
    mark = _mark(language)

    def amount(found: re.Match[str]) -> str:
        number, tie, unit = found[0].partition("\u00a0")
        return _POINT.sub(mark, number) + tie + _POINT.sub(mark, _WORD.sub(lambda w: units.get(w[0], w[0]), unit))

    return _AMOUNT.sub(amount, text)


def _told(text: str, crew: Crew) -> str | None:
    """Return a phrase in the crew's language, or None where it has no words for it; parts may be told one by one."""
    if base(crew.language) == "en":
        return text
    whole = _phrase(text, crew)
    if whole is not None or _PARTS not in text:
        return whole
    parts = [_phrase(part, crew) for part in text.split(_PARTS)]
    return _PARTS.join(filter(None, parts)) if all(parts) else None


def _phrase(text: str, crew: Crew) -> str | None:
    """Return one phrase in the crew's language, its amounts put where that language has them."""
    amounts = [amounts_said(found, crew.language) for found in _AMOUNT.findall(text)]
    key = phrase_key(text)
    own: Mapping[str, str] = crew.words.get(base(crew.language), {})
    pattern = own.get(key) or PHRASES.get(base(crew.language), {}).get(key)
    if key == "{}":
        pattern = "{}"
    if pattern is None or pattern.count("{}") != len(amounts):
        return None
    told = pattern
    for amount in amounts:
        told = told.replace("{}", amount, 1)
    return told


@lru_cache
def _mark(language: str) -> str:
    """Return the decimal mark of a language."""
    return str(get_decimal_symbol(locale_of(language)))
