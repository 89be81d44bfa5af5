"""YAML as it is typed on a phone, made fit for the parser one character for one, so that places stay true."""

import re
from dataclasses import dataclass, field
from typing import Final

import yaml

from howto.read.notes import Notes, lines_of, short
from howto.span import Span

_SPACES: Final = str.maketrans(
    dict.fromkeys("\u00a0\u2000\u2001\u2002\u2003\u2004\u2005\u2006\u2007\u2008\u2009\u200a\u202f\u205f\u3000", " ")
    | dict.fromkeys("\u200b\u200c\u200d\u2060\ufeff", " ")
)
# Signs that would mean something to YAML, and the codes of no character that stand for them while it is parsed.
_SIGNS: Final = ":@`%[]{}\"'#*&!|>?,-"
_HIDE: Final = {sign: chr(0xFDD0 + number) for number, sign in enumerate(_SIGNS)}
_SHOW: Final = str.maketrans({hidden: sign for sign, hidden in _HIDE.items()})
_UNPRINTED: Final = re.compile("[^\t\x20-\x7e\xa0-\u2027\u202a-\ud7ff\ue000-\ufffd\U00010000-\U0010ffff]")
_PAIR: Final = re.compile(
    r"(?P<lead>\s*(?:- +)*)(?P<key>[^\s#\"'\[\]{}&*!|>%@`,?:-][^:#]*?)(?P<gap> *: +)(?P<value>\S.*)"
)
_ITEM: Final = re.compile(r"(?P<lead>\s*(?:- +)+)(?P<value>\S.*)")
_CURLY: Final = re.compile(r"“[^“”\"\\]*”|‘[^‘’'\\]*’")
_COLOUR: Final = re.compile(r"#[0-9A-Fa-f]{3,8}(?![^\s])")
_QUOTED: Final = re.compile(r"\"(?:[^\"\\]|\\.)*\"|'(?:[^']|'')*'")
_IN_QUOTES: Final = re.compile(rf"(?P<value>{_QUOTED.pattern}|{_CURLY.pattern}) +#.*")
_IN_BRACKETS: Final = re.compile(rf"(?:{_QUOTED.pattern}|[^#]|(?<! )#)*")
_LONGEST: Final = 2000  # a longer line is left to the parser as it stands
_CLOSE: Final = {"[": "]", "{": "}", '"': '"', "'": "'"}


@dataclass(slots=True)
class YamlText:
    """Lines made fit for the parser: where they start in the file, and how far tabs pushed each to the right."""

    first: int
    lines: list[str] = field(default_factory=list)
    pushed: dict[int, int] = field(default_factory=dict)

    @property
    def text(self) -> str:
        """The lines as the parser takes them."""
        return "\n".join(self.lines) + "\n"

    def place(self, mark: yaml.Mark) -> tuple[int, int]:
        """Return the line and column in the file, from 1, of a place in the parser's text."""
        return self.first + mark.line + 1, max(1, mark.column + 1 - self.pushed.get(mark.line, 0))

    def span(self, notes: Notes, start: yaml.Mark, end: yaml.Mark) -> Span:
        """Return the span between two marks, cut at the end of its first line."""
        line, column = self.place(start)
        last, stop = self.place(end)
        if last != line:
            lines = lines_of(notes.source)
            stop = len(lines[line - 1].rstrip()) + 1 if line <= len(lines) else column + 1
        return Span(notes.source.path, line, column, max(stop, column + 1))


def shown(text: str) -> str:
    """Return a parsed scalar with the author's own signs back in place."""
    return text.translate(_SHOW).strip()


def in_quotes(text: str) -> str:
    """Return a text with quotes round it that YAML reads back as the same text."""
    plain = '"' not in text and "\\" not in text
    return f'"{text}"' if plain else "'" + text.replace("'", "''") + "'"


def hidden_signs(text: str) -> str:
    """Return a text that YAML reads as one plain value, whatever signs are in it."""
    return "".join(_HIDE.get(each, each) for each in text)


def fit_for_yaml(notes: Notes, first: int, end: int) -> YamlText:
    """Return lines `first` to `end` (from 0, end left out) for the parser; note tabs and text that needs quotes."""
    fit = YamlText(first)
    over: _Over | None = None
    for number, raw in enumerate(lines_of(notes.source)[first:end]):
        line = _without_tabs(notes, fit, number, raw)
        if over is not None and not over.ends_before(line):
            over = None if over.ends_with(line) else over
        elif len(line) <= _LONGEST:
            line, over = _line(notes, fit, number, line)
        else:
            over = None
        fit.lines.append(line)
    return fit


@dataclass(frozen=True, slots=True)
class _Over:
    """A value that runs over several lines: until its bracket or quote closes, or until a line set in no further."""

    close: str = ""
    indent: int = -1

    def ends_before(self, line: str) -> bool:
        """Tell whether this line no longer belongs to the value."""
        return not self.close and bool(line.strip()) and len(line) - len(line.lstrip()) <= self.indent

    def ends_with(self, line: str) -> bool:
        """Tell whether this line is the value's last."""
        return bool(self.close) and self.close in line


def _without_tabs(notes: Notes, fit: YamlText, number: int, raw: str) -> str:
    """Return a line with plain spaces; tabs that set it in are noted and read as two spaces each."""
    line = _UNPRINTED.sub(" ", raw).translate(_SPACES)
    rest = line.lstrip(" \t")
    if not rest:
        return ""
    lead = line[: len(line) - len(rest)]
    tabs = lead.count("\t")
    if tabs:
        fit.pushed[number] = tabs
        place = fit.first + number + 1
        notes.add(
            "tab",
            Span(notes.source.path, place, 1, len(lead) + 1),
            "a tab sets this line in",
            "tabs are as wide as each program likes, so it cannot be told what the line stands under",
            "write two spaces in place of each tab at the start of the line",
        )
    return lead.replace("\t", "  ") + rest.replace("\t", " ")


def _line(notes: Notes, fit: YamlText, number: int, line: str) -> tuple[str, _Over | None]:
    """Return a line fit for the parser, and what tells where a value that runs over several lines ends."""
    found = _PAIR.fullmatch(line) or _ITEM.fullmatch(line)
    if found is None:
        return line, None
    start, value = found.start("value"), found["value"].rstrip()
    if re.match(r"#(?: |$)", value):  # a note alone, after a key whose lines stand below it
        return line, None
    value = _without_comment(value)
    kept = _kept(value)
    if kept is None and (hidden := _hidden(value, keyed="key" in found.groupdict())):
        _note_quotes(notes, fit, number, start, value, hidden)
        kept = hidden
    if kept is not None:
        return line[:start] + kept + line[start + len(value) :], None
    if re.fullmatch(r"[|>][-+0-9]{0,2}", value):
        return line, _Over(indent=len(line) - len(line.lstrip()))
    close = _CLOSE.get(value[0])
    open_ended = close is not None and (len(value) == 1 or not value.endswith(close))
    return line, _Over(close=close) if close and open_ended else None


def _without_comment(value: str) -> str:
    """Return a value without the comment that stands after it; a `#` inside quotes is part of the text."""
    quoted = _IN_QUOTES.fullmatch(value)
    if quoted:
        return quoted["value"]
    if value[0] in "[{":
        return _IN_BRACKETS.match(value).group().rstrip()  # type: ignore[union-attr]
    return value if value[0] in "\"'" else re.split(r" #(?= |$)", value)[0].rstrip()


def _kept(value: str) -> str | None:
    """Return a value that is clear as it stands but not to YAML, such as one in curly quotes or a bare colour."""
    if curly := _CURLY.fullmatch(value):
        quote = '"' if value[0] == "“" else "'"
        return f"{quote}{curly.group()[1:-1]}{quote}"
    return _HIDE["#"] + value[1:] if _COLOUR.match(value) else None


def _note_quotes(notes: Notes, fit: YamlText, number: int, start: int, value: str, hidden: str) -> None:
    """Note a value that needs quotes round it."""
    column = start + 1 - fit.pushed.get(number, 0)
    place = Span(notes.source.path, fit.first + number + 1, column, column + len(value))
    seen = next(sign for sign, mark in zip(value, hidden, strict=True) if sign != mark)
    name = "a colon" if seen == ":" else f"`{seen}`"
    notes.add(
        "quotes",
        place,
        f"`{short(value)}` has {name} in it and no quotes round it",
        f"without quotes {name} here starts something new, and the rest would be lost",
        f"put quotes round this text: write `{in_quotes(value)}`",
    )


def _hidden(value: str, *, keyed: bool) -> str | None:
    """Return the value with the signs hidden that would break it, or None where nothing would."""
    sign = value[0]
    if sign in "@`%":
        return _HIDE[sign] + re.sub(r":(?=\s|$)", _HIDE[":"], value[1:])
    if sign in _CLOSE:
        whole = value.endswith(_CLOSE[sign]) if sign in "[{" else _QUOTED.fullmatch(value)
        if whole or _CLOSE[sign] not in value[1:]:
            return None
        return hidden_signs(value)
    if sign in "&*!":
        return None
    hidden = value.replace(" #", f" {_HIDE['#']}")  # a note has a space after its `#`; here the text has one
    if keyed:
        hidden = re.sub(r":(?=\s|$)", _HIDE[":"], hidden)
    return hidden if hidden != value else None
