"""The words of a frame in rows: a label, a disc or a tick box in the left column, the text beside it."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import Final, Literal

from howto.fonts import width as set_width
from howto.layout.frames.look import COLUMN, HAIR, SMALLEST, Board
from howto.layout.frames.parts import Block, block, disc, rule, tick_box
from howto.layout.text import ASCENT, CAP
from howto.model.sheet import Face, PaintMark, TextMark

LABEL_SIZE: Final = 32.0
LABEL_GAP: Final = 16.0  # px at least between a label and the text beside it
ROW_GAP: Final = 26.0  # px between two rows, a hairline in its middle
DISC: Final = 26.0  # radius of a disc in a legend


@dataclass(frozen=True, slots=True)
class Row:
    """One row: what stands in the left column, and the text; a tick row has a box to tick there, a flat row nothing."""

    text: str
    label: str = ""
    number: int = 0
    kind: Literal["plain", "flat", "tick", "disc"] = "plain"
    face: Face = "text"


@dataclass(frozen=True, slots=True)
class SetRow:
    """A row whose text is wrapped."""

    row: Row
    block: Block

    @property
    def height(self) -> float:
        """The row's height, its disc or box included."""
        least = 2 * DISC + 8 if self.row.kind == "disc" else 0.0
        return max(self.block.height, least)


def set_rows(rows: Sequence[Row], size: float, width: float) -> tuple[SetRow, ...]:
    """Return the rows wrapped to a text column `width` wide."""
    return tuple(SetRow(row, block(row.text, row.face, size, width)) for row in rows)


def rows_height(rows: Sequence[SetRow], gap: float = ROW_GAP) -> float:
    """Return how high the rows stand together."""
    return sum(row.height for row in rows) + gap * max(0, len(rows) - 1)


def too_wide(rows: Sequence[SetRow], width: float) -> bool:
    """Tell whether a word runs over its column."""
    return any(row.block.width > width + 0.01 for row in rows)


def paint_rows(
    sheet: Board,
    rows: Sequence[SetRow],
    left: float,
    top: float,
    *,
    right: float,
    gap: float = ROW_GAP,
    column: float = COLUMN,
    ruled: bool = True,
) -> Iterator[PaintMark]:
    """Yield the rows one below another, hairlines between them."""
    y = top
    for number, each in enumerate(rows):
        if ruled and number and each.row.kind != "disc":
            yield rule(left, right, y - gap / 2, sheet.soft, HAIR)
        yield from _paint_row(sheet, each, left, y, column)
        y += each.height + gap


def _fitting(label: str, column: float) -> float:
    """Return the size at which a label leaves a gap to the text beside it; never under the smallest."""
    return max(SMALLEST, (column - LABEL_GAP) * 1000 / set_width(label, "head-bold"))


def _paint_row(sheet: Board, each: SetRow, left: float, top: float, column: float) -> Iterator[PaintMark]:
    """Yield one row."""
    row, size = each.row, each.block.size
    first = top + size * ASCENT
    if row.kind == "disc":
        text_top = top + (each.height - each.block.height) / 2
        yield from disc(sheet, (left + DISC + 6, top + each.height / 2), row.number, DISC)
        yield from each.block.evened.at(left + column, text_top, sheet.ink)
        return
    if row.kind == "tick":
        box = size * 0.82
        yield tick_box(left + 2, first - size * CAP["text"] / 2 - box / 2, box, sheet.ink)
        yield from each.block.evened.at(left + box + 26, top, sheet.ink)
        return
    if row.kind == "flat":
        yield from each.block.evened.at(left, top, sheet.ink)
        return
    if row.label:
        small = min(LABEL_SIZE, max(SMALLEST, size), _fitting(row.label, column))
        yield TextMark(text=row.label, at=(left, first), size=small, face="head-bold", colour=sheet.accent)
    yield from each.block.evened.at(left + column, top, sheet.ink)
