"""How the water is put on: depth, rate, evenness and time, and what new plants take; with its working."""

from datetime import date, timedelta
from typing import NamedTuple

from howto.families.watering import formulae, garden, soil_water, tables
from howto.families.watering.formulae import Span, Stage
from howto.families.watering.measures import WateringMeasures
from howto.families.watering.needs import (
    GIVEN,
    Sum,
    T,
    ball_mm,
    ground,
    kept_interval,
    plant_use,
    soil_name,
    steady_intake,
)
from howto.families.watering.references import DRIP_TIME, SOFT, SPRINKLER_RATE, STRICT
from howto.quantities import show_number as num

LEAST_CAUGHT_ML = 0.1  # ours: cans with less on the mean caught nothing that can be reckoned with
LEAST_EVEN = 0.1  # ours: below it a quarter is dry, and 1/DU says nothing but mend the heads


# -- each watering --


def net_depth(technique: T) -> Sum | None:
    """Return the depth that should reach the roots each time, in mm, or None where nothing tells it.

    As written; else what the plants used since the last watering; else what the soil gives easily.
    """
    m = technique.measures
    if m.wanted_depth_mm is not None:
        return Sum(m.wanted_depth_mm, (f"as written: {num(m.wanted_depth_mm)} mm",), (GIVEN,))
    use, days = plant_use(technique), kept_interval(technique)
    if use is not None and use.value >= garden.LEAST_USE_MM and days is not None:
        found = use.value * days
        return Sum(found, (f"{num(use.value)} mm a day x {num(days)} days = {num(found)} mm",), use.references)
    soil = ground(technique)
    if soil is None:
        return None
    return Sum(soil.easy_mm, (f"the water the soil gives easily: {num(soil.easy_mm)} mm",), soil.references)


def efficiency(technique: T) -> Sum:
    """Return the part of the water that reaches the roots, 0 to 1."""
    m = technique.measures
    if m.efficiency_percent is not None:
        return Sum(m.efficiency_percent / 100, (f"as written: {num(m.efficiency_percent)} %",), (GIVEN,))
    usual = garden.EFFICIENCIES[m.method]
    return Sum(usual, (f"{m.method}: {num(usual)}",), (garden.efficiency_reference(m.method),))


def sprinkler_rate(technique: T) -> Sum | None:
    """Return how fast the ground is wetted in mm/h: as written, caught, or from flow and area; None if unknown."""
    m = technique.measures
    if m.rate_mm_per_h is not None:
        return Sum(m.rate_mm_per_h, (f"as written: {num(m.rate_mm_per_h)} mm/h",), (GIVEN,))
    caught = readings(m)
    if caught and m.can_mouth_mm is not None and m.catch_minutes is not None:
        mean = formulae.mean(caught)
        depth = formulae.caught_mm(mean, m.can_mouth_mm)
        rate = formulae.caught_rate(depth, m.catch_minutes)
        working = (
            f"mean can {num(mean)} mL = {num(mean * 1000)} mm³ / (π x {num(m.can_mouth_mm)}² / 4) = {num(depth)} mm",
            f"{num(depth)} mm x 60 / {num(m.catch_minutes)} min = {num(rate)} mm/h",
        )
        return Sum(rate, working, (SPRINKLER_RATE,))
    flow, each = m.flow_l_per_min, m.head_flow_l_per_min
    if each is not None and m.head_spacing_m is not None:
        area = formulae.head_area_m2(m.head_spacing_m, m.row_spacing_m, triangular=m.head_layout == "triangular")
        rate = formulae.rate_mm_per_h(each * 60, area)
        return Sum(
            rate,
            (f"60 x {num(each)} L/min / {num(area)} m² a head = {num(rate)} mm/h",),
            (SPRINKLER_RATE,),
        )
    flow = each * m.heads if flow is None and each is not None and m.heads is not None else flow
    if flow is None or m.area_m2 is None:
        return None
    rate = formulae.rate_mm_per_h(flow * 60, m.area_m2)
    return Sum(rate, (f"60 x {num(flow)} L/min / {num(m.area_m2)} m² = {num(rate)} mm/h",), (SPRINKLER_RATE,))


def readings(m: WateringMeasures) -> tuple[float, ...]:
    """Return what the cans caught, in mL; none where they caught next to nothing."""
    caught = m.catch_cans_ml or ()
    return caught if caught and formulae.mean(caught) >= LEAST_CAUGHT_ML else ()


def evenness(technique: T) -> float | None:
    """Return low-quarter uniformity, 0 to 1: from the cans, else as written, else None."""
    m = technique.measures
    if caught := readings(m):
        return formulae.uniformity(caught)
    return None if m.uniformity_percent is None else m.uniformity_percent / 100


def multiplier(technique: T) -> Sum | None:
    """Return what lengthens a run for unevenness, or None where that is not known.

    It is 1/DU, or 1/(0.4 + 0.6 DU) where the author asks for it or a quarter of the cans is all but dry.
    """
    even = evenness(technique)
    if even is None:
        return None
    soft = formulae.soft_multiplier(even)
    if technique.measures.uniformity_rule == "soft" or even < LEAST_EVEN:
        return Sum(soft, (f"soft: 1 / (0.4 + 0.6 x {num(even)}) = {num(soft)}",), (SOFT,))
    strict = formulae.strict_multiplier(even)
    return Sum(strict, (f"strict: 1 / {num(even)} = {num(strict)} (soft would be {num(soft)})",), (STRICT,))


def run_time(technique: T) -> Sum | None:
    """Return how long a watering runs, in minutes: sprinkler by rate, drip by drippers; None if unknown."""
    m = technique.measures
    if m.method == "drip":
        return _drip_time(technique)
    depth, rate = net_depth(technique), sprinkler_rate(technique)
    if m.method != "sprinkler" or depth is None or rate is None:
        return None
    uneven = multiplier(technique)
    if uneven is not None:
        found = formulae.run_minutes(depth.value, rate.value, uneven.value)
        line = f"60 x {num(depth.value)} mm / {num(rate.value)} mm/h x {num(uneven.value)} = {num(found)} min"
        return Sum(found, (*uneven.working, line), (SPRINKLER_RATE, *uneven.references))
    part = efficiency(technique)
    put_on = formulae.applied(depth.value, part.value)
    found = formulae.run_minutes(put_on, rate.value)
    working = (
        f"no cans set out: {num(depth.value)} mm / {num(part.value)} = {num(put_on)} mm put on",
        f"60 x {num(put_on)} mm / {num(rate.value)} mm/h = {num(found)} min",
    )
    return Sum(found, working, (SPRINKLER_RATE, *part.references))


def _drip_time(technique: T) -> Sum | None:
    m = technique.measures
    if m.drippers is None or m.dripper_flow_l_per_h is None:
        return None
    wanted = to_each(technique) if m.is_new else applied_litres(technique)
    if wanted is None:
        return None
    found = formulae.drip_hours(wanted, m.drippers, m.dripper_flow_l_per_h) * 60
    line = f"{num(wanted)} L / ({m.drippers} drippers x {num(m.dripper_flow_l_per_h)} L/h) x 60 = {num(found)} min" + (
        " for each plant" if m.is_new else ""
    )
    return Sum(found, (line,), (DRIP_TIME,))


def applied_litres(technique: T) -> float | None:
    """Return the litres put on an area at each watering, or None where area or depth is not known."""
    depth, area = net_depth(technique), technique.measures.area_m2
    if depth is None or area is None:
        return None
    return formulae.applied(formulae.litres(area, depth.value), efficiency(technique).value)


def longest_run(technique: T) -> float | None:
    """Return the longest run without runoff in minutes: Hung's where the soil was timed; None if not known."""
    m, rate = technique.measures, sprinkler_rate(technique)
    if rate is None or m.first_intake_mm_per_h is None or m.intake_decay is None:
        return None
    steady = steady_intake(technique).value
    if m.first_intake_mm_per_h <= steady:
        return None
    hours = soil_water.longest_run_h(rate.value, m.first_intake_mm_per_h, steady, m.intake_decay)
    return None if hours is None else hours * 60


def wetted_width_mm(technique: T) -> float:
    """Return how far across one dripper wets this soil at most; a can or hose wets a new plant's ball at least."""
    wide = tables.SOILS[soil_name(technique)].wide_mm
    return wide if technique.measures.method == "drip" else max(wide, (ball_mm(technique) or (0.0, 0.0))[0])


class Bulb(NamedTuple):
    """The wet patch under one dripper, or at one new plant: its litres, width and depth in m, and the soil's share."""

    water_l: float
    wide_m: float
    deep_m: float
    share: float


def bulb(technique: T) -> Bulb | None:
    """Return the wet patch under a dripper, or at a new plant where there is none; None where that is not known."""
    m, soil, each = technique.measures, ground(technique), to_each(technique)
    if soil is None:
        return None
    if m.method == "drip":
        put_on = applied_litres(technique)
        net = None if put_on is None else put_on * efficiency(technique).value
        wanted = each if m.is_new else net
        each = None if wanted is None or m.drippers is None else wanted / m.drippers
    if each is None:
        return None
    share = soil.available * soil.depletion
    wide, deep = soil_water.bulb_m(each, wetted_width_mm(technique) / 1000, share)
    return Bulb(each, wide, deep, share)


# -- new plants --


def summer(technique: T) -> str:
    """Return how hot summers are: as written, else warm where the crew's hottest month passes 30 °C."""
    own, climate = technique.measures.summer, technique.crew.climate
    if own:
        return own
    return "warm" if climate is not None and max(climate.max_c) >= 30 else "cool"


def plant_litres(technique: T) -> Span | None:
    """Return the least and most litres a new plant takes each time: by its stem, else by its pot."""
    m = technique.measures
    if m.calliper_mm is not None:
        return formulae.by_calliper(m.calliper_mm / 10, *tables.LITRES_PER_CM[summer(technique)])
    return None if m.pot_l is None else formulae.by_pot(m.pot_l)


def given_each(technique: T, span: Span) -> tuple[float, str]:
    """Return what a new plant is given each time and how it was chosen: as written, else the middle of `span`."""
    own = technique.measures.water_each_l
    return (own, "as written") if own is not None else ((span.low + span.high) / 2, "the middle of the range")


def to_each(technique: T) -> float | None:
    """Return what a new plant is given each time in litres, or None where the plants are not new."""
    span = plant_litres(technique)
    return None if span is None else given_each(technique, span)[0]


def first_year(technique: T) -> tuple[Stage, ...]:
    """Return the stages of the first year."""
    return tables.first_year(summer(technique), technique.measures.calliper_mm)


def stage_now(technique: T) -> Stage:
    """Return the stage new plants are in, from the weeks since planting."""
    return tables.stage_on(first_year(technique), (technique.measures.planted_weeks or 0.0) * 7)


def planted_on(technique: T, today: date) -> date:
    """Return the day of planting, counted back from `today`."""
    return today - timedelta(days=round((technique.measures.planted_weeks or 0.0) * 7))
