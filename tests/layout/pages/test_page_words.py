from datetime import date

import pytest

from howto.layout.pages.leaflet import leaflet_sheet
from howto.layout.pages.page_words import card_words, leaflet_words, said_drawing
from howto.model.crew import Crew
from howto.model.figure import Figure, Table
from howto.model.prose import plain
from howto.model.sheet import Bullets, Facts, Sheet
from howto.model.task import Plan
from howto.model.technique import AnyTechnique
from howto.model.visit import Job, Visit
from howto.shapes import Dimension, Disc, Drawing, Label, Level, Line, Role
from howto.span import Span
from tests.support.builders import DIGGING, technique

NBSP = "\u00a0"
NEXT = Figure(name="next clip", label="Next clip due", value=date(2027, 4, 14), working=(), references=(), client=True)
SHARE = Figure(
    name="share", label="Water a week in April", value=27.7213, unit="L", working=(), references=(), client=True
)
ODD = Figure(
    name="odd", label="Blast depth", value=f"every 2.5{NBSP}days or so", working=(), references=(), client=True
)
TABLE = Table(columns=("Cut", "Date"), units=("", ""), rows=(("a first one", date(2027, 4, 14)), (f"2{NBSP}mm", 1.0)))
DRAWING = Drawing(
    shapes=(
        Line(((0, 0), (1, 1)), Role.KEEP),
        Dimension((0, 0), (9, 0), f"7.5{NBSP}mm"),
        Level((0, 0), "widest ring"),
        Label((0, 0), f"40{NBSP}mm off each side"),
        Disc((0, 0), 1),
    ),
    caption="From above: the widest ring first",
    alt="A hole.",
)


def made(language: str, **having: object) -> AnyTechnique:
    crew = Crew(language=language)
    return technique(DIGGING, {"language": language, **having}, crew=crew)


def visit(language: str, crew_language: str = "en") -> Visit:
    job = Job(technique=made(crew_language), area_m2=95.5, what="the lawn")
    return Visit(id="v", site="Orchard end", date=date(2026, 10, 14), language=language, jobs=(job,), path="v.md")


def sheet(language: str, *figures: Figure, crew_language: str = "en") -> Sheet:
    return leaflet_sheet(visit(language, crew_language), Plan(), (figures,), date(2026, 10, 20))


def test_a_drawing_is_told_in_the_language_of_its_page() -> None:
    told = said_drawing(DRAWING, Crew(language="es"))
    assert [shape.text for shape in told.shapes if isinstance(shape, Dimension | Level | Label)] == [
        f"7,5{NBSP}mm",
        "el anillo más ancho",
        f"40{NBSP}mm por lado",
    ]
    assert (told.caption, told.alt) == ("Desde arriba: primero, el anillo más ancho", "A hole.")
    assert said_drawing(DRAWING, Crew()) is DRAWING


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
    assert leaflet_words(visit("es"), ((NEXT, SHARE),)) == ()
    assert leaflet_words(visit("en"), ((ODD,),)) == ()
    assert leaflet_words(visit("cy"), ((ODD,),)) == ()  # that language has no labels at all: `shelf.language-words`
    (one,) = leaflet_words(visit("es"), ((NEXT, ODD),))
    assert (one.rule, str(one.severity), one.span) == ("fit.page-words", "warning", Span("v.md"))
    assert one.what == "there are no words in `es` for `blast depth`, `every {} or so`"
    assert one.mend == (
        'write in crew.yaml, under `words:` and there under `es:`, `"blast depth": ` and how it is said'
    )


def test_a_crews_own_words_end_the_finding() -> None:
    crew = Crew(words={"es": {"blast depth": "profundidad", "every {} or so": "cada {} más o menos"}})
    own = visit("es")
    job = own.jobs[0].model_copy(update={"technique": technique(DIGGING, crew=crew)})
    assert leaflet_words(own.model_copy(update={"jobs": (job,)}), ((ODD,),)) == ()


def test_what_a_card_would_print_in_english_is_advice() -> None:
    tables = Figure(name="t", label="Order", value=1.0, working=(), references=(), table=TABLE)
    (one,) = card_words(made("es"), (ODD, tables), (DRAWING,))
    assert str(one.severity) == "advice"
    assert one.what == (
        "there are no words in `es` for `digging`, `round`, `hole width`, `hole depth`, "
        "`blast depth`, `every {} or so`, `cut`, `date` and 2 more"
    )
    assert card_words(made("en"), (ODD, tables), (DRAWING,)) == ()
