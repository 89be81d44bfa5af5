"""Finds two files of one trade that say different things of the same plant."""

import re
from collections.abc import Iterator, Sequence
from typing import Any, Final, NamedTuple

from howto.findings import Severity
from howto.model.family import Breach, Edit, Rule
from howto.model.figure import Figure
from howto.model.measures import Measures
from howto.model.reference import FORMAT
from howto.model.shown import shown, shown_cell
from howto.model.work import AnyWork
from howto.quantities import field_unit

SAME_PLANT: Final[Rule[Any]] = Rule(
    name="shelf.same-plant",
    severity=Severity.WARNING,
    statement="Two files of one trade say the same of one plant.",
    why=(
        "a rate, such as growth in a year, belongs to the plant and cannot be two things at once (a warning); "
        "a size may well differ from job to job, so it only advises"
    ),
    references=(FORMAT,),
    applies="techniques of one family that share a plant and every measure that is a word, such as the shape",
)
_RATE: Final = re.compile(r"/(?:h|day|week|month|year)$")
_FIGURE_GIVE: Final = 0.1  # ours: figures within a tenth of each other tell nobody different things


class _Apart(NamedTuple):
    """One thing said twice: its name, the field here, both values, and whether it is a rate."""

    name: str
    field: str
    here: str
    there: str
    rate: bool
    edit: Edit | None


def disagreement(
    here: AnyWork, there: AnyWork, here_figures: Sequence[Figure], there_figures: Sequence[Figure]
) -> Breach | None:
    """Return the breach, placed in `here`, of two techniques that disagree about a plant they share."""
    plant = _shared_plant(here, there)
    if (
        not plant
        or here.technique.family != there.technique.family
        or _worded(here.measures) != _worded(there.measures)
    ):
        return None
    apart = [*_measures(here, there)] or [*_figures(here, here_figures, there_figures)]
    if not apart:
        return None
    apart.sort(key=lambda each: not each.rate)
    first = apart[0]
    also = ", ".join(f"`{each.name}` {each.here} and {each.there}" for each in apart[1:])
    return Breach(
        field=first.field,
        what=f"`{first.name}` of {plant} is {first.here} here and {first.there} in `{there.technique.path}`",
        why=("one plant cannot have two rates" if first.rate else "the apprentice learns one number from one card")
        + (f"; they differ in {also} too" if also else ""),
        mend=(f"write `{first.name}: {first.there}` here" if first.edit else "give both files the same measures")
        + ", the other number there, or waive `shelf.same-plant` here with the reason why they differ",
        edit=first.edit,
        severity=None if first.rate else Severity.ADVICE,
    )


def _shared_plant(here: AnyWork, there: AnyWork) -> str:
    """Return the first plant of `here` that `there` is about too, by any of its names."""
    others = {_one_name(there, name) for name in there.technique.plants}
    return next((name for name in here.technique.plants if _one_name(here, name) in others), "")


def _one_name(work: AnyWork, name: str) -> str:
    """Return the botanical name of a plant that the book knows, or the name as written."""
    known = work.book.plant(name) or work.book.grass(name)
    return (known.botanical if known else name).casefold()


def _worded(measures: Measures) -> dict[str, object]:
    """Return the measures that are words, or yes and no."""
    return {name: value for name, value in measures.given().items() if isinstance(value, str | bool)}


def _measures(here: AnyWork, there: AnyWork) -> Iterator[_Apart]:
    """Yield the measures given in both that differ by more than their tolerances."""
    others = there.measures.given()
    for field, value in here.measures.given().items():
        other = others.get(field)
        if isinstance(value, bool) or not isinstance(value, int | float) or not isinstance(other, int | float):
            continue
        give = max(here.measures.tolerance(field) or 0.0, there.measures.tolerance(field) or 0.0)
        if abs(value - other) <= give + 1e-9 * max(1.0, abs(value)):
            continue
        name, unit = field_unit(field)
        mine, theirs = (
            each.measures.written.get(field) or shown_cell(float(number), unit or "", here.crew.read_in("en"))
            for each, number in ((here, value), (there, other))
        )
        edit = Edit(key=name, text=theirs)
        yield _Apart(name, f"measures.{field}", mine, theirs, bool(_RATE.search(unit or "")), edit)


def _figures(here: AnyWork, mine: Sequence[Figure], theirs: Sequence[Figure]) -> Iterator[_Apart]:
    """Yield the rates worked out in both that differ by more than a tenth."""
    others = {figure.name: figure for figure in theirs}
    for figure in mine:
        other = others.get(figure.name)
        if other is None or other.unit != figure.unit or not _RATE.search(figure.unit):
            continue
        one, two = (each.value if isinstance(each.value, int | float) else 0.0 for each in (figure, other))
        if abs(one - two) > _FIGURE_GIVE * max(abs(one), abs(two)):
            told = (shown(figure, here.crew.read_in("en")), shown(other, here.crew.read_in("en")))
            yield _Apart(figure.name, "measures", *told, rate=True, edit=None)
