"""The arithmetic of how many plants, and what the measures say of them. An order is rounded up, never down."""

from math import ceil, floor, hypot, sqrt

from howto.families.planting.measures import PlantingMeasures

TRIANGLE = sqrt(3) / 2  # 0.866: from row to row, where every plant stands the same distance from the next
DUST = 1e-9  # kept from making one plant more
MOST_DUST = 1e-3  # of a plant: in millions of them dust never makes one less


def per_m2(spacing_mm: float, *, triangle: bool = False) -> float:
    """Return the plants a square metre on a square grid; on a triangular one 2/√3 as many."""
    return 1e6 / spacing_mm**2 / (TRIANGLE if triangle else 1)


def triangle_row_gap_mm(spacing_mm: float) -> float:
    """Return the distance between the rows of a triangular grid."""
    return spacing_mm * TRIANGLE


def grid_count(area_m2: float, spacing_mm: float, *, triangle: bool = False) -> int:
    """Return the plants that fill an area on a square or a triangular grid."""
    return _up(area_m2 * per_m2(spacing_mm, triangle=triangle))


def edge_grid(length_mm: float, width_mm: float, spacing_mm: float) -> tuple[int, int]:
    """Return the plants along each side of a square grid that stands on the edge of a bed."""
    return floor(length_mm / spacing_mm + DUST) + 1, floor(width_mm / spacing_mm + DUST) + 1


def row_count(length_mm: float, spacing_mm: float) -> int:
    """Return the plants of a row whose end plants stand half a spacing in."""
    return _up(length_mm / spacing_mm)


def per_metre(spacing_mm: float, rows: int = 1) -> float:
    """Return the plants a metre of one or more rows."""
    return rows * 1000 / spacing_mm


def neighbour_mm(spacing_mm: float, row_gap_mm: float) -> float:
    """Return the distance from a plant to the next in the row beside it, staggered by half a spacing."""
    return hypot(spacing_mm / 2, row_gap_mm)


def sloped(level: float, slope_percent: float) -> float:
    """Return the sloped face of what was measured level: an area, or a length up the slope."""
    return level * hypot(1, slope_percent / 100)


def with_spare(count: int, spare_percent: float) -> int:
    """Return an order with a share over for losses."""
    return _up(count * (1 + spare_percent / 100))


def _up(exact: float) -> int:
    """Return a count rounded up, at least one plant; arithmetic dust makes no plant."""
    return max(1, ceil(exact - min(DUST * max(1.0, exact), MOST_DUST)))


def area_m2(m: PlantingMeasures) -> float | None:
    """Return the face that is planted: as written or length by width, measured up the slope."""
    level = m.area_m2
    if level is None and m.bed_length_m is not None and m.bed_width_m is not None:
        level = m.bed_length_m * m.bed_width_m
    return None if level is None else sloped(level, m.slope_percent or 0.0)


def plants(m: PlantingMeasures) -> int | None:
    """Return the plants that the layout takes, without any to spare; None where a measure is missing."""
    if m.spacing_mm is None:
        return None
    if m.layout == "row":
        return None if m.row_length_m is None else row_count(m.row_length_m * 1000, m.spacing_mm) * m.row_count
    if m.layout == "edge":
        sides = edge_sides(m)
        return None if sides is None else sides[0] * sides[1]
    area = area_m2(m)
    return None if area is None else grid_count(area, m.spacing_mm, triangle=m.layout == "triangle")


def edge_mm(m: PlantingMeasures) -> tuple[float, float]:
    """Return the length of a bed and its width up the slope; nought for what is not written."""
    return (m.bed_length_m or 0.0) * 1000, sloped(m.bed_width_m or 0.0, m.slope_percent or 0.0) * 1000


def edge_sides(m: PlantingMeasures) -> tuple[int, int] | None:
    """Return the plants along the length and up the width of a grid that stands on the edge."""
    if m.spacing_mm is None or m.bed_length_m is None or m.bed_width_m is None:
        return None
    return edge_grid(*edge_mm(m), m.spacing_mm)


def to_order(m: PlantingMeasures) -> int | None:
    """Return the plants to order, those to spare among them."""
    count = plants(m)
    return None if count is None else with_spare(count, m.spare_percent or 0.0)
