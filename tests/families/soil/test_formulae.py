import pytest
from hypothesis import given
from hypothesis import strategies as st

from howto.families.soil import formulae
from howto.quantities import convert

AREA = st.floats(min_value=0.1, max_value=100_000)
DEPTH = st.floats(min_value=1, max_value=1_000)
VOLUME = st.floats(min_value=0.001, max_value=100_000)


def volume_cu_yd(area_sq_ft: float, depth_in: float) -> float:
    """The volume of a layer, asked and told in US measure."""
    return convert(formulae.volume_m3(convert(area_sq_ft, "sq ft", "m2"), convert(depth_in, "in", "mm")), "m3", "cu yd")


def cover_sq_ft(cu_yd: float, depth_in: float) -> float:
    """The area that a volume covers, asked and told in US measure."""
    return convert(formulae.cover_m2(convert(cu_yd, "cu yd", "m3"), convert(depth_in, "in", "mm")), "m2", "sq ft")


def test_h30_a_bed_of_3_by_3_m_at_100_mm_takes_0_9_cubic_metres() -> None:
    # H30: Australian Broadcasting Corporation, Fact sheet on mulch quantity [A]; tolerance 0
    assert formulae.volume_m3(3 * 3, 100) == pytest.approx(0.9, abs=1e-12)


def test_h31_40_square_metres_at_10_cm_take_4_cubic_metres() -> None:
    # H31: a gardening magazine [C]; tolerance 0
    assert formulae.volume_m3(40, convert(10, "cm", "mm")) == 4


@pytest.mark.parametrize(("depth_mm", "volume_m3"), [(25, 2.5), (75, 7.5)])
def test_h32_compost_as_mulch_on_100_square_metres(depth_mm: float, volume_m3: float) -> None:
    # H32: WRAP, Why compost is good mulch [A]: 25 to 75 mm is 2.5 to 7.5 m³ on 100 m²; tolerance 0
    assert formulae.volume_m3(100, depth_mm) == volume_m3


def test_h33_2000_square_feet_at_a_quarter_inch() -> None:
    # H33: a composting works [C], printed 1.6 cubic yards; 0.06
    assert volume_cu_yd(2000, 0.25) == pytest.approx(1.6, abs=0.06)
    assert volume_cu_yd(2000, 0.25) == pytest.approx(1.543, abs=0.001)


def test_h34_a_cubic_yard_at_a_third_of_an_inch_covers_972_square_feet() -> None:
    # H34: a composting works [C]; 2 square feet
    assert cover_sq_ft(1, 1 / 3) == pytest.approx(972, abs=2)


def test_h36_600_square_feet_at_2_inches() -> None:
    # H36: a general gardening page [C]; 0.01 cubic yard
    assert volume_cu_yd(600, 2) == pytest.approx(3.70, abs=0.01)


def test_h37_1000_square_feet_at_an_inch_in_both_measures() -> None:
    # H37: worked out; 0.01
    assert volume_cu_yd(1000, 1) == pytest.approx(3.09, abs=0.01)
    metric = formulae.volume_m3(convert(1000, "sq ft", "m2"), convert(1, "in", "mm"))
    assert metric == pytest.approx(2.36, abs=0.01)


@pytest.mark.parametrize(("depth_in", "sq_ft"), [(1, 324), (2, 162), (3, 108), (4, 81)])
def test_what_one_cubic_yard_covers(depth_in: float, sq_ft: float) -> None:
    # two mulch suppliers [C]; tolerance 0
    assert cover_sq_ft(1, depth_in) == pytest.approx(sq_ft, abs=1e-9)


@pytest.mark.parametrize(("rate_in", "hours"), [(1, 12), (2, 6)])
def test_h48_a_hole_of_12_inches_drains_in_6_to_12_hours(rate_in: float, hours: float) -> None:
    # H48: University of California Statewide IPM Program, Percolation test [A]; tolerance 0
    found = formulae.hours_to_drain(convert(12, "in", "mm"), convert(rate_in, "in", "mm"))
    assert found == pytest.approx(hours, abs=1e-9)


@pytest.mark.parametrize(("hole_mm", "least"), [(300, 12.5), (450, 18.75)])
def test_a_hole_is_empty_in_a_day(hole_mm: float, least: float) -> None:
    # UC IPM, Percolation test [A], 300 mm; University of Florida IFAS, Drainage test [A], 450 mm
    assert formulae.slowest_mm_per_h(hole_mm) == least
    assert formulae.hours_to_drain(hole_mm, least) == 24


def test_t1_4_cubic_yards_on_1000_square_feet_lie_1_3_inches_deep() -> None:
    # T1: Colorado State University, PlantTalk 1605 and Organic amendments [A] print 2 in; 6.17 cubic yards are needed
    assert volume_cu_yd(1000, 2) == pytest.approx(6.17, abs=0.01)
    deep_mm = formulae.depth_mm(convert(4, "cu yd", "m3"), convert(1000, "sq ft", "m2"))
    assert deep_mm == pytest.approx(33, abs=0.2)
    assert convert(deep_mm, "mm", "in") == pytest.approx(1.30, abs=0.01)


def test_t3_ten_bags_of_30_litres_are_a_third_of_a_cubic_metre() -> None:
    # T3: a gardening magazine [C] prints 1 m³, and 40 bags for 4 m³
    assert 10 * 30 / 1000 == 0.3
    assert formulae.bags(1, 30) == 34
    assert formulae.bags(4, 30) == 134


def test_t4_a_cubic_metre_covers_13_3_square_metres_at_75_mm() -> None:
    # T4: a garden page [C] prints 15 m²
    assert formulae.cover_m2(1, 75) == pytest.approx(13.3, abs=0.05)


@pytest.mark.parametrize(("volume_m3", "bag_l", "count"), [(0.9, 30, 30), (0.9001, 30, 31), (0.001, 50, 1)])
def test_bags_are_counted_up(volume_m3: float, bag_l: float, count: int) -> None:
    assert formulae.bags(volume_m3, bag_l) == count


def test_compost_weighs_593_to_712_kg_a_cubic_metre() -> None:
    # a composting works [C]: 1,000 to 1,200 lb a cubic yard
    per_m3 = [convert(pounds, "lb", "kg") / convert(1, "cu yd", "m3") for pounds in (1000, 1200)]
    assert per_m3 == [pytest.approx(593, abs=0.5), pytest.approx(712, abs=0.5)]
    assert formulae.mass_kg(2, 650) == 1300


def test_a_load_is_held_by_its_weight_or_its_room() -> None:
    assert formulae.load_room_m3(1.5, 750, 650) == pytest.approx(1.1538, abs=0.0001)
    assert formulae.load_room_m3(1.0, 750, 650) == 1.0
    assert formulae.load_room_m3(1.5, None, 650) == 1.5
    assert formulae.load_room_m3(1.5, 750, None) == 1.5
    assert formulae.loads(3.0, 1.5) == 2
    assert formulae.loads(3.01, 1.5) == 3


def test_a_fifth_that_sinks_is_made_up_for() -> None:
    assert formulae.before_settling(60, 0.2) == 75
    assert formulae.before_settling(60, 0) == 60


@pytest.mark.parametrize("settling", [-0.1, 1.0])
def test_a_layer_cannot_sink_away_or_rise(settling: float) -> None:
    with pytest.raises(ValueError, match="settling is a part from 0 to under 1"):
        formulae.before_settling(60, settling)


@pytest.mark.parametrize(("layer", "dig", "part"), [(25, 100, 0.25), (75, 300, 0.25), (50, 150, 1 / 3), (200, 100, 1)])
def test_the_share_of_the_mixed_soil(layer: float, dig: float, part: float) -> None:
    # a compost maker [C]: 25 mm in 100 mm; Michigan Recycling Coalition [B]: 50 mm in 150 mm
    assert formulae.share_mixed_in(layer, dig) == pytest.approx(part)


def test_a_barrow_of_80_litres_covers_a_metre_each_way_at_80_mm() -> None:
    assert formulae.heap_every_m(80, 80) == 1
    assert formulae.heap_every_m(80, 20) == 2


@given(area=AREA, depth=DEPTH)
def test_double_the_area_or_the_depth_doubles_the_volume(area: float, depth: float) -> None:
    once = formulae.volume_m3(area, depth)
    assert formulae.volume_m3(area * 2, depth) == pytest.approx(once * 2)
    assert formulae.volume_m3(area, depth * 2) == pytest.approx(once * 2)


@given(area=AREA, depth=DEPTH)
def test_volume_depth_and_cover_undo_each_other(area: float, depth: float) -> None:
    volume = formulae.volume_m3(area, depth)
    assert formulae.depth_mm(volume, area) == pytest.approx(depth)
    assert formulae.cover_m2(volume, depth) == pytest.approx(area)


@given(area=AREA, depth=DEPTH)
def test_metric_and_us_measure_agree(area: float, depth: float) -> None:
    # a cubic yard spread an inch deep covers 324 square feet
    us = convert(area, "m2", "sq ft") * convert(depth, "mm", "in") / 324
    assert convert(us, "cu yd", "m3") == pytest.approx(formulae.volume_m3(area, depth), rel=1e-9)


@given(volume=VOLUME, bag=st.floats(5, 2000))
def test_the_bags_hold_the_volume_and_one_less_would_not(volume: float, bag: float) -> None:
    count = formulae.bags(volume, bag)
    assert count * bag / 1000 >= volume * (1 - 1e-6)
    assert (count - 1) * bag / 1000 < volume


@given(amount=DEPTH, settling=st.floats(0, 0.6))
def test_what_is_left_after_settling_is_what_was_wanted(amount: float, settling: float) -> None:
    assert formulae.before_settling(amount, settling) * (1 - settling) == pytest.approx(amount)
