"""Finds where the prose of a technique and of its twin name other measures, figures or amounts, part by part."""

import re
from collections.abc import Iterator, Mapping
from typing import Final

from howto.findings import Severity
from howto.languages.tags import is_english
from howto.model.family import Breach
from howto.model.passages import written
from howto.model.prose import BRACED, compared
from howto.model.technique import AnyTechnique
from howto.quantities import Dimension, find_all

PARTS: Final = {
    "title": "the title",
    "intro": "the opening words",
    "tools": "tool",
    "materials": "material",
    "steps": "step",
    "cautions": "caution",
    "finish": "finish line",
    "aftercare": "aftercare task",
}
Amount = tuple[Dimension, float]
_A_TIME: Final = Dimension(time=1)
_PART: Final = re.compile(r"(\w+)(?:\[(\d+)\])?")
_COMMA: Final = re.compile(r"(?<=\d),(?=\d)")
# Units that are written out as words in Spanish, Vietnamese and te reo Māori, with the symbol that is read.
_UNITS: Final = tuple(
    (re.compile(rf"(?<=\d)\s*{word}\b", re.IGNORECASE), f" {symbol}")
    for word, symbol in (
        ("mil[ií]metros?", "mm"), ("cent[ií]metros?", "cm"), ("metros?", "m"), ("mililitros?", "mL"), ("litros?", "L"),
        ("gramos?", "g"), ("kilo(?:gramo)?s?", "kg"), ("pulgadas?", "in"), ("pies?", "ft"), ("por ciento", "%"),
        ("(?:mi-?li-?)m[eé]t", "mm"), ("(?:xen-?ti-?)m[eé]t", "cm"), ("m[eé]t", "m"), ("l[ií]t", "L"),
        ("gam", "g"), ("phần trăm", "%"),
        ("mirimita", "mm"), ("henemita", "cm"), ("mita", "m"), ("ririta", "mL"), ("r[iī]ta", "L"), ("karamu", "g"),
        ("ōrau", "%"),
    )
)  # fmt: skip


def words_of(twin: AnyTechnique, first: AnyTechnique) -> Iterator[Breach]:
    """Yield each part in which one of the two has `{words}` that the other has not."""
    here, there = ({field: _braces(text) for field, text in _parts(each).items()} for each in (twin, first))
    for field in [each for each in here if each in there]:
        for key in [each for each in there[field] if each not in here[field]]:
            word = there[field][key]
            yield Breach(
                field=field,
                what=f"`{word}` stands in {_called(field)} of `{first.path}` and not here",
                why="a number is printed in both languages or in neither",
                mend=f"write `{word}` where the number belongs in {_called(field)}",
            )
        for key in [each for each in here[field] if each not in there[field]]:
            word = here[field][key]
            yield Breach(
                field=field,
                what=f"`{word}` stands in {_called(field)} here and not in `{first.path}`",
                why="a number is printed in both languages or in neither",
                mend=f"take `{word}` out of {_called(field)}, or write it in `{first.path}` too",
            )


def numbers_of(twin: AnyTechnique, first: AnyTechnique) -> Iterator[Breach]:
    """Yield each part in which one of the two names an amount that the other does not; lengths of time are left out.

    A unit is a word in every language, so an amount may be missed where it is written out: hence a warning.
    """
    here = {field: _amounts(_digits(text, twin.language)) for field, text in _parts(twin).items()}
    there = {field: _amounts(_digits(text, first.language)) for field, text in _parts(first).items()}
    for field in [each for each in here if each in there]:
        if here[field].keys() == there[field].keys():
            continue
        ours, theirs = _told(here[field]), _told(there[field])
        yield Breach(
            field=field,
            what=f"{_called(field).capitalize()} says {ours} here and {theirs} in `{first.path}`",
            why="a number is the same in every language",
            mend=f"write {theirs} in {_called(field)}"
            if there[field]
            else f"take {ours} out of {_called(field)}, or write it in `{first.path}` too",
            severity=Severity.WARNING,
        )


def _parts(technique: AnyTechnique) -> dict[str, str]:
    """Return the words of each part, all that stands under a step together."""
    found: dict[str, str] = {}
    for passage in written(technique):
        part = _PART.match(passage.field)
        field = passage.field if part is None else part[1] if part[1] == "intro" else part[0]
        found[field] = f"{found.get(field, '')}\n{passage.text}"
    return found


def _called(field: str) -> str:
    """Return what a part is called: `step 2`."""
    part = _PART.match(field)
    name = PARTS.get(part[1], field) if part else field
    return f"{name} {int(part[2]) + 1}" if part and part[2] else name


def _braces(text: str) -> dict[str, str]:
    """Return the `{words}` of a text, by how they are compared."""
    return {compared(each[1]): each[0] for each in BRACED.finditer(text)}


def _digits(text: str, language: str) -> str:
    """Return a text with decimal points, and symbols for the units that its language writes out."""
    if is_english(language):
        return text
    found = _COMMA.sub(".", text)
    for word, symbol in _UNITS:
        found = word.sub(symbol, found)
    return found


def _amounts(text: str) -> dict[Amount, str]:
    """Return the amounts in a text but for lengths of time, by what they come to, as they are written."""
    found = (quantity for _, _, quantity in find_all(text))
    return {(each.dimension, float(f"{each.amount:.6g}")): each.written for each in found if each.dimension != _A_TIME}


def _told(amounts: Mapping[Amount, str]) -> str:
    """Return amounts as an author writes them."""
    return ", ".join(f"`{written}`" for written in amounts.values()) or "no amount"
