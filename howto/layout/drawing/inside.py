"""Labels that stand on what they name: where the outline a label points into has room for its words."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise
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
    overlap,
)
from howto.layout.text import CAP, widest
from howto.model.sheet import Area, PaintMark, Words
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


@dataclass(frozen=True, slots=True)
class Inner:
    """A label on what it names: its words, their middle, and whether they need a ground of their own."""

    lines: tuple[str, ...]
    centre: Point
    size: float
    patched: bool

    @property
    def box(self) -> Box:
        """The room the words take, with the air round them."""
        half = widest(list(self.lines), "text", self.size) / 2 + self.size * PAD
        tall = ((len(self.lines) - 1) * PITCH + CAP["text"]) * self.size / 2 + self.size * PAD
        return (self.centre[0] - half, self.centre[1] - tall, self.centre[0] + half, self.centre[1] + tall)

    @property
    def outline(self) -> Outline:
        """The corners of that room."""
        return box_outline(self.box)


def alone(points: Sequence[Point], regions: Sequence[Region]) -> list[bool]:
    """Tell of each label's point whether no other label points into the same outline: only then it is plain whose."""
    seen = [seen_at(point, regions) for point in points]
    return [each is not None and seen.count(each) == 1 for each in seen]


def inner_label(
    at: Point, text: str, size: float, regions: Sequence[Region], lines: Sequence[Drawn], taken: Sequence[Outline]
) -> Inner | None:
    """Return a label in the outline its point lies in, or None where its words would meet a line or other words.

    `regions` stand in painting order: the last that holds the point is the one that is seen there.
    """
    region = seen_at(at, regions)
    if region is None or region.role not in FILLED or _crowded(at, region, lines, size * CLEAR):
        return None
    middle = _middle(around(region.points))
    centres = [(at[0] + (middle[0] - at[0]) * part, at[1] + (middle[1] - at[1]) * part) for part in SHIFTS]
    for wrapped in dict.fromkeys(label_lines(text, size, size * width) for width in WIDTHS):
        for centre in centres:
            trial = Inner(wrapped, centre, size, region.role in HATCHED)
            if seen_at(centre, regions) == region and not _met(trial, region, lines, taken):
                return trial
    return None


def seen_at(at: Point, regions: Sequence[Region]) -> Region | None:
    """Return the region that is seen at a point."""
    return next((each for each in reversed(regions) if inside(at, each.points)), None)


def _middle(box: Box) -> Point:
    """Return the middle of a box."""
    return ((box[0] + box[2]) / 2, (box[1] + box[3]) / 2)


def _crowded(at: Point, region: Region, lines: Sequence[Drawn], clear: float) -> bool:
    """Tell whether a point is nearer than `clear` to a line that is seen."""
    return any(distance(at, line) < clear and not region.hides(line, turn) for turn, line in lines)


def _met(trial: Inner, region: Region, lines: Sequence[Drawn], taken: Sequence[Outline]) -> bool:
    """Tell whether words meet a line that is seen, or other words."""
    box, outline = trial.box, trial.outline
    near = ((turn, line) for turn, line in lines if boxes_meet(around(line), box))
    met = any(enters(line, outline) and not region.hides(line, turn) for turn, line in near)
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
        yield Words(text=line, at=at, size=each.size, colour=look.ink, align="middle")
