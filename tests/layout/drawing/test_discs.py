from itertools import combinations
from math import dist

from hypothesis import given
from hypothesis import strategies as st

from howto.layout.drawing.discs import disc_leaders, disc_marks, place_discs
from howto.layout.drawing.look import frame_look
from howto.layout.drawing.plane import box_outline
from howto.model.crew import Colours
from howto.model.sheet import Dot, Stroke, TextMark

LOOK = frame_look(Colours())
ROOM = (0.0, 0.0, 400.0, 400.0)


def test_a_disc_stands_on_its_point() -> None:
    placed = place_discs([((100, 100), 1)], 10, [], [], ROOM)
    assert placed is not None
    assert (placed[0].centre, placed[0].leader) == ((100, 100), None)


def test_a_second_disc_on_one_point_moves_off_on_a_leader() -> None:
    placed = place_discs([((100, 100), 2), ((100, 100), 1)], 10, [], [], ROOM)
    assert placed is not None
    first, second = placed
    assert (first.number, first.centre) == (1, (100, 100))
    assert second.number == 2
    assert dist(second.centre, (100, 100)) > 20


def test_a_disc_keeps_off_words_and_off_points_that_labels_speak_of() -> None:
    placed = place_discs([((100, 100), 1)], 10, [box_outline((105, 98, 130, 102))], [], ROOM)
    assert placed is not None
    assert placed[0].centre != (100, 100)
    near = place_discs([((100, 100), 1)], 10, [], [(111, 100)], ROOM)
    assert near is not None
    assert near[0].centre != (100, 100)
    own = place_discs([((100, 100), 1)], 10, [], [(100, 100)], ROOM)
    assert own is not None
    assert own[0].centre == (100, 100)


def test_a_disc_without_room_is_not_placed() -> None:
    assert place_discs([((100, 100), 1)], 10, [box_outline((0, 0, 400, 400))], [], ROOM) is None


def test_a_disc_keeps_inside_its_room() -> None:
    placed = place_discs([((2, 2), 1)], 10, [], [], ROOM)
    assert placed is not None
    assert min(placed[0].box) >= 0


@given(st.lists(st.tuples(st.integers(20, 380), st.integers(20, 380)), min_size=2, max_size=9))
def test_discs_never_overlap(points: list[tuple[int, int]]) -> None:
    wanted = [((float(x), float(y)), number) for number, (x, y) in enumerate(points, start=1)]
    placed = place_discs(wanted, 10, [], [], ROOM)
    assert placed is not None
    for one, other in combinations(placed, 2):
        assert dist(one.centre, other.centre) > 2 * 10 * 1.16


def test_a_disc_is_ink_with_a_ring_in_the_ground_colour_and_its_number() -> None:
    placed = place_discs([((100, 100), 7)], 10, [], [], ROOM)
    assert placed is not None
    dot, number = disc_marks(placed[0], LOOK)
    assert isinstance(dot, Dot)
    assert isinstance(number, TextMark)
    assert (dot.colour, dot.ring_colour, dot.ring_width) == (LOOK.ink, LOOK.ground, 1.6)
    assert (number.text, number.size, number.colour) == ("7", 13, LOOK.ground)


def test_a_moved_disc_has_a_leader_on_a_ground_of_its_own() -> None:
    placed = place_discs([((100, 100), 1), ((100, 100), 12)], 10, [], [], ROOM)
    assert placed is not None
    halo, line, foot = disc_leaders(placed[1], LOOK)
    assert list(disc_leaders(placed[0], LOOK)) == []
    _, number = disc_marks(placed[1], LOOK)
    assert isinstance(halo, Stroke)
    assert isinstance(line, Stroke)
    assert isinstance(foot, Dot)
    assert (halo.colour, line.colour, halo.width > line.width) == (LOOK.ground, LOOK.ink, True)
    assert foot.centre == (100, 100)
    assert isinstance(number, TextMark)
    assert number.size == 11
