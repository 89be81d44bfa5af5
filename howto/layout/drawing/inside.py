"""Labels that stand on what they name: where the outline a label points into has room for its words."""

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from functools import cached_property
from itertools import pairwise
from math import inf
from typing import Final

from howto.layout.drawing.callouts import PITCH, label_lines
from howto.layout.drawing.hatch import inside
from howto.layout.drawing.look import Look
from howto.layout.drawing.plane import (
    Box,
    Outline,
    Point,
    Segment,
    around,
    box_outline,
    boxes_meet,
    distance,
    edges,
    enters,
    least_swelling,
    overlap,
)
from howto.layout.text import CAP, widest
from howto.model.sheet import Area, PaintMark, TextMark
from howto.shapes import Role

PAD: Final = 0.32  # air round the words, in sizes
WIDTHS: Final = (30.0, 12.0, 7.0, 5.0)  # how wide their lines may be, in sizes, the widest first
CLEAR: Final = 0.15  # how far a point stands from every line to mean the outline round it, in sizes
SHIFTS: Final = (0.0, 0.25, 0.5, 0.75, 1.0)  # from the point to the middle of its outline
HATCHED: Final = {Role.REMOVE, Role.SOIL, Role.MULCH, Role.WATER, Role.WALL, Role.DANGER}
OPAQUE: Final = {Role.KEEP, Role.REMOVE, Role.MULCH, Role.WATER, Role.WALL}
FILLED: Final = HATCHED | {Role.KEEP}

Drawn = tuple[int, Segment]  # a line, and its turn in the painting order


@dataclass(frozen=True, slots=True)
class Region:
    """A filled outline that words may stand in, and its turn in the painting order."""

    points: tuple[Point, ...]
    role: Role
    turn: int

    def hides(self, line: Segment, turn: int) -> bool:
        """Tell whether a line that was painted at another turn is covered by the outline's fill."""
        return turn < self.turn and self.role in OPAQUE and all(inside(end, self.points) for end in line)


@dataclass(frozen=True)
class Inner:
    """A label on what it names: its words, their middle, and whether they need a ground of their own."""

    lines: tuple[str, ...]
    centre: Point
    size: float
    patched: bool

    @cached_property
    def box(self) -> Box:
        """The room the words take, with the air round them."""
        wide, tall = (half * self.size for half in half_room(self.lines))
        return (self.centre[0] - wide, self.centre[1] - tall, self.centre[0] + wide, self.centre[1] + tall)

    @cached_property
    def outline(self) -> Outline:
        """The corners of that room."""
        return box_outline(self.box)


def half_room(lines: tuple[str, ...]) -> tuple[float, float]:
    """Return half the width and height that lines of words take with the air round them, in sizes."""
    wide = widest(list(lines), "text", 1.0) / 2 + PAD
    return (wide, ((len(lines) - 1) * PITCH + CAP["text"]) / 2 + PAD)


def alone(points: Sequence[Point], regions: Sequence[Region]) -> list[bool]:
    """Tell of each label's point whether no other label points into the same outline: only then it is plain whose."""
    seen = [seen_at(point, regions) for point in points]
    return [each is not None and seen.count(each) == 1 for each in seen]


class Room:
    """The outline that a label points into, in the drawing's own millimetres: how large words may be set there."""

    def __init__(self, at: Point, region: Region, regions: Sequence[Region], lines: Sequence[Drawn]) -> None:
        self.region = region
        self._seen = [line for turn, line in lines if not region.hides(line, turn)]
        self.clear = min((distance(at, line) for line in self._seen), default=inf)
        middle = _middle(around(region.points))
        spots = ((at[0] + (middle[0] - at[0]) * part, at[1] + (middle[1] - at[1]) * part) for part in SHIFTS)
        self.spots = [spot for spot in spots if seen_at(spot, regions) == region]
        self._most: dict[tuple[Point, tuple[str, ...]], float] = {}

    def most(self, spot: Point, lines: tuple[str, ...]) -> float:
        """Return the size, in millimetres, at which words about a spot would meet a line that is seen."""
        key = (spot, lines)
        if key not in self._most:
            self._most[key] = least_swelling(spot, half_room(lines), self._seen)
        return self._most[key]


def room_at(at: Point, regions: Sequence[Region], lines: Sequence[Drawn]) -> Room | None:
    """Return the room of the outline that is seen at a point, or None where it has no ground to set words on.

    `regions` stand in painting order: the last that holds the point is the one that is seen there.
    """
    region = seen_at(at, regions)
    return Room(at, region, regions, lines) if region and region.role in FILLED else None


def inner_label(
    room: Room,
    text: str,
    size: float,
    scale: float,
    place: Callable[[Point], Point],
    lines: Sequence[Segment],
    taken: Sequence[Outline],
) -> Inner | None:
    """Return a label in the outline its point lies in, or None where its words would meet a line or other words."""
    if room.clear * scale < size * CLEAR:
        return None
    for wrapped in dict.fromkeys(label_lines(text, 1.0, width) for width in WIDTHS):
        for spot in room.spots:
            if room.most(spot, wrapped) * scale < size:
                continue
            trial = Inner(wrapped, place(spot), size, room.region.role in HATCHED)
            if not _met(trial, lines, taken):
                return trial
    return None


def seen_at(at: Point, regions: Sequence[Region]) -> Region | None:
    """Return the region that is seen at a point."""
    return next((each for each in reversed(regions) if inside(at, each.points)), None)


def _middle(box: Box) -> Point:
    """Return the middle of a box."""
    return ((box[0] + box[2]) / 2, (box[1] + box[3]) / 2)


def _met(trial: Inner, lines: Sequence[Segment], taken: Sequence[Outline]) -> bool:
    """Tell whether words meet a dimension's line, or other words."""
    box, outline = trial.box, trial.outline
    met = any(boxes_meet(around(line), box) and enters(line, outline) for line in lines)
    return met or any(overlap(outline, each) for each in taken)


def region_lines(points: Sequence[Point], *, closed: bool) -> list[Segment]:
    """Return the straight pieces of an outline or a polyline."""
    return edges(points) if closed else list(pairwise(points))


def inner_marks(each: Inner, look: Look) -> Iterator[PaintMark]:
    """Yield the words, on a ground of their own where hatching would run through them."""
    if each.patched:
        yield Area(points=each.outline, colour=look.ground)
    top = each.centre[1] - ((len(each.lines) - 1) * PITCH + CAP["text"]) * each.size / 2
    for turn, line in enumerate(each.lines):
        at = (each.centre[0], top + (CAP["text"] + turn * PITCH) * each.size)
        yield TextMark(text=line, at=at, size=each.size, colour=look.ink, align="middle")
