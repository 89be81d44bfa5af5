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

from howto.languages.phrases import PHRASES, UNITS
from howto.languages.tags import base, is_english
from howto.quantities import show, show_number, show_tolerance
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
from howto.quantities.printing import printed, range_ends
from howto.quantities.units import unit_named

System = Literal["metric", "us", "uk"]
TIE: Final = "\u00a0"
SHARES: Final = {
    "all": 1.0, "nine tenths": 0.9, "three quarters": 0.75, "two thirds": 2 / 3, "half": 0.5, "a third": 1 / 3,
    "a quarter": 0.25, "a fifth": 0.2, "an eighth": 0.125, "a tenth": 0.1,
}  # fmt: skip
NEAR: Final = 1e-9
_POINT: Final = re.compile(r"(?<=\d)\.(?=\d)")
_WORD: Final = re.compile(r"[A-Za-z]+")
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
        if unit:
            return self._marked(show(value, unit, self.units, digits))
        return self._marked(show_number(value) if digits is None else show_number(value, digits))

    def listed(self, values: Iterable[float], unit: str) -> str:
        """Return amounts in a row, a unit that all of them share said once at the end."""
        if not unit:
            return ", ".join(self.value(each, "") for each in values)
        numbers, units = zip(*(printed(each, unit, self.units) for each in values), strict=True)
        if len(set(units)) == 1 and units[0]:
            return f"{', '.join(map(self._number, numbers))}{TIE}{self._units_told(units[0])}"
        return ", ".join(self.value(each, unit) for each in values)

    def spread(self, value: float, unit: str) -> str:
        """Return a tolerance."""
        return self._marked(show_tolerance(value, unit, self.units))

    def day(self, day: date) -> str:
        """Return a date in words, the year included: `2 June 2027`."""
        return day_told(day, self.language)

    def short_day(self, day: date) -> str:
        """Return a date without its year: `2 June`."""
        locale = locale_of("en-GB" if self.language == "en" else self.language)
        return str(format_date(day, format="d LLL" if locale.language == "mi" else "d MMM", locale=locale))

    def month(self, month: int) -> str:
        """Return the name of a month (1 to 12), as it stands in a sentence."""
        return str(get_month_names("wide", "stand-alone", locale_of(self.language))[month])

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
        found = self.own.get(key) or PHRASES.get(base(self.language), {}).get(key)
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
            case Spread(value, unit):
                return self._marked(show_tolerance(value, unit, units or "metric"))
            case Count(number, one, many):
                return f"{number}{TIE}{self._units_told(one if number == 1 else many)}"
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
        ends = [self._marked(end) for end in range_ends(held.low, held.high, held.unit, units or "metric") if end]
        return ends[0] if len(ends) == 1 else self._told(phrase(f"{Name(ends[0])} to {Name(ends[1])}"), None)

    def _share(self, value: float) -> str:
        """Return a part of a whole: `a third`, or `27.7 %`."""
        named = next((words for words, part in SHARES.items() if abs(part - value) < NEAR), None)
        return self._told(phrase(named), None) if named else self._amount(Amount(value * 100, "%"), None)

    def _amount(self, held: Amount, units: System | None) -> str:
        """Return an amount; one with its figures given keeps its unit where the reader uses it too."""
        value, unit, digits = held.value, held.unit, held.digits
        if not unit:
            return self._marked(show_number(value) if digits is None else show_number(value, digits))
        if units in (None, "metric") and (digits is not None or units is None):
            named = unit_named(unit)
            text = show_number(value, 3 if digits is None else digits)
            symbol = named.symbol if text == "1" else named.many
            tight = symbol[:1] in {"", "°", "/"} and not symbol.startswith(("°C", "°F"))
            return self._marked(f"{text}{'' if tight else TIE}{symbol.replace(' ', TIE)}")
        return self._marked(show(value, unit, units or "metric"))

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

    def _marked(self, text: str) -> str:
        """Return a printed amount with the reader's decimal mark and the units that are words in theirs."""
        if is_english(self.language):
            return text
        number, tie, unit = text.partition(TIE)
        return self._number(number) + tie + self._units_told(self._number(unit))

    def _number(self, text: str) -> str:
        """Return a printed number with the reader's decimal mark."""
        return text if is_english(self.language) else _POINT.sub(decimal_mark(self.language), text)

    def _units_told(self, unit: str) -> str:
        """Return a unit with those of its words that have one in the reader's language."""
        words = UNITS.get(base(self.language), {})
        return _WORD.sub(lambda found: words.get(found[0], found[0]), unit)

    def _gaps_in(self, held: Held) -> Iterator[str]:
        """Yield what an amount would tell in English."""
        if isinstance(held, Word):
            yield from self.gaps(held.text)
        known = UNITS.get(base(self.language), {})
        noun = (
            held.many
            if isinstance(held, Count)
            else held.unit
            if isinstance(held, Amount | Scaled | Listed | Range | Spread)
            else ""
        )
        yield from (word for word in _WORD.findall(noun) if word in UNITS["es"] and word not in known)


def day_told(day: date, language: str) -> str:
    """Return a date in words, the year included: `2 June 2027`."""
    locale = locale_of("en-GB" if language == "en" else language)
    # Babel's te reo Māori spells April in two ways; the one for a month alone is the dictionaries' Āperira.
    return str(format_date(day, format="d LLLL y" if locale.language == "mi" else "long", locale=locale))


@lru_cache
def decimal_mark(language: str) -> str:
    """Return the decimal mark of a language."""
    return str(get_decimal_symbol(locale_of(language)))
