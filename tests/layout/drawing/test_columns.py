from math import inf

import pytest

from howto.layout.drawing.callouts import Callout, PlacedCallout, callout
from howto.layout.drawing.columns import Deal, Ground, column_room, cost, deal, least_cost, stacked
from howto.layout.drawing.plane import Outline, Profile, Segment, box_outline, edges

SIZE = 10.0
SUBJECT = edges(box_outline((100, 0, 200, 300)))


def label(x: float, y: float, text: str = "Stem") -> Callout:
    return callout((x, y), text, SIZE, 60, level=False)


def level(x: float, y: float, text: str = "520 mm") -> Callout:
    return callout((x, y), text, SIZE, 60, level=True)


def ground(
    blocks: tuple[Outline, ...] = (), lines: tuple[Segment, ...] = (), rules: tuple[Segment, ...] = ()
) -> Ground:
    return Ground(Profile(SUBJECT, 3), ((0, 300),), (100, 200), 400, blocks, lines, rules)


def placed(callouts: list[Callout], about: Ground | None = None) -> tuple[PlacedCallout, ...]:
    found = deal(callouts, about or ground())
    assert isinstance(found, Deal)
    return found.placed


def test_labels_stand_level_with_their_points_where_they_can() -> None:
    assert stacked([label(150, 50), label(150, 150)], 0, 300) == [50, 150]


def test_labels_that_would_meet_part_evenly() -> None:
    one, other = stacked([label(150, 100), label(150, 100)], 0, 300)
    assert (one + other) / 2 == pytest.approx(100, abs=1)
    assert other - one == pytest.approx(16.1)


def test_a_level_stays_at_its_height_and_the_label_gives_way() -> None:
    one, other = stacked([level(200, 100), label(150, 101)], 0, 300)
    assert one == pytest.approx(100, abs=0.01)
    assert other > 107


def test_a_column_stays_between_its_limits() -> None:
    column = [label(150, -50), label(150, -50)]
    heights = stacked(column, 0, 300)
    assert heights[0] == pytest.approx(column[0].above)
    low = stacked([label(150, 900)], 0, 300)
    assert low == [pytest.approx(300 - column[0].below)]


def test_room_counts_the_air_between() -> None:
    assert column_room([]) == 0
    assert column_room([label(0, 0)]) == pytest.approx(10.6)
    assert column_room([label(0, 0), label(0, 0)]) == pytest.approx(26.7)
    assert column_room([level(0, 0), level(0, 0)]) == pytest.approx(25.5)  # levels stand closer


def test_a_column_lines_up_beside_the_subject() -> None:
    first, second = placed([label(170, 50), label(170, 150)])
    assert (first.inner, second.inner) == (219, 219)
    (left,) = placed([label(130, 50)])
    assert left.inner == 81


def test_each_label_stands_on_the_side_that_it_is_nearer_to() -> None:
    found = placed([label(110, 50), label(130, 150), label(180, 150)])
    assert [each.right for each in found] == [False, False, True]


def test_levels_over_one_another_stand_on_one_side() -> None:
    found = placed([level(150, 50), level(150, 250)])
    assert len({each.right for each in found}) == 1


def test_a_column_moves_in_where_the_subject_is_narrow() -> None:
    profile = Profile([*SUBJECT, ((0, 290), (300, 290))], 3)
    about = Ground(profile, ((0, 300), (0, 280)), (0, 300), 400, (), (), ())
    (found,) = placed([label(150, 285)], about)
    assert found.inner == 219
    assert found.y < 280


def test_leaders_of_one_column_do_not_cross() -> None:
    near, far = label(195, 150, "Near"), label(105, 150.5, "Far")
    one, other = placed([near, far])
    assert {one.callout.lines, other.callout.lines} == {("Near",), ("Far",)}
    assert one.y != other.y


def test_a_leader_that_cannot_avoid_words_is_refused() -> None:
    wall = box_outline((150, -500, 160, 800))
    (found,) = placed([label(155, 150)], ground(blocks=(box_outline((170, -500, 180, 800)),)))
    assert not found.right
    other = box_outline((120, -500, 130, 800))
    assert deal([label(140, 150)], ground(blocks=(wall, other))) == 0


def test_a_leader_that_would_cross_a_discs_leader_is_refused() -> None:
    line = ((150.0, -500.0), (150.0, 800.0))
    (found,) = placed([label(149, 150)], ground(lines=(line,)))
    assert not found.right
    assert deal([label(150, 150)], ground(lines=(line,))) == 0


def test_a_label_may_speak_of_a_disc() -> None:
    disc = box_outline((140, 140, 160, 160))
    assert isinstance(deal([label(150, 150)], ground(blocks=(disc,))), Deal)


def test_a_column_without_room_is_refused() -> None:
    assert deal([label(150, 150)] * 80, ground()) == inf


def test_a_column_wider_than_the_box_is_refused_by_how_much_it_is_too_wide() -> None:
    narrow = Ground(Profile(SUBJECT, 3), ((0, 300),), (100, 200), 130, (), (), ())
    assert deal([label(150, 150)], narrow) == pytest.approx(119 + label(150, 150).wide - 130)


def test_a_deal_that_is_too_dear_is_refused() -> None:
    (found,) = placed([label(190, 150)])
    price = cost([found], ground())
    assert deal([label(190, 150)], ground(), price) == 0
    assert isinstance(deal([label(190, 150)], ground(), price + 0.1), Deal)


def test_no_leader_costs_less_than_the_least() -> None:
    callouts = [label(200, 150), level(200, 50)]
    assert 0 < least_cost(callouts) <= cost(placed(callouts), ground())


def test_two_labels_may_speak_of_one_point() -> None:
    one, other = placed([label(170, 150, "Stem"), label(170, 150, "Clip here")])
    assert abs(one.y - other.y) >= 16


def test_short_leaders_cost_less_and_crossed_dimensions_more() -> None:
    rule = ((210.0, 0.0), (210.0, 300.0))
    near = placed([label(190, 150)])
    assert cost(near, ground()) < cost(placed([label(160, 150)]), ground())
    assert cost(near, ground(rules=(rule,))) == pytest.approx(cost(near, ground()) + 40)


def test_a_bent_level_costs_more_than_a_straight_one() -> None:
    straight = PlacedCallout(level(200, 150), right=True, inner=231, y=150)
    bent = PlacedCallout(level(200, 150), right=True, inner=231, y=160)
    assert cost([bent], ground()) > cost([straight], ground()) + 60


def test_the_lower_of_two_close_levels_hangs_its_triangle() -> None:
    upper, lower = placed([level(200, 150), level(200, 154)])
    assert (upper.hangs, lower.hangs) == (False, True)
