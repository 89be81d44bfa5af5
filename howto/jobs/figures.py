"""The worked figures of one technique or visit."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import date
from difflib import get_close_matches
from pathlib import Path, PurePath

from howto.findings import Finding
from howto.jobs.check import examine
from howto.languages.reader import Reader
from howto.model.figure import Figure
from howto.span import SourceText


@dataclass(frozen=True)
class Worked:
    """The worked figures of a technique or a visit, in groups with a heading each."""

    groups: tuple[tuple[str, tuple[Figure, ...]], ...] = ()
    reader: Reader = field(default_factory=Reader)
    findings: tuple[Finding, ...] = ()
    sources: Mapping[str, SourceText] = field(default_factory=dict)
    unknown: str = ""


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
