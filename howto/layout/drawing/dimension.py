"""A dimension line with its place: its extension lines, 45° ticks, and words on a gap."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from functools import cached_property
from math import atan2, cos, degrees, hypot, radians, sin

from howto.layout.drawing.look import Look
from howto.layout.drawing.plane import Box, Outline, Point, Segment, around, enters, overlap, turned_box
from howto.layout.text import CAP, length
from howto.model.sheet import Area, PaintMark, Stroke, TextMark

OVER = 0.3  # how far lines run past where they meet, in text sizes
CLEAR = 0.35  # air between the subject and an extension line
AIR = 0.6  # line left to see beside words that stand in it
PAD = 0.22  # air before and after the words


@dataclass(frozen=True)
class SetDimension:
    """A dimension with its place: its line from tick to tick, where its words stand and how they turn.

    `loose` words found no place by their line: they are labelled from `centre` like any other point.
    """

    text: str
    size: float
    points: Segment  # what is measured
    line: Segment
    centre: Point  # middle of the words
    angle: float = 0.0
    tail: Point | None = None  # where the line runs on to words that stand past its end
    loose: bool = False

    @cached_property
    def outline(self) -> Outline:
        """The room the words take, with the gap in the line."""
        return turned_box(self.centre, room_for(self.text, self.size) / 2, self.size * 0.5, self.angle)

    @cached_property
    def outlines(self) -> tuple[Outline, ...]:
        """The same as one outline, or none for loose words."""
        return () if self.loose else (self.outline,)

    @cached_property
    def lines(self) -> tuple[Segment, ...]:
        """The dimension line, its tail and its extension lines."""
        extensions = (_extension(*pair, self.size) for pair in zip(self.points, self.line, strict=True))
        tails = ((self.line[1], self.tail),) if self.tail else ()
        return (self.line, *tails, *(extension for extension in extensions if extension))

    @cached_property
    def box(self) -> Box:
        """The room all of it takes."""
        ends = [point for segment in self.lines for point in segment]
        words = [point for outline in self.outlines for point in outline]
        reach = self.size * OVER
        left, top, right, bottom = around(self.line)
        return around((*ends, *words, (left - reach, top - reach), (right + reach, bottom + reach)))


def room_for(text: str, size: float) -> float:
    """Return how wide the words of a dimension are with the air on both sides."""
    return length(text, "head", size) + 2 * PAD * size


def _extension(start: Point, end: Point, size: float) -> Segment | None:
    """Return the extension line from a measured point past the dimension line; None where there is no room."""
    reach = hypot(end[0] - start[0], end[1] - start[1])
    if reach <= size * CLEAR:
        return None
    along = ((end[0] - start[0]) / reach, (end[1] - start[1]) / reach)
    clear, over = size * CLEAR, size * OVER
    return (
        (start[0] + along[0] * clear, start[1] + along[1] * clear),
        (end[0] + along[0] * over, end[1] + along[1] * over),
    )


# -- dimensions inside the subject --


def inner_dimension(text: str, points: Segment, offset: float, size: float) -> SetDimension:
    """Return a dimension drawn where the family put it, its words loose until they have a place."""
    (x0, y0), (x1, y1) = points
    along = _along(points)
    away = (along[1] * offset, -along[0] * offset)  # left of start→end, y running down
    line = ((x0 + away[0], y0 + away[1]), (x1 + away[0], y1 + away[1]))
    middle = ((line[0][0] + line[1][0]) / 2, (line[0][1] + line[1][1]) / 2)
    angle = degrees(atan2(-along[1], along[0]))
    if angle > 90 + 1e-6 or angle <= -90 + 1e-6:
        angle -= 180 if angle > 0 else -180
    return SetDimension(text, size, points, line, middle, angle, loose=True)


def worded(each: SetDimension, others: Sequence[SetDimension], taken: Sequence[Outline]) -> SetDimension:
    """Return an inner dimension with its words where they meet nothing; loose where there is no such place."""
    blocks = [*taken, *(outline for other in others for outline in other.outlines)]
    lines = [line for other in others if other.line != each.line for line in other.lines]
    for centre, angle, tail in _places(each):
        trial = replace(each, centre=centre, angle=angle, tail=tail, loose=False)
        box = trial.outline
        if any(overlap(box, block) for block in blocks) or any(enters(line, box) for line in lines):
            continue
        return trial
    return each


def _along(segment: Segment) -> Point:
    (x0, y0), (x1, y1) = segment
    reach = hypot(x1 - x0, y1 - y0) or 1.0
    return ((x1 - x0) / reach, (y1 - y0) / reach)


def _places(each: SetDimension) -> Iterator[tuple[Point, float, Point | None]]:
    """Yield where the words of an inner dimension may stand, best first: in its line, beside it, past it."""
    (x0, y0), (x1, y1) = each.line
    along, size = _along(each.line), each.size
    reach = hypot(x1 - x0, y1 - y0)
    wide = room_for(each.text, size)
    middle = (x0 + along[0] * reach / 2, y0 + along[1] * reach / 2)
    slack = (reach - wide - size * AIR) / 2
    for share in (0.0, -0.6, 0.6, -1.0, 1.0) if slack >= 0 else ():
        at = reach / 2 + slack * share
        yield (x0 + along[0] * at, y0 + along[1] * at), each.angle, None
    if abs(along[0]) < 1e-6 and reach >= size * 1.15:  # an upright one reads level beside its line
        for out in (wide / 2 + size * 0.2, -wide / 2 - size * 0.2):
            yield (middle[0] + out, middle[1]), 0.0, None
    past = reach + size * AIR
    at = past + wide / 2
    tail = (x0 + along[0] * past, y0 + along[1] * past)
    yield (x0 + along[0] * at, y0 + along[1] * at), each.angle, tail
    for off in (size * 0.85, -size * 0.85):  # over or under the line
        yield (middle[0] + along[1] * off, middle[1] - along[0] * off), each.angle, None


# -- drawing --


def dimension_lines(each: SetDimension, look: Look) -> Iterator[PaintMark]:
    """Yield the lines and ticks of a dimension."""
    (x0, y0), (x1, y1) = each.line
    along = _along(each.line)
    over = each.size * OVER
    for segment in each.lines[1:]:
        yield Stroke(points=segment, width=look.thin, colour=look.ink)
    drawn = ((x0 - along[0] * over, y0 - along[1] * over), (x1 + along[0] * over, y1 + along[1] * over))
    yield Stroke(points=drawn, width=look.thin, colour=look.ink)
    tick = each.size * 0.3
    turn = atan2(along[1], along[0]) - radians(45)
    for x, y in each.line:
        ends = ((x - cos(turn) * tick, y - sin(turn) * tick), (x + cos(turn) * tick, y + sin(turn) * tick))
        yield Stroke(points=ends, width=look.medium, colour=look.ink)


def dimension_words(each: SetDimension, look: Look) -> Iterator[PaintMark]:
    """Yield the words of a dimension on their gap in the line; loose ones are a label's business."""
    if each.loose:
        return
    yield Area(points=each.outline, colour=look.ground)
    drop = each.size * CAP["head"] / 2
    down = (sin(radians(each.angle)), cos(radians(each.angle)))
    yield TextMark(
        text=each.text,
        at=(each.centre[0] + down[0] * drop, each.centre[1] + down[1] * drop),
        size=each.size,
        face="head",
        colour=look.ink,
        align="middle",
        angle=each.angle,
    )
