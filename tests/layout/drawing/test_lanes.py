import pytest

from howto.layout.drawing.lanes import Wanted, in_lanes, side_of

SUBJECT = (100.0, 100.0, 300.0, 400.0)  # left, top, right, bottom: y runs down
SIZE = 10.0


def wanted(text: str, start: tuple[float, float], end: tuple[float, float], side: str) -> Wanted:
    return Wanted(text, (start, end), side, SIZE)


@pytest.mark.parametrize(
    ("start", "end", "offset", "side"),
    [
        ((100, 100), (300, 100), 20, "top"),  # left of a line that runs right is up
        ((100, 400), (300, 400), -20, "bottom"),
        ((300, 400), (100, 400), 20, "bottom"),  # and down where it runs left
        ((100, 400), (100, 100), 20, "left"),  # upwards: left
        ((300, 400), (300, 100), -20, "right"),
        ((100, 200), (300, 200), 20, ""),  # still inside
        ((100, 100), (300, 100), 0, ""),
        ((100, 100), (300, 150), 200, ""),  # slanting
        ((150, 400), (150, 100), 20, ""),
        ((100, 100), (100, 100), 20, ""),
    ],
)
def test_a_dimension_stands_left_of_its_direction(
    start: tuple[float, float], end: tuple[float, float], offset: float, side: str
) -> None:
    assert side_of(start, end, offset, SUBJECT) == side


def test_the_first_lane_stands_off_the_subject_and_the_next_off_the_first() -> None:
    near = wanted("900", (120, 400), (280, 400), "bottom")
    far = wanted("980", (100, 400), (300, 400), "bottom")
    placed = in_lanes([near, far], SUBJECT)
    assert [each.line for each in placed] == [((120, 415), (280, 415)), ((100, 430), (300, 430))]
    assert [each.centre for each in placed] == [(200, 415), (200, 430)]


def test_neighbours_end_to_end_share_a_lane() -> None:
    parts = [wanted("70", (100 + at, 100), (150 + at, 100), "top") for at in (0, 50, 100)]
    assert {each.line[0][1] for each in in_lanes(parts, SUBJECT)} == {85}


def test_upright_words_turn_with_their_line() -> None:
    (placed,) = in_lanes([wanted("300 mm", (100, 400), (100, 100), "left")], SUBJECT)
    assert (placed.line, placed.angle, placed.centre) == (((85, 400), (85, 100)), 90, (85, 250))


def test_words_wider_than_a_short_upright_stand_level_beside_it() -> None:
    (left,) = in_lanes([wanted("140 mm", (100, 130), (100, 110), "left")], SUBJECT)
    assert left.angle == 0
    assert max(x for x, _ in left.outline) == pytest.approx(83)
    (right,) = in_lanes([wanted("140 mm", (300, 130), (300, 110), "right")], SUBJECT)
    assert min(x for x, _ in right.outline) == pytest.approx(317)


def test_the_next_lane_stands_off_words_that_lie_beside() -> None:
    short = wanted("140 mm", (100, 130), (100, 110), "left")
    tall = wanted("300 mm", (100, 400), (100, 100), "left")
    first, second = in_lanes([short, tall], SUBJECT)
    assert second.line[0][0] < min(x for x, _ in first.outline)


@pytest.mark.parametrize("side", ["top", "left"])
def test_words_that_fit_nowhere_else_stand_past_the_end(side: str) -> None:
    if side == "top":
        (placed,) = in_lanes([wanted("9 mm", (200, 100), (209, 100), "top")], SUBJECT)
        assert placed.tail == (215, 85)
        assert min(x for x, _ in placed.outline) == pytest.approx(215)
    else:
        (placed,) = in_lanes([wanted("9 mm", (100, 209), (100, 200), "left")], SUBJECT)
        assert placed.tail == (85, 194)
        assert max(y for _, y in placed.outline) == pytest.approx(194)


def test_words_past_an_end_push_their_neighbour_to_the_next_lane() -> None:
    first = wanted("9 mm", (200, 100), (209, 100), "top")
    second = wanted("60 mm", (209, 100), (269, 100), "top")
    assert [each.line[0][1] for each in in_lanes([first, second], SUBJECT)] == [85, 70]
