"""Each kind of frame in each ratio, painted and compared with the picture that was looked at and kept."""

from dataclasses import replace

import pytest
from PIL import Image

from howto.layout.frames.carousel import RATIOS
from howto.layout.frames.look import Ratio
from howto.model.photo import Photograph
from howto.model.sheet import Frame
from howto.model.technique import Mark, Picture
from howto.render.image import picture
from tests.support import sample
from tests.support.carousels import BALL, laid
from tests.support.photos import photograph
from tests.support.pixels import assert_golden, blocked, quarter

MARKS = (
    Mark(x_percent=50, y_percent=30, text="crown"),
    Mark(x_percent=32, y_percent=60, text="widest ring"),
    Mark(x_percent=50, y_percent=82, text="foot"),
)
STEPS = (
    sample.STEPS[0],
    sample.STEPS[1].model_copy(update={"pictures": (Picture(file="p.jpg", marks=MARKS),)}),
    *sample.STEPS[2:],
)
KINDS = (
    *((0, "cover"), (1, "numbers"), (2, "step-drawn"), (3, "step-photographed"), (7, "step-alone")),
    *((8, "cautions"), (9, "finish")),
)
DRAWN = replace(BALL, caption="The circle from above")  # it speaks of the first step and not of the last


def scene() -> Image.Image:
    """Return a drawn scene: sky fading down to a hedge, a pale round shrub on it, dark ground below."""
    image = Image.linear_gradient("L").resize((1600, 1200)).convert("RGB").point([v // 2 + 120 for v in range(256)] * 3)
    image.paste("#4a6b3a", (0, 420, 1600, 760))
    image.paste("#3a342c", (0, 760, 1600, 1200))
    disc = Image.radial_gradient("L").resize((900, 900)).point([255 if v < 180 else 0 for v in range(256)])
    image.paste("#9fbf6a", (350, 200), disc)
    return image


PHOTOS: dict[str, Photograph] = {"p.jpg": photograph(scene(), full=2)}


def carousel(ratio: Ratio, *, drawn: bool = False) -> tuple[Frame, ...]:
    steps = sample.STEPS if drawn else STEPS
    made, findings = laid(ratio, {} if drawn else PHOTOS, (DRAWN,), steps=steps)
    assert findings == ()
    return made


@pytest.mark.parametrize("ratio", RATIOS)
@pytest.mark.parametrize(("at", "kind"), KINDS)
def test_each_kind_of_frame_looks_as_it_was_kept(ratio: Ratio, at: int, kind: str, accept: bool) -> None:
    image = quarter(picture(blocked(carousel(ratio)[at]), PHOTOS))
    assert_golden(image, f"carousel-{ratio}", kind, accept=accept)


@pytest.mark.parametrize("ratio", RATIOS)
def test_a_cover_with_a_drawing_looks_as_it_was_kept(ratio: Ratio, accept: bool) -> None:
    image = quarter(picture(blocked(carousel(ratio, drawn=True)[0]), {}))
    assert_golden(image, f"carousel-{ratio}", "cover-drawn", accept=accept)


def test_a_frame_in_the_real_face_looks_as_it_was_kept(accept: bool) -> None:
    image = quarter(picture(carousel("4x5")[3], PHOTOS))
    assert_golden(image, "carousel-4x5", "step-real-face", accept=accept, tolerance=2)
