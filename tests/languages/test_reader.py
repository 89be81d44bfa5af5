"""Everything is told in the reader's language: decimal mark, words of units, phrases in phrases."""

from datetime import date

import pytest

from howto.compute.ready import words_of
from howto.families.clipping import FAMILY
from howto.families.watering.garden import can_words
from howto.languages.reader import Reader
from howto.quantities.amounts import Amount, Count, Range, Spread, Word, bare, month_named, qty
from tests.support import builders

SPANISH = Reader("es")


@pytest.mark.parametrize(
    ("held", "told"),
    [
        (qty(12.5, "L"), "12,5 L"),
        (Amount(6.667, "plants/m"), "6,67 plantas/m"),
        (Amount(1, "plants/m"), "1 planta/m"),
        (Amount(1.5, "h"), "1 h 30 min"),
        (Range(2, 2.5, "weeks"), "2 a 2,5 semanas"),
        (Spread(2.5, "°C"), "± 2,5 °C"),
        (Count(2, "pass", "passes"), "2 pasadas"),
        (bare(0.25), "0,25"),
        (month_named(4), "abril"),
        (Word("widest ring"), "el anillo más ancho"),
    ],
)
def test_an_amount_is_told_in_spanish(held: object, told: str) -> None:
    assert SPANISH.plain(f"{held}") == told


def test_a_unit_that_a_row_shares_is_said_once() -> None:
    assert SPANISH.listed((0.5, 1.5, 2), "weeks").replace("\u00a0", " ") == "0,5, 1,5, 2 semanas"
    assert Reader().listed((1.5, 2.5), "h").replace("\u00a0", " ") == "1 h 30 min, 2 h 30 min"
    assert Reader().listed((1,), "week").replace("\u00a0", " ") == "1 week"


def test_what_is_told_in_english_is_a_gap() -> None:
    assert list(SPANISH.gaps(f"{Count(2, 'gizmo', 'gizmos')} {Amount(2, 'weeks')}, {Word('every odd thing')}")) == [
        "gizmos",
        "every odd thing",
    ]
    assert list(Reader("mi").gaps(f"{Amount(2, 'pieces/m')}")) == ["pieces"]
    assert list(Reader().gaps("every odd thing")) == []


@pytest.mark.parametrize(
    ("language", "told"),
    [
        ("en", "two 9 L cans, each three quarters full, twice a week"),
        ("es", "dos regaderas de 9 L, cada una llena hasta tres cuartos, dos veces por semana"),
        ("vi", "hai bình 9 L, mỗi bình đổ ba phần tư, hai lần mỗi tuần"),
        ("mi", "e rua ngā kēne 9 L, kia kī ia kēne ki te toru hauwhā, e rua ngā wā i te wiki"),
    ],
)
def test_a_watering_in_cans_is_told_in_every_language(language: str, told: str) -> None:
    assert Reader(language).plain(can_words(13, 2)) == told


@pytest.mark.parametrize("language", ["es", "vi", "mi"])
@pytest.mark.parametrize("shape", ["ball", "dome", "cone", "cube", "cylinder"])
@pytest.mark.parametrize("stands", [900, 980])
def test_a_clipped_shape_is_told_in_every_language(language: str, shape: str, stands: int) -> None:
    work = builders.technique(FAMILY, shape=shape, finished_width_mm=900.0, standing_width_mm=float(stands))
    texts = [text for drawing in FAMILY.drawings(work, date(2026, 6, 10)) for text in words_of(drawing)]
    assert [gap for text in texts for gap in Reader(language).gaps(text)] == []
