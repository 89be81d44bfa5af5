"""When a care task falls due after a visit."""

from calendar import monthrange
from datetime import date, timedelta
from typing import NamedTuple

from howto.model.technique import When
from howto.seasons import Hemisphere, next_in_months, season_months


class Due(NamedTuple):
    """When a task may start and when it should be done; None for a task that is always so, or has no end."""

    start: date | None
    end: date | None


def due(when: When, visited: date, next_visit: date | None, hemisphere: Hemisphere) -> Due:
    """Return when a task falls due, counted from the day of the visit.

    `within` 2 days ends on the second day after; `after` 6 weeks starts on the 42nd; a season or month is the
    next one that has not ended; `every` starts one interval on.
    """
    if when.kind == "within":
        return Due(visited, visited + timedelta(days=when.days))
    if when.kind == "after":
        return Due(visited + timedelta(days=when.days), None)
    if when.kind == "every":
        end = visited + timedelta(days=when.until_days) if when.until_days is not None else None
        return Due(visited + timedelta(days=when.days), end)
    if when.kind == "next visit":
        return Due(next_visit, next_visit)
    months = months_named(when, hemisphere)
    return next_run(visited, months) if months else Due(None, None)


def months_named(when: When, hemisphere: Hemisphere) -> tuple[int, ...]:
    """Return the months a season, a part of one, or a month names, in the order they fall."""
    if when.month is not None:
        return (when.month,)
    if when.season is None:
        return ()
    months = season_months(when.season, hemisphere)
    return (months[("early", "mid", "late").index(when.part)],) if when.part else months


def next_run(visited: date, months: tuple[int, ...]) -> Due:
    """Return the first and last day of the next run of months that has not ended."""
    start = next_in_months(visited, months)
    year, month = start.year, start.month
    while month % 12 + 1 in months and len(months) < 12:
        year, month = (year + 1, 1) if month == 12 else (year, month + 1)
    return Due(start, date(year, month, monthrange(year, month)[1]))
