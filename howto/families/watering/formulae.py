"""The arithmetic of putting water on: how much, how even, how long; numbers in, number out."""

from collections.abc import Sequence
from math import ceil, pi
from typing import NamedTuple

TRIANGLE = 3**0.5 / 2  # row gap of heads set in triangles, as a part of their spacing
SOFT_SHARE = 0.4  # Irrigation Association, from memory: 1 / (0.4 + 0.6 DU)


# -- water over an area --


def litres(area_m2: float, depth_mm: float) -> float:
    """Return the water that covers an area to a depth: 1 mm on 1 m² is 1 L."""
    return area_m2 * depth_mm


def plant_water_mm(reference_mm: float, coefficient: float) -> float:
    """Return what a planting uses: reference evapotranspiration times its crop or landscape coefficient."""
    return reference_mm * coefficient


def landscape_coefficient(species: float, density: float = 1.0, microclimate: float = 1.0) -> float:
    """Return KL = ks x kd x kmc."""
    return species * density * microclimate


def applied(needed: float, efficiency: float) -> float:
    """Return what has to be put on for `needed` to reach the roots; `efficiency` over 0, to 1."""
    return needed / efficiency


# -- sprinklers --


def rate_mm_per_h(flow_l_per_h: float, area_m2: float) -> float:
    """Return how fast a sprinkler wets its area: litres an hour over square metres."""
    return flow_l_per_h / area_m2


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


def drip_hours(wanted_l: float, drippers: float, dripper_l_per_h: float) -> float:
    """Return how long drippers take to give a volume."""
    return wanted_l / (drippers * dripper_l_per_h)


# -- new trees and shrubs --


class Bounds(NamedTuple):
    """A low and a high value."""

    low: float
    high: float

    @property
    def middle(self) -> float:
        """The value half way between."""
        return (self.low + self.high) / 2

    def times(self, number: float) -> "Bounds":
        """Return both multiplied by a number."""
        return Bounds(self.low * number, self.high * number)


class GrowthStage(NamedTuple):
    """A stretch of the first year: days after planting, and the fewest and most days between waterings."""

    name: str
    start_day: int
    end_day: int
    every_low: int
    every_high: int


def pot_width_mm(pot_l: float) -> float:
    """Return how wide a pot is that is as wide as it is high."""
    return float((4 * pot_l * 1e6 / pi) ** (1 / 3))


def waterings(days: int, every_low: float, every_high: float) -> Bounds:
    """Return the fewest and most waterings in a number of days."""
    return Bounds(days / every_high, days / every_low)


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
