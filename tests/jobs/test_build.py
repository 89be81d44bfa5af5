"""A shelf in, outputs out, the same each time, and nothing half-written."""

from datetime import date
from pathlib import Path

import pytest
from PIL import Image

import howto
from howto.findings import Severity
from tests.support.source import bytes_of
from tests.support.untold import untold

TODAY = date(2026, 10, 14)


def test_one_technique_comes_out_three_ways(shelf: Path, tmp_path: Path) -> None:
    built = howto.build_shelf(shelf, tmp_path / "out", TODAY)
    assert not built.stopped
    assert {f.severity for f in built.findings} <= {Severity.ADVICE}
    names = set(built.written)
    assert {"cards/clip-a-ball.pdf", "cards/clip-a-ball.html", "index.html"} <= names
    assert {"carousels/clip-a-ball/caption.txt", "carousels/clip-a-ball/alt-text.json"} <= names
    assert {f"carousels/clip-a-ball/{ratio}/01.jpg" for ratio in ("4x5", "1x1", "9x16")} <= names
    assert {"leaflets/2026-10-14-long-field.pdf", "leaflets/2026-10-14-long-field.html"} <= names
    assert untold(bytes_of(tmp_path / "out").items()) == []
    assert built.summary(tmp_path) == f"Wrote 1 card, 1 carousel, 1 leaflet, the shelf page in {tmp_path}."


def test_the_same_files_and_day_give_the_same_bytes(shelf: Path, tmp_path: Path) -> None:
    howto.build_shelf(shelf, tmp_path / "one", TODAY)
    howto.build_shelf(shelf, tmp_path / "two", TODAY)
    one, two = bytes_of(tmp_path / "one"), bytes_of(tmp_path / "two")
    assert len(one) > 30
    assert one == two


def test_nothing_is_written_while_an_error_stands(shelf: Path, tmp_path: Path) -> None:
    howto.build_shelf(shelf, tmp_path / "out", TODAY, kinds=["cards"])
    before = bytes_of(tmp_path / "out")
    file = shelf / "clipping/clip-a-ball.md"
    file.write_text(file.read_text().replace("finished width: 700 mm", "finished width: 300 mm"))
    built = howto.build_shelf(shelf, tmp_path / "out", TODAY, kinds=["cards"])
    assert built.stopped
    assert "clipping.half-at-most" in {finding.rule for finding in built.findings}
    assert bytes_of(tmp_path / "out") == before


def test_a_build_that_breaks_half_way_leaves_the_last_output(
    shelf: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    howto.build_shelf(shelf, tmp_path / "out", TODAY, kinds=["cards"])
    before = bytes_of(tmp_path / "out")

    def full(*_: object) -> bytes:
        raise OSError(28, "No space left on device")

    monkeypatch.setattr("howto.jobs.outputs.picture", full)
    with pytest.raises(OSError, match="No space left"):
        howto.build_shelf(shelf, tmp_path / "out", date(2026, 10, 15), kinds=["cards", "carousels"])
    assert bytes_of(tmp_path / "out") == before


def test_a_technique_gone_from_the_shelf_goes_from_a_whole_build(shelf: Path, tmp_path: Path) -> None:
    howto.build_shelf(shelf, tmp_path / "out", TODAY, kinds=["cards", "leaflets"])
    for path in (shelf / "visits").iterdir():
        path.unlink()
    (shelf / "clipping/clip-a-ball.md").rename(shelf / "clipping/clip-a-round-ball.md")
    howto.build_shelf(shelf, tmp_path / "out", TODAY, kinds=["cards", "leaflets"])
    names = {name for name in bytes_of(tmp_path / "out") if name.endswith(".pdf")}
    assert names == {"cards/clip-a-round-ball.pdf"}


def test_a_part_of_the_shelf_is_built_beside_the_rest(shelf: Path, tmp_path: Path) -> None:
    howto.build_shelf(shelf, tmp_path / "out", TODAY, kinds=["cards", "leaflets"])
    built = howto.build_shelf(shelf, tmp_path / "out", TODAY, [shelf / "visits"], kinds=["leaflets"])
    endings = ("html", "ics", "pdf", "txt")
    assert built.written == tuple(f"leaflets/2026-10-14-long-field.{ending}" for ending in endings)
    assert (tmp_path / "out/cards/clip-a-ball.pdf").exists()


def test_a_warning_stops_a_strict_build_only(shelf: Path, tmp_path: Path) -> None:
    file = shelf / "clipping/clip-a-ball.md"
    file.write_text(file.read_text().replace("passes: 2", "passes: 1"))
    assert howto.build_shelf(shelf, tmp_path / "strict", TODAY, strict=True).stopped
    assert not howto.build_shelf(shelf, tmp_path / "out", TODAY, kinds=["cards"]).stopped


def test_the_crews_own_mark_stands_on_frames(shelf: Path, tmp_path: Path) -> None:
    Image.new("RGB", (90, 90), "#2244cc").save(shelf / "mark.png")
    crew = shelf / "crew.yaml"
    crew.write_text(crew.read_text() + "mark: mark.png\n")
    built = howto.build_shelf(shelf, tmp_path / "out", TODAY, kinds=["carousels"])
    assert not built.stopped
    with Image.open(tmp_path / "out/carousels/clip-a-ball/4x5/02.jpg") as frame:
        red, green, blue = frame.getpixel((64 + 22, 1350 - 31))  # type: ignore[misc]
    assert blue > 150
    assert red < 90 > green


@pytest.mark.parametrize(
    ("words", "rule"),
    [
        ("Call her on 01632 960 123 before you come.", "visit.phone"),
        ("Write to someone@example.org first.", "visit.email"),
        ("The gate code is 4471.", "visit.door-code"),
        ("We left the sheets at 14 Mill Lane.", "visit.address"),
    ],
)
def test_what_gives_a_client_away_stops_a_build(shelf: Path, tmp_path: Path, words: str, rule: str) -> None:
    visit = shelf / "visits/2026-10-14-long-field.md"
    visit.write_text(visit.read_text() + words + "\n")
    built = howto.build_shelf(shelf, tmp_path / "out", TODAY, kinds=["leaflets"])
    assert built.stopped
    assert rule in {finding.rule for finding in built.findings}
