"""The parts that figures and breaches are made of, and amounts written so that a mend keeps its limit."""

from collections.abc import Iterable
from math import floor, log10
from typing import Any

from howto.model.family import Breach, Edit, typed
from howto.model.figure import Cell, Figure
from howto.model.reference import Reference
from howto.quantities import field_unit, round_down
from howto.quantities.amounts import Count, Words

FIGURES = 4  # what a mend is written with


def figure(
    name: str, label: str, value: Cell, unit: str, working: Words | Iterable[Words], *who: Reference, **more: Any
) -> Figure:
    """Return a figure from its parts in the order they are printed; most need one line of working."""
    lines = (working,) if isinstance(working, str) else tuple(working)
    return Figure(name=name, label=label, value=value, unit=unit, working=lines, references=who, **more)


def to_write(
    field: str, edit: Edit, what: Words, why: Words = "", first: Words = "", then: Words = "", **more: Any
) -> Breach:
    """Return the breach of a measure whose mend is to write something, with what is to do `first`, and `then`."""
    mend = f"{first}write `{edit.key}: {edit.text}`{then}"
    return Breach(f"measures.{field}", what, why, mend, edit, **more)


def anew(field: str, text: str, what: Words, why: Words = "", **more: Any) -> Breach:
    """Return the breach of a measure that has to be written anew."""
    return to_write(field, Edit(text, field_unit(field)[0]), what, why, **more)


def written(value: float, unit: str) -> str:
    """Return an amount as an author types it, with four figures."""
    return typed(float(f"{value:.{FIGURES}g}"), unit)


def at_most(value: float, unit: str) -> str:
    """Return an amount as an author types it, with four figures and never above `value`."""
    step = 10.0 ** (floor(log10(value)) - FIGURES + 1)
    return typed(round_down(value, step), unit, down=True)


def doses(count: int) -> Count:
    """Return so many doses."""
    return Count(count, "dose", "doses")
