"""Soil work drawn at true size: the layers in section, then the test hole or a square metre of the work."""

from datetime import date
from math import sin

from howto.families.soil import formulae
from howto.families.soil.figures import T, ring_mm, spread_mm
from howto.quantities.amounts import Name, mm, percent, qty
from howto.shapes import DimensionLine, Drawing, Label, Level, Line, Point, Polygon, Role, Shape, arc, leafy, rectangle

STEM_MM = 60.0  # a young trunk, for scale
USUAL_DIG_MM = 200.0  # drawn where no depth is written: compost is mixed 150 to 200 mm deep
BLADES = 25  # of grass, over top-dressing
BLADE_MM = 40.0


def drawings(work: T, today: date) -> tuple[Drawing, ...]:
    """Return the section of the layers, and the test hole or a square metre of the work from above."""
    del today
    m = work.measures
    first = mulched if m.work == "mulch" else dug_in if m.is_dug_in else top_dressed
    found = [first(work)]
    if m.work == "new bed" or m.drained_mm is not None:
        found.append(hole(work))
    if m.barrow_l is not None:
        found.append(heaps(work, m.barrow_l))
    elif m.work != "new bed":
        found.append(plan(work))
    return tuple(found)


def dug_in(work: T) -> Drawing:
    """Return a bed in section twice: with the layer spread on it, and with the layer mixed in."""
    m = work.measures
    layer = spread_mm(m)
    deep = max(m.dig_depth_mm or USUAL_DIG_MM, m.depth_mm)
    wide, floor = max(deep * 1.4, 260.0), -deep * 1.3
    gap = wide * 0.2
    share, material = percent(formulae.share_mixed_in(m.depth_mm, deep) * 100, 2), Name(m.material)
    second = wide + gap
    shapes: list[Shape] = [
        Polygon(rectangle(0, floor, wide, 0), Role.SOIL),
        *_edged(_rough(0, wide, 0, layer)),
        Line(((0, 0), (wide, 0)), Role.GROUND),
        Polygon(rectangle(second, floor, second + wide, m.depth_mm - deep), Role.SOIL),
        *_edged(_rough(second, second + wide, m.depth_mm - deep, m.depth_mm)),
        Line(((second, 0), (second + wide, 0)), Role.LAST),
        Line(((second, m.depth_mm - deep), (second + wide, m.depth_mm - deep)), Role.CENTRE),
        *_spade((second + wide * 0.18, m.depth_mm - deep), deep),
        DimensionLine((0, 0), (0, layer), f"{mm(layer)}", offset=wide * 0.12),
        DimensionLine(
            (second + wide, m.depth_mm - deep), (second + wide, m.depth_mm), f"{mm(deep)}", offset=-wide * 0.14
        ),
        Label((wide * 0.5, layer * 0.5), "1 spread"),
        Label((second + wide * 0.9, m.depth_mm - deep * 0.5), f"2 mixed: {share}"),
        Label((wide * 0.5, -deep * 0.6), "soil as it lies"),
    ]
    mixed = f"it is mixed {mm(deep)} deep, measured from its top, so that {share} of the mixed soil is {material}"
    alt = f"Soil cut open twice. First {mm(layer)} of {material} lies on it; then {mixed}."
    return Drawing(tuple(shapes), f"{Name(m.material.capitalize())} spread, then mixed in", alt)


def top_dressed(work: T) -> Drawing:
    """Return a lawn in section with a thin layer between its blades."""
    m = work.measures
    layer = spread_mm(m)
    half = max(BLADE_MM * 1.6, layer * 3)
    shapes: list[Shape] = [
        Polygon(rectangle(-half, -half * 0.55, half, 0), Role.SOIL),
        *_edged(_rough(-half, half, 0, layer)),
    ]
    for at in range(BLADES):
        x = -half * 0.97 + 2 * half * 0.97 * at / (BLADES - 1)
        lean = BLADE_MM * 0.16 * sin(at * 2.3)
        tall = BLADE_MM * (0.86 + 0.14 * sin(at * 1.7))
        shapes.append(Polygon(((x - 0.9, 0.0), (x + 0.9, 0.0), (x + lean, tall)), Role.BLADE))
    shapes += [
        Line(((-half, 0), (half, 0)), Role.GROUND),
        DimensionLine((-half, 0), (-half, layer), f"{mm(layer)}", offset=half * 0.14),
        Level((half, layer), f"{Name(m.material)}"),
        Level((half, BLADE_MM), "leaf tips stay out"),
    ]
    blades = f"blades of grass {mm(BLADE_MM)} tall, whose tips stand out of it"
    alt = f"A lawn cut open: {mm(layer)} of {Name(m.material)} lies on the soil between {blades}."
    return Drawing(tuple(shapes), f"Top-dressing {mm(layer)} deep", alt)


def mulched(work: T) -> Drawing:
    """Return the foot of a young trunk in section: mulch on both sides, and the bare ring at the bark."""
    m = work.measures
    ring, layer = ring_mm(m), spread_mm(m)
    inner = STEM_MM / 2 + ring
    half, short = inner + max(170.0, layer * 2.0), inner + max(70.0, layer * 0.9)  # what the left says, the right says
    tall = max(half * 0.7, (m.old_layer_mm or 0.0) + layer * 1.6)
    floor = -half * 0.36
    shapes: list[Shape] = [Polygon(rectangle(-short, floor, half, 0), Role.SOIL), *_roots((short, half), floor)]
    old = m.old_layer_mm or 0.0
    for side, end in ((-1, short), (1, half)):
        if old:
            shapes.append(Polygon(_bank(side, inner, end, (0.0, old)), Role.LAST))
        shapes += _edged(_bank(side, inner, end, (old, old + layer)))
    shapes += [
        Polygon(_trunk(tall), Role.WOOD),
        Line(((-short, 0), (half, 0)), Role.GROUND),
        Line(((0, floor * 0.8), (0, tall * 1.06)), Role.CENTRE),
        DimensionLine((-short, old), (-short, old + layer), f"{mm(layer)}", offset=half * 0.12),
        Label((half * 0.75, old + layer * 0.45), f"{Name(m.material)}"),
        Label((STEM_MM * 0.7, 12.0), "flare in the air"),
    ]
    if ring > 0:
        shapes += [
            Line(((inner, 0), (inner, layer * 1.25)), Role.GUIDE),
            DimensionLine((STEM_MM / 2, 0), (inner, 0), f"{mm(ring)}", offset=floor * 0.45),
        ]
    if m.settles:
        left = old + m.depth_mm
        shapes.append(Line(((inner + layer * 0.7, left), (half, left)), Role.LAST))
        shapes.append(Level((half, left), f"sinks to {mm(m.depth_mm)}"))
    if old:
        shapes.append(Label((half * 0.75, old * 0.5), f"old layer {mm(old)}"))
    sinks, material = f"; it sinks to {mm(m.depth_mm)}" if m.settles else "", Name(m.material.capitalize())
    stops = f"stops {mm(ring)} short of the bark, so that the flare stays dry{sinks}"
    alt = f"The foot of a young trunk cut open. {material} lies {mm(layer)} deep on both sides and {stops}."
    return Drawing(tuple(shapes), f"{material} {mm(layer)} deep, clear of the stem", alt)


def _edged(points: tuple[Point, ...]) -> list[Shape]:
    """Return a layer with a thin line round it."""
    return [Polygon(points, Role.MULCH), Line(points, Role.WIRE, closed=True)]


def _bank(side: int, inner: float, half: float, levels: tuple[float, float]) -> tuple[Point, ...]:
    """Return one layer of mulch beside the trunk, its inner end sloped, its top a little rough."""
    low, high = levels
    slope = min((high - low) * 0.6, (half - inner) * 0.4)
    start = inner + low * 0.6
    steps = 14
    top = [
        (start + slope + (half - start - slope) * at / steps, high + (high - low) * 0.03 * sin(at * 2.1))
        for at in range(steps + 1)
    ]
    points = [(start, low), *top[:-1], (half, high), (half, low)]
    return tuple((side * x, y) for x, y in points)


def _trunk(tall: float) -> tuple[Point, ...]:
    """Return a young trunk with its root flare."""
    half = STEM_MM / 2
    right = ((half * 2.2, -18.0), (half * 1.35, 4.0), (half * 1.06, 34.0), (half, 80.0), (half * 0.94, tall))
    return (*((-x, y) for x, y in right), *reversed(right))


def _roots(ends: tuple[float, float], floor: float) -> list[Shape]:
    """Return roots that run out from the flare under the mulch."""
    start = STEM_MM * 0.6
    found: list[Shape] = []
    for at, (far, deep) in enumerate(((0.86, 0.22), (0.72, 0.42), (0.5, 0.66))):
        down = floor * deep + 16
        for side, end in zip((-1, 1), ends, strict=True):
            long = end * far - start
            run = [(start + long * part / 7, -16 + down * (part / 7) ** 0.8) for part in range(8)]
            waved = tuple((side * x, y + 5 * sin(part * 2.2 + at + side)) for part, (x, y) in enumerate(run))
            found.append(Line(waved, Role.WOOD))
    return found


def _rough(left: float, right: float, low: float, high: float) -> tuple[Point, ...]:
    """Return a layer whose top is a little rough, as raked material is; its mean is the depth."""
    steps = 16
    top = tuple(
        (right + (left - right) * at / steps, high + min(high - low, 40.0) * 0.05 * sin(at * 2.4))
        for at in range(steps + 1)
    )
    return ((left, low), (right, low), *top)


def _spade(foot: Point, deep: float) -> list[Shape]:
    """Return a spade pushed in to the depth of digging."""
    x, y = foot
    blade, half = min(deep * 0.95, 290.0), min(deep * 0.3, 90.0)
    tip = y + blade
    return [
        Polygon(((x - half, tip), (x - half * 0.9, y + blade * 0.15), (x, y), (x + half * 0.9, y + blade * 0.15),
                 (x + half, tip)), Role.WIRE),
        Polygon(rectangle(x - 14, tip, x + 14, tip + deep * 0.8), Role.WOOD),
    ]  # fmt: skip


def plan(work: T) -> Drawing:
    """Return a square metre of the work from above, with what goes on it."""
    m = work.measures
    litres, deep, ringed = f"{qty(spread_mm(m), 'L')}", f"{mm(spread_mm(m))}", ""
    shapes: list[Shape] = [Polygon(rectangle(0, 0, 1000, 1000), Role.MULCH)]
    if m.work == "mulch":
        ringed = f", with a bare ring of {mm(ring_mm(m))} round the stem"
        ring = STEM_MM / 2 + ring_mm(m)
        inside = min(ring, 480.0)
        shapes += [
            Polygon(leafy(arc((500, 500), inside)[:-1], 0.0, 24), Role.KEEP),
            Polygon(arc((500, 500), STEM_MM / 2), Role.WOOD),
            DimensionLine((500 + STEM_MM / 2, 500), (500 + inside, 500), f"{mm(ring_mm(m))}", offset=620),
            Label((500 - inside * 0.6, 500 + inside * 0.5), "bare ring"),
        ]
    shapes += [
        Line(rectangle(0, 0, 1000, 1000), Role.GROUND, closed=True),
        DimensionLine((0, 0), (1000, 0), f"{mm(1000)}", offset=-120),
        DimensionLine((0, 0), (0, 1000), f"{mm(1000)}", offset=120),
        Label((820, 180), f"{litres} here"),
    ]
    alt = f"One square metre from above. It takes {litres} of {Name(m.material)} to lie {deep} deep{ringed}."
    return Drawing(tuple(shapes), f"Each square metre takes {litres}", alt)


def heaps(work: T, barrow_l: float) -> Drawing:
    """Return where barrows are tipped, from above: a heap in the middle of the square that each covers."""
    m = work.measures
    apart = formulae.heap_every_m(barrow_l, spread_mm(m)) * 1000
    across, down = 3, 2
    shapes: list[Shape] = [Polygon(rectangle(0, 0, apart * across, apart * down), Role.SOIL)]
    middles = [(apart * (at + 0.5), apart * (row + 0.5)) for row in range(down) for at in range(across)]
    shapes += [Line(((apart * at, 0), (apart * at, apart * down)), Role.CENTRE) for at in range(1, across)]
    shapes.append(Line(((0, apart), (apart * across, apart)), Role.CENTRE))
    for x, y in middles:
        shapes += _edged(leafy(arc((x, y), apart * 0.2, steps=24)[:-1], apart * 0.02, 11))
    first, second, above = middles[0], middles[1], middles[across]
    square = (apart * (across - 1), apart * (down - 1))
    shapes += [
        Polygon(rectangle(square[0], square[1], square[0] + apart, square[1] + apart), Role.MULCH),
        Line(rectangle(0, 0, apart * across, apart * down), Role.GROUND, closed=True),
        DimensionLine(first, second, f"{mm(apart)}", offset=-apart * 0.75),
        DimensionLine(first, above, f"{mm(apart)}", offset=apart * 0.75),
        Label((square[0] + apart * 0.85, square[1] + apart * 0.85), "raked out"),
        Label((middles[2][0], middles[2][1] - apart * 0.1), f"one barrow, {qty(barrow_l, 'L')}"),
    ]
    heaped = f"heaps of {Name(m.material)} {mm(apart)} apart both ways, a barrow of {qty(barrow_l, 'L')} each"
    raked = f"One is raked out, and fills its square {mm(spread_mm(m))} deep"
    return Drawing(tuple(shapes), f"Tip a barrow every {mm(apart)}", f"The ground from above with {heaped}. {raked}.")


def hole(work: T) -> Drawing:
    """Return the drainage test: a hole in section with its water level at the start and at the end."""
    m = work.measures
    deep = m.hole_mm
    fallen = min(m.drained_mm, deep) if m.drained_mm is not None else None
    half, out = deep * 0.45, deep * 0.85
    foot = half * 0.86
    brim = ((-out, 0.0), (-half, 0.0), (-foot, -deep), (foot, -deep), (half, 0.0), (out, 0.0))
    down = fallen if fallen is not None else deep * 0.2
    width = half - (half - foot) * down / deep
    shapes: list[Shape] = [
        Polygon((*brim, (out, -deep * 1.35), (-out, -deep * 1.35)), Role.SOIL),
        Polygon(((-width, -down), (-foot, -deep), (foot, -deep), (width, -down)), Role.WATER),
        Line(brim, Role.GROUND),
        Line(((-half, 0), (half, 0)), Role.LAST),
        Polygon(rectangle(-out * 0.04, -deep * 0.98, out * 0.04, deep * 0.25), Role.WOOD),
        *(Line(((out * 0.04, -deep * at / 6), (out * 0.12, -deep * at / 6)), Role.GUIDE) for at in range(6)),
        DimensionLine((-half, 0), (-half, -deep), f"{mm(deep)}", offset=-out * 0.62),
        Label((out * 0.04, deep * 0.18), "ruler"),
        Level((half, 0), "full"),
    ]
    words = "empties within a day if the soil drains"
    if fallen is not None and m.drained_in_hours is not None:
        after = f"{qty(m.drained_in_hours, 'h')}"
        shapes.append(Level((half, -fallen), f"{mm(fallen)} down after {after}"))
        words = f"is {mm(fallen)} down after {after}"
    alt = f"A test hole {mm(deep)} deep cut open, with a ruler in it. Filled for the second time, it {words}."
    return Drawing(tuple(shapes), "The drainage test: fill, let it go, fill again", alt)
