"""What a garden needs in a month: numbers, words and both hemispheres."""

from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from howto.families.watering import garden
from howto.languages.reader import Reader, System
from howto.model.crew import Climate, Crew
from howto.quantities import convert
from tests.families.watering.test_figures import CLIMATE, VALLEY
from tests.support.told import ENGLISH, told


def half_a_year_on(months: tuple[float, ...]) -> tuple[float, ...]:
    return (*months[6:], *months[:6])


def south() -> Crew:
    """Return the same valley with its months turned, as far south."""
    turned: dict[str, Any] = {name: half_a_year_on(months) for name, months in CLIMATE.model_dump().items()}
    return Crew(hemisphere="south", latitude_deg=46, altitude_m=120, soil="clay loam", climate=Climate(**turned))


def litres_a_week(area_m2: float, crew: Crew, month: int, **more: str) -> float:
    """Return the litres a week to put on, which a crew with a climate can always be told."""
    found = garden.garden_water(crew, month, area_m2, **more)
    assert found is not None
    return found.litres_a_week


def test_reference_et_of_a_month() -> None:
    """Our valley in July, term by term as FAO-56 example 17 does it: 4.46 mm a day."""
    assert garden.reference_et_mm_per_day(CLIMATE, 46, 120, 7) == pytest.approx(4.461, abs=0.001)
    assert garden.year_of_reference_et(VALLEY)[6] == pytest.approx(4.461, abs=0.001)
    assert garden.thirstiest_month(VALLEY) == 7


def test_litres_a_week() -> None:
    """10 m² x 4.461 x 0.5 x 7 / 0.9 = 173.5 L a week."""
    assert litres_a_week(10, VALLEY, 7) == pytest.approx(173.5, abs=0.1)
    assert litres_a_week(10, VALLEY, 7, plant_water="low") == pytest.approx(69.4, abs=0.1)


def test_a_garden_with_its_working() -> None:
    found = garden.garden_water(
        VALLEY.model_copy(update={"soil": "light loam"}), 7, 140, crop="cool lawn", method="sprinkler"
    )
    assert found is not None
    assert found.coefficient == 0.95
    assert found.plant_mm_per_day == pytest.approx(4.238, abs=0.001)
    assert found.net_litres_a_week == pytest.approx(4153, abs=1)
    assert found.litres_a_week == pytest.approx(5538, abs=1)  # / 0.75
    assert found.days_between == 4  # 0.43 x 42 mm / 4.24 mm a day = 4.26
    assert ENGLISH.worked(found.working[0]) == "reference: 4.46 mm a day"
    assert any("tables 12 and 22" in str(reference) for reference in found.references)


def test_no_climate_no_litres() -> None:
    assert garden.garden_water(Crew(), 7, 10) is None
    assert garden.year_of_reference_et(Crew()) == ()
    assert garden.thirstiest_month(Crew()) is None


def test_the_south_has_its_summer_in_january() -> None:
    """The sun stands a little nearer in January, so the south's January is a little above the north's July."""
    assert garden.thirstiest_month(south()) == 1
    assert garden.signed_latitude(south()) == -46
    assert garden.signed_latitude(south().model_copy(update={"latitude_deg": -46.0})) == -46
    assert 173.5 < litres_a_week(10, south(), 1) < 173.5 * 1.06


def test_soils_are_found_by_their_words() -> None:
    assert garden.soil_of(VALLEY) == "clay loam"
    assert garden.soil_of(Crew(soil="light sandy loam")) == "sandy loam"
    assert garden.soil_of(Crew()) == "loam"


@pytest.mark.parametrize("wrong", [{"crop": "bananas"}, {"plant_water": "some"}, {"method": "rain dance"}])
def test_unknown_words_are_our_own_bug(wrong: dict[str, str]) -> None:
    with pytest.raises(KeyError):
        garden.garden_water(VALLEY, 7, 10, **wrong)


@pytest.mark.parametrize(
    ("litres", "times", "system", "words"),
    [
        (18, 2, "metric", "two full 9 L cans, twice a week"),
        (9, 1, "metric", "one full 9 L can, once a week"),
        (13, 2, "metric", "two 9 L cans, each three quarters full, twice a week"),
        (3, 1, "metric", "one 9 L can, half full, once a week"),
        (1, 7, "metric", "one 9 L can, a quarter full, every day"),
        (54, 3, "metric", "six full 9 L cans, 3 times a week"),
        (80, 1, "metric", "80 L, once a week"),
        (7.5, 2, "us", "one full 2 US gal can, twice a week"),
        (9.0, 2, "uk", "one full 2 UK gal can, twice a week"),
    ],
)
def test_the_simplest_true_words(litres: float, times: int, system: System, words: str) -> None:
    assert told(garden.can_words(litres, times, system), Reader(units=system)) == words


def test_a_can_of_ones_own() -> None:
    assert told(garden.can_words(20, 1, can_l=10)) == "two full 10 L cans, once a week"


@pytest.mark.parametrize(
    ("days", "times"), [(1, 7), (2, 4), (3, 3), (3.5, 2), (4, 2), (6, 2), (7, 1), (30, 1), (0.5, 7)]
)
def test_times_a_week(days: float, times: int) -> None:
    assert garden.times_a_week(days) == times


@given(area=st.floats(0.1, 1e4), month=st.integers(1, 12))
def test_double_the_area_double_the_litres(area: float, month: int) -> None:
    assert litres_a_week(2 * area, VALLEY, month) == pytest.approx(2 * litres_a_week(area, VALLEY, month))


@given(area_sq_ft=st.floats(1, 1e5), month=st.integers(1, 12))
def test_metric_and_imperial_agree(area_sq_ft: float, month: int) -> None:
    """An area in sq ft, and gallons by 0.6234 from inches, come to the same water."""
    found = garden.garden_water(VALLEY, month, convert(area_sq_ft, "ft2", "m2"))
    assert found is not None
    inches = convert(found.plant_mm_per_day * 7, "mm", "in")
    gallons = area_sq_ft * inches * 144 / 231
    assert convert(found.net_litres_a_week, "L", "US gal") == pytest.approx(gallons)
