"""Lays out and renders what a build writes, a technique and a visit at a time."""

import json
from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass, field, replace
from datetime import date
from functools import partial
from pathlib import Path
from typing import Any, Final, NamedTuple

from howto.check.place import line_at
from howto.findings import Finding, Severity
from howto.guarded import guarded
from howto.jobs.leaflet import LEAFLET, Write, fit_finding, leaflet
from howto.layout.drawing.diagram import fit
from howto.layout.drawing.look import page_look, print_look
from howto.layout.fit_rules import PAGE_RULES
from howto.layout.frames.carousel import FRAME_RULES, RATIOS, frames
from howto.layout.frames.look import OWN_MARK
from howto.layout.frames.publish import alt_texts, caption
from howto.layout.pages.card import ART_MM, card_sheet
from howto.layout.pages.page_words import card_words
from howto.layout.unset_letters import letter_findings
from howto.model.family import AnyFamily, Rule
from howto.model.photo import Photograph
from howto.model.ready import Ready, ReadyVisit
from howto.model.reference import FORMAT
from howto.model.shelf import Shelf
from howto.model.technique import AnyTechnique
from howto.model.visit import Visit
from howto.read.photo import read_photo
from howto.render.html import ShelfEntry, page, shelf_page
from howto.render.image import contact_sheet, described, picture, saved, thumbnail
from howto.render.pdf import pdf
from howto.span import Span

CARD: Final[Rule[Any]] = Rule(
    name="fit.card",
    severity=Severity.ERROR,
    statement="A card fits on two sides of A5 with words no smaller than 8.5 pt.",
    why="a laminated card has two sides, and smaller words are not read at arm's length",
    references=(FORMAT,),
    applies="every training card",
)
FIT_RULES: tuple[Rule[Any], ...] = (CARD, LEAFLET, *FRAME_RULES, *PAGE_RULES)


@dataclass(frozen=True)
class Make:
    """What to make: the checked shelf, all that is `ready` on it, which of that, which kinds, and the day."""

    shelf: Shelf
    families: Mapping[str, AnyFamily]
    ready: tuple[Ready, ...]
    techniques: tuple[Ready, ...]
    visits: tuple[ReadyVisit, ...]
    kinds: frozenset[str]
    today: date
    texts: list[str] = field(default_factory=list)


def make(job: Make, write: Write | None, step: Callable[[int, int], None] | None = None) -> tuple[Finding, ...]:
    """Lay out everything asked for, and where `write` is given render and hand over each file; return findings."""
    found: list[Finding] = []
    tasks = list(_tasks(job, write))
    for done, task in enumerate(tasks):
        if step is not None:
            step(done, len(tasks))
        with guarded(found, task.span, task.job):
            found += task.run()
    if step is not None:
        step(len(tasks), len(tasks))
    return tuple(quoted(finding, job.shelf) for finding in found)


def quoted(finding: Finding, shelf: Shelf) -> Finding:
    """Return a finding with the line it points at, where the layout had no file to quote."""
    return finding if finding.text else replace(finding, text=line_at(finding.span, shelf.sources))


class _Task(NamedTuple):
    """One thing to make: the place it is made from, what it is, and how."""

    span: Span
    job: str
    run: Callable[[], tuple[Finding, ...]]


def _tasks(job: Make, write: Write | None) -> Iterator[_Task]:
    for ready in job.techniques:
        title = ready.technique.spot("title")
        if "cards" in job.kinds:
            yield _Task(title, "make its card", partial(_card, job, ready, write))
        if "carousels" in job.kinds:
            yield _Task(title, "make its pictures", partial(_carousel, job, ready, write))
    if "leaflets" in job.kinds:
        for each in job.visits:
            yield _Task(site_of(each.visit), "make its leaflet", partial(_leaflet, job, each, write))
    if "shelf" in job.kinds and write is not None:
        yield _Task(Span(job.shelf.root), "make the page of the whole shelf", partial(_shelf_page, job, write))


def site_of(visit: Visit) -> Span:
    """Return where a visit names its garden."""
    return visit.spans.get("site", Span(visit.path))


def _card(job: Make, ready: Ready, write: Write | None) -> tuple[Finding, ...]:
    technique, colours = ready.technique, ready.crew.colours
    arts, printed = (
        [fit(drawing, *ART_MM, look)[0] for drawing in ready.drawings[:1]]
        for look in (page_look(colours), print_look(colours))
    )
    sheet = card_sheet(ready, arts, job.today, printed)
    found = (*card_words(ready), *letter_findings((sheet,), technique.spot("title")))
    data, pages = pdf(sheet, job.today)
    if pages > sheet.most_pages:
        what = f"the card runs to {pages} sides"
        mend = "split the technique in two, or shorten its steps and cautions, until the card fits two sides"
        return (*found, fit_finding(CARD, technique.spot("title"), technique.title, what, mend))
    if write is not None:
        write(f"cards/{technique.id}.pdf", data)
        write(f"cards/{technique.id}.html", page(sheet).encode())
    return tuple(found)


def _carousel(job: Make, ready: Ready, write: Write | None) -> tuple[Finding, ...]:
    technique = ready.technique
    photos, found = _photos(job.shelf, technique)
    folder = f"carousels/{technique.id}"
    for ratio in RATIOS:
        laid, notes = frames(ready, photos, ratio)
        found += notes
        if write is None or any(note.severity is Severity.ERROR for note in found):
            continue
        shots = []
        for number, frame in enumerate(laid, 1):
            painted = picture(frame, photos)
            shots.append(thumbnail(painted))
            write(f"{folder}/{ratio}/{number:02}.jpg", saved(painted, described(frame.alt, frame.credit)))
        write(f"{folder}/{ratio}/sheet.jpg", contact_sheet(shots, ready.crew.colours))
        if ratio == RATIOS[0]:
            tags = job.families[technique.family].tags
            write(f"{folder}/caption.txt", caption(ready, tags).encode())
            texts = json.dumps(alt_texts(laid), indent=2, ensure_ascii=False)
            write(f"{folder}/alt-text.json", f"{texts}\n".encode())
    return tuple(dict.fromkeys(found))


def _photos(shelf: Shelf, technique: AnyTechnique) -> tuple[dict[str, Photograph], list[Finding]]:
    """Return the crew's own mark and the pictures a technique's steps point at, read; and what was found of them.

    A client's picture that may not go out is not even opened.
    """
    ground, mark, private = shelf.crew.colours.ground, shelf.crew.mark, shelf.private_pictures
    photos: dict[str, Photograph] = {}
    found: list[Finding] = []
    if mark and shelf.picture(f"../{mark}") not in private:
        own, found_of_mark = read_photo(Path(shelf.root), mark, Span(f"{shelf.root}/crew.yaml"), mark, ground)
        found += found_of_mark
        if own is not None:
            photos[OWN_MARK] = own
    for at, step in enumerate(technique.steps):
        for number, wanted in enumerate(step.pictures):
            if shelf.picture(wanted.file) in private:
                continue
            span = technique.spot(f"steps[{at}].pictures[{number}]")
            photo, notes = read_photo(Path(shelf.root) / "pictures", wanted.file, span, wanted.file, ground)
            found += notes
            if photo is not None:
                photos[wanted.file] = photo
    return photos, found


def _leaflet(job: Make, ready: ReadyVisit, write: Write | None) -> tuple[Finding, ...]:
    made = leaflet(ready, Path(job.shelf.root), job.today, write)
    job.texts.append(made.text)
    return made.findings


def _shelf_page(job: Make, write: Write) -> tuple[Finding, ...]:
    entries = [ShelfEntry.of(each.technique) for each in job.ready]
    write("index.html", shelf_page(job.shelf.crew, entries, job.today).encode())
    return ()
