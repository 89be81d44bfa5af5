"""The figures of a technique or a visit, by its name or its file."""

from datetime import date
from pathlib import Path

import howto

TODAY = date(2026, 10, 14)


def test_figures_by_name_by_file_and_by_visit(shelf: Path) -> None:
    worked = howto.figures_of(shelf, "clip-a-ball", TODAY)
    names = [figure.name for _, figures in worked.groups for figure in figures]
    assert names[:2] == ["off each side", "share removed"]
    assert howto.figures_of(shelf, str(shelf / "clipping/clip-a-ball.md"), TODAY).groups == worked.groups
    visit = howto.figures_of(shelf, "2026-10-14-long-field", TODAY)
    assert [heading for heading, _ in visit.groups] == ["Clip a ball - the ball by the gate"]
    assert "clip-a-ball" in howto.figures_of(shelf, "clip-a-bal", TODAY).unknown


def test_figures_of_a_file_that_cannot_be_read_are_its_findings(shelf: Path) -> None:
    (shelf / "clipping/broken.md").write_text("no front matter\n")
    worked = howto.figures_of(shelf, "broken", TODAY)
    assert not worked.groups
    assert worked.findings
