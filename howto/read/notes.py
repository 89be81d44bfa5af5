"""The findings of one file while it is read, and the nearest known word to one that is not known."""

from collections.abc import Iterable
from difflib import SequenceMatcher, get_close_matches
from typing import Final

from howto.findings import README, Finding, Severity
from howto.read.nodes import tidy_key
from howto.span import SourceText, Span

HALF_SURE: Final = 0.6  # of the letters of two words in common and in order
SURE: Final = 0.8  # the same, where they start with different letters
LONGEST: Final = 2000  # characters in one paragraph, item or value: ours, some 350 words


def lines_of(source: SourceText) -> tuple[str, ...]:
    """Return the lines of a file."""
    return source.lines


def line_of(source: SourceText, number: int) -> str:
    """Return line `number` (from 1), or an empty text past the end."""
    lines = lines_of(source)
    return lines[number - 1] if 0 < number <= len(lines) else ""


def whole_line(source: SourceText, number: int) -> Span:
    """Return the span of a line from its first character that is not a space to its last."""
    line = line_of(source, number)
    start = len(line) - len(line.lstrip())
    return Span(source.path, number, start + 1, max(len(line.rstrip()), start + 1) + 1)


class Notes:
    """The findings of one file, gathered in the order they are met."""

    def __init__(self, source: SourceText) -> None:
        self.source = source
        self.found: list[Finding] = []

    def add(
        self,
        rule: str,
        span: Span,
        what: str,
        why: str,
        mend: str,
        *,
        severity: Severity = Severity.ERROR,
        also: Span | None = None,
    ) -> None:
        """Note one observation at a place in this file."""
        text = line_of(self.source, span.line) if span.path == self.source.path else ""
        self.found.append(Finding(f"file.{rule}", severity, span, text, what, why, mend, reference=README, also=also))

    @property
    def findings(self) -> tuple[Finding, ...]:
        """What was noted so far."""
        return tuple(self.found)


def note_long(notes: Notes, span: Span, length: int) -> bool:
    """Note words that run on past all reading; tell whether they do."""
    if length <= LONGEST:
        return False
    notes.add(
        "too-long",
        span,
        f"these words run on for {length} characters",
        f"nobody reads on through so many, and no page has room for them; {LONGEST} are the most",
        f"say it in at most {LONGEST} characters, or move part of it to a line or paragraph of its own",
    )
    return True


def nearest(word: str, known: Iterable[str]) -> str | None:
    """Return the known word that `word` most likely stands for, or None where none is near."""
    tidied = {tidy_key(each): each for each in known}
    meant = tidy_key(word)[:80]
    close = [each for each in get_close_matches(meant, list(tidied), n=3, cutoff=HALF_SURE) if _is_slip(meant, each)]
    swapped = next((each for each in close if sorted(each) == sorted(meant)), None)  # `shpae` is no slip for `share`
    return tidied[swapped or close[0]] if close else None


def _is_slip(typed: str, word: str) -> bool:
    """Tell whether a word may be a slip for another: `lemon` is none for `almond`, `tree width` for `tree count`."""
    if _alike(typed, word) >= SURE:
        return True
    pairs = list(zip(typed.split(), word.split(), strict=False))
    shared = len(typed.split()) == len(word.split()) and any(one == two for one, two in pairs)
    return typed[:1] == word[:1] and not (shared and any(_alike(*pair) < HALF_SURE for pair in pairs))


def _alike(typed: str, word: str) -> float:
    """Return the share of letters that two words have in common and in order."""
    return SequenceMatcher(None, word, typed).ratio()


def listed(words: Iterable[str]) -> str:
    """Return words as a reader sees them: `a`, `b` or `c`."""
    quoted = [f"`{word}`" for word in words]
    if len(quoted) < 2:
        return "".join(quoted)
    return f"{', '.join(quoted[:-1])} or {quoted[-1]}"


def short(text: str, most: int = 40) -> str:
    """Return a text on one line, cut at `most` characters for quoting in a finding."""
    line = " ".join(text.split())
    return line if len(line) <= most else line[: most - 1].rstrip() + "…"
