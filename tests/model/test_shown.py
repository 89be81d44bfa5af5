from datetime import date

import pytest

from howto.languages.reader import Reader, day_told, locale_of
from howto.model.measures import Measures
from howto.model.shown import shown_cell, shown_measures
from tests.support import sample

NBSP = "\u00a0"


class Odd(Measures):
    """Every kind of field a family may declare."""

    heights_mm: tuple[float, ...] = (400.0, 800.0)
    deciduous: bool = True
    evergreen: bool = False
    planted_on: date = date(2026, 3, 1)
    rows: int = 2
    rate_g_per_m2: float = 25.0


def test_every_kind_of_measure_is_shown() -> None:
    found = {each.key: each.value.replace(NBSP, " ") for each in shown_measures(Odd(), Reader())}
    assert found == {
        "heights": "400, 800 mm",
        "deciduous": "yes",
        "evergreen": "no",
        "planted on": "1 March 2026",
        "rows": "2",
        "rate": "25 g/m²",
    }


def test_a_list_in_more_than_one_unit_keeps_them_all() -> None:
    (heights, *_) = shown_measures(Odd(heights_mm=(800.0, 1600.0)), Reader())
    assert heights.value.replace(NBSP, " ") == "800 mm, 1.6 m"


def test_a_tolerance_stands_beside_its_measure_alone() -> None:
    found = {each.key: each.tolerance.replace(NBSP, " ") for each in shown_measures(sample.MEASURES, Reader())}
    assert found == {"shape": "", "finished width": "± 20 mm", "standing width": "", "passes": ""}


@pytest.mark.parametrize(
    ("language", "text"),
    [
        ("en", "29 February 2028"),
        ("en-NZ", "29 February 2028"),
        ("en-US", "February 29, 2028"),
        ("es", "29 de febrero de 2028"),
        ("vi", "29 tháng 2, 2028"),
        ("mi", "29 Pēpuere 2028"),
        ("not a tag", "29 February 2028"),
    ],
)
def test_a_day_is_written_in_the_language(language: str, text: str) -> None:
    assert day_told(date(2028, 2, 29), language) == text


def test_a_cell_without_unit_is_a_word_or_a_number() -> None:
    assert shown_cell("every 100 mm", "", Reader()) == "every 100 mm"
    assert shown_cell(7.5, "", Reader()) == "7.5"
    assert shown_cell(7.5, "", Reader(), 1) == "8"


def test_an_unknown_region_falls_back_to_the_language() -> None:
    assert locale_of("es-ZZ").language == "es"
