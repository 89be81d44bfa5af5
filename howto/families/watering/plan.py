"""How the water is put on: depth, rate, evenness and time, and what new plants take; with its working."""

from datetime import date, timedelta
from typing import NamedTuple

from howto.families.watering import formulae, garden, soil_water, tables
from howto.families.watering import references as by
from howto.families.watering.formulae import Bounds, GrowthStage
from howto.families.watering.measures import WateringMeasures
from howto.families.watering.needs import (
    T,
    WorkedSum,
    ball_mm,
    ground,
    kept_interval,
    plant_use,
    soil_name,
    steady_intake,
    written,
)
from howto.model.family import Limit
from howto.quantities.amounts import Amount, Count, Word, Words, bare, mm, percent, qty

LEAST_CAUGHT_ML = 0.1  # ours: cans with less on the mean caught nothing that can be reckoned with
WARM_SUMMER_C = 30  # ours: mean highest temperature of the hottest month
LEAST_EVEN = 0.1  # ours: below it a quarter is dry, and 1/DU says nothing but mend the heads
VERY_UNEVEN = Limit(unit="%", low=60, of="of the mean", reference=by.UNIFORMITY)
EVEN = Limit(unit="%", low=80, of="of the mean", reference=by.UNIFORMITY)

# -- each watering --


def net_depth(work: T) -> WorkedSum | None:
    """Return the depth that should reach the roots each time, in mm, or None where nothing tells it.

    As written; else what the plants used since the last watering; else what the soil gives easily.
    """
    if (own := work.measures.wanted_depth_mm) is not None:
        return written(own, mm(own))
    use, days = plant_use(work), kept_interval(work)
    if use is not None and use.value >= garden.LEAST_USE_MM and days is not None:
        found = use.value * days
        return WorkedSum(found, (f"{mm(use.value)} a day x {bare(days)} days = {mm(found)}",), use.references)
    if (soil := ground(work)) is None:
        return None
    return WorkedSum(soil.easy_mm, (f"the water the soil gives easily: {mm(soil.easy_mm)}",), soil.references)


def efficiency(work: T) -> WorkedSum:
    """Return the part of the water that reaches the roots, 0 to 1."""
    m = work.measures
    if m.efficiency_percent is not None:
        return written(m.efficiency_percent / 100, percent(m.efficiency_percent))
    usual, source = garden.EFFICIENCIES[m.method]
    return WorkedSum(usual, (f"{Word(m.method)}: {bare(usual)}",), (source,))


def sprinkler_rate(work: T) -> WorkedSum | None:
    """Return how fast the ground is wetted in mm/h: as written, caught, or from flow and area; None if unknown."""
    m = work.measures
    if m.rate_mm_per_h is not None:
        return written(m.rate_mm_per_h, qty(m.rate_mm_per_h, "mm/h"))
    caught = readings(m)
    if caught and m.can_mouth_mm is not None and m.catch_minutes is not None:
        mean = formulae.mean(caught)
        depth = formulae.caught_mm(mean, m.can_mouth_mm)
        rate = formulae.caught_rate(depth, m.catch_minutes)
        working = (
            f"mean can {qty(mean, 'mL')} = {bare(mean * 1000)} mm³ / (π x {bare(m.can_mouth_mm)}² / 4) = {mm(depth)}",
            f"{mm(depth)} x 60 / {qty(m.catch_minutes, 'min')} = {qty(rate, 'mm/h')}",
        )
        return WorkedSum(rate, working, (by.SPRINKLER_RATE,))
    flow, each = m.flow_l_per_min, m.head_flow_l_per_min
    if each is not None and m.head_spacing_m is not None:
        area = formulae.head_area_m2(m.head_spacing_m, m.row_spacing_m, triangular=m.head_layout == "triangular")
        return _over_area(each, area, " a head")
    flow = each * m.heads if flow is None and each is not None and m.heads is not None else flow
    return None if flow is None or m.area_m2 is None else _over_area(flow, m.area_m2)


def _over_area(flow_l_per_min: float, area_m2: float, each: Words = "") -> WorkedSum:
    rate = formulae.rate_mm_per_h(flow_l_per_min * 60, area_m2)
    line = f"60 x {qty(flow_l_per_min, 'L/min')} / {qty(area_m2, 'm²')}{each} = {qty(rate, 'mm/h')}"
    return WorkedSum(rate, (line,), (by.SPRINKLER_RATE,))


def readings(m: WateringMeasures) -> tuple[float, ...]:
    """Return what the cans caught, in mL; none where they caught next to nothing."""
    caught = m.catch_cans_ml or ()
    return caught if caught and formulae.mean(caught) >= LEAST_CAUGHT_ML else ()


def evenness(work: T) -> float | None:
    """Return low-quarter uniformity, 0 to 1: from the cans, else as written, else None."""
    m = work.measures
    if caught := readings(m):
        return formulae.uniformity(caught)
    return None if m.uniformity_percent is None else m.uniformity_percent / 100


def multiplier(work: T) -> WorkedSum | None:
    """Return what lengthens a run for unevenness, or None where that is not known.

    It is 1/DU, or 1/(0.4 + 0.6 DU) where the author asks for it or a quarter of the cans is all but dry.
    """
    even = evenness(work)
    if even is None:
        return None
    soft = formulae.soft_multiplier(even)
    if work.measures.uniformity_rule == "soft" or even < LEAST_EVEN:
        share, rest = bare(formulae.SOFT_SHARE), bare(1 - formulae.SOFT_SHARE)
        return WorkedSum(soft, (f"soft: 1 / ({share} + {rest} x {bare(even)}) = {bare(soft)}",), (by.SOFT,))
    strict = formulae.strict_multiplier(even)
    return WorkedSum(strict, (f"strict: 1 / {bare(even)} = {bare(strict)} (soft would be {bare(soft)})",), (by.STRICT,))


def run_time(work: T) -> WorkedSum | None:
    """Return how long a watering runs, in minutes: sprinkler by rate, drip by drippers; None if unknown."""
    m = work.measures
    if m.method == "drip":
        return _drip_time(work)
    depth, rate = net_depth(work), sprinkler_rate(work)
    if m.method != "sprinkler" or depth is None or rate is None:
        return None
    uneven = multiplier(work)
    if uneven is not None:
        found = formulae.run_minutes(depth.value, rate.value, uneven.value)
        line = f"60 x {mm(depth.value, 3)} / {qty(rate.value, 'mm/h', 3)} x {bare(uneven.value)} = {_took(found)}"
        return WorkedSum(found, (*uneven.working, line), (by.SPRINKLER_RATE, *uneven.references))
    part = efficiency(work)
    put_on = formulae.applied(depth.value, part.value)
    found = formulae.run_minutes(put_on, rate.value)
    working = (
        f"no cans set out: {mm(depth.value)} / {bare(part.value)} = {mm(put_on)} put on",
        f"60 x {mm(put_on, 3)} / {qty(rate.value, 'mm/h', 3)} = {_took(found)}",
    )
    return WorkedSum(found, working, (by.SPRINKLER_RATE, *part.references))


def _drip_time(work: T) -> WorkedSum | None:
    m = work.measures
    if m.drippers is None or m.dripper_flow_l_per_h is None:
        return None
    wanted = to_each(work) if m.is_new else applied_litres(work)
    if wanted is None:
        return None
    found = formulae.drip_hours(wanted, m.drippers, m.dripper_flow_l_per_h) * 60
    drips = f"{Count(m.drippers, 'dripper', 'drippers')} x {qty(m.dripper_flow_l_per_h, 'L/h', 3)}"
    line = f"{qty(wanted, 'L', 3)} / ({drips}) x 60 = {_took(found)}{' for each plant' if m.is_new else ''}"
    return WorkedSum(found, (line,), (by.DRIP_TIME,))


def _took(minutes: float) -> Amount:
    """Return a run as its sum gives it, for a finding shows that line too."""
    return qty(minutes, "min", 3)


def applied_litres(work: T) -> float | None:
    """Return the litres put on an area at each watering, or None where area or depth is not known."""
    depth, area = net_depth(work), work.measures.area_m2
    if depth is None or area is None:
        return None
    return formulae.applied(formulae.litres(area, depth.value), efficiency(work).value)


def longest_run(work: T) -> float | None:
    """Return the longest run without runoff in minutes: Hung's where the soil was timed; None if not known."""
    m, rate = work.measures, sprinkler_rate(work)
    if rate is None or m.first_intake_mm_per_h is None or m.intake_decay is None:
        return None
    steady = steady_intake(work).value
    if m.first_intake_mm_per_h <= steady:
        return None
    hours = soil_water.longest_run_h(rate.value, m.first_intake_mm_per_h, steady, m.intake_decay)
    return None if hours is None else hours * 60


def wetted_width_mm(work: T) -> float:
    """Return how far across one dripper wets this soil at most; a can or hose wets a new plant's ball at least."""
    wide = tables.SOILS[soil_name(work)].wide_mm
    return wide if work.measures.method == "drip" else max(wide, (ball_mm(work) or (0.0, 0.0))[0])


class Bulb(NamedTuple):
    """The wet patch under one dripper, or at one new plant: its litres, width and depth in m, and the soil's share."""

    water_l: float
    wide_m: float
    deep_m: float
    share: float


def bulb(work: T) -> Bulb | None:
    """Return the wet patch under a dripper, or at a new plant where there is none; None where that is not known."""
    m, soil, each = work.measures, ground(work), to_each(work)
    if soil is None:
        return None
    if m.method == "drip":
        put_on = applied_litres(work)
        net = None if put_on is None else put_on * efficiency(work).value
        wanted = each if m.is_new else net
        each = None if wanted is None or m.drippers is None else wanted / m.drippers
    if each is None:
        return None
    share = soil.available * soil.depletion
    wide, deep = soil_water.bulb_m(each, wetted_width_mm(work) / 1000, share)
    return Bulb(each, wide, deep, share)


# -- new plants --


def summer(work: T) -> str:
    """Return how hot summers are: as written, else by the crew's hottest month."""
    own, climate = work.measures.summer, work.crew.climate
    return own or ("warm" if climate is not None and max(climate.max_c) >= WARM_SUMMER_C else "cool")


def plant_litres(work: T) -> Bounds | None:
    """Return the least and most litres a new plant takes each time: by its stem, else by its pot."""
    m = work.measures
    if m.calliper_mm is not None:
        return tables.LITRES_PER_CM[summer(work)].times(m.calliper_mm / 10)
    return None if m.pot_l is None else tables.POT_SHARE.times(m.pot_l)


def given_each(work: T, span: Bounds) -> tuple[float, Words]:
    """Return what a new plant is given each time and how it was chosen: as written, else the middle of `span`."""
    own = work.measures.water_each_l
    return (span.middle, "the middle of the range") if own is None else (own, "as written")


def to_each(work: T) -> float | None:
    """Return what a new plant is given each time in litres, or None where the plants are not new."""
    span = plant_litres(work)
    return None if span is None else given_each(work, span)[0]


def first_year(work: T) -> tuple[GrowthStage, ...]:
    """Return the stages of the first year."""
    return tables.first_year(summer(work), work.measures.calliper_mm)


def stage_now(work: T) -> GrowthStage:
    """Return the stage new plants are in, from the weeks since planting."""
    return tables.stage_on(first_year(work), (work.measures.planted_weeks or 0.0) * 7)


def planted_on(work: T, today: date) -> date:
    """Return the day of planting, counted back from `today`."""
    return today - timedelta(days=round((work.measures.planted_weeks or 0.0) * 7))
