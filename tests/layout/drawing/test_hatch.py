import pytest
from hypothesis import given
from hypothesis import strategies as st

from howto.layout.drawing.hatch import Point, bounds, clipped, dots, earth, hatching, inside, level_dashes

halves = st.integers(-100, 100).map(lambda each: each / 2)
SQUARE = ((0.0, 0.0), (10.0, 0.0), (10.0, 10.0), (0.0, 10.0))
# an L: the upper right quarter of the square is missing (y runs down)
ELL = ((0.0, 0.0), (5.0, 0.0), (5.0, 5.0), (10.0, 5.0), (10.0, 10.0), (0.0, 10.0))


def test_a_line_is_clipped_to_a_square() -> None:
    assert clipped(((-5, 4), (15, 4)), SQUARE) == [((0.0, 4.0), (10.0, 4.0))]
    assert clipped(((-5, 12), (15, 12)), SQUARE) == []
    assert clipped(((2, 4), (3, 4)), SQUARE) == [((2.0, 4.0), (3.0, 4.0))]


def test_a_line_leaves_and_comes_back() -> None:
    notched = ((0.0, 0.0), (10.0, 0.0), (10.0, 10.0), (6.0, 10.0), (6.0, 5.0), (4.0, 5.0), (4.0, 10.0), (0.0, 10.0))
    assert clipped(((-1, 8), (11, 8)), notched) == [((0.0, 8.0), (4.0, 8.0)), ((6.0, 8.0), (10.0, 8.0))]


def test_inside_goes_by_the_even_odd_rule() -> None:
    assert inside((2, 2), ELL)
    assert not inside((7, 2), ELL)
    ring = (*SQUARE, SQUARE[0], (3.0, 3.0), (7.0, 3.0), (7.0, 7.0), (3.0, 7.0), (3.0, 3.0), SQUARE[0])
    assert inside((1.5, 5.5), ring)
    assert not inside((5.5, 5), ring)


def test_level_hatching_is_a_pitch_apart() -> None:
    assert hatching(((0.0, 1.0), (10.0, 1.0), (10.0, 11.0), (0.0, 11.0)), 4, 0) == [
        ((0.0, 4.0), (10.0, 4.0)),
        ((0.0, 8.0), (10.0, 8.0)),
    ]


def test_hatching_rises_to_the_right() -> None:
    found = hatching(SQUARE, 3.0)
    assert found
    for (x0, y0), (x1, y1) in found:
        assert x1 - x0 == pytest.approx(y0 - y1)
        assert x1 > x0


def test_hatching_of_a_square_has_the_length_that_its_area_gives() -> None:
    total = sum(((x1 - x0) ** 2 + (y1 - y0) ** 2) ** 0.5 for (x0, y0), (x1, y1) in hatching(SQUARE, 0.05))
    assert total * 0.05 == pytest.approx(100, rel=0.01)


def test_neighbours_share_their_hatching() -> None:
    left = ((0.0, 0.0), (5.0, 0.0), (5.0, 10.0), (0.0, 10.0))
    right = ((5.0, 0.0), (10.0, 0.0), (10.0, 10.0), (5.0, 10.0))
    ends = [end for _, end in hatching(left, 1.7) if end[0] == pytest.approx(5)]
    starts = [start for start, _ in hatching(right, 1.7) if start[0] == pytest.approx(5)]
    assert sorted(y for _, y in ends) == pytest.approx(sorted(y for _, y in starts))
    assert len(ends) == 4


def test_dashes_are_staggered_by_rows() -> None:
    found = level_dashes(SQUARE, 5, 2, 2)
    assert [segment for segment in found if segment[0][1] == 5] == [((2.0, 5.0), (4.0, 5.0)), ((6.0, 5.0), (8.0, 5.0))]
    assert [segment[0] for segment in found if segment[0][1] == 0] == [(0.0, 0.0), (4.0, 0.0), (8.0, 0.0)]


def test_earth_starts_at_the_top_in_threes_that_lean_by_turns() -> None:
    found = earth(((0.0, 3.0), (20.0, 3.0), (20.0, 13.0), (0.0, 13.0)), 10)
    falls = [y1 > y0 for (_, y0), (_, y1) in found]
    assert falls == [True, True, True, False, False, False]
    assert min(y for segment in found for _, y in segment) == pytest.approx(5.0)


def test_dots_are_staggered() -> None:
    assert dots(((-1.0, -1.0), (9.0, -1.0), (9.0, 9.0), (-1.0, 9.0)), 4) == [
        (0.0, 0.0),
        (4.0, 0.0),
        (8.0, 0.0),
        (2.0, 4.0),
        (6.0, 4.0),
        (0.0, 8.0),
        (4.0, 8.0),
        (8.0, 8.0),
    ]


def test_bounds_are_left_top_right_bottom() -> None:
    assert bounds(((3, 4), (-1, 9), (2, 0))) == (-1, 0, 3, 9)


@given(st.lists(st.tuples(halves, halves), min_size=3, max_size=8), st.sampled_from([0.0, 45.0, 135.0]))
def test_hatching_never_leaves_the_outline(outline: list[Point], angle: float) -> None:
    left, top, right, bottom = bounds(outline)
    for segment in hatching(outline, 2.5, angle):
        (x0, y0), (x1, y1) = segment
        for x, y in segment:
            assert left - 1e-6 <= x <= right + 1e-6
            assert top - 1e-6 <= y <= bottom + 1e-6
        assert inside(((x0 + x1) / 2, (y0 + y1) / 2), outline)
