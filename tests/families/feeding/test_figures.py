"""The figures of feeding: worked examples from measures to figure, dates in both hemispheres, and random measures."""

from datetime import date
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from howto.compute.figures import figures_of
from howto.families.feeding import FAMILY, season
from howto.languages.reader import Reader
from howto.model.crew import Crew
from howto.model.figure import Figure
from howto.model.shown import shown
from howto.quantities import parse_in
from tests.families.feeding.examples import (
    BARE,
    COUCH,
    ESPALIER,
    LAWN,
    LAWN_3,
    MEASURES,
    NORTH,
    POTS,
    SOUTH,
    TREE,
    made,
)
from tests.support.told import told_figure

TODAY = date(2026, 10, 14)


def figures(crew: Crew = NORTH, today: date = TODAY, **measures: Any) -> dict[str, Figure]:
    return {each.name: told_figure(each) for each in figures_of(made(None, crew, **measures), FAMILY, today)}


def value(name: str, **measures: Any) -> Any:
    return figures(**measures)[name].value


# -- worked examples, from measures to figure --


@pytest.mark.parametrize(
    ("analysis", "grams"),
    [
        # H9, University of Georgia (A): 10, 8.3, 20 and 6.3 lb for 1 lb N on 1,000 sq ft, in the metric of H17
        ("10-10-10", 48.8),
        ("12-4-8", 40.7),
        ("5-10-15", 97.6),
        ("16-4-8", 30.5),
        # H16, a Texas column (B): 2.17 and 6.66 lb
        ("46-0-0", 10.6),
        ("15-5-10", 32.5),
    ],
)
def test_h9_h16_product_on_a_square_metre(analysis: str, grams: float) -> None:
    assert value("spread rate", **{**LAWN, "analysis": analysis}, nutrient_rate_g_per_m2=4.88) == pytest.approx(
        grams, abs=0.05
    )


def test_h13_in_pounds_and_square_feet() -> None:
    """A country gardener's site (C): 1 lb N from 20 % on 12,000 sq ft is 60 lb, written as a lead would."""
    rate, _ = parse_in("1 lb/1000 ft2", "g/m2")
    area, _ = parse_in("12000 ft2", "m2")
    found = figures(Crew(units="us"), **{**LAWN, "analysis": "20-0-0"}, nutrient_rate_g_per_m2=rate, area_m2=area)
    assert shown(found["area dose"], Reader(units="us")) == "60\u00a0lb"
    assert shown(found["spread rate"], Reader(units="us")) == "5\u00a0lb/1000\u00a0sq\u00a0ft"


def test_h17_metric_twin() -> None:
    """Derived from H9: 4.88 g/m² N from 10-10-10 on 100 m² is 4.88 kg."""
    assert value("area dose", **LAWN, nutrient_rate_g_per_m2=4.88, area_m2=100.0) == pytest.approx(4880, abs=10)


def test_h18_h26_label_in_both_forms() -> None:
    """Virginia Tech and University of Arizona (A): 49.8 % K is 60.0 % K2O; 10 lb of 10-10-10 holds 1 lb N."""
    found = figures(**{**LAWN_3, "analysis": "0-0-49.8", "label_basis": "element"})
    assert found["label potassium"].value == pytest.approx(60.0, abs=0.05)
    assert found["label potassium"].label == "Potassium of the label, as K2O"
    assert value("label potassium", **LAWN_3) == pytest.approx(8.301)
    assert value("bag nitrogen", **LAWN_3, bag_kg=4.5359237) == pytest.approx(0.45359237)


def test_h22_h23_strength() -> None:
    """A growers' site (C): 1 g/L of 20-20-20 is 200 ppm; 0.55 g/L of 13-0-44 is 201 ppm K."""
    assert value("mix strength", **POTS, mix_g_per_l=1.0) == pytest.approx(200)
    assert value("potassium strength", **{**POTS, "analysis": "13-0-44"}, mix_g_per_l=0.55) == pytest.approx(201, abs=1)
    assert value("phosphorus strength", **{**POTS, "analysis": "12-62-0"}, mix_g_per_l=0.37) == pytest.approx(
        101, abs=1
    )


def test_h24_a_grown_tree_in_three_lots() -> None:
    """San Diego Master Gardeners (B): 454 g N a year; 5 lb (exactly 4.76) of ammonium sulphate in 3 lots."""
    found = figures(analysis="21-0-0", dose_by="mature tree", doses=3)
    assert found["year nitrogen"].value == pytest.approx(454, abs=0.5)
    assert found["dose"].value == pytest.approx(2160 / 3, abs=1)


def test_h25_apple_of_three_inches() -> None:
    """University of Tennessee (A), a gardening site (C): 136 g N, capped at that of 1.13 kg of 10-10-10; 1 %."""
    found = figures(**TREE, trunk_mm=76.2)
    assert found["year nitrogen"].value == pytest.approx(113, rel=0.01)
    assert found["dose"].value == pytest.approx(1130, rel=0.01)
    assert found["year nitrogen"].working[0] == "trunk 7.62 cm x 17.86 g/cm N = 136.1 g N"
    assert found["year nitrogen"].working[1] == "at most 113 g N a tree, as in 1.13 kg of 10-10-10"


def test_h28_apple_in_grass() -> None:
    """Royal Horticultural Society (A): 6 m² in grass is 840 g, a cooker 1260 g; 600 g on bare soil."""
    on_grass: dict[str, Any] = {"analysis": "7-7-7", "dose_by": "area", "rooting_area_m2": 6.0, "ground": "grass"}
    assert value("dose", **on_grass) == pytest.approx(840)
    assert value("dose", **on_grass, crop="cooking apple") == pytest.approx(1260)
    assert value("dose", **{**on_grass, "ground": "bare"}) == pytest.approx(600)


def test_a_stronger_feed_is_given_less_by_area() -> None:
    """Worked by hand: 600 g of 7 % N is 300 g of 14 %."""
    assert value("dose", analysis="14-14-14", dose_by="area", rooting_area_m2=6.0) == pytest.approx(300)


def test_h29_apple_of_four_years() -> None:
    """After an Australian fruit handbook (B): 0.8 kg of 8:4:10, half of it in spring where half waits for autumn."""
    young: dict[str, Any] = {**BARE, "crop": "apple", "analysis": "8:4:10", "label_basis": "element"}
    assert value("dose", **young, tree_age_years=4.0) == pytest.approx(800)
    halved = figures(SOUTH, **young, tree_age_years=4.0, autumn_share_percent=50.0)
    assert halved["dose"].value == pytest.approx(400)
    table = halved["feeding dates"].table
    assert table is not None
    assert table.rows == (("1", date(2026, 9, 1), 400.0), ("autumn", date(2027, 4, 1), 400.0))


@pytest.mark.parametrize(
    "measures",
    [
        {"dose_by": "age"},
        {"dose_by": "trunk", "trunk_mm": None},
        {"dose_by": "area", "crop": "apricot"},
        {"dose_by": "age", "crop": "apricot", "tree_age_years": 4.0},
        {"crop": None},
        {"analysis": "0-0-50"},
    ],
)
def test_what_is_not_written_gives_no_dose(measures: dict[str, Any]) -> None:
    assert not {"year nitrogen", "dose"} & set(figures(**{**TREE, **measures}))


def test_all_of_it_in_autumn() -> None:
    """Worked by hand: the whole 1071.5 g waits for 1 October; 400 g as written does too."""
    whole = figures(**TREE, autumn_share_percent=100.0)["feeding dates"].table
    written = figures(**TREE, autumn_share_percent=100.0, product_each_g=400.0)["feeding dates"].table
    assert whole is not None
    assert written is not None
    assert whole.rows[0][:2] == ("autumn", date(2027, 10, 1))
    assert whole.rows[0][2] == pytest.approx(1071.5, abs=0.05)
    assert len(whole.rows) == 1
    assert written.rows == (("autumn", date(2027, 10, 1), 400.0),)


# -- trees --


def test_a_trained_tree_gets_half_and_in_parts() -> None:
    """From memory: half of 107 g N, in 2 doses."""
    found = figures(**ESPALIER)
    assert found["year nitrogen"].value == pytest.approx(53.6, abs=0.05)
    assert found["dose"].value == pytest.approx(267.9, abs=0.05)
    assert found["dose"].working == ("535.7 g / 2 = 267.9 g",)


def test_the_lawns_feed_is_taken_off() -> None:
    """Worked by hand: 107 g - 5 m² x 10 g/m² = 57 g N."""
    lawn: dict[str, Any] = {"ground": "grass", "rooting_area_m2": 5.0, "lawn_nitrogen_g_per_m2": 10.0}
    assert value("year nitrogen", **TREE, **lawn) == pytest.approx(57.1, abs=0.05)
    assert value("dose", **TREE, **{**lawn, "rooting_area_m2": 40.0}) == 0


def test_the_ring_and_what_goes_on_it() -> None:
    """Worked by hand: canopy 2 m, bare 300 mm from the bark: π x (1.15² - 0.33²) = 3.81 m², half before a wall."""
    found = figures(**TREE)
    assert found["ring reach"].value == 1150
    assert found["feed ring"].value == pytest.approx(3.813, abs=0.001)
    assert found["dose on the ring"].value == pytest.approx(1071.49 / 3.8127, abs=0.05)
    assert value("feed ring", **TREE, wall=True) == pytest.approx(1.906, abs=0.001)
    assert value("feed ring", **TREE, rooting_area_m2=6.0) == 6
    assert value("ring reach", **TREE, ring_edge_mm=1400.0) == 1400
    assert value("ring reach", **{**TREE, "canopy_mm": 400.0}) == 630  # a small tree: a band of 300 mm outside


def test_girth_counts_and_scoops() -> None:
    """Worked by hand: 188.5 mm round is 60 mm across; 3 trees; 1071 g is 8.9 scoops of 120 g."""
    found = figures(**{**TREE, "trunk_mm": None}, trunk_girth_mm=188.4956, tree_count=3, scoop_g=120.0)
    assert found["dose"].value == pytest.approx(1071.5, abs=0.05)
    assert found["dose for all trees"].value == pytest.approx(3214.5, abs=0.1)
    assert shown(found["scoops"], Reader()) == "8.9"
    assert value("dose", **TREE, product_each_g=500.0) == 500


@pytest.mark.parametrize(
    ("grown", "verdict"),
    [
        (300.0, "short of its range: feed"),
        (305.0, "within its range: feed no more than this"),
        (610.0, "too strong: no nitrogen this year"),
    ],
)
def test_what_the_shoots_say(grown: float, verdict: str) -> None:
    """Colorado State University (A): a bearing apple grows 12 to 24 in, 304.8 to 609.6 mm."""
    assert value("growth verdict", **TREE, shoot_growth_mm=grown) == verdict


# -- lawns --


def test_a_lawns_year_and_its_passes() -> None:
    """Worked by hand: 3 g/m² N x 4 is 12; 30 g/m² in two passes of 15; 10 m of a 500 mm spreader uses 75 g."""
    found = figures(**LAWN_3, doses=4, spreader_width_mm=500.0, clippings_left=True)
    assert found["year nitrogen"].value == pytest.approx(12)
    assert found["each pass"].value == pytest.approx(15)
    assert found["test strip"].value == pytest.approx(75)
    assert found["year nitrogen"].working[1] == "Lolium perenne: 9.8 to 19.5 g/m² N in a year"
    assert found["year nitrogen"].working[2].endswith("19.5 x 0.8 = 15.6 g/m² N")


def test_a_rate_of_potash() -> None:
    """Worked by hand: 5 g/m² K2O from 10-5-20 is 25 g/m², with 2.5 g/m² N in it."""
    potash = {**LAWN, "analysis": "10-5-20", "nutrient": "potash", "nutrient_rate_g_per_m2": 5.0}
    assert value("spread rate", **potash) == pytest.approx(25)
    assert value("year nitrogen", **potash) == pytest.approx(2.5)


# -- dates --


@pytest.mark.parametrize(
    ("crew", "measures", "days"),
    [
        (NORTH, {**TREE, "doses": 3}, (date(2027, 3, 1), date(2027, 4, 12), date(2027, 5, 24))),
        # both doses of this spring are past on 14 October, so it is next spring's
        (SOUTH, {**TREE, "doses": 2}, (date(2027, 9, 1), date(2027, 10, 13))),
        (SOUTH, {**TREE, "doses": 3}, (date(2026, 9, 1), date(2026, 10, 13), date(2026, 11, 24))),
        (NORTH, {**LAWN_3, "doses": 2}, (date(2027, 4, 20), date(2027, 6, 1))),
        (NORTH, {**COUCH, "doses": 2}, (date(2027, 5, 1), date(2027, 6, 19))),
        (SOUTH, {**COUCH, "doses": 2}, (date(2026, 11, 1), date(2026, 12, 20))),
        (NORTH, {**TREE, "start_month": "november"}, (date(2026, 11, 1),)),
        (NORTH, {**LAWN_3, "dose_gap_weeks": 8.0, "doses": 2}, (date(2027, 4, 20), date(2027, 6, 15))),
    ],
)
def test_the_dates(crew: Crew, measures: dict[str, Any], days: tuple[date, ...]) -> None:
    assert season.dose_days(made(None, crew, **measures), TODAY) == days


def test_the_next_dose_and_the_last_day() -> None:
    """Almanac (C): 1 July in the north; University of Georgia (A): mid-August; each six months on in the south."""
    running = figures(SOUTH, **TREE, doses=3)
    assert running["next dose"].value == date(2026, 11, 24)
    assert running["last day for nitrogen"].value == date(2027, 1, 1)
    assert figures(**TREE)["last day for nitrogen"].value == date(2027, 7, 1)
    assert figures(**COUCH)["last day for nitrogen"].value == date(2027, 8, 15)
    assert figures(SOUTH, **COUCH)["last day for nitrogen"].value == date(2027, 2, 15)
    assert "last day for nitrogen" not in figures(**LAWN_3)
    assert figures(today=date(2027, 4, 12), **TREE, doses=2)["next dose"].value == date(2027, 4, 12)


# -- in water --


def test_cans_sprayer_and_stock() -> None:
    """Worked by hand: 200 ppm from 20 % is 1 g/L; 20 pots of 1.5 L are 30 L: 4 cans of 9 L, the last holds 3 L."""
    found = figures(
        **POTS, feed_strength_ppm=200.0, each_plant_l=1.5, plant_count=20, can_l=9.0, sprayer_l=5.0, injector=100.0
    )
    assert found["grams a litre"].value == pytest.approx(1)
    assert found["feed needed"].value == 30
    assert found["grams a can"].value == pytest.approx(9)
    assert found["can fills"].value == 4
    assert found["can fills"].working[1] == "the last holds 3 L"
    assert found["grams a sprayer"].value == pytest.approx(5)
    assert found["sprayer fills"].value == 6
    assert found["stock mix"].value == pytest.approx(100)
    assert found["stock needed"].value == pytest.approx(0.3)


def test_concentrate_and_drench() -> None:
    """Worked by hand: 10 mL/L in a 9 L can is 90 mL; 2 L/m² on 12 m² is 24 L."""
    bed = {**BARE, "kind": "bed", "analysis": "5-3-8", "concentrate_ml_per_l": 10.0, "can_l": 9.0, "area_m2": 12.0}
    found = figures(**bed, drench_l_per_m2=2.0)
    assert found["concentrate a can"].value == 90
    assert found["feed needed"].value == 24
    assert figures(**bed, mixed_feed_l=40.0)["can fills"].value == 5


def test_a_mix_without_an_end_has_no_fills() -> None:
    found = figures(**POTS, mix_g_per_l=1.0, can_l=9.0, injector=100.0)
    assert found["grams a can"].value == pytest.approx(9)
    assert found["stock mix"].value == pytest.approx(100)
    assert not {"feed needed", "can fills", "stock needed", "year product"} & set(found)


# -- the cost --


def test_the_cost_of_a_lawn() -> None:
    """Worked by hand: 140 m² x 30 g/m² x 3 is 12.6 kg: 0.63 of a 20 kg bag at 40, 25.20; N at 20.00 a kg."""
    found = figures(Crew(currency="€"), **LAWN_3, area_m2=140.0, doses=3, bag_kg=20.0, bag_price="€40")
    assert found["year product"].value == pytest.approx(12.6)
    assert found["bags a year"].value == 1
    assert found["cost a year"].value == "€25.20"
    assert found["price of nitrogen"].value == "€20.00"


def test_a_price_without_an_amount_still_prices_the_nitrogen() -> None:
    """Worked by hand: 10 kg of 8 % N at 24 is 30 a kilogram; a bag without N has no such price."""
    bag: dict[str, Any] = {**LAWN, "bag_kg": 10.0, "bag_price": "24"}
    alone = figures(**{**bag, "analysis": "8-4-10"})
    assert alone["price of nitrogen"].value == "$30.00"
    assert "cost a year" not in alone
    assert "price of nitrogen" not in figures(**{**bag, "analysis": "0-0-50"})


def test_the_cost_of_trees_and_pots() -> None:
    """Worked by hand: 2 trees at 1071.5 g; 30 L at 1 g/L, 8 times, is 0.24 kg."""
    assert value("year product", **TREE, tree_count=2) == pytest.approx(2.143, abs=0.0005)
    assert value("year product", **POTS, feed_strength_ppm=200.0, mixed_feed_l=30.0, doses=8) == pytest.approx(0.24)


# -- all of them --


def test_a_starter_has_six_figures_and_more() -> None:
    found = figures()
    assert len(found) >= 6
    assert [name for name, figure in found.items() if figure.headline] == ["dose", "next dose"]
    assert figures(analysis="general") == {}


@given(given=MEASURES, crew=st.sampled_from((NORTH, SOUTH)), today=st.dates(date(2024, 1, 1), date(2032, 12, 31)))
def test_no_measures_crash_and_every_figure_works(given: dict[str, Any], crew: Crew, today: date) -> None:
    for figure in figures_of(made(None, crew, **BARE | given), FAMILY, today):
        assert figure.working
        assert figure.references
        assert shown(figure, Reader())
        if figure.table is not None:
            assert {len(row) for row in figure.table.rows} == {len(figure.table.columns)}


@given(area=st.floats(1, 5_000), rate=st.floats(0.1, 4.9))
def test_double_the_area_costs_double(area: float, rate: float) -> None:
    bag: dict[str, Any] = {"bag_kg": 20.0, "nutrient_rate_g_per_m2": rate}
    once, twice = (value("year product", **LAWN, **bag, area_m2=each) for each in (area, 2 * area))
    assert twice == pytest.approx(2 * once)
