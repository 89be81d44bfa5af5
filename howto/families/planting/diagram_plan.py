"""Plants from above at true spacing: a square grid beside a triangular one, a row, or a grid on the edge of a bed."""

from howto.families.planting import counts
from howto.families.planting.measures import PlantingMeasures
from howto.quantities.amounts import Count, Word, Words, bare, mm, qty
from howto.shapes import DimensionLine, Drawing, Label, Line, Point, Polygon, Role, Shape, arc, leafy, rectangle

FULL = 0.44  # of the spacing: half the width a plant is drawn
IN_GRID = 3  # plants along each side of the two grids that are compared
ACROSS = 4  # and along a bed whose size is not known
MOST_EDGE = 7
MOST_ROWS = 12


def plan(m: PlantingMeasures, spacing: float) -> Drawing:
    """Return the plan of the layout that is written."""
    if m.layout == "row":
        return _row(m, spacing)
    return _edge(m, spacing) if m.layout == "edge" else _grids(m, spacing)


def _plant(at: Point, spacing: float, role: Role = Role.KEEP) -> list[Shape]:
    radius = spacing * FULL
    crown = leafy(arc(at, radius, steps=28)[:-1], radius * 0.07, 13)
    middle = Polygon(arc(at, radius * 0.13, steps=12)[:-1], Role.WOOD)
    return [Polygon(crown, role), middle]


def _grids(m: PlantingMeasures, spacing: float) -> Drawing:
    """Return a square grid and a triangular one of the same spacing, the one that is planted framed."""
    gap = counts.triangle_row_gap_mm(spacing)
    second = spacing * (IN_GRID + 0.9)
    shapes: list[Shape] = []
    for row in range(3):
        for at in range(IN_GRID):
            shapes += _plant((spacing * at, spacing * row), spacing)
            shapes += _plant((second + spacing * (at + 0.5 * (row % 2)), gap * row), spacing)
    square, triangle = (f"{qty(counts.per_m2(spacing, triangle=each), '/m2')}" for each in (False, True))
    right = second + spacing * (IN_GRID - 0.5)
    left = 0.0 if m.layout == "square" else second
    shapes += [
        Line(((0, 0), (spacing, 0), (spacing, spacing), (0, spacing)), Role.ACCENT, closed=True),
        Line(((second, 0), (second + spacing, 0), (second + spacing / 2, gap)), Role.ACCENT, closed=True),
        Line(_frame(left, spacing, gap, triangle=m.layout == "triangle"), Role.CENTRE, closed=True),
        DimensionLine((0, 0), (spacing, 0), f"{mm(spacing)}", offset=-spacing * 0.75),
        DimensionLine((0, 0), (0, spacing), f"{mm(spacing)}", offset=spacing * 0.75),
        DimensionLine((second, 0), (second + spacing, 0), f"{mm(spacing)}", offset=-spacing * 0.75),
        DimensionLine((right, 0), (right, gap), f"{mm(gap)}", offset=-spacing * 0.8),
        Label((-spacing * 0.2, spacing * 2.2), f"square, {square}"),
        Label((second + spacing * (IN_GRID - 0.8), gap * 2.2), f"triangle, {triangle}"),
    ]
    return Drawing(
        shapes=tuple(shapes),
        caption=f"Plan: {Word(m.layout)} grid, {mm(spacing)} apart",
        alt=f"Two grids from above, plants {mm(spacing)} apart. Square: {square}. Triangle: {triangle}, rows {mm(gap)} "
        f"apart. Planted: {Word(m.layout)}.{_takes(m, 'This bed')}",
    )


def _takes(m: PlantingMeasures, what: Words) -> Words:
    """Return how many plants the whole takes, where it is known."""
    count = counts.plants(m)
    return f" {what} takes {Count(count, 'plant', 'plants')}." if count else ""


def _frame(left: float, spacing: float, gap: float, *, triangle: bool) -> tuple[Point, ...]:
    """Return a frame round one of the two grids."""
    out = spacing * 0.6
    right = spacing * (IN_GRID - 1) + (spacing / 2 if triangle else 0.0)
    return rectangle(left - out, -out, left + right + out, 2 * (gap if triangle else spacing) + out)


def _row(m: PlantingMeasures, spacing: float) -> Drawing:
    """Return the first plants of a row or rows, the end plants half a spacing in."""
    rows = min(m.row_count, 3)
    gap = (m.row_gap_mm or spacing) if rows > 1 else 0.0
    length, out = spacing * 5, spacing * 0.55
    top = gap * (rows - 1)
    shapes: list[Shape] = [Line(rectangle(0, -out, length, top + out), Role.LAST, closed=True)]
    for row in range(rows):
        shapes.append(Line(((-spacing * 0.2, gap * row), (length + spacing * 0.3, gap * row)), Role.CENTRE))
        for at in range(5 - row % 2):
            shapes += _plant((spacing * (at + (0.5 if row % 2 == 0 else 1.0)), gap * row), spacing)
    shapes += [
        DimensionLine((spacing * 0.5, 0), (spacing * 1.5, 0), f"{mm(spacing)}", offset=-spacing * 0.95),
        DimensionLine((0, 0), (spacing * 0.5, 0), f"in by {mm(spacing / 2)}", offset=-spacing * 1.5),
        Label((0, top / 2 + out * 0.8), "end of the row"),
    ]
    if rows > 1:
        near = counts.neighbour_mm(spacing, gap)
        shapes += [
            DimensionLine((0, 0), (0, gap), f"{mm(gap)}", offset=spacing * 0.5),
            Line(((spacing * 2.5, 0), (spacing * 3, gap)), Role.ACCENT),
            Label((spacing * 2.75, gap / 2), f"{mm(near)} plant to plant"),
        ]
    named = "A row" if rows == 1 else f"{bare(m.row_count)} staggered rows, {mm(gap)} apart,"
    return Drawing(
        shapes=tuple(shapes),
        caption=f"Plan: a plant every {mm(spacing)}",
        alt=f"{named} from above, a plant every {mm(spacing)}; the end plants stand {mm(spacing / 2)} in."
        f"{_takes(m, 'The length')}",
    )


def _edge(m: PlantingMeasures, spacing: float) -> Drawing:
    """Return a square grid whose outer plants stand on the edge of the bed."""
    along, across = counts.edge_sides(m) or (ACROSS, 3)
    shown = (min(along, MOST_EDGE), min(across, 5))
    long, wide = spacing * (shown[0] - 1), spacing * (shown[1] - 1)
    shapes: list[Shape] = []
    for row in range(shown[1]):
        for at in range(shown[0]):
            shapes += _plant((spacing * at, spacing * row), spacing)
    shapes += [
        Line(rectangle(0, 0, max(long, 1), max(wide, 1)), Role.ACCENT, closed=True),
        DimensionLine((0, 0), (spacing, 0), f"{mm(spacing)}", offset=-spacing * 0.8),
        Label((long, wide), "on the edge"),
    ]
    whole = f"{Count(along, 'plant', 'plants')} along and {bare(across)} across"
    part = " The first of them are drawn." if shown != (along, across) else ""
    return Drawing(
        shapes=tuple(shapes),
        caption=f"Plan: {bare(along)} by {bare(across)}, {mm(spacing)} apart",
        alt=f"A square grid from above, {whole}, {mm(spacing)} apart, the outer plants on the edge of the bed.{part}",
    )


def bank(m: PlantingMeasures, spacing: float, slope: float) -> Drawing:
    """Return a bank in section: its level width, its longer face, and rows of plants up the face."""
    run = (m.bed_width_m or 1.0) * 1000
    rise, face = run * slope / 100, counts.sloped(run, slope)
    across, up = run / face, rise / face
    step = counts.triangle_row_gap_mm(spacing) if m.layout == "triangle" else spacing
    foot = -run * 0.16
    ends = ((-run * 0.14, 0.0), (0.0, 0.0), (run, rise), (run * 1.14, rise))
    shapes: list[Shape] = [Polygon(((-run * 0.14, foot), (run * 1.14, foot), *reversed(ends)), Role.SOIL)]
    rows = min(MOST_ROWS, int(face / step) + 1)
    size = min(step, face / 3) * 0.4
    for row in range(rows):
        along = min(step * (row + 0.5), face)
        x, y = along * across, along * up
        shapes.append(Polygon(leafy(arc((x, y + size * 1.2), size, steps=20)[:-1], size * 0.08, 11), Role.KEEP))
        shapes.append(Line(((x, y), (x, y + size)), Role.WOOD))
    shapes += [
        Line(ends, Role.GROUND),
        DimensionLine((0, 0), (run, rise), f"{mm(face)} face", offset=size * 2.6),
        Line(((0, 0), (run, 0)), Role.CENTRE),
        DimensionLine((0, 0), (run, 0), f"{mm(run)} on the plan", offset=foot - run * 0.06),
        DimensionLine((run * 1.14, 0), (run * 1.14, rise), f"{mm(rise)}", offset=-run * 0.08),
    ]
    return Drawing(
        shapes=tuple(shapes),
        caption=f"The bank: {mm(face)} of face for {mm(run)} on the plan",
        alt=f"A bank in section: {mm(run)} on the plan, rising {mm(rise)}, is a face "
        f"of {mm(face)}. Rows stand {mm(step)} apart, measured up the face.",
    )
