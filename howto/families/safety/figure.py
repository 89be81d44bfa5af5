"""Makes a figure or a table of safety: what every one has in order, what a few have by name."""

from collections.abc import Iterable, Mapping, Sequence
from typing import Any

from howto.model.figure import Cell, Figure, Table
from howto.model.reference import Reference
from howto.quantities.amounts import Words


def figure(
    name: str,
    label: Words,
    value: Cell,
    unit: str,
    working: Words | Sequence[Words],
    *references: Reference,
    **more: Any,
) -> Figure:
    """Return a figure; `more` are `table`, `headline`, `client` and `digits`."""
    lines = (working,) if isinstance(working, str) else tuple(working)
    return Figure(name=name, label=label, value=value, unit=unit, working=lines, references=references, **more)


def table(columns: Mapping[Words, str], rows: Iterable[tuple[Cell, ...]]) -> Table:
    """Return a table from the unit of each column by its head."""
    return Table(columns=tuple(columns), units=tuple(columns.values()), rows=tuple(rows))
