"""Finds the tables of a TrueType file, as the OpenType specification lays them out."""

from struct import unpack_from


def tables(font: bytes) -> dict[str, int]:
    """Return where each table starts, by its tag."""
    records = (unpack_from(">4sLLL", font, 12 + turn * 16) for turn in range(number(font, 4)))
    return {tag.decode("ascii"): offset for tag, _, offset, _ in records}


def number(font: bytes, at: int) -> int:
    """Return the two-byte number at a place."""
    return int(unpack_from(">H", font, at)[0])
