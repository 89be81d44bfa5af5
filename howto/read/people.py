"""The people of a crew read: apprentices, and what they have been signed off for."""

from typing import Final

from howto.findings import Finding
from howto.model.shelf import Person, SignOff
from howto.read.front_matter import parse_yaml
from howto.read.header import LEVELS
from howto.read.nodes import KeyNode, Mapping, Node, Scalar, Sequence, is_blank
from howto.read.notes import Notes, whole_line
from howto.read.values import date_in, place_of, printed_in, text_in, unknown_keys, whole_in
from howto.span import SourceText, Span

KEYS: Final = ("name", "level", "signed off")
SIGN_OFF_KEYS: Final = ("technique", "on", "by", "version")


def people_of(source: SourceText) -> tuple[tuple[Person, ...], tuple[Finding, ...]]:
    """Return the people a text lists, one `- name:` each."""
    node, front = parse_yaml(source)
    notes = Notes(source)
    if isinstance(node, Mapping) and len(node.entries) == 1 and node.entries[0].name == "people":
        node = node.entries[0].value
    if is_blank(node):
        return (), front
    people: list[Person] = []
    for item in _items(node):
        if isinstance(item, Mapping):
            person = _person(notes, item)
            people += [person] if person else []
            continue
        notes.add(
            "value",
            item.span if isinstance(item, Scalar) else whole_line(source, item.span.line),
            "this is not a person with their keys",
            "each person starts with a dash and their name",
            "write `- name:` and the name, and the other keys below it, set in by two spaces",
        )
    return tuple(people), (*front, *notes.findings)


def _items(node: Node | None) -> tuple[Node, ...]:
    """Return the items of a list; what is no list is its own one item."""
    if isinstance(node, Sequence):
        return node.items
    return () if node is None else (node,)


def _person(notes: Notes, node: Mapping) -> Person | None:
    """Return one person; None, noted, without a name."""
    meant = unknown_keys(notes, node, KEYS, "a person")
    name, level, signed = (node.entry(key) for key in KEYS)
    if name is None:
        if "name" not in meant:
            _note_missing(notes, node, "this person has no `name`", "name: Sam")
        return None
    text = printed_in(notes, name)
    if text is None:
        return None
    items = _items(signed.value) if signed and not is_blank(signed.value) else ()
    found = [each for item in items if (each := _sign_off(notes, item))]
    return Person(
        name=text,
        level=(whole_in(notes, level, *LEVELS) if level else None) or 1,
        signed_off=tuple(each for each, _ in found),
        spans={"name": place_of(name), **{f"signed_off[{at}]": span for at, (_, span) in enumerate(found)}},
    )


def _sign_off(notes: Notes, node: Node) -> tuple[SignOff, Span] | None:
    """Return one sign-off and where its technique stands; None, noted, without its technique and day."""
    if not isinstance(node, Mapping):
        _note_missing(notes, node, "this sign-off has no `on`", "{technique: clip-a-ball, on: 2026-05-01}")
        return None
    meant = unknown_keys(notes, node, SIGN_OFF_KEYS, "a sign-off")
    technique, on, by, version = (node.entry(key) for key in SIGN_OFF_KEYS)
    for key, entry, line in (("technique", technique, "technique: clip-a-ball"), ("on", on, "on: 2026-05-01")):
        if entry is None and key not in meant:
            _note_missing(notes, node, f"this sign-off has no `{key}`", line)
    if technique is None or on is None:
        return None
    name, day = text_in(notes, technique), date_in(notes, on)
    if name is None or day is None:
        return None
    return SignOff(technique=name, on=day, by=_text(notes, by), version=_text(notes, version)), place_of(technique)


def _text(notes: Notes, entry: KeyNode | None) -> str:
    """Return the text of an entry that may be left out."""
    return "" if entry is None else printed_in(notes, entry) or ""


def _note_missing(notes: Notes, node: Node, what: str, line: str) -> None:
    """Note a part that must be there."""
    span: Span = node.entries[0].key.span if isinstance(node, Mapping) and node.entries else node.span
    notes.add("missing-key", span, what, "a name, a technique and a day say who was shown what", f"write `{line}` here")
