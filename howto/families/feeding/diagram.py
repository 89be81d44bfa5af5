"""A feeding drawn at true size: where it goes in plan and in section, and the can; and the year as a line."""

from datetime import date

from howto.families.feeding import plan, tables
from howto.families.feeding.diagram_area import lawn_section, passes, square_metre
from howto.families.feeding.diagram_line import year_line
from howto.families.feeding.diagram_mix import can
from howto.families.feeding.plan import T
from howto.quantities.amounts import mm, qty
from howto.shapes import (
    DimensionLine,
    Drawing,
    Label,
    Level,
    Line,
    Point,
    Polygon,
    Role,
    Shape,
    arc,
    ellipse,
    leafy,
    rectangle,
)

LEAST_STEM = 1 / 60  # of the ring: how thick a stem is drawn where no trunk is written
THIN_MM = 160.0  # a trained tree from front to back
TIERS = 3  # drawn on a trained tree; their heights are another trade's
ARMS = ((-0.62, 0.72), (-0.25, 0.86), (0.3, 0.84), (0.64, 0.68))  # tips, in half canopies and heights
ROOTS = ((0.35, 0.10), (0.7, 0.16), (0.98, 0.12))  # how far out and how deep, in rings


def drawings(work: T, today: date) -> tuple[Drawing, ...]:
    """Return two or three drawings: where the feed goes, when, and how it is measured."""
    m = work.measures
    drawn: list[Drawing] = []
    if m.in_water:
        drawn.append(can(work))
    ring = plan.ring(m) if m.kind == "fruit tree" else None
    if ring is not None and ring.area_m2 > 0:
        drawn.append(ring_plan(work, ring))
    elif m.kind == "lawn":
        drawn.append(passes(work))
    elif m.kind == "bed":
        drawn.append(square_metre(work))
    drawn.append(year_line(work, today))
    if ring is not None and ring.area_m2 > 0:
        drawn.append(section(work, ring))
    elif m.kind == "lawn":
        drawn.append(lawn_section(work))
    return tuple(drawn[:3])


class _RingSizes:
    """The sizes a tree is drawn with, in mm from the stem's middle."""

    def __init__(self, work: T, ring: plan.Ring) -> None:
        m = work.measures
        self.inner, self.outer, self.wall = ring.inner_mm, ring.outer_mm, bool(m.wall)
        self.canopy = (m.canopy_mm or ring.outer_mm * 2) / 2
        self.stem = ring.bark_mm or ring.outer_mm * LEAST_STEM
        self.bare = ring.inner_mm - ring.bark_mm
        self.reach = max(self.outer, self.canopy)
        self.trained = m.is_trained


def ring_plan(work: T, ring: plan.Ring) -> Drawing:
    """Return the ring from above: the stem kept bare, the feed band dotted to just past the canopy's edge."""
    m, sizes, dose = work.measures, _RingSizes(work, ring), plan.dose_g(work)
    shapes: list[Shape] = [*_wall(sizes), Polygon(band(sizes.inner, sizes.outer, half=sizes.wall), Role.MULCH)]
    turn = (0.0, 180.0) if sizes.wall else (0.0, 360.0)
    shapes += [
        Line(arc((0, 0), sizes.outer, *turn), Role.ACCENT),
        Line(arc((0, 0), sizes.inner, *turn), Role.GUIDE),
        *_canopy_from_above(sizes),
        Polygon(arc((0, 0), sizes.stem), Role.WOOD),
        Line(((-sizes.reach * 1.06, 0), (sizes.reach * 1.06, 0)), Role.CENTRE),
        Line(((0, 0 if sizes.wall else -sizes.reach * 1.06), (0, sizes.reach * 1.06)), Role.CENTRE),
    ]
    down = 1 if sizes.wall else -1  # a wall takes the lower half: dimensions stand above
    clear = f"{mm(sizes.bare)}"
    shapes += [
        DimensionLine((sizes.inner - sizes.bare, 0), (sizes.inner, 0), clear, offset=down * sizes.reach * 1.1),
        DimensionLine((-sizes.outer, 0), (0, 0), f"{mm(sizes.outer)}", offset=down * sizes.reach * 1.1),
    ]
    if m.canopy_mm is not None:
        ends = (-sizes.canopy, 0), (sizes.canopy, 0)
        shapes.append(DimensionLine(*ends, f"{mm(m.canopy_mm)}", offset=down * sizes.reach * 1.28))
    shapes += _ring_words(work, sizes)
    given = f" Each dose, {qty(dose, 'g')}, is spread on the band." if dose else ""
    form = "half ring before a wall" if sizes.wall else "ring"
    return Drawing(
        shapes=tuple(shapes),
        caption=f"Plan: feed the {form}, stem bare for {clear}",
        alt=f"A tree from above with its feed {form} dotted: bare for {clear} round the stem, then fed to "
        f"{mm(sizes.outer)} from its middle, just past the dashed edge of the canopy.{given}",
    )


def band(inner: float, outer: float, *, half: bool = False) -> tuple[Point, ...]:
    """Return the outline of a ring, or of its upper half, as one closed run of points."""
    end = 180.0 if half else 360.0
    return (*arc((0, 0), outer, 0, end, 96), *arc((0, 0), inner, end, 0, 72))


def _wall(sizes: _RingSizes) -> list[Shape]:
    if not sizes.wall:
        return []
    back = -max(sizes.stem, THIN_MM / 2)
    return [
        Polygon(rectangle(-sizes.reach * 1.06, back - sizes.reach * 0.07, sizes.reach * 1.06, back), Role.WALL),
        Label((sizes.reach * 0.9, back - sizes.reach * 0.03), "wall"),
    ]


def _canopy_from_above(sizes: _RingSizes) -> list[Shape]:
    """Return the canopy's edge, dashed: a circle, or the long thin leaf of a trained tree with its arms."""
    if not sizes.trained:
        outline = leafy(arc((0, 0), sizes.canopy)[:-1], sizes.canopy * 0.025, 40)
        return [Line(outline, Role.LAST, closed=True)]
    thin = THIN_MM / 2
    arm = max(sizes.stem * 0.35, sizes.reach * 0.006)
    outline = leafy(ellipse((0, 0), sizes.canopy, thin)[:-1], thin * 0.25, 60)
    return [
        Line(outline, Role.LAST, closed=True),
        Polygon(rectangle(-sizes.canopy, -arm, sizes.canopy, arm), Role.WOOD),
    ]


def _ring_words(work: T, sizes: _RingSizes) -> list[Shape]:
    each, area, out = plan.dose_g(work), plan.fed_m2(work.measures), (sizes.inner + sizes.outer) / 2 * 0.7071
    said = f"each dose {qty(each, 'g')}: {qty(each / area, 'g/m2')}" if each is not None and area else "feed here"
    canopy = Label((-sizes.canopy * 0.7071, sizes.canopy * 0.7071), "edge of the canopy")
    if sizes.trained:
        canopy = Label((-sizes.canopy * 0.8, THIN_MM * 0.3), "edge of the leaves")
    return [Label((out, out), said), Label((-sizes.inner * 0.5, sizes.inner * 0.5), "bare"), canopy]


def section(work: T, ring: plan.Ring) -> Drawing:
    """Return the tree in section: feed on the surface between the bare ring and the canopy's edge, roots under it."""
    sizes = _RingSizes(work, ring)
    tall = sizes.canopy * (1.5 if sizes.trained else 2.0)
    deep, thick = sizes.outer * 0.3, sizes.outer * 0.06
    shapes: list[Shape] = [
        Polygon(rectangle(-sizes.reach * 1.1, -deep, sizes.reach * 1.1, 0), Role.SOIL),
        *_roots(sizes),
        *_crown(sizes, tall),
    ]
    for side in (-1, 1):
        near, far = side * sizes.inner, side * sizes.outer
        shapes.append(Polygon(rectangle(min(near, far), 0, max(near, far), thick), Role.MULCH))
        shapes.append(Line(((near, thick), (far, thick)), Role.ACCENT))
    shapes += [
        Line(((-sizes.reach * 1.1, 0), (sizes.reach * 1.1, 0)), Role.GROUND),
        Line(((0, -deep * 0.9), (0, tall * 1.05)), Role.CENTRE),
        Line(((sizes.canopy, 0), (sizes.canopy, tall * 0.45)), Role.GUIDE),
        DimensionLine((sizes.inner - sizes.bare, 0), (sizes.inner, 0), f"{mm(sizes.bare)}", offset=-deep * 1.15),
        DimensionLine((-sizes.outer, 0), (0, 0), f"{mm(sizes.outer)}", offset=-deep * 1.15),
        Label(((-sizes.inner - sizes.outer) / 2, thick / 2), "feed, on top"),
        Label((sizes.outer * ROOTS[1][0], -sizes.outer * ROOTS[1][1]), "fine roots"),
    ]
    shapes += _tape(work, sizes)
    return Drawing(
        shapes=tuple(shapes),
        caption="Section: on the soil, over the fine roots",
        alt=f"A tree in section. The soil is bare for {mm(sizes.bare)} from the bark; from there to "
        f"{mm(sizes.outer)} from the middle feed lies on the surface, over the fine roots. The trunk is "
        f"measured {mm(tables.TRUNK_AT_MM)} up.",
    )


def _tape(work: T, sizes: _RingSizes) -> list[Shape]:
    """Return the level at which the trunk is measured, and what was found there."""
    thick, up, wide = plan.trunk_cm(work.measures), tables.TRUNK_AT_MM, sizes.stem * 1.6
    found: list[Shape] = [Line(((-wide, up), (wide, up)), Role.ACCENT), Level((sizes.stem, up), f"{mm(up)} up")]
    return [*found, Label((-wide, up), f"trunk {mm(thick * 10)}")] if thick else found


def _roots(sizes: _RingSizes) -> list[Shape]:
    near, parts = sizes.stem * 0.6, (0.0, 0.15, 0.35, 0.6, 0.8, 1.0)

    def root(side: int, out: float, down: float) -> Line:
        far = sizes.outer * out - near
        points = ((side * (near + far * part), -sizes.outer * down * part**0.5) for part in parts)
        return Line(tuple(points), Role.WIRE)

    return [root(side, *root_ends) for side in (-1, 1) for root_ends in ROOTS]


def _crown(sizes: _RingSizes, tall: float) -> list[Shape]:
    """Return trunk and crown: a round head, or tiers of arms with leaf along them."""
    if not sizes.trained:
        fork, middle, half = tall * 0.34, tall * 0.65, tall * 0.35
        head = leafy(ellipse((0, middle), sizes.canopy, half)[:-1], sizes.canopy * 0.03, 44)
        stem = sizes.stem
        trunk = ((-stem, 0), (stem, 0), (stem * 0.75, fork), (-stem * 0.75, fork))
        arms = [_arm((0.0, fork * 0.92), (sizes.canopy * x, tall * y), stem * 0.5) for x, y in ARMS]
        return [Polygon(head, Role.KEEP), Polygon(trunk, Role.WOOD), *arms]
    arm = max(sizes.stem * 0.4, tall * 0.006)
    found: list[Shape] = []
    for tier in range(1, TIERS + 1):
        up = tall * tier / TIERS
        thick = tall / TIERS * 0.24
        strip = rectangle(-sizes.canopy, up - thick, sizes.canopy, up + thick)
        found.append(Polygon(leafy(strip, tall * 0.02, 42), Role.KEEP))
        found.append(Polygon(rectangle(-sizes.canopy * 0.97, up - arm, sizes.canopy * 0.97, up + arm), Role.WOOD))
    top = (sizes.stem * 0.5, tall)
    found.append(Polygon(((-sizes.stem, 0), (sizes.stem, 0), top, (-top[0], tall)), Role.WOOD))
    return found


def _arm(start: Point, end: Point, thick: float) -> Polygon:
    """Return a branch that tapers from its fork to its tip."""
    return Polygon(((start[0] - thick, start[1]), (start[0] + thick, start[1]), end), Role.WOOD)
