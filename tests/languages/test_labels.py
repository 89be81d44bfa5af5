import re

import pytest

from howto.fonts import missing
from howto.languages.labels import ENGLISH, LANGUAGES, Labels, labels


def braces(text: str) -> list[str]:
    """Return the names a label leaves to be filled, sorted."""
    return sorted(re.findall(r"\{(\w+)\}", text))


@pytest.mark.parametrize("table", LANGUAGES.values(), ids=LANGUAGES)
def test_every_language_fills_the_same_names(table: Labels) -> None:
    assert list(table) == list(ENGLISH)
    for (name, text), (_, english) in zip(table.items(), ENGLISH.items(), strict=True):
        assert braces(str(text)) == braces(str(english)), name
        assert str(text).strip() == text


@pytest.mark.parametrize("table", LANGUAGES.values(), ids=LANGUAGES)
def test_our_faces_have_every_letter(table: Labels) -> None:
    text = "".join(str(label) for label in table.values())
    assert missing(text, "text") == ()
    assert missing(text, "head-bold") == ()


def test_a_region_takes_the_labels_of_its_language() -> None:
    assert labels("es-MX")["steps"] == "Pasos"
    assert labels("VI")["steps"] == "Các bước"


def test_te_reo_maori_has_labels_of_its_own() -> None:
    assert labels("mi-NZ")["never"] == "Kaua ēnei e mahia"


def test_a_language_we_have_no_labels_for_gets_english() -> None:
    assert labels("cy")["steps"] == "Steps"


def test_the_footers_name_every_kind_of_licensed_work() -> None:
    # each output sends these four to the licensed: electrical work, tree climbing, chainsaws, chemicals
    wanted = {
        "en": ("lectrical", "tree climbing", "chainsaw", "chemicals"),
        "es": ("electricidad", "árboles", "motosierra", "químicos"),
        "vi": ("điện", "leo cây", "cưa máy", "hóa chất"),
        "mi": ("hiko", "piki rākau", "kani mekameka", "matū"),
    }
    assert set(wanted) == set(LANGUAGES)
    for language, words in wanted.items():
        table = labels(language)
        assert all(word in table["footer"] and word in table["leaflet_footer"] for word in words)
