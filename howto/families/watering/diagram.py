"""A watering drawn at true size: the soil it wets, the cans that caught it, a dripper's bulb; and its days in time."""

from datetime import date
from math import ceil, sin, sqrt

from howto.families.watering import formulae, garden, needs, plan, soil_water
from howto.families.watering.diagram_time import day_bar, first_weeks
from howto.families.watering.figures_running import cycles_for
from howto.families.watering.measures import WateringMeasures
from howto.model.work import Work
from howto.quantities.amounts import Count, Word, Words, bare, mm, percent, qty
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

T = Work[WateringMeasures]
DEEPEST = 3.0  # root depths: below that the wet soil is drawn cut off
LAWNS = ("cool lawn", "warm lawn")
MOST_BULBS = 3
BLADES = 23
CAN_PITCH_MM = 1500.0  # from can to can where no area tells it


def drawings(work: T, today: date) -> tuple[Drawing, ...]:
    """Return two or three drawings of how the water goes on and where it goes."""
    m = work.measures
    drawn: list[Drawing] = []
    if m.method == "drip" or m.is_new:
        drawn.append(drip_bulb(work))
    elif plan.readings(m):
        drawn.append(catch_plan(work))
    if not m.is_new:
        drawn.append(soil_section(work))
    if m.method == "sprinkler" and (m.cycles or cycles_for(work) or 1) > 1:
        drawn.append(day_bar(work))
    if m.is_new:
        drawn.append(first_weeks(work, today))
    return tuple(drawn[:3])


def soil_section(work: T) -> Drawing:
    """Return the ground cut open: how deep a watering wets, how deep roots go, and what is lost below them."""
    soil, depth = needs.ground(work), plan.net_depth(work)
    root = soil.root_m * 1000 if soil else garden.USUAL_ROOT_MM
    reach = soil_water.wetted_m(depth.value, soil.available, soil.depletion) * 1000 if soil and depth else root
    drawn = min(reach, root * DEEPEST)
    half, floor = max(root * 0.95, drawn * 0.6), -max(root, drawn) * 1.25
    edge = half * 0.45  # dry soil is left to the right, so that wet and dry stand side by side
    shapes: list[Shape] = [
        Polygon(rectangle(-half, floor, half, 0), Role.SOIL),
        Polygon(_front(-half, edge, min(drawn, root)), Role.WATER),
    ]
    if drawn > root * 1.02:
        shapes.append(Polygon((*_front(-half, edge, drawn)[:-2], (edge, -root), (-half, -root)), Role.REMOVE))
    shapes += _roots(root, half * 0.55)
    shapes += _green(work, root)
    shapes += [
        Line(((-half, 0), (half, 0)), Role.GROUND),
        Line(((-half, -root), (half, -root)), Role.CENTRE),
        Level((half, -root), f"roots {mm(root)}"),
        DimensionLine((-half, 0), (-half, -drawn), str(mm(reach)), offset=-root * 0.16),
        Label((edge * 0.2, -min(drawn, root) * 0.55), _put_on(work)),
    ]
    if drawn > root * 1.02:
        shapes.append(Label((0, -(root + drawn) / 2), "lost below the roots"))
    shapes.append(Label((half * 0.75, -root * 0.6), "still dry"))
    name = Word(soil.name if soil else "soil")
    return Drawing(
        shapes=tuple(shapes),
        caption=f"In {name}: one watering wets {mm(reach)}",
        alt=f"The ground cut open. One watering ({Word(_put_on(work))}) wets {name} {mm(reach)} deep; "
        f"roots go {mm(root)} deep" + ("; what passes them is hatched and lost." if reach > root else "."),
    )


def _put_on(work: T) -> Words:
    depth = plan.net_depth(work)
    return f"{qty(depth.value, 'L/m2')} to the roots" if depth else "water"


def _front(left: float, right: float, deep: float) -> tuple[Point, ...]:
    """Return wet soil from the surface down to a front that waves a little, as water does in soil."""
    steps = 24
    wave = deep * 0.03
    foot = tuple(
        (left + (right - left) * at / steps, -deep + wave * sin(at * 1.9) - wave * (at == steps))
        for at in range(steps + 1)
    )
    return (*foot, (right, 0.0), (left, 0.0))


def _roots(root: float, spread: float) -> list[Shape]:
    """Return roots that fan out from the stem down to the root depth."""
    found: list[Shape] = []
    for at in range(-3, 4):
        across, deep = spread * at / 3, root * (1 - 0.07 * abs(at))
        bend = tuple(
            (across * (part / 6) ** 0.7, -deep * part / 6 + root * 0.015 * sin(part * 2 + at)) for part in range(7)
        )
        found.append(Line((*bend[:-1], (across, -deep)), Role.WOOD))
    return found


def _green(work: T, root: float) -> list[Shape]:
    """Return what grows above: a lawn's blades or a shrub."""
    if work.measures.crop in LAWNS:
        tall, reach, thin = root * 0.2, root * 0.9, root * 0.012
        places = [-reach + 2 * reach * at / (BLADES - 1) for at in range(BLADES)]
        tips = [(x + root * 0.03 * sin(at * 2.3), tall * (0.8 + 0.2 * sin(at))) for at, x in enumerate(places)]
        return [
            Polygon(((x - thin, 0.0), (x + thin, 0.0), tip), Role.BLADE) for x, tip in zip(places, tips, strict=True)
        ]
    crown = ellipse((0, root * 0.62), root * 0.5, root * 0.4)[:-1]
    stem = root * 0.03
    return [
        Polygon(rectangle(-stem, 0, stem, root * 0.4), Role.WOOD),
        Polygon(leafy(crown, root * 0.03, 22), Role.KEEP),
    ]


def catch_plan(work: T) -> Drawing:
    """Return the catch cans in plan, filled as they were found, the dry quarter hatched."""
    m = work.measures
    caught = plan.readings(m)
    number, across = len(caught), _columns(len(caught))
    rows = ceil(number / across)
    pitch = sqrt(m.area_m2 * 1e6 / (across * rows)) if m.area_m2 else CAN_PITCH_MM
    low = sorted(range(number), key=lambda at: (caught[at], at))[: formulae.quarter_size(number)]
    full = max(caught)
    shapes: list[Shape] = []
    for at, held in enumerate(caught):
        shapes += _can(_at(at, across, pitch), pitch, held / full, dry=at in low)
    left, right, top, foot = -pitch / 2, (across - 0.5) * pitch, pitch / 2, -(rows - 0.5) * pitch
    shapes.append(Line(rectangle(left, foot, right, top), Role.CENTRE, closed=True))
    for corner in ((left, top), (right, top), (left, foot), (right, foot)):
        shapes.append(Line(arc(corner, pitch * 0.12), Role.GUIDE, closed=True))
    if m.area_m2:
        shapes += [
            DimensionLine((left, foot), (right, foot), str(mm(right - left)), offset=-pitch * 0.45),
            DimensionLine((left, top), (left, foot), str(mm(top - foot)), offset=-pitch * 0.45),
        ]
    mean, dry = formulae.mean(caught), formulae.mean(formulae.low_quarter(caught))
    even = percent(formulae.uniformity(caught) * 100)
    driest, wettest = _at(low[0], across, pitch), _at(caught.index(full), across, pitch)
    shapes += [Label(driest, f"driest: {qty(min(caught), 'mL')}"), Label(wettest, f"wettest: {qty(full, 'mL')}")]
    return Drawing(
        shapes=tuple(shapes),
        caption=f"{Count(number, 'can', 'cans')}: evenness {even}",
        alt=f"{Count(number, 'catch can', 'catch cans')} on a plan, each filled as it was found. The driest "
        f"{bare(len(low))}, hatched, hold {qty(dry, 'mL')} on the mean, all of them {qty(mean, 'mL')}: "
        f"evenness {even}.",
    )


def _columns(cans: int) -> int:
    """Return how many cans stand in a row: the squarest grid that leaves the fewest places empty."""
    least = ceil(sqrt(cans))
    return min(range(least, 2 * least + 1), key=lambda across: (-cans % across, across))


def _at(number: int, across: int, pitch: float) -> Point:
    return ((number % across) * pitch, -(number // across) * pitch)


def _can(centre: Point, pitch: float, part: float, *, dry: bool) -> list[Shape]:
    """Return one can from the side, filled to a part, hatched where it is of the dry quarter."""
    x, y = centre
    half, tall = pitch * 0.22, pitch * 0.56
    foot = y - tall / 2
    found: list[Shape] = []
    if dry:
        over = rectangle(x - half * 1.5, foot - half * 0.5, x + half * 1.5, foot + tall + half * 0.5)
        found.append(Polygon(over, Role.REMOVE))
    if part > 0.01:
        found.append(Polygon(rectangle(x - half, foot, x + half, foot + tall * part), Role.WATER))
    sides = ((x - half, foot + tall), (x - half, foot), (x + half, foot), (x + half, foot + tall))
    found.append(Line(sides, Role.ACCENT if dry else Role.WOOD))
    return found


def drip_bulb(work: T) -> Drawing:
    """Return the ground cut open under drippers, or at a new plant: the wet bulbs, the root ball, the spacing."""
    m, found = work.measures, plan.bulb(work)
    name, root = Word(needs.soil_name(work)), needs.root_m(work) * 1000
    wide = found.wide_m * 1000 if found else plan.wetted_width_mm(work)
    deep = found.deep_m * 1000 if found else root
    drawn = min(deep, wide * DEEPEST)
    apart = m.dripper_spacing_mm or wide * 0.8
    drips = m.method == "drip"
    each = "a dripper" if drips else "a plant"
    given = f"{qty(found.water_l, 'L')} {each}" if found else f"Water from {each}"
    count = max(1, min(MOST_BULBS, m.drippers or 2)) if drips else 1
    places = [apart * (at - (count - 1) / 2) for at in range(count)]
    half = places[-1] + max(wide * 0.75, root * 0.7)
    floor = -max(root, drawn) * 1.2
    shapes: list[Shape] = [Polygon(rectangle(-half, floor, half, 0), Role.SOIL)]
    shapes += [Polygon(ellipse((x, 0), wide / 2, drawn, 180, 360), Role.WATER) for x in places]
    shapes += _planted(work, root)
    shapes.append(Line(((-half, 0), (half, 0)), Role.GROUND))
    if drips:
        shapes += _line(work, places, half, wide)
    last = places[-1]
    shapes += [
        DimensionLine((last - wide / 2, -drawn), (last + wide / 2, -drawn), str(mm(wide)), offset=-wide * 0.16),
        DimensionLine((-half, 0), (-half, -drawn), str(mm(deep)), offset=-wide * 0.12),
        Level((half, -root), f"roots {mm(root)}"),
    ]
    if found is not None:
        shapes.append(Label((last + wide * 0.2, -drawn * 0.4), given))
    under = Word(str(Count(count, "dripper", "drippers")) if drips else "a new plant")
    return Drawing(
        shapes=tuple(shapes),
        caption=f"Under {'the drippers' if drips else 'a new plant'}, in {name}",
        alt=f"The ground cut open under {under}. {Word(given)} wets a bulb {mm(wide)} wide and "
        f"{mm(deep)} deep in {name}; roots go {mm(root)} deep.",
    )


def _line(work: T, places: list[float], half: float, wide: float) -> list[Shape]:
    """Return the dripline on the ground, its drippers, and what each gives."""
    m = work.measures
    pipe = wide * 0.05
    shapes: list[Shape] = [Polygon(rectangle(-half, pipe * 0.3, half, pipe * 1.3), Role.WIRE)]
    shapes += [Polygon(rectangle(x - pipe * 1.4, pipe * 0.1, x + pipe * 1.4, pipe * 1.9), Role.WOOD) for x in places]
    if len(places) > 1 and m.dripper_spacing_mm is not None:
        ends = ((places[0], pipe * 2), (places[1], pipe * 2))
        shapes.append(DimensionLine(*ends, str(mm(m.dripper_spacing_mm)), offset=wide * 0.14))
    if m.dripper_flow_l_per_h is not None:
        shapes.append(Label((places[-1], pipe), f"{qty(m.dripper_flow_l_per_h, 'L/h')} each"))
    return shapes


def _planted(work: T, root: float) -> list[Shape]:
    """Return the plant, with the ball it came in where it is new."""
    shapes = [*_roots(root, root * 0.35), *_green(work, root)]
    ball = needs.ball_mm(work)
    if ball is not None:
        size, deep = ball
        shapes.append(Line(rectangle(-size / 2, -deep, size / 2, 0), Role.GUIDE, closed=True))
        shapes.append(Label((-size / 2, -deep * 0.8), "the ball it came in"))
    return shapes
