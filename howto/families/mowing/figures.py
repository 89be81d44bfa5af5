"""The figures of a mow, in printing order, each with working a pencil can follow."""

from collections.abc import Iterator
from datetime import date, timedelta
from math import ceil, floor

from howto.families.mowing import formulae
from howto.families.mowing.measures import MowingMeasures
from howto.families.mowing.references import (
    CAROLINA,
    CORNELL,
    DENSITY,
    GROWTH,
    NEW_TURF,
    SHADE,
    UC_AMOUNT,
    UC_SPECIAL,
    WAIT,
    WALK,
)
from howto.model.figure import Figure, Table
from howto.model.plants import Grass, Mowing
from howto.model.reference import PRACTICE, Reference
from howto.model.technique import Technique
from howto.quantities import show_number as num

T = Technique[MowingMeasures]
WAIT_DAYS = 3.0  # see references.WAIT
GROWTH_MM_PER_DAY = 4.0  # see references.GROWTH
LEAF_SHARE = 0.03  # see references.DENSITY
WALK_KM_PER_H, OVERLAP = 4.0, 0.1  # see references.WALK
GROWING_MONTHS = 8
ROOTING_WEEKS = 3.0  # see references.NEW_TURF
SHADE_MM = 13.0  # the least raise; see references.SHADE


def figures(technique: T, today: date) -> Iterator[Figure]:
    """Yield the figures of one lawn; `today` is the day of the cut."""
    m = technique.measures
    yield _mow_at(m)
    yield _most_off(m)
    yield from _stages(technique, today)
    yield from _next_cut(technique, today)
    yield from _raised(technique)
    yield from _clippings(technique)
    yield from _time(m)
    yield from _new_turf(m, today)


def grass_of(technique: T) -> Grass | None:
    """Return the grass the author named, or None where it is left out or unknown."""
    name = technique.measures.grass
    return technique.book.grass(name) if name else None


def range_of(technique: T) -> Mowing | None:
    """Return the mowing range of the grass in the author's climate: the named one, or the only one."""
    grass = grass_of(technique)
    if grass is None:
        return None
    wanted = (technique.measures.climate or "").casefold()
    if wanted:
        return next((row for row in grass.mowing if row.climate.casefold() == wanted), None)
    return grass.mowing[0] if len(grass.mowing) == 1 else None


def growth(technique: T) -> tuple[float, Reference]:
    """Return growth in mm a day and who says so: the crew, the plant book, or memory."""
    m = technique.measures
    if m.growth_mm_per_day is not None:
        return m.growth_mm_per_day, Reference(title="growth as measured by the crew", grade=PRACTICE.grade)
    grass = grass_of(technique)
    if grass is not None and (fact := grass.growth_mm_per_day) is not None:
        return fact.middle, Reference(title=f"growth of {grass.botanical}", publisher=fact.source, grade=fact.grade)
    return GROWTH_MM_PER_DAY, GROWTH


def standing(m: MowingMeasures) -> float:
    """Return how high the grass stands in mm; its mowing height where none is written."""
    return m.standing_height_mm or formulae.mow_at_mm(m.set_height_mm)


def first_cut(m: MowingMeasures) -> float:
    """Return the height in mm that today's cut leaves: as written, else the set height or two thirds."""
    return m.cut_height_mm or max(m.set_height_mm, formulae.lowest_cut_mm(standing(m)))


def _mow_at(m: MowingMeasures) -> Figure:
    at = formulae.mow_at_mm(m.set_height_mm)
    return Figure(
        name="mow at",
        label="Mow when it reaches",
        value=at,
        unit="mm",
        working=(f"{num(m.set_height_mm, 4)} mm x 1.5 = {num(at)} mm",),
        references=(UC_AMOUNT, CAROLINA),
        headline=True,
        client=True,
    )


def _most_off(m: MowingMeasures) -> Figure:
    stands, cut = standing(m), first_cut(m)
    share = formulae.share_removed(stands, cut)
    return Figure(
        name="today's cut",
        label="Today, cut to",
        value=cut,
        unit="mm",
        working=(
            f"stands {num(stands, 4)} mm; a third is {num(stands / 3)} mm, so no lower than "
            f"{num(formulae.lowest_cut_mm(stands))} mm",
            f"cut to {num(cut)} mm: ({num(stands, 4)} - {num(cut)}) / {num(stands, 4)} = {num(share * 100)} % off",
        ),
        references=(UC_AMOUNT, CORNELL),
        headline=True,
    )


def _stages(technique: T, today: date) -> Iterator[Figure]:
    m = technique.measures
    stands = standing(m)
    wait = m.stage_wait_days if m.stage_wait_days is not None else WAIT_DAYS
    heights = formulae.heights_down_mm(stands, m.set_height_mm)
    if len(heights) < 2:
        return
    before = (stands, *heights)
    rows = tuple(
        (f"cut {at}", today + timedelta(days=floor(wait * (at - 1))), before[at - 1], height)
        for at, height in enumerate(heights, 1)
    )
    yield Figure(
        name="cuts to come down",
        label="Cuts to come down",
        value=float(len(heights)),
        working=(
            f"ln({num(stands, 4)} / {num(m.set_height_mm, 4)}) / ln 1.5, rounded up = {len(heights)} cuts",
            f"each leaves two thirds: {', '.join(num(height) for height in before)} mm",
            f"{num(wait)} days between two cuts; growth between them is left out",
        ),
        references=(UC_AMOUNT, WAIT),
        table=Table(columns=("Cut", "Date", "From", "To"), units=("", "", "mm", "mm"), rows=rows),
        headline=True,
        client=True,
        digits=2,
    )


def _next_cut(technique: T, today: date) -> Iterator[Figure]:
    m = technique.measures
    a_day, source = growth(technique)
    days = formulae.days_between_cuts(m.set_height_mm, a_day)
    yield Figure(
        name="days between cuts",
        label="Days between cuts",
        value=days,
        unit="d",
        working=(
            f"({num(formulae.mow_at_mm(m.set_height_mm))} - {num(m.set_height_mm, 4)}) mm / {num(a_day)} mm a day "
            f"= {num(days)} days",
        ),
        references=(UC_AMOUNT, CORNELL, source),
        client=True,
        digits=2,
    )
    down = formulae.heights_down_mm(standing(m), m.set_height_mm)
    wait = m.stage_wait_days if m.stage_wait_days is not None else WAIT_DAYS
    staged = len(down) > 1
    due = today + timedelta(days=max(1, floor(wait if staged else days)))
    yield Figure(
        name="next cut",
        label="Next cut due",
        value=due,
        working=(f"{today.isoformat()} + {num(max(1, floor(wait if staged else days)))} days = {due.isoformat()}",),
        references=(WAIT,) if staged else (UC_AMOUNT, source),
        client=True,
    )
    months = m.growing_months or GROWING_MONTHS
    cuts = formulae.cuts_a_season(months, max(days, 1.0))
    yield Figure(
        name="cuts a season",
        label="Cuts a season",
        value=float(ceil(cuts - 1e-9)),
        working=(f"{months} months x 30.4 days / {num(max(days, 1.0))} days = {num(cuts)}, rounded up",),
        references=(source,),
        digits=3,
    )


def _raised(technique: T) -> Iterator[Figure]:
    m = technique.measures
    if not (m.shade or m.drought):
        return
    row = range_of(technique)
    if m.drought and row is not None:
        height, why = row.high_mm, f"drought: the top of the range {num(row.low_mm)} to {num(row.high_mm)} mm"
        source = UC_SPECIAL
    else:
        height, why = m.set_height_mm + SHADE_MM, f"{num(m.set_height_mm, 4)} mm + {num(SHADE_MM)} mm, the least raise"
        source = SHADE
    yield Figure(
        name="raised height",
        label="Set height for now",
        value=height,
        unit="mm",
        working=(f"{why} = {num(height)} mm",),
        references=(source,),
        client=True,
    )


def _clippings(technique: T) -> Iterator[Figure]:
    m = technique.measures
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
            f"{num(m.area_m2, 4)} m² / ({num(m.cutting_width_mm / 1000)} m x 0.9) = "
            f"{num(m.area_m2 / (m.cutting_width_mm / 1000 * 0.9))} m walked",
            f"at {num(speed)} km/h = {num(minutes)} min, turns left out",
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
