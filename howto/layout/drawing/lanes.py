"""Sets dimension lines outside a subject into lanes beside it, as even as on a setting-out drawing.

Short ones share a lane end to end; one whose words are wider than itself has them past its end or, upright,
beside it. How far out a family asks for says only the order.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from functools import cached_property

from howto.layout.drawing.dimension import AIR, SetDimension, room_for
from howto.layout.drawing.plane import Box, Point, Segment

FIRST_LANE = 1.5  # in text sizes: from the subject to the first dimension line
NEXT_LANE = 1.5  # and from each to the next


@dataclass(frozen=True)
class Wanted:
    """An outer dimension before it has a lane: its words, the points measured, and the side it stands on."""

    text: str
    points: Segment
    side: str
    size: float

    @cached_property
    def level(self) -> bool:
        """Whether it runs across and not up."""
        return self.side in {"top", "bottom"}

    @cached_property
    def reach(self) -> tuple[float, float]:
        """From where to where it measures, along its lane."""
        axis = 0 if self.level else 1
        low, high = sorted((self.points[0][axis], self.points[1][axis]))
        return (low, high)

    @cached_property
    def wide(self) -> float:
        """The room its words take along a line."""
        return room_for(self.text, self.size)

    @cached_property
    def way(self) -> str:
        """How its words stand: `in` the line, `beside` an upright one, or `past` its end."""
        low, high = self.reach
        if self.wide + self.size * AIR <= high - low:
            return "in"
        return "beside" if not self.level and high - low >= self.size * 1.15 else "past"

    @cached_property
    def needs(self) -> tuple[float, float]:
        """The stretch of a lane that it fills with its words."""
        low, high = self.reach
        if self.way != "past":
            return (low, high)
        more = self.size * AIR + self.wide
        return (low, high + more) if self.level else (low - more, high)  # to the right, or upwards


def side_of(start: Point, end: Point, offset: float, subject: Box) -> str:
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


def in_lanes(wanted: Sequence[Wanted], subject: Box) -> list[SetDimension]:
    """Return the dimensions of one side in the nearest lanes where neither lines nor words meet."""
    lanes: list[list[Wanted]] = []
    for each in wanted:
        free = (lane for lane in lanes if all(_clear(each.needs, other.needs) for other in lane))
        lane = next(free, None)
        if lane is None:
            lanes.append([each])
        else:
            lane.append(each)
    done: list[SetDimension] = []
    away = 0.0
    for turn, lane in enumerate(lanes):
        away += lane[0].size * (NEXT_LANE if turn else FIRST_LANE)
        done.extend(_set(each, away, subject) for each in lane)
        away += max((each.wide + each.size * 0.2 for each in lane if each.way == "beside"), default=0.0)
    return done


def _clear(one: tuple[float, float], other: tuple[float, float]) -> bool:
    dust = 1e-6 * max(1.0, abs(one[0]), abs(one[1]))
    return one[1] <= other[0] + dust or other[1] <= one[0] + dust


def _set(each: Wanted, away: float, subject: Box) -> SetDimension:
    left, top, right, bottom = subject
    at = {"top": top - away, "bottom": bottom + away, "left": left - away, "right": right + away}[each.side]
    low, high = each.reach
    middle, past = (low + high) / 2, each.size * AIR
    if each.level:
        first, second = sorted(each.points)
        line = ((low, at), (high, at))
        if each.way == "in":
            return SetDimension(each.text, each.size, (first, second), line, (middle, at))
        words = (high + past + each.wide / 2, at)
        return SetDimension(each.text, each.size, (first, second), line, words, tail=(high + past, at))
    second, first = sorted(each.points, key=lambda point: point[1])
    line = ((at, high), (at, low))
    if each.way == "in":
        return SetDimension(each.text, each.size, (first, second), line, (at, middle), 90.0)
    if each.way == "beside":
        out = (each.wide / 2 + each.size * 0.2) * (-1 if each.side == "left" else 1)
        return SetDimension(each.text, each.size, (first, second), line, (at + out, middle))
    words = (at, low - past - each.wide / 2)
    return SetDimension(each.text, each.size, (first, second), line, words, 90.0, (at, low - past))
