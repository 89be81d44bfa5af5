"""The numbers of a card: what stands beside the drawing, what stands below it, and the tables."""

import re
from collections.abc import Sequence
from itertools import accumulate, pairwise
from typing import Final, NamedTuple

from howto.languages.reader import TIE, Reader
from howto.model.figure import Figure
from howto.model.prose import capital
from howto.model.ready import Ready
from howto.model.sheet import Art, Entry, Grid
from howto.model.shown import Shown, shown, shown_cell, shown_measures
from howto.quantities.amounts import phrase

LONGEST_WORKING: Final = 64  # characters of arithmetic that stand under a number
ROW_MM, NOTE_MM = 6.0, 4.0  # what a large number takes beside a drawing, and each line of its working
NOTE_LINE: Final = 34  # characters in such a line
LEAST_MM: Final = 44.0  # the column's height where the drawing is lower, or there is none
TARGETS: Final = 2  # measures that stand before the first figure: what to work to
LONGEST_LARGE: Final = 20  # characters of a number that is set large
CARD_LINE: Final = 76  # characters of figures across a card, two between cells
LONG_TABLE: Final = 6  # rows over which a narrow table is folded in two
FOLDED_COLUMNS: Final = 3


class CardNumbers(NamedTuple):
    """A card's numbers: beside the drawing, in tables, and the rest."""

    beside: tuple[Entry, ...]
    tables: tuple[Grid, ...]
    rest: tuple[Entry, ...]


def numbers(ready: Ready, arts: Sequence[Art]) -> CardNumbers:
    """Return the numbers of a card, shared out.

    Beside the drawing stand the first measures, the headline figures, and as many more measures as the drawing
    is high. The rest stand small at the end, measures that nobody wrote last of all, and are what a print that
    will not fit leaves out first.
    """
    reader, figures = ready.reader, ready.figures
    told = [each for each in shown_measures(ready.technique.measures, reader) if not (each.assumed and each.idle)]
    measures = [_measure(each) for each in told if not each.assumed]
    assumed = [_measure(each) for each in told if each.assumed]
    single = [(figure.headline, _entry(figure, reader)) for figure in figures if figure.table is None]
    amounts = [entry for entry in measures if _stands_large(entry)]
    first = [entry for headline, entry in single if headline and _stands_large(entry)]
    beside = _beside([*amounts[:TARGETS], *first, *amounts[TARGETS:]], arts)
    rest = [entry for entry in (*measures, *(entry for _, entry in single), *assumed) if entry not in beside]
    tables = tuple(table for figure in figures if (table := grid(figure, reader)))
    return CardNumbers(tuple(beside), tables, tuple(_small(entry) for entry in rest))


def _measure(measure: Shown) -> Entry:
    """Return a measure with its tolerance."""
    return Entry(label=capital(measure.label), value=measure.value, note=measure.tolerance, headline=True)


def grid(figure: Figure, reader: Reader) -> Grid | None:
    """Return a figure's table in the crew's units, or None where it has none.

    A unit that a whole column shares stands in its heading. A table longer than it is wide is turned where a
    card is wide enough for it, so that it takes as many lines as it had columns; else it is folded in two.
    """
    table = figure.table
    if table is None:
        return None
    columns = [
        _column(reader.tell(name), [shown_cell(row[at], unit, reader) for row in table.rows])
        for at, (name, unit) in enumerate(zip(table.columns, table.units, strict=True))
    ]
    caption = capital(reader.tell(figure.label))
    across = list(zip(*columns, strict=True))
    if len(columns) < len(across) and sum(max(map(len, cells)) + 2 for cells in across) <= CARD_LINE:
        return Grid(caption=caption, columns=columns[0], rows=tuple(columns[1:]), turned=True)
    head, rows = across[0], across[1:]
    folded = len(rows) > LONG_TABLE and len(columns) <= FOLDED_COLUMNS
    if folded:
        half = (len(rows) + 1) // 2
        lower = [*rows[half:], *([("",) * len(head)] * (2 * half - len(rows)))]
        head, rows = head + head, [left + right for left, right in zip(rows[:half], lower, strict=True)]
    return Grid(caption=caption, columns=head, rows=tuple(rows), folded=folded)


def _column(name: str, cells: Sequence[str]) -> tuple[str, ...]:
    """Return a heading and its cells, a unit that all cells share moved to the heading."""
    parts = [cell.partition("\u00a0") for cell in cells]
    units = {unit for _, _, unit in parts}
    if len(units) == 1 and "" not in units:
        return (f"{name}, {units.pop()}", *(number for number, _, _ in parts))
    return (name, *cells)


def _beside(entries: Sequence[Entry], arts: Sequence[Art]) -> list[Entry]:
    """Return the entries that fit beside the drawing, in order."""
    room = max(LEAST_MM, max((art.height for art in arts), default=0.0))
    heights = accumulate(ROW_MM + NOTE_MM * -(-len(_working_note(entry)) // NOTE_LINE) for entry in entries)
    return [entry for entry, height in zip(entries, heights, strict=True) if height <= room]


def _stands_large(entry: Entry) -> bool:
    """Tell whether an entry is a short amount or date, and not a word or a list."""
    starts = entry.value.lstrip("−")[:1]
    return (starts.isdigit() or starts in tuple("¼½¾")) and len(entry.value) <= LONGEST_LARGE


def _working_note(entry: Entry) -> str:
    """Return the note that takes a line of its own: working, never a tolerance."""
    return "" if entry.note.startswith("±") else entry.note


def _small(entry: Entry) -> Entry:
    """Return an entry to stand small, with its tolerance and without its working."""
    value = entry.value if _working_note(entry) else f"{entry.value} {entry.note}".rstrip()
    return Entry(label=entry.label, value=value)


def _entry(figure: Figure, reader: Reader) -> Entry:
    """Return a figure with the arithmetic that a person can follow under it, where it is short enough."""
    value = shown(figure, reader)
    return Entry(
        label=capital(reader.tell(figure.label)), value=value, note=_working(figure, value, reader), headline=True
    )


def _working(figure: Figure, value: str, reader: Reader) -> str:
    """Return the line of working that ends in the value printed, where it is short; else nothing.

    A line with words that the reader's language lacks is left out.
    """
    number = value.split(TIE, maxsplit=1)[0]
    for line in figure.working:
        told = reader.worked(line)
        if len(told) <= LONGEST_WORKING and _ends_in(line, number, reader) and not any(reader.gaps(line)):
            return kept_together(told)
    return ""


def _ends_in(line: str, number: str, reader: Reader) -> bool:
    """Tell whether the amount after the last `=` of a line of working is printed as `number`."""
    parts = phrase(line).parts
    sums = [after for before, after in pairwise(parts) if isinstance(before, str) and before.endswith("= ")]
    return bool(sums) and reader.worked(str(sums[-1])).split(" ", maxsplit=1)[0] == number


def kept_together(working: str) -> str:
    """Return arithmetic in proper signs that breaks before `=` or an operator, never before a unit."""
    for plain, sign in ((" - ", " − "), (" x ", " × "), (" / ", " ÷ ")):
        working = working.replace(plain, sign)
    return re.sub(r"(?<=[\d=÷×−+]) (?=[^=÷×−+])", "\u00a0", working)
