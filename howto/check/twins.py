"""Tells a technique from its twin in another language, and finds where the two differ."""

import re
from collections.abc import Iterator, Mapping
from pathlib import PurePosixPath
from typing import Any, Final

from howto.findings import Severity
from howto.model.family import Breach, Rule
from howto.model.measures import Measures
from howto.model.reference import FORMAT
from howto.model.shown import shown_cell
from howto.model.technique import AnyTechnique
from howto.quantities import field_unit

TWIN: Final[Rule[Any]] = Rule(
    name="shelf.twin",
    severity=Severity.ERROR,
    statement="A technique in a second language has the same measures, and as many steps and cautions, as the first.",
    why="two people who work side by side from two cards must work to one number",
    references=(FORMAT,),
    applies="files such as `clip-a-ball.es.md` beside `clip-a-ball.md`",
)
_LANGUAGE: Final = re.compile(r"\.([a-z]{2,3}(?:-[A-Za-z]{2,4})?)$")
PARTS: Final = (
    ("tools", "tools"),
    ("materials", "materials"),
    ("steps", "steps"),
    ("cautions", "cautions"),
    ("finish", "things to tick at the finish"),
    ("aftercare", "aftercare tasks"),
)


def own_name(technique: AnyTechnique) -> str:
    """Return a technique's name without its language: `clip-a-ball` for `clip-a-ball.es.md`."""
    stem = PurePosixPath(technique.path).stem if technique.path else technique.id
    return _LANGUAGE.sub("", stem)


def is_twin(technique: AnyTechnique) -> bool:
    """Tell whether a technique is another one in a second language."""
    stem = PurePosixPath(technique.path).stem if technique.path else technique.id
    return bool(_LANGUAGE.search(stem))


def twin_breaches(twin: AnyTechnique, first: AnyTechnique | None) -> Iterator[Breach]:
    """Yield where a twin differs from the technique it is a twin of."""
    name = own_name(twin)
    if first is None:
        yield Breach(
            field="title",
            what=f"no `{name}.md` stands beside this file",
            why="a file with a language in its name is a second telling of the one without",
            mend=f"write `{name}.md` too, or name this file `{name}.md`",
        )
        return
    for part, words in PARTS:
        here, there = len(getattr(twin, part)), len(getattr(first, part))
        if here != there:
            yield Breach(
                field=part,
                what=f"{here} {words} here and {there} in `{first.path}`",
                why="both say the same work, part by part",
                mend=f"write {there} here, the same ones in the same order",
            )
    yield from _measures(twin, first)


def _measures(twin: AnyTechnique, first: AnyTechnique) -> Iterator[Breach]:
    """Yield the measures that differ."""
    here, there = twin.measures.given(), first.measures.given()
    for field in dict.fromkeys((*there, *here)):
        if here.get(field) == there.get(field) and twin.measures.tolerance(field) == first.measures.tolerance(field):
            continue
        name, _ = field_unit(field)
        theirs = _told(first, field, there)
        yield Breach(
            field=f"measures.{field}",
            what=f"`{name}` is {_told(twin, field, here)} here and {theirs} in `{first.path}`",
            why="a number is the same in every language",
            mend=f"write `{name}: {theirs}`" if field in there else f"take `{name}` out",
        )


def _told(technique: AnyTechnique, field: str, given: Mapping[str, Any]) -> str:
    """Return a measure as its author wrote it."""
    if field not in given:
        return "not given"
    measures: Measures = technique.measures
    value, (_, unit) = given[field], field_unit(field)
    plain = isinstance(value, int | float) and not isinstance(value, bool)
    return measures.written.get(field) or (
        shown_cell(float(value), unit or "", technique.crew) if plain else str(value)
    )
