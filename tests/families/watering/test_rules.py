"""Each rule of watering: broken, kept at its limit, and mended; and random measures, every mend of which mends."""

from typing import Any, get_args

import pytest
from hypothesis import given
from hypothesis import strategies as st

from howto.families.watering import FAMILY, tables
from howto.families.watering.measures import WateringMeasures
from howto.families.watering.rules import RULES
from howto.findings import Severity
from howto.model.family import Rule
from howto.model.prose import prose
from howto.model.technique import Hazard, Step
from howto.model.work import Work
from tests.support.builders import assert_mends, breaches, mended, technique
from tests.support.told import told

NAMED = {rule.name.removeprefix("watering."): rule for rule in RULES}
NEW_SHRUB = {"method": "can", "pot_l": 10.0}
NEW_TREE = {"method": "can", "calliper_mm": 50.0}
SPRINKLER = {"method": "sprinkler", "rate_mm_per_h": 24.0}
DRIP = {"method": "drip", "drippers": 8, "dripper_flow_l_per_h": 2.0}
BED = {"area_m2": 4.0, "reference_et_mm_per_day": 6.0, "interval_days": 1.0, "efficiency_percent": 90.0}
QUARTERED = {**SPRINKLER, "wanted_depth_mm": 12.0, "uniformity_percent": 75.0}
THREE_CYCLES = {**SPRINKLER, "run_minutes": 60.0, "cycles": 3}


def made(having: dict[str, Any] | None = None, **measures: Any) -> Work[WateringMeasures]:
    return technique(FAMILY, having, **measures)


def telling(*words: str) -> dict[str, Any]:
    """Return parts of a technique whose cautions say these words."""
    return {"cautions": tuple(Hazard(title="Mind.", text=prose(each)) for each in words)}


# rule, measures that break it, what the first breach says, what its mend sets
BROKEN: tuple[tuple[str, dict[str, Any], str, str], ...] = (
    ("weather-in-order", {"day_max_c": 10.0, "day_min_c": 12.5}, "10 °C, is below its lowest, 12.5 °C", "12.5 °C"),
    ("species-factor", {"species_factor": 0.65, "plant_water": "moderate"}, "0.65 is outside 0.4 to 0.6", "0.6"),
    ("species-factor", {"species_factor": 1.2, "plant_water": None}, "1.2 is outside 0 to 0.9", "0.9"),
    ("place-factors", {"density_factor": 1.5}, "density factor of 1.5 is outside 0.5 to 1.3", "1.3"),
    ("place-factors", {"microclimate_factor": 0.9, "microclimate": "high"}, "0.9 is outside 1.1 to 1.4", "1.1"),
    ("wilting-below-capacity", {"wilting_point_percent": 30.0}, "30 %, is not 2 % below field capacity, 28 %", "14 %"),
    ("wilting-below-capacity", {"field_capacity_percent": 10.0}, "14 %, is not 2 % below field capacity, 10 %", "5 %"),
    ("depletion-range", {"depletion_fraction": 0.9}, "90 % of the soil's water", "0.8"),
    ("depletion-range", {"depletion_fraction": 0.05}, "5 % of the soil's water", "0.1"),
    ("root-depth", {"crop": "strawberry", "root_depth_mm": 450.0}, "written 450 mm deep", "300 mm"),
    ("dried-too-far", {"dried_mm": 30.0, "depletion_fraction": 0.5}, "30 mm has gone", "21 mm"),
    ("interval", {"interval_days": 20.0, "depletion_fraction": 0.5}, "20 days between", "10 days"),
    ("root-zone-holds", {"wanted_depth_mm": 50.0}, "50 mm is put on at once", "42 mm"),
    ("deep-enough", {"wanted_depth_mm": 5.0, "depletion_fraction": 0.5}, "5 mm wets loam only 71.4 mm", "10.5 mm"),
    ("flow-known", {"method": "sprinkler"}, "how fast the sprinkler wets", "12 mm/h"),
    ("flow-known", {"method": "drip", "dripper_flow_l_per_h": 2.0}, "how many drippers", "2"),
    ("flow-known", {"method": "drip", "drippers": 8}, "how fast one dripper drips", "2 L/h"),
    ("can-count", {"can_count": 15}, "15 catch cans", "16"),
    ("can-count", {"catch_cans_ml": (12.0, 11.0, 10.0)}, "3 catch cans", "4"),
    ("cans-caught", {"catch_cans_ml": (0.0, 0.0)}, "next to nothing", "12 mL, 12 mL"),
    (
        "evenness-agrees",
        {"catch_cans_ml": (10.0, 20.0, 20.0, 30.0), "uniformity_percent": 80.0},
        "80 % is written, and the cans give 50 %",
        "50 %",
    ),
    ("run-time", {**QUARTERED, "run_minutes": 30.0}, "30 min", "40 min"),
    (
        "drip-time",
        {**DRIP, **BED, "run_minutes": 20.0},
        "the water wanted takes 50 min",
        "50 min",
    ),
    ("cycle-length", {**SPRINKLER, "soil": "clay", "run_minutes": 20.0}, "runs 20 min at a time", "4"),
    ("cycle-length", {**SPRINKLER, "soil": "loam", "run_minutes": 40.0, "cycles": 2}, "20 min at a time", "3"),
    (
        "cycle-length",
        {
            "method": "sprinkler",
            "rate_mm_per_h": 38.1,
            "intake_mm_per_h": 5.08,
            "first_intake_mm_per_h": 50.8,
            "intake_decay": 2.0,
            "run_minutes": 20.0,
        },
        "20 min at a time",
        "2",
    ),
    ("soak-gap", {**THREE_CYCLES, "intake_mm_per_h": 8.0, "soak_minutes": 10.0}, "10 min of soak", "40 min"),
    ("soak-gap", {**THREE_CYCLES, "intake_mm_per_h": 24.0, "soak_minutes": 10.0}, "10 min of soak", "30 min"),
    ("dripper-spacing", {**DRIP, "soil": "sand", "dripper_spacing_mm": 500.0}, "500 mm apart", "300 mm"),
    ("tree-litres", {**NEW_TREE, "water_each_l": 5.0}, "tree gets 5 L", "7.5 L"),
    ("tree-litres", {**NEW_TREE, "water_each_l": 20.0}, "tree gets 20 L", "11.1 L"),
    ("tree-litres", {**NEW_TREE, "summer": "warm", "water_each_l": 10.0}, "tree gets 10 L", "15 L"),
    ("shrub-litres", {**NEW_SHRUB, "water_each_l": 1.0}, "shrub gets 1 L", "2.5 L"),
    ("shrub-litres", {**NEW_SHRUB, "water_each_l": 5.0}, "shrub gets 5 L", "3 L"),
    ("first-year", {**NEW_SHRUB, "interval_days": 2.0}, "every 2 days", "1 day"),
    ("first-year", {**NEW_SHRUB, "planted_weeks": 5.0, "interval_days": 7.0}, "every 7 days", "3 days"),
    ("first-year", {**NEW_SHRUB, "planted_weeks": 5.0, "interval_days": 1.0}, "every day", "2 days"),
    ("feel-first", dict(NEW_SHRUB), "feel the soil", ""),
    ("backflow", {}, "drinking water", ""),
    ("cool-hours", {}, "what time of day", ""),
    ("hot-hose", {}, "hot water standing", ""),
    ("uneven-heads", {**SPRINKLER, "uniformity_percent": 55.0}, "evenness is 55 %", ""),
    ("uneven-heads", {**SPRINKLER, "catch_cans_ml": (1.0, 40.0, 40.0, 40.0)}, "no step puts the heads right", ""),
)  # fmt: skip


@pytest.mark.parametrize(("name", "measures", "what", "mend"), BROKEN)
def test_a_breach_says_what_and_its_mend_mends(name: str, measures: dict[str, Any], what: str, mend: str) -> None:
    broken = made(**measures)
    found = breaches(NAMED[name], broken)
    assert what in found[0].what
    assert found[0].edit is not None
    if mend:
        assert found[0].edit.text == mend
    assert found[0].edit.text in found[0].mend
    assert_mends(NAMED[name], broken)


# rule, measures at the limit or out of the rule's sight
KEPT: tuple[tuple[str, dict[str, Any]], ...] = (
    ("weather-in-order", {"day_max_c": 12.5, "day_min_c": 12.5}),
    ("weather-in-order", {"day_max_c": 12.5}),
    ("species-factor", {"species_factor": 0.6, "plant_water": "moderate"}),
    ("species-factor", {"species_factor": 0.4, "plant_water": "moderate"}),
    ("species-factor", {"species_factor": 0.9, "plant_water": None}),
    ("place-factors", {"density_factor": 1.3, "microclimate_factor": 1.4}),
    ("place-factors", {"density_factor": 0.5, "microclimate_factor": 0.5}),
    ("wilting-below-capacity", {"wilting_point_percent": 26.0}),
    ("depletion-range", {"depletion_fraction": 0.1}),
    ("depletion-range", {"depletion_fraction": 0.8}),
    ("root-depth", {"crop": "strawberry", "root_depth_mm": 300.0}),
    ("root-depth", {"root_depth_mm": 5000.0}),
    ("dried-too-far", {"dried_mm": 21.0, "depletion_fraction": 0.5}),
    ("interval", {"interval_days": 10.0, "depletion_fraction": 0.5}),
    ("interval", {**NEW_SHRUB, "interval_days": 300.0}),
    ("root-zone-holds", {"wanted_depth_mm": 42.0}),
    ("deep-enough", {"wanted_depth_mm": 10.5, "depletion_fraction": 0.5}),
    ("deep-enough", {**DRIP, "wanted_depth_mm": 0.5}),
    ("deep-enough", {"wanted_depth_mm": 4.2, "root_depth_mm": 60.0, "depletion_fraction": 0.5}),
    ("flow-known", dict(SPRINKLER)),
    ("flow-known", {"method": "sprinkler", "flow_l_per_min": 20.0}),
    ("flow-known", {"method": "sprinkler", "head_flow_l_per_min": 5.0, "head_spacing_m": 4.0}),
    ("flow-known", dict(DRIP)),
    ("can-count", {"can_count": 16}),
    ("can-count", {"catch_cans_ml": (12.0, 11.0, 10.0), "can_count": 4}),
    ("can-count", {}),
    ("cans-caught", {"catch_cans_ml": (0.0, 1.0)}),
    ("evenness-agrees", {"catch_cans_ml": (10.0, 20.0, 20.0, 30.0), "uniformity_percent": 51.0}),
    ("run-time", {**QUARTERED, "run_minutes": 44.0}),
    ("run-time", {**QUARTERED, "run_minutes": 36.0}),
    ("run-time", {**DRIP, **BED, "run_minutes": 1.0}),
    ("drip-time", {**DRIP, **BED, "run_minutes": 45.0}),
    ("drip-time", {**QUARTERED, "run_minutes": 1.0}),
    ("cycle-length", {**SPRINKLER, "soil": "clay", "run_minutes": 6.0}),
    ("cycle-length", {**SPRINKLER, "soil": "clay", "run_minutes": 24.0, "cycles": 4}),
    ("cycle-length", {"method": "sprinkler", "rate_mm_per_h": 5.0, "soil": "loam", "run_minutes": 240.0}),
    ("cycle-length", {**SPRINKLER, "soil": "clay"}),  # nothing written: the figure says how many
    ("soak-gap", {**THREE_CYCLES, "intake_mm_per_h": 8.0, "soak_minutes": 40.0}),
    ("soak-gap", {**THREE_CYCLES, "intake_mm_per_h": 24.0, "soak_minutes": 30.0}),
    ("soak-gap", {**SPRINKLER, "run_minutes": 60.0, "cycles": 1, "soak_minutes": 1.0}),
    ("dripper-spacing", {**DRIP, "soil": "sand", "dripper_spacing_mm": 300.0}),
    ("tree-litres", {**NEW_TREE, "water_each_l": 7.4516}),
    ("tree-litres", {**NEW_TREE, "water_each_l": 11.1773}),
    ("tree-litres", {**NEW_TREE, "summer": "warm", "water_each_l": 22.354}),
    ("shrub-litres", {**NEW_SHRUB, "water_each_l": 2.5}),
    ("shrub-litres", {**NEW_SHRUB, "water_each_l": 3.0}),
    ("shrub-litres", {**NEW_SHRUB, **NEW_TREE, "water_each_l": 9.0}),  # the stem says more than the pot
    ("first-year", {**NEW_SHRUB, "planted_weeks": 2.0, "interval_days": 1.0}),
    ("first-year", {**NEW_SHRUB, "planted_weeks": 12.0, "interval_days": 3.0}),
    ("first-year", {**NEW_SHRUB, "planted_weeks": 30.0, "interval_days": 7.0}),
    ("feel-first", {}),
    ("backflow", {"method": "can"}),
    ("hot-hose", {"method": "can"}),
    ("uneven-heads", {**SPRINKLER, "uniformity_percent": 60.0}),
    ("uneven-heads", {"uniformity_percent": 50.0}),
)


@pytest.mark.parametrize(("name", "measures"), KEPT)
def test_at_its_limit_a_rule_is_kept(name: str, measures: dict[str, Any]) -> None:
    assert breaches(NAMED[name], made(**measures)) == []


@pytest.mark.parametrize(
    ("name", "measures", "words"),
    [
        ("feel-first", NEW_SHRUB, "Feel the soil first."),
        ("backflow", {}, "Fit a backflow preventer."),
        ("cool-hours", {}, "Only in the morning."),
        ("hot-hose", {}, "Let it run until it runs cool."),
    ],
)
def test_what_is_said_is_not_asked_for_again(name: str, measures: dict[str, Any], words: str) -> None:
    assert breaches(NAMED[name], made(telling(words), **measures)) == []


def test_a_step_that_puts_heads_right_is_enough() -> None:
    step = Step(title="Straighten the heads.", text=prose("Then catch again."))
    uneven = {**SPRINKLER, "uniformity_percent": 40.0}
    assert breaches(NAMED["uneven-heads"], made({"steps": (step,)}, **uneven)) == []


def test_a_drip_line_without_anything_asks_twice() -> None:
    found = breaches(NAMED["flow-known"], made(method="drip"))
    assert [each.edit.key for each in found if each.edit] == ["drippers", "dripper flow"]


def test_trap_t15_the_range_of_advice_is_told() -> None:
    assert "1 to 1.5 US gal an inch" in told(NAMED["tree-litres"].why)
    assert "2 gal a time to 10 gal a week" in NAMED["tree-litres"].why


def test_every_rule_is_broken_and_kept_here() -> None:
    broken = {name for name, *_ in BROKEN}
    kept = {name for name, _ in KEPT} | {"cool-hours"}
    assert broken == set(NAMED)
    assert kept == set(NAMED)


def test_what_rests_on_memory_advises() -> None:
    assert all(rule.severity is Severity.ADVICE for rule in RULES if "memory" in str(rule.references[0]))


# -- random measures --

NUMBERS: dict[str, tuple[float, float]] = {
    "day_max_c": (-20, 45),
    "day_min_c": (-20, 45),
    "species_factor": (0.01, 2),
    "density_factor": (0.1, 3),
    "microclimate_factor": (0.1, 3),
    "field_capacity_percent": (4, 80),
    "wilting_point_percent": (0, 80),
    "depletion_fraction": (0.01, 0.99),
    "root_depth_mm": (10, 5000),
    "dried_mm": (0, 500),
    "interval_days": (0.25, 60),
    "wanted_depth_mm": (0.1, 200),
    "rate_mm_per_h": (0.1, 200),
    "run_minutes": (0.1, 1440),
    "soak_minutes": (0, 200),
    "intake_mm_per_h": (0.1, 100),
    "first_intake_mm_per_h": (0.1, 300),
    "intake_decay": (0.01, 10),
    "uniformity_percent": (1, 100),
    "efficiency_percent": (5, 100),
    "dripper_flow_l_per_h": (0.05, 50),
    "dripper_spacing_mm": (10, 2000),
    "reference_et_mm_per_day": (0, 15),
    "area_m2": (0.1, 5000),
    "planted_weeks": (0, 80),
    "water_each_l": (0.01, 60),
    "calliper_mm": (1, 200),
    "pot_l": (0.05, 200),
    "can_mouth_mm": (5, 300),
    "catch_minutes": (0.1, 600),
}
CHOICES: dict[str, st.SearchStrategy[Any]] = {
    "method": st.sampled_from(("sprinkler", "drip", "hose", "can")),
    "soil": st.sampled_from(tuple(tables.SOILS)),
    "crop": st.none() | st.sampled_from(tuple(tables.CROPS)),
    "plant_water": st.none() | st.sampled_from(get_args(tables.PlantWater)),
    "density": st.none() | st.sampled_from(get_args(tables.Degree)),
    "microclimate": st.none() | st.sampled_from(get_args(tables.Degree)),
    "summer": st.none() | st.sampled_from(("cool", "warm")),
    "uniformity_rule": st.none() | st.sampled_from(("strict", "soft")),
    "cycles": st.none() | st.integers(1, 60),
    "drippers": st.none() | st.integers(1, 200),
    "can_count": st.none() | st.integers(1, 400),
    "catch_cans_ml": st.none() | st.lists(st.floats(0, 200), min_size=1, max_size=20).map(tuple),
}
MEASURES = st.fixed_dictionaries(
    CHOICES, optional={name: st.floats(low, high) for name, (low, high) in NUMBERS.items()}
)


@given(measures=MEASURES)
def test_every_mend_mends(measures: dict[str, Any]) -> None:
    broken = made(**measures)
    for rule in RULES:
        _assert_all_mend(rule, broken)


def _assert_all_mend(rule: Rule[WateringMeasures], broken: Work[WateringMeasures]) -> None:
    """Follow one mend after another until none is offered; each takes its breach away."""
    left = breaches(rule, broken)
    while left:
        broken = mended(broken, left[0])
        now = breaches(rule, broken)
        assert len(now) < len(left), f"{rule.name}: {left[0].mend} → {now[0].what} ({now[0].why})"
        left = now
