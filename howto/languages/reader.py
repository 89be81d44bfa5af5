"""The one who reads: phrases and amounts are told in their language, their units and with their decimal mark."""

import re
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, field
from datetime import date
from functools import lru_cache
from typing import Final, Literal

from babel import Locale, UnknownLocaleError
from babel.dates import format_date, get_month_names
from babel.numbers import get_decimal_symbol

from howto.languages import UNIT_WORDS, language_of
from howto.languages.tags import base, is_english
from howto.quantities.amounts import (
    Amount,
    Count,
    Day,
    Held,
    Listed,
    Months,
    Name,
    Phrase,
    Range,
    Scaled,
    Share,
    Spread,
    Typed,
    Word,
    Words,
    phrase,
)
from howto.quantities.printing import Printed, as_worked, printed, range_ends, row, unit_told

System = Literal["metric", "us", "uk"]
TIE: Final = "\u00a0"
SHARES: Final = {
    "all": 1.0, "nine tenths": 0.9, "three quarters": 0.75, "two thirds": 2 / 3, "half": 0.5, "a third": 1 / 3,
    "a quarter": 0.25, "a fifth": 0.2, "an eighth": 0.125, "a tenth": 0.1,
}  # fmt: skip
NEAR: Final = 1e-9
_LETTERS: Final = re.compile(r"[^\W\d_]{2,}")


@lru_cache
def locale_of(language: str) -> Locale:
    """Return the locale of a language tag such as `en-NZ`; British English where it is not known."""
    for tag in (language, base(language)):
        try:
            return Locale.parse(tag, sep="-")
        except (UnknownLocaleError, ValueError):
            continue
    return Locale("en", "GB")


@dataclass(frozen=True)
class Reader:
    """A reader: their language tag, their units, and the crew's own phrases over ours (an English key, and its own)."""

    language: str = "en"
    units: System = "metric"
    own: Mapping[str, str] = field(default_factory=dict)

    def tell(self, words: Words) -> str:
        """Return a phrase as it is printed on a page: amounts tied to their units."""
        return self._told(phrase(words), self.units)

    def plain(self, words: Words) -> str:
        """Return a phrase as a terminal shows it: plain spaces."""
        return self.tell(words).replace(TIE, " ")

    def worked(self, words: Words) -> str:
        """Return a line of arithmetic, in the units it was worked in: both sides of `=` stay true."""
        return self._told(phrase(words), None).replace(TIE, " ")

    def filled(self, words: Words) -> str:
        """Return an author's words as they stand, with the amounts in them told."""
        parts = phrase(words).parts
        return "".join(part if isinstance(part, str) else self._held(part, self.units) for part in parts)

    def gaps(self, words: Words) -> Iterator[str]:
        """Yield the keys of what would be told in English though the reader reads another language."""
        if is_english(self.language):
            return
        said = phrase(words)
        if self._pattern(said) is None and _LETTERS.search(said.key.replace("{}", "")):
            yield said.key
        for each in said.amounts:
            yield from self._gaps_in(each)

    # -- amounts --

    def value(self, value: float, unit: str, digits: int | None = None) -> str:
        """Return an amount in the reader's units; a number alone where it has none."""
        return self._put(printed(value, unit, self.units, digits))

    def listed(self, values: Iterable[float], unit: str) -> str:
        """Return amounts in a row, a unit that all of them share said once at the end."""
        return ", ".join(map(self._put, row(*(printed(each, unit, self.units) for each in values))))

    def spread(self, value: float, unit: str) -> str:
        """Return a tolerance."""
        return self._spread(Spread(value, unit), self.units)

    def day(self, day: date) -> str:
        """Return a date in words, the year included: `2 June 2027`."""
        return day_told(day, self.language)

    def short_day(self, day: date) -> str:
        """Return a date without its year: `2 June`."""
        return str(format_date(day, format="d MMM", locale=_dates_of(self.language)))

    def month(self, month: int) -> str:
        """Return the name of a month (1 to 12), as it stands in a sentence."""
        return str(get_month_names("wide", locale=locale_of(self.language))[month])

    # -- how --

    def _told(self, said: Phrase, units: System | None) -> str:
        """Return a phrase in the reader's words; `units` None keeps each amount as it was worked."""
        pattern = None if is_english(self.language) else self._pattern(said)
        amounts = [self._held(each, units) for each in said.amounts]
        if pattern is None:
            told = iter(amounts)
            return "".join(part if isinstance(part, str) else next(told) for part in said.parts)
        for each in amounts:
            pattern = pattern.replace("{}", each, 1)
        return pattern

    def _pattern(self, said: Phrase) -> str | None:
        """Return how a phrase goes in the reader's language, or None where there are no words for it."""
        key, count = said.key, len(said.amounts)
        found = self.own.get(key) or language_of(self.language).phrases.get(key)
        return found if found is not None and found.count("{}") == count else None

    def _held(self, held: Held, units: System | None) -> str:  # noqa: C901, PLR0911 - one line a kind of value
        """Return a value that stands in a phrase."""
        match held:
            case Amount():
                return self._amount(held, units)
            case Scaled(value, unit, digits):
                return self.value(value, unit, digits)
            case Typed():
                return held.written
            case Listed(values, unit):
                return self.listed(values, unit)
            case Range():
                return self._range(held, units)
            case Spread():
                return self._spread(held, units)
            case Count(number, one, many):
                return f"{number}{TIE}{unit_told(one if number == 1 else many, self._units)}"
            case Day(iso, form):
                day = date.fromisoformat(iso)
                return iso if form == "plain" else self.short_day(day) if form == "short" else self.day(day)
            case Months():
                return self._months(held)
            case Share(value):
                return self._share(value)
            case Word(text):
                return self._told(phrase(text), units)
            case Name(text):
                return text
        raise TypeError(f"{type(held).__name__} is not told")

    def _range(self, held: Range, units: System | None) -> str:
        """Return a range with the reader's word between its ends."""
        ends = [Name(self._put(end)) for end in range_ends(held.low, held.high, held.unit, units or "metric")]
        return self._told(phrase(" to ".join(map(str, ends))), None)

    def _spread(self, held: Spread, units: System | None) -> str:
        """Return how far a value may be off."""
        return f"±{TIE}{self._put(printed(held.value, held.unit, units or 'metric', difference=True))}"

    def _share(self, value: float) -> str:
        """Return a part of a whole: `a third`, or `27.7 %`."""
        named = next((words for words, part in SHARES.items() if abs(part - value) < NEAR), None)
        return self._told(phrase(named), None) if named else self._amount(Amount(value * 100, "%"), None)

    def _amount(self, held: Amount, units: System | None) -> str:
        """Return an amount; one with its figures given keeps its unit where the reader uses it too."""
        value, unit, digits = held.value, held.unit, held.digits
        kept = units is None or (units == "metric" and digits is not None)
        return self._put(as_worked(value, unit, digits) if kept else printed(value, unit, units or "metric", digits))

    def _months(self, held: Months) -> str:
        names = [self.month(each) for each in held.months]
        if len(names) == 1:
            return names[0]
        if held.joint == "to":
            return self._told(phrase(f"{Name(names[0])} to {Name(names[-1])}"), None)
        if held.joint == ",":
            return ", ".join(names)
        last = self._told(phrase(f"{Name(names[-2])} {held.joint} {Name(names[-1])}"), None)
        return ", ".join((*names[:-2], last))

    def _put(self, amount: Printed) -> str:
        """Return a printed amount with the reader's decimal mark and the units that are words in theirs."""
        return amount.told(decimal_mark(self.language), self._units)

    @property
    def _units(self) -> Mapping[str, str]:
        """Units that are words, as the reader says them."""
        return language_of(self.language).units

    def _gaps_in(self, held: Held) -> Iterator[str]:
        """Yield what an amount would tell in English."""
        if isinstance(held, Word):
            yield from self.gaps(held.text)
        elif isinstance(held, Count) and held.many not in self._units:
            yield held.many
        elif isinstance(held, Amount | Scaled | Listed | Range | Spread):
            yield from (part for part in held.unit.split("/") if part in UNIT_WORDS and part not in self._units)


def day_told(day: date, language: str) -> str:
    """Return a date in words, the year included: `2 June 2027`."""
    return str(format_date(day, format="long", locale=_dates_of(language)))


def _dates_of(language: str) -> Locale:
    """Return the locale in which dates are told: the day stands first in plain English."""
    return locale_of("en-GB" if language == "en" else language)


@lru_cache
def decimal_mark(language: str) -> str:
    """Return the decimal mark of a language; of English a point wherever it is read, as in the arithmetic."""
    return "." if is_english(language) else str(get_decimal_symbol(locale_of(language)))
