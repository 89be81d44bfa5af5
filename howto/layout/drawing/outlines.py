"""What is true of a drawing at every scale: its lines, how far they reach, and the room for words inside them.

All in its own millimetres from its upper left corner, y running down, so that it is worked out once for every box.
"""

from dataclasses import dataclass
from functools import cached_property, lru_cache
from itertools import compress

from howto.layout.drawing.inside import Drawn, Region, Room, alone, region_lines, room_at
from howto.layout.drawing.plane import Box, Point, Profile
from howto.shapes import Drawing, Label, Line, Polygon, extent

ROWS = 240  # heights at which it is known how far the lines reach


@dataclass(frozen=True)
class Outlines:
    """The lines of a drawing, in its own millimetres."""

    drawing: Drawing

    @cached_property
    def extent(self) -> Box:
        """The drawing's left, bottom, right and top, as it was drawn."""
        return extent(self.drawing.shapes)

    def local(self, point: Point) -> Point:
        """Return a point from the upper left corner."""
        left, _, _, top = self.extent
        return (point[0] - left, top - point[1])

    @cached_property
    def lines(self) -> tuple[Drawn, ...]:
        """Every straight line of the shapes, with its turn in the painting order."""
        return tuple(
            (turn, line)
            for turn, shape in enumerate(self.drawing.shapes)
            if isinstance(shape, Line | Polygon)
            for line in region_lines(
                [self.local(point) for point in shape.points], closed=isinstance(shape, Polygon) or shape.closed
            )
        )

    @cached_property
    def profile(self) -> Profile:
        """How far they reach to the left and right."""
        _, bottom, _, top = self.extent
        return Profile([line for _, line in self.lines], (top - bottom) / ROWS or 1.0)

    @cached_property
    def rooms(self) -> dict[Label, Room]:
        """The outlines that one label alone points into, and that have a ground to set words on."""
        regions = [
            Region(tuple(self.local(point) for point in shape.points), shape.role, turn)
            for turn, shape in enumerate(self.drawing.shapes)
            if isinstance(shape, Polygon)
        ]
        labels = [shape for shape in self.drawing.shapes if isinstance(shape, Label)]
        points = [self.local(label.at) for label in labels]
        single = alone(points, regions)
        rooms = (
            (label, room_at(at, regions, self.lines))
            for label, at in compress(zip(labels, points, strict=True), single)
        )
        return {label: room for label, room in rooms if room}


@lru_cache(maxsize=64)  # a drawing is fitted to the boxes of a card and of many frames
def outlines_of(drawing: Drawing) -> Outlines:
    """Return the lines of a drawing, in its own millimetres."""
    return Outlines(drawing)
