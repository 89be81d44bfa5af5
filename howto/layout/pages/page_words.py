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
from howto.quantities.amounts import Words
from howto.span import Span

MOST_NAMED: Final = 8  # phrases named in one finding


def card_words(ready: Ready) -> tuple[Finding, ...]:
    """Return the finding of what a card and its pictures would print in English on a page that is not."""
    return _told(card_texts(ready), ready.reader, ready.technique.spot("language"), Severity.ADVICE)


def card_texts(ready: Ready) -> list[Words]:
    """Return what a card and its pictures print that no author wrote: trade, measures, figures and drawings."""
    texts = [ready.technique.family]
    for measure in shown_measures(ready.technique.measures, ready.crew.read_in("en")):
        texts += [measure.key, *([] if any(map(str.isdigit, measure.value)) else [measure.value])]
    return [*texts, *_of_figures(ready.figures), *ready.drawn_words]


def leaflet_words(ready: ReadyVisit) -> tuple[Finding, ...]:
    """Return the finding of figures that a leaflet would print in English though it is in another language."""
    visit = ready.visit
    return _told(leaflet_texts(ready), ready.reader, visit.spans.get("language", Span(visit.path)), Severity.WARNING)


def leaflet_texts(ready: ReadyVisit) -> list[Words]:
    """Return what a leaflet prints that no author wrote: the figures a client reads."""
    return [text for job in ready.jobs for text in _of_figures(x for x in job.figures if x.client and x.table is None)]


def _of_figures(figures: Iterable[Figure]) -> list[Words]:
    """Return the words of figures: labels, values that are words, headings and words of tables."""
    texts: list[Words] = []
    for figure in figures:
        texts.append(figure.label)
        texts += [figure.value] if isinstance(figure.value, str) else []
        if figure.table is not None:
            texts += figure.table.columns
            texts += [cell for row in figure.table.rows for cell in row if isinstance(cell, str)]
    return texts


def _told(texts: Iterable[Words], reader: Reader, span: Span, severity: Severity) -> tuple[Finding, ...]:
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
