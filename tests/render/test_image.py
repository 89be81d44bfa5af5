import io
from typing import Any

import pytest
from PIL import Image, ImageCms

from howto.model.crew import Colours
from howto.model.sheet import Area, Frame, Pixels, TextMark
from howto.render.image import contact_sheet, described, jpeg, picture, thumbnail
from howto.render.srgb import SRGB_PROFILE
from tests.support.photos import photograph, quarters

PHOTO = {"p.jpg": photograph(quarters(80, 40))}


def frame(*marks: Any, alt: str = "A ball.", credit: str = "", width: int = 160, height: int = 80) -> Frame:
    return Frame(name="01", width=width, height=height, ground="#f6f3ea", marks=marks, alt=alt, credit=credit)


def shown(data: bytes) -> Image.Image:
    image = Image.open(io.BytesIO(data))
    image.load()
    return image


def near(found: object, wanted: tuple[int, int, int], by: int = 6) -> bool:
    return isinstance(found, tuple) and all(abs(a - b) <= by for a, b in zip(found, wanted, strict=True))


def test_a_photograph_fills_its_box_with_its_cut() -> None:
    mark = Pixels(source="p.jpg", crop=(0.0, 0.0, 40.0, 40.0), box=(80.0, 0.0, 160.0, 80.0))
    image = picture(frame(mark), PHOTO)
    assert image.getpixel((10, 10)) == (246, 243, 234)
    assert near(image.getpixel((120, 20)), (255, 0, 0))
    assert near(image.getpixel((120, 60)), (0, 0, 255))


def test_thin_coloured_lines_keep_their_colour() -> None:
    mark = Area(points=((40, 0), (42, 0), (42, 80), (40, 80)), colour="#a63d1f")
    image = shown(jpeg(frame(mark), {}))
    assert near(image.getpixel((41, 40)), (166, 61, 31), by=14)


def test_a_frame_is_an_upright_srgb_jpeg_of_its_size() -> None:
    image = shown(jpeg(frame(), {}))
    assert (image.format, image.size, image.mode) == ("JPEG", (160, 80), "RGB")
    assert image.info["icc_profile"] == SRGB_PROFILE


def test_the_profile_is_srgb_and_its_bytes_are_fixed() -> None:
    profile = ImageCms.ImageCmsProfile(io.BytesIO(SRGB_PROFILE)).profile
    assert "sRGB" in (profile.profile_description or "")
    assert len(SRGB_PROFILE) == 588
    assert SRGB_PROFILE[24:36] == bytes([7, 233, 0, 1, 0, 1, 0, 0, 0, 0, 0, 0])  # 1 January 2025, midnight


def test_nothing_is_written_but_size_profile_and_words() -> None:
    data = jpeg(frame(credit="A. Nother"), {})
    image = shown(data)
    assert dict(image.getexif()) == {}
    assert dict(image.getexif().get_ifd(0x8825)) == {}
    assert sorted(image.info) == ["dpi", "icc_profile", "jfif", "jfif_density", "jfif_unit", "jfif_version", "xmp"] or (
        sorted(set(image.info) - {"dpi"}) == ["icc_profile", "jfif", "jfif_density", "jfif_unit", "jfif_version", "xmp"]
    )
    assert b"Exif\0" not in data
    assert b"Adobe\0" not in data


def test_a_photograph_leaves_its_notes_behind() -> None:
    mark = Pixels(source="p.jpg", crop=(0.0, 0.0, 80.0, 40.0), box=(0.0, 0.0, 160.0, 80.0))
    assert dict(shown(jpeg(frame(mark), PHOTO)).getexif()) == {}


def test_alternative_text_and_credit_are_written_as_metadata() -> None:
    image = shown(jpeg(frame(alt='A ball < 900 mm & "round"', credit='A. "Nother" & Sons'), {}))
    description = image.getxmp()["xmpmeta"]["RDF"]["Description"]
    assert description["AltTextAccessibility"]["Alt"]["li"]["text"] == 'A ball < 900 mm & "round"'
    assert description["Credit"] == 'A. "Nother" & Sons'


def test_without_a_credit_none_is_written() -> None:
    assert b"Credit" not in described("A ball.", "")


def test_the_same_frame_gives_the_same_bytes() -> None:
    mark = Pixels(source="p.jpg", crop=(0.0, 0.0, 80.0, 40.0), box=(0.0, 0.0, 160.0, 80.0))
    words = TextMark(text="Clip", at=(8.0, 60.0), size=40.0, face="head-bold", colour="#1d2a26")
    assert jpeg(frame(mark, words), PHOTO) == jpeg(frame(mark, words), PHOTO)


# -- contact sheets --


@pytest.mark.parametrize(("count", "size"), [(1, (408, 498)), (5, (1944, 498)), (11, (1944, 1446))])
def test_a_contact_sheet_holds_five_frames_a_row(count: int, size: tuple[int, int]) -> None:
    shots = [thumbnail(Image.new("RGB", (1080, 1350), "#ffffff")) for _ in range(count)]
    assert shown(contact_sheet(shots, Colours())).size == size


def test_a_contact_sheet_keeps_the_order() -> None:
    shots = [thumbnail(Image.new("RGB", (1080, 1080), colour)) for colour in ("#ff0000", "#00ff00", "#0000ff")]
    image = shown(contact_sheet(shots, Colours()))
    assert near(image.getpixel((200, 200)), (255, 0, 0))
    assert near(image.getpixel((584, 200)), (0, 255, 0))
    assert near(image.getpixel((968, 200)), (0, 0, 255))
