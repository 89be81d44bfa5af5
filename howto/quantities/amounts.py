"""Amounts that stand in a sentence as values until its reader is known.

An f-string takes them like any other value: `f"{mm(40)} off each side"`. What comes out is not printed yet; it holds
each amount whole, between two private characters, and `phrase` turns it into a template and its amounts. So a family
says what it means once, and a reader's language, units and decimal mark are put in at the very end.
"""

import json
import re
from collections.abc import Iterable
from dataclasses import dataclass, fields
from datetime import date
from typing import ClassVar, Final

from howto.quantities.quantity import Quantity
from howto.quantities.units import Dimension, convert, unit_named

OPEN, CLOSE = "\ue000", "\ue001"  # no author can write them: the reading of files refuses private characters
_TOKEN: Final = re.compile(f"{OPEN}([^{CLOSE}]*){CLOSE}")


@dataclass(frozen=True, slots=True)
class Held:
    """A value that stands in a sentence; formatted, it is kept whole."""

    kind: ClassVar[str] = ""

    def __str__(self) -> str:
        """Return the value as `phrase` finds it in a text."""
        return f"{OPEN}{json.dumps([self.kind, *(getattr(self, each.name) for each in fields(self))])}{CLOSE}"

    def __format__(self, spec: str) -> str:
        """Return the value as `phrase` finds it in a text; how it is printed is its reader's business."""
        if spec:
            raise ValueError(f"{spec!r}: an amount is formatted by its reader")
        return str(self)


@dataclass(frozen=True, slots=True)
class Amount(Held):
    """A number in a unit ("" for a plain number), with how many figures it carries (None: as its unit is read)."""

    kind = "amount"
    value: float
    unit: str = ""
    digits: int | None = None


@dataclass(frozen=True, slots=True)
class Scaled(Held):
    """A number of a measure or a figure, told in whichever unit reads best."""

    kind = "scaled"
    value: float
    unit: str = ""
    digits: int | None = None


@dataclass(frozen=True, slots=True)
class Typed(Held):
    """An amount that an author typed in a sentence: told as written; `amount` in the SI base of its dimension."""

    kind = "typed"
    amount: float
    dimension: Dimension
    written: str

    def __post_init__(self) -> None:
        """Take a list for a dimension."""
        object.__setattr__(self, "dimension", Dimension(*self.dimension))


@dataclass(frozen=True, slots=True)
class Listed(Held):
    """Several numbers in one unit, in a row."""

    kind = "listed"
    values: tuple[float, ...]
    unit: str

    def __post_init__(self) -> None:
        """Take a list for a tuple."""
        object.__setattr__(self, "values", tuple(self.values))


@dataclass(frozen=True, slots=True)
class Range(Held):
    """Two numbers in a unit, the lower first."""

    kind = "range"
    low: float
    high: float
    unit: str


@dataclass(frozen=True, slots=True)
class Spread(Held):
    """How far a value may be off either way."""

    kind = "spread"
    value: float
    unit: str


@dataclass(frozen=True, slots=True)
class Count(Held):
    """How many of a thing, with its name for one and for more."""

    kind = "count"
    number: int
    one: str
    many: str


@dataclass(frozen=True, slots=True)
class Day(Held):
    """A day (ISO 8601); `short` ones are told without the year, `plain` ones in digits, as arithmetic shows them."""

    kind = "day"
    iso: str
    form: str = "long"


@dataclass(frozen=True, slots=True)
class Months(Held):
    """Months (1 to 12): one, several joined by `and` or `or` or a comma, or a run from the first `to` the last."""

    kind = "months"
    months: tuple[int, ...]
    joint: str = ","

    def __post_init__(self) -> None:
        """Take a list for a tuple."""
        object.__setattr__(self, "months", tuple(self.months))


@dataclass(frozen=True, slots=True)
class Share(Held):
    """A part of a whole, 0 to 1: told in words where it has a name (a third), else in percent."""

    kind = "share"
    value: float


@dataclass(frozen=True, slots=True)
class Name(Held):
    """A name that is told as it stands: a plant's, a person's, a technique's."""

    kind = "name"
    text: str


@dataclass(frozen=True, slots=True)
class Word(Held):
    """Words of our own that are told by themselves; they may hold amounts."""

    kind = "word"
    text: str


_KINDS: Final = {
    each.kind: each for each in (Amount, Scaled, Typed, Listed, Range, Spread, Count, Day, Months, Share, Name, Word)
}


@dataclass(frozen=True, slots=True)
class Phrase:
    """What a family says: stretches of words and amounts in turn.

    `key` is what tables of translations know it by: small letters, `{}` for each amount.
    """

    parts: tuple[str | Held, ...]

    @property
    def amounts(self) -> tuple[Held, ...]:
        """The amounts, in order."""
        return tuple(part for part in self.parts if isinstance(part, Held))

    @property
    def key(self) -> str:
        """The template in small letters and single spaces, `{}` for each amount."""
        text = "".join(part if isinstance(part, str) else "{}" for part in self.parts)
        return " ".join(text.replace("\u00a0", " ").split()).casefold()

    def __str__(self) -> str:
        """Return the phrase as it may stand in another."""
        return "".join(map(str, self.parts))

    def __bool__(self) -> bool:
        """Tell whether anything is said."""
        return bool(self.parts)


Words = str  # a text of ours that may hold amounts; only a `Reader` prints it


def phrase(words: Words) -> Phrase:
    """Return a text with the amounts that stand in it as values."""
    found = _TOKEN.split(words)
    parts = (_held(each) if at % 2 else each for at, each in enumerate(found))
    return Phrase(tuple(part for part in parts if part != ""))


def _held(text: str) -> Held:
    """Return the value that stands between the two private characters."""
    kind, *values = json.loads(text)
    return _KINDS[kind](*values)


def dimension_of(held: Held) -> Dimension | None:
    """Return what a measured or typed amount is an amount of; None for any other value."""
    if isinstance(held, Typed):
        return held.dimension
    return unit_named(held.unit or "1").dimension if isinstance(held, Amount | Scaled) else None


def in_unit(held: Held, unit: str) -> float:
    """Return a measured or typed amount in a unit of its dimension."""
    if isinstance(held, Typed):
        return Quantity(held.amount, held.dimension, None, held.written).to(unit)
    if isinstance(held, Amount | Scaled):
        return convert(held.value, held.unit or "1", unit)
    raise TypeError(f"{held.kind} has no unit")


# -- short ways to write them --


def qty(value: float, unit: str, digits: int | None = None) -> Amount:
    """Return a number in a unit."""
    return Amount(value, unit, digits)


def mm(value: float, digits: int | None = None) -> Amount:
    """Return a length in millimetres."""
    return Amount(value, "mm", digits)


def percent(value: float, digits: int = 3) -> Amount:
    """Return a share of a hundred."""
    return Amount(value, "%", digits)


def bare(value: float, digits: int = 3) -> Amount:
    """Return a plain number with so many figures, whole ones always kept."""
    return Amount(value, "", digits)


def dated(when: date, form: str = "long") -> Day:
    """Return a day."""
    return Day(when.isoformat(), form)


def month_named(which: int) -> Months:
    """Return one month (1 to 12)."""
    return Months((which,))


def months_named(which: Iterable[int], joint: str = ",") -> Months:
    """Return several months."""
    return Months(tuple(which), joint)
