"""The dates of a feeding: each dose of the season, the next one, and the last day for nitrogen."""

from collections.abc import Iterator
from datetime import date

from howto.families.feeding import plan, season
from howto.families.feeding.references import TREE_CUT_OFF, USUAL_DATES, WARM_TURF
from howto.model.figure import Figure, Table
from howto.model.reference import Reference
from howto.quantities.amounts import bare, dated, percent

T = plan.T


def dates(work: T, today: date) -> Iterator[Figure]:
    """Yield the doses of the season that is running or comes next, the next one, and the last day."""
    days = season.dose_days(work, today)
    references = season.date_references(work) or (USUAL_DATES,)
    yield _table(work, days, references)
    yield Figure(
        name="next dose",
        label="Next feed",
        value=next(day for day in days if day >= today),
        working=(f"the first of the dates from {dated(today, 'plain')} on",),
        references=references,
        headline=True,
        client=True,
    )
    last = season.cut_off(work, days[0])
    if last is not None:
        yield Figure(
            name="last day for nitrogen",
            label="No nitrogen after",
            value=last,
            working=("1 July for fruit trees and 15 August for warm lawns in the north; six months on in the south",),
            references=(TREE_CUT_OFF if work.measures.kind == "fruit tree" else WARM_TURF,),
            client=True,
        )


def _table(work: T, days: tuple[date, ...], references: tuple[Reference, ...]) -> Figure:
    m, unit = work.measures, _unit(work)
    gap = season.gap_weeks(work)
    lines = [f"first dose {days[0].isoformat()}"]
    if m.doses > 1:
        lines.append(f"{m.doses} doses, {bare(gap)} weeks = {round(gap * 7)} days apart")
    if season.has_autumn(m):
        lines.append(f"{percent(m.autumn_share_percent or 0)} of the year waits for {days[-1].isoformat()}")
    columns: tuple[str, ...] = ("Dose", "Day")
    units: tuple[str, ...] = ("", "")
    amounts = _amounts(work, len(days))
    rows: tuple[tuple[float | date | str, ...], ...] = tuple(
        (_named(work, at, days), day) for at, day in enumerate(days)
    )
    if amounts:
        columns, units = (*columns, unit[0]), (*units, unit[1])
        rows = tuple((*row, amount) for row, amount in zip(rows, amounts, strict=True))
    return Figure(
        name="feeding dates",
        label="Feeding dates",
        value=f"{len(days)} {'dose' if len(days) == 1 else 'doses'}",
        working=tuple(lines),
        references=references,
        table=Table(columns=columns, units=units, rows=rows),
        client=True,
    )


def _named(work: T, at: int, days: tuple[date, ...]) -> str:
    """Return what a dose is called: its number, or `autumn`."""
    autumn = season.has_autumn(work.measures) and at == len(days) - 1
    return "autumn" if autumn else str(at + 1)


def _unit(work: T) -> tuple[str, str]:
    return ("Each tree", "g") if work.measures.kind == "fruit tree" else ("Each square metre", "g/m2")


def _amounts(work: T, count: int) -> tuple[float, ...]:
    """Return the product of each dose, or nothing where none is known."""
    m = work.measures
    if m.kind == "fruit tree":
        each = plan.dose_g(work)
        if each is None:
            return ()
        autumn = (plan.autumn_g(work),) if season.has_autumn(m) else ()
        return (each,) * (count - len(autumn)) + autumn
    found = plan.rate(m) if m.kind in {"lawn", "bed"} else None
    return () if found is None else (found.product,) * count
