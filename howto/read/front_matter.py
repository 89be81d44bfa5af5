"""Front matter and whole YAML files read into nodes: every scalar stays the text that was typed."""

import re
from typing import Any, Final

import yaml

from howto.findings import Finding
from howto.read.nodes import KeyNode, Mapping, Node, Scalar, Sequence
from howto.read.notes import LONGEST, Notes, line_of, lines_of, note_long, short, whole_line
from howto.read.yaml_text import YamlText, fit_for_yaml, shown
from howto.read.yaml_words import explain
from howto.span import SourceText, Span

DEEPEST: Final = 12
MOST_TRIES: Final = 10
MOST_TRIED: Final = 100_000  # characters read again and again
_FENCE: Final = re.compile(r"-{3,}|[—–−-]*—[—–−-]*")
_TOO_FEW: Final = re.compile(r"[-–−]{1,2}")
_KEY: Final = re.compile(r"[^\s#:][^:]{0,40}:(\s|$)")
_NO_LETTER: Final = re.compile("[\x00-\x1f\x7f-\x9f\u2028\u2029\ud800-\udfff\ufffe\uffff]")


def split_front_matter(source: SourceText) -> tuple[Node | None, int, tuple[Finding, ...]]:
    """Return the front matter between its `---` lines, the number of the first body line, and findings.

    The node is None where there is none, or where it cannot be read.
    """
    notes = Notes(source)
    lines = lines_of(source)
    start = next((at for at, line in enumerate(lines) if line.strip()), 0)
    opened = _is_fence(lines[start])
    if not opened:
        opened = bool(_TOO_FEW.fullmatch(lines[start].rstrip()))
        _note_no_start(notes, start, dashes=opened)
        if not opened and not _KEY.match(lines[start]):
            return None, 1, notes.findings
    first = start + opened
    body = next((at for at in range(first, len(lines)) if _looks_like_body(lines[at])), len(lines))
    end = next((at for at in range(first, len(lines)) if _is_fence(lines[at])), None)
    if end is None:
        if opened:
            _note_no_end(notes, start, body)
        return _compose(notes, first, body), body + 1, notes.findings
    return _compose(notes, first, end), end + 2, notes.findings


def parse_yaml(source: SourceText, *, own: bool = False) -> tuple[Node | None, tuple[Finding, ...]]:
    """Return a whole YAML file as nodes, or None where it cannot be read.

    `own` is for the package's data, which the tests hold to the same rules: it takes the parser in C.
    """
    notes = Notes(source)
    if own:
        fit = YamlText(0, list(lines_of(source)))
        root = yaml.compose(source.text, Loader=getattr(yaml, "CSafeLoader", yaml.SafeLoader))
        return None if root is None else _node(notes, fit, root), notes.findings
    lines = lines_of(source)
    start = next((at for at, line in enumerate(lines) if line.strip() and not line.startswith("#")), 0)
    first = start + 1 if _is_fence(lines[start]) else 0
    return _compose(notes, first, len(lines)), notes.findings


def _is_fence(line: str) -> bool:
    """Tell whether a line is `---`, which some phones turn into long dashes."""
    return bool(_FENCE.fullmatch(line.rstrip()))


def _note_no_start(notes: Notes, start: int, *, dashes: bool) -> None:
    """Note a file whose first written line is not `---`."""
    line = lines_of(notes.source)[start]
    if dashes:
        mend = "write this line as `---`"
    elif _KEY.match(line):
        mend = "write a line `---` above this one"
    else:
        mend = "write above this line: `---`, then lines for `title:`, `family:` and `measures:`, then `---`"
    notes.add(
        "front-matter-start",
        whole_line(notes.source, start + 1),
        f"the file starts with `{short(line)}`",
        "the title, the family and the measures stand at the top, between two lines of `---`",
        mend,
    )


def _note_no_end(notes: Notes, start: int, body: int) -> None:
    """Note front matter that is never closed, at the line where the body seems to begin."""
    lines = lines_of(notes.source)
    here = body < len(lines)
    at = body if here else max(at for at in range(len(lines)) if lines[at].strip())
    notes.add(
        "front-matter-end",
        whole_line(notes.source, at + 1),
        "the front matter is not closed above this line" if here else "the front matter is never closed",
        f"line {start + 1} opens it with `---`; a second `---` ends it",
        f"write a line `---` {'above' if here else 'below'} this one",
    )


def _looks_like_body(line: str) -> bool:
    """Tell whether a line reads as the body of a file: a heading, or a sentence that is no key."""
    if line.startswith("##"):
        return True
    return bool(line[:1].isalpha() and not re.match(r"[^:]{1,40}:(\s|$)", line))


class _TooDeep(yaml.MarkedYAMLError):
    """Lists within lists within lists, past all reason."""


class _Fetched(yaml.ScalarNode):
    """A value fetched from another line: noted, and then left out."""


class _Loader(yaml.SafeLoader):
    """Composes nodes, and notes each shorthand of YAML that would hide where a value comes from."""

    def __init__(self, text: str) -> None:
        super().__init__(text)
        self.depth = 0
        self.shorthand: list[tuple[str, str, Any, Any]] = []

    def scan_flow_scalar_non_spaces(self, double: bool, start_mark: Any) -> list[str]:
        """Return what stands in quotes up to a space; an escape that makes no letter is one that is not known."""
        mark = self.get_mark()
        try:
            chunks: list[str] = super().scan_flow_scalar_non_spaces(double, start_mark)
        except (ValueError, OverflowError):  # a number that no character has
            chunks = ["\0"]
        if _NO_LETTER.search("".join(chunks)):
            why = "found unknown escape character"
            raise yaml.scanner.ScannerError("while scanning a double-quoted scalar", start_mark, why, mark)
        return chunks

    def compose_node(self, parent: yaml.Node | None, index: int) -> yaml.Node | None:
        """Compose a node with its anchor and tag set aside."""
        event: Any = self.peek_event()  # type: ignore[no-untyped-call]
        is_alias = isinstance(event, yaml.AliasEvent)
        if is_alias:
            self.get_event()  # type: ignore[no-untyped-call]
            self.shorthand.append(("alias", event.anchor, event.start_mark, event.end_mark))
            return _Fetched("", "", event.start_mark, event.end_mark)
        if event.anchor is not None:
            self.shorthand.append(("anchor", event.anchor, event.start_mark, event.end_mark))
            event.anchor = None
        if event.tag is not None:
            self.shorthand.append(("tag", event.tag, event.start_mark, event.end_mark))
            event.tag = None
        if self.depth >= DEEPEST:
            raise _TooDeep(None, None, "nested too deep", event.start_mark)
        self.depth += 1
        node = super().compose_node(parent, index)
        self.depth -= 1
        return node


def _compose(notes: Notes, first: int, end: int) -> Node | None:
    """Return lines `first` to `end` (from 0, end left out) as nodes.

    A line that cannot be read is noted and left out, so that the rest is still looked at.
    """
    fit = fit_for_yaml(notes, first, end)
    for _ in range(max(1, min(MOST_TRIES, MOST_TRIED // len(fit.text)))):
        loader = _Loader(fit.text)
        try:
            root = loader.get_single_node()
        except yaml.MarkedYAMLError as problem:
            explain(notes, fit, problem)
            continue
        finally:
            loader.dispose()
        for kind, name, start, stop in loader.shorthand:
            _note_shorthand(notes, kind, name, fit.span(notes, start, stop))
        return None if root is None else _node(notes, fit, root)
    return None


def _note_shorthand(notes: Notes, kind: str, name: str, span: Span) -> None:
    """Note an anchor, alias or tag."""
    line = line_of(notes.source, span.line)
    sign = {"alias": "*", "anchor": "&", "tag": "!"}[kind]
    at = line.find(sign, span.column - 1)
    end = at + len(re.match(r"[^\s,\]}]*", line[at:]).group()) if at >= 0 else 0  # type: ignore[union-attr]
    place = Span(span.path, span.line, at + 1, end + 1) if at >= 0 else span
    word = line[at:end] if at >= 0 else f"{sign}{name}"
    mend = {
        "alias": f"write the value itself in place of `{word}`; if the text does start with `*`, put quotes round it",
        "anchor": f"take out `{word}`; if the text does start with `&`, put quotes round it",
        "tag": f"take out `{word}`; if the text does start with `!`, put quotes round it",
    }[kind]
    why = {
        "alias": "`*` fetches a value from another line, so this line would not say what it means",
        "anchor": "`&` names a value so that other lines can fetch it; here each line says its own",
        "tag": "`!` asks for another kind of value; here every value is the text you see",
    }[kind]
    notes.add("shorthand", place, f"`{short(word)}` is written", why, mend)


def _node(notes: Notes, fit: YamlText, root: yaml.Node) -> Node:
    """Return a parsed node as ours."""
    span = fit.span(notes, root.start_mark, root.end_mark)
    if isinstance(root, yaml.ScalarNode):
        return _scalar(notes, root, span)
    if isinstance(root, yaml.SequenceNode):
        return Sequence(tuple(_node(notes, fit, each) for each in root.value if not isinstance(each, _Fetched)), span)
    entries: dict[str, KeyNode] = {}
    for key, value in root.value:
        entry = _entry(notes, fit, key, value)
        if entry is None:
            continue
        first = entries.setdefault(entry.name, entry)
        if first is not entry:
            _note_repeat(notes, entry.key, first.key)
    return Mapping(tuple(entries.values()), span)


def _entry(notes: Notes, fit: YamlText, key: yaml.Node, value: yaml.Node) -> KeyNode | None:
    """Return a key with its value, or None for what is no key here."""
    span = fit.span(notes, key.start_mark, key.end_mark)
    if not isinstance(key, yaml.ScalarNode):
        notes.add(
            "front-matter",
            span,
            "a list or a bracket stands where a key should",
            "a key is one or two words before a colon",
            "write words before the colon, or put quotes round this text",
        )
        return None
    if isinstance(value, _Fetched):
        return None
    if key.value == "<<" and key.style is None:
        notes.add(
            "shorthand",
            span,
            "`<<` is written as a key",
            "`<<` fetches keys from elsewhere, so this file would not say what it means",
            "take out this line and write its keys and values here",
        )
        return None
    return KeyNode(_scalar(notes, key, span), _node(notes, fit, value))


def _scalar(notes: Notes, node: yaml.ScalarNode, span: Span) -> Scalar:
    """Return a text with the author's own signs, without what runs on past all reading."""
    text = shown(node.value)
    if note_long(notes, span, len(text)):
        text = text[:LONGEST]
    return Scalar(text, span, quoted=node.style in ("'", '"'))


def _note_repeat(notes: Notes, again: Scalar, first: Scalar) -> None:
    """Note a key that stands twice in one place."""
    notes.add(
        "repeated-key",
        again.span,
        f"`{again.text}` is written twice",
        f"it already stands on line {first.span.line}, and only one of the two can hold",
        f"take out line {again.span.line} or line {first.span.line}",
        also=first.span,
    )
