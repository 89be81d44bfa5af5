"""Measures and figures as their reader sees them: in the crew's units and in the crew's language."""

from collections.abc import Iterator
from datetime import date
from typing import NamedTuple

from howto.languages.reader import Reader
from howto.model.figure import Cell, Figure
from howto.model.measures import Measures
from howto.quantities import field_unit
from howto.quantities.amounts import Listed, Scaled, Word, Words, dated


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


def said_cell(cell: Cell, unit: str, digits: int | None = None) -> Words:
    """Return a value as it is held in a sentence: a date, words, or an amount."""
    if isinstance(cell, date):
        return str(dated(cell))
    return str(Word(cell) if isinstance(cell, str) else Scaled(cell, unit, digits))


def said_measure(value: object, unit: str) -> Words:
    """Return one measure's value as it is held in a sentence: a yes or no, a word, an amount, or a list of them."""
    if isinstance(value, bool):
        return str(Word("yes" if value else "no"))
    if isinstance(value, tuple):
        amounts = tuple(each for each in value if isinstance(each, int | float))
        if len(amounts) == len(value):
            return str(Listed(amounts, unit))
        return ", ".join(said_measure(each, unit) for each in value)
    return said_cell(value if isinstance(value, int | float | date) else str(value), unit)


def shown_cell(cell: Cell, unit: str, reader: Reader, digits: int | None = None) -> str:
    """Return a value as its reader sees it: a date, words, or an amount in their units."""
    return reader.filled(said_cell(cell, unit, digits))


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
            value=reader.filled(said_measure(value, unit or "")),
            tolerance="" if spread is None else reader.spread(spread, unit or ""),
            label=reader.tell(key),
            assumed=measures.assumed(name),
            idle=not value,
        )
