"""A step's frame: its numeral and title, one picture or drawing, and the words that make or break it."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from typing import Final

from howto.layout.drawing.plane import Box
from howto.layout.frames.look import COLUMN, Board
from howto.layout.frames.parts import Block, headline, steps_down
from howto.layout.frames.rows import DISC, Row, SetRow, paint_rows, rows_height, set_rows, too_wide
from howto.layout.text import ASCENT, CAP
from howto.model.sheet import PaintMark, TextMark

TITLE_SIZES: Final = steps_down(88, 56)
ONE_LINE: Final = steps_down(108, 92)
BODY_SIZES: Final = steps_down(44, 34, 2)  # px: the carousel takes the largest at which every step fits
NUMERAL: Final = 176.0
BESIDE: Final = (660.0, 600.0, 540.0, 460.0)  # px: widths tried for a photograph with its legend beside it
SPARE: Final = 24  # characters: words break differently when others go
AIR: Final = 30.0  # between title, picture and rows
GOOD_SHARE, LEAST_SHARE = 0.44, 0.30  # of the free height: what a picture should have, and must have


@dataclass(frozen=True, slots=True)
class Copy:
    """A step's words: rows that must stand, rows that may, and the legend of its marks."""

    number: int
    title: str
    must: tuple[Row, ...]
    may: tuple[Row, ...] = ()
    legend: tuple[Row, ...] = ()


@dataclass(frozen=True, slots=True)
class Placed:
    """A step laid out all but its picture, which goes into `box`; a legend beside it has its own column."""

    title: Block
    rows: tuple[SetRow, ...]
    box: Box
    beside: tuple[SetRow, ...] = ()


def step_title(sheet: Board, copy: Copy) -> Block | None:
    """Return the title at the largest size that takes one line, or two, or three; None where none does."""
    width = sheet.area[2] - sheet.area[0] - COLUMN
    one = headline(copy.title, ONE_LINE, width, 1)
    return one or headline(copy.title, TITLE_SIZES, width, 2) or headline(copy.title, TITLE_SIZES[-4:], width, 3)


def arrange(sheet: Board, copy: Copy, size: float, share: float, *, extras: int = 0) -> Placed | None:
    """Return the step with its picture above its rows; None where the picture gets less than `share` of the height."""
    title = step_title(sheet, copy)
    if title is None:
        return None
    left, top, right, bottom = sheet.area
    width = right - left - COLUMN
    legend = set_rows(copy.legend, size, width)
    rows = (*legend, *set_rows((*copy.must, *copy.may[:extras]), size, width))
    picture_top = top + max(title.height, NUMERAL * CAP["head-bold"]) + AIR
    picture_bottom = bottom - rows_height(rows) - (AIR if rows else 0)
    if too_wide(rows, right - left) or picture_bottom - picture_top < share * (bottom - top):
        return None
    return Placed(title, rows, (left, picture_top, right, picture_bottom))


def arrange_beside(
    sheet: Board, copy: Copy, size: float, share: float, width: float, *, extras: int = 0
) -> Placed | None:
    """Return the step with its legend to the right of a picture `width` wide; None where it will not fit."""
    placed = arrange(sheet, replace(copy, legend=()), size, share, extras=extras)
    if placed is None:
        return None
    column = sheet.area[2] - (width + AIR)
    beside = _legend_rows(copy.legend, size + 4, column)
    box = (0.0, placed.box[1], width, placed.box[3])
    if too_wide(beside, column - _LEGEND_INDENT) or rows_height(beside) > box[3] - box[1]:
        return None
    return Placed(placed.title, placed.rows, box, beside)


def across_fullest(sheet: Board, copy: Copy, size: float, least: float, good: float) -> Placed | None:
    """Return the step with as many of the rows that may stand as leave its picture the good share of the height.

    Where even none of them does, the least share will do; None where the words leave less than that.
    """
    tries = (arrange(sheet, copy, size, good, extras=extras) for extras in range(len(copy.may), -1, -1))
    return next(filter(None, tries), None) or arrange(sheet, copy, size, least)


def besides(sheet: Board, copy: Copy, size: float, share: float) -> tuple[Placed, ...]:
    """Return the ways to stand the legend beside the picture, the widest picture first."""
    if not copy.legend:
        return ()
    tries = (arrange_beside(sheet, copy, size, share, width) for width in BESIDE)
    return tuple(filter(None, tries))


def fits(sheet: Board, copy: Copy, size: float, share: float) -> bool:
    """Tell whether a step fits one way or another."""
    return arrange(sheet, copy, size, share) is not None or bool(besides(sheet, copy, size, share))


_LEGEND_INDENT: Final = 2 * DISC + 34


def _legend_rows(legend: Sequence[Row], size: float, width: float) -> tuple[SetRow, ...]:
    """Return the legend's rows wrapped beside their discs."""
    return set_rows(legend, size, width - _LEGEND_INDENT)


def paint_words(sheet: Board, copy: Copy, placed: Placed) -> Iterator[PaintMark]:
    """Yield everything of a step but its picture."""
    left, top, right, bottom = sheet.area
    title = placed.title
    cap_top = top + title.size * (ASCENT - CAP["head-bold"])
    numeral = str(copy.number)
    size = NUMERAL if len(numeral) == 1 else NUMERAL * 0.68
    at = (left - 4, cap_top + size * CAP["head-bold"])
    yield TextMark(text=numeral, at=at, size=size, face="head-bold", colour=sheet.accent)
    yield from title.at(left + COLUMN, top, sheet.ink)
    yield from paint_rows(sheet, placed.rows, left, bottom - rows_height(placed.rows), right=right)
    if placed.beside:
        x, y0, y1 = placed.box[2] + AIR, placed.box[1], placed.box[3]
        start = y0 + (y1 - y0 - rows_height(placed.beside)) / 2
        yield from paint_rows(sheet, placed.beside, x, start, right=right, column=_LEGEND_INDENT)


def characters_over(sheet: Board, copy: Copy) -> int:
    """Return how many characters to take out of a step for it to fit at the smallest size, a line to spare."""
    total = sum(len(row.text) for row in copy.must)
    low, high = 0, total
    while high - low > 1:
        middle = (low + high) // 2
        if fits(sheet, _shortened(copy, middle), BODY_SIZES[-1], LEAST_SHARE):
            high = middle
        else:
            low = middle
    return min(high + SPARE, total)


def _shortened(copy: Copy, characters: int) -> Copy:
    """Return the step with so many characters taken from the ends of its rows, the longest row first."""
    texts = {at: row.text for at, row in enumerate(copy.must)}
    for at in sorted(texts, key=lambda each: -len(texts[each])):
        cut = min(characters, len(texts[at]))
        texts[at] = texts[at][: len(texts[at]) - cut]
        characters -= cut
    return replace(copy, must=tuple(replace(row, text=texts[at]) for at, row in enumerate(copy.must)))
