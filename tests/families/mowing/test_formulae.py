"""The arithmetic of mowing, against published examples and what must hold."""

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from howto.families.mowing import formulae

HEIGHT = st.floats(min_value=2, max_value=2000)
INCH = 25.4  # mm, exactly


@pytest.mark.parametrize(
    ("example", "set_in", "mow_in"),
    [
        # University of California Statewide IPM Program, UC Guide to Healthy Lawns: mowing warm-season grasses,
        # 2017 [A]; tolerance 0
        ("H1 kikuyu", 1.0, 1.5),
        ("H1 kikuyu", 1.5, 2.25),
        ("H2 st augustine", 1.0, 1.5),
        ("H2 st augustine", 2.0, 3.0),
        ("H3 zoysia", 0.5, 0.75),
        ("H3 zoysia", 1.0, 1.5),
        ("H3 seashore paspalum", 0.75, 1.125),
        ("H3 seashore paspalum", 1.5, 2.25),
        # NC Cooperative Extension, Lee County, Lawn Care Essentials, 2015 [A]; tolerance 0
        ("H4 couch", 1.0, 1.5),
    ],
)
def test_h1_to_h4_mow_at_half_as_high_again(example: str, set_in: float, mow_in: float) -> None:
    assert formulae.mow_at_mm(set_in) == pytest.approx(mow_in, abs=1e-12), example
    assert formulae.mow_at_mm(set_in * INCH) == pytest.approx(mow_in * INCH, abs=1e-9)


def test_h1_in_millimetres() -> None:
    # H1: the same guide, 25.4 to 38.1 mm mown at 38.1 to 57.2 mm (57.15 rounded)
    assert formulae.mow_at_mm(25.4) == pytest.approx(38.1)
    assert round(formulae.mow_at_mm(38.1), 1) in (57.1, 57.2)


@pytest.mark.parametrize(("set_in", "grown_in"), [(1.5, 0.75), (3.0, 1.5)])
def test_h5_a_lawn_is_due_after_half_its_height_of_growth(set_in: float, grown_in: float) -> None:
    # H5: Cornell University, Home gardening: the one-third rule [A]; tolerance 0
    assert formulae.mow_at_mm(set_in) - set_in == pytest.approx(grown_in)
    assert formulae.days_between_cuts(set_in, grown_in) == pytest.approx(1)


def test_h6_six_inches_down_to_three_takes_two_cuts() -> None:
    # H6: a general lawn page [C]: at most 2 in off, leaving 4; the count is derived; tolerance 0
    assert formulae.lowest_cut_mm(6) == pytest.approx(4)
    assert formulae.heights_down_mm(6, 3) == pytest.approx((4, 3))
    assert formulae.cuts_to_reach(6, 3) == 2


@pytest.mark.parametrize(
    ("standing", "target", "heights"), [(150, 50, (100, 66.7, 50)), (120, 30, (80, 53.3, 35.6, 30))]
)
def test_h7_cuts_on_the_way_down(standing: float, target: float, heights: tuple[float, ...]) -> None:
    # H7: derived from University of California Statewide IPM Program, how much to mow [A]; 0.1 mm
    assert formulae.heights_down_mm(standing, target) == pytest.approx(heights, abs=0.1)
    assert formulae.cuts_to_reach(standing, target) == len(heights)


def test_h8_a_lawn_at_30_mm_that_grows_3_mm_a_day_is_cut_every_5_days() -> None:
    # H8: derived from the same guide [A]; tolerance 0
    assert formulae.days_between_cuts(30, 3) == pytest.approx(5)
    assert formulae.mow_at_mm(30) == pytest.approx(45)


def test_t5_a_third_is_of_the_height_not_of_an_inch() -> None:
    # T5: a general page [C] read the rule as "take off 1/3 inch"; the University of California guide [A] does not
    assert formulae.share_removed(6, 4) == pytest.approx(1 / 3)
    assert formulae.share_removed(6, 6 - 1 / 3) == pytest.approx(0.0556, abs=0.0001)
    assert 6 - formulae.lowest_cut_mm(6) == pytest.approx(2)


def test_what_grows_back_is_cut_again() -> None:
    # worked by hand: 150 -> 100, 112 -> 74.7, 86.7 -> 57.8, 69.8 -> 50
    assert formulae.heights_down_mm(150, 50, 12) == pytest.approx((100, 74.667, 57.778, 50), abs=0.001)
    assert formulae.heights_down_mm(50, 50, 12) == ()
    assert formulae.heights_down_mm(74, 50, 12) == (50,)


def test_a_lawn_that_grows_back_half_its_set_height_never_comes_down() -> None:
    assert formulae.comes_down(50, 24.9)
    assert not formulae.comes_down(50, 25)
    with pytest.raises(ValueError, match="25 mm grows back between two cuts: it never reaches 50 mm"):
        formulae.heights_down_mm(150, 50, 25)
    assert formulae.heights_down_mm(70, 50, 25) == (50,)


@pytest.mark.parametrize(
    ("standing", "target", "cuts"), [(50, 50, 0), (40, 50, 0), (51, 50, 1), (75, 50, 1), (76, 50, 2)]
)
def test_cuts_at_the_edges(standing: float, target: float, cuts: int) -> None:
    assert formulae.cuts_to_reach(standing, target) == cuts


def test_a_season_of_eight_months_weekly() -> None:
    # worked by hand: 8 / 12 x 365.25 = 243.5 days, and 243.5 / 7 = 34.8
    assert formulae.cuts_a_season(8, 7) == pytest.approx(34.79, abs=0.01)


def test_clippings_and_minutes() -> None:
    # worked by hand: 100 m² x 20 mm is 2000 L of which 3 % is leaf; 100 m² / 0.5 m is 200 m, 3 min at 4 km/h
    assert formulae.clippings_l(100, 20, 0.03) == pytest.approx(60)
    assert formulae.mowing_minutes(100, 500, 4, 0) == pytest.approx(3)
    assert formulae.mowing_minutes(100, 500, 4, 0.1) == pytest.approx(3.333, abs=0.001)


# -- what must hold --


@given(standing=HEIGHT, target=HEIGHT)
def test_no_cut_takes_more_than_a_third_and_the_last_reaches(standing: float, target: float) -> None:
    assume(target < standing)
    before = standing
    for height in formulae.heights_down_mm(standing, target):
        assert formulae.share_removed(before, height) <= 1 / 3 + 1e-9
        before = height
    assert before == pytest.approx(target, abs=1e-5)


@given(standing=HEIGHT, target=HEIGHT)
def test_as_many_heights_as_cuts(standing: float, target: float) -> None:
    assert len(formulae.heights_down_mm(standing, target)) == pytest.approx(
        formulae.cuts_to_reach(standing, target), abs=0 if abs(standing - target) > 0.01 else 1
    )


@given(standing=HEIGHT, target=st.floats(2, 300), share=st.floats(0, 0.499))
def test_growth_never_lessens_the_cuts(standing: float, target: float, share: float) -> None:
    grown = formulae.heights_down_mm(standing, target, target * share)
    assert len(grown) >= len(formulae.heights_down_mm(standing, target))
    assert list(grown) == sorted(grown, reverse=True)


@given(kept=HEIGHT, growth=st.floats(0.05, 30))
def test_inches_and_millimetres_agree_on_days(kept: float, growth: float) -> None:
    assert formulae.days_between_cuts(kept, growth) == pytest.approx(
        formulae.days_between_cuts(kept / INCH, growth / INCH)
    )
    assert formulae.days_between_cuts(kept, growth) == pytest.approx(kept / (2 * growth))


@given(area=st.floats(0.5, 1e6), off=st.floats(0, 500), width=st.floats(100, 5000))
def test_twice_the_area_twice_the_work(area: float, off: float, width: float) -> None:
    assert formulae.clippings_l(2 * area, off, 0.03) == pytest.approx(2 * formulae.clippings_l(area, off, 0.03))
    assert formulae.mowing_minutes(2 * area, width, 4, 0.1) == pytest.approx(
        2 * formulae.mowing_minutes(area, width, 4, 0.1)
    )
