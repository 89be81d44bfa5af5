"""The arithmetic of water in soil: how much it holds, when to water again, and how fast it drinks.

Water contents are shares of the soil's volume, 0 to 1; depths of water in mm, root depths in m.
"""

from math import ceil, floor, log, pi
from typing import NamedTuple

LEAST_DEPLETION, MOST_DEPLETION = 0.1, 0.8  # FAO-56, bounds on p
YEAR_DAYS = 365
DEPLETION_SLOPE, TABLE_USE_MM = 0.04, 5  # FAO-56: p moves by this for each mm a day away from what its table is for


def total_available_mm(field_capacity: float, wilting_point: float, root_m: float) -> float:
    """Return TAW: what soil holds between field capacity and wilting point down to the roots' depth."""
    return 1000 * (field_capacity - wilting_point) * root_m


def readily_available_mm(total_mm: float, depletion: float) -> float:
    """Return RAW: the part of TAW a plant takes before it slows, `depletion` being p."""
    return depletion * total_mm


def adjusted_depletion(table: float, plant_water_mm: float) -> float:
    """Return p for a day's plant water use: p = table + 0.04 (5 - ETc), kept within 0.1 to 0.8."""
    return min(MOST_DEPLETION, max(LEAST_DEPLETION, table + DEPLETION_SLOPE * (TABLE_USE_MM - plant_water_mm)))


def stress_factor(total_mm: float, depletion: float, dried_mm: float) -> float:
    """Return Ks: 1 until RAW is used up, then falling to 0 as the last of TAW goes."""
    if dried_mm <= readily_available_mm(total_mm, depletion):
        return 1.0
    return max(0.0, (total_mm - dried_mm) / ((1 - depletion) * total_mm))


def days_between(readily_mm: float, plant_water_mm: float) -> float:
    """Return how many days RAW lasts at a daily use over 0."""
    return readily_mm / plant_water_mm


def whole_days(days: float) -> int:
    """Return the days as they are kept in practice: rounded down, at least one and at most a year's."""
    return min(YEAR_DAYS, max(1, floor(days + 1e-9)))


def wetted_m(depth_mm: float, available: float, dried_share: float) -> float:
    """Return how deep a watering reaches into soil dried by a share of its available water.

    `available` is field capacity less wilting point; both shares are over 0.
    """
    return depth_mm / (1000 * available * dried_share)


# -- how fast soil drinks --


def longest_run_h(rate: float, start: float, steady: float, decay_per_h: float) -> float | None:
    """Return the longest run without runoff, in hours, by Hung's formula; None where soil always keeps up.

    t = (1 / (P b)) (f0 - P + fc ln((f0 - fc) / (P - fc))): `rate` P, soil intake f0 at the `start` and fc when
    `steady`, all in one unit an hour. It is 0 where the rate is above even the start.
    """
    if rate <= steady:
        return None
    if rate >= start:
        return 0.0
    return (start - rate + steady * log((start - steady) / (rate - steady))) / (rate * decay_per_h)


def soak_minutes(on_minutes: float, rate_mm_per_h: float, steady_mm_per_h: float) -> float:
    """Return how long a cycle's water needs to sink in after the water is off: on x (P / fc - 1), at least 0."""
    return on_minutes * max(0.0, rate_mm_per_h / steady_mm_per_h - 1)


class Cycle(NamedTuple):
    """One on-time of a cycle-and-soak run, in minutes from its start."""

    on: float
    off: float


def cycles_needed(total_minutes: float, longest_minutes: float) -> int:
    """Return how many equal cycles keep each within the longest; `longest_minutes` over 0."""
    return max(1, ceil(total_minutes / longest_minutes - 1e-9))


def day_plan(total_minutes: float, cycles: int, soak: float) -> tuple[Cycle, ...]:
    """Return equal cycles with a soak between each two."""
    on = total_minutes / cycles
    return tuple(Cycle(number * (on + soak), number * (on + soak) + on) for number in range(cycles))


def bulb_m(water_l: float, widest_m: float, share: float) -> tuple[float, float]:
    """Return how wide and how deep a dripper's water goes: half a ball, and deeper once it is `widest_m`.

    `share` is the part of the soil's volume that the water fills, over 0: V = 2/3 π r² x depth x share.
    """
    filled_m3 = water_l / 1000 / share
    wide = min(widest_m, 2 * (filled_m3 / (2 / 3 * pi)) ** (1 / 3))
    return wide, filled_m3 / (2 / 3 * pi * (wide / 2) ** 2)
