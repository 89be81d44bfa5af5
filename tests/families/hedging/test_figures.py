from datetime import date
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from howto.families.hedging import FAMILY
from howto.families.hedging.figures import figures
from howto.model.crew import Crew
from howto.model.figure import Figure
from howto.model.plants import Plant, PlantBook
from howto.model.work import AnyWork
from tests.support.builders import technique
from tests.support.cases import book
from tests.support.told import told, told_figure

JUNE = date(2026, 6, 10)
FEBRUARY = date(2026, 2, 20)


def worked(*plants: str, today: date = JUNE, crew: Crew | None = None, **measures: Any) -> dict[str, Figure]:
    return figured(technique(FAMILY, {"plants": plants}, book=book(), crew=crew, **measures), today)


def figured(work: AnyWork, today: date) -> dict[str, Figure]:
    """Return the figures of a hedge by name, as they are told."""
    return {figure.name: told_figure(figure) for figure in figures(work, today)}


def young(*plants: str, **measures: Any) -> dict[str, Figure]:
    start = {
        "job": "thicken",
        "finished_height_mm": 1400.0,
        "standing_height_mm": 900.0,
        "cut_height_mm": 600.0,
        "last_cut_height_mm": 300.0,
        "year": 2,
        "shoots": 4,
        "growth_mm_per_year": 450.0,
        "cut_back_percent": 50.0,
        "today": FEBRUARY,
    }
    return worked(*plants, **{**start, **measures})


def test_h57_the_taper_is_worked_with_a_pencil() -> None:
    # H57: gardening site, Shaping hedges [C]; 0.1 degree
    found = worked(base_width_mm=800.0, top_width_mm=600.0, finished_height_mm=1800.0, standing_height_mm=None)
    assert found["advised base"].value == pytest.approx(800)
    assert found["in each side"].value == 100
    assert found["side angle"].value == pytest.approx(3.2, abs=0.1)
    assert found["side angle"].working == ("(800 - 600) / (2 x 1800) = 0.0556", "atan 0.0556 = 3.18°")
    assert found["width at each height"].table is not None
    assert found["width at each height"].table.rows[0] == (0.0, 800.0, 0.0)
    assert found["width at each height"].table.rows[-1] == (1800, 600.0, 100.0)


def test_h42_plants_for_ten_metres() -> None:
    # H42: UK Government, BN11 Planting new hedges [A]; exact
    found = worked(spacing_mm=1000 / 3, rows=2, hedge_length_m=10.0)
    assert found["plants a metre"].value == pytest.approx(6)
    assert found["plants needed"].value == 60
    assert found["plant to plant"].value == pytest.approx(433.3, abs=0.1)


def test_h60_the_first_face_of_a_renovation() -> None:
    # H60: Royal Horticultural Society, Hedges: renovation [A]; 1.2 m wanted at 0.8 m, 150 mm inside the new line
    found = worked(job="renovate", standing_base_width_mm=1200.0, base_width_mm=800.0)
    assert found["width to lose"].value == 400
    assert "400 / 1200 = 33.3 % of the width" in found["width to lose"].working
    assert found["first face"].value == 350
    assert "the other face is trimmed as usual this year, and cut the same way next year" in found["first face"].working


def test_h61_plants_a_metre_and_no_row_gap_for_a_single_row() -> None:
    # H61: hedge nursery, planting guide [C]; 0.2
    assert worked(spacing_mm=400.0, rows=2)["plants a metre"].value == pytest.approx(5, abs=0.2)
    single = worked(spacing_mm=750.0)
    assert single["plants a metre"].value == pytest.approx(1.3, abs=0.2)
    assert "plant to plant" not in single
    assert "plants needed" not in single


def test_the_cut_and_the_share_of_the_height() -> None:
    # common practice, no source: 300 mm off the top is a third of 900 mm
    found = young("privet")
    assert found["off the top"].value == 300
    assert found["off the top"].headline
    assert found["share of the height"].value == pytest.approx(33.333, abs=0.001)


def test_a_young_hedge_rises_by_half_its_growth_and_doubles_its_shoots() -> None:
    found = young("privet")
    assert found["height gained"].value == 225
    assert found["cuts to finished height"].value == 3
    assert found["seasons to finished height"].value == 3
    assert found["finished height reached"].value == date(2029, 2, 1)
    shoots = found["shoots on a plant"]
    assert shoots.value == 64
    assert shoots.table is not None
    assert shoots.table.rows == (
        (date(2026, 2, 20), 900.0, 600.0, 8.0),
        (date(2027, 2, 1), 1050.0, 825.0, 16.0),
        (date(2028, 2, 1), 1275.0, 1050.0, 32.0),
        (date(2029, 2, 1), 1500.0, 1400.0, 64.0),
    )
    assert shoots.working[-1] == "4 cuts: 4 x 2 x 2 x 2 x 2 = 64"


def test_a_hedge_that_just_reaches_its_line_is_not_cut_there() -> None:
    found = young("privet", finished_height_mm=1500.0)
    assert found["shoots on a plant"].value == 32
    assert found["shoots on a plant"].working[-1] == "3 cuts: 4 x 2 x 2 x 2 = 32"


def test_a_hedge_that_was_not_topped_today_doubles_only_later() -> None:
    found = young("privet", standing_height_mm=None, finished_height_mm=700.0)
    assert found["shoots on a plant"].value == 8
    assert "off the top" not in found


def test_a_hedge_that_is_never_cut_on_its_way_keeps_its_shoots() -> None:
    found = young("privet", standing_height_mm=None, finished_height_mm=1050.0)
    assert found["shoots on a plant"].working[-1] == "0 cuts: 4 = 4"


def test_a_hedge_cut_back_to_nothing_has_no_rise() -> None:
    found = young("privet", finished_height_mm=600.0)
    assert "shoots on a plant" not in found
    assert found["height gained"].value == 225


def test_a_rise_over_24_cuts_is_not_planned() -> None:
    assert "shoots on a plant" in young("privet", finished_height_mm=600.0 + 24 * 225)
    found = young("privet", finished_height_mm=601.0 + 24 * 225)
    assert "shoots on a plant" not in found
    assert found["height gained"].value == 225


def test_young_stocky_hedges_are_cut_bare_and_hornbeam_before_it_bleeds() -> None:
    # RHS, Hedge trimming (profile 353) [A]: second winter; RHS, Bleeding from pruning cuts [A]: not from mid-winter
    assert young("beech", today=date(2026, 10, 1), growth_mm_per_year=None)["next cut"].value == date(2027, 12, 1)
    assert young("hornbeam", today=date(2026, 10, 1))["next cut"].value == date(2027, 11, 1)


def test_a_plant_of_which_only_the_name_is_known_waits_for_no_month() -> None:
    bare = PlantBook(plants=(Plant(botanical="Quercus ignota", kind="deciduous"),))
    made = technique(FAMILY, {"plants": ("Quercus ignota",)}, book=bare, cuts_a_year=1)
    found = figured(made, date(2026, 2, 28))
    assert found["next cut"].value == date(2026, 10, 31)
    assert found["next cut"].working[0] == "it grows 375 mm in a year, from spring to autumn"


def test_more_cuts_a_year_take_fewer_seasons_than_cuts() -> None:
    found = young("viburnum", cuts_a_year=2)
    assert found["height gained"].value == pytest.approx(112.5)
    assert found["cuts to finished height"].value == 7
    assert found["seasons to finished height"].value == 4


def test_gaps_close_in_whole_seasons() -> None:
    found = young("privet", spacing_mm=300.0, plant_width_mm=180.0, side_growth_mm_per_year=50.0)
    assert found["seasons to close"].value == 2
    assert found["seasons to close"].working[1] == "two neighbours at 50 mm a side each: 120 / (2 x 50) = 1.2"
    half = young("privet", spacing_mm=1200.0, plant_width_mm=180.0)
    assert half["seasons to close"].value == 3  # 225 mm a side, half of the top's growth


def test_staged_cuts_have_heights_and_dates() -> None:
    found = worked("hornbeam", job="renovate", standing_height_mm=2700.0, finished_height_mm=1000.0)
    staged = found["staged cuts"]
    assert staged.table is not None
    assert [row[0] for row in staged.table.rows] == [date(2026, 11, 1), date(2027, 11, 1), date(2028, 11, 1)]
    assert [row[1] for row in staged.table.rows] == [pytest.approx(1800), pytest.approx(1200), 1000]
    assert [row[2] for row in staged.table.rows] == [
        pytest.approx(33.33, abs=0.01),
        pytest.approx(33.33, abs=0.01),
        pytest.approx(16.67, abs=0.01),
    ]
    assert "cut 1: 2700 x 2/3 = 1800 mm" in staged.working
    assert "staged cuts" not in worked("hornbeam")


def test_stages_of_an_unknown_plant_start_today() -> None:
    found = worked(standing_height_mm=2700.0, finished_height_mm=1000.0, today=date(2028, 2, 29))
    assert found["staged cuts"].table is not None
    assert [row[0] for row in found["staged cuts"].table.rows] == [
        date(2028, 2, 29),
        date(2029, 2, 28),
        date(2030, 2, 28),
    ]


def test_the_canopy_removed_is_the_share_of_the_section() -> None:
    found = worked()
    assert found["canopy removed"].value == pytest.approx(21.633, abs=0.001)
    assert found["canopy removed"].working[0] == "stands: (800 + 600) / 2 x 1750 = 1.23 m²"
    assert "canopy removed" not in worked(standing_top_width_mm=None)


def test_the_line_stands_10_mm_below_the_finished_height() -> None:
    # a consumer association [C]
    assert worked()["string line"].value == 1590
    assert "string line" not in worked(finished_height_mm=10.0, standing_height_mm=None)


def test_face_and_time() -> None:
    found = worked(hedge_length_m=10.0)
    assert found["face to trim"].value == pytest.approx(37.06, abs=0.01)
    assert found["trimming time"].value == pytest.approx(55.6, abs=0.1)


@pytest.mark.parametrize(
    ("plant", "cuts", "today", "due"),
    [
        ("hornbeam", 2, date(2026, 6, 10), date(2026, 8, 1)),  # June and August: RHS, profile 353 [A]
        ("hornbeam", 2, date(2026, 8, 10), date(2027, 6, 1)),
        ("hornbeam", 2, date(2026, 12, 31), date(2027, 6, 1)),
        ("yew", 1, date(2026, 9, 1), date(2027, 9, 1)),
        ("unknown", 1, date(2026, 2, 28), date(2026, 10, 31)),
    ],
)
def test_the_next_cut_waits_for_growth_and_for_a_month_of_the_plant(
    plant: str, cuts: int, today: date, due: date
) -> None:
    found = worked(plant, cuts_a_year=cuts, today=today, growth_mm_per_year=245.0 if plant == "unknown" else None)
    assert found["next cut"].value == due


def test_the_next_cut_answers_to_what_came_off_where_no_count_is_written() -> None:
    # 245 mm a year over the 245 days from March to October is 1 mm a day; 150 mm came off
    found = worked("unknown", growth_mm_per_year=245.0, today=date(2026, 3, 1))
    assert found["next cut"].value == date(2026, 7, 29)
    none_off = worked("unknown", growth_mm_per_year=245.0, standing_height_mm=None, today=date(2026, 3, 1))
    assert none_off["next cut"].value == date(2026, 5, 22)


def test_a_southern_crew_waits_for_southern_months() -> None:
    south = Crew(hemisphere="south")
    found = worked("hornbeam", cuts_a_year=2, today=date(2026, 12, 5), crew=south)
    assert found["next cut"].value == date(2027, 2, 1)


def test_growth_comes_from_the_author_the_book_or_the_nurseries() -> None:
    def said(*plants: str, **measures: Any) -> str:
        return str(worked(*plants, **measures)["next cut"].references[0])

    assert said("laurel", growth_mm_per_year=500.0) == "as measured by the crew"
    assert "growth of Prunus laurocerasus" in said("laurel")
    assert said("unknown") == "two hedge nurseries, Most hedge plants grow 300 to 450 mm a year"


def test_every_figure_has_working_and_a_source() -> None:
    everything = {
        **young("privet", spacing_mm=300.0, plant_width_mm=100.0, hedge_length_m=9.0, rows=2),
        **worked(job="renovate"),
    }
    assert len(everything) >= 20
    for figure in everything.values():
        assert figure.working
        assert all(line.strip() for line in figure.working)
        assert figure.references
    for found in (young("privet"), worked("hornbeam"), worked(job="renovate")):
        assert 2 <= sum(figure.headline for figure in found.values()) <= 4


@given(
    job=st.sampled_from(["thicken", "trim", "renovate"]),
    plant=st.sampled_from(["hornbeam", "privet", "yew", "leylandii", "laurel", "nothing known"]),
    optional=st.fixed_dictionaries(
        {},
        optional={
            "standing_height_mm": st.floats(100, 15_000),
            "cut_height_mm": st.floats(10, 15_000),
            "last_cut_height_mm": st.floats(10, 15_000),
            "base_width_mm": st.floats(15, 5_000),
            "top_width_mm": st.floats(10, 5_000),
            "standing_base_width_mm": st.floats(50, 8_000),
            "standing_top_width_mm": st.floats(50, 8_000),
            "year": st.integers(1, 30),
            "cut_back_percent": st.floats(0, 99),
            "cuts_a_year": st.integers(1, 12),
            "shoots": st.integers(1, 500),
            "growth_mm_per_year": st.floats(0.01, 5_000),
            "spacing_mm": st.floats(10, 5_000),
            "plant_width_mm": st.floats(1, 5_000),
            "rows": st.integers(1, 3),
            "hedge_length_m": st.floats(0.01, 1_000),
            "faces": st.integers(1, 2),
        },
    ),
)
def test_no_valid_measures_break_figures_rules_or_drawings(job: str, plant: str, optional: dict[str, Any]) -> None:
    bare = dict.fromkeys(
        ("base_width_mm", "top_width_mm", "standing_base_width_mm", "standing_top_width_mm", "standing_height_mm")
    )
    made = technique(FAMILY, {"plants": (plant,)}, book=book(), **{**bare, "job": job, **optional})
    found = list(figures(made, JUNE))
    names = [figure.name for figure in found]
    assert len(names) == len(set(names))
    for rule in FAMILY.rules:
        assert rule.check is not None
        for breach in rule.check(made):
            assert breach.edit is not None
    for drawing in FAMILY.drawings(made, JUNE):
        assert len(told(drawing.alt)) <= 250
        assert drawing.shapes
