"""The figures of watering: worked answers through a technique, what is left out, and that nothing ever crashes."""

from datetime import date
from typing import Any

import pytest
from hypothesis import HealthCheck, given, settings

from howto.families.watering import FAMILY
from howto.families.watering.measures import WateringMeasures
from howto.model.crew import Climate, Crew
from howto.model.figure import Figure
from howto.model.plants import Plant, PlantBook, Words
from howto.model.reference import Grade
from howto.model.technique import Technique
from tests.families.watering.test_rules import MEASURES
from tests.support.builders import technique

TODAY = date(2027, 4, 5)
CLIMATE = Climate(
    max_c=(5, 7, 12, 16, 20, 24, 27, 26, 22, 16, 10, 6),
    min_c=(-2, -1, 2, 5, 9, 13, 15, 14, 11, 7, 2, -1),
    humidity_percent=(82, 78, 72, 68, 68, 66, 64, 66, 72, 78, 82, 84),
    wind_m_per_s=(2.4, 2.4, 2.5, 2.3, 2.0, 1.9, 1.8, 1.7, 1.8, 2.0, 2.2, 2.3),
    sunshine_hours=(2.2, 3.4, 5.0, 6.2, 7.2, 8.4, 9.0, 8.2, 6.4, 4.4, 2.6, 1.9),
)
VALLEY = Crew(latitude_deg=46, altitude_m=120, soil="clay loam", climate=CLIMATE)


def figures(
    having: dict[str, Any] | None = None,
    crew: Crew | None = None,
    book: PlantBook | None = None,
    today: date = TODAY,
    **measures: Any,
) -> dict[str, Figure]:
    made: Technique[WateringMeasures] = technique(FAMILY, having, crew=crew, book=book, **measures)
    return {figure.name: figure for figure in FAMILY.figures(made, today)}


def value(found: dict[str, Figure], name: str) -> float:
    amount = found[name].value
    assert isinstance(amount, float | int)
    return float(amount)


def test_w1_through_a_technique() -> None:
    """FAO-56 example 17, Bangkok in April (B): 5.72 within 0.02."""
    found = figures(
        reference_et_mm_per_day=None,
        day_max_c=34.8,
        day_min_c=25.6,
        vapour_pressure_kpa=2.85,
        wind_m_per_s=2.0,
        sunshine_hours=8.5,
        month_mean_c=30.2,
        previous_month_mean_c=29.2,
        latitude_deg=13 + 44 / 60,
        altitude_m=2.0,
        day_of_year=105,
    )
    assert value(found, "reference et") == pytest.approx(5.72, abs=0.02)
    assert "Ra 38.1" in found["reference et"].working[2]


def test_w2_through_a_technique() -> None:
    """FAO-56 example 18, Uccle (B): 3.88 within 0.02; the wind stands at 10 m."""
    found = figures(
        reference_et_mm_per_day=None,
        day_max_c=21.5,
        day_min_c=12.3,
        humidity_max_percent=84.0,
        humidity_min_percent=63.0,
        wind_m_per_s=2.78,
        wind_height_m=10.0,
        sunshine_hours=9.25,
        latitude_deg=50.8,
        altitude_m=100.0,
        day_of_year=187,
    )
    assert value(found, "reference et") == pytest.approx(3.88, abs=0.02)


def test_w6_through_a_technique() -> None:
    """Trap T-8: 2.93 mm a day from Ra of 32 MJ/m², and the line says that it was turned into mm."""
    found = figures(
        reference_et_mm_per_day=None,
        day_max_c=25.0,
        day_min_c=19.0,
        extraterrestrial_radiation_mj_per_m2=32.0,
    )
    assert value(found, "reference et") == pytest.approx(2.93, abs=0.01)
    assert "32 MJ/m² a day x 0.408 = 13.1 mm a day" in found["reference et"].working[1]
    assert "from memory" in str(found["reference et"].references[0])


def test_w15_through_a_technique() -> None:
    """KL 0.66; 88 L a day applied on 20 m² (B)."""
    found = figures(
        area_m2=20.0,
        plant_water="moderate",
        density_factor=1.1,
        microclimate_factor=1.2,
        reference_et_mm_per_day=6.0,
        efficiency_percent=90.0,
        interval_days=1.0,
    )
    assert value(found, "plant factor") == pytest.approx(0.66)
    assert value(found, "litres each time") == pytest.approx(88, abs=1)
    assert value(found, "litres a week") == pytest.approx(616, abs=1)


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


def test_w36_through_a_technique() -> None:
    """TAW 42, RAW 16.8 mm, 3 days in practice (B)."""
    found = figures(crop="cool lawn", reference_et_mm_per_day=5.0, depletion_fraction=0.40)
    assert value(found, "plant use") == pytest.approx(4.75)
    assert value(found, "soil holds") == pytest.approx(42, abs=0.1)
    assert value(found, "easy water") == pytest.approx(16.8, abs=0.1)
    assert value(found, "days between") == 3
    assert value(found, "depth each time") == pytest.approx(14.25)


def test_w35_through_a_technique() -> None:
    """TAW 60, p 0.5, 45 mm gone: Ks 0.50 (A)."""
    found = figures(
        field_capacity_percent=30.0,
        wilting_point_percent=10.0,
        root_depth_mm=300.0,
        depletion_fraction=0.5,
        dried_mm=45.0,
    )
    assert value(found, "soil holds") == pytest.approx(60)
    assert value(found, "water stress") == pytest.approx(0.50, abs=0.01)
    assert figures(dried_mm=1.0)["water stress"].value == 1


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


def test_w39_to_w42_through_a_technique() -> None:
    """University of Minnesota Extension (A): 5.08 cm takes 7.6 to 11.4 L, 37 to 49 times in 12 weeks."""
    found = figures(method="can", calliper_mm=50.8, area_m2=None)
    assert found["litres a plant"].value == "7.57 to 11.4\u00a0L"
    assert found["waterings in 12 weeks"].value == "37 to 49"
    assert "settled by" not in found


def test_first_year_has_its_dates() -> None:
    found = figures(method="can", pot_l=10.0, plant_count=6, planted_weeks=3.0)
    table = found["first year"].table
    assert table is not None
    assert table.rows == (
        ("Weeks 1 to 2", date(2027, 3, 15), date(2027, 3, 28), "day", "2.5 to 3\u00a0L"),
        ("Weeks 3 to 12", date(2027, 3, 29), date(2027, 6, 6), "2 to 3 days", "2.5 to 3\u00a0L"),
        ("To the end of the year", date(2027, 6, 7), date(2028, 3, 13), "7 days", "2.5 to 3\u00a0L"),
    )
    assert found["first year"].value == "every 2 to 3 days now"
    assert value(found, "litres all plants") == pytest.approx(16.5)
    assert found["cans"].value == "two full 9\u00a0L cans, 3 times a week"


def test_where_summers_are_warm() -> None:
    """UF/IFAS (A): 2 US gal an inch, and 3 to 4 months an inch to root, 1 to 2 more from a pot."""
    found = figures(method="can", calliper_mm=50.8, summer="warm")
    assert found["litres a plant"].value == "15.1 to 22.7\u00a0L"
    assert found["settled by"].value == date(2027, 12, 4)  # 2 in x 4 months = 8 months, 243 days
    potted = figures(method="can", calliper_mm=50.8, summer="warm", pot_l=40.0)
    assert potted["settled by"].value == date(2028, 4, 4)  # and 2 in x 2 months more: 12 months, 365 days


def test_hot_climates_are_warm_of_themselves() -> None:
    hot = VALLEY.model_copy(update={"climate": CLIMATE.model_copy(update={"max_c": (31.0,) * 12})})
    assert figures(crew=hot, method="can", calliper_mm=50.8)["litres a plant"].value == "15.1 to 22.7\u00a0L"
    assert figures(crew=VALLEY, method="can", calliper_mm=50.8)["litres a plant"].value == "7.57 to 11.4\u00a0L"


def test_a_year_of_climate_stands_in_a_table() -> None:
    found = figures(crew=VALLEY, reference_et_mm_per_day=None, month="april", plant_water="moderate")
    table = found["reference et"].table
    assert table is not None
    assert len(table.rows) == 12
    assert table.rows[3][0] == "April"
    assert table.rows[3][1] == found["reference et"].value
    assert found["reference et"].value == pytest.approx(2.45, abs=0.005)
    thirsty = figures(crew=VALLEY, reference_et_mm_per_day=None)
    assert thirsty["reference et"].working[0].startswith("July, monthly means, latitude 46°")


def test_without_weather_there_is_less_and_nothing_is_made_up() -> None:
    found = figures(reference_et_mm_per_day=None)
    assert set(found) == {
        "plant factor",
        "soil holds",
        "easy water",
        "depth each time",
        "wetted depth",
        "litres each time",
    }


def test_no_water_is_used_in_the_dark() -> None:
    found = figures(reference_et_mm_per_day=0.0)
    assert "days between" not in found
    assert "cans" not in found
    assert value(found, "litres a week") == 0


def test_the_plant_book_says_how_thirsty() -> None:
    thirsty = Words(text="high", source="from memory", grade=Grade.MEMORY)
    book = PlantBook(plants=(Plant(botanical="Betula nigra", kind="deciduous", water=thirsty),))
    found = figures({"plants": ("Betula nigra",)}, book=book, plant_water=None)
    assert value(found, "plant factor") == pytest.approx(0.8)
    assert "Betula nigra: high water use" in found["plant factor"].working[0]
    unknown = PlantBook(plants=(Plant(botanical="Betula nigra", kind="deciduous"),))
    silent = figures({"plants": ("Betula nigra",)}, book=unknown, plant_water=None)
    assert "moderate water use taken" in silent["plant factor"].working[0]
    assert "moderate water use taken" in figures(plant_water=None)["plant factor"].working[0]


@pytest.mark.parametrize(
    ("measures", "factor"),
    [
        ({"crop": "cool lawn", "stage": "start"}, 0.90),
        ({"crop": "tomato"}, 1.15),
        ({"crop": "tomato", "stage": "end"}, 0.80),
        ({"crop_coefficient": 0.7}, 0.7),
        ({"species_factor": 0.3, "density": "high"}, 0.36),
        ({"plant_water": "low", "microclimate": "low"}, 0.14),
    ],
)
def test_plant_factors(measures: dict[str, Any], factor: float) -> None:
    assert value(figures(**measures), "plant factor") == pytest.approx(factor)


def test_shallow_crops_are_reckoned_shallow() -> None:
    assert "roots 200 mm deep" in figures(crop="strawberry", root_depth_mm=None)["soil holds"].working[0]
    assert "roots 300 mm deep" in figures(crop="walnut", root_depth_mm=None)["soil holds"].working[0]


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


def test_an_impossible_soil_leaves_out_what_stands_on_it() -> None:
    found = figures(field_capacity_percent=10.0, wilting_point_percent=20.0, wanted_depth_mm=20.0)
    assert not {"soil holds", "easy water", "wetted depth", "days between"} & set(found)
    assert value(found, "litres each time") == pytest.approx(266.7, abs=0.1)  # 12 m² x 20 mm / 0.9


def test_warm_shrubs_keep_the_pot_and_the_warm_calendar() -> None:
    found = figures(method="can", pot_l=10.0, summer="warm")
    assert found["litres a plant"].value == "2.5 to 3\u00a0L"
    assert found["waterings in 12 weeks"].value == "46"  # 14 + 61 / 2 + 9 / 7
    assert len(found["first year"].references) == 2


def test_drip_without_an_area_gives_no_time() -> None:
    found = figures(method="drip", area_m2=None, drippers=8, dripper_flow_l_per_h=2.0)
    assert "run time" not in found
    assert "wet patch" not in found


def test_headlines_and_client_figures() -> None:
    found = figures(crew=VALLEY)
    assert [each.name for each in found.values() if each.headline] == ["litres each time"]
    assert {each.name for each in found.values() if each.client} >= {"litres a week", "cans", "days between"}


@pytest.mark.parametrize(
    "measures",
    [
        {"method": "hose"},
        {"method": "sprinkler", "rate_mm_per_h": 12.0},
        {"method": "can", "pot_l": 5.0},
        {"method": "drip", "calliper_mm": 30.0, "drippers": 2, "dripper_flow_l_per_h": 2.0},
    ],
)
def test_at_least_six(measures: dict[str, Any]) -> None:
    found = figures(**measures)
    assert len(found) >= 6
    assert all(figure.working and figure.references for figure in found.values())


@settings(max_examples=150, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(measures=MEASURES)
def test_no_measures_crash_it(measures: dict[str, Any]) -> None:
    made = technique(FAMILY, crew=VALLEY, **measures)
    names = [figure.name for figure in FAMILY.figures(made, TODAY)]
    assert len(names) == len(set(names))
    assert len(names) >= 4  # an impossible soil leaves out what stands on it
