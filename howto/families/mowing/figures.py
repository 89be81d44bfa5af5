"""The figures of a mow, in printing order, each with working a pencil can follow."""

from collections.abc import Iterator
from datetime import date, timedelta
from math import ceil, floor, log
from typing import Any

from howto.families.mowing import formulae, lawn
from howto.families.mowing import references as by
from howto.families.mowing.lawn import THIRD, T
from howto.families.mowing.measures import MowingMeasures
from howto.model.figure import Cell, Figure, Table
from howto.model.reference import Reference
from howto.quantities.amounts import Count, Share, Words, bare, dated, mm, percent, qty

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
    yield _a_season(work)
    yield from _raised(work)
    yield from _clippings(m)
    yield from _time(m)
    yield from _new_turf(m, today)


def figure(
    name: str, label: Words, value: Cell, unit: str, working: Words | tuple[Words, ...], *who: Reference, **more: Any
) -> Figure:
    """Return a figure from its parts in the order they are printed; most need one line of working."""
    lines = (working,) if isinstance(working, str) else working
    return Figure(name=name, label=label, value=value, unit=unit, working=lines, references=who, **more)


def _mow_at(m: MowingMeasures) -> Figure:
    at, staged = formulae.mow_at_mm(m.set_height_mm), len(lawn.way_down(m).heights) > 1
    line = f"{mm(m.set_height_mm, 4)} x {bare(1 / formulae.KEPT)} = {mm(at, 4)}"
    who = by.UC_AMOUNT, by.CAROLINA
    return figure("mow at", "Mow when it reaches", at, "mm", line, *who, headline=not staged, client=True)


def _todays_cut(m: MowingMeasures) -> Figure:
    stands, cut = lawn.standing(m), lawn.first_cut(m)
    lowest = mm(formulae.lowest_cut_mm(stands), 4)
    taken = "it stands no higher, so nothing comes off"
    if cut < stands:
        share = percent(formulae.share_removed(stands, cut) * 100)
        taken = f"({bare(stands, 4)} - {bare(cut, 4)}) / {bare(stands, 4)} = {share} off"
    lines = (
        f"stands {mm(stands, 4)}; {THIRD.most} is {mm(stands / 3, 4)}, so no lower than {lowest}",
        f"cut to {mm(cut, 4)}: {taken}",
    )
    return figure("today's cut", "Today, cut to", cut, "mm", lines, by.UC_AMOUNT, by.CORNELL, headline=True)


def _stages(m: MowingMeasures, today: date) -> Iterator[Figure]:
    down, wait = lawn.way_down(m), lawn.wait_days(m)
    count = len(down.heights)
    if count < 2:
        return
    befores = (lawn.standing(m), *(height + down.between_mm for height in down.heights))
    rows = tuple(
        (f"cut {bare(at + 1)}", today + timedelta(days=ceil(wait * at)), befores[at], height)
        for at, height in enumerate(down.heights)
    )
    table = Table(columns=("Cut", "Date", "From", "To"), units=("", "", "mm", "mm"), rows=rows)
    lines, name = tuple(_stage_lines(m)), "cuts to come down"
    who, shown = (by.UC_AMOUNT, by.WAIT), {"headline": True, "client": True, "digits": 2}
    yield figure(name, name.capitalize(), float(count), "", lines, *who, table=table, **shown)


def _stage_lines(m: MowingMeasures) -> Iterator[Words]:
    """Yield the way down, a line a cut: two thirds of what stands, and no lower than the set height."""
    stands, kept, wait, down = lawn.standing(m), m.set_height_mm, lawn.wait_days(m), lawn.way_down(m)
    step = 1 / formulae.KEPT
    sum_of_logs = f"ln({bare(stands, 4)} / {bare(kept, 4)}) / ln {bare(step)} = {bare(log(stands / kept) / log(step))}"
    count = Count(formulae.cuts_to_reach(stands, kept), "cut", "cuts")
    yield f"growth left out: {sum_of_logs}, rounded up = {count}"
    if m.growth_mm_per_day is None:
        yield f"{qty(wait, 'd', 3)} between two cuts; write `growth` to count what grows back in them"
    else:
        back = f"{mm(m.growth_mm_per_day, 3)} a day x {qty(wait, 'd', 3)} = {mm(m.growth_mm_per_day * wait, 3)}"
        much = f", half of {mm(kept, 4)} or more: it would never come down, so it is left out"
        yield f"{back} grows back between two cuts{much if down.never else ''}"
    before = f"{bare(stands, 4)}"
    for at, height in enumerate(down.heights, 1):
        lowest = formulae.lowest_cut_mm(stands)
        reach = f"cut {bare(at)}: {before} x 2/3 = {mm(lowest, 4)}"
        yield reach if abs(lowest - height) < formulae.DUST_MM else f"{reach}; cut to {mm(height, 4)}"
        stands = height + down.between_mm
        before = f"({bare(height, 4)} + {bare(down.between_mm, 4)})" if down.between_mm else f"{bare(height, 4)}"


def _next_cut(work: T, today: date) -> Iterator[Figure]:
    m = work.measures
    a_day, source = lawn.growth(work)
    days, due_at = formulae.days_between_cuts(m.set_height_mm, a_day), formulae.mow_at_mm(m.set_height_mm)
    line = f"({bare(due_at, 4)} - {bare(m.set_height_mm, 4)}) mm / {mm(a_day, 3)} a day = {qty(days, 'd', 3)}"
    who: tuple[Reference, ...] = (by.UC_AMOUNT, by.CORNELL, source)
    yield figure("days between cuts", "Days between cuts", days, "d", line, *who, client=True, digits=2)
    if len(lawn.way_down(m).heights) > 1:
        wait, who = lawn.wait_days(m), (by.WAIT,)
        why = f"on the way down, {qty(wait, 'd', 3)} between two cuts"
    else:
        left = min(lawn.first_cut(m), lawn.standing(m))
        wait, who = max(0.0, due_at - left) / a_day, (by.UC_AMOUNT, source)
        why = f"from {mm(left, 4)} to {mm(due_at, 4)} at {mm(a_day, 3)} a day: {qty(wait, 'd', 3)}"
    rest = max(1, floor(wait + 1e-9))
    due = today + timedelta(days=rest)
    lines = (why, f"{dated(today, 'plain')} + {qty(rest, 'd', 3)} = {dated(due, 'plain')}")
    yield figure("next cut", "Next cut due", due, "", lines, *who, client=True)


def _a_season(work: T) -> Figure:
    m = work.measures
    a_day, source = lawn.growth(work)
    months, days = m.growing_months or GROWING_MONTHS, max(formulae.days_between_cuts(m.set_height_mm, a_day), 1.0)
    cuts = formulae.cuts_a_season(months, days)
    long = f"{Count(months, 'month', 'months')} x {qty(formulae.DAYS_A_MONTH, 'd', 4)}"
    line = f"{long} / {qty(days, 'd', 3)} = {bare(cuts)}, rounded up"
    who = (source,) if m.growing_months else (source, by.SEASON)
    return figure("cuts a season", "Cuts a season", float(ceil(cuts - 1e-9)), "", line, *who, digits=3)


def _raised(work: T) -> Iterator[Figure]:
    m, grass, row, shade = work.measures, lawn.grass_of(work), lawn.range_of(work), lawn.in_shade(work)
    if grass is None or row is None or shade is None or not (m.shade or m.drought):
        return
    least, why, who = shade.least_mm, f"in shade: {shade.working}", (by.SHADE, shade.source)
    if m.drought:
        least, who = row.high_mm, (by.UC_SPECIAL, lawn.source_of(grass, row))
        why = f"short of water: {mm(least, 4)}, the top of the range"
    height = max(m.set_height_mm, least)
    line = f"{why}; kept at {mm(m.set_height_mm, 4)}, so {mm(height, 4)}"
    yield figure("raised height", "Set height for now", height, "mm", line, *who, client=True)


def _clippings(m: MowingMeasures) -> Iterator[Figure]:
    if m.area_m2 is None:
        return
    off = max(0.0, lawn.standing(m) - lawn.first_cut(m))
    litres = formulae.clippings_l(m.area_m2, off, LEAF_SHARE)
    line = f"{qty(m.area_m2, 'm²', 4)} x {mm(off, 3)} x {bare(LEAF_SHARE)} = {qty(litres, 'L', 3)}"
    yield figure("clippings", "Clippings, loose", litres, "L", line, by.DENSITY, digits=2)


def _time(m: MowingMeasures) -> Iterator[Figure]:
    if m.area_m2 is None or m.cutting_width_mm is None:
        return
    speed, width_m = m.walking_speed_km_per_h or WALK_KM_PER_H, m.cutting_width_mm / 1000
    minutes, walked = formulae.mowing_minutes(m.area_m2, m.cutting_width_mm, speed, OVERLAP), 1 - OVERLAP
    pass_width = f"({qty(width_m, 'm', 3)} x {bare(walked)}, {Share(OVERLAP)} mown twice)"
    pace = f"{qty(speed, 'km/h', 3)}, {qty(speed * 1000 / 60, 'm', 3)} a minute"
    lines = (
        f"{qty(m.area_m2, 'm²', 4)} / {pass_width} = {qty(m.area_m2 / (width_m * walked), 'm', 3)} walked",
        f"at {pace}: {qty(minutes, 'min', 3)}, turns left out",
    )
    yield figure("mowing time", "Mowing time", minutes, "min", lines, by.WALK, digits=2)


def _new_turf(m: MowingMeasures, today: date) -> Iterator[Figure]:
    if m.turf_age_weeks is None or m.turf_age_weeks >= ROOTING_WEEKS:
        return
    due = today + timedelta(days=ceil((ROOTING_WEEKS - m.turf_age_weeks) * 7))
    rooting, laid = qty(ROOTING_WEEKS, "weeks", 3), qty(m.turf_age_weeks, "weeks", 3)
    line = f"{rooting} to root - {laid} laid, from {dated(today, 'plain')}"
    yield figure("first cut of new turf", "First cut of new turf", due, "", line, by.NEW_TURF, client=True)
