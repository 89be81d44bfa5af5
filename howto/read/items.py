"""One item of a list read as a tool, a caution or a care task, without a box to tick."""

import re
from dataclasses import dataclass
from typing import Final

from howto.languages import LANGUAGES, language_of
from howto.read.blocks import Item
from howto.read.nodes import tidy_key
from howto.read.notes import Notes, line_of, short
from howto.read.passage import Passage, first_sentence, lead_of, split_label
from howto.span import Span

_ARROW: Final = re.compile(r"\s*(?:→|⇒|➔|➜|⟶|-{1,2}>|=>)\s*")
_BOX: Final = re.compile(r"\s*(?:\[[ xX]?\]|[☐☑□])\s*")
_LONGEST_LEAD: Final = 40


@dataclass(frozen=True, slots=True)
class KitText:
    """A tool or material and what stood after its colon."""

    name: str
    note: Passage | None
    span: Span


@dataclass(frozen=True, slots=True)
class CautionText:
    """A caution: its bold lead, the words, and what to wear."""

    title: str
    text: Passage
    wear: tuple[str, ...]
    span: Span


@dataclass(frozen=True, slots=True)
class CareText:
    """A care task: when, as written, and what; `never` for what is not to be done."""

    when: str
    when_span: Span
    text: Passage
    span: Span
    never: bool = False


def kit(_notes: Notes, item: Item) -> KitText | None:
    """Return `Name: note` as a tool or material."""
    words = item.words
    parted = split_label(words)
    if parted is None:
        return KitText(" ".join(words.text.split()), None, words.span)
    name, note = parted
    return KitText(name, note if note.text else None, words.span)


def without_box(words: Passage) -> Passage:
    """Return the words of a line without the box to tick in front of them."""
    box = _BOX.match(words.text)
    return words.part(box.end() if box else 0)


def caution(notes: Notes, item: Item) -> CautionText | None:
    """Return `**Blades.** text → gloves, eye protection` as a caution; note one without a lead."""
    words = item.words
    arrow = None
    for arrow in _ARROW.finditer(words.text):  # noqa: B007 - the last one is wanted
        pass
    end = arrow.start() if arrow else len(words.text)
    worn = words.text[arrow.end() :] if arrow else ""
    wear = tuple(each for part in re.split(r"[,;]", worn) if (each := " ".join(part.split()).rstrip(".")))
    if arrow and not wear:
        notes.add(
            "caution",
            words.span,
            "nothing stands after the arrow",
            "the arrow says what to wear",
            "write what to wear after the arrow, such as `→ gloves, eye protection`, or take the arrow out",
        )
    title, start = lead_of(words)
    if not title:
        title, start = _plain_lead(words.part(0, end).text)
    if not title:
        line = line_of(notes.source, words.span.line)[words.span.column - 1 : words.span.end_column - 1]
        notes.add(
            "caution",
            words.span,
            f"`{short(words.text)}` does not start with what can hurt",
            "a caution is found by its first word or two, in bold",
            f"write what can hurt in front, such as `- **Blades.** {line}`",
        )
        return None
    return CautionText(title, words.part(start, end), wear, words.span)


def _plain_lead(text: str) -> tuple[str, int]:
    """Return a short first sentence, or what stands before a colon, and where it ends."""
    colon = re.match(r"[^:{}.]{1,40}:(?=\s)", text)
    if colon:
        return colon.group(), colon.end()
    end = first_sentence(text)
    return (text[:end].strip(), end) if end < len(text) and end <= _LONGEST_LEAD else ("", 0)


def care(notes: Notes, item: Item, language: str) -> CareText | None:
    """Return `Within 2 days: text` or `Do not …` as a care task; note one that says no time."""
    words = item.words
    parted = split_label(words)
    never = sorted({*language_of(language).file.never, *LANGUAGES["en"].file.never}, key=len, reverse=True)
    if parted and tidy_key(parted[0]) in {tidy_key(word) for word in never}:
        return CareText(parted[0], _start_of(words, parted[0]), parted[1], words.span, never=True)
    for word in never:
        if words.text.casefold().startswith(f"{word.casefold()} "):
            return CareText(word, _start_of(words, word), words.part(len(word)), words.span, never=True)
    if parted is None or not parted[1].text:
        notes.add(
            "when",
            words.span,
            f"`{short(words.text)}` does not say when" if parted is None else f"nothing stands after `{parted[0]}:`",
            "the leaflet gives each task its date",
            "write when, a colon, and what to do: `Within 2 days: water once`; " + forms(language)
            if parted is None
            else f"write what to do after `{parted[0]}:`",
        )
        return None
    return CareText(parted[0], _start_of(words, parted[0]), parted[1], words.span)


def forms(language: str) -> str:
    """Return the forms of time that are understood, for a mend."""
    return "the forms are " + ", ".join(f"`{form}`" for form in language_of(language).file.forms)


def _start_of(words: Passage, label: str) -> Span:
    """Return the span of a label at the start of an item."""
    return Span(words.span.path, words.span.line, words.span.column, words.span.column + len(label))
