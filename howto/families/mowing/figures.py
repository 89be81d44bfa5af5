"""The figures of a mow, in printing order, each with working a pencil can follow."""

from collections.abc import Iterator
from datetime import date, timedelta
from math import ceil, floor, log

from howto.families.mowing import formulae
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
from howto.families.mowing.references import (
    CAROLINA,
    CORNELL,
    DENSITY,
    NEW_TURF,
    SEASON,
    SHADE,
    UC_AMOUNT,
    UC_SPECIAL,
    WAIT,
    WALK,
)
from howto.model.figure import Figure, Table
from howto.model.reference import Reference
from howto.model.work import Work
from howto.quantities import show_number as num

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
        working=(f"{num(m.set_height_mm, 4)} mm x 1.5 = {num(at, 4)} mm",),
        references=(UC_AMOUNT, CAROLINA),
        headline=len(way_down(m).heights) < 2,  # else the cuts to come down are what matters
        client=True,
    )


def _todays_cut(m: MowingMeasures) -> Figure:
    stands, cut = standing(m), first_cut(m)
    if cut < stands:
        share = formulae.share_removed(stands, cut)
        taken = (
            f"cut to {num(cut, 4)} mm: ({num(stands, 4)} - {num(cut, 4)}) / {num(stands, 4)} = {num(share * 100)} % off"
        )
    else:
        taken = f"cut to {num(cut, 4)} mm: it stands no higher, so nothing comes off"
    return Figure(
        name="today's cut",
        label="Today, cut to",
        value=cut,
        unit="mm",
        working=(
            f"stands {num(stands, 4)} mm; a third is {num(stands / 3, 4)} mm, so no lower than "
            f"{num(formulae.lowest_cut_mm(stands), 4)} mm",
            taken,
        ),
        references=(UC_AMOUNT, CORNELL),
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
        references=(UC_AMOUNT, WAIT),
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
        f"growth left out: ln({num(stands, 4)} / {num(kept, 4)}) / ln 1.5 = {num(exact)}, rounded up = "
        f"{formulae.cuts_to_reach(stands, kept)} cuts"
    )
    if m.growth_mm_per_day is None:
        yield f"{in_days(wait)} between two cuts; write `growth` to count what grows back in them"
    else:
        back = f"{num(m.growth_mm_per_day)} mm a day x {in_days(wait)} = {num(m.growth_mm_per_day * wait)} mm"
        much = f", half of {num(kept, 4)} mm or more: it would never come down, so it is left out"
        yield f"{back} grows back between two cuts{much if down.never else ''}"
    before = num(stands, 4)
    for at, height in enumerate(down.heights, 1):
        lowest = formulae.lowest_cut_mm(stands)
        reach = f"cut {at}: {before} x 2/3 = {num(lowest, 4)} mm"
        yield reach if abs(lowest - height) < formulae.DUST_MM else f"{reach}; cut to {num(height, 4)} mm"
        stands = height + down.between_mm
        before = f"({num(height, 4)} + {num(down.between_mm, 4)})" if down.between_mm else num(height, 4)


def _next_cut(work: T, today: date) -> Iterator[Figure]:
    m = work.measures
    a_day, source = growth(work)
    days, due_at = formulae.days_between_cuts(m.set_height_mm, a_day), formulae.mow_at_mm(m.set_height_mm)
    yield Figure(
        name="days between cuts",
        label="Days between cuts",
        value=days,
        unit="d",
        working=(f"({num(due_at, 4)} - {num(m.set_height_mm, 4)}) mm / {num(a_day)} mm a day = {in_days(days)}",),
        references=(UC_AMOUNT, CORNELL, source),
        client=True,
        digits=2,
    )
    if len(way_down(m).heights) > 1:
        wait, why = wait_days(m), f"on the way down, {in_days(wait_days(m))} between two cuts"
        references: tuple[Reference, ...] = (WAIT,)
    else:
        left = min(first_cut(m), standing(m))
        wait = max(0.0, due_at - left) / a_day
        why = f"from {num(left, 4)} mm to {num(due_at, 4)} mm at {num(a_day)} mm a day: {in_days(wait)}"
        references = (UC_AMOUNT, source)
    rest = max(1, floor(wait + 1e-9))
    due = today + timedelta(days=rest)
    yield Figure(
        name="next cut",
        label="Next cut due",
        value=due,
        working=(why, f"{today.isoformat()} + {in_days(rest)} = {due.isoformat()}"),
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
            f"{months} {'month' if months == 1 else 'months'} x 30.44 days / {in_days(max(days, 1.0))} = {num(cuts)}, "
            "rounded up",
        ),
        references=(source,) if m.growing_months else (source, SEASON),
        digits=3,
    )


def in_days(days: float) -> str:
    """Return a number of days in words: `1 day`, `7.5 days`."""
    return f"{num(days)} {'day' if num(days) == '1' else 'days'}"


def _raised(work: T) -> Iterator[Figure]:
    m, grass, row = work.measures, grass_of(work), range_of(work)
    shade = in_shade(work)
    if grass is None or row is None or shade is None or not (m.shade or m.drought):
        return
    if m.drought:
        height = max(m.set_height_mm, row.high_mm)
        why = f"short of water: {num(row.high_mm, 4)} mm, the top of the range"
        references = (UC_SPECIAL, source_of(grass, row))
    else:
        height = max(m.set_height_mm, shade.least_mm)
        why = f"in shade: {shade.working}"
        references = (SHADE, source_of(grass, shade.row or row))
    yield Figure(
        name="raised height",
        label="Set height for now",
        value=height,
        unit="mm",
        working=(f"{why}; kept at {num(m.set_height_mm, 4)} mm, so {num(height, 4)} mm",),
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
        working=(f"{num(m.area_m2, 4)} m² x {num(off)} mm x {num(LEAF_SHARE)} = {num(litres)} L",),
        references=(DENSITY,),
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
            f"{num(m.area_m2, 4)} m² / ({num(m.cutting_width_mm / 1000)} m x 0.9, a tenth mown twice) = "
            f"{num(m.area_m2 / (m.cutting_width_mm / 1000 * 0.9))} m walked",
            f"at {num(speed)} km/h, {num(speed * 1000 / 60)} m a minute: {num(minutes)} min, turns left out",
        ),
        references=(WALK,),
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
        working=(f"{num(ROOTING_WEEKS)} weeks to root - {num(m.turf_age_weeks)} weeks laid, from {today.isoformat()}",),
        references=(NEW_TURF,),
        client=True,
    )
