"""A young hedge seen from the front over the seasons: where each cut falls, and how one shoot becomes many."""

from collections.abc import Iterator, Sequence
from datetime import date
from itertools import pairwise

from howto.families.hedging.growing import Rise, rises
from howto.families.hedging.measures import HedgingMeasures
from howto.model.work import Work
from howto.quantities.amounts import Count, Listed, bare, mm
from howto.shapes import DimensionLine, Disc, Drawing, Line, Point, Polygon, Role, Shape, leafy, rectangle

T = Work[HedgingMeasures]

MOST_PANELS = 4
MOST_SHOOTS = 32  # more would print as one dark patch; the figure says the true number
LEAF_DEPTH_MM = 12.0


def rise(work: T, today: date) -> list[Drawing]:
    """Return one drawing of the cuts from today's to the last, or nothing where the hedge never rises."""
    found = rises(work, today)
    if not found:
        return []
    m = work.measures
    shown = [*found[: MOST_PANELS - 1], found[-1]] if len(found) > MOST_PANELS else list(found)
    top = max(each.stands_mm for each in shown)
    wide = min(m.spacing_mm or top * 0.3, top * 0.45)
    pitch = wide + top * 0.17
    shapes: list[Shape] = _ground(len(shown), pitch, top)
    for at, each in enumerate(shown):
        shapes += _panel(m, found, each, (at * pitch, wide, pitch), at + 1)
    years = f"{bare(found[0].day.year)} to {bare(found[-1].day.year)}"
    counts = Listed(tuple(float(each.shoots) for each in shown), "")
    heights = Listed(tuple(each.cut_mm for each in shown), "mm")
    return [
        Drawing(
            shapes=tuple(shapes),
            caption="Shoots on a plant after each cut",
            alt=f"One plant at {Count(len(shown), 'cut', 'cuts')}, {years}: cut at {heights}. The growth "
            f"above each line comes off, and each cut shoot forks in two: {counts} shoots.",
        )
    ]


def _ground(panels: int, pitch: float, top: float) -> list[Shape]:
    left, right = -pitch * 0.6, pitch * (panels - 0.4)
    return [Polygon(rectangle(left, -top * 0.06, right, 0), Role.SOIL), Line(((left, 0), (right, 0)), Role.GROUND)]


def _panel(
    m: HedgingMeasures, found: Sequence[Rise], each: Rise, place: tuple[float, float, float], number: int
) -> Iterator[Shape]:
    """Yield one plant at one cut: what comes off, what stays, its branching, the cut line and its words."""
    x, wide, pitch = place
    at = found.index(each)
    nodes = [m.last_cut_height_mm] if m.last_cut_height_mm and m.last_cut_height_mm < found[0].cut_mm else []
    nodes += [before.cut_mm for before in found[:at]]
    tips = wide * 0.4
    if each.stands_mm > each.cut_mm:
        above = rectangle(x - wide * 0.42, each.cut_mm, x + wide * 0.42, each.stands_mm)
        yield Polygon(leafy(above, LEAF_DEPTH_MM, 14), Role.REMOVE)
    yield Polygon(_crown(x, wide, each.cut_mm), Role.KEEP)
    yield from _branching(x, tips, [node for node in nodes if node], each)
    yield Line(((x - wide * 0.52, each.cut_mm), (x + wide * 0.52, each.cut_mm)), Role.ACCENT)
    yield Disc((x - wide * 0.52, each.cut_mm), number)
    right, out = x + wide * 0.5, -pitch * 0.1
    yield DimensionLine((right, 0), (right, each.cut_mm), f"{mm(each.cut_mm)}", offset=out)
    if number == 1 and each.stands_mm > each.cut_mm:
        off = f"{mm(each.stands_mm - each.cut_mm)}"
        left = x - wide * 0.5
        yield DimensionLine((left, each.cut_mm), (left, each.stands_mm), off, offset=pitch * 0.45)
    below = -found[-1].cut_mm * 0.14
    yield DimensionLine((x - pitch / 2, 0), (x + pitch / 2, 0), f"{bare(each.shoots)}", offset=below)


def _crown(x: float, wide: float, height: float) -> tuple[Point, ...]:
    """Return the leafy outline of one plant up to its cut, a little wider at the foot."""
    return ((x - wide * 0.48, 0.0), (x + wide * 0.48, 0.0), (x + wide * 0.42, height), (x - wide * 0.42, height))


def _branching(x: float, spread: float, nodes: Sequence[float], each: Rise) -> Iterator[Shape]:
    """Yield the stems: one from the ground, forked in two at each earlier cut, up to where it stands now."""
    levels = [0.0, *sorted(nodes), each.stands_mm]
    count = 1
    starts = [x]
    for low, high in pairwise(levels):
        if low > 0 and count * 2 <= MOST_SHOOTS:
            count *= 2
            starts = [start for start in starts for _ in range(2)]
        step = 2 * spread / count
        ends = [x - spread + step * (at + 0.5) for at in range(count)] if count > 1 else [x]
        bend = low + (high - low) * 0.3
        for start, end in zip(starts, ends, strict=True):
            points = ((start, low), (end, bend), (end, high))
            yield Line(points, Role.WIRE) if count > 4 else _stem(points, spread * 0.08 / count**0.5)
        starts = ends


def _stem(points: tuple[Point, Point, Point], thick: float) -> Polygon:
    """Return a bent stem as an outline of even thickness."""
    left = tuple((x - thick / 2, y) for x, y in points)
    right = tuple((x + thick / 2, y) for x, y in reversed(points))
    return Polygon((*left, *right), Role.WOOD)
