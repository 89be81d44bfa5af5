"""A leaflet's techniques are told in its language."""

from datetime import date

from howto.check.languages import language_findings
from howto.model.shelf import Shelf
from howto.model.technique import AnyTechnique
from howto.model.visit import Job, Visit
from howto.span import SourceText, Span
from tests.support.builders import DIGGING, technique

PATH = "techniques/visits/2026-10-14-orchard-end.md"
SOURCE = SourceText(PATH, "---\nlanguage: es\ndone:\n  - technique: a\n---\n")


def made(language: str = "en") -> AnyTechnique:
    ending = "" if language == "en" else f".{language}"
    path = f"techniques/digging/a{ending}.md"
    return technique(DIGGING, {"id": f"a{ending}", "path": path, "language": language}).technique


def visit(language: str, *techniques: AnyTechnique) -> Visit:
    return Visit(
        id="2026-10-14-orchard-end",
        site="Orchard end",
        date=date(2026, 10, 14),
        language=language,
        path=PATH,
        jobs=tuple(Job(technique=each) for each in techniques),
        spans={"jobs[0].technique": Span(PATH, 4, 16, 17), "language": Span(PATH, 2, 11, 13)},
    )


def shelf(*visits: Visit, techniques: tuple[AnyTechnique, ...] = ()) -> Shelf:
    return Shelf(root="techniques", visits=visits, techniques=techniques)


def test_a_leaflet_whose_techniques_are_told_in_its_language_passes() -> None:
    assert list(language_findings(shelf(visit("es-MX", made("es")), visit("en", made())), {})) == []


def test_a_technique_that_is_not_told_in_the_language_is_named_once() -> None:
    (one,) = language_findings(shelf(visit("es", made(), made())), {PATH: SOURCE})
    assert (one.rule, str(one.severity)) == ("shelf.leaflet-language", "warning")
    assert (one.span.line, one.text) == (4, "  - technique: a")
    assert one.what == "the leaflet is in `es`, and `a` is told in `en` alone"
    assert one.mend == "write `techniques/digging/a.es.md`: the same measures, steps, cautions and tasks in `es`"


def test_a_language_without_labels_is_named() -> None:
    found = list(language_findings(shelf(visit("cy", made("cy")), techniques=(made("cy"),)), {PATH: SOURCE}))
    assert [(each.rule, each.span.path, each.text) for each in found] == [
        ("shelf.language-words", PATH, "language: es"),
        ("shelf.language-words", "techniques/digging/a.cy.md", ""),
    ]
    assert found[0].what == "there are no headings and labels in `cy`"
    assert found[0].why == "they are printed in English; there are some in `en`, `es`, `vi`, `mi`"
