import pytest

from howto.findings import Finding
from howto.read.front_matter import parse_yaml, split_front_matter
from howto.read.nodes import Mapping, Node, Scalar, Sequence
from howto.span import SourceText
from tests.support.reading import told


def front(text: str) -> tuple[Node | None, int, tuple[Finding, ...]]:
    return split_front_matter(SourceText("a.md", text))


def only(text: str) -> Finding:
    """Return the one finding of a front matter of these lines."""
    (finding,) = front(f"---\n{text}\n---\n")[2]
    return finding


def flat(node: Node | None) -> object:
    """Return a node as plain texts, lists and dicts."""
    if isinstance(node, Mapping):
        return {entry.key.text: flat(entry.value) for entry in node}
    if isinstance(node, Sequence):
        return [flat(item) for item in node.items]
    return node.text if node else None


def test_front_matter_stands_between_two_lines_of_dashes() -> None:
    node, first_line, findings = front("---\ntitle: Clip a ball\nlevel: 1\n---\nWords.\n")
    assert flat(node) == {"title": "Clip a ball", "level": "1"}
    assert (first_line, findings) == (5, ())


def test_empty_lines_above_and_long_dashes_from_a_phone_are_taken() -> None:
    node, first_line, findings = front("\n\n—\ntitle: x\n—-  \nWords.\n")
    assert (flat(node), first_line, findings) == ({"title": "x"}, 6, ())


# Worked examples of a publishing reference: YAML 1.1 guesses (yaml.org, YAML 1.1 types, 2005) left unmade.
@pytest.mark.parametrize("text", ["NO", "1.10", "12:30", "010", "yes", "1e3", "2024-01-02", "~", "0x1F", "1_000"])
def test_every_scalar_stays_the_text_that_was_typed(text: str) -> None:
    node, _, findings = front(f"---\na: {text}\n---\n")
    assert (flat(node), findings) == ({"a": text}, ())


def test_an_empty_value_is_an_empty_text() -> None:
    assert flat(front("---\na:\nb: ''\n---\n")[0]) == {"a": "", "b": ""}


# PyYAML issue 165 (github.com/yaml/pyyaml, 2016): a repeated key is taken silently; here it is a finding.
def test_a_repeated_key_names_both_lines() -> None:
    node, findings = parse_yaml(SourceText("a.yaml", "a: 1\nb: 2\na: 3\n"))
    (finding,) = findings
    assert (finding.rule, finding.span.line, finding.also and finding.also.line) == ("file.repeated-key", 3, 1)
    assert finding.mend == "take out line 3 or line 1"
    assert flat(node) == {"a": "1", "b": "2"}


def test_a_key_repeated_in_other_capitals_or_spaces_is_repeated() -> None:
    assert only("finished width: 1 m\nFinished_Width: 2 m").rule == "file.repeated-key"


# PyYAML 6.0.4 node marks, counted from 1: line 2 column 9 and line 3 column 10.
def test_values_have_their_line_and_column() -> None:
    node, _ = parse_yaml(SourceText("a.yaml", "steps:\n  - do: Clip\n    why: Line\n"))
    assert isinstance(node, Mapping)
    steps = node.entries[0].value
    assert isinstance(steps, Sequence)
    step = steps.items[0]
    assert isinstance(step, Mapping)
    do, why = (entry.value.span for entry in step)
    assert (do.line, do.column, do.end_column) == (2, 9, 13)
    assert (why.line, why.column, why.end_column) == (3, 10, 14)


@pytest.mark.parametrize(
    ("line", "columns", "mend"),
    [
        ("a: &x 1", (4, 6), "take out `&x`; if the text does start with `&`, put quotes round it"),
        ("a: !foo 2", (4, 8), "take out `!foo`; if the text does start with `!`, put quotes round it"),
        (
            "a: *x",
            (4, 6),
            "write the value itself in place of `*x`; if the text does start with `*`, put quotes round it",
        ),
        ("<<: 3", (1, 3), "take out this line and write its keys and values here"),
        ("a: !<x 2", (4, 9), "take out the `!` and what is joined to it, or put quotes round this text"),
    ],
)
def test_anchors_tags_aliases_and_merge_keys_are_findings(line: str, columns: tuple[int, int], mend: str) -> None:
    finding = only(line)
    assert (finding.rule, finding.span.line) == ("file.shorthand", 2)
    assert (finding.span.column, finding.span.end_column) == columns
    assert finding.mend == mend


def test_an_anchor_on_a_list_is_pointed_at() -> None:
    assert told(front("---\na: &list\n  - one\n---\n")[2]) == [("file.shorthand", 2, 4, 9)]


@pytest.mark.parametrize(
    ("value", "written"),
    [
        ("Clip: a ball", '"Clip: a ball"'),
        ("Clip:", '"Clip:"'),
        ("@crew", '"@crew"'),
        ("`x`", '"`x`"'),
        ("%5 more", '"%5 more"'),
        ('"Clip" a ball', "'\"Clip\" a ball'"),
        ("{words} first", '"{words} first"'),
        ("[a] first", '"[a] first"'),
        ("* first", '"* first"'),
        ("& then", '"& then"'),
        ("> 900 mm", '"> 900 mm"'),
        ("it's 5: 'so'", "\"it's 5: 'so'\""),
        ("'it''s' so", "\"'it''s' so\""),
        ("Bed #3", '"Bed #3"'),
        ("Bed #3: roses", '"Bed #3: roses"'),
    ],
)
def test_a_value_that_needs_quotes_is_told_how_to_write_it(value: str, written: str) -> None:
    finding = only(f"title: {value}")
    assert finding.rule == "file.quotes"
    assert (finding.span.line, finding.span.column, finding.span.end_column) == (2, 8, 8 + len(value))
    assert finding.mend == f"put quotes round this text: write `{written}`"
    node, _, findings = front(f"---\ntitle: {written}\n---\n")
    assert (flat(node), findings) == ({"title": value}, ())
    assert flat(front(f"---\ntitle: {value}\nb: 1\n---\n")[0]) == {"title": value, "b": "1"}


def test_what_comes_after_such_a_value_is_still_looked_at() -> None:
    findings = front("---\na: b: c\nd: @e\na: f\n---\n")[2]
    assert told(findings) == [("file.quotes", 2, 4, 8), ("file.quotes", 3, 4, 6), ("file.repeated-key", 4, 1, 2)]


def test_a_note_after_a_key_may_have_a_colon_in_it() -> None:
    node, _, findings = front("---\nmeasures:   # in mm: all of them\n  area: 3 m2\n---\n")
    assert (flat(node), findings) == ({"measures": {"area": "3 m2"}}, ())


@pytest.mark.parametrize(
    ("text", "value"),
    [
        ("“Clip: a ball”", "Clip: a ball"),
        ("‘Clip: a ball’", "Clip: a ball"),
        ("“Clip” and “snip”", "“Clip” and “snip”"),
        ("#a63d1f", "#a63d1f"),
        ('"a # b: c"', "a # b: c"),
        ("3:1 # a ratio", "3:1"),
        ('"Gate: north"   # a label', "Gate: north"),
        ('"Gate: north" #label', "Gate: north"),
        ("'it''s: here' # a note: short", "it's: here"),
        ("“Gate # 4: north” # a label", "Gate # 4: north"),
        ("900\u00a0mm", "900 mm"),
        ("900\tmm", "900 mm"),
    ],
)
def test_what_a_phone_types_is_understood(text: str, value: str) -> None:
    node, _, findings = front(f"---\na: {text}\n---\n")
    assert (flat(node), findings) == ({"a": value}, ())


@pytest.mark.parametrize(
    ("text", "value"),
    [
        ('["Gate # 4: north", yew] # two names', ["Gate # 4: north", "yew"]),
        ("[yew, box]  #two", ["yew", "box"]),
        ('{site: "Gate: north"} # one', {"site": "Gate: north"}),
    ],
)
def test_a_note_after_a_bracket_is_no_part_of_it(text: str, value: object) -> None:
    node, _, findings = front(f"---\na: {text}\nb: c: d\n---\n")
    assert flat(node) == {"a": value, "b": "c: d"}
    assert told(findings) == [("file.quotes", 3, 4, 8)]


def test_a_space_that_does_not_break_may_stand_anywhere() -> None:
    node, _, findings = front("---\nlevel:\u00a01\nmeasures:\n\u00a0\u00a0shape: ball\n---\n")
    assert (flat(node), findings) == ({"level": "1", "measures": {"shape": "ball"}}, ())


def test_tabs_in_front_of_a_line_are_findings_and_the_rest_is_read() -> None:
    node, _, findings = front("---\nmeasures:\n\tshape: ball\n\twidth: 9 mm\n---\n")
    assert told(findings) == [("file.tab", 3, 1, 2), ("file.tab", 4, 1, 2)]
    assert flat(node) == {"measures": {"shape": "ball", "width": "9 mm"}}
    assert isinstance(node, Mapping)
    inner = node.entries[0].value
    assert isinstance(inner, Mapping)
    assert (inner.entries[1].key.span.column, inner.entries[1].value.span.column) == (2, 9)


def test_two_spaces_in_place_of_each_tab_mend_it() -> None:
    assert front("---\nmeasures:\n  shape: ball\n---\n")[2] == ()


def test_a_text_of_several_lines_is_left_alone() -> None:
    node, _, findings = front("---\na: |\n  one: two: three\n\n  four\nb: 'x\n  y: z: w'\nc: {d: 1,\n  e: f}\n---\n")
    assert findings == ()
    assert flat(node) == {"a": "one: two: three\n\nfour", "b": "x y: z: w", "c": {"d": "1", "e": "f"}}


@pytest.mark.parametrize(
    ("lines", "place", "what"),
    [
        ("a: 1\nlevel 2\nb: 3", (3, 1, 8), "this line has no colon after its key"),
        ("a\nb: 2", (2, 1, 2), "this line has no colon after its key"),
        ("a: 1\n  b: 2\nc: 3", (3, 3, 7), "this line is set in further than the one it belongs with"),
        ("a: “b”\n  c: 1", (3, 3, 7), "this line is set in further than the one it belongs with"),
        ("a:\n    b: 1\n  c: 2", (4, 3, 7), "this line does not line up with the lines above it"),
        ("a: 'x\nb: 2", (2, 4, 6), "the quote that opens here is never closed"),
        ('a: "x\\y"', (2, 7, 9), "a backslash stands in double quotes"),
        ("a: [1, 2\nb: 2", (2, 4, 9), "the bracket that opens here is not closed, or a comma is missing in it"),
        ("a: {b: 1\nc: 2", (2, 4, 9), "the bracket that opens here is not closed, or a comma is missing in it"),
        ("a: - 2", (2, 4, 7), "a dash stands after a key on the same line"),
        ("? [a]\n: b", (2, 3, 6), "a list or a bracket stands where a key should"),
        ("a: " + "[" * 20 + "]" * 20, (2, 15, 44), "lists or keys stand in one another more than 12 deep"),
        ("%x", (2, 1, 3), "this line cannot be read as `key: value`"),
    ],
)
def test_the_parser_is_put_in_plain_words(lines: str, place: tuple[int, int, int], what: str) -> None:
    finding = only(lines)
    assert (finding.rule, finding.what) == ("file.front-matter", what)
    assert (finding.span.line, finding.span.column, finding.span.end_column) == place
    for word in ("mapping", "scalar", "token", "error", "invalid", "block"):
        assert word not in f"{finding.what} {finding.why} {finding.mend}"


def test_a_missing_colon_is_shown_with_the_line_as_it_should_be() -> None:
    assert only("a: 1\nlevel 2").mend == (
        "write a colon and a space after the key, such as `level: 2`, or take out this line"
    )


def test_a_line_that_cannot_be_read_leaves_the_others_read() -> None:
    node, _, findings = front("---\na: 1\nlevel 2\nb: [1\nc: 3\n---\n")
    assert told(findings) == [("file.front-matter", 3, 1, 8), ("file.front-matter", 4, 4, 6)]
    assert flat(node) == {"a": "1", "c": "3"}


def test_a_file_of_slips_is_looked_at_as_far_as_ten_go() -> None:
    node, _, findings = front("---\n" + "level 2\na: 1\n" * 12 + "---\n")
    assert node is None
    assert {finding.what for finding in findings} == {"this line has no colon after its key"}
    assert len(findings) == 10


def test_a_quote_left_open_on_the_last_line_is_pointed_at() -> None:
    assert told(front("---\na: 1\nb: [\n\n---\n")[2]) == [("file.front-matter", 3, 1, 5)]
    assert told(front("---\na: 1\nlevel\n\n---\n")[2]) == [("file.front-matter", 3, 1, 6)]


def test_a_heading_of_two_signs_begins_the_body() -> None:
    assert told(front("---\ntitle: x\n## Tools\n")[2]) == [("file.front-matter-end", 3, 1, 9)]


def test_a_second_document_is_a_finding() -> None:
    node, findings = parse_yaml(SourceText("crew.yaml", "---\nname: The crew\n---\nunits: us\n"))
    assert told(findings) == [("file.two-documents", 3, 1, 4)]
    assert flat(node) == {"name": "The crew", "units": "us"}


def test_a_file_that_does_not_start_with_dashes() -> None:
    node, first_line, findings = front("Clip a ball.\n\n## Tools\n")
    assert (node, first_line) == (None, 1)
    assert told(findings) == [("file.front-matter-start", 1, 1, 13)]


def test_a_first_line_of_dashes_left_out_is_read_on() -> None:
    node, first_line, findings = front("title: x\nlevel: 1\n---\nWords.\n")
    assert (flat(node), first_line) == ({"title": "x", "level": "1"}, 4)
    assert (told(findings), findings[0].mend) == (
        [("file.front-matter-start", 1, 1, 9)],
        "write a line `---` above this one",
    )


def test_two_dashes_are_too_few() -> None:
    (finding,) = front("--\ntitle: x\n---\nWords.\n")[2]
    assert finding.mend == "write this line as `---`"


def test_front_matter_that_is_not_closed_points_where_the_body_begins() -> None:
    node, first_line, findings = front("---\ntitle: x\n\nGood looks like this.\n")
    assert (flat(node), first_line) == ({"title": "x"}, 4)
    assert told(findings) == [("file.front-matter-end", 4, 1, 22)]
    assert findings[0].mend == "write a line `---` above this one"


def test_front_matter_that_never_ends_points_at_the_last_line() -> None:
    node, first_line, findings = front("---\ntitle: x\n\n")
    assert (flat(node), first_line) == ({"title": "x"}, 5)
    assert told(findings) == [("file.front-matter-end", 2, 1, 9)]
    assert findings[0].mend == "write a line `---` below this one"


def test_empty_front_matter_holds_nothing() -> None:
    assert front("---\n---\nWords.\n") == (None, 3, ())


def test_a_scalar_alone_is_a_scalar() -> None:
    node, _ = parse_yaml(SourceText("a.yaml", "# note\nwords\n"))
    assert isinstance(node, Scalar)
    assert (node.text, node.span.line) == ("words", 2)
