"""Makes what is shown: a technique with its words filled, its figures and its drawings, once for all that show it."""

from collections.abc import Callable
from dataclasses import replace
from datetime import date

from howto.compute.figures import figures_of
from howto.compute.words import filled_technique
from howto.languages.reader import Reader
from howto.model.family import AnyFamily
from howto.model.figure import Figure
from howto.model.filling import filled_with, values, values_by_place
from howto.model.passages import retold_visit
from howto.model.prose import capital
from howto.model.ready import Ready, ReadyVisit
from howto.model.shelf import Shelf
from howto.model.visit import Job, Visit
from howto.model.work import AnyWork
from howto.quantities.amounts import Words
from howto.shapes import DimensionLine, Drawing, Label, Level

More = Callable[[Visit, Job, AnyWork], tuple[Figure, ...]]


def ready(work: AnyWork, family: AnyFamily, today: date) -> Ready:
    """Return a technique ready for its own pages; `today` is the day of the work."""
    figures = figures_of(work, family, today)
    technique = filled_technique(work.technique, figures, work.reader)
    drawings = family.drawings(work, today)
    words = tuple(text for each in drawings for text in words_of(each))
    return Ready(work, technique, figures, tuple(told(each, work.reader) for each in drawings), words)


def ready_visit(visit: Visit, shelf: Shelf, families: Callable[[str], AnyFamily], more: More) -> ReadyVisit:
    """Return a visit whose jobs are ready for its leaflet; `more` gives the figures of one garden beside a trade's."""
    reader = shelf.crew.read_in(visit.language)
    jobs = []
    for job in visit.jobs:
        work = shelf.work(job.technique)
        figures = (*figures_of(work, families(job.technique.family), visit.date), *more(visit, job, work))
        jobs.append(Ready(work, filled_technique(job.technique, figures, reader), figures))
    own = tuple(values(each.work.measures, each.figures, reader) for each in jobs)
    known = values_by_place(own)
    told_visit = retold_visit(visit, lambda field, words: filled_with(words, known.get(field, known[""])))
    return ReadyVisit(told_visit, tuple(jobs), shelf.crew, own)


def words_of(drawing: Drawing) -> tuple[Words, ...]:
    """Return what a drawing says: its caption, its description and its labels."""
    labels = (shape.text for shape in drawing.shapes if isinstance(shape, DimensionLine | Level | Label))
    return (drawing.caption, drawing.alt, *labels)


def told(drawing: Drawing, reader: Reader) -> Drawing:
    """Return a drawing with its words and amounts as its reader sees them."""
    shapes = tuple(
        replace(shape, text=reader.tell(shape.text)) if isinstance(shape, DimensionLine | Level | Label) else shape
        for shape in drawing.shapes
    )
    caption, alt = (capital(reader.tell(text)) for text in (drawing.caption, drawing.alt))
    return replace(drawing, shapes=shapes, caption=caption, alt=alt)
