"""Plane geometry that placing needs: boxes, convex outlines, and whether they meet; y runs down."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from itertools import pairwise
from math import cos, floor, hypot, inf, radians, sin, tau

Point = tuple[float, float]
Segment = tuple[Point, Point]
Box = tuple[float, float, float, float]  # left, top, right, bottom
Outline = tuple[Point, ...]  # convex, in either direction

DUST = 1e-9
_ROUND = [(cos(turn * tau / 16) / cos(tau / 32), sin(turn * tau / 16) / cos(tau / 32)) for turn in range(16)]


def box_outline(box: Box) -> Outline:
    """Return the corners of a box."""
    left, top, right, bottom = box
    return ((left, top), (right, top), (right, bottom), (left, bottom))


def turned_box(centre: Point, half_long: float, half_high: float, angle_deg: float) -> Outline:
    """Return the corners of a box about its centre, turned anticlockwise as a reader sees it."""
    along = (cos(radians(angle_deg)), -sin(radians(angle_deg)))
    down = (sin(radians(angle_deg)), cos(radians(angle_deg)))
    signs = ((-1, -1), (1, -1), (1, 1), (-1, 1))
    return tuple(
        (
            centre[0] + a * half_long * along[0] + b * half_high * down[0],
            centre[1] + a * half_long * along[1] + b * half_high * down[1],
        )
        for a, b in signs
    )


def disc_outline(centre: Point, radius: float) -> Outline:
    """Return sixteen points round a disc, just outside it."""
    x, y = centre
    return tuple([(x + radius * across, y + radius * down) for across, down in _ROUND])


def around(points: Iterable[Point]) -> Box:
    """Return the box round some points."""
    across, down = zip(*points, strict=True)
    return (min(across), min(down), max(across), max(down))


def joined(boxes: Iterable[Box]) -> Box:
    """Return the box round some boxes."""
    lefts, tops, rights, bottoms = zip(*boxes, strict=True)
    return (min(lefts), min(tops), max(rights), max(bottoms))


def holds(outer: Box, inner: Box) -> bool:
    """Tell whether one box lies inside another."""
    dust = DUST * max(1.0, abs(outer[2]), abs(outer[3]))
    return (
        inner[0] >= outer[0] - dust
        and inner[1] >= outer[1] - dust
        and inner[2] <= outer[2] + dust
        and inner[3] <= outer[3] + dust
    )


def boxes_meet(one: Box, other: Box, clear: float = 0.0) -> bool:
    """Tell whether two boxes overlap, or come nearer than `clear`."""
    return (
        one[0] < other[2] + clear - DUST
        and other[0] < one[2] + clear - DUST
        and one[1] < other[3] + clear - DUST
        and other[1] < one[3] + clear - DUST
    )


def overlap(one: Outline, other: Outline) -> bool:
    """Tell whether two convex outlines share more than an edge."""
    return all(_shadows_meet(edge, one, other) for outline in (one, other) for edge in edges(outline))


def edges(outline: Sequence[Point]) -> list[Segment]:
    """Return the sides of a closed outline."""
    return list(pairwise((*outline, outline[0])))


def _shadows_meet(edge: Segment, one: Outline, other: Outline) -> bool:
    """Tell whether the shadows of both outlines on a line square to the edge meet."""
    (ax, ay), (bx, by) = edge
    nx, ny = ay - by, bx - ax
    first = [x * nx + y * ny for x, y in one]
    second = [x * nx + y * ny for x, y in other]
    dust = DUST * (abs(nx) + abs(ny)) * 1000
    return min(first) < max(second) - dust and min(second) < max(first) - dust


def enters(segment: Segment, outline: Outline) -> bool:
    """Tell whether a straight line runs into a convex outline."""
    return overlap(segment, outline) and _shadows_meet(segment, segment, outline)


def turn(a: Point, b: Point, c: Point) -> float:
    """Return twice the signed area of the triangle a, b, c."""
    return (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0])


def cross(one: Segment, other: Segment) -> bool:
    """Tell whether two straight lines cross, each passing through the other."""
    (a, b), (c, d) = one, other
    return turn(a, b, c) * turn(a, b, d) < -DUST and turn(c, d, a) * turn(c, d, b) < -DUST


def distance(point: Point, segment: Segment) -> float:
    """Return how far a point is from a straight line between two points."""
    (ax, ay), (bx, by) = segment
    dx, dy = bx - ax, by - ay
    square = dx * dx + dy * dy
    part = 0.0 if square == 0 else ((point[0] - ax) * dx + (point[1] - ay) * dy) / square
    part = min(1.0, max(0.0, part))
    return hypot(point[0] - ax - part * dx, point[1] - ay - part * dy)


def apart(one: Segment, other: Segment) -> float:
    """Return the least distance between two straight lines; 0 where they cross."""
    if cross(one, other):
        return 0.0
    return min(distance(one[0], other), distance(one[1], other), distance(other[0], one), distance(other[1], one))


def nearer(one: Segment, other: Segment, clear: float) -> bool:
    """Tell whether two straight lines cross or come nearer than `clear`."""
    ((ax, ay), (bx, by)), ((cx, cy), (dx, dy)) = one, other
    if min(ax, bx) - max(cx, dx) >= clear or min(cx, dx) - max(ax, bx) >= clear:
        return False
    if min(ay, by) - max(cy, dy) >= clear or min(cy, dy) - max(ay, by) >= clear:
        return False
    return apart(one, other) < clear


def least_swelling(centre: Point, half: tuple[float, float], lines: Iterable[Segment]) -> float:
    """Return how many times as large a box about its centre would touch the first of some lines."""
    (x, y), (wide, tall), least = centre, half, inf
    for (ax, ay), (bx, by) in lines:
        au, av, bu, bv = (ax - x) / wide, (ay - y) / tall, (bx - x) / wide, (by - y) / tall
        if max(min(au, bu), -max(au, bu), min(av, bv), -max(av, bv)) < least:
            least = min(least, _swelling(au, av, bu, bv))
    return least


def _swelling(au: float, av: float, bu: float, bv: float) -> float:
    """Return the least distance from the origin to a straight line, each point's being its larger coordinate."""
    du, dv = bu - au, bv - av
    turns = ((au, du), (av, dv), (au - av, du - dv), (au + av, du + dv))  # where one of them changes its slope
    parts = [0.0, 1.0, *(-start / change for start, change in turns if change)]
    return min(max(abs(au + du * part), abs(av + dv * part)) for part in parts if 0.0 <= part <= 1.0)


class Profile:
    """How far lines reach to the left and right, row by row: what stands beside them keeps clear of it."""

    def __init__(self, segments: Sequence[Segment], row: float) -> None:
        heights = [y for segment in segments for _, y in segment]
        self._row = row
        self._first = floor(min(heights, default=0.0) / row)
        rows = floor(max(heights, default=0.0) / row) - self._first + 1
        self._lefts, self._rights = [inf] * rows, [-inf] * rows
        for segment in segments:
            self._add(segment)

    def _add(self, segment: Segment) -> None:
        (x0, y0), (x1, y1) = segment if segment[0][1] <= segment[1][1] else segment[::-1]
        first, last = floor(y0 / self._row), floor(y1 / self._row)
        slope = (x1 - x0) / (y1 - y0) if y1 > y0 else 0.0
        start = x0
        for row in range(first, last + 1):
            end = x1 if row == last else x0 + slope * ((row + 1) * self._row - y0)
            at = row - self._first
            self._lefts[at] = min(self._lefts[at], start, end)
            self._rights[at] = max(self._rights[at], start, end)
            start = end

    def left(self, top: float, bottom: float) -> float:
        """Return the leftmost reach between two heights; infinity where there is nothing."""
        return min(self._lefts[self._rows(top, bottom)], default=inf)

    def right(self, top: float, bottom: float) -> float:
        """Return the rightmost reach between two heights; minus infinity where there is nothing."""
        return max(self._rights[self._rows(top, bottom)], default=-inf)

    def _rows(self, top: float, bottom: float) -> slice:
        first, last = floor(top / self._row) - self._first, floor(bottom / self._row) - self._first
        return slice(max(first, 0), max(last + 1, 0))


@dataclass(frozen=True, slots=True)
class Reach:
    """How far a drawing reaches at one scale: its profile, and boxes beside it."""

    profile: Profile
    scale: float
    origin: Point
    boxes: Sequence[Box]

    def left(self, top: float, bottom: float) -> float:
        """Return the leftmost reach between two heights; infinity where there is nothing."""
        (x, y), scale = self.origin, self.scale
        reach = self.profile.left((top - y) / scale, (bottom - y) / scale) * scale + x
        for left, high, _, low in self.boxes:
            if left < reach and high <= bottom and low >= top:
                reach = left
        return reach

    def right(self, top: float, bottom: float) -> float:
        """Return the rightmost reach between two heights; minus infinity where there is nothing."""
        (x, y), scale = self.origin, self.scale
        reach = self.profile.right((top - y) / scale, (bottom - y) / scale) * scale + x
        for _, high, right, low in self.boxes:
            if right > reach and high <= bottom and low >= top:
                reach = right
        return reach


def span(segment: Segment) -> float:
    """Return the length of a straight line."""
    (ax, ay), (bx, by) = segment
    return hypot(bx - ax, by - ay)
