"""A lawn or bed that is fed, drawn at true size: two passes crosswise, the turf in section, a square metre."""

from math import sqrt

from howto.families.feeding import plan, tables
from howto.families.feeding.plan import T
from howto.quantities.amounts import Word, mm, qty
from howto.shapes import DimensionLine, Drawing, Label, Level, Line, Point, Polygon, Role, Shape, arc, rectangle

USUAL_M2 = 100.0  # drawn where no area is written
MOST_LINES = 9  # passes drawn each way; a wide lawn shows a corner of itself
USUAL_WIDTH_MM = 500.0  # a drop spreader's, where none is written
BLADE_MM = 45.0
GRAIN_MM = 2.2  # half of one, drawn a little large
TUFTS = 10
WIDE_MM = 260.0
SOIL_MM = 130.0


def passes(work: T) -> Drawing:
    """Return the lawn from above: half the feed one way, half across it."""
    m, found = work.measures, plan.rate(work.measures)
    width = m.spreader_width_mm or USUAL_WIDTH_MM
    lanes = max(2, round(min(sqrt(m.area_m2 or USUAL_M2) * 1000 / width, MOST_LINES)))
    side = lanes * width
    shapes: list[Shape] = [Polygon(rectangle(0, 0, side, side), Role.KEEP)]
    for lane in range(lanes):
        at = (lane + 0.5) * width
        out, back = (side * 0.03, side * 0.97) if lane % 2 == 0 else (side * 0.97, side * 0.03)
        shapes += [Line(((at, out), (at, back)), Role.GUIDE), _head((at, back), back - out, width)]
        shapes += [Line(((out, at), (back, at)), Role.LAST)]
    half = f": {qty(found.product / 2, 'g/m2')}" if found else ""
    shapes += [
        DimensionLine((0, 0), (width, 0), f"{mm(width)}", offset=-side * 0.07),
        DimensionLine((0, 0), (0, side), f"{mm(side)}", offset=side * 0.07),
        Label((width * 0.5, side * 0.97), f"first pass, up and down{half}"),
        Label((side * 0.97, width * 0.5), f"second pass, across{half}"),
    ]
    return Drawing(
        shapes=tuple(shapes),
        caption="From above: half one way, half across",
        alt=f"A {mm(side)} square of lawn from above. Runs {mm(width)} apart go up and "
        f"down, dashed ones across them, so that each place gets two half doses{half}.",
    )


def _head(tip: Point, along: float, width: float) -> Line:
    """Return the arrow's head at the end of an upright run."""
    (x, y), back = tip, width * 0.22 if along < 0 else -width * 0.22
    return Line(((x - width * 0.12, y + back), tip, (x + width * 0.12, y + back)), Role.GUIDE)


def lawn_section(work: T) -> Drawing:
    """Return the turf in section: grains on the soil between the blades, and the thermometer of a warm grass."""
    grass, deep = plan.grass_of(work), tables.SOIL_DEPTH_MM
    warm = grass is not None and grass.season == "warm"
    shapes: list[Shape] = [Polygon(rectangle(-WIDE_MM / 2, -SOIL_MM, WIDE_MM / 2, 0), Role.SOIL)]
    for number in range(TUFTS):
        x = -WIDE_MM / 2 + (number + 0.5) * WIDE_MM / TUFTS
        for lean, tall in ((-14.0, 0.72), (12.0, 0.8), ((-3.0, 2.0, 5.0)[number % 3], 1.0)):
            bent = (x + lean * 0.35, BLADE_MM * tall * 0.55)
            tip = (x + lean, BLADE_MM * tall * (0.92 + 0.04 * (number % 3)))
            blade = ((x - 2.2, 0.0), (bent[0] - 2.2, bent[1]), tip, (bent[0] + 2.2, bent[1]), (x + 2.2, 0.0))
            shapes.append(Polygon(blade, Role.BLADE))
            shapes.append(Line(((x, 0), (x + lean * 0.5, -22), (x - lean * 0.9, -48 - number * 7 % 30)), Role.WIRE))
        grain = arc((x + WIDE_MM / TUFTS / 2, GRAIN_MM), GRAIN_MM, steps=12)
        shapes.append(Polygon(grain, Role.WOOD))
    shapes += [
        Line(((-WIDE_MM / 2, 0), (WIDE_MM / 2, 0)), Role.GROUND),
        Label((-WIDE_MM / 2 + WIDE_MM / TUFTS * 2, GRAIN_MM), "grains on the soil, not the leaf"),
        Label((WIDE_MM * 0.3, -40), "roots"),
    ]
    if warm:
        shapes += [
            Polygon(rectangle(-3, -deep, 3, 70), Role.WALL),
            Polygon(arc((0, -deep), 5), Role.ACCENT),
            Line(((0, -deep), (0, 30)), Role.ACCENT),
            DimensionLine((-WIDE_MM / 2, 0), (-WIDE_MM / 2, -deep), f"{mm(deep)}", offset=-18),
            Level((3, -deep), f"{qty(tables.WARM_SOIL_C, '°C')} or more"),
        ]
    start = f" A thermometer stands {mm(deep)} deep: feed from {qty(tables.WARM_SOIL_C, '°C')}."
    return Drawing(
        shapes=tuple(shapes),
        caption="Section: from the leaf down to the roots",
        alt="Turf in section: blades, and grains of feed that have fallen between them to the soil; water takes them "
        f"down to the roots.{start if warm else ''}",
    )


def square_metre(work: T) -> Drawing:
    """Return a square metre of a bed from above, with what goes on it."""
    found = plan.rate(work.measures)
    said = f"{qty(found.product, 'g')}" if found else f"{Word('one dose')}"
    shapes: tuple[Shape, ...] = (
        Polygon(rectangle(0, 0, 1000, 1000), Role.MULCH),
        Line(rectangle(0, 0, 1000, 1000), Role.GROUND, closed=True),
        Line(((500, -60), (500, 1060)), Role.CENTRE),
        Line(((-60, 500), (1060, 500)), Role.CENTRE),
        DimensionLine((0, 0), (1000, 0), f"{mm(1000)}", offset=-130),
        DimensionLine((0, 0), (0, 1000), f"{mm(1000)}", offset=130),
        Label((760, 760), f"{said} here, raked in"),
    )
    return Drawing(
        shapes=shapes,
        caption=f"Each square metre takes {said}",
        alt=f"A square metre of bed from above, {mm(1000)} each way; {said} of feed is spread on it and raked in.",
    )
