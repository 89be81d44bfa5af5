from datetime import date
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from howto.families.espalier import FAMILY, frame, pruning
from howto.families.espalier.figures import figures
from howto.languages.reader import Reader
from howto.model.crew import Crew
from howto.model.figure import Figure
from howto.model.shown import shown
from howto.read.plants import read_book
from tests.support.builders import technique
from tests.support.cases import FOLDER
from tests.support.told import told_figure

TODAY = date(2026, 10, 14)
SOUTH = Crew(hemisphere="south")
BOOK = read_book(FOLDER)[0]
WIRE: dict[str, Any] = {
    "job": "wiring",
    "wire": "316 stainless",
    "lay": "1x19",
    "wire_diameter_mm": 3.0,
    "tension_n": 600.0,
    "load_kg_per_m": 4.0,
    "sag_limit_mm": 25.0,
    "off_wall_mm": 60.0,
    "eye_spacing_mm": 1800.0,
}


def made(
    having: dict[str, Any] | None = None, crew: Crew | None = None, today: date = TODAY, **measures: Any
) -> dict[str, Figure]:
    """Return the figures of a technique by name."""
    whole = technique(FAMILY, having, crew=crew, book=BOOK, **measures)
    return {figure.name: told_figure(figure, whole.reader) for figure in figures(whole, today)}


def value(found: Figure) -> float:
    """Return a figure's number."""
    assert isinstance(found.value, float)
    return found.value


def test_the_frame_of_four_wires() -> None:
    found = made()
    assert found["wire heights"].value == "450 mm, 850 mm, 1.25 m and 1.65 m"
    table = found["wire heights"].table
    assert table is not None
    assert [row[1] for row in table.rows] == [450, 850, 1250, 1650]
    assert [row[3] for row in table.rows] == ["2027", "2028", "2029", "2030"]
    assert found["top wire"].value == 1650
    assert found["arms"].value == 8
    assert found["arm length"].value == 2400


def test_heights_are_told_as_a_list() -> None:
    assert made(first_wire_mm=300.0, tier_spacing_mm=350.0, tiers=2)["wire heights"].value == "300 mm and 650 mm"
    assert made(first_wire_mm=300.0, tiers=1)["wire heights"].value == "300 mm"


def test_an_arm_stops_where_the_wall_gives_out() -> None:
    found = made(wall_length_m=6.0, trees=2, tree_spacing_mm=4000.0)
    assert found["arm length"].value == 1500
    assert found["arm length"].working[0] == "the wall gives each tree 6000 / 2 = 3000 mm"


def test_a_size_the_table_does_not_hold_has_no_published_pull() -> None:
    assert "published pull" not in made(**{**WIRE, "wire_diameter_mm": 5.0})


def test_a_load_without_a_pull_tells_nothing_of_the_ends() -> None:
    found = made(**{**WIRE, "tension_n": None, "sag_limit_mm": None})
    assert not {"sag", "end pull", "pull for the limit", "share of strength"} & set(found)


def test_a_fig_is_none_of_the_three_fruits() -> None:
    found = made({"plants": ("fig",)})
    assert "summer pruning" not in found
    assert made({"plants": ("fig", "pear")})["summer pruning"].value == date(2027, 7, 21)


def test_eyes_and_spans() -> None:
    found = made(**WIRE)
    assert found["span"].value == 1600
    assert found["eyes"].value == 16
    assert found["eyes"].working == ("(3 spans + 1) x 4 wires = 16",)
    assert found["wire to buy"].value == 23


def test_the_bill_of_materials() -> None:
    table = made(**WIRE)["materials"].table
    assert table is not None
    assert list(table.rows) == [
        ("Wire, 3 mm, 1x19, 316 stainless", "23 m"),
        ("Eyes", 16.0),
        ("Tensioners", 4.0),
        ("Grips or ferrules, two a wire", 8.0),
        ("Wall plugs", 16.0),
    ]


def test_ties_for_the_whole_frame() -> None:
    # common practice, no source: one each 300 mm of arm; worked: 8 arms x 8 and 4 stems
    assert made()["ties"].value == 68
    assert "ties" not in made(job="wiring")


def test_posts_instead_of_a_wall() -> None:
    table = made(**WIRE, support="posts", tensioners=5)["materials"].table
    assert table is not None
    assert ("Posts", 4.0) in table.rows
    assert ("Tensioners", 5.0) in table.rows


def test_the_wires_of_the_demo() -> None:
    found = made(**WIRE)
    assert value(found["strength"]) == pytest.approx(7422, abs=0.5)
    assert value(found["bare sag"]) == pytest.approx(0.225, abs=0.001)
    assert value(found["sag"]) == pytest.approx(21.15, abs=0.01)
    assert value(found["hanging length"]) == pytest.approx(1.600745, abs=1e-6)
    assert value(found["pull for the limit"]) == pytest.approx(507.5, abs=0.1)
    assert value(found["end pull"]) == pytest.approx(600.84, abs=0.01)
    assert value(found["pull when loaded"]) == pytest.approx(796.3, abs=0.1)
    assert value(found["sag when loaded"]) == pytest.approx(15.93, abs=0.01)
    assert value(found["share of strength"]) == pytest.approx(10.73, abs=0.01)
    assert value(found["growth in two metres"]) == pytest.approx(1.617, abs=0.001)
    assert value(found["published pull"]) == pytest.approx(1461.7, abs=0.1)


def test_h50_in_feet_and_pounds_through_a_whole_technique() -> None:
    # H50: Engineering ToolBox, Cable loads [C]: 35 417 lb, 55 323 lb; tolerance 1 lb
    found = made(
        crew=Crew(units="us"),
        wall_length_m=None,
        eye_spacing_mm=30_480.0,
        load_kg_per_m=850 * 0.45359237 / 0.3048,
        sag_limit_mm=9144.0,
    )
    assert value(found["pull for the limit"]) / 4.4482216 == pytest.approx(35_417, abs=1)
    assert value(found["end pull"]) / 4.4482216 == pytest.approx(55_323, abs=1)
    assert shown(found["pull for the limit"], Reader(units="us")) == "35417\u00a0lbf"


def test_h53_through_a_whole_technique() -> None:
    # H53: worked from Engineering ToolBox, Cable loads [C]: 79 mm; tolerance 2 %
    found = made(**{**WIRE, "wall_length_m": None, "eye_spacing_mm": 2000.0, "load_kg_per_m": 8.0, "tension_n": 500.0})
    assert value(found["sag"]) == pytest.approx(79, rel=0.02)
    assert value(found["sag when loaded"]) < value(found["sag"])


def test_h54_through_a_whole_technique() -> None:
    # H54: worked from Engineering ToolBox, Cable loads [C]: 9.8 mm; tolerance 2 %
    found = made(wall_length_m=None, eye_spacing_mm=1000.0, hung_weight_kg=2.0, tension_n=500.0)
    assert value(found["sag under a weight"]) == pytest.approx(9.8, rel=0.02)


def test_h55_the_pull_is_found_from_how_much_the_wire_grew() -> None:
    # H55: a mast maker's rigging guide [B]: 4 mm in 2 m is 20 %; exact
    found = made(**{**WIRE, "tension_n": None, "stretch_mm_per_m": 2.0})
    assert value(found["pull"]) == pytest.approx(0.20 * 7422.1, abs=0.1)
    assert "growth in two metres" not in found


def test_h56_through_a_whole_technique() -> None:
    # H56: National Construction Code (Australia), table D2.16a, reprint [A]: 1,725 N; exact
    assert made(**{**WIRE, "wall_length_m": 3.6})["published pull"].value == 1725
    assert "read as 3 mm" in made(**{**WIRE, "wire_diameter_mm": 3.2})["published pull"].working[0]


def test_the_makers_breaking_load_comes_first() -> None:
    found = made(**WIRE, breaking_load_n=6700.0)
    assert found["strength"].value == 6700
    assert found["strength"].working == ("as written: 6700 N",)


def test_what_is_not_written_is_left_out() -> None:
    found = made(wall_length_m=None, first_wire_mm=None, eye_spacing_mm=None)
    assert not {"wire heights", "span", "eyes", "sag", "arm length", "leader height"} & set(found)
    assert {"arms", "years to fill", "shoots", "next tie check"} <= set(found)


def test_a_tier_a_year_in_the_north_and_in_the_south() -> None:
    assert made()["frame filled"].value == date(2030, 11, 1)
    assert made(tiers_made=3)["frame filled"].value == date(2027, 11, 1)
    assert made(crew=SOUTH)["frame filled"].value == date(2030, 5, 1)
    assert made(today=date(2026, 5, 31), tiers_made=3)["frame filled"].value == date(2026, 11, 1)
    assert made(today=date(2026, 6, 1), tiers_made=3)["frame filled"].value == date(2026, 11, 1)
    assert made(today=date(2026, 6, 2), tiers_made=3)["frame filled"].value == date(2027, 11, 1)
    assert "frame filled" not in made(tiers_made=4)


@pytest.mark.parametrize(
    ("plant", "crew", "today", "first", "last"),
    [
        # Royal Horticultural Society [A]: pears late July to early August, apples mid to late August
        ("Pyrus communis", Crew(), date(2026, 3, 1), date(2026, 7, 21), date(2026, 8, 10)),
        ("Malus domestica", Crew(), date(2026, 3, 1), date(2026, 8, 11), date(2026, 8, 31)),
        ("Malus domestica", Crew(), date(2026, 9, 1), date(2027, 8, 11), date(2027, 8, 31)),
        ("Pyrus communis", SOUTH, date(2026, 10, 14), date(2027, 1, 21), date(2027, 2, 10)),
        ("Malus domestica", SOUTH, date(2026, 10, 14), date(2027, 2, 11), date(2027, 2, 28)),
        ("Malus domestica", SOUTH, date(2027, 10, 14), date(2028, 2, 11), date(2028, 2, 29)),
        ("Prunus domestica", Crew(), date(2026, 10, 14), date(2027, 3, 1), date(2027, 8, 31)),
        ("Prunus domestica", SOUTH, date(2026, 4, 1), date(2026, 9, 1), date(2027, 2, 28)),
    ],
)
def test_when_fruit_is_summer_pruned(plant: str, crew: Crew, today: date, first: date, last: date) -> None:
    whole = technique(FAMILY, {"plants": (plant,)}, crew=crew, book=BOOK)
    fruit = frame.fruit_of(whole)
    assert fruit is not None
    assert pruning.next_window(fruit, today, crew.hemisphere) == (first, last)
    assert made({"plants": (plant,)}, crew, today)["summer pruning"].value == first


def test_pruning_that_is_open_begins_today() -> None:
    found = made({"plants": ("pear",)}, today=date(2026, 8, 3))
    assert found["summer pruning"].value == date(2026, 8, 3)
    assert found["regrowth off"].value == date(2026, 9, 1)


def test_southern_stone_fruit_is_still_open_in_the_new_year() -> None:
    assert made({"plants": ("plum",)}, SOUTH, date(2027, 1, 10))["summer pruning"].value == date(2027, 1, 10)
    assert "regrowth off" not in made({"plants": ("plum",)})


def test_blossom_comes_off_in_three_springs() -> None:
    # Royal Horticultural Society, Espaliers [A]: the first 3 years
    found = made({"plants": ("apple",)}, job="planting", today=date(2026, 12, 1))
    assert found["first crop"].value == date(2030, 3, 1)
    assert made({"plants": ("apple",)}, SOUTH, date(2026, 7, 1), job="planting")["first crop"].value == date(2029, 9, 1)
    assert "first crop" not in made({"plants": ("apple",)}, age_years=5.0)
    assert "first crop" not in made(age_years=0.0)


def test_what_is_left_of_a_shoot() -> None:
    # Westmorland Gazette [B], Toronto Master Gardeners [B]; Royal Horticultural Society for stone fruit [A]
    pome = made({"plants": ("pear",)}, shoot_length_mm=450.0)
    assert pome["shoots"].value == "75 mm, or 25 mm from a spur"
    table = pome["shoots"].table
    assert table is not None
    assert [row[1] for row in table.rows] == ["3 leaves", "1 leaf", "all of it", "nothing"]
    assert pome["comes off"].value == 375
    stone = made({"plants": ("plum",)}, shoot_length_mm=450.0)
    assert stone["shoots"].value == "50 mm, or 25 mm from a spur"
    assert stone["comes off"].value == 400
    assert made(shoot_length_mm=180.0)["comes off"].value == 0


@pytest.mark.parametrize(
    ("wall_m", "stock", "trees"),
    [(12.0, "M26", 3), (12.0, "MM106", 2), (12.0, "MM111", 3), (12.0, None, 3), (3.0, "M26", 1), (9.0, "MM106", 2)],
)
def test_trees_that_fit(wall_m: float, stock: str | None, trees: float) -> None:
    # a gardening newspaper [B]: M26 at 3.3 m, MM106 at 4.5 m; Royal Horticultural Society [A]: 3.75 m
    assert made(wall_length_m=wall_m, rootstock=stock)["trees that fit"].value == trees


def test_ties_are_looked_at_twice_a_year() -> None:
    assert made()["next tie check"].value == date(2027, 4, 14)
    assert made(tie_checks=4)["next tie check"].value == date(2027, 1, 13)


def test_every_figure_has_working_and_a_source() -> None:
    for having, measures in (
        ({"plants": ("pear",)}, {"shoot_length_mm": 450.0}),
        ({}, {**WIRE, "hung_weight_kg": 2.0}),
    ):
        found = made(having, **measures)
        assert len(found) >= 6
        assert all(figure.working and figure.references for figure in found.values())


ANY = st.fixed_dictionaries(
    {
        "tiers": st.integers(1, 12),
        "tiers_made": st.integers(0, 12),
        "wall_length_m": st.none() | st.floats(0.5, 200),
        "first_wire_mm": st.none() | st.floats(50, 3000),
        "tier_spacing_mm": st.none() | st.floats(50, 2000),
        "eye_spacing_mm": st.none() | st.floats(10, 100_000),
        "trees": st.integers(1, 40),
        "job": st.sampled_from(["wiring", "planting", "training", "summer pruning", "winter thinning"]),
        "fruit": st.none() | st.sampled_from(["apple", "pear", "stone fruit"]),
        "lay": st.none() | st.sampled_from(["1x19", "7x7", "7x19"]),
        "wire_diameter_mm": st.none() | st.floats(0.5, 20),
        "tension_n": st.none() | st.floats(1, 5_000_000),
        "load_kg_per_m": st.none() | st.floats(0, 2000),
        "stretch_mm_per_m": st.none() | st.floats(0.001, 20),
        "sag_limit_mm": st.none() | st.floats(0.1, 20_000),
        "hung_weight_kg": st.none() | st.floats(0, 2000),
        "age_years": st.none() | st.floats(0, 200),
        "shoot_length_mm": st.none() | st.floats(10, 5000),
    }
)


@given(measures=ANY, side=st.sampled_from(["north", "south"]), units=st.sampled_from(["metric", "us", "uk"]))
def test_no_measures_break_the_figures(measures: dict[str, Any], side: Any, units: Any) -> None:
    crew = Crew(hemisphere=side, units=units)
    found = made(crew=crew, **measures)
    assert found["arms"].value == 2 * measures["tiers"] * measures["trees"]
    assert all(shown(figure, crew.read_in("en")) for figure in found.values())
    assert all(line.strip() for figure in found.values() for line in figure.working)
