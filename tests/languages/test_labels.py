"""Every language fills the same form, in letters that our typefaces have."""

import re

import pytest

from howto.fonts import missing
from howto.languages import LANGUAGES, language_of
from howto.languages.form import Labels
from howto.layout.frames.alt import mark_sentences
from howto.model.technique import Mark

EVERY = pytest.mark.parametrize("labels", [each.labels for each in LANGUAGES.values()], ids=list(LANGUAGES))


def braces(text: str) -> list[str]:
    """Return the names a label leaves to be filled, sorted."""
    return sorted(re.findall(r"\{(\w+)\}", text))


@EVERY
def test_every_language_fills_the_same_names(labels: Labels) -> None:
    english = language_of("en").labels
    assert list(labels) == list(english)
    for (name, text), own in zip(labels.items(), english.values(), strict=True):
        assert braces(str(text)) == braces(str(own)), name
        assert str(text).strip() == str(text)


@EVERY
def test_our_faces_have_every_letter(labels: Labels) -> None:
    text = "".join(str(label) for label in labels.values())
    assert missing(text, "text") == ()
    assert missing(text, "head-bold") == ()


@EVERY
def test_nine_places_have_nine_names(labels: Labels) -> None:
    assert len({place for row in labels["places"] for place in row}) == 9


def test_a_region_takes_the_labels_of_its_language() -> None:
    assert language_of("es-MX").labels["steps"] == "Pasos"
    assert language_of("VI").labels["steps"] == "Các bước"


def test_te_reo_maori_has_labels_of_its_own() -> None:
    assert language_of("mi-NZ").labels["never"] == "Kaua ēnei e mahia"


def test_a_language_we_have_no_words_of_gets_english() -> None:
    assert language_of("cy") is LANGUAGES["en"]


def test_a_mark_is_pointed_out_in_the_language_of_the_frames() -> None:
    marks = (Mark(x_percent=52, y_percent=10, text="anillo más ancho"),)
    assert mark_sentences(marks, language_of("es").labels) == ("Marca 1, arriba en el centro: anillo más ancho",)


@pytest.mark.parametrize(
    ("language", "words"),
    [
        ("en", ("lectrical", "tree climbing", "chainsaw", "chemicals")),
        ("es", ("electricidad", "árboles", "motosierra", "químicos")),
        ("vi", ("điện", "leo cây", "cưa máy", "hóa chất")),
        ("mi", ("hiko", "piki rākau", "kani mekameka", "matū")),
    ],
)
def test_the_footers_name_every_kind_of_licensed_work(language: str, words: tuple[str, ...]) -> None:
    labels = language_of(language).labels
    assert all(word in labels["footer"] and word in labels["leaflet_footer"] for word in words)


def test_every_language_has_its_footer_looked_at() -> None:
    assert list(LANGUAGES) == ["en", "es", "vi", "mi"]
