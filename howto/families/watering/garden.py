"""What a garden needs in a month without rain: the one door through which a visit's leaflet asks for litres."""

from datetime import date
from math import ceil
from typing import NamedTuple

from howto.families.watering import formulae, soil_water
from howto.families.watering import references as by
from howto.families.watering.tables import CROPS, SOILS, SPECIES, nearest_soil
from howto.families.watering.weather import Weather, terms
from howto.model.crew import Climate, Crew
from howto.model.reference import Reference
from howto.quantities.amounts import Word, Words, bare, mm, qty
from howto.quantities.cans import usual_can_l

EFFICIENCIES = {
    "sprinkler": (0.75, by.EFFICIENCY),
    "drip": (0.81, by.EFFICIENCY),
    "hose": (0.9, by.HAND_EFFICIENCY),
    "can": (0.9, by.HAND_EFFICIENCY),
}
USUAL_ROOT_MM = 300.0  # from memory: where most roots of beds and young hedges are
USUAL_SOIL = "loam"
LEAST_USE_MM = 0.001  # ours: a planting that uses less in a day needs no watering
USUAL_P = 0.5  # see references.USUAL_DEPLETION
NUMBERS = ("no", "one", "two", "three", "four", "five", "six")
MOST_CANS = 6  # ours: over this many at a time a reader wants litres
_TIMES = {1: "once a week", 2: "twice a week", 7: "every day"}
_QUARTERS = {1: "a quarter full", 2: "half full", 3: "three quarters full"}


class GardenWater(NamedTuple):
    """A planting's water in one month, with the arithmetic and who says so."""

    month: int
    coefficient: float
    plant_mm_per_day: float
    net_litres_a_week: float
    litres_a_week: float
    days_between: int
    working: tuple[Words, ...]
    references: tuple[Reference, ...]


def signed_latitude(crew: Crew) -> float:
    """Return the crew's latitude, below 0 in the south however it was written."""
    return -abs(crew.latitude_deg) if crew.hemisphere == "south" else crew.latitude_deg


def mid_month_day(month: int) -> int:
    """Return the day of the year of a month's 15th, which stands for the month."""
    return date(2023, month, 15).timetuple().tm_yday


def monthly_weather(climate: Climate, latitude_deg: float, altitude_m: float, month: int) -> Weather:
    """Return a month (1 to 12) of a climate as weather."""
    at, before = month - 1, (month - 2) % 12
    low, high = sorted((climate.min_c[at], climate.max_c[at]))
    return Weather(
        latitude_deg=latitude_deg,
        altitude_m=altitude_m,
        day=mid_month_day(month),
        max_c=high,
        min_c=low,
        humidity_percent=climate.humidity_percent[at],
        wind_m_per_s=climate.wind_m_per_s[at],
        sunshine_hours=climate.sunshine_hours[at],
        month_c=(low + high) / 2,
        previous_c=(climate.min_c[before] + climate.max_c[before]) / 2,
    )


def reference_et_mm_per_day(climate: Climate, latitude_deg: float, altitude_m: float, month: int) -> float:
    """Return a month's reference evapotranspiration in mm a day, by the full FAO-56 formula; at least 0."""
    return max(0.0, terms(monthly_weather(climate, latitude_deg, altitude_m, month)).mm_per_day)


def year_of_reference_et(crew: Crew) -> tuple[float, ...]:
    """Return the twelve months' reference evapotranspiration in mm a day, January first; empty without climate."""
    if crew.climate is None:
        return ()
    place = signed_latitude(crew), crew.altitude_m
    return tuple(reference_et_mm_per_day(crew.climate, *place, month) for month in range(1, 13))


def thirstiest_month(crew: Crew) -> int | None:
    """Return the month with the highest reference evapotranspiration, or None without climate."""
    year = year_of_reference_et(crew)
    return year.index(max(year)) + 1 if year else None


def soil_of(crew: Crew) -> str:
    """Return the texture of the crew's soil, else loam."""
    return nearest_soil(crew.soil) or USUAL_SOIL


def soil_reference(soil: str) -> Reference:
    """Return who says how much a texture holds."""
    return by.SOIL_WATER_CLAY if soil == "clay" else by.SOIL_WATER


def garden_water(
    crew: Crew, month: int, area_m2: float, *, plant_water: str = "moderate", crop: str = "", method: str = "hose"
) -> GardenWater | None:
    """Return the water a planting needs in a month (1 to 12), or None where the crew keeps no climate.

    `crop` (a name of tables.CROPS) stands before `plant_water` (very low, low, moderate, high); `method` sets
    what part of the water reaches the roots. KeyError for a crop, plant water or method that is not known.
    """
    if crew.climate is None:
        return None
    reference = reference_et_mm_per_day(crew.climate, signed_latitude(crew), crew.altitude_m, month)
    known = CROPS[crop] if crop else None
    factor = known.middle if known else SPECIES[plant_water][0]
    use = formulae.plant_water_mm(reference, factor)
    net = formulae.litres(area_m2, use * 7)
    efficiency, source = EFFICIENCIES[method]
    total = formulae.applied(net, efficiency)
    texture = soil_of(crew)
    soil, p = SOILS[texture], soil_water.adjusted_depletion(known.depletion if known else USUAL_P, use)
    holds = soil_water.total_available_mm(soil.field_capacity, soil.wilting_point, USUAL_ROOT_MM / 1000)
    easy = soil_water.readily_available_mm(holds, p)
    plants = (by.FAO56_TABLES,) if crop else (by.LANDSCAPE, by.SPECIES_FACTORS, by.DENSITY_FACTORS, by.USUAL_DEPLETION)
    return GardenWater(
        month=month,
        coefficient=factor,
        plant_mm_per_day=use,
        net_litres_a_week=net,
        litres_a_week=total,
        days_between=soil_water.whole_days(soil_water.days_between(easy, max(use, LEAST_USE_MM))),
        working=(
            f"reference: {mm(reference)} a day",
            f"plants: {bare(reference)} x {bare(factor)} = {mm(use)} a day, {mm(use * 7)} a week",
            f"{qty(area_m2, 'm²')} x {mm(use * 7)} = {qty(net, 'L')} a week at the roots",
            f"{bare(net)} / {bare(efficiency)} = {qty(total, 'L')} a week put on",
            f"{Word(texture)}, roots {mm(USUAL_ROOT_MM)}: {mm(easy)} easily taken / {mm(use)} a day",
        ),
        references=(by.FAO56, *plants, by.LITRE_A_MM, source, by.FAO56_SOIL, soil_reference(texture)),
    )


def times_a_week(days_between: float) -> int:
    """Return how many waterings a week keep each gap at most `days_between` days: 1 to 7."""
    return max(1, min(7, ceil(7 / max(1.0, days_between) - 1e-9)))


def times_words(times: int) -> Words:
    """Return how often in words: `twice a week`, `4 times a week`."""
    return _TIMES.get(times, f"{bare(times)} times a week")


def can_words(litres_each: float, times: int, system: str = "metric", can_l: float | None = None) -> Words:
    """Return a watering in the simplest true words: `two full 9 L cans, twice a week`; never less than asked for.

    Cans are filled alike, to the quarter upwards; over six are given as litres.
    """
    size = can_l or usual_can_l(system)
    often = Word(times_words(times))
    cans = formulae.as_cans(litres_each * times, size, times)
    if cans.number > MOST_CANS:
        return f"{qty(litres_each, 'L')}, {often}"
    quarters = ceil(cans.fullness * 4 - 1e-9)
    full = "full " if quarters >= 4 else ""
    if cans.number == 1:
        told = Word(f"one {full}{qty(size, 'L')} can")
    else:
        told = Word(f"{Word(NUMBERS[cans.number])} {full}{qty(size, 'L')} cans")
    if full:
        return f"{told}, {often}"
    each = "" if cans.number == 1 else "each "
    return f"{told}, {Word(each + _QUARTERS[max(1, quarters)])}, {often}"
