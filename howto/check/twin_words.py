"""Finds where the prose of a technique and of its twin name other measures, figures or amounts, part by part."""

import re
from collections.abc import Iterator, Mapping
from typing import Final

from howto.findings import Severity
from howto.languages.written_units import amounts_in
from howto.model.family import Breach
from howto.model.passages import written
from howto.model.prose import BRACED, compared
from howto.model.technique import AnyTechnique
from howto.quantities import Dimension

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
    here, there = (
        {field: _amounts(text, each.language) for field, text in _parts(each).items()} for each in (twin, first)
    )
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


def _amounts(text: str, language: str) -> dict[Amount, str]:
    """Return the amounts in a text but for lengths of time, by what they come to, as they are written."""
    found = (quantity for *_, quantity in amounts_in(text, language))
    return {(each.dimension, float(f"{each.amount:.6g}")): each.written for each in found if each.dimension != _A_TIME}


def _told(amounts: Mapping[Amount, str]) -> str:
    """Return amounts as an author writes them."""
    return ", ".join(f"`{written}`" for written in amounts.values()) or "no amount"
