"""A label or a level beside a drawing: its words in lines, the room they take, its leader, and its marks."""

from collections.abc import Iterator
from dataclasses import dataclass, replace
from functools import cache, cached_property

from howto.fonts import Face
from howto.layout.drawing.look import Look
from howto.layout.drawing.plane import Box, Outline, Point, Segment, box_outline
from howto.layout.text import CAP, balance, length, tied, widest
from howto.model.sheet import Area, Dot, PaintMark, Stroke, TextMark

PITCH = 1.18  # line pitch of a label in sizes
RUN = 1.9  # from the subject to a column in sizes: room for leaders to slant
SHOULDER = 0.55  # the level end of a leader, beside its words
LINE_RISE = 0.3  # a level's words over its line


@dataclass(frozen=True)
class Callout:
    """A label or a level, its words broken into lines: what is to be placed."""

    at: Point
    lines: tuple[str, ...]
    size: float
    level: bool

    @cached_property
    def wide(self) -> float:
        """The width of its widest line."""
        return _wide(self.lines, "head" if self.level else "text", self.size)

    @cached_property
    def letters(self) -> float:
        """The height from the top of its first capital to its last baseline."""
        return (len(self.lines) - 1) * PITCH * self.size + CAP["text"] * self.size

    @cached_property
    def above(self) -> float:
        """The room it takes above its leader."""
        return self.size * (LINE_RISE + 0.78) if self.level else self.letters / 2 + self.size * 0.14

    @cached_property
    def below(self) -> float:
        """The room it takes below its leader."""
        return self.size * 0.12 if self.level else self.letters / 2 + self.size * 0.26


@dataclass(frozen=True)
class PlacedCallout:
    """A callout in its column: `inner` is the edge of its words towards the subject, `y` its leader's height.

    `hangs` puts a level's triangle under its line, where another level stands close above.
    """

    callout: Callout
    right: bool
    inner: float
    y: float
    hangs: bool = False

    @property
    def edge(self) -> float:
        """How far out a level's line runs straight before it turns to its words."""
        return self.inner - (1 if self.right else -1) * self.callout.size * RUN

    @cached_property
    def box(self) -> Box:
        """The room its words take."""
        left = self.inner if self.right else self.inner - self.callout.wide
        return (left, self.y - self.callout.above, left + self.callout.wide, self.y + self.callout.below)

    @cached_property
    def outline(self) -> Outline:
        """The corners of its words' room."""
        return box_outline(self.box)

    @cached_property
    def reach(self) -> Box:
        """The room its leader takes."""
        (x, y), port = self.callout.at, self.inner - (1 if self.right else -1) * self.callout.size * 0.3
        return (min(x, port), min(y, self.y), max(x, port), max(y, self.y))

    @cached_property
    def leader(self) -> tuple[Segment, ...]:
        """The straight pieces from its point to its words."""
        out, size = (1 if self.right else -1), self.callout.size
        port = (self.inner - out * size * 0.3, self.y)
        shoulder = (port[0] - out * size * SHOULDER, self.y)
        if not self.callout.level:
            return ((self.callout.at, shoulder), (shoulder, port))
        knee = (self.edge + out * size * 0.35, self.callout.at[1])
        return ((self.callout.at, knee), (knee, shoulder), (shoulder, port))


def callout(at: Point, text: str, size: float, width: float, *, level: bool) -> Callout:
    """Return a callout with its words in even lines no wider than `width`; a level's stay on one."""
    return Callout(at, (text,) if level else label_lines(text, size, width), size, level)


@cache
def _wide(lines: tuple[str, ...], face: Face, size: float) -> float:
    return widest(list(lines), face, size)


@cache
def label_lines(text: str, size: float, width: float) -> tuple[str, ...]:
    """Return a label in even lines no wider than `width`, or than its longest word: no word is broken."""
    longest = max((length(word, "text", size) for word in tied(text).split(" ")), default=0.0)
    return tuple(balance(text, "text", size, max(width, longest)))


def shifted(each: PlacedCallout, across: float, down: float) -> PlacedCallout:
    """Return a placed callout moved."""
    at = (each.callout.at[0] + across, each.callout.at[1] + down)
    return replace(each, callout=replace(each.callout, at=at), inner=each.inner + across, y=each.y + down)


# -- drawing --


def callout_marks(each: PlacedCallout, look: Look) -> Iterator[PaintMark]:
    """Yield a callout's leader and words."""
    points = (each.leader[0][0], *(end for _, end in each.leader))
    if each.callout.level:
        yield from _level_marks(each, points, look)
        return
    yield Stroke(points=points, width=look.thin * 3, colour=look.ground)
    yield Stroke(points=points, width=look.thin, colour=look.ink)
    yield Dot(
        centre=each.callout.at,
        radius=each.callout.size * 0.13,
        colour=look.ink,
        ring_width=look.thin,
        ring_colour=look.ground,
    )
    size = each.callout.size
    first = each.y - each.callout.letters / 2 + CAP["text"] * size
    for turn, line in enumerate(each.callout.lines):
        yield TextMark(
            text=line,
            at=(each.inner, first + turn * PITCH * size),
            size=size,
            colour=look.ink,
            align="left" if each.right else "right",
        )


def _level_marks(each: PlacedCallout, points: tuple[Point, ...], look: Look) -> Iterator[PaintMark]:
    """Yield a datum mark: the line at its height, the triangle on it, the words over its end."""
    size, out = each.callout.size, 1 if each.right else -1
    end = (each.inner + out * each.callout.wide, each.y)
    yield Stroke(points=(*points, end), width=look.thin, colour=look.ink)
    x, y = each.edge - out * size * 0.45, each.callout.at[1]
    half, tall = size * 0.34, size * 0.55
    base = y + tall if each.hangs else y - tall
    yield Area(points=((x, y), (x - half, base), (x + half, base)), colour=look.ink)
    yield TextMark(
        text=each.callout.lines[0],
        at=(each.inner, each.y - size * LINE_RISE),
        size=size,
        face="head",
        colour=look.ink,
        align="left" if each.right else "right",
    )
