"""What is known of a lawn: its grass and range, its growth, how it stands, and its way down."""

from math import ceil, floor
from typing import NamedTuple

from howto.families.mowing import formulae
from howto.families.mowing import references as by
from howto.families.mowing.measures import MowingMeasures
from howto.model.family import SHARE, Limit
from howto.model.plants import Grass, Mowing
from howto.model.reference import MEASURED, Reference
from howto.model.work import Work
from howto.quantities.amounts import Range, Words, mm

T = Work[MowingMeasures]

THIRD = Limit(unit=SHARE, of="of the height in one cut", high=1 - formulae.KEPT, reference=by.UC_AMOUNT)
WAIT_DAYS = 3.0  # see references.WAIT
GROWTH_MM_PER_DAY = 4.0  # the middle of what references.GROWTH says
RAISE = Range(13, 25, "mm")  # in shade; see references.SHADE
FORGIVEN_MM = 1.0  # ranges are exact inches: 50 mm keeps a range that starts at 2 in


class Shade(NamedTuple):
    """The least set height in shade, how it was found, who says so, and the grass's own range for shade if any."""

    least_mm: float
    working: Words
    source: Reference
    row: Mowing | None = None


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


def ends(row: Mowing) -> Words:
    """Return both ends of a range, as words that hold them."""
    return f"{mm(row.low_mm, 4)} to {mm(row.high_mm, 4)}"


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
        working = f"the range in shade starts at {mm(own.low_mm, 4)}"
        return Shade(own.low_mm, working, source_of(grass, own), own)
    least = min(row.low_mm + RAISE.low, row.high_mm)
    top = f", no higher than {mm(row.high_mm, 4)}, its top" if least < row.low_mm + RAISE.low else ""
    working = f"{mm(row.low_mm, 4)}, the bottom of the range, + {mm(RAISE.low)}{top}"
    return Shade(least, working, source_of(grass, row))


def growth(work: T) -> tuple[float, Reference]:
    """Return growth in mm a day and who says so: the crew, the plant book, or memory."""
    m = work.measures
    if m.growth_mm_per_day is not None:
        return m.growth_mm_per_day, MEASURED
    grass = grass_of(work)
    if grass is not None and (fact := grass.growth_mm_per_day) is not None:
        return fact.middle, fact.reference(f"growth of {grass.botanical}")
    return GROWTH_MM_PER_DAY, by.GROWTH


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
    if stands <= m.set_height_mm:
        return WayDown((), between, never)
    first = lowest = max(m.set_height_mm, formulae.lowest_cut_mm(stands))
    if m.cut_height_mm and lowest <= m.cut_height_mm < stands:
        first = m.cut_height_mm
    if first <= m.set_height_mm + formulae.DUST_MM:
        return WayDown((first,), between, never)
    return WayDown((first, *formulae.heights_down_mm(first + between, m.set_height_mm, between)), between, never)
