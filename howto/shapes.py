"""What a diagram is made of: shapes in millimetres at true size, x to the right and y up from the ground.

A family draws with these and owns no page, pixel or colour; layout fits a drawing to a box and places its
words, and two painters put the result on paper and in pictures.
"""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace
from enum import StrEnum
from itertools import pairwise
from math import cos, hypot, radians, sin

Point = tuple[float, float]


class Role(StrEnum):
    """What a shape means; each role has one look, told by line and hatch as well as by colour."""

    KEEP = "keep"  # plant that stays: heavy outline over a pale leaf fill
    REMOVE = "remove"  # what comes off: dashed outline over hatching
    LAST = "last"  # an earlier outline: thin dashes, no fill
    WOOD = "wood"  # stems, trunks, stakes: solid dark
    WIRE = "wire"  # wires and ties: thin solid
    WALL = "wall"  # walls and hard faces: close hatching
    SOIL = "soil"  # earth in section: earth hatching under the ground line
    MULCH = "mulch"  # mulch or compost in section: dotted
    WATER = "water"  # water and wetted soil: level dashes
    BLADE = "blade"  # grass leaves
    GROUND = "ground"  # the ground line
    CENTRE = "centre"  # centre lines: long dash, short dash
    GUIDE = "guide"  # gauge rings, set lines: thin accent
    ACCENT = "accent"  # the one thing to look at: heavy accent
    DANGER = "danger"  # a zone to stay out of: safety hatching


@dataclass(frozen=True, slots=True)
class Line:
    """A polyline."""

    points: tuple[Point, ...]
    role: Role
    closed: bool = False


@dataclass(frozen=True, slots=True)
class Polygon:
    """A filled outline."""

    points: tuple[Point, ...]
    role: Role


@dataclass(frozen=True, slots=True)
class DimensionLine:
    """A dimension line with end ticks between two points, drawn `offset` mm to the left of start→end.

    `text` is what it says; the arithmetic that made it is the family's. Extension lines run from the points.
    """

    start: Point
    end: Point
    text: str
    offset: float = 0.0


@dataclass(frozen=True, slots=True)
class Level:
    """A datum level: a short line at a height with its value, as on a setting-out drawing."""

    at: Point
    text: str


@dataclass(frozen=True, slots=True)
class Label:
    """Words about a point, tied to it by a leader; layout finds a free place for them."""

    at: Point
    text: str


@dataclass(frozen=True, slots=True)
class Disc:
    """A numbered mark on a point."""

    at: Point
    number: int


Shape = Line | Polygon | DimensionLine | Level | Label | Disc


@dataclass(frozen=True, slots=True)
class Drawing:
    """Shapes in painting order, with what a person who cannot see them needs to know.

    `alt` says what is drawn in at most 250 characters, numbers included; `caption` is one
    short line to print. `true` is False where a millimetre stands for something else, as on a year line or
    a bar: then no scale is printed. An `elastic` one may also be drawn higher than it is, to fill its room: it is
    not true, and has no circle, angle or letter that a stretch would spoil.
    """

    shapes: tuple[Shape, ...]
    caption: str
    alt: str
    true: bool = True
    elastic: bool = False


def arc(centre: Point, radius: float, start_deg: float = 0, end_deg: float = 360, steps: int = 48) -> tuple[Point, ...]:
    """Return points along an arc, angles anticlockwise from the right."""
    return ellipse(centre, radius, radius, start_deg, end_deg, steps)


def ellipse(
    centre: Point, across: float, up: float, start_deg: float = 0, end_deg: float = 360, steps: int = 48
) -> tuple[Point, ...]:
    """Return points along an ellipse with half-axes `across` and `up`, angles as in `arc`."""
    angles = (radians(start_deg + (end_deg - start_deg) * step / steps) for step in range(steps + 1))
    return tuple((centre[0] + across * cos(angle), centre[1] + up * sin(angle)) for angle in angles)


def rectangle(left: float, bottom: float, right: float, top: float) -> tuple[Point, ...]:
    """Return the four corners, anticlockwise from the lower left."""
    return ((left, bottom), (right, bottom), (right, top), (left, top))


def leafy(outline: Sequence[Point], depth: float, bumps: int) -> tuple[Point, ...]:
    """Return the closed outline scalloped into leaf clusters that stand `depth` proud of it.

    The outline runs anticlockwise; the result repeats exactly for the same input.
    """
    points = [*outline, outline[0]]
    total = sum(hypot(b[0] - a[0], b[1] - a[1]) for a, b in pairwise(points)) or 1.0
    pitch = total / bumps
    scallop: list[Point] = []
    walked = 0.0
    for a, b in pairwise(points):
        length = hypot(b[0] - a[0], b[1] - a[1])
        if not length:
            continue
        out = ((b[1] - a[1]) / length, (a[0] - b[0]) / length)
        steps = max(2, round(length / pitch * 6))
        for step in range(steps):
            along = walked + length * step / steps
            rise = depth * abs(sin(along / pitch * 3.141592653589793))
            part = step / steps
            scallop.append((a[0] + (b[0] - a[0]) * part + out[0] * rise, a[1] + (b[1] - a[1]) * part + out[1] * rise))
        walked += length
    return tuple(scallop)


def higher(drawing: Drawing, factor: float) -> Drawing:
    """Return a drawing with every height multiplied; what stands across it keeps its place."""

    def raised(shape: Shape) -> Shape:
        if isinstance(shape, Line | Polygon):
            return replace(shape, points=tuple((x, y * factor) for x, y in shape.points))
        if isinstance(shape, DimensionLine):
            start, end = ((x, y * factor) for x, y in (shape.start, shape.end))
            return replace(shape, start=start, end=end, offset=shape.offset * (factor if start[1] == end[1] else 1.0))
        return replace(shape, at=(shape.at[0], shape.at[1] * factor))

    return replace(drawing, shapes=tuple(raised(shape) for shape in drawing.shapes))


def extent(shapes: Iterable[Shape]) -> tuple[float, float, float, float]:
    """Return left, bottom, right, top of the shapes' points in mm; words take no room here."""
    points: list[Point] = []
    for shape in shapes:
        if isinstance(shape, Line | Polygon):
            points.extend(shape.points)
        elif isinstance(shape, DimensionLine):
            points.extend((shape.start, shape.end))
        else:
            points.append(shape.at)
    if not points:
        return (0.0, 0.0, 0.0, 0.0)
    across, up = zip(*points, strict=True)
    return (min(across), min(up), max(across), max(up))
