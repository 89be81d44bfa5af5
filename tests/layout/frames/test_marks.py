from itertools import combinations
from math import hypot

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from howto.layout.frames import marks as module
from howto.layout.frames.marks import SIZES, MarkCallout, cross, crowded, place

BOX = (0.0, 0.0, 1080.0, 560.0)
SMALL = (0.0, 0.0, 460.0, 430.0)
NOWHERE = (-500.0, -500.0, 0.0)
Point = tuple[float, float]

marks = st.lists(st.tuples(st.floats(0.03, 0.97), st.floats(0.05, 0.95)), min_size=1, max_size=8)
subjects = st.tuples(st.floats(0.1, 0.9), st.floats(0.1, 0.9))


def apart(one: Point, other: Point) -> float:
    return hypot(one[0] - other[0], one[1] - other[1])


def nearest_on(point: Point, start: Point, end: Point) -> float:
    """Return the distance of a point from a line, by walking along it."""
    steps = [(start[0] + (end[0] - start[0]) * n / 400, start[1] + (end[1] - start[1]) * n / 400) for n in range(401)]
    return min(apart(point, step) for step in steps)


def assert_clear(
    callouts: tuple[MarkCallout, ...], box: tuple[float, ...], subject: tuple[float, float, float]
) -> None:
    for each in callouts:
        x, y = each.disc
        assert box[0] + SIZES.disc <= x <= box[2] - SIZES.disc
        assert box[1] + SIZES.disc <= y <= box[3] - SIZES.disc
        assert apart(each.disc, subject[:2]) >= SIZES.disc + subject[2]
        assert apart(each.disc, each.at) >= SIZES.disc + SIZES.point
    for one, other in combinations(callouts, 2):
        assert apart(one.disc, other.disc) >= 2 * SIZES.disc
        assert not cross(one.at, one.disc, other.at, other.disc)
        for a, b in ((one, other), (other, one)):
            assert nearest_on(a.at, b.at, b.disc) >= SIZES.point - 0.5
            assert nearest_on(a.disc, b.at, b.disc) >= SIZES.disc - 0.5


@given(marks, subjects)
def test_discs_and_leaders_leave_each_other_alone(shares: list[Point], middle: Point) -> None:
    points = [(x * BOX[2], y * BOX[3]) for x, y in shares]
    assume(crowded(points) is None)
    subject = (middle[0] * BOX[2], middle[1] * BOX[3], 56.0)
    callouts = place(points, BOX, subject)
    assert callouts is not None
    assert [each.number for each in callouts] == list(range(1, len(points) + 1))
    assert [each.at for each in callouts] == points
    assert_clear(callouts, BOX, subject)


@given(marks.filter(lambda found: len(found) <= 5), subjects)
def test_a_small_picture_holds_five(shares: list[Point], middle: Point) -> None:
    points = [(x * SMALL[2], y * SMALL[3]) for x, y in shares]
    assume(crowded(points) is None)
    subject = (middle[0] * SMALL[2], middle[1] * SMALL[3], 43.0)
    callouts = place(points, SMALL, subject)
    assert callouts is not None
    assert_clear(callouts, SMALL, subject)


@given(marks)
def test_the_same_marks_always_get_the_same_places(shares: list[Point]) -> None:
    points = [(x * BOX[2], y * BOX[3]) for x, y in shares]
    assume(crowded(points) is None)
    assert place(points, BOX, NOWHERE) == place(points, BOX, NOWHERE)


def test_a_lone_mark_has_a_short_leader() -> None:
    callouts = place([(540.0, 280.0)], BOX, NOWHERE)
    assert callouts is not None
    assert apart(callouts[0].at, callouts[0].disc) <= SIZES.point + SIZES.air + 1.5 * SIZES.disc


def test_a_disc_stands_away_from_the_subject() -> None:
    callouts = place([(540.0, 280.0)], BOX, (500.0, 280.0, 56.0))
    assert callouts is not None
    assert callouts[0].disc[0] > 540


def test_marks_in_a_corner_still_find_room() -> None:
    points = [(20.0, 20.0), (60.0, 20.0), (20.0, 60.0), (60.0, 60.0)]
    callouts = place(points, BOX, (900.0, 400.0, 56.0))
    assert callouts is not None
    assert_clear(callouts, BOX, (900.0, 400.0, 56.0))


def test_too_many_marks_for_a_tiny_picture_are_refused() -> None:
    points = [(20.0 + 40 * across, 20.0 + 40 * down) for across in range(5) for down in range(3)]
    assert place(points, (0.0, 0.0, 220.0, 140.0), NOWHERE) is None


def test_a_search_that_takes_too_long_is_given_up(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(module, "PATIENCE", 0)
    assert place([(540.0, 280.0), (700.0, 280.0)], BOX, NOWHERE) is None


def test_no_marks_need_no_discs() -> None:
    assert place([], BOX, NOWHERE) == ()


def test_marks_on_one_spot_are_named() -> None:
    assert crowded([(0.0, 0.0), (100.0, 0.0), (110.0, 10.0)]) == (2, 3)
    assert crowded([(0.0, 0.0), (100.0, 0.0)]) is None


def test_lines_that_meet_cross() -> None:
    assert cross((0, 0), (10, 10), (0, 10), (10, 0))
    assert cross((0, 0), (10, 0), (5, 0), (5, 10))
    assert not cross((0, 0), (10, 0), (0, 1), (10, 1))
