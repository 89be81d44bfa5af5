"""Amounts in the prose of any language: decimal commas, and units that are written out as words."""

import re
from collections.abc import Iterator
from dataclasses import replace
from typing import Final

from howto.languages import LANGUAGES
from howto.languages.reader import decimal_mark
from howto.languages.tags import is_english
from howto.quantities import Quantity, find_all

# Units that are written out as words, with the symbol that is read: all languages together.
WORDS: Final = {word: symbol for each in LANGUAGES.values() for word, symbol in each.written_units.items()}
_WRITTEN: Final = re.compile(
    r"(?<=\d)\s*(?:" + "|".join(f"({word})" for word in WORDS) + r")\b"
    r"|(?P<thousands>(?<![\d.,])\d{1,3}(?:\.\d{3})+(?![\d.]))|(?P<comma>(?<=\d),(?=\d))",
    re.IGNORECASE,
)
_SYMBOLS: Final = tuple(WORDS.values())


def amounts_in(text: str, language: str) -> Iterator[tuple[int, int, Quantity]]:
    """Yield start, end and value of every quantity with a unit in prose of a language.

    Where a comma is the decimal mark, `1.500 L` may mean either, and is left out.
    """
    if is_english(language):
        yield from find_all(text)
        return
    plain, places = _in_symbols(text, comma=decimal_mark(language) == ",")
    for first, last, quantity in find_all(plain):
        start, end = places[first], places[last]
        yield start, end, replace(quantity, written=text[start:end])


def _in_symbols(text: str, *, comma: bool) -> tuple[str, list[int]]:
    """Return a text with decimal points and unit symbols, and where each of its characters stands in the text."""
    parts: list[str] = []
    places: list[int] = []
    at = 0
    for found in _WRITTEN.finditer(text):
        if (found["comma"] or found["thousands"]) and not comma:
            continue
        new = "." if found["comma"] else found[0].replace(".", ",") if found["thousands"] else _symbol(found)
        parts += [text[at : found.start()], new]
        places += [*range(at, found.start()), *(min(found.start() + each, found.end()) for each in range(len(new)))]
        at = found.end()
    return "".join((*parts, text[at:])), [*places, *range(at, len(text) + 1)]


def _symbol(found: re.Match[str]) -> str:
    """Return the symbol of the unit that was written out."""
    return f" {_SYMBOLS[(found.lastindex or 1) - 1]}"
