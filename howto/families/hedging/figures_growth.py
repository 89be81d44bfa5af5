"""The figures of a growing hedge: shoots, seasons, gaps, plants and the next cut."""

from collections.abc import Iterator
from datetime import date
from math import ceil

from howto.families.hedging import formulae
from howto.families.hedging import references as by
from howto.families.hedging.growing import Rise, cut_back, cut_months, growth, next_cut, rises, side_growth
from howto.families.hedging.measures import HedgingMeasures
from howto.families.hedging.parts import figure
from howto.model.figure import Figure, Table
from howto.model.reference import GEOMETRY, PRACTICE
from howto.model.work import Work
from howto.quantities.amounts import Count, Name, bare, dated, mm, percent

T = Work[HedgingMeasures]

USUAL_SHARE = 1 / 3  # ours: of a year's growth, between two cuts where nothing else tells


def growing_figures(work: T, today: date) -> Iterator[Figure]:
    """Yield what growth decides: the rise season by season, the closing of gaps, plants, and the next cut."""
    if work.measures.job == "thicken":
        yield from _gained(work)
        if found := rises(work, today):
            yield from _rise(work, found)
    yield from _gaps(work)
    yield from _plants(work.measures)
    yield _next_cut(work, today)


def _gained(work: T) -> Iterator[Figure]:
    (a_year, source), cuts, back = growth(work), work.measures.cuts_a_year or 1, cut_back(work)
    a_cut = a_year / cuts
    gain = formulae.gain_mm(a_cut, back)
    lines = (
        f"growth between cuts: {mm(a_year, 3)} a year / {bare(cuts)} = {mm(a_cut, 3)}",
        f"less {percent(back * 100)} cut back: {bare(a_cut)} x (1 - {bare(back)}) = {mm(gain, 3)}",
    )
    who = (source, by.ARIZONA, by.TRIMMING)
    yield figure("height gained", "Height gained from cut to cut", gain, "mm", lines, *who, headline=True)


def _rise(work: T, found: tuple[Rise, ...]) -> Iterator[Figure]:
    (_, source), cuts, more = growth(work), work.measures.cuts_a_year or 1, found[1:]
    lines = [
        f"cut {bare(at)}: stands {mm(each.stands_mm, 5)}, cut to {mm(each.cut_mm, 5)}"
        for at, each in enumerate(more, 1)
    ]
    label = "Cuts still to come up to the finished height"
    yield figure("cuts to finished height", label, float(len(more)), "", lines, source, PRACTICE, digits=2)
    seasons = ceil(len(more) / cuts)
    line = f"{Count(len(more), 'cut', 'cuts')} / {bare(cuts)} a year, a part of a year counts as one = {bare(seasons)}"
    name, label = "seasons to finished height", "Seasons to the finished height"
    yield figure(name, label, float(seasons), "", [line], source, PRACTICE, digits=2, client=True)
    lines = [f"{dated(each.day, 'plain')}: {mm(each.cut_mm, 5)}" for each in found]
    label = "At its finished height by"
    yield figure("finished height reached", label, found[-1].day, "", lines, source, by.SHOOTS, client=True)
    yield _shoots(work.measures.shoots or 1, found)


def _shoots(first: int, found: tuple[Rise, ...]) -> Figure:
    cuts = sum(each.stands_mm > each.cut_mm + formulae.DUST for each in found)
    doubled = Name(" x ".join([str(first), *["2"] * cuts]))
    lines = (
        "a cut shoot makes two, those two make four",
        f"{Count(cuts, 'cut', 'cuts')}: {doubled} = {bare(found[-1].shoots)}",
    )
    table = Table(
        columns=("Cut on", "Stands", "Cut to", "Shoots after"),
        units=("", "mm", "mm", ""),
        rows=tuple((each.day, each.stands_mm, each.cut_mm, float(each.shoots)) for each in found),
    )
    label, count = "Shoots on a plant in the end", float(found[-1].shoots)
    return figure("shoots on a plant", label, count, "", lines, PRACTICE, digits=9, table=table)


def _gaps(work: T) -> Iterator[Figure]:
    m, (a_side, source) = work.measures, side_growth(work)
    if m.spacing_mm is None or m.plant_width_mm is None:
        return
    gap = formulae.gap_mm(m.spacing_mm, m.plant_width_mm)
    years = formulae.years_to_close(gap, a_side)
    seasons = ceil(years - formulae.DUST)
    lines = (
        f"gap: {bare(m.spacing_mm, 4)} - {bare(m.plant_width_mm, 4)} = {mm(gap, 4)}",
        f"two neighbours at {mm(a_side, 3)} a side each: {bare(gap, 4)} / (2 x {bare(a_side)}) = {bare(years)}",
        f"a part of a season counts as one = {bare(seasons)}",
    )
    label = "Seasons to close the gaps"
    yield figure("seasons to close", label, float(seasons), "", lines, GEOMETRY, source, digits=2, client=True)


def _plants(m: HedgingMeasures) -> Iterator[Figure]:
    if m.spacing_mm is None:
        return
    rows, every, half = bare(m.row_count), bare(m.spacing_mm, 4), m.spacing_mm / 2
    per_metre = formulae.plants_per_metre(m.spacing_mm, m.row_count)
    line = f"{rows} x 1000 / {every} = {bare(per_metre)} plants a metre"
    yield figure("plants a metre", "Plants a metre", per_metre, "/m", [line], by.SPACING, by.GRANT)
    if m.row_count > 1:
        gap = m.gap_between_rows_mm
        near = formulae.neighbour_mm(m.spacing_mm, gap)
        lines = (
            f"rows {mm(gap, 3)} apart, staggered by half: {every} / 2 = {mm(half, 3)}",
            f"√({bare(half)}² + {bare(gap)}²) = {mm(near, 3)}",
        )
        yield figure("plant to plant", "Plant to plant across the rows", near, "mm", lines, GEOMETRY, by.GRANT)
    if m.hedge_length_m is not None:
        long = m.hedge_length_m * 1000
        count = formulae.plants_needed(long, m.spacing_mm, m.row_count)
        a_row = bare(count // m.row_count)
        lines = (
            f"{bare(long, 6)} / {every} = {bare(long / m.spacing_mm)}, rounded up to {a_row} a row",
            f"{rows} x {a_row} = {bare(count)}; the end plants stand {mm(half, 3)} in",
        )
        yield figure(
            "plants needed", "Plants for the length", float(count), "", lines, by.END_PLANTS, by.GRANT, digits=9
        )


def _next_cut(work: T, today: date) -> Figure:
    m, (a_year, source), (months, said) = work.measures, growth(work), cut_months(work)
    if m.cuts_a_year:
        wanted = a_year / m.cuts_a_year
    elif m.standing_height_mm is not None and m.standing_height_mm > m.cut_mm:
        wanted = min(m.standing_height_mm - m.cut_mm, a_year)
    else:
        wanted = a_year * USUAL_SHARE
    due = next_cut(work, today, wanted)
    waits = ", in a month it may be cut," if months else ""
    lines = (
        f"it grows {mm(a_year, 3)} in a year, from spring to autumn",
        f"{mm(wanted, 3)} more has grown{waits} by {dated(due, 'plain')}",
    )
    who = (source, *([said] if said else []), by.SHOOTS)
    return figure("next cut", "Next cut due", due, "", lines, *who, headline=True, client=True)
