"""What a line of aftercare asks for or forbids, and whether two lines ask for opposite things.

Only plain orders are understood: a line that starts with its verb, or with `do not`. A ban with a condition, such
as `cut a lawn that is dry`, forbids nothing that can be compared, and is let be.
"""

import re
from collections.abc import Iterator
from datetime import date, timedelta
from typing import Final, NamedTuple

from howto.seasons import Hemisphere, months_of, next_in_months

VERBS: Final = {
    "water": r"water(?:ing)?|soak(?:ing)?|irrigat(?:e|ing)|hos(?:e|ing)",
    "feed": r"feed(?:ing)?|fertili[sz](?:e|ing)",
    "cut": r"cut(?:ting)?|clip(?:ping)?|trim(?:ming)?|prun(?:e|ing)|mow(?:ing)?|shear(?:ing)?|shorten(?:ing)?",
    "mulch": r"mulch(?:ing)?",
    "rake": r"rak(?:e|ing)",
    "cover": r"cover(?:ing)?",
    "spray": r"spray(?:ing)?",
    "dig": r"dig(?:ging)?|fork(?:ing)?",
    "tie": r"t(?:ie|ying)",
}
LIGHT: Final = frozenset({"lightly", "light", "little", "sparingly", "splash", "sip"})
DEEP: Final = frozenset({"deeply", "deep", "thoroughly", "generously", "heavily", "well", "plenty"})
THINGS: Final = {
    "lawn": "lawn|lawns|grass|turf|sward|mow",
    "hedge": "hedge|hedges|hedging",
    "ball": "ball|balls|topiary|dome|domes|cone|cones|shape|shapes",
    "tree": "tree|trees|pear|pears|apple|apples|espalier|plum|plums|cherry",
    "rose": "rose|roses",
    "pot": "pot|pots|tub|tubs|container|containers",
    "bed": "bed|beds|border|borders|perennials",
    "climber": "climber|climbers|wisteria|vine|vines",
    "seed heads": "heads|seedheads",
    "blossom": "blossom|flowers|blooms",
    "bulbs": "bulb|bulbs|daffodils|tulips",
}
MOST_AFTER: Final = timedelta(days=14)  # ours: what opens on a day is done within a fortnight
_LEAD: Final = r"(?:(?:please|then|also|once|again|gently|only|just|always)\s+)*"
_NOT: Final = r"(?:do not|don't|never|avoid|stop|no|hold off|hold back on|skip)\s+(?:any\s+|the\s+)?"
_LEFT: Final = re.compile(
    _LEAD + r"(?:leave\s+(?P<what>.*?)\s*\b(?:uncut|unclipped|untrimmed|unpruned|unmown|alone|be|standing|to grow|on)\b"
    r"|let\s+(?P<it>.*?)\s*\b(?:grow|run up|stand)\b)"
)
_DRY: Final = re.compile(_LEAD + r"keep\s+(?P<what>.*?)\s*\bdry\b")
_CLAUSE: Final = re.compile(r"[.;:!?]\s*|,\s*|\s+\b(?:and then|and|but|then)\b\s+")
_COUNT: Final = {"a": 1, "one": 1, "two": 2, "three": 3, "four": 4, "five": 5, "six": 6, "eight": 8, "twelve": 12}
_DAYS: Final = {"day": 1, "week": 7, "fortnight": 14, "month": 30}
_FOR: Final = re.compile(
    r"\b(?:for|within|in)\s+(?:the\s+(?:first|next)\s+)?(?P<many>\d{1,3}|[a-z]+)\s+(?P<unit>day|week|fortnight|month)s?\b"
)
_WEEK: Final = re.compile(r"\b(?:this week|in the (?:first )?week(?: of \w+(?: \w+)?)?)\b")
_UNTIL: Final = re.compile(r"\b(?P<word>until|in|before)\s+(?P<season>(?:early |mid |late )?[a-z]+)\b")
_FREE: Final = frozenset(
    ("it", "them", "the", "a", "an", "your", "this", "these", "that", "again", "yet", "any", "all", "at", "more")
)


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


def things_in(text: str) -> frozenset[str]:
    """Return the garden things that a text names."""
    words = set(re.findall(r"[a-z]+", text.casefold()))
    return frozenset(name for name, known in THINGS.items() if words & set(known.split("|")))


def stances(text: str, window: Window, hemisphere: Hemisphere, *, never: bool = False) -> Iterator[Stance]:
    """Yield what a line asks for or forbids; the first clause of a `never` line is what it forbids."""
    clauses = [clause for clause in _CLAUSE.split(text.casefold().replace("’", "'")) if clause.strip()]
    for clause in clauses[:1] if never else clauses:
        yield from _stance(clause.strip(), window, hemisphere, never=never)


def _stance(clause: str, window: Window, hemisphere: Hemisphere, *, never: bool) -> Iterator[Stance]:
    for topic, verb in VERBS.items():
        asked = re.match(rf"{_LEAD}(?P<no>{_NOT})?(?P<verb>{verb})\b\s*(?P<rest>.*)", clause)
        if asked is None:
            continue
        forbids = bool(asked["no"]) or never
        degree = _degree(asked["verb"], asked["rest"])
        when = _bare(asked["rest"], window, hemisphere) if forbids else window
        if when is not None:
            yield Stance(topic, not forbids, degree, when, things_in(clause))
        return
    for topic, pattern in (("cut", _LEFT), ("water", _DRY)):
        kept = pattern.match(clause)
        if kept is not None and not never:
            when = _bare(clause[kept.end() :], window, hemisphere)
            if when is not None:
                yield Stance(topic, do=False, degree="", window=when, things=things_in(clause))
            return


def _degree(verb: str, rest: str) -> str:
    """Return `light` or `deep` where one of the next few words says so."""
    near = set(re.findall(r"[a-z]+", rest)[:3])
    if near & LIGHT:
        return "light"
    return "deep" if near & DEEP or verb.startswith("soak") else ""


def _bare(rest: str, window: Window, hemisphere: Hemisphere) -> Window | None:
    """Return when a ban holds: narrower where it says for how long; None where it has any other condition."""
    left = rest
    last = window.last
    if found := _WEEK.search(rest):
        last, left = window.first + timedelta(days=7), rest.replace(found[0], "")
    elif (found := _FOR.search(rest)) and (many := _many(found["many"])):
        last = window.first + timedelta(days=many * _DAYS[found["unit"]])
        left = rest.replace(found[0], "")
    elif (found := _UNTIL.search(rest)) and (months := months_of(found["season"], hemisphere)):
        start = next_in_months(window.first, months)
        if found["word"] == "in":
            return None
        last, left = start - timedelta(days=1), rest.replace(found[0], "")
    words = set(re.findall(r"[a-z]+", left)) - _FREE - LIGHT - DEEP
    known = {word for names in THINGS.values() for word in names.split("|")}
    return Window(window.first, min(last, window.last)) if words <= known | {"seed", "plants"} else None


def _many(word: str) -> int:
    """Return a count written in digits or letters; 0 for another word."""
    return int(word) if word.isdecimal() else _COUNT.get(word, 0)
