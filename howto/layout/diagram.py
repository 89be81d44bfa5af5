"""Fits a drawing to a box: chooses its scale, draws it by what its shapes mean, and finds its words a place.

On paper the scale is one that a scale rule shows; in a picture it is the largest that leaves the words room.
"""

from collections.abc import Iterator
from dataclasses import dataclass, replace
from functools import cached_property
from itertools import pairwise
from math import dist
from typing import TypeGuard

from howto.layout.callouts import (
    Callout,
    Ground,
    PlacedCallout,
    callout,
    callout_marks,
    cost,
    place_columns,
    shifted,
)
from howto.layout.dimension import SetDimension, dimension_lines, dimension_words, inner_dimension, worded
from howto.layout.discs import PlacedDisc, disc_marks, place_discs
from howto.layout.lanes import Wanted, in_lanes, side_of
from howto.layout.look import Look
from howto.layout.plane import Box, Point, Profile, Segment, disc_outline, edges, joined
from howto.layout.roles import line_marks, outline_marks
from howto.layout.text import length
from howto.model.sheet import Art, PaintMark
from howto.shapes import Dimension, Disc, Drawing, Label, Level, Line, Polygon, Role, Shape, extent

SCALES = (5, 2, 1, 1 / 2, 1 / 5, 1 / 10, 1 / 20, 1 / 25, 1 / 50, 1 / 100, 1 / 200, 1 / 500, 1 / 1000)
STEP = 0.965  # from one trial scale to the next smaller, where any scale will do
TRIALS = 70
COLUMNS = (0.22, 0.28, 0.36, 0.46)  # how wide a label's lines may be, in widths of the box


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
        for at, each in enumerate(inner):
            inner[at] = worded(each, [*done, *inner[:at], *inner[at + 1 :]], spots)
        return (*done, *inner)

    @cached_property
    def discs(self) -> tuple[PlacedDisc, ...] | None:
        """The numbered discs, placed; None where one finds no place."""
        wanted = [(self.place(shape.at), shape.number) for shape in self.drawing.shapes if isinstance(shape, Disc)]
        reach = self.look.disc * 8
        left, top, right, bottom = self.subject
        room = (left - reach, top - reach, right + reach, bottom + reach)
        words = [outline for each in self.dimensions for outline in each.outlines]
        return place_discs(wanted, self.look.disc, words, self.pointed, room)

    @cached_property
    def box(self) -> Box:
        """The room all of it takes, with what levels need over their lines."""
        levels = [self.place(shape.at) for shape in self.drawing.shapes if isinstance(shape, Level)]
        above, below = self.size * 1.1, self.size * 0.15
        return joined(
            (
                self.subject,
                *(each.box for each in self.dimensions),
                *(each.box for each in self.discs or ()),
                *((x, y - above, x, y + below) for x, y in levels),
            )
        )

    def ground(self, height: float) -> Ground:
        """Return what callouts are placed round."""
        discs = self.discs or ()
        return Ground(
            profile=Profile(self._outlines(), self.size / 3),
            limits=self._limits(height),
            blocks=(
                *(outline for each in self.dimensions for outline in each.outlines),
                *(each.outline for each in discs),
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
            if isinstance(shape, Label | Level)
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
        for placed in callouts:
            yield from callout_marks(placed, self.look)
        for disc in self.discs or ():
            yield from disc_marks(disc, self.look)


def _is_dimension(shape: Shape) -> TypeGuard[Dimension]:
    return isinstance(shape, Dimension)


def _rank(each: Dimension) -> tuple[float, float, Point, Point]:
    """Return what dimensions are placed in order of: the nearest to the subject, then the shortest."""
    return (abs(each.offset), dist(each.start, each.end), each.start, each.end)


@dataclass(frozen=True)
class Fitted:
    """One way of fitting the drawing that holds: what it costs in leaders, and what it is made of."""

    core: Core
    callouts: tuple[PlacedCallout, ...]
    cost: float

    @property
    def worth(self) -> float:
        """How good it is: the larger drawing, then the larger words."""
        return _worth(self.core.scale, self.core.size)


def _worth(scale: float, size: float) -> float:
    return scale * size


def fit(drawing: Drawing, width: float, height: float, look: Look) -> tuple[Art, tuple[str, ...]]:
    """Return the drawing fitted to a box, and the reasons why its words would not fit, if they would not.

    With a reason, the art holds the shapes alone: words never overlap and are never cut.
    """
    best: Fitted | None = None
    for size in (look.size, (look.size + look.small) / 2, look.small):
        found = _largest(drawing, (width, height), size, look, best)
        if found and (best is None or found.worth > best.worth * 1.001):
            best = found
    if best is None:
        return _bare(drawing, width, height, look)
    return _art(best, width, height), ()


def _scales(drawing: Drawing, width: float, height: float, look: Look) -> list[float]:
    """Return the scales to try, the largest first."""
    left, bottom, right, top = extent(drawing.shapes)
    most = min(width / max(right - left, 1e-6), height / max(top - bottom, 1e-6))
    if look.page and drawing.true:
        return [scale for scale in SCALES if scale <= most]
    return [most * STEP**trial for trial in range(TRIALS)]


def _largest(drawing: Drawing, box: tuple[float, float], size: float, look: Look, best: Fitted | None) -> Fitted | None:
    """Return the fit at the largest scale that holds, or None; scales that cannot beat `best` are not tried.

    Every fourth scale is tried until one holds, then the three above it.
    """
    scales = _scales(drawing, *box, look)
    if best:
        scales = [scale for scale in scales if _worth(scale, size) > best.worth]
    stride = 4 if len(scales) == TRIALS else 1
    for at in range(0, len(scales), stride):
        found = _at_scale(drawing, box, size, look, scales[at])
        if found:
            nearer = (_at_scale(drawing, box, size, look, each) for each in scales[max(at - stride + 1, 0) : at])
            return next((fit for fit in nearer if fit), found)
    return None


def _at_scale(drawing: Drawing, box: tuple[float, float], size: float, look: Look, scale: float) -> Fitted | None:
    core = Core(drawing, scale, size, look)
    if core.discs is None or core.box[2] - core.box[0] > box[0] or core.box[3] - core.box[1] > box[1]:
        return None
    return _dealt(core, box)


def _dealt(core: Core, box: tuple[float, float]) -> Fitted | None:
    """Return the cheapest way to deal the callouts to two columns beside the core, or None."""
    origin = (0.0, (box[1] - core.box[3] + core.box[1]) / 2 - core.box[1])
    core = replace(core, origin=origin)
    ground = core.ground(box[1])
    tried: dict[tuple[Callout, ...], None] = {tuple(core.callouts(box[0] * share)): None for share in COLUMNS}
    trials = (_columns(core, callouts, cut, ground, box) for callouts in tried for cut in range(len(callouts) + 1))
    return min((trial for trial in trials if trial), key=lambda each: each.cost, default=None)


def _columns(
    core: Core, callouts: tuple[Callout, ...], cut: int, ground: Ground, box: tuple[float, float]
) -> Fitted | None:
    """Return the core with its first `cut` callouts in the left column and the others in the right, or None."""
    left, right = callouts[:cut], callouts[cut:]
    if left and right and left[-1].level and right[0].level and left[-1].at[0] == right[0].at[0]:
        return None  # levels over one another stay on one side
    placed = place_columns(left, right, ground)
    if placed is None:
        return None
    low, _, high, _ = joined((core.box, *(each.box for each in placed)))
    if high - low > box[0]:
        return None
    across = (box[0] - high - low) / 2
    moved = replace(core, origin=(across, core.origin[1]))
    return Fitted(moved, tuple(shifted(each, across) for each in placed), cost(placed, ground))


def _art(fitted: Fitted, width: float, height: float) -> Art:
    core = fitted.core
    return Art(
        width=width,
        height=height,
        marks=tuple(core.marks(fitted.callouts)),
        caption=core.drawing.caption,
        alt=core.drawing.alt,
        scale=_named(core.scale) if core.look.page and core.drawing.true else "",
    )


def _named(scale: float) -> str:
    """Return a scale as a drawing prints it: 1:20, 2:1."""
    return f"{scale:g}:1" if scale > 1 else f"1:{1 / scale:g}"


def _bare(drawing: Drawing, width: float, height: float, look: Look) -> tuple[Art, tuple[str, ...]]:
    """Return the shapes alone, as large as the box allows, with the reasons why the words would not fit."""
    shapes = tuple(shape for shape in drawing.shapes if isinstance(shape, Line | Polygon))
    bare = Drawing(shapes, drawing.caption, drawing.alt, drawing.true)
    left, bottom, right, top = extent(shapes)
    scale = next(iter(_scales(bare, width, height, look)), None) or min(width / (right - left), height / (top - bottom))
    origin = ((width - (right - left) * scale) / 2, (height - (top - bottom) * scale) / 2)
    core = Core(bare, scale, look.small, look, origin)
    unit = "mm" if look.page else "px"
    words = [shape.text for shape in drawing.shapes if isinstance(shape, Dimension | Level | Label)]
    longest = max(words, key=lambda text: length(text, "text", look.small), default="")
    count = len(words) + sum(isinstance(shape, Disc) for shape in drawing.shapes)
    reason = (
        f"{count} labels do not fit round the drawing in {width:.0f} × {height:.0f} {unit} "
        f"without touching; the longest is “{longest}”"
    )
    return _art(Fitted(core, (), 0.0), width, height), (reason,)
