"""The geometry of clipped shapes, against published examples, numerical integration and what must hold."""

from math import pi, sqrt
from typing import Any

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy import integrate

from howto.families.clipping import formulae

SIZE = st.floats(min_value=10, max_value=12_000)
SHAPE = st.sampled_from(sorted(formulae.FILLS))
SIZES = [(900.0, 900.0), (700.0, 1500.0), (1500.0, 600.0), (640.0, 900.0)]
ROUND = ["ball", "dome", "cone", "cylinder"]


def half_width(shape: str, width: float, height: float, up: float) -> float:
    """The outline written down afresh: half the width at a height above the foot."""
    a, c = width / 2, height / 2
    if shape == "ball":
        return a * sqrt(max(0.0, 1 - ((up - c) / c) ** 2))
    if shape == "dome":
        return a * sqrt(max(0.0, 1 - (up / height) ** 2))
    return a * (height - up) / height if shape == "cone" else a


# -- published examples --


def test_h58_a_crown_cut_by_30_percent_loses_about_12_percent_of_branch_length() -> None:
    # H58: Ryedale District Council, Advice note on BS 3998:2010 [A]: about 12 %; exact 11.2 %; 1 point
    assert formulae.share_of_length(0.30) * 100 == pytest.approx(12, abs=1)
    assert formulae.share_of_length(0.30) * 100 == pytest.approx(11.2, abs=0.05)


def test_h58_backwards_12_percent_off_the_length_leaves_68_percent() -> None:
    # H58: the same note prints (1 - 0.12)^3 = 0.68; tolerance 0.005
    left = 1 - formulae.share_removed("ball", (1000, 1000), (880, 880))
    assert left == pytest.approx(0.68, abs=0.005)


@pytest.mark.parametrize(
    ("shape", "litres", "square_metres"),
    [
        # common practice, no source: school formulas for a shape 1 m wide and 1 m high, worked by hand
        ("ball", 523.6, 3.142),
        ("dome", 523.6, 2.685),
        ("cone", 261.8, 1.756),
        ("cylinder", 785.4, 3.927),
        ("cube", 1000.0, 5.0),
    ],
)
def test_a_shape_of_one_metre(shape: str, litres: float, square_metres: float) -> None:
    assert formulae.volume_mm3(shape, 1000, 1000) / 1e6 == pytest.approx(litres, abs=0.1)
    assert formulae.surface_mm2(shape, 1000, 1000) / 1e6 == pytest.approx(square_metres, abs=0.001)


def test_a_hemisphere_has_half_the_surface_of_its_ball() -> None:
    assert formulae.surface_mm2("dome", 900, 450) == pytest.approx(formulae.surface_mm2("ball", 900, 900) / 2)


# -- against numerical integration (scipy.integrate, SciPy 1) --


@pytest.mark.parametrize("shape", ROUND)
@pytest.mark.parametrize(("width", "height"), SIZES)
def test_volumes_agree_with_discs_summed_by_scipy(shape: str, width: float, height: float) -> None:
    discs, _ = integrate.quad(lambda up: pi * half_width(shape, width, height, up) ** 2, 0, height)
    assert formulae.volume_mm3(shape, width, height) == pytest.approx(discs, rel=1e-8)


@pytest.mark.parametrize(("width", "height"), SIZES)
def test_surfaces_of_balls_agree_with_scipy(width: float, height: float) -> None:
    a, c = width / 2, height / 2

    def band(angle: float) -> float:
        return float(2 * pi * a * np.cos(angle) * np.hypot(a * np.sin(angle), c * np.cos(angle)))

    whole, _ = integrate.quad(band, -pi / 2, pi / 2)
    assert formulae.surface_mm2("ball", width, height) == pytest.approx(whole, rel=1e-8)
    half, _ = integrate.quad(
        lambda angle: 2 * pi * a * np.cos(angle) * np.hypot(a * np.sin(angle), height * np.cos(angle)), 0, pi / 2
    )
    assert formulae.surface_mm2("dome", width, height) == pytest.approx(half, rel=1e-8)


@pytest.mark.parametrize(("width", "height"), SIZES)
def test_surfaces_of_cones_and_cylinders_agree_with_scipy(width: float, height: float) -> None:
    slant = sqrt(1 + (width / 2 / height) ** 2)
    cone, _ = integrate.quad(lambda up: 2 * pi * half_width("cone", width, height, up) * slant, 0, height)
    assert formulae.surface_mm2("cone", width, height) == pytest.approx(cone, rel=1e-9)
    side, _ = integrate.quad(lambda _: pi * width, 0, height)
    assert formulae.surface_mm2("cylinder", width, height) == pytest.approx(side + pi * width**2 / 4, rel=1e-9)


@pytest.mark.parametrize("shape", ROUND)
def test_rings_agree_with_the_outline_at_every_height(shape: str) -> None:
    ups = np.linspace(0, 1500, 61)
    found = [formulae.width_at_mm(shape, 700, 1500, float(up)) for up in ups]
    assert found == pytest.approx([2 * half_width(shape, 700, 1500, float(up)) for up in ups], abs=1e-6)


@pytest.mark.parametrize("shape", [*ROUND, "cube"])
def test_rings_integrate_to_the_volume(shape: str) -> None:
    ups = np.linspace(0, 900, 20_001)
    wide = np.array([formulae.width_at_mm(shape, 640, 900, float(up)) for up in ups])
    area = wide**2 if shape == "cube" else pi / 4 * wide**2
    assert float(np.trapezoid(area, ups)) == pytest.approx(formulae.volume_mm3(shape, 640, 900), rel=1e-4)


def test_a_ring_above_the_top_or_below_the_foot_is_nothing() -> None:
    assert formulae.width_at_mm("cube", 700, 900, 900) == 700
    assert formulae.width_at_mm("cube", 700, 900, 901) == 0
    assert formulae.width_at_mm("ball", 700, 700, -1) == 0
    assert formulae.width_at_mm("cone", 700, 1400, 350) == 525


# -- passes, shares and sizes --


@pytest.mark.parametrize(
    ("share", "passes"), [(-0.1, 0), (0, 0), (0.01, 1), (0.25, 1), (0.251, 2), (0.4375, 2), (0.44, 3)]
)
def test_light_passes(share: float, passes: int) -> None:
    # a landscape trade page [C]: at most a quarter a pass; 0.75 x 0.75 = 0.5625, so 43.75 % takes two
    assert formulae.passes_for(share, 0.25) == passes


def test_equal_passes_take_what_then_stands() -> None:
    assert formulae.share_a_pass(0.4375, 2) == pytest.approx(0.25)
    assert formulae.share_a_pass(0.3, 1) == pytest.approx(0.3)


def test_a_third_of_the_leaf_stands_outside_114_percent_of_the_width() -> None:
    # the cube root of 1.5 is 1.1447
    assert formulae.widest_standing_mm(700, 1 / 3) == pytest.approx(801.3, abs=0.05)
    assert formulae.widest_standing_mm(700, 0) == 700


def test_sizes_that_leave_two_thirds() -> None:
    width = formulae.width_leaving_mm((1000, 1200), 1000, 1 / 3)
    assert width == pytest.approx(894.4, abs=0.05)
    assert formulae.share_removed("cube", (1000, 1200), (width, 1000)) == pytest.approx(1 / 3)
    height = formulae.height_leaving_mm((1000, 1200), 900, 1 / 3)
    assert height == pytest.approx(987.7, abs=0.05)
    assert formulae.share_removed("cone", (1000, 1200), (900, height)) == pytest.approx(1 / 3)


def test_an_hour_clips_its_rate() -> None:
    assert formulae.minutes_for(4.0, 4.0) == 60
    assert formulae.minutes_for(1.54, 4.0) == pytest.approx(23.1)


@pytest.mark.parametrize("call", [formulae.volume_mm3, formulae.surface_mm2])
def test_a_shape_that_is_not_known_is_refused(call: Any) -> None:
    with pytest.raises(ValueError, match="'pyramid' is none of ball, dome, cone, cylinder, cube"):
        call("pyramid", 900, 900)
    with pytest.raises(ValueError, match="pyramid"):
        formulae.width_at_mm("pyramid", 900, 900, 100)


# -- what must hold --


@given(shape=SHAPE, width=SIZE, height=SIZE, times=st.floats(0.1, 10))
def test_a_shape_drawn_larger_grows_by_squares_and_cubes(shape: str, width: float, height: float, times: float) -> None:
    volume = formulae.volume_mm3(shape, width * times, height * times)
    assert volume == pytest.approx(formulae.volume_mm3(shape, width, height) * times**3, rel=1e-9)
    surface = formulae.surface_mm2(shape, width * times, height * times)
    assert surface == pytest.approx(formulae.surface_mm2(shape, width, height) * times**2, rel=1e-4)


@given(shape=SHAPE, width=SIZE, height=SIZE, part=st.floats(0.3, 1.0))
def test_inches_and_millimetres_agree_on_the_share(shape: str, width: float, height: float, part: float) -> None:
    metric = formulae.share_removed(shape, (width, height), (width * part, height * part))
    inches = formulae.share_removed(shape, (width / 25.4, height / 25.4), (width * part / 25.4, height * part / 25.4))
    assert metric == pytest.approx(inches, abs=1e-9)
    assert metric == pytest.approx(1 - part**3, abs=1e-9)


@given(width=SIZE, height=SIZE)
def test_a_spheroid_lies_between_the_balls_inside_and_round_it(width: float, height: float) -> None:
    small, large = sorted((width, height))
    found = formulae.surface_mm2("ball", width, height)
    assert pi * small**2 * (1 - 1e-6) <= found <= pi * large**2 * (1 + 1e-6)


@given(share=st.floats(0.001, 0.99), each=st.floats(0.05, 0.9))
def test_so_many_passes_are_enough_and_one_fewer_is_not(share: float, each: float) -> None:
    passes = formulae.passes_for(share, each)
    assert formulae.share_a_pass(share, passes) <= each + 1e-8
    if passes > 1:
        assert formulae.share_a_pass(share, passes - 1) > each - 1e-8
