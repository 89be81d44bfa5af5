"""A client's leaflet: what was done, what to do and by when, what not to do, when to call."""

from collections.abc import Iterator, Sequence
from datetime import date
from typing import Final, NamedTuple

from babel.dates import format_date, format_skeleton

from howto.labels import Labels, labels
from howto.layout.card import joined, legible, small_words, stamp
from howto.layout.numbers import capital
from howto.layout.year import Look, Mark, year_line
from howto.model.due import Due, due
from howto.model.figure import Figure
from howto.model.prose import Prose, plain, prose
from howto.model.sheet import (
    ArtBlock,
    Block,
    Bullets,
    Dated,
    Entry,
    Facts,
    Paragraph,
    Photo,
    Section,
    Sheet,
)
from howto.model.shown import locale_of, shown, shown_cell, shown_day
from howto.model.technique import Care
from howto.model.visit import Job, Visit

A4_MM: Final = (210.0, 297.0)  # ISO 216
LINE_MM: Final = 174.0  # between the margins
TEXT_PT, SMALL_PT = 14.0, 12.0  # 12 pt at least, 14 pt reaches more readers: RNIB, Clear Print guidelines
LARGE_PT, LARGE_SMALL_PT = 20.0, 18.0  # 18 pt at least, 20 pt preferred: ACB/CCLVI, Large print guidelines
MOST_PAGES, MOST_LARGE = 2, 4  # one sheet on both sides; two in large print
PT_MM: Final = 25.4 / 72


class Task(NamedTuple):
    """A care task of one job, with when it falls due."""

    care: Care
    due: Due
    job: Job

    @property
    def order(self) -> tuple[bool, date]:
        """Dated tasks first, by the day they should be done or may start."""
        day = self.day
        return (day is None, day or date.max)

    @property
    def day(self) -> date | None:
        """The day that counts: the last one of a task due within days, else the first."""
        return self.due.end if self.care.when.kind == "within" else self.due.start


def leaflet_sheet(
    visit: Visit, figures_by_job: Sequence[Sequence[Figure]], today: date, photos: Sequence[Photo] = ()
) -> Sheet:
    """Return the leaflet of a visit whose `{words}` are filled; `figures_by_job` follows `visit.jobs`."""
    say = labels(visit.language)
    crew = visit.jobs[0].technique.crew
    size = (LARGE_PT, LARGE_SMALL_PT, MOST_LARGE) if visit.large_print else (TEXT_PT, SMALL_PT, MOST_PAGES)
    return Sheet(
        kind="leaflet",
        id=visit.id,
        title=visit.site,
        over=say["visit_over"].format(date=shown_day(visit.date, visit.language)),
        under=joined(visit.words),
        language=visit.language,
        width_mm=A4_MM[0],
        height_mm=A4_MM[1],
        text_pt=size[0],
        small_pt=size[1],
        most_pages=size[2],
        ink=crew.colours.ink,
        ground=crew.colours.ground,
        accent=legible(crew.colours),
        sections=tuple(section for section in _sections(visit, figures_by_job, photos, say) if section.blocks),
        footer=say["leaflet_footer"],
        stamp=stamp(visit.version, today, visit.language, say),
        words=small_words(say),
    )


def tasks_of(visit: Visit) -> tuple[Task, ...]:
    """Return what the client is to do, in order of date.

    The same words twice are one task on the nearer date; words with a quantity are kept apart, since each
    planting has its own.
    """
    hemisphere = visit.jobs[0].technique.crew.hemisphere
    found: dict[tuple[str, int], Task] = {}
    for at, job in enumerate(visit.jobs):
        for care in job.technique.aftercare:
            if care.never:
                continue
            task = Task(care, due(care.when, visit.date, visit.next_visit, hemisphere), job)
            words = plain(care.text)
            key = (words.casefold(), at if any(letter.isdigit() for letter in words) else -1)
            found[key] = min((found.get(key, task), task), key=lambda each: each.order)
    return tuple(sorted(found.values(), key=lambda task: task.order))


def _sections(
    visit: Visit, figures_by_job: Sequence[Sequence[Figure]], photos: Sequence[Photo], say: Labels
) -> Iterator[Section]:
    tasks = tasks_of(visit)
    yield Section(heading=say["done"], blocks=(Bullets(items=tuple(_done(job, say) for job in visit.jobs)),))
    yield Section(heading=say["pictures"], blocks=tuple(photos))
    yield Section(heading=say["todo"], blocks=(*_line(visit, tasks, say), *_todo(visit, tasks, say)))
    yield Section(heading=say["your_numbers"], blocks=_numbers(visit, figures_by_job, say))
    never = _never(visit)
    yield Section(heading=say["never"], tone="never", blocks=never, side=bool(never))
    yield Section(heading=say["call"], tone="call", blocks=_call(visit, say))


def _done(job: Job, say: Labels) -> Prose:
    """Return one line of work: the technique, what it was done to, how many and how much."""
    parts = [job.what] if job.what else []
    if job.plant:
        parts.append(f"{say['count'].format(count=job.count)} {job.plant}" if job.count > 1 else job.plant)
    if job.area_m2 is not None:
        parts.append(shown_cell(job.area_m2, "m²", job.technique.crew))
    rest = f": {', '.join(parts)}" if parts else ""
    return (*prose(job.technique.title, strong=True), *prose(rest))


def _todo(visit: Visit, tasks: Sequence[Task], say: Labels) -> Iterator[Block]:
    """Yield the dated tasks, numbered as on the line, and the next visit."""
    if not tasks:
        yield Paragraph(text=prose(say["no_tasks"]))
    for number, task in enumerate(tasks, 1):
        apart = len(visit.jobs) > 1 and bool(task.job.what)
        yield Dated(
            when=when_shown(task, visit, say),
            text=started(task.care.text),
            note=say["for_what"].format(what=task.job.what) if apart else "",
            number=number,
        )
    if visit.next_visit:
        text = say["next_visit"].format(date=shown_day(visit.next_visit, visit.language))
        yield Paragraph(text=prose(text, strong=True))


def when_shown(task: Task, visit: Visit, say: Labels) -> str:
    """Return when a task is to be done, in dates the client can find on a calendar."""
    when, (start, end) = task.care.when, task.due
    if start is None:
        return say["always"] if when.kind == "always" else when.text
    if when.kind in {"season", "month"}:
        return _months(start, end or start, visit.language, say)
    day = end if end and when.kind in {"within", "every"} else start
    pattern = {
        "within": say["by"],
        "after": say["from_"],
        "every": say["each_until"] if end else say["each_days"],
        "next visit": say["at_visit"],
    }[when.kind]
    return pattern.format(days=when.days, date=shown_day(day, visit.language))


def started(text: Prose) -> Prose:
    """Return a sentence that began after a colon with its first letter large."""
    return (text[0].model_copy(update={"text": capital(text[0].text)}), *text[1:]) if text else text


def _months(start: date, end: date, language: str, say: Labels) -> str:
    """Return a stretch of months: `November 2026`, `March to May 2027`."""
    locale = locale_of(language)
    last = format_skeleton("yMMMM", end, locale=locale)
    if (start.year, start.month) == (end.year, end.month):
        return last
    same = start.year == end.year
    first = format_date(start, "LLLL", locale=locale) if same else format_skeleton("yMMMM", start, locale=locale)
    return say["between"].format(start=first, end=last)


def _line(visit: Visit, tasks: Sequence[Task], say: Labels) -> tuple[Block, ...]:
    """Return the year line of the dated tasks, where any falls within a year."""
    crew = visit.jobs[0].technique.crew
    marks = [Mark(number, task.day) for number, task in enumerate(tasks, 1) if task.day]
    spoken = (
        say["strip_task"].format(number=mark.number, when=when_shown(tasks[mark.number - 1], visit, say))
        for mark in marks
    )
    size = (LARGE_SMALL_PT if visit.large_print else SMALL_PT) * PT_MM
    art = year_line(
        visit.date,
        marks,
        Look(LINE_MM, size, crew.colours, legible(crew.colours), visit.language),
        caption=say["year"],
        alt=say["strip_alt"].format(date=shown_day(visit.date, visit.language), tasks="; ".join(spoken)),
    )
    return (ArtBlock(art=art),) if art else ()


def _numbers(visit: Visit, figures_by_job: Sequence[Sequence[Figure]], say: Labels) -> tuple[Block, ...]:
    """Return the figures that are meant for a client, each once, with what they are for."""
    entries: list[Entry] = []
    for job, figures in zip(visit.jobs, figures_by_job, strict=True):
        note = say["for_what"].format(what=job.what) if job.what and len(visit.jobs) > 1 else ""
        entries.extend(
            Entry(label=capital(figure.label), value=shown(figure, job.technique.crew), note=note, headline=True)
            for figure in figures
            if figure.client and figure.table is None
        )
    return (Facts(entries=tuple(dict.fromkeys(entries))),) if entries else ()


def _never(visit: Visit) -> tuple[Block, ...]:
    """Return what the client must not do, each once."""
    found = {
        plain(care.text): started(care.text) for job in visit.jobs for care in job.technique.aftercare if care.never
    }
    return (Bullets(items=tuple(found.values())),) if found else ()


def _call(visit: Visit, say: Labels) -> tuple[Block, ...]:
    """Return when to call, and whom."""
    crew = visit.jobs[0].technique.crew
    return (Paragraph(text=prose(say["call_signs"])), Paragraph(text=prose(crew.contact or crew.name, strong=True)))
