"""Photographs for tests: drawn here, or shipped with two libraries as test data; at the size phones take."""

import io
from functools import cache
from importlib.resources import files
from typing import Any

from PIL import Image

from howto.model.photo import Photograph

SHIPPED = (
    ("sklearn.datasets.images", "china.jpg"),
    ("sklearn.datasets.images", "flower.jpg"),
    ("skimage.data", "coffee.png"),
    ("skimage.data", "rocket.jpg"),
    ("skimage.data", "astronaut.png"),
    ("skimage.data", "chelsea.png"),
    ("skimage.data", "page.png"),
    ("skimage.data", "grass.png"),
)


def quarters(width: int = 40, height: int = 20) -> Image.Image:
    """Return a picture whose corners differ: red upper left, green upper right, blue lower left, white lower right."""
    image = Image.new("RGB", (width, height), "#ffffff")
    half = (width // 2, height // 2)
    image.paste("#ff0000", (0, 0, *half))
    image.paste("#00ff00", (half[0], 0, width, half[1]))
    image.paste("#0000ff", (0, half[1], half[0], height))
    return image


def encoded(image: Image.Image, kind: str = "JPEG", **options: Any) -> bytes:
    """Return a picture as the bytes of a file."""
    stream = io.BytesIO()
    image.save(stream, kind, **options)
    return stream.getvalue()


def photograph(image: Image.Image, file: str = "p.jpg", full: int = 1) -> Photograph:
    """Return a picture as it is after reading; the file had `full` times the pixels each way."""
    ready = image.convert("RGB")
    return Photograph(
        file=file,
        width=ready.width,
        height=ready.height,
        rgb=ready.tobytes(),
        full_width=ready.width * full,
        full_height=ready.height * full,
    )


@cache
def shipped(number: int) -> Image.Image:
    """Return one of the shipped photographs, 2000 px on its longer side."""
    package, name = SHIPPED[number % len(SHIPPED)]
    with Image.open(io.BytesIO((files(package) / name).read_bytes())) as image:
        scale = 2000 / max(image.size)
        size = (round(image.width * scale), round(image.height * scale))
        return image.convert("RGB").resize(size, Image.Resampling.BICUBIC)
