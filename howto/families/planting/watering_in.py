"""The arithmetic of water for what was planted, and of the time it takes to root: numbers in, number out."""

from typing import Final, NamedTuple

from howto.quantities import convert

MONTH_DAYS: Final = 365 / 12


class Span(NamedTuple):
    """The least and the most that sources advise."""

    low: float
    high: float

    def times(self, factor: float) -> "Span":
        """Return both ends multiplied."""
        return Span(self.low * factor, self.high * factor)


class Stage(NamedTuple):
    """A stretch of days since planting, and the days from one watering to the next, at the least and the most."""

    start_day: int
    end_day: int
    every_low: int
    every_high: int


# US gallons an inch of calliper, each time
COOL_GAL_PER_IN: Final = Span(1.0, 1.5)  # University of Minnesota Extension
WARM_GAL_PER_IN: Final = Span(2.0, 3.0)  # UF/IFAS Charlotte County, 2; a nursery column, 2 to 3
# US gallons an inch of calliper, a week
WEEK_GAL_PER_IN: Final = Span(5.0, 7.5)  # Georgia Forestry Commission
DRY_WEEK_GAL_PER_IN: Final = 10.0  # US Cooperative Extension (eXtension), a dry summer
FIRST_GAL: Final = Span(10.0, 20.0)  # UF/IFAS Okeechobee County, on the day of planting
POT_SHARE: Final = Span(0.25, 0.30)  # University of Minnesota Extension
MONTHS_PER_IN: Final = Span(3.0, 4.0)  # UF/IFAS, ENH857, where it is warm
POT_MONTHS_PER_IN: Final = Span(1.0, 2.0)  # and more from a container
TWELVE_WEEKS: Final = 84
YEAR: Final = 365


def litres_per_cm(gal_per_in: float) -> float:
    """Return litres a centimetre of calliper for US gallons an inch."""
    return convert(gal_per_in, "US gal/in", "L/cm")


def by_calliper(calliper_mm: float, gal_per_in: Span) -> Span:
    """Return the litres that a trunk asks for."""
    return Span(*map(litres_per_cm, gal_per_in)).times(calliper_mm / 10)


def on_the_day() -> Span:
    """Return the litres that settle and soak a new tree on the day."""
    return Span(*(convert(gallons, "US gal", "L") for gallons in FIRST_GAL))


def by_pot(pot_l: float) -> Span:
    """Return the litres that a new shrub takes each time, by the pot it came in."""
    return POT_SHARE.times(pot_l)


def minutes(litres: float, litres_per_min: float) -> float:
    """Return how long a hose of known flow takes."""
    return litres / litres_per_min


def months_to_root(calliper_mm: float, *, container: bool) -> Span:
    """Return the months until a tree is established where it is warm."""
    inches = convert(calliper_mm, "mm", "in")
    more = POT_MONTHS_PER_IN if container else Span(0.0, 0.0)
    return Span(MONTHS_PER_IN.low + more.low, MONTHS_PER_IN.high + more.high).times(inches)


def stages(summers: str, calliper_mm: float, rooted_day: int) -> tuple[Stage, ...]:
    """Return how often to water since planting: daily, then every few days, then weekly until rooted.

    Cool summers: University of Minnesota Extension. Warm ones: UF/IFAS Charlotte County up to 50 mm of calliper,
    a nursery column above. A tree that roots sooner than a stretch ends is not watered to its end.
    """
    if summers == "cool":
        first, second, every = 14, TWELVE_WEEKS, (2, 3)
    else:
        first, second = (14, 75) if calliper_mm <= 50 else (30, 121) if calliper_mm <= 100 else (42, 194)
        every = (2, 2)
    last = max(rooted_day, first)
    found = (Stage(0, first, 1, 1), Stage(first, min(second, last), *every), Stage(second, last, 7, 7))
    return tuple(stage for stage in found if stage.start_day < stage.end_day)


def waterings(days: int, every_low: int, every_high: int) -> Span:
    """Return the fewest and the most waterings in a stretch of days."""
    return Span(days / every_high, days / every_low)
