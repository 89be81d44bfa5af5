"""Ladders, lines, heat, sun and drink against published worked examples."""

from collections.abc import Callable

import pytest
from hypothesis import given
from hypothesis import strategies as st

from howto.families.safety import heat, height
from howto.families.safety.countries import LADDERS, line_zone

# -- ladders --


def test_s26_new_zealand() -> None:
    """BRANZ, Level, 2022 (A): top contact 4.0 m, foot 1.0 m out, 75.96°; within 0.01."""
    foot = height.foot_by_height(4.0)
    assert LADDERS["New Zealand"].rule == "by height"
    assert foot == pytest.approx(1.0, abs=0.01)
    assert height.angle_by_height(foot, 4.0) == pytest.approx(75.96, abs=0.01)


def test_s27_western_australia() -> None:
    """Occupational Safety and Health Regulations 1996, reg. 3.26 (A): 6.0 m long, 1.5 m out, 75.5°."""
    foot = height.foot_by_length(6.0)
    assert LADDERS["Western Australia"].rule == "by length"
    assert foot == pytest.approx(1.5, abs=0.01)
    assert height.angle_by_length(foot, 6.0) == pytest.approx(75.5, abs=0.05)


def test_s28_too_flat() -> None:
    """Worked: foot 1.6 m out, contact 4.0 m, 68.2°; within 0.1."""
    assert height.angle_by_height(1.6, 4.0) == pytest.approx(68.2, abs=0.1)


@pytest.mark.parametrize(
    ("country", "top"),
    [("Western Australia", 3.9), ("United States", 3.9), ("New Zealand", 4.0), ("Alberta", 4.0), ("Denmark", 4.0)],
)
def test_s29_rails_past_a_landing_at_three_metres(country: str, top: float) -> None:
    """WA reg. 3.26, 29 CFR 1926.1053, BRANZ, Alberta OHS Code s. 136, and the Danish safety body: exact."""
    assert 3.0 + LADDERS[country].past_mm / 1000 == pytest.approx(top)  # type: ignore[index]


def test_trap_t5_three_readings_of_one_in_four() -> None:
    """75.96° by height, 75.5° by length, 75° flat at 1 : 3.73."""
    assert height.angle_by_height(1, 4) == pytest.approx(75.96, abs=0.01)
    assert height.angle_by_length(1, 4) == pytest.approx(75.52, abs=0.01)
    assert height.angle_by_height(0.0, 3.0) == 90
    assert height.foot_by_angle(3.732) == pytest.approx(1.0, abs=0.001)


def test_trap_t17_each_limit_has_its_country() -> None:
    assert all(law.foot.title and law.landing.title for law in LADDERS.values())
    assert line_zone("Denmark", "low voltage", None, consent=True) is None


@given(st.floats(500, 9000), st.floats(60, 85))
def test_a_ladder_comes_back_to_its_angle(contact: float, angle: float) -> None:
    foot = height.foot_by_angle(contact, angle)
    assert height.angle_by_height(foot, contact) == pytest.approx(angle)
    assert height.contact_of(height.length_to(contact, foot), foot) == pytest.approx(contact)


def test_ladders_refuse_what_cannot_be() -> None:
    refusals: tuple[Callable[[], float], ...] = (
        lambda: height.foot_by_angle(3, 90),
        lambda: height.angle_by_length(7, 6),
        lambda: height.contact_of(6, 7),
    )
    for refused in refusals:
        with pytest.raises(ValueError, match=r"ladder|foot"):
            refused()


# -- lines --


@pytest.mark.parametrize(("consent", "allowed"), [(True, True), (False, False)])
def test_s30_new_zealand_low_voltage(*, consent: bool, allowed: bool) -> None:
    """WorkSafe New Zealand (A): 0.6 m is allowed with written consent and not without; exact."""
    zone = line_zone("New Zealand", "low voltage", None, consent=consent)
    assert zone is not None
    assert (zone.no_go_mm <= 600) is allowed


def test_s31_queensland_33_kv() -> None:
    """Ergon Energy and WorkSafe Queensland (A): a tip 2.5 m off is not allowed; exact."""
    zone = line_zone("Queensland", "high voltage", 33, consent=False)
    assert zone is not None
    assert zone.no_go_mm == 3000
    assert zone.no_go_mm > 2500


@pytest.mark.parametrize(
    ("country", "kind", "kv", "keep", "spotter"),
    [
        ("Queensland", "high voltage", 132, 3000, None),
        ("Queensland", "high voltage", 133, 6000, None),
        ("Queensland", "high voltage", 330, 6000, None),
        ("Queensland", "low voltage", None, 3000, None),
        ("Victoria", "on poles", None, 3000, 6400),
        ("Victoria", "on towers", None, 8000, 10_000),
    ],
)
def test_zones_by_country(country: str, kind: str, kv: float | None, keep: float, spotter: float | None) -> None:
    zone = line_zone(country, kind, kv, consent=False)  # type: ignore[arg-type]
    assert zone is not None
    assert (zone.no_go_mm, zone.spotter_mm) == (keep, spotter)


@pytest.mark.parametrize(
    ("country", "kind", "kv"),
    [
        ("Queensland", "high voltage", 400),
        ("Queensland", "on poles", None),
        ("Victoria", "low voltage", None),
        ("New Zealand", "high voltage", None),
        ("New Zealand", "low voltage", 11),
        ("elsewhere", "on poles", None),
    ],
)
def test_no_zone_is_borrowed(country: str, kind: str, kv: float | None) -> None:
    assert line_zone(country, kind, kv, consent=True) is None  # type: ignore[arg-type]


# -- heat --


@pytest.mark.parametrize(
    ("air", "damp", "index", "give"),
    [
        pytest.param(96, 65, 121, 0.5, id="S32: weather page quoting NWS (C), and the NWS chart (A)"),
        pytest.param(88, 60, 95, 0.5, id="S33: newspaper copy of the NWS chart (B), and the chart (A)"),
        pytest.param(90, 45, 92.5, 0.1, id="S35: the regression; the chart has 93 (A)"),
        pytest.param(80, 100, 89.3, 0.1, id="S36: with the damp-heat addition; the chart has 87 (A)"),
        pytest.param(75, 50, 74.8, 0.1, id="S37: simple formula averaged with the air (formula A)"),
        pytest.param(95, 10, 89.4, 0.1, id="S38: dry-heat subtraction (formula A)"),
    ],
)
def test_heat_index(air: float, damp: float, index: float, give: float) -> None:
    assert heat.heat_index_f(air, damp) == pytest.approx(index, abs=give)


def test_s33_in_celsius() -> None:
    assert heat.celsius(heat.heat_index_f(heat.fahrenheit((88 - 32) / 1.8), 60)) == pytest.approx(35, abs=0.3)


def test_trap_t6_the_chart_leaves_the_addition_out() -> None:
    assert heat.chart_index_f(80, 100) == 87
    assert heat.heat_index_f(80, 100) - heat.chart_index_f(80, 100) == pytest.approx(2.3, abs=0.05)


# National Weather Service, Tulsa, heat index chart (A): °F by air temperature, 40 to 100 % in steps of 5.
CHART = {
    80: (80, 80, 81, 81, 82, 82, 83, 84, 84, 85, 86, 86, 87),
    82: (81, 82, 83, 84, 84, 85, 86, 88, 89, 90, 91, 93, 95),
    84: (83, 84, 85, 86, 88, 89, 90, 92, 94, 96, 98, 100, 103),
    86: (85, 87, 88, 89, 91, 93, 95, 97, 100, 102, 105, 108, 112),
    88: (88, 89, 91, 93, 95, 98, 100, 103, 106, 110, 113, 117, 121),
    90: (91, 93, 95, 97, 100, 103, 106, 109, 113, 117, 122, 127, 132),
    92: (94, 96, 99, 101, 105, 108, 112, 116, 121, 126, 131),
    94: (97, 100, 103, 106, 110, 114, 119, 124, 129, 135),
    96: (101, 104, 108, 112, 116, 121, 126, 132),
    98: (105, 109, 113, 117, 123, 128, 134),
    100: (109, 114, 118, 124, 129, 136),
    104: (119, 124, 131, 137),
}


def test_the_printed_chart_but_for_one_cell() -> None:
    """90 °F, 45 %: 92.49 against 93 in print; every other cell rounds to the chart."""
    apart = [
        (air, 40 + 5 * at)
        for air, row in CHART.items()
        for at, printed in enumerate(row)
        if heat.chart_index_f(air, 40 + 5 * at) != printed
    ]
    assert apart == [(90, 45)]


def test_s39_wet_bulb_globe() -> None:
    """ISO 7243 formula from memory: 28.3 °C in the sun, within 0.1; 29.4 out of it."""
    assert heat.wbgt_c(24, 42, 31) == pytest.approx(28.3, abs=0.1)
    assert heat.wbgt_c(24, 42) == pytest.approx(29.4, abs=0.01)


def test_s40_eight_hours_of_heat() -> None:
    """NIOSH quoted in a trade article (B): 5.7 to 7.6 L; never over 1.42 L in an hour; within 0.1."""
    assert heat.drink_l(8) == pytest.approx((5.7, 7.6), abs=0.1)
    assert heat.most_drink_l_per_h() == pytest.approx(1.42, abs=0.005)
    assert heat.drink_l_per_h() == pytest.approx((0.71, 0.95), abs=0.005)


@pytest.mark.parametrize(
    ("index", "name"),
    [(2, "low"), (3, "moderate"), (7, "high"), (8, "very high"), (11, "extreme"), (0, "low"), (2.5, "moderate")],
)
def test_s41_uv_bands(index: float, name: str) -> None:
    """Sydney North Health Network (A): exact."""
    assert heat.uv_band(index) == name


@given(st.floats(0, 100), st.floats(85, 120))
def test_the_warmest_hour_is_cool_enough(damp: float, most: float) -> None:
    warmest = heat.warmest_f(damp, most)
    assert heat.heat_index_f(warmest, damp) < most
    assert warmest == 140 or heat.heat_index_f(warmest + 1, damp) >= most


def test_heat_refuses_what_cannot_be() -> None:
    with pytest.raises(ValueError, match="humidity"):
        heat.heat_index_f(80, 101)
    with pytest.raises(ValueError, match="time"):
        heat.drink_l(-1)
