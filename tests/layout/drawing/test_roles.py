import pytest

from howto.colour import contrast
from howto.layout.drawing.look import frame_look
from howto.layout.drawing.roles import line_marks, outline_marks
from howto.model.crew import Colours
from howto.model.sheet import Area, Dot, PaintMark, Stroke
from howto.shapes import Role

LOOK = frame_look(Colours())
SQUARE = ((0.0, 0.0), (200.0, 0.0), (200.0, 200.0), (0.0, 200.0))


def kinds(marks: list[PaintMark]) -> dict[str, int]:
    return {name: sum(type(mark).__name__ == name for mark in marks) for name in ("Area", "Dot", "Stroke")}


@pytest.mark.parametrize("role", list(Role))
def test_every_role_draws_an_outline_and_a_line(role: Role) -> None:
    assert list(outline_marks(SQUARE, role, LOOK))
    (line,) = line_marks(SQUARE, role, LOOK, closed=False)
    assert isinstance(line, Stroke)
    assert line.width >= LOOK.fine


def test_roles_are_told_apart_without_their_colour() -> None:
    """Width, dash and what fills the outline differ for roles that stand beside each other in a drawing."""
    seen: dict[object, Role] = {}
    for role in (Role.KEEP, Role.REMOVE, Role.WALL, Role.MULCH, Role.WATER, Role.SOIL, Role.WOOD, Role.DANGER):
        marks = list(outline_marks(SQUARE, role, LOOK))
        edge = [(mark.width, mark.dash) for mark in marks if isinstance(mark, Stroke) and mark.closed]
        shade = [round(contrast(mark.colour, LOOK.ground), 0) for mark in marks if isinstance(mark, Area)]
        told = (tuple(edge), tuple(shade), tuple(kinds(marks).items()))
        assert told not in seen, f"{role} looks like {seen.get(told)}"
        seen[told] = role


def test_what_stays_is_a_heavy_edge_over_a_pale_fill() -> None:
    fill, edge = outline_marks(SQUARE, Role.KEEP, LOOK)
    assert isinstance(fill, Area)
    assert isinstance(edge, Stroke)
    assert (edge.width, edge.dash, edge.closed) == (LOOK.heavy, (), True)
    assert contrast(fill.colour, LOOK.ink) > 7


def test_what_comes_off_is_hatched_in_the_accent_and_dashed() -> None:
    marks = list(outline_marks(SQUARE, Role.REMOVE, LOOK))
    strokes = [mark for mark in marks if isinstance(mark, Stroke)]
    assert {mark.colour for mark in strokes} == {LOOK.accent}
    assert strokes[-1].dash
    assert len(strokes) > 10


def test_earth_and_mulch_have_no_edge() -> None:
    for role in (Role.SOIL, Role.MULCH):
        assert not any(isinstance(mark, Stroke) and mark.closed for mark in outline_marks(SQUARE, role, LOOK))
    assert any(isinstance(mark, Dot) for mark in outline_marks(SQUARE, Role.MULCH, LOOK))


def test_two_points_are_a_line_and_one_is_nothing() -> None:
    (line,) = outline_marks(SQUARE[:2], Role.KEEP, LOOK)
    assert isinstance(line, Stroke)
    assert not line.closed
    assert list(outline_marks(SQUARE[:1], Role.KEEP, LOOK)) == []
