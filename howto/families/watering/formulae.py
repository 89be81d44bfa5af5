"""The arithmetic of putting water on: how much, how even, how long; numbers in, number out."""

from collections.abc import Sequence
from math import ceil, pi
from typing import NamedTuple

GALLONS_PER_SQ_FT_INCH = 144 / 231  # US gal that lie 1 in deep on 1 sq ft, exactly
CODE_GALLONS_PER_SQ_FT_INCH = 0.62  # what Californian water budgets print: for their worksheets only
GPM_TO_IN_PER_H = 231 * 60 / 144  # in/h from 1 US gal/min on 1 sq ft: 96.25
TRIANGLE = 3**0.5 / 2  # row gap of heads set in triangles, as a part of their spacing
SOFT_SHARE = 0.4  # Irrigation Association, from memory: 1 / (0.4 + 0.6 DU)


# -- water over an area --


def litres(area_m2: float, depth_mm: float) -> float:
    """Return the water that covers an area to a depth: 1 mm on 1 m² is 1 L."""
    return area_m2 * depth_mm


def us_gallons(area_sq_ft: float, depth_in: float) -> float:
    """Return the US gallons that cover an area to a depth, by the exact factor."""
    return area_sq_ft * depth_in * GALLONS_PER_SQ_FT_INCH


def plant_water_mm(reference_mm: float, coefficient: float) -> float:
    """Return what a planting uses: reference evapotranspiration times its crop or landscape coefficient."""
    return reference_mm * coefficient


def landscape_coefficient(species: float, density: float = 1.0, microclimate: float = 1.0) -> float:
    """Return KL = ks x kd x kmc."""
    return species * density * microclimate


def applied(needed: float, efficiency: float) -> float:
    """Return what has to be put on for `needed` to reach the roots; `efficiency` over 0, to 1."""
    return needed / efficiency


def adjustment_factor(plant_factor: float, efficiency: float) -> float:
    """Return a water budget's ETAF: plant factor over irrigation efficiency."""
    return plant_factor / efficiency


def estimated_use_us_gal(reference_in: float, plant_factor: float, efficiency: float, area_sq_ft: float) -> float:
    """Return a water budget's estimated use in US gallons, by the 0.62 of its worksheet."""
    return reference_in * CODE_GALLONS_PER_SQ_FT_INCH * adjustment_factor(plant_factor, efficiency) * area_sq_ft


def allowance_us_gal(reference_in: float, factor: float, area_sq_ft: float, special_sq_ft: float = 0.0) -> float:
    """Return a water budget's allowance in US gallons: the factor for all, and the rest of 1 for special areas."""
    share = factor * area_sq_ft + (1 - factor) * special_sq_ft
    return reference_in * CODE_GALLONS_PER_SQ_FT_INCH * share


# -- sprinklers --


def rate_mm_per_h(flow_l_per_h: float, area_m2: float) -> float:
    """Return how fast a sprinkler wets its area: litres an hour over square metres."""
    return flow_l_per_h / area_m2


def rate_in_per_h(flow_us_gpm: float, area_sq_ft: float) -> float:
    """Return the same in inches an hour, from US gallons a minute."""
    return GPM_TO_IN_PER_H * flow_us_gpm / area_sq_ft


def head_area_m2(spacing_m: float, row_m: float | None = None, *, triangular: bool = False) -> float:
    """Return the area one head answers for: spacing times row gap, in triangles 0.866 of the spacing squared."""
    if triangular:
        return spacing_m**2 * TRIANGLE
    return spacing_m * (row_m if row_m is not None else spacing_m)


def caught_mm(millilitres: float, mouth_mm: float) -> float:
    """Return the depth a can caught, from what it holds and how wide its mouth is."""
    return millilitres * 1000 / (pi * mouth_mm**2 / 4)


def caught_rate(depth: float, minutes: float) -> float:
    """Return the rate an hour of a depth caught in so many minutes."""
    return depth * 60 / minutes


def run_minutes(depth: float, rate_per_h: float, multiplier: float = 1.0) -> float:
    """Return how long to run for a depth, in the same unit as the rate."""
    return 60 * depth / rate_per_h * multiplier


def quarter_size(cans: int) -> int:
    """Return how many cans make the low quarter: a fourth of them, rounded up."""
    return ceil(cans / 4)


def low_quarter(readings: Sequence[float]) -> tuple[float, ...]:
    """Return the lowest quarter of the readings, lowest first."""
    return tuple(sorted(readings)[: quarter_size(len(readings))])


def mean(values: Sequence[float]) -> float:
    """Return the mean; ValueError for none."""
    if not values:
        raise ValueError("nothing was caught: no readings")
    return sum(values) / len(values)


def uniformity(readings: Sequence[float]) -> float:
    """Return low-quarter distribution uniformity, 0 to 1; ValueError where the cans caught nothing at all."""
    middle = mean(readings)
    if middle <= 0:
        raise ValueError("nothing was caught: every can is dry")
    return mean(low_quarter(readings)) / middle


def strict_multiplier(even: float) -> float:
    """Return 1 / DU: the dry quarter then gets the whole depth; `even` over 0, to 1."""
    return 1 / even


def soft_multiplier(even: float) -> float:
    """Return 1 / (0.4 + 0.6 DU): milder, since water spreads sideways in soil."""
    return 1 / (SOFT_SHARE + (1 - SOFT_SHARE) * even)


# -- drip --


def drip_hours(wanted_l: float, drippers: float, dripper_l_per_h: float) -> float:
    """Return how long drippers take to give a volume."""
    return wanted_l / (drippers * dripper_l_per_h)


def gallon_minutes(gallons: float, run_gallons: float, run_minutes_taken: float) -> float:
    """Return how long a volume takes from a tap that gave `run_gallons` in a timed run."""
    return gallons / run_gallons * run_minutes_taken


# -- new trees and shrubs --


class Span(NamedTuple):
    """A low and a high value."""

    low: float
    high: float


class Stage(NamedTuple):
    """A stretch of the first year: days after planting, and the fewest and most days between waterings."""

    name: str
    start_day: int
    end_day: int
    every_low: int
    every_high: int


def by_calliper(calliper: float, low: float, high: float) -> Span:
    """Return the least and most water for a stem, from rates per unit of its calliper."""
    return Span(calliper * low, calliper * high)


def by_pot(pot_l: float, low: float = 0.25, high: float = 0.30) -> Span:
    """Return the least and most water for a shrub, as a share of the pot it came in."""
    return Span(pot_l * low, pot_l * high)


def pot_width_mm(pot_l: float) -> float:
    """Return how wide a pot is that is as wide as it is high."""
    return float((4 * pot_l * 1e6 / pi) ** (1 / 3))


def waterings(days: int, every_low: float, every_high: float) -> Span:
    """Return the fewest and most waterings in a number of days."""
    return Span(days / every_high, days / every_low)


def stage_waterings(stage: Stage) -> Span:
    """Return the fewest and most waterings in one stretch of the year."""
    return waterings(stage.end_day - stage.start_day, stage.every_low, stage.every_high)


# -- cans --


class Cans(NamedTuple):
    """So many cans a watering, how full each is (0 to 1), and how many waterings a week."""

    number: int
    fullness: float
    times: int


def as_cans(litres_a_week: float, can_l: float, times: int) -> Cans:
    """Return a week's water as cans at each of `times` waterings: no litre less, each can filled alike."""
    each = litres_a_week / times
    number = max(1, ceil(each / can_l - 1e-9))
    return Cans(number, each / (number * can_l), times)
