"""Findings in a terminal and in JSON."""

import json

import pytest

from howto.cli.report import as_json, columns, listed, safe, summary, terminal
from howto.findings import Finding, Severity
from howto.span import SourceText, Span

BEECH = SourceText(
    "techniques/hedging/beech.md", "---\ntitle: Plant a beech hedge\nmeasures:\n  spacing: 60 cm\n  rows: 2\n---\n"
)
SOURCES = {BEECH.path: BEECH}


def finding(**changes: object) -> Finding:
    whole: dict[str, object] = {
        "rule": "hedging.plants-per-metre",
        "severity": Severity.ERROR,
        "span": Span(BEECH.path, 4, 12, 17),
        "text": "  spacing: 60 cm",
        "what": "3.3 plants a metre",
        "why": "2 rows at 60 cm; the trade range is 5 to 7 plants/m",
        "mend": "write a spacing from 29 cm to 40 cm",
        "reference": "planting guide, p. 12",
    }
    return Finding(**(whole | changes))  # type: ignore[arg-type]


def on(text: str, column: int, end: int, width: int = 100) -> list[str]:
    """Return the excerpt of a one-line file: its line and its carets."""
    source = SourceText("a.md", text)
    lines = listed([finding(span=Span("a.md", 1, column, end))], {"a.md": source}, width=width).split("\n")
    return lines[1:3]


def test_a_finding_has_exactly_this_form() -> None:
    assert terminal([finding()], SOURCES, colour=False, width=100) == (
        "techniques/hedging/beech.md:4:12: error hedging.plants-per-metre: 3.3 plants a metre\n"
        "  4 |   spacing: 60 cm\n"
        "    |            ^^^^^\n"
        "  why:  2 rows at 60 cm; the trade range is 5 to 7 plants/m (planting guide, p. 12)\n"
        "  mend: write a spacing from 29 cm to 40 cm\n"
        "\n"
        "1 finding: 1 error.\n"
    )


def test_findings_are_sorted_and_parted_by_a_blank_line() -> None:
    second = finding(span=Span(BEECH.path, 5, 9, 10), severity=Severity.WARNING, what="two rows")
    lines = terminal([second, finding()], SOURCES, colour=False).split("\n")
    assert lines[0].startswith("techniques/hedging/beech.md:4:12: error")
    assert lines[5] == ""
    assert lines[6] == "techniques/hedging/beech.md:5:9: warning hedging.plants-per-metre: two rows"
    assert lines[7:9] == ["  5 |   rows: 2", "    |         ^"]


def test_the_same_finding_twice_is_printed_once() -> None:
    assert terminal([finding(), finding()], SOURCES, colour=False).endswith("1 finding: 1 error.\n")


@pytest.mark.parametrize(
    ("severities", "line"),
    [
        ([], "No findings."),
        ([Severity.WARNING], "1 finding: 1 warning."),
        ([Severity.ADVICE], "1 finding: 1 piece of advice."),
        ([Severity.ERROR, Severity.WARNING, Severity.WARNING], "3 findings: 1 error, 2 warnings."),
        (
            [Severity.ADVICE, Severity.ADVICE, Severity.ERROR, Severity.ERROR],
            "4 findings: 2 errors, 2 pieces of advice.",
        ),
    ],
)
def test_the_last_line_counts(severities: list[Severity], line: str) -> None:
    assert summary([finding(severity=each) for each in severities]) == line


def test_nothing_found_is_said() -> None:
    assert terminal([], {}, colour=False) == "No findings.\n"


def test_a_second_place_is_shown_with_what_stands_there() -> None:
    text = listed([finding(also=Span(BEECH.path, 5, 3, 10))], SOURCES)
    assert text.endswith(
        "  mend: write a spacing from 29 cm to 40 cm\n  also: techniques/hedging/beech.md:5:3 | rows: 2\n"
    )


def test_a_second_place_in_a_file_that_is_not_at_hand() -> None:
    assert listed([finding(also=Span("oak.md", 7, 1, 2))], SOURCES).endswith("  also: oak.md:7:1\n")


def test_without_the_file_there_is_no_excerpt() -> None:
    assert listed([finding()], {}).split("\n")[1].startswith("  why:  2 rows")


def test_the_readme_is_not_named_beside_every_finding() -> None:
    text = listed([finding(reference="howto, how a technique file is written (README)")], SOURCES)
    assert "README" not in text


def test_a_source_that_the_reason_names_is_not_named_again() -> None:
    text = listed([finding(why="shoots fold (planting guide, p. 12)")], SOURCES)
    assert "  why:  shoots fold (planting guide, p. 12)\n" in text


def test_long_words_are_wrapped_in_their_own_column() -> None:
    why = "one two three four five six seven eight nine ten eleven twelve"
    text = listed([finding(why=why, reference="", mend="short")], SOURCES, width=44)
    assert text.split("\n")[3:6] == [
        "  why:  one two three four five six seven",
        "        eight nine ten eleven twelve",
        "  mend: short",
    ]
    assert all(len(line) <= 44 for line in text.split("\n")[1:])


def test_what_is_to_be_typed_is_not_torn_over_two_lines() -> None:
    mend = "write the line `needs: [clip-a-ball, plant]` at the top"
    lines = listed([finding(mend=mend)], SOURCES, width=44).split("\n")
    assert lines[-4:] == ["  mend: write the line", "        `needs: [clip-a-ball, plant]` at the", "        top", ""]


def test_what_is_longer_than_a_line_is_wrapped_all_the_same() -> None:
    mend = "write `one two three four five six seven eight nine`"
    lines = listed([finding(mend=mend)], SOURCES, width=44).split("\n")
    assert lines[-3:-1] == ["  mend: write `one two three four five six", "        seven eight nine`"]


def test_a_window_of_no_width_is_read_as_forty_columns() -> None:
    why = "one two three four five six seven eight"
    lines = listed([finding(why=why, reference="")], SOURCES, width=3).split("\n")
    assert lines[3:5] == ["  why:  one two three four five six", "        seven eight"]


def test_carets_stand_under_text_behind_a_tab() -> None:
    assert on("\twidth:\t900 mm", 9, 15) == ["  1 |     width:  900 mm", "    |             ^^^^^^"]


def test_carets_stand_under_wide_letters() -> None:
    assert on("名前: 球 900", 5, 6) == ["  1 | 名前: 球 900", "    |       ^^"]


def test_a_mark_over_a_letter_takes_no_column() -> None:
    assert on("cafe\u0301 900 mm", 7, 10) == ["  1 | cafe\u0301 900 mm", "    |      ^^^"]


def test_a_span_past_the_end_still_has_a_caret() -> None:
    assert on("title:", 8, 9) == ["  1 | title:", "    |       ^"]


def test_an_empty_line_has_a_caret() -> None:
    assert on("", 1, 1) == ["  1 |", "    | ^"]


def test_a_long_line_is_cut_round_its_stretch() -> None:
    line = "a" * 100 + " 900 mm " + "b" * 100
    assert on(line, 102, 108, width=50) == [
        "  1 | …aaaaaaaaaaaaaaaaaaaa 900 mm bbbbbbbbbbbbbb…",
        "    |                       ^^^^^^",
    ]


def test_a_long_line_cut_only_behind() -> None:
    shown, carets = on("900 mm " + "b" * 100, 1, 7, width=50)
    assert shown == "  1 | 900 mm " + "b" * 35 + "…"
    assert carets == "    | ^^^^^^"


def test_a_long_line_cut_only_in_front() -> None:
    shown, carets = on("b" * 100 + " 900 mm", 102, 108, width=50)
    assert shown == "  1 | …" + "b" * 35 + " 900 mm"
    assert carets == "    | " + " " * 37 + "^^^^^^"


def test_a_stretch_wider_than_the_window_keeps_its_start() -> None:
    shown, carets = on("x" * 30 + "y" * 200, 31, 231, width=50)
    assert shown == "  1 | …" + "x" * 14 + "y" * 28 + "…"
    assert carets == "    | " + " " * 15 + "^" * 28


@pytest.mark.parametrize(
    ("raw", "shown"),
    [
        ("a\x1b[31mred", "a␛[31mred"),
        ("a\x00b\x7fc", "a␀b␡c"),
        ("left\u202eright", "left<U+202E>right"),
        ("zero\u200bwidth", "zero<U+200B>width"),
        ("half\udcff", "half<U+DCFF>"),
        ("next\x85line", "next<U+0085>line"),
        ("two\r\nlines\u2028three", "two  lines<U+2028>three"),
        ("900\u00a0mm", "900 mm"),
        ("plain – “text” ½", "plain – “text” ½"),
    ],
)
def test_nothing_an_author_typed_steers_the_terminal(raw: str, shown: str) -> None:
    assert safe(raw) == shown


def test_unseen_characters_are_shown_in_every_part() -> None:
    nasty = "\x1b]0;x\x07"
    path = f"a{nasty}.md"
    text = terminal(
        [finding(span=Span(path, 1, 1, 3), what=nasty, why=nasty, mend=nasty, reference=nasty, rule=nasty)],
        {path: SourceText(path, nasty)},
        colour=False,
    )
    assert "\x1b" not in text
    assert "\x07" not in text
    assert "a␛]0;x␇.md:1:1: error ␛]0;x␇: ␛]0;x␇" in text


def test_carets_stand_under_a_stand_in() -> None:
    assert on("a\u202eb", 3, 4) == ["  1 | a<U+202E>b", "    |          ^"]


def test_colour_is_laid_on_the_word_and_the_carets_only() -> None:
    plain = terminal([finding()], SOURCES, colour=False)
    coloured = terminal([finding()], SOURCES, colour=True)
    assert "\x1b" not in plain
    assert "\x1b[1;31merror\x1b[0m" in coloured
    assert "\x1b[1;31m^^^^^\x1b[0m" in coloured
    assert coloured.replace("\x1b[1;31m", "").replace("\x1b[0m", "") == plain


@pytest.mark.parametrize(("text", "wide"), [("abc", 3), ("球", 2), ("e\u0301", 1), ("", 0)])
def test_columns(text: str, wide: int) -> None:
    assert columns(text) == wide


def test_json_has_every_field_and_the_counts() -> None:
    text = as_json([finding(also=Span("oak.md", 7, 1, 2), what="½ a metre")])
    assert json.loads(text) == {
        "findings": [
            {
                "rule": "hedging.plants-per-metre",
                "severity": "error",
                "path": "techniques/hedging/beech.md",
                "line": 4,
                "column": 12,
                "end_column": 17,
                "text": "  spacing: 60 cm",
                "what": "½ a metre",
                "why": "2 rows at 60 cm; the trade range is 5 to 7 plants/m",
                "mend": "write a spacing from 29 cm to 40 cm",
                "reference": "planting guide, p. 12",
                "also": {"path": "oak.md", "line": 7, "column": 1, "end_column": 2},
            }
        ],
        "counts": {"error": 1, "warning": 0, "advice": 0},
    }
    assert text.isascii()


def test_json_is_the_same_in_any_order() -> None:
    second = finding(span=Span(BEECH.path, 5, 9, 10), severity=Severity.ADVICE)
    assert as_json([finding(), second]) == as_json([second, finding(), second])
    assert json.loads(as_json([]))["findings"] == []


def test_json_carries_a_name_that_is_no_text() -> None:
    assert json.loads(as_json([finding(span=Span("half\udcff.md"))]))["findings"][0]["path"] == "half\udcff.md"
