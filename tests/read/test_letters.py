"""Letters that are printed: the unseen left out, the look-alikes swapped, and what no face has noted."""

import pytest

from howto.read.crew import crew_of
from howto.read.visit import Known, read_visit
from howto.span import SourceText
from tests.support.reading import FAMILIES, read, swapped, told

VISIT = "---\nsite: Orchard end\ndate: 2026-10-14\ndone:\n  - technique: clip-a-ball\n---\nWords.\n"


@pytest.mark.parametrize(
    ("old", "new", "line", "column", "end"),
    [
        ("title: Clip a ball", "title: Clip a 🌿 ball", 2, 15, 16),
        ("plants: [Ilex crenata, box]", "plants: [Ilex crenata, 黄杨]", 7, 24, 26),
        ("late spring to early autumn", "late 🌷 spring", 8, 14, 15),
        ("It is worth an hour.", "It is worth 一小时.", 16, 13, 16),
        ("- Gauge stick", "- Gauge 🪵 stick", 20, 9, 10),
        ("sharp, wiped clean", "sharp ⚠️", 19, 22, 23),
        ("*widest* ring", "*أوسع* ring", 27, 31, 35),
        ("Then clip the crown.", "Then clip 🌳.", 35, 29, 30),
        ("52 38: widest ring", "52 38: 宽", 34, 15, 16),
        ("credit: the crew", "credit: 王", 33, 16, 17),
        ("gloves, eye protection", "gloves 🧤", 38, 51, 52),
        ("The outline is round", "The outline is 圆", 41, 22, 23),
        ("water once", "water 💧", 44, 24, 25),
    ],
)
def test_a_letter_that_cannot_be_printed_is_pointed_at(old: str, new: str, line: int, column: int, end: int) -> None:
    assert told(read(swapped(old, new))[1]) == [("file.letter", line, column, end)]


def test_what_is_not_printed_may_hold_any_letter() -> None:
    assert told(read(swapped("alt: A ball from above", "alt: 从上面看的球 🌿"))[1]) == []
    assert told(read(swapped("shown twice in the yard", "shown twice 🌿 in the yard"))[1]) == []


def test_many_letters_are_counted_and_the_unseen_called_by_number() -> None:
    (one,) = read(swapped("It is worth an hour.", "It is 一二三四五六七八九."))[1]
    assert one.what == "`一`, `二`, `三`, `四`, `五` and `六` and 3 more letters cannot be printed"
    assert one.mend == "take them out, or say it in letters that they have"
    (one,) = read(swapped("It is worth an hour.", "It is \ue000."))[1]
    assert one.what == "`U+E000` cannot be printed"
    assert one.mend == "take it out, or say it in letters that they have"


def test_a_letter_on_a_later_line_of_a_paragraph_is_found_there() -> None:
    text = swapped("A ball that reads as round from the gate.", "A ball\nthat reads 🌿\nas round.")
    assert told(read(text)[1]) == [("file.letter", 16, 12, 13)]


def test_what_the_crew_prints_is_looked_at() -> None:
    assert told(crew_of(SourceText("crew.yaml", "name: 🌿 Thrushfield\n"))[1]) == [("file.letter", 1, 7, 8)]
    assert told(crew_of(SourceText("crew.yaml", "contact: 电话 1\n"))[1]) == [("file.letter", 1, 10, 12)]


@pytest.mark.parametrize(
    ("old", "new", "where"),
    [
        ("site: Orchard end", "site: Orchard 🍎 end", (2, 15, 16)),
        ("Words.", "Thank you 🌷 谢谢", (7, 11, 12)),
        ("clip-a-ball\n", "clip-a-ball\n    what: the 🌵\n", (6, 15, 16)),
    ],
)
def test_what_a_visit_prints_is_looked_at(old: str, new: str, where: tuple[int, int, int]) -> None:
    technique, _ = read()
    assert technique is not None
    source = SourceText("visits/2026-10-14-orchard-end.md", VISIT.replace(old, new))
    _, findings = read_visit(source, Known({"clip-a-ball": technique}, FAMILIES))
    assert told(findings) == [("file.letter", *where)]


@pytest.mark.parametrize("language", ["ar", "zh", "ja", "th", "hi", "ko", "he"])
def test_a_language_whose_dates_cannot_be_printed_is_refused(language: str) -> None:
    (one,) = read(swapped("level: 2", f"level: 2\nlanguage: {language}"))[1]
    assert (one.rule, one.mend) == ("file.letter", "write `language: en`, or take the line out")
    (one,) = (each for each in read(path=f"techniques/clipping/a.{language}.md")[1] if each.rule == "file.letter")
    assert (one.span.line, one.mend) == (1, f"rename the file, without `.{language}`")


@pytest.mark.parametrize("language", ["en", "es", "vi", "mi", "de", "pl", "ru", "el"])
def test_a_language_whose_dates_can_be_printed_is_taken(language: str) -> None:
    assert read(swapped("level: 2", f"level: 2\nlanguage: {language}"))[1] == ()
