"""Whatever bytes a file holds, reading gives findings and never stops."""

from pathlib import Path

from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from howto.findings import Finding
from howto.model.plants import Grass, Plant
from howto.read.crew import crew_of
from howto.read.front_matter import parse_yaml, split_front_matter
from howto.read.people import people_of
from howto.read.plants import entries_of
from howto.read.shelf import read_shelf
from howto.read.text import text_of
from howto.read.visit import Known, read_visit
from howto.span import SourceText
from tests.support.reading import FAMILIES, TEXT, read

BITS = st.sampled_from(
    (
        "---\n", "title", "family", "measures", ":", ": ", "\n", "  ", "- ", "1. ", "## ", "Steps", "Tools", "Finish",
        "Cautions", "Aftercare", "**", "*", "`", "[", "]", "{", "}", "&a", "*a", "!x", "<<", "|", ">", "'", '"', "#",
        "%", "@", "\t", "\u00a0", "“", "”", "→", "Key point: ", "Picture: x.jpg\n", "52 38: ring", "900 mm", "±",
        "<b>", "![a](b)", "[a](b)", "```", "| a | b |\n|--|--|\n", "Within 2 days: ", "clipping", "shape", "ball",
        "finished width", "---", "\\", "&amp;", "\u2028", "٣", "½", "-", "0", "1e9", "99999999999999999999",
    )
)  # fmt: skip
MESSY = st.lists(BITS | st.text(max_size=3), max_size=40).map("".join)


def check(findings: tuple[Finding, ...], text: str) -> None:
    lines = text.split("\n")
    for finding in findings:
        assert finding.rule.startswith("file.")
        assert finding.what
        assert finding.why
        assert finding.mend
        assert 1 <= finding.span.line <= len(lines) + 1
        assert 1 <= finding.span.column < finding.span.end_column or finding.span.end_column == 1


@given(st.text(max_size=300) | MESSY)
def test_any_text_is_read_as_a_technique(text: str) -> None:
    check(read(text)[1], text)


@given(MESSY, st.integers(0, len(TEXT)), st.integers(0, 40))
def test_any_slip_in_a_right_file_is_read(junk: str, at: int, lost: int) -> None:
    text = TEXT[:at] + junk + TEXT[at + lost :]
    check(read(text)[1], text)


@given(st.text(max_size=200) | MESSY)
def test_any_text_is_read_as_yaml_crew_people_plants_and_visit(text: str) -> None:
    source = SourceText("any.md", text)
    technique, _ = read()
    assert technique is not None
    known = Known({technique.id: technique}, FAMILIES)
    for found in (
        parse_yaml(source)[1],
        split_front_matter(source)[2],
        crew_of(source)[1],
        people_of(source)[1],
        entries_of(source, Plant)[1],
        entries_of(source, Grass)[1],
        read_visit(source, known)[1],
    ):
        check(found, text)


@given(MESSY)
def test_any_visit_with_front_matter_is_read(junk: str) -> None:
    technique, _ = read()
    assert technique is not None
    text = f"---\nsite: Orchard end\ndate: 2026-10-14\ndone:\n  - technique: clip-a-ball\n{junk}\n---\nWords.\n"
    check(read_visit(SourceText("v.md", text), Known({technique.id: technique}, FAMILIES))[1], text)


@given(st.binary(max_size=200))
def test_any_bytes_are_text_or_a_finding(data: bytes) -> None:
    source, findings = text_of(data, "any.md")
    assert (source is None) == bool(findings)


@settings(suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(st.binary(max_size=120))
def test_a_shelf_of_any_bytes_is_read(tmp_path: Path, data: bytes) -> None:
    for name in ("crew.yaml", "people.yaml", "plants.yaml", "clipping/a.md", "visits/b.md"):
        path = tmp_path / name
        path.parent.mkdir(exist_ok=True)
        path.write_bytes(data)
    shelf, findings = read_shelf(tmp_path, FAMILIES)
    assert shelf.techniques == ()
    assert findings


def test_thousands_of_brackets_stars_and_quotes_are_read() -> None:
    for sign in ("[", "{", "*", "**a", "> ", "- ", "`", "<", "![", "a: ", '"', "&", "!", "_", "\\", "&#", "1. "):
        for text in (sign * 3000, f"---\na: {sign * 3000}\n---\n{sign * 3000}\n", f"---\n{sign * 3000}\n---\n"):
            assert read(text)[1]


def test_a_long_line_is_read_in_little_time() -> None:
    for text in (f"---\na{' ' * 200_000}b\n---\n", "## " + "#" * 100_000, "a" * 500_000, "- " + "a:" * 100_000):
        assert read(text)[1]
