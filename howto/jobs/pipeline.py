"""The stages in order: read, check, compute, lay out, render. With `making.py` it alone knows stages and trades."""

from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import dataclass, field, replace
from datetime import date
from difflib import get_close_matches
from pathlib import Path, PurePath
from typing import Any

from howto.check.claims import CLAIM_RULES, check_claims
from howto.check.colours import COLOUR_RULES, colour_findings
from howto.check.common import COMMON_RULES
from howto.check.place import WAIVER
from howto.check.rules import check_job, check_technique
from howto.check.shelf import SHELF_RULES, check_shelf
from howto.check.twins import in_first_words, is_twin
from howto.check.visit_words import VISIT_WORDS, check_visit_words
from howto.check.visits import VISIT_RULES, check_visits
from howto.compute.aftercare import TASK_RULES
from howto.compute.ready import ready, ready_visit
from howto.compute.tasks import plan_of
from howto.families import FAMILIES
from howto.findings import OUR_FAULT, Finding, in_order, stops
from howto.guarded import guarded
from howto.jobs.garden import garden_figures
from howto.jobs.outputs import FIT_RULES, Make, make, quoted, site_of
from howto.jobs.staging import Stage
from howto.languages.reader import Reader
from howto.model.family import AnyFamily, Rule
from howto.model.figure import Figure
from howto.model.ready import Ready, ReadyVisit
from howto.model.shelf import Shelf
from howto.model.technique import AnyTechnique
from howto.model.visit import Job, Visit
from howto.read.photo_rules import PHOTO_RULES
from howto.read.rulebook import FILE_RULES
from howto.read.shelf import is_read, read_shelf
from howto.span import SourceText, Span

Progress = Callable[[int, int], None]
APART = (
    "write under both jobs a different `what:`, so that the client can tell which is for which, or under one of them "
    "`leave out:` and words of its line in the leaflet's language"
)
KINDS = ("cards", "carousels", "leaflets", "shelf")
FOLDERS = ("cards", "carousels", "leaflets", "letters", "marks")  # what is written into an output folder
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


@dataclass(frozen=True)
class Built:
    """What a build found and wrote; `stopped` when nothing was written."""

    findings: tuple[Finding, ...]
    sources: Mapping[str, SourceText]
    stopped: bool
    written: tuple[str, ...] = ()
    texts: tuple[str, ...] = ()

    def summary(self, to: Path) -> str:
        """Return one line that counts what was written."""
        cards = {name for name in self.written if name.startswith("cards/") and name.endswith(".pdf")}
        carousels = {name.split("/")[1] for name in self.written if name.startswith("carousels/")}
        leaflets = {name for name in self.written if name.startswith("leaflets/") and name.endswith(".pdf")}
        parts = [
            f"{len(found)} {word if len(found) == 1 else word + 's'}"
            for found, word in ((cards, "card"), (carousels, "carousel"), (leaflets, "leaflet"))
            if found
        ]
        parts += ["the shelf page"] if "index.html" in self.written else []
        return f"Wrote {', '.join(parts) or 'nothing'} in {to}."


@dataclass(frozen=True)
class Worked:
    """The worked figures of a technique or a visit, in groups with a heading each."""

    groups: tuple[tuple[str, tuple[Figure, ...]], ...] = ()
    reader: Reader = field(default_factory=Reader)
    findings: tuple[Finding, ...] = ()
    sources: Mapping[str, SourceText] = field(default_factory=dict)
    unknown: str = ""


@dataclass(frozen=True)
class Named:
    """The rules a name means; where there is none, a sentence that says so and names the nearest."""

    found: tuple[Rule[Any], ...] = ()
    sentence: str = ""


def not_a_shelf(root: Path, paths: Iterable[Path]) -> str:
    """Return why a command cannot start: no such shelf, or a path that is not on it; empty if it can."""
    if not root.is_dir():
        return f"There is no folder `{root}`. Name yours with --shelf, or make one: howto new shelf {root}"
    for path in paths:
        if not path.exists():
            return f"There is no file or folder `{path}`."
        if root.resolve() not in (path.resolve(), *path.resolve().parents):
            return f"`{path}` is not on the shelf `{root}`. Name its shelf with --shelf."
    return ""


def not_an_output(to: Path, root: Path) -> str:
    """Return why nothing can be written into `to`: it would be read as part of the shelf; empty if it can."""
    shelf = root.resolve()
    for place in (to, *(to / name for name in FOLDERS)):
        here = place.resolve()
        if shelf.is_dir() and here.is_relative_to(shelf) and is_read(shelf, here):
            return (
                f"`{place}` belongs to the shelf `{root}`, and what is written there would be read with it. Choose "
                "another folder with --to."
            )
    return ""


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
        made = make(_make(examined, paths, KINDS, today), None)
        examined = replace(examined, findings=in_order((*examined.findings, *made)))
    return replace(examined, findings=_under(examined.findings, paths))


def build(
    root: Path,
    to: Path,
    today: date,
    paths: Sequence[Path] = (),
    *,
    kinds: Sequence[str] = KINDS,
    strict: bool = False,
    step: Progress | None = None,
) -> Built:
    """Check the shelf, then write its outputs into `to`; nothing is written while something stops the build."""
    examined = examine(root, today)
    if stops(examined.findings, strict=strict):
        return Built(examined.findings, examined.sources, stopped=True)
    stage = Stage(to)
    try:
        job = _make(examined, paths, kinds, today)
        found = in_order((*examined.findings, *make(job, stage.write, step)))
        if stops(found, strict=strict):
            return Built(found, examined.sources, stopped=True)
        stage.swap_in(() if paths else [kind for kind in kinds if kind != "shelf"])
    finally:
        stage.drop()
    return Built(found, examined.sources, stopped=False, written=tuple(sorted(stage.written)), texts=tuple(job.texts))


def _make(examined: Examined, paths: Sequence[Path], kinds: Sequence[str], today: date) -> Make:
    shelf = examined.shelf
    return Make(
        shelf=shelf,
        families=BY_NAME,
        ready=tuple(examined.ready.values()),
        techniques=tuple(each for each in examined.ready.values() if _wanted(each.technique.path, paths)),
        visits=tuple(each for each in examined.visits.values() if _wanted(each.visit.path, paths)),
        kinds=frozenset(kinds),
        today=today,
    )


def _wanted(shown: str, paths: Sequence[Path]) -> bool:
    """Tell whether a file is one of the paths, or under one of them."""
    here = Path(shown).resolve()
    return not paths or any(path.resolve() in (here, *here.parents) for path in paths)


def _under(findings: Iterable[Finding], paths: Sequence[Path]) -> tuple[Finding, ...]:
    """Return the findings in the paths asked for, and those of the whole shelf; all where none were."""
    return tuple(each for each in findings if _wanted(each.span.path, paths) or Path(each.span.path).is_dir())


def figures(root: Path, name: str, today: date) -> Worked:
    """Return the worked figures of a technique or a visit, by its name or its file."""
    examined = examine(root, today)
    shelf = examined.shelf
    wanted = PurePath(name).name.removesuffix(".md") if name.endswith(".md") else name
    findings = tuple(f for f in examined.findings if Path(f.span.path).stem == wanted)
    technique = shelf.technique(wanted) if wanted in examined.ready else None
    if technique is not None:
        groups: tuple[tuple[str, tuple[Figure, ...]], ...] = ((technique.title, examined.ready[wanted].figures),)
        return Worked(groups, shelf.crew.read_in("en"), findings, shelf.sources)
    visit = next((each for each in shelf.visits if each.id == wanted and wanted in examined.visits), None)
    if visit is not None:
        worked = zip(visit.jobs, examined.visits[visit.id].jobs, strict=True)
        groups = tuple(
            (" - ".join(filter(None, (job.technique.title, job.what))), each.figures) for job, each in worked
        )
        return Worked(groups, shelf.crew.read_in("en"), findings, shelf.sources)
    if findings:
        return Worked((), shelf.crew.read_in("en"), findings, shelf.sources)
    known = [*(each.id for each in shelf.techniques), *(each.id for each in shelf.visits)]
    near = get_close_matches(wanted, known, n=3, cutoff=0.4) or known[:8]
    return Worked(unknown=f"No technique or visit is called `{wanted}`. There is: {', '.join(near) or 'none yet'}.")


def rulebook() -> tuple[Rule[Any], ...]:
    """Return every rule, families in their order, then those of techniques, the shelf, visits, files and fit."""
    rules = [rule for each in FAMILIES for rule in (*each.rules, *each.every)]
    rules += [*COMMON_RULES, *CLAIM_RULES, WAIVER, *SHELF_RULES, *COLOUR_RULES, *VISIT_RULES, VISIT_WORDS, *TASK_RULES]
    rules += [*FILE_RULES, *PHOTO_RULES, *FIT_RULES]
    return tuple({rule.name: rule for rule in rules}.values())


def rules_named(name: str) -> Named:
    """Return the rule of that name, or every rule of that family, or what is nearest."""
    rules = rulebook()
    wanted = name.strip().casefold()
    found = tuple(rule for rule in rules if rule.name == wanted or rule.name.split(".")[0] == wanted)
    if found:
        return Named(found)
    names = [rule.name for rule in rules]
    near = [each for each in names if wanted in each][:3] or get_close_matches(wanted, names, n=3, cutoff=0.6)
    near = near or [rule.name for rule in rules if wanted in f"{rule.statement} {rule.why}".casefold()][:3]
    return Named(sentence=f"No rule is called `{name}`. Nearest: {', '.join(near) or 'none'}. All: howto why")
