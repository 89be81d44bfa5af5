"""Checks a shelf: reads it, runs every rule over it, works everything out, and lays it out to see whether it fits."""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, replace
from datetime import date
from pathlib import Path

from howto.check.claims import check_claims
from howto.check.colours import colour_findings
from howto.check.rules import check_job, check_technique
from howto.check.shelf import check_shelf
from howto.check.twins import in_first_words, is_twin
from howto.check.visit_words import check_visit_words
from howto.check.visits import check_visits
from howto.compute.ready import ready, ready_visit
from howto.compute.tasks import plan_of
from howto.families import FAMILIES
from howto.findings import OUR_FAULT, Finding, in_order, stops
from howto.guarded import guarded
from howto.jobs.garden import garden_figures
from howto.jobs.outputs import Make, make, quoted, site_of
from howto.model.family import AnyFamily
from howto.model.ready import Ready, ReadyVisit
from howto.model.shelf import Shelf
from howto.model.technique import AnyTechnique
from howto.model.visit import Job, Visit
from howto.read.shelf import read_shelf
from howto.span import SourceText, Span

APART = (
    "write under both jobs a different `what:`, so that the client can tell which is for which, or under one of them "
    "`leave out:` and words of its line in the leaflet's language"
)


KINDS = ("cards", "carousels", "leaflets", "shelf")


BY_NAME: Mapping[str, AnyFamily] = {each.name: each for each in FAMILIES}


@dataclass(frozen=True)
class Examined:
    """A shelf read, checked and computed: what it holds, what was found, and each technique's figures."""

    shelf: Shelf
    findings: tuple[Finding, ...]
    ready: Mapping[str, Ready]
    visits: Mapping[str, ReadyVisit]

    @property
    def sources(self) -> Mapping[str, SourceText]:
        """The files read, by the path findings give them."""
        return self.shelf.sources


def examine(root: Path, today: date) -> Examined:
    """Return the shelf read and checked, every finding of every file with it; nothing is laid out yet."""
    found: list[Finding] = []
    shelf, whole = Shelf(root=root.as_posix()), Span(root.as_posix())
    with guarded(found, whole, "read the shelf"):
        shelf, notes = read_shelf(root, BY_NAME)
        found += notes
    made: dict[str, Ready] = {}
    for technique in shelf.techniques:
        one = _examined_technique(shelf, technique, today, found)
        if one is not None:
            made[technique.id] = one
    with guarded(found, whole, "compare its files"):
        found += check_shelf(shelf, {id_: each.figures for id_, each in made.items()})
        found += colour_findings(shelf)
        found += check_visits(shelf)
    visits: dict[str, ReadyVisit] = {}
    for visit in shelf.visits:
        with guarded(found, site_of(visit), "check its jobs and list its tasks"):
            for job in visit.jobs:
                if not _as_written(shelf, job):
                    told = in_first_words(job.technique, shelf.techniques)
                    own = [each for each in found if each.span.path == told.path]
                    found += check_job(shelf.work(told), BY_NAME[told.family], FAMILIES, shelf.sources, own)
            one_visit = _ready_visit(visit, shelf)
            found += check_visit_words(visit, one_visit.meanings, shelf.sources)
            found += _tasks_apart(visit, one_visit, shelf)
            visits[visit.id] = one_visit
    return Examined(shelf, in_order(quoted(each, shelf) for each in found), made, visits)


def _examined_technique(shelf: Shelf, technique: AnyTechnique, today: date, found: list[Finding]) -> Ready | None:
    """Return a technique ready to show, None where making it broke off; what is found of it goes to `found`."""
    work, family, title = shelf.work(technique), BY_NAME[technique.family], technique.spot("title")
    with guarded(found, title, "check it against its trade"):
        if not is_twin(technique):  # the words of a twin are checked against its first telling
            found += check_technique(work, family, FAMILIES, shelf.sources)
    with guarded(found, title, "work out its figures and draw its drawings"):
        made = ready(work, family, today)
        with guarded(found, title, "hold its words against its figures"):
            found += check_claims(work, made.figures, shelf.sources)
        return made
    return None


def _ready_visit(visit: Visit, shelf: Shelf) -> ReadyVisit:
    """Return a visit ready for its leaflet, the figures of its garden with those of its trades."""
    return ready_visit(visit, shelf, BY_NAME.__getitem__, garden_figures)


def _tasks_apart(visit: Visit, ready: ReadyVisit, shelf: Shelf) -> tuple[Finding, ...]:
    """Return what is found while the aftercare of a visit's jobs becomes one list of tasks."""
    notes = plan_of(ready)[1]
    more = plan_of(_ready_visit(_in_first_words(visit, shelf), shelf))[1]  # most orders are understood in English
    known = {(note.rule, note.span) for note in notes}
    return (*notes, *(replace(note, mend=APART) for note in more if (note.rule, note.span) not in known))


def _in_first_words(visit: Visit, shelf: Shelf) -> Visit:
    """Return a visit, its jobs in the words of their first telling but for those that leave words out."""
    jobs = (
        job if job.leave_out else job.model_copy(update={"technique": in_first_words(job.technique, shelf.techniques)})
        for job in visit.jobs
    )
    return visit.model_copy(update={"jobs": tuple(jobs)})


def _as_written(shelf: Shelf, job: Job) -> bool:
    """Tell whether a job has the measures and plants of its technique's own file, which was checked."""
    own = shelf.technique(job.technique.id)
    return own is not None and (own.measures, own.plants) == (job.technique.measures, job.technique.plants)


def check(root: Path, today: date, paths: Sequence[Path] = ()) -> Examined:
    """Return the shelf examined and laid out, so that what will not fit is found too; nothing is written."""
    examined = examine(root, today)
    if not stops(finding for finding in examined.findings if finding.rule != OUR_FAULT):
        made = make(to_make(examined, paths, KINDS, today), None)
        examined = replace(examined, findings=in_order((*examined.findings, *made)))
    return replace(examined, findings=_under(examined.findings, paths))


def to_make(examined: Examined, paths: Sequence[Path], kinds: Sequence[str], today: date) -> Make:
    """Return what to make of an examined shelf: all of it, or what stands in `paths`."""
    shelf = examined.shelf
    return Make(
        shelf=shelf,
        families=BY_NAME,
        ready=tuple(examined.ready.values()),
        techniques=tuple(each for each in examined.ready.values() if wanted(each.technique.path, paths)),
        visits=tuple(each for each in examined.visits.values() if wanted(each.visit.path, paths)),
        kinds=frozenset(kinds),
        today=today,
    )


def wanted(shown: str, paths: Sequence[Path]) -> bool:
    """Tell whether a file is one of the paths, or under one of them."""
    here = Path(shown).resolve()
    return not paths or any(path.resolve() in (here, *here.parents) for path in paths)


def _under(findings: Iterable[Finding], paths: Sequence[Path]) -> tuple[Finding, ...]:
    """Return the findings in the paths asked for, and those of the whole shelf; all where none were."""
    return tuple(each for each in findings if wanted(each.span.path, paths) or Path(each.span.path).is_dir())
