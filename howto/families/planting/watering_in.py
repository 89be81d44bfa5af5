"""The water and the time that what was planted takes until it has rooted: arithmetic, then what the measures ask."""

from datetime import date, timedelta
from typing import Final, NamedTuple

from howto.families.planting.measures import PlantingMeasures
from howto.model.work import Work
from howto.quantities import convert
from howto.quantities.amounts import Range, Words, qty

T = Work[PlantingMeasures]


class LowHigh(NamedTuple):
    """The least and the most that sources advise."""

    low: float
    high: float

    def times(self, factor: float) -> "LowHigh":
        """Return both ends multiplied."""
        return LowHigh(self.low * factor, self.high * factor)

    def of(self, unit: str) -> Range:
        """Return both ends in a unit, as they stand in a sentence."""
        return Range(self.low, self.high, unit)


class WateringStage(NamedTuple):
    """A stretch of days since planting, and the days from one watering to the next, at the least and the most."""

    start_day: int
    end_day: int
    every_low: int
    every_high: int


# US gallons an inch of calliper, each time
COOL_GAL_PER_IN: Final = LowHigh(1.0, 1.5)  # University of Minnesota Extension
WARM_GAL_PER_IN: Final = LowHigh(2.0, 3.0)  # UF/IFAS Charlotte County, 2; a nursery column, 2 to 3
# US gallons an inch of calliper, a week
WEEK_GAL_PER_IN: Final = LowHigh(5.0, 7.5)  # Georgia Forestry Commission
DRY_WEEK_GAL_PER_IN: Final = 10.0  # US Cooperative Extension (eXtension), a dry summer
FIRST_GAL: Final = LowHigh(10.0, 20.0)  # UF/IFAS Okeechobee County, on the day of planting
POT_SHARE: Final = LowHigh(0.25, 0.30)  # University of Minnesota Extension
MONTHS_PER_IN: Final = LowHigh(3.0, 4.0)  # UF/IFAS, ENH857, where it is warm
POT_MONTHS_PER_IN: Final = LowHigh(1.0, 2.0)  # and more from a container
FIRST_WEEKS: Final = 12
YEAR: Final = 365
HOT_C: Final = 30.0  # summers count as warm where the hottest month's mean maximum reaches this


# -- arithmetic: numbers in, number out --


def litres_per_cm(gal_per_in: float) -> float:
    """Return litres a centimetre of calliper for US gallons an inch."""
    return convert(gal_per_in, "US gal/in", "L/cm")


def by_calliper(calliper_mm: float, gal_per_in: LowHigh) -> LowHigh:
    """Return the litres that a trunk asks for."""
    return LowHigh(*map(litres_per_cm, gal_per_in)).times(calliper_mm / 10)


def on_the_day() -> LowHigh:
    """Return the litres that settle and soak a new tree on the day."""
    return LowHigh(*(convert(gallons, "US gal", "L") for gallons in FIRST_GAL))


def by_pot(pot_l: float) -> LowHigh:
    """Return the litres that a new shrub takes each time, by the pot it came in."""
    return POT_SHARE.times(pot_l)


def months_to_root(calliper_mm: float, *, container: bool) -> LowHigh:
    """Return the months until a tree is established where it is warm."""
    more = POT_MONTHS_PER_IN if container else LowHigh(0.0, 0.0)
    each = LowHigh(MONTHS_PER_IN.low + more.low, MONTHS_PER_IN.high + more.high)
    return each.times(convert(calliper_mm, "mm", "in"))


def stages(summers: str, calliper_mm: float, rooted_day: int) -> tuple[WateringStage, ...]:
    """Return how often to water since planting: daily, then every few days, then weekly until rooted.

    Cool summers: University of Minnesota Extension. Warm ones: UF/IFAS Charlotte County up to 50 mm of calliper,
    a nursery column above. A tree that roots sooner than a stretch ends is not watered to its end.
    """
    if summers == "cool":
        first, second, every = 14, 7 * FIRST_WEEKS, (2, 3)
    else:
        first, second = (14, 75) if calliper_mm <= 50 else (30, 121) if calliper_mm <= 100 else (42, 194)
        every = (2, 2)
    last = max(rooted_day, first)
    found = (
        WateringStage(0, first, 1, 1),
        WateringStage(first, min(second, last), *every),
        WateringStage(second, last, 7, 7),
    )
    return tuple(stage for stage in found if stage.start_day < stage.end_day)


def waterings(days: int, stage: WateringStage) -> LowHigh:
    """Return the fewest and the most waterings in so many days of a stage."""
    return LowHigh(days / stage.every_high, days / stage.every_low)


# -- what the measures ask --


def planted_on(work: T, today: date) -> date:
    """Return the day of planting: today, or so many weeks ago as is written."""
    return today - timedelta(days=round((work.measures.planted_weeks or 0.0) * 7))


def summers(work: T) -> str:
    """Return `cool` or `warm`: as written, else by the crew's hottest month."""
    own, climate = work.measures.summers, work.crew.climate
    return own or ("warm" if climate is not None and max(climate.max_c) >= HOT_C else "cool")


def each_time(work: T) -> LowHigh | None:
    """Return the litres one plant takes each time: a tree by its trunk, else by its pot."""
    m = work.measures
    if m.calliper_mm is not None:
        return by_calliper(m.calliper_mm, WARM_GAL_PER_IN if summers(work) == "warm" else COOL_GAL_PER_IN)
    return None if m.pot_l is None else by_pot(m.pot_l)


def reckoned(m: PlantingMeasures, litres: LowHigh) -> Words:
    """Return how litres come of the trunk, or else of the pot."""
    if m.calliper_mm is None:
        return f"{POT_SHARE.times(100).of('%')} of its {qty(m.pot_l or 0, 'L', 3)} pot = {litres.of('L')}"
    cm = m.calliper_mm / 10
    return f"{qty(cm, 'cm', 3)} × {litres.times(1 / cm).of('L/cm')} = {litres.of('L')}"


def months_until_rooted(work: T) -> LowHigh | None:
    """Return the months until a tree has rooted; None where summers are cool, or its trunk is not known."""
    m = work.measures
    if m.calliper_mm is None or summers(work) != "warm":
        return None
    return months_to_root(m.calliper_mm, container=m.stock == "container")


def rooted_days(work: T) -> int:
    """Return the days until it is left to the weather: worked where it is warm, a year elsewhere."""
    months = months_until_rooted(work)
    return YEAR if months is None else round(months.high * YEAR / 12)
