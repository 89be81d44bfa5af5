import pytest

from howto.layout.drawing.callouts import Callout, PlacedCallout, callout, callout_marks, shifted
from howto.layout.drawing.look import frame_look
from howto.model.crew import Colours
from howto.model.sheet import Area, Dot, Stroke, TextMark

LOOK = frame_look(Colours())
SIZE = 10.0


def label(x: float, y: float, text: str = "Stem") -> Callout:
    return callout((x, y), text, SIZE, 60, level=False)


def level(x: float, y: float, text: str = "520 mm") -> Callout:
    return callout((x, y), text, SIZE, 60, level=True)


def test_words_are_broken_to_the_width_of_the_column() -> None:
    assert callout((0, 0), "Set this first", SIZE, 40, level=False).lines == ("Set this", "first")
    assert callout((0, 0), "1.50 m finished", SIZE, 10, level=True).lines == ("1.50 m finished",)


def test_a_label_is_a_dot_a_leader_on_the_ground_colour_and_words() -> None:
    found = PlacedCallout(label(150, 150, "Set this first"), right=True, inner=219, y=150)
    halo, line, dot, *words = callout_marks(found, LOOK)
    assert isinstance(halo, Stroke)
    assert isinstance(line, Stroke)
    assert (halo.colour, line.colour) == (LOOK.ground, LOOK.ink)
    assert line.points[0] == (150, 150)
    assert line.points[-1] == (216, 150)
    assert isinstance(dot, Dot)
    texts = [word for word in words if isinstance(word, TextMark)]
    assert [word.text for word in texts] == list(found.callout.lines)
    assert {word.align for word in texts} == {"left"}
    left = PlacedCallout(label(150, 150), right=False, inner=81, y=150)
    assert [mark.align for mark in callout_marks(left, LOOK) if isinstance(mark, TextMark)] == ["right"]


def test_a_level_is_a_line_with_a_triangle_on_it_and_words_over_its_end() -> None:
    found = PlacedCallout(level(200, 150), right=True, inner=231, y=150)
    line, triangle, words = callout_marks(found, LOOK)
    assert isinstance(line, Stroke)
    assert isinstance(triangle, Area)
    assert isinstance(words, TextMark)
    assert {y for _, y in line.points} == {150}
    assert line.points[0] == (200, 150)
    assert max(y for _, y in triangle.points) == 150
    assert min(y for _, y in triangle.points) == pytest.approx(144.5)
    assert words.at == (found.inner, 147)


def test_a_hanging_triangle_points_up_at_its_line() -> None:
    lower = PlacedCallout(level(200, 154), right=True, inner=231, y=160, hangs=True)
    triangle = next(mark for mark in callout_marks(lower, LOOK) if isinstance(mark, Area))
    assert min(y for _, y in triangle.points) == 154


def test_a_bent_level_runs_straight_past_the_drawing_before_it_turns() -> None:
    bent = PlacedCallout(level(200, 150), right=True, inner=231, y=170)
    assert bent.leader == (((200, 150), (215.5, 150)), ((215.5, 150), (222.5, 170)), ((222.5, 170), (228, 170)))


def test_a_moved_callout_takes_its_point_along() -> None:
    moved = shifted(PlacedCallout(label(150, 150), right=True, inner=219, y=160), 5, -10)
    assert (moved.callout.at, moved.inner, moved.y) == ((155, 140), 224, 150)


def test_no_word_of_a_label_is_broken() -> None:
    assert callout((0.0, 0.0), "brushcutter: 150 %", 30.0, 60.0, level=False).lines == ("brushcutter:", "150\u00a0%")
