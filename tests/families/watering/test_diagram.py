"""The drawings of watering: which are drawn, how big, and that their words are the figures'."""

from dataclasses import replace
from datetime import date
from math import isfinite
from typing import Any

import pytest
from hypothesis import given

from howto.compute.ready import told as told_drawing
from howto.families.watering import FAMILY
from howto.shapes import Drawing, Line, Polygon, Role, extent
from tests.families.watering.test_figures import TODAY, VALLEY
from tests.families.watering.test_rules import MEASURES
from tests.support.builders import technique
from tests.support.drawings import words_of
from tests.support.told import told

CANS = (31.0, 34.0, 29.0, 22.0, 36.0, 39.0, 37.0, 27.0, 33.0, 40.0, 38.0, 30.0, 24.0, 31.0, 28.0, 21.0)
SPRINKLER: dict[str, Any] = {
    "method": "sprinkler",
    "crop": "cool lawn",
    "area_m2": 96.0,
    "soil": "clay loam",
    "depletion_fraction": 0.4,
    "wanted_depth_mm": 12.0,
    "catch_cans_ml": CANS,
    "can_mouth_mm": 75.0,
    "catch_minutes": 30.0,
}
HEDGE: dict[str, Any] = {
    "method": "drip",
    "soil": "clay loam",
    "root_depth_mm": 250.0,
    "depletion_fraction": 0.5,
    "pot_l": 5.0,
    "drippers": 2,
    "dripper_flow_l_per_h": 1.6,
    "dripper_spacing_mm": 300.0,
    "water_each_l": 1.4,
}


def drawn(today: date = TODAY, **measures: Any) -> tuple[Drawing, ...]:
    """Return the drawings as their reader sees them, spaces plain."""
    made = technique(FAMILY, crew=VALLEY, **measures)
    seen = [told_drawing(each, made.reader) for each in FAMILY.drawings(made, today)]
    return tuple(replace(each, caption=told(each.caption), alt=told(each.alt)) for each in seen)


def outlines(drawing: Drawing, role: Role) -> list[tuple[tuple[float, float], ...]]:
    return [each.points for each in drawing.shapes if isinstance(each, Polygon | Line) and each.role is role]


def test_a_sprinkler_has_its_cans_its_soil_and_its_day() -> None:
    cans, soil, day = drawn(**SPRINKLER)
    assert cans.caption == "16 cans: evenness 75.2 %"
    assert soil.caption == "In clay loam: one watering wets 214 mm"
    assert day.caption == "5 cycles of 13.5 min, 30 min apart"


def test_the_dry_quarter_is_hatched_and_no_more() -> None:
    plan, *_ = drawn(**SPRINKLER)
    assert len(outlines(plan, Role.REMOVE)) == 4
    assert len(outlines(plan, Role.WATER)) == 16
    assert words_of(plan) == ["9.8 m", "9.8 m", "driest: 21 mL", "wettest: 40 mL"]


def test_cans_are_filled_to_their_readings() -> None:
    plan, *_ = drawn(**SPRINKLER)
    filled = [max(y for _, y in points) - min(y for _, y in points) for points in outlines(plan, Role.WATER)]
    assert filled[0] / filled[9] == pytest.approx(31 / 40)
    assert filled[15] / filled[9] == pytest.approx(21 / 40)


def test_an_empty_can_has_no_water() -> None:
    plan, *_ = drawn(**{**SPRINKLER, "catch_cans_ml": (0.0, 20.0, 20.0, 20.0), "area_m2": None})
    assert len(outlines(plan, Role.WATER)) == 3
    assert words_of(plan) == ["driest: 0 mL", "wettest: 20 mL"]


def test_the_soil_is_wet_as_deep_as_the_figure_says() -> None:
    _, soil, _ = drawn(**SPRINKLER)
    (wet,) = outlines(soil, Role.WATER)
    assert min(y for _, y in wet) == pytest.approx(-214.3, abs=8)  # the front waves by 3 %
    assert "214 mm" in words_of(soil)
    assert "roots 300 mm" in words_of(soil)
    assert outlines(soil, Role.REMOVE) == []
    assert len(outlines(soil, Role.BLADE)) == 23


def test_water_below_the_roots_is_hatched() -> None:
    (soil,) = drawn(wanted_depth_mm=35.0, depletion_fraction=0.5)
    assert soil.alt.endswith("roots go 300 mm deep; what passes them is hatched and lost.")
    (lost,) = outlines(soil, Role.REMOVE)
    assert max(y for _, y in lost) == -300
    assert min(y for _, y in lost) == pytest.approx(-500, abs=20)  # 35 / (140 x 0.5) = 0.5 m
    assert "500 mm" in words_of(soil)


def test_a_day_of_cycles() -> None:
    *_, day = drawn(**SPRINKLER)
    bars = outlines(day, Role.WATER)
    assert len(bars) == 5
    assert {"13.5 min", "30 min", "soak: water off", "cycle 5 of 5"} == set(words_of(day))
    on, off = bars[0][1][0] - bars[0][0][0], bars[1][0][0] - bars[0][1][0]
    assert off / on == pytest.approx(30 / 13.54, abs=0.01)


def test_long_days_are_drawn_short() -> None:
    *_, day = drawn(**{**SPRINKLER, "soil": "clay", "run_minutes": 60.0, "cycles": 10})
    assert len(outlines(day, Role.WATER)) == 6
    assert "cycle 6 of 10" in words_of(day)


def test_standing_water_sinks_in_before_the_next_cycle() -> None:
    *_, day = drawn(**SPRINKLER)
    (standing,) = outlines(day, Role.ACCENT)
    assert all(y >= 0 for _, y in standing)
    assert standing[-1][1] == 0


def test_a_soak_too_short_leaves_water_standing() -> None:
    *_, day = drawn(**{**SPRINKLER, "cycles": 3, "soak_minutes": 5.0})
    (standing,) = outlines(day, Role.ACCENT)
    assert standing[-1][1] > 0


def test_cycles_without_a_soak_run_into_each_other() -> None:
    *_, day = drawn(**{**SPRINKLER, "cycles": 3, "soak_minutes": 0.0})
    assert {"22.6 min", "cycle 3 of 3"} == set(words_of(day))


def test_a_drip_line_and_its_first_weeks() -> None:
    bulb, weeks = drawn(**HEDGE)
    assert {"300 mm", "roots 250 mm", "1.6 L/h each", "700 mL a dripper", "the ball it came in"} <= set(words_of(bulb))
    assert {"337 mm", "168 mm"} <= set(words_of(bulb))  # 0.7 L in 0.07 of the soil is half a ball 168 mm deep
    assert weeks.caption == "The first 16 weeks, planted 5 April 2027, today ringed"


def test_a_drop_for_each_watering() -> None:
    _, weeks = drawn(**HEDGE)
    assert len(outlines(weeks, Role.WATER)) == 14 + 24 + 4  # daily, every third day of 70, weekly of four weeks
    said = words_of(weeks)
    assert [each.partition(": ")[2] for each in said if ": every" in each] == [
        "every day",
        "every 2 to 3 days",
        "every 7 days",
    ]
    assert {"19 Apr: every 2 to 3 days", "28 Jun: every 7 days"} <= set(said)


def test_today_is_ringed_while_the_calendar_lasts() -> None:
    _, weeks = drawn(**HEDGE, planted_weeks=3.0)
    assert weeks.caption.endswith(", today ringed")
    assert len(outlines(weeks, Role.ACCENT)) == 1
    _, later = drawn(**HEDGE, planted_weeks=40.0)
    assert outlines(later, Role.ACCENT) == []
    assert "today" not in later.caption


def test_a_dripper_in_a_soil_that_cannot_be_is_drawn_without_its_water() -> None:
    bulb, _ = drawn(**{**HEDGE, "field_capacity_percent": 10.0, "wilting_point_percent": 20.0})
    assert "Water from a dripper" in bulb.alt
    assert "700 mL a dripper" not in words_of(bulb)
    assert "750 mm" in words_of(bulb)  # as wide as clay loam is ever wetted


def test_a_tree_by_can_has_its_ball() -> None:
    tree, _ = drawn(method="can", calliper_mm=50.0, root_depth_mm=None, depletion_fraction=0.5)
    assert "roots 375 mm" in words_of(tree)  # 500 mm wide, three quarters as deep
    assert "9.31 L a plant" in words_of(tree)
    assert "under a new plant" in tree.alt


def test_the_same_twice() -> None:
    assert drawn(**SPRINKLER) == drawn(**SPRINKLER)
    assert drawn(**HEDGE) == drawn(**HEDGE)


@given(measures=MEASURES)
def test_no_measures_draw_nonsense(measures: dict[str, Any]) -> None:
    found = drawn(**measures)
    assert 1 <= len(found) <= 3
    for drawing in found:
        left, foot, right, top = extent(drawing.shapes)
        assert all(isfinite(each) for each in (left, foot, right, top))
        assert right > left
        assert top > foot
        assert max(right - left, top - foot) < 400_000  # mm: a lawn of 5000 m² in a row of cans
        assert len(drawing.alt) <= 250
        assert len(drawing.caption) <= 70
