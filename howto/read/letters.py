"""Letters of words that are printed: those that no face has are noted where they stand."""

import unicodedata
from collections.abc import Iterable, Iterator
from dataclasses import fields, is_dataclass
from typing import Any, Final

from howto.fonts import missing
from howto.fonts.letters import tidied
from howto.read.notes import Notes, line_of, lines_of, listed
from howto.read.passage import Passage
from howto.span import Span

MOST_NAMED: Final = 6
# a file's name, words that are only read aloud, and what says again what was read
NOT_PRINTED: Final = frozenset({"file", "alt", "words", "said_at", "located"})


def note_letters(notes: Notes, text: str, span: Span) -> None:
    """Note the letters of a printed text that none of the faces has, at the first of them."""
    gaps = missing(tidied(text))
    if not gaps:
        return
    named = listed(map(_named, gaps[:MOST_NAMED])).replace(" or ", " and ")
    more = f" and {len(gaps) - MOST_NAMED} more letters" if len(gaps) > MOST_NAMED else ""
    notes.add(
        "letter",
        _place(notes, gaps, span),
        f"{named}{more} cannot be printed",
        "the typefaces of cards and frames have Latin, Greek and Cyrillic letters and common signs alone",
        f"take {'it' if len(gaps) == 1 else 'them'} out, or say it in letters that they have",
    )


def note_parts(notes: Notes, parts: Iterable[Any]) -> None:
    """Note the letters that cannot be printed in what was read of a body: each part once, at its own place."""
    for part in parts:
        for text, span in _texts(part):
            note_letters(notes, text, span)


def _texts(part: Any) -> Iterator[tuple[str, Span]]:
    """Yield each printed text of a part with its place."""
    if isinstance(part, Passage):
        yield part.text, part.span
    elif isinstance(part, tuple):
        for each in part:
            yield from _texts(each)
    elif is_dataclass(part):
        own = [field.name for field in fields(part) if field.name not in NOT_PRINTED]
        values = [getattr(part, name) for name in own]
        words = [each for value in values for each in (value if isinstance(value, tuple) else (value,))]
        if hasattr(part, "span"):
            yield " ".join(each for each in words if isinstance(each, str)), part.span
        for value in values:
            yield from _texts(value)


def _named(letter: str) -> str:
    """Return a letter as a finding shows it: by its number where it cannot be seen."""
    seen = unicodedata.category(letter)[0] in "LNPS" and letter != "\u2800"
    return letter if seen else f"U+{ord(letter):04X}"


def _place(notes: Notes, gaps: tuple[str, ...], span: Span) -> Span:
    """Return where the first of these letters stands, from the start of `span` on, and those beside it."""
    start = span.column - 1
    for number in range(span.line, len(lines_of(notes.source)) + 1):
        line = line_of(notes.source, number)
        at = next((at for at in range(start, len(line)) if line[at] in gaps), None)
        if at is not None:
            end = next((end for end in range(at, len(line)) if line[end] not in gaps), len(line))
            return Span(span.path, number, at + 1, end + 1)
        start = 0
    return span
