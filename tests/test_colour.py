import pytest
from colorspacious import cspace_convert
from hypothesis import given
from hypothesis import strategies as st

from howto.colour import (
    Deficiency,
    apart,
    clearer,
    contrast,
    is_colour,
    least_contrast,
    linear,
    mixed,
    nearest,
    rgb,
    seen,
    written,
)

KINDS: dict[Deficiency, str] = {"protan": "protanomaly", "deutan": "deuteranomaly", "tritan": "tritanomaly"}
colours = st.tuples(*[st.integers(0, 255)] * 3).map(written)


# Published pairs of Web Content Accessibility Guidelines 2.2, 1.4.3, and near misses worked by its formula.
@pytest.mark.parametrize(
    ("one", "other", "ratio"),
    [
        ("#777777", "#ffffff", 4.4781),
        ("#767676", "#ffffff", 4.5422),
        ("#595959", "#ffffff", 7.0047),
        ("#5a5a5a", "#ffffff", 6.8969),
        ("#ff0000", "#ffffff", 3.9985),
        ("#999999", "#ffffff", 2.849),
        ("#0000ff", "#ffffff", 8.5925),
        ("#0000ff", "#ff0000", 2.149),
    ],
)
def test_contrast_is_that_of_the_published_pairs(one: str, other: str, ratio: float) -> None:
    assert contrast(one, other) == pytest.approx(ratio, abs=0.0006)


def test_black_on_white_is_21_to_1() -> None:
    assert contrast("#000000", "#ffffff") == pytest.approx(21.0, abs=1e-12)


def test_both_published_thresholds_give_the_same_light_for_every_channel() -> None:
    older = [c / 255 / 12.92 if c / 255 <= 0.03928 else ((c / 255 + 0.055) / 1.055) ** 2.4 for c in range(256)]
    assert [linear(channel) for channel in range(256)] == older


@given(colours, colours)
def test_contrast_does_not_depend_on_the_order(one: str, other: str) -> None:
    assert contrast(one, other) == contrast(other, one)


@pytest.mark.parametrize(
    ("colour", "protan", "deutan", "tritan"),
    [
        ("#e69f00", "#b9a200", "#cab411", "#fb8c87"),
        ("#d55e00", "#817100", "#9e8c00", "#eb4050"),
        ("#0072b2", "#5375b5", "#3b67b1", "#008289"),
        ("#000000", "#000000", "#000000", "#000000"),
        ("#ffffff", "#ffffff", "#ffffff", "#ffffff"),
    ],
)
def test_colour_blind_sight_is_that_of_the_reference_values(colour: str, protan: str, deutan: str, tritan: str) -> None:
    found = [seen(colour, "protan"), seen(colour, "deutan"), seen(colour, "tritan")]
    for ours, theirs in zip(found, [protan, deutan, tritan], strict=True):
        assert all(abs(a - b) <= 1 for a, b in zip(rgb(ours), rgb(theirs), strict=True))


@given(colours, st.sampled_from(sorted(KINDS)))
def test_colour_blind_sight_agrees_with_the_reference_library(colour: str, kind: Deficiency) -> None:
    space = {"name": "sRGB1+CVD", "cvd_type": KINDS[kind], "severity": 100}
    theirs = cspace_convert([channel / 255 for channel in rgb(colour)], space, "sRGB1")
    wanted = [round(min(max(float(part), 0.0), 1.0) * 255) for part in theirs]
    assert all(abs(a - b) <= 1 for a, b in zip(rgb(seen(colour, kind)), wanted, strict=True))


def test_red_on_green_of_one_lightness_falls_for_colour_blind_eyes() -> None:
    assert contrast("#ff0000", "#004000") == pytest.approx(3.0, abs=0.1)
    assert least_contrast("#ff0000", "#004000") < 2.0


def test_a_mix_is_laid_channel_by_channel() -> None:
    assert mixed("#000000", "#ffffff", 0.5) == "#808080"
    assert mixed("#102030", "#ffffff", 0.0) == "#102030"
    assert mixed("#102030", "#ffffff", 1.0) == "#ffffff"


# White words on a black veil over white, the worst there is: half of it fails AA, 54 % passes.
def test_a_black_veil_of_54_percent_carries_white_words_on_anything() -> None:
    assert contrast("#ffffff", mixed("#ffffff", "#000000", 0.50)) == pytest.approx(3.95, abs=0.01)
    assert contrast("#ffffff", mixed("#ffffff", "#000000", 0.54)) == pytest.approx(4.61, abs=0.01)


def test_the_nearest_passing_colour_is_close_by() -> None:
    assert nearest("#777777", lambda colour: contrast(colour, "#ffffff") >= 4.5) == "#767676"
    assert nearest("#767676", lambda colour: contrast(colour, "#ffffff") >= 4.5) == "#767676"
    assert nearest("#123456", lambda colour: colour == "#ff00ff") is None


@given(colours, colours)
def test_on_any_ground_some_colour_on_the_way_to_black_or_white_makes_aa(colour: str, ground: str) -> None:
    found = nearest(colour, lambda each: contrast(each, ground) >= 4.5)
    assert found is not None
    assert contrast(found, ground) >= 4.5


def test_the_clearer_of_two_colours_wins() -> None:
    assert clearer("#a63d1f", "#f6f3ea", "#1d2a26") == "#f6f3ea"
    assert clearer("#f9a800", "#f6f3ea", "#1d2a26") == "#1d2a26"


def test_black_and_white_lie_furthest_apart() -> None:
    assert apart("#000000", "#ffffff") == pytest.approx(1.7320508, abs=1e-6)
    assert apart("#123456", "#123456") == 0


@pytest.mark.parametrize(("text", "is_one"), [("#1d2a26", True), ("#1D2A26", True), ("1d2a26", False), ("#fff", False)])
def test_a_colour_is_a_hash_and_six_signs(text: str, is_one: bool) -> None:
    assert is_colour(text) is is_one
