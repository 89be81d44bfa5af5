"""The rules over safety's own measures: what breaks each, what stands at its limits, and its mend."""

from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from howto.families.safety import FAMILY
from howto.families.safety.measures import SafetyMeasures
from howto.findings import Severity
from howto.model.crew import Crew
from howto.model.family import Breach, Rule
from howto.model.prose import prose
from howto.model.technique import Hazard
from howto.model.work import AnyWork
from tests.support.builders import assert_mends, breaches, mended, only, technique

RULES: dict[str, Rule[SafetyMeasures]] = {rule.name.removeprefix("safety."): rule for rule in FAMILY.rules}
BARE: dict[str, Any] = dict.fromkeys(("noise_db", "noise_time_minutes", "vibration_m_per_s2", "trigger_time_minutes"))


def safe(crew: Crew | None = None, having: dict[str, Any] | None = None, **measures: Any) -> AnyWork:
    """A technique with only the measures a test is about."""
    return technique(FAMILY, having or {}, crew=crew, **{**BARE, **measures})


def found(name: str, broken: AnyWork) -> list[Breach]:
    return breaches(RULES[name], broken)


def one(name: str, broken: AnyWork) -> Breach:
    return only(RULES[name], broken)


LIFT: dict[str, Any] = {"load_kg": 8.0, "hands_out_cm": 40.0, "hands_up_cm": 15.0}
LOUD: dict[str, Any] = {"noise_db": (95.0, 91.0), "noise_time_minutes": (60.0, 90.0)}
SHAKY: dict[str, Any] = {"vibration_m_per_s2": (5.0,), "trigger_time_minutes": (180.0,)}
LINE: dict[str, Any] = {"country": "New Zealand", "line": "low voltage"}

BROKEN: list[tuple[str, AnyWork]] = [
    ("times-pair", safe(noise_db=(95.0, 91.0), noise_time_minutes=(60.0,))),
    ("times-pair", safe(noise_db=(95.0,), noise_time_minutes=(60.0, 30.0))),
    ("times-pair", safe(vibration_m_per_s2=(5.0, 4.0), trigger_time_minutes=(60.0,))),
    ("noise-dose", safe(**LOUD)),
    ("noise-dose", safe(**LOUD, protector_rating_db=5.0)),
    ("noise-dose", safe(noise_db=(120.0,), noise_time_minutes=(480.0,))),
    ("noise-dose", safe(noise_db=(95.0,), noise_time_minutes=(241.0,), noise_scheme="OSHA")),
    ("noise-inside", safe(**LOUD, protector_rating_db=4.0)),
    ("noise-inside", safe(noise_db=(150.0,), noise_time_minutes=(480.0,), protector_rating_db=30.0)),
    ("noise-ceiling", safe(noise_db=(141.0, 90.0))),
    ("vibration-action", safe(**SHAKY)),
    ("vibration-limit", safe(vibration_m_per_s2=(10.0,), trigger_time_minutes=(121.0,))),
    ("lift-bounds", safe(**{**LIFT, "hands_out_cm": 63.5})),
    ("lift-bounds", safe(**{**LIFT, "hands_up_cm": 176.0})),
    ("lift-bounds", safe(**LIFT, set_down_up_cm=180.0)),
    ("lift-bounds", safe(**LIFT, set_down_up_cm=100.0, set_down_out_cm=70.0)),
    ("lift-bounds", safe(**LIFT, twist_deg=136.0)),
    ("lift-bounds", safe(**LIFT, lift_travel_cm=176.0)),
    ("lift-bounds", safe(**LIFT, lifts_a_minute=13.0)),
    ("lift-bounds", safe(**LIFT, lifts_a_minute=10.9, lifting_time_hours=8.0)),
    ("lift-bounds", safe(**LIFT, lifting_time_hours=9.0)),
    ("weight-limit", safe(**{**LIFT, "load_kg": 25.0}, lift_travel_cm=60.0, twist_deg=30.0)),
    ("weight-limit", safe(crew=Crew(units="us"), **{**LIFT, "load_kg": 25.0})),
    ("ladder-angle", safe(country="New Zealand", top_contact_mm=4000.0, foot_measured_mm=1600.0)),
    ("ladder-angle", safe(country="Western Australia", working_length_mm=6000.0, foot_measured_mm=1000.0)),
    ("ladder-angle", safe(landing_mm=2600.0, foot_measured_mm=500.0)),
    ("ladder-foot", safe(working_length_mm=3000.0, foot_measured_mm=3000.0)),
    ("landing", safe(country="New Zealand", landing_mm=3000.0, rail_top_mm=3900.0)),
    ("landing", safe(country="United Kingdom", landing_mm=3000.0, rail_top_mm=3900.0)),
    ("falls-law", safe(country="Victoria", fall_mm=2001.0)),
    ("short-on-ladder", safe(ladder_time_minutes=31.0)),
    ("short-on-ladder", safe(carried_kg=10.5)),
    ("line-clearance", safe(**LINE, line_distance_mm=600.0)),
    ("line-clearance", safe(**LINE, line_height_mm=6000.0, reach_mm=6500.0)),
    ("line-clearance", safe(country="Queensland", line="high voltage", line_kv=33.0, line_distance_mm=2500.0)),
    ("line-clearance", safe(country="Victoria", line="on poles", line_distance_mm=2900.0)),
    ("line-on-record", safe(country="Denmark", line="on poles")),
    ("heat-danger", safe(air_temperature_c=35.6, humidity_percent=65.0)),
    ("heat-danger", safe(crew=Crew(units="us"), air_temperature_c=35.6, humidity_percent=65.0)),
    ("heat-danger", safe(air_temperature_c=31.0, humidity_percent=50.0, in_sun=True)),
    ("drink-enough", safe(air_temperature_c=26.0, drink_l_per_h=0.5)),
    ("drink-enough", safe(drink_l_per_h=0.7)),
    ("drink-ceiling", safe(drink_l_per_h=1.5)),
    ("water-carried", safe(water_carried_l=5.0, heat_time_hours=6.0)),
    ("cover-up", safe(uv_index=3.0)),
    ("bleach-share", safe(bleach_mix_l=1.0, water_parts=10.0)),
    ("bleach-share", safe(disinfectant="bleach", bleach_parts=2.0)),
    ("bleach-soak", safe(soak_minutes=9.0)),
    ("bleach-age", safe(mix_age_hours=2.1)),
    ("fire-blight", safe(disease="fire blight", disinfectant="alcohol")),
    ("re-entry", safe(toxicity=("III",), entry_after_hours=11.9)),
    ("re-entry", safe(toxicity=("I", "III"), entry_after_hours=24.0)),
    ("re-entry", safe(label_wait_hours=24.0, toxicity=("III",), entry_after_hours=12.0)),
    ("clock", safe(sprayed_at="noon")),
    ("start-away", safe(fuel_to_start_mm=2000.0)),
    ("trouser-class", safe(chain_speed_m_per_s=22.0, trouser_class="1")),
    ("trouser-class", safe(chain_speed_m_per_s=30.0, trouser_class="3")),
    ("eye-mark", safe(eye_mark="B", eyes_worn_as="spectacles")),
    ("glove-marks", safe(glove_marks="thick")),
    ("charge-range", safe(battery_temperature_c=-3.0)),
    ("charge-range", safe(battery_temperature_c=41.0)),
]


@pytest.mark.parametrize(("name", "broken"), BROKEN, ids=lambda each: each if isinstance(each, str) else "")
def test_a_breach_is_mended_to_the_letter(name: str, broken: AnyWork) -> None:
    whole = broken
    while found(name, whole):
        whole = assert_mends(RULES[name], whole)


def test_every_rule_is_broken_once_at_least() -> None:
    assert {name for name, _ in BROKEN} == set(RULES)


def lines(*cautions: str) -> dict[str, Any]:
    return {"cautions": tuple(Hazard(title="So.", text=prose(each)) for each in cautions)}


PASSING: list[tuple[str, AnyWork]] = [
    ("times-pair", safe(**LOUD)),
    ("times-pair", safe(noise_db=(95.0,))),
    ("noise-dose", safe(noise_db=(85.0,), noise_time_minutes=(480.0,))),
    ("noise-dose", safe(noise_db=(100.0,), noise_time_minutes=(15.0,))),
    ("noise-dose", safe(noise_db=(95.0,), noise_time_minutes=(240.0,), noise_scheme="OSHA")),
    ("noise-dose", safe(**LOUD, protector_rating_db=27.0)),
    ("noise-inside", safe(**LOUD, protector_rating_db=10.0)),
    ("noise-inside", safe(**LOUD)),
    ("noise-ceiling", safe(noise_db=(140.0,))),
    ("vibration-action", safe(vibration_m_per_s2=(2.5,), trigger_time_minutes=(480.0,))),
    ("vibration-action", safe(vibration_m_per_s2=(5.0,), trigger_time_minutes=(481.0,))),
    ("vibration-limit", safe(vibration_m_per_s2=(5.0,), trigger_time_minutes=(480.0,))),
    ("lift-bounds", safe(**{**LIFT, "hands_out_cm": 63.0, "hands_up_cm": 175.0}, twist_deg=135.0)),
    ("weight-limit", safe(load_kg=23.0, hands_out_cm=25.0, hands_up_cm=75.0, grip="good")),
    ("ladder-angle", safe(country="New Zealand", top_contact_mm=4000.0, foot_measured_mm=1000.0)),
    ("ladder-angle", safe(working_length_mm=6000.0, foot_measured_mm=1500.0)),
    ("ladder-angle", safe(top_contact_mm=3732.0, foot_measured_mm=1000.0)),
    ("landing", safe(country="Western Australia", landing_mm=3000.0, rail_top_mm=3900.0)),
    ("landing", safe(country="United States", landing_mm=3000.0, rail_top_mm=3900.0)),
    ("landing", safe(country="Alberta", landing_mm=3000.0, rail_top_mm=4000.0)),
    ("falls-law", safe(country="Victoria", fall_mm=2000.0)),
    ("falls-law", safe(country="Denmark", fall_mm=5000.0)),
    ("short-on-ladder", safe(ladder_time_minutes=30.0, carried_kg=10.0)),
    ("line-clearance", safe(**LINE, line_consent=True, line_distance_mm=500.0)),
    ("line-clearance", safe(**LINE, line_consent=True, line_height_mm=6000.0, reach_mm=5400.0)),
    ("line-clearance", safe(**LINE)),
    ("line-on-record", safe(**LINE)),
    ("line-on-record", safe(line="on poles", having=lines("Ask the lines company first."))),
    ("heat-danger", safe(air_temperature_c=31.0, humidity_percent=60.0)),
    ("heat-danger", safe(air_temperature_c=31.0)),
    ("drink-enough", safe(air_temperature_c=21.0, drink_l_per_h=0.1)),
    ("drink-enough", safe(drink_l_per_h=0.71)),
    ("drink-ceiling", safe(drink_l_per_h=1.41)),
    ("water-carried", safe(water_carried_l=6.0, heat_time_hours=6.0)),
    ("water-carried", safe(water_carried_l=1.0, heat_time_hours=6.0, air_temperature_c=20.0)),
    ("cover-up", safe(uv_index=2.9)),
    ("cover-up", safe(uv_index=11.0, having=lines("Keep to the shade at noon."))),
    ("bleach-share", safe(bleach_mix_l=1.0)),
    ("bleach-share", safe(water_parts=20.0)),
    ("bleach-soak", safe(soak_minutes=10.0)),
    ("bleach-soak", safe(soak_minutes=1.0, disinfectant="alcohol")),
    ("bleach-age", safe(mix_age_hours=2.0)),
    ("fire-blight", safe(disease="none known", disinfectant="alcohol")),
    ("re-entry", safe(toxicity=("III",), entry_after_hours=12.0)),
    ("re-entry", safe(entry_after_hours=0.0)),
    ("clock", safe(sprayed_at="2 pm")),
    ("start-away", safe(fuel_to_start_mm=3000.0)),
    ("start-away", safe(fuel_to_start_mm=3048.0)),
    ("trouser-class", safe(chain_speed_m_per_s=20.0, trouser_class="1")),
    ("eye-mark", safe(eye_mark="F", eyes_worn_as="spectacles")),
    ("glove-marks", safe(glove_marks="4X43D")),
    ("charge-range", safe(battery_temperature_c=0.0)),
    ("charge-range", safe(battery_temperature_c=40.0)),
]


@pytest.mark.parametrize(("name", "whole"), PASSING, ids=lambda each: each if isinstance(each, str) else "")
def test_what_stands_at_a_limit_passes(name: str, whole: AnyWork) -> None:
    assert found(name, whole) == []


def test_the_dose_shows_its_arithmetic() -> None:
    breach = one("noise-dose", safe(**LOUD))
    assert breach.what == "201 % of the day's noise by NIOSH"
    assert breach.why.startswith("60 / 47.6 + 90 / 120 min = 201 %")
    assert breach.mend == (
        "write `noise time: 29 min, 44 min`, or write `protector rating: 8 dB(A)` or more where such muffs are worn"
    )


def test_trap_t1_the_scheme_is_named_and_decides() -> None:
    """95 dB(A) for 4 h: a full day by the 5 dB scheme, five days by NIOSH."""
    four_hours: dict[str, Any] = {"noise_db": (95.0,), "noise_time_minutes": (240.0,)}
    assert one("noise-dose", safe(**four_hours)).what == "504 % of the day's noise by NIOSH"
    assert found("noise-dose", safe(**four_hours, noise_scheme="OSHA")) == []


def test_s28_the_flat_ladder_is_brought_in() -> None:
    breach = one("ladder-angle", safe(country="New Zealand", top_contact_mm=4000.0, foot_measured_mm=1600.0))
    assert breach.what == "the ladder stands at 68.2°, too flat"
    assert breach.mend == "bring the foot in: write `foot measured: 1000 mm` (by height, New Zealand)"


def test_a_limit_from_memory_only_advises() -> None:
    assert one("landing", safe(country="United Kingdom", landing_mm=3000.0, rail_top_mm=3900.0)).severity is (
        Severity.ADVICE
    )
    assert one("landing", safe(country="Alberta", landing_mm=3000.0, rail_top_mm=3900.0)).severity is Severity.ERROR
    assert one("re-entry", safe(toxicity=("II",), entry_after_hours=12.0)).severity is Severity.ADVICE
    assert one("re-entry", safe(toxicity=("III",), entry_after_hours=4.0)).severity is Severity.ERROR
    assert one("re-entry", safe(label_wait_hours=4.0, entry_after_hours=2.0)).severity is None
    assert one("line-clearance", safe(country="Victoria", line="on poles", line_distance_mm=1.0)).severity is (
        Severity.WARNING
    )


def test_a_crew_in_feet_and_pounds_is_told_in_pounds() -> None:
    heavy = safe(crew=Crew(units="us"), **{**LIFT, "load_kg": 20.0})
    assert one("weight-limit", heavy).why.startswith("44.1 lb / 23.4 lb = 1.89")
    in_pounds = heavy.measures.model_copy(update={"written": {"load_kg": "44 lb"}})
    edit = one("weight-limit", heavy.having(measures=in_pounds)).edit
    assert edit is not None
    assert edit.text.endswith(" lb")


def test_unequal_lists_with_nothing_beside_them_are_left_to_the_author() -> None:
    breach = one("times-pair", safe(noise_time_minutes=(60.0,)))
    assert breach.edit is None
    assert breach.mend == "write `noise:` with 1 level, or take `noise time` out"


@given(
    st.lists(st.tuples(st.floats(60, 125), st.floats(0, 600)), min_size=1, max_size=4),
    st.sampled_from(("NIOSH", "OSHA")),
    st.none() | st.floats(0, 40),
)
def test_any_loud_day_is_mended(day: list[tuple[float, float]], scheme: str, rating: float | None) -> None:
    levels, minutes = tuple(each[0] for each in day), tuple(each[1] for each in day)
    whole = safe(noise_db=levels, noise_time_minutes=minutes, noise_scheme=scheme, protector_rating_db=rating)
    for name in ("noise-dose", "noise-inside"):
        for breach in found(name, whole):
            assert found(name, mended(whole, breach)) == []


@given(st.lists(st.tuples(st.floats(0.5, 30), st.floats(0, 900)), min_size=1, max_size=4))
def test_any_shaky_day_is_mended(day: list[tuple[float, float]]) -> None:
    whole = safe(vibration_m_per_s2=tuple(each[0] for each in day), trigger_time_minutes=tuple(each[1] for each in day))
    for name in ("vibration-action", "vibration-limit"):
        for breach in found(name, whole):
            assert found(name, mended(whole, breach)) == []


@given(
    st.floats(1, 60), st.floats(25, 63), st.floats(0, 175), st.floats(0, 135), st.floats(0.2, 8), st.booleans()
)  # fmt: skip
def test_any_heavy_load_is_mended(load: float, out: float, up: float, twist: float, often: float, pounds: bool) -> None:
    crew = Crew(units="us" if pounds else "metric")
    whole = safe(crew=crew, load_kg=load, hands_out_cm=out, hands_up_cm=up, twist_deg=twist, lifts_a_minute=often)
    for breach in found("weight-limit", whole):
        assert found("weight-limit", mended(whole, breach)) == []


@given(st.floats(1000, 9000), st.floats(0, 9000), st.sampled_from(("by height", "by length", "75 degrees")))
def test_any_ladder_is_mended(contact: float, foot: float, rule: str) -> None:
    whole = safe(top_contact_mm=contact, foot_measured_mm=foot, ladder_rule=rule)
    for breach in found("ladder-angle", whole):
        assert found("ladder-angle", mended(whole, breach)) == []


@given(st.floats(20, 50), st.floats(0, 100), st.booleans(), st.booleans())
def test_any_hot_hour_is_mended(air: float, damp: float, sun: bool, fahrenheit: bool) -> None:
    crew = Crew(units="us" if fahrenheit else "metric")
    whole = safe(crew=crew, air_temperature_c=air, humidity_percent=damp, in_sun=sun)
    for breach in found("heat-danger", whole):
        assert found("heat-danger", mended(whole, breach)) == []
