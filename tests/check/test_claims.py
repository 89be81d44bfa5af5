"""Words in braces, and numbers in prose, against the measures and the figures."""

from datetime import date
from typing import Any

import pytest

from howto.check.claims import CLAIM_RULES, check_claims
from howto.model.prose import Run, prose
from howto.model.technique import Care, Hazard, Kit, Step, When
from howto.model.work import AnyWork
from howto.span import SourceText, Span
from tests.support.builders import DIGGING, technique
from tests.support.reading import words_of

PATH = "techniques/digging/do-the-work.md"
PARTS = (
    "title",
    "intro[0]",
    "tools[0]",
    "materials[0]",
    "steps[0]",
    "steps[0].key_points[0]",
    "steps[0].reasons[0]",
    "steps[0].checks[0]",
    "cautions[0]",
    "finish[0]",
    "aftercare[0]",
)


def hole(**parts: Any) -> AnyWork:
    return technique(DIGGING, parts, rounds=2, mulch=True)


def found(which: AnyWork) -> list[tuple[str, str, str, str]]:
    figures = tuple(DIGGING.figures(which, date(2026, 10, 14)))
    return [
        (each.rule, str(each.severity), each.what, each.mend)
        for each in check_claims(which, figures, {PATH: SourceText(PATH, "")})
    ]


def said(text: str) -> list[tuple[str, str, str, str]]:
    return found(hole(intro=(prose(text),)))


def test_a_sound_technique_says_nothing_wrong() -> None:
    assert found(hole()) == []


@pytest.mark.parametrize(
    "text",
    [
        "{hole width}, {Hole  Width}, {hole-depth}, {hole_depth}, {hole width tolerance}, {soil out}, {shape}, {mulch}",
        "{hole\u00a0width}",
        "No braces.",
    ],
)
def test_words_that_stand_for_a_measure_or_figure(text: str) -> None:
    assert said(text) == []


@pytest.mark.parametrize(
    ("text", "what", "mend"),
    [
        (
            "Dig {hole wdith}.",
            "`{hole wdith}` stands for nothing here",
            "write `{hole width}` or `{hole depth}` or `{hole width tolerance}`",
        ),
        (
            "Dig {hole depth tolerance}.",
            "`{hole depth tolerance}` stands for nothing here",
            "write a ± after `hole depth:` under `measures:`, such as `± 5 %`",
        ),
        (
            "Dig {settling}.",
            "`{settling}` stands for nothing here",
            "write a line `settling:` with what it is under `measures:`, in mm/year or the unit you measure in",
        ),
        (
            "Dig {}.",
            "`{}` stands for nothing here",
            "write the words without braces, or one of `{shape}`, `{hole width}`, `{hole width tolerance}`, "
            "`{hole depth}`",
        ),
    ],
)
def test_words_that_stand_for_nothing(text: str, what: str, mend: str) -> None:
    assert said(text) == [("technique.words", "error", what, mend)]


@pytest.mark.parametrize(
    ("text", "what", "mend"),
    [
        ("Dig {hole width and go.", "a `{` without its `}`", "write `{hole width}`"),
        ("Dig hole width} and go.", "a `}` without its `{`", "write `{hole width}`"),
        ("A { alone.", "a `{` without its `}`", "write the `}`, or take the `{` out"),
        ("{{hole width}}", "a `{` without its `}`", "write the `}`, or take the `{` out"),
    ],
)
def test_a_brace_without_its_other_half(text: str, what: str, mend: str) -> None:
    assert said(text) == [("technique.braces", "error", what, mend)]


def test_braces_that_bold_type_tears_apart() -> None:
    torn = (Run(text="Dig {hole "), Run(text="width", strong=True), Run(text="}."))
    assert [(rule, what) for rule, _, what, _ in found(hole(intro=(torn,)))] == [
        ("technique.braces", "a `{` without its `}`")
    ]


def test_words_in_braces_are_not_filled_in_names() -> None:
    assert found(hole(title="Dig {hole width}")) == [
        (
            "technique.words",
            "error",
            "`{hole width}` stands in a name",
            "take `{hole width}` out of the name, and write it in a sentence",
        )
    ]


def test_a_number_that_disagrees_with_a_measure() -> None:
    which = hole(intro=(prose("The hole width is 600 mm."),))
    (one,) = check_claims(which, ())
    assert (one.rule, str(one.severity)) == ("technique.number", "error")
    assert one.what == "`600 mm` disagrees with the measure `hole width`, 500 mm ± 20 mm"
    assert one.why == "600 mm is written here and 500 mm ± 20 mm under `measures:`"
    assert one.mend == "write `{hole width}` in place of `600 mm`"
    assert said("The hole width is {hole width}.") == []


def test_a_number_that_disagrees_with_a_figure() -> None:
    (one,) = said("Soil out is 80 L.")
    assert one[2] == "`80 L` disagrees with the figure `soil out`, 75 L"


def test_a_count_only_warns() -> None:
    assert said("Make three rounds.") == [
        (
            "technique.number",
            "warning",
            "`three` disagrees with the measure `rounds`, 2",
            "write `{rounds}` in place of `three`",
        )
    ]


def test_a_number_in_other_units_is_shown_in_those_of_the_measure() -> None:
    (one,) = check_claims(hole(intro=(prose("Hole width: 2 ft"),)), ())
    assert one.why == "609.6 mm is written here and 500 mm ± 20 mm under `measures:`"


def test_every_part_is_looked_at() -> None:
    bad = prose("{nonsense of a word}")
    which = hole(
        title="{nonsense of a word}",
        intro=(bad,),
        tools=(Kit(name="Spade {x}", note=bad),),
        materials=(Kit(name="Sheet", note=bad),),
        steps=(Step(title="{x}.", text=bad, key_points=(bad,), reasons=(bad,), checks=(bad,)),),
        cautions=(Hazard(title="{x}", text=bad),),
        finish=(bad,),
        aftercare=(Care(when=When(text="always", kind="always"), text=bad),),
        spans={name: Span(PATH, line, 1, 2) for line, name in enumerate(PARTS, 1)},
    )
    assert [each.span.line for each in check_claims(which, ())] == [1, 2, 3, 3, 4, 5, 5, 6, 7, 8, 9, 9, 10, 11]


def test_the_caret_stands_under_the_very_words() -> None:
    text = "---\n---\nOne line, and a\nhole width of 600 mm here.\n\n- 600 mm\n"
    spans = {"intro[0]": Span(PATH, 3, 1, 16), "tools": Span(PATH, 6, 1, 9)}
    source = SourceText(PATH, text)
    intro = (prose("One line, and a hole width of 600 mm here."),)
    which = hole(intro=intro, spans=spans, located=words_of(source))
    (one,) = check_claims(which, (), {PATH: source})
    assert one.span == Span(PATH, 4, 15, 21)
    assert one.text == "hole width of 600 mm here."


def test_words_that_are_not_found_leave_the_caret_under_the_passage() -> None:
    text = "---\n---\nA hole width\nof 600\nmm here.\n"
    intro, spans = (prose("A hole width of 600 mm here."),), {"intro[0]": Span(PATH, 3, 1, 13)}
    which = hole(intro=intro, spans=spans, located=words_of(SourceText(PATH, text)))
    (one,) = check_claims(which, (), {PATH: SourceText(PATH, text)})
    assert one.span == Span(PATH, 3, 1, 13)


def test_a_second_place_is_the_measure() -> None:
    spans = {"measures.hole_width_mm": Span(PATH, 9, 3, 8), "intro[0]": Span(PATH, 12, 1, 2)}
    (one,) = check_claims(hole(intro=(prose("Hole width 600 mm."),), spans=spans), ())
    assert one.also == Span(PATH, 9, 3, 8)


def test_a_waiver_is_heeded_and_judged_here() -> None:
    waive = {"technique.number": "the client asked for it"}
    assert found(hole(intro=(prose("Hole width 600 mm."),), waive=waive)) == []
    assert [(rule, what) for rule, _, what, _ in found(hole(waive=waive))] == [
        ("technique.waiver", "`technique.number` is waived, and nothing here breaks it")
    ]


def test_the_rules_are_in_the_rulebook() -> None:
    assert [rule.name for rule in CLAIM_RULES] == ["technique.number", "technique.words", "technique.braces"]
