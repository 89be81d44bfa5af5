from dataclasses import replace
from datetime import date

import pytest

from howto.compute import ready as making
from howto.layout.pages.leaflet import leaflet_sheet
from howto.layout.pages.page_words import card_words, leaflet_words
from howto.model.crew import Crew
from howto.model.figure import Figure, Table
from howto.model.prose import plain
from howto.model.ready import Ready, ReadyVisit
from howto.model.sheet import Bullets, Facts, Sheet
from howto.model.task import Plan
from howto.model.visit import Job, Visit
from howto.quantities.amounts import Word, mm, month_named, qty
from howto.shapes import DimensionLine, Disc, Drawing, Label, Level, Line, Role
from howto.span import Span
from tests.support import sample
from tests.support.builders import DIGGING, technique
from tests.support.drawings import words_of

NBSP = "\u00a0"
NEXT = Figure(name="next clip", label="Next clip due", value=date(2027, 4, 14), working=(), references=(), client=True)
SHARE = Figure(
    name="share",
    label=f"Water a week in {month_named(4)}",
    value=27.7213,
    unit="L",
    working=(),
    references=(),
    client=True,
)
ODD = Figure(
    name="odd", label="Blast depth", value=f"every {qty(2.5, 'days')} or so", working=(), references=(), client=True
)
TABLE = Table(columns=("Cut", "Date"), units=("", ""), rows=(("a first one", date(2027, 4, 14)), (str(mm(2)), 1.0)))
DRAWING = Drawing(
    shapes=(
        Line(((0, 0), (1, 1)), Role.KEEP),
        DimensionLine((0, 0), (9, 0), str(mm(7.5))),
        Level((0, 0), "widest ring"),
        Label((0, 0), f"{mm(40)} off each side"),
        Disc((0, 0), 1),
    ),
    caption=f"From above: the {Word('widest ring')} first",
    alt="A hole.",
)


def hole(language: str, *figures: Figure) -> Ready:
    family = replace(DIGGING, figures=lambda *_: iter(figures), drawings=lambda *_: (DRAWING,))
    work = technique(family, {"language": language}, crew=Crew(language=language))
    return making.ready(work, family, date(2026, 10, 14))


def visit(language: str, *figures: Figure, crew: Crew | None = None) -> ReadyVisit:
    crew = crew or Crew()
    own = technique(DIGGING, {"language": crew.language}).technique
    job = Job(technique=own, area_m2=95.5, what="the lawn")
    made = Visit(id="v", site="Orchard end", date=date(2026, 10, 14), language=language, jobs=(job,), path="v.md")
    return sample.ready_visit(made, (figures,), crew)


def sheet(language: str, *figures: Figure, crew_language: str = "en") -> Sheet:
    return leaflet_sheet(visit(language, *figures, crew=Crew(language=crew_language)), Plan(), date(2026, 10, 20))


def test_a_drawing_is_told_in_the_language_of_its_page() -> None:
    (told,) = hole("es").drawings
    assert [shape.text for shape in told.shapes if isinstance(shape, DimensionLine | Level | Label)] == [
        f"7,5{NBSP}mm",
        "el anillo más ancho",
        f"40{NBSP}mm por lado",
    ]
    assert (told.caption, told.alt) == ("Desde arriba: primero, el anillo más ancho", "A hole.")
    (english,) = hole("en").drawings
    assert words_of(english) == ["7.5 mm", "widest ring", "40 mm off each side"]
    assert (english.caption, english.alt) == ("From above: the widest ring first", "A hole.")


@pytest.mark.parametrize(
    ("language", "label", "value"),
    [
        ("en", "Next clip due", "14 April 2027"),
        ("es", "Próximo recorte", "14 de abril de 2027"),
        ("vi", "Lần cắt tỉa tới", "14 tháng 4, 2027"),
        ("mi", "Te tapahanga e whai ake nei", "14 Āperira 2027"),
    ],
)
@pytest.mark.parametrize("crew", ["en", "es"])
def test_a_figure_on_a_leaflet_follows_the_visit_and_not_the_crew(
    language: str, label: str, value: str, crew: str
) -> None:
    blocks = [block for part in sheet(language, NEXT, crew_language=crew).sections for block in part.blocks]
    (facts,) = [block for block in blocks if isinstance(block, Facts)]
    assert [(entry.label, entry.value) for entry in facts.entries] == [(label, value)]


def test_an_amount_on_a_leaflet_has_the_readers_decimal_mark() -> None:
    blocks = [block for part in sheet("es", SHARE).sections for block in part.blocks]
    (facts,) = [block for block in blocks if isinstance(block, Facts)]
    assert [(entry.label, entry.value) for entry in facts.entries] == [("Agua por semana en abril", f"27,7{NBSP}L")]
    (done,) = sheet("es").sections[0].blocks
    assert isinstance(done, Bullets)
    assert plain(done.items[0]) == f"Do the work: the lawn, 95,5{NBSP}m²"


def test_what_a_leaflet_would_print_in_english_is_named() -> None:
    assert leaflet_words(visit("es", NEXT, SHARE)) == ()
    assert leaflet_words(visit("en", ODD)) == ()
    assert leaflet_words(visit("cy", ODD)) == ()  # that language has no labels at all: `shelf.language-words`
    (one,) = leaflet_words(visit("es", NEXT, ODD))
    assert (one.rule, str(one.severity), one.span) == ("fit.page-words", "warning", Span("v.md"))
    assert one.what == "there are no words in `es` for `blast depth`, `every {} or so`"
    assert one.mend == (
        'write in crew.yaml, under `words:` and there under `es:`, `"blast depth": ` and how it is said'
    )


def test_a_crews_own_words_end_the_finding() -> None:
    crew = Crew(words={"es": {"blast depth": "profundidad", "every {} or so": "cada {} más o menos"}})
    assert leaflet_words(visit("es", ODD, crew=crew)) == ()


def test_what_a_card_would_print_in_english_is_advice() -> None:
    tables = Figure(name="t", label="Order", value=1.0, working=(), references=(), table=TABLE)
    (one,) = card_words(hole("es", ODD, tables))
    assert str(one.severity) == "advice"
    assert one.what == (
        "there are no words in `es` for `digging`, `round`, `hole width`, `hole depth`, "
        "`blast depth`, `every {} or so`, `cut`, `date` and 2 more"
    )
    assert card_words(hole("en", ODD, tables)) == ()
