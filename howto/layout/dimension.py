"""Sets dimension lines: which lane each takes beside the subject, where its words stand, what it is drawn with."""

from collections.abc import Callable, Iterable, Iterator, Sequence
from dataclasses import dataclass, replace
from math import atan2, cos, degrees, hypot, radians, sin

from howto.layout.look import Look
from howto.layout.plane import Box, Outline, Point, Segment, around, overlap, turned_box
from howto.layout.text import CAP, length
from howto.model.sheet import Area, PaintMark, Stroke, Words
from howto.shapes import Dimension

FIRST_LANE = 1.5  # in text sizes: from the subject to the first dimension line
NEXT_LANE = 1.5  # and from each to the next
OVER = 0.3  # how far lines run past where they meet
CLEAR = 0.35  # air between the subject and an extension line


@dataclass(frozen=True, slots=True)
class SetDimension:
    """A dimension with its place: its line from tick to tick, where its words stand and how they turn."""

    text: str
    size: float
    points: Segment  # what is measured
    line: Segment
    centre: Point  # middle of the words
    angle: float
    tail: Point | None = None  # where the line runs on to words that stand past its end

    @property
    def outline(self) -> Outline:
        """The room the words take, with the gap in the line."""
        half = length(self.text, "head", self.size) / 2 + self.size * 0.28
        return turned_box(self.centre, half, self.size * 0.52, self.angle)

    @property
    def lines(self) -> tuple[Segment, ...]:
        """The dimension line and its extension lines."""
        extensions = (_extension(*pair, self.size) for pair in zip(self.points, self.line, strict=True))
        tails = ((self.line[1], self.tail),) if self.tail else ()
        return (self.line, *tails, *(extension for extension in extensions if extension))

    @property
    def box(self) -> Box:
        """The room all of it takes."""
        ends = (point for segment in self.lines for point in segment)
        reach = self.size * OVER
        left, top, right, bottom = around(self.line)
        return around(
            (*ends, *self.outline, (left - reach, top - reach), (right + reach, bottom + reach)),
        )


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


# -- placing --


def set_dimensions(
    dimensions: Iterable[Dimension], place: Callable[[Point], Point], subject: Box, scale: float, size: float
) -> tuple[SetDimension, ...]:
    """Return the dimensions with their places; those outside the subject share lanes beside it."""
    lanes: dict[str, list[list[tuple[float, float]]]] = {"top": [], "bottom": [], "left": [], "right": []}
    done: list[SetDimension] = []
    for dimension in sorted(dimensions, key=lambda each: (abs(each.offset), _reach(each), each.start, each.end)):
        start, end = place(dimension.start), place(dimension.end)
        side = _side(start, end, dimension.offset * scale, subject)
        if side:
            done.append(_in_lane(dimension.text, (start, end), side, subject, size, lanes[side]))
        else:
            done.append(_inside(dimension.text, (start, end), dimension.offset * scale, size, done))
    return tuple(done)


def _reach(dimension: Dimension) -> float:
    return hypot(dimension.end[0] - dimension.start[0], dimension.end[1] - dimension.start[1])


def _side(start: Point, end: Point, offset: float, subject: Box) -> str:
    """Return the side of the subject that a level or upright dimension stands on; "" for inside or slanting."""
    left, top, right, bottom = subject
    dx, dy = end[0] - start[0], end[1] - start[1]
    dust = 1e-6 * max(1.0, abs(dx) + abs(dy))
    if abs(offset) < dust:
        return ""
    if abs(dy) <= dust < abs(dx):
        at = start[1] - offset * (1 if dx > 0 else -1)
        return "top" if at <= top + dust else "bottom" if at >= bottom - dust else ""
    if abs(dx) <= dust < abs(dy):
        at = start[0] - offset * (1 if dy < 0 else -1)
        return "left" if at <= left + dust else "right" if at >= right - dust else ""
    return ""


def _in_lane(
    text: str, points: Segment, side: str, subject: Box, size: float, lanes: list[list[tuple[float, float]]]
) -> SetDimension:
    """Return a dimension in the nearest lane where neither its line nor its words meet another's."""
    level = side in {"top", "bottom"}
    axis = 0 if level else 1
    low, high = sorted((points[0][axis], points[1][axis]))
    wide = length(text, "head", size) + size * 0.56
    inline = wide + size * 0.9 <= high - low
    reach = size * 0.9 + wide
    needs = (low, high) if inline else (low, high + reach) if level else (low - reach, high)
    lane = next((n for n, taken in enumerate(lanes) if all(_clear(needs, other) for other in taken)), len(lanes))
    lanes.extend([] for _ in range(lane + 1 - len(lanes)))
    lanes[lane].append(needs)
    away = size * (FIRST_LANE + lane * NEXT_LANE)
    left, top, right, bottom = subject
    at = {"top": top - away, "bottom": bottom + away, "left": left - away, "right": right + away}[side]
    middle = (low + high) / 2 if inline else high + size * 0.9 + wide / 2 if level else low - size * 0.9 - wide / 2
    ends = (low, high) if level else (high, low)  # past its end: to the right, or upwards
    points = tuple(sorted(points, key=lambda point: point[axis] * (1 if level else -1)))  # type: ignore[assignment]
    if level:
        tail = None if inline else (high + size * 0.9, at)
        return SetDimension(text, size, points, ((ends[0], at), (ends[1], at)), (middle, at), 0.0, tail)
    tail = None if inline else (at, low - size * 0.9)
    return SetDimension(text, size, points, ((at, ends[0]), (at, ends[1])), (at, middle), 90.0, tail)


def _clear(one: tuple[float, float], other: tuple[float, float]) -> bool:
    dust = 1e-6 * max(1.0, abs(one[0]), abs(one[1]))
    return one[1] <= other[0] + dust or other[1] <= one[0] + dust


def _inside(text: str, points: Segment, offset: float, size: float, done: Sequence[SetDimension]) -> SetDimension:
    """Return a dimension drawn where the family put it, its words where they meet no others."""
    (x0, y0), (x1, y1) = points
    reach = hypot(x1 - x0, y1 - y0) or 1.0
    along = ((x1 - x0) / reach, (y1 - y0) / reach)
    away = (along[1] * offset, -along[0] * offset)  # left of start→end, y running down
    line = ((x0 + away[0], y0 + away[1]), (x1 + away[0], y1 + away[1]))
    angle = degrees(atan2(-along[1], along[0]))
    if angle > 90 + 1e-6 or angle <= -90 + 1e-6:
        angle -= 180 if angle > 0 else -180
    taken = [other.outline for other in done]
    blank = SetDimension(text, size, points, line, line[0], angle)
    places = [replace(blank, centre=centre, tail=tail) for centre, tail in _places(line, along, text, size)]
    return next((trial for trial in places if not any(overlap(trial.outline, box) for box in taken)), places[0])


def _places(line: Segment, along: Point, text: str, size: float) -> Iterator[tuple[Point, Point | None]]:
    """Yield where the words of an inside dimension may stand, best first."""
    (x0, y0), (x1, y1) = line
    reach = hypot(x1 - x0, y1 - y0)
    wide = length(text, "head", size) + size * 0.56
    if wide + size * 0.9 <= reach:
        slack = (reach - wide - size * 0.9) / 2
        for share in (0.0, -0.6, 0.6, -1.0, 1.0):
            at = reach / 2 + slack * share
            yield (x0 + along[0] * at, y0 + along[1] * at), None
    past = size * 0.9
    at = reach + past + wide / 2
    yield (x0 + along[0] * at, y0 + along[1] * at), (x1 + along[0] * past, y1 + along[1] * past)
    for side in (1, -1):  # beside the line, on its left or right
        off = size * 0.95 * side
        yield (
            (x0 + along[0] * reach / 2 + along[1] * off, y0 + along[1] * reach / 2 - along[0] * off),
            None,
        )


# -- drawing --


def dimension_lines(each: SetDimension, look: Look) -> Iterator[PaintMark]:
    """Yield the lines and ticks of a dimension."""
    (x0, y0), (x1, y1) = each.line
    reach = hypot(x1 - x0, y1 - y0) or 1.0
    along = ((x1 - x0) / reach, (y1 - y0) / reach)
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
    """Yield the words of a dimension on their gap in the line."""
    yield Area(points=each.outline, colour=look.ground)
    drop = each.size * CAP["head"] / 2
    down = (sin(radians(each.angle)), cos(radians(each.angle)))
    yield Words(
        text=each.text,
        at=(each.centre[0] + down[0] * drop, each.centre[1] + down[1] * drop),
        size=each.size,
        face="head",
        colour=look.ink,
        align="middle",
        angle=each.angle,
    )
