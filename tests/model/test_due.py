from datetime import date

import pytest

from howto.model.due import Due, due
from howto.model.technique import When

VISITED = date(2026, 10, 14)


def found(when: When, hemisphere: str = "north", next_visit: date | None = None) -> Due:
    """Return when a task falls due after the visit of 14 October 2026."""
    return due(when, VISITED, next_visit, "south" if hemisphere == "south" else "north")


def test_within_counts_from_the_visit() -> None:
    assert found(When(text="within 2 days", kind="within", days=2)) == Due(VISITED, date(2026, 10, 16))


def test_within_crosses_a_leap_day() -> None:
    when = When(text="within 2 days", kind="within", days=2)
    assert due(when, date(2028, 2, 28), None, "north").end == date(2028, 3, 1)


def test_after_starts_on_the_day_and_has_no_end() -> None:
    assert found(When(text="after 6 weeks", kind="after", days=42)) == Due(date(2026, 11, 25), None)


def test_after_crosses_the_year() -> None:
    assert found(When(text="after 90 days", kind="after", days=90)).start == date(2027, 1, 12)


def test_every_starts_one_interval_on_and_may_end() -> None:
    assert found(When(text="every 7 days", kind="every", days=7)) == Due(date(2026, 10, 21), None)
    bounded = When(text="every 3 days for 2 weeks", kind="every", days=3, until_days=14)
    assert found(bounded) == Due(date(2026, 10, 17), date(2026, 10, 28))


def test_next_visit_is_the_day_of_it_or_unknown() -> None:
    when = When(text="next visit", kind="next visit")
    assert found(when, next_visit=date(2026, 11, 25)) == Due(date(2026, 11, 25), date(2026, 11, 25))
    assert found(when) == Due(None, None)


def test_always_has_no_day() -> None:
    assert found(When(text="always", kind="always")) == Due(None, None)


@pytest.mark.parametrize(
    ("hemisphere", "start", "end"),
    [("north", date(2027, 3, 1), date(2027, 5, 31)), ("south", date(2026, 10, 14), date(2026, 11, 30))],
)
def test_a_season_is_the_next_one_that_has_not_ended(hemisphere: str, start: date, end: date) -> None:
    assert found(When(text="spring", kind="season", season="spring"), hemisphere) == Due(start, end)


def test_winter_runs_over_the_year_end() -> None:
    when = When(text="winter", kind="season", season="winter")
    assert found(when) == Due(date(2026, 12, 1), date(2027, 2, 28))


def test_a_part_of_a_season_is_one_month() -> None:
    when = When(text="late winter", kind="season", season="winter", part="late")
    assert found(when) == Due(date(2027, 2, 1), date(2027, 2, 28))


def test_a_month_is_itself_whichever_hemisphere() -> None:
    when = When(text="January", kind="month", month=1)
    assert found(when, "south") == Due(date(2027, 1, 1), date(2027, 1, 31))


def test_a_season_without_a_name_has_no_day() -> None:
    assert found(When(text="in season", kind="season")) == Due(None, None)
