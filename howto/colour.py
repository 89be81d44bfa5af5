"""Colours as `#rrggbb`: contrast by WCAG 2.2, mixing, colour-blind sight, and the nearest that passes."""

import re
from collections.abc import Callable
from math import sqrt
from typing import Literal, NamedTuple

Rgb = tuple[int, int, int]
Deficiency = Literal["protan", "deutan", "tritan"]

TEXT_RATIO = 4.5  # Web Content Accessibility Guidelines 2.2, 1.4.3 (W3C, 2023): text of normal size, level AA
GRAPHIC_RATIO = 3.0  # the same, 1.4.11: parts of graphics that are needed to understand them, level AA
SAFETY_YELLOW = "#f9a800"  # signal yellow, RAL 1003, for the yellow of ISO 3864: from memory; black on it is 10.7 to 1
PAPER = "#ffffff"
PLAIN = re.compile(r"#[0-9a-fA-F]{6}")

# Machado, Oliveira and Fernandes, A physiologically-based model for simulation of color vision deficiency,
# IEEE Transactions on Visualization and Computer Graphics 15(6), 2009: full severity, on linear light.
SEEN: dict[Deficiency, tuple[tuple[float, float, float], ...]] = {
    "protan": ((0.152286, 1.052583, -0.204868), (0.114503, 0.786281, 0.099216), (-0.003882, -0.048116, 1.051998)),
    "deutan": ((0.367322, 0.860646, -0.227968), (0.280085, 0.672501, 0.047413), (-0.011820, 0.042940, 0.968881)),
    "tritan": ((1.255528, -0.076749, -0.178779), (-0.078411, 0.930809, 0.147602), (0.004733, 0.691367, 0.303900)),
}


def is_colour(text: str) -> bool:
    """Tell whether the text is a colour written `#rrggbb`."""
    return PLAIN.fullmatch(text) is not None


def rgb(colour: str) -> Rgb:
    """Return red, green and blue from 0 to 255."""
    return (int(colour[1:3], 16), int(colour[3:5], 16), int(colour[5:7], 16))


def written(channels: Rgb) -> str:
    """Return the colour as `#rrggbb`."""
    return "#{:02x}{:02x}{:02x}".format(*channels)


def linear(channel: int) -> float:
    """Return the light of an sRGB channel (0 to 255) from 0 to 1, by WCAG 2.2's definition."""
    part = channel / 255
    return part / 12.92 if part <= 0.04045 else ((part + 0.055) / 1.055) ** 2.4


LINEAR = tuple(linear(channel) for channel in range(256))


def luminance(channels: Rgb) -> float:
    """Return the relative luminance from 0 (black) to 1 (white), by WCAG 2.2's definition."""
    red, green, blue = channels
    return 0.2126 * LINEAR[red] + 0.7152 * LINEAR[green] + 0.0722 * LINEAR[blue]


def ratio(one: float, other: float) -> float:
    """Return the contrast of two luminances, from 1 to 21; never rounded, since 4.499 is not 4.5."""
    light, dark = max(one, other), min(one, other)
    return (light + 0.05) / (dark + 0.05)


def contrast(one: str, other: str) -> float:
    """Return the contrast of two colours, from 1 to 21."""
    return ratio(luminance(rgb(one)), luminance(rgb(other)))


def mixed(one: str, other: str, share: float) -> str:
    """Return `one` with `share` (0 to 1) of `other` over it, channel by channel, as a painter lays it."""
    over = zip(rgb(one), rgb(other), strict=True)
    red, green, blue = (round(a + (b - a) * share) for a, b in over)
    return written((red, green, blue))


def clearer(ground: str, one: str, other: str) -> str:
    """Return whichever of two colours stands out more on the ground; the first when they are equal."""
    return other if contrast(other, ground) > contrast(one, ground) else one


def encoded(light: float) -> int:
    """Return the sRGB channel (0 to 255) of a light from 0 to 1; outside that it is clipped."""
    light = min(max(light, 0.0), 1.0)
    part = light * 12.92 if light <= 0.0031308 else 1.055 * light ** (1 / 2.4) - 0.055
    return round(part * 255)


def seen(colour: str, deficiency: Deficiency) -> str:
    """Return the colour as a person without one kind of cone sees it (Machado and others, 2009)."""
    lights = tuple(LINEAR[channel] for channel in rgb(colour))
    rows = (zip(row, lights, strict=True) for row in SEEN[deficiency])
    red, green, blue = (encoded(sum(weight * light for weight, light in row)) for row in rows)
    return written((red, green, blue))


def least_contrast(one: str, other: str) -> float:
    """Return the contrast of two colours for the eye that sees it least, colour-blind or not."""
    pairs = ((seen(one, kind), seen(other, kind)) for kind in SEEN)
    return min(contrast(one, other), *(contrast(a, b) for a, b in pairs))


def nearest(colour: str, passes: Callable[[str], bool]) -> str | None:
    """Return the nearest colour, going darker or lighter, that passes; None if none on the way does."""
    found: list[tuple[float, str]] = []
    for end in ("#000000", "#ffffff"):
        way = (mixed(colour, end, step / 255) for step in range(256))
        first = next((each for each in way if passes(each)), None)
        if first is not None:
            found.append((apart(colour, first), first))
    return min(found)[1] if found else None


class Palette(NamedTuple):
    """The three colours a page is set in."""

    ink: str
    ground: str
    accent: str


def on_paper(ink: str, ground: str, accent: str) -> Palette:
    """Return the colours on white paper: the ground turns white, an ink too pale for it gives way to the ground.

    What still makes no AA there is darkened until it does.
    """

    def readable(colour: str) -> bool:
        return contrast(colour, PAPER) >= TEXT_RATIO

    dark = ink if readable(ink) else min(ink, ground, key=lambda colour: luminance(rgb(colour)))
    return Palette(nearest(dark, readable) or "#000000", PAPER, nearest(accent, readable) or "#000000")


def apart(one: str, other: str) -> float:
    """Return how far two colours lie apart, in the square root of light (near to how it is seen)."""
    pairs = zip(rgb(one), rgb(other), strict=True)
    return sqrt(sum((sqrt(LINEAR[a]) - sqrt(LINEAR[b])) ** 2 for a, b in pairs))
