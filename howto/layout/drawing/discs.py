"""Places numbered discs on the points of a drawing, or beside them on a short leader where they would meet."""

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from functools import cached_property
from itertools import product
from math import cos, dist, pi, sin

from howto.layout.drawing.hatch import inside
from howto.layout.drawing.look import Look
from howto.layout.drawing.plane import Box, Outline, Point, Segment, apart, disc_outline, enters, holds, overlap
from howto.layout.text import CAP
from howto.model.sheet import Dot, PaintMark, Stroke, TextMark

RINGS = (2.2, 3.0, 4.0, 5.2, 6.6)  # how far off its point a disc may stand, in radii
TURNS = (3, 1, 5, 7, 2, 6, 0, 4)  # eighths of a turn, anticlockwise from the right: upwards first
RING = 0.16  # the contrast ring, in radii


@dataclass(frozen=True)
class PlacedDisc:
    """A numbered disc at `centre` about the point `at`."""

    number: int
    at: Point
    centre: Point
    radius: float

    @cached_property
    def outline(self) -> Outline:
        """The room it takes with its ring."""
        return disc_outline(self.centre, self.radius * (1 + RING))

    @cached_property
    def leader(self) -> Segment | None:
        """The line from its point to its middle; None where it stands on the point."""
        return None if self.centre == self.at else (self.at, self.centre)

    @cached_property
    def box(self) -> Box:
        """The room it takes, as a box."""
        reach = self.radius * (1 + RING)
        x, y = self.centre
        return (x - reach, y - reach, x + reach, y + reach)


def place_discs(
    points: Iterable[tuple[Point, int]], radius: float, blocks: Sequence[Outline], pointed: Sequence[Point], room: Box
) -> tuple[PlacedDisc, ...] | None:
    """Return every disc with its place, by number; None where one finds no free place.

    A disc keeps off the words in `blocks` and off the points that labels speak of, but for its own.
    """
    wanted = sorted(points, key=lambda each: (each[1], each[0]))
    done: list[PlacedDisc] = []
    for at, number in wanted:
        spots = [disc_outline(point, radius * 0.2) for point in pointed if dist(point, at) > radius]
        trials = (PlacedDisc(number, at, centre, radius) for centre in _places(at, radius))
        free = next((trial for trial in trials if _is_free(trial, done, [*blocks, *spots], room)), None)
        if free is None:
            return None
        done.append(free)
    return tuple(done)


def _places(at: Point, radius: float) -> Iterator[Point]:
    yield at
    for ring, turn in product(RINGS, TURNS):
        angle = turn * pi / 4
        yield (at[0] + cos(angle) * radius * ring, at[1] - sin(angle) * radius * ring)


def _is_free(trial: PlacedDisc, done: Sequence[PlacedDisc], blocks: Sequence[Outline], room: Box) -> bool:
    taken = [*blocks, *(other.outline for other in done)]
    if not holds(room, trial.box) or any(overlap(trial.outline, block) for block in taken):
        return False
    leaders = [other.leader for other in done if other.leader]
    if any(enters(leader, trial.outline) for leader in leaders):
        return False
    own = trial.leader
    if own is None:
        return True
    crossed = (leader for leader in leaders if leader[0] != trial.at and apart(own, leader) < trial.radius * 0.15)
    passed = (other.outline for other in done if not inside(trial.at, other.outline))  # it may come out from under one
    return next(crossed, None) is None and not any(enters(own, block) for block in (*blocks, *passed))


def disc_leaders(each: PlacedDisc, look: Look) -> Iterator[PaintMark]:
    """Yield the leader of a disc that stands off its point; it goes under all discs."""
    if each.leader:
        yield Stroke(points=each.leader, width=look.thin * 3, colour=look.ground)
        yield Stroke(points=each.leader, width=look.thin, colour=look.ink)
        yield Dot(centre=each.at, radius=each.radius * 0.16, colour=look.ink)


def disc_marks(each: PlacedDisc, look: Look) -> Iterator[PaintMark]:
    """Yield a disc's face with a contrast ring, and its number."""
    yield Dot(
        centre=each.centre, radius=each.radius, colour=look.ink, ring_width=each.radius * RING, ring_colour=look.ground
    )
    size = each.radius * (1.3 if each.number < 10 else 1.1)
    yield TextMark(
        text=str(each.number),
        at=(each.centre[0], each.centre[1] + size * CAP["head-bold"] / 2),
        size=size,
        face="head-bold",
        colour=look.ground,
        align="middle",
    )
