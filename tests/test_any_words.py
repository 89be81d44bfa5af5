"""Whatever an author writes, wherever words may stand: a page is made or a finding says where, and nothing breaks."""

from dataclasses import replace
from datetime import date
from pathlib import Path
from typing import Any

import pytest

import howto
from howto.findings import Finding
from howto.jobs.check import BY_NAME, examine
from howto.jobs.letter import write_letter
from howto.jobs.outputs import Make, make
from howto.layout.pages.letter import Needs, letter_sheet
from howto.layout.unset_letters import letter_findings
from howto.model.crew import Climate, Colours
from howto.model.measures import Measures
from howto.model.plants import PlantBook
from howto.model.prose import prose
from howto.model.value import Value
from howto.render.pdf import pdf
from howto.span import Span
from tests.support.slots import NAMES, NOT_PRINTED, SLOTS, fill, place_of, put_up

TODAY = date(2026, 10, 14)
ODD = ("王", "س", "🌿", "\ue000", "\u0378", "\u20e3", "\U0001f3fd")  # other scripts, private, unassigned, combining
PRINTED = tuple(slot for slot in SLOTS if slot not in NOT_PRINTED)
READ = frozenset(  # the texts that people read, and what holds them
    {"title", "intro", "tools", "materials", "steps", "cautions", "finish", "aftercare", "name", "note", "text", "what"}
    | {"key_points", "reasons", "checks", "pictures", "marks", "alt", "credit", "wear", "plants", "crew", "contact"}
    | {"site", "jobs", "technique", "plant", "words", "before", "after"}
)
SENTENCES = tuple(slot for slot in SLOTS if slot not in NAMES)


@pytest.fixture(scope="module")
def shelf(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Return a shelf that is written anew by each test."""
    root = tmp_path_factory.mktemp("words") / "shelf"
    put_up(root)
    return root


def found(root: Path, put: dict[str, str]) -> list[Finding]:
    """Return what is found on the shelf with these words in these slots."""
    fill(root, put)
    return [each for each in examine(root, TODAY).findings if str(each.severity) == "error"]


def told(findings: list[Finding], root: Path) -> list[tuple[str, str, int]]:
    """Return the rule, file and line of findings."""
    return [(each.rule, Path(each.span.path).relative_to(root).as_posix(), each.span.line) for each in findings]


def test_the_shelf_is_clean_with_plain_words(shelf: Path) -> None:
    assert found(shelf, {}) == []


@pytest.mark.parametrize("slot", PRINTED)
def test_letters_that_the_typefaces_lack_are_found_where_they_stand(shelf: Path, slot: str) -> None:
    for put in (ODD[0], "".join(ODD)):
        assert told(found(shelf, {slot: f"x {put}"}), shelf) == [("file.letter", *place_of(slot))]


@pytest.mark.parametrize("slot", sorted(NOT_PRINTED))
def test_what_is_read_aloud_may_hold_any_letter(shelf: Path, slot: str) -> None:
    assert found(shelf, {slot: "".join(ODD)}) == []


@pytest.mark.parametrize("slot", PRINTED)
def test_letters_nobody_sees_are_no_finding(shelf: Path, slot: str) -> None:
    assert found(shelf, {slot: "x\u00ad\u200d\u202e"}) == []


@pytest.mark.parametrize("slot", SLOTS)
@pytest.mark.parametrize("put", ["x {nonsense}", "x {nonsense", "x nonsense}", "x {}"])
def test_braces_that_are_not_filled_are_found_where_they_stand(shelf: Path, slot: str, put: str) -> None:
    if (slot, put) == ("crew words", "x {}"):  # a place for an amount, which another rule counts
        assert told(found(shelf, {slot: put}), shelf) == [("file.value", *place_of(slot))]
        return
    (one,) = found(shelf, {slot: put})
    assert told([one], shelf)[0][1:] == place_of(slot)
    assert one.rule in {"file.braces", "technique.words", "technique.braces", "visit.words"}


@pytest.mark.parametrize("slot", sorted(NAMES))
def test_words_that_mean_something_are_not_filled_in_a_name(shelf: Path, slot: str) -> None:
    (one,) = found(shelf, {slot: "x {finished width}"})
    assert one.rule == ("technique.words" if slot == "title" else "file.braces")
    assert told([one], shelf)[0][1:] == place_of(slot)


def test_words_in_braces_are_filled_in_every_sentence(shelf: Path, tmp_path: Path) -> None:
    fill(shelf, dict.fromkeys(SENTENCES, "by {finished width}"))
    built = howto.build_shelf(shelf, tmp_path / "out", TODAY)
    assert [each.what for each in built.findings if str(each.severity) == "error"] == []
    written = {name: (tmp_path / "out" / name).read_bytes() for name in built.written}
    texts = {name: data.decode() for name, data in written.items() if not name.endswith((".jpg", ".pdf"))}
    assert {name for name, text in texts.items() if "finished width}" in text} == set()
    told = {name: text.count("700") for name, text in texts.items()}
    assert all(told[name] for name in texts if name != "index.html")
    letter = write_letter(shelf, tmp_path / "out", TODAY, TODAY)
    assert "{" not in letter.text


def odd(value: Any) -> Any:
    """Return a value of the model with letters that no typeface has put to every text that is read by people."""
    if isinstance(value, str):
        return f"{value} {''.join(ODD)}\ufeff\x07"
    if isinstance(value, tuple):
        return tuple(map(odd, value))
    if isinstance(value, Value) and not isinstance(value, Measures | Colours | Climate | PlantBook):
        told = {name: getattr(value, name) for name in type(value).model_fields if name in READ}
        return value.model_copy(update={name: odd(each) for name, each in told.items()})
    return value


def test_letters_that_come_by_another_way_are_named_and_stop_no_rendering(shelf: Path) -> None:
    fill(shelf, {})
    read = examine(shelf, TODAY)
    crew = odd(read.shelf.crew)
    techniques = tuple(
        replace(each, work=replace(each.work, crew=crew), technique=odd(each.technique)) for each in read.ready.values()
    )
    visits = tuple(replace(each, visit=odd(each.visit), crew=crew) for each in read.visits.values())
    kinds = frozenset({"cards", "carousels", "leaflets"})
    written: dict[str, bytes] = {}
    job = Make(read.shelf, BY_NAME, techniques, techniques, visits, kinds, TODAY)
    named = [each for each in make(job, written.__setitem__) if each.rule == "fit.letter"]
    assert [each.span.line for each in named] == [2, 2, 1]  # the card, its pictures, the leaflet
    assert all("“王”" in each.what for each in named)
    assert {name for name in written if name.endswith(".pdf")} == {
        "cards/clip-a-ball.pdf",
        "leaflets/2026-10-14-orchard-end.pdf",
    }
    sheet = letter_sheet(odd(read.shelf.crew), TODAY, Needs(care=(prose(odd("Water.")),)), TODAY)
    assert len(letter_findings((sheet,), Span("crew.yaml"))) == 1
    assert pdf(sheet, TODAY)[1] == 1
