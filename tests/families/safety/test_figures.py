"""The figures of safety: their values, their working, and what is left out where a measure is missing."""

from datetime import date
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from howto.families.safety import FAMILY, figures
from howto.model.crew import Crew
from howto.model.figure import Figure
from howto.model.work import AnyWork
from howto.quantities import field_unit
from tests.support.builders import technique
from tests.support.told import told, told_figure

TODAY = date(2026, 6, 10)
BARE: dict[str, Any] = dict.fromkeys(("noise_db", "noise_time_minutes", "vibration_m_per_s2", "trigger_time_minutes"))


def made(crew: Crew | None = None, **measures: Any) -> AnyWork:
    return technique(FAMILY, {}, crew=crew, **{**BARE, **measures})


def worked(crew: Crew | None = None, **measures: Any) -> dict[str, Figure]:
    return all_of(made(crew, **measures))


def all_of(work: AnyWork) -> dict[str, Figure]:
    found = [told_figure(figure) for figure in figures(work, TODAY)]
    assert len({figure.name for figure in found}) == len(found)
    return {figure.name: figure for figure in found}


def test_every_measure_has_a_key_of_its_own() -> None:
    keys = [field_unit(name)[0] for name in FAMILY.measures.model_fields]
    assert sorted(set(keys)) == sorted(keys)


def test_nothing_written_nothing_worked() -> None:
    assert worked() == {}


def test_s6_a_day_with_four_tools() -> None:
    found = worked(
        machines=("saw", "trimmer"), noise_db=(95.0, 91.0, 88.0, 80.0), noise_time_minutes=(60.0, 90.0, 120.0, 210.0)
    )
    assert found["noise dose"].value == pytest.approx(264.8, abs=0.2)
    assert found["day average"].value == pytest.approx(89.2, abs=0.1)
    assert found["daily exposure"].value == pytest.approx(89.2, abs=0.1)
    assert found["time allowed"].value == pytest.approx(47.6, abs=0.1)
    assert found["time left"].value == 0
    assert "NIOSH" in found["noise dose"].label
    assert "European Union" in found["daily exposure"].label
    assert found["noise dose"].working[0] == "saw: 60 min / 47.6 min x 100 = 126 %"
    assert found["noise dose"].working[-1] == "126 + 75 + 50 + 13.78 = 264.8 %; 100 % is a full day"
    assert found["time allowed"].table is not None
    assert [row[0] for row in found["time allowed"].table.rows] == ["saw", "trimmer", "tool 3", "tool 4"]


def test_trap_t1_every_result_names_its_scheme() -> None:
    found = worked(noise_db=(95.0,), noise_time_minutes=(60.0,), noise_scheme="OSHA")
    assert found["time allowed"].value == 240
    assert found["noise dose"].value == 25
    assert all(
        "(OSHA)" in told(found[name].label) for name in ("time allowed", "noise dose", "day average", "time left")
    )
    assert found["time allowed"].working[-1] == (
        "by OSHA, 5 dB from 90 dB(A); by NIOSH 95 dB(A) is allowed 47 min 37 s: never mix"
    )


def test_levels_alone_give_the_time_allowed() -> None:
    found = worked(noise_db=(100.0,))
    assert list(found) == ["time allowed"]
    assert found["time allowed"].working[0] == "tool 1: 480 / 2^((100 - 85) / 3) = 15 min"


def test_a_quiet_day_and_a_still_one() -> None:
    assert (
        "under the lower action value"
        in worked(noise_db=(70.0,), noise_time_minutes=(60.0,))["daily exposure"].working[1]
    )
    still = worked(noise_db=(90.0,), noise_time_minutes=(0.0,))
    assert still["noise dose"].value == 0
    assert not {"day average", "daily exposure"} & set(still)


def test_a_protector_and_the_limit_inside_it() -> None:
    found = worked(noise_db=(95.0,), noise_time_minutes=(480.0,), protector_rating_db=27.0)["level at the ear"]
    assert found.value == 72
    assert found.working[1].startswith("the day's LEX,8h inside: 95 - (27 - 4) = 72 dB(A); the limit is 87")


def test_lists_that_do_not_pair_are_not_added_up() -> None:
    assert list(worked(noise_db=(95.0, 90.0), noise_time_minutes=(60.0,))) == ["time allowed"]


def test_s10_points_of_a_day() -> None:
    found = worked(vibration_m_per_s2=(5.0,), trigger_time_minutes=(180.0,))
    assert found["vibration points"].value == 150
    assert found["day vibration"].value == pytest.approx(3.06, abs=0.005)
    assert found["time to action value"].value == pytest.approx(120)
    assert found["time to limit value"].value == pytest.approx(480)
    assert found["trigger time left"].value == 0
    assert found["vibration points"].working[0] == "tool 1: 2 x 5² x 180 / 60 = 150 points"
    assert "over the action value" in found["vibration points"].working[1]
    over = worked(vibration_m_per_s2=(10.0,), trigger_time_minutes=(180.0,))["vibration points"]
    assert over.working[1] == "600 = 600; action value 100, limit value 400: over the limit value: stop"


def test_vibration_alone_gives_the_times() -> None:
    assert list(worked(vibration_m_per_s2=(5.0, 4.0))) == ["time to action value", "time to limit value"]


def test_s25_a_wet_bag() -> None:
    found = worked(load_kg=25.0, hands_out_cm=40.0, hands_up_cm=15.0, lift_travel_cm=60.0, twist_deg=30.0)
    assert found["weight limit"].value == pytest.approx(8.6, abs=0.1)
    assert found["lifting index"].value == pytest.approx(2.9, abs=0.1)
    assert found["weight limit"].working[-1] == "23 x 0.625 x 0.82 x 0.895 x 0.904 x 1 x 0.9 = 8.58 kg"
    assert "pick up limit" not in found
    assert found["guide weights"].table is not None


def test_s18_and_s23_in_pounds() -> None:
    """The origin by formulas 16.0 lb, by printed multipliers 16.3; the destination printed 14.5 lb."""
    lb, inch = 0.45359237, 2.54
    start = made(load_kg=44 * lb, hands_out_cm=23 * inch, hands_up_cm=15 * inch, set_down_up_cm=64 * inch, grip="fair")
    written = start.measures.model_copy(update={"written": {"load_kg": "44 lb", "hands_out_cm": "23 in"}})
    found = all_of(start.having(measures=written))
    assert found["pick up limit"].value == pytest.approx(16.0, abs=0.1)
    assert found["printed limit"].value == pytest.approx(14.5, abs=0.1)
    assert found["printed limit"].unit == "lb"
    assert "16.3 lb" in found["printed limit"].working[0]
    assert found["weight limit"].working[0].startswith("the smaller of the two ends: set down")


def test_out_of_reach_there_is_no_limit_and_no_index() -> None:
    found = worked(load_kg=5.0, hands_out_cm=70.0, hands_up_cm=180.0, twist_deg=140.0, lift_travel_cm=200.0)
    assert found["weight limit"].value == 0
    assert "lifting index" not in found
    assert found["weight limit"].working[:4] == (
        "HM = 70 cm is out of reach = 0",
        "VM = 180 cm is too high = 0",
        "DM = 200 cm is too far = 0",
        "AM = 140° is over 135° = 0",
    )


def test_a_load_alone_gives_the_guide_weights() -> None:
    assert list(worked(load_kg=20.0)) == ["guide weights"]


def test_s26_s28_s29_a_ladder_in_new_zealand() -> None:
    found = worked(country="New Zealand", top_contact_mm=4000.0, landing_mm=3000.0, foot_measured_mm=1600.0)
    assert found["ladder foot"].value == pytest.approx(1000)
    assert found["ladder angle"].value == pytest.approx(75.96, abs=0.01)
    assert found["measured angle"].value == pytest.approx(68.2, abs=0.1)
    assert found["rails to"].value == 4000
    assert "New Zealand" in found["ladder foot"].label
    assert found["ladder foot"].working[-1] == (
        "one in four is read in three ways: by height 1000 mm, by length 1033 mm, 75 degrees 1072 mm"
    )


def test_s27_s29_a_ladder_in_western_australia() -> None:
    found = worked(country="Western Australia", working_length_mm=6000.0, landing_mm=3000.0, foot_measured_mm=1500.0)
    assert found["ladder foot"].value == pytest.approx(1500)
    assert found["ladder angle"].value == pytest.approx(75.5, abs=0.05)
    assert found["rails to"].value == 3900
    assert found["measured angle"].working[0].startswith("acos(1500 / 6000) = 75.52°")


def test_a_ladder_leans_on_its_landing_where_nothing_else_is_written() -> None:
    found = worked(landing_mm=2600.0)
    assert found["ladder foot"].value == pytest.approx(696.7, abs=0.1)
    assert "no number on record" in found["ladder foot"].working[-1]
    assert found["ladder length"].value == pytest.approx(3600 / 0.9659, abs=0.5)
    assert "measured angle" not in worked(working_length_mm=3000.0, foot_measured_mm=4000.0)


def test_s30_a_line_in_new_zealand() -> None:
    line: dict[str, Any] = {"country": "New Zealand", "line": "low voltage", "line_distance_mm": 600.0}
    assert worked(**line)["keep from the line"].value == 4000
    assert worked(**line, line_consent=True)["keep from the line"].value == 500
    assert worked(**line)["nearest to the line"].value == 600


def test_s31_a_line_in_queensland() -> None:
    found = worked(country="Queensland", line="high voltage", line_kv=33.0, line_height_mm=9000.0, reach_mm=6500.0)
    assert found["keep from the line"].value == 3000
    assert found["nearest to the line"].value == 2500
    assert "Queensland" in found["keep from the line"].label


def test_a_spotter_in_victoria() -> None:
    found = worked(country="Victoria", line="on poles")
    assert "spotter from there to 6400 mm" in found["keep from the line"].working[1]
    assert "keep from the line" not in worked(country="Denmark", line="on poles", line_distance_mm=900.0)


def test_s32_and_trap_t7_a_hot_hour() -> None:
    found = worked(air_temperature_c=(96 - 32) / 1.8, humidity_percent=65.0, in_sun=True)
    assert found["heat index"].value == pytest.approx((121 - 32) / 1.8, abs=0.3)
    assert found["heat band"].value == "extreme danger"
    assert "another set in print puts danger at 105, and the lower is the safer" in found["heat band"].working[1]


def test_s36_and_trap_t6_the_chart_is_named_where_it_differs() -> None:
    found = worked(air_temperature_c=(80 - 32) / 1.8, humidity_percent=100.0)["heat index"]
    assert found.working[-2] == "damp heat: + 2.1 °F"
    assert found.working[-1].endswith("the printed chart leaves the addition out and shows 87 °F")


def test_s39_to_s41_drink_and_sun() -> None:
    found = worked(
        air_temperature_c=31.0, wet_bulb_c=24.0, globe_c=42.0, in_sun=True, heat_time_hours=8.0, uv_index=8.0
    )
    assert found["wbgt"].value == pytest.approx(28.3, abs=0.1)
    assert found["drink in the day"].value == "5.68 to 7.57 L"
    assert found["drink each hour"].value == "710 to 946 mL"
    assert found["water to take"].value == "8 to 12 L"
    assert found["uv band"].value == "very high: cover up"
    assert worked(wet_bulb_c=24.0, globe_c=42.0)["wbgt"].value == pytest.approx(29.4)


def test_a_mild_day() -> None:
    assert list(worked(air_temperature_c=18.0)) == []
    assert worked(uv_index=1.0)["uv band"].value == "low: outdoor crews still cover up"
    assert worked(air_temperature_c=20.0, humidity_percent=50.0)["heat band"].value == "mild"


def test_s42_to_s44_spraying_and_bleach() -> None:
    found = worked(toxicity=("IV", "III"), sprayed_at="14:00", bleach_mix_l=1.0, disease="fire blight")
    assert found["no entry for"].value == 12
    assert found["entry from"].value == "02:00 the next day"
    assert found["bleach to measure"].value == 100
    assert found["water to measure"].value == 900
    assert found["use the mix within"].value == 2
    assert found["clean blades with"].value == "bleach mix, 10 min or more"


def test_trap_t14_alcohol_for_routine_and_the_longer_time_kept() -> None:
    found = worked(disinfectant="alcohol")["clean blades with"]
    assert found.value == "70 % alcohol, wiped or dipped, or the bleach mix"
    assert "the longer one is kept" in found.working[1]


def test_the_longer_wait_is_kept() -> None:
    found = worked(toxicity=("I",), dry_nerve_poison=True, label_wait_hours=24.0, sprayed_at="8 am")
    assert found["no entry for"].value == 72
    assert found["entry from"].value == "08:00 3 days later"
    assert worked(label_wait_hours=4.0, sprayed_at="08:00")["entry from"].value == "12:00 the same day"
    assert "entry from" not in worked(label_wait_hours=4.0, sprayed_at="noon")


def test_s45_s46_tetanus() -> None:
    assert worked(wound="dirty", tetanus_doses=3, last_dose_years=7.0)["tetanus"].value == "booster due"
    assert worked(wound="clean", tetanus_doses=3, last_dose_years=7.0)["tetanus"].value == "none due"
    assert worked(wound="dirty")["tetanus"].working[0] == "a dirty wound, doses not known"


def test_six_steps_for_a_bag() -> None:
    found = worked(bag_holds="potting mix")["dust steps"]
    assert found.value == "6 steps"
    assert found.table is not None
    assert found.table.rows[1] == (2.0, "Mask and gloves on before it is opened")


def test_s48_to_s51_kit() -> None:
    found = worked(
        chain_speed_m_per_s=22.0, eye_mark="B", fuel_to_start_mm=2000.0, battery_temperature_c=-3.0, glove_marks="4X43D"
    )
    assert found["trousers needed"].value == "class 2"
    assert found["eye impact"].value == "120 m/s, on goggles, shield"
    assert found["start distance"].value == 3000
    assert "too near" in found["start distance"].working[0]
    assert "must not go on charge" in found["charge range"].working[0]
    assert found["glove levels"].table is not None
    assert found["glove levels"].table.rows[4] == ("cut ISO 13997, N", "D", "15")
    assert worked(chain_speed_m_per_s=40.0)["trousers needed"].value == "no class covers it"
    assert "glove levels" not in worked(glove_marks="thick")
    assert worked(battery_temperature_c=20.0, fuel_to_start_mm=4000.0)["start distance"].value == 3000


def test_what_to_wear_by_task_with_its_standards() -> None:
    found = worked(task="hedge trimming")["wear"]
    assert "ear muffs or plugs: EN 352-1, EN 352-2, by SNR, see the noise figures" in found.working


def test_a_bevel_and_its_file() -> None:
    found = worked(bevel_deg=30.0, blade_thickness_mm=3.5, file_length_mm=200.0)
    assert found["bevel width"].value == pytest.approx(7)
    assert found["file raised"].value == pytest.approx(100)
    assert worked(bevel_deg=30.0) == {}


def test_the_starter_works() -> None:
    found = {figure.name for figure in figures(technique(FAMILY), TODAY)}
    assert {"noise dose", "day average", "daily exposure", "vibration points", "day vibration"} <= found


POSITIVE = st.none() | st.floats(0.1, 60)


@given(st.fixed_dictionaries({
    "load_kg": POSITIVE, "hands_out_cm": st.none() | st.floats(0, 200), "hands_up_cm": st.none() | st.floats(0, 300),
    "set_down_up_cm": st.none() | st.floats(0, 300), "twist_deg": st.floats(0, 180), "lifts_a_minute": st.floats(0, 60),
    "lifting_time_hours": st.floats(0.1, 24), "top_contact_mm": st.none() | st.floats(1, 15_000),
    "working_length_mm": st.none() | st.floats(1, 15_000), "foot_measured_mm": st.none() | st.floats(0, 15_000),
    "landing_mm": st.none() | st.floats(1, 15_000), "air_temperature_c": st.none() | st.floats(-60, 60),
    "humidity_percent": st.none() | st.floats(0, 100), "heat_time_hours": st.none() | st.floats(0.1, 24),
    "uv_index": st.none() | st.floats(0, 20), "noise_db": st.none() | st.tuples(st.floats(0, 194)),
    "noise_time_minutes": st.none() | st.tuples(st.floats(0, 1440)), "bevel_deg": st.none() | st.floats(0.1, 89.9),
    "bleach_mix_l": POSITIVE, "label_wait_hours": st.none() | st.floats(0, 1000),
    "sprayed_at": st.none() | st.just("23:59"), "reach_mm": st.none() | st.floats(1, 50_000),
    "line_height_mm": st.none() | st.floats(1, 100_000), "protector_rating_db": st.none() | st.floats(0, 50),
    "country": st.sampled_from(("New Zealand", "Queensland", "Victoria", "elsewhere")),
    "line": st.sampled_from((None, "low voltage", "on poles", "high voltage")),
}))  # fmt: skip
def test_any_valid_measures_are_worked_and_drawn(measures: dict[str, Any]) -> None:
    whole = made(**measures)
    for figure in figures(whole, TODAY):
        assert figure.working
        assert figure.references
    for rule in FAMILY.rules:
        assert rule.check is not None
        list(rule.check(whole))
    for drawing in FAMILY.drawings(whole, TODAY):
        assert len(told(drawing.alt)) <= 250
        assert len(told(drawing.caption)) <= 60
