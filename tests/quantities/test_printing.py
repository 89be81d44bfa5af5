"""How amounts are printed for a reader."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from howto.quantities import parse_in
from howto.quantities.printing import round_down, round_up, show, show_number, show_range, show_tolerance

S = "\u00a0"


@pytest.mark.parametrize(
    ("value", "unit", "printed"),
    [
        (900, "mm", "900 mm"),
        (12.5, "mm", "13 mm"),
        (9.96, "mm", "10 mm"),
        (3.25, "mm", "3.3 mm"),
        (0.02, "mm", "0.02 mm"),
        (0, "mm", "0 mm"),
        (999.6, "mm", "1 m"),
        (1234, "mm", "1.23 m"),
        (-1500, "mm", "−1.5 m"),
        (0.05, "m", "50 mm"),
        (0.45, "m", "0.45 m"),
        (0, "m", "0 m"),
        (12.345, "m", "12.35 m"),
        (60, "cm", "60 cm"),
        (1200, "cm", "12 m"),
        (140, "m2", "140 m²"),
        (1234.5, "m2", "1235 m²"),
        (0.25, "L", "250 mL"),
        (9, "L", "9 L"),
        (1500, "mL", "1.5 L"),
        (999.9, "g", "1 kg"),
        (999.4, "g", "999 g"),
        (0.3, "kg", "300 g"),
        (35, "g/m2", "35 g/m²"),
        (2, "L/m2", "2 L/m²"),
        (10, "mm/h", "10 mm/h"),
        (30, "°C", "30 °C"),
        (-5, "°C", "−5 °C"),
        (25, "%", "25 %"),
        (45, "deg", "45°"),
        (1 / 3, "1", "0.333"),
        (2, "hours", "2 h"),
        (1.5, "h", "1 h 30 min"),
        (-1.75, "h", "−1 h 45 min"),
        (0.5, "h", "30 min"),
        (12.5, "min", "12.5 min"),
        (89, "min", "89 min"),
        (90, "min", "1 h 30 min"),
        (95, "min", "1 h 35 min"),
        (120, "min", "2 h"),
        (1, "weeks", "1 week"),
        (6, "weeks", "6 weeks"),
        (1, "plants/m", "1 plant/m"),
        (6.667, "plants/m", "6.67 plants/m"),
        (5, "/m", "5/m"),
        (85, "dB(A)", "85 dB(A)"),
        (3.5, "m/s2", "3.5 m/s²"),
        (36, "in", "914 mm"),
        (86, "°F", "30 °C"),
        (5, "lb/1000 ft2", "24.4 g/m²"),
        (2, "US gal", "7.57 L"),
        (3, "UK fl oz", "85.2 mL"),
        (2, "oz/US gal", "15 g/L"),
        (1, "US gal/in", "1.49 L/cm"),
        (3, "US gal/100 sq ft", "1.22 L/m²"),
        (2, "US gal/min", "7.57 L/min"),
    ],
)
def test_a_metric_reader_is_shown(value: float, unit: str, printed: str) -> None:
    assert show(value, unit) == printed.replace(" ", S)


@pytest.mark.parametrize(
    ("value", "unit", "us", "uk"),
    [
        (0, "mm", "0 in", "0 in"),
        (1, "mm", "0.039 in", "0.039 in"),
        (5, "mm", "3/16 in", "3/16 in"),
        (9.5, "mm", "3/8 in", "3/8 in"),
        (35, "mm", "1 3/8 in", "1 3/8 in"),
        (45, "mm", "1¾ in", "1¾ in"),
        (275, "mm", "10¾ in", "10¾ in"),
        (600, "mm", "23½ in", "23½ in"),
        (609.6, "mm", "2 ft", "2 ft"),
        (607, "mm", "2 ft", "2 ft"),
        (900, "mm", "2 ft 11½ in", "2 ft 11½ in"),
        (1066.8, "mm", "3 ft 6 in", "3 ft 6 in"),
        (-1066.8, "mm", "−3 ft 6 in", "−3 ft 6 in"),
        (12.3, "m", "40 ft 4 in", "40 ft 4 in"),
        (45, "m", "148 ft", "148 ft"),
        (140, "m2", "1507 sq ft", "1507 sq ft"),
        (9, "L", "2.38 US gal", "1.98 UK gal"),
        (2, "L", "4.23 US pt", "3.52 UK pt"),
        (250, "mL", "8.45 US fl oz", "8.8 UK fl oz"),
        (300, "g", "10.6 oz", "10.6 oz"),
        (20, "kg", "44.1 lb", "44.1 lb"),
        (35, "g/m2", "7.17 lb/1000 sq ft", "7.17 lb/1000 sq ft"),
        (2, "L/m2", "4.91 US gal/100 sq ft", "4.09 UK gal/100 sq ft"),
        (3, "m3", "3.92 cu yd", "3.92 cu yd"),
        (0.1, "m3", "3.53 cu ft", "3.53 cu ft"),
        (30, "°C", "86 °F", "86 °F"),
        (413.7, "kPa", "60 psi", "60 psi"),
        (25.4, "mm/h", "1 in/h", "1 in/h"),
        (4, "m2/h", "43.1 sq ft/h", "43.1 sq ft/h"),
        (15, "g/L", "2 oz/US gal", "2.41 oz/UK gal"),
        (25, "%", "25 %", "25 %"),
        (6, "weeks", "6 weeks", "6 weeks"),
        (2.5, "m/s2", "2.5 m/s²", "2.5 m/s²"),
        (3, "1", "3", "3"),
        (2, "US gal", "2 US gal", "1.67 UK gal"),
    ],
)
def test_an_imperial_reader_is_shown(value: float, unit: str, us: str, uk: str) -> None:
    assert show(value, unit, "us") == us.replace(" ", S)
    assert show(value, unit, "uk") == uk.replace(" ", S)


def test_more_figures_can_be_asked_for() -> None:
    assert show(900, "mm", "us", 4) == f"35.43{S}in"
    assert show(35.55, "mm", digits=4) == f"35.55{S}mm"
    assert show(95.5, "min", digits=3) == f"95.5{S}min"
    assert show(4.8824, "g/m2", digits=2) == f"4.9{S}g/m²"


def test_a_system_that_is_none_of_the_three_is_our_own_mistake() -> None:
    with pytest.raises(ValueError, match="'imperial' is not one of metric, us, uk"):
        show(1, "mm", "imperial")


def test_a_tolerance_is_a_difference() -> None:
    assert show_tolerance(20, "mm") == f"±{S}20{S}mm"
    assert show_tolerance(20, "mm", "us") == f"±{S}¾{S}in"
    assert show_tolerance(2, "°C", "us") == f"±{S}3.6{S}°F"


@pytest.mark.parametrize(
    ("low", "high", "unit", "system", "printed"),
    [
        (600, 750, "mm", "metric", "600 to 750_mm"),
        (900, 1200, "mm", "metric", "0.9 to 1.2_m"),
        (50, 1200, "mm", "metric", "50_mm to 1.2_m"),
        (150, 300, "mm", "us", "6 to 11¾_in"),
        (600, 750, "mm", "us", "23½_in to 2_ft_5½_in"),
        (1, 3, "weeks", "metric", "1 to 3_weeks"),
        (5, 7, "plants/m", "metric", "5 to 7_plants/m"),
        (20, 25, "%", "metric", "20 to 25_%"),
        (-5, 5, "°C", "metric", "−5 to 5_°C"),
        (30, 45, "deg", "metric", "30 to 45°"),
        (35, 50, "g/m2", "us", "7.17 to 10.2_lb/1000_sq_ft"),
        (900.1, 900.2, "mm", "metric", "900_mm"),
        (0.25, 0.5, "1", "metric", "0.25 to 0.5"),
    ],
)
def test_a_range_says_the_unit_once(low: float, high: float, unit: str, system: str, printed: str) -> None:
    assert show_range(low, high, unit, system) == printed.replace("_", S)


@pytest.mark.parametrize(
    ("value", "digits", "printed"),
    [
        (0, 3, "0"),
        (1234.56, 3, "1235"),
        (12.34, 3, "12.3"),
        (0.012345, 3, "0.0123"),
        (2.675, 3, "2.68"),
        (999.96, 3, "1000"),
        (1e9, 3, "1000000000"),
        (1e-4, 3, "0.0001"),
        (-2.5, 1, "−3"),
        (1e-300, 3, "0"),
        (-1e-300, 3, "0"),
        (1000, 3, "1000"),
    ],
)
def test_a_number_is_rounded_to_figures(value: float, digits: int, printed: str) -> None:
    assert show_number(value, digits) == printed


def test_rounding_to_steps_is_free_of_dust() -> None:
    assert round_up(0.3, 0.1) == 0.3
    assert round_down(0.3, 0.1) == 0.3
    assert round_up(0.1 + 0.2, 0.1) == 0.3
    assert round_down(0.7 * 3, 0.1) == 2.1
    assert round_up(28.6, 1) == 29
    assert round_down(40.9, 5) == 40
    assert round_up(-0.5, 1) == 0
    assert round_down(-0.5, 1) == -1


@given(st.floats(-1e6, 1e6), st.sampled_from([0.01, 0.1, 0.25, 1, 5, 50]))
def test_rounding_goes_the_way_it_says_by_less_than_a_step(value: float, step: float) -> None:
    up, down = round_up(value, step), round_down(value, step)
    assert value - 1e-6 * step <= up < value + step * 1.000001 + 1e-9
    assert value - step * 1.000001 - 1e-9 < down <= value + 1e-6 * step + 1e-9


SHOWN = st.sampled_from(
    [
        "mm",
        "cm",
        "m",
        "m2",
        "m3",
        "L",
        "mL",
        "g",
        "kg",
        "g/m2",
        "kg/m2",
        "L/m2",
        "mm/h",
        "kPa",
        "min",
        "h",
        "weeks",
        "plants/m",
        "/m2",
        "g/cm",
        "L/cm",
        "g/L",
        "mL/L",
        "kg/m3",
        "m/s",
        "km/h",
        "N",
        "kN",
        "N/mm2",
        "deg",
        "%",
        "1",
        "mm/m",
        "kg/m",
        "N/m",
        "L/min",
        "mm/day",
        "MJ/m2",
        "dB(A)",
    ]
)


@given(st.floats(10, 5000), SHOWN, st.sampled_from(["metric", "us", "uk"]))
def test_what_is_shown_reads_back_close(value: float, unit: str, system: str) -> None:
    back, tolerance = parse_in(show(value, unit, system), unit)
    assert tolerance is None
    assert back == pytest.approx(value, rel=0.06)


@given(st.floats(-50, 60), st.sampled_from(["metric", "us", "uk"]))
def test_a_temperature_shown_reads_back_close(value: float, system: str) -> None:
    assert parse_in(show(value, "°C", system), "°C")[0] == pytest.approx(value, abs=0.6)
