"""A place in a file: what every finding points at."""

from dataclasses import dataclass
from functools import lru_cache
from pathlib import PurePosixPath

NOWHERE = (0, 0)


@dataclass(frozen=True, slots=True)
class Span:
    """A stretch of one line, counted from 1 in characters; `end_column` is one past the last character."""

    path: str
    line: int = 1
    column: int = 1
    end_column: int = 1


@dataclass(frozen=True, slots=True)
class SourceText:
    """A file's text with each line end one newline, and the name findings give it."""

    path: str
    text: str

    @property
    def lines(self) -> tuple[str, ...]:
        """The lines without their ends; an empty file has one empty line."""
        return _lines_of(self.text)

    @property
    def stem(self) -> str:
        """The file's name without folders or ending: a technique's id."""
        return PurePosixPath(self.path).stem

    def line(self, number: int) -> str:
        """Return line `number` (from 1), or an empty text past the end."""
        lines = self.lines
        return lines[number - 1] if 0 < number <= len(lines) else ""


@lru_cache(maxsize=64)
def _lines_of(text: str) -> tuple[str, ...]:
    """Return the lines of a text, split once."""
    return tuple(text.split("\n"))


@dataclass(frozen=True, slots=True)
class Located:
    """Some words as read, and the line and column of each letter; NOWHERE for one that stands in no file."""

    path: str
    text: str
    places: tuple[tuple[int, int], ...]

    def span_of(self, words: str) -> Span | None:
        """Return where words stand that are all on one line; None where they are not."""
        start = self.text.find(words)
        if start < 0 or not words:
            return None
        (line, column), (last, end) = self.places[start], self.places[start + len(words) - 1]
        return Span(self.path, line, column, end + 1) if line == last > 0 else None
