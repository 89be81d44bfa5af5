"""A hedge drawn at true size: in section with its taper, over the seasons with doubling shoots, and in plan."""

from datetime import date

from howto.families.hedging import formulae
from howto.families.hedging.figures import section_share
from howto.families.hedging.measures import HedgingMeasures
from howto.model.technique import Technique
from howto.quantities import show
from howto.quantities import show_number as num
from howto.shapes import Dimension, Drawing, Label, Level, Line, Point, Polygon, Role, Shape, leafy, rectangle

T = Technique[HedgingMeasures]

LEAF_DEPTH_MM = 16.0  # how far a drawn leaf cluster stands proud of its outline


def drawings(technique: T, today: date) -> tuple[Drawing, ...]:
    """Return the section."""
    del today
    return (section(technique),)


def trapezium(base: float, top: float, height: float) -> tuple[Point, ...]:
    """Return a tapered section as points, anticlockwise from the lower left."""
    return ((-base / 2, 0.0), (base / 2, 0.0), (top / 2, height), (-top / 2, height))


def section(technique: T) -> Drawing:
    """Return the hedge cut across: what comes off hatched, the line of the last cut, and the taper."""
    m = technique.measures
    units = technique.crew.units
    height = m.cut_mm
    top = m.top_width_mm or height * 0.3
    base = m.base_width_mm or formulae.base_for_mm(top)
    stands = max(m.standing_height_mm or height, height)
    wide = max(m.standing_base_width_mm or base, base)
    wide_top = max(m.standing_top_width_mm or top, top)
    shapes: list[Shape] = [Polygon(rectangle(-wide, -stands * 0.1, wide, 0), Role.SOIL)]
    if stands > height or wide > base or wide_top > top:
        outline = trapezium(wide, wide_top, stands)
        shapes.append(Polygon(leafy(outline, LEAF_DEPTH_MM, round(stands / 40) + 12), Role.REMOVE))
    shapes += [
        Polygon(trapezium(base, top, height), Role.KEEP),
        Polygon(rectangle(-base * 0.03, 0, base * 0.03, height * 0.4), Role.WOOD),
        Line(((-wide, 0), (wide, 0)), Role.GROUND),
        Line(((0, -stands * 0.05), (0, stands * 1.06)), Role.CENTRE),
        Dimension((-base / 2, 0), (base / 2, 0), show(base, "mm", units), offset=-stands * 0.16),
        Dimension(
            (-top / 2, height), (top / 2, height), show(top, "mm", units), offset=(stands - height) + stands * 0.07
        ),
        Dimension((-base / 2, 0), (-base / 2, height), show(height, "mm", units), offset=wide * 0.25),
        Level((wide_top / 2, stands), f"{show(stands, 'mm', units)} stands"),
    ]
    angle = formulae.angle_deg(base, top, height)
    share = section_share(m)
    off = f" {num(share * 100)} % of it comes off." if share and share > 0 else ""
    shapes.append(Label(((base + top) / 4, height / 2), f"{num(angle, 2)}° from upright"))
    return Drawing(
        shapes=tuple(shapes),
        caption="Section: base wider than the top",
        alt=f"A hedge in section, {show(base, 'mm', units)} wide at its foot, {show(top, 'mm', units)} at its top and "
        f"{show(height, 'mm', units)} high when cut; sides lean {num(angle, 2)} degrees.{off}",
    )
