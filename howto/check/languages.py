"""Checks that a leaflet in another language has every technique of its visit told in that language."""

from collections.abc import Iterator
from pathlib import PurePosixPath
from typing import Any, Final

from howto.check.place import Sources, noted
from howto.check.twins import own_name
from howto.findings import Finding, Severity
from howto.languages import LANGUAGES
from howto.languages.tags import base
from howto.model.family import Rule
from howto.model.reference import FORMAT
from howto.model.shelf import Shelf
from howto.model.technique import AnyTechnique
from howto.model.visit import Visit
from howto.span import Span

LEAFLET_LANGUAGE: Final[Rule[Any]] = Rule(
    name="shelf.leaflet-language",
    severity=Severity.WARNING,
    statement="A visit's techniques are told in the language of its leaflet.",
    why="a client who reads one language is given tasks in another, and does not do them",
    references=(FORMAT,),
    applies="visits with `language:`",
)
LANGUAGE_WORDS: Final[Rule[Any]] = Rule(
    name="shelf.language-words",
    severity=Severity.WARNING,
    statement="There are headings and labels in the language of every card and leaflet.",
    why="a page whose headings are in English and whose lines are not is read with effort, and read out wrongly",
    references=(FORMAT,),
    applies="techniques and visits with `language:`",
)
LANGUAGE_RULES: Final = (LEAFLET_LANGUAGE, LANGUAGE_WORDS)
_KNOWN: Final = ", ".join(f"`{each}`" for each in LANGUAGES)


def language_findings(shelf: Shelf, sources: Sources) -> Iterator[Finding]:
    """Yield a finding for each job told in another language than its leaflet, and for each language without labels."""
    for visit in shelf.visits:
        told: set[str] = set()
        for at, job in enumerate(visit.jobs):
            name = own_name(job.technique)
            if base(job.technique.language) == base(visit.language) or name in told:
                continue
            told.add(name)
            span = visit.spans.get(f"jobs[{at}].technique", Span(visit.path))
            yield _untold(visit, job.technique, name, span, sources)
        yield from _unlabelled(visit.language, visit.spans.get("language", Span(visit.path)), sources)
    for technique in shelf.techniques:
        yield from _unlabelled(technique.language, technique.spot("language"), sources)


def _untold(visit: Visit, technique: AnyTechnique, name: str, span: Span, sources: Sources) -> Finding:
    """Return the finding of a technique that has no telling in the leaflet's language."""
    path = PurePosixPath(technique.path).with_name(f"{name}.{base(visit.language)}.md")
    return noted(
        LEAFLET_LANGUAGE,
        span,
        sources,
        what=f"the leaflet is in `{visit.language}`, and `{name}` is told in `{technique.language}` alone",
        why=f"there is no `{path}`, so its tasks are printed in `{technique.language}`",
        mend=f"write `{path}`: the same measures, steps, cautions and tasks in `{visit.language}`",
    )


def _unlabelled(language: str, span: Span, sources: Sources) -> Iterator[Finding]:
    """Yield the finding of a language that has no labels."""
    if base(language) in LANGUAGES:
        return
    yield noted(
        LANGUAGE_WORDS,
        span,
        sources,
        what=f"there are no headings and labels in `{language}`",
        why=f"they are printed in English; there are some in {_KNOWN}",
        mend="write one of these, such as `language: en`, and the words in that language",
    )
