"""Measures and figures as their reader sees them: in the crew's units and in the crew's language."""

from collections.abc import Iterator
from datetime import date
from typing import NamedTuple

from howto.languages.reader import Reader
from howto.model.figure import Cell, Figure
from howto.model.measures import Measures
from howto.quantities import field_unit


class Shown(NamedTuple):
    """A measure under the author's key, as printed: value, tolerance ("" where none was given) and label.

    An `assumed` one was not written; an `idle` one is a no, a nought or an empty list.
    """

    key: str
    value: str
    tolerance: str
    label: str
    assumed: bool = False
    idle: bool = False


def shown_cell(cell: Cell, unit: str, reader: Reader, digits: int | None = None) -> str:
    """Return a value as its reader sees it: a date, words, or an amount in their units."""
    if isinstance(cell, date):
        return reader.day(cell)
    return reader.tell(cell) if isinstance(cell, str) else reader.value(cell, unit, digits)


def shown(figure: Figure, reader: Reader) -> str:
    """Return a figure's value as its reader sees it."""
    return shown_cell(figure.value, figure.unit, reader, figure.digits)


def shown_measures(measures: Measures, reader: Reader) -> Iterator[Shown]:
    """Return the measures that hold a value, in the family's order, under the author's keys."""
    for name, value in measures.given().items():
        key, unit = field_unit(name)
        spread = measures.tolerance(name)
        yield Shown(
            key=key,
            value=_measure(value, unit or "", reader),
            tolerance="" if spread is None else reader.spread(spread, unit or ""),
            label=reader.tell(key),
            assumed=measures.assumed(name),
            idle=not value,
        )


def _measure(value: object, unit: str, reader: Reader) -> str:
    """Return one measure's value: a yes or no, a word, a count, an amount, or a list of them."""
    if isinstance(value, bool):
        return reader.tell("yes" if value else "no")
    if isinstance(value, tuple):
        amounts = [each for each in value if isinstance(each, int | float)]
        if len(amounts) == len(value):
            return reader.listed(amounts, unit)
        return ", ".join(_measure(each, unit, reader) for each in value)
    if isinstance(value, int | float):
        return reader.value(value, unit)
    return reader.day(value) if isinstance(value, date) else reader.tell(str(value))
