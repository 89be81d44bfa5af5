import re

import pytest

from howto.fonts import missing
from howto.languages.frame_words import ENGLISH, LANGUAGES, FrameWords, frame_words
from howto.layout.frames.alt import mark_sentences
from howto.model.technique import Mark


@pytest.mark.parametrize("table", LANGUAGES.values(), ids=LANGUAGES)
def test_every_language_fills_the_same_names(table: FrameWords) -> None:
    assert list(table) == list(ENGLISH)
    for (name, text), english in zip(table.items(), ENGLISH.values(), strict=True):
        assert re.findall(r"\{\w+\}", str(text)) == re.findall(r"\{\w+\}", str(english)), name


@pytest.mark.parametrize("table", LANGUAGES.values(), ids=LANGUAGES)
def test_our_faces_have_every_letter(table: FrameWords) -> None:
    text = "".join(str(word) for word in table.values())
    assert missing(text, "text") == ()
    assert missing(text, "head-bold") == ()


@pytest.mark.parametrize("table", LANGUAGES.values(), ids=LANGUAGES)
def test_nine_places_have_nine_names(table: FrameWords) -> None:
    assert len({place for row in table["places"] for place in row}) == 9


def test_a_mark_is_pointed_out_in_the_language_of_the_frames() -> None:
    marks = (Mark(x_percent=52, y_percent=10, text="anillo más ancho"),)
    said = mark_sentences(marks, frame_words("es"))
    assert said == ("Marca 1, arriba en el centro: anillo más ancho",)


def test_the_local_codes_are_named_in_every_language() -> None:
    assert frame_words("mi")["local_codes"].startswith("Whāia ngā ture ā-rohe me te tapanga o te hua.")
    assert frame_words("cy") is ENGLISH
