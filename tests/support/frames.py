"""What tests ask of a frame: where its words stand, and whether anything runs into anything else."""

from itertools import combinations
from math import hypot

from howto.layout.text import length
from howto.model.sheet import Area, Dot, Frame, Pixels, TextMark

Box = tuple[float, float, float, float]
CAP, TAIL = 0.72, 0.22  # of the size: capitals with their overshoot above the baseline, tails below


def words_of(frame: Frame) -> list[TextMark]:
    """Return the frame's words in painting order."""
    return [mark for mark in frame.marks if isinstance(mark, TextMark)]


def text_of(frame: Frame) -> str:
    """Return everything the frame says, line by line, on one line."""
    return " ".join(mark.text for mark in words_of(frame))


def box_of(words: TextMark) -> Box:
    """Return the room that level words take."""
    wide = length(words.text, words.face, words.size)
    left = words.at[0] - {"left": 0.0, "middle": wide / 2, "right": wide}[words.align]
    return (left, words.at[1] - CAP * words.size, left + wide, words.at[1] + TAIL * words.size)


def overlap(one: Box, other: Box) -> bool:
    """Tell whether two boxes share more than an edge."""
    return one[0] < other[2] - 1 and other[0] < one[2] - 1 and one[1] < other[3] - 1 and other[1] < one[3] - 1


def collisions(frame: Frame) -> list[tuple[str, str]]:
    """Return the level words that run into other level words."""
    level = [(mark.text, box_of(mark)) for mark in words_of(frame) if not mark.angle]
    return [(a, b) for (a, one), (b, other) in combinations(level, 2) if overlap(one, other)]


def outside(frame: Frame, *, side: float = 0.0, top: float = 0.0, bottom: float = 0.0) -> list[str]:
    """Return the words that run over the frame's edge, less the room asked for."""
    level = [(mark.text, box_of(mark)) for mark in words_of(frame) if not mark.angle]
    inner = (side, top, frame.width - side, frame.height - bottom)
    return [
        text
        for text, box in level
        if box[0] < inner[0] - 8 or box[1] < inner[1] - 8 or box[2] > inner[2] + 8 or box[3] > inner[3] + 8
    ]


def smallest(frame: Frame) -> float:
    """Return the size of the smallest words."""
    return min(mark.size for mark in words_of(frame))


def photo_of(frame: Frame) -> Pixels | None:
    """Return the frame's photograph, or None."""
    return next((mark for mark in frame.marks if isinstance(mark, Pixels)), None)


def photo_discs(frame: Frame) -> list[Dot]:
    """Return the numbered discs that stand on the photograph."""
    shown = photo_of(frame)
    if shown is None:
        return []
    left, top, right, bottom = shown.box
    dots = [mark for mark in frame.marks if isinstance(mark, Dot) and mark.radius > 20]
    return [dot for dot in dots if left <= dot.centre[0] <= right and top <= dot.centre[1] <= bottom]


def discs_apart(discs: list[Dot]) -> bool:
    """Tell whether no two discs, rings included, touch."""
    reach = [(dot.centre, dot.radius + dot.ring_width) for dot in discs]
    return all(hypot(a[0] - b[0], a[1] - b[1]) >= r + s for (a, r), (b, s) in combinations(reach, 2))


def veil_of(frame: Frame) -> Area | None:
    """Return the see-through area laid over the photograph, or None."""
    return next((mark for mark in frame.marks if isinstance(mark, Area) and mark.opacity < 1), None)
