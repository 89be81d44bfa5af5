"""A drawing at one scale: its dimensions and discs placed, and what its labels are placed round."""

from collections.abc import Iterator
from dataclasses import dataclass
from functools import cached_property
from itertools import compress, pairwise
from math import dist
from typing import TypeGuard

from howto.layout.drawing.callouts import Callout, PlacedCallout, callout, callout_marks
from howto.layout.drawing.columns import Ground
from howto.layout.drawing.dimension import SetDimension, dimension_lines, dimension_words, inner_dimension, worded
from howto.layout.drawing.discs import PlacedDisc, disc_leaders, disc_marks, place_discs
from howto.layout.drawing.inside import Drawn, Inner, Region, alone, inner_label, inner_marks, region_lines
from howto.layout.drawing.lanes import Wanted, in_lanes, side_of
from howto.layout.drawing.look import Look
from howto.layout.drawing.plane import Box, Point, Profile, Segment, disc_outline, edges, joined
from howto.layout.drawing.roles import line_marks, outline_marks
from howto.model.sheet import PaintMark
from howto.shapes import Dimension, Disc, Drawing, Label, Level, Line, Polygon, Role, Shape, extent


@dataclass(frozen=True)
class Core:
    """A drawing at one scale with its dimensions and discs, before its labels; `origin` is its upper left."""

    drawing: Drawing
    scale: float
    size: float
    look: Look
    origin: Point = (0.0, 0.0)

    @cached_property
    def extent(self) -> Box:
        """The drawing's left, bottom, right and top, in mm."""
        return extent(self.drawing.shapes)

    def place(self, point: Point) -> Point:
        """Return where a point of the drawing stands in the box."""
        left, _, _, top = self.extent
        return (self.origin[0] + (point[0] - left) * self.scale, self.origin[1] + (top - point[1]) * self.scale)

    @cached_property
    def subject(self) -> Box:
        """The room the shapes take, words aside."""
        left, bottom, right, top = self.extent
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
        regions: list[Region] = []
        lines: list[Drawn] = []
        for turn, shape in enumerate(self.drawing.shapes):
            if isinstance(shape, Line | Polygon):
                points = tuple(self.place(point) for point in shape.points)
                closed = isinstance(shape, Polygon) or shape.closed
                lines.extend((turn, line) for line in region_lines(points, closed=closed))
                regions.extend((Region(points, shape.role, turn),) if isinstance(shape, Polygon) else ())
        last = len(self.drawing.shapes)
        lines.extend((last, line) for each in self.dimensions for line in each.lines)
        taken = [outline for each in self.dimensions for outline in each.outlines]
        taken.extend(each.outline for each in self.discs or ())
        done: dict[Label, Inner] = {}
        labels = list(filter(_is_label, self.drawing.shapes))
        single = alone([self.place(label.at) for label in labels], regions)
        for label in compress(labels, single):
            others = [disc_outline(point, self.size * 0.2) for point in self.pointed if point != self.place(label.at)]
            blocks = [*taken, *others, *(each.outline for each in done.values())]
            found = inner_label(self.place(label.at), label.text, self.size, regions, lines, blocks)
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

    def ground(self, box: tuple[float, float]) -> Ground:
        """Return what callouts are placed round."""
        discs = self.discs or ()
        return Ground(
            profile=Profile(self._outlines(), self.size / 3),
            limits=self._limits(box[1]),
            across=(self.box[0], self.box[2]),
            width=box[0],
            blocks=(
                *(outline for each in self.dimensions for outline in each.outlines),
                *(each.outline for each in discs),
                *(each.outline for each in self.inner.values()),
            ),
            lines=tuple(each.leader for each in discs if each.leader),
            rules=tuple(line for each in self.dimensions for line in each.lines),
        )

    def _outlines(self) -> Iterator[Segment]:
        """Yield every line that labels stand clear of."""
        for shape in self.drawing.shapes:
            if isinstance(shape, Line | Polygon):
                points = [self.place(point) for point in shape.points]
                yield from edges(points) if isinstance(shape, Polygon) or shape.closed else pairwise(points)
        for each in self.dimensions:
            yield from each.lines
            for outline in each.outlines:
                yield from edges(outline)
        for disc in self.discs or ():
            yield from edges(disc.outline)

    def _limits(self, height: float) -> tuple[tuple[float, float], ...]:
        """Return the heights that columns may fill: all, or what is above the ground, which reaches far out."""
        tops = [
            self.place(point)[1]
            for shape in self.drawing.shapes
            if isinstance(shape, Line | Polygon) and shape.role in {Role.GROUND, Role.SOIL}
            for point in shape.points
        ]
        whole = (0.0, height)
        return (whole, (0.0, min(tops) - self.size * 0.5)) if tops and min(tops) > height / 3 else (whole,)

    def callouts(self, width: float) -> list[Callout]:
        """Return labels, levels and loose dimensions from left to right, their lines no wider than `width`."""
        found = [
            callout(self.place(shape.at), shape.text, self.size, width, level=isinstance(shape, Level))
            for shape in self.drawing.shapes
            if isinstance(shape, Label | Level) and shape not in self.inner
        ]
        loose = (each for each in self.dimensions if each.loose)
        found.extend(callout(each.centre, each.text, self.size, width, level=False) for each in loose)
        return sorted(found, key=lambda each: (each.at[0], each.at[1], each.lines))

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


def _is_dimension(shape: Shape) -> TypeGuard[Dimension]:
    return isinstance(shape, Dimension)


def _is_label(shape: Shape) -> TypeGuard[Label]:
    return isinstance(shape, Label)


def _rank(each: Dimension) -> tuple[float, float, Point, Point]:
    """Return what dimensions are placed in order of: the nearest to the subject, then the shortest."""
    return (abs(each.offset), dist(each.start, each.end), each.start, each.end)
