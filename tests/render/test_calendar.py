"""The calendar file keeps RFC 5545 to the letter, and says the same to a second reader of our own."""

from datetime import UTC, date, datetime, timedelta
from typing import Any
from uuid import NAMESPACE_DNS, NAMESPACE_URL, uuid5

import pytest
from hypothesis import given
from hypothesis import strategies as st
from icalendar import Calendar, Event

from howto.compute.tasks import plan_of
from howto.model.visit import Job, Visit
from howto.render.calendar import NAMES, calendar, uid
from tests.support import sample
from tests.support.visits import care, job, visit

TODAY = sample.TODAY


def file_of(found: Visit, today: date = TODAY) -> bytes:
    """Return the calendar of a visit."""
    ready = sample.ready_visit(found, [()] * len(found.jobs))
    return calendar(ready, plan_of(ready)[0], today)


def made(*jobs: Job, **changes: object) -> bytes:
    """Return the calendar of a visit with these jobs; no next visit unless one is given."""
    return file_of(visit(*jobs, **{"next_visit": None, **changes}))


def unfolded(data: bytes) -> list[str]:
    """Return the content lines of a file, read by hand: CRLF, folds joined, nothing else taken for granted."""
    assert data.endswith(b"\r\n")
    physical = data[:-2].split(b"\r\n")
    assert all(b"\n" not in line and b"\r" not in line and len(line) <= 75 for line in physical)
    lines: list[bytes] = []
    for line in physical:
        line.decode("utf-8")  # a fold never parts a letter
        if line[:1] in (b" ", b"\t"):
            lines[-1] += line[1:]
        else:
            lines.append(line)
    return [line.decode("utf-8") for line in lines]


def unescaped(text: str) -> str:
    """Return a TEXT value as it was before escaping."""
    out, letters = "", iter(text)
    for letter in letters:
        out += {"n": "\n", "N": "\n"}.get(following := next(letters), following) if letter == "\\" else letter
    return out


def read_by_hand(data: bytes) -> list[dict[str, str]]:
    """Return the entries of a file as names and values, those of an alarm under `ALARM-`."""
    events: list[dict[str, str]] = []
    stack: list[str] = []
    for line in unfolded(data):
        name, _, value = line.partition(":")
        if name == "BEGIN":
            stack.append(value)
            events += [{}] if value == "VEVENT" else []
        elif name == "END":
            assert stack.pop() == value
        elif "VEVENT" in stack:
            events[-1][("ALARM-" if stack[-1] == "VALARM" else "") + name] = value
    assert stack == []
    return events


def read_by_library(data: bytes) -> list[Event]:
    """Return the entries of a file as the library reads them back."""
    return [event for event in Calendar.from_ical(data).walk("VEVENT") if isinstance(event, Event)]


def one(*cares: Any, **changes: object) -> dict[str, str]:
    """Return the one entry of a visit with one job."""
    (event,) = read_by_hand(made(job("the pair", *cares), **changes))
    return event


def test_a_task_is_an_all_day_entry_that_ends_the_day_after_and_blocks_nothing() -> None:
    event = one(care("Water once.", "within", 2))
    assert event["DTSTART;VALUE=DATE"] == "20261016"
    assert event["DTEND;VALUE=DATE"] == "20261017"
    assert event["TRANSP"] == "TRANSPARENT"
    assert event["SUMMARY"] == "Orchard end: Water once"
    assert event["DTSTAMP"] == "20261014T000000Z"
    assert event["SEQUENCE"] == "0"


def test_the_reminder_comes_the_evening_before() -> None:
    event = one(care("Water once.", "within", 2))
    # 6 hours before midnight is 18:00 of the day before; likewise P58: 09:00 of it is 15 hours before
    assert (event["ALARM-TRIGGER"], event["ALARM-ACTION"]) == ("-PT6H", "DISPLAY")
    assert event["ALARM-DESCRIPTION"] == "Orchard end: Water once"


def test_the_file_says_its_version_and_maker_once() -> None:
    lines = unfolded(made(job("a", care("Water.", "within", 2))))
    assert lines.count("VERSION:2.0") == 1
    assert lines.count("PRODID:-//howto//care leaflet//EN") == 1
    assert "X-WR-CALNAME:Orchard end" in lines


@pytest.mark.parametrize(
    ("visited", "days", "start", "end"),
    [
        (date(2028, 2, 27), 2, "20280229", "20280301"),  # a leap day
        (date(2026, 12, 29), 2, "20261231", "20270101"),
        (date(2026, 10, 14), 0, "20261015", "20261016"),  # a reminder for the day itself would come too late
    ],
)
def test_days_over_the_end_of_a_month_and_a_year(visited: date, days: int, start: str, end: str) -> None:
    event = one(care("Water.", "within", days), date=visited)
    assert (event["DTSTART;VALUE=DATE"], event["DTEND;VALUE=DATE"]) == (start, end)


def test_an_end_is_the_first_day_that_is_no_longer_part() -> None:
    # RFC 5545, 3.6.1: 28 June to 8 July 2007, both included, ends on 9 July
    event = Event()
    event.add("dtstart", date(2007, 6, 28))
    event.add("dtend", date(2007, 7, 8) + timedelta(days=1))
    lines = event.to_ical().decode().split("\r\n")
    assert "DTSTART;VALUE=DATE:20070628" in lines
    assert "DTEND;VALUE=DATE:20070709" in lines


def test_names_become_uids_as_published() -> None:
    # RFC 9562, appendix A.4
    assert str(uuid5(NAMESPACE_DNS, "www.example.com")) == "2ed6657d-e927-568b-95e1-2665a8aea6a2"
    assert str(NAMES) == "4c2b80f8-8d26-510b-b92e-eec1fbb4957b"
    assert uuid5(NAMESPACE_URL, "https://example.org/howto") == NAMES
    assert str(uid(visit(job("a"), id="leaf-1"), "step-2")) == "a0cf7ff6-7aba-5f29-bb4d-74a003dd4b3f"


def test_a_uid_outlives_a_new_day_a_new_amount_and_a_new_build() -> None:
    water = job("a", care("Water 9 L.", "within", 2))
    first = read_by_hand(made(water))[0]
    moved = read_by_hand(
        file_of(visit(water, date=date(2026, 10, 20), next_visit=None, revision=1), date(2026, 10, 21))
    )[0]
    assert first["UID"] == moved["UID"]
    assert (moved["DTSTART;VALUE=DATE"], moved["SEQUENCE"], moved["DTSTAMP"]) == ("20261022", "1", "20261021T000000Z")
    assert read_by_hand(made(water, id="2026-10-14-mill"))[0]["UID"] != first["UID"]
    assert made(water) == made(water)


def test_every_uid_of_a_file_is_its_own() -> None:
    water = care("Water 9 L.", "within", 2)
    found = read_by_hand(
        made(job("a", water), job("b", water, care("Look.", "after", 42)), next_visit=date(2026, 11, 25))
    )
    assert len(found) == len({event["UID"] for event in found}) == 4


def test_what_is_written_is_escaped() -> None:
    # RFC 5545, 3.3.11: backslash, comma and semicolon take a backslash, a new line is \n, a colon stands as it is
    event = one(care("Water: a can, slowly; then look\\see.", "within", 2))
    assert event["DESCRIPTION"].startswith(
        "Water: a can\\, slowly\\; then look\\\\see.\\nWho to ask: Lantern Field crew\\,"
    )
    assert unescaped(event["DESCRIPTION"]).split("\n")[0] == "Water: a can, slowly; then look\\see."


def test_the_rfcs_own_text_is_escaped_as_it_shows() -> None:
    # RFC 5545, 3.3.11
    event = Event()
    event.add("description", "Project XYZ Final Review\nConference Room - 3B\nCome Prepared.")
    line = next(line for line in unfolded(event.to_ical()) if line.startswith("DESCRIPTION"))
    assert line == "DESCRIPTION:Project XYZ Final Review\\nConference Room - 3B\\nCome Prepared."


def test_long_lines_are_folded_and_no_letter_is_parted() -> None:
    words = "Arrose-le une fois. " + "é" * 120
    event = one(care(words, "within", 2))
    assert unescaped(event["DESCRIPTION"]).split("\n")[0] == words


def test_a_long_title_is_cut_at_a_word() -> None:
    event = one(
        care("Look for new growth on every side of the two balls and tell us of a side that stays bare.", "after", 9)
    )
    assert event["SUMMARY"] == "Orchard end: Look for new growth on every side of the two balls and tell us of a…"


def test_what_comes_round_has_a_rule_with_its_last_day() -> None:
    event = one(care("Water.", "every", 3, until_days=21))
    assert event["DTSTART;VALUE=DATE"] == "20261017"
    assert event["RRULE"] == "FREQ=DAILY;UNTIL=20261104;INTERVAL=3"


def test_what_has_no_end_stops_before_the_next_visit_or_after_a_year() -> None:
    mow = job("a", care("Mow.", "every", 7))
    until_visit = read_by_hand(made(mow, next_visit=date(2026, 11, 25)))[0]
    assert until_visit["RRULE"] == "FREQ=DAILY;UNTIL=20261124;INTERVAL=7"
    assert read_by_hand(made(mow))[0]["RRULE"] == "FREQ=DAILY;UNTIL=20271021;INTERVAL=7"


def test_what_comes_round_only_once_has_no_rule() -> None:
    assert "RRULE" not in one(care("Water.", "every", 7, until_days=13))


def test_the_next_visit_has_an_entry_with_what_we_do_then() -> None:
    tasks = (care("We catch the cans again.", "next visit"), care("Sweep.", "always"))
    (event,) = read_by_hand(made(job("a", *tasks), next_visit=date(2026, 11, 25)))
    assert (event["SUMMARY"], event["DTSTART;VALUE=DATE"]) == ("Orchard end: Our next visit", "20261125")
    assert event["DESCRIPTION"].startswith("We catch the cans again.\\nWho to ask")


def test_a_task_says_what_it_is_for_and_why_it_is_a_sum() -> None:
    bark = (
        job("the bed", care("Order 80 L of bark.", "within", 2)),
        job("the hedge", care("Order 120 L of bark.", "within", 2)),
    )
    (event,) = read_by_hand(made(*bark))
    told = unescaped(event["DESCRIPTION"]).replace("\u00a0", " ").split("\n")
    assert told[:3] == ["Order 200 L of bark.", "for the bed, the hedge", "80 L + 120 L together"]


def test_a_season_starts_on_its_first_day() -> None:
    assert one(care("Feed.", "season", season="spring"))["DTSTART;VALUE=DATE"] == "20270301"


def test_the_library_reads_back_what_was_written() -> None:
    data = made(
        job("the pear", care("Water, twice; slowly.", "every", 3, until_days=21)), next_visit=date(2026, 11, 25)
    )
    first, last = read_by_library(data)
    assert first.decoded("dtstart") == date(2026, 10, 17)
    assert first.decoded("dtend") - first.decoded("dtstart") == timedelta(days=1)
    assert first.decoded("dtstamp") == datetime(2026, 10, 14, tzinfo=UTC)
    assert str(first["summary"]) == "Orchard end: Water, twice"
    rule: Any = first["rrule"]
    assert rule["UNTIL"] == [date(2026, 11, 4)]
    (alarm,) = first.walk("VALARM")
    assert alarm.decoded("trigger") == timedelta(hours=-6)
    assert last.decoded("dtstart") == date(2026, 11, 25)
    assert Calendar.from_ical(data).to_ical() == data


@given(st.text(st.characters(exclude_categories=("Cs", "Cc")), min_size=1, max_size=160), st.integers(0, 400))
def test_two_readers_agree_whatever_is_written(words: str, days: int) -> None:
    data = made(job("", care(f"Do {words}", "within", days)))
    (event,) = read_by_hand(data)
    (same,) = read_by_library(data)
    assert unescaped(event["DESCRIPTION"]) == str(same["description"])
    assert unescaped(event["DESCRIPTION"]).startswith(f"Do {words}".strip())
