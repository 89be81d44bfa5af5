"""A clipped shape drawn at true size: in section with its gauge, and from above."""

from collections.abc import Iterator
from datetime import date

from howto.families.clipping import formulae
from howto.families.clipping.figures import share
from howto.families.clipping.gauge import handy_step, marks
from howto.families.clipping.measures import ClippingMeasures
from howto.model.crew import System
from howto.model.work import Work
from howto.quantities.amounts import Word, Words, mm, percent
from howto.shapes import DimensionLine, Drawing, Label, Level, Line, Point, Polygon, Role, Shape, arc, leafy, rectangle

LEAF = 0.016  # how far a drawn leaf cluster stands proud, in standing widths
CLUSTERS = 20  # leaf clusters round the section; twice as many from above
MOST_RINGS = 10  # levels that stand beside a section and can still be read
STRAIGHT = ("cube", "cylinder")  # as wide at the top as at the foot
LINES = {"ball": "widest ring", "dome": "line at the foot", "cone": "line at the foot"}  # what is clipped first
LEAST_OFF = 1e-6  # mm; below this nothing comes off


def drawings(work: Work[ClippingMeasures], today: date) -> tuple[Drawing, ...]:
    """Return the section with gauge rings and what comes off, then the view from above."""
    del today
    return section(work), from_above(work)


def section(work: Work[ClippingMeasures]) -> Drawing:
    """Return the shape cut down its middle: what comes off hatched, rings at their heights."""
    m = work.measures
    shape = Word(f"a {m.shape}")
    width, height = m.finished_width_mm, m.height_mm
    stands, high = max(m.standing_width_mm, width), max(m.standing_mm, height)
    drop = (high - height) / 2 if m.shape == "ball" else 0.0  # a ball grows out below as well as above
    off, top = (stands - width) / 2, high - height
    ground = -drop - height * 0.08
    stem = width * 0.035
    shapes: list[Shape] = []
    if off > LEAST_OFF or top > LEAST_OFF:
        outer = outline(m.shape, stands, high, -drop)
        shapes.append(Polygon(leafy(outer, stands * LEAF, CLUSTERS), Role.REMOVE))
    shapes += [
        Polygon(outline(m.shape, width, height), Role.KEEP),
        Polygon(rectangle(-stem, ground, stem, height * 0.3), Role.WOOD),
        Line(((-stands * 0.62, ground), (stands * 0.62, ground)), Role.GROUND),
        Line(((0, ground), (0, high - drop + height * 0.08)), Role.CENTRE),
        *_rings(m, work.crew.units),
        DimensionLine((-width / 2, ground), (width / 2, ground), f"{mm(width)}", offset=-height * 0.10),
        DimensionLine((-width / 2, 0), (-width / 2, height), f"{mm(height)}", offset=off + height * 0.10),
    ]
    if off > LEAST_OFF:
        shapes.append(Label(_in_the_shell(m, off), f"{mm(off)} off each side"))
    return Drawing(
        shapes=tuple(shapes),
        caption=f"Section: {shape} {mm(width)} wide when done",
        alt=f"{shape} in section, {mm(width)} wide and {mm(height)} high when done. It stands {mm(stands)} wide; "
        f"{Word(_comes_off(m, off))}",
    )


def _comes_off(m: ClippingMeasures, off: float) -> Words:
    """Return what the clip takes, as the end of a sentence."""
    part = share(m) * 100
    if part <= 0:
        return "nothing comes off."
    where = f"{mm(off)} a side and " if off > LEAST_OFF else ""
    return f"the hatched shell, {where}{percent(part)} of the leaf, comes off."


def _rings(m: ClippingMeasures, units: System) -> Iterator[Shape]:
    """Yield the rings of the gauge with their widths: as many as can be read, and one where the sides are straight."""
    inner = [up for up in marks(m, units) if 0 < up < m.height_mm]
    if m.shape in STRAIGHT:
        inner = [m.height_mm / 2]
    if len(inner) > MOST_RINGS:
        every = handy_step(m.height_mm, units).mm
        inner = [every * at for at in range(1, int(m.height_mm / every) + 1) if every * at < m.height_mm]
    for up in inner:
        half = formulae.width_at_mm(m.shape, m.finished_width_mm, m.height_mm, up) / 2
        yield Line(((-half, up), (half, up)), Role.GUIDE)
        yield Level((half, up), f"{mm(half * 2)}")


def _in_the_shell(m: ClippingMeasures, off: float) -> Point:
    """Return a point in the middle of what comes off, on the side where no levels stand in the way."""
    up = m.height_mm * (0.3 if m.shape == "cone" else 0.75)
    across = formulae.width_at_mm(m.shape, m.finished_width_mm, m.height_mm, up) / 2 + off / 2
    return (across if m.shape in STRAIGHT else -across), up


def from_above(work: Work[ClippingMeasures]) -> Drawing:
    """Return the plan: the finished line inside what stands."""
    m = work.measures
    width, stands = m.finished_width_mm, max(m.standing_width_mm, m.finished_width_mm)
    inner, outer = _plan(m.shape, width), _plan(m.shape, stands)
    reach = stands * 0.6
    line = f"{Word(LINES.get(m.shape, 'finished line'))}"
    shapes: list[Shape] = []
    if stands > width:
        shapes.append(Polygon(leafy(outer, stands * LEAF, CLUSTERS * 2), Role.REMOVE))
    shapes += [
        Polygon(inner, Role.KEEP),
        Line(inner, Role.ACCENT, closed=True),
        Line(((-reach, 0), (reach, 0)), Role.CENTRE),
        Line(((0, -reach), (0, reach)), Role.CENTRE),
        DimensionLine((-width / 2, 0), (width / 2, 0), f"{mm(width)}", offset=-width * 0.22),
        Label((width / 2, width * 0.3) if m.shape == "cube" else (width * 0.3536, width * 0.3536), line),
    ]
    if stands > width:
        now = f"{mm(stands)}"
        shapes.append(DimensionLine((-stands / 2, 0), (stands / 2, 0), now, offset=stands * 0.62))
        rest = f" inside an outline {now} across that is hatched where it comes off."
    else:
        rest = "; nothing stands outside it."
    return Drawing(
        shapes=tuple(shapes),
        caption=f"From above: the {line} first",
        alt=f"The plant from straight above: the {line}, {mm(width)} across, drawn heavy{rest}",
    )


def _plan(shape: str, width: float) -> tuple[Point, ...]:
    """Return what is seen from above, anticlockwise."""
    half = width / 2
    return rectangle(-half, -half, half, half) if shape == "cube" else arc((0, 0), half)[:-1]


def outline(shape: str, width: float, height: float, foot: float = 0.0) -> tuple[Point, ...]:
    """Return the side view of a shape as points, anticlockwise, its foot at `foot` mm."""
    half = width / 2
    if shape == "ball":
        ring = arc((0, 0), 1)[:-1]
        return tuple((x * half, foot + height / 2 + y * height / 2) for x, y in ring)
    if shape == "dome":
        return tuple((x * half, foot + y * height) for x, y in arc((0, 0), 1, 0, 180))
    if shape == "cone":
        return ((-half, foot), (half, foot), (0, foot + height))
    return rectangle(-half, foot, half, foot + height)
