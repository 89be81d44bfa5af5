"""When the doses fall: first day, gap, the autumn dose and the last day, in either hemisphere; and their figures."""

from collections.abc import Iterator
from datetime import date, timedelta

from howto.families.feeding import references as by
from howto.families.feeding import tables
from howto.families.feeding.measures import FeedingMeasures
from howto.families.feeding.parts import doses, figure
from howto.families.feeding.plan import T, dose_amounts, grass_of, spring_part
from howto.languages.form import MONTHS
from howto.model.figure import Cell, Figure, Table
from howto.model.reference import PRACTICE, Reference
from howto.quantities.amounts import Count, Words, bare, dated, month_named, percent
from howto.seasons import Hemisphere, month_here

LONGEST_YEARS = 2  # a start this many years back may still have doses to come


def ways(work: T) -> str:
    """Return what the dates go by: the kind, and for a lawn `warm` or `cool` grass (cool if not known)."""
    m = work.measures
    if m.kind != "lawn":
        return m.kind
    grass = grass_of(work)
    return grass.season if grass else "cool"


def gap_weeks(work: T) -> float:
    """Return the weeks between two doses: as written, else the usual ones."""
    return work.measures.dose_gap_weeks or tables.GAP_WEEKS[ways(work)]


def first_day(work: T, year: int) -> date:
    """Return the day of the first dose of a season that starts in `year`."""
    m = work.measures
    if m.start_month is not None:
        return date(year, MONTHS.index(m.start_month) + 1, 1)
    return _here(tables.STARTS[ways(work)], year, work.crew.hemisphere)


def _here(day: tuple[int, int], year: int, hemisphere: Hemisphere) -> date:
    """Return a northern month and day in `year`, six months on in the south."""
    month, number = day
    return date(year, month_here(month, hemisphere), number)


def season_days(work: T, start: date) -> tuple[date, ...]:
    """Return the days of all doses of the season that begins on `start`; an autumn one comes last."""
    m = work.measures
    gap = timedelta(days=round(gap_weeks(work) * 7))
    days = [start + gap * number for number in range(m.doses)] if spring_part(m) > 0 else []
    if has_autumn(m):
        autumn = _here(tables.AUTUMN, start.year, work.crew.hemisphere)
        days.append(autumn if autumn > start else autumn.replace(year=autumn.year + 1))
    return tuple(days)


def has_autumn(m: FeedingMeasures) -> bool:
    """Tell whether a part of a tree's year waits for autumn."""
    return spring_part(m) < 1


def dose_days(work: T, today: date) -> tuple[date, ...]:
    """Return the doses of the season that is running or comes next: the first whose last dose is not past."""
    years = range(today.year - LONGEST_YEARS, today.year + 2)
    seasons = (season_days(work, first_day(work, year)) for year in years)
    return next(days for days in seasons if days[-1] >= today)


def cut_off(work: T, start: date) -> date | None:
    """Return the last day for nitrogen in the season that `start` falls in; None where no source sets one.

    A season runs from the first month of winter to the last of autumn.
    """
    day = tables.CUT_OFFS.get(ways(work))
    if day is None:
        return None
    north = work.crew.hemisphere == "north"
    winter = 12 if north else 6
    year = start.year + (start.month >= winter)
    return _here(day, year, work.crew.hemisphere)


def spring_days(work: T, days: tuple[date, ...]) -> tuple[date, ...]:
    """Return the days without the autumn dose."""
    return days[:-1] if has_autumn(work.measures) else days


def date_references(work: T) -> tuple[Reference, ...]:
    """Return who says when."""
    m, found = work.measures, []
    if m.start_month is None:
        found.append({"cool": by.COOL_TURF, "warm": by.WARM_TURF}.get(ways(work), by.USUAL_DATES))
    if m.dose_gap_weeks is None and m.doses > 1:
        found.append({"fruit tree": by.MATURE, "warm": by.WARM_TURF}.get(ways(work), PRACTICE))
    found.append({"fruit tree": by.TREE_CUT_OFF, "warm": by.WARM_TURF}.get(ways(work), PRACTICE))
    return tuple(dict.fromkeys(found))


def day_of_year(day: date) -> Words:
    """Return a day of any year: `5 July`."""
    return f"{bare(day.day)} {month_named(day.month)}"


# -- the figures --


def dates(work: T, today: date) -> Iterator[Figure]:
    """Yield the doses of the season that is running or comes next, the next one, and the last day."""
    days, who = dose_days(work, today), date_references(work)
    yield _table(work, days, who)
    due = next(day for day in days if day >= today)
    line = f"the first of the dates from {dated(today, 'plain')} on"
    yield figure("next dose", "Next feed", due, "", line, *who, headline=True, client=True)
    last = cut_off(work, days[0])
    if last is not None:
        trees, lawns = (day_of_year(date(last.year, *tables.CUT_OFFS[way])) for way in ("fruit tree", "warm"))
        line = f"{trees} for fruit trees and {lawns} for warm lawns in the north; six months on in the south"
        said = by.TREE_CUT_OFF if work.measures.kind == "fruit tree" else by.WARM_TURF
        yield figure("last day for nitrogen", "No nitrogen after", last, "", line, said, client=True)


def _table(work: T, days: tuple[date, ...], who: tuple[Reference, ...]) -> Figure:
    m, gap = work.measures, gap_weeks(work)
    lines = [f"first dose {dated(days[0], 'plain')}"]
    if m.doses > 1:
        apart = Count(round(gap * 7), "day", "days")
        lines.append(f"{doses(m.doses)}, {bare(gap)} weeks = {apart} apart")
    if has_autumn(m):
        lines.append(f"{percent(m.autumn_share_percent or 0)} of the year waits for {dated(days[-1], 'plain')}")
    names = [str(at) for at in range(1, len(days) + 1)]
    if has_autumn(m):
        names[-1] = "autumn"
    columns: list[str] = ["Dose", "Day"]
    rows: list[tuple[Cell, ...]] = list(zip(names, days, strict=True))
    amounts, unit = dose_amounts(work, len(days))
    if amounts:
        columns.append("Each tree" if unit == "g" else "Each square metre")
        rows = [(*row, amount) for row, amount in zip(rows, amounts, strict=True)]
    table = Table(columns=tuple(columns), units=("", "", unit)[: len(columns)], rows=tuple(rows))
    said = f"{doses(len(days))}"
    return figure("feeding dates", "Feeding dates", said, "", lines, *who, table=table, client=True)
