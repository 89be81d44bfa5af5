import pytest

from howto.model.technique import When
from howto.read.when import read_when
from howto.span import Span

HERE = Span("a.md", 3, 3, 16)


def when(text: str) -> When | None:
    found, findings = read_when(text, HERE)
    assert (found is None) == bool(findings)
    return found


@pytest.mark.parametrize(
    ("text", "kind", "days", "until"),
    [
        ("Within 2 days", "within", 2, None),
        ("within the first two weeks", "within", 14, None),
        ("In 3 weeks", "within", 21, None),
        ("Today", "within", 0, None),
        ("Straight away", "within", 0, None),
        ("After 6 weeks", "after", 42, None),
        ("After a fortnight", "after", 14, None),
        ("From 10 days", "after", 10, None),
        ("Tomorrow", "after", 1, None),
        ("Every week for 12 weeks", "every", 7, 84),
        ("Every 3 days", "every", 3, None),
        ("Each day for the first month", "every", 1, 30),
        ("every 2 weeks until 3 months", "every", 14, 90),
        ("Weekly", "every", 7, None),
        ("daily.", "every", 1, None),
        ("For 2 weeks", "every", 1, 14),
        ("After\u00a01 year", "after", 365, None),
    ],
)
def test_lengths_of_time_are_days(text: str, kind: str, days: int, until: int | None) -> None:
    found = when(text)
    assert found is not None
    assert (found.text, found.kind, found.days, found.until_days) == (text, kind, days, until)


@pytest.mark.parametrize(
    ("text", "season", "part"),
    [
        ("In spring", "spring", None),
        ("In late summer", "summer", "late"),
        ("every mid-winter", "winter", "mid"),
        ("Early fall", "autumn", "early"),
        ("In the autumn", "autumn", None),
    ],
)
def test_seasons_may_have_a_part(text: str, season: str, part: str | None) -> None:
    found = when(text)
    assert found is not None
    assert (found.kind, found.season, found.part) == ("season", season, part)


@pytest.mark.parametrize(
    ("text", "month"), [("In March", 3), ("december", 12), ("In Sept.", 9), ("In early May", 5), ("In feb", 2)]
)
def test_months_may_be_shortened(text: str, month: int) -> None:
    found = when(text)
    assert found is not None
    assert (found.kind, found.month) == ("month", month)


@pytest.mark.parametrize(
    ("text", "kind"),
    [("Next visit", "next visit"), ("At the next visit", "next visit"), ("Always", "always"), ("NEVER", "always")],
)
def test_other_times_are_as_they_say(text: str, kind: str) -> None:
    found = when(text)
    assert found is not None
    assert found.kind == kind


@pytest.mark.parametrize(
    "text",
    [
        "Soon",
        "Within some days",
        "Within 0 days",
        "After 99999 weeks",
        "Within 2 days for 3 weeks",
        "In Marz",
        "every some days for 3 weeks",
        "Every 2 days for no weeks",
        "2 days",
        "",
    ],
)
def test_other_words_are_a_finding_that_lists_the_forms(text: str) -> None:
    found, (finding,) = read_when(text, HERE, "- Soon: water")
    assert found is None
    assert (finding.rule, finding.span, finding.text) == ("file.when", HERE, "- Soon: water")
    assert "`Within 2 days`, `After 6 weeks`, `Every 3 days`" in finding.mend


def test_a_slip_in_a_form_is_offered_the_form() -> None:
    (finding,) = read_when("Nxt visit", HERE)[1]
    assert finding.mend.startswith("write `Next visit:`; the forms are")
