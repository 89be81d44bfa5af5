"""The frames that are lists: numbers and tools before the work, the finish standard after it."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import Final

from howto.layout.frames.cover import Number
from howto.layout.frames.look import HAIR, Board
from howto.layout.frames.parts import Block, block, heading, rule, steps_down
from howto.layout.frames.rows import Row, SetRow, paint_rows, rows_height, set_rows
from howto.layout.text import ASCENT, CAP, DESCENT, length
from howto.model.sheet import PaintMark, TextMark

HEADING: Final = 104.0
SUB: Final = 46.0
VALUES: Final = steps_down(72, 44, 4)
ITEMS: Final = steps_down(46, 34, 2)
GAP: Final = 22.0


@dataclass(frozen=True, slots=True)
class ListEntry:
    """A number set on its own line: what it is left, how much right."""

    label: Block
    value: Block
    gap: float = GAP

    @property
    def height(self) -> float:
        """The height of the line, the rule below it included."""
        more = (len(self.value.lines) - 1) * self.value.size * self.value.leading
        return max(self.label.height, self.value.size * (CAP["head-bold"] + 0.2) + more) + self.gap


def set_entries(numbers: Sequence[Number], value_size: float, width: float, air: float = 0.0) -> tuple[ListEntry, ...]:
    """Return the numbers at one size; what each is takes what room its value leaves."""
    entries = []
    for each in numbers:
        value = block(each.value, "head-bold", value_size, width * 0.62, 1.0)
        label = block(each.label, "text", max(34.0, value_size * 0.6), width - value.width - 40, 1.12)
        entries.append(ListEntry(label, value, GAP + air))
    return tuple(entries)


def paint_entries(
    sheet: Board, entries: Sequence[ListEntry], left: float, top: float, right: float
) -> Iterator[PaintMark]:
    """Yield the numbers a line each, on rules with end ticks as on a dimension line."""
    y = top
    for each in entries:
        foot = y + each.height - each.gap / 2
        yield rule(left, right, foot, sheet.soft, HAIR)
        high = each.height - each.gap
        yield from each.label.at(left + 4, y + (high - each.label.height) / 2, sheet.ink)
        value_top = y + (high - len(each.value.lines) * each.value.size * each.value.leading) / 2
        for row, line in enumerate(each.value.lines):
            baseline = value_top + each.value.size * (0.5 + CAP["head-bold"] / 2 + row * each.value.leading)
            at = (right - 6, baseline)
            yield TextMark(text=line, at=at, size=each.value.size, face="head-bold", colour=sheet.ink, align="right")
        y += each.height


@dataclass(frozen=True, slots=True)
class Tools:
    """Tools and materials in one or two columns."""

    columns: tuple[tuple[SetRow, ...], ...]
    gap: float

    @property
    def height(self) -> float:
        """The height of the taller column."""
        return max((rows_height(column, self.gap) for column in self.columns), default=0.0)


def set_tools(items: Sequence[str], size: float, width: float) -> Tools:
    """Return the items in two columns where every one of them fits into half the width in two lines, else in one."""
    rows = [Row(text=item, kind="tick") for item in items]
    box = size * 0.82 + 26
    placed = set_rows(rows, size, (width - 40) / 2 - box)
    if any(len(each.block.lines) > 2 for each in placed):
        return Tools((set_rows(rows, size, width - box),), 14.0)
    middle = (len(placed) + 1) // 2
    return Tools(tuple(part for part in (placed[:middle], placed[middle:]) if part), 14.0)


def paint_tools(sheet: Board, tools: Tools, left: float, top: float, right: float) -> Iterator[PaintMark]:
    """Yield the columns side by side."""
    step = (right - left + 40) / 2
    for number, column in enumerate(tools.columns):
        start = left + step * number
        yield from paint_rows(sheet, column, start, top, right=start, gap=tools.gap, ruled=False)


def top_heading(sheet: Board, text: str) -> Block:
    """Return the frame's heading on one line if it can."""
    size = HEADING
    width = sheet.area[2] - sheet.area[0]
    while length(text, "head-bold", size) > width and size > 72:
        size -= 4
    return heading(text, size, width)


def sub_high() -> float:
    """Return the height of a small heading with the air below it."""
    return SUB * (ASCENT + DESCENT) + 12


def sub_heading(text: str, left: float, top: float, colour: str) -> TextMark:
    """Return a small heading inside a frame."""
    return TextMark(text=text, at=(left, top + SUB * ASCENT), size=SUB, face="head-bold", colour=colour)


def pages(heights: Sequence[float], gap: float, room: float) -> tuple[slice, ...]:
    """Return which items stand together so that each page is at most `room` high, and all about as full.

    An item higher than the room stands alone; the caller has to say that it does not fit.
    """
    cuts = _cuts(heights, gap, room)
    low, high = 0.0, room
    for _ in range(20):  # as even as that many pages can be
        middle = (low + high) / 2
        tried = _cuts(heights, gap, middle)
        if len(tried) == len(cuts):
            cuts, high = tried, middle
        else:
            low = middle
    return tuple(slice(start, end) for start, end in zip(cuts, [*cuts[1:], len(heights)], strict=True))


def _cuts(heights: Sequence[float], gap: float, room: float) -> list[int]:
    """Return the first item of each page when every page takes as many items as it holds."""
    cuts = [0]
    used = 0.0
    for number, height in enumerate(heights):
        more = height if number == cuts[-1] else used + gap + height
        if more > room and number > cuts[-1]:
            cuts.append(number)
            more = height
        used = more
    return cuts
