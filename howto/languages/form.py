"""The form that every language fills: labels, file words, words of time, units and phrases."""

import re
from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Final, TypedDict
from unicodedata import combining, normalize

Swaps = tuple[tuple[str, str], ...]
MONTHS: Final = (
    "january", "february", "march", "april", "may", "june",
    "july", "august", "september", "october", "november", "december",
)  # fmt: skip


class Labels(TypedDict):
    """What pages and pictures print of their own accord; braces are filled by the layout."""

    level: str
    minutes: str
    numbers: str
    setting_out: str
    more: str
    spare: str
    tools: str
    materials: str
    needs: str
    plants: str
    season: str
    cautions: str
    steps: str
    step: str
    key_point: str
    reason: str
    check: str
    wear: str
    scale: str
    side: str
    page: str
    tick: str
    opens: str
    all_cards: str
    shelf_title: str
    shelf_find: str
    shelf_one: str
    shelf_many: str
    shelf_empty: str
    finish: str
    aftercare: str
    newest: str
    newest_label: str
    version: str
    done: str
    todo: str
    todo_first: str
    todo_later: str
    no_tasks: str
    never: str
    call: str
    call_if: str
    call_signs: str
    call_whom: str
    your_numbers: str
    year: str
    pictures: str
    before: str
    after: str
    visit_over: str
    next_visit: str
    by: str
    from_: str
    between: str
    each_days: str
    each_day: str
    each_week: str
    each_from: str
    each_until: str
    at_visit: str
    for_what: str
    and_: str
    added: str
    count: str
    strip_alt: str
    strip_task: str
    always: str
    footer: str
    leaflet_footer: str
    more_on_page: str
    letter_over: str
    letter_title: str
    letter_about: str
    letter_mow: str
    letter_mow_at: str
    letter_care: str
    letter_clip: str
    letter_work: str
    letter_water: str
    letter_lawn: str
    letter_bed: str
    letter_none: str

    # a carousel and its caption; `places` are the ninths of a picture
    tools_and_numbers: str
    take_care: str
    finish_frame: str
    done_when: str
    afterwards: str
    frame_of: str
    step_of: str
    marked: str
    places: tuple[tuple[str, str, str], ...]
    photograph: str
    wear_things: str
    caution: str
    warning_sign: str


@dataclass(frozen=True, slots=True)
class FileWords:
    """The words of a technique file: the one that mends write first, others that are understood after it.

    `forms` are the times of aftercare as mends show them.
    """

    sections: Mapping[str, tuple[str, ...]]
    notes: Mapping[str, tuple[str, ...]]
    never: tuple[str, ...]
    yes: tuple[str, ...]
    no: tuple[str, ...]
    forms: tuple[str, ...]


NOTHING: Final = "(?!)"  # matches nowhere


@dataclass(frozen=True)
class OrderWords:
    """How one language orders and forbids; each text is a pattern.

    `lead` may stand before a verb, `no` forbids it. `kept` and `dry` are bans without a verb of their own: leave it
    uncut, keep it dry. `clause` parts a sentence. `long`, `week` and `until` say how long a ban holds, `free` are the
    words beside them that are no other condition. `bought` starts a line about a purchase, `each` says that an amount
    is for one of several, `same` starts a line that goes on from the one before.
    """

    verbs: Mapping[str, str] = field(default_factory=dict)
    things: Mapping[str, str] = field(default_factory=dict)
    light: frozenset[str] = frozenset()
    deep: frozenset[str] = frozenset()
    deep_verbs: tuple[str, ...] = ()
    lead: str = ""
    no: str = NOTHING
    kept: str = NOTHING
    dry: str = NOTHING
    clause: str = r"[.;:!?]\s*"
    long: str = NOTHING
    week: str = NOTHING
    until: str = NOTHING
    months_only: str = NOTHING
    counts: Mapping[str, int] = field(default_factory=dict)
    days: Mapping[str, int] = field(default_factory=dict)
    free: frozenset[str] = frozenset()
    bought: str = NOTHING
    each: str = NOTHING
    same: str = NOTHING


@dataclass(frozen=True, slots=True)
class Language:
    """One language: what it is called, what pages print in it, and how files and times are written in it.

    `times` turn words of time into the English ones that are read, one after another. They are matched without their
    accents, since phones leave them out. `units` are the units and things counted that are words. `phrases` are what
    families say of their own accord: English keys in small letters, `{}` for each amount; a translation has as many.
    `orders` are the words in which aftercare asks or forbids; `written_units` patterns of units written out in prose,
    each with the symbol that is read.
    """

    names: tuple[str, ...]
    labels: Labels
    file: FileWords
    times: Swaps = ()
    units: Mapping[str, str] = field(default_factory=dict)
    phrases: Mapping[str, str] = field(default_factory=dict)
    orders: OrderWords = field(default_factory=OrderWords)
    written_units: Mapping[str, str] = field(default_factory=dict)

    def in_english(self, text: str) -> str:
        """Return words of time in English, small letters; words that are not of this language stay as they are."""
        found = folded(text).rstrip(" .:")
        for pattern, word in self.times:
            found = re.sub(pattern, word, found)
        return " ".join(found.split())


def word_set(words: str) -> frozenset[str]:
    """Return words as a set."""
    return frozenset(words.split())


def folded(text: str) -> str:
    """Return words as they are compared over languages: small letters, no accents, single spaces."""
    plain = "".join(letter for letter in normalize("NFD", text.casefold()) if not combining(letter))
    return " ".join(plain.replace("đ", "d").split())


def named(names: str, words: tuple[str, ...] = MONTHS) -> Swaps:
    """Return a swap for each of the names, which stand in the order of the English words."""
    return tuple((rf"\b{name}\b", word) for name, word in zip(names.split(), words, strict=True))


def counted(names: str) -> Swaps:
    """Return a swap for each number word, from one on."""
    return tuple((rf"\b{name}\b", str(number)) for number, name in enumerate(names.split(), 1))
