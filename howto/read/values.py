"""Front matter nodes turned into texts, numbers, dates and words of a list; what will not turn is noted."""

import re
from collections.abc import Iterable
from collections.abc import Sequence as Many
from dataclasses import replace
from datetime import date
from typing import Final

from howto.fonts.letters import tidied
from howto.languages import LANGUAGES
from howto.languages.form import MONTHS
from howto.quantities import QuantityError, parse_in
from howto.read.letters import note_letters
from howto.read.nodes import KeyNode, Mapping, Node, Scalar, Sequence, is_blank, tidy_key
from howto.read.notes import Notes, line_of, listed, nearest, short
from howto.span import Span

NEEDED: Final = frozenset({"title", "family", "site", "date", "technique", "on"})  # without them there is no output
FIRST_YEAR: Final = 1900
LAST_YEAR: Final = 2999
_ISO: Final = re.compile(r"(\d{4})[-/.](\d{1,2})[-/.](\d{1,2})")
_DAY_FIRST: Final = re.compile(r"(\d{1,2})(?:st|nd|rd|th)? ([a-z]{3,9})\.?,? (\d{4})")
_MONTH_FIRST: Final = re.compile(r"([a-z]{3,9})\.? (\d{1,2})(?:st|nd|rd|th)?,? (\d{4})")
_SLASHED: Final = re.compile(r"(\d{1,2})[-/.](\d{1,2})[-/.](\d{4})")


def place_of(entry: KeyNode) -> Span:
    """Return where an entry's value stands, or its key where nothing was written or it runs over lines."""
    value = entry.value
    if isinstance(value, Scalar) and value.text:
        return value.span
    return entry.key.span


def text_in(notes: Notes, entry: KeyNode) -> str | None:
    """Return the text of an entry; None, noted, where nothing or a list is written."""
    if isinstance(entry.value, Scalar) and not is_blank(entry.value):
        return " ".join(entry.value.text.split())
    blank = is_blank(entry.value)
    notes.add(
        "value",
        place_of(entry),
        f"nothing stands after `{entry.key.text}:`" if blank else f"`{entry.key.text}` holds a list",
        "a text is wanted here",
        "write one text after the colon"
        if not blank
        else "write it after the colon"
        if entry.name in NEEDED
        else f"write it after the colon, or take the line `{entry.key.text}:` out",
    )
    return None


def printed_in(notes: Notes, entry: KeyNode, most: int | None = None) -> str | None:
    """Return a text that is printed as it stands, of at most `most` characters; what cannot be printed is noted."""
    text = sentence_in(notes, entry, most)
    note_braces(notes, text or "", place_of(entry))
    return text


def sentence_in(notes: Notes, entry: KeyNode, most: int | None = None) -> str | None:
    """Return a text that is printed once its `{words}` are filled; letters that cannot be printed are noted."""
    text = text_in(notes, entry)
    if text is None:
        return None
    text = _fit_to_print(notes, text, place_of(entry))
    if most is not None and len(text) > most:
        notes.add(
            "too-long",
            place_of(entry),
            f"`{entry.key.text}` has {len(text)} characters",
            f"it stands on one line or two wherever it is printed, which have room for {most}",
            f"write it in at most {most} characters",
        )
    return text


def printed_words_in(notes: Notes, entry: KeyNode) -> tuple[Scalar, ...]:
    """Return a list of words that are printed; letters that cannot be printed are noted."""
    words = words_in(notes, entry)
    for word in words:
        note_braces(notes, word.text, word.span)
    return tuple(replace(word, text=_fit_to_print(notes, word.text, word.span)) for word in words)


def _fit_to_print(notes: Notes, text: str, span: Span) -> str:
    """Return a text as it is printed; letters that cannot be are noted."""
    note_letters(notes, text, span)
    return " ".join(tidied(text).split())


def note_braces(notes: Notes, text: str, span: Span) -> None:
    """Note words in braces, or a brace alone, where nothing would be put in their place."""
    braced = re.search(r"\{[^{}]*\}|[{}]", text)
    if braced is None:
        return
    inner = " ".join(braced[0].strip("{}").split())
    notes.add(
        "braces",
        span,
        f"`{short(braced[0])}` stands here",
        "words in braces are filled in sentences, from their measures; here they would be printed as they are",
        f"write `{short(inner)}` without braces, or the number itself" if inner else f"take `{braced[0]}` out",
    )


def words_in(notes: Notes, entry: KeyNode) -> tuple[Scalar, ...]:
    """Return a list of words: one a line, in brackets, or with commas between them; nothing for a blank."""
    value = entry.value
    if isinstance(value, Scalar):
        return split_words(value)
    if isinstance(value, Sequence):
        found = [each for each in value.items if isinstance(each, Scalar)]
        if len(found) == len(value.items):
            return tuple(each for each in found if each.text.strip())
    notes.add(
        "value",
        entry.key.span,
        f"`{entry.key.text}` holds more than a list of words",
        "a list here is words alone",
        f"write them with commas between: `{entry.key.text}: [one, two]`",
    )
    return ()


def split_words(value: Scalar) -> tuple[Scalar, ...]:
    """Return the words of `one, two` with the place of each."""
    words: list[Scalar] = []
    for found in re.finditer(r"[^,;]+", value.text):
        text = found.group().strip()
        if text:
            start = value.span.column + value.quoted + found.start() + found.group().index(text)
            words.append(Scalar(text, Span(value.span.path, value.span.line, start, start + len(text)), value.quoted))
    return tuple(words)


def choice_in(notes: Notes, entry: KeyNode, known: Iterable[str]) -> str | None:
    """Return the one of the known words that is written; None, noted with the nearest, for another."""
    text = text_in(notes, entry)
    return None if text is None else choice_of(notes, text, place_of(entry), entry.key.text, known)


def choice_of(notes: Notes, text: str, span: Span, key: str, known: Iterable[str]) -> str | None:
    """Return the known word that a text is; None, noted with the nearest, for another."""
    words = tuple(known)
    for word in words:
        if tidy_key(word) == tidy_key(text):
            return word
    near = nearest(text, words)
    notes.add(
        "unknown-word",
        span,
        f"`{short(text)}` is not one of the words for `{key}`",
        f"the words are {listed(words)}",
        f"write `{key}: {near or words[0]}`" if near or len(words) == 1 else f"write {listed(words)}",
    )
    return None


def yes_in(notes: Notes, entry: KeyNode) -> bool | None:
    """Return a yes or no; None, noted, for anything else."""
    text = text_in(notes, entry)
    if text is None:
        return None
    for each in LANGUAGES.values():
        if tidy_key(text) in each.file.yes:
            return True
        if tidy_key(text) in each.file.no:
            return False
    notes.add(
        "value",
        place_of(entry),
        f"`{short(text)}` is neither yes nor no",
        f"`{entry.key.text}` is a yes or a no",
        f"write `{entry.key.text}: yes` or `{entry.key.text}: no`",
    )
    return None


def whole_in(notes: Notes, entry: KeyNode, low: int, high: int) -> int | None:
    """Return a whole number within bounds; None, noted, for anything else."""
    text = text_in(notes, entry)
    if text is None:
        return None
    found = re.fullmatch(r"(?:level )?([+−-]?\d{1,99})(?:\.0+)?", text.casefold())
    if found is None:
        notes.add(
            "value",
            place_of(entry),
            f"`{short(text)}` is not a whole number",
            f"`{entry.key.text}` is a whole number from {low} to {high}",
            f"write a number from {low} to {high}, such as `{entry.key.text}: {low}`",
        )
        return None
    number = int(found[1].replace("−", "-"))
    if low <= number <= high:
        return number
    note_bound(
        notes,
        place_of(entry),
        entry.key.text,
        short(str(number)),
        (f"from {low} to {high}", str(low if number < low else high)),
    )
    return None


def note_bound(notes: Notes, span: Span, key: str, seen: str, wanted: tuple[str, str]) -> None:
    """Note a number out of bounds: the bound in words, and a number inside it to write."""
    bound, inside = wanted
    notes.add(
        "bound",
        span,
        f"`{key}` is {seen}",
        f"`{key}` must be {bound}",
        f"write `{key}: {inside}`, or another number {bound}",
    )


def quantity_of(notes: Notes, text: str, span: Span, key: str, unit: str) -> tuple[float, float | None] | None:
    """Return a quantity and its tolerance in `unit`; None, noted at the part that is in the way."""
    try:
        return parse_in(text, unit)
    except QuantityError as problem:
        line = line_of(notes.source, span.line)
        at = line.find(text, span.column - 1)
        place = span
        if at >= 0 and problem.end > problem.start:
            place = Span(span.path, span.line, at + problem.start + 1, at + min(problem.end, len(text)) + 1)
        notes.add("quantity", place, f"{problem.what}", f"{problem.why}: `{key}`", problem.mend)
        return None


def quantity_in(notes: Notes, entry: KeyNode, unit: str) -> tuple[float, float | None] | None:
    """Return the quantity of an entry and its tolerance in `unit`; None, noted, where it cannot be read."""
    text = text_in(notes, entry)
    return None if text is None else quantity_of(notes, text, place_of(entry), entry.key.text, unit)


def date_in(notes: Notes, entry: KeyNode) -> date | None:
    """Return a date; None, noted, for what is none or could be two."""
    text = text_in(notes, entry)
    return None if text is None else date_of(notes, text, place_of(entry), entry.key.text)


def date_of(notes: Notes, text: str, span: Span, key: str) -> date | None:
    """Return the date of a text: `2026-10-14`, `14 October 2026` or `October 14, 2026`."""
    words = " ".join(text.casefold().split())
    parts: tuple[int, int, int] | None = None
    if found := _ISO.fullmatch(words):
        parts = (int(found[1]), int(found[2]), int(found[3]))
    elif found := _DAY_FIRST.fullmatch(words):
        parts = (int(found[3]), _month(found[2]), int(found[1]))
    elif found := _MONTH_FIRST.fullmatch(words):
        parts = (int(found[3]), _month(found[1]), int(found[2]))
    day = _date(parts) if parts else None
    if day is not None and FIRST_YEAR <= day.year <= LAST_YEAR:
        return day
    if day is not None:
        notes.add(
            "date",
            span,
            f"the year is {day.year}",
            f"dates are counted on from it; the years are {FIRST_YEAR} to {LAST_YEAR}",
            f"write the year again, such as `{key}: 2028-{day:%m-%d}`",
        )
        return None
    offers = [f"`{key}: {offer.isoformat()}`" for offer in _offers(words)]
    notes.add(
        "date",
        span,
        f"`{short(text)}` is not a date that is understood"
        if not parts
        else f"there is no {short(text)} in the calendar",
        "a date is year, month, day, so that no one reads the day for the month",
        f"write {' or '.join(offers)}" if offers else f"write the date as `{key}: 2026-10-14`",
    )
    return None


def _month(word: str) -> int:
    """Return the month of a name or its first three letters, or 0."""
    return next(
        (number for number, name in enumerate(MONTHS, 1) if name == word or (name[:3] == word[:3] and len(word) < 5)), 0
    )


def _date(parts: tuple[int, int, int]) -> date | None:
    """Return a date, or None where the calendar has none."""
    try:
        return date(*parts)
    except ValueError:
        return None


def _offers(words: str) -> list[date]:
    """Return the dates that `14/10/2026` may mean."""
    found = _SLASHED.fullmatch(words)
    if found is None:
        return []
    one, two, year = int(found[1]), int(found[2]), int(found[3])
    return list(dict.fromkeys(day for parts in ((year, two, one), (year, one, two)) if (day := _date(parts))))


def unknown_keys(notes: Notes, node: Mapping, known: Many[str], where: str) -> frozenset[str]:
    """Note each key that is not known; return the known ones that were meant, which are then not missing."""
    tidied = {tidy_key(key) for key in known}
    meant: set[str] = set()
    for entry in node:
        if entry.name in tidied:
            continue
        near = nearest(entry.key.text, known)
        there = node.entry(tidy_key(near)) if near else None
        if there is not None:
            mend = f"take this line out: `{near}:` already stands on line {there.key.span.line}"
        elif near is not None:
            meant.add(near)
            mend = f"write `{near}:`"
        else:
            mend = "take this line out, or write one of the keys"
        notes.add(
            "unknown-key",
            entry.key.span,
            f"`{short(entry.key.text)}` is not a key of {where}",
            f"the keys are {listed(known).replace(' or ', ' and ')}",
            mend,
        )
    return frozenset(meant)


def as_mapping(notes: Notes, node: Node | None, what: str, example: str, span: Span) -> Mapping | None:
    """Return a node that holds keys; None, noted, for one that does not."""
    if isinstance(node, Mapping):
        return node
    if node is not None:
        notes.add(
            "value",
            span,
            f"{what} holds no `key: value`",
            "each line of it is a key, a colon and a value",
            f"write {example}",
        )
    return None
