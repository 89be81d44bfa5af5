"""What is known of a lawn: its grass and range, its growth, how it stands, and its way down."""

from math import ceil, floor
from typing import NamedTuple

from howto.families.mowing import formulae
from howto.families.mowing.measures import MowingMeasures
from howto.families.mowing.references import GROWTH
from howto.model.plants import Grass, Mowing
from howto.model.reference import MEASURED, Reference
from howto.model.work import Work

T = Work[MowingMeasures]

WAIT_DAYS = 3.0  # see references.WAIT
GROWTH_MM_PER_DAY = 4.0  # see references.GROWTH
SHADE_MM = 13.0  # the least raise; see references.SHADE
FORGIVEN_MM = 1.0  # ranges are exact inches: 50 mm keeps a range that starts at 2 in


class Shade(NamedTuple):
    """The least set height in shade, how it was found, and the range for shade where the grass has its own."""

    least_mm: float
    working: str
    row: Mowing | None


class WayDown(NamedTuple):
    """The height after each cut, what grows back between two, and whether growth is so fast that it was left out."""

    heights: tuple[float, ...]
    between_mm: float
    never: bool


def grass_of(work: T) -> Grass | None:
    """Return the grass the author named, or None where it is left out or unknown."""
    name = work.measures.grass
    return work.book.grass(name) if name else None


def range_of(work: T) -> Mowing | None:
    """Return the mowing range of the grass in the author's climate: the named one, or the only one."""
    grass = grass_of(work)
    if grass is None:
        return None
    wanted = (work.measures.climate or "").casefold()
    if wanted:
        return next((row for row in grass.mowing if row.climate.casefold() == wanted), None)
    return grass.mowing[0] if len(grass.mowing) == 1 else None


def source_of(grass: Grass, row: Mowing) -> Reference:
    """Return who set a range."""
    return row.reference(f"mowing heights of {grass.botanical}, {row.climate}")


def in_range(row: Mowing, set_height_mm: float) -> bool:
    """Tell whether a set height keeps a range, less than a millimetre forgiven."""
    return row.low_mm - FORGIVEN_MM < set_height_mm < row.high_mm + FORGIVEN_MM


def inside(row: Mowing, height_mm: float) -> int:
    """Return the whole millimetre in a range that is nearest to a height outside it."""
    low, high = ceil(row.low_mm), floor(row.high_mm)
    if low > high:  # a range as narrow as 63.5 to 63.5 mm
        return round(row.low_mm)
    return low if height_mm < low else high


def in_shade(work: T) -> Shade | None:
    """Return the least set height in shade, or None where no range is known."""
    grass, row = grass_of(work), range_of(work)
    if grass is None or row is None:
        return None
    own = next((each for each in grass.mowing if each.climate == row.climate.replace("sun", "shade")), row)
    if "shade" in own.climate:
        return Shade(own.low_mm, f"the range in shade starts at {own.low_mm:g} mm", own)
    least = min(row.low_mm + SHADE_MM, row.high_mm)
    working = f"{row.low_mm:g} mm, the bottom of the range, + {SHADE_MM:g} mm"
    if least < row.low_mm + SHADE_MM:
        working += f", no higher than {row.high_mm:g} mm, its top"
    return Shade(least, working, None)


def growth(work: T) -> tuple[float, Reference]:
    """Return growth in mm a day and who says so: the crew, the plant book, or memory."""
    m = work.measures
    if m.growth_mm_per_day is not None:
        return m.growth_mm_per_day, MEASURED
    grass = grass_of(work)
    if grass is not None and (fact := grass.growth_mm_per_day) is not None:
        return fact.middle, fact.reference(f"growth of {grass.botanical}")
    return GROWTH_MM_PER_DAY, GROWTH


def standing(m: MowingMeasures) -> float:
    """Return how high the grass stands in mm; its mowing height where none is written."""
    return m.standing_height_mm or formulae.mow_at_mm(m.set_height_mm)


def first_cut(m: MowingMeasures) -> float:
    """Return the height in mm that today's cut leaves: as written, else the set height or two thirds."""
    return m.cut_height_mm or max(m.set_height_mm, formulae.lowest_cut_mm(standing(m)))


def wait_days(m: MowingMeasures) -> float:
    """Return the days between two cuts on the way down."""
    return WAIT_DAYS if m.stage_wait_days is None else m.stage_wait_days


def way_down(m: MowingMeasures) -> WayDown:
    """Return the cuts from today's to the set height, none of more than a third; empty where it stands no higher.

    What grows back between two cuts counts where the author wrote how fast it grows.
    """
    between = (m.growth_mm_per_day or 0.0) * wait_days(m)
    never = not formulae.comes_down(m.set_height_mm, between)
    between = 0.0 if never else between
    stands = standing(m)
    lowest = max(m.set_height_mm, formulae.lowest_cut_mm(stands))
    first = m.cut_height_mm if m.cut_height_mm and lowest <= m.cut_height_mm < stands else lowest
    if stands <= m.set_height_mm:
        return WayDown((), between, never)
    if first <= m.set_height_mm + formulae.DUST_MM:
        return WayDown((first,), between, never)
    rest = formulae.heights_down_mm(first + between, m.set_height_mm, between)
    return WayDown((first, *rest), between, never)
