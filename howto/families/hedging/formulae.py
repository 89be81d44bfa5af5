"""The arithmetic of hedges: numbers in, number out."""

from math import atan, ceil, degrees, floor, hypot

DUST = 1e-9


def angle_deg(base_mm: float, top_mm: float, height_mm: float) -> float:
    """Return how far each side leans in from upright: atan((base - top) / (2 x height)), in degrees."""
    return degrees(atan((base_mm - top_mm) / (2 * height_mm)))


def in_each_side_mm(base_mm: float, top_mm: float) -> float:
    """Return how far each side comes in from foot to top."""
    return (base_mm - top_mm) / 2


def base_for_mm(top_mm: float, wider: float = 1 / 3) -> float:
    """Return the base that is wider than the top by a share of the top: a third unless told."""
    return top_mm * (1 + wider)


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


def lowest_cut_mm(standing_mm: float, share: float = 1 / 3) -> float:
    """Return the lowest height to which one cut may come that takes `share` of the standing height."""
    return standing_mm * (1 - share)


def staged_heights(
    standing_mm: float, finished_mm: float, regrowth_mm: float = 0.0, share: float = 1 / 3
) -> tuple[float, ...]:
    """Return the heights of cuts that come down to `finished_mm`, none taking over `share` of what then stands.

    `regrowth_mm` grows between two cuts. ValueError where growth wins back what each cut takes.
    """
    heights: list[float] = []
    stands = standing_mm
    while stands * (1 - share) > finished_mm * (1 + DUST):
        down = lowest_cut_mm(stands, share)
        if heights and regrowth_mm and down >= heights[-1] - DUST:
            raise ValueError("it grows back as much as each cut takes")
        heights.append(down)
        stands = down + regrowth_mm
    heights.append(finished_mm)
    return tuple(heights)


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
        if len(steps) > 1000:
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


def plants_in_a_row(length_mm: float, spacing_mm: float) -> int:
    """Return the plants of one row by the nursery's rule, the nearest whole number of spacings."""
    return max(1, floor(length_mm / spacing_mm + 0.5))


def neighbour_mm(spacing_mm: float, row_gap_mm: float) -> float:
    """Return how far a plant stands from its nearest neighbour in the next row, half a spacing along."""
    return hypot(spacing_mm / 2, row_gap_mm)


def passed_face_mm(wanted_width_mm: float, inside_mm: float, *, hard_faces: int = 1) -> float:
    """Return the width right after a renovation cut that goes `inside_mm` inside the wanted face."""
    return wanted_width_mm - hard_faces * inside_mm


def minutes_for(face_m2: float, rate_m2_per_h: float) -> float:
    """Return the time one person takes, in minutes."""
    return face_m2 / rate_m2_per_h * 60
