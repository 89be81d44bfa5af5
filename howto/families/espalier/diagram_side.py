"""The frame from the side: the wall in section, how far wire and stem stand off it, and what comes forward."""

from collections.abc import Iterator

from howto.families.espalier import frame
from howto.families.espalier.frame import T
from howto.families.espalier.parts import wires
from howto.quantities.amounts import bare, mm
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

WALL_MM = 215.0  # a brick's length: how thick the wall is drawn
WIRE_DOT_MM = 11.0  # a wire seen end on, drawn larger than it is so that it shows
MOST_WIRES = 2  # drawn; those above stand as these do


def side(work: T) -> Drawing | None:
    """Return the wall in section, or None where heights or the gap to the wall are missing, or posts hold the wires."""
    m = work.measures
    heights = frame.heights_mm(m)[:MOST_WIRES]
    if not heights or m.off_wall_mm is None or m.support != "wall":
        return None
    off = m.off_wall_mm
    stem = m.stem_off_wall_mm if m.stem_off_wall_mm is not None else off + 26
    gap = heights[-1] - heights[0] or heights[0]
    top, reach = heights[-1] + gap * 0.45, max(stem, off) + 380
    shapes: list[Shape] = [
        Polygon(_broken_wall(-gap * 0.4, top), Role.WALL),
        Polygon(rectangle(0, -gap * 0.22, reach, 0), Role.SOIL),
        Line(((0, 0), (reach, 0)), Role.GROUND),
        *_tree(work, heights, stem, top),
    ]
    for height in heights:
        shapes.append(Polygon(rectangle(-70, height - 5, off, height + 5), Role.WOOD))
        shapes.append(Polygon(arc((off, height), WIRE_DOT_MM, steps=16)[:-1], Role.ACCENT))
        shapes.append(Level((reach, height), f"{mm(height)}"))
    shapes.append(DimensionLine((0, top), (off, top), f"{mm(off)}", offset=gap * 0.3))
    said = ""
    if m.stem_off_wall_mm is not None:
        shapes.append(DimensionLine((0, 0), (stem, 0), f"{mm(stem)}", offset=-gap * 0.6))
        said = f" The stem is planted {mm(stem)} off the wall."
    shapes.append(Label((-45, heights[0]), "eye"))
    wired = m.job == "wiring"
    shapes.append(Label((off, heights[0]), "wire") if wired else Label((off + 260, heights[-1] + 10), "forward: off"))
    forward = "" if wired else " A shoot that comes forward is hatched: it comes off."
    which = f"the lowest {bare(len(heights))} of {wires(m.tiers)}" if m.tiers > len(heights) else "the wires"
    return Drawing(
        shapes=tuple(shapes),
        caption=f"From the side: wires {mm(off)} off the wall",
        alt=f"The wall in section with {which}, {mm(off)} off its face, at "
        f"{' and '.join(f'{mm(height)}' for height in heights)} above the ground.{said}{forward}",
    )


def _tree(work: T, heights: tuple[float, ...], stem: float, top: float) -> Iterator[Shape]:
    """Yield the stem with its leaf and a shoot that comes forward; a tree still to be planted is dashed."""
    off = work.measures.off_wall_mm or 0.0
    outline = _stem(off, stem, top, heights[0])
    if work.measures.job == "wiring":
        yield Line(outline, Role.LAST, closed=True)
        return
    yield Polygon(_forward(off, heights[-1]), Role.REMOVE)
    for height in heights:
        ring = ellipse((off + 18, height), 78, 88, steps=24)[:-1]
        yield Polygon(leafy(ring, 16, 8), Role.KEEP)
    yield Polygon(outline, Role.WOOD)


def _broken_wall(low: float, high: float) -> tuple[Point, ...]:
    """Return the wall in section, its foot and its top broken off, since neither is measured."""
    third = WALL_MM / 3
    return (
        (-WALL_MM, low),
        (-2 * third, low + 18),
        (-third, low - 18),
        (0.0, low),
        (0.0, high),
        (-third, high + 18),
        (-2 * third, high - 18),
        (-WALL_MM, high),
    )


def _forward(off: float, height: float) -> tuple[Point, ...]:
    """Return a shoot that grows out from the wall, from its foot outwards."""
    under = ((60.0, -10.0), (150.0, -58.0), (185.0, -34.0), (250.0, -48.0), (345.0, 20.0))
    over = tuple((out, 24.0 - up) for out, up in reversed(under[:-1]))
    return tuple((off + out, height + up) for out, up in (*under, *over))


def _stem(off: float, stem: float, top: float, first: float) -> tuple[Point, ...]:
    """Return the stem: planted clear of the wall, led back to the first wire, and up just in front of the others."""
    front, half = off + 26, 22.0
    return (
        (stem - half, 0.0),
        (stem + half, 0.0),
        (front + half * 0.8, first * 0.8),
        (front + half * 0.5, top),
        (front - half * 0.5, top),
        (front - half * 0.8, first * 0.8),
    )
