"""A page's words in its own language: a drawing told in it, and what stays English."""

from collections.abc import Iterable, Sequence
from dataclasses import replace
from typing import Final

from howto.findings import Finding, Severity
from howto.labels import LANGUAGES
from howto.language import base
from howto.layout.fit_rules import PAGE_WORDS
from howto.model.crew import Crew
from howto.model.figure import Figure
from howto.model.said import phrase_key, said, unsaid
from howto.model.shown import shown_measures
from howto.model.technique import AnyTechnique
from howto.model.visit import Job, Visit
from howto.shapes import Dimension, Drawing, Label, Level, Shape
from howto.span import Span

MOST_NAMED: Final = 8  # phrases named in one finding


def said_drawing(drawing: Drawing, crew: Crew) -> Drawing:
    """Return a drawing with its words in the crew's language, where there are any."""
    if base(crew.language) == "en":
        return drawing
    shapes = tuple(_said_shape(shape, crew) for shape in drawing.shapes)
    return replace(drawing, shapes=shapes, caption=said(drawing.caption, crew), alt=said(drawing.alt, crew))


def _said_shape(shape: Shape, crew: Crew) -> Shape:
    """Return a shape with its words told."""
    return replace(shape, text=said(shape.text, crew)) if isinstance(shape, Dimension | Level | Label) else shape


def reader(job: Job, visit: Visit) -> Crew:
    """Return a job's crew as the client of this visit reads of it: in the language of the leaflet."""
    return job.technique.crew.model_copy(update={"language": visit.language})


def card_words(technique: AnyTechnique, figures: Sequence[Figure], drawings: Sequence[Drawing]) -> tuple[Finding, ...]:
    """Return the finding of what a card and its pictures would print in English on a page that is not."""
    crew = technique.crew
    texts = [technique.family]
    for measure in shown_measures(technique.measures, crew.in_english):
        texts += [measure.key, measure.value]
    texts += _of_figures(figures)
    for drawing in drawings:
        texts += [drawing.caption, drawing.alt]
        texts += [shape.text for shape in drawing.shapes if isinstance(shape, Dimension | Level | Label)]
    return _told(texts, crew, technique.spot("language"), technique.language, Severity.ADVICE)


def leaflet_words(visit: Visit, figures_by_job: Sequence[Sequence[Figure]]) -> tuple[Finding, ...]:
    """Return the finding of figures that a leaflet would print in English though it is in another language."""
    texts: list[str] = []
    for figures in figures_by_job:
        texts += _of_figures([each for each in figures if each.client and each.table is None])
    crew = reader(visit.jobs[0], visit)
    return _told(texts, crew, visit.spans.get("language", Span(visit.path)), visit.language, Severity.WARNING)


def _of_figures(figures: Iterable[Figure]) -> list[str]:
    """Return the words of figures: labels, values that are words, headings and words of tables."""
    texts: list[str] = []
    for figure in figures:
        texts.append(figure.label)
        texts += [figure.value] if isinstance(figure.value, str) else []
        if figure.table is not None:
            texts += figure.table.columns
            texts += [cell for row in figure.table.rows for cell in row if isinstance(cell, str)]
    return texts


def _told(texts: Iterable[str], crew: Crew, span: Span, language: str, severity: Severity) -> tuple[Finding, ...]:
    """Return one finding that names the phrases without words in a language that has labels."""
    if base(language) not in LANGUAGES:
        return ()
    gaps = list(dict.fromkeys(phrase_key(text) for text in texts if text and unsaid(text, crew)))
    if not gaps:
        return ()
    named = ", ".join(f"`{each}`" for each in gaps[:MOST_NAMED])
    more = f" and {len(gaps) - MOST_NAMED} more" if len(gaps) > MOST_NAMED else ""
    return (
        Finding(
            rule=PAGE_WORDS.name,
            severity=severity,
            span=span,
            text="",
            what=f"there are no words in `{language}` for {named}{more}",
            why="they come from the arithmetic, and are printed in English beside words that are not",
            mend=f'write in crew.yaml, under `words:` and there under `{base(language)}:`, `"{gaps[0]}": ` and how '
            "it is said",
            reference=str(PAGE_WORDS.references[0]),
        ),
    )
