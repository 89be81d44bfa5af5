"""When trained fruit is pruned and how short, by fruit and hemisphere.

A month falls into thirds here: early to the 10th, mid to the 20th, late from the 21st.
"""

from calendar import monthrange
from dataclasses import dataclass
from datetime import date

from howto.families.espalier import references as by
from howto.families.espalier.measures import EspalierMeasures, Fruit
from howto.model.reference import Reference
from howto.quantities.amounts import Words, month_named
from howto.seasons import Hemisphere, month_here

SHORTEST_CUT_MM = 200.0
MAIN_LEAVES = 3
SPUR_LEAVES = 1
BLOSSOM_SPRINGS = 3  # see references.ESPALIERS
THINNING_MONTHS_NORTH = (11, 12, 1, 2, 3)
REGROWTH_MONTH_NORTH = 9


@dataclass(frozen=True, slots=True)
class PruningTime:
    """A stretch of the northern year in which a fruit is pruned, from (month, day) to (month, day)."""

    start: tuple[int, int]
    end: tuple[int, int]
    words: Words
    reference: Reference


@dataclass(frozen=True, slots=True)
class Stubs:
    """What is left of a shoot from the stem or an arm, and of one from a spur, in mm; leaves where they count."""

    main_mm: float
    spur_mm: float
    counts_leaves: bool
    references: tuple[Reference, ...]


WINDOWS: dict[Fruit, PruningTime] = {
    "pear": PruningTime((7, 21), (8, 10), f"late {month_named(7)} to early {month_named(8)}", by.SUMMER),
    "apple": PruningTime((8, 11), (8, 31), f"mid to late {month_named(8)}", by.SUMMER),
    "stone fruit": PruningTime((3, 1), (8, 31), "spring and summer, on a dry day", by.STONE),
}
POME_STUBS = Stubs(75, 25, counts_leaves=True, references=(by.LEAVES, by.STUBS))
STONE_STUBS = Stubs(50, 25, counts_leaves=False, references=(by.STONE,))


def stubs_of(fruit: Fruit | None) -> Stubs:
    """Return how short a fruit's shoots are cut; one that is not known goes as an apple."""
    return STONE_STUBS if fruit == "stone fruit" else POME_STUBS


def cuts_mm(m: EspalierMeasures, stubs: Stubs) -> tuple[float, float, float]:
    """Return the shortest shoot that is cut, and what is left of one from the frame and of one from a spur."""
    return m.shortest_cut_mm or SHORTEST_CUT_MM, m.main_stub_mm or stubs.main_mm, m.spur_stub_mm or stubs.spur_mm


def leaves_of(m: EspalierMeasures) -> tuple[int, int]:
    """Return how many leaves are left on a shoot from the frame and on one from a spur."""
    return m.main_leaves or MAIN_LEAVES, m.spur_leaves or SPUR_LEAVES


def summer_months(fruit: Fruit, hemisphere: Hemisphere) -> tuple[int, ...]:
    """Return the months in which a fruit is summer pruned."""
    window = WINDOWS[fruit]
    return tuple(month_here(month, hemisphere) for month in range(window.start[0], window.end[0] + 1))


def next_window(fruit: Fruit, today: date, hemisphere: Hemisphere) -> tuple[date, date]:
    """Return the first and last day of the pruning that is open today, or of the next one."""
    window = WINDOWS[fruit]
    for year in (today.year - 1, today.year, today.year + 1):
        first = _day(window.start, year, hemisphere)
        last = _day(window.end, first.year + (month_here(window.end[0], hemisphere) < first.month), hemisphere)
        if last >= today:
            return first, last
    raise AssertionError("one of three years holds the next window")  # pragma: no cover - a year always ends


def _day(place: tuple[int, int], year: int, hemisphere: Hemisphere) -> date:
    month = month_here(place[0], hemisphere)
    last = place[1] >= 28  # the end of a month is its end in either half of the year
    return date(year, month, monthrange(year, month)[1] if last else place[1])


def next_month(month: int, after: date) -> date:
    """Return the first day of a month, the next on or after a day."""
    year = after.year + ((after.month, after.day) > (month, 1))
    return date(year, month, 1)


def lowered_on(today: date, tier: int, hemisphere: Hemisphere) -> date:
    """Return the first day of late autumn in which the `tier`-th tier still to make (from 1) is laid level.

    Its arms grow in the summer before; a summer that has begun is too late to start in.
    """
    summer = next_month(month_here(6, hemisphere), today)
    autumn = next_month(month_here(11, hemisphere), summer)
    return date(autumn.year + tier - 1, autumn.month, 1)
