"""A client's dated tasks as a calendar file: all-day entries with a reminder the evening before (RFC 5545, 2009)."""

import re
from datetime import UTC, date, datetime, time, timedelta
from typing import Final
from uuid import NAMESPACE_URL, UUID, uuid5

from icalendar import Alarm, Calendar, Event

from howto.languages import language_of
from howto.model.filling import printed
from howto.model.prose import capital, plain
from howto.model.ready import ReadyVisit
from howto.model.task import Plan, Task
from howto.model.visit import Visit

MAKER: Final = "-//howto//care leaflet//EN"
NAMES: Final = uuid5(NAMESPACE_URL, "https://example.org/howto")  # under it a task's name becomes its UID
EVENING: Final = timedelta(hours=-6)  # before midnight: 18:00 of the day before
DAY: Final = timedelta(days=1)
YEAR: Final = timedelta(days=365)
LONGEST: Final = 70  # characters of a title, ours: what a phone shows of it


def calendar(ready: ReadyVisit, plan: Plan, today: date) -> bytes:
    """Return the calendar of a visit's dated tasks and of the next visit.

    An entry keeps its UID while its task keeps its words, whatever the dates; `today` stamps it, and the visit's
    revision is its sequence.
    """
    visit = ready.visit
    say = language_of(visit.language).labels
    whom = say["call_whom"].format(contact=ready.reader.tell(ready.crew.contact or ready.crew.name))
    file = Calendar()
    file.add("prodid", MAKER)
    file.add("version", "2.0")
    file.add("x-wr-calname", visit.site)
    for task in plan.tasks:
        if task.day is not None and task.kind != "next visit":
            file.add_component(_event(ready, task, today, whom))
    if visit.next_visit is not None:
        file.add_component(_next_visit(ready, plan, visit.next_visit, today, whom))
    return bytes(file.to_ical())


def uid(visit: Visit, name: str) -> UUID:
    """Return the UID of a task of a visit: a name in it, and nothing of its dates."""
    return uuid5(NAMES, f"{visit.id}/{name}")


def _event(ready: ReadyVisit, task: Task, today: date, whom: str) -> Event:
    """Return the entry of a task: on the day that counts, or over and over until its end."""
    visit, say = ready.visit, language_of(ready.visit.language).labels
    day = max(task.day or visit.date, visit.date + DAY)
    told = [capital(plain(printed(task.sentence, ready.reader)).strip())]
    told += [say["for_what"].format(what=", ".join(task.what))] if task.what else []
    told += [say["added"].format(sum=ready.reader.filled(task.added))] if task.added else []
    event = _entry(visit, task.key, day, today, f"{visit.site}: {_title(told[0])}")
    event.add("description", "\n".join((*told, whom)))
    if task.kind == "every" and task.days:
        last = task.end or (visit.next_visit - DAY if visit.next_visit and visit.next_visit > day else day + YEAR)
        if last >= day + timedelta(days=task.days):
            event.add("rrule", {"freq": "daily", "interval": task.days, "until": last})
    return event


def _next_visit(ready: ReadyVisit, plan: Plan, day: date, today: date, whom: str) -> Event:
    """Return the entry of the next visit, with what the crew does then."""
    visit = ready.visit
    title = language_of(visit.language).labels["next_visit"].partition(":")[0]
    event = _entry(visit, "next visit", day, today, f"{visit.site}: {title}")
    then = [plain(printed(task.sentence, ready.reader)) for task in plan.tasks if task.kind == "next visit"]
    event.add("description", "\n".join((*then, whom)))
    return event


def _entry(visit: Visit, name: str, day: date, today: date, title: str) -> Event:
    """Return an all-day entry that blocks no time, with its reminder."""
    event = Event()
    event.add("uid", str(uid(visit, name)))
    event.add("dtstamp", datetime.combine(today, time(), tzinfo=UTC))
    event.add("sequence", visit.revision)
    event.add("dtstart", day)
    event.add("dtend", day + DAY)  # the first day that is no longer part of it
    event.add("summary", title)
    event.add("transp", "TRANSPARENT")
    alarm = Alarm()
    alarm.add("action", "DISPLAY")
    alarm.add("description", title)
    alarm.add("trigger", EVENING)
    event.add_component(alarm)
    return event


def _title(text: str) -> str:
    """Return the first sentence of a text, cut at a word where it is long."""
    first = re.split(r"(?<=[.!?;])\s", text, maxsplit=1)[0].rstrip(".;")
    if len(first) <= LONGEST:
        return first
    return first[: LONGEST - 1].rsplit(" ", 1)[0].rstrip(" ,;:") + "…"
