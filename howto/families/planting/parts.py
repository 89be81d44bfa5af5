"""A figure and a breach from their parts, in the order they are printed."""

from collections.abc import Iterable
from typing import Any

from howto.findings import Severity
from howto.model.family import Breach, Edit
from howto.model.figure import Cell, Figure
from howto.model.reference import Reference
from howto.quantities import field_unit
from howto.quantities.amounts import Words


def worked(
    name: str, label: str, value: Cell, unit: str, working: Iterable[Words], *who: Reference, **more: Any
) -> Figure:
    """Return a figure with its working and who says so; `more` are its other parts by name."""
    return Figure(name=name, label=label, value=value, unit=unit, working=tuple(working), references=who, **more)


def rewritten(
    field: str,
    text: str,
    what: Words,
    why: Words = "",
    mend: Words = "write {}",
    *,
    also: str = "",
    severity: Severity | None = None,
) -> Breach:
    """Return the breach of a measure; `{}` in its mend is the line that writes `text` there."""
    key = field_unit(field)[0]
    mend, edit = mend.format(f"`{key}: {text}`"), Edit(key=key, text=text)
    return Breach(f"measures.{field}", what, why, mend, edit, f"measures.{also}" if also else "", severity)
