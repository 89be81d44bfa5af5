"""The figures of new trees and shrubs, through a technique."""

from datetime import date

import pytest

from tests.families.watering.test_figures import CLIMATE, VALLEY, figures, value


def test_w39_to_w42_through_a_technique() -> None:
    """University of Minnesota Extension (A): 5.08 cm takes 7.6 to 11.4 L, 37 to 49 times in 12 weeks."""
    found = figures(method="can", calliper_mm=50.8, area_m2=None)
    assert found["litres a plant"].value == "7.57 to 11.4 L"
    assert found["waterings in 12 weeks"].value == "37 to 49"
    assert "settled by" not in found


def test_first_year_has_its_dates() -> None:
    found = figures(method="can", pot_l=10.0, plant_count=6, planted_weeks=3.0)
    table = found["first year"].table
    assert table is not None
    assert table.rows == (
        ("Weeks 1 to 2", date(2027, 3, 15), date(2027, 3, 28), "day", "2.5 to 3 L"),
        ("Weeks 3 to 12", date(2027, 3, 29), date(2027, 6, 6), "2 to 3 days", "2.5 to 3 L"),
        ("To the end of the year", date(2027, 6, 7), date(2028, 3, 13), "7 days", "2.5 to 3 L"),
    )
    assert found["first year"].value == "every 2 to 3 days now"
    assert value(found, "litres all plants") == pytest.approx(16.5)
    assert found["cans"].value == "two full 9 L cans, 3 times a week"


def test_where_summers_are_warm() -> None:
    """UF/IFAS (A): 2 US gal an inch, and 3 to 4 months an inch to root, 1 to 2 more from a pot."""
    found = figures(method="can", calliper_mm=50.8, summer="warm")
    assert found["litres a plant"].value == "15.1 to 22.7 L"
    assert found["settled by"].value == date(2027, 12, 4)  # 2 in x 4 months = 8 months, 243 days
    potted = figures(method="can", calliper_mm=50.8, summer="warm", pot_l=40.0)
    assert potted["settled by"].value == date(2028, 4, 4)  # and 2 in x 2 months more: 12 months, 365 days


def test_hot_climates_are_warm_of_themselves() -> None:
    hot = VALLEY.model_copy(update={"climate": CLIMATE.model_copy(update={"max_c": (31.0,) * 12})})
    assert figures(crew=hot, method="can", calliper_mm=50.8)["litres a plant"].value == "15.1 to 22.7 L"
    assert figures(crew=VALLEY, method="can", calliper_mm=50.8)["litres a plant"].value == "7.57 to 11.4 L"


def test_warm_shrubs_keep_the_pot_and_the_warm_calendar() -> None:
    found = figures(method="can", pot_l=10.0, summer="warm")
    assert found["litres a plant"].value == "2.5 to 3 L"
    assert found["waterings in 12 weeks"].value == "46"  # 14 + 61 / 2 + 9 / 7
    assert len(found["first year"].references) == 2
