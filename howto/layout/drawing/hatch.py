"""Fills an outline with strokes: hatching, earth, level dashes and dots, clipped to it by the even-odd rule.

Patterns are anchored to the box and not to the outline, so neighbours of one kind run on into each other; earth
hangs from the top of its outline, so that its first row follows the ground.
"""

from collections.abc import Iterator, Sequence
from itertools import pairwise
from math import ceil, cos, dist, floor, radians, sin

Point = tuple[float, float]
Segment = tuple[Point, Point]


def hatching(outline: Sequence[Point], pitch: float, angle_deg: float = 45.0) -> list[Segment]:
    """Return parallel lines `pitch` apart inside the outline, rising to the right by `angle_deg` on the page."""
    return [segment for line in _ruled(outline, pitch, angle_deg) for segment in clipped(line, outline)]


def level_dashes(outline: Sequence[Point], pitch: float, dash: float, space: float) -> list[Segment]:
    """Return level rows of dashes inside the outline, each row moved on by half a step."""
    left, top, right, bottom = bounds(outline)
    step = dash + space
    found: list[Segment] = []
    for row in range(ceil(top / pitch), floor(bottom / pitch) + 1):
        shift = step / 2 if row % 2 else 0.0
        for turn in range(floor((left - shift) / step), ceil((right - shift) / step) + 1):
            start = shift + turn * step
            found.extend(clipped(((start, row * pitch), (start + dash, row * pitch)), outline))
    return [segment for segment in found if segment[1][0] - segment[0][0] > dash / 4]


def earth(outline: Sequence[Point], cell: float) -> list[Segment]:
    """Return the mark of earth inside the outline: threes of short lines, leaning by turns."""
    left, top, right, bottom = bounds(outline)
    found: list[Segment] = []
    for row in range(ceil((bottom - top) / cell)):
        for column in range(floor(left / cell), ceil(right / cell)):
            lines = _three(column * cell, top + row * cell, cell, rises=bool((column + row) % 2))
            found.extend(part for line in lines for part in clipped(line, outline))
    return [segment for segment in found if dist(*segment) > cell / 6]


def _three(x: float, y: float, cell: float, *, rises: bool) -> Iterator[Segment]:
    for turn in range(3):
        start, end = 0.08 + turn * 0.22, 0.52 + turn * 0.22
        if rises:
            yield ((x + (start - 0.04) * cell, y + 0.68 * cell), (x + (end - 0.04) * cell, y + 0.2 * cell))
        else:
            yield ((x + (start - 0.04) * cell, y + 0.2 * cell), (x + (end - 0.04) * cell, y + 0.68 * cell))


def dots(outline: Sequence[Point], pitch: float) -> list[Point]:
    """Return points in staggered rows inside the outline."""
    left, top, right, bottom = bounds(outline)
    found: list[Point] = []
    for row in range(ceil(top / pitch), floor(bottom / pitch) + 1):
        shift = pitch / 2 if row % 2 else 0.0
        columns = range(floor((left - shift) / pitch), ceil((right - shift) / pitch) + 1)
        found.extend((shift + column * pitch, row * pitch) for column in columns)
    return [point for point in found if inside(point, outline)]


def clipped(line: Segment, outline: Sequence[Point]) -> list[Segment]:
    """Return the parts of a straight line that lie inside the outline."""
    (x0, y0), (x1, y1) = line
    cuts = sorted({0.0, 1.0, *_cuts(line, outline)})
    parts: list[Segment] = []
    for start, end in pairwise(cuts):
        middle = (start + end) / 2
        if end - start > 1e-9 and inside((x0 + (x1 - x0) * middle, y0 + (y1 - y0) * middle), outline):
            parts.append(
                ((x0 + (x1 - x0) * start, y0 + (y1 - y0) * start), (x0 + (x1 - x0) * end, y0 + (y1 - y0) * end))
            )
    return parts


def _cuts(line: Segment, outline: Sequence[Point]) -> Iterator[float]:
    """Yield how far along the line, from 0 to 1, each edge of the outline cuts it."""
    (x0, y0), (x1, y1) = line
    dx, dy = x1 - x0, y1 - y0
    for (ax, ay), (bx, by) in pairwise((*outline, outline[0])):
        ex, ey = bx - ax, by - ay
        across = dx * ey - dy * ex
        if abs(across) < 1e-12:
            continue
        along = ((ax - x0) * ey - (ay - y0) * ex) / across
        edge = ((ax - x0) * dy - (ay - y0) * dx) / across
        if 0 < along < 1 and 0 <= edge <= 1:
            yield along


def inside(point: Point, outline: Sequence[Point]) -> bool:
    """Tell whether a point is inside a closed outline, by the even-odd rule."""
    x, y = point
    odd = False
    for (ax, ay), (bx, by) in pairwise((*outline, outline[0])):
        if (ay > y) != (by > y) and x < ax + (y - ay) * (bx - ax) / (by - ay):
            odd = not odd
    return odd


def bounds(points: Sequence[Point]) -> tuple[float, float, float, float]:
    """Return left, top, right, bottom of some points."""
    across, down = [x for x, _ in points], [y for _, y in points]
    return (min(across), min(down), max(across), max(down))


def _ruled(outline: Sequence[Point], pitch: float, angle_deg: float) -> Iterator[Segment]:
    """Yield the ruled lines that may cross the outline, from edge to edge of its box."""
    turn = radians(-angle_deg)  # y runs down, so a line that rises to the right turns the other way
    along, across = (cos(turn), sin(turn)), (-sin(turn), cos(turn))
    ups = [x * across[0] + y * across[1] for x, y in outline]
    spans = [x * along[0] + y * along[1] for x, y in outline]
    low, high = min(spans), max(spans)
    for rule in range(ceil(min(ups) / pitch), floor(max(ups) / pitch) + 1):
        up = rule * pitch
        yield (
            (along[0] * low + across[0] * up, along[1] * low + across[1] * up),
            (along[0] * high + across[0] * up, along[1] * high + across[1] * up),
        )
