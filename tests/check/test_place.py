"""Where a breach stands, how much it weighs, and what a waiver covers."""

from dataclasses import replace
from typing import Any

import pytest

from howto.check.place import line_at, placed, settled, softer
from howto.findings import Severity
from howto.model.family import Breach, Rule
from howto.model.reference import Grade, Reference
from howto.model.technique import AnyTechnique
from howto.span import SourceText, Span
from tests.support.builders import BOOTS, DEEP, DIGGING, WIDE, technique

PATH = "techniques/digging/do-the-work.md"
SOURCE = SourceText(PATH, "---\ntitle: Do the work\nmeasures:\n  hole depth: 40 mm\nwaive:\n  digging.deep: no\n---\n")
OTHER: Rule[Any] = replace(WIDE, name="digging.other")
SPANS = {
    "title": Span(PATH, 2, 8, 19),
    "measures": Span(PATH, 3, 1, 9),
    "measures.hole_depth_mm": Span(PATH, 4, 15, 20),
    "waive": Span(PATH, 5, 1, 6),
}


def hole(**waive: str) -> AnyTechnique:
    names = {name.replace("__", ".").replace("_", "-"): reason for name, reason in waive.items()}
    return technique(DIGGING, {"spans": SPANS, "waive": names}, hole_depth_mm=40.0).technique


def test_a_breach_stands_where_its_field_was_written() -> None:
    breach = Breach("measures.hole_depth_mm", "40 mm deep", "100 mm", "write 100 mm", also="title")
    finding = placed(DEEP, breach, hole(), {PATH: SOURCE})
    assert finding.rule == "digging.deep"
    assert finding.span == Span(PATH, 4, 15, 20)
    assert finding.text == "  hole depth: 40 mm"
    assert finding.also == Span(PATH, 2, 8, 19)
    assert finding.reference == "plane and solid geometry, worked from first principles"
    assert (finding.what, finding.why, finding.mend) == ("40 mm deep", "100 mm", "write 100 mm")


def test_a_breach_may_name_its_own_source() -> None:
    book = Reference(title="Hedge trimming", publisher="a plant book", grade=Grade.C)
    assert placed(DEEP, Breach("title", "a", "b", "c", reference=book), hole()).reference == (
        "a plant book, Hedge trimming"
    )


def test_a_field_that_was_not_written_stands_under_its_key() -> None:
    finding = placed(DEEP, Breach("measures.settling_mm_per_year", "a", "b", "c"), hole(), {PATH: SOURCE})
    assert finding.span == Span(PATH, 3, 1, 9)
    assert finding.also is None


def test_a_line_that_is_not_at_hand_is_empty() -> None:
    assert line_at(Span("elsewhere.md", 3), {PATH: SOURCE}) == ""


@pytest.mark.parametrize(
    ("own", "asked", "weighs"),
    [
        (Severity.ERROR, None, Severity.ERROR),
        (Severity.ERROR, Severity.ADVICE, Severity.ADVICE),
        (Severity.WARNING, Severity.ERROR, Severity.WARNING),
        (Severity.ADVICE, Severity.WARNING, Severity.ADVICE),
    ],
)
def test_a_breach_softens_and_never_hardens(own: Severity, asked: Severity | None, weighs: Severity) -> None:
    assert softer(own, asked) == weighs


def found(which: AnyTechnique) -> list[tuple[str, str, str]]:
    """Return rule, severity and observation of what is left of one breach each of three rules."""
    each = [placed(rule, Breach("title", f"{rule.name} broken", "b", "c"), which) for rule in (DEEP, WIDE, BOOTS)]
    left = settled(which, each, (DEEP, WIDE, BOOTS, OTHER))
    return [(finding.rule, str(finding.severity), finding.what) for finding in left]


DEEP_LEFT = ("digging.deep", "error", "digging.deep broken")
WIDE_LEFT = ("digging.wide", "warning", "digging.wide broken")
BOOTS_LEFT = ("safety.boots", "error", "safety.boots broken")


def test_without_waivers_all_is_kept() -> None:
    assert found(hole()) == [DEEP_LEFT, WIDE_LEFT, BOOTS_LEFT]


def test_a_waiver_with_a_reason_covers_its_rule() -> None:
    assert found(hole(digging__deep="rock")) == [WIDE_LEFT, BOOTS_LEFT]


def test_a_waiver_without_a_reason_weighs_what_it_would_have_covered() -> None:
    assert found(hole(digging__deep=" – ", digging__wide="")) == [
        BOOTS_LEFT,
        ("technique.waiver", "error", "`digging.deep` is waived with no reason"),
        ("technique.waiver", "warning", "`digging.wide` is waived with no reason"),
    ]


def test_a_rule_about_harm_needs_ten_letters_of_reason() -> None:
    assert found(hole(safety__boots="n/a, 9 let")) == [
        DEEP_LEFT,
        WIDE_LEFT,
        ("technique.waiver", "error", "`safety.boots` is waived with the reason `n/a, 9 let`"),
    ]
    assert found(hole(safety__boots="we dig by hand")) == [DEEP_LEFT, WIDE_LEFT]


def test_a_waiver_that_covers_nothing_is_a_finding() -> None:
    which = hole(digging__other="once")
    left = settled(which, [], (OTHER,), {PATH: SOURCE})
    assert [(each.rule, str(each.severity), each.what, each.mend) for each in left] == [
        (
            "technique.waiver",
            "warning",
            "`digging.other` is waived, and nothing here breaks it",
            "take `digging.other` out of `waive:`",
        )
    ]
    assert left[0].span == Span(PATH, 5, 1, 6)


def test_a_waiver_that_another_stage_judges_is_left_alone() -> None:
    assert settled(hole(fit__title="long, and right"), [], (DEEP,)) == ()


def test_a_waiver_is_not_idle_because_one_visit_had_no_need_of_it() -> None:
    there = Span("techniques/visits/2026-10-14-orchard-end.md", 9, 20, 26)
    lent = hole(digging__other="once").model_copy(update={"spans": {**SPANS, "measures.hole_depth_mm": there}})
    assert settled(lent, [], (OTHER,)) == ()
