"""The arithmetic of hedges: numbers in, number out."""

from fractions import Fraction
from math import atan, ceil, degrees, hypot

DUST = 1e-9
MOST = Fraction(1, 3)  # of what stands, in one cut; see references.RENOVATION
WIDER = Fraction(1, 3)  # of the top: how much wider the base is; see references.RATIO
MOST_CUTS = 1000  # on the way up


def angle_deg(base_mm: float, top_mm: float, height_mm: float) -> float:
    """Return how far each side leans in from upright: atan((base - top) / (2 x height)), in degrees."""
    return degrees(atan((base_mm - top_mm) / (2 * height_mm)))


def in_each_side_mm(base_mm: float, top_mm: float) -> float:
    """Return how far each side comes in from foot to top."""
    return (base_mm - top_mm) / 2


def base_for_mm(top_mm: float) -> float:
    """Return the base that is wider than the top by the share advised."""
    return top_mm * (1 + WIDER)


def width_at_mm(base_mm: float, top_mm: float, height_mm: float, up_mm: float) -> float:
    """Return the width of a tapered hedge at a height above its foot."""
    return base_mm + (top_mm - base_mm) * up_mm / height_mm


def section_mm2(base_mm: float, top_mm: float, height_mm: float) -> float:
    """Return the area of the hedge cut across: a trapezium."""
    return (base_mm + top_mm) / 2 * height_mm


def share_off(before: float, after: float) -> float:
    """Return the part of `before` (0 to 1) that a cut to `after` takes; negative where nothing comes off."""
    return 1 - after / before


def share_of_length(share_of_volume: float) -> float:
    """Return the part of each branch's length that a part of the crown's volume answers to: 1 - (1 - v)^(1/3)."""
    return float(1 - (1 - share_of_volume) ** (1 / 3))


def face_mm2_per_mm(base_mm: float, top_mm: float, height_mm: float) -> float:
    """Return the surface to trim along each mm of hedge: two sloping faces and the top."""
    return 2 * hypot(height_mm, in_each_side_mm(base_mm, top_mm)) + top_mm


def lowest_cut_mm(standing_mm: float) -> float:
    """Return the lowest height to which one cut may come."""
    return standing_mm * (1 - MOST)


def staged_heights(standing_mm: float, finished_mm: float) -> tuple[float, ...]:
    """Return the heights of cuts that come down to `finished_mm`, none taking over a third of what then stands."""
    heights: list[float] = []
    down = lowest_cut_mm(standing_mm)
    while down > finished_mm * (1 + DUST):
        heights.append(down)
        down = lowest_cut_mm(down)
    return (*heights, finished_mm)


def shoots_after(cuts: int, shoots: int = 1) -> int:
    """Return the shoots after so many cuts: a cut shoot makes two."""
    return shoots << cuts


def gain_mm(growth_mm: float, cut_back: float) -> float:
    """Return the height gained from one cut to the next: the growth less the share cut back."""
    return growth_mm * (1 - cut_back)


def heights_up_mm(
    start_mm: float, finished_mm: float, growth_mm: float, cut_back: float
) -> tuple[tuple[float, float], ...]:
    """Return (stands, cut to) at each cut of a hedge that rises from `start_mm` to `finished_mm`.

    It grows `growth_mm` between cuts and each cut takes back `cut_back` of that, until it can be cut at the
    finished height. ValueError where it gains nothing.
    """
    if gain_mm(growth_mm, cut_back) <= 0:
        raise ValueError("a hedge that is cut back to where it was never rises")
    steps: list[tuple[float, float]] = []
    cut = start_mm
    while cut < finished_mm - DUST:
        stands = cut + growth_mm
        cut = finished_mm if stands >= finished_mm - DUST else cut + gain_mm(growth_mm, cut_back)
        steps.append((stands, cut))
        if len(steps) > MOST_CUTS:
            raise ValueError("it takes over a thousand cuts")
    return tuple(steps)


def gap_mm(spacing_mm: float, plant_width_mm: float) -> float:
    """Return the gap between two neighbours; 0 where they touch."""
    return max(0.0, spacing_mm - plant_width_mm)


def years_to_close(gap: float, side_growth_mm_per_year: float) -> float:
    """Return the years until two neighbours, each growing towards the other, meet."""
    return gap / (2 * side_growth_mm_per_year)


def plants_per_metre(spacing_mm: float, rows: int = 1) -> float:
    """Return the plants in each metre of hedge, all rows together."""
    return rows * 1000 / spacing_mm


def spacing_for_mm(plants_a_metre: float, rows: int = 1) -> float:
    """Return the spacing along each row that sets so many plants in a metre of hedge."""
    return rows * 1000 / plants_a_metre


def plants_needed(length_mm: float, spacing_mm: float, rows: int = 1) -> int:
    """Return the plants for a length, half a spacing free at each end; a part of one counts as one."""
    return rows * max(1, ceil(length_mm / spacing_mm - DUST))


def neighbour_mm(spacing_mm: float, row_gap_mm: float) -> float:
    """Return how far a plant stands from its nearest neighbour in the next row, half a spacing along."""
    return hypot(spacing_mm / 2, row_gap_mm)


def minutes_for(face_m2: float, rate_m2_per_h: float) -> float:
    """Return the time one person takes, in minutes."""
    return face_m2 / rate_m2_per_h * 60
