"""Findings as a person reads them in a terminal, and as a program reads them in JSON."""

import json
import re
import textwrap
import unicodedata
from collections import Counter
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from typing import Any

from howto.findings import README, Finding, Severity, in_order
from howto.span import SourceText, Span

COUNTED = {
    Severity.ERROR: ("error", "errors"),
    Severity.WARNING: ("warning", "warnings"),
    Severity.ADVICE: ("piece of advice", "pieces of advice"),
}
COLOURS = {Severity.ERROR: "1;31", Severity.WARNING: "1;33", Severity.ADVICE: "1;36"}
NARROWEST = 40  # columns; a narrower window is treated as this wide
TAB = 4
CUT = "…"
_TIED = "\0"  # stands for a space while text is wrapped; `safe` lets none through


@dataclass(frozen=True, slots=True)
class _Look:
    """How wide the terminal is and whether it shows colours."""

    width: int
    colour: bool

    def paint(self, text: str, code: str) -> str:
        """Return `text` in an ANSI colour where colours are on."""
        return f"\x1b[{code}m{text}\x1b[0m" if self.colour and text else text


def terminal(findings: Iterable[Finding], sources: Mapping[str, SourceText], *, colour: bool, width: int = 100) -> str:
    """Return the findings sorted, each with its line and carets, and a last line that counts them.

    `sources` are the files by the path findings give them; `width` is the terminal's, in columns.
    """
    ordered = in_order(findings)
    body = listed(ordered, sources, colour=colour, width=width)
    return f"{body}\n{summary(ordered)}\n" if body else f"{summary(ordered)}\n"


def listed(
    findings: Iterable[Finding], sources: Mapping[str, SourceText], *, colour: bool = False, width: int = 100
) -> str:
    """Return the findings sorted, a blank line between two, without the counting line; empty for none."""
    look = _Look(max(width, NARROWEST), colour)
    return "\n".join(_one(finding, sources, look) for finding in in_order(findings))


def summary(findings: Iterable[Finding]) -> str:
    """Return the line that counts them, such as `3 findings: 1 error, 2 warnings.`, full stop included."""
    counts = Counter(finding.severity for finding in findings)
    if not counts:
        return "No findings."
    total = counts.total()
    parts = (f"{counts[each]} {names[counts[each] != 1]}" for each, names in COUNTED.items() if counts[each])
    return f"{total} finding{'s' if total != 1 else ''}: {', '.join(parts)}."


def as_json(findings: Iterable[Finding]) -> str:
    """Return the findings as one JSON object, for tools: same findings, same text.

    `{"findings": […], "counts": {"error": n, "warning": n, "advice": n}}`. Each finding has, in this order,
    `rule severity path line column end_column text what why mend reference also`; `also` is null or an object
    with `path line column end_column`. Lines and columns count from 1, in characters; `end_column` is one
    past the last character. Letters beyond ASCII are escaped, so any console can carry them.
    """
    ordered = in_order(findings)
    counts = Counter(finding.severity for finding in ordered)
    whole = {
        "findings": [_as_object(finding) for finding in ordered],
        "counts": {str(severity): counts[severity] for severity in Severity},
    }
    return json.dumps(whole, indent=2)


def _as_object(finding: Finding) -> dict[str, Any]:
    return {
        "rule": finding.rule,
        "severity": str(finding.severity),
        **_place(finding.span),
        "text": finding.text,
        "what": finding.what,
        "why": finding.why,
        "mend": finding.mend,
        "reference": finding.reference,
        "also": _place(finding.also) if finding.also else None,
    }


def _place(span: Span) -> dict[str, Any]:
    return {"path": span.path, "line": span.line, "column": span.column, "end_column": span.end_column}


def _one(finding: Finding, sources: Mapping[str, SourceText], look: _Look) -> str:
    span = finding.span
    head = f"{safe(span.path)}:{span.line}:{span.column}: "
    code = COLOURS[finding.severity]
    lines = [f"{head}{look.paint(str(finding.severity), code)} {safe(finding.rule)}: {safe(finding.what)}"]
    lines += _excerpt(span, sources.get(span.path), look, code)
    why = finding.why
    if finding.reference and finding.reference != README and finding.reference not in why:
        why = f"{why} ({finding.reference})"
    lines += _labelled("why:", why, look)
    lines += _labelled("mend:", finding.mend, look)
    if finding.also:
        there = sources.get(finding.also.path)
        lines += _labelled("also:", _elsewhere(finding.also, there), look)
    return "\n".join(lines) + "\n"


def _elsewhere(span: Span, source: SourceText | None) -> str:
    """Return a second place, with what stands there."""
    text = source.line(span.line).strip() if source else ""
    place = f"{span.path}:{span.line}:{span.column}"
    return f"{place} | {text}" if text else place


def _labelled(label: str, text: str, look: _Look) -> list[str]:
    """Return the text after its label, wrapped so that it stays in its own column."""
    room = look.width - 8
    whole = re.sub(r"`[^`]*`", lambda quoted: _unbroken(quoted[0], room), safe(text))
    wrapped = textwrap.wrap(whole, room, break_long_words=False, break_on_hyphens=False)
    return [f"  {label if not row else '':<6}{line.replace(_TIED, ' ')}" for row, line in enumerate(wrapped)]


def _unbroken(quoted: str, room: int) -> str:
    """Return words to be typed with their spaces tied, so that a line can be copied whole where it has room."""
    return quoted.replace(" ", _TIED) if len(quoted) <= room else quoted


def _excerpt(span: Span, source: SourceText | None, look: _Look, code: str) -> list[str]:
    """Return the source line with its number, and carets under the stretch; nothing without the file."""
    if source is None:
        return []
    number = str(span.line)
    room = look.width - len(number) - 5
    cells = _cells(source.line(span.line).rstrip())
    start = min(span.column - 1, len(cells))
    end = max(min(span.end_column - 1, len(cells)), start)
    first, last = _window(cells, start, end, room)
    before = CUT * (first > 0) + "".join(cells[first:start])
    under = "".join(cells[start : min(end, last)])
    after = "".join(cells[max(start, min(end, last)) : last]) + CUT * (last < len(cells))
    gap = " " * columns(before)
    carets = "^" * max(columns(under), 1)
    return [f"  {number} | {before}{under}{after}".rstrip(), f"  {' ' * len(number)} | {gap}{look.paint(carets, code)}"]


def _window(cells: list[str], start: int, end: int, room: int) -> tuple[int, int]:
    """Return the first and past-last cell to show so that a long line keeps its stretch in sight."""
    if sum(columns(cell) for cell in cells) <= room:
        return 0, len(cells)
    room -= 2  # a cut mark at each end
    first = start
    used = 0
    lead = room // 3 if columns("".join(cells[start:end])) > room // 2 else room // 2
    while first > 0 and used + columns(cells[first - 1]) <= lead:
        first -= 1
        used += columns(cells[first])
    last = start
    while last < len(cells) and used + columns(cells[last]) <= room:
        used += columns(cells[last])
        last += 1
    while first > 0 and used + columns(cells[first - 1]) <= room:
        first -= 1
        used += columns(cells[first])
    return first, last


def _cells(line: str) -> list[str]:
    """Return what to show for each character of a line: tabs as spaces, unseen characters by name."""
    shown: list[str] = []
    at = 0
    for character in line:
        cell = " " * (TAB - at % TAB) if character == "\t" else _shown(character)
        shown.append(cell)
        at += columns(cell)
    return shown


def safe(text: str) -> str:
    """Return text on one line in which nothing can steer the terminal."""
    return "".join(" " if character in "\n\r\t" else _shown(character) for character in text)


def _shown(character: str) -> str:
    """Return the character, or a visible stand-in where it would move, hide or turn text."""
    kind = unicodedata.category(character)
    if kind == "Zs":
        return " "
    if kind not in {"Cc", "Cf", "Cs", "Co", "Zl", "Zp"} or character == "\u200d":
        return character
    code = ord(character)
    if code < 0x20:
        return chr(0x2400 + code)  # the Unicode picture of a control character
    return "␡" if code == 0x7F else f"<U+{code:04X}>"


def columns(text: str) -> int:
    """Return how many terminal columns a text takes: wide letters two, marks over letters none."""
    return sum(_columns(character) for character in text)


def _columns(character: str) -> int:
    if unicodedata.combining(character) or unicodedata.category(character) in {"Mn", "Me", "Cf"}:
        return 0
    return 2 if unicodedata.east_asian_width(character) in {"W", "F"} else 1
