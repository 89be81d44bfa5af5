"""The figures of a mow, in printing order, each with working a pencil can follow."""

from collections.abc import Iterator
from datetime import date, timedelta
from math import ceil, floor, log

from howto.families.mowing import formulae
from howto.families.mowing import references as by
from howto.families.mowing.lawn import (
    first_cut,
    grass_of,
    growth,
    in_shade,
    range_of,
    source_of,
    standing,
    wait_days,
    way_down,
)
from howto.families.mowing.measures import MowingMeasures
from howto.model.figure import Figure, Table
from howto.model.reference import Reference
from howto.model.work import Work
from howto.quantities import show_number as num
from howto.quantities.amounts import bare, dated, mm, percent, qty

T = Work[MowingMeasures]
LEAF_SHARE = 0.03  # see references.DENSITY
WALK_KM_PER_H, OVERLAP = 4.0, 0.1  # see references.WALK
GROWING_MONTHS = 8  # see references.SEASON
ROOTING_WEEKS = 3.0  # see references.NEW_TURF


def figures(work: T, today: date) -> Iterator[Figure]:
    """Yield the figures of one lawn; `today` is the day of the cut."""
    m = work.measures
    yield _mow_at(m)
    yield _todays_cut(m)
    yield from _stages(m, today)
    yield from _next_cut(work, today)
    yield from _raised(work)
    yield from _clippings(m)
    yield from _time(m)
    yield from _new_turf(m, today)


def _mow_at(m: MowingMeasures) -> Figure:
    at = formulae.mow_at_mm(m.set_height_mm)
    return Figure(
        name="mow at",
        label="Mow when it reaches",
        value=at,
        unit="mm",
        working=(f"{mm(m.set_height_mm, 4)} x 1.5 = {mm(at, 4)}",),
        references=(by.UC_AMOUNT, by.CAROLINA),
        headline=len(way_down(m).heights) < 2,  # else the cuts to come down are what matters
        client=True,
    )


def _todays_cut(m: MowingMeasures) -> Figure:
    stands, cut = standing(m), first_cut(m)
    if cut < stands:
        share = formulae.share_removed(stands, cut)
        taken = f"cut to {mm(cut, 4)}: ({bare(stands, 4)} - {bare(cut, 4)}) / {bare(stands, 4)} = {percent(share * 100)} off"
    else:
        taken = f"cut to {mm(cut, 4)}: it stands no higher, so nothing comes off"
    return Figure(
        name="today's cut",
        label="Today, cut to",
        value=cut,
        unit="mm",
        working=(
            f"stands {mm(stands, 4)}; a third is {mm(stands / 3, 4)}, so no lower than "
            f"{mm(formulae.lowest_cut_mm(stands), 4)}",
            taken,
        ),
        references=(by.UC_AMOUNT, by.CORNELL),
        headline=True,
    )


def _stages(m: MowingMeasures, today: date) -> Iterator[Figure]:
    down, wait = way_down(m), wait_days(m)
    if len(down.heights) < 2:
        return
    befores = (standing(m), *(height + down.between_mm for height in down.heights))
    rows = tuple(
        (f"cut {at + 1}", today + timedelta(days=ceil(wait * at)), befores[at], height)
        for at, height in enumerate(down.heights)
    )
    yield Figure(
        name="cuts to come down",
        label="Cuts to come down",
        value=float(len(down.heights)),
        working=tuple(_stage_lines(m)),
        references=(by.UC_AMOUNT, by.WAIT),
        table=Table(columns=("Cut", "Date", "From", "To"), units=("", "", "mm", "mm"), rows=rows),
        headline=True,
        client=True,
        digits=2,
    )


def _stage_lines(m: MowingMeasures) -> Iterator[str]:
    """Yield the way down, a line a cut: two thirds of what stands, and no lower than the set height."""
    stands, kept, wait, down = standing(m), m.set_height_mm, wait_days(m), way_down(m)
    exact = log(stands / kept) / log(1.5)
    yield (
        f"growth left out: ln({bare(stands, 4)} / {bare(kept, 4)}) / ln 1.5 = {bare(exact)}, rounded up = "
        f"{formulae.cuts_to_reach(stands, kept)} cuts"
    )
    if m.growth_mm_per_day is None:
        yield f"{in_days(wait)} between two cuts; write `growth` to count what grows back in them"
    else:
        back = f"{mm(m.growth_mm_per_day, 3)} a day x {in_days(wait)} = {mm(m.growth_mm_per_day * wait, 3)}"
        much = f", half of {mm(kept, 4)} or more: it would never come down, so it is left out"
        yield f"{back} grows back between two cuts{much if down.never else ''}"
    before = num(stands, 4)
    for at, height in enumerate(down.heights, 1):
        lowest = formulae.lowest_cut_mm(stands)
        reach = f"cut {at}: {before} x 2/3 = {mm(lowest, 4)}"
        yield reach if abs(lowest - height) < formulae.DUST_MM else f"{reach}; cut to {mm(height, 4)}"
        stands = height + down.between_mm
        before = f"({bare(height, 4)} + {bare(down.between_mm, 4)})" if down.between_mm else num(height, 4)


def _next_cut(work: T, today: date) -> Iterator[Figure]:
    m = work.measures
    a_day, source = growth(work)
    days, due_at = formulae.days_between_cuts(m.set_height_mm, a_day), formulae.mow_at_mm(m.set_height_mm)
    yield Figure(
        name="days between cuts",
        label="Days between cuts",
        value=days,
        unit="d",
        working=(f"({bare(due_at, 4)} - {bare(m.set_height_mm, 4)}) mm / {mm(a_day, 3)} a day = {in_days(days)}",),
        references=(by.UC_AMOUNT, by.CORNELL, source),
        client=True,
        digits=2,
    )
    if len(way_down(m).heights) > 1:
        wait, why = wait_days(m), f"on the way down, {in_days(wait_days(m))} between two cuts"
        references: tuple[Reference, ...] = (by.WAIT,)
    else:
        left = min(first_cut(m), standing(m))
        wait = max(0.0, due_at - left) / a_day
        why = f"from {mm(left, 4)} to {mm(due_at, 4)} at {mm(a_day, 3)} a day: {in_days(wait)}"
        references = (by.UC_AMOUNT, source)
    rest = max(1, floor(wait + 1e-9))
    due = today + timedelta(days=rest)
    yield Figure(
        name="next cut",
        label="Next cut due",
        value=due,
        working=(why, f"{dated(today, 'plain')} + {in_days(rest)} = {dated(due, 'plain')}"),
        references=references,
        client=True,
    )
    months = m.growing_months or GROWING_MONTHS
    cuts = formulae.cuts_a_season(months, max(days, 1.0))
    yield Figure(
        name="cuts a season",
        label="Cuts a season",
        value=float(ceil(cuts - 1e-9)),
        working=(
            f"{months} {'month' if months == 1 else 'months'} x 30.44 days / {in_days(max(days, 1.0))} = {bare(cuts)}, "
            "rounded up",
        ),
        references=(source,) if m.growing_months else (source, by.SEASON),
        digits=3,
    )


def in_days(days: float) -> str:
    """Return a number of days in words: `1 day`, `7.5 days`."""
    return f"{bare(days)} {'day' if num(days) == '1' else 'days'}"


def _raised(work: T) -> Iterator[Figure]:
    m, grass, row = work.measures, grass_of(work), range_of(work)
    shade = in_shade(work)
    if grass is None or row is None or shade is None or not (m.shade or m.drought):
        return
    if m.drought:
        height = max(m.set_height_mm, row.high_mm)
        why = f"short of water: {mm(row.high_mm, 4)}, the top of the range"
        references = (by.UC_SPECIAL, source_of(grass, row))
    else:
        height = max(m.set_height_mm, shade.least_mm)
        why = f"in shade: {shade.working}"
        references = (by.SHADE, source_of(grass, shade.row or row))
    yield Figure(
        name="raised height",
        label="Set height for now",
        value=height,
        unit="mm",
        working=(f"{why}; kept at {mm(m.set_height_mm, 4)}, so {mm(height, 4)}",),
        references=references,
        client=True,
    )


def _clippings(m: MowingMeasures) -> Iterator[Figure]:
    if m.area_m2 is None:
        return
    off = max(0.0, standing(m) - first_cut(m))
    litres = formulae.clippings_l(m.area_m2, off, LEAF_SHARE)
    yield Figure(
        name="clippings",
        label="Clippings, loose",
        value=litres,
        unit="L",
        working=(f"{qty(m.area_m2, 'm²', 4)} x {mm(off, 3)} x {bare(LEAF_SHARE)} = {qty(litres, 'L', 3)}",),
        references=(by.DENSITY,),
        digits=2,
    )


def _time(m: MowingMeasures) -> Iterator[Figure]:
    if m.area_m2 is None or m.cutting_width_mm is None:
        return
    speed = m.walking_speed_km_per_h or WALK_KM_PER_H
    minutes = formulae.mowing_minutes(m.area_m2, m.cutting_width_mm, speed, OVERLAP)
    yield Figure(
        name="mowing time",
        label="Mowing time",
        value=minutes,
        unit="min",
        working=(
            f"{qty(m.area_m2, 'm²', 4)} / ({qty(m.cutting_width_mm / 1000, 'm', 3)} x 0.9, a tenth mown twice) = "
            f"{qty(m.area_m2 / (m.cutting_width_mm / 1000 * 0.9), 'm', 3)} walked",
            f"at {qty(speed, 'km/h', 3)}, {qty(speed * 1000 / 60, 'm', 3)} a minute: {qty(minutes, 'min', 3)}, turns left out",
        ),
        references=(by.WALK,),
        digits=2,
    )


def _new_turf(m: MowingMeasures, today: date) -> Iterator[Figure]:
    if m.turf_age_weeks is None or m.turf_age_weeks >= ROOTING_WEEKS:
        return
    due = today + timedelta(days=ceil((ROOTING_WEEKS - m.turf_age_weeks) * 7))
    yield Figure(
        name="first cut of new turf",
        label="First cut of new turf",
        value=due,
        working=(
            f"{bare(ROOTING_WEEKS)} weeks to root - {bare(m.turf_age_weeks)} weeks laid, from {dated(today, 'plain')}",
        ),
        references=(by.NEW_TURF,),
        client=True,
    )
