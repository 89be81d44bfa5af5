"""A page's words in its own language: a drawing told in it, and what stays English."""

from collections.abc import Iterable
from typing import Final

from howto.findings import Finding, Severity
from howto.languages import LANGUAGES
from howto.languages.reader import Reader
from howto.languages.tags import base
from howto.layout.fit_rules import PAGE_WORDS
from howto.model.figure import Figure
from howto.model.ready import Ready, ReadyVisit
from howto.model.shown import shown_measures
from howto.span import Span

MOST_NAMED: Final = 8  # phrases named in one finding


def card_words(ready: Ready) -> tuple[Finding, ...]:
    """Return the finding of what a card and its pictures would print in English on a page that is not."""
    technique = ready.technique
    texts = [technique.family]
    for measure in shown_measures(technique.measures, ready.crew.read_in("en")):
        texts += [measure.key, *([] if any(map(str.isdigit, measure.value)) else [measure.value])]
    texts += [*_of_figures(ready.figures), *ready.drawn_words]
    return _told(texts, ready.reader, technique.spot("language"), Severity.ADVICE)


def leaflet_words(ready: ReadyVisit) -> tuple[Finding, ...]:
    """Return the finding of figures that a leaflet would print in English though it is in another language."""
    texts: list[str] = []
    visit = ready.visit
    for job in ready.jobs:
        texts += _of_figures([each for each in job.figures if each.client and each.table is None])
    return _told(texts, ready.reader, visit.spans.get("language", Span(visit.path)), Severity.WARNING)


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


def _told(texts: Iterable[str], reader: Reader, span: Span, severity: Severity) -> tuple[Finding, ...]:
    """Return one finding that names the phrases without words in a language that has labels."""
    language = reader.language
    if base(language) not in LANGUAGES:
        return ()
    gaps = list(dict.fromkeys(gap for text in texts for gap in reader.gaps(text)))
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
