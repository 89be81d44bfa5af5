"""What front matter is read into: scalars, lists and mappings, each with its place in the file."""

import re
from collections.abc import Iterator
from dataclasses import dataclass

from howto.span import Span


@dataclass(frozen=True, slots=True)
class Scalar:
    """One value as the author typed it; `quoted` when it stood in quotes."""

    text: str
    span: Span
    quoted: bool = False


@dataclass(frozen=True, slots=True)
class Sequence:
    """A list; `span` is where its first line begins."""

    items: "tuple[Node, ...]"
    span: Span


@dataclass(frozen=True, slots=True)
class Entry:
    """A key and what stands under it."""

    key: Scalar
    value: "Node"

    @property
    def name(self) -> str:
        """The key as it is looked up: small letters, single spaces, no dashes or underscores."""
        return tidy_key(self.key.text)


@dataclass(frozen=True, slots=True)
class Mapping:
    """Keys with their values, in the order written; a key stands here once."""

    entries: tuple[Entry, ...]
    span: Span

    def __iter__(self) -> Iterator[Entry]:
        """Go through the entries in the order written."""
        return iter(self.entries)

    def entry(self, name: str) -> Entry | None:
        """Return the entry of a tidied key, or None."""
        return next((entry for entry in self.entries if entry.name == name), None)


Node = Scalar | Sequence | Mapping


def tidy_key(text: str) -> str:
    """Return a key or label as it is compared: small letters, single spaces, no dashes or underscores."""
    return re.sub(r"[\s_\u200b-\u200d\u2060\ufeff-]+", " ", text).strip(" :").casefold()


def is_blank(node: Node | None) -> bool:
    """Tell whether nothing was written: no node, or an empty unquoted scalar."""
    return node is None or (isinstance(node, Scalar) and not node.text.strip())
