"""Prose as read: runs of plain, strong and emphasised words with their place, and how to part it at a word."""

import re
from dataclasses import dataclass, field, replace
from typing import Final

from howto.span import NOWHERE, Located, Span

_SENTENCE: Final = re.compile(r"(?<=[.!?])[\"”’)]?\s+(?=\S)")
_SHORTENED: Final = re.compile(
    r"(?:\b(?:e\.g|i\.e|etc|approx|no|vs|cf|max|min|dia|incl|fig|p|sp|subsp|var|cv|St)|\b[A-Z])\.$"
)
_LOOK_BACK: Final = 10  # letters: more than a shortened word has


@dataclass(frozen=True, slots=True)
class Piece:
    """A stretch of words in one style, with the line and column of each letter."""

    text: str
    strong: bool = False
    emphasis: bool = False
    places: tuple[tuple[int, int], ...] = field(default=(), compare=False, repr=False)


@dataclass(frozen=True, slots=True)
class Passage:
    """A paragraph or item: its pieces, and where its first line stands."""

    pieces: tuple[Piece, ...]
    span: Span

    @property
    def text(self) -> str:
        """The words without their style."""
        return "".join(piece.text for piece in self.pieces)

    @property
    def located(self) -> Located:
        """The words with the place of each letter."""
        places = (place for piece in self.pieces for place in piece.places or (NOWHERE,) * len(piece.text))
        return Located(self.span.path, self.text, tuple(places))

    def part(self, start: int, end: int | None = None) -> "Passage":
        """Return the characters from `start` to `end`, without spaces at either side.

        The span moves along the line while the part starts on it.
        """
        text = self.text
        stop = len(text) if end is None else end
        start += len(text[start:stop]) - len(text[start:stop].lstrip())
        stop -= len(text[start:stop]) - len(text[start:stop].rstrip())
        pieces, at = [], 0
        for piece in self.pieces:
            cut = slice(max(0, start - at), max(0, stop - at))
            if piece.text[cut]:
                pieces.append(replace(piece, text=piece.text[cut], places=piece.places[cut]))
            at += len(piece.text)
        return Passage(tuple(pieces), self.span)

    def followed_by(self, other: "Passage") -> "Passage":
        """Return these words with others after them, at the place of the first."""
        between = (Piece(" "),) if self.text else ()
        return Passage((*self.pieces, *between, *other.pieces), self.span if self.text else other.span)


def lead_of(passage: Passage) -> tuple[str, int]:
    """Return the bold lead and where it ends; without one an empty text and 0."""
    end = 0
    for piece in passage.pieces:
        if not piece.strong:
            break
        end += len(piece.text)
    return " ".join(passage.text[:end].split()), end


def first_sentence(text: str) -> int:
    """Return where the first sentence of a text ends; the whole length where there is but one."""
    for found in _SENTENCE.finditer(text):
        if not _SHORTENED.search(text[max(0, found.start() - _LOOK_BACK) : found.start()]):
            return found.start()
    return len(text)


def split_label(passage: Passage) -> tuple[str, Passage] | None:
    """Return what stands before the first colon and the rest, or None where no colon parts them."""
    text = passage.text
    found = re.search(r"[:：](?=\s|$|\D)", text)
    if found is None or not text[: found.start()].strip() or "{" in text[: found.start()]:
        return None
    return " ".join(text[: found.start()].split()), passage.part(found.end())
