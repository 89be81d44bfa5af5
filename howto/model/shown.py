"""Measures and figures as their reader sees them: in the crew's units and in the crew's language."""

from collections.abc import Iterator
from datetime import date
from typing import NamedTuple

from babel import Locale, UnknownLocaleError
from babel.dates import format_date

from howto.model.crew import Crew
from howto.model.figure import Cell, Figure
from howto.model.measures import Measures
from howto.quantities import field_unit, show, show_number, show_tolerance


class Shown(NamedTuple):
    """A measure under the author's key: its value and its tolerance ("" where none was given), as printed.

    An `assumed` one was not written; an `idle` one is a no, a nought or an empty list.
    """

    key: str
    value: str
    tolerance: str
    assumed: bool = False
    idle: bool = False


def locale_of(language: str) -> Locale:
    """Return the locale of a language tag such as `en-NZ`; English where it is not known."""
    for tag in (language, language.partition("-")[0]):
        try:
            return Locale.parse(tag, sep="-")
        except (UnknownLocaleError, ValueError):
            continue
    return Locale("en", "GB")


def shown_day(day: date, language: str) -> str:
    """Return a date in words, the year included: `2 June 2027`."""
    locale = locale_of("en-GB" if language == "en" else language)
    return format_date(day, format="long", locale=locale)


def shown_cell(cell: Cell, unit: str, crew: Crew, digits: int | None = None) -> str:
    """Return a value in the crew's units; a date in the crew's language; a word as it is."""
    if isinstance(cell, date):
        return shown_day(cell, crew.language)
    if isinstance(cell, str):
        return cell
    if unit:
        return show(cell, unit, crew.units, digits)
    return show_number(cell) if digits is None else show_number(cell, digits)


def shown(figure: Figure, crew: Crew) -> str:
    """Return a figure's value as its reader sees it."""
    return shown_cell(figure.value, figure.unit, crew, figure.digits)


def shown_measures(measures: Measures, crew: Crew) -> Iterator[Shown]:
    """Return the measures that hold a value, in the family's order, under the author's keys."""
    for name, value in measures.given().items():
        key, unit = field_unit(name)
        spread = measures.tolerance(name)
        yield Shown(
            key=key,
            value=_measure(value, unit or "", crew),
            tolerance=show_tolerance(spread, unit or "", crew.units) if spread is not None else "",
            assumed=measures.assumed(name),
            idle=not value,
        )


def _measure(value: object, unit: str, crew: Crew) -> str:
    """Return one measure's value: a yes or no, a word, a count, an amount, or a list of them."""
    if isinstance(value, bool):
        return "yes" if value else "no"
    if isinstance(value, tuple):
        return _listed([_measure(each, unit, crew) for each in value])
    if isinstance(value, int | float):
        return show(value, unit, crew.units) if unit else show_number(value)
    if isinstance(value, date):
        return shown_day(value, crew.language)
    return str(value)


def _listed(amounts: list[str]) -> str:
    """Return amounts in a row, a unit that all share said once at the end."""
    parts = [amount.partition("\u00a0") for amount in amounts]
    units = {unit for _, _, unit in parts}
    if len(units) == 1 and "" not in units:
        return f"{', '.join(number for number, _, _ in parts)}\u00a0{units.pop()}"
    return ", ".join(amounts)
