"""A shelf examined and laid out without writing: all that is found, or what stands in the paths asked for."""

from datetime import date
from pathlib import Path

import howto

TODAY = date(2026, 10, 14)


def test_what_will_not_fit_is_found_without_writing(shelf: Path) -> None:
    file = shelf / "clipping/clip-a-ball.md"
    long = "\n".join(
        f"{n}. **Step {n}.** " + "Look at the plant from the path and from the gate. " * 12 for n in range(7, 19)
    )
    file.write_text(file.read_text().replace("\n## Cautions", f"{long}\n\n## Cautions"))
    found = {finding.rule for finding in howto.check_shelf(shelf, TODAY).findings}
    assert "fit.card" in found


def test_findings_are_kept_to_the_paths_asked_for(shelf: Path) -> None:
    (shelf / "clipping/broken.md").write_text("no front matter\n")
    assert any("broken.md" in f.span.path for f in howto.check_shelf(shelf, TODAY).findings)
    kept = howto.check_shelf(shelf, TODAY, [shelf / "clipping/clip-a-ball.md"]).findings
    assert not any("broken.md" in finding.span.path for finding in kept)


def test_a_mark_that_is_not_there_is_a_finding(shelf: Path) -> None:
    crew = shelf / "crew.yaml"
    crew.write_text(crew.read_text() + "mark: none.png\n")
    found = {finding.rule for finding in howto.check_shelf(shelf, TODAY).findings}
    assert "file.picture-missing" in found


def test_colours_that_cannot_be_read_are_a_finding(shelf: Path) -> None:
    crew = shelf / "crew.yaml"
    crew.write_text(crew.read_text().replace("#9a3a1c", "#f0e0d0"))
    found = [finding for finding in howto.check_shelf(shelf, TODAY).findings if finding.rule == "shelf.colours"]
    assert [finding.span.path for finding in found] == [crew.as_posix()]


def test_a_leaflet_that_will_not_fit_is_found(shelf: Path) -> None:
    visit = shelf / "visits/2026-10-14-long-field.md"
    visit.write_text(visit.read_text() + "We left the ball round and the path clean.\n\n" * 480)
    assert "fit.leaflet" in {finding.rule for finding in howto.check_shelf(shelf, TODAY).findings}
