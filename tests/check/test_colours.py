import pytest

from howto.check.colours import COLOUR_RULES, colour_findings, stands_out
from howto.findings import Severity
from howto.model.crew import Colours, Crew
from howto.model.shelf import Shelf
from howto.read.crew import crew_of
from howto.span import SourceText


def shelf(**colours: str) -> Shelf:
    return Shelf(root="techniques", crew=Crew(colours=Colours(**colours)))


def read(text: str) -> Shelf:
    source = SourceText("techniques/crew.yaml", text)
    return Shelf(root="techniques", crew=crew_of(source)[0], sources={source.path: source})


def test_the_colours_a_shelf_starts_with_can_be_read() -> None:
    assert list(colour_findings(Shelf(root="techniques"))) == []


def test_a_pale_accent_is_placed_explained_and_mended() -> None:
    text = 'name: Us\ncolours:\n  accent: "#e08a6b" # the van\n'
    (found,) = colour_findings(read(text))
    assert (found.rule, found.severity) == ("shelf.colours", Severity.ERROR)
    assert (found.span.path, found.span.line, found.span.column, found.span.end_column) == (
        "techniques/crew.yaml",
        3,
        11,
        20,
    )
    assert found.text == '  accent: "#e08a6b" # the van'
    assert found.what == "accent `#e08a6b` stands out 2.3 to 1 from the ground `#f6f3ea`"
    assert found.why == "words need 4.5 to 1"
    assert found.mend == 'write `accent: "#9c604b"`, the nearest that does'
    assert stands_out("#9c604b", "#f6f3ea")
    assert not stands_out("#9e614c", "#f6f3ea")


def test_the_mend_mends() -> None:
    (found,) = colour_findings(shelf(accent="#e08a6b"))
    mended = found.mend.split('"')[1]
    assert list(colour_findings(shelf(accent=mended))) == []


@pytest.mark.parametrize("ground", ["#000000", "#7f7f7f", "#f6f3ea", "#0a5f38"])
def test_every_ground_has_a_mend_for_every_colour(ground: str) -> None:
    for found in colour_findings(shelf(ground=ground, ink=ground, accent=ground)):
        mended = found.mend.split('"')[1]
        assert stands_out(mended, ground)


def test_a_colour_on_one_line_with_the_others_is_found_there() -> None:
    (found,) = colour_findings(read("colours: {ink: '#1d2a26', accent: '#ffd0c0'}\n"))
    assert (found.span.line, found.span.column, found.span.end_column) == (1, 35, 44)


def test_a_colour_that_is_not_written_is_placed_at_its_key_or_at_the_start() -> None:
    (found,) = colour_findings(read("name: Us\ncolours: {ground: '#a63d1f', ink: '#ffffff'}\n"))
    assert (found.span.line, found.span.column, found.text) == (2, 1, "colours: {ground: '#a63d1f', ink: '#ffffff'}")
    (found,) = colour_findings(Shelf(root="ours", crew=Crew(colours=Colours(accent="#ffffff"))))
    assert found.span.path == "ours/crew.yaml"


def test_a_colour_that_only_colour_blind_eyes_lose_is_a_finding() -> None:
    (found,) = colour_findings(shelf(ground="#000060", ink="#ffffff", accent="#ff0030"))
    assert found.why == "colour-blind eyes see 2.4 to 1, and marks need 3 to 1"


def test_the_rule_names_its_sources() -> None:
    assert [str(each).split(",")[0] for each in COLOUR_RULES[0].references] == [
        "World Wide Web Consortium",
        "IEEE Transactions on Visualization and Computer Graphics 15(6)",
    ]
