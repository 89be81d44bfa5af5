"""A client can read what they are given: short sentences, plain words, a grade most people read."""

from typing import Any

import pytest

from howto.check.client_words import CLIENT_RULES, FLESCH, GDS, client_findings
from howto.check.visits import VISIT_RULES, check_visits
from howto.findings import Finding, Severity
from howto.model.prose import prose
from howto.model.shelf import Shelf
from howto.model.technique import AnyTechnique
from howto.model.visit import Visit
from howto.span import SourceText, Span
from tests.support import sample
from tests.support.reading import words_of
from tests.support.visits import care, job

TWENTY_FIVE = (
    "Look at each of the two balls by the step once in every week and tell us if one side of it stays bare now."
)
TWENTY_SIX = TWENTY_FIVE.replace("now", "or so")
PLAIN = (
    "Both balls are round again. The left one has a thin side. Leave it be for now. It will fill by next summer. "
    "Keep the path side cut back and give it light. Call us if it stays bare."
)
HARD = (
    "Considerable deterioration of established ornamental specimens necessitated comprehensive rejuvenation. "
    "Subsequent maintenance requirements include regular supplementary watering, particularly during exceptionally "
    "unfavourable environmental conditions, alongside periodic professional inspection. Additional written "
    "recommendations follow shortly."
)


def found(text: str, *, technique: AnyTechnique | None = None, **changes: Any) -> list[Finding]:
    """Return the findings of a visit with these words, or of a technique."""
    visit: Visit = sample.visit(**{"jobs": (job("the pair"),), "words": (prose(text),), **changes})
    shelf = Shelf(root="t", visits=() if technique else (visit,), techniques=(technique,) if technique else ())
    return list(client_findings(shelf, shelf.sources))


def rules(text: str, **changes: Any) -> list[str]:
    """Return the rules that words to a client break."""
    return [finding.rule for finding in found(text, **changes)]


def test_a_sentence_of_25_words_passes_and_one_of_26_does_not() -> None:
    # UK Government Digital Service, Sentence length: why 25 words is our limit, 2014
    assert (len(TWENTY_FIVE.split()), len(TWENTY_SIX.split())) == (25, 26)
    assert "leaflet.long-sentence" not in rules(TWENTY_FIVE)
    (finding,) = [each for each in found(TWENTY_SIX) if each.rule == "leaflet.long-sentence"]
    assert finding.severity is Severity.WARNING
    assert finding.what == "the sentence that starts `Look at each of the two` has 26 words"
    assert finding.mend == "write it as two sentences, each of 25 words or fewer"
    assert finding.reference == str(GDS)


def test_following_the_mend_clears_it() -> None:
    halves = TWENTY_SIX.replace(" and tell", ". Tell")
    assert "leaflet.long-sentence" not in rules(halves)


def test_plain_words_pass() -> None:
    assert rules(PLAIN) == []


def test_hard_words_are_told_with_their_grade_and_the_sum() -> None:
    (finding,) = [each for each in found(HARD) if each.rule == "leaflet.grade"]
    assert finding.reference == str(FLESCH)
    assert finding.what == "the grade of the words to the client is 31.1"
    # 4.03 + 42.63 - 15.59 = 31.07, by the published formula
    assert finding.why.startswith("0.39 x 31 words / 3 sentences + 11.8 x 112 syllables / 31 words - 15.59 = 31.1;")
    assert finding.mend == (
        "write shorter sentences, and plainer words for `recommendations`, `deterioration`, `comprehensive`"
    )


def test_a_few_words_have_no_grade() -> None:
    few = " ".join(HARD.split()[:28])
    assert len(few.split()) == 28
    assert "leaflet.grade" not in rules(few, jobs=(job(""),))


def test_the_grade_points_at_the_hardest_part() -> None:
    spans = {"words[0]": Span("v.md", 8, 1, 9), "words[1]": Span("v.md", 10, 1, 9)}
    both = found("", words=(prose(PLAIN), prose(HARD)), spans=spans)
    assert [each.span for each in both if each.rule == "leaflet.grade"] == [Span("v.md", 10, 1, 9)]


@pytest.mark.parametrize(("text", "word", "plainer"), [
    ("The buds are dormant.", "dormant", "resting"),
    ("Chlorosis shows on two leaves.", "Chlorosis", "yellow leaves"),
])  # fmt: skip
def test_a_trade_word_that_is_not_explained_is_told_with_a_plainer_one(text: str, word: str, plainer: str) -> None:
    (finding,) = found(text)
    assert (finding.rule, finding.what) == ("leaflet.trade-word", f"`{word}` is a trade word")
    assert finding.mend == f"write `{plainer}`, or say it in words a neighbour would use"
    assert rules(text.replace(word, plainer)) == []


def test_a_trade_word_that_the_leaflet_explains_passes() -> None:
    assert rules("Top up the mulch in May.") == []


def test_what_was_done_is_read_by_the_client_too() -> None:
    spans = {"jobs[0].what": Span("v.md", 6, 11, 30)}
    (finding,) = found("All is well.", jobs=(job("the dormant roses"),), spans=spans)
    assert (finding.rule, finding.span) == ("leaflet.trade-word", Span("v.md", 6, 11, 30))


def test_the_aftercare_of_a_technique_is_read_too_and_may_be_waived() -> None:
    technique = sample.technique(aftercare=(care("water while the buds are dormant, {water}.", "within", 2),))
    (finding,) = found("", technique=technique)
    assert (finding.rule, finding.span.path) == ("leaflet.trade-word", technique.path)
    waived = technique.model_copy(update={"waive": {"leaflet.trade-word": "our clients are growers"}})
    assert found("", technique=waived) == []
    idle = sample.technique(aftercare=(), waive={"leaflet.grade": "why"})
    assert [each.rule for each in found("", technique=idle)] == ["technique.waiver"]


def test_other_languages_are_not_graded() -> None:
    assert rules(HARD, language="es") == []
    spanish = sample.technique(language="es", aftercare=(care("dormant.", "within", 2),))
    assert found("", technique=spanish) == []


def test_a_finding_points_at_the_words_where_they_stand() -> None:
    def finding(text: str) -> Finding:
        source = SourceText("v.md", text)
        visit = sample.visit(
            path=source.path,
            jobs=(job(""),),
            words=(prose(f"All is well. {TWENTY_SIX}"),),
            spans={"words[0]": Span("v.md", 3, 1, 13)},
            located=words_of(source),
        )
        shelf = Shelf(root="t", visits=(visit,), sources={source.path: source})
        return next(each for each in check_visits(shelf) if each.rule == "leaflet.long-sentence")

    text = f"---\n---\nAll is well.\n{TWENTY_SIX}\n"
    found = finding(text)
    assert (found.span, found.text) == (Span("v.md", 4, 1, 24), TWENTY_SIX)
    assert finding(text.replace("Look at each of", "Look at\neach of")).span == Span("v.md", 4, 1, 8)
    assert finding("---\n---\nAll is ok.\n").span == Span("v.md", 3, 1, 13)


def test_the_rules_are_in_the_book() -> None:
    assert set(CLIENT_RULES) < set(VISIT_RULES)
