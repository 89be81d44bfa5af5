"""A clipped shape drawn at true size: in section with its gauge, and from above."""

from datetime import date

from howto.families.clipping import formulae
from howto.families.clipping.figures import handy_step, share
from howto.families.clipping.measures import ClippingMeasures
from howto.model.technique import Technique
from howto.quantities import show
from howto.shapes import (
    Dimension,
    Drawing,
    Label,
    Level,
    Line,
    Point,
    Polygon,
    Role,
    Shape,
    arc,
    leafy,
    rectangle,
)

LEAF_DEPTH_MM = 14.0  # how far a drawn leaf cluster stands proud of its outline


def drawings(technique: Technique[ClippingMeasures], today: date) -> tuple[Drawing, ...]:
    """Return the section with gauge rings and what comes off, then the view from above."""
    del today
    return section(technique), from_above(technique)


def section(technique: Technique[ClippingMeasures]) -> Drawing:
    """Return the shape cut down its middle: what comes off hatched, rings at their heights."""
    m = technique.measures
    units = technique.crew.units
    width, height = m.finished_width_mm, m.height_mm
    stands, high = max(m.standing_width_mm, width), max(m.standing_mm, height)
    drop = (high - height) / 2 if m.shape == "ball" else 0.0  # a ball grows out below as well as above
    outer = outline(m.shape, stands, high, -drop)
    inner = outline(m.shape, width, height)
    shapes: list[Shape] = []
    if stands > width:
        shapes.append(Polygon(leafy(outer, LEAF_DEPTH_MM, round(stands / 45)), Role.REMOVE))
    shapes.append(Polygon(inner, Role.KEEP))
    ground = -drop - height * 0.08
    stem = width * 0.035
    shapes += [
        Polygon(rectangle(-stem, ground, stem, height * 0.3), Role.WOOD),
        Line(((-stands * 0.62, ground), (stands * 0.62, ground)), Role.GROUND),
        Line(((0, ground), (0, high - drop + height * 0.08)), Role.CENTRE),
    ]
    every = m.gauge_every_mm or handy_step(height)
    up = every
    while up < height - every / 4:
        half = formulae.width_at_mm(m.shape, width, height, up) / 2
        shapes.append(Line(((-half, up), (half, up)), Role.GUIDE))
        shapes.append(Level((half, up), show(half * 2, "mm", units)))
        up += every
    off = (stands - width) / 2
    shapes += [
        Dimension((-width / 2, ground), (width / 2, ground), show(width, "mm", units), offset=-height * 0.10),
        Dimension((-width / 2, 0), (-width / 2, height), show(height, "mm", units), offset=off + height * 0.10),
    ]
    if off > 0:
        shapes.append(
            Label(
                (-(width + off) / 2 * 0.72, height / 2 + (height + off) / 2 * 0.68),
                f"{show(off, 'mm', units)} off each side",
            )
        )
    part = round(share(m) * 100)
    return Drawing(
        shapes=tuple(shapes),
        caption=f"Section: {m.shape} {show(width, 'mm', units)} wide when done",
        alt=f"A {m.shape} in section, {show(width, 'mm', units)} wide and {show(height, 'mm', units)} high when "
        f"done. It stands {show(stands, 'mm', units)} wide; the hatched shell, {show(off, 'mm', units)} a side "
        f"and {part} % of the leaf, comes off.",
    )


def from_above(technique: Technique[ClippingMeasures]) -> Drawing:
    """Return the plan: the widest ring inside what stands."""
    m = technique.measures
    units = technique.crew.units
    width, stands = m.finished_width_mm, max(m.standing_width_mm, m.finished_width_mm)
    square = m.shape == "cube"
    outer = rectangle(-stands / 2, -stands / 2, stands / 2, stands / 2) if square else arc((0, 0), stands / 2)
    inner = rectangle(-width / 2, -width / 2, width / 2, width / 2) if square else arc((0, 0), width / 2)
    reach = stands * 0.6
    shapes: list[Shape] = [
        Polygon(leafy(outer, LEAF_DEPTH_MM, round(stands / 22)), Role.REMOVE),
        Polygon(inner, Role.KEEP),
        Line(inner, Role.ACCENT, closed=True),
        Line(((-reach, 0), (reach, 0)), Role.CENTRE),
        Line(((0, -reach), (0, reach)), Role.CENTRE),
        Dimension((-width / 2, 0), (width / 2, 0), show(width, "mm", units), offset=-stands * 0.62),
        Dimension((-stands / 2, 0), (stands / 2, 0), show(stands, "mm", units), offset=stands * 0.62),
        Label((width * 0.3536, width * 0.3536), "widest ring"),
    ]
    return Drawing(
        shapes=tuple(shapes),
        caption="From above: the widest ring first",
        alt=f"The plant from straight above: a ring {show(width, 'mm', units)} across, drawn heavy, inside an "
        f"outline {show(stands, 'mm', units)} across that is hatched where it comes off.",
    )


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
