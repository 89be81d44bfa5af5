"""A technique answers to its family's rules, to those over all families, and to the common ones."""

from howto.check.rules import check_job, check_technique, rules_over
from howto.model.family import Rule
from howto.model.technique import Kit
from howto.model.work import AnyWork
from howto.span import SourceText, Span
from tests.support.builders import DEEP, DIGGING, GUARDING, TABLE, WIDE, technique

SPADE = {"tools": (Kit(name="Spade"),)}


def found(which: AnyWork) -> list[tuple[str, str, str]]:
    return [(each.rule, str(each.severity), each.what) for each in check_technique(which, DIGGING, TABLE)]


def test_a_sound_technique_has_no_findings() -> None:
    assert check_technique(technique(DIGGING), DIGGING, TABLE) == ()


def test_all_of_it_is_reported() -> None:
    assert found(technique(DIGGING, SPADE, hole_depth_mm=40.0, hole_width_mm=1200.0)) == [
        ("digging.deep", "error", "a hole 40 mm deep"),
        ("digging.wide", "warning", "over a metre wide"),
        ("safety.boots", "error", "a spade and no boots"),
    ]


def test_a_rule_of_another_family_that_is_not_over_all_is_not_asked() -> None:
    other = check_technique(technique(DIGGING, hole_depth_mm=40.0), GUARDING, TABLE)
    assert [each.rule for each in other] == []


def test_findings_quote_the_line_and_stand_in_order() -> None:
    path = "techniques/digging/do-the-work.md"
    source = SourceText(path, "hole width: 1200 mm\nhole depth: 40 mm")
    spans = {"measures.hole_width_mm": Span(path, 1, 13, 20), "measures.hole_depth_mm": Span(path, 2, 13, 18)}
    which = technique(DIGGING, {"spans": spans}, hole_depth_mm=40.0, hole_width_mm=1200.0)
    both = check_technique(which, DIGGING, TABLE, {path: source})
    assert [(each.rule, each.span.line, each.text) for each in both] == [
        ("digging.wide", 1, "hole width: 1200 mm"),
        ("digging.deep", 2, "hole depth: 40 mm"),
    ]


def test_each_rule_is_asked_once_and_the_familys_own_first() -> None:
    names = [rule.name for rule in rules_over(DIGGING, (*TABLE, GUARDING))]
    assert names[:3] == ["digging.deep", "digging.wide", "safety.boots"]
    assert len(names) == len(set(names))
    assert rules_over(DIGGING, TABLE)[:2] == (DEEP, WIDE)


def test_a_rule_that_another_stage_looks_for_is_not_asked() -> None:
    silent: Rule[object] = Rule(  # type: ignore[type-var]
        name="fit.words", severity=DEEP.severity, why="a", references=DEEP.references, applies="b", statement="c"
    )
    assert list(silent(technique(DIGGING))) == []


def test_a_waiver_is_heeded() -> None:
    which = technique(DIGGING, {"waive": {"digging.deep": "rock below"}}, hole_depth_mm=40.0)
    assert found(which) == []


def test_a_waiver_of_no_rule_names_the_nearest() -> None:
    which = technique(DIGGING, {"waive": {"digging.depe": "rock below"}})
    (one,) = check_technique(which, DIGGING, TABLE)
    assert (one.rule, str(one.severity)) == ("technique.waiver", "warning")
    assert one.what == "`digging.depe` is waived, and no rule of that name looks at this technique"
    assert one.mend == "write `digging.deep` in its place"


def test_a_waiver_of_something_else_altogether_is_taken_out() -> None:
    (one,) = check_technique(technique(DIGGING, {"waive": {"xyz": "because"}}), DIGGING, TABLE)
    assert one.mend == "take `xyz` out of `waive:`"


def test_waivers_that_later_stages_judge_are_left_to_them() -> None:
    waive = {"technique.number": "a", "shelf.circle": "b"}
    assert found(technique(DIGGING, {"waive": waive})) == []


def test_what_does_not_fit_cannot_be_waived() -> None:
    (one,) = check_technique(technique(DIGGING, {"waive": {"fit.card": "it is only one line over"}}), DIGGING, TABLE)
    assert (one.rule, str(one.severity)) == ("technique.waiver", "warning")
    assert one.what == "`fit.card` is waived, and what does not fit cannot be waived"
    assert one.mend == "take `fit.card` out of `waive:`, and shorten or move what `fit.card` names when it is built"


def test_what_a_visits_measures_break_is_mended_in_the_visit() -> None:
    path, visit = "techniques/digging/do-the-work.md", "techniques/visits/2026-10-14-gate.md"
    spans = {"measures.hole_width_mm": Span(path, 1, 13, 20), "measures.hole_depth_mm": Span(path, 2, 13, 18)}
    own = technique(DIGGING, {"spans": spans}, hole_depth_mm=400.0, hole_width_mm=1200.0)
    told = check_technique(own, DIGGING, TABLE)
    assert [each.rule for each in told] == ["digging.wide"]
    moved = {**spans, "measures.hole_width_mm": Span(visit, 8, 9, 15)}
    which = technique(DIGGING, {"spans": moved}, hole_depth_mm=40.0, hole_width_mm=900.0)
    source = SourceText(visit, "\n" * 7 + "      hole width: 900 mm")
    (one,) = check_job(which, DIGGING, TABLE, {visit: source}, told)
    assert (one.rule, one.span, one.text) == ("digging.deep", Span(visit, 8, 9, 15), "      hole width: 900 mm")
    assert one.mend.startswith("under `measures:` of this job, write `hole depth: ")
    assert one.also == Span(path, 2, 13, 18)


def test_what_the_techniques_own_file_was_told_is_not_told_again() -> None:
    own = technique(DIGGING, SPADE, hole_depth_mm=40.0)
    told = check_technique(own, DIGGING, TABLE)
    assert [each.rule for each in told] == ["digging.deep", "safety.boots"]
    assert list(check_job(own, DIGGING, TABLE, {}, told)) == []
    assert [each.rule for each in check_job(own, DIGGING, TABLE, {}, ())] == ["digging.deep", "safety.boots"]
