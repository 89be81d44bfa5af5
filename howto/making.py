"""Lays out and renders what a build writes, a technique and a visit at a time."""

import json
from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass, field, replace
from datetime import date
from pathlib import Path
from typing import Any, Final

from howto.check.place import line_at
from howto.compute.words import filled_technique
from howto.families import family
from howto.findings import Finding, Severity
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
        found += task()
    if step is not None:
        step(len(tasks), len(tasks))
    return tuple(_quoted(finding, job.shelf) for finding in found)


def _quoted(finding: Finding, shelf: Shelf) -> Finding:
    """Return a finding with the line it points at, where the layout had no file to quote."""
    return finding if finding.text else replace(finding, text=line_at(finding.span, shelf.sources))


def _tasks(job: Make, write: Write | None) -> Iterator[Callable[[], tuple[Finding, ...]]]:
    for technique in job.techniques:
        if "cards" in job.kinds:
            yield lambda each=technique: _card(job, each, write)  # type: ignore[misc]
        if "carousels" in job.kinds:
            yield lambda each=technique: _carousel(job, each, write)  # type: ignore[misc]
    if "leaflets" in job.kinds:
        for visit in job.visits:
            yield lambda each=visit: _leaflet(job, each, write)  # type: ignore[misc]
    if "shelf" in job.kinds and write is not None:
        yield lambda: _shelf_page(job, write)


def _drawn(technique: AnyTechnique, today: date) -> tuple[Drawing, ...]:
    """Return the drawings of a trade, in its own English."""
    trade = family(technique.family)
    return trade.drawings(technique, today) if trade is not None else ()


def _card(job: Make, technique: AnyTechnique, write: Write | None) -> tuple[Finding, ...]:
    figures = job.figures[technique.id]
    screen, paper = page_look(technique.crew.colours), print_look(technique.crew.colours)
    drawn = _drawn(technique, job.today)
    drawings = [said_drawing(drawing, technique.crew) for drawing in drawn[:1]]
    arts, printed = ([fit(drawing, *ART_MM, look)[0] for drawing in drawings] for look in (screen, paper))
    sheet = card_sheet(filled_technique(technique, figures), figures, arts, job.today, printed)
    said = card_words(technique, figures, drawn)
    found = (*said, *letter_findings((sheet,), technique.spot("title")))
    data, pages = pdf(sheet, job.today)
    if pages > sheet.most_pages:
        what = f"the card runs to {pages} sides"
        mend = "split the technique in two, or shorten its steps and cautions, until the card fits two sides"
        return (*found, fit_finding(CARD, technique.spot("title"), technique.title, what, mend))
    if write is not None:
        write(f"cards/{technique.id}.pdf", data)
        write(f"cards/{technique.id}.html", page(sheet).encode())
    return found


def family_tags(technique: AnyTechnique) -> tuple[str, ...]:
    """Return the short words a trade is looked for by."""
    trade = family(technique.family)
    return trade.tags if trade is not None else ()


def _carousel(job: Make, technique: AnyTechnique, write: Write | None) -> tuple[Finding, ...]:
    figures = job.figures[technique.id]
    ready = filled_technique(technique, figures)
    drawings = [said_drawing(drawing, technique.crew) for drawing in _drawn(technique, job.today)]
    photos, found = _photos(job.shelf, technique)
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
