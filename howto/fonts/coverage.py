"""Reads from a TrueType file which characters it has and how wide they are.

The tables are those of the OpenType specification: `cmap` formats 4 and 12, `hhea`, `hmtx`, `head`.
"""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from struct import unpack_from


@dataclass(frozen=True, slots=True)
class Advances:
    """The advance of every character code a font covers, in thousandths of the font size."""

    by_code: Mapping[int, float]


def read_advances(font: bytes) -> Advances:
    """Return the advances of a TrueType font; a font without a Unicode table covers nothing."""
    tables = dict(_tables(font))
    units = int(unpack_from(">H", font, tables["head"] + 18)[0])
    measured = int(unpack_from(">H", font, tables["hhea"] + 34)[0])
    widths = unpack_from(f">{measured * 2}H", font, tables["hmtx"])[::2]
    return Advances(
        {
            code: widths[min(glyph, measured - 1)] * 1000 / units
            for code, glyph in _characters(font, tables["cmap"])
            if glyph
        }
    )


def _tables(font: bytes) -> Iterator[tuple[str, int]]:
    count = unpack_from(">H", font, 4)[0]
    for entry in range(count):
        tag, _, offset, _ = unpack_from(">4sLLL", font, 12 + entry * 16)
        yield tag.decode("ascii"), offset


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
    ends, starts, shifts, ranges = (
        at + 14,
        at + 16 + count * 2,
        at + 16 + count * 4,
        at + 16 + count * 6,
    )
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
