import pytest
from hypothesis import given
from hypothesis import strategies as st

from howto.families.planting import hole
from howto.families.planting.measures import PlantingMeasures
from howto.quantities import convert

WIDTH = st.floats(min_value=50, max_value=4_000)


def test_the_hole_is_a_tenth_shallower_than_the_roots() -> None:
    # University of Florida IFAS, Planting specification (ENH856) [A]: 10 % less than topmost root to base; exact
    assert hole.hole_depth_mm(400) == pytest.approx(360)


def test_the_hole_is_one_and_a_half_to_three_times_the_ball() -> None:
    # IFAS, ENH856 [A]: at least 1.5; Colorado State University, GardenNotes 633 [A]: 3; exact
    assert (hole.LEAST_HOLE, hole.WIDE_HOLE) == (1.5, 3)
    assert hole.width_mm(PlantingMeasures(work="tree", ball_width_mm=600)) == 1800


def test_a_saucer_lies_between_its_two_cylinders() -> None:
    assert hole.saucer_l(1000, 1000, 300) == pytest.approx(235.6, abs=0.1)  # a cylinder, π / 4 × 10² × 3
    assert hole.saucer_l(1200, 400, 300) == pytest.approx(163.4, abs=0.1)
    assert hole.saucer_l(900, 0.0001, 300) == pytest.approx(63.6, abs=0.1)  # a cone, a third of its cylinder


@pytest.mark.parametrize(
    ("width_in", "share"), [(16, 0.75), (19.9, 0.75), (20, 0.66), (30, 0.66), (31, 0.60), (48, 0.60)]
)
def test_ball_depth_is_a_share_of_its_width(width_in: float, share: float) -> None:
    # University of Florida IFAS, Root ball depth (Z60.1) [A]: under 20 in 75 %, 20 to 30 in 66 %, 31 to 48 in 60 %
    assert hole.ball_depth_share(convert(width_in, "in", "mm")) == share


def test_h47_a_ball_of_36_by_21_6_inches() -> None:
    # H47: worked from a tree nursery's ball weights [C]: 12.7 cubic feet, 1,150 lb, 90 lb a cubic foot; 5 %
    width = convert(36, "in", "mm")
    deep = hole.ball_depth_mm(width)
    assert convert(deep, "mm", "in") == pytest.approx(21.6, abs=1e-6)
    volume = hole.ball_volume_m3(width, deep)
    assert convert(volume, "m3", "cu ft") == pytest.approx(12.7, rel=0.05)
    assert convert(hole.ball_weight_kg(width, deep), "kg", "lb") == pytest.approx(1150, rel=0.05)
    assert 1150 / convert(volume, "m3", "cu ft") == pytest.approx(90, rel=0.05)


@pytest.mark.parametrize(("width_mm", "kg"), [(610, 147), (710, 250), (810, 340), (915, 520)])
def test_balls_weigh_about_what_the_nursery_says(width_mm: float, kg: float) -> None:
    # a tree nursery, what root balls weigh [C]; 20 %, since its balls are not all of one depth
    assert hole.ball_weight_kg(width_mm, hole.ball_depth_mm(width_mm)) == pytest.approx(kg, rel=0.20)


def test_a_ball_is_ten_times_the_calliper() -> None:
    # a tree nursery [C]; exact
    assert hole.ball_mm(PlantingMeasures(work="tree", stock="balled", calliper_mm=50)) == 500


@pytest.mark.parametrize(("calliper_in", "up_mm"), [(1, 150), (4, 150), (4.1, 300), (6, 300)])
def test_calliper_is_measured_150_or_300_mm_up(calliper_in: float, up_mm: float) -> None:
    # UF/IFAS Charlotte County, citing Z60.1 [A]: 6 in up; over 4 in thick, 12 in up; exact
    thick = convert(calliper_in, "in", "mm")
    assert hole.calliper_at_mm(thick, "metric") == up_mm
    assert convert(hole.calliper_at_mm(thick, "us"), "mm", "in") == pytest.approx(up_mm / 25)


@pytest.mark.parametrize(("deep_mm", "litres"), [(25, 20), (75, 60)])
def test_mulch_in_a_circle_of_a_metre(deep_mm: float, litres: float) -> None:
    # WRAP, Why compost is good mulch [A]: 20 to 60 L a tree in a 1 m circle, 25 to 75 mm deep; 1 L
    assert hole.ring_l(1000, deep_mm) == pytest.approx(litres, abs=1.2)


def test_the_bare_middle_takes_no_mulch() -> None:
    assert hole.ring_l(1000, 75, 1000) == 0
    assert hole.ring_l(500, 75, 1000) == 0
    assert hole.ring_l(1000, 75, 500) == pytest.approx(hole.ring_l(1000, 75) * 0.75)


@given(width=WIDTH, deep=st.floats(20, 2000))
def test_twice_as_deep_weighs_twice_as_much(width: float, deep: float) -> None:
    assert hole.ball_weight_kg(width, deep * 2) == pytest.approx(hole.ball_weight_kg(width, deep) * 2)
    assert hole.ball_volume_m3(width * 2, deep) == pytest.approx(hole.ball_volume_m3(width, deep) * 4)


@given(top=WIDTH, foot=WIDTH, deep=st.floats(20, 2000))
def test_a_saucer_is_the_same_upside_down(top: float, foot: float, deep: float) -> None:
    assert hole.saucer_l(top, foot, deep) == pytest.approx(hole.saucer_l(foot, top, deep))
