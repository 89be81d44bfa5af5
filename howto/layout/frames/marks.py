"""Finds places for the numbered discs of a picture: beside what they point at, tied to it by leaders that never cross.

Everything is in the picture's own pixels on the frame. The same marks always give the same places.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from math import cos, dist, pi, sin

from howto.layout.drawing.plane import Box, Point, distance, turn

Circle = tuple[float, float, float]

WAYS = 48  # directions tried round a point
REACHES = (1.0, 1.45, 1.9, 2.4, 3.0, 3.8, 4.8, 6.0, 7.5, 9.5, 12.0, 15.0)  # leader lengths tried, in disc radii
PATIENCE = 4000  # discs tried before giving up


@dataclass(frozen=True, slots=True)
class Sizes:
    """Sizes on the frame in px: the disc with its ring, the point it is tied to, and the least air between things."""

    disc: float = 33.0
    point: float = 11.0
    air: float = 8.0


@dataclass(frozen=True, slots=True)
class MarkCallout:
    """A numbered disc and the point it is tied to."""

    number: int
    at: Point
    disc: Point


SIZES = Sizes()


def crowded(points: Sequence[Point], sizes: Sizes = SIZES) -> tuple[int, int] | None:
    """Return the first two marks (from 1) whose points would run into each other, or None."""
    least = 2 * sizes.point + sizes.air
    pairs = ((i, j) for j in range(len(points)) for i in range(j))
    return next(((i + 1, j + 1) for i, j in pairs if dist(points[i], points[j]) < least), None)


def place(points: Sequence[Point], box: Box, subject: Circle, sizes: Sizes = SIZES) -> tuple[MarkCallout, ...] | None:
    """Return a disc for every point, or None where there is no room.

    No disc touches another, a point, the subject's circle or the box's edge; no leader crosses another, nor runs
    over a point or disc that is not its own. Leaders are as short as that allows, taken mark by mark.
    """
    choices = [tuple(_choices(number, points, box, subject, sizes)) for number in range(len(points))]
    order = sorted(range(len(points)), key=lambda number: (len(choices[number]), number))
    placed = _search(order, choices, points, sizes)
    if placed is None:
        return None
    return tuple(MarkCallout(number + 1, points[number], placed[number]) for number in range(len(points)))


def _choices(number: int, points: Sequence[Point], box: Box, subject: Circle, sizes: Sizes) -> Iterator[Point]:
    """Yield the discs one mark may have on its own account, shortest leader first, away from the subject first."""
    x, y = points[number]
    others = [point for at, point in enumerate(points) if at != number]
    for reach in REACHES:
        length = sizes.point + sizes.air + sizes.disc * reach
        ring = [(x + length * cos(turn), y - length * sin(turn)) for turn in _turns()]
        ring.sort(key=lambda disc: (-round(dist(disc, subject[:2])), disc))
        for disc in ring:
            if _inside(disc, box, sizes) and _free(disc, (x, y), others, subject, sizes):
                yield disc


def _turns() -> Iterator[float]:
    """Yield the directions tried, in radians."""
    return (2 * pi * step / WAYS for step in range(WAYS))


def _inside(disc: Point, box: Box, sizes: Sizes) -> bool:
    """Tell whether a disc keeps clear of the box's edges."""
    room = sizes.disc + sizes.air
    return box[0] + room <= disc[0] <= box[2] - room and box[1] + room <= disc[1] <= box[3] - room


def _free(disc: Point, at: Point, others: Sequence[Point], subject: Circle, sizes: Sizes) -> bool:
    """Tell whether a disc and its leader keep clear of the subject and of every other mark's point."""
    if dist(disc, subject[:2]) < sizes.disc + sizes.air + subject[2]:
        return False
    clear_disc = sizes.disc + sizes.point + sizes.air
    clear_line = sizes.point + sizes.air / 2
    return all(dist(disc, each) >= clear_disc and distance(each, (at, disc)) >= clear_line for each in others)


def _search(
    order: Sequence[int], choices: Sequence[tuple[Point, ...]], points: Sequence[Point], sizes: Sizes
) -> dict[int, Point] | None:
    """Return a disc for every mark, going back where one finds no place; None when patience ends."""
    tried = 0
    stack: list[Iterator[Point]] = [iter(choices[order[0]])] if order else []
    placed: dict[int, Point] = {}
    while stack:
        number = order[len(stack) - 1]
        placed.pop(number, None)
        for disc in stack[-1]:
            tried += 1
            if all(_agree(points[number], disc, points[other], placed[other], sizes) for other in placed):
                placed[number] = disc
                break
        if number not in placed:
            stack.pop()
        elif len(placed) == len(order):
            return placed
        else:
            stack.append(iter(choices[order[len(stack)]]))
        if tried > PATIENCE * len(order):
            return None
    return {} if not order else None


def _agree(at: Point, disc: Point, other_at: Point, other: Point, sizes: Sizes) -> bool:
    """Tell whether two callouts leave each other alone."""
    if dist(disc, other) < 2 * sizes.disc + sizes.air:
        return False
    clear = sizes.disc + sizes.air / 2
    if distance(disc, (other_at, other)) < clear or distance(other, (at, disc)) < clear:
        return False
    return not cross(at, disc, other_at, other)


def cross(a: Point, b: Point, c: Point, d: Point) -> bool:
    """Tell whether the line a–b crosses the line c–d."""
    return turn(a, b, c) * turn(a, b, d) <= 0 and turn(c, d, a) * turn(c, d, b) <= 0
