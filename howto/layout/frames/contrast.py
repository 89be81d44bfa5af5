"""Measures the contrast of words on a photograph from its pixels, and the weakest veil that makes it enough."""

from bisect import bisect_left
from dataclasses import dataclass
from heapq import nlargest, nsmallest
from math import ceil

from PIL import Image

from howto.colour import LINEAR, Rgb, luminance, mixed, ratio, rgb, written
from howto.layout.drawing.plane import Box
from howto.layout.frames.crop import Crop
from howto.model.photo import Photograph

CELL = 4  # px: half a stroke of the smallest words; no stroke stands on worse ground than the worst such block
STEPS = 50  # strengths of veil there are
HARDEST = 48  # blocks that a veil is tried on
LIGHT = [round(light * 255) for light in LINEAR]
WEIGHTS = (0.2126, 0.7152, 0.0722, 0.0)  # of the channels in luminance: Web Content Accessibility Guidelines 2.2
SLACK = 0.85  # of the lightest: blocks that a veil may turn into the lightest


@dataclass(frozen=True, slots=True)
class Under:
    """What lies under some words: the mean colours of the lightest blocks and of the darkest."""

    light: tuple[Rgb, ...]
    dark: tuple[Rgb, ...]


def under(photo: Photograph, crop: Crop, area: Box) -> Under:
    """Return what lies under an area of the frame."""
    image = Image.frombuffer("RGB", (photo.width, photo.height), photo.rgb, "raw", "RGB", 0, 1)
    left, top = crop.part[0] - crop.box[0] / crop.scale, crop.part[1] - crop.box[1] / crop.scale
    part = (
        max(0.0, left + area[0] / crop.scale),
        max(0.0, top + area[1] / crop.scale),
        min(float(photo.width), left + area[2] / crop.scale),
        min(float(photo.height), top + area[3] / crop.scale),
    )
    size = (max(1, ceil((area[2] - area[0]) / CELL)), max(1, ceil((area[3] - area[1]) / CELL)))
    small = image.resize(size, Image.Resampling.BOX, box=part)
    grey = small.point(LIGHT * 3).convert("L", WEIGHTS)
    levels = [level for level, count in enumerate(grey.histogram()) if count]
    low, high = levels[0], levels[-1]
    return Under(
        light=_picked(small, grey.point([255 * (value >= high * SLACK - 2) for value in range(256)]), "#000000"),
        dark=_picked(small, grey.point([255 * (value <= low / SLACK + 2) for value in range(256)]), "#ffffff"),
    )


def _picked(small: Image.Image, mask: Image.Image, rest: str) -> tuple[Rgb, ...]:
    """Return the colours of the blocks in a mask; `rest` stands for the others, which it outdoes in none."""
    kept = Image.composite(small, Image.new("RGB", small.size, rest), mask)
    found = kept.getcolors(small.width * small.height) or []
    return tuple(colour for _, colour in found if isinstance(colour, tuple) and len(colour) == 3)


def worst(ground: Under, words: str) -> float:
    """Return the contrast of words with the block they stand out from least."""
    own = luminance(rgb(words))
    lightest = max(luminance(colour) for colour in ground.light)
    darkest = min(luminance(colour) for colour in ground.dark)
    return 1.0 if darkest < own < lightest else min(ratio(own, lightest), ratio(own, darkest))


def veil(ground: Under, words: str, cover: str, least: float) -> float | None:
    """Return the least share (0 to 1) of `cover` over the blocks that lifts the worst to `least`; None if none does."""
    own = luminance(rgb(words))
    hard = _hardest(ground, dark=own < luminance(rgb(cover)))

    def passes(step: int) -> int:
        veiled = (luminance(rgb(mixed(written(colour), cover, step / STEPS))) for colour in hard)
        return int(all(ratio(own, light) >= least for light in veiled))

    if not passes(STEPS):
        return None
    return bisect_left(range(STEPS), 1, key=passes) / STEPS


def _hardest(ground: Under, *, dark: bool) -> tuple[Rgb, ...]:
    """Return the few blocks that come nearest to the words: the darkest for dark words, else the lightest."""
    colours = ground.dark if dark else ground.light
    return tuple((nsmallest if dark else nlargest)(HARDEST, colours, key=luminance))
