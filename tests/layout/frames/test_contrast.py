import pytest
from PIL import Image

from howto.colour import Rgb, contrast, mixed
from howto.layout.frames.contrast import Under, under, veil, worst
from howto.layout.frames.crop import Crop
from tests.support.photos import photograph

BOX = (0.0, 0.0, 160.0, 80.0)
WHOLE = Crop((0.0, 0.0, 160.0, 80.0), BOX)


def only(*colours: Rgb) -> Under:
    return Under(light=colours, dark=colours)


def test_a_plain_picture_is_one_colour() -> None:
    photo = photograph(Image.new("RGB", (160, 80), "#336699"))
    assert under(photo, WHOLE, (8.0, 8.0, 100.0, 40.0)) == only((51, 102, 153))


def test_only_what_lies_under_the_words_counts() -> None:
    image = Image.new("RGB", (160, 80), "#000000")
    image.paste("#ffffff", (80, 0, 160, 80))
    photo = photograph(image)
    assert under(photo, WHOLE, (0.0, 0.0, 80.0, 80.0)) == only((0, 0, 0))
    assert under(photo, WHOLE, (80.0, 0.0, 160.0, 80.0)) == only((255, 255, 255))


def test_the_cut_and_its_scale_are_followed() -> None:
    image = Image.new("RGB", (80, 80), "#000000")
    image.paste("#ffffff", (40, 0, 80, 80))
    photo = photograph(image)
    right_half = Crop((40.0, 0.0, 80.0, 20.0), (100.0, 50.0, 260.0, 130.0))
    assert under(photo, right_half, (100.0, 50.0, 260.0, 130.0)) == only((255, 255, 255))


def test_a_small_bright_spot_is_the_worst_block() -> None:
    image = Image.new("RGB", (160, 80), "#000000")
    image.paste("#ffffff", (80, 40, 88, 48))
    found = under(photograph(image), WHOLE, BOX)
    assert worst(found, "#ffffff") == pytest.approx(1.0)
    assert worst(found, "#808080") == 1.0


def test_a_veil_is_only_as_strong_as_it_must_be() -> None:
    white = only((255, 255, 255))
    assert veil(white, "#ffffff", "#000000", 4.5) == pytest.approx(0.54)  # 0.53 gives 4.45
    assert veil(only((0, 0, 0)), "#ffffff", "#000000", 4.5) == 0.0
    assert veil(white, "#000000", "#ffffff", 4.5) == 0.0


def test_words_that_do_not_stand_out_from_their_own_veil_have_none() -> None:
    assert veil(only((255, 255, 255)), "#777777", "#888888", 4.5) is None


def test_a_veil_lifts_every_block() -> None:
    grey = only(*((value, value, value) for value in range(0, 256, 5)))
    strength = veil(grey, "#1d2a26", "#f6f3ea", 4.5)
    assert strength == pytest.approx(0.6)
    darkest = mixed("#000000", "#f6f3ea", strength or 0)
    assert contrast("#1d2a26", darkest) >= 4.5
