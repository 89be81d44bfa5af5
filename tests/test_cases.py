"""Every case is reported in exactly its text, and following its mends to the letter clears it."""

import os
import subprocess
import sys

import pytest

from tests.support.cases import Case, all_cases, check_text, edits_for, followed, shown
from tests.support.source import ROOT

CASES = all_cases()
BROKEN = [case for case in CASES if case.findings.exists() and case.findings.read_text(encoding="utf-8")]


def name(case: Case) -> str:
    return case.name


def test_there_are_cases() -> None:
    assert len(CASES) >= 20
    assert len(BROKEN) >= 10


@pytest.mark.parametrize("case", CASES, ids=name)
def test_a_case_is_reported_exactly(case: Case, accept: bool) -> None:
    found = case.checked.report
    if accept:
        case.findings.write_text(found, encoding="utf-8")
    assert found == case.findings.read_text(encoding="utf-8")


@pytest.mark.parametrize("case", BROKEN, ids=name)
def test_a_broken_case_breaks_the_rule_it_is_named_for(case: Case) -> None:
    assert case.checked.breaking(case.rule)


@pytest.mark.parametrize("case", BROKEN, ids=name)
def test_following_the_mend_clears_it(case: Case) -> None:
    checked = case.checked
    if case.mended.exists():
        assert check_text(shown(case.mended), case.crew).breaking(case.rule) == []
        return
    edits = edits_for(checked, case.rule)
    assert edits, f"{case.name}: no edit; write what following its mends gives into {case.mended.name}"
    for edit in edits:
        assert edit is not None, f"{case.name}: a person follows this mend; write {case.mended.name}"
        checked = check_text(followed(checked.source, edit), case.crew)
    assert checked.breaking(case.rule) == []


def test_what_tests_compare_with_is_not_rewritten_where_nobody_looks() -> None:
    command = [sys.executable, "-m", "pytest", "--accept", "--collect-only", "-p", "no:cacheprovider", "tests/check"]
    done = subprocess.run(
        command, cwd=ROOT, env={**os.environ, "CI": "true"}, capture_output=True, text=True, check=False
    )
    assert done.returncode == pytest.ExitCode.USAGE_ERROR
    assert "where CI is set nobody would look at it" in done.stderr
