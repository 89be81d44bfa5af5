"""A place in a file: what every finding points at."""

from dataclasses import dataclass
from functools import lru_cache
from pathlib import PurePosixPath


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

    def span(self, line: int, column: int = 1, end_column: int | None = None) -> Span:
        """Return a span on `line`; without an end it runs to the last character of the line."""
        end = end_column if end_column is not None else max(len(self.line(line).rstrip()) + 1, column + 1)
        return Span(self.path, line, column, end)

    def find(self, text: str, line: int, after: int = 1) -> Span:
        """Return where `text` stands on `line` from column `after` on; the whole line if it does not."""
        at = self.line(line).find(text, after - 1)
        if at < 0 or not text:
            return self.span(line, after)
        return Span(self.path, line, at + 1, at + 1 + len(text))


@lru_cache(maxsize=64)
def _lines_of(text: str) -> tuple[str, ...]:
    """Return the lines of a text, split once."""
    return tuple(text.split("\n"))
