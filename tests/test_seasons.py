"""Seasons and months in either hemisphere.

The months of the meteorological seasons are those of the Met Office (UK); the southern ones are six months on,
as the Bureau of Meteorology (Australia) has them. The spread of growth over the year is from memory.
"""

from datetime import date, timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st

from howto.languages.form import MONTHS
from howto.seasons import (
    growing_days,
    growth_date,
    month_here,
    month_list,
    month_name,
    month_run,
    month_start,
    months_between,
    months_here,
    months_of,
    nearest_season_word,
    next_in_months,
    season_months,
    season_of,
    southern,
)


@pytest.mark.parametrize(
    ("season", "north", "south"),
    [
        ("spring", (3, 4, 5), (9, 10, 11)),
        ("summer", (6, 7, 8), (12, 1, 2)),
        ("autumn", (9, 10, 11), (3, 4, 5)),
        ("winter", (12, 1, 2), (6, 7, 8)),
    ],
)
def test_the_months_of_a_season(season: str, north: tuple[int, ...], south: tuple[int, ...]) -> None:
    assert season_months(season, "north") == north
    assert season_months(season, "south") == south


@pytest.mark.parametrize(
    ("words", "months"),
    [
        ("spring", (3, 4, 5)),
        ("late spring to early autumn", (5, 6, 7, 8, 9)),
        ("Early Summer – late Summer", (6, 7, 8)),
        ("mid-summer", (7,)),
        ("November to February", (11, 12, 1, 2)),
        ("mar, May and sept", (3, 5, 9)),
        ("autumn, spring", (9, 10, 11, 3, 4, 5)),
        ("fall", (9, 10, 11)),
        ("any time", tuple(range(1, 13))),
        ("winter to spring", (12, 1, 2, 3, 4, 5)),
    ],
)
def test_words_that_name_months(words: str, months: tuple[int, ...]) -> None:
    assert months_of(words, "north") == months


@pytest.mark.parametrize("words", ["", "when dry", "sprig", "ma", "spring to summer to autumn", "to", "spring to"])
def test_words_that_name_none(words: str) -> None:
    assert months_of(words, "north") is None


def test_a_season_is_turned_round_for_the_south_and_a_month_is_not() -> None:
    assert months_of("late spring to early autumn", "south") == (11, 12, 1, 2, 3)
    assert months_of("March", "south") == (3,)
    assert southern(11) == 5
    assert season_of(1, "north") == "winter"
    assert season_of(1, "south") == "summer"


def test_the_nearest_word_is_offered() -> None:
    assert nearest_season_word("sumer") == "summer"
    assert nearest_season_word("octobr") == "october"
    assert nearest_season_word("xyzzy") is None


def test_growth_falls_in_the_growing_months_only() -> None:
    # 245 days from March to October, so 245 mm a year is 1 mm a day
    assert growth_date(date(2026, 3, 31), 10, 245, "north") == date(2026, 4, 10)
    assert growth_date(date(2026, 10, 31), 10, 245, "north") == date(2027, 3, 10)
    assert growth_date(date(2026, 10, 14), 0, 245, "north") == date(2026, 10, 14)
    # September to April in the south, 242 days
    assert growth_date(date(2026, 4, 30), 10, 242, "south") == date(2026, 9, 10)


def test_the_growing_days_of_a_year() -> None:
    # March to October, and September to April
    assert (growing_days("north"), growing_days("south")) == (245, 242)


def test_growth_that_never_comes() -> None:
    assert growth_date(date(2026, 1, 1), 10, 0, "north") is None
    assert growth_date(date(2026, 1, 1), 5000, 1, "north") is None


def test_the_next_day_in_a_month_that_will_do() -> None:
    assert next_in_months(date(2026, 5, 20), (5, 6)) == date(2026, 5, 20)
    assert next_in_months(date(2026, 11, 20), (5, 6)) == date(2027, 5, 1)
    assert next_in_months(date(2026, 12, 31), (1,)) == date(2027, 1, 1)


@given(st.dates(date(2000, 1, 1), date(2100, 1, 1)), st.floats(1, 500), st.floats(50, 2000))
def test_more_growth_takes_longer(start: date, growth_mm: float, a_year: float) -> None:
    first = growth_date(start, growth_mm, a_year, "north")
    second = growth_date(start, growth_mm * 2, a_year, "north")
    assert first is not None
    assert second is None or second >= first >= start + timedelta(days=0)


@given(st.integers(1, 12))
def test_south_of_south_is_north(month: int) -> None:
    assert southern(southern(month)) == month
    assert months_of(MONTHS[month - 1], "north") == (month,)


def test_months_stand_where_the_crew_works() -> None:
    assert [month_here(7, "north"), month_here(7, "south")] == [7, 1]
    assert months_here((11, 12, 1), "north") == (11, 12, 1)
    assert months_here((11, 12, 1), "south") == (5, 6, 7)


def test_months_are_named_as_a_season_is_written() -> None:
    assert month_name(1) == "January"
    assert month_list((3, 5, 12)) == "March, May, December"
    assert month_run((11, 12, 1)) == "November to January"
    assert month_run((4,)) == "April"


def test_months_are_counted_over_the_turn_of_the_year() -> None:
    assert month_start(date(2026, 11, 30), 3) == date(2027, 2, 1)
    assert month_start(date(2026, 1, 31), -1) == date(2025, 12, 1)
    assert months_between(date(2026, 11, 30), date(2027, 2, 1)) == 3
