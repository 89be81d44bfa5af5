"""Reads from a TrueType file which characters it has and how wide they are.

The tables are those of the OpenType specification: `cmap` formats 4 and 12, `hhea`, `hmtx`, `head`.
"""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from struct import unpack_from

from howto.fonts.tables import number, tables


@dataclass(frozen=True, slots=True)
class Coverage:
    """The glyph of every character code a font covers, and each one's advance in font units."""

    glyphs: Mapping[int, int]
    widths: tuple[int, ...]
    units: int  # font units in one font size

    def advance(self, glyph: int) -> int:
        """Return how far a glyph moves the pen; the last width serves all glyphs after it."""
        return self.widths[min(glyph, len(self.widths) - 1)]


def read_coverage(font: bytes) -> Coverage:
    """Return what a TrueType font covers; a font without a Unicode table covers nothing."""
    starts = tables(font)
    units = number(font, starts["head"] + 18)
    measured = number(font, starts["hhea"] + 34)
    widths = unpack_from(f">{measured * 2}H", font, starts["hmtx"])[::2]
    return Coverage({code: glyph for code, glyph in _characters(font, starts["cmap"]) if glyph}, widths, units)


def _characters(font: bytes, cmap: int) -> Iterator[tuple[int, int]]:
    count = unpack_from(">H", font, cmap + 2)[0]
    records = [unpack_from(">HHL", font, cmap + 4 + record * 8) for record in range(count)]
    for platform, encoding, offset in records:
        if (platform, encoding) not in {(0, 3), (0, 4), (3, 1), (3, 10)}:
            continue
        form = unpack_from(">H", font, cmap + offset)[0]
        if form == 4:
            yield from _segments(font, cmap + offset)
        elif form == 12:
            yield from _groups(font, cmap + offset)


def _segments(font: bytes, at: int) -> Iterator[tuple[int, int]]:
    count = unpack_from(">H", font, at + 6)[0] // 2
    ends, starts, shifts, ranges = (at + 14, at + 16 + count * 2, at + 16 + count * 4, at + 16 + count * 6)
    for segment in range(count):
        (end,), (start,), (shift,), (span,) = (
            unpack_from(">H", font, table + segment * 2) for table in (ends, starts, shifts, ranges)
        )
        for code in range(start, min(end, 0xFFFE) + 1):
            if not span:
                yield code, (code + shift) & 0xFFFF
                continue
            glyph = unpack_from(">H", font, ranges + segment * 2 + span + (code - start) * 2)[0]
            yield code, (glyph + shift) & 0xFFFF if glyph else 0


def _groups(font: bytes, at: int) -> Iterator[tuple[int, int]]:
    count = unpack_from(">L", font, at + 12)[0]
    for group in range(count):
        start, end, glyph = unpack_from(">LLL", font, at + 16 + group * 12)
        for code in range(start, end + 1):
            yield code, glyph + code - start
