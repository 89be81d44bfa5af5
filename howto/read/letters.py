"""Letters of words that are printed: unseen ones left out, look-alikes swapped, and what no face has noted."""

import unicodedata
from collections.abc import Iterable, Iterator
from dataclasses import fields, is_dataclass
from typing import Any, Final

from howto.fonts import missing
from howto.read.notes import Notes, line_of, lines_of, listed
from howto.read.passage import Passage
from howto.span import Span

MOST_NAMED: Final = 6
NOT_PRINTED: Final = frozenset({"file", "alt"})  # a file's name, and words that are only read aloud
_SPACES: Final = dict.fromkeys((*range(0x2000, 0x2007), *range(0x2008, 0x200B), 0x205F, 0x3000), " ")
_HYPHENS: Final = {0x2010: "-", 0x2011: "-"}  # what phones and word processors write for a plain hyphen
_UNSEEN: Final = dict.fromkeys(
    (
        *(0x00AD, 0x034F, 0x061C, 0x115F, 0x1160, 0x180E, 0x3164, 0xFEFF),
        *(*range(0x200B, 0x2010), *range(0x202A, 0x202F), *range(0x2060, 0x2070)),  # joiners, turns of direction
        *(*range(0xFE00, 0xFE10), *range(0xE0000, 0xE01F0)),  # variants of the letter before, and tags
    )
)
_TABLE: Final = {**_SPACES, **_HYPHENS, **_UNSEEN}


def tidied(text: str) -> str:
    """Return a text without the letters that nobody sees, and with plain spaces and hyphens for their look-alikes."""
    return text.translate(_TABLE)


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
