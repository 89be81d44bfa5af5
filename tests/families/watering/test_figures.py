"""The figures of watering: worked answers through a technique, what is left out, and that nothing ever crashes."""

from datetime import date
from typing import Any

import pytest
from hypothesis import given

from howto.families.watering import FAMILY
from howto.model.crew import Climate, Crew
from howto.model.figure import Figure
from howto.model.plants import Plant, PlantBook, VouchedWords
from howto.model.reference import Grade
from tests.families.watering.test_rules import MEASURES
from tests.support.builders import technique
from tests.support.told import told_figure

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
    """Return the figures by name, told to a reader of metric English."""
    made = technique(FAMILY, having, crew=crew, book=book, **measures)
    return {figure.name: told_figure(figure) for figure in FAMILY.figures(made, today)}


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
        reference_et_mm_per_day=None, day_max_c=25.0, day_min_c=19.0, extraterrestrial_radiation_mj_per_m2=32.0
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


def test_next_to_no_water_is_none() -> None:
    assert "days between" not in figures(reference_et_mm_per_day=1e-300)


def test_the_plant_book_says_how_thirsty() -> None:
    thirsty = VouchedWords(text="high", source="from memory", grade=Grade.MEMORY)
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


def test_an_impossible_soil_leaves_out_what_stands_on_it() -> None:
    found = figures(field_capacity_percent=10.0, wilting_point_percent=20.0, wanted_depth_mm=20.0)
    assert not {"soil holds", "easy water", "wetted depth", "days between"} & set(found)
    assert value(found, "litres each time") == pytest.approx(266.7, abs=0.1)  # 12 m² x 20 mm / 0.9


def test_headlines_and_client_figures() -> None:
    found = figures(crew=VALLEY)
    assert [each.name for each in found.values() if each.headline] == ["litres each time"]
    assert {each.name for each in found.values() if each.client} >= {"litres a week", "cans", "days between"}


def test_nothing_tells_a_depth() -> None:
    found = figures(reference_et_mm_per_day=None, field_capacity_percent=10.0, wilting_point_percent=20.0)
    assert set(found) == {"plant factor"}


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


@given(measures=MEASURES)
def test_no_measures_crash_it(measures: dict[str, Any]) -> None:
    made = technique(FAMILY, crew=VALLEY, **measures)
    names = [figure.name for figure in FAMILY.figures(made, TODAY)]
    assert len(names) == len(set(names))
    assert len(names) >= 4  # an impossible soil leaves out what stands on it
