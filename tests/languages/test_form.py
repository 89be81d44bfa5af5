import pytest

from howto.languages import LANGUAGES, language_of
from howto.languages.form import folded
from howto.read.headings import note_named, section_named
from howto.read.items import forms
from howto.read.when import read_when
from howto.seasons import months_of
from howto.span import Span

HERE = Span("a.es.md", 3, 3, 16)

SPANISH = [
    ("En 2 días", "within 2 day"),
    ("En los dos días siguientes", "within 2 day"),
    ("En un plazo de dos semanas", "within 2 week"),
    ("Antes de 2 dias", "within 2 day"),
    ("Después de 6 semanas", "after 6 week"),
    ("A las 6 semanas", "after 6 week"),
    ("Tras un mes", "after 1 month"),
    ("Cada 3 días", "every 3 day"),
    ("Cada semana durante 12 semanas", "every week for 12 week"),
    ("En primavera", "in spring"),
    ("A finales de otoño", "late autumn"),
    ("En marzo.", "in march"),
    ("En la próxima visita:", "next visit"),
    ("Siempre", "always"),
    ("Mañana", "tomorrow"),
]
VIETNAMESE = [
    ("Trong 2 ngày", "within 2 day"),
    ("Trong vòng hai tuần", "within 2 week"),
    ("Trong năm ngày", "within 5 day"),
    ("Sau một năm", "after 1 year"),
    ("Sau sáu tuần", "after 6 week"),
    ("3 ngày một lần", "every 3 day"),
    ("Mỗi tuần trong 12 tuần", "every week for 12 week"),
    ("Vào mùa xuân", "in spring"),
    ("Cuối mùa hè", "late summer"),
    ("Vào tháng năm", "in may"),
    ("Tháng 12", "december"),
    ("Lần tới", "next visit"),
    ("Luôn luôn", "always"),
]
MAORI = [
    ("I roto i te 2 rā", "within 2 day"),
    ("I roto i ngā rā e rua", "within 2 day"),
    ("I muri i te 6 wiki", "after 6 week"),
    ("Ia wiki mō te 12 wiki", "every week for 12 week"),
    ("I te kōanga", "in spring"),
    ("I te mutunga o te raumati", "in late summer"),
    ("I a Māehe", "in march"),
    ("Ā te Poutū-te-rangi", "in march"),
    ("Te haerenga mai e whai ake nei", "next visit"),
    ("I ngā wā katoa", "always"),
]


@pytest.mark.parametrize(
    ("language", "text", "english"),
    [(language, *each) for language, table in (("es", SPANISH), ("vi", VIETNAMESE), ("mi", MAORI)) for each in table],
)
def test_words_of_time_are_turned_into_english(language: str, text: str, english: str) -> None:
    assert language_of(language).in_english(text) == english


def test_words_of_a_language_we_do_not_know_stay() -> None:
    assert language_of("de").in_english("Innerhalb von 2 Tagen") == "innerhalb von 2 tagen"


def test_accents_are_left_aside() -> None:
    assert folded("  Đừng  Māehe\u00a0Otoño ") == "dung maehe otono"


@pytest.mark.parametrize("language", LANGUAGES)
def test_every_form_that_a_mend_shows_is_read(language: str) -> None:
    found = [read_when(form, HERE, "", language)[0] for form in language_of(language).file.forms[:-1]]
    told = [(when.kind, when.days, when.until_days, when.season, when.part, when.month) for when in found if when]
    assert told == [
        ("within", 2, None, None, None, None),
        ("after", 42, None, None, None, None),
        ("every", 3, None, None, None, None),
        ("every", 7, 84, None, None, None),
        ("season", 0, None, "spring", None, None),
        ("season", 0, None, "summer", "late", None),
        ("month", 0, None, None, None, 3),
        ("next visit", 0, None, None, None, None),
        ("always", 0, None, None, None, None),
    ]


@pytest.mark.parametrize("language", LANGUAGES)
def test_english_is_read_in_every_file(language: str) -> None:
    found, findings = read_when("Within 2 days", HERE, "", language)
    assert found is not None
    assert (found.kind, found.days, found.text, findings) == ("within", 2, "Within 2 days", ())


def test_a_time_that_is_not_understood_is_answered_in_the_language_of_the_file() -> None:
    _, (finding,) = read_when("Cuando haga falta", HERE, "", "es")
    assert finding.mend == (
        "write one of these; the forms are `En 2 días`, `Después de 6 semanas`, `Cada 3 días`, "
        "`Cada semana durante 12 semanas`, `En primavera`, `A finales de verano`, `En marzo`, `Próxima visita`, "
        "`Siempre`, `Nunca`"
    )
    assert forms("mi").startswith("the forms are `I roto i te 2 rā`")


@pytest.mark.parametrize(
    ("text", "months"),
    [
        ("de principios de verano a finales de verano", (6, 7, 8)),
        ("marzo, mayo y septiembre", (3, 5, 9)),
        ("từ đầu mùa hè đến cuối mùa hè", (6, 7, 8)),
        ("tháng 3 đến tháng 5", (3, 4, 5)),
        ("mai i te tīmatanga o te raumati ki te mutunga o te raumati", (6, 7, 8)),
        ("Hānuere ki Māehe", (1, 2, 3)),
        ("kein Monat", None),
    ],
)
def test_a_season_names_the_same_months_in_every_language(text: str, months: tuple[int, ...] | None) -> None:
    assert months_of(text, "north") == months


@pytest.mark.parametrize(
    ("language", "heading", "note"),
    [("es", "Precauciones", "Razon"), ("vi", "Chú ý", "Lý do"), ("mi", "Kia tūpato", "Take")],
)
def test_a_file_is_written_in_its_own_words(language: str, heading: str, note: str) -> None:
    assert section_named(heading, language) == "cautions"
    assert note_named(note, language) == "reason"
    assert section_named("Cautions", language) == "cautions"
    assert section_named(heading, "en") is None
