"""Noise, vibration and lifting against published worked examples; each answer is carried over as it was printed."""

from collections.abc import Callable
from math import sqrt

import pytest
from hypothesis import given
from hypothesis import strategies as st

from howto.families.safety import lifting, noise, vibration
from howto.families.safety.lifting import Lift
from howto.families.safety.lifting_tables import FREQUENCY, REACH, TWIST

NIOSH, OSHA = noise.NIOSH, noise.OSHA
LEVELS = st.floats(60, 140)
MINUTES = st.floats(1, 480)

# -- noise --


def test_s1_100_db() -> None:
    """NIOSH topic page (B): 100 dB(A), 15 min, exact."""
    assert noise.allowed_minutes(100) == 15


@pytest.mark.parametrize(("level", "minutes"), [(85, 480), (88, 240), (91, 120), (94, 60), (97, 30)])
def test_s2_published_pairs(level: float, minutes: float) -> None:
    """NIOSH topic page (B): exact."""
    assert noise.allowed_minutes(level) == minutes


@pytest.mark.parametrize(
    ("level", "seconds", "give"),
    [(90, 2 * 3600 + 31 * 60, 60), (95, 47 * 60 + 37, 1), (105, 4 * 60 + 43, 1), (110, 89, 1)],
)
def test_s3_between_the_pairs(level: float, seconds: float, give: float) -> None:
    """NIOSH 98-126 as an engineering handbook reprints it (B): within a minute, or a second."""
    assert noise.allowed_minutes(level) * 60 == pytest.approx(seconds, abs=give)


# The NIOSH table as reprinted (B); minutes, to the digits printed.
TABLE = {
    80: 1524, 81: 1210, 82: 960, 83: 762, 84: 605, 86: 381, 87: 302, 89: 190, 92: 95, 96: 37.8, 98: 23.82, 99: 18.98,
    101: 11.9, 102: 9.45, 103: 7.5, 104: 5.95, 106: 3.75, 107: 2.98, 108: 2.37, 109: 1.88, 111: 1.18, 112: 0.93,
    113: 0.75, 114: 0.57, 115: 0.47,
}  # fmt: skip


@pytest.mark.parametrize("level", TABLE)
def test_the_whole_niosh_table(level: int) -> None:
    assert noise.allowed_minutes(level) == pytest.approx(TABLE[level], rel=0.04)


def test_trap_t2_the_chart_is_rounded_and_the_formula_is_not() -> None:
    """93 dB(A): chart 1 h 16 min, formula 1 h 15 min 36 s."""
    assert noise.allowed_minutes(93) * 60 == pytest.approx(75 * 60 + 36, abs=1)


@pytest.mark.parametrize(("level", "minutes"), [(105, 5), (88, 240), (91, 120), (94, 60), (97, 30), (100, 15)])
def test_s4_equal_energy_to_85(level: float, minutes: float) -> None:
    """European Commission, SCENIHR 2008, table 3 (A): 0.3 dB."""
    assert noise.daily_exposure_db([level], [minutes]) == pytest.approx(85, abs=0.3)


def test_s4_a_minute_at_111() -> None:
    """The same table prints whole minutes: 1.18 min as 1, which is 0.8 dB of energy; so minutes are compared."""
    assert round(noise.allowed_minutes(111)) == 1
    assert round(noise.allowed_minutes(105)) == 5


@pytest.mark.parametrize(("level", "minutes", "day"), [(86, 120, 80), (96, 60, 87), (89, 60, 80), (93, 120, 87)])
def test_s5_equal_energy_to_80_and_87(level: float, minutes: float, day: float) -> None:
    """European Commission, SCENIHR 2008, table 3 (A): 0.1 dB."""
    assert noise.daily_exposure_db([level], [minutes]) == pytest.approx(day, abs=0.1)


def test_s6_four_tools() -> None:
    """Worked from the published formulas: D 264.8 % within 0.2, TWA and LEX,8h 89.2 within 0.1."""
    levels, minutes = [95.0, 91.0, 88.0, 80.0], [60.0, 90.0, 120.0, 210.0]
    dose = noise.dose_percent(levels, minutes)
    assert dose == pytest.approx(264.8, abs=0.2)
    assert noise.day_average_db(dose) == pytest.approx(89.2, abs=0.1)
    assert noise.daily_exposure_db(levels, minutes) == pytest.approx(89.2, abs=0.1)


def test_s7_two_tools() -> None:
    """Worked from the published formulas: D 150 %, TWA 86.8, within 0.1."""
    dose = noise.dose_percent([97, 91], [30, 60])
    assert dose == pytest.approx(150, abs=0.1)
    assert noise.day_average_db(dose) == pytest.approx(86.8, abs=0.1)


def test_s8_the_5_db_scheme() -> None:
    """WAC 296-307-63415 (A): 4 h, 2 h exact; 95.0 dB(A) within 0.1 at 200 %."""
    assert noise.allowed_minutes(95, OSHA) == 240
    assert noise.allowed_minutes(100, OSHA) == 120
    assert noise.day_average_db(200, OSHA) == pytest.approx(95.0, abs=0.1)


def test_s9_and_trap_t1_the_schemes_are_kept_apart() -> None:
    """95 dB(A): 47.6 min by NIOSH within 0.1, 4 h by the 5 dB scheme."""
    assert noise.allowed_minutes(95, NIOSH) == pytest.approx(47.6, abs=0.1)
    assert noise.allowed_minutes(95, OSHA) == 240
    assert {scheme.name for scheme in noise.SCHEMES.values()} == {"NIOSH", "OSHA"}


@given(LEVELS, MINUTES)
def test_the_time_allowed_is_a_full_dose(level: float, minutes: float) -> None:
    assert noise.dose_percent([level], [noise.allowed_minutes(level)]) == pytest.approx(100)
    assert noise.dose_percent([level], [2 * minutes]) == pytest.approx(2 * noise.dose_percent([level], [minutes]))


def test_a_protector_takes_its_rating_less_four() -> None:
    assert noise.level_at_ear_db(95, 27) == 72
    assert noise.level_at_ear_db(95, 2) == 95


def test_noise_refuses_what_cannot_be() -> None:
    refusals: tuple[Callable[[], float], ...] = (
        lambda: noise.dose_percent([85], []),
        lambda: noise.dose_percent([85], [-1]),
        lambda: noise.day_average_db(0),
        lambda: noise.daily_exposure_db([85], [0]),
    )
    for refused in refusals:
        with pytest.raises(ValueError, match=r"time|dose|pair"):
            refused()


# -- vibration --


def test_s10_five_metres_for_three_hours() -> None:
    """HSE ready-reckoner, 2009 (A): 150 points, over the action value and under the limit; exact."""
    found = vibration.points(5, 3)
    assert found == 150
    assert vibration.ACTION_POINTS < found < vibration.LIMIT_POINTS


def test_s11_the_values_themselves() -> None:
    """HSE ready-reckoner, 2009 (A): 100 and 400 points; exact."""
    assert vibration.points(2.5, 8) == 100
    assert vibration.points(5, 8) == 400


@pytest.mark.parametrize(("a", "hours"), [(4, 3.13), (5, 2.00), (6, 1.39), (8, 0.78)])
def test_s13_time_to_the_action_value(a: float, hours: float) -> None:
    """Worked from 2a²T: within 0.01 h."""
    assert vibration.hours_to_points(a, vibration.ACTION_POINTS) == pytest.approx(hours, abs=0.01)


# The ready-reckoner's grid, worked from 2a²T, whose check value of 150 was read in the original.
GRID = {
    3: (5, 9, 18, 36, 54, 72, 108, 144), 4: (8, 16, 32, 64, 96, 128, 192, 256),
    6: (18, 36, 72, 144, 216, 288, 432, 576), 7: (25, 49, 98, 196, 294, 392, 588, 784),
    8: (32, 64, 128, 256, 384, 512, 768, 1024),
    10: (50, 100, 200, 400, 600, 800, 1200, 1600),
}  # fmt: skip


@pytest.mark.parametrize("a", GRID)
def test_the_ready_reckoner(a: int) -> None:
    hours = (0.25, 0.5, 1, 2, 3, 4, 6, 8)
    assert [vibration.points(a, each) for each in hours] == pytest.approx(GRID[a], abs=0.51)


def test_limit_times() -> None:
    assert vibration.hours_to_points(7, vibration.LIMIT_POINTS) == pytest.approx(4.08, abs=0.01)
    assert vibration.hours_to_points(2.5, vibration.LIMIT_POINTS) == 32


@given(st.lists(st.tuples(st.floats(0.5, 20), st.floats(0.1, 8)), min_size=1, max_size=5))
def test_points_and_a8_agree(tools: list[tuple[float, float]]) -> None:
    """A(8) = √(points / 16), and the root of the sum of squares gives the same."""
    shakes, hours = [each[0] for each in tools], [each[1] for each in tools]
    total = vibration.day_points(shakes, hours)
    squares = sum(a**2 * spent / 8 for a, spent in tools)
    assert vibration.exposure_of_points_m_per_s2(total) == pytest.approx(sqrt(squares))
    assert vibration.day_points(shakes, [2 * each for each in hours]) == pytest.approx(2 * total)


def test_vibration_refuses_what_cannot_be() -> None:
    refusals: tuple[Callable[[], float], ...] = (
        lambda: vibration.points(5, -1),
        lambda: vibration.hours_to_points(0, 100),
        lambda: vibration.exposure_of_points_m_per_s2(-1),
        lambda: vibration.day_points([5], []),
    )
    for refused in refusals:
        with pytest.raises(ValueError, match=r"zero|shorter"):
            refused()


# -- lifting: given multipliers --


@pytest.mark.parametrize(
    ("factors", "limit", "index"), [((0.50, 1, 0.95, 1, 1, 1), 10.9, 1.37), ((0.80, 1, 0.95, 1, 1, 1), 17.5, 0.86)]
)
def test_s14_s15_horizontal_distance(factors: tuple[float, ...], limit: float, index: float) -> None:
    """CCOHS (A), a 15 kg box: within 0.05 kg; trap T-3, from the given multipliers only."""
    found = lifting.limit_from(23, factors)
    assert found == pytest.approx(limit, abs=0.05)
    assert lifting.lifting_index(15, found) == pytest.approx(index, abs=0.005)


@pytest.mark.parametrize(("grip", "limit"), [(0.90, 15.7), (1.00, 17.5)])
def test_s17_vertical_distance(grip: float, limit: float) -> None:
    """CCOHS, 2002 (A): within 0.05 kg."""
    assert lifting.limit_from(23, (0.80, 1, 0.95, 1, 1, grip)) == pytest.approx(limit, abs=0.05)


def test_trap_t3_the_simplified_table_is_not_niosh() -> None:
    """CCOHS prints .80 for 30 cm, .80 for the floor and .95 for 40 cm; NIOSH .83, .78 and .93."""
    assert lifting.reach_multiplier(30, table=True) == 0.83
    assert lifting.height_multiplier(0, table=True) == 0.78
    assert lifting.distance_multiplier(40, table=True) == 0.93


# -- lifting: DHHS (NIOSH) 94-110, 1994, examples from memory with their arithmetic checked; printed multipliers --

PUNCH = {"out": 23.0, "travel": 49.0, "grip": "fair"}
ROLL = {"out": 20.0, "travel": 17.0, "grip": "poor"}
RACK = {"out": 20.0, "travel": 23.0, "twist_deg": 90.0, "lifts_a_min": 5.0, "grip": "fair"}
MANUAL = [
    pytest.param(44, PUNCH | {"up": 15.0}, 16.3, 2.7, id="S18 origin"),
    pytest.param(44, PUNCH | {"up": 64.0}, 14.5, 3.0, id="S18 destination"),
    pytest.param(35, ROLL | {"up": 27.0}, 20.9, 1.7, id="S19 origin"),
    pytest.param(35, ROLL | {"up": 10.0}, 18.1, 1.9, id="S19 destination"),
    pytest.param(40, {"out": 18.0, "up": 15.0, "travel": 21.0, "twist_deg": 45.0, "grip": "fair"}, 18.9, 2.1, id="S20"),
    pytest.param(20, RACK | {"up": 7.0}, 10.3, 1.9, id="S22 origin"),
    pytest.param(20, RACK | {"up": 30.0}, 13.0, 1.5, id="S22 destination"),
]


@pytest.mark.parametrize(("load", "terms", "limit", "index"), MANUAL)
def test_the_applications_manual(load: float, terms: dict[str, float], limit: float, index: float) -> None:
    found = lifting.weight_limit(Lift(**terms, system="us"), table=True)  # type: ignore[arg-type]
    assert found == pytest.approx(limit, abs=0.1)
    assert lifting.lifting_index(load, found) == pytest.approx(index, abs=0.05)


def test_s23_and_trap_t4_formulas_differ_from_printed_multipliers() -> None:
    """The continuous formulas give 16.0 lb where the printed multipliers give 16.3; within 0.1."""
    lift = Lift(out=23, up=15, travel=49, grip="fair", system="us")
    assert lifting.weight_limit(lift) == pytest.approx(16.0, abs=0.1)
    assert lifting.weight_limit(lift, table=True) == pytest.approx(16.3, abs=0.1)


def test_s24_the_ideal_lift() -> None:
    """The load constant: 23 kg, exact."""
    ideal = Lift(out=25, up=75, travel=25)
    assert lifting.weight_limit(ideal) == 23
    assert lifting.weight_limit(Lift(out=10, up=30, travel=10, system="us")) == 51


def test_s25_a_wet_bag_of_compost() -> None:
    """Worked from the formulas: 8.6 kg and 2.9, within 0.1."""
    found = lifting.weight_limit(Lift(out=40, up=15, travel=60, twist_deg=30, grip="poor"))
    assert found == pytest.approx(8.6, abs=0.1)
    assert lifting.lifting_index(25, found) == pytest.approx(2.9, abs=0.1)


@pytest.mark.parametrize(("out", "printed"), REACH["metric"].items())
def test_printed_reach_is_near_its_formula(out: int, printed: float) -> None:
    assert lifting.reach_multiplier(out, table=True) == printed
    assert lifting.reach_multiplier(out) == pytest.approx(printed, abs=0.006)


@pytest.mark.parametrize(("turn", "printed"), TWIST.items())
def test_printed_twist_is_near_its_formula(turn: int, printed: float) -> None:
    assert lifting.twist_multiplier(turn, table=True) == printed
    assert lifting.twist_multiplier(turn) == pytest.approx(printed, abs=0.006)


@pytest.mark.parametrize(
    ("often", "hours", "up", "found"),
    [
        (0.1, 1, 0, 1.00), (0.2, 8, 0, 0.85), (0.5, 2, 0, 0.92), (5, 1, 0, 0.80), (9, 8, 74, 0.0), (9, 8, 75, 0.15),
        (10, 8, 75, 0.13), (15, 1, 75, 0.28), (15, 1, 74, 0.0), (16, 1, 75, 0.0), (1, 8.5, 75, 0.0), (12, 2, 80, 0.21),
    ],
)  # fmt: skip
def test_the_frequency_table(often: float, hours: float, up: float, found: float) -> None:
    """NIOSH worksheet, table 5 (B); rows over 10 a minute from memory of 94-110."""
    assert lifting.frequency_multiplier(often, hours, up) == found


def test_frequency_between_two_rows_lies_between_them() -> None:
    assert lifting.frequency_multiplier(1.5, 1, 0) == pytest.approx(0.925)
    assert [row[0] for row in FREQUENCY] == sorted(row[0] for row in FREQUENCY)


def test_beyond_the_bounds_nothing_is_lifted() -> None:
    """NIOSH worksheet (B): over 63 cm, 175 cm, 175 cm of travel, 135°, and the same in inches."""
    assert lifting.reach_multiplier(63.1) == 0
    assert lifting.reach_multiplier(25.1, "us") == 0
    assert lifting.height_multiplier(175.1) == 0
    assert lifting.height_multiplier(70.1, "us") == 0
    assert lifting.distance_multiplier(175.1) == 0
    assert lifting.twist_multiplier(135.1) == 0
    assert lifting.lifting_index(5, 0) == float("inf")
    assert lifting.lifting_index(0, 0) == 0


@given(st.floats(25, 63), st.floats(0, 175), st.floats(0, 135))
def test_no_lift_beats_the_ideal_one(out: float, up: float, twist: float) -> None:
    found = lifting.weight_limit(Lift(out=out, up=up, twist_deg=twist))
    assert 0 < found <= 23
    assert lifting.lifting_index(2 * found, found) == pytest.approx(2)
