"""Reads from a TrueType file how much nearer or farther two letters stand than their widths say.

The basic layout engine does not, and a heading set without it has holes. The table is `GPOS` of the OpenType
specification: pair adjustment (lookup type 2, formats 1 and 2, and type 9 that wraps it) of the `kern` feature.
"""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from struct import unpack_from

from howto.fonts.tables import number, tables


@dataclass(frozen=True, slots=True)
class Pairs:
    """One table of pairs: the glyphs it speaks of, and moves either by pair or by the classes of both."""

    first: Mapping[int, int]  # glyph → its place in the coverage
    by_pair: Mapping[tuple[int, int], int]
    first_class: Mapping[int, int]
    second_class: Mapping[int, int]
    by_class: Mapping[tuple[int, int], int]

    def move(self, left: int, right: int) -> int | None:
        """Return the move between two glyphs in font units; None where this table does not say."""
        if left not in self.first:
            return None
        if self.by_pair:
            return self.by_pair.get((left, right))
        return self.by_class.get((self.first_class.get(left, 0), self.second_class.get(right, 0)), 0)


@dataclass(frozen=True, slots=True)
class Kerning:
    """The pair moves of a font: lookups in turn, in each the first table that says anything."""

    lookups: tuple[tuple[Pairs, ...], ...]

    def move(self, left: int, right: int) -> int:
        """Return how far the right glyph moves from where the left one's width puts it, in font units."""
        moves = ([each.move(left, right) for each in lookup] for lookup in self.lookups)
        return sum(next((move for move in found if move is not None), 0) for found in moves)


def read_kerning(font: bytes) -> Kerning:
    """Return the kerning of a TrueType font; none where it has no `GPOS` table."""
    at = tables(font).get("GPOS")
    if at is None:
        return Kerning(())
    features, lookups = at + number(font, at + 6), at + number(font, at + 8)
    wanted: list[int] = []
    for record in range(number(font, features)):
        tag, offset = unpack_from(">4sH", font, features + 2 + record * 6)
        if tag == b"kern":
            count = number(font, features + offset + 2)
            wanted.extend(unpack_from(f">{count}H", font, features + offset + 4))
    starts = (lookups + number(font, lookups + 2 + each * 2) for each in sorted(set(wanted)))
    return Kerning(tuple(tuple(_subtables(font, start)) for start in starts))


def _subtables(font: bytes, lookup: int) -> Iterator[Pairs]:
    kind, _, count = unpack_from(">HHH", font, lookup)
    for turn in range(count):
        at = lookup + number(font, lookup + 6 + turn * 2)
        if kind == 9:
            _, wrapped, offset = unpack_from(">HHL", font, at)
            at += offset
        else:
            wrapped = kind
        if wrapped == 2:
            yield _pairs(font, at)


def _pairs(font: bytes, at: int) -> Pairs:
    form, coverage, first, second = unpack_from(">HHHH", font, at)
    covered = dict(_coverage(font, at + coverage))
    width = 2 * (first.bit_count() + second.bit_count())
    before = 2 * (first & 0x3).bit_count()  # placements stand before the advance
    if form == 1:
        return Pairs(covered, dict(_single(font, at, covered, (width, before))), {}, {}, {})
    classes, others, count, other_count = unpack_from(">HHHH", font, at + 8)
    cells = {
        (one, other): _value(font, at + 16 + (one * other_count + other) * width, before)
        for one in range(count)
        for other in range(other_count)
    }
    return Pairs(covered, {}, dict(_classes(font, at + classes)), dict(_classes(font, at + others)), cells)


def _single(
    font: bytes, at: int, covered: Mapping[int, int], value: tuple[int, int]
) -> Iterator[tuple[tuple[int, int], int]]:
    width, before = value
    for glyph, place in covered.items():
        pairs = at + number(font, at + 10 + place * 2)
        for turn in range(number(font, pairs)):
            record = pairs + 2 + turn * (2 + width)
            yield (glyph, number(font, record)), _value(font, record + 2, before)


def _value(font: bytes, at: int, before: int) -> int:
    return int(unpack_from(">h", font, at + before)[0])


def _coverage(font: bytes, at: int) -> Iterator[tuple[int, int]]:
    form, count = unpack_from(">HH", font, at)
    if form == 1:
        glyphs = unpack_from(f">{count}H", font, at + 4)
        yield from ((glyph, place) for place, glyph in enumerate(glyphs))
        return
    for turn in range(count):
        start, end, place = unpack_from(">HHH", font, at + 4 + turn * 6)
        yield from ((glyph, place + glyph - start) for glyph in range(start, end + 1))


def _classes(font: bytes, at: int) -> Iterator[tuple[int, int]]:
    form = number(font, at)
    if form == 1:
        start, count = unpack_from(">HH", font, at + 2)
        classes = unpack_from(f">{count}H", font, at + 6)
        yield from ((start + turn, each) for turn, each in enumerate(classes))
        return
    for turn in range(number(font, at + 2)):
        start, end, each = unpack_from(">HHH", font, at + 4 + turn * 6)
        yield from ((glyph, each) for glyph in range(start, end + 1))
