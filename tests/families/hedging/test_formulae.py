import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from howto.families.hedging import formulae

LENGTH = st.floats(min_value=10, max_value=10_000)


def test_h57_a_base_one_third_wider_leans_3_2_degrees() -> None:
    # H57: gardening site, Shaping hedges, base one third wider than the top [C]; angle worked out; 0.1 degree
    assert formulae.base_for_mm(600) == pytest.approx(800)
    assert formulae.in_each_side_mm(800, 600) == 100
    assert formulae.angle_deg(800, 600, 1800) == pytest.approx(3.2, abs=0.1)


def test_h57_is_the_same_in_inches() -> None:
    assert formulae.angle_deg(800 / 25.4, 600 / 25.4, 1800 / 25.4) == pytest.approx(formulae.angle_deg(800, 600, 1800))


def test_h58_a_crown_cut_by_30_percent_loses_12_percent_of_branch_length() -> None:
    # H58: Ryedale District Council, Advice note on BS 3998:2010 [A]: about 12 %; exact 11.2 %; 1 point
    assert formulae.share_of_length(0.30) * 100 == pytest.approx(12, abs=1)
    assert formulae.share_of_length(0.30) * 100 == pytest.approx(11.2, abs=0.05)


def test_h60_a_hedge_of_1200_wanted_at_800_loses_33_percent() -> None:
    # H60: worked from Royal Horticultural Society, Hedges: renovation [A]; tolerance 0 in whole percent
    assert round(formulae.share_off(1200, 800) * 100) == 33


@pytest.mark.parametrize(("spacing_mm", "rows", "plants"), [(400, 2, 5.0), (600, 1, 1.7), (750, 1, 1.3)])
def test_h61_plants_a_metre(spacing_mm: float, rows: int, plants: float) -> None:
    # H61: hedge nursery, planting guide [C]: double row 400 mm, 5 a metre; 600 to 750 mm single, 1.3 to 1.7; 0.2
    assert formulae.plants_per_metre(spacing_mm, rows) == pytest.approx(plants, abs=0.2)


def test_h61_the_nursery_says_3_plants_in_2_metres() -> None:
    assert formulae.plants_per_metre(600) * 2 == pytest.approx(3, abs=0.4)
    assert formulae.plants_per_metre(750) * 2 == pytest.approx(3, abs=0.4)


def test_h42_ten_metres_at_6_a_metre_take_60_plants_in_two_rows() -> None:
    # H42: worked from UK Government, BN11 Planting new hedges [A]: rows 0.4 m apart, at least 6 a metre; exact
    spacing = formulae.spacing_for_mm(6, rows=2)
    assert spacing == pytest.approx(333.333, abs=0.001)
    assert formulae.plants_needed(10_000, spacing, rows=2) == 60
    assert formulae.neighbour_mm(spacing, 400) == pytest.approx(433.333, abs=0.001)


def test_plants_are_ordered_up_never_down() -> None:
    assert formulae.plants_needed(10_000, 330) == 31
    assert formulae.plants_needed(9_900, 330) == 30
    assert formulae.plants_needed(100, 330) == 1


@pytest.mark.parametrize(("cuts", "shoots"), [(0, 1), (1, 2), (2, 4), (3, 8), (5, 32)])
def test_a_cut_makes_two_and_two_make_four(cuts: int, shoots: int) -> None:
    # common practice, no source
    assert formulae.shoots_after(cuts) == shoots
    assert formulae.shoots_after(cuts, 3) == shoots * 3


def test_a_hedge_of_900_loses_a_third_in_one_cut_of_300() -> None:
    # common practice, no source: 300 to 400 mm off the top of a vigorous young evergreen in one cut
    assert formulae.lowest_cut_mm(900) == pytest.approx(600)
    assert formulae.lowest_cut_mm(1200) == pytest.approx(800)


def test_staged_heights_come_down_by_thirds() -> None:
    assert formulae.staged_heights(2700, 1000) == pytest.approx((1800, 1200, 1000))
    assert formulae.staged_heights(1500, 1000) == (1000,)
    assert formulae.staged_heights(9e-7, 4e-7) == pytest.approx((6e-7, 4e-7))
    assert formulae.staged_heights(1750, 1e-9)[-1] == 1e-9


def test_heights_up_gain_what_the_cut_leaves() -> None:
    assert formulae.heights_up_mm(600, 1400, 450, 0.5) == ((1050, 825), (1275, 1050), (1500, 1400))
    assert formulae.heights_up_mm(1400, 1400, 450, 0.5) == ()


@pytest.mark.parametrize("cut_back", [1.0, 1.2])
def test_a_hedge_cut_back_to_where_it_was_never_rises(cut_back: float) -> None:
    with pytest.raises(ValueError, match="never rises"):
        formulae.heights_up_mm(600, 1400, 450, cut_back)


def test_a_rise_of_a_thousand_cuts_is_refused() -> None:
    with pytest.raises(ValueError, match="over a thousand cuts"):
        formulae.heights_up_mm(1, 10_000, 1, 0.5)


def test_gaps_close_from_both_sides() -> None:
    assert formulae.gap_mm(300, 180) == 120
    assert formulae.gap_mm(300, 400) == 0
    assert formulae.years_to_close(120, 60) == 1.0


def test_the_section_is_a_trapezium_and_the_face_goes_round_it() -> None:
    assert formulae.section_mm2(800, 600, 1800) == 1_260_000
    assert formulae.width_at_mm(800, 600, 1800, 900) == 700
    assert formulae.face_mm2_per_mm(1000, 400, 400) == pytest.approx(1400)  # sides of a 3-4-5 triangle: 500 each
    assert formulae.minutes_for(20, 40) == 30


@given(base=LENGTH, top=LENGTH, height=LENGTH, times=st.floats(min_value=0.1, max_value=50))
def test_a_hedge_drawn_larger_leans_the_same(base: float, top: float, height: float, times: float) -> None:
    grown = formulae.angle_deg(base * times, top * times, height * times)
    assert grown == pytest.approx(formulae.angle_deg(base, top, height), abs=1e-9)


@given(length=LENGTH, spacing=LENGTH, rows=st.integers(1, 3))
def test_two_rows_take_twice_the_plants_of_one(length: float, spacing: float, rows: int) -> None:
    one = formulae.plants_needed(length, spacing)
    assert formulae.plants_needed(length, spacing, rows) == one * rows
    assert one * spacing >= length - 1e-3
    assert (one - 1) * spacing < length


@given(stands=LENGTH, wanted=LENGTH)
def test_no_stage_takes_more_than_a_third(stands: float, wanted: float) -> None:
    assume(wanted < stands)
    heights = formulae.staged_heights(stands, wanted)
    before = stands
    for height in heights:
        assert 1 - height / before <= 1 / 3 + 1e-9
        before = height
    assert heights[-1] == wanted


@given(start=LENGTH, finished=LENGTH, growth=st.floats(min_value=50, max_value=2000), back=st.floats(0, 0.8))
def test_a_rising_hedge_ends_at_its_height(start: float, finished: float, growth: float, back: float) -> None:
    assume(start + formulae.DUST < finished)
    steps = formulae.heights_up_mm(start, finished, growth, back)
    cuts = [cut for _, cut in steps]
    assert cuts == sorted(cuts)
    assert cuts[-1] == finished
    assert all(stands >= cut for stands, cut in steps)
