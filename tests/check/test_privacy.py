"""Nothing in a visit tells strangers whose garden it is, and pictures stay with their client."""

from datetime import date
from typing import Any

import pytest

from howto.check.privacy import privacy_findings
from howto.check.private import given_away
from howto.findings import Finding, Severity
from howto.model.crew import Crew
from howto.model.prose import prose
from howto.model.shelf import Shelf
from howto.model.technique import Hazard, Mark, Picture
from howto.model.visit import Visit
from howto.span import SourceText, Span
from tests.support import sample
from tests.support.reading import words_of
from tests.support.visits import job

CREW = Crew(contact="Lantern Field crew, 01632 960 014, crew@lantern.example")


def kinds(text: str, *, label: bool = False) -> list[str]:
    """Return what a text gives away."""
    return [given.kind for given in given_away(text, CREW, label=label)]


@pytest.mark.parametrize(
    "text",
    [
        "12 Elm Street", "the hedge at 4b Mill Lane", "17, Old Post Rd", "221 Upper Baker St", "9 Orchard Close",
        "12 elm street", "we met at 7 long acre road", "Flat 3, top bell", "Unit 12", "PO Box 44", "apt. 5b",
        "SW1A 1AA", "send it to LS2 9JT", "OR 97205", "103 St Mary’s Terrace",
    ],
)  # fmt: skip
def test_a_street_address_is_told(text: str) -> None:
    assert kinds(text) == ["address"]


@pytest.mark.parametrize(
    "text",
    [
        "Orchard end", "the 2 balls by the road", "12 roses along the lane side", "cut 3 hedges street side",
        "900 mm from the drive", "Keep 2 m off the lane", "the pair by the front step", "3 new trees on the street",
        "Box hedge, 14 m", "Walk 20 m up the lane", "a 12 year old terrace", "Both hedges are level. 3 Close the gate.",
        "June 2026 Hill garden", "the 1930s Avenue planting",
    ],
)  # fmt: skip
def test_what_is_no_address_is_let_be(text: str) -> None:
    assert kinds(text) == []


def test_a_sites_label_that_is_a_street_is_told_more_softly() -> None:
    (given,) = given_away("Mill Lane", CREW, label=True)
    assert (given.kind, given.sure) == ("address", False)
    assert kinds("Mill Lane") == []
    assert kinds("Lane end", label=True) == []
    assert kinds("Orchard end", label=True) == []


@pytest.mark.parametrize(
    "text",
    ["call 01632 960 999", "+44 1632 960999", "(555) 014-7788", "555-014-7788", "0400 123 456", "ring Jo on 555 0147",
     "text: 5550 147 88"],
)  # fmt: skip
def test_a_phone_number_is_told(text: str) -> None:
    assert kinds(text) == ["phone"]


@pytest.mark.parametrize(
    "text",
    [
        "2026-10-14", "14.10.2026", "600 1200 1800 mm", "from 600 - 1200 mm", "1 000 000 L", "01632 960 014",
        "35 g/m2", "4.9 g/m2 and 2.4", "1000 2000 3000", "call before 8",
    ],
)  # fmt: skip
def test_what_is_no_clients_phone_is_let_be(text: str) -> None:
    assert kinds(text) == []


def test_an_email_is_told_unless_it_is_the_crews_own() -> None:
    assert kinds("write to ann@garden.example") == ["email"]
    assert kinds("write to Crew@Lantern.example") == []


@pytest.mark.parametrize(
    "text",
    [
        "gate code 4711", "The code is 1234.", "keypad: 5566#", "alarm 9090 within a minute", "door code is 12345",
        "4711 opens the gate", "PIN 8080", "the key is under the pot", "spare key kept behind the water butt",
        "combination 12345 on the padlock", "key safe by the door, 4455",
    ],
)  # fmt: skip
def test_a_way_into_a_house_is_told(text: str) -> None:
    assert "door-code" in kinds(text)


@pytest.mark.parametrize(
    "text",
    [
        "pin the line every 300 mm", "The key point is the ring.", "a combination of 900 mm and 700 mm",
        "Follow local codes.", "the alarm call of a wren", "Lock the shears before you walk.",
        "keys of ash in the lawn",
        "water 1000 litres in all", "pin 12 hooks", "lock 2000 L in the butt",
    ],
)  # fmt: skip
def test_what_opens_nothing_is_let_be(text: str) -> None:
    assert kinds(text) == []


def shelf(*visits: Visit, sources: dict[str, SourceText] | None = None, **changes: Any) -> list[Finding]:
    """Return the findings of a shelf with these visits."""
    known = Shelf(root="techniques", crew=CREW, visits=visits, sources=sources or {}, **changes)
    return list(privacy_findings(known, known.sources))


def visit(**changes: Any) -> Visit:
    """Return a visit that gives nothing away."""
    return sample.visit(**{"jobs": (job("the pair"),), "words": (prose("All is well."),), **changes})


def test_a_visit_that_gives_nothing_away_is_clean() -> None:
    assert shelf(visit()) == []


@pytest.mark.parametrize(
    ("changes", "rule", "what"),
    [
        ({"site": "12 Elm Street"}, "visit.address", "`12 Elm Street` looks like a street address"),
        ({"words": (prose("Ring 01632 960 999."),)}, "visit.phone", "`01632 960 999` looks like a phone number"),
        ({"words": (prose("Write to ann@a.example."),)}, "visit.email", "`ann@a.example` is an e-mail address"),
        (
            {"jobs": (job("the bed, gate code 4711"),)},
            "visit.door-code",
            "`gate code 4711` looks like the way into a house",
        ),
        (
            {"before": (Picture(file="12-elm-street.jpg"),)},
            "visit.address",
            "`12 elm street` looks like a street address",
        ),
        (
            {"after": (Picture(file="a.jpg", alt="0400 123 456"),)},
            "visit.phone",
            "`0400 123 456` looks like a phone number",
        ),
        (
            {"id": "2026-10-14-12-elm-street"},
            "visit.address",
            "`12 elm street` looks like a street address, in the file's name",
        ),
    ],
)
def test_every_part_of_a_visit_is_looked_at(changes: dict[str, Any], rule: str, what: str) -> None:
    (finding,) = shelf(visit(**changes))
    assert (finding.rule, finding.what, finding.severity) == (rule, what, Severity.ERROR)


def test_a_street_for_a_label_only_warns() -> None:
    (finding,) = shelf(visit(site="Mill Lane"))
    assert (finding.rule, finding.severity) == ("visit.address", Severity.WARNING)
    assert finding.mend == "write a label that only you understand, such as `Orchard end`"


def test_the_finding_points_at_the_very_words() -> None:
    text = "---\nsite: a\n---\nAll is well.\nThe gate code 4711 works.\n"
    path = "techniques/visits/v.md"
    source = SourceText(path, text)
    words, spans = (prose("All is well. The gate code 4711 works."),), {"words[0]": Span(path, 4, 1, 13)}
    found = visit(words=words, path=path, spans=spans, located=words_of(source, 4))
    (finding,) = shelf(found, sources={path: source})
    assert (finding.span, finding.text) == (Span(path, 5, 5, 19), "The gate code 4711 works.")
    wrapped = SourceText(path, text.replace("gate code", "gate\ncode"))
    found = found.model_copy(update={"located": words_of(wrapped, 4)})
    (finding,) = shelf(found, sources={path: wrapped})
    assert finding.span == Span(path, 4, 1, 13)


def stepped(file: str) -> Any:
    """Return a technique whose first step shows a picture."""
    first = sample.STEPS[0].model_copy(update={"pictures": (Picture(file=file),)})
    return sample.technique(steps=(first,))


def test_a_visits_picture_goes_out_only_with_leave() -> None:
    after = (Picture(file="Ball.jpg"),)
    (finding,) = shelf(visit(after=after), techniques=(stepped("ball.jpg"),))
    assert (finding.rule, finding.span.path) == ("visit.may-publish", "techniques/clipping/clip-a-ball.md")
    assert "write `may publish: yes` in `techniques/visits/2026-10-14-orchard-end.md`" in finding.mend
    assert finding.also == Span("techniques/visits/2026-10-14-orchard-end.md")
    assert shelf(visit(after=after, may_publish=True), techniques=(stepped("ball.jpg"),)) == []
    assert shelf(visit(after=after), techniques=(stepped("other.jpg"),)) == []


def test_one_clients_picture_is_in_no_other_clients_leaflet() -> None:
    first = visit(after=(Picture(file="a.jpg"),))
    again = visit(
        id="2026-11-25-orchard-end", site="orchard  End", date=date(2026, 11, 25), before=(Picture(file="a.jpg"),)
    )
    other = visit(id="2026-11-26-mill", site="Mill", path="m.md", before=(Picture(file="A.jpg"),))
    assert shelf(first, again) == []
    (finding,) = shelf(first, again, other)
    assert (finding.rule, finding.span.path) == ("visit.shared-picture", "m.md")
    assert finding.what == "`A.jpg` is a picture of `Orchard end` too"
    assert finding.also == Span("techniques/visits/2026-10-14-orchard-end.md")


@pytest.mark.parametrize(
    ("name", "given"),
    [
        ("12-high-street", "12 high street"),
        ("2026-10-14-12-mill-rd", "12 mill rd"),
        ("2026-13-14-12-high-street", "12 high street"),
        ("4-elm-close", "4 elm close"),
        ("20261014-9-orchard-way", "9 orchard way"),
        ("01632-960-999", "01632 960 999"),
        ("2026-10-14-0400-123-456", "0400 123 456"),
        ("call-555-0147", "555 0147"),
        ("2026-10-14-sw1a-1aa", "sw1a 1aa"),
        ("gate-code-4711", "gate code 4711"),
    ],
)
def test_a_files_name_gives_nothing_away_but_a_day(name: str, given: str) -> None:
    path = f"techniques/visits/{name}.md"
    (finding,) = shelf(visit(id=name, path=path))
    assert (finding.span, finding.severity) == (Span(path), Severity.ERROR)
    assert finding.what.startswith(f"`{given}` ")
    assert finding.what.endswith(", in the file's name")
    assert finding.mend == "rename the file by its day and a label, such as `2026-10-14-orchard-end.md`"
    (finding,) = shelf(techniques=(sample.technique(id=name, path=path),))
    assert (finding.rule, finding.mend) == (
        "technique.private",
        "rename the file by what is done, such as `clip-a-ball.md`",
    )


@pytest.mark.parametrize(
    "name", ["2026-10-14-orchard-end", "orchard-end", "2026-10-14", "20261014-orchard-end", "3-balls", "2026-2-3-end-1"]
)
def test_a_name_that_gives_nothing_away_may_stand(name: str) -> None:
    assert shelf(visit(id=name), techniques=(sample.technique(id=name),)) == []


@pytest.mark.parametrize(
    "text",
    ["On 2026-10-14 01632 960 999", "Day 3 01632 960 999", "01.23.45.67.89", "2026-10-14, 0400 123 456, 14.10.2026"],
)
def test_a_day_or_a_digit_in_front_hides_no_phone_number(text: str) -> None:
    assert kinds(text) == ["phone"]


@pytest.mark.parametrize("text", ["0.25 0.5 0.75 1.25", "1 000 000 000 L", "2026-10-14 2026-11-25 2027-01-06"])
def test_numbers_in_a_row_are_no_phone_number(text: str) -> None:
    assert kinds(text) == []


def test_a_label_is_read_in_any_capitals() -> None:
    assert kinds("12 mill rd", label=True) == kinds("12 MILL RD", label=True) == ["address"]
    assert kinds("mill lane", label=True) == ["address"]


def test_a_plant_of_a_visit_gives_nothing_away() -> None:
    (finding,) = shelf(visit(jobs=(job("the pair", plant="the box of 12 Elm Street"),)))
    assert (finding.rule, finding.what) == ("visit.address", "`12 Elm Street` looks like a street address")


def with_picture(**words: Any) -> dict[str, Any]:
    """Return the change to a technique whose first step has a picture with these words."""
    picture = Picture(file="ball.jpg", **words)
    return {"steps": (sample.STEPS[0].model_copy(update={"pictures": (picture,)}),)}


@pytest.mark.parametrize(
    "changes",
    [
        {"title": "Clip the ball at 12 Elm Street"},
        {"intro": (prose("Shown at 12 Elm Street."),)},
        {"plants": ("the box of 12 Elm Street",)},
        {"cautions": (Hazard(title="Blades.", wear=("gloves from 12 Elm Street",)),)},
        with_picture(alt="The ball at 12 Elm Street."),
        with_picture(credit="12 Elm Street"),
        with_picture(marks=(Mark(x_percent=1, y_percent=1, text="12 Elm Street"),)),
    ],
    ids="-".join,
)
def test_a_technique_gives_no_client_away(changes: dict[str, Any]) -> None:
    (finding,) = shelf(techniques=(sample.technique(**changes),))
    assert (finding.rule, finding.severity) == ("technique.private", Severity.ERROR)
    assert finding.what == "`12 Elm Street` looks like a street address"
    assert finding.mend.startswith("take it out; if anyone may know it, say who in a line `waive: {technique.private:")


def test_a_number_that_anyone_may_call_is_waived() -> None:
    line = sample.technique(intro=(prose("Swallowed: call 01632 960 911."),))
    assert [finding.rule for finding in shelf(techniques=(line,))] == ["technique.private"]
    assert shelf(techniques=(line.model_copy(update={"waive": {"technique.private": "the poison line"}}),)) == []


@pytest.mark.parametrize(
    ("text", "kind"),
    [
        ("Calle Mayor 12", "address"),
        ("la casa de la calle de los Olmos, 4", "address"),
        ("Avda. del Sol n.º 7", "address"),
        ("số 12 đường Lê Lợi", "address"),
        ("llame al 600 123 456", "phone"),
        ("gọi 912 345 678", "phone"),
        ("El código es 4711", "door-code"),
        ("mã cổng 4711", "door-code"),
        ("La llave está debajo de la maceta", "door-code"),
        ("chìa khóa ở dưới chậu", "door-code"),
    ],
)
def test_what_gives_a_client_away_is_told_in_the_languages_of_leaflets(text: str, kind: str) -> None:
    assert kinds(text) == [kind]


@pytest.mark.parametrize(
    "text",
    [
        "las tres bolas del camino",
        "un punto clave cada 300 mm",
        "el camino de 12 m",
        "3 đường thẳng",
        "a la calle 2 veces",
    ],
)
def test_other_words_of_those_languages_are_let_be(text: str) -> None:
    assert kinds(text) == []
