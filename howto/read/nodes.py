"""What front matter is read into: scalars, lists and mappings, each with its place in the file."""

import re
from collections.abc import Iterator
from dataclasses import dataclass

from howto.span import Located, Span


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
class KeyNode:
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

    entries: tuple[KeyNode, ...]
    span: Span

    def __iter__(self) -> Iterator[KeyNode]:
        """Go through the entries in the order written."""
        return iter(self.entries)

    def entry(self, name: str) -> KeyNode | None:
        """Return the entry of a tidied key, or None."""
        return next((entry for entry in self.entries if entry.name == name), None)


Node = Scalar | Sequence | Mapping


def scalars_located(node: Node | None) -> dict[Span, Located]:
    """Return the place of every letter of every value that stands on one line as it is read."""
    if isinstance(node, Scalar):
        width = node.span.end_column - node.span.column
        shift = {len(node.text): 0, len(node.text) + 2: 1}.get(width)
        if shift is None or not node.text:
            return {}
        columns = range(node.span.column + shift, node.span.column + shift + len(node.text))
        return {node.span: Located(node.span.path, node.text, tuple((node.span.line, each) for each in columns))}
    if isinstance(node, Mapping):
        under: tuple[Node, ...] = tuple(each for entry in node for each in (entry.key, entry.value))
    else:
        under = () if node is None else node.items
    return {span: found for each in under for span, found in scalars_located(each).items()}


def tidy_key(text: str) -> str:
    """Return a key or label as it is compared: small letters, single spaces, no dashes or underscores."""
    return re.sub(r"[\s_\u200b-\u200d\u2060\ufeff-]+", " ", text).strip(" :").casefold()


def is_blank(node: Node | None) -> bool:
    """Tell whether nothing was written: no node, or an empty unquoted scalar."""
    return node is None or (isinstance(node, Scalar) and not node.text.strip())
