from datetime import date

import pytest

from howto.findings import Finding
from howto.model.shelf import Person, SignOff
from howto.read.people import people_of
from howto.span import SourceText, Span


def people(text: str) -> tuple[tuple[Person, ...], tuple[Finding, ...]]:
    return people_of(SourceText("techniques/people.yaml", text))


def without_places(found: tuple[Person, ...]) -> tuple[Person, ...]:
    return tuple(each.model_copy(update={"spans": {}}) for each in found)


def test_people_and_what_they_are_signed_off_for_are_read() -> None:
    found, findings = people(
        "- name: Sam\n  level: 2\n  signed off:\n"
        "    - {technique: clip-a-ball, on: 2026-05-01, by: Lou, version: 0a1b2c}\n"
        "    - technique: mow\n      on: 2 May 2026\n- name: Kit\n  signed off:\n"
    )
    assert findings == ()
    assert found[0].spans == {
        "name": Span("techniques/people.yaml", 1, 9, 12),
        "signed_off[0]": Span("techniques/people.yaml", 4, 19, 30),
        "signed_off[1]": Span("techniques/people.yaml", 5, 18, 21),
    }
    assert without_places(found) == (
        Person(
            name="Sam",
            level=2,
            signed_off=(
                SignOff(technique="clip-a-ball", on=date(2026, 5, 1), by="Lou", version="0a1b2c"),
                SignOff(technique="mow", on=date(2026, 5, 2)),
            ),
        ),
        Person(name="Kit"),
    )


def test_people_may_stand_under_a_key_or_be_one_alone() -> None:
    found, findings = people("people:\n  - name: Sam\n")
    assert (without_places(found), findings) == ((Person(name="Sam"),), ())
    assert without_places(people("name: Sam\n")[0]) == (Person(name="Sam"),)
    assert people("# nobody yet\n") == ((), ())


@pytest.mark.parametrize(
    ("text", "rule", "mend"),
    [
        ("- Sam\n", "value", "write `- name:` and the name, and the other keys below it, set in by two spaces"),
        ("- [Sam]\n", "value", "write `- name:` and the name, and the other keys below it, set in by two spaces"),
        ("- level: 2\n", "missing-key", "write `name: Sam` here"),
        ("- nmae: Sam\n", "unknown-key", "write `name:`"),
        ("- name:\n", "value", "write it after the colon, or take the line `name:` out"),
        ("- name: Sam\n  level: 4\n", "bound", "write `level: 3`, or another number from 1 to 3"),
        ("- name: Sam\n  signed off: clip\n", "missing-key", "write `{technique: clip-a-ball, on: 2026-05-01}` here"),
        ("- name: Sam\n  signed off: [{technique: clip}]\n", "missing-key", "write `on: 2026-05-01` here"),
        ("- name: Sam\n  signed off: [{on: 2026-05-01}]\n", "missing-key", "write `technique: clip-a-ball` here"),
        ("- name: Sam\n  signed off: [{technique: clip, on: May}]\n", "date", "write the date as `on: 2026-10-14`"),
        ("- name: Sam\n  signed off: [{tecnique: clip, on: 2026-05-01}]\n", "unknown-key", "write `technique:`"),
    ],
)
def test_a_slip_is_explained(text: str, rule: str, mend: str) -> None:
    _, (finding,) = people(text)
    assert (finding.rule, finding.mend) == (f"file.{rule}", mend)
