"""A drawing at one scale: its dimensions and discs placed, and what its labels are placed round."""

from collections.abc import Iterator
from dataclasses import dataclass
from functools import cached_property
from math import dist
from typing import TypeGuard

from howto.layout.drawing.callouts import Callout, PlacedCallout, callout, callout_marks
from howto.layout.drawing.columns import Ground
from howto.layout.drawing.dimension import SetDimension, dimension_lines, dimension_words, inner_dimension, worded
from howto.layout.drawing.discs import PlacedDisc, disc_leaders, disc_marks, place_discs
from howto.layout.drawing.inside import Inner, inner_label, inner_marks
from howto.layout.drawing.lanes import Wanted, in_lanes, side_of
from howto.layout.drawing.look import Look
from howto.layout.drawing.outlines import Outlines, outlines_of
from howto.layout.drawing.plane import Box, Point, Reach, Segment, around, disc_outline, joined
from howto.layout.drawing.roles import line_marks, outline_marks
from howto.model.sheet import PaintMark
from howto.shapes import DimensionLine, Disc, Drawing, Label, Level, Line, Polygon, Role, Shape

SLICES = 8  # boxes that cover a slanting line


@dataclass(frozen=True)
class Core:
    """A drawing at one scale with its dimensions and discs, before its labels; `origin` is its upper left."""

    drawing: Drawing
    scale: float
    size: float
    look: Look
    origin: Point = (0.0, 0.0)

    @cached_property
    def outlines(self) -> Outlines:
        """The drawing's lines, in its own millimetres."""
        return outlines_of(self.drawing)

    def place(self, point: Point) -> Point:
        """Return where a point of the drawing stands in the box."""
        return self.scaled(self.outlines.local(point))

    def scaled(self, point: Point) -> Point:
        """Return where a point in the drawing's own millimetres stands in the box."""
        return (self.origin[0] + point[0] * self.scale, self.origin[1] + point[1] * self.scale)

    @cached_property
    def subject(self) -> Box:
        """The room the shapes take, words aside."""
        left, bottom, right, top = self.outlines.extent
        return (*self.place((left, top)), *self.place((right, bottom)))

    @cached_property
    def pointed(self) -> tuple[Point, ...]:
        """The points that labels and levels speak of; no words or discs hide them."""
        return tuple(self.place(shape.at) for shape in self.drawing.shapes if isinstance(shape, Label | Level))

    @cached_property
    def numbered(self) -> tuple[tuple[Point, int], ...]:
        """The points of numbered discs."""
        return tuple((self.place(shape.at), shape.number) for shape in self.drawing.shapes if isinstance(shape, Disc))

    @cached_property
    def dimensions(self) -> tuple[SetDimension, ...]:
        """The dimensions, placed: the outer ones in lanes, then the inner ones clear of them and of each other."""
        sides: dict[str, list[Wanted]] = {"top": [], "bottom": [], "left": [], "right": []}
        inner: list[SetDimension] = []
        for shape in sorted(filter(_is_dimension, self.drawing.shapes), key=_rank):
            points = (self.place(shape.start), self.place(shape.end))
            side = side_of(*points, shape.offset * self.scale, self.subject)
            if side:
                sides[side].append(Wanted(shape.text, points, side, self.size))
            else:
                inner.append(inner_dimension(shape.text, points, shape.offset * self.scale, self.size))
        done = [placed for wanted in sides.values() for placed in in_lanes(wanted, self.subject)]
        spots = [disc_outline(point, self.size * 0.2) for point in self.pointed]
        spots.extend(disc_outline(point, self.look.disc * 1.2) for point, _ in self.numbered)
        for at, each in enumerate(inner):
            inner[at] = worded(each, [*done, *inner[:at], *inner[at + 1 :]], spots)
        return (*done, *inner)

    @cached_property
    def discs(self) -> tuple[PlacedDisc, ...] | None:
        """The numbered discs, placed; None where one finds no place."""
        reach = self.look.disc * 8
        left, top, right, bottom = self.subject
        room = (left - reach, top - reach, right + reach, bottom + reach)
        words = [outline for each in self.dimensions for outline in each.outlines]
        return place_discs(self.numbered, self.look.disc, words, self.pointed, room)

    @cached_property
    def inner(self) -> dict[Label, Inner]:
        """The labels that stand on what they name."""
        lines = [line for each in self.dimensions for line in each.lines]
        taken = [outline for each in self.dimensions for outline in each.outlines]
        taken.extend(each.outline for each in self.discs or ())
        done: dict[Label, Inner] = {}
        for label, room in self.outlines.rooms.items():
            others = [disc_outline(point, self.size * 0.2) for point in self.pointed if point != self.place(label.at)]
            blocks = [*taken, *others, *(each.outline for each in done.values())]
            found = inner_label(room, label.text, self.size, self.scale, self.scaled, lines, blocks)
            if found:
                done[label] = found
        return done

    @cached_property
    def box(self) -> Box:
        """The room all of it takes, with what levels need over their lines."""
        edge = self.look.heavy  # half of it and as much air
        left, top, right, bottom = self.subject
        levels = [self.place(shape.at) for shape in self.drawing.shapes if isinstance(shape, Level)]
        above, below = self.size * 1.1, self.size * 0.15
        return joined(
            (
                (left - edge, top - edge, right + edge, bottom + edge),
                *(each.box for each in self.dimensions),
                *(each.box for each in self.discs or ()),
                *((x, y - above, x, y + below) for x, y in levels),
            )
        )

    def ground(self, width: float, top: float, bottom: float) -> Ground:
        """Return what callouts are placed round, in columns between two heights and a box of that width."""
        discs = self.discs or ()
        boxes = [box for each in self.dimensions for line in each.lines for box in _boxes(line)]
        boxes.extend(around(outline) for each in self.dimensions for outline in each.outlines)
        return Ground(
            reach=Reach(self.outlines.profile, self.scale, self.origin, [*boxes, *(disc.box for disc in discs)]),
            limits=self._limits(top, bottom),
            across=(self.box[0], self.box[2]),
            width=width,
            blocks=(
                *(outline for each in self.dimensions for outline in each.outlines),
                *(each.outline for each in discs),
                *(each.outline for each in self.inner.values()),
            ),
            lines=tuple(each.leader for each in discs if each.leader),
            rules=tuple(line for each in self.dimensions for line in each.lines),
        )

    def _limits(self, top: float, bottom: float) -> tuple[tuple[float, float], ...]:
        """Return the heights that columns may fill: all, or what is above the ground, which reaches far out."""
        grounds = [
            self.place(point)[1]
            for shape in self.drawing.shapes
            if isinstance(shape, Line | Polygon) and shape.role in {Role.GROUND, Role.SOIL}
            for point in shape.points
        ]
        high = min(grounds, default=top)
        whole = (top, bottom)
        return (whole, (top, high - self.size * 0.5)) if high - top > (bottom - top) / 3 else (whole,)

    @cached_property
    def spoken(self) -> list[tuple[Point, str, bool]]:
        """Labels, levels and loose dimensions from left to right: their points, their words, and whether levels."""
        found = [
            (self.place(shape.at), shape.text, isinstance(shape, Level))
            for shape in self.drawing.shapes
            if isinstance(shape, Label | Level) and shape not in self.inner
        ]
        return sorted((*found, *((each.centre, each.text, False) for each in self.dimensions if each.loose)))

    def callouts(self, width: float) -> list[Callout]:
        """Return what is called out from left to right, its lines no wider than `width`."""
        return [callout(at, text, self.size, width, level=level) for at, text, level in self.spoken]

    def marks(self, callouts: tuple[PlacedCallout, ...]) -> Iterator[PaintMark]:
        """Yield all marks in painting order: shapes, dimensions, callouts, discs."""
        for shape in self.drawing.shapes:
            if isinstance(shape, Line | Polygon):
                points = tuple(self.place(point) for point in shape.points)
                if isinstance(shape, Polygon):
                    yield from outline_marks(points, shape.role, self.look)
                else:
                    yield from line_marks(points, shape.role, self.look, closed=shape.closed)
        for each in self.dimensions:
            yield from dimension_lines(each, self.look)
        for each in self.dimensions:
            yield from dimension_words(each, self.look)
        for inner in self.inner.values():
            yield from inner_marks(inner, self.look)
        for placed in callouts:
            yield from callout_marks(placed, self.look)
        for disc in self.discs or ():
            yield from disc_leaders(disc, self.look)
        for disc in self.discs or ():
            yield from disc_marks(disc, self.look)


def _boxes(line: Segment) -> Iterator[Box]:
    """Yield boxes that cover a straight line closely, however it slants."""
    (x0, y0), (x1, y1) = line
    pieces = 1 if x0 == x1 or y0 == y1 else SLICES
    for turn in range(pieces):
        parts = (turn / pieces, (turn + 1) / pieces)
        yield around((x0 + (x1 - x0) * part, y0 + (y1 - y0) * part) for part in parts)


def _is_dimension(shape: Shape) -> TypeGuard[DimensionLine]:
    return isinstance(shape, DimensionLine)


def _rank(each: DimensionLine) -> tuple[float, float, Point, Point]:
    """Return what dimensions are placed in order of: the nearest to the subject, then the shortest."""
    return (abs(each.offset), dist(each.start, each.end), each.start, each.end)
