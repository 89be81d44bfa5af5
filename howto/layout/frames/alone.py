"""A step's frame where no picture and no drawing speaks of the step: its words fill the room, as large as they may."""

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Final

from howto.layout.frames.look import COLUMN, Board
from howto.layout.frames.parts import Block, block, steps_down
from howto.layout.frames.rows import Row, SetRow, paint_rows, rows_height, set_rows, too_wide
from howto.layout.frames.step import AIR, Copy, Placed, paint_words, step_title
from howto.model.sheet import PaintMark

LEAD_SIZES: Final = steps_down(112, 44, 4)
ROW_SHARE: Final = 0.64  # of the lead's size: what makes or breaks the step, its reason and its check
ROWS: Final = (34.0, 56.0)  # px: the rows are no smaller and no larger
RISE: Final = 0.42  # where the lead stands in the room it has: a little above its middle


@dataclass(frozen=True, slots=True)
class Alone:
    """A step's words set alone: what to do, large, and the rows below it."""

    title: Block
    lead: Block
    rows: tuple[SetRow, ...]
    room: tuple[float, float]  # from where to where the lead may stand


def alone(sheet: Board, copy: Copy) -> Alone | None:
    """Return a step's words as large as they fit, all of them if they can; None where even those that must do not."""
    title = step_title(sheet, copy)
    if title is None:
        return None
    for extras in range(len(copy.may), -1, -1):
        words = (*copy.must, *copy.may[:extras])
        found = _largest(sheet, title, words) if words else None
        if found:
            return found
    return None


def _largest(sheet: Board, title: Block, words: tuple[Row, ...]) -> Alone | None:
    """Return the words below a title at the largest size that fits."""
    left, top, right, bottom = sheet.area
    width = right - left - COLUMN
    start = top + title.height + 2 * AIR
    for size in LEAD_SIZES:
        lead, rows = _set(words, size, width)
        foot = bottom - rows_height(rows) - (1.5 * AIR if rows else 0.0)
        if lead.height <= foot - start and lead.width <= width and not too_wide(rows, width):
            return Alone(title, lead, rows, (start, foot))
    return None


def _set(words: tuple[Row, ...], size: float, width: float) -> tuple[Block, tuple[SetRow, ...]]:
    """Return the lead at a size, with the rows that go with it: the lead is the text, or else the first key point."""
    small = min(max(size * ROW_SHARE, ROWS[0]), ROWS[1])
    lead = block(words[0].text, words[0].face, size, width, 1.14)
    return lead, set_rows(words[1:], small, width)


def paint_alone(sheet: Board, copy: Copy, placed: Alone) -> Iterator[PaintMark]:
    """Yield everything of a step that stands alone."""
    left, _, right, bottom = sheet.area
    start, foot = placed.room
    yield from paint_words(sheet, copy, Placed(placed.title, (), (left, start, right, foot)))
    lead = placed.lead.evened
    yield from lead.at(left + COLUMN, start + (foot - start - lead.height) * RISE, sheet.ink)
    yield from paint_rows(sheet, placed.rows, left, bottom - rows_height(placed.rows), right=right)
