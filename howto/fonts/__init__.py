"""The faces by role: where their files stand in the font packages, what they are called, what they cover."""

from collections.abc import Iterator
from dataclasses import dataclass
from functools import cache, lru_cache
from importlib.resources import files
from itertools import groupby
from pathlib import Path
from typing import Literal
from unicodedata import combining

from howto.fonts.coverage import Coverage, read_coverage
from howto.fonts.kerning import Kerning, read_kerning

Face = Literal["text", "text-bold", "text-italic", "head", "head-bold"]

TEXT_FAMILY = "Source Sans Pro"
HEAD_FAMILY = "Barlow Condensed"
TYPST_HEAD_FAMILY = "Barlow"  # Typst drops width words from a family; ask for stretch 75 % beside it


@dataclass(frozen=True, slots=True)
class Cut:
    """One font file: its package and name, the family and weight CSS knows it by, and where gaps go."""

    package: str
    file: str
    family: str
    weight: int
    italic: bool = False
    fallback: Face | None = None


_GAPS: Face = "text-bold"  # sets ⅓ ⅔ → ← ✓ ☐ ☑, which the head face lacks

CUTS: dict[Face, Cut] = {
    "text": Cut("font_source_sans_pro", "SourceSansPro-Regular.ttf", TEXT_FAMILY, 400),
    "text-bold": Cut("font_source_sans_pro", "SourceSansPro-Bold.ttf", TEXT_FAMILY, 700),
    "text-italic": Cut("font_source_sans_pro", "SourceSansPro-It.ttf", TEXT_FAMILY, 400, italic=True, fallback="text"),
    "head": Cut("fontpkg_barlow_condensed", "BarlowCondensed-SemiBold.ttf", HEAD_FAMILY, 600, fallback=_GAPS),
    "head-bold": Cut("fontpkg_barlow_condensed", "BarlowCondensed-Bold.ttf", HEAD_FAMILY, 700, fallback=_GAPS),
}

# A page sets strong emphasised words too; no mark is painted in this cut.
BOLD_ITALIC = Cut("font_source_sans_pro", "SourceSansPro-BoldIt.ttf", TEXT_FAMILY, 700, italic=True)


def located(cut: Cut) -> Path:
    """Return where a cut's file stands on this machine."""
    return Path(str(files(cut.package) / "files" / cut.file))


@cache
def path(face: Face) -> Path:
    """Return the file of a face."""
    return located(CUTS[face])


def typst_fonts() -> tuple[Path, ...]:
    """Return the TrueType files a page needs, and no twin that Typst could mix them up with."""
    return (*(path(face) for face in CUTS), located(BOLD_ITALIC))


@cache
def coverage(face: Face) -> Coverage:
    """Return which characters a face has and how wide they are."""
    return read_coverage(path(face).read_bytes())


@cache
def kerning(face: Face) -> Kerning:
    """Return how pairs of a face's letters are moved together or apart."""
    return read_kerning(path(face).read_bytes())


def covers(face: Face, character: str) -> bool:
    """Tell whether a face itself has a glyph for the character."""
    return ord(character) in coverage(face).glyphs


def face_for(face: Face, character: str) -> Face:
    """Return the face that sets the character: the one asked for, or the text face where it has a gap."""
    fallback = CUTS[face].fallback
    return fallback if fallback and not covers(face, character) and covers(fallback, character) else face


@cache
def runs(text: str, face: Face) -> tuple[tuple[str, Face], ...]:
    """Return the text cut into stretches that one face can set."""
    groups = groupby(text, key=lambda character: face_for(face, character))
    return tuple(("".join(characters), setting) for setting, characters in groups)


def missing(text: str, face: Face = "text") -> tuple[str, ...]:
    """Return the characters that neither the face nor its fallback can set, each once, in order."""
    return tuple(letter for letter in dict.fromkeys(text) if not (letter in "\t\n" or _is_set(face, letter)))


def _is_set(face: Face, letter: str) -> bool:
    """Tell whether a letter is none of the control characters, and the face or its fallback has it."""
    return letter >= " " and covers(face_for(face, letter), letter)


@dataclass(frozen=True, slots=True)
class Pen:
    """Where one letter of a line starts, from the line's left, in thousandths of the font size."""

    letter: str
    face: Face
    x: float


@cache
def _glyph(face: Face, letter: str) -> tuple[Face, int, float]:
    """Return which face sets a letter, its glyph there, and how far that moves the pen; looked up once."""
    setting = face_for(face, letter)
    has = coverage(setting)
    glyph = has.glyphs.get(ord(letter), has.glyphs.get(0x20, 0))
    return setting, glyph, 0.0 if combining(letter) else has.advance(glyph) * 1000 / has.units


@cache
def _move(face: Face, left: int, right: int) -> float:
    """Return how far one glyph of a face moves behind another, in thousandths of the font size; looked up once."""
    return kerning(face).move(left, right) * 1000 / coverage(face).units


def _starts(text: str, face: Face) -> Iterator[tuple[Face, float]]:
    """Yield the face of each letter and where it starts; last, where the line ends."""
    x, last, before = 0.0, face, -1
    for letter in text:
        setting, glyph, advance = _glyph(face, letter)
        x += _move(setting, before, glyph) if before >= 0 and setting == last else 0.0
        yield setting, x
        x, last, before = x + advance, setting, glyph
    yield face, x


@cache
def pens(text: str, face: Face) -> tuple[Pen, ...]:
    """Return each letter of a line with its place; a last, empty one tells where the line ends."""
    return tuple(Pen(letter, *start) for letter, start in zip((*text, ""), _starts(text, face), strict=True))


@lru_cache(maxsize=2**17)
def width(text: str, face: Face) -> float:
    """Return how wide one line of text is, in thousandths of the font size."""
    *_, (_, end) = _starts(text, face)
    return end
