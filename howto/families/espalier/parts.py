"""The parts that several modules make figures and breaches of, and amounts said the same way in all of them."""

from collections.abc import Iterable
from typing import Any

from howto.model.family import Breach, Edit
from howto.model.figure import Cell, Figure
from howto.model.reference import Reference
from howto.quantities import field_unit
from howto.quantities.amounts import Count, Words


def figure(
    name: str, label: str, value: Cell, unit: str, working: Iterable[Words], *who: Reference, **more: Any
) -> Figure:
    """Return a figure from its parts in the order they are printed."""
    return Figure(name=name, label=label, value=value, unit=unit, working=tuple(working), references=who, **more)


def to_write(
    field: str, text: str, what: Words, why: Words = "", *, first: str = "", then: str = "", **more: Any
) -> Breach:
    """Return the breach of a measure that has to be written anew; its mend says what comes `first` and `then`."""
    key, _ = field_unit(field)
    return Breach(f"measures.{field}", what, why, f"{first}write `{key}: {text}`{then}", Edit(text, key), **more)


def season_to_write(text: str, what: Words, why: Words) -> Breach:
    """Return the breach of a season that has to be written anew."""
    return Breach("season", what, why, f"write `season: {text}`", Edit(text, "season", top=True))


def leaves(count: int) -> Count:
    """Return so many leaves."""
    return Count(count, "leaf", "leaves")


def tiers(count: int) -> Count:
    """Return so many tiers."""
    return Count(count, "tier", "tiers")


def wires(count: int) -> Count:
    """Return so many wires."""
    return Count(count, "wire", "wires")
