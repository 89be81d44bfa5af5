"""Every case is reported in exactly its text, and following its mends to the letter clears it."""

import os
import subprocess
import sys
from pathlib import Path

import pytest

from tests.support.cases import BASES, Case, all_cases, changed, check_text, edits_for, followed, shown
from tests.support.source import ROOT

CASES = all_cases()
BROKEN = [case for case in CASES if case.said]


def name(case: Case) -> str:
    return case.name


def test_some_cases_are_broken_and_some_pass() -> None:
    assert 0 < len(BROKEN) < len(CASES)


@pytest.mark.parametrize("base", sorted(BASES.iterdir()), ids=lambda base: base.stem)
def test_a_base_passes_without_a_word_and_serves_a_case(base: Path) -> None:
    assert check_text(shown(base.read_text(encoding="utf-8"))).report == ""
    assert base.stem in {case.parts["base"] for case in CASES}


@pytest.mark.parametrize("case", CASES, ids=name)
def test_a_case_is_reported_exactly(case: Case, accept: bool) -> None:
    if accept:
        case.accept(case.checked.report)
    assert case.checked.report == case.said


@pytest.mark.parametrize("case", BROKEN, ids=name)
def test_a_broken_case_breaks_the_rule_it_is_named_for(case: Case) -> None:
    assert case.checked.breaking(case.rule)


@pytest.mark.parametrize("case", BROKEN, ids=name)
def test_following_the_mend_clears_it(case: Case) -> None:
    checked = case.mended
    if checked is None:
        checked = case.checked
        edits = edits_for(checked, case.rule)
        assert edits, f"{case.name}: no edit; write what following its mends changes under `--- mended`"
        for edit in edits:
            assert edit is not None, f"{case.name}: a person follows this mend; write its changes under `--- mended`"
            checked = check_text(followed(checked.source, edit), case.crew)
    assert checked.breaking(case.rule) == []


def test_changes_are_made_from_the_top_down() -> None:
    text = "a: 1\nb: 2\n\na: 1\nc: 3\n"
    assert changed(text, ["- a: 1", "+ a: 2", "", "  a: 1", "+", "+ b: 4"]) == "a: 2\nb: 2\n\na: 1\n\nb: 4\nc: 3\n"
    assert changed(text, ["+ first", "  b: 2", "-"]) == "first\na: 1\nb: 2\na: 1\nc: 3\n"


@pytest.mark.parametrize("change", ["- d: 4", "  b: 2", "-b: 2", "b: 2", "--- say"])
def test_a_change_that_finds_no_place_is_refused(change: str) -> None:
    with pytest.raises(AssertionError, match="no such line"):
        changed("a: 1\nb: 2\n", ["- b: 2", change])


def test_accepting_rewrites_what_is_said_and_no_more(tmp_path: Path) -> None:
    path = tmp_path / "clipping" / "ruffle--once.case"
    path.parent.mkdir()
    path.write_text("base: ball\n--- crew\ncoast: yes\n--- says\nold\n--- mended\n+ new\n", encoding="utf-8")
    Case(path).accept("a\n\nb\n")
    assert path.read_text(encoding="utf-8") == (
        "base: ball\n--- crew\ncoast: yes\n--- says\na\n\nb\n--- mended\n+ new\n"
    )
    assert Case(path).said == "a\n\nb\n"


def test_what_tests_compare_with_is_not_rewritten_where_nobody_looks() -> None:
    command = [sys.executable, "-m", "pytest", "--accept", "--collect-only", "-p", "no:cacheprovider", "tests/check"]
    done = subprocess.run(
        command, cwd=ROOT, env={**os.environ, "CI": "true"}, capture_output=True, text=True, check=False
    )
    assert done.returncode == pytest.ExitCode.USAGE_ERROR
    assert "where CI is set nobody would look at it" in done.stderr
