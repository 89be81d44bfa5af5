from pathlib import Path

import pytest
from fontTools.ttLib import TTFont
from PIL import ImageFont, features

from howto.fonts import CUTS, Face, coverage, covers, face_for, missing, path, pens, runs, typst_fonts, width

FACES: tuple[Face, ...] = ("text", "text-bold", "text-italic", "head", "head-bold")


def test_faces_are_found_in_the_font_packages() -> None:
    assert [path(face).name for face in FACES] == [
        "SourceSansPro-Regular.ttf",
        "SourceSansPro-Bold.ttf",
        "SourceSansPro-It.ttf",
        "BarlowCondensed-SemiBold.ttf",
        "BarlowCondensed-Bold.ttf",
    ]
    assert all(path(face).is_file() for face in FACES)


def test_typst_gets_truetype_files_only_and_each_once() -> None:
    files = typst_fonts()
    assert len(set(files)) == 6
    assert {file.suffix for file in files} == {".ttf"}
    assert all(isinstance(file, Path) and file.is_file() for file in files)


@pytest.mark.parametrize("face", FACES)
def test_coverage_and_widths_agree_with_the_font_library(face: Face) -> None:
    with TTFont(path(face)) as font:
        cmap, metrics = font.getBestCmap(), font["hmtx"].metrics
        units = font["head"].unitsPerEm
        found = coverage(face)
        assert set(found.glyphs) == {code for code, name in cmap.items() if font.getGlyphID(name)}
        assert found.units == units
        for code, name in cmap.items():
            assert found.advance(found.glyphs[code]) == metrics[name][0]


def test_names_match_what_css_and_typst_ask_for() -> None:
    for face in FACES:
        with TTFont(path(face)) as font:
            family = font["name"].getDebugName(16) or font["name"].getDebugName(1)
            assert family == CUTS[face].family
            assert font["OS/2"].usWeightClass == CUTS[face].weight
            assert bool(font["OS/2"].fsSelection & 1) is CUTS[face].italic


def test_letters_the_head_face_lacks_go_to_the_bold_text_face() -> None:
    assert not any(covers("head", letter) for letter in "⅓⅔→←✓☐☑")
    assert all(covers("text-bold", letter) for letter in "⅓⅔→←✓☐☑")
    assert face_for("head", "→") == "text-bold"
    assert face_for("head-bold", "½") == "head-bold"
    assert runs("⅓ of it → cut", "head") == (
        ("⅓", "text-bold"),
        (" of it ", "head"),
        ("→", "text-bold"),
        (" cut", "head"),
    )
    assert runs("⅓ of it", "text") == (("⅓ of it", "text"),)


def test_letters_no_face_has_are_named_once_in_order() -> None:
    assert missing("Kapu\u0101 漢字漢\n\tok", "text") == ("漢", "字")
    assert missing("⅓ → ✓", "head") == ()
    assert missing("漢", "head") == ("漢",)


# Widths of HarfBuzz 14.5 without ligatures, through the Raqm engine that Pillow 13.0.0 brings, at 1000 px.
@pytest.mark.parametrize(
    ("face", "text", "thousandths"),
    [
        ("text", "AVATAR office To", 6844),
        ("text", "Clip 900 mm ± 20 mm", 8925),
        ("text-bold", "Water Typical", 5963),
        ("text-italic", "Yew. Tap, wide", 5890),
        ("head", "AVATAR office To", 5808),
        ("head-bold", "Water Typical", 4973),
        ("head-bold", "", 0),
    ],
)
def test_a_line_is_as_wide_as_a_shaping_engine_makes_it(face: Face, text: str, thousandths: float) -> None:
    assert width(text, face) == pytest.approx(thousandths)


@pytest.mark.skipif(not features.check("raqm"), reason="this Pillow has no shaping engine to compare with")
@pytest.mark.parametrize("face", FACES)
def test_every_pair_of_letters_is_kerned_as_a_shaping_engine_does(face: Face) -> None:
    font = ImageFont.truetype(path(face), 1000, layout_engine=ImageFont.Layout.RAQM)
    letters = "AFLPTVWYagotvwy.,-’1470"
    for pair in (one + other for one in letters for other in letters):
        assert width(pair, face) == pytest.approx(font.getlength(pair, features=["-liga"]), abs=0.6), pair


def test_pens_tell_where_each_letter_starts() -> None:
    placed = pens("To", "head-bold")  # T is 468 wide, o 442, and the pair stands 69 nearer
    assert [(pen.letter, pen.x) for pen in placed] == [("T", 0), ("o", 399), ("", 841)]


def test_a_mark_over_a_letter_takes_no_room() -> None:
    assert width("a\u0301a", "text") == pytest.approx(2 * width("a", "text"))
