"""What the YAML parser says, in words a gardener can act on."""

import re
from dataclasses import dataclass
from typing import Final

import yaml

from howto.read.notes import Notes, line_of, short, whole_line
from howto.read.yaml_text import YamlText, hidden_signs, in_quotes
from howto.span import Span


@dataclass(frozen=True, slots=True)
class _Saying:
    """Words for one message of the parser: `at` says whether the problem or its beginning is pointed at."""

    message: str
    rule: str
    what: str
    why: str
    mend: str
    at: str = "problem"


_NO_COLON: Final = _Saying(
    "could not find expected ':'",
    "front-matter",
    "this line has no colon after its key",
    "each line is a `key: value`, or stands under a key that ends in a colon",
    "write a colon and a space after the key, or take out this line",
    at="context",
)
_FURTHER: Final = _Saying(
    "",
    "front-matter",
    "this line is set in further than the one it belongs with",
    "keys that stand together start in the same column",
    "set this line in as far as the line above it",
)
_ESCAPE: Final = _Saying(
    "found unknown escape character",
    "front-matter",
    "a backslash stands in double quotes",
    "in double quotes a backslash changes the character after it, here into one that no page can carry",
    "put single quotes round this text in place of the double ones, and write any `'` in it twice",
)
_SAYINGS: Final = (
    _Saying(
        "but found another document",
        "two-documents",
        "a second `---` stands here",
        "one file holds one set of keys; what follows would not be read",
        "take out this line",
    ),
    _Saying(
        "mapping values are not allowed here",
        "quotes",
        "this colon stands where none can",
        "a line is one `key: value`, and what continues a value has no colon",
        "put quotes round the text that has the colon in it, or write it on one line as `key: value`",
    ),
    _NO_COLON,
    _Saying(
        "while scanning a quoted scalar",
        "front-matter",
        "the quote that opens here is never closed",
        "all that follows would be read as one text",
        "write the same quote at the end of this text",
        at="context",
    ),
    _ESCAPE,
    _Saying(
        "expected ',' or '}'",
        "front-matter",
        "the bracket that opens here is not closed, or a comma is missing in it",
        "`{` and `}` hold `key: value, key: value`",
        "write `}` at the end, and a comma between one `key: value` and the next",
        at="context",
    ),
    _Saying(
        "expected ',' or ']'",
        "front-matter",
        "the bracket that opens here is not closed, or a comma is missing in it",
        "`[` and `]` hold words with commas between them",
        "write `]` at the end, and a comma between one word and the next",
        at="context",
    ),
    _Saying(
        "while scanning an alias",
        "quotes",
        "this text starts with `*` and has no quotes round it",
        "here a value that starts with `*` would fetch another one",
        "put quotes round this text",
        at="context",
    ),
    _Saying(
        "while scanning an anchor",
        "quotes",
        "this text starts with `&` and has no quotes round it",
        "here a value that starts with `&` would name another one",
        "put quotes round this text",
        at="context",
    ),
    _Saying(
        "while scanning a block scalar",
        "quotes",
        "this text starts with `>` or `|` and has no quotes round it",
        "these signs open a text of several lines",
        "put quotes round this text",
        at="context",
    ),
    _Saying(
        "tag",
        "shorthand",
        "this text starts with `!`",
        "`!` asks for another kind of value; here every value is the text you see",
        "take out the `!` and what is joined to it, or put quotes round this text",
        at="context",
    ),
    _Saying(
        "sequence entries are not allowed here",
        "front-matter",
        "a dash stands after a key on the same line",
        "a list starts on the line below its key",
        "move the dash and what follows to a line of its own, set in by two spaces",
    ),
    _Saying(
        "expected <block end>",
        "front-matter",
        "this line does not line up with the lines above it",
        "keys that stand together start in the same column, and so do the dashes of a list",
        "set this line in as far as the first line it belongs with",
    ),
    _Saying(
        "nested too deep",
        "front-matter",
        "lists or keys stand in one another more than 12 deep",
        "nothing on the shelf goes deeper than four",
        "take this part out, or write it flat",
    ),
)
_ELSE: Final = _Saying(
    "",
    "front-matter",
    "this line cannot be read as `key: value`",
    "each line is a `key: value`, with two spaces more for what stands under a key",
    "write it as `key: value`, with quotes round a text that has signs in it",
)


def explain(notes: Notes, fit: YamlText, problem: yaml.MarkedYAMLError) -> None:
    """Note what stopped the parser, and mend the parser's text so that it gets past."""
    said = f"{problem.context or ''}; {problem.problem or ''}"
    saying = next((each for each in _SAYINGS if each.message in said), _ELSE)
    marks = (problem.context_mark, problem.problem_mark) if saying.at == "context" else (problem.problem_mark,)
    mark = next((each for each in marks if each is not None), None) or yaml.Mark("", 0, 0, 0, None, 0)
    if saying.message == "mapping values are not allowed here":
        saying, mark = _misplaced_colon(fit, saying, mark)
    elif saying.message == "expected <block end>" and _is_further(fit, mark):
        saying = _FURTHER
    span, number = _place(notes, fit, mark)
    notes.add(saying.rule, span, saying.what, saying.why, _mend(notes, saying, span))
    line = fit.lines[number]
    if saying is _ESCAPE:
        fit.lines[number] = re.sub(r"\\(?![\"\\])", "/", line)
        return
    whole = saying.rule == "quotes" and mark.line == number
    fit.lines[number] = line[: mark.column] + hidden_signs(line[mark.column :]) if whole else ""


def _misplaced_colon(fit: YamlText, saying: _Saying, mark: yaml.Mark) -> tuple[_Saying, yaml.Mark]:
    """Return what a colon where none can stand comes from: the line above has none, or this line is set in too far."""
    line = fit.lines[mark.line]
    above = next((at for at in range(mark.line - 1, -1, -1) if fit.lines[at].strip()), None)
    if above is None or ":" in line[: mark.column]:
        return saying, mark
    before = fit.lines[above]
    indent = len(before) - len(before.lstrip())
    if ":" in before:
        return _FURTHER, yaml.Mark(mark.name, 0, mark.line, len(line) - len(line.lstrip()), None, 0)
    return _NO_COLON, yaml.Mark(mark.name, 0, above, indent, None, 0)


def _is_further(fit: YamlText, mark: yaml.Mark) -> bool:
    """Tell whether a line is set in further than the line above it."""
    above = next((line for line in reversed(fit.lines[: mark.line]) if line.strip()), "")
    return mark.column > len(above) - len(above.lstrip())


def _place(notes: Notes, fit: YamlText, mark: yaml.Mark) -> tuple[Span, int]:
    """Return where a mark stands in the file, moved up to the last written line, and its line in the parser's text."""
    number = min(mark.line, len(fit.lines) - 1)
    moved = number != mark.line
    while number > 0 and not fit.lines[number].strip():
        number, moved = number - 1, True
    line, column = fit.place(mark)
    if moved:
        return whole_line(notes.source, fit.first + number + 1), number
    length = len(line_of(notes.source, line).rstrip())
    return Span(notes.source.path, line, column, max(length, column) + 1), number


def _mend(notes: Notes, saying: _Saying, span: Span) -> str:
    """Return the mend, with the text to write where it can be told."""
    text = line_of(notes.source, span.line)[span.column - 1 :].strip()
    if saying.mend == "put quotes round this text":
        return f"put quotes round this text: write `{in_quotes(text)}`"
    if saying is _NO_COLON and (found := re.match(r"([A-Za-z ]+?)\s+(\S.*)", text)):
        return (
            f"write a colon and a space after the key, such as `{found[1]}: {short(found[2])}`, or take out this line"
        )
    return saying.mend
