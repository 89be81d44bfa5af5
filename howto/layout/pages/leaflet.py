"""A client's leaflet: what was done, what to do and by when, what not to do, when to call."""

import re
from collections.abc import Iterator, Sequence
from datetime import date
from typing import Final

from howto.languages import language_of
from howto.languages.form import Labels, folded
from howto.languages.reader import Reader, day_told
from howto.layout.pages.card import joined, legible, small_words, stamp
from howto.layout.pages.explain import explained
from howto.layout.pages.leaflet_when import full_day, joined_names, when_shown
from howto.layout.pages.numbers import LONGEST_LARGE
from howto.layout.pages.year import DayMark, LineLook, year_line
from howto.model.crew import Crew
from howto.model.figure import Figure
from howto.model.filling import printed
from howto.model.prose import Prose, capital, plain, prose
from howto.model.ready import ReadyVisit
from howto.model.sheet import ArtBlock, Block, Bullets, Dated, Entry, Facts, Paragraph, Photo, Section, Sheet
from howto.model.shown import shown, shown_cell
from howto.model.task import Plan, Task
from howto.model.visit import Job, Visit

A4_MM: Final = (210.0, 297.0)  # ISO 216
LINE_MM: Final = 174.0  # between the margins
TEXT_PT, SMALL_PT = 14.0, 12.0  # 12 pt at least, 14 pt reaches more readers: RNIB, Clear Print guidelines
LARGE_PT, LARGE_SMALL_PT = 20.0, 18.0  # 18 pt at least, 20 pt preferred: ACB/CCLVI, Large print guidelines
MOST_PAGES, MOST_LARGE = 2, 4  # one sheet on both sides; two in large print
PT_MM: Final = 25.4 / 72


def leaflet_sheet(ready: ReadyVisit, plan: Plan, today: date, photos: Sequence[Photo] = ()) -> Sheet:
    """Return the leaflet of a visit from its plan."""
    visit, crew = ready.visit, ready.crew
    say = language_of(visit.language).labels
    size = (LARGE_PT, LARGE_SMALL_PT, MOST_LARGE) if visit.large_print else (TEXT_PT, SMALL_PT, MOST_PAGES)
    sheet = Sheet(
        least_pt=size[1],
        id=visit.id,
        title=visit.site,
        over=say["visit_over"].format(date=day_told(visit.date, visit.language)),
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
        sections=tuple(section for section in _sections(ready, plan, photos, say) if section.blocks),
        footer=say["leaflet_footer"],
        stamp=stamp(visit.version, today, visit.language, say),
        words=small_words(say),
    )
    return explained(sheet)


def _sections(ready: ReadyVisit, plan: Plan, photos: Sequence[Photo], say: Labels) -> Iterator[Section]:
    visit = ready.visit
    done = (Bullets(items=tuple(_done(job, ready.reader, say) for job in visit.jobs)),)
    yield Section(name="done", heading=say["done"], blocks=done)
    yield Section(name="pictures", heading=_shown(visit, say), blocks=tuple(photos))
    heading = say["todo_first"] if visit.next_visit else say["todo"]
    first = (*_line(ready, plan, say), *_todo(ready, plan.first, 1, say))
    yield Section(name="first", heading=heading, blocks=(*first, *_next_visit(visit, say)))
    later = tuple(_todo(ready, plan.later, len(plan.first) + 1, say)) if plan.later else ()
    yield Section(name="later", heading=say["todo_later"], blocks=later)
    yield Section(name="numbers", heading=say["your_numbers"], blocks=tuple(_numbers(ready, say)))
    never = _never(plan, ready, say)
    yield Section(name="never", heading=say["never"], tone="never", blocks=never, side=bool(never))
    yield Section(name="call", heading=say["call"], tone="call", blocks=call_box(ready.crew, ready.reader, say))


def _shown(visit: Visit, say: Labels) -> str:
    """Return the heading of the pictures: both, or the one kind there is."""
    if visit.before and visit.after:
        return say["pictures"]
    return say["before"] if visit.before else say["after"]


def _done(job: Job, reader: Reader, say: Labels) -> Prose:
    """Return one line of work: the technique, what it was done to, how many and how much."""
    parts = [job.what] if job.what else []
    if job.plant:
        parts.append(f"{say['count'].format(count=job.count)} {job.plant}" if job.count > 1 else job.plant)
    if job.area_m2 is not None:
        parts.append(shown_cell(job.area_m2, "m²", reader))
    rest = f": {', '.join(parts)}" if parts else ""
    return (*prose(job.technique.title, strong=True), *prose(rest))


def _todo(ready: ReadyVisit, tasks: Sequence[Task], number: int, say: Labels) -> Iterator[Block]:
    """Yield dated tasks, numbered on from `number` as on the line."""
    language, reader = ready.visit.language, ready.reader
    if not tasks:
        yield Paragraph(text=prose(say["no_tasks"]))
    for at, task in enumerate(tasks, number):
        yield Dated(
            when=capital(when_shown(task, language, say)),
            text=started(printed(task.sentence, reader)),
            note=_note(task, reader, say),
            number=at,
        )


def _note(task: Task, reader: Reader, say: Labels) -> str:
    """Return what a task is for, and why its amount is a sum."""
    what = say["for_what"].format(what=joined_names(task.what, say)) if task.what else ""
    return "; ".join(filter(None, (what, added(task, reader, say))))


def added(task: Task, reader: Reader, say: Labels) -> str:
    """Return what a task's amounts were added from; empty where they are no sums."""
    return say["added"].format(sum=reader.filled(task.added)) if task.added else ""


def _next_visit(visit: Visit, say: Labels) -> tuple[Block, ...]:
    if visit.next_visit is None:
        return ()
    text = say["next_visit"].format(date=full_day(visit.next_visit, visit.language))
    return (Paragraph(text=prose(text, strong=True)),)


def started(text: Prose) -> Prose:
    """Return a sentence that began after a colon with its first letter large."""
    return (text[0].model_copy(update={"text": capital(text[0].text)}), *text[1:]) if text else text


def _line(ready: ReadyVisit, plan: Plan, say: Labels) -> tuple[Block, ...]:
    """Return the year line of the dated tasks, where any falls within a year."""
    visit, crew = ready.visit, ready.crew
    marks = [DayMark(number, task.day) for number, task in enumerate(plan.tasks, 1) if task.day]
    spoken = (
        say["strip_task"].format(number=mark.number, when=when_shown(plan.tasks[mark.number - 1], visit.language, say))
        for mark in marks
    )
    size = (LARGE_SMALL_PT if visit.large_print else SMALL_PT) * PT_MM
    art = year_line(
        (visit.date, *((visit.next_visit,) if visit.next_visit else ())),
        marks,
        LineLook(LINE_MM, size, crew.colours, legible(crew.colours), visit.language),
        caption=say["year"],
        alt=say["strip_alt"].format(date=day_told(visit.date, visit.language), tasks="; ".join(spoken)),
    )
    return (ArtBlock(art=art),) if art else ()


def _numbers(ready: ReadyVisit, say: Labels) -> Iterator[Block]:
    """Yield the figures that are meant for a client, each once, under what they are for."""
    for job, told in zip(ready.visit.jobs, ready.jobs, strict=True):
        entries = [_entry(figure, ready.reader) for figure in told.figures if figure.client and figure.table is None]
        fresh = tuple(dict.fromkeys(entries))
        if fresh and len(ready.jobs) > 1:
            name = job.what or job.plant or job.technique.title
            yield Paragraph(text=prose(capital(say["for_what"].format(what=name)), strong=True))
        if fresh:
            yield Facts(entries=fresh)


def _entry(figure: Figure, reader: Reader) -> Entry:
    """Return a figure, large where it is short."""
    value = shown(figure, reader)
    return Entry(label=capital(reader.tell(figure.label)), value=value, headline=len(value) <= LONGEST_LARGE)


def _never(plan: Plan, ready: ReadyVisit, say: Labels) -> tuple[Block, ...]:
    """Return what the client must not do, each with what it is about where several things were worked on."""
    items = []
    for ban in plan.never:
        what = f" ({joined_names(ban.what, say)})" if ban.what else ""
        told = forbidden(ban.asked, printed(ban.sentence, ready.reader), ready.visit.language)
        items.append((*told, *prose(what)))
    return (Bullets(items=tuple(items)),) if items else ()


def forbidden(word: str, sentence: Prose, language: str) -> Prose:
    """Return a ban as a sentence that is one by itself: the author's `Never` leads it, where it does not say no."""
    said = folded(plain(sentence)).replace("’", "'")
    if any(re.match(rf"(?:{language_of(each).orders.no})", said) for each in (language, "en")):
        return started(sentence)
    first = sentence[0].text if sentence else ""
    small = first[:1].lower() + first[1:] if first[1:2].islower() else first
    return (
        *prose(f"{capital(word)} "),
        *(run.model_copy(update={"text": small}) for run in sentence[:1]),
        *sentence[1:],
    )


def call_box(crew: Crew, reader: Reader, say: Labels) -> tuple[Block, ...]:
    """Return when to call, and whom."""
    signs = tuple(prose(sign) for sign in say["call_signs"].split("\n"))
    whom = say["call_whom"].format(contact=reader.tell(crew.contact or crew.name))
    return (Paragraph(text=prose(say["call_if"])), Bullets(items=signs), Paragraph(text=prose(whom, strong=True)))
