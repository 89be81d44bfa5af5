"""A technique's front matter: title, family, level, time, needs, plants, season, measures and waivers."""

import re
from collections.abc import Callable
from collections.abc import Mapping as Table
from dataclasses import dataclass, field
from datetime import date
from pathlib import PurePosixPath
from typing import Final

from howto.fonts import missing
from howto.languages import LANGUAGES
from howto.languages.reader import day_told
from howto.model.family import AnyFamily
from howto.model.measures import Measures
from howto.model.names import file_name
from howto.read.bounds import needed_lines
from howto.read.measures import measures_from
from howto.read.nodes import KeyNode, Mapping, Node, Scalar, is_blank
from howto.read.notes import Notes, nearest, short, whole_line
from howto.read.values import (
    as_mapping,
    choice_in,
    note_bound,
    place_of,
    printed_in,
    printed_words_in,
    quantity_in,
    sentence_in,
    text_in,
    unknown_keys,
    whole_in,
    words_in,
)
from howto.span import Span

KEYS: Final = ("title", "family", "level", "minutes", "needs", "plants", "season", "language", "measures", "waive")
MOST_MINUTES: Final = 2400  # a week of eight-hour days
LEVELS: Final = (1, 3)
_LANGUAGE: Final = re.compile(r"[a-z]{2,3}(?:-[A-Za-z0-9]{2,8})?")
_LANGUAGES: Final = {
    **{name: tag for tag, each in LANGUAGES.items() for name in each.names},
    "french": "fr", "german": "de", "italian": "it", "portuguese": "pt",
}  # fmt: skip


@dataclass(slots=True)
class Header:
    """What the front matter of a technique says; what could not be read is empty."""

    title: str = ""
    family: AnyFamily | None = None
    level: int = 1
    minutes: float | None = None
    needs: tuple[str, ...] = ()
    plants: tuple[str, ...] = ()
    season: str = ""
    language: str = "en"
    measures: Measures | None = None
    waive: dict[str, str] = field(default_factory=dict)
    spans: dict[str, Span] = field(default_factory=dict)


def read_header(
    notes: Notes, node: Node | None, families: Table[str, AnyFamily], *, damaged: bool, language: str = "en"
) -> Header:
    """Return what the front matter says; `damaged` when parts of it were lost, so that none is called missing.

    `language` is the crew's: what a file is in that says none itself.
    """
    top = whole_line(notes.source, 1)
    header = Header(language=_language_of_name(notes) or language)
    if node is None and damaged:
        return header
    keys = as_mapping(notes, node, "the front matter", "`title: Clip a ball`", top) or Mapping((), top)
    if node is not None and not isinstance(node, Mapping):
        return header
    meant = unknown_keys(notes, keys, KEYS, "the front matter")
    title = keys.entry("title")
    home = title.key.span if title else keys.entries[0].key.span if keys.entries else top
    header.spans.update(dict.fromkeys(KEYS, home))
    for entry in keys:
        header.spans[entry.name] = place_of(entry)
        reader = _READERS.get(entry.name)
        if reader is not None:
            reader(notes, entry, header)
    _family(notes, keys, header, families, home, damaged=damaged or "family" in meant)
    if header.family is not None:
        _measures(notes, keys, header, home, damaged=damaged or "measures" in meant)
    if not title and not damaged and "title" not in meant:
        _note_missing(notes, home, "title", "every output is headed by it", "title: Clip a ball")
    return header


def _language_of_name(notes: Notes) -> str:
    """Return the language a file's name says (`clip-a-ball.es.md`); nothing where it says none."""
    ending = PurePosixPath(notes.source.stem).suffix.removeprefix(".")
    if not _LANGUAGE.fullmatch(ending):
        return ""
    if _letters_lacking(ending):
        _note_lacking(notes, Span(notes.source.path), ending, f"rename the file, without `.{ending}`")
    return ending


def _note_missing(notes: Notes, home: Span, key: str, why: str, line: str) -> None:
    """Note a key that must be there, with the line to add."""
    notes.add(
        "missing-key",
        home,
        f"the front matter has no `{key}`",
        why,
        f"write a line `{line}` between the two lines of `---`",
    )


def _family(
    notes: Notes, keys: Mapping, header: Header, families: Table[str, AnyFamily], home: Span, *, damaged: bool
) -> None:
    """Read the family and its measures."""
    entry = keys.entry("family")
    if entry is None:
        folder = PurePosixPath(notes.source.path).parent.name
        if not damaged:
            line = f"family: {folder if folder in families else next(iter(families), 'clipping')}"
            why = "the family says which arithmetic checks the technique: " + ", ".join(families)
            _note_missing(notes, home, "family", why, line)
        header.family = families.get(folder)
    else:
        name = choice_in(notes, entry, families)
        header.family = families.get(name) if name else None


def _measures(notes: Notes, keys: Mapping, header: Header, home: Span, *, damaged: bool) -> None:
    """Read the measures by the family's own keys."""
    measures, family = keys.entry("measures"), header.family
    needed = needed_lines(family) if family else ()
    if family is None or (measures is None and damaged):
        return
    if measures is None and needed:
        lines = ", ".join(f"`  {line}`" for line in needed)
        why = f"{family.name} is worked out from them"
        what = "the front matter has no `measures`"
        notes.add(
            "missing-key", home, what, why, f"write above the second `---` a line `measures:` and under it {lines}"
        )
        return
    under = measures.key.span if measures else home
    header.spans["measures"] = under
    node = None
    if measures is not None and not is_blank(measures.value):
        node = as_mapping(notes, measures.value, "`measures`", _example(family), under)
        if node is None:
            return
    header.measures, spans = measures_from(notes, node, family, under, damaged=damaged)
    header.spans.update({f"measures.{name}": span for name, span in spans.items()})


def _example(family: AnyFamily) -> str:
    """Return a line of a family's measures, for a mend."""
    key, text = family.starter[0] if family.starter else ("finished width", "900 mm")
    return f"a line such as `  {key}: {text}` under `measures:`"


def _title(notes: Notes, entry: KeyNode, header: Header) -> None:
    header.title = sentence_in(notes, entry) or ""


def _level(notes: Notes, entry: KeyNode, header: Header) -> None:
    header.level = whole_in(notes, entry, *LEVELS) or 1


def _minutes(notes: Notes, entry: KeyNode, header: Header) -> None:
    """Read a time; a bare number is minutes."""
    text = entry.value.text.strip() if isinstance(entry.value, Scalar) else ""
    value: float | None = None
    if re.fullmatch(r"[+−-]?\d{1,99}(\.\d+)?", text):
        value = float(text.replace("−", "-"))
    elif clock := re.fullmatch(r"(\d{1,2}):([0-5]\d)", text):
        notes.add(
            "quantity",
            place_of(entry),
            f"`{text}` may be hours and minutes, or minutes and seconds",
            "a time is a number of minutes, or a number with its unit",
            f"write `{int(clock[1]) * 60 + int(clock[2])}` if it is hours and minutes",
        )
        return
    else:
        found = quantity_in(notes, entry, "min")
        value = found[0] if found else None
    if value is not None and not 0 < value <= MOST_MINUTES:
        wanted = (f"more than 0 min and at most {MOST_MINUTES} min", "25" if value <= 0 else str(MOST_MINUTES))
        note_bound(notes, place_of(entry), entry.key.text, short(text), wanted)
        return
    header.minutes = value


def _needs(notes: Notes, entry: KeyNode, header: Header) -> None:
    """Read the techniques to know first; a title becomes the name of its file."""
    if is_blank(entry.value):
        return
    found = words_in(notes, entry)
    header.needs = tuple(file_name(word.text.casefold().removesuffix(".md")) or word.text for word in found)
    header.spans.update({f"needs[{at}]": word.span for at, word in enumerate(found)})


def _plants(notes: Notes, entry: KeyNode, header: Header) -> None:
    """Read the plants."""
    if is_blank(entry.value):
        return
    found = printed_words_in(notes, entry)
    header.plants = tuple(word.text for word in found)
    header.spans.update({f"plants[{at}]": word.span for at, word in enumerate(found)})


def _season(notes: Notes, entry: KeyNode, header: Header) -> None:
    header.season = "" if is_blank(entry.value) else printed_in(notes, entry) or ""


def _language(notes: Notes, entry: KeyNode, header: Header) -> None:
    header.language = language_in(notes, entry) or header.language


def language_in(notes: Notes, entry: KeyNode) -> str | None:
    """Return a language by its letters; None, noted, for what is none."""
    text = text_in(notes, entry)
    if text is None:
        return None
    if _LANGUAGE.fullmatch(text):
        return text if _can_be_printed(notes, entry, text) else None
    lowered = text.casefold()
    near = _LANGUAGES.get(lowered) or _LANGUAGES.get(nearest(lowered, _LANGUAGES) or "") or "en"
    notes.add(
        "unknown-word",
        place_of(entry),
        f"`{short(text)}` does not say which language by its letters",
        "a language is two or three small letters, such as `en` or `es`",
        f"write `{entry.key.text}: {near}`",
    )
    return None


def _letters_lacking(language: str) -> tuple[str, ...]:
    """Return the letters of a language's dates that the typefaces lack."""
    return missing("".join(day_told(date(2026, month, 28), language) for month in range(1, 13)))


def _can_be_printed(notes: Notes, entry: KeyNode, language: str) -> bool:
    """Tell whether the typefaces have the letters of a language's dates; note one where they have not."""
    if not _letters_lacking(language):
        return True
    _note_lacking(notes, place_of(entry), language, f"write `{entry.key.text}: en`, or take the line out")
    return False


def _note_lacking(notes: Notes, span: Span, language: str, mend: str) -> None:
    """Note a language whose letters the typefaces lack."""
    what = f"`{short(language)}` is written in letters that cannot be printed"
    why = "the typefaces of cards and frames have Latin, Greek and Cyrillic letters alone, and dates need more"
    notes.add("letter", span, what, why, mend)


def _waive(notes: Notes, entry: KeyNode, header: Header) -> None:
    """Read the rules that this technique breaks for a reason."""
    if is_blank(entry.value):
        return
    example = "a rule, a colon and the reason, such as `waive: {mowing.one-third: renovation, agreed}`"
    node = as_mapping(notes, entry.value, "`waive`", example, entry.key.span)
    for each in node or ():
        name = each.key.text
        header.spans[f"waive.{name}"] = each.key.span
        if is_blank(each.value):
            notes.add(
                "waive",
                each.key.span,
                f"`{short(name)}` is waived without a reason",
                "whoever reads the card later must see why the rule was broken",
                f"write the reason after the colon, or take `{short(name)}` out",
            )
        elif (reason := text_in(notes, each)) is not None:
            header.waive[name] = reason


_READERS: Final[dict[str, Callable[[Notes, KeyNode, Header], None]]] = {
    "title": _title,
    "level": _level,
    "minutes": _minutes,
    "needs": _needs,
    "plants": _plants,
    "season": _season,
    "language": _language,
    "waive": _waive,
}
