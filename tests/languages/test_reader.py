"""Whoever reads is told amounts in their language, their units and with their decimal mark."""

from datetime import date

import pytest

from howto.compute.ready import words_of
from howto.families.clipping import FAMILY
from howto.families.watering.garden import can_words
from howto.languages.reader import Reader, System, day_told, decimal_mark, locale_of
from howto.quantities.amounts import (
    Amount,
    Count,
    Held,
    Months,
    Name,
    Range,
    Share,
    Spread,
    Word,
    bare,
    dated,
    mm,
    month_named,
    months_named,
    percent,
    qty,
)
from tests.support import builders

TIE = "\u00a0"
DAY = date(2027, 6, 2)
EVERY: tuple[tuple[Held, str, str, str, str], ...] = (
    (qty(27.7213, "L"), "27.7 L", "27,7 L", "27,7 L", "27.7 L"),
    (percent(27.7213), "27.7 %", "27,7 %", "27,7 %", "27.7 %"),
    (mm(1500), "1.5 m", "1,5 m", "1,5 m", "1.5 m"),
    (mm(1500, 2), "1500 mm", "1500 mm", "1500 mm", "1500 mm"),
    (bare(0.5), "0.5", "0,5", "0,5", "0.5"),
    (qty(7.5, "days"), "7.5 days", "7,5 días", "7,5 ngày", "7.5 rā"),
    (qty(18.5, "°C"), "18.5 °C", "18,5 °C", "18,5 °C", "18.5 °C"),
    (Range(1.25, 1.5, "L"), "1.25 to 1.5 L", "1,25 a 1,5 L", "1,25 đến 1,5 L", "1.25 ki te 1.5 L"),
    (Spread(1.5, "mm"), "± 1.5 mm", "± 1,5 mm", "± 1,5 mm", "± 1.5 mm"),
    (Count(1, "plant", "plants"), "1 plant", "1 planta", "1 cây", "1 tipu"),
    (Count(3, "plant", "plants"), "3 plants", "3 plantas", "3 cây", "3 tipu"),
    (dated(DAY), "2 June 2027", "2 de junio de 2027", "2 tháng 6, 2027", "2 Hune 2027"),
    (dated(DAY, "short"), "2 Jun", "2 jun", "2 thg 6", "2 Hun"),
    (dated(DAY, "plain"), "2027-06-02", "2027-06-02", "2027-06-02", "2027-06-02"),
    (month_named(6), "June", "junio", "tháng 6", "Hune"),
    (months_named((5, 6, 7), "to"), "May to July", "mayo a julio", "tháng 5 đến tháng 7", "Mei ki te Hūrae"),
    (Share(0.2771), "27.7 %", "27,7 %", "27,7 %", "27.7 %"),
    (Name("Ilex crenata 1.5"),) + ("Ilex crenata 1.5",) * 4,
    (Word("ball"), "ball", "bola", "hình cầu", "poi"),
    (Word(f"every {Name('2')} days"), "every 2 days", "cada 2 días", "2 ngày một lần", "ia 2 rā"),
)


@pytest.mark.parametrize(("held", "english", "spanish", "vietnamese", "maori"), EVERY)
def test_every_kind_is_told_in_every_language(
    held: Held, english: str, spanish: str, vietnamese: str, maori: str
) -> None:
    readers = (Reader(language) for language in ("en", "es", "vi", "mi"))
    assert [reader.plain(str(held)) for reader in readers] == [english, spanish, vietnamese, maori]


@pytest.mark.parametrize(
    ("held", "metric", "us", "uk"),
    [
        (mm(900), "900 mm", "2 ft 11½ in", "2 ft 11½ in"),
        (qty(9, "L"), "9 L", "2.38 US gal", "1.98 UK gal"),
        (qty(18, "°C"), "18 °C", "64.4 °F", "64.4 °F"),
        (Range(600, 750, "mm"), "600 to 750 mm", "23½ in to 2 ft 5½ in", "23½ in to 2 ft 5½ in"),
        (Spread(20, "mm"), "± 20 mm", "± ¾ in", "± ¾ in"),
        (Share(0.25), "a quarter", "a quarter", "a quarter"),
        (bare(980, 5), "980", "980", "980"),
    ],
)
def test_amounts_are_told_in_the_readers_units(held: Held, metric: str, us: str, uk: str) -> None:
    systems: tuple[System, ...] = ("metric", "us", "uk")
    assert [Reader("en", units).plain(str(held)) for units in systems] == [metric, us, uk]


@pytest.mark.parametrize("units", ["metric", "us", "uk"])
@pytest.mark.parametrize(
    ("held", "text"),
    [
        (mm(900), "900 mm"),
        (mm(1500), "1500 mm"),
        (qty(9, "L"), "9 L"),
        (qty(18, "°C"), "18 °C"),
        (qty(1, "days"), "1 day"),
        (bare(2.5), "2.5"),
        (Word(f"{mm(900)} off"), "900 mm off"),
    ],
)
def test_arithmetic_keeps_the_units_it_was_worked_in(units: System, held: Held, text: str) -> None:
    assert Reader("en", units).worked(str(held)) == text


def test_both_sides_of_worked_arithmetic_stay_true() -> None:
    line = f"({mm(980)} - {mm(900)}) / {bare(2)} = {mm(40)}"
    assert Reader("en", "us").worked(line) == "(980 mm - 900 mm) / 2 = 40 mm"
    assert Reader("es").worked(f"{bare(2.5)} x {mm(40)} = {mm(100)}") == "2,5 x 40 mm = 100 mm"


@pytest.mark.parametrize(
    ("share", "told"),
    [(1.0, "all"), (0.5, "half"), (1 / 3, "a third"), (2 / 3, "two thirds"), (0.1, "a tenth"), (0.34, "34 %")],
)
def test_a_share_with_a_name_is_told_by_it(share: float, told: str) -> None:
    assert Reader().plain(str(Share(share))) == told


def test_a_shares_name_goes_as_the_readers_language_has_it() -> None:
    assert Reader("cy", own={"a third": "traean"}).tell(str(Share(1 / 3))) == "traean"


def test_months_are_joined_as_they_are_meant() -> None:
    tell = Reader().tell
    assert tell(str(Months((3,)))) == "March"
    assert tell(str(Months((3, 4, 5)))) == "March, April, May"
    assert tell(str(Months((3, 4), "or"))) == "March or April"
    assert tell(str(Months((3, 4, 5), "and"))) == "March, April and May"
    assert tell(str(Months((11, 12, 1, 2), "to"))) == "November to February"


def test_a_sentence_is_told_whole_in_its_language_and_left_whole_where_there_are_no_words() -> None:
    assert Reader().tell(f"{mm(7.5)} off each side") == f"7.5{TIE}mm off each side"
    assert Reader("es").tell(f"{mm(7.5)} off each side") == f"7,5{TIE}mm por lado"
    assert Reader("es").tell(f"Blasted {mm(7.5)} through") == f"Blasted 7,5{TIE}mm through"
    assert Reader("es").tell("") == ""


def test_pages_tie_an_amount_to_its_unit_and_terminals_do_not() -> None:
    words = f"{qty(2, 'g/m²')}, {Count(2, 'pass', 'passes')}"
    assert Reader().tell(words) == f"2{TIE}g/m², 2{TIE}passes"
    assert Reader().plain(words) == "2 g/m², 2 passes"


def test_a_row_of_amounts_says_a_unit_that_all_share_once() -> None:
    assert Reader("es").listed((0.5, 1.5), "L/m²") == f"0,5, 1,5{TIE}L/m²"
    assert Reader().listed((800.0, 1600.0), "mm") == f"800{TIE}mm, 1.6{TIE}m"
    assert Reader().listed((1.0, 2.0), "") == "1, 2"


def test_the_decimal_mark_is_that_of_the_region() -> None:
    assert [decimal_mark(tag) for tag in ("en", "es", "es-MX", "vi", "mi", "cy", "?")] == list(".,.,...")
    assert Reader("es-MX").value(27.7213, "%") == f"27.7{TIE}%"


@pytest.mark.parametrize(
    ("language", "text"),
    [
        ("en", "2 June 2027"),
        ("en-US", "June 2, 2027"),
        ("es", "2 de junio de 2027"),
        ("vi", "2 tháng 6, 2027"),
        ("mi-NZ", "2 Hune 2027"),
        ("not a tag", "2 June 2027"),
    ],
)
def test_a_day_is_told_in_its_language(language: str, text: str) -> None:
    assert day_told(DAY, language) == Reader(language).day(DAY) == text


def test_a_language_nobody_knows_has_the_dates_of_british_english() -> None:
    assert str(locale_of("not a tag")) == "en_GB"


# -- the crew's own words --


def test_a_crews_own_words_go_over_ours_and_tell_what_we_lack() -> None:
    own = {"{} off each side": "{} de cada lado", "blasted {} through": "reventado {}"}
    reader = Reader("es-MX", own=own)
    assert reader.tell(f"{mm(40)} off each side") == f"40{TIE}mm de cada lado"
    assert reader.tell(f"Blasted {mm(1.5)} through") == f"reventado 1.5{TIE}mm"


def test_a_crews_own_words_with_another_count_of_amounts_are_not_used() -> None:
    assert Reader("es", own={"blasted {} through": "reventado"}).tell(f"Blasted {mm(2)} through") == (
        f"Blasted 2{TIE}mm through"
    )


# -- what would be told in English --


def test_what_has_no_words_is_known_by_its_key() -> None:
    spanish = Reader("es")
    assert list(spanish.gaps(f"Blasted {mm(2)} through")) == ["blasted {} through"]
    assert list(spanish.gaps(f"{mm(40)} off each side")) == []
    assert list(Reader("es", own={"blasted {} through": "{}"}).gaps(f"Blasted {mm(2)} through")) == []


def test_amounts_signs_and_names_leave_no_gap_and_english_has_none() -> None:
    assert list(Reader("mi").gaps(f"({mm(980)} - {mm(900)}) / {bare(2)} = {mm(40)}")) == []
    assert list(Reader("mi").gaps(str(Name("Ilex crenata")))) == []
    assert list(Reader("en-NZ").gaps("Blasted through")) == []


def test_words_within_words_and_units_that_are_words_leave_gaps_too() -> None:
    assert list(Reader("es").gaps(str(Word(f"blasted {Word('clean through')}")))) == [
        "blasted {}", "clean through"
    ]  # fmt: skip
    assert list(Reader("mi").gaps(str(Count(3, "bulb", "bulbs")))) == ["bulbs"]
    assert list(Reader("mi").gaps(str(qty(3, "bulbs")))) == ["bulbs"]
    assert list(Reader("es").gaps(str(Count(3, "bulb", "bulbs")))) == []


def test_a_unit_that_a_row_shares_is_said_once() -> None:
    assert Reader("es").listed((0.5, 1.5, 2), "weeks").replace("\u00a0", " ") == "0,5, 1,5, 2 semanas"
    assert Reader().listed((1.5, 2.5), "h").replace("\u00a0", " ") == "1 h 30 min, 2 h 30 min"
    assert Reader().listed((1,), "week").replace("\u00a0", " ") == "1 week"


def test_what_is_told_in_english_is_a_gap() -> None:
    assert list(
        Reader("es").gaps(f"{Count(2, 'gizmo', 'gizmos')} {Amount(2, 'weeks')}, {Word('every odd thing')}")
    ) == ["gizmos", "every odd thing"]
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
