"""Measures and figures as their reader sees them: in the crew's units and in the crew's language."""

from collections.abc import Iterator
from datetime import date
from typing import NamedTuple

from babel.dates import format_date

from howto.model.crew import Crew
from howto.model.figure import Cell, Figure
from howto.model.measures import Measures
from howto.model.said import amounts_said, locale_of, said
from howto.quantities import field_unit, show, show_number, show_tolerance

__all__ = ["Shown", "label_of", "locale_of", "shown", "shown_cell", "shown_day", "shown_measures"]


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


def shown_day(day: date, language: str) -> str:
    """Return a date in words, the year included: `2 June 2027`."""
    locale = locale_of("en-GB" if language == "en" else language)
    # Babel's te reo Māori spells April in two ways; the one for a month alone is the dictionaries' Āperira.
    return format_date(day, format="d LLLL y" if locale.language == "mi" else "long", locale=locale)


def shown_cell(cell: Cell, unit: str, crew: Crew, digits: int | None = None) -> str:
    """Return a value in the crew's units; a date, a phrase and the decimal mark in the crew's language."""
    if isinstance(cell, date):
        return shown_day(cell, crew.language)
    if isinstance(cell, str):
        return said(cell, crew)
    if unit:
        return amounts_said(show(cell, unit, crew.units, digits), crew.language)
    return amounts_said(show_number(cell) if digits is None else show_number(cell, digits), crew.language)


def shown(figure: Figure, crew: Crew) -> str:
    """Return a figure's value as its reader sees it."""
    return shown_cell(figure.value, figure.unit, crew, figure.digits)


def label_of(figure: Figure, crew: Crew) -> str:
    """Return what stands before a figure, in the crew's language."""
    return said(figure.label, crew)


def shown_measures(measures: Measures, crew: Crew) -> Iterator[Shown]:
    """Return the measures that hold a value, in the family's order, under the author's keys."""
    for name, value in measures.given().items():
        key, unit = field_unit(name)
        spread = measures.tolerance(name)
        yield Shown(
            key=key,
            value=_measure(value, unit or "", crew),
            tolerance="" if spread is None else _spread(spread, unit or "", crew),
            label=said(key, crew),
            assumed=measures.assumed(name),
            idle=not value,
        )


def _spread(spread: float, unit: str, crew: Crew) -> str:
    """Return a tolerance."""
    return amounts_said(show_tolerance(spread, unit, crew.units), crew.language)


def _measure(value: object, unit: str, crew: Crew) -> str:
    """Return one measure's value: a yes or no, a word, a count, an amount, or a list of them."""
    if isinstance(value, bool):
        return said("yes" if value else "no", crew)
    if isinstance(value, tuple):
        return _listed([_measure(each, unit, crew) for each in value])
    if isinstance(value, int | float):
        return amounts_said(show(value, unit, crew.units) if unit else show_number(value), crew.language)
    if isinstance(value, date):
        return shown_day(value, crew.language)
    return said(str(value), crew)


def _listed(amounts: list[str]) -> str:
    """Return amounts in a row, a unit that all share said once at the end."""
    parts = [amount.partition("\u00a0") for amount in amounts]
    units = {unit for _, _, unit in parts}
    if len(units) == 1 and "" not in units:
        return f"{', '.join(number for number, _, _ in parts)}\u00a0{units.pop()}"
    return ", ".join(amounts)
