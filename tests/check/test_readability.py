"""Counts and grades against published examples and a reference library.

Flesch-Kincaid and reading ease: US Department of Veterans Affairs HSR&D, Flesch Score (2009), grade A, tolerance
0.001. SMOG: McLaughlin 1969 as set out by Hunter College CUNY, grade A, 0.001. Syllables: the CMU pronouncing
dictionary, exact. Sentences: University of New Mexico Hospitals, Checking Readability Level, exact.
"""

import pytest
import textstat.backend.metrics._flesch_kincaid_grade as their_grade
from hypothesis import given
from hypothesis import strategies as st

from howto.check.readability import counts, flesch_kincaid, reading_ease, sentences_of, smog, syllables, words_in


@pytest.mark.parametrize(
    ("words", "sentences", "count", "ease", "grade"),
    [
        (6, 1, 6, 116.145, -1.45),
        (13, 1, 24, 37.455, 11.265),
        (100, 5, 150, 59.635, 9.910),
        (119, 8, 172, 69.458, 7.267),
        (150, 10, 210, 73.170, 6.780),
    ],
)
def test_grades_from_counts(words: int, sentences: int, count: int, ease: float, grade: float) -> None:
    assert reading_ease(words, sentences, count) == pytest.approx(ease, abs=0.001)
    assert flesch_kincaid(words, sentences, count) == pytest.approx(grade, abs=0.001)


@pytest.mark.parametrize(
    ("long_words", "grade"), [(0, 3.129), (4, 5.215), (9, 6.258), (16, 7.301), (30, 8.842), (36, 9.387), (100, 13.559)]
)
def test_smog_over_thirty_sentences(long_words: int, grade: float) -> None:
    assert smog(long_words, 30) == pytest.approx(grade, abs=0.001)


def test_a_sentence_counted_whole() -> None:
    found = counts("The cat sat on the mat.")
    assert (found.words, found.sentences, found.syllables) == (6, 1, 6)
    assert found.grade == pytest.approx(-1.45, abs=0.001)
    hybrid = counts("The Australian platypus is seemingly a hybrid of a mammal and reptilian creature.")
    assert (hybrid.words, hybrid.syllables, hybrid.long_words) == (13, 24, 4)


@pytest.mark.parametrize(
    ("word", "count"),
    [
        ("above", 2), ("evenly", 3), ("drainage", 2), ("perennial", 4), ("centimetres", 4), ("secateurs", 3),
        ("deciduous", 4), ("annual", 3), ("temperature", 4), ("bottle", 2), ("needles", 2), ("hedges", 2),
        ("clipped", 1), ("planted", 2), ("leaves", 1), ("branches", 2), ("autumn", 2), ("irrigation", 4),
        ("carefully", 3), ("quickly", 2), ("guard", 1), ("idea", 3), ("radio", 3), ("soil", 1), ("don't", 1),
        ("half-way", 2), ("12", 1), ("the", 1), ("shoe", 1), ("we're", 1),
    ],
)  # fmt: skip
def test_syllables(word: str, count: int) -> None:
    assert syllables(word) == count


@pytest.mark.parametrize(
    ("text", "number"),
    [
        ("Sow at 1.5 cm. Water.", 2),
        ("Use a mulch, e.g. bark, each year.", 1),
        ("Cut back. Water well. Sow the seed at 1.5 cm deep.", 3),
        ("1. Water the bed.", 1),
        ("Is it dry? Then water! Wait.", 3),
        ("No end", 1),
        ("... !", 0),
        ("", 0),
    ],
)
def test_sentences(text: str, number: int) -> None:
    assert len(sentences_of(text)) == number


def test_a_sentence_knows_where_it_stands() -> None:
    text = "  First one.  Second one here."
    first, second = sentences_of(text)
    assert text[first.start : first.end] == "First one."
    assert text[second.start : second.end] == "Second one here."
    assert second.words == 3


def test_an_empty_text_has_no_grade() -> None:
    assert counts("").grade == 0.0


@pytest.mark.parametrize(
    "text",
    ["Water the hedge twice a week. Use two full cans each time.", "Leave the clippings where they fall on the lawn."],
)
def test_the_grade_is_that_of_textstat_with_our_syllables(text: str, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(
        their_grade, "syllables_per_word", lambda words, _: sum(map(syllables, words_in(words))) / len(words_in(words))
    )
    assert counts(text).grade == pytest.approx(their_grade.flesch_kincaid_grade.__wrapped__(text, "en_US"), abs=1e-9)


@given(st.text())
def test_any_text_can_be_counted(text: str) -> None:
    found = counts(text)
    assert found.syllables >= found.words >= found.long_words >= 0
    assert sum(sentence.words for sentence in sentences_of(text)) <= found.words + found.sentences
