import errno
import io
import struct
import warnings
import zlib
from pathlib import Path
from typing import Any

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from PIL import Image, ImageCms

from howto.findings import Finding, Severity
from howto.model.photo import Photograph
from howto.read import photo as module
from howto.read.photo import read_photo
from howto.read.photo_kinds import kind_of
from howto.read.photo_pixels import held_size
from howto.span import Span
from tests.support.photos import encoded, quarters

SPAN = Span("techniques/a.md", 12, 16, 21)
RED, GREEN, BLUE, WHITE = (255, 0, 0), (0, 255, 0), (0, 0, 255), (255, 255, 255)
PLAIN: dict[str, Any] = {"quality": 95, "subsampling": 0}


def read(folder: Path, data: bytes, name: str = "p.jpg", ground: str = "#ffffff") -> Photograph:
    (folder / name).write_bytes(data)
    photo, findings = read_photo(folder, name, SPAN, name, ground)
    assert findings == ()
    assert photo is not None
    return photo


def refused(folder: Path, data: bytes, name: str = "p.jpg") -> Finding:
    (folder / name).write_bytes(data)
    photo, (finding,) = read_photo(folder, name, SPAN, name)
    assert photo is None
    assert (finding.span, finding.text, finding.severity) == (SPAN, name, Severity.ERROR)
    return finding


def corners(photo: Photograph) -> tuple[tuple[int, ...], ...]:
    image = Image.frombytes("RGB", (photo.width, photo.height), photo.rgb)
    w, h = image.size
    spots = ((w // 4, h // 4), (3 * w // 4, h // 4), (w // 4, 3 * h // 4), (3 * w // 4, 3 * h // 4))
    pixels = [image.getpixel(spot) for spot in spots]
    return tuple(
        tuple(255 if part > 200 else 0 if part < 55 else part for part in each)
        for each in pixels
        if isinstance(each, tuple)
    )


UPRIGHT = (RED, GREEN, BLUE, WHITE)


@pytest.mark.parametrize("kind", ["JPEG", "PNG", "WEBP"])
@pytest.mark.parametrize("orientation", range(1, 9))
def test_every_orientation_comes_out_upright(tmp_path: Path, kind: str, orientation: int) -> None:
    # what a camera held that way stores: the upright picture turned back (Exif 2.32, 4.6.4)
    back = {
        2: Image.Transpose.FLIP_LEFT_RIGHT,
        3: Image.Transpose.ROTATE_180,
        4: Image.Transpose.FLIP_TOP_BOTTOM,
        5: Image.Transpose.TRANSPOSE,
        6: Image.Transpose.ROTATE_90,
        7: Image.Transpose.TRANSVERSE,
        8: Image.Transpose.ROTATE_270,
    }.get(orientation)
    stored = quarters() if back is None else quarters().transpose(back)
    exif = Image.Exif()
    exif[0x0112] = orientation
    options = {"lossless": True} if kind == "WEBP" else PLAIN if kind == "JPEG" else {}
    photo = read(tmp_path, encoded(stored, kind, exif=exif, **options))
    assert (photo.width, photo.height, photo.full_width, photo.full_height) == (40, 20, 40, 20)
    assert corners(photo) == UPRIGHT


def test_a_big_turned_jpeg_is_decoded_small_and_keeps_its_true_size(tmp_path: Path) -> None:
    exif = Image.Exif()
    exif[0x0112] = 6
    stored = quarters(4000, 3000).transpose(Image.Transpose.ROTATE_90).resize((4000, 3000))
    photo = read(tmp_path, encoded(stored, exif=exif))
    assert (photo.width, photo.height) == (1500, 2000)
    assert (photo.full_width, photo.full_height) == (3000, 4000)
    assert corners(photo) == UPRIGHT


@pytest.mark.parametrize("mode", ["CMYK", "L", "1", "P", "RGBA", "LA", "I;16"])
def test_every_colour_mode_becomes_plain_colour(tmp_path: Path, mode: str) -> None:
    grey = Image.new("L", (40, 20), 0)
    grey.paste(255, (20, 0, 40, 20))
    kind = "JPEG" if mode == "CMYK" else "PNG"
    if mode == "I;16":
        image = Image.new("I;16", (40, 20), 0)
        image.paste(65535, (20, 0, 40, 20))
    else:
        image = grey.convert("RGB").convert(mode) if mode in {"P", "CMYK", "RGBA"} else grey.convert(mode)
    photo = read(tmp_path, encoded(image, kind))
    assert corners(photo) == ((0, 0, 0), WHITE, (0, 0, 0), WHITE)


def test_16_bit_grey_keeps_its_middle(tmp_path: Path) -> None:
    photo = read(tmp_path, encoded(Image.new("I;16", (4, 4), 32768), "PNG"))
    assert set(photo.rgb) == {128}


def test_what_is_clear_shows_the_ground(tmp_path: Path) -> None:
    image = Image.new("RGBA", (8, 8), (255, 0, 0, 0))
    image.paste((0, 0, 255, 128), (0, 0, 4, 8))
    photo = read(tmp_path, encoded(image, "PNG"), ground="#f6f3ea")
    painted = Image.frombytes("RGB", (8, 8), photo.rgb)
    assert painted.getpixel((6, 4)) == (246, 243, 234)
    assert painted.getpixel((1, 4)) == (123, 121, 245)


def test_a_clear_palette_colour_shows_the_ground(tmp_path: Path) -> None:
    image = Image.new("P", (8, 8), 0)
    image.putpalette([9, 9, 9, 0, 0, 255])
    image.paste(1, (0, 0, 4, 8))
    photo = read(tmp_path, encoded(image, "PNG", transparency=0), ground="#f6f3ea")
    painted = Image.frombytes("RGB", (8, 8), photo.rgb)
    assert painted.getpixel((6, 4)) == (246, 243, 234)
    assert painted.getpixel((1, 4)) == (0, 0, 255)


@pytest.mark.parametrize("kind", ["WEBP", "PNG"])
def test_a_moving_picture_gives_its_first(tmp_path: Path, kind: str) -> None:
    first, second = Image.new("RGB", (8, 8), RED), Image.new("RGB", (8, 8), BLUE)
    options = {"lossless": True} if kind == "WEBP" else {}
    data = encoded(first, kind, save_all=True, append_images=[second], **options)
    assert set(zip(*[iter(read(tmp_path, data).rgb)] * 3, strict=True)) == {RED}


def wide_gamut() -> bytes:
    """Return a profile whose red, green and blue are swapped round, so that a conversion cannot be overlooked."""
    profile = bytearray(ImageCms.ImageCmsProfile(ImageCms.createProfile("sRGB")).tobytes())
    data = bytes(profile)
    data = data.replace(b"rXYZ", b"tmpX").replace(b"bXYZ", b"rXYZ").replace(b"tmpX", b"bXYZ")
    return data.replace("sRGB".encode("utf-16-be"), "test".encode("utf-16-be"))


@pytest.mark.parametrize("kind", ["JPEG", "PNG", "WEBP"])
def test_a_colour_profile_is_followed_to_srgb(tmp_path: Path, kind: str) -> None:
    options = {"lossless": True} if kind == "WEBP" else PLAIN if kind == "JPEG" else {}
    photo = read(tmp_path, encoded(quarters(), kind, icc_profile=wide_gamut(), **options))
    assert corners(photo) == (BLUE, GREEN, RED, WHITE)


def test_an_srgb_profile_changes_nothing(tmp_path: Path) -> None:
    profile = ImageCms.ImageCmsProfile(ImageCms.createProfile("sRGB")).tobytes()
    with_it, without = encoded(quarters(), "PNG", icc_profile=profile), encoded(quarters(), "PNG")
    assert read(tmp_path, with_it).rgb == read(tmp_path, without).rgb


@pytest.mark.parametrize("profile", [b"not a profile", b"\0" * 200])
def test_a_damaged_profile_is_passed_over(tmp_path: Path, profile: bytes) -> None:
    assert corners(read(tmp_path, encoded(quarters(), "JPEG", icc_profile=profile, **PLAIN))) == UPRIGHT


def test_a_profile_for_other_channels_is_passed_over(tmp_path: Path) -> None:
    lab = ImageCms.ImageCmsProfile(ImageCms.createProfile("LAB")).tobytes()
    assert corners(read(tmp_path, encoded(quarters(), "JPEG", icc_profile=lab, **PLAIN))) == UPRIGHT


def test_damaged_notes_leave_whole_pixels(tmp_path: Path) -> None:
    photo = read(tmp_path, encoded(quarters(), "JPEG", exif=b"Exif\0\0II*\0\xff\xff\xff\xff" + b"\7" * 40, **PLAIN))
    assert corners(photo) == UPRIGHT


# 4000 × 3000 must cover 1080 × 1440: 1920 × 1440; smaller files are not blown up.
@pytest.mark.parametrize(
    ("full", "held"), [((4000, 3000), (1920, 1440)), ((3000, 4000), (1080, 1440)), ((800, 600), (800, 600))]
)
def test_what_is_held_covers_the_largest_box(full: tuple[int, int], held: tuple[int, int]) -> None:
    assert held_size(full) == held


def test_a_big_png_is_brought_down_in_strips_without_seams(tmp_path: Path) -> None:
    ramp = Image.linear_gradient("L").resize((2000, 4500)).convert("RGB")
    photo = read(tmp_path, encoded(ramp, "PNG"))
    assert (photo.width, photo.height, photo.full_width) == (2000, 4500, 2000)
    tall = Image.linear_gradient("L").resize((2200, 4600)).convert("RGB")
    photo = read(tmp_path, encoded(tall, "PNG"))
    assert (photo.width, photo.height, photo.full_width) == (1100, 2300, 2200)
    column = [photo.rgb[3 * photo.width * y] for y in range(photo.height)]
    assert column == sorted(column)


# -- what cannot be read --


def test_a_missing_picture_names_the_nearest(tmp_path: Path) -> None:
    (tmp_path / "ball-from-above.jpg").write_bytes(b"x")
    photo, (found,) = read_photo(tmp_path, "ball-from-abvoe.jpg", SPAN, "x")
    assert photo is None
    assert (found.rule, found.mend) == ("file.picture-missing", "write `ball-from-above.jpg`")
    (found,) = read_photo(tmp_path, "zzz.png", SPAN, "x")[1]
    assert found.mend == f"put `zzz.png` into the folder `{tmp_path.name}`, or take this line out"
    (found,) = read_photo(tmp_path / "nowhere", "zzz.png", SPAN, "x")[1]
    assert found.what == "there is no `zzz.png` in `nowhere`"


@pytest.mark.parametrize("name", ["../secret.jpg", "/etc/hostname", "a/../../b.jpg"])
def test_a_picture_outside_the_folder_is_not_opened(tmp_path: Path, name: str) -> None:
    (tmp_path / "secret.jpg").write_bytes(encoded(quarters()))
    folder = tmp_path / "pictures"
    folder.mkdir()
    photo, (found,) = read_photo(folder, name, SPAN, name)
    assert photo is None
    assert found.rule == "file.picture-outside"
    assert found.mend == "copy the picture into `pictures` and write only its name"


def test_the_folders_own_name_may_stand_before_the_picture(tmp_path: Path) -> None:
    (tmp_path / "p.png").write_bytes(encoded(quarters(), "PNG"))
    photo, findings = read_photo(tmp_path, f"{tmp_path.name}/p.png", SPAN, "x")
    assert photo is not None
    assert (photo.file, findings) == ("p.png", ())


HEIC = b"\0\0\0\x18ftypheic\0\0\0\0mif1heic"


@pytest.mark.parametrize(
    ("data", "kind"),
    [
        (HEIC, "HEIC"),
        (b"\0\0\0\x1cftypmif1\0\0\0\0mif1heicmiaf", "HEIC"),
        (b"\0\0\0\x1cftypavif\0\0\0\0avifmif1miaf", "AVIF"),
        (b"\0\0\0\x18ftypisom\0\0\0\0mp41", "video"),
        (b"\0\0\0\x18ftypcrx \0\0\0\0crx ", "raw camera"),
        (b"RIFF\0\0\0\0AVI LIST", "video"),
        (b"RIFF\0\0\0\0WEBPVP8 ", "WEBP"),
        (b"GIF89a", "GIF"),
        (b"II*\0\x08\0\0\0", "TIFF"),
        (b"%PDF-1.7", "PDF"),
        (b"\xff\xd8\xff\xe0", "JPEG"),
        (b"just words", ""),
        (b"", ""),
    ],
)
def test_a_file_is_known_by_its_first_bytes(data: bytes, kind: str) -> None:
    assert kind_of(data) == kind


def test_heic_is_told_how_to_export(tmp_path: Path) -> None:
    found = refused(tmp_path, HEIC, "IMG_2041.HEIC")
    assert (found.rule, found.what) == ("file.picture-kind", "`IMG_2041.HEIC` is an HEIC file")
    assert found.mend.startswith('on the phone, share `IMG_2041.HEIC` as "most compatible" or JPEG')


@pytest.mark.parametrize(
    ("data", "what"),
    [(b"", "`p.jpg` is not a picture"), (b"GIF89a", "`p.jpg` is a GIF file"), (b"%PDF-", "`p.jpg` is a PDF file")],
)
def test_another_kind_of_file_is_named(tmp_path: Path, data: bytes, what: str) -> None:
    assert refused(tmp_path, data).what == what


@pytest.mark.parametrize("kind", ["JPEG", "PNG", "WEBP"])
def test_a_picture_that_stops_part_way_is_a_finding(tmp_path: Path, kind: str) -> None:
    noise = Image.effect_noise((200, 200), 80).convert("RGB")
    data = encoded(noise, kind)
    found = refused(tmp_path, data[: len(data) // 2])
    assert found.rule == "file.picture-damaged"
    assert found.mend == "copy the photograph from the phone again and put it in place of `p.jpg`"


def test_a_cut_off_jpeg_says_so(tmp_path: Path) -> None:
    data = encoded(Image.effect_noise((200, 200), 80).convert("RGB"))
    assert refused(tmp_path, data[: len(data) // 2]).what == "`p.jpg` stops part-way through"


def png_header(width: int, height: int) -> bytes:
    """Return a PNG that claims a size and holds next to nothing."""

    def chunk(name: bytes, body: bytes) -> bytes:
        return struct.pack(">I", len(body)) + name + body + struct.pack(">I", zlib.crc32(name + body))

    head = chunk(b"IHDR", struct.pack(">IIBBBBB", width, height, 8, 2, 0, 0, 0))
    return b"\x89PNG\r\n\x1a\n" + head + chunk(b"IDAT", zlib.compress(b"\0" * 99)) + chunk(b"IEND", b"")


@pytest.mark.parametrize(
    ("size", "what"),
    [
        ((8000, 8000), "`p.jpg` has 64 megapixels (8000 × 8000)"),
        ((12000, 12000), "`p.jpg` has 144 megapixels (12000 × 12000)"),
        ((30000, 30000), "`p.jpg` has more than 178 megapixels"),
    ],
)
def test_a_picture_bomb_is_refused_before_it_is_unpacked(tmp_path: Path, size: tuple[int, int], what: str) -> None:
    found = refused(tmp_path, png_header(*size))
    assert (found.rule, found.what) == ("file.picture-too-large", what)
    assert found.mend == "save `p.jpg` again as a plain JPEG of at most 4000 × 3000 pixels"


def test_a_progressive_jpeg_has_a_lower_limit(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(module, "MOST_PROGRESSIVE", 0.01)
    image = quarters(200, 100)
    assert refused(tmp_path, encoded(image, progressive=True)).why == (
        "a progressive JPEG of more than 0 megapixels needs too much memory"
    )
    assert read(tmp_path, encoded(image)).width == 200


def test_a_file_of_too_many_bytes_is_not_opened(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(module, "MOST_BYTES", 1_000_000)
    assert refused(tmp_path, b"\xff\xd8\xff" + b"\0" * 2_000_000).what == "`p.jpg` is 2 MB"


@settings(suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(data=st.data(), kind=st.sampled_from(["JPEG", "PNG", "WEBP"]))
def test_damaged_bytes_never_crash(tmp_path: Path, data: st.DataObject, kind: str) -> None:
    whole = bytearray(encoded(Image.linear_gradient("L").resize((64, 48)).convert("RGB"), kind))
    for _ in range(data.draw(st.integers(1, 8))):
        whole[data.draw(st.integers(0, len(whole) - 1))] = data.draw(st.integers(0, 255))
    cut = data.draw(st.integers(1, len(whole)))
    (tmp_path / "p.jpg").write_bytes(bytes(whole[:cut]))
    with warnings.catch_warnings():
        warnings.simplefilter("error")
        photo, findings = read_photo(tmp_path, "p.jpg", SPAN, "p.jpg")
    assert (photo is None) == bool(findings)


def test_reading_leaves_no_notes_behind(tmp_path: Path) -> None:
    exif = Image.Exif()
    exif[0x013B] = "Somebody"
    exif[0x8825] = {1: "N", 2: (51.0, 28.0, 40.0)}
    photo = read(tmp_path, encoded(quarters(), exif=exif, comment=b"mine", **PLAIN))
    assert b"Somebody" not in photo.model_dump_json(exclude={"rgb"}).encode()
    assert sorted(Photograph.model_fields) == ["file", "full_height", "full_width", "height", "rgb", "width"]
    assert len(io.BytesIO(photo.rgb).read()) == 40 * 20 * 3


def test_a_picture_that_may_not_be_read_is_told(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    def barred(_path: Path, _mode: str) -> None:
        raise PermissionError(errno.EACCES, "Permission denied")

    (tmp_path / "p.jpg").write_bytes(b"")
    monkeypatch.setattr("pathlib.Path.open", barred)
    _, (finding,) = read_photo(tmp_path, "p.jpg", SPAN, "p.jpg")
    assert (finding.rule, finding.what) == ("file.picture-missing", "`p.jpg` cannot be opened")
    assert finding.why == "the computer says: permission denied"


def test_a_name_too_long_for_the_disk_is_of_no_picture(tmp_path: Path) -> None:
    _, (finding,) = read_photo(tmp_path, f"{'a' * 300}.jpg", SPAN, "a")
    assert finding.rule == "file.picture-missing"
