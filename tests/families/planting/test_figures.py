from datetime import date
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from howto.families.planting import FAMILY
from howto.families.planting.figures import figures
from howto.languages.reader import Reader
from howto.model.crew import Climate, Crew
from howto.model.figure import Figure
from howto.model.plants import Fact, Plant, PlantBook
from howto.model.reference import Grade
from howto.model.shown import shown
from tests.support.builders import technique
from tests.support.cases import book
from tests.support.told import told_figure

TODAY = date(2026, 3, 1)
EMPTY: dict[str, Any] = {"pattern": None, "spacing_mm": None, "area_m2": None}
HOT = Climate(
    max_c=(30.0,) * 12,
    min_c=(20.0,) * 12,
    humidity_percent=(60.0,) * 12,
    wind_m_per_s=(2.0,) * 12,
    sunshine_hours=(8.0,) * 12,
)


def worked(
    *plants: str, crew: Crew | None = None, plant_book: PlantBook | None = None, **given: Any
) -> dict[str, Figure]:
    made = technique(FAMILY, {"plants": plants}, crew=crew, book=plant_book or book(), **{**EMPTY, **given})
    return {figure.name: told_figure(figure) for figure in figures(made, TODAY)}


def tree(**given: Any) -> dict[str, Figure]:
    return worked(**{"work": "tree", **given})


def words(figure: Figure, units: Any = "metric") -> str:
    return shown(figure, Reader(units=units)).replace("\u00a0", " ")


# -- the hole --


def test_the_hole_is_worked_from_the_topmost_root() -> None:
    # University of Florida IFAS, ENH856 [A]: 10 % less than topmost root to base
    found = tree(ball_width_mm=420.0, ball_depth_mm=350.0, first_root_mm=30.0)
    assert found["dig to"].value == pytest.approx(288)
    assert found["dig to"].working == (
        "topmost root to base: 350 - 30 = 320 mm",
        "320 × (1 - 0.1) = 288 mm, never deeper than the ball",
    )
    assert found["root above ground"].value == pytest.approx(32)
    assert found["root above ground"].working == ("320 - 288 = 32 mm; 25 to 50 mm is right",)
    assert found["least hole"].value == 630
    assert found["wide hole"].value == 1260
    # by hand: π × 2.88 / 12 × (12.6² + 12.6 × 4.2 + 4.2²) dm³
    assert found["soil out"].value == pytest.approx(172.903, abs=0.001)


def test_poor_drainage_raises_the_whole_ball_by_a_tenth() -> None:
    # IFAS, ENH856 [A]: 10 % or more of its depth above grade
    found = tree(ball_width_mm=420.0, ball_depth_mm=400.0, first_root_mm=50.0, drainage="poor")
    assert found["dig to"].value == pytest.approx(310)
    assert found["dig to"].working[-1] == "poor drainage: 350 - a tenth of the ball, 40 = 310 mm"
    assert found["root above ground"].working == ("350 - 310 = 40 mm; at least 40 mm is right",)


def test_bare_roots_stand_level_with_the_ground() -> None:
    found = tree(stock="bare root", ball_width_mm=500.0, ball_depth_mm=300.0)
    assert found["dig to"].value == 300
    assert "root above ground" not in found
    assert found["planting months"].value == "November to March"
    assert found["planting months"].references[0].grade is Grade.A


def test_a_hole_that_is_written_tells_how_proud_the_root_stands() -> None:
    found = tree(ball_width_mm=420.0, ball_depth_mm=350.0, first_root_mm=30.0, hole_depth_mm=280.0)
    assert found["root above ground"].value == 40
    assert "root above ground" not in tree(ball_width_mm=420.0, ball_depth_mm=350.0, hole_depth_mm=400.0)


def test_without_a_ball_there_is_no_hole_to_work() -> None:
    assert not {"dig to", "least hole", "soil out"} & set(tree())
    assert "dig to" not in tree(ball_depth_mm=100.0, first_root_mm=100.0)
    assert "soil out" not in tree(ball_width_mm=400.0, ball_depth_mm=300.0, hole_width_mm=300.0)


def test_h47_the_ball_is_weighed() -> None:
    # H47: worked from a tree nursery's ball weights [C]; 5 %
    found = tree(stock="balled", ball_width_mm=914.4, calliper_mm=90.0)
    assert found["ball depth at least"].value == pytest.approx(548.64)
    assert found["weight of the ball"].value == pytest.approx(521.6, rel=0.05)
    assert found["weight of the ball"].working[0] == "π × (914.4 / 2000)² × 548.6 / 1000 = 0.36 m³"
    assert "weight of the ball" not in tree(ball_width_mm=914.4)
    assert tree(ball_weight_kg=80.0)["weight of the ball"].value == 80


def test_a_dug_tree_asks_for_ten_times_its_trunk() -> None:
    # a tree nursery [C]; a city's specification [A] asks 610 mm at 50 to 64 mm
    found = tree(stock="balled", calliper_mm=50.8)
    assert found["ball for this trunk"].value == 508
    assert found["ball for this trunk"].table is not None
    assert found["ball for this trunk"].table.rows[2] == (50.8, 508.0, 609.6)
    assert found["least hole"].value == 762
    assert "ball for this trunk" not in tree(calliper_mm=50.8)


@pytest.mark.parametrize(
    ("calliper", "units", "said"),
    [(30.0, "metric", "150 mm"), (120.0, "metric", "300 mm"), (30.0, "us", "6 in"), (120.0, "uk", "12 in")],
)
def test_where_the_calliper_is_measured(calliper: float, units: Any, said: str) -> None:
    # UF/IFAS Charlotte County, citing Z60.1 [A]
    assert words(tree(crew=Crew(units=units), calliper_mm=calliper)["calliper height"], units) == said


# -- mulch and stakes --


def test_mulch_fills_the_ring_but_for_its_bare_middle() -> None:
    found = tree(calliper_mm=30.0, mulch_width_mm=1200.0, mulch_depth_mm=75.0, trunk_clear_mm=50.0)
    assert found["mulch"].value == pytest.approx(83.8, abs=0.05)
    assert found["mulch"].working[0] == "bare middle: 2 × 50 + 30 = 130 mm"
    assert "mulch" not in tree(mulch_width_mm=100.0, trunk_clear_mm=50.0)
    assert "mulch" not in worked(work="bed", mulch_width_mm=1200.0)


def test_stakes_come_off_after_a_year() -> None:
    # Beatrice Daily Sun [B]: after one growing season; a nursery [C]: no more than 2 years
    found = tree(stands_alone=False, stakes=2, height_mm=2400.0, planted_weeks=4.0)
    assert found["stakes needed"].value == "low, for one growing season"
    assert found["tie at"].value == 800
    assert found["tie at"].references[0].grade is Grade.MEMORY
    assert found["stakes off"].value == date(2027, 2, 1)
    assert found["stakes off"].working[1] == "stakes off by 2027-02-01; none stays past 2028-02-01"


def test_a_tree_that_stands_alone_has_no_stakes() -> None:
    found = tree(stands_alone=True, height_mm=2400.0)
    assert found["stakes needed"].value == "none"
    assert not {"tie at", "stakes off"} & set(found)
    assert not {"tie at", "stakes off", "stakes needed"} & set(tree(height_mm=2400.0))
    assert "stakes off" not in tree(stakes=0, stands_alone=False)
    assert "stakes off" in tree(stakes=1)
    assert "stakes off" not in worked(work="shrub", stakes=1)


# -- water --


def test_h43_water_each_time() -> None:
    # H43: University of Minnesota [A] 7.6 to 11.4 L; UF/IFAS [A] from 15.1 L; 0.1 L
    cool = tree(calliper_mm=50.8)["water each time"]
    assert words(cool) == "7.57 to 11.4 L"
    assert cool.working[0] == "5.08 cm × 1.49 to 2.24 L/cm = 7.57 to 11.4 L"
    assert words(tree(calliper_mm=50.8, summers="warm")["water each time"]) == "15.1 to 22.7 L"


def test_w41_a_shrub_is_watered_by_its_pot() -> None:
    # W41: University of Minnesota Extension [A]; exact
    found = worked(work="shrub", pot_l=10.0)
    assert words(found["water each time"]) == "2.5 to 3 L"
    assert "water a week" not in found
    assert "water on the day" not in found
    assert "water each time" not in worked(work="shrub")


def test_water_on_the_day_and_in_a_week() -> None:
    # UF/IFAS Okeechobee County [A]; Georgia Forestry Commission [A]; eXtension [A]
    found = tree(calliper_mm=30.0)
    assert words(found["water on the day"]) == "37.9 to 75.7 L"
    assert words(found["water a week"]) == "22.4 to 33.5 L"
    assert found["water a week"].working[1] == "in a dry summer as much as 3 × 14.9 = 44.7 L"


def test_w42_the_dates_of_the_first_year() -> None:
    # W42: 37 to 49 waterings in 12 weeks; 1
    found = tree(calliper_mm=30.0)["watering now"]
    assert found.value == "every day"
    assert found.working[-1] == "in the first 12 weeks 37.3 to 49 waterings"
    assert found.table is not None
    assert [row[:3] for row in found.table.rows] == [
        (date(2026, 3, 1), date(2026, 3, 14), "day"),
        (date(2026, 3, 15), date(2026, 5, 23), "2 to 3 days"),
        (date(2026, 5, 24), date(2027, 2, 28), "week"),
    ]
    assert tree(calliper_mm=30.0, planted_weeks=3.0)["watering now"].value == "every 2 to 3 days"
    assert tree(calliper_mm=30.0, planted_weeks=500.0)["watering now"].value == "every week"


def test_a_warm_tree_is_rooted_by_its_calliper() -> None:
    # UF/IFAS, ENH857 [A]: 3 to 4 months an inch, a container 1 to 2 more
    dug = tree(calliper_mm=50.8, summers="warm", stock="balled")["rooted by"]
    assert dug.value == date(2026, 10, 30)
    assert dug.working[0] == "2 in × 3 to 4 months an inch = 6 to 8 months"
    pot = tree(calliper_mm=50.8, crew=Crew(climate=HOT))["rooted by"]
    assert pot.value == date(2027, 3, 1)
    assert pot.working[0] == "2 in × 4 to 6 months an inch, 1 to 2 of them for the pot = 8 to 12 months"
    assert "rooted by" not in tree(calliper_mm=50.8)
    assert "rooted by" not in worked(work="shrub", pot_l=10.0, summers="warm")


def test_warm_trees_are_watered_every_other_day() -> None:
    found = tree(calliper_mm=50.8, summers="warm")["watering now"]
    assert found.table is not None
    assert found.table.rows[1][2] == "2 days"


@pytest.mark.parametrize(("hemisphere", "months"), [("north", "November to March"), ("south", "May to September")])
def test_bare_roots_are_planted_in_their_winter(hemisphere: Any, months: str) -> None:
    # UK Government, BN11 [A]: 1 November to 31 March; six months on in the south
    found = tree(stock="bare root", crew=Crew(hemisphere=hemisphere))["planting months"]
    assert found.value == months
    assert tree()["planting months"].value == "autumn or spring"


# -- counts --


def test_h38_a_square_grid_is_counted_up() -> None:
    # H38: a plant nursery's chart [C] shows 26 for 26.4; order 27
    found = worked(work="bed", pattern="square", spacing_mm=457.2, area_m2=5.574182)
    assert found["plants needed"].value == 27
    assert found["order"].value == 27
    assert found["order"].working == ("27, none to spare",)


def test_h40_a_triangular_grid() -> None:
    # H40: worked from geometry; 1 plant
    found = worked(work="bed", pattern="triangle", spacing_mm=304.8, area_m2=9.290304)
    assert found["plants needed"].value == pytest.approx(115.5, abs=1)
    assert found["row to row"].value == pytest.approx(264, abs=0.1)
    assert words(found["row to row"], "us") == "10½ in"  # 10.4, to a quarter


def test_h41_plants_a_square_metre() -> None:
    # H41: 0.36 a square foot
    found = worked(work="bed", pattern="square", spacing_mm=508.0)["plants a square metre"]
    assert words(found, "us") == "0.36/sq ft"


def test_h42_a_double_row() -> None:
    # H42: UK Government, BN11 [A]
    found = worked(work="bed", spacing_mm=1000 / 3, rows=2, row_gap_mm=400.0, row_length_m=10.0)
    assert found["plants needed"].value == 60
    assert found["plants needed"].working == (
        "10000 / 333.3 = 30, rounded up to 30 a row",
        "2 × 30 = 60",
        "the end plants stand 166.7 mm in",
    )
    assert found["plants a metre"].value == pytest.approx(6)
    assert found["plant to plant"].value == pytest.approx(433.3, abs=0.1)


def test_a_single_row_and_a_row_without_a_gap() -> None:
    found = worked(work="bed", spacing_mm=330.0, row_length_m=10.0)
    assert found["plants needed"].value == 31
    assert "plant to plant" not in found
    assert "plant to plant" not in worked(work="bed", pattern="row", spacing_mm=330.0, rows=2)


def test_a_grid_on_the_edge_of_a_bed() -> None:
    found = worked(work="bed", pattern="edge", spacing_mm=500.0, bed_length_m=3.0, bed_width_m=1.2)["plants needed"]
    assert found.value == 21
    assert found.working == (
        "along: 3000 / 500, rounded down, and 1 more = 7",
        "across: 1200 / 500, rounded down, and 1 more = 3",
        "7 × 3 = 21",
    )


def test_a_slope_takes_more_than_its_plan() -> None:
    # landscape handbook, planting densities [A]: measure the sloped face
    level = worked(work="bed", pattern="square", spacing_mm=500.0, bed_length_m=10.0, bed_width_m=4.0)
    steep = worked(
        work="bed", pattern="square", spacing_mm=500.0, bed_length_m=10.0, bed_width_m=4.0, slope_percent=75.0
    )
    assert level["plants needed"].value == 160
    assert steep["plants needed"].value == 200
    assert steep["sloped face"].value == 50
    assert steep["sloped face"].working == ("√(1 + 0.75²) = 1.25", "40 m² on the plan × 1.25 = 50 m²")
    assert "sloped face" not in level


def test_spare_plants_are_on_the_order() -> None:
    found = worked(work="bed", pattern="triangle", spacing_mm=350.0, area_m2=7.0, slope_percent=25.0, spare_percent=5.0)
    assert found["plants needed"].value == 69
    assert found["order"].value == 73
    assert found["order"].working == ("5 % to spare: 69 × 1.05, rounded up = 73",)


def test_a_layout_without_its_sizes_counts_nothing() -> None:
    for pattern in ("square", "triangle", "row", "edge"):
        found = worked(work="bed", pattern=pattern, spacing_mm=300.0)
        assert "plants needed" not in found


def test_the_spacing_of_the_book_says_who_says_so() -> None:
    vinca = worked("Vinca minor", work="bed", spacing_mm=350.0)["book spacing"]
    assert words(vinca) == "300 to 450 mm"
    assert vinca.working == ("300 to 450 mm, from memory",)
    assert vinca.references[0].grade is Grade.MEMORY
    box = worked("box", work="bed", spacing_mm=150.0)["book spacing"]
    assert box.references[0].grade is Grade.C
    bare = PlantBook(plants=(Plant(botanical="Quercus ignota", kind="deciduous"),))
    assert "book spacing" not in worked("Quercus ignota", plant_book=bare, work="bed", spacing_mm=350.0)
    assert "book spacing" not in worked("box", work="bed")


def test_a_fact_of_the_book_is_named() -> None:
    fact = Fact(low=300, high=400, unit="mm", source="a garden society", grade=Grade.A)
    known = PlantBook(plants=(Plant(botanical="Quercus ignota", kind="deciduous", spacing_mm=fact),))
    found = worked("Quercus ignota", plant_book=known, work="bed", spacing_mm=350.0)["book spacing"]
    assert found.working == ("300 to 400 mm, by a garden society",)


@given(
    work=st.sampled_from(["tree", "shrub", "bed"]),
    stock=st.sampled_from(["container", "balled", "bare root"]),
    calliper=st.none() | st.floats(1, 500),
    ball=st.none() | st.tuples(st.floats(10, 6000), st.floats(10, 4000), st.floats(0, 1000)),
    hole=st.none() | st.tuples(st.floats(10, 20_000), st.floats(1, 4000)),
    layout=st.none() | st.tuples(st.sampled_from(["square", "triangle", "row", "edge"]), st.floats(10, 30_000)),
    drainage=st.sampled_from(["good", "poor"]),
    summers=st.sampled_from(["cool", "warm"]),
)
def test_every_figure_has_working_and_a_source(
    work: str, stock: str, calliper: Any, ball: Any, hole: Any, layout: Any, drainage: str, summers: str
) -> None:
    found = worked(
        work=work,
        stock=stock,
        calliper_mm=calliper,
        ball_width_mm=ball and ball[0],
        ball_depth_mm=ball and ball[1],
        first_root_mm=ball and ball[2],
        hole_width_mm=hole and hole[0],
        hole_depth_mm=hole and hole[1],
        pattern=layout and layout[0],
        spacing_mm=layout and layout[1],
        area_m2=12.5,
        row_length_m=30.0,
        bed_length_m=5.0,
        bed_width_m=2.5,
        slope_percent=20.0,
        height_mm=3000.0,
        stakes=2,
        drainage=drainage,
        summers=summers,
        pot_l=10.0,
    )
    assert len(found) >= 3
    for figure in found.values():
        assert figure.working
        assert all(line.strip() for line in figure.working)
        assert figure.references
        assert words(figure)
