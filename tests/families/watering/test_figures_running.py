"""The figures of running water: rates, evenness, run times, cycles and drip, through a technique."""

from typing import Any

import pytest

from tests.families.watering.test_figures import figures, value


def test_w26_the_multiplier_used_is_shown() -> None:
    """Trap T-10: 40 min by 1/DU, 35.3 by the softer rule, and the working names both."""
    run: dict[str, Any] = {
        "method": "sprinkler",
        "rate_mm_per_h": 24.0,
        "wanted_depth_mm": 12.0,
        "uniformity_percent": 75.0,
    }
    strict, soft = figures(**run), figures(**run, uniformity_rule="soft")
    assert value(strict, "run time") == pytest.approx(40, abs=0.1)
    assert "strict: 1 / 0.75 = 1.33 (soft would be 1.18)" in strict["run time"].working
    assert value(soft, "run time") == pytest.approx(35.29, abs=0.01)
    assert soft["uneven factor"].working == ("soft: 1 / (0.4 + 0.6 x 0.75) = 1.18",)


def test_without_cans_efficiency_stands_for_unevenness() -> None:
    """12 mm / 0.75 = 16 mm at 24 mm/h: 40 min, never both corrections at once."""
    found = figures(method="sprinkler", rate_mm_per_h=24.0, wanted_depth_mm=12.0)
    assert value(found, "run time") == pytest.approx(40)
    assert "uneven factor" not in found


def test_w31_through_a_technique() -> None:
    """50 min on 8 drippers of 2 L/h."""
    found = figures(
        method="drip",
        area_m2=4.0,
        reference_et_mm_per_day=6.0,
        efficiency_percent=90.0,
        interval_days=1.0,
        drippers=8,
        dripper_flow_l_per_h=2.0,
    )
    assert value(found, "litres each time") == pytest.approx(13.3, abs=0.1)
    assert value(found, "run time") == pytest.approx(50, abs=0.1)


def test_w38_cycles_by_a_timed_soil() -> None:
    """P 1.5, f0 2.0, fc 0.2 in/h, b 2 per h: 11.3 min at a time (B), so 30 min are 3 cycles."""
    found = figures(
        method="sprinkler",
        rate_mm_per_h=38.1,
        first_intake_mm_per_h=50.8,
        intake_mm_per_h=5.08,
        intake_decay=2.0,
        run_minutes=30.0,
    )
    assert value(found, "longest run") == pytest.approx(11.3, abs=0.1)
    assert value(found, "cycles needed") == 3
    assert value(found, "soak time") == 65  # 10 min x (38.1 / 5.08 - 1) = 65
    table = found["soak time"].table
    assert table is not None
    assert table.rows == ((1, 0, 10), (2, 75, 85), (3, 150, 160))


def test_trap_t11_intake_is_the_lower_and_asks_to_be_measured() -> None:
    found = figures(method="sprinkler", rate_mm_per_h=24.0, soil="loam")
    assert value(found, "soil intake") == 5
    assert "measure yours" in found["soil intake"].working[0]
    measured = figures(method="sprinkler", rate_mm_per_h=24.0, soil="loam", intake_mm_per_h=12.0)
    assert value(measured, "soil intake") == 12


def test_a_soil_that_drinks_no_faster_dry_was_not_timed() -> None:
    found = figures(
        method="sprinkler",
        rate_mm_per_h=24.0,
        intake_mm_per_h=8.0,
        first_intake_mm_per_h=8.0,
        intake_decay=2.0,
        run_minutes=30.0,
    )
    assert "soil not timed" in found["longest run"].working[1]


def test_clay_is_watered_six_minutes_at_a_time() -> None:
    """Town practice on clay (B)."""
    found = figures(method="sprinkler", rate_mm_per_h=12.0, soil="clay", run_minutes=30.0)
    assert value(found, "longest run") == 6
    assert value(found, "cycles needed") == 5


def test_a_soil_that_keeps_up_needs_no_cycles() -> None:
    found = figures(method="sprinkler", rate_mm_per_h=8.0, soil="sand", run_minutes=60.0)
    assert "cycles needed" not in found


def test_a_rate_above_the_driest_soil_gets_the_shortest_cycle() -> None:
    found = figures(
        method="sprinkler",
        rate_mm_per_h=80.0,
        first_intake_mm_per_h=50.0,
        intake_mm_per_h=5.0,
        intake_decay=2.0,
        run_minutes=6.0,
    )
    assert value(found, "longest run") == 1
    assert value(found, "cycles needed") == 6


@pytest.mark.parametrize(
    ("measures", "rate", "line"),
    [
        ({"area_m2": 92.90304, "flow_l_per_min": 37.85411784}, 24.4475, "60 x 37.9 L/min"),  # W19: 10 gpm, 1000 sq ft
        ({"area_m2": 30.0, "heads": 6, "head_flow_l_per_min": 5.0}, 60.0, "60 x 30 L/min / 30 m²"),
        ({"head_flow_l_per_min": 5.0, "head_spacing_m": 5.0, "row_spacing_m": 4.0}, 15.0, "/ 20 m² a head"),
        ({"head_flow_l_per_min": 5.0, "head_spacing_m": 5.0, "head_layout": "triangular"}, 13.857, "/ 21.7 m² a head"),
        ({"catch_cans_ml": (100.0, 100.0), "can_mouth_mm": 100.0, "catch_minutes": 30.0}, 25.465, "mean can 100 mL"),
    ],
)
def test_sprinkler_rates(measures: dict[str, Any], rate: float, line: str) -> None:
    found = figures(**{"method": "sprinkler", "area_m2": None, **measures})
    assert value(found, "sprinkler rate") == pytest.approx(rate, abs=0.001)
    assert line in found["sprinkler rate"].working[0]


def test_w24_through_a_technique() -> None:
    """49.62 % from the lowest four of fifteen (A)."""
    cans = (47.0, 42.0, 45.0, 24.0, 13.0, 26.0, 33.0, 34.0, 27.0, 30.0, 40.0, 44.0, 32.0, 12.0, 12.0)
    found = figures(method="sprinkler", catch_cans_ml=cans)
    assert value(found, "evenness") == pytest.approx(49.62, abs=0.01)
    assert found["evenness"].working[1] == "lowest 15 / 4, rounded up = 4: (12 + 12 + 13 + 24) / 4 = 15.25 mL"
    assert "very uneven" in found["evenness"].working[-1]


@pytest.mark.parametrize(("percent", "said"), [(80.0, ": even"), (60.0, ": fair"), (59.9, "mend the heads")])
def test_evenness_is_read(percent: float, said: str) -> None:
    assert said in figures(method="sprinkler", uniformity_percent=percent)["evenness"].working[-1]


def test_a_dry_quarter_has_no_strict_multiplier() -> None:
    found = figures(method="sprinkler", catch_cans_ml=(0.0, 40.0, 40.0, 40.0))
    assert value(found, "uneven factor") == pytest.approx(2.5)


def test_drip_wets_a_bulb() -> None:
    """1 L that fills 0.07 of loam (half of 0.14) is half a ball 190 mm deep."""
    found = figures(
        method="drip", pot_l=8.0, drippers=2, dripper_flow_l_per_h=1.0, water_each_l=2.0, depletion_fraction=0.5
    )
    assert value(found, "wet patch") == pytest.approx(189.6, abs=0.1)
    assert value(found, "run time") == 60


def test_a_run_of_one_cycle_needs_no_soak() -> None:
    found = figures(method="sprinkler", rate_mm_per_h=24.0, run_minutes=10.0)
    assert value(found, "cycles needed") == 1
    assert "soak time" not in found


def test_drip_without_an_area_gives_no_time() -> None:
    found = figures(method="drip", area_m2=None, drippers=8, dripper_flow_l_per_h=2.0)
    assert "run time" not in found
    assert "wet patch" not in found
