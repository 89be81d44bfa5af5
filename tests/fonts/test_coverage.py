from io import BytesIO
from pathlib import Path

from fontTools.fontBuilder import FontBuilder
from fontTools.ttLib.tables._c_m_a_p import CmapSubtable
from fontTools.ttLib.tables._g_l_y_f import Glyph

from howto.fonts.coverage import read_coverage
from howto.fonts.kerning import read_kerning

SEEDLING = 0x1F331


def build(rules: str = "") -> bytes:
    """A font of five letters, 500 units to the size, with feature rules."""
    builder = FontBuilder(500, isTTF=True)
    builder.setupGlyphOrder([".notdef", "space", "A", "V", "seedling"])
    builder.setupCharacterMap({0x20: "space", 0x41: "A", 0x56: "V", SEEDLING: "seedling"})
    builder.setupGlyf({name: Glyph() for name in (".notdef", "space", "A", "V", "seedling")})
    widths = {".notdef": 100, "space": 120, "A": 300, "V": 280, "seedling": 280}
    builder.setupHorizontalMetrics({name: (width, 0) for name, width in widths.items()})
    builder.setupHorizontalHeader(ascent=400, descent=-100)
    builder.setupNameTable({"familyName": "Blocks", "styleName": "Regular"})
    builder.setupOS2()
    builder.setupPost()
    if rules:
        builder.addOpenTypeFeatures(rules)
    kept = BytesIO()
    builder.save(kept)
    return kept.getvalue()


def test_characters_past_the_first_plane_are_read() -> None:
    found = read_coverage(build())
    assert set(found.glyphs) == {0x20, 0x41, 0x56, SEEDLING}
    assert found.units == 500
    assert [found.advance(found.glyphs[code]) for code in (0x20, 0x41, 0x56, SEEDLING)] == [120, 300, 280, 280]


def test_tables_of_other_systems_and_forms_are_passed_over(tmp_path: Path) -> None:
    builder = FontBuilder(500, isTTF=True)
    builder.setupGlyphOrder([".notdef", "A"])
    builder.setupGlyf({".notdef": Glyph(), "A": Glyph()})
    builder.setupHorizontalMetrics({".notdef": (100, 0), "A": (300, 0)})
    builder.setupHorizontalHeader(ascent=400, descent=-100)
    builder.setupCharacterMap({})
    old = CmapSubtable.newSubtable(0)
    old.platformID, old.platEncID, old.language, old.cmap = 1, 0, 0, {0x41: "A"}
    short = CmapSubtable.newSubtable(6)
    short.platformID, short.platEncID, short.language, short.cmap = 0, 3, 0, {0x41: "A"}
    builder.font["cmap"].tables = [old, short]
    builder.setupPost()
    file = tmp_path / "old.ttf"
    builder.save(file)
    assert read_coverage(file.read_bytes()).glyphs == {}


def test_a_font_without_pairs_moves_nothing() -> None:
    assert read_kerning(build()).lookups == ()


def test_single_pairs_are_read() -> None:
    pairs = read_kerning(build("feature kern { pos A V -40; pos V A -30; } kern;"))
    assert (pairs.move(2, 3), pairs.move(3, 2), pairs.move(2, 2), pairs.move(4, 2)) == (-40, -30, 0, 0)


def test_pairs_by_class_are_read() -> None:
    rules = "feature kern { @left = [A V]; @right = [A V]; pos @left @right -25; } kern;"
    pairs = read_kerning(build(rules))
    assert (pairs.move(2, 3), pairs.move(3, 3), pairs.move(2, 1), pairs.move(1, 2)) == (-25, -25, 0, 0)


def test_a_placement_before_the_advance_is_stepped_over() -> None:
    rules = "feature kern { pos A <5 0 -40 0> V <0 0 0 0>; } kern;"
    assert read_kerning(build(rules)).move(2, 3) == -40


def test_wrapped_lookups_are_read() -> None:
    rules = "lookup far useExtension { pos A V -40; } far; feature kern { lookup far; } kern;"
    assert read_kerning(build(rules)).move(2, 3) == -40


def test_other_features_and_lookups_are_passed_over() -> None:
    rules = (
        "lookup single { pos A -10; } single;"
        "feature kern { lookup single; pos A V -40; } kern;"
        "feature cpsp { pos A <10 0 20 0>; } cpsp;"
    )
    assert read_kerning(build(rules)).move(2, 3) == -40
