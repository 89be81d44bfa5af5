"""Measures the contrast of words on a photograph from its pixels, and the weakest veil that makes it enough."""

from math import ceil

from PIL import Image

from howto.colour import LINEAR, Rgb, luminance, mixed, ratio, rgb, written
from howto.layout.crop import Box, Crop
from howto.model.photo import Photograph

CELL = 8  # px: about a stroke of the smallest words; a block counts by its mean colour
STEPS = 50  # strengths of veil tried


def blocks(photo: Photograph, crop: Crop, area: Box) -> tuple[Rgb, ...]:
    """Return the mean colours of the blocks under an area of the frame, each colour once."""
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
    found = small.getcolors(size[0] * size[1]) or []
    return tuple(sorted(colour for _, colour in found if isinstance(colour, tuple) and len(colour) == 3))


def worst(colours: tuple[Rgb, ...], words: str) -> float:
    """Return the contrast of words with the block they stand out from least."""
    own = luminance(rgb(words))
    return min(ratio(own, luminance(colour)) for colour in colours)


def veil(colours: tuple[Rgb, ...], words: str, cover: str, least: float) -> float | None:
    """Return the least share (0 to 1) of `cover` over the blocks that lifts the worst to `least`; None if none does."""
    dark_words = luminance(rgb(words)) < luminance(rgb(cover))
    hard = _hardest(colours, dark=dark_words)
    for step in range(STEPS + 1):
        veiled = tuple(rgb(mixed(written(colour), cover, step / STEPS)) for colour in hard)
        if worst(veiled, words) >= least:
            return step / STEPS
    return None


def _hardest(colours: tuple[Rgb, ...], *, dark: bool) -> tuple[Rgb, ...]:
    """Return the few blocks that come nearest to the words: the darkest for dark words, else the lightest."""

    def light(colour: Rgb) -> float:
        return 0.2126 * LINEAR[colour[0]] + 0.7152 * LINEAR[colour[1]] + 0.0722 * LINEAR[colour[2]]

    return tuple(sorted(colours, key=light, reverse=not dark)[:24])
