"""The stages joined: a shelf in, outputs out, and nothing half-written."""

import shutil
from datetime import date
from pathlib import Path

import pytest
from PIL import Image

import howto
from howto.findings import Severity
from howto.jobs import new as plans
from howto.jobs.check import BY_NAME
from howto.jobs.folders import not_a_shelf
from howto.jobs.rulebook import rulebook, rules_named
from tests.support.source import ROOT
from tests.support.untold import untold, untold_in

TODAY = date(2026, 10, 14)
BALL = ROOT / "techniques/clipping/clip-a-ball.md"


@pytest.fixture
def shelf(tmp_path: Path) -> Path:
    """Return a shelf of one technique with its pictures, and one visit."""
    root = tmp_path / "shelf"
    (root / "clipping").mkdir(parents=True)
    (root / "pictures").mkdir()
    (root / "visits").mkdir()
    shutil.copy(ROOT / "techniques/crew.yaml", root)
    shutil.copy(BALL, root / "clipping")
    for picture in ("ball-from-above.jpg", "ball-from-side.jpg"):
        shutil.copy(ROOT / "techniques/pictures" / picture, root / "pictures")
    (root / "visits/2026-10-14-long-field.md").write_text(
        "---\nsite: Long field\ndate: 2026-10-14\ndone:\n  - technique: clip-a-ball\n    what: the ball by the gate\n"
        "---\nThe ball is round again.\n"
    )
    return root


def bytes_of(folder: Path) -> dict[str, bytes]:
    """Return every file below a folder."""
    return {p.relative_to(folder).as_posix(): p.read_bytes() for p in sorted(folder.rglob("*")) if p.is_file()}


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

    monkeypatch.setattr("howto.jobs.outputs.jpeg", full)
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


def test_a_command_that_cannot_start_says_why(shelf: Path, tmp_path: Path) -> None:
    assert not_a_shelf(shelf, [shelf / "clipping"]) == ""
    assert "There is no folder" in not_a_shelf(tmp_path / "none", [])
    assert "There is no file or folder" in not_a_shelf(shelf, [shelf / "none.md"])
    assert "is not on the shelf" in not_a_shelf(shelf, [tmp_path])


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


def test_a_rule_by_name_by_family_and_by_a_near_name() -> None:
    assert [rule.name for rule in rules_named("mowing.one-third").found] == ["mowing.one-third"]
    mowing = [rule.name for rule in rules_named("Mowing").found]
    assert mowing == [rule.name for rule in rulebook() if rule.name.startswith("mowing.")]
    near = rules_named("mowing.one-thrid")
    assert not near.found
    assert "mowing.one-third" in near.sentence
    assert "clipping.ruffle" in rules_named("ruffl").sentence
    assert "technique.reason" in rules_named("learner drops").sentence  # by what it says
    assert rules_named("zzz").sentence == "No rule is called `zzz`. Nearest: none. All: howto why"


@pytest.mark.parametrize("family", list(BY_NAME))
def test_a_new_technique_of_each_family_builds(family: str, tmp_path: Path) -> None:
    root = tmp_path / "mine"
    for path, text in (*plans.new_shelf(root).files, *plans.new_technique(root, "Try: it & see", family).files):
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text(text)
    built = howto.build_shelf(root, tmp_path / "out", TODAY)
    assert not built.stopped, [(f.rule, f.what) for f in built.findings]
    assert "cards/try-it-see.pdf" in built.written
    assert untold(bytes_of(tmp_path / "out").items()) == untold_in(built.findings) == []
    again = plans.new_technique(root, "Try: it & see", family)
    assert "is there already" in again.problem


def test_plans_say_why_nothing_can_be_written(shelf: Path) -> None:
    assert "Nearest: mowing" in plans.new_technique(shelf, "Cut", "mowin").problem
    assert "no letters" in plans.new_technique(shelf, "???", "mowing").problem
    assert "There is: clip-a-ball" in plans.new_visit(shelf, "Gate", TODAY, ["clip-a-bal"], "").problem
    assert "--done" in plans.new_visit(shelf, "Gate", TODAY, [], "").problem
    assert "is not a date" in plans.new_visit(shelf, "Gate", TODAY, ["clip-a-ball"], "soon").problem
    assert "is not after this one" in plans.new_visit(shelf, "Gate", TODAY, ["clip-a-ball"], "2026-10-14").problem
    assert "gives the client away" in plans.new_visit(shelf, "12 Elm Street", TODAY, ["clip-a-ball"]).problem
    assert "gives the client away" in plans.new_visit(shelf, "Mill Lane", TODAY, ["clip-a-ball"]).problem
    assert "is a shelf" in plans.new_shelf(shelf).problem


def test_a_planned_visit_builds(shelf: Path, tmp_path: Path) -> None:
    done = ["Clip a ball: the ball: gate side, by the path, 3 m2", "clip-a-ball", "clip-a-ball: 2 m2"]
    plan = plans.new_visit(shelf, "Gate: north", TODAY, done, "2026-11-25")
    ((_, written),) = plan.files
    assert (
        written.split("---")[1]
        == """
site: "Gate: north"   # a label, never an address
date: 2026-10-14
next visit: 2026-11-25
done:
  - technique: clip-a-ball
    what: "the ball: gate side, by the path"
    area: 3 m2
  - technique: clip-a-ball
    # what: the pair by the front step
    # area: 95 m2
  - technique: clip-a-ball
    # what: the pair by the front step
    area: 2 m2
# before: old.jpg             # photographs in the shelf's `pictures` folder
# after: new.jpg
# print: large                # for a client who reads large print
"""
    )
    for path, text in plan.files:
        path.write_text(text)
    built = howto.build_shelf(shelf, tmp_path / "out", TODAY, kinds=["leaflets"])
    assert "leaflets/2026-10-14-gate-north.pdf" in built.written
    assert "is there already" in plans.new_visit(shelf, "Gate: north", TODAY, ["clip-a-ball"], "").problem


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
