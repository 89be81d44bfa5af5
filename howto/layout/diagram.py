"""Fits a drawing to a box: chooses its scale, draws it by what its shapes mean, and finds its words a place.

On paper the scale is one that a scale rule shows; in a picture it is the largest that leaves the words room.
"""

from collections.abc import Iterator
from dataclasses import dataclass
from functools import cached_property
from math import sqrt

from howto.layout.callouts import (
    Callout,
    Ground,
    PlacedCallout,
    callout,
    callout_marks,
    column_room,
    column_width,
    cost,
    place_columns,
)
from howto.layout.dimension import SetDimension, dimension_lines, dimension_words, set_dimensions
from howto.layout.discs import PlacedDisc, disc_marks, place_discs
from howto.layout.look import Look
from howto.layout.plane import Box, Point, joined
from howto.layout.roles import line_marks, outline_marks
from howto.layout.text import length
from howto.model.sheet import Art, PaintMark
from howto.shapes import Dimension, Disc, Drawing, Label, Level, Line, Polygon, extent

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
    def edges(self) -> Box:
        """The drawing's left, bottom, right and top, in mm."""
        return extent(self.drawing.shapes)

    def place(self, point: Point) -> Point:
        """Return where a point of the drawing stands in the box."""
        left, _, _, top = self.edges
        return (self.origin[0] + (point[0] - left) * self.scale, self.origin[1] + (top - point[1]) * self.scale)

    @cached_property
    def subject(self) -> Box:
        """The room the shapes take, words aside."""
        left, bottom, right, top = self.edges
        return (*self.place((left, top)), *self.place((right, bottom)))

    @cached_property
    def dimensions(self) -> tuple[SetDimension, ...]:
        """The dimensions, placed."""
        wanted = [shape for shape in self.drawing.shapes if isinstance(shape, Dimension)]
        return set_dimensions(wanted, self.place, self.subject, self.scale, self.size)

    @cached_property
    def discs(self) -> tuple[PlacedDisc, ...] | None:
        """The numbered discs, placed; None where one finds no place."""
        wanted = [(self.place(shape.at), shape.number) for shape in self.drawing.shapes if isinstance(shape, Disc)]
        reach = self.look.disc * 8
        left, top, right, bottom = self.subject
        room = (left - reach, top - reach, right + reach, bottom + reach)
        return place_discs(wanted, self.look.disc, [each.outline for each in self.dimensions], room)

    @cached_property
    def box(self) -> Box:
        """The room all of it takes."""
        return joined((self.subject, *(each.box for each in self.dimensions), *(each.box for each in self.discs or ())))

    def ground(self, box: Box) -> Ground:
        """Return what callouts are placed round."""
        discs = self.discs or ()
        return Ground(
            core=self.box,
            box=box,
            blocks=(*(each.outline for each in self.dimensions), *(each.outline for each in discs)),
            lines=tuple(each.leader for each in discs if each.leader),
            rules=tuple(line for each in self.dimensions for line in each.lines),
        )

    def callouts(self, width: float) -> list[Callout]:
        """Return labels and levels from left to right, their lines no wider than `width`."""
        found = [
            callout(self.place(shape.at), shape.text, self.size, width, level=isinstance(shape, Level))
            for shape in self.drawing.shapes
            if isinstance(shape, Label | Level)
        ]
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
    return scale * sqrt(size)


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


def _scales(drawing: Drawing, width: float, height: float, look: Look) -> Iterator[float]:
    """Yield the scales to try, the largest first."""
    left, bottom, right, top = extent(drawing.shapes)
    most = min(width / max(right - left, 1e-6), height / max(top - bottom, 1e-6))
    if look.page and drawing.true:
        yield from (scale for scale in SCALES if scale <= most)
        return
    for trial in range(TRIALS):
        yield most * STEP**trial


def _largest(drawing: Drawing, box: tuple[float, float], size: float, look: Look, best: Fitted | None) -> Fitted | None:
    """Return the fit at the largest scale that holds, or None; scales that cannot beat `best` are not tried."""
    for scale in _scales(drawing, *box, look):
        core = Core(drawing, scale, size, look)
        if best and _worth(scale, size) <= best.worth:
            return None
        if core.discs is None or core.box[2] - core.box[0] > box[0] or core.box[3] - core.box[1] > box[1]:
            continue
        found = _dealt(core, box)
        if found:
            return found
    return None


def _dealt(core: Core, box: tuple[float, float]) -> Fitted | None:
    """Return the cheapest way to deal the callouts to two columns beside the core, or None."""
    fits: list[Fitted] = []
    for share in COLUMNS:
        callouts = core.callouts(box[0] * share)
        for cut in range(len(callouts) + 1):
            left, right = callouts[:cut], callouts[cut:]
            if left and right and left[-1].level and right[0].level and left[-1].at[0] == right[0].at[0]:
                continue  # levels over one another stay on one side
            found = _columns(core, len(left), share, box)
            if found:
                fits.append(found)
        if fits:
            break
    return min(fits, key=lambda each: each.cost, default=None)


def _columns(core: Core, cut: int, share: float, box: tuple[float, float]) -> Fitted | None:
    """Return the core with its first `cut` callouts in the left column and the others in the right, or None."""
    callouts = core.callouts(box[0] * share)
    left, right = column_width(callouts[:cut]), column_width(callouts[cut:])
    wide, high = core.box[2] - core.box[0], core.box[3] - core.box[1]
    if left + wide + right > box[0] or max(column_room(callouts[:cut]), column_room(callouts[cut:])) > box[1]:
        return None
    air = (box[0] - left - wide - right) / 2
    origin = (air + left - core.box[0], (box[1] - high) / 2 - core.box[1])
    moved = Core(core.drawing, core.scale, core.size, core.look, origin)
    callouts = moved.callouts(box[0] * share)
    ground = moved.ground((0.0, 0.0, *box))
    placed = place_columns(callouts[:cut], callouts[cut:], ground)
    return None if placed is None else Fitted(moved, placed, cost(placed, ground))


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
    scale = next(_scales(bare, width, height, look), None) or min(width / (right - left), height / (top - bottom))
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
