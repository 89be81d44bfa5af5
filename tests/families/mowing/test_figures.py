"""The figures of a lawn: their values on worked examples, their working, and that none ever fails."""

from datetime import date
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from howto.families.mowing import FAMILY
from howto.families.mowing.figures import figures
from howto.families.mowing.lawn import in_range, inside, way_down
from howto.model.figure import Figure
from howto.model.plants import Grass, Mowing, PlantBook
from howto.model.reference import Grade
from tests.support.builders import technique
from tests.support.cases import book
from tests.support.told import told_figure

JUNE = date(2026, 6, 10)
GRASSES = ("couch", "kikuyu", "buffalo", "zoysia", "tall fescue", "dwarf buffalo", "moss", None)
CLIMATES = ("California", "Florida", "Australia", "Australia, sun", "Australia, shade", "Nowhere", None)
MEASURES = st.fixed_dictionaries(
    {"set_height_mm": st.floats(2, 300), "standing_height_mm": st.none() | st.floats(2, 2000)},
    optional={
        "cut_height_mm": st.floats(2, 1334),
        "grass": st.sampled_from(GRASSES),
        "climate": st.sampled_from(CLIMATES),
        "growth_mm_per_day": st.none() | st.floats(0.05, 30),
        "stage_wait_days": st.floats(0, 60),
        "growing_months": st.integers(1, 12),
        "area_m2": st.floats(0.5, 1e6),
        "cutting_width_mm": st.floats(100, 5000),
        "walking_speed_km_per_h": st.floats(0.5, 20),
        "turf_age_weeks": st.floats(0, 520),
        "shade": st.booleans(),
        "drought": st.booleans(),
        "wet": st.booleans(),
    },
)


def worked(known: PlantBook | None = None, **measures: Any) -> dict[str, Figure]:
    """Return the figures of a lawn by name, told to a reader of metric English."""
    made = technique(FAMILY, book=known or book(), **measures)
    return {figure.name: told_figure(figure) for figure in figures(made, JUNE)}


def lawn(**measures: Any) -> dict[str, Figure]:
    """A lawn of which only its set height is known, and what a test is about."""
    return worked(**{"standing_height_mm": None, "growth_mm_per_day": None, **measures})


@pytest.mark.parametrize(
    ("grass", "climate", "set_in", "mow_in"),
    [
        # H1 to H4: University of California Statewide IPM Program, mowing warm-season grasses, 2017 [A], and
        # NC Cooperative Extension, Lee County, 2015 [A]; tolerance 0
        ("kikuyu", "California", 1.0, 1.5),
        ("kikuyu", "California", 1.5, 2.25),
        ("st augustine", "California", 2.0, 3.0),
        ("zoysia", "California", 0.5, 0.75),
        ("seashore paspalum", "California", 0.75, 1.125),
        ("couch", "North Carolina", 1.0, 1.5),
    ],
)
def test_h1_to_h4_mow_when_it_reaches(grass: str, climate: str, set_in: float, mow_in: float) -> None:
    found = lawn(grass=grass, climate=climate, set_height_mm=set_in * 25.4)["mow at"]
    assert found.value == pytest.approx(mow_in * 25.4, abs=1e-9)
    assert found.unit == "mm"
    assert "[A]" not in str(found.references[0])
    assert found.references[0].grade is Grade.A


def test_h5_growth_allowed_is_half_the_set_height() -> None:
    # H5: Cornell University [A]: 1.5 in is due after 0.75 in
    found = lawn(set_height_mm=38.1, growth_mm_per_day=19.05)
    assert found["days between cuts"].value == pytest.approx(1)
    assert found["days between cuts"].working == ("(57.15 - 38.1) mm / 19.1 mm a day = 1 day",)


def test_h6_six_inches_down_to_three() -> None:
    # H6: a general lawn page [C]: the first cut leaves 4 in; 2 cuts
    found = lawn(set_height_mm=76.2, standing_height_mm=152.4)
    assert found["today's cut"].value == pytest.approx(101.6)
    assert found["cuts to come down"].value == 2
    table = found["cuts to come down"].table
    assert table is not None
    assert [row[3] for row in table.rows] == pytest.approx([101.6, 76.2])


def test_h7_the_way_down_is_worked_cut_by_cut() -> None:
    # H7: derived from the University of California guide [A]: 150 to 50 mm in 100, 66.7, 50; 0.1 mm
    found = lawn(set_height_mm=50.0, standing_height_mm=150.0)
    staged = found["cuts to come down"]
    assert staged.value == 3
    rows: Any = staged.table and staged.table.rows
    assert rows == (
        ("cut 1", date(2026, 6, 10), 150, pytest.approx(100)),
        ("cut 2", date(2026, 6, 13), pytest.approx(100), pytest.approx(66.7, abs=0.1)),
        ("cut 3", date(2026, 6, 16), pytest.approx(66.7, abs=0.1), 50),
    )
    assert staged.working == (
        "growth left out: ln(150 / 50) / ln 1.5 = 2.71, rounded up = 3 cuts",
        "3 days between two cuts; write `growth` to count what grows back in them",
        "cut 1: 150 x 2/3 = 100 mm",
        "cut 2: 100 x 2/3 = 66.67 mm",
        "cut 3: 66.67 x 2/3 = 44.44 mm; cut to 50 mm",
    )
    assert found["next cut"].value == date(2026, 6, 13)
    assert found["next cut"].working[0] == "on the way down, 3 days between two cuts"


def test_h7_120_to_30_takes_four() -> None:
    assert lawn(set_height_mm=30.0, standing_height_mm=120.0)["cuts to come down"].value == 4


def test_h8_days_between_cuts() -> None:
    # H8: derived from the same guide [A]: 30 mm at 3 mm a day, every 5 days, mown at 45 mm
    found = lawn(set_height_mm=30.0, growth_mm_per_day=3.0)
    assert found["days between cuts"].value == pytest.approx(5)
    assert found["days between cuts"].working == ("(45 - 30) mm / 3 mm a day = 5 days",)
    assert found["mow at"].value == pytest.approx(45)
    assert found["next cut"].value == date(2026, 6, 15)
    assert found["cuts a season"].value == 49  # 243.5 / 5 = 48.7


def test_what_grows_back_is_counted_where_it_was_written() -> None:
    # worked by hand: 12 mm in 3 days; 100, 74.7, 57.8, 50: four cuts and not three
    found = lawn(set_height_mm=50.0, standing_height_mm=150.0, growth_mm_per_day=4.0)["cuts to come down"]
    assert found.value == 4
    assert found.working == (
        "growth left out: ln(150 / 50) / ln 1.5 = 2.71, rounded up = 3 cuts",
        "4 mm a day x 3 days = 12 mm grows back between two cuts",
        "cut 1: 150 x 2/3 = 100 mm",
        "cut 2: (100 + 12) x 2/3 = 74.67 mm",
        "cut 3: (74.67 + 12) x 2/3 = 57.78 mm",
        "cut 4: (57.78 + 12) x 2/3 = 46.52 mm; cut to 50 mm",
    )
    assert found.table is not None
    assert [row[2] for row in found.table.rows] == pytest.approx([150, 112, 86.7, 69.8], abs=0.1)


def test_growth_that_never_lets_it_come_down_is_left_out_and_said() -> None:
    found = lawn(set_height_mm=50.0, standing_height_mm=150.0, growth_mm_per_day=10.0)["cuts to come down"]
    assert found.value == 3
    assert found.working[1] == (
        "10 mm a day x 3 days = 30 mm grows back between two cuts, half of 50 mm or more: it would never come down, "
        "so it is left out"
    )


def test_todays_cut_as_written_begins_the_way_down() -> None:
    found = lawn(set_height_mm=50.0, standing_height_mm=150.0, cut_height_mm=120.0, stage_wait_days=2.5)
    assert found["today's cut"].value == 120
    assert found["today's cut"].working[1] == "cut to 120 mm: (150 - 120) / 150 = 20 % off"
    rows: Any = found["cuts to come down"].table and found["cuts to come down"].table.rows
    assert [row[3] for row in rows] == pytest.approx([120, 80, 53.3, 50], abs=0.1)
    assert [row[1].day for row in rows] == [10, 13, 15, 18]
    assert found["cuts to come down"].working[2] == "cut 1: 150 x 2/3 = 100 mm; cut to 120 mm"


def test_a_cut_deeper_than_a_third_is_not_planned_on() -> None:
    # the rule calls it out; the way down shown is one that keeps it
    found = lawn(set_height_mm=50.0, standing_height_mm=150.0, cut_height_mm=60.0)
    rows: Any = found["cuts to come down"].table and found["cuts to come down"].table.rows
    assert [row[3] for row in rows] == pytest.approx([100, 66.7, 50], abs=0.1)


def test_a_lawn_in_reach_needs_no_stages() -> None:
    found = lawn(set_height_mm=60.0, standing_height_mm=88.0)
    assert "cuts to come down" not in found
    assert found["today's cut"].working == (
        "stands 88 mm; a third is 29.33 mm, so no lower than 58.67 mm",
        "cut to 60 mm: (88 - 60) / 88 = 31.8 % off",
    )


def test_a_lawn_left_higher_is_due_sooner() -> None:
    # worked by hand: from 70 to 90 mm at 4 mm a day is 5 days, not the 7.5 from 60 mm
    found = lawn(set_height_mm=60.0, standing_height_mm=75.0, cut_height_mm=70.0, growth_mm_per_day=4.0)
    assert found["days between cuts"].value == pytest.approx(7.5)
    assert found["cuts to come down"].value == 2
    low = lawn(set_height_mm=60.0, standing_height_mm=50.0, growth_mm_per_day=4.0)
    assert low["next cut"].working == (
        "from 50 mm to 90 mm at 4 mm a day: 10 days",
        "2026-06-10 + 10 days = 2026-06-20",
    )
    assert low["today's cut"].working[1] == "cut to 60 mm: it stands no higher, so nothing comes off"


def test_a_lawn_due_tomorrow_at_the_soonest() -> None:
    found = lawn(set_height_mm=10.0, growth_mm_per_day=30.0)
    assert found["next cut"].value == date(2026, 6, 11)
    assert found["next cut"].working[1] == "2026-06-10 + 1 day = 2026-06-11"
    assert found["cuts a season"].working == ("8 months x 30.44 days / 1 day = 244, rounded up",)


@pytest.mark.parametrize(
    ("measures", "growth", "source"),
    [
        ({"growth_mm_per_day": 5.0}, "5 mm a day", "as measured by the crew"),
        ({"grass": "kikuyu", "climate": "California"}, "5 mm a day", "from memory: growth of Cenchrus clandestinus"),
        ({"grass": "moss"}, "4 mm a day", "from memory: a fed summer lawn grows about 2 to 6 mm a day"),
        ({}, "4 mm a day", "from memory: a fed summer lawn grows about 2 to 6 mm a day"),
    ],
)
def test_growth_is_the_crews_the_books_or_from_memory(measures: dict[str, Any], growth: str, source: str) -> None:
    found = lawn(**measures)["days between cuts"]
    assert growth in found.working[0]
    assert str(found.references[-1]) == source


def test_a_grass_of_which_nobody_knows_the_growth() -> None:
    row = Mowing(climate="here", low_mm=40, high_mm=60, source="a book", grade=Grade.C)
    bare = PlantBook(grasses=(Grass(botanical="Herba ignota", season="cool", mowing=(row,)),))
    found = lawn(known=bare, grass="Herba ignota")
    assert "/ 4 mm a day" in found["days between cuts"].working[0]


def test_months_of_a_season() -> None:
    found = lawn(growing_months=1, growth_mm_per_day=4.0)["cuts a season"]
    assert found.working == ("1 month x 30.44 days / 7.5 days = 4.06, rounded up",)
    assert found.value == 5
    assert len(found.references) == 1
    assert len(lawn()["cuts a season"].references) == 2


# -- shade and drought --


@pytest.mark.parametrize(
    ("measures", "height", "said"),
    [
        # a lawn care trader [C]: raise by 13 to 25 mm in shade
        (
            {"grass": "tall fescue", "climate": "Oregon", "set_height_mm": 51.0},
            63.8,
            "50.8 mm, the bottom of the range",
        ),
        ({"grass": "kikuyu", "climate": "California", "set_height_mm": 30.0}, 38.1, "no higher than 38.1 mm, its top"),
        ({"grass": "tall fescue", "climate": "Oregon", "set_height_mm": 70.0}, 70.0, "so 70 mm"),
        (
            {"grass": "buffalo", "climate": "Australia, sun", "set_height_mm": 40.0},
            50.0,
            "range in shade starts at 50 mm",
        ),
        ({"grass": "buffalo", "climate": "Australia, shade", "set_height_mm": 55.0}, 55.0, "starts at 50 mm"),
    ],
)
def test_shade_raises_the_cut(measures: dict[str, Any], height: float, said: str) -> None:
    found = lawn(shade=True, **measures)["raised height"]
    assert found.value == pytest.approx(height)
    assert said in found.working[0]
    assert "a lawn care trader" in str(found.references[0])


def test_drought_asks_for_the_top_of_the_range() -> None:
    # University of California Statewide IPM Program, special attention when mowing, 2017 [A]
    found = lawn(drought=True, shade=True, grass="tall fescue", climate="Oregon", set_height_mm=60.0)["raised height"]
    assert found.value == pytest.approx(76.2)
    assert found.working == ("short of water: 76.2 mm, the top of the range; kept at 60 mm, so 76.2 mm",)


def test_no_height_is_raised_without_a_range_or_a_reason() -> None:
    assert "raised height" not in lawn(shade=True)
    assert "raised height" not in lawn(drought=True, grass="tall fescue")
    assert "raised height" not in lawn(shade=False, grass="tall fescue", climate="Oregon")


# -- area, time and turf --


def test_clippings_and_time() -> None:
    found = lawn(
        set_height_mm=60.0, standing_height_mm=90.0, area_m2=100.0, cutting_width_mm=500.0, walking_speed_km_per_h=3.0
    )
    assert found["clippings"].value == pytest.approx(90)
    assert found["clippings"].working == ("100 m² x 30 mm x 0.03 = 90 L",)
    assert found["mowing time"].value == pytest.approx(4.444, abs=0.001)
    assert found["mowing time"].working == (
        "100 m² / (0.5 m x 0.9, a tenth mown twice) = 222 m walked",
        "at 3 km/h, 50 m a minute: 4.44 min, turns left out",
    )
    assert "mowing time" not in lawn(area_m2=100.0)
    assert not {"clippings", "mowing time"} & set(lawn(cutting_width_mm=500.0))
    assert lawn(set_height_mm=60.0, standing_height_mm=50.0, area_m2=100.0)["clippings"].value == 0


def test_new_turf_is_cut_when_it_has_rooted() -> None:
    found = lawn(turf_age_weeks=1.5)["first cut of new turf"]
    assert found.value == date(2026, 6, 21)
    assert found.working == ("3 weeks to root - 1.5 weeks laid, from 2026-06-10",)
    assert "first cut of new turf" not in lawn(turf_age_weeks=3.0)


def test_headlines_and_what_a_client_can_use() -> None:
    found = worked(
        set_height_mm=50.0, standing_height_mm=150.0, area_m2=90.0, drought=True, grass="tall fescue", climate="Oregon",
        turf_age_weeks=1.0,
    )  # fmt: skip
    assert {name for name, figure in found.items() if figure.headline} == {"today's cut", "cuts to come down"}
    assert {name for name, figure in worked().items() if figure.headline} == {"mow at", "today's cut"}
    assert {name for name, figure in found.items() if figure.client} == {
        "mow at", "cuts to come down", "days between cuts", "next cut", "raised height", "first cut of new turf",
    }  # fmt: skip
    assert len(found) >= 6


# -- what must hold --


@given(measures=MEASURES)
def test_no_measures_break_the_figures(measures: dict[str, Any]) -> None:
    found = worked(**measures)
    assert len(found) >= 5
    for figure in found.values():
        assert figure.working
        assert figure.references
        assert all("nan" not in line and "inf" not in line for line in figure.working)


@given(measures=MEASURES)
def test_the_way_down_keeps_the_one_third_rule(measures: dict[str, Any]) -> None:
    m = technique(FAMILY, **measures).measures
    down = way_down(m)
    before = m.standing_height_mm or m.set_height_mm * 1.5
    for height in down.heights:
        assert height >= before * 2 / 3 - 1e-6
        before = height + down.between_mm
    if down.heights:
        assert down.heights[-1] == pytest.approx(m.set_height_mm, abs=1e-5)


def test_every_range_of_the_book_holds_a_whole_millimetre() -> None:
    for grass in book().grasses:
        for row in grass.mowing:
            assert in_range(row, inside(row, 0))
            assert in_range(row, inside(row, 500))
