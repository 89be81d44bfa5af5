"""An opened picture → pixels in sRGB of the size needed, strip by strip so that memory stays small."""

import io
from collections.abc import Callable
from dataclasses import dataclass
from math import ceil

from PIL import Image, ImageCms, ImageFile

from howto.colour import rgb

WHITE = "#ffffff"
LARGEST_BOX = (1080, 1440)  # px; no photograph in a frame is shown wider or taller
STRIP = 256  # rows converted at a time
ORIENTATION = 0x0112  # Exif 2.32, 4.6.4: which way up the camera was held

Strip = Callable[[Image.Image], Image.Image]

# Exif orientation → the turn that sets the picture upright (Exif 2.32, 4.6.4, 0th row and 0th column).
UPRIGHT = {
    2: Image.Transpose.FLIP_LEFT_RIGHT,
    3: Image.Transpose.ROTATE_180,
    4: Image.Transpose.FLIP_TOP_BOTTOM,
    5: Image.Transpose.TRANSPOSE,
    6: Image.Transpose.ROTATE_270,
    7: Image.Transpose.TRANSVERSE,
    8: Image.Transpose.ROTATE_90,
}


@dataclass(frozen=True, slots=True)
class Turn:
    """How to set a picture upright."""

    orientation: int

    @property
    def swaps(self) -> bool:
        """Whether width and height change places."""
        return self.orientation >= 5

    def apply(self, image: Image.Image) -> Image.Image:
        """Return the picture upright."""
        method = UPRIGHT.get(self.orientation)
        return image if method is None else image.transpose(method)


def turns(image: Image.Image) -> Turn:
    """Return the turn the picture's own notes ask for; none where they are missing or make no sense."""
    try:
        value = image.getexif().get(ORIENTATION, 1)
    except (SyntaxError, ValueError, OSError, EOFError, LookupError, TypeError):  # damaged notes, whole pixels
        value = 1
    return Turn(value if isinstance(value, int) and value in UPRIGHT else 1)


def held_size(full: tuple[int, int]) -> tuple[int, int]:
    """Return the least size, of the same shape, that still covers the largest box of a frame."""
    scale = min(1.0, max(LARGEST_BOX[0] / full[0], LARGEST_BOX[1] / full[1]))
    return (ceil(full[0] * scale), ceil(full[1] * scale))


def pixels(image: ImageFile.ImageFile, need: tuple[int, int], ground: str) -> Image.Image:
    """Return the first picture of the file in sRGB, at least `need` in size where it is that large.

    A JPEG is decoded small; everything else is decoded whole and brought down strip by strip.
    """
    if image.format in {"JPEG", "MPO"}:
        image.draft(image.mode, need)
    image.load()
    factor = max(1, min(image.width // need[0], image.height // need[1]))
    to_srgb = _converter(image, ground)
    if factor == 1 and image.mode == "RGB" and "transparency" not in image.info:
        return to_srgb(image)
    size = (ceil(image.width / factor), ceil(image.height / factor))
    ready = Image.new("RGB", size)
    rows = max(1, STRIP // factor) * factor
    for top in range(0, image.height, rows):
        strip = image.crop((0, top, image.width, min(top + rows, image.height)))
        ready.paste(to_srgb(_flat(strip, image.info, ground, factor)), (0, top // factor))
    return ready


def _flat(strip: Image.Image, info: dict[str | tuple[int, int], object], ground: str, factor: int) -> Image.Image:
    """Return a strip without transparency or palette, reduced by `factor`, in L, CMYK or RGB."""
    if strip.mode.startswith("I"):
        strip = strip.point(lambda value: value * (1 / 256)).convert("L")
    if strip.mode in {"LA", "La", "PA", "RGBA", "RGBa"} or "transparency" in info:
        clear = strip.convert("RGBA")
        strip = Image.new("RGB", strip.size, rgb(ground))
        strip.paste(clear, mask=clear.getchannel("A"))
    elif strip.mode not in {"L", "CMYK", "RGB"}:
        strip = strip.convert("RGB")
    return strip.reduce(factor) if factor > 1 else strip


def _converter(image: Image.Image, ground: str) -> Strip:
    """Return what takes a strip to sRGB: through the picture's own profile where it has one that fits."""
    profile = image.info.get("icc_profile")
    mode = _flat(image.crop((0, 0, 1, 1)), image.info, ground, 1).mode
    transform = _transform(profile, mode) if isinstance(profile, bytes) else None
    if transform is None:
        return lambda strip: strip if strip.mode == "RGB" else strip.convert("RGB")
    return lambda strip: ImageCms.applyTransform(strip, transform) or strip


def _transform(profile: bytes, mode: str) -> ImageCms.ImageCmsTransform | None:
    """Return the way from a profile to sRGB; None where it is sRGB already, damaged, or for other channels."""
    space = {"RGB": "RGB", "L": "GRAY", "CMYK": "CMYK"}[mode]
    try:
        source = ImageCms.ImageCmsProfile(io.BytesIO(profile))
        if source.profile.xcolor_space.strip() != space:
            return None
        if "sRGB" in (source.profile.profile_description or ""):
            return None
        return ImageCms.buildTransform(
            source,
            ImageCms.createProfile("sRGB"),
            mode,
            "RGB",
            ImageCms.Intent.RELATIVE_COLORIMETRIC,
            ImageCms.Flags.BLACKPOINTCOMPENSATION,
        )
    except (ImageCms.PyCMSError, OSError, ValueError, TypeError):  # a damaged profile: the pixels are read as sRGB
        return None
