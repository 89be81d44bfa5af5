"""Units against NIST SP 811 (2008), appendix B.8, against a second library, and against their own names."""

import math
from typing import Any

import pint
import pytest
from hypothesis import given
from hypothesis import strategies as st

from howto.quantities import units
from howto.quantities.units import QuantityError, convert, convert_difference, field_unit, kind, known_unit

PINT: Any = pint.UnitRegistry()

# NIST SP 811 (2008), appendix B.8: value in the unit named, its SI factor, and the places printed there.
SP_811 = [
    ("in", "m", 2.54e-02),
    ("ft", "m", 3.048e-01),
    ("yd", "m", 9.144e-01),
    ("mi", "km", 1.609344e00),
    ("in2", "cm2", 6.4516e00),
    ("ft2", "m2", 9.290304e-02),
    ("yd2", "m2", 8.361274e-01),
    ("ha", "m2", 1.0e04),
    ("in3", "m3", 1.638706e-05),
    ("ft3", "m3", 2.831685e-02),
    ("yd3", "m3", 7.645549e-01),
    ("US gal", "L", 3.785412e00),
    ("UK gal", "L", 4.54609e00),
    ("US qt", "L", 9.463529e-01),
    ("US pt", "L", 4.731765e-01),
    ("US fl oz", "mL", 2.957353e01),
    ("UK fl oz", "mL", 2.841306e01),
    ("oz", "g", 2.834952e01),
    ("lb", "kg", 4.535924e-01),
    ("US ton", "kg", 9.071847e02),
    ("UK ton", "kg", 1.016047e03),
    ("lbf", "N", 4.448222e00),
    ("kgf", "N", 9.80665e00),
    ("lbf/ft", "N/m", 1.459390e01),
    ("psi", "kPa", 6.894757e00),
    ("bar", "kPa", 1.0e02),
    ("atm", "kPa", 1.01325e02),
    ("mph", "km/h", 1.609344e00),
    ("mph", "m/s", 4.4704e-01),
    ("ft/s", "m/s", 3.048e-01),
    ("lb/ft3", "kg/m3", 1.601846e01),
    ("lb/ft", "kg/m", 1.488164e00),
    ("lb/in", "kg/m", 1.785797e01),
    ("lb/ft2", "kg/m2", 4.882428e00),
    ("oz/yd2", "kg/m2", 3.390575e-02),
    ("oz/US gal", "kg/m3", 7.489152e00),
    ("oz/UK gal", "kg/m3", 6.236023e00),
    ("US gal/min", "L/s", 6.309020e-02),
    ("deg", "rad", 1.745329e-02),
    ("day", "s", 8.64e04),
    ("h", "s", 3.6e03),
    ("year", "s", 3.1536e07),
]


@pytest.mark.parametrize(("source", "target", "factor"), SP_811)
def test_a_factor_is_that_of_sp_811_b_8(source: str, target: str, factor: float) -> None:
    assert float(f"{convert(1, source, target):.6e}") == factor


# Worked examples with their tolerance: conversions by the factors of SP 811, appendix B.8.
WORKED = [
    (105, "°F", "°C", 40.6, 0.1),
    (88, "°F", "°C", 31.1, 0.1),
    (35, "°C", "°F", 95, 0.1),
    (60, "psi", "kPa", 413.7, 0.1),
    (2.5, "bar", "psi", 36.3, 0.1),
    (2, "oz/US gal", "g/L", 14.98, 0.01),
    (3, "lb/1000 ft2", "g/m2", 14.65, 0.01),
    (50, "US gal/acre", "L/ha", 467.7, 0.1),  # printed to one place
]


@pytest.mark.parametrize(("value", "source", "target", "expected", "within"), WORKED)
def test_a_worked_example_comes_out(value: float, source: str, target: str, expected: float, within: float) -> None:
    assert convert(value, source, target) == pytest.approx(expected, abs=within)


# How a second units library names ours, where its name differs.
ELSEWHERE = {
    "in": "inch", "L": "litre", "mL": "millilitre", "t": "tonne", "US ton": "short_ton", "UK ton": "long_ton",
    "s²": "second**2", "h": "hour", "month": "common_year/12", "year": "common_year", "K": "kelvin",
    "°C": "delta_degree_Celsius", "°F": "delta_degree_Fahrenheit",
    "°": "degree", "rad": "radian", "kgf": "kilogram_force",
    "lbf": "pound_force", "acre": "43560*foot**2", "mi": "mile", "mph": "mile/hour", "dB(A)": None, "%": "percent",
    "dS": "decisiemens", "mS": "millisiemens",
    "US gal": "gallon", "US qt": "quart", "US pt": "pint", "US fl oz": "fluid_ounce",
    "UK gal": "imperial_gallon", "UK qt": "imperial_quart", "UK pt": "imperial_pint",
    "UK fl oz": "imperial_fluid_ounce",
    "sq in": "inch**2", "sq ft": "foot**2", "sq yd": "yard**2", "sq mi": "mile**2",
    "cu in": "inch**3", "cu ft": "foot**3", "cu yd": "yard**3", "cu mi": "mile**3",
    "mm²": "mm**2", "cm²": "cm**2", "m²": "m**2", "km²": "km**2",
    "mm³": "mm**3", "cm³": "cm**3", "m³": "m**3", "km³": "km**3",
}  # fmt: skip
COUNTED = {
    "plant", "tree", "shrub", "bush", "bulb", "seed", "cutting", "vine", "stake", "tie", "piece", "person", "pass",
    "row", "time", "cut", "pot",
}  # fmt: skip


@pytest.mark.parametrize("name", units.UNIT_NAMES)
def test_every_unit_agrees_with_a_second_library(name: str) -> None:
    unit = known_unit(name)
    assert unit is not None
    if unit.symbol in COUNTED:
        assert unit.factor == 1
        return
    elsewhere = ELSEWHERE.get(unit.symbol, unit.symbol)
    if elsewhere is None:  # dB(A) is a level, not a size: it has no factor to disagree about
        return
    base = (1 * PINT.parse_expression(elsewhere)).to_base_units()
    assert float(unit.factor) == pytest.approx(float(base.magnitude), rel=1e-12)


@pytest.mark.parametrize(
    ("text", "printed"),
    [
        ("L/m2", "L/m²"),
        ("litres per square metre", "L/m²"),
        ("Litres / m^2", "L/m²"),
        ("lb per 1000 sq ft", "lb/1000 sq ft"),
        ("g/m2/week", "g/m²/week"),
        ("MJ/m2 per day", "MJ/m²/day"),
        ("/m", "/m"),
        ("1/m", "/m"),
        ("per metre", "/m"),
        ("plants/m", "plants/m"),
        ("sq. yards", "sq yd"),
        ("metres squared", "m²"),
        ("in.", "in"),
        ("gallons (US)", "US gal"),
        ("imperial pint", "UK pt"),
        ("N·m", "N·m"),
        ("N*m", "N·m"),
        ("degrees C", "°C"),
        ("dBA", "dB(A)"),
        ("weeks", "weeks"),
        ("1", ""),
        ("", ""),
    ],
)
def test_a_unit_is_read_in_the_ways_it_is_written(text: str, printed: str) -> None:
    unit = known_unit(text)
    assert unit is not None
    assert unit.many == printed


@pytest.mark.parametrize(
    "text", ["M", "Mm", "KG", "mmm", "gal", "L/", "/", "L/0 m2", "·m", "per m·m2", "m2x", "1 m", "2/m"]
)
def test_what_is_not_a_unit_is_not_read_as_one(text: str) -> None:
    assert known_unit(text) is None


def test_a_number_below_the_line_multiplies_the_unit_under_it() -> None:
    assert convert(5, "L/100 m2", "L/m2") == 0.05
    assert convert(1.5, "L per 2.5 m2", "L/m2") == 0.6


def test_a_temperature_keeps_its_place_on_the_scale_and_a_difference_does_not() -> None:
    assert convert(30, "°C", "°F") == 86
    assert convert(-40, "°F", "°C") == -40
    assert convert(0, "°C", "K") == 273.15
    assert convert_difference(2, "°C", "°F") == 3.6
    assert convert_difference(9, "°F", "°C") == 5


def test_no_dust_is_left_by_a_conversion() -> None:
    assert [convert(value / 10, "mm", "m") for value in (2.9, 11, 350)] == [0.00029, 0.0011, 0.035]
    assert convert(0.29, "m", "mm") == 290
    assert convert(45, "deg", "deg") == 45
    assert convert(88, "°F", "°F") == 88


def test_two_kinds_of_measure_are_not_converted() -> None:
    with pytest.raises(QuantityError) as refused:
        convert(1, "mm", "kg")
    assert refused.value.what == "a length is written"
    assert refused.value.why == "mm and kg measure different things"
    assert refused.value.mend == "write a weight"
    with pytest.raises(QuantityError, match="mm and a plain number measure"):
        convert_difference(1, "mm", "1")
    with pytest.raises(QuantityError, match="a plain number and mm measure"):
        convert(1, "1", "mm")


def test_a_name_that_is_no_unit_is_refused() -> None:
    with pytest.raises(QuantityError, match="`cubit` is used as a unit: no unit of that name is known"):
        convert(1, "cubit", "mm")


@pytest.mark.parametrize("value", [math.nan, math.inf, -math.inf])
def test_a_number_without_end_is_refused(value: float) -> None:
    with pytest.raises(QuantityError, match="a number without end"):
        convert(value, "mm", "m")


@pytest.mark.parametrize(
    ("unit", "words"),
    [
        ("mm", "a length"),
        ("L/m2", "a measure in L/m²"),
        ("plants/m", "a measure in plants/m"),
        ("%", "a share in %"),
        ("1", "a plain number"),
        ("N·m", "a measure in N·m"),
        ("Hz", "a measure in Hz"),
    ],
)
def test_what_a_unit_measures_is_said_in_words(unit: str, words: str) -> None:
    known = known_unit(unit)
    assert known is not None
    assert kind(known) == words


@pytest.mark.parametrize(
    ("name", "key", "unit"),
    [
        ("finished_width_mm", "finished width", "mm"),
        ("spacing_cm", "spacing", "cm"),
        ("run_m", "run", "m"),
        ("area_m2", "area", "m2"),
        ("heap_m3", "heap", "m3"),
        ("can_l", "can", "L"),
        ("dose_ml", "dose", "mL"),
        ("share_g", "share", "g"),
        ("lift_kg", "lift", "kg"),
        ("batter_deg", "batter", "deg"),
        ("warmest_c", "warmest", "°C"),
        ("clay_percent", "clay", "%"),
        ("cut_fraction", "cut", "1"),
        ("gap_days", "gap", "days"),
        ("gap_weeks", "gap", "weeks"),
        ("gap_months", "gap", "months"),
        ("age_years", "age", "years"),
        ("soak_minutes", "soak", "min"),
        ("work_hours", "work", "h"),
        ("dip_seconds", "dip", "s"),
        ("growth_mm_per_day", "growth", "mm/day"),
        ("growth_mm_per_week", "growth", "mm/week"),
        ("growth_mm_per_month", "growth", "mm/month"),
        ("growth_mm_per_year", "growth", "mm/year"),
        ("rain_mm_per_h", "rain", "mm/h"),
        ("rate_g_per_m2", "rate", "g/m2"),
        ("rate_kg_per_m2", "rate", "kg/m2"),
        ("rate_l_per_m2", "rate", "L/m2"),
        ("clipping_rate_m2_per_h", "clipping rate", "m2/h"),
        ("flow_l_per_h", "flow", "L/h"),
        ("flow_l_per_min", "flow", "L/min"),
        ("flow_l_per_week", "flow", "L/week"),
        ("mix_g_per_l", "mix", "g/L"),
        ("mix_ml_per_l", "mix", "mL/L"),
        ("density_kg_per_m3", "density", "kg/m3"),
        ("wind_m_per_s", "wind", "m/s"),
        ("vibration_m_per_s2", "vibration", "m/s2"),
        ("wind_km_per_h", "wind", "km/h"),
        ("noise_db", "noise", "dB(A)"),
        ("pressure_kpa", "pressure", "kPa"),
        ("pull_n", "pull", "N"),
        ("pull_kn", "pull", "kN"),
        ("plants_per_m", "plants", "/m"),
        ("plants_per_m2", "plants", "/m2"),
        ("wire_kg_per_m", "wire", "kg/m"),
        ("load_n_per_m", "load", "N/m"),
        ("feed_g_per_cm", "feed", "g/cm"),
        ("feed_l_per_cm", "feed", "L/cm"),
        ("fall_mm_per_m", "fall", "mm/m"),
        ("stiffness_n_per_mm2", "stiffness", "N/mm2"),
        ("sun_mj_per_m2", "sun", "MJ/m2"),
        ("growth_stage", "growth stage", None),
        ("minutes", "minutes", None),
        ("_mm", " mm", None),
    ],
)
def test_a_field_name_gives_the_key_and_the_unit(name: str, key: str, unit: str | None) -> None:
    assert field_unit(name) == (key, unit)
    assert unit is None or known_unit(unit) is not None


SIMILAR = st.sampled_from(
    [
        ("mm", "in"),
        ("m2", "sq ft"),
        ("L", "UK gal"),
        ("g/m2", "lb/1000 ft2"),
        ("°C", "°F"),
        ("kPa", "psi"),
        ("deg", "rad"),
    ]
)


@given(st.floats(-1e6, 1e6), SIMILAR)
def test_there_and_back_is_the_same(value: float, pair: tuple[str, str]) -> None:
    there = convert(value, *pair)
    assert convert(there, pair[1], pair[0]) == pytest.approx(value, rel=1e-12, abs=1e-9)


@given(st.floats(0.001, 1e6), st.floats(0.001, 1e6), SIMILAR)
def test_a_difference_is_the_difference_of_two_places(low: float, step: float, pair: tuple[str, str]) -> None:
    apart = convert(low + step, *pair) - convert(low, *pair)
    assert convert_difference(step, *pair) == pytest.approx(apart, rel=1e-6, abs=1e-6)
