"""Pictures with marks at random, as many as a property has examples: nothing overlaps, is cut, or fails AA."""

import random

import pytest
from hypothesis import settings
from PIL import Image

from howto.colour import contrast, written
from howto.layout.frames.carousel import RATIOS
from howto.layout.frames.marks import SIZES
from howto.model.sheet import Dot, Frame, TextMark
from howto.model.technique import Mark, Picture, Step
from howto.render.image import picture as painted
from tests.support import sample
from tests.support.carousels import laid
from tests.support.frames import box_of, collisions, discs_apart, outside, photo_discs, photo_of, smallest, words_of
from tests.support.photos import photograph, shipped

EACH = 10  # pictures a seed
SEEDS = settings().max_examples // EACH


def shot(chance: random.Random) -> Image.Image:
    """Return a photograph of some shape: landscape, portrait, square or narrower, up to 2 to 1."""
    image = shipped(chance.randrange(8))
    share = chance.choice((1.0, 1.0, 0.75, 0.6))
    wide, high = image.size
    image = image.crop(
        (0, 0, round(wide * share), high) if chance.random() < 0.5 else (0, 0, wide, round(high * share))
    )
    return image.transpose(Image.Transpose.ROTATE_90) if chance.random() < 0.4 else image


def worst_contrast(frame: Frame, image: Image.Image) -> float:
    """Return the contrast of the photograph's words with the worst block of 8 × 8 pixels under them."""
    shown = photo_of(frame)
    assert shown is not None
    bare = frame.model_copy(update={"marks": tuple(mark for mark in frame.marks if not isinstance(mark, TextMark))})
    ground = painted(bare, {"p.jpg": photograph(image, full=2)})
    ratios = [21.0]
    for words in words_of(frame):
        left, top, right, bottom = (round(edge) for edge in box_of(words))
        if words.at[1] > shown.box[3]:
            continue
        size = (max(1, (right - left) // 8), max(1, (bottom - top) // 8))
        cells = ground.crop((left, top, right, bottom)).resize(size, Image.Resampling.BOX)
        found = cells.getcolors(size[0] * size[1]) or []
        ratios += [contrast(words.colour, written(cell)) for _, cell in found if isinstance(cell, tuple)]  # type: ignore[arg-type]
    return min(ratios)


def words_on_photo(frame: Frame, discs: list[Dot]) -> list[str]:
    """Return the words that stand on the photograph and are no disc's number."""
    shown = photo_of(frame)
    if shown is None:
        return []
    left, top, right, bottom = shown.box
    numbers = {(round(dot.centre[0]), disc) for disc, dot in enumerate(discs)}
    inside = [w for w in words_of(frame) if left <= w.at[0] <= right and top <= w.at[1] <= bottom]
    return [w.text for w in inside if round(w.at[0]) not in {x for x, _ in numbers}]


@pytest.mark.parametrize("seed", range(SEEDS))
def test_nothing_overlaps_is_cut_or_fades(seed: int) -> None:
    chance = random.Random(seed)  # noqa: S311 - the same pictures every time
    for _ in range(EACH):
        image = shot(chance)
        ratio = chance.choice(RATIOS)
        marks = tuple(
            Mark(x_percent=chance.uniform(15, 85), y_percent=chance.uniform(15, 85), text=f"spot {number}")
            for number in range(1, chance.randint(1, 6))
        )
        focus = (chance.uniform(0, 100), chance.uniform(0, 100))
        step = sample.STEPS[0].model_copy(
            update={"pictures": (Picture(file="p.jpg", focus_percent=focus, marks=marks),)}
        )
        photos = {"p.jpg": photograph(image, full=2)}
        steps = (step, Step(title="Look."))
        made, findings = laid(ratio, photos, (), (), steps=steps, tools=(), materials=())
        shown = made[2]
        for frame in (made[0], shown):
            assert collisions(frame) == []
            assert outside(frame) == []
            assert smallest(frame) >= 28
        assert worst_contrast(made[0], image) >= 4.5
        told = {finding.rule for finding in findings}
        assert told <= {"fit.mark"}
        if told:
            assert findings[0].mend.startswith("take out mark")
            continue
        discs = photo_discs(shown)
        assert len(discs) == len(marks)
        assert discs_apart(discs)
        assert words_on_photo(shown, discs) == []
        box = photo_of(shown)
        assert box is not None
        for dot in discs:
            reach = SIZES.disc
            assert box.box[0] <= dot.centre[0] - reach
            assert dot.centre[0] + reach <= box.box[2]
            assert box.box[1] <= dot.centre[1] - reach
            assert dot.centre[1] + reach <= box.box[3]
