from datetime import date

import pytest

from howto.languages.phrases import PHRASES, UNITS
from howto.languages.phrases.es import SPANISH, SPANISH_UNITS
from howto.model.crew import Crew
from howto.model.figure import Figure
from howto.model.said import amounts_said, said, unsaid
from howto.model.shown import label_of, shown, shown_cell, shown_day

CREWS = {language: Crew(language=language) for language in ("en", "es", "es-MX", "vi", "mi", "cy")}
NBSP = "\u00a0"


@pytest.mark.parametrize(
    ("language", "text"),
    [("en", "27.7 %"), ("es", "27,7 %"), ("es-MX", "27.7 %"), ("vi", "27,7 %"), ("mi", "27.7 %"), ("cy", "27.7 %")],
)
def test_a_decimal_mark_is_the_readers(language: str, text: str) -> None:
    assert shown_cell(27.7213, "%", CREWS[language]).replace(NBSP, " ") == text
    assert shown_cell(0.5, "", CREWS[language])[1] == text[2]


@pytest.mark.parametrize(
    ("language", "text"), [("en", "7.5 days"), ("es", "7,5 días"), ("vi", "7,5 ngày"), ("mi", "7.5 rā")]
)
def test_a_unit_that_is_a_word_is_told(language: str, text: str) -> None:
    assert shown_cell(7.5, "days", CREWS[language]).replace(NBSP, " ") == text


@pytest.mark.parametrize(
    ("language", "text"),
    [
        ("en", "2 April 2027"),
        ("es", "2 de abril de 2027"),
        ("vi", "2 tháng 4, 2027"),
        ("mi", "2 Āperira 2027"),
        ("mi-NZ", "2 Āperira 2027"),
    ],
)
def test_a_date_is_told_in_the_readers_language(language: str, text: str) -> None:
    assert shown_day(date(2027, 4, 2), language) == text


@pytest.mark.parametrize(
    ("english", "spanish", "vietnamese", "maori"),
    [
        ("Next clip due", "próximo recorte", "lần cắt tỉa tới", "te tapahanga e whai ake nei"),
        (
            f"four full 9{NBSP}L cans, every day",
            f"cuatro regaderas llenas de 9{NBSP}L, todos los días",
            f"bốn bình 9{NBSP}L đầy, mỗi ngày",
            f"e whā ngā kēne 9{NBSP}L kua kī, ia rā",
        ),
        (
            f"one 2{NBSP}US{NBSP}gal can, half full, twice a week",
            f"una regadera de 2{NBSP}US{NBSP}gal, llena hasta la mitad, dos veces por semana",
            f"một bình 2{NBSP}US{NBSP}gal, đổ một nửa, hai lần mỗi tuần",
            f"kotahi te kēne 2{NBSP}US{NBSP}gal, kia kī ki te haurua, e rua ngā wā i te wiki",
        ),
        (f"1.25 to 1.5{NBSP}L", f"1,25 a 1,5{NBSP}L", f"1,25 đến 1,5{NBSP}L", f"1.25 ki te 1.5{NBSP}L"),
        (
            "every 2 to 3 days now",
            "ahora, cada 2 a 3 días",
            "hiện nay 2 đến 3 ngày một lần",
            "ia 2 ki te 3 rā ināianei",
        ),
        ("3 doses", "3 dosis", "3 lần bón", "3 whāngaitanga"),
        ("06:30 the next day", "las 06:30 del día siguiente", "06:30 ngày hôm sau", "06:30 i te rā i muri mai"),
    ],
)
def test_what_a_client_reads_is_told_in_every_language(english: str, spanish: str, vietnamese: str, maori: str) -> None:
    assert said(english, CREWS["en"]) == english
    assert said(english, CREWS["es"]) == spanish
    assert said(english, CREWS["vi"]) == vietnamese
    assert said(english, CREWS["mi"]) == maori


def test_what_has_no_words_stays_english_but_for_its_amounts_and_is_known_to() -> None:
    assert said(f"Blasted 1.5{NBSP}days through", CREWS["es"]) == f"Blasted 1,5{NBSP}días through"
    assert unsaid(f"Blasted 1.5{NBSP}days through", CREWS["es"])
    assert unsaid("Next clip due, blasted", CREWS["es"])
    assert unsaid("3 bulbs".replace(" ", NBSP), CREWS["mi"])
    assert not unsaid("Blasted through", CREWS["en"])
    assert not unsaid(f"1.5{NBSP}L", CREWS["mi"])
    assert not unsaid("Next clip due", CREWS["mi"])
    assert unsaid("Next clip due", CREWS["cy"])


@pytest.mark.parametrize("language", PHRASES)
def test_every_phrase_has_a_place_for_each_amount(language: str) -> None:
    for english, told in PHRASES[language].items():
        assert english == english.casefold()
        assert english.count("{}") == told.count("{}"), english
        assert told.strip() == told != ""


def test_spanish_tells_at_least_what_the_others_do() -> None:
    for language in PHRASES:
        assert PHRASES[language].keys() <= SPANISH.keys()
        assert UNITS[language].keys() <= SPANISH_UNITS.keys()
    assert PHRASES["vi"].keys() == PHRASES["mi"].keys()


def test_a_figure_and_its_label() -> None:
    figure = Figure(name="cans", label="In watering cans", value="every day", working=(), references=())
    assert (label_of(figure, CREWS["es"]), shown(figure, CREWS["es"])) == ("en regaderas", "todos los días")


def test_a_number_without_a_unit_and_a_sign() -> None:
    assert amounts_said(f"±{NBSP}1.5{NBSP}mm", "es") == f"±{NBSP}1,5{NBSP}mm"
    assert amounts_said("2½", "es") == "2½"
