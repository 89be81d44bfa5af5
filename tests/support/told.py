"""What a reader is told, for tests: words and figures with their amounts printed."""

from howto.languages.reader import Reader
from howto.model.figure import Cell, Figure
from howto.quantities.amounts import Words

ENGLISH = Reader()


def told(words: Words, reader: Reader = ENGLISH) -> str:
    """Return words as their reader sees them, spaces plain."""
    return reader.plain(words)


def worked(figure: Figure) -> tuple[str, ...]:
    """Return the lines of a figure's arithmetic."""
    return tuple(ENGLISH.worked(line) for line in figure.working)


def told_figure(figure: Figure, reader: Reader = ENGLISH) -> Figure:
    """Return a figure whose words are told: its value, its working, and the cells of its table."""

    def cell(value: Cell) -> Cell:
        return told(value, reader) if isinstance(value, str) else value

    table = figure.table and figure.table.model_copy(
        update={"rows": tuple(tuple(map(cell, row)) for row in figure.table.rows)}
    )
    return figure.model_copy(update={"value": cell(figure.value), "working": worked(figure), "table": table})
