"""A figure and a breach from their parts, in the order they are printed."""

from collections.abc import Iterable
from typing import Any

from howto.families.hedging.measures import HedgingMeasures
from howto.model.family import Breach, Edit
from howto.model.figure import Cell, Figure
from howto.model.reference import Reference
from howto.quantities import field_unit, round_down, round_up
from howto.quantities.amounts import Words


def figure(
    name: str, label: Words, value: Cell, unit: str, working: Iterable[Words], *who: Reference, **more: Any
) -> Figure:
    """Return a figure with its working and who says so; `more` are its other parts by name."""
    return Figure(name=name, label=label, value=value, unit=unit, working=tuple(working), references=who, **more)


def to_write(
    field: str, text: str, what: Words, why: Words = "", *, key: str = "", then: str = "", **more: Any
) -> Breach:
    """Return the breach of a measure; its mend writes `text` there, or under another `key`; `then` goes on."""
    key = key or field_unit(field)[0]
    return Breach(f"measures.{field}", what, why, f"write `{key}: {text}`{then}", Edit(text, key), **more)


def to_cut(m: HedgingMeasures, text: str, what: Words, why: Words = "", **more: Any) -> Breach:
    """Return the breach of a cut; its mend writes another height."""
    field = "finished_height_mm" if m.cut_height_mm is None else "cut_height_mm"
    return to_write(field, text, what, why, key="cut height", **more)


def season_to_write(text: str, what: Words, why: Words = "", **more: Any) -> Breach:
    """Return the breach of a season; its mend writes another."""
    return Breach("season", what, why, f"write `season: {text}`", Edit(text, "season", top=True), **more)


def whole_mm(value: float, *, down: bool = False) -> str:
    """Return a length as its author types it, in whole millimetres: up, or `down` for what may not be more."""
    return f"{(round_down if down else round_up)(value, 1):.0f} mm"
