"""The crew's own words for what families say in English: by language, an English phrase and how it is told."""

import re
from collections.abc import Mapping as Table
from typing import Final

from howto.read.nodes import KeyNode, Mapping, is_blank
from howto.read.notes import Notes, short
from howto.read.values import as_mapping, note_braces, place_of, sentence_in

_LANGUAGE: Final = re.compile(r"[a-z]{2,3}")
_SLOT: Final = "{}"
EXAMPLE: Final = "`words:` and under it `  es: {finished width: anchura final}`"


def words_of(notes: Notes, entry: KeyNode) -> Table[str, Table[str, str]] | None:
    """Return the crew's words by language, each phrase in small letters; those that cannot be used are noted."""
    if is_blank(entry.value):
        return None
    node = as_mapping(notes, entry.value, "`words`", EXAMPLE, entry.key.span)
    found: dict[str, Table[str, str]] = {}
    for each in node or ():
        language = each.key.text.strip()
        if not _LANGUAGE.fullmatch(language):
            notes.add(
                "unknown-word",
                each.key.span,
                f"`{short(language)}` does not say which language by its letters",
                "words are kept by language: two or three small letters",
                "write the letters of the language, such as `es:` or `mi:`",
            )
        elif not is_blank(each.value):
            own = as_mapping(notes, each.value, f"`{language}` under `words`", EXAMPLE, each.key.span)
            found[language] = _phrases(notes, own) if own else {}
    return found


def _phrases(notes: Notes, node: Mapping) -> dict[str, str]:
    """Return phrases and how they are told; each side has as many places for amounts as the other."""
    found: dict[str, str] = {}
    for each in node:
        text = sentence_in(notes, each)
        if text is None:
            continue
        note_braces(notes, text.replace(_SLOT, ""), place_of(each))
        here, there = each.key.text.count(_SLOT), text.count(_SLOT)
        if here != there:
            notes.add(
                "value",
                place_of(each),
                f"`{short(text)}` has {there} `{{}}` and `{short(each.key.text)}` has {here}",
                "each `{}` stands for an amount, which is printed in every language",
                f"write `{{}}` {here} times after the colon" if here else "take the `{}` out",
            )
            continue
        found[" ".join(each.key.text.split()).casefold()] = text
    return found
