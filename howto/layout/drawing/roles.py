"""Draws a line or an outline by what it means: weight, dash, hatching and fill, so that colour is never alone."""

from collections.abc import Callable, Iterator

from howto.colour import SAFETY_YELLOW
from howto.layout.drawing.hatch import Point, Segment, dots, earth, hatching, level_dashes
from howto.layout.drawing.look import Look
from howto.model.sheet import Area, Dot, PaintMark, Stroke
from howto.shapes import Role

Points = tuple[Point, ...]


def outline_marks(points: Points, role: Role, look: Look) -> Iterator[PaintMark]:
    """Yield the marks of a filled outline."""
    if len(points) < 3:
        yield from line_marks(points, role, look, closed=False)
        return
    if role in _FILLS:
        yield from _FILLS[role](points, look)
    if role not in {Role.SOIL, Role.MULCH}:  # earth has no edge but the ground line
        yield from line_marks(points, role, look, closed=True)


def line_marks(points: Points, role: Role, look: Look, *, closed: bool) -> Iterator[PaintMark]:
    """Yield the marks of a polyline."""
    width, colour, dash = _pen(role, look)
    if len(points) > 1:
        yield Stroke(points=points, width=width, colour=colour, dash=dash, closed=closed)


def _pen(role: Role, look: Look) -> tuple[float, str, tuple[float, ...]]:
    """Return width, colour and dash of a role's line."""
    thin = look.thin
    return {
        Role.KEEP: (look.heavy, look.ink, ()),
        Role.REMOVE: (thin * 1.4, look.accent, (thin * 7, thin * 4)),
        Role.LAST: (thin, look.ink, (thin * 8, thin * 7)),
        Role.WOOD: (look.medium, look.ink, ()),
        Role.WIRE: (thin, look.ink, ()),
        Role.WALL: (look.medium, look.ink, ()),
        Role.SOIL: (look.fine, look.grey, ()),
        Role.MULCH: (thin, look.ink, ()),
        Role.WATER: (thin, look.ink, ()),
        Role.BLADE: (look.medium, look.ink, ()),
        Role.GROUND: (look.heavy, look.ink, ()),
        Role.CENTRE: (thin, look.ink, (thin * 36, thin * 7, thin * 6, thin * 7)),
        Role.GUIDE: (thin, look.accent, ()),
        Role.ACCENT: (look.heavy, look.accent, ()),
        Role.DANGER: (look.medium, look.ink, (thin * 18, thin * 8)),
    }[role]


def _keep(points: Points, look: Look) -> Iterator[PaintMark]:
    yield Area(points=points, colour=look.leaf)


def _blade(points: Points, look: Look) -> Iterator[PaintMark]:
    yield Area(points=points, colour=look.leaf)


def _remove(points: Points, look: Look) -> Iterator[PaintMark]:
    yield Area(points=points, colour=look.ground)
    yield from _strokes(hatching(points, look.thin * 8), look.fine, look.accent)


def _wood(points: Points, look: Look) -> Iterator[PaintMark]:
    yield Area(points=points, colour=look.wood)


def _wall(points: Points, look: Look) -> Iterator[PaintMark]:
    yield Area(points=points, colour=look.ground)
    yield from _strokes(hatching(points, look.thin * 5, 135.0), look.fine, look.ink)


def _soil(points: Points, look: Look) -> Iterator[PaintMark]:
    yield from _strokes(earth(points, look.thin * 17), look.fine, look.grey)


def _mulch(points: Points, look: Look) -> Iterator[PaintMark]:
    yield Area(points=points, colour=look.ground)
    for dot in dots(points, look.thin * 7):
        yield Dot(centre=dot, radius=look.thin * 1.1, colour=look.ink)


def _water(points: Points, look: Look) -> Iterator[PaintMark]:
    yield Area(points=points, colour=look.water)
    yield from _strokes(level_dashes(points, look.thin * 9, look.thin * 16, look.thin * 9), look.thin, look.ink)


def _accent(points: Points, look: Look) -> Iterator[PaintMark]:
    yield Area(points=points, colour=look.accent, opacity=0.16)


def _danger(points: Points, look: Look) -> Iterator[PaintMark]:
    yield Area(points=points, colour=SAFETY_YELLOW, opacity=0.28)
    yield from _strokes(hatching(points, look.thin * 18), look.heavy, SAFETY_YELLOW)
    yield from _strokes(hatching(points, look.thin * 18), look.fine, look.ink)


def _strokes(segments: list[Segment], width: float, colour: str) -> Iterator[PaintMark]:
    for segment in segments:
        yield Stroke(points=segment, width=width, colour=colour)


_FILLS: dict[Role, Callable[[Points, Look], Iterator[PaintMark]]] = {
    Role.KEEP: _keep,
    Role.REMOVE: _remove,
    Role.WOOD: _wood,
    Role.WALL: _wall,
    Role.SOIL: _soil,
    Role.MULCH: _mulch,
    Role.WATER: _water,
    Role.BLADE: _blade,
    Role.ACCENT: _accent,
    Role.DANGER: _danger,
}
