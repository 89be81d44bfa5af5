"""The pieces frames are put together from: blocks of words, dimension chains, discs, tick boxes, warning stripes."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from math import cos, radians, sin

from howto.layout.drawing.plane import box_outline
from howto.layout.frames.look import EDGE, HAIR, LINE, SMALLEST, Board
from howto.layout.text import ASCENT, CAP, DESCENT, balance, widest, wrap
from howto.model.sheet import Area, Dot, Face, PaintMark, Point, Stroke, TextMark

EVENED = 6  # lines: a longer block is even enough as it is


@dataclass(frozen=True, slots=True)
class Block:
    """Wrapped words of one face and size; `text` and `room` are what was wrapped, and to which width."""

    lines: tuple[str, ...]
    face: Face
    size: float
    leading: float
    text: str = ""
    room: float = 0.0

    @property
    def evened(self) -> "Block":
        """The same words on as many lines, made as even as they can be, so that no word is left alone."""
        if not 2 <= len(self.lines) <= EVENED or not self.text:
            return self
        return replace(self, lines=tuple(balance(self.text, self.face, self.size, self.room)))

    @property
    def height(self) -> float:
        """From the top of the first line's letters to the foot of the last's tails."""
        return (len(self.lines) - 1) * self.size * self.leading + self.size * (ASCENT + DESCENT) if self.lines else 0.0

    @property
    def width(self) -> float:
        """The width of the widest line."""
        return widest(list(self.lines), self.face, self.size)

    def at(self, left: float, top: float, colour: str) -> Iterator[TextMark]:
        """Yield the lines with the block's upper left corner at a point."""
        for number, line in enumerate(self.lines):
            baseline = top + self.size * (ASCENT + number * self.leading)
            yield TextMark(text=line, at=(left, baseline), size=self.size, face=self.face, colour=colour)


def block(text: str, face: Face, size: float, width: float, leading: float = 1.22) -> Block:
    """Return the text wrapped to a width."""
    return Block(tuple(wrap(text, face, size, width)) if text else (), face, size, leading, text, width)


def heading(text: str, size: float, width: float, leading: float = 0.98) -> Block:
    """Return the text as an even-edged heading."""
    return Block(tuple(balance(text, "head-bold", size, width)), "head-bold", size, leading)


def headline(text: str, sizes: Sequence[float], width: float, most_lines: int) -> Block | None:
    """Return the heading at the largest size at which it takes at most so many lines; None where none does."""
    for size in sizes:
        tried = heading(text, size, width)
        if len(tried.lines) <= most_lines and tried.width <= width and not _broken(text, tried):
            return tried
    return None


def _broken(text: str, tried: Block) -> bool:
    """Tell whether a word was broken between letters to fit."""
    words = set(text.split())
    pieces = [piece for line in tried.lines for piece in line.split()]
    return len(pieces) > len(text.split()) and any(
        piece not in words and not piece.endswith(("-", "–", "/")) for piece in pieces[:-1]
    )


def steps_down(largest: float, smallest: float, step: float = 4.0) -> tuple[float, ...]:
    """Return sizes from largest to smallest, the smallest always among them."""
    count = int((largest - smallest) // step)
    sizes = [largest - step * number for number in range(count + 1)]
    return tuple(dict.fromkeys([*sizes, smallest]))


def rule(left: float, right: float, y: float, colour: str, width: float = HAIR) -> Stroke:
    """Return a level line."""
    return Stroke(points=((left, y), (right, y)), width=width, colour=colour)


def slash(x: float, y: float, colour: str, size: float = 13.0) -> Stroke:
    """Return the end tick of a dimension line."""
    return Stroke(points=((x - size, y + size), (x + size, y - size)), width=EDGE, colour=colour)


def chain(sheet: Board, left: float, right: float, y: float, parts: int) -> Iterator[PaintMark]:
    """Yield a dimension line at height `y` with an end tick at each end and between its parts."""
    yield rule(left, right, y, sheet.ink, LINE)
    for number in range(parts + 1):
        x = left + (right - left) * number / parts
        yield Stroke(points=((x, y - 26), (x, y + 26)), width=HAIR, colour=sheet.ink)
        yield slash(x, y, sheet.accent)


def disc(sheet: Board, centre: Point, number: int, radius: float) -> Iterator[PaintMark]:
    """Yield a numbered disc: accent inside a ring of ground and a ring of ink, so that it stands out on anything."""
    yield Dot(centre=centre, radius=radius, colour=sheet.accent, ring_width=4.0, ring_colour=sheet.ground)
    size = max(SMALLEST, radius * 1.42)
    at = (centre[0], centre[1] + size * CAP["head-bold"] / 2)
    yield TextMark(text=str(number), at=at, size=size, face="head-bold", colour=sheet.on_accent, align="middle")


def tick_box(left: float, top: float, size: float, colour: str) -> Stroke:
    """Return an empty box to tick."""
    return Stroke(points=box_outline((left, top, left + size, top + size)), width=LINE + 1, colour=colour, closed=True)


def stripes(top: float, bottom: float, width: float, colour: str) -> Iterator[Area]:
    """Yield the slanting stripes of a warning band, at 45 degrees (ISO 3864-1: from memory)."""
    high = bottom - top
    pitch = high * 1.1
    left = -high
    while left < width:
        yield Area(
            points=((left, bottom), (left + high, top), (left + high + pitch, top), (left + pitch, bottom)),
            colour=colour,
        )
        left += 2 * pitch


def warning_sign(left: float, top: float, size: float, ink: str, fill: str) -> Iterator[PaintMark]:
    """Yield the general warning sign: black-edged triangle, exclamation mark (ISO 7010 W001: from memory)."""
    middle, high = left + size / 2, size * 0.9
    corners = ((middle, top), (left + size, top + high), (left, top + high))
    yield Area(points=_rounded(corners, size * 0.07), colour=ink)
    yield Area(points=_rounded(_shrunk(corners, 0.66), size * 0.03), colour=fill)
    stem, foot = size * 0.05, top + high * 0.66
    yield Area(
        points=(
            (middle - stem, top + high * 0.38),
            (middle + stem, top + high * 0.38),
            (middle + stem * 0.55, foot),
            (middle - stem * 0.55, foot),
        ),
        colour=ink,
    )
    yield Dot(centre=(middle, top + high * 0.75), radius=size * 0.045, colour=ink)


def _shrunk(corners: Sequence[Point], share: float) -> tuple[Point, ...]:
    """Return the corners drawn towards their middle."""
    x = sum(point[0] for point in corners) / len(corners)
    y = sum(point[1] for point in corners) / len(corners)
    return tuple((x + (px - x) * share, y + (py - y) * share) for px, py in corners)


def _rounded(corners: Sequence[Point], radius: float) -> tuple[Point, ...]:
    """Return a convex outline with its corners rounded, clockwise on the frame."""
    from_middle = _shrunk(corners, 1.0)
    points: list[Point] = []
    count = len(from_middle)
    x = sum(point[0] for point in corners) / count
    y = sum(point[1] for point in corners) / count
    for number, (px, py) in enumerate(from_middle):
        away = ((px - x) ** 2 + (py - y) ** 2) ** 0.5
        centre = (px - (px - x) / away * radius * 2, py - (py - y) / away * radius * 2)
        start = -150 + 120 * number
        points.extend(
            (centre[0] + radius * cos(radians(start + turn)), centre[1] + radius * sin(radians(start + turn)))
            for turn in range(0, 121, 20)
        )
    return tuple(points)
