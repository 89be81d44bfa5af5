"""The pictures that the README shows are what a build makes today."""

import io
import re

import numpy as np
from PIL import Image

from tests.gallery import GALLERY, pictures
from tests.support.source import ROOT


def pixels(data: bytes) -> "np.ndarray[tuple[int, ...], np.dtype[np.int16]]":
    """Return a picture's pixels."""
    with Image.open(io.BytesIO(data)) as image:
        return np.asarray(image.convert("RGB"), dtype=np.int16)


def test_the_gallery_is_fresh() -> None:
    made = pictures()
    assert sorted(path.name for path in GALLERY.iterdir()) == sorted(made)
    for name, data in made.items():
        kept, now = pixels((GALLERY / name).read_bytes()), pixels(data)
        assert kept.shape == now.shape, name
        differing = float((np.abs(kept - now).max(axis=2) > 24).mean())  # a new rasteriser moves edges a little
        assert differing < 0.01, f"{name}: {differing:.1%} of it differs; python -m tests.gallery"


def test_every_picture_of_the_readme_is_there() -> None:
    shown = re.findall(r"\]\(([^)]+\.(?:png|jpg))\)", (ROOT / "README.md").read_text(encoding="utf-8"))
    assert len(shown) >= 3
    assert [each for each in shown if not (ROOT / each).is_file()] == []
