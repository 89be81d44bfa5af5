"""What a line of aftercare asks for or forbids, and whether two lines ask for opposite things.

Only plain orders are understood: a line that starts with its verb, or with `do not`. A ban with a condition, such
as `cut a lawn that is dry`, forbids nothing that can be compared, and is let be.
"""

import re
from collections.abc import Iterator
from dataclasses import dataclass
from datetime import date, timedelta
from typing import Final, NamedTuple

from howto.languages import language_of
from howto.languages.form import OrderWords, folded
from howto.seasons import Hemisphere, months_of, next_in_months

MOST_AFTER: Final = timedelta(days=14)  # ours: what opens on a day is done within a fortnight
_WORD: Final = re.compile(r"[a-z]+")


class Window(NamedTuple):
    """The first and last day on which a line holds."""

    first: date
    last: date

    def meets(self, other: "Window") -> bool:
        """Tell whether two windows share a day."""
        return self.first <= other.last and other.first <= self.last


class Stance(NamedTuple):
    """What a line says of one kind of work: do it or not, lightly or deeply, when, and to what."""

    topic: str
    do: bool
    degree: str
    window: Window
    things: frozenset[str]

    def opposes(self, other: "Stance") -> bool:
        """Tell whether both cannot be followed: do and do not, or lightly and deeply, of one thing at one time."""
        apart = bool(self.things) and bool(other.things) and not self.things & other.things
        if self.topic != other.topic or apart or not self.window.meets(other.window):
            return False
        if self.do and other.do:
            return {self.degree, other.degree} == {"light", "deep"}
        ban, order = (other, self) if self.do else (self, other)
        return self.do != other.do and ban.degree in ("", order.degree)


def things_in(text: str, language: str = "en") -> frozenset[str]:
    """Return the garden things that a text names."""
    words = set(_WORD.findall(folded(text)))
    return frozenset(
        name for name, known in language_of(language).orders.things.items() if words & set(known.split("|"))
    )


@dataclass(frozen=True)
class OrderLine:
    """A line of aftercare in its author's own words, and the days on which it holds."""

    text: str
    language: str
    window: Window
    hemisphere: Hemisphere
    never: bool = False

    @property
    def words(self) -> OrderWords:
        """The words in which its language orders."""
        return language_of(self.language).orders


def stances(line: OrderLine) -> Iterator[Stance]:
    """Yield what a line asks for or forbids; the first clause of a `never` line is what it forbids."""
    parts = re.split(line.words.clause, folded(line.text.replace("’", "'")))
    clauses = [clause.strip() for clause in parts if clause.strip()]
    for clause in clauses[:1] if line.never else clauses:
        yield from _stance(clause, line)


def _stance(clause: str, line: OrderLine) -> Iterator[Stance]:
    """Yield what one clause says: by its verb, or as a ban without one."""
    words = line.words
    for topic, verb in words.verbs.items():
        asked = re.match(rf"{words.lead}(?P<no>{words.no})?(?P<verb>{verb})\b\s*(?P<rest>.*)", clause)
        if asked is None:
            continue
        forbids = bool(asked["no"]) or line.never
        when = _bare(asked["rest"], line) if forbids else line.window
        if when is not None:
            degree = _degree(asked["verb"], asked["rest"], words)
            yield Stance(topic, not forbids, degree, when, things_in(clause, line.language))
        return
    for topic, pattern in (("cut", words.kept), ("water", words.dry)):
        kept = re.match(f"{words.lead}(?:{pattern})", clause)
        if kept is not None and not line.never:
            when = _bare(clause[kept.end() :], line)
            if when is not None:
                yield Stance(topic, do=False, degree="", window=when, things=things_in(clause, line.language))
            return


def _degree(verb: str, rest: str, words: OrderWords) -> str:
    """Return `light` or `deep` where one of the next few words says so."""
    near = set(_WORD.findall(rest)[:3])
    if near & words.light:
        return "light"
    return "deep" if near & words.deep or verb.startswith(words.deep_verbs) else ""


def _bare(rest: str, line: OrderLine) -> Window | None:
    """Return when a ban holds: narrower where it says for how long; None where it has any other condition."""
    words, (first, last), left = line.words, line.window, rest
    if found := re.search(words.week, rest):
        last, left = first + timedelta(days=7), rest.replace(found[0], "")
    elif (found := re.search(words.long, rest)) and (many := _many(found["many"], words)):
        last, left = first + timedelta(days=many * words.days[found["unit"]]), rest.replace(found[0], "")
    elif months := _months(words.until, rest, line):
        found = re.search(words.until, rest)
        last, left = next_in_months(first, months) - timedelta(days=1), rest.replace(found[0] if found else "", "")
    elif _months(words.months_only, rest, line):
        return None
    said = set(_WORD.findall(left)) - words.free - words.light - words.deep
    known = {word for names in words.things.values() for word in names.split("|")}
    return Window(first, min(last, line.window.last)) if said <= known else None


def _months(pattern: str, rest: str, line: OrderLine) -> tuple[int, ...]:
    """Return the months that a pattern finds in what follows a verb."""
    found = re.search(pattern, rest)
    return (months_of(language_of(line.language).in_english(found["season"]), line.hemisphere) or ()) if found else ()


def _many(word: str, words: OrderWords) -> int:
    """Return a count written in digits or letters; 0 for another word."""
    return int(word) if word.isdecimal() else words.counts.get(word, 0)
