from dataclasses import replace
from math import hypot

import pytest

from howto.layout.drawing.dimension import dimension_lines, dimension_words, inner_dimension, room_for, worded
from howto.layout.drawing.look import frame_look
from howto.layout.drawing.plane import box_outline
from howto.model.crew import Colours
from howto.model.sheet import Area, Stroke, TextMark

LOOK = frame_look(Colours())
SIZE = 10.0
RING = inner_dimension("900 mm", ((0, 0), (100, 0)), 0, SIZE)


def test_words_stand_in_the_middle_of_a_long_line() -> None:
    placed = worded(RING, [], [])
    assert (placed.centre, placed.angle, placed.loose) == ((50, 0), 0, False)


def test_the_room_for_words_has_air_on_both_sides() -> None:
    assert room_for("900 mm", SIZE) == pytest.approx(32.93)  # 28.53 and 2.2 at each end


def test_words_move_along_the_line_off_what_is_there() -> None:
    placed = worded(RING, [], [box_outline((45, -5, 55, 5))])
    assert placed.centre[0] < 45 - room_for("900 mm", SIZE) / 2 + 0.01
    assert placed.centre[1] == 0


def test_an_offset_moves_the_line_to_the_left_of_its_direction() -> None:
    assert inner_dimension("9", ((0, 0), (100, 0)), 20, SIZE).line == ((0, -20), (100, -20))
    assert inner_dimension("9", ((0, 0), (0, -100)), 20, SIZE).line == ((-20, 0), (-20, -100))


@pytest.mark.parametrize(
    ("end", "angle"),
    [((100, 0), 0), ((-100, 0), 0), ((0, -100), 90), ((0, 100), 90), ((100, -100), 45), ((-100, 100), 45)],
)
def test_words_are_never_upside_down(end: tuple[float, float], angle: float) -> None:
    assert inner_dimension("900 mm", ((0, 0), end), 0, SIZE).angle == pytest.approx(angle)


def test_words_too_wide_for_their_line_stand_past_its_end() -> None:
    placed = worded(inner_dimension("900 mm", ((0, 0), (20, 0)), 0, SIZE), [], [])
    assert placed.tail == (26, 0)
    assert min(x for x, _ in placed.outline) == pytest.approx(26)


def test_words_too_wide_for_a_short_upright_read_level_beside_it() -> None:
    placed = worded(inner_dimension("900 mm", ((0, 0), (0, -20)), 0, SIZE), [], [])
    assert placed.angle == 0
    assert min(x for x, _ in placed.outline) == pytest.approx(2)


def test_words_keep_off_the_lines_of_others() -> None:
    chained = inner_dimension("450 mm", ((0, 0), (20, 0)), 0, SIZE)
    after = inner_dimension("450 mm", ((20, 0), (40, 0)), 0, SIZE)
    placed = worded(chained, [after], [])
    assert placed.tail is None
    assert placed.centre[1] != 0


def test_words_with_no_place_are_loose() -> None:
    blocked = worded(RING, [], [box_outline((-200, -50, 300, 50))])
    assert blocked.loose
    assert blocked.outlines == ()
    assert list(dimension_words(blocked, LOOK)) == []
    assert blocked.box == (-3, -3, 103, 3)


def test_extension_lines_leave_air_at_the_subject_and_run_past_the_line() -> None:
    placed = inner_dimension("9", ((0, 0), (100, 0)), 20, SIZE)
    assert placed.lines[1:] == (((0, -3.5), (0, -23)), ((100, -3.5), (100, -23)))
    assert inner_dimension("9", ((0, 0), (100, 0)), 3, SIZE).lines[1:] == ()


def test_ticks_lean_at_45_degrees() -> None:
    strokes = [mark for mark in dimension_lines(RING, LOOK) if isinstance(mark, Stroke)]
    ticks = [mark.points for mark in strokes if mark.width == LOOK.medium]
    assert len(ticks) == 2
    for (x0, y0), (x1, y1) in ticks:
        assert x1 - x0 == pytest.approx(y0 - y1)
        assert hypot(x1 - x0, y1 - y0) == pytest.approx(6)


def test_words_lie_on_a_gap_in_the_ground_colour() -> None:
    gap, words = dimension_words(worded(RING, [], []), LOOK)
    assert isinstance(gap, Area)
    assert isinstance(words, TextMark)
    assert (gap.colour, words.face, words.align) == (LOOK.ground, "head", "middle")
    assert words.at == pytest.approx((50, 3.5))


def test_turned_words_hang_from_their_middle() -> None:
    upright = replace(worded(RING, [], []), angle=90.0)
    _, words = dimension_words(upright, LOOK)
    assert isinstance(words, TextMark)
    assert words.at == pytest.approx((53.5, 0))


def test_an_upright_with_both_sides_taken_has_its_words_past_the_end() -> None:
    upright = inner_dimension("900 mm", ((0, 0), (0, -20)), 0, SIZE)
    placed = worded(upright, [], [box_outline((5, -15, 20, -5)), box_outline((-20, -15, -5, -5))])
    assert (placed.angle, placed.tail) == (90, (0, -26))
