"""Jobs and care tasks of invented visits, short to write in tests."""

from datetime import date
from typing import Any

from howto.compute.tasks import plan_of
from howto.findings import Finding
from howto.languages import language_of
from howto.layout.pages.leaflet_when import when_shown
from howto.model.crew import Crew
from howto.model.filling import printed
from howto.model.prose import plain, prose
from howto.model.task import Plan
from howto.model.technique import Care, When
from howto.model.visit import Job, Visit
from howto.read.assemble import typed_in
from tests.support import sample

NBSP = "\u00a0"


def care(text: str, kind: Any, days: int = 0, **changes: Any) -> Care:
    """Return a care task."""
    never = bool(changes.pop("never", False))
    amounts = typed_in(text, changes.pop("language", "en"))
    when = When(text="Never" if never else kind, kind=kind, days=days, **changes)
    return Care(when=when, text=prose(text), never=never, amounts=amounts)


def job(what: str, *cares: Care, **changes: Any) -> Job:
    """Return a job whose technique, of no season, asks for this care; `title`, `id`, `season` are the technique's."""
    own = {name: changes.pop(name) for name in ("title", "id", "season", "language") if name in changes}
    own.setdefault("season", "any time")
    return Job(technique=sample.technique(aftercare=cares, **own), what=what, **changes)


def visit(*jobs: Job, **changes: object) -> Visit:
    """Return a visit of 14 October 2026, the next one on 25 November."""
    return sample.visit(jobs=jobs, **changes)


def planned(*jobs: Job, crew: Crew = sample.CREW, **changes: object) -> tuple[Plan, tuple[Finding, ...]]:
    """Return the plan of a visit with these jobs, and what was found."""
    return plan_of(sample.ready_visit(visit(*jobs, **changes), [()] * len(jobs), crew))


def told(*jobs: Job, **changes: Any) -> list[tuple[str, str, tuple[str, ...], str]]:
    """Return when, words, what for and note of each task, with ordinary spaces."""
    reader = sample.CREW.read_in(changes.get("language", "en"))
    plan, findings = planned(*jobs, **changes)
    assert findings == ()
    return [
        (
            when_shown(task, "en", language_of("en").labels),
            plain(printed(task.sentence, reader)).replace(NBSP, " "),
            task.what,
            reader.filled(task.added).replace(NBSP, " "),
        )
        for task in plan.tasks
    ]


def when_and_what(*jobs: Job, **changes: Any) -> list[tuple[str, str]]:
    """Return when and words of each task."""
    return [each[:2] for each in told(*jobs, **changes)]


DAY = date(2026, 10, 14)
