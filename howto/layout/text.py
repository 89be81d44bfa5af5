"""Measures text and breaks it into lines.

Widths are the font's own advances, so they grow evenly with the size and serve millimetres and pixels alike.
A space that must not break (U+00A0, U+202F, U+2007) keeps a number beside its unit.
"""

import re
from collections.abc import Iterator
from functools import lru_cache
from itertools import product
from unicodedata import combining

from howto.fonts import Face
from howto.fonts import width as pens_width

LEADING = 1.25  # line pitch in sizes
CAP = {"text": 0.66, "text-bold": 0.66, "text-italic": 0.66, "head": 0.70, "head-bold": 0.70}  # OS/2 sCapHeight
ASCENT = 0.78  # room above a baseline in sizes: the tallest lower-case letter with its accent
DESCENT = 0.24  # room below it: g, j, p, Q and the comma

_GAP = re.compile(r"[ \t]+")
_PIECE = re.compile(r"[^-–—/]*[-–—/]+(?=\w)|[^-–—/]+|[-–—/]+")
_UNIT = re.compile(
    r"(?<=\d) (?=(?:mm|cm|m|km|in|ft|yd|m2|m²|m3|m³|ha|ac|mL|ml|L|l|gal|g|kg|oz|lb|t|°C|°F|%|h|min|s|V|kN|N|dB)\b|%)"
)
_NUMBER = re.compile(r"\d[-–—/]+$")


def length(text: str, face: Face, size: float) -> float:
    """Return how wide one line of text is, in the unit of `size`."""
    return pens_width(text, face) * size / 1000


def wrap(text: str, face: Face, size: float, width: float) -> list[str]:
    """Return the text as lines no wider than `width`.

    Lines break at ordinary spaces and written line ends; a word that is wider than a line breaks after a
    hyphen or slash, and failing that between letters, so a line is too wide only when one letter is.
    """
    return [line for written in tied(text).split("\n") for line in _wrapped(written, face, size, width)]


def tied(text: str) -> str:
    """Return the text with each number tied to the unit that follows it."""
    return _UNIT.sub("\u00a0", text)


@lru_cache(maxsize=16384)  # frames try their words at many sizes, and most of them again and again
def _wrapped(written: str, face: Face, size: float, width: float) -> tuple[str, ...]:
    lines: list[str] = []
    line = ""
    for word in filter(None, _GAP.split(written)):
        joined = f"{line} {word}" if line else word
        if length(joined, face, size) <= width:
            line = joined
            continue
        if line:
            lines.append(line)
        *full, line = _broken(word, face, size, width)
        lines.extend(full)
    return (*lines, line)


@lru_cache(maxsize=4096)
def _broken(word: str, face: Face, size: float, width: float) -> tuple[str, ...]:
    if length(word, face, size) <= width:
        return (word,)
    lines = [""]
    for piece in _pieces(word):
        if length(lines[-1] + piece, face, size) <= width:
            lines[-1] += piece
        elif length(piece, face, size) <= width:
            lines.append(piece)
        else:
            for letter in _letters(piece):
                if lines[-1] and length(lines[-1] + letter, face, size) > width:
                    lines.append("")
                lines[-1] += letter
    return tuple(line for line in lines if line)


def _pieces(word: str) -> Iterator[str]:
    held = ""
    for piece in _PIECE.findall(word):
        held += piece
        if not _NUMBER.search(held):  # 5–7 and 1/3 stay whole
            yield held
            held = ""


def _letters(piece: str) -> Iterator[str]:
    held = ""
    for character in piece:
        if held and not combining(character):
            yield held
            held = ""
        held += character
    yield held


def balance(text: str, face: Face, size: float, width: float) -> list[str]:
    """Return the text in as few lines as `wrap` needs, made as even as they can be."""
    return [line for written in tied(text).split("\n") for line in _evened(written, face, size, width)]


@lru_cache(maxsize=16384)
def _evened(written: str, face: Face, size: float, width: float) -> tuple[str, ...]:
    """Return one written line in the fewest lines, with the least sum of their widths squared."""
    fewest = _wrapped(written, face, size, width)
    words = [word for word in _GAP.split(written) if word]
    if len(fewest) < 2 or any(length(word, face, size) > width for word in words):
        return fewest
    best: dict[tuple[int, int], tuple[float, int]] = {(0, 0): (0.0, 0)}  # lines, words → cost, where the last starts
    for count, end in product(range(1, len(fewest) + 1), range(1, len(words) + 1)):
        for start in range(end - 1, -1, -1):
            wide = length(" ".join(words[start:end]), face, size)
            if wide > width:
                break  # with more words in front it would be wider still
            if (count - 1, start) not in best:
                continue
            cost = best[count - 1, start][0] + wide * wide
            if (count, end) not in best or cost <= best[count, end][0]:
                best[count, end] = (cost, start)
    lines: list[str] = []
    end = len(words)
    for count in range(len(fewest), 0, -1):
        start = best[count, end][1]
        lines.insert(0, " ".join(words[start:end]))
        end = start
    return tuple(lines)


def widest(lines: list[str], face: Face, size: float) -> float:
    """Return the width of the widest line; 0 for none."""
    return max((length(line, face, size) for line in lines), default=0.0)


def block_height(lines: int, size: float, leading: float = LEADING) -> float:
    """Return the height of a block of lines, from above its first to below its last."""
    return (lines - 1) * size * leading + size * (ASCENT + DESCENT) if lines else 0.0


def fits(text: str, face: Face, size: float, width: float, height: float, leading: float = LEADING) -> bool:
    """Tell whether the text, wrapped, stays inside `width` × `height`."""
    lines = wrap(text, face, size, width)
    return widest(lines, face, size) <= width and block_height(len(lines), size, leading) <= height
