"""The figures of a clip: their values on worked examples, their working, and that none ever fails."""

from datetime import date
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from howto.families.clipping import FAMILY
from howto.families.clipping.figures import figures
from howto.families.clipping.gauge import handy_step
from howto.model.crew import Crew
from howto.model.figure import Figure
from howto.model.plants import Plant, PlantBook
from tests.support.builders import technique
from tests.support.cases import book
from tests.support.told import told_figure

JUNE = date(2026, 6, 10)
SOUTH = Crew(hemisphere="south")
SHAPES = ("ball", "dome", "cone", "cube", "cylinder")
SIZE = st.floats(min_value=50, max_value=10_000)
MEASURES = st.fixed_dictionaries(
    {"shape": st.sampled_from(SHAPES), "finished_width_mm": SIZE, "standing_width_mm": SIZE},
    optional={
        "finished_height_mm": SIZE,
        "standing_height_mm": SIZE,
        "passes": st.integers(1, 12),
        "growth_mm_per_year": st.floats(1, 5000),
        "gauge_every_mm": st.floats(10, 2000),
        "clipping_rate_m2_per_h": st.floats(0.1, 200),
        "day_temperature_c": st.floats(-40, 60),
        "first_frost_weeks": st.floats(0, 60),
    },
)


def worked(*plants: str, today: date = JUNE, crew: Crew | None = None, **measures: Any) -> dict[str, Figure]:
    made = technique(FAMILY, {"plants": plants}, book=book(), crew=crew, **measures)
    return {figure.name: told_figure(figure, made.reader) for figure in figures(made, today)}


def cone(**measures: Any) -> dict[str, Figure]:
    return worked(
        **{
            "shape": "cone",
            "finished_width_mm": 800.0,
            "standing_width_mm": 900.0,
            "finished_height_mm": 1600.0,
            "standing_height_mm": 1700.0,
            "passes": 3,
            **measures,
        }
    )


def test_a_ball_of_900_from_980_loses_22_percent() -> None:
    # worked by hand: 1 - (900 / 980)³ = 1 - 0.77454
    found = worked()
    assert found["off each side"].value == 40
    assert found["off each side"].working == ("(980 - 900) / 2 = 40 mm",)
    assert found["share removed"].value == pytest.approx(22.546, abs=0.001)
    assert found["share removed"].working == (
        "stands: 2/3 x π x 0.49² x 0.98 x 1000 = 492.81 L",
        "done: 2/3 x π x 0.45² x 0.9 x 1000 = 381.7 L",
        "shell: 1 - 381.7 / 492.81 = 22.5 % of the leafy volume",
        "off the length of each shoot: 1 - (1 - 0.225)^(1/3) = 8.16 %",
    )
    assert "off the top" not in found
    assert {figure.name for figure in found.values() if figure.headline} == {
        "off each side",
        "share removed",
        "next clip",
    }
    assert {figure.name for figure in found.values() if figure.client} == {"next clip", "clip before"}


def test_h58_the_share_of_the_length_is_printed_beside_the_share_of_the_leaf() -> None:
    # H58: Ryedale District Council, Advice note on BS 3998:2010 [A]: 30 % of the crown, about 12 % of branch
    # length; exact 11.2 %; 1 point. A block 1 m high loses 30 % from 1000 to 836.66 mm.
    found = worked(
        shape="cube", finished_width_mm=836.66, standing_width_mm=1000.0, finished_height_mm=1000.0,
        standing_height_mm=1000.0,
    )  # fmt: skip
    assert found["share removed"].value == pytest.approx(30, abs=0.01)
    assert found["share removed"].working[-1] == "off the length of each shoot: 1 - (1 - 0.3)^(1/3) = 11.2 %"


def test_what_comes_off_the_top_is_said_where_both_heights_are_known() -> None:
    found = cone()
    assert found["off the top"].value == 100
    assert found["off the top"].working == ("1700 - 1600 = 100 mm",)
    assert found["share removed"].working[0] == "stands: 1/3 x π x 0.45² x 1.7 x 1000 = 360.5 L"
    assert found["share removed"].value == pytest.approx(25.64, abs=0.01)


def test_nothing_to_clip_is_said_and_not_counted() -> None:
    found = worked(finished_width_mm=900.0, standing_width_mm=800.0)
    assert found["share removed"].value == 0
    assert found["share removed"].working[-1] == "it stands no larger than it should finish: nothing comes off"
    assert found["passes needed"].value == 0
    assert found["passes needed"].working == ("nothing comes off, so no pass is needed",)
    assert "next clip" not in found


@pytest.mark.parametrize(
    ("standing", "passes", "least", "said"),
    [
        (980.0, 1, 1, "as planned, 1 pass takes 1 - 0.775^(1/1) = 22.5 %"),
        (1090.0, 2, 2, "as planned, 2 equal passes take 1 - 0.563^(1/2) = 25 % each"),
        (1090.0, 3, 2, "as planned, 3 equal passes take 1 - 0.563^(1/3) = 17.4 % each"),
    ],
)
def test_the_fewest_light_passes(standing: float, passes: int, least: int, said: str) -> None:
    # a landscape trade page [C]: a quarter a pass; (900 / 1090)³ = 0.5629, and 0.75 x 0.75 = 0.5625
    found = worked(standing_width_mm=standing, passes=passes)["passes needed"]
    assert found.value == least
    assert found.working[2] == said


def test_the_working_of_passes_is_a_row_of_three_quarters() -> None:
    found = worked(standing_width_mm=1090.0, passes=2)["passes needed"]
    assert found.working[:2] == (
        "left when done: 1 - 0.437 = 0.563; a light pass leaves 0.75 or more",
        "0.75 x 0.75 = 0.563, no more than 0.563: 2 passes at least",
    )


# -- the gauge --


def test_the_rings_of_a_ball_and_its_widest() -> None:
    # worked by hand: at a quarter and three quarters of the height a ball is √3/2 of its width, 779.4 mm
    found = worked(gauge_every_mm=225.0)["gauge rings"]
    assert found.value == "every 225 mm up the stick"
    rows: Any = found.table and found.table.rows
    ring = (225, pytest.approx(779.42, abs=0.01), pytest.approx(389.71, abs=0.01))
    assert rows == ((0, 0, 0), ring, (450, 900, 450), (675, *ring[1:]), (900, 0, 0))
    assert found.working == (
        "at 225 mm up: 900 x √(1 - (2 x 225 / 900 - 1)²) = 779 mm",
        "widest at half the height, 450 mm up: 900 mm",
        "a ring each 225 mm from the foot to 900 mm",
    )


def test_the_widest_ring_of_a_ball_and_the_top_are_always_in_the_table() -> None:
    found = worked(finished_width_mm=700.0, gauge_every_mm=300.0)["gauge rings"]
    assert found.table is not None
    assert [row[0] for row in found.table.rows] == [0, 300, 350, 600, 700]


@pytest.mark.parametrize(
    ("shape", "ring", "width"),
    [
        ("dome", "at 250 mm up: 800 x √(1 - (250 / 1600)²) = 790 mm", 790.17),
        ("cone", "at 250 mm up: 800 x (1 - 250 / 1600) = 675 mm", 675.0),
        ("cube", "at 250 mm up: 800 = 800 mm", 800.0),
        ("cylinder", "at 250 mm up: 800 = 800 mm", 800.0),
    ],
)
def test_the_rings_of_other_shapes(shape: str, ring: str, width: float) -> None:
    found = cone(shape=shape, gauge_every_mm=250.0)["gauge rings"]
    assert found.working[0] == ring
    rows: Any = found.table and found.table.rows
    assert rows[1] == (250, pytest.approx(width, abs=0.01), pytest.approx(width / 2, abs=0.01))
    assert [row[0] for row in rows] == [0, 250, 500, 750, 1000, 1250, 1500, 1600]


def test_a_gauge_with_one_step_works_its_foot() -> None:
    found = cone(gauge_every_mm=1600.0)["gauge rings"]
    assert found.working[0] == "at 0 mm up: 800 x (1 - 0 / 1600) = 800 mm"


@pytest.mark.parametrize(
    ("height", "metric", "inches"),
    [(50, 10, 0.5), (150, 20, 1), (700, 100, 4), (900, 150, 6), (1600, 200, 8), (4000, 500, 24), (10_000, 1000, 36)],
)
def test_a_handy_step_is_round_in_the_crews_units(height: float, metric: float, inches: float) -> None:
    assert handy_step(height).text == f"{metric} mm"
    assert handy_step(height, "uk").text == f"{inches} in"
    assert handy_step(height).mm == metric
    assert handy_step(height, "uk").mm == pytest.approx(inches * 25.4)


def test_a_crew_in_inches_marks_whole_inches() -> None:
    found = worked(finished_width_mm=609.6, standing_width_mm=660.4, crew=Crew(units="us"))["gauge rings"]
    assert found.value == "every 3 in up the stick"


def test_the_top_of_a_ball_in_inches_is_nothing_wide() -> None:
    found = worked(finished_width_mm=609.6, standing_width_mm=660.4, gauge_every_mm=101.6)["gauge rings"]
    rows: Any = found.table and found.table.rows
    assert rows[-1] == (609.6, 0, 0)
    assert [round(row[0] / 25.4, 6) for row in rows] == [0, 4, 8, 12, 16, 20, 24]


# -- surface and time --


@pytest.mark.parametrize(
    ("measures", "line", "area"),
    [
        ({}, "4 x π x 0.45² = 2.54 m²", 2.5447),
        ({"shape": "dome", "finished_height_mm": 450.0}, "4 x π x 0.45² / 2 = 1.27 m²", 1.2723),
        ({"shape": "cube"}, "0.9² + 4 x 0.9 x 0.9 = 4.05 m²", 4.05),
        ({"shape": "cylinder"}, "π x 0.45² + π x 0.9 x 0.9 = 3.18 m²", 3.1809),
        ({"shape": "cone", "finished_height_mm": 600.0}, "π x 0.45 x √(0.45² + 0.6²) = 1.06 m²", 1.0603),
        (
            {"shape": "dome", "finished_height_mm": 750.0},
            "with e = √(1 - (0.45 / 0.75)²) = 0.8 and asin in radians: 2 x π x 0.45² x "
            "(1 + 0.75 / (0.45 x 0.8) x asin 0.8) / 2 = 1.87 m²",
            1.8652,
        ),
        (
            {"shape": "dome", "finished_height_mm": 270.0},
            "with e = √(1 - (0.27 / 0.45)²) = 0.8: (2 x π x 0.45² + π x 0.27² / 0.8 x "
            "ln((1 + 0.8) / (1 - 0.8))) / 2 = 0.951 m²",
            0.9507,
        ),
        (
            {"finished_height_mm": 940.0},
            "with e = √(1 - (0.45 / 0.47)²) = 0.2886 and asin in radians: 2 x π x 0.45² x "
            "(1 + 0.47 / (0.45 x 0.2886) x asin 0.2886) = 2.62 m²",
            2.6204,
        ),
    ],
)
def test_the_surface_is_worked_with_a_pencil(measures: dict[str, Any], line: str, area: float) -> None:
    # each line carried out by hand, to three figures
    found = worked(**measures)["surface"]
    assert found.working == (line,)
    assert found.value == pytest.approx(area, abs=0.0002)


def test_time_is_surface_times_passes_at_a_rate() -> None:
    found = worked(shape="cube", passes=2)["clipping time"]
    assert found.value == pytest.approx(121.5)
    assert found.working == ("4.05 m² x 2 passes / 4 m² an hour x 60 = 122 min",)
    assert str(found.references[0]).startswith("from memory")
    own = worked(shape="cube", passes=1, clipping_rate_m2_per_h=8.1)["clipping time"]
    assert own.value == pytest.approx(30)
    assert own.working == ("4.05 m² x 1 pass / 8.1 m² an hour x 60 = 30 min",)
    assert "memory" not in str(own.references[0])


# -- growth and the next clip --


def test_the_next_clip_is_when_it_has_grown_again() -> None:
    # 40 mm at 100 mm a year, spread over the 245 days of March to October (from memory): 98 days
    found = worked()["next clip"]
    assert found.value == date(2026, 9, 16)
    assert found.working == (
        "it grows 100 mm a side in a year, in 245 days from spring to autumn",
        "40 / 100 x 245 = 98 growing days from 2026-06-10: 2026-09-16",
    )


def test_the_next_clip_waits_for_a_month_of_the_plant() -> None:
    # box grows 100 to 150 mm a year in the plant book (from memory); clipped May to September (RHS profile 353 [A])
    found = worked("box", today=date(2026, 9, 1))["next clip"]
    assert found.value == date(2027, 5, 1)
    assert found.working[0] == "it grows 125 mm a side in a year, in 245 days from spring to autumn"
    assert found.working[-1] == "then wait for a clipping month of this plant: 2027-05-01"
    assert [str(each) for each in found.references] == [
        "from memory: growth of Buxus sempervirens",
        "from memory: shoots grow from March to October in the north",
        "Royal Horticultural Society, Hedge trimming (profile 353), clipping months",
    ]


@pytest.mark.parametrize(
    ("plant", "today", "line", "due"),
    [
        # a newspaper column (2) and a hedge contractor (1) [C]: cherry laurel, in July and August
        (
            "cherry laurel",
            date(2026, 7, 1),
            "clipped 2 times in the 62 days of its season at most, so no sooner than 31 days on: 2026-08-01",
            2026,
        ),
        # a newspaper column [C]: holly once, in August
        ("holly", date(2026, 8, 12), "clipped once a year at most, so no sooner than 365 days on: 2027-08-12", 2027),
    ],
)
def test_a_plant_is_clipped_no_more_often_than_the_trade_does(plant: str, today: date, line: str, due: int) -> None:
    found = worked(plant, today=today)["next clip"]
    assert line in found.working
    assert isinstance(found.value, date)
    assert (found.value.year, found.value.month) == (due, 8)
    assert "clips a year of" in str(found.references[2])
    assert "a year at most" not in " ".join(worked(plant, today=today, growth_mm_per_year=300.0)["next clip"].working)


def test_a_plant_in_its_month_does_not_wait() -> None:
    assert worked("box", growth_mm_per_year=200.0)["next clip"].value == date(2026, 7, 29)
    assert len(worked("box", growth_mm_per_year=200.0)["next clip"].working) == 2


def test_in_the_south_the_year_is_turned() -> None:
    found = worked(today=date(2026, 12, 10), crew=SOUTH)["next clip"]
    assert found.working[1] == "40 / 100 x 242 = 96.8 growing days from 2026-12-10: 2027-03-17"


def test_a_plant_whose_growth_nobody_knows_is_taken_from_memory() -> None:
    assert "100 mm" in worked("Quercus ignota")["next clip"].working[0]
    bare = PlantBook(plants=(Plant(botanical="Quercus ignota", kind="deciduous"),))
    made = technique(FAMILY, {"plants": ("Quercus ignota",)}, book=bare)
    found = {figure.name: told_figure(figure) for figure in figures(made, JUNE)}
    assert "100 mm" in found["next clip"].working[0]


def test_where_only_the_top_comes_off_the_top_decides() -> None:
    found = cone(finished_width_mm=900.0)["next clip"]
    assert found.working[1].startswith("100 / 100 x 245 = 245 growing days")


def test_a_plant_that_takes_over_ten_years_has_no_next_clip() -> None:
    assert "next clip" not in worked(standing_width_mm=1100.0, growth_mm_per_year=1.0)


def test_clip_before_a_third_stands_outside() -> None:
    # a gardening site and a general page [C]: at most a third; 900 x 1.5^(1/3) = 1030.2
    found = worked()["clip before"]
    assert found.value == pytest.approx(1030.2, abs=0.1)
    assert found.working[1] == "900 x 1.5^(1/3) = 900 x 1.1447 = 1030 mm"


# -- what must hold --


@given(measures=MEASURES, plants=st.sampled_from([(), ("box",), ("yew", "leylandii"), ("unknown",)]))
def test_no_measures_break_the_figures(measures: dict[str, Any], plants: tuple[str, ...]) -> None:
    made = technique(FAMILY, {"plants": plants}, book=book(), **measures)
    found = [told_figure(figure) for figure in figures(made, JUNE)]
    assert len(found) >= 7
    assert len({figure.name for figure in found}) == len(found)
    for figure in found:
        assert figure.working
        assert figure.references
        assert all("nan" not in line and "inf" not in line for line in figure.working)


@given(width=st.floats(100, 5000), growth=st.floats(1.01, 1.14), times=st.floats(0.5, 2))
def test_twice_the_size_has_the_same_share_and_four_times_the_surface(
    width: float, growth: float, times: float
) -> None:
    one = worked(finished_width_mm=width, standing_width_mm=width * growth)
    two = worked(finished_width_mm=width * times, standing_width_mm=width * growth * times)
    assert one["share removed"].value == pytest.approx(two["share removed"].value, rel=1e-6)
    assert two["surface"].value == pytest.approx(float(str(one["surface"].value)) * times**2, rel=1e-6)
