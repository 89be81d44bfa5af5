"""What `howto new` would write: planned as texts, so that nothing is half-written and nothing written over."""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date
from difflib import get_close_matches
from pathlib import Path

from howto.check.private import given_away
from howto.families import FAMILIES, family
from howto.findings import Finding
from howto.jobs.check import BY_NAME
from howto.jobs.templates import CREW_TEXT, JobText, technique_text, visit_text
from howto.model.names import file_name, short_name
from howto.quantities import QuantityError, parse_in
from howto.read.crew import read_crew
from howto.read.photo import read_photo
from howto.read.shelf import read_shelf
from howto.render.marker import marker_page
from howto.span import Span


@dataclass(frozen=True)
class NewFiles:
    """Files to write and what to do next; or why nothing can be written."""

    files: tuple[tuple[Path, str], ...] = ()
    next_step: str = ""
    problem: str = ""


def new_technique(shelf: Path, title: str, family_name: str) -> NewFiles:
    """Return the plan for one technique file of a family."""
    names = [each.name for each in FAMILIES]
    found = family(family_name.strip().casefold())
    if found is None:
        near = get_close_matches(family_name.casefold(), names, n=1, cutoff=0.4)
        nearest = f" Nearest: {near[0]}." if near else ""
        return NewFiles(problem=f"No family is called `{family_name}`.{nearest} There is: {', '.join(names)}.")
    name = short_name(title)
    if not name:
        return NewFiles(problem=f"`{title}` has no letters to name a file by. Give it a name such as `Clip a cone`.")
    path = shelf / found.name / f"{name}.md"
    if path.exists():
        return NewFiles(problem=f"`{path}` is there already, and was left as it is. Choose another name.")
    return NewFiles(
        files=((path, technique_text(title.strip(), found)),),
        next_step=f"Write over the words, then look at what it says: howto check {path} --shelf {shelf}",
    )


def new_visit(shelf: Path, site: str, on: date, done: Sequence[str], next_visit: str = "", words: str = "") -> NewFiles:
    """Return the plan for one visit file; every technique must be on the shelf, and the site be a label.

    Each of `done` is a technique, and after a colon what it was done to and how large: `mow-by-thirds: the back
    lawn, 95 m2`.
    """
    jobs = [_job_of(each) for each in done]
    given = next(given_away(site, read_crew(shelf / "crew.yaml")[0], label=True), None)
    if given is not None:
        return NewFiles(problem=f"`{given.words}` gives the client away. Name the garden by a label: `Orchard end`.")
    if problem := _not_known(shelf, jobs) or _not_after(on, next_visit):
        return NewFiles(problem=problem)
    path = shelf / "visits" / f"{on.isoformat()}-{short_name(site) or 'garden'}.md"
    if path.exists():
        return NewFiles(problem=f"`{path}` is there already, and was left as it is. Choose another label or day.")
    return NewFiles(
        files=((path, visit_text(site.strip(), on, jobs, next_visit, words.strip())),),
        next_step=f"Write your words to the client at its end, then: howto build {path} --only leaflets "
        f"--shelf {shelf}",
    )


def _not_known(shelf: Path, jobs: Sequence[JobText]) -> str:
    """Return which job is no technique of the shelf, with the nearest ones; empty where all are."""
    known = technique_names(shelf)
    unknown = next((job.technique for job in jobs if job.technique not in known), None)
    if unknown is not None:
        near = get_close_matches(unknown, known, n=3, cutoff=0.3) or known[:8]
        return f"No technique is called `{unknown}`. There is: {', '.join(near)}."
    return "" if jobs else f"Say what was done with --done, once a technique. There is: {', '.join(known)}."


def _not_after(on: date, next_visit: str) -> str:
    """Return why the next visit cannot be on that day; empty where it can, or none is said."""
    if not next_visit:
        return ""
    try:
        following = date.fromisoformat(next_visit)
    except ValueError:
        return f"`{next_visit}` is not a date. Write it as year-month-day, such as 2026-11-25."
    return "" if following > on else f"The next visit, {next_visit}, is not after this one, {on.isoformat()}."


def _job_of(text: str) -> JobText:
    """Return what `mow-by-thirds: the back lawn, 95 m2` says: technique, what, area."""
    technique, _, rest = text.partition(":")
    what, comma, last = rest.rpartition(",")
    try:
        parse_in(last.strip(), "m2")
    except QuantityError:
        return JobText(file_name(technique), rest.strip())
    return JobText(file_name(technique), what.strip() if comma else "", last.strip())


def new_shelf(folder: Path) -> NewFiles:
    """Return the plan for a new shelf: a crew to fill in and one technique to copy."""
    first = FAMILIES[0]
    crew, technique = folder / "crew.yaml", folder / first.name / "my-first-technique.md"
    if crew.exists():
        return NewFiles(problem=f"`{crew}` is there already; `{folder}` is a shelf.")
    if technique.exists():
        return NewFiles(problem=f"`{technique}` is there already, and was left as it is. Choose another folder.")
    return NewFiles(
        files=((crew, CREW_TEXT), (technique, technique_text("My first technique", first))),
        next_step=f"Look at what it makes: howto build --shelf {folder}",
    )


@dataclass(frozen=True)
class MarkerPage:
    """The marking page of a photograph, and its name in the output; or what is wrong with the photograph."""

    name: str
    text: str = ""
    findings: tuple[Finding, ...] = ()


def marker(photo: Path, shelf: Path) -> MarkerPage:
    """Return the page on which to mark a photograph, in the colours of the shelf's crew where there is one."""
    name = f"marks/{photo.stem}.html"
    read, findings = read_photo(photo.parent, photo.name, Span(str(photo)), photo.name)
    if read is None:
        return MarkerPage(name, findings=findings)
    crew, _ = read_crew(shelf / "crew.yaml")
    return MarkerPage(name, marker_page(read, crew.colours))


def technique_names(shelf: Path) -> list[str]:
    """Return the names of the techniques on a shelf, sorted."""
    read, _ = read_shelf(shelf, BY_NAME)
    return sorted(technique.id for technique in read.techniques)
