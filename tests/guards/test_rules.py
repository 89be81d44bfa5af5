"""The rulebook keeps its word: names, sources, weights, and a test for every rule."""

import re
from collections import Counter
from functools import cache
from typing import Any

import pytest

from howto.families import FAMILIES
from howto.findings import Severity
from howto.jobs.rulebook import rulebook
from howto.languages.reader import Reader
from howto.model.family import Rule
from howto.model.reference import Grade
from tests.support.cases import all_cases
from tests.support.source import ROOT
from tests.support.untold import untold

RULES = rulebook()
OUTSIDE = ("file", "fit", "leaflet", "shelf", "technique", "visit")
FORM = re.compile(r"[a-z]+\.[a-z0-9]+(?:-[a-z0-9]+)*")
FIRM = {Grade.A, Grade.B, Grade.OURS}


def name(rule: Rule[Any]) -> str:
    return rule.name


@cache
def text_of_tests(folder: str) -> str:
    """Return the text of every test in a folder of tests, guards left out."""
    files = sorted((ROOT / "tests" / folder).rglob("test_*.py"))
    return "\n".join(path.read_text(encoding="utf-8") for path in files if "guards" not in path.parts)


def test_every_rule_can_be_told() -> None:
    reader = Reader()
    assert untold((rule.name, reader.tell(f"{rule.statement} {rule.why}").encode()) for rule in RULES) == []


def test_every_name_is_given_once() -> None:
    own = Counter(rule.name for family in FAMILIES for rule in {*family.rules, *family.every})
    assert [each for each, count in own.items() if count > 1] == []
    assert [each for each, count in Counter(map(name, RULES)).items() if count > 1] == []


def test_a_familys_rules_carry_its_name() -> None:
    strays = [
        f"{family.name}: {rule.name}"
        for family in FAMILIES
        for rule in (*family.rules, *family.every)
        if rule.name.split(".")[0] != family.name
    ]
    assert strays == []


@pytest.mark.parametrize("rule", RULES, ids=name)
def test_a_name_reads_as_family_and_words(rule: Rule[Any]) -> None:
    assert FORM.fullmatch(rule.name)
    assert rule.name.split(".")[0] in {*OUTSIDE, *(family.name for family in FAMILIES)}


@pytest.mark.parametrize("rule", RULES, ids=name)
def test_a_rule_says_what_why_and_of_what(rule: Rule[Any]) -> None:
    assert rule.statement.strip().endswith(".")
    assert rule.why.strip()
    assert rule.applies.strip()
    assert rule.references
    assert all(reference.title.strip() for reference in rule.references)


@pytest.mark.parametrize("rule", [rule for rule in RULES if rule.severity is Severity.ERROR], ids=name)
def test_what_stops_a_build_rests_on_a_source_that_carries_it(rule: Rule[Any]) -> None:
    """A published source of grade A or B, or for the form of a file this project's own word."""
    grades = {reference.grade for reference in rule.references}
    assert grades & FIRM
    assert rule.name.split(".")[0] in OUTSIDE or grades & {Grade.A, Grade.B}


@pytest.mark.parametrize("rule", RULES, ids=name)
def test_a_rule_has_a_case_or_a_test(rule: Rule[Any]) -> None:
    family, _, words = rule.name.partition(".")
    said = {rule.name, rule.check.__name__ if rule.check else rule.name}
    tested = any(re.search(rf"(?<![\w-]){re.escape(each)}(?![\w-])", text_of_tests("")) for each in said)
    home = "read" if family == "file" else f"families/{family}"  # tests there call a rule by its last words
    tested = tested or f'"{words}"' in text_of_tests(home)
    assert tested or rule.name in {case.rule for case in all_cases()}
