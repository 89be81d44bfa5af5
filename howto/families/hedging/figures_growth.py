"""The figures of a growing hedge: shoots, seasons, gaps, plants and the next cut."""

from collections.abc import Iterator
from datetime import date
from math import ceil

from howto.families.hedging import formulae
from howto.families.hedging import references as by
from howto.families.hedging.growing import Rise, cut_back, cut_months, growth, next_cut, rises, side_growth
from howto.families.hedging.measures import HedgingMeasures
from howto.model.figure import Figure, Table
from howto.model.reference import GEOMETRY, PRACTICE, from_memory
from howto.model.work import Work
from howto.quantities.amounts import bare, dated, mm, percent

T = Work[HedgingMeasures]


def growing_figures(work: T, today: date) -> Iterator[Figure]:
    """Yield what growth decides: the rise season by season, the closing of gaps, plants, and the next cut."""
    if work.measures.job == "thicken":
        yield from _rise(work, today)
    yield from _gaps(work)
    yield from _plants(work.measures)
    yield from _next_cut(work, today)


def _rise(work: T, today: date) -> Iterator[Figure]:
    m = work.measures
    a_year, source = growth(work)
    cuts, back = m.cuts_a_year or 1, cut_back(work)
    gain = formulae.gain_mm(a_year / cuts, back)
    yield Figure(
        name="height gained",
        label="Height gained from cut to cut",
        value=gain,
        unit="mm",
        working=(
            f"growth between cuts: {mm(a_year, 3)} a year / {cuts} = {mm(a_year / cuts, 3)}",
            f"less {percent(back * 100)} cut back: {bare(a_year / cuts)} x (1 - {bare(back)}) = {mm(gain, 3)}",
        ),
        references=(source, by.ARIZONA, by.TRIMMING),
        headline=True,
    )
    found = rises(work, today)
    if not found:
        return
    more = found[1:]
    last = found[-1]
    yield Figure(
        name="cuts to finished height",
        label="Cuts still to come up to the finished height",
        value=float(len(more)),
        working=(
            *(f"cut {at}: stands {mm(each.stands_mm, 5)}, cut to {mm(each.cut_mm, 5)}"
              for at, each in enumerate(more, 1)),
        ),
        references=(source, PRACTICE),
        digits=2,
    )  # fmt: skip
    yield Figure(
        name="seasons to finished height",
        label="Seasons to the finished height",
        value=float(ceil(len(more) / cuts)),
        working=(f"{len(more)} cuts / {cuts} a year, a part of a year counts as one = {ceil(len(more) / cuts)}",),
        references=(source, PRACTICE),
        digits=2,
        client=True,
    )
    yield Figure(
        name="finished height reached",
        label="At its finished height by",
        value=last.day,
        working=tuple(f"{dated(each.day, 'plain')}: {mm(each.cut_mm, 5)}" for each in found),
        references=(source, from_memory("shoots grow from March to October in the north")),
        client=True,
    )
    yield _shoots(m, found)


def _shoots(m: HedgingMeasures, found: tuple[Rise, ...]) -> Figure:
    first = m.shoots or 1
    cuts = sum(each.stands_mm > each.cut_mm + formulae.DUST for each in found)
    doubled = " x ".join(["2"] * cuts)
    return Figure(
        name="shoots on a plant",
        label="Shoots on a plant in the end",
        value=float(found[-1].shoots),
        working=(
            "a cut shoot makes two, those two make four",
            f"{cuts} cuts: {first} x {doubled} = {found[-1].shoots}",
        ),
        references=(PRACTICE,),
        digits=9,
        table=Table(
            columns=("Cut on", "Stands", "Cut to", "Shoots after"),
            units=("", "mm", "mm", ""),
            rows=tuple((each.day, each.stands_mm, each.cut_mm, float(each.shoots)) for each in found),
        ),
    )


def _gaps(work: T) -> Iterator[Figure]:
    m = work.measures
    if m.spacing_mm is None or m.plant_width_mm is None:
        return
    gap = formulae.gap_mm(m.spacing_mm, m.plant_width_mm)
    a_side, source = side_growth(work)
    years = formulae.years_to_close(gap, a_side)
    seasons = ceil(years - 1e-9)
    yield Figure(
        name="seasons to close",
        label="Seasons to close the gaps",
        value=float(seasons),
        working=(
            f"gap: {bare(m.spacing_mm, 4)} - {bare(m.plant_width_mm, 4)} = {mm(gap, 4)}",
            f"two neighbours at {mm(a_side, 3)} a side each: {bare(gap, 4)} / (2 x {bare(a_side)}) = {bare(years)}",
            f"a part of a season counts as one = {seasons}",
        ),
        references=(GEOMETRY, source),
        digits=2,
        client=True,
    )


def _plants(m: HedgingMeasures) -> Iterator[Figure]:
    if m.spacing_mm is None:
        return
    per_metre = formulae.plants_per_metre(m.spacing_mm, m.row_count)
    yield Figure(
        name="plants a metre",
        label="Plants a metre",
        value=per_metre,
        unit="/m",
        working=(f"{m.row_count} x 1000 / {bare(m.spacing_mm, 4)} = {bare(per_metre)} plants a metre",),
        references=(by.SPACING, by.GRANT),
    )
    if m.row_count > 1:
        gap = m.gap_between_rows_mm
        near = formulae.neighbour_mm(m.spacing_mm, gap)
        yield Figure(
            name="plant to plant",
            label="Plant to plant across the rows",
            value=near,
            unit="mm",
            working=(
                f"rows {mm(gap, 3)} apart, staggered by half: {bare(m.spacing_mm, 4)} / 2 = {mm(m.spacing_mm / 2, 3)}",
                f"√({bare(m.spacing_mm / 2)}² + {bare(gap)}²) = {mm(near, 3)}",
            ),
            references=(GEOMETRY, by.GRANT),
        )
    if m.hedge_length_m is None:
        return
    count = formulae.plants_needed(m.hedge_length_m * 1000, m.spacing_mm, m.row_count)
    in_row = count // m.row_count
    yield Figure(
        name="plants needed",
        label="Plants for the length",
        value=float(count),
        working=(
            f"{bare(m.hedge_length_m * 1000, 6)} / {bare(m.spacing_mm, 4)} = "
            f"{bare(m.hedge_length_m * 1000 / m.spacing_mm)}, rounded up to {in_row} a row",
            f"{m.row_count} x {in_row} = {count}; the end plants stand {mm(m.spacing_mm / 2, 3)} in",
        ),
        references=(by.END_PLANTS, by.GRANT),
        digits=9,
    )


def _next_cut(work: T, today: date) -> Iterator[Figure]:
    m = work.measures
    a_year, source = growth(work)
    wanted = a_year / m.cuts_a_year if m.cuts_a_year else _usual(work)
    due = next_cut(work, today, wanted)
    months, said = cut_months(work)
    yield Figure(
        name="next cut",
        label="Next cut due",
        value=due,
        working=(
            f"it grows {mm(a_year, 3)} in a year, from spring to autumn",
            f"{mm(wanted, 3)} more has grown, in a month it may be cut, by {dated(due, 'plain')}"
            if months
            else f"{mm(wanted, 3)} more has grown by {dated(due, 'plain')}",
        ),
        references=(source, *((said,) if said else ()), from_memory("shoots grow from March to October in the north")),
        headline=True,
        client=True,
    )


def _usual(work: T) -> float:
    """Return the growth between two cuts: what this one takes off the top, or else a third of a year's."""
    m = work.measures
    if m.standing_height_mm is not None and m.standing_height_mm > m.cut_mm:
        return min(m.standing_height_mm - m.cut_mm, growth(work)[0])
    return growth(work)[0] / 3
