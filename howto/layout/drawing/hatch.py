"""Fills an outline with strokes: hatching, earth, level dashes and dots, clipped to it by the even-odd rule.

Patterns are anchored to the box and not to the outline, so neighbours of one kind run on into each other; earth
hangs from the top of its outline, so that its first row follows the ground.
"""

from collections.abc import Iterator, Sequence
from itertools import pairwise, product
from math import ceil, cos, dist, floor, radians, sin

Point = tuple[float, float]
Segment = tuple[Point, Point]

DUST = 1e-9


def hatching(outline: Sequence[Point], pitch: float, angle_deg: float = 45.0) -> list[Segment]:
    """Return parallel lines `pitch` apart inside the outline, rising to the right by `angle_deg` on the page."""
    turn = radians(-angle_deg)  # y runs down, so a line that rises to the right turns the other way
    along, across = (cos(turn), sin(turn)), (-sin(turn), cos(turn))
    turned = [(x * along[0] + y * along[1], x * across[0] + y * across[1]) for x, y in outline]
    return [
        (
            (along[0] * start + across[0] * up, along[1] * start + across[1] * up),
            (along[0] * end + across[0] * up, along[1] * end + across[1] * up),
        )
        for row, start, end in _runs(turned, pitch)
        for up in (row * pitch,)
    ]


def level_dashes(outline: Sequence[Point], pitch: float, dash: float, space: float) -> list[Segment]:
    """Return level rows of dashes inside the outline, each row moved on by half a step."""
    step = dash + space
    found: list[Segment] = []
    for row, left, right in _runs(outline, pitch):
        shift = step / 2 if row % 2 else 0.0
        for turn in range(floor((left - shift) / step), ceil((right - shift) / step) + 1):
            start, end = max(left, shift + turn * step), min(right, shift + turn * step + dash)
            if end - start > dash / 4:
                found.append(((start, row * pitch), (end, row * pitch)))
    return found


def dots(outline: Sequence[Point], pitch: float) -> list[Point]:
    """Return points in staggered rows inside the outline."""
    found: list[Point] = []
    for row, left, right in _runs(outline, pitch):
        shift = pitch / 2 if row % 2 else 0.0
        columns = range(ceil((left - shift) / pitch), ceil((right - shift) / pitch))
        found.extend((shift + column * pitch, row * pitch) for column in columns)
    return found


def _runs(outline: Sequence[Point], pitch: float) -> Iterator[tuple[int, float, float]]:
    """Yield where level rows `pitch` apart are inside the outline: each row's number, and from where to where."""
    cuts: dict[int, list[float]] = {}
    for (ax, ay), (bx, by) in pairwise((*outline, outline[0])):
        first, last = ceil(min(ay, by) / pitch), ceil(max(ay, by) / pitch)
        slope = (bx - ax) / (by - ay) if first < last else 0.0
        for row in range(first, last):
            cuts.setdefault(row, []).append(ax + slope * (row * pitch - ay))
    for row, across in sorted(cuts.items()):
        across.sort()
        yield from ((row, *run) for run in zip(across[::2], across[1::2], strict=True) if run[1] - run[0] > DUST)


def earth(outline: Sequence[Point], cell: float) -> list[Segment]:
    """Return the mark of earth inside the outline: threes of short lines, leaning by turns."""
    top = bounds(outline)[1]
    hung = [(x / cell, (y - top) / cell) for x, y in outline]
    cut = {square for edge in pairwise((*hung, hung[0])) for square in _squares(*edge)}
    whole = {
        (column, row)
        for row, left, right in _runs([(x, y - 0.5) for x, y in hung], 1.0)
        for column in range(ceil(left), floor(right))
    }
    found: list[Segment] = []
    for column, row in sorted(cut | whole, key=lambda square: (square[1], square[0])):
        lines = _three(column * cell, top + row * cell, cell, rises=bool((column + row) % 2))
        if (column, row) in cut:
            found.extend(part for line in lines for part in clipped(line, outline) if dist(*part) > cell / 6)
        else:
            found.extend(lines)
    return found


def _squares(one: Point, other: Point) -> Iterator[tuple[int, int]]:
    """Yield the squares of a grid in the box round a straight line."""
    (left, right), (top, bottom) = sorted((one[0], other[0])), sorted((one[1], other[1]))
    yield from product(range(floor(left), floor(right) + 1), range(floor(top), floor(bottom) + 1))


def _three(x: float, y: float, cell: float, *, rises: bool) -> Iterator[Segment]:
    for turn in range(3):
        start, end = 0.08 + turn * 0.22, 0.52 + turn * 0.22
        if rises:
            yield ((x + (start - 0.04) * cell, y + 0.68 * cell), (x + (end - 0.04) * cell, y + 0.2 * cell))
        else:
            yield ((x + (start - 0.04) * cell, y + 0.2 * cell), (x + (end - 0.04) * cell, y + 0.68 * cell))


def clipped(line: Segment, outline: Sequence[Point]) -> list[Segment]:
    """Return the parts of a straight line that lie inside the outline."""
    (x0, y0), (x1, y1) = line
    cuts = sorted({0.0, 1.0, *_cuts(line, outline)})
    parts: list[Segment] = []
    for start, end in pairwise(cuts):
        middle = (start + end) / 2
        if end - start > DUST and inside((x0 + (x1 - x0) * middle, y0 + (y1 - y0) * middle), outline):
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
