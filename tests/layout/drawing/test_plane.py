from math import inf, sqrt

import pytest

from howto.layout.drawing.plane import (
    Profile,
    apart,
    around,
    box_outline,
    boxes_meet,
    cross,
    disc_outline,
    distance,
    enters,
    holds,
    joined,
    overlap,
    span,
    turned_box,
)

BOX = box_outline((0, 0, 10, 4))


def test_boxes_that_share_an_edge_do_not_overlap() -> None:
    assert not overlap(BOX, box_outline((10, 0, 12, 4)))
    assert overlap(BOX, box_outline((9.9, 0, 12, 4)))
    assert not boxes_meet((0, 0, 10, 4), (10, 0, 12, 4))
    assert boxes_meet((0, 0, 10, 4), (10, 0, 12, 4), clear=0.5)


def test_a_turned_box_is_judged_by_its_own_sides() -> None:
    leaning = turned_box((13, 8), 4, 1, 45)
    assert boxes_meet((0, 0, 10.5, 6), around(leaning))
    assert not overlap(box_outline((0, 0, 10.5, 6)), leaning)
    assert overlap(box_outline((0, 0, 12, 10)), leaning)


def test_a_box_turned_by_a_quarter_stands_on_end() -> None:
    assert around(turned_box((5, 5), 3, 1, 90)) == pytest.approx((4, 2, 6, 8))


def test_a_disc_lies_inside_its_outline() -> None:
    outline = disc_outline((2, 3), 5)
    assert len(outline) == 16
    assert min(
        distance((2, 3), (one, other)) for one, other in zip(outline, (*outline[1:], outline[0]), strict=True)
    ) == (pytest.approx(5))


def test_boxes_are_joined_and_held() -> None:
    assert joined(((0, 0, 2, 2), (1, -1, 5, 1))) == (0, -1, 5, 2)
    assert holds((0, 0, 10, 10), (0, 0, 10, 10))
    assert not holds((0, 0, 10, 10), (0, 0, 10.1, 10))


def test_a_line_enters_a_box_only_past_its_edge() -> None:
    assert enters(((-1, 2), (11, 2)), BOX)
    assert enters(((2, 2), (3, 3)), BOX)
    assert not enters(((-1, 4), (11, 4)), BOX)
    assert not enters(((-1, 3), (5, 9)), BOX)


def test_lines_cross_only_through_each_other() -> None:
    assert cross(((0, 0), (4, 4)), ((0, 4), (4, 0)))
    assert not cross(((0, 0), (4, 4)), ((4, 4), (8, 0)))
    assert not cross(((0, 0), (4, 0)), ((0, 1), (4, 1)))


def test_distances() -> None:
    assert distance((3, 4), ((0, 0), (0, 0))) == 5
    assert distance((2, 3), ((0, 0), (4, 0))) == 3
    assert distance((7, 4), ((0, 0), (4, 0))) == 5
    assert apart(((0, 0), (4, 4)), ((0, 4), (4, 0))) == 0
    assert apart(((0, 0), (4, 0)), ((5, 1), (9, 1))) == pytest.approx(sqrt(2))
    assert span(((1, 1), (4, 5))) == 5


def test_a_profile_tells_how_far_lines_reach_by_height() -> None:
    profile = Profile([((0, 0), (10, 10)), ((-3, 5), (2, 5))], row=1)
    assert profile.right(0, 0.5) == 1
    assert profile.right(4.2, 4.8) == 5
    assert profile.left(5.5, 5.5) == -3
    assert profile.right(0, 9.5) == 10
    assert profile.left(11.5, 12) == inf
    assert profile.right(-5, -3) == -inf
