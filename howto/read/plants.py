"""The plants and grasses a shelf knows: the package's own, and the shelf's over them."""

import re
from functools import lru_cache
from pathlib import Path
from typing import Any, Final, Literal, TypeVar, get_args, get_origin

from howto.findings import Finding
from howto.guarded import guarded
from howto.languages.form import MONTHS
from howto.model.plants import Fact, Grass, Mowing, Plant, PlantBook, PlantMonths, VouchedWords
from howto.model.reference import Grade
from howto.read.front_matter import parse_yaml
from howto.read.measures import plain_kind
from howto.read.nodes import KeyNode, Mapping, Node, Scalar, Sequence, is_blank
from howto.read.notes import Notes, whole_line
from howto.read.text import read_text
from howto.read.values import (
    choice_in,
    choice_of,
    place_of,
    printed_in,
    printed_words_in,
    quantity_of,
    text_in,
    unknown_keys,
    words_in,
)
from howto.span import SourceText, Span

P = TypeVar("P", bound=Plant | Grass)
DATA: Final = Path(__file__).parent.parent / "data"
OWN_SOURCE: Final = "the crew's own"
_FACTS: Final = {  # key and unit of each field that holds a range of numbers
    "growth_mm_per_year": ("growth", "mm/year"),
    "spacing_mm": ("spacing", "mm"),
    "clips_a_year": ("clips a year", "cuts/year"),
    "growth_mm_per_day": ("growth", "mm/day"),
    "nitrogen_g_per_m2_year": ("nitrogen", "g/m2/year"),
}
_CHOICES: Final = {
    "regrows": ("old wood", "green wood only", "slowly from old wood"),
    "water": ("low", "moderate", "high"),
}
_VOUCHED: Final = ("source", "grade")


def read_book(shelf: Path) -> tuple[PlantBook, tuple[Finding, ...]]:
    """Return the plants and grasses of the package with those of a shelf's folder in place of or beside them."""
    book = own_book()
    plants, findings = _over(book.plants, shelf / "plants.yaml", Plant)
    grasses, more = _over(book.grasses, shelf / "grasses.yaml", Grass)
    return PlantBook(plants=plants, grasses=grasses), (*findings, *more)


def _over(own: tuple[P, ...], path: Path, kind: type[P]) -> tuple[tuple[P, ...], tuple[Finding, ...]]:
    """Return the package's entries with those of a shelf's file in place of or after them."""
    if not path.exists():
        return own, ()
    known = {each.botanical.casefold(): each for each in own}
    notes: list[Finding] = []
    with guarded(notes, Span(path.as_posix()), "read this file"):
        source, findings = read_text(path, path.as_posix())
        notes += findings
        if source is not None:
            found, more = entries_of(source, kind)
            notes += more
            known.update({each.botanical.casefold(): each for each in found})
    return tuple(known.values()), tuple(notes)


@lru_cache(maxsize=1)
def own_book() -> PlantBook:
    """Return the package's own plants and grasses."""
    plants, _ = entries_of(_own("plants"), Plant, own=True)
    grasses, _ = entries_of(_own("grasses"), Grass, own=True)
    return PlantBook(plants=plants, grasses=grasses)


def _own(name: str) -> SourceText:
    """Return a data file of the package."""
    return SourceText(f"{name}.yaml", (DATA / f"{name}.yaml").read_text("utf-8"))


def entries_of(source: SourceText, kind: type[P], *, own: bool = False) -> tuple[tuple[P, ...], tuple[Finding, ...]]:
    """Return the plants or grasses that a text lists."""
    node, front = parse_yaml(source, own=own)
    notes = Notes(source)
    found: dict[str, tuple[P, Span]] = {}
    for item in _listed(notes, node):
        each = _entry(notes, item, kind)
        if each is None:
            continue
        name, span = each.botanical.casefold(), item.span
        if name in found:
            first = found[name][1]
            notes.add(
                "repeated-key",
                span,
                f"`{each.botanical}` is listed twice",
                f"it already stands on line {first.line}, and only one of the two can hold",
                f"make one entry of the two on lines {first.line} and {span.line}",
                also=first,
            )
            continue
        found[name] = (each, span)
    return tuple(each for each, _ in found.values()), (*front, *notes.findings)


def _listed(notes: Notes, node: Node | None) -> tuple[Mapping, ...]:
    """Return the entries of a list, or of a list under one key."""
    if isinstance(node, Mapping) and len(node.entries) == 1 and isinstance(node.entries[0].value, Sequence):
        node = node.entries[0].value
    if node is None:
        return ()
    items = node.items if isinstance(node, Sequence) else ()
    found = tuple(item for item in items if isinstance(item, Mapping))
    if not items or len(found) < len(items):
        odd = next(
            (item.span for item in items if not isinstance(item, Mapping)), whole_line(notes.source, node.span.line)
        )
        notes.add(
            "value",
            odd,
            "this is not a list of plants with their keys",
            "each plant starts with a dash and its botanical name",
            "write `- botanical:` and the name, and the other keys below it, set in by two spaces",
        )
    return found


def _entry(notes: Notes, node: Mapping, kind: type[P]) -> P | None:
    """Return one plant or grass; None, noted, where something in it cannot be read."""
    keys = {_FACTS.get(name, (name.replace("_", " "),))[0]: name for name in kind.model_fields}
    before = len(notes.found)
    meant = unknown_keys(notes, node, list(keys), "a plant" if kind is Plant else "a grass")
    found: dict[str, Any] = {}
    for entry in node:
        name = keys.get(entry.name)
        if name is not None and not is_blank(entry.value):
            found[name] = _value(notes, entry, name, plain_kind(kind.model_fields[name].annotation))
    for key, name in keys.items():
        if kind.model_fields[name].is_required() and name not in found and key not in meant:
            example = "evergreen" if name == "kind" else "Buxus sempervirens" if name == "botanical" else "…"
            notes.add(
                "missing-key",
                node.entries[0].key.span if node.entries else node.span,
                f"this entry has no `{key}`",
                "an entry cannot be used without it",
                f"write a line `{key}: {example}` in it",
            )
    if len(notes.found) > before or None in found.values():
        return None
    return kind(**found)


def _value(notes: Notes, entry: KeyNode, name: str, kind: Any) -> Any:
    """Return what stands under one key, as its field holds it."""
    if kind is VouchedWords:
        return _words(notes, entry, entry.value, _CHOICES.get(name, ()))
    if kind is PlantMonths:
        return _months(notes, entry)
    if kind is Fact:
        return _fact(notes, entry, _FACTS[name][1])
    if kind is str:
        return printed_in(notes, entry)
    if get_origin(kind) is Literal:
        return choice_in(notes, entry, get_args(kind))
    inner = get_args(kind)[0]
    if inner is VouchedWords or inner is Mowing:
        items = entry.value.items if isinstance(entry.value, Sequence) else (entry.value,)
        many: list[Any] = [
            _mowing(notes, entry, item) if inner is Mowing else _words(notes, entry, item, ()) for item in items
        ]
    elif inner is str:
        many = [word.text for word in printed_words_in(notes, entry)]
    else:
        known = get_args(inner)
        many = [choice_of(notes, word.text, word.span, entry.key.text, known) for word in words_in(notes, entry)]
    return None if None in many else tuple(many)


def _vouched(notes: Notes, node: Mapping) -> dict[str, Any]:
    """Return the source and grade of a value; the crew's own where none is named."""
    source, grade = node.entry("source"), node.entry("grade")
    said = printed_in(notes, source) if source else None
    level = choice_in(notes, grade, [each.value for each in Grade]) if grade else None
    return {"source": said or OWN_SOURCE, "grade": Grade(level) if level else Grade.PRACTICE}


def _words(notes: Notes, entry: KeyNode, node: Node, known: tuple[str, ...]) -> VouchedWords | None:
    """Return a text with who says so, from `{text, source, grade}` or from a bare text."""
    inner = KeyNode(entry.key, node)
    vouched: dict[str, Any] = {"source": OWN_SOURCE, "grade": Grade.PRACTICE}
    if isinstance(node, Mapping):
        unknown_keys(notes, node, ["text", *_VOUCHED], f"`{entry.key.text}`")
        text = node.entry("text")
        if text is None:
            _note_part(notes, entry, node, "text", "text: …")
            return None
        inner, vouched = text, _vouched(notes, node)
    said = choice_in(notes, inner, known) if known else printed_in(notes, inner)
    return None if said is None else VouchedWords(text=said, **vouched)


def _months(notes: Notes, entry: KeyNode) -> PlantMonths | None:
    """Return months with who says so, from `{months, source, grade}` or from a bare list."""
    inner = entry
    vouched: dict[str, Any] = {"source": OWN_SOURCE, "grade": Grade.PRACTICE}
    if isinstance(entry.value, Mapping):
        unknown_keys(notes, entry.value, ["months", *_VOUCHED], f"`{entry.key.text}`")
        months = entry.value.entry("months")
        if months is None:
            _note_part(notes, entry, entry.value, "months", "months: [5, 6]")
            return None
        inner, vouched = months, _vouched(notes, entry.value)
    found = [_month(notes, entry.key.text, word) for word in words_in(notes, inner)]
    if None in found or not found:
        return None
    return PlantMonths(months=tuple(month for month in found if month), **vouched)


def _month(notes: Notes, key: str, word: Scalar) -> int | None:
    """Return a month from its number or name."""
    if word.text.isdecimal() and 1 <= int(word.text) <= len(MONTHS):
        return int(word.text)
    name = choice_of(notes, word.text, word.span, key, MONTHS)
    return MONTHS.index(name) + 1 if name else None


def _fact(notes: Notes, entry: KeyNode, unit: str) -> Fact | None:
    """Return a range with who says so, from `{low, high, unit, source, grade}` or from one quantity."""
    if not isinstance(entry.value, Mapping):
        text = text_in(notes, entry)
        found = quantity_of(notes, text, place_of(entry), entry.key.text, unit) if text is not None else None
        if found is None:
            return None
        give = found[1] or 0.0
        return Fact(low=found[0] - give, high=found[0] + give, unit=unit, source=OWN_SOURCE, grade=Grade.PRACTICE)
    node = entry.value
    unknown_keys(notes, node, ["low", "high", "unit", *_VOUCHED], f"`{entry.key.text}`")
    written = node.entry("unit")
    said = text_in(notes, written) if written else unit
    low, high = (_end(notes, entry, node, name, said or unit, unit) for name in ("low", "high"))
    if low is None or high is None:
        return None
    if not _ordered(notes, entry, low, high):
        return None
    return Fact(low=low, high=high, unit=unit, **_vouched(notes, node))


def _mowing(notes: Notes, entry: KeyNode, node: Node) -> Mowing | None:
    """Return a range of mowing heights for one climate."""
    if not isinstance(node, Mapping):
        _note_part(notes, entry, node, "climate", "- {climate: …, low: 25, high: 38}")
        return None
    unknown_keys(notes, node, ["climate", "low", "high", "unit", *_VOUCHED], f"`{entry.key.text}`")
    climate, written = node.entry("climate"), node.entry("unit")
    place = printed_in(notes, climate) if climate else "anywhere"
    said = text_in(notes, written) if written else "mm"
    low, high = (_end(notes, entry, node, name, said or "mm", "mm") for name in ("low", "high"))
    if low is None or high is None or place is None:
        return None
    if not _ordered(notes, entry, low, high):
        return None
    return Mowing(climate=place, low_mm=low, high_mm=high, **_vouched(notes, node))


def _end(notes: Notes, entry: KeyNode, node: Mapping, name: str, said: str, unit: str) -> float | None:
    """Return one end of a range in `unit`; a bare number is in the unit that the range says."""
    found = node.entry(name)
    if found is None:
        _note_part(notes, entry, node, name, f"{name}: 100")
        return None
    text = text_in(notes, found)
    if text is None:
        return None
    bare = re.fullmatch(r"\d{1,9}(?:\.\d+)?", text)
    if bare and said == unit:
        return float(text)
    amount = quantity_of(notes, f"{text} {said}" if bare else text, place_of(found), entry.key.text, unit)
    return amount[0] if amount else None


def _ordered(notes: Notes, entry: KeyNode, low: float, high: float) -> bool:
    """Tell whether a range's low end is not over its high one; note one that is."""
    if low <= high:
        return True
    notes.add(
        "bound",
        entry.key.span,
        f"`{entry.key.text}` runs from {low:g} to {high:g}",
        "a range runs from its low end to its high end",
        f"write `low: {high:g}, high: {low:g}`",
    )
    return False


def _note_part(notes: Notes, entry: KeyNode, node: Node, part: str, example: str) -> None:
    """Note a value that lacks a part."""
    notes.add(
        "missing-key",
        entry.key.span if node.span.line == entry.key.span.line else node.span,
        f"`{entry.key.text}` has no `{part}` here",
        "the value cannot be used without it",
        f"write `{example}` in it",
    )
