"""What is known of crops, plants and soils, as plain numbers; who says so stands in references.py."""

from collections.abc import Iterable
from typing import Literal, NamedTuple

from howto.families.watering.formulae import Bounds, GrowthStage
from howto.families.watering.soil_water import YEAR_DAYS
from howto.quantities import convert
from howto.quantities.amounts import Count, Words, bare


class CropWater(NamedTuple):
    """Crop coefficients at the start, middle and end of the season, roots in m, and table depletion p."""

    start: float
    middle: float
    end: float
    root_low_m: float
    root_high_m: float
    depletion: float


# FAO-56 tables 12 and 22, as transcribed in pyfao56 (USDA-ARS).
CROPS: dict[str, CropWater] = {
    "cool lawn": CropWater(0.90, 0.95, 0.95, 0.5, 1.0, 0.40),
    "warm lawn": CropWater(0.80, 0.85, 0.85, 0.5, 1.0, 0.50),
    "conifers": CropWater(1.00, 1.00, 1.00, 1.0, 1.5, 0.70),
    "apple with frost": CropWater(0.45, 0.95, 0.70, 1.0, 2.0, 0.50),
    "apple without frost": CropWater(0.60, 0.95, 0.75, 1.0, 2.0, 0.50),
    "apple in grass with frost": CropWater(0.50, 1.20, 0.95, 1.0, 2.0, 0.50),
    "apple in grass without frost": CropWater(0.80, 1.20, 0.85, 1.0, 2.0, 0.50),
    "stone fruit with frost": CropWater(0.45, 0.90, 0.65, 1.0, 2.0, 0.50),
    "stone fruit without frost": CropWater(0.55, 0.90, 0.65, 1.0, 2.0, 0.50),
    "stone fruit in grass with frost": CropWater(0.50, 1.15, 0.90, 1.0, 2.0, 0.50),
    "stone fruit in grass without frost": CropWater(0.80, 1.15, 0.85, 1.0, 2.0, 0.50),
    "citrus": CropWater(0.70, 0.65, 0.70, 1.2, 1.5, 0.50),
    "half-grown citrus": CropWater(0.65, 0.60, 0.65, 1.1, 1.5, 0.50),
    "young citrus": CropWater(0.50, 0.45, 0.55, 0.8, 1.1, 0.50),
    "citrus in grass": CropWater(0.75, 0.70, 0.75, 1.2, 1.5, 0.50),
    "half-grown citrus in grass": CropWater(0.80, 0.80, 0.80, 1.1, 1.5, 0.50),
    "young citrus in grass": CropWater(0.85, 0.85, 0.85, 0.8, 1.1, 0.50),
    "olives": CropWater(0.65, 0.70, 0.70, 1.2, 1.7, 0.65),
    "table grapes": CropWater(0.30, 0.85, 0.45, 1.0, 2.0, 0.35),
    "wine grapes": CropWater(0.30, 0.70, 0.45, 1.0, 2.0, 0.45),
    "berries": CropWater(0.30, 1.05, 0.50, 0.6, 1.2, 0.50),
    "kiwi": CropWater(0.40, 1.05, 1.05, 0.7, 1.3, 0.35),
    "walnut": CropWater(0.50, 1.10, 0.65, 1.7, 2.4, 0.50),
    "palms": CropWater(0.95, 1.00, 1.00, 0.7, 1.1, 0.65),
    "strawberry": CropWater(0.40, 0.85, 0.75, 0.2, 0.3, 0.20),
    "tomato": CropWater(0.60, 1.15, 0.80, 0.7, 1.5, 0.40),
    "lettuce": CropWater(0.70, 1.00, 0.95, 0.3, 0.5, 0.30),
}
CropName = Literal[
    "cool lawn", "warm lawn", "conifers", "apple with frost", "apple without frost", "apple in grass with frost",
    "apple in grass without frost", "stone fruit with frost", "stone fruit without frost",
    "stone fruit in grass with frost", "stone fruit in grass without frost", "citrus", "half-grown citrus",
    "young citrus", "citrus in grass", "half-grown citrus in grass", "young citrus in grass", "olives",
    "table grapes", "wine grapes", "berries", "kiwi", "walnut", "palms", "strawberry", "tomato", "lettuce",
]  # fmt: skip
StageName = Literal["start", "middle", "end"]

# Species factor ks: working value and range (Sacramento stormwater partnership, after UC).
PlantWater = Literal["very low", "low", "moderate", "high"]
SPECIES: dict[str, tuple[float, Bounds]] = {
    "very low": (0.1, Bounds(0.0, 0.1)),
    "low": (0.2, Bounds(0.1, 0.3)),
    "moderate": (0.5, Bounds(0.4, 0.6)),
    "high": (0.8, Bounds(0.7, 0.9)),
}
# Density and microclimate factors (UC and DWR guide, 2000; the ranges from memory).
Degree = Literal["low", "average", "high"]
DENSITY: dict[str, Bounds] = {"low": Bounds(0.5, 0.9), "average": Bounds(1.0, 1.0), "high": Bounds(1.1, 1.3)}
MICROCLIMATE: dict[str, Bounds] = {"low": Bounds(0.5, 0.9), "average": Bounds(1.0, 1.0), "high": Bounds(1.1, 1.4)}


def whole(ranges: Iterable[Bounds]) -> Bounds:
    """Return the range that takes in several."""
    lows, highs = zip(*ranges, strict=True)
    return Bounds(min(lows), max(highs))


class Soil(NamedTuple):
    """Field capacity and wilting point as shares of volume, and the least steady intake in mm/h.

    Intake is the lowest of the published tables that name the texture, for runoff's sake: they differ by a
    factor of two and more. `wide_mm` is how far a dripper wets the soil across, from memory.
    """

    field_capacity: float
    wilting_point: float
    intake_mm_per_h: float
    wide_mm: float


# Water: Saxton and Rawls 2006; clay from Israelsen 1932 (New Mexico State) as weight x density.
# Intake: FAO training annex, a soil course's table, and New Mexico State, whichever is lowest; a texture that
# only the fastest table names takes the nearest one below it.
SOILS: dict[str, Soil] = {
    "sand": Soil(0.10, 0.05, 20.0, 300),
    "loamy sand": Soil(0.12, 0.05, 20.0, 350),
    "sandy loam": Soil(0.18, 0.08, 10.0, 450),
    "loam": Soil(0.28, 0.14, 5.0, 600),
    "silt loam": Soil(0.31, 0.11, 5.0, 600),
    "silt": Soil(0.30, 0.06, 5.0, 600),
    "clay loam": Soil(0.36, 0.22, 4.7, 750),
    "silty clay loam": Soil(0.38, 0.22, 4.7, 750),
    "silty clay": Soil(0.41, 0.27, 1.0, 900),
    "clay": Soil(0.443, 0.217, 1.0, 900),
}
SoilName = Literal[
    "sand", "loamy sand", "sandy loam", "loam", "silt loam", "silt", "clay loam", "silty clay loam", "silty clay",
    "clay",
]  # fmt: skip

# Water for a stem at each watering. Cool: University of Minnesota. Warm: University of Florida's 2, and 3 from a
# nursery column.
Summer = Literal["cool", "warm"]
US_GAL_PER_IN: dict[str, Bounds] = {"cool": Bounds(1, 1.5), "warm": Bounds(2, 3)}
LITRES_PER_CM = {summer: rates.times(convert(1, "US gal/in", "L/cm")) for summer, rates in US_GAL_PER_IN.items()}
POT_SHARE = Bounds(0.25, 0.30)  # of its pot, for a shrub: University of Minnesota
ROOTED_MONTHS_PER_IN = Bounds(3, 4)  # see references.ESTABLISHED
POT_MONTHS_PER_IN = Bounds(1, 2)  # and so many more from a container


def _year(
    first: Words, daily_until: int, then: Words, then_until: int, every: tuple[int, int]
) -> tuple[GrowthStage, ...]:
    """Return a first year by its days: daily, then every few days, then weekly."""
    return (
        GrowthStage(first, 0, daily_until, 1, 1),
        GrowthStage(then, daily_until, then_until, *every),
        GrowthStage("to the end of the year", then_until, YEAR_DAYS, 7, 7),
    )


# The first year: University of Minnesota where summers are cool; University of Florida for calliper to 50 mm where
# they are warm, and for larger trees there a nursery column.
_FORTNIGHT = f"weeks {bare(1)} to {bare(2)}"
FIRST_YEAR: dict[str, tuple[GrowthStage, ...]] = {
    "cool": _year(_FORTNIGHT, 14, f"weeks {bare(3)} to {bare(12)}", 84, (2, 3)),
    "warm": _year(_FORTNIGHT, 14, f"the next {Count(2, 'month', 'months')}", 75, (2, 2)),
}
WARM_BY_CALLIPER_MM = (
    (100, _year(f"weeks {bare(1)} to {bare(6)}", 42, f"the next {Count(5, 'month', 'months')}", 194, (2, 2))),
    (50, _year(f"month {bare(1)}", 30, f"the next {Count(3, 'month', 'months')}", 121, (2, 2))),
)


def first_year(summer: str, calliper_mm: float | None) -> tuple[GrowthStage, ...]:
    """Return the stages of the first year for a summer and a calliper."""
    if summer == "warm" and calliper_mm is not None:
        return next((year for over, year in WARM_BY_CALLIPER_MM if calliper_mm > over), FIRST_YEAR[summer])
    return FIRST_YEAR[summer]


def stage_on(stages: tuple[GrowthStage, ...], day: float) -> GrowthStage:
    """Return the stage of a day after planting: day 14 is the last of one that ends on it; else the last one."""
    return next((stage for stage in stages if day <= stage.end_day), stages[-1])


def nearest_soil(words: str) -> str | None:
    """Return the texture that words such as `heavy clay loam` name, the longest that fits, or None."""
    said = words.casefold()
    named = [name for name in SOILS if name in said]
    return max(named, key=len) if named else None
