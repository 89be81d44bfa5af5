import re
from pathlib import Path

from howto.findings import OUR_FAULT, Severity
from howto.model.reference import FORMAT
from howto.read.rulebook import FILE_RULES

READ = Path(__file__).parents[2] / "howto" / "read"
NOT_RULES = {"photo.py", "photo_kinds.py", "photo_pixels.py", "rulebook.py"}


def test_every_rule_that_reading_reports_is_in_the_rulebook() -> None:
    names = [rule.name for rule in FILE_RULES]
    assert len(names) == len(set(names))
    code = "".join(path.read_text("utf-8") for path in sorted(READ.glob("*.py")) if path.name not in NOT_RULES)
    for name in {*names} - {OUR_FAULT}:  # that is of every stage
        assert re.search(rf'"(?:file\.)?{name.removeprefix("file.")}"', code), name
    for name in re.findall(r'(?:notes|empty)\.add\(\s*"([a-z0-9-]+)"', code):
        assert f"file.{name}" in names


def test_every_rule_says_what_why_and_to_what() -> None:
    for rule in FILE_RULES:
        assert rule.statement.endswith(".")
        assert rule.why
        assert rule.applies
        assert rule.references == (FORMAT,)
        assert rule.check is None


def test_only_a_shelf_without_a_crew_warns() -> None:
    assert [rule.name for rule in FILE_RULES if rule.severity is not Severity.ERROR] == ["file.no-crew"]
