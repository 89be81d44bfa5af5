"""Lays out and renders what a build writes, a technique and a visit at a time."""

import json
from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass, field, replace
from datetime import date
from functools import partial
from pathlib import Path
from typing import Any, Final, NamedTuple

from howto.check.place import line_at
from howto.compute.words import filled_technique
from howto.families import family
from howto.findings import OUR_FAULT, Finding, Severity
from howto.guarded import guarded
from howto.layout.card import ART_MM, card_sheet
from howto.layout.carousel import FRAME_RULES, RATIOS, frames
from howto.layout.diagram import fit
from howto.layout.fit_rules import PAGE_RULES
from howto.layout.frame_look import OWN_MARK
from howto.layout.look import page_look, print_look
from howto.layout.page_words import card_words, said_drawing
from howto.layout.publish import alt_texts, caption
from howto.layout.unset_letters import letter_findings
from howto.leaflets import LEAFLET, Write, fit_finding, leaflet
from howto.model.family import Rule
from howto.model.figure import Figure
from howto.model.photo import Photograph
from howto.model.reference import FORMAT
from howto.model.shelf import Shelf
from howto.model.technique import AnyTechnique
from howto.model.visit import Visit
from howto.read.photo import read_photo
from howto.render.html import Entry, page, shelf_page
from howto.render.image import contact_sheet, jpeg
from howto.render.pdf import pdf
from howto.shapes import Drawing
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
    """What to make: the checked shelf, which of it, which kinds, and the day."""

    shelf: Shelf
    figures: Mapping[str, tuple[Figure, ...]]
    job_figures: Mapping[str, tuple[tuple[Figure, ...], ...]]
    techniques: tuple[AnyTechnique, ...]
    visits: tuple[Visit, ...]
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
    for technique in job.techniques:
        title = technique.spot("title")
        if "cards" in job.kinds:
            yield _Task(title, "make its card", partial(_card, job, technique, write))
        if "carousels" in job.kinds:
            yield _Task(title, "make its pictures", partial(_carousel, job, technique, write))
    if "leaflets" in job.kinds:
        for visit in job.visits:
            yield _Task(site_of(visit), "make its leaflet", partial(_leaflet, job, visit, write))
    if "shelf" in job.kinds and write is not None:
        yield _Task(Span(job.shelf.root), "make the page of the whole shelf", partial(_shelf_page, job, write))


def site_of(visit: Visit) -> Span:
    """Return where a visit names its garden."""
    return visit.spans.get("site", Span(visit.path))


def _drawn(technique: AnyTechnique, today: date, found: list[Finding]) -> tuple[Drawing, ...]:
    """Return the drawings of a trade, in its own English; `found` is told where drawing breaks off."""
    trade = family(technique.family)
    with guarded(found, technique.spot("title"), "draw its drawings"):
        return trade.drawings(technique, today) if trade is not None else ()
    return ()


def _card(job: Make, technique: AnyTechnique, write: Write | None) -> tuple[Finding, ...]:
    found: list[Finding] = []
    drawn = _drawn(technique, job.today, found)
    if found:
        return tuple(found)
    figures = job.figures[technique.id]
    screen, paper = page_look(technique.crew.colours), print_look(technique.crew.colours)
    drawings = [said_drawing(drawing, technique.crew) for drawing in drawn[:1]]
    arts, printed = ([fit(drawing, *ART_MM, look)[0] for drawing in drawings] for look in (screen, paper))
    sheet = card_sheet(filled_technique(technique, figures), figures, arts, job.today, printed)
    found += (*card_words(technique, figures, drawn), *letter_findings((sheet,), technique.spot("title")))
    data, pages = pdf(sheet, job.today)
    if pages > sheet.most_pages:
        what = f"the card runs to {pages} sides"
        mend = "split the technique in two, or shorten its steps and cautions, until the card fits two sides"
        return (*found, fit_finding(CARD, technique.spot("title"), technique.title, what, mend))
    if write is not None:
        write(f"cards/{technique.id}.pdf", data)
        write(f"cards/{technique.id}.html", page(sheet).encode())
    return tuple(found)


def family_tags(technique: AnyTechnique) -> tuple[str, ...]:
    """Return the short words a trade is looked for by."""
    trade = family(technique.family)
    return trade.tags if trade is not None else ()


def _carousel(job: Make, technique: AnyTechnique, write: Write | None) -> tuple[Finding, ...]:
    figures = job.figures[technique.id]
    photos, found = _photos(job.shelf, technique)
    drawings = [said_drawing(drawing, technique.crew) for drawing in _drawn(technique, job.today, found)]
    if any(note.rule == OUR_FAULT for note in found):
        return tuple(found)
    ready = filled_technique(technique, figures)
    folder = f"carousels/{technique.id}"
    for ratio in RATIOS:
        laid, notes = frames(ready, figures, drawings, photos, ratio, job.today)
        found += notes
        if write is None or any(note.severity is Severity.ERROR for note in found):
            continue
        pictures = []
        for number, frame in enumerate(laid, 1):
            data = jpeg(frame, photos)
            pictures.append(data)
            write(f"{folder}/{ratio}/{number:02}.jpg", data)
        write(f"{folder}/{ratio}/sheet.jpg", contact_sheet(pictures, technique.crew.colours))
        if ratio == RATIOS[0]:
            write(f"{folder}/caption.txt", caption(ready, figures, family_tags(technique)).encode())
            texts = json.dumps(alt_texts(laid), indent=2, ensure_ascii=False)
            write(f"{folder}/alt-text.json", f"{texts}\n".encode())
    return tuple(dict.fromkeys(found))


def _photos(shelf: Shelf, technique: AnyTechnique) -> tuple[dict[str, Photograph], list[Finding]]:
    """Return the crew's own mark and the pictures a technique's steps point at, read; and what was found of them.

    A client's picture that may not go out is not even opened.
    """
    ground = technique.crew.colours.ground
    private = shelf.private_pictures
    photos: dict[str, Photograph] = {}
    found: list[Finding] = []
    if technique.crew.mark and shelf.picture(f"../{technique.crew.mark}") not in private:
        crew = Span(f"{shelf.root}/crew.yaml")
        own, found_of_mark = read_photo(Path(shelf.root), technique.crew.mark, crew, technique.crew.mark, ground)
        found += found_of_mark
        if own is not None:
            photos[OWN_MARK] = own
    for at, step in enumerate(technique.steps):
        for number, picture in enumerate(step.pictures):
            if shelf.picture(picture.file) in private:
                continue
            span = technique.spot(f"steps[{at}].pictures[{number}]")
            photo, notes = read_photo(Path(shelf.root) / "pictures", picture.file, span, picture.file, ground)
            found += notes
            if photo is not None:
                photos[picture.file] = photo
    return photos, found


def _leaflet(job: Make, visit: Visit, write: Write | None) -> tuple[Finding, ...]:
    made = leaflet(visit, job.job_figures[visit.id], Path(job.shelf.root), job.today, write)
    job.texts.append(made.text)
    return made.findings


def _shelf_page(job: Make, write: Write) -> tuple[Finding, ...]:
    entries = [Entry.of(filled_technique(each, job.figures[each.id])) for each in job.shelf.techniques]
    write("index.html", shelf_page(job.shelf.crew, entries, job.today).encode())
    return ()
