"""The lines of aftercare that the jobs of a visit ask for, each with its day, its place and what it is about."""

import re
from collections.abc import Iterator, Sequence
from dataclasses import replace
from datetime import date
from typing import Any, Final, NamedTuple

from howto.compute.orders import MOST_AFTER, OrderLine, Stance, Window, stances, things_in
from howto.findings import Finding, Severity
from howto.languages import language_of
from howto.languages.form import folded
from howto.model.due import Due, due, next_run
from howto.model.family import Rule
from howto.model.prose import BRACED, plain
from howto.model.ready import Ready, ReadyVisit
from howto.model.reference import FORMAT, PRACTICE
from howto.model.technique import Care
from howto.model.visit import Job, Visit
from howto.seasons import Hemisphere, months_of
from howto.span import Span

CONTRADICTION: Final[Rule[Any]] = Rule(
    name="leaflet.contradiction",
    severity=Severity.ERROR,
    statement="No two jobs of a visit ask opposite things of the client, of one thing at one time.",
    why="a client who reads `water lightly` and `water deeply` on one page follows neither",
    references=(FORMAT, PRACTICE),
    applies="visits with two jobs or more, in English and Spanish",
)
LEFT_OUT: Final[Rule[Any]] = Rule(
    name="leaflet.leave-out",
    severity=Severity.ERROR,
    statement="Words under `leave out` stand in a line of the technique's aftercare.",
    why="words that stand in no line leave nothing out, and the client reads the line after all",
    references=(FORMAT,),
    applies="jobs with `leave out`",
)
TASK_RULES: Final = (CONTRADICTION, LEFT_OUT)
YEAR_ROUND: Final = 12  # months
LONGEST_QUOTE: Final = 5  # words of a line that tell it from the others
_MARKS: Final = re.compile(r"\{[^}]*\}|[,;:#\"]")


class Asked(NamedTuple):
    """One line of aftercare: the job it comes from, as its author wrote it, with its amounts as values, and its day."""

    job_at: int
    job: Job
    care_at: int
    written: str
    care: Care
    due: Due
    hemisphere: Hemisphere

    @property
    def language(self) -> str:
        """The language of its author's words."""
        return self.job.technique.language

    @property
    def what(self) -> str:
        """What the job was done to, in the lead's words, else the plant."""
        return self.job.what or self.job.plant

    def end(self, visited: date) -> date | None:
        """Return the last day; what comes round without one ends with the season of its technique, if that runs."""
        if self.care.when.kind != "every" or self.due.end is not None:
            return self.due.end
        months = months_of(self.job.technique.season, self.hemisphere) or ()
        return next_run(visited, months).end if visited.month in months and len(months) < YEAR_ROUND else None

    @property
    def place(self) -> Span:
        """Where the line stands in its technique's file."""
        return self.job.technique.spot(f"aftercare[{self.care_at}]")


def asked_of(ready: ReadyVisit) -> tuple[Asked, ...]:
    """Return the lines of every job that are not left out, in the order written."""
    jobs = enumerate(zip(ready.visit.jobs, ready.jobs, strict=True))
    return tuple(each for at, (job, told) in jobs for each in _of_job(ready, at, job, told))


def _of_job(ready: ReadyVisit, job_at: int, job: Job, told: Ready) -> Iterator[Asked]:
    """Yield the lines of one job; one that starts `the same` goes on where the rhythm before it ends."""
    visit, hemisphere, last = ready.visit, ready.crew.hemisphere, None
    for at, (before, care) in enumerate(zip(job.technique.aftercare, told.care, strict=True)):
        words, rhythm = plain(before.text), care.when.kind == "every"
        if any(_says(words, phrase) for phrase in job.leave_out):
            continue
        start = (
            last
            if last and rhythm and re.match(language_of(job.technique.language).orders.same, folded(words))
            else visit.date
        )
        when = due(care.when, start, visit.next_visit, hemisphere)
        last = when.end if rhythm else last
        yield Asked(job_at, job, at, words, care, when, hemisphere)


def _says(text: str, phrase: str) -> bool:
    """Tell whether a line has these words, whatever their capitals and spaces."""
    return _tidy(phrase) in _tidy(text)


def window_of(asked: Asked, visited: date) -> Window | None:
    """Return the days on which a line holds; None for what the crew does at its next visit, or has no day."""
    kind, start, end = asked.care.when.kind, asked.due.start, asked.end(visited)
    if asked.care.never or kind == "always":
        return Window(visited, date.max)
    if kind == "next visit" or start is None:
        return None
    if kind == "after":
        return Window(start, start + MOST_AFTER)
    return Window(start, end or date.max)


def clashes(visit: Visit, asked: Sequence[Asked]) -> tuple[tuple[Asked, Asked], ...]:
    """Return each two lines, of two jobs, that ask opposite things of what may be one thing."""
    told = [(each, _stances(each, visit)) for each in asked]
    return tuple(
        (first, second)
        for at, (second, theirs) in enumerate(told)
        for first, ours in told[:at]
        if first.job_at != second.job_at
        and _about_one_thing(first, second)
        and any(one.opposes(two) for one in ours for two in theirs)
    )


def task_findings(visit: Visit, pairs: Sequence[tuple[Asked, Asked]]) -> Iterator[Finding]:
    """Yield a finding for each two lines that clash, and for words to leave out that stand nowhere."""
    yield from _left_out(visit)
    for first, second in pairs:
        yield _contradiction(visit, first, second)


def _stances(asked: Asked, visit: Visit) -> tuple[Stance, ...]:
    window = window_of(asked, visit.date)
    if window is None:
        return ()
    known = things_in(f"{asked.job.technique.title} {asked.what}", asked.language)
    words = BRACED.sub("9", asked.written)
    said = stances(OrderLine(words, asked.language, window, asked.hemisphere, never=asked.care.never))
    return tuple(each if each.things else each._replace(things=known) for each in said)


def _about_one_thing(one: Asked, two: Asked) -> bool:
    """Tell whether two jobs may be about one thing: the leaflet sets them apart only where both say what."""
    pairs = ((one.job.what, two.job.what), (one.job.plant, two.job.plant))
    return not any(a and b and _tidy(a) != _tidy(b) for a, b in pairs)


def _tidy(text: str) -> str:
    """Return a text as it is compared: small letters and single spaces."""
    return " ".join(text.casefold().split())


def quote(written: str) -> str:
    """Return the first words of a line, by which `leave out` can name it."""
    parts = [part.split() for part in _MARKS.split(written)]
    words = next((part for part in parts if len(part) > 1), parts[0])
    return " ".join(words[:LONGEST_QUOTE]).rstrip(".")


def _contradiction(visit: Visit, first: Asked, second: Asked) -> Finding:
    spot = visit.spans.get(f"jobs[{second.job_at}]", Span(visit.path))
    sides = [f"`{each.job.technique.id}` says `{each.care.when.text}: {each.written}`" for each in (first, second)]
    mend = f"write `leave out: {quote(second.written)}` under this job, or the like under the other"
    if not (first.job.what and second.job.what):
        mend += "; or write under both jobs a different `what:`, so that the client can tell which is for which"
    what = f"two jobs ask opposite things{f' of {second.what}' if second.what else ''}"
    why = f"{sides[0]}, and {sides[1]}; {CONTRADICTION.why}"
    return replace(CONTRADICTION.finding(spot, what, why, mend), also=first.place)


def _left_out(visit: Visit) -> Iterator[Finding]:
    for at, job in enumerate(visit.jobs):
        lines = [plain(care.text) for care in job.technique.aftercare]
        for phrase in job.leave_out:
            if any(_says(line, phrase) for line in lines):
                continue
            named = " or ".join(f"`leave out: {quote(line)}`" for line in lines[:3])
            yield LEFT_OUT.finding(
                visit.spans.get(f"jobs[{at}].leave out", visit.spans.get(f"jobs[{at}]", Span(visit.path))),
                f"`{phrase}` stands in no line of the aftercare of `{job.technique.id}`",
                LEFT_OUT.why,
                f"write {named}, or take `leave out` out" if named else "take `leave out` out",
            )
