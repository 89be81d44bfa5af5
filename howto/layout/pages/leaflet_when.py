"""When a client's task is to be done, in days they can find on a calendar."""

from datetime import date

from babel.dates import format_date, format_skeleton

from howto.languages.form import Labels
from howto.languages.reader import day_told, locale_of
from howto.model.task import Task

A_DAY, A_WEEK = 1, 7


def full_day(day: date, language: str) -> str:
    """Return a day with its weekday and year: `Friday 16 October 2026`."""
    locale = locale_of("en-GB" if language == "en" else language)
    return format_date(day, format="EEEE, d LLLL y" if locale.language == "mi" else "full", locale=locale)


def when_shown(task: Task, language: str, say: Labels) -> str:
    """Return when a task is to be done: by a day, from a day on, every so often, in a stretch of months."""
    start, end = task.start, task.end
    if start is None:
        return say["always"] if task.kind == "always" else task.asked
    if task.kind in {"season", "month"}:
        return _months(start, end or start, language, say)
    if task.kind == "every":
        return _round(task, start, language, say)
    pattern = {"within": say["by"], "after": say["from_"], "next visit": say["at_visit"]}[task.kind]
    return pattern.format(date=full_day(task.day or start, language))


def _round(task: Task, start: date, language: str, say: Labels) -> str:
    """Return how often, from when, and until when where that is known."""
    often = {A_DAY: say["each_day"], A_WEEK: say["each_week"]}.get(task.days) or say["each_days"].format(days=task.days)
    if task.end is None:
        return say["each_from"].format(every=often, start=day_told(start, language))
    return say["each_until"].format(every=often, start=day_told(start, language), end=day_told(task.end, language))


def _months(start: date, end: date, language: str, say: Labels) -> str:
    """Return a stretch of months: `November 2026`, `March to May 2027`."""
    locale = locale_of(language)
    last = format_skeleton("yMMMM", end, locale=locale)
    if (start.year, start.month) == (end.year, end.month):
        return last
    same = start.year == end.year
    first = format_date(start, "LLLL", locale=locale) if same else format_skeleton("yMMMM", start, locale=locale)
    return say["between"].format(start=first, end=last)


def joined_names(names: tuple[str, ...], say: Labels) -> str:
    """Return names in a row: `the pear, the hedge and the lawn`."""
    if len(names) < 2:
        return "".join(names)
    return say["and_"].format(first=", ".join(names[:-1]), last=names[-1])
