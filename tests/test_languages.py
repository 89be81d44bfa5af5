"""A shelf told in four languages: what is found in it, and every word of its leaflets and cards."""

import re
import shutil
import textwrap
from datetime import date
from pathlib import Path

import pikepdf
import pytest
from pypdf import PdfReader

from howto.jobs.build import Built, build
from howto.jobs.check import examine
from tests.support.source import ROOT
from tests.support.untold import untold

GOLDEN = ROOT / "tests" / "golden" / "languages"
SHELF = GOLDEN / "shelf"
TODAY = date(2028, 2, 28)
LANGUAGES = ("en", "es", "vi", "mi")
ENDING = {"en": "", "es": ".es", "vi": ".vi", "mi": ".mi"}


@pytest.fixture(scope="module")
def to(tmp_path_factory: pytest.TempPathFactory) -> Path:
    return tmp_path_factory.mktemp("languages")


@pytest.fixture(scope="module")
def built(to: Path) -> Built:
    return build(SHELF, to, TODAY, kinds=("cards", "leaflets"))


def words(path: Path) -> str:
    """Return the words of a PDF, however its lines and pages are broken."""
    told = " ".join(page.extract_text() for page in PdfReader(path).pages)
    return textwrap.fill(" ".join(told.split()), 110, break_long_words=False, break_on_hyphens=False) + "\n"


def same(name: str, text: str, accept: bool) -> None:
    golden = GOLDEN / name
    if accept:
        golden.write_text(text, "utf-8")
    assert text == golden.read_text("utf-8")


def test_four_tellings_of_one_technique_agree(built: Built) -> None:
    assert built.findings == ()
    assert not built.stopped


def test_every_job_is_told_in_the_language_of_its_leaflet() -> None:
    visits = examine(SHELF, TODAY).shelf.visits
    assert {visit.language: visit.jobs[0].technique.title for visit in visits} == {
        "en": "Round a bush",
        "es": "Redondear un arbusto",
        "vi": "Cắt tròn một bụi cây",
        "mi": "Whakapoia te rākau iti",
    }
    measures = {str(visit.jobs[0].technique.measures.given()) for visit in visits}
    assert len(measures) == 1


@pytest.mark.parametrize("language", LANGUAGES)
def test_the_words_of_a_leaflet(built: Built, to: Path, language: str, accept: bool) -> None:
    name = f"leaflets/2028-02-27-brook-yard-{language}"
    assert f"{name}.txt" in built.written
    same(f"leaflet.{language}.txt", (to / f"{name}.txt").read_text("utf-8"), accept)


@pytest.mark.parametrize("language", LANGUAGES)
def test_the_words_of_a_card(built: Built, to: Path, language: str, accept: bool) -> None:
    name = f"cards/round-a-bush{ENDING[language]}.pdf"
    assert name in built.written
    same(f"card.{language}.txt", words(to / name), accept)


def test_every_amount_was_told(built: Built, to: Path) -> None:
    assert untold((name, (to / name).read_bytes()) for name in built.written) == []


@pytest.mark.parametrize("language", LANGUAGES)
@pytest.mark.parametrize("kind", ["cards", "leaflets"])
def test_a_page_says_which_language_it_is_in(built: Built, to: Path, language: str, kind: str) -> None:
    stem = f"round-a-bush{ENDING[language]}" if kind == "cards" else f"2028-02-27-brook-yard-{language}"
    assert not built.stopped
    assert (to / kind / f"{stem}.html").read_text("utf-8").startswith(f'<!doctype html>\n<html lang="{language}">')
    with pikepdf.open(to / kind / f"{stem}.pdf") as pdf:
        assert str(pdf.Root.Lang) == language


@pytest.mark.parametrize("language", LANGUAGES)
def test_no_letter_is_an_empty_box(to: Path, built: Built, language: str) -> None:
    assert not built.stopped
    for name in (f"cards/round-a-bush{ENDING[language]}.pdf", f"leaflets/2028-02-27-brook-yard-{language}.pdf"):
        assert not re.search("[\ufffd\u25a1\0]", words(to / name))
        fonts = {str(font) for page in PdfReader(to / name).pages for font in _fonts(page)}
        assert fonts
        assert {re.sub(r"^/[A-Z]{6}\+", "", font) for font in fonts} <= {
            "SourceSansPro-Regular",
            "SourceSansPro-Bold",
            "SourceSansPro-It",
            "SourceSansPro-BoldIt",
            "BarlowCondensed-SemiBold",
            "BarlowCondensed-Bold",
        }


def _fonts(page: object) -> list[str]:
    resources = page["/Resources"]  # type: ignore[index]
    return [str(font.get_object()["/BaseFont"]) for font in resources["/Font"].values()]


def test_tasks_that_contradict_each_other_are_found_in_every_language(tmp_path: Path) -> None:
    shelf = tmp_path / "shelf"
    shutil.copytree(SHELF, shelf)
    for ending, dry, own in (("", "Within 2 days: do not water.", "water"), (".es", "En 2 días: no regar.", "riegue")):
        first = (shelf / f"clipping/round-a-bush{ending}.md").read_text("utf-8")
        other = re.sub(rf"- .* {own} .*", f"- {dry}", first).replace("title: R", "title: Then r")
        (shelf / f"clipping/then{ending}.md").write_text(other, "utf-8")
    visit = shelf / "visits/2028-02-27-brook-yard-es.md"
    visit.write_text(visit.read_text("utf-8").replace("done:\n", "done:\n  - technique: then\n"), "utf-8")
    found = [each for each in examine(shelf, TODAY).findings if each.rule == "leaflet.contradiction"]
    assert [(each.span.line, each.what) for each in found] == [(8, "two jobs ask opposite things of Ilex crenata")]
    text = visit.read_text("utf-8")
    mended = text.replace("technique: round-a-bush\n", "technique: round-a-bush\n    leave out: riegue una vez\n")
    visit.write_text(mended, "utf-8")
    assert [each.what for each in examine(shelf, TODAY).findings if each.severity == "error"] == []
