"""A crew's whole shelf read: crew, plants, techniques, visits and people, with every finding of every file."""

from collections.abc import Mapping
from contextlib import AbstractContextManager
from pathlib import Path
from typing import Final

from howto.findings import Finding, Severity
from howto.guarded import guarded
from howto.model.crew import Crew
from howto.model.family import AnyFamily
from howto.model.shelf import Person, Shelf
from howto.model.technique import AnyTechnique
from howto.model.visit import Visit
from howto.read.assemble import assemble
from howto.read.crew import crew_of
from howto.read.notes import Notes
from howto.read.people import people_of
from howto.read.photo_same import same_pictures
from howto.read.plants import read_book
from howto.read.text import read_text
from howto.read.visit import Known, read_visit
from howto.span import SourceText, Span

APART: Final = ("pictures", "visits")
_NEARLY: Final = (".txt", ".markdown", ".mdown", ".mkd", ".rtf", ".docx", ".odt")


class _Reading:
    """The files read so far, by the name findings give them, and what was found in them."""

    def __init__(self, root: Path) -> None:
        self.root = root
        self.sources: dict[str, SourceText] = {}
        self.findings: list[Finding] = []

    def guarded(self, path: Path) -> AbstractContextManager[None]:
        """Note where reading a file breaks off through our own fault, and go on with the next."""
        return guarded(self.findings, Span(path.as_posix()), "read this file")

    def source(self, path: Path) -> SourceText | None:
        """Return the text of a file, kept for the report."""
        source, findings = read_text(path, path.as_posix())
        self.findings.extend(findings)
        if source is not None:
            self.sources[source.path] = source
        return source


def read_shelf(root: Path, families: Mapping[str, AnyFamily]) -> tuple[Shelf, tuple[Finding, ...]]:
    """Return the shelf in a folder, and every finding of every file in it."""
    reading = _Reading(root)
    if not root.is_dir():
        _note_no_shelf(reading)
        return Shelf(root=root.as_posix()), tuple(reading.findings)
    crew = _crew(reading)
    book, findings = read_book(root)
    reading.findings.extend(findings)
    for name in ("plants.yaml", "grasses.yaml"):
        if (root / name).is_file():
            reading.sources.update(_quiet(root / name))
    techniques, unread = _techniques(reading, families, crew.language)
    by_id = {each.id: each for each in reversed(techniques)}
    visits = _visits(reading, Known(by_id, families, unread, crew.language))
    shelf = Shelf(
        root=root.as_posix(),
        crew=crew,
        book=book,
        techniques=techniques,
        visits=visits,
        people=_people(reading),
        sources=reading.sources,
    )
    return shelf.model_copy(update={"same_pictures": same_pictures(shelf)}), tuple(reading.findings)


def _quiet(path: Path) -> dict[str, SourceText]:
    """Return the text of a file that was already read, for the report."""
    source, _ = read_text(path, path.as_posix())
    return {} if source is None else {source.path: source}


def _note_no_shelf(reading: _Reading) -> None:
    """Note that there is no shelf where one was looked for."""
    shown = reading.root.as_posix()
    notes = Notes(SourceText(shown, ""))
    notes.add(
        "not-readable",
        Span(shown),
        "there is no folder of this name",
        "the shelf is a folder with `crew.yaml` and a folder for each family",
        f"write `howto new shelf {shown}` to make one, or say where it is with `--shelf`",
    )
    reading.findings.extend(notes.findings)


def _crew(reading: _Reading) -> Crew:
    """Return the crew; a shelf without its file is warned that north and metric are taken for granted."""
    path = reading.root / "crew.yaml"
    if not path.exists():
        notes = Notes(SourceText(path.as_posix(), ""))
        notes.add(
            "no-crew",
            Span(path.as_posix()),
            "there is no `crew.yaml` on this shelf",
            "the season, the units and the name on every page come from it; the north and metric are taken instead",
            "write a file `crew.yaml` here with a line `hemisphere: north` or `hemisphere: south`",
            severity=Severity.WARNING,
        )
        reading.findings.extend(notes.findings)
        return Crew()
    crew = Crew()
    with reading.guarded(path):
        source = reading.source(path)
        if source is not None:
            crew, findings = crew_of(source)
            reading.findings.extend(findings)
    return crew


def _files(folder: Path) -> tuple[Path, ...]:
    """Return the Markdown files of a folder by name; notes to oneself (README, `.` or `_` in front) are left out."""
    found = (path for path in folder.iterdir() if path.suffix.casefold() == ".md")
    return tuple(sorted(path for path in found if path.stem.casefold() != "readme" and path.name[0] not in "._"))


def _folders(reading: _Reading) -> tuple[Path, ...]:
    """Return the folders that hold techniques, and the shelf's own folder first."""
    found = (path for path in reading.root.iterdir() if path.is_dir() and path.name not in APART)
    return (reading.root, *sorted(path for path in found if path.name[0] not in "._"))


def is_read(root: Path, path: Path) -> bool:
    """Tell whether a folder of a shelf is one that techniques, visits or pictures are read from, or in one."""
    top = path.relative_to(root).parts[:1]
    return (
        not top
        or top[0] in APART
        or (top[0][0] not in "._" and (root / top[0]).is_dir() and any(_files(root / top[0])))
    )


def _techniques(
    reading: _Reading, families: Mapping[str, AnyFamily], language: str
) -> tuple[tuple[AnyTechnique, ...], frozenset[str]]:
    """Return the techniques that could be read, and the ids of those that could not."""
    techniques: list[AnyTechnique] = []
    unread: set[str] = set()
    for folder in _folders(reading):
        _note_nearly(reading, folder)
        _note_deeper(reading, folder)
        for path in _files(folder):
            technique = None
            with reading.guarded(path):
                source = reading.source(path)
                if source is not None:
                    technique, findings = assemble(source, families, language)
                    reading.findings.extend(findings)
            if technique is None:
                unread.add(path.stem)
            else:
                techniques.append(technique)
    return tuple(techniques), frozenset(unread)


def _note_nearly(reading: _Reading, folder: Path) -> None:
    """Note files that were meant as techniques or visits but end in another way."""
    for path in sorted(folder.iterdir()):
        if path.suffix.casefold() not in _NEARLY or not path.is_file():
            continue
        shown = path.as_posix()
        notes = Notes(SourceText(shown, ""))
        notes.add(
            "name",
            Span(shown),
            f"`{path.name}` is not read",
            "techniques and visits are text files whose names end in `.md`",
            f"save it as text and rename it to `{path.name.split('.')[0]}.md`, or move it out of the shelf",
        )
        reading.findings.extend(notes.findings)


def _note_deeper(reading: _Reading, folder: Path) -> None:
    """Note technique or visit files in a folder within the one they should stand in, where nothing looks for them."""
    if folder == reading.root:
        return
    why = "techniques stand in the folder of their family, so that they are found there"
    if folder.name in APART:
        why = "visits stand in one folder, so that each is checked and its pictures are kept from strangers"
    for path in sorted(each for each in folder.iterdir() if each.is_dir() and each.name[0] not in "._"):
        for file in _files(path):
            shown = file.as_posix()
            notes = Notes(SourceText(shown, ""))
            notes.add(
                "folder",
                Span(shown),
                f"`{file.name}` stands in a folder within `{folder.name}`, and is not read",
                why,
                f"move the file to `{folder.as_posix()}`",
            )
            reading.findings.extend(notes.findings)


def _visits(reading: _Reading, known: Known) -> tuple[Visit, ...]:
    """Return the visits that could be read."""
    folder = reading.root / "visits"
    if not folder.is_dir():
        return ()
    _note_nearly(reading, folder)
    _note_deeper(reading, folder)
    visits: list[Visit] = []
    for path in _files(folder):
        with reading.guarded(path):
            source = reading.source(path)
            if source is not None:
                visit, findings = read_visit(source, known)
                reading.findings.extend(findings)
                visits += [visit] if visit else []
    return tuple(visits)


def _people(reading: _Reading) -> tuple[Person, ...]:
    """Return the people of the crew, where the shelf names them."""
    path = reading.root / "people.yaml"
    people: tuple[Person, ...] = ()
    with reading.guarded(path):
        source = reading.source(path) if path.exists() else None
        if source is not None:
            people, findings = people_of(source)
            reading.findings.extend(findings)
    return people
