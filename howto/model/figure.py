"""A figure: a number we computed, with its working and who says so."""

from datetime import date

from howto.model.reference import Reference
from howto.model.value import Value

Cell = float | date | str


class Table(Value):
    """Several figures side by side: one unit a column ("" for words, dates and bare counts)."""

    columns: tuple[str, ...]
    units: tuple[str, ...]
    rows: tuple[tuple[Cell, ...], ...]


class Figure(Value):
    """One computed figure.

    `name` is what `{words}` in prose may call it; `label` what a card prints before it; `value` is in `unit`
    (a unit of quantities.py; "" for a date, a word or a bare count). `working` is arithmetic a person can
    follow with a pencil, a line each. `headline` figures go on covers; `client` ones may go on a leaflet.
    """

    name: str
    label: str
    value: Cell
    unit: str = ""
    working: tuple[str, ...]
    references: tuple[Reference, ...]
    table: Table | None = None
    headline: bool = False
    client: bool = False
    digits: int | None = None
