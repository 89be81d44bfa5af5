"""Every case of a whole shelf is reported in exactly its text, and following its mends to the letter clears it.

A case is a folder `tests/cases/shelves/<rule>--<slug>`: `broken` is the shelf, `mended` the shelf after its mends
were followed, `findings` what is said of it.
"""

from pathlib import Path

import pytest

from howto.cli.report import listed
from howto.families import FAMILIES
from howto.findings import Finding
from howto.model.shelf import Shelf
from howto.read.shelf import read_shelf

FOLDER = Path(__file__).parents[1] / "cases" / "shelves"
CASES = sorted(FOLDER.iterdir())


def read(root: Path, monkeypatch: pytest.MonkeyPatch) -> tuple[Shelf, tuple[Finding, ...]]:
    """Return a shelf read from its own folder, so that findings name its files alone."""
    monkeypatch.chdir(root)
    return read_shelf(Path(), {each.name: each for each in FAMILIES})


@pytest.mark.parametrize("case", CASES, ids=lambda case: case.name)
def test_a_shelf_is_reported_exactly(case: Path, accept: bool, monkeypatch: pytest.MonkeyPatch) -> None:
    shelf, findings = read(case / "broken", monkeypatch)
    report = listed(findings, shelf.sources)
    if accept:
        (case / "findings").write_text(report, "utf-8")
    assert report == (case / "findings").read_text("utf-8")
    assert case.name.partition("--")[0] in {finding.rule for finding in findings}


@pytest.mark.parametrize("case", CASES, ids=lambda case: case.name)
def test_following_the_mends_clears_it(case: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    assert read(case / "mended", monkeypatch)[1] == ()
