"""The commands as a person types them: what they print, what they write, and the exit status."""

import json
import os
import re
import shutil
import subprocess
import sys
from pathlib import Path

import pytest
from typer.testing import CliRunner

from howto.cli import build as build_module
from howto.cli.app import app, main
from howto.cli.options import say
from tests.support.source import ROOT

RUN = CliRunner()
DAY = "--date=2026-10-14"
GOOD = (ROOT / "techniques/clipping/clip-a-ball.md").read_text()


@pytest.fixture
def shelf(tmp_path: Path) -> Path:
    """Return a new shelf with one clean technique that has no pictures."""
    root = tmp_path / "mine"
    assert RUN.invoke(app, ["new", "shelf", str(root)]).exit_code == 0
    (root / "clipping/my-first-technique.md").unlink()
    text = re.sub(r" +- Picture:.*\n( {5}- .*\n)+", "", GOOD)
    (root / "clipping/clip-a-ball.md").write_text(text)
    return root


def on(shelf: Path, *words: str) -> list[str]:
    """Return a command line on a shelf."""
    return [*words, f"--shelf={shelf}"]


def test_a_clean_shelf_is_clean(shelf: Path) -> None:
    result = RUN.invoke(app, on(shelf, "check", DAY))
    assert result.exit_code == 0
    assert result.output.endswith("No findings.\n")


def test_a_finding_is_printed_and_sets_the_status(shelf: Path) -> None:
    file = shelf / "clipping/clip-a-ball.md"
    file.write_text(GOOD.replace("finished width: 700 mm", "finished width: 300 mm"))
    result = RUN.invoke(app, on(shelf, "check", DAY))
    assert result.exit_code == 1
    assert "error clipping.half-at-most: 61.5 % of the width comes off in one clip" in result.output
    assert "\x1b[" not in result.output


def test_findings_as_json(shelf: Path) -> None:
    file = shelf / "clipping/clip-a-ball.md"
    file.write_text(file.read_text().replace("passes: 2", "passes: 1"))
    result = RUN.invoke(app, on(shelf, "check", DAY, "--format=json"))
    assert result.exit_code == 0  # a warning does not stop a build
    rules = [finding["rule"] for finding in json.loads(result.stdout)["findings"]]
    assert "clipping.light-passes" in rules
    assert RUN.invoke(app, on(shelf, "check", DAY, "--strict")).exit_code == 1


def test_build_writes_and_says_so(shelf: Path, tmp_path: Path) -> None:
    out = tmp_path / "out"
    result = RUN.invoke(app, on(shelf, "build", DAY, f"--to={out}", "--only=cards"))
    assert result.exit_code == 0
    assert result.stdout == f"Wrote 1 card in {out}.\n"
    assert sorted(path.name for path in out.rglob("*.*") if path.parent != out) == [
        "clip-a-ball.html",
        "clip-a-ball.pdf",
    ]


def test_a_stopped_build_writes_nothing(shelf: Path, tmp_path: Path) -> None:
    (shelf / "clipping/clip-a-ball.md").write_text("no front matter\n")
    out = tmp_path / "out"
    result = RUN.invoke(app, on(shelf, "build", DAY, f"--to={out}"))
    assert result.exit_code == 1
    assert f"Nothing was written to {out}." in result.output
    assert not out.exists()


def test_a_wrong_command_line_is_status_2(shelf: Path, tmp_path: Path) -> None:
    for words in (
        ["check", str(tmp_path / "none.md")],
        ["check", "--date=tomorrow"],
        ["figures", "clip-a-bal"],
        ["build", "--only=posters"],
        ["new", "technique", "Cut", "--family=clip"],
    ):
        assert RUN.invoke(app, on(shelf, *words)).exit_code == 2, words
    assert RUN.invoke(app, ["check", f"--shelf={tmp_path / 'none'}"]).exit_code == 2
    assert RUN.invoke(app, ["why", "mowing.one-thrid"]).exit_code == 2


def test_figures_show_their_working(shelf: Path) -> None:
    result = RUN.invoke(app, on(shelf, "figures", "clip-a-ball", DAY))
    assert result.exit_code == 0
    assert "Off each side: 40\u00a0mm   {off each side}" in result.output
    assert "    (780 - 700) / 2 = 40 mm" in result.output
    assert "    source: plane and solid geometry" in result.output
    data = json.loads(RUN.invoke(app, on(shelf, "figures", "clip-a-ball", DAY, "--format=json")).stdout)
    assert data[0]["figures"][0]["value"] == 40.0


def test_figures_of_a_broken_file_are_its_findings(shelf: Path) -> None:
    (shelf / "clipping/broken.md").write_text("no front matter\n")
    result = RUN.invoke(app, on(shelf, "figures", "broken", DAY))
    assert result.exit_code == 1
    assert "broken.md:1:1: error" in result.output


def test_why_explains_one_rule_and_the_whole_book() -> None:
    one = RUN.invoke(app, ["why", "mowing.one-third"])
    assert one.exit_code == 0
    assert "University of California Statewide IPM Program" in one.output
    book = RUN.invoke(app, ["why"])
    count = int(re.search(r"\n(\d+) rules\.\n$", book.output)[1])  # type: ignore[index]
    rules = json.loads(RUN.invoke(app, ["why", "--format=json"]).stdout)
    assert count == len(rules)
    assert all(rule["statement"] and rule["why"] and rule["references"] for rule in rules)


def test_a_visit_is_asked_for_on_a_terminal_and_not_elsewhere(shelf: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    silent = RUN.invoke(app, on(shelf, "new", "visit", "Gate", DAY))
    assert silent.exit_code == 2
    assert "--done" in silent.output
    monkeypatch.setattr("howto.cli.new._asks", lambda: True)
    typed = "clip-a-ball\nthe pair by the step\n4 m2\n2026-11-25\nAll is well.\n"
    asked = RUN.invoke(app, on(shelf, "new", "visit", "Gate", DAY), input=typed)
    assert asked.exit_code == 0
    text = (shelf / "visits/2026-10-14-gate.md").read_text()
    for line in ("what: the pair by the step", "area: 4 m2", "next visit: 2026-11-25", "---\nAll is well.\n"):
        assert line in text
    assert RUN.invoke(app, on(shelf, "new", "visit", "Gate", DAY, "--done=clip-a-ball")).exit_code == 2
    blank = RUN.invoke(app, on(shelf, "new", "visit", "Mill", DAY), input="clip-a-ball\n\n\n\n\n")
    assert blank.exit_code == 0
    assert "    # what: " in (shelf / "visits/2026-10-14-mill.md").read_text()


def test_a_visit_is_taken_in_one_line_and_becomes_a_message(shelf: Path, tmp_path: Path) -> None:
    done = "--done=clip-a-ball: the ball by the gate, 3 m2"
    made = RUN.invoke(app, on(shelf, "new", "visit", "Gate", DAY, done, "--next=2026-11-25", "--words=Round again."))
    assert made.exit_code == 0
    out = tmp_path / "out"
    built = RUN.invoke(app, on(shelf, "build", DAY, f"--to={out}", "--only=leaflets", "--text"))
    assert built.exit_code == 0
    assert "- Clip a ball: the ball by the gate, 3\u00a0m²\n" in built.stdout
    assert "1. By Friday, 16 October 2026: Water once" in built.stdout
    assert built.stdout.endswith(f"Wrote 1 leaflet in {out}.\n")
    assert len((out / "leaflets/2026-10-14-gate.txt").read_text()) <= 1501


def test_a_letter_is_written_and_printed(shelf: Path, tmp_path: Path) -> None:
    out = tmp_path / "out"
    made = RUN.invoke(app, on(shelf, "letter", DAY, f"--to={out}", "--month=2027-07"))
    assert made.exit_code == 0
    assert made.stdout.startswith("Your garden in July 2027\n")
    assert made.stdout.endswith(f"\nWrote letters/2027-07.html and letters/2027-07.pdf in {out}.\n")
    assert (out / "letters/2027-07.pdf").read_bytes()[:5] == b"%PDF-"
    assert RUN.invoke(app, on(shelf, "letter", DAY, f"--to={out}")).stdout.startswith("Your garden in October 2026\n")
    for wrong in ("2027-13", "July", "0000-01"):
        assert RUN.invoke(app, on(shelf, "letter", DAY, f"--month={wrong}")).exit_code == 2
    assert RUN.invoke(app, ["letter", f"--shelf={tmp_path / 'none'}"]).exit_code == 2
    assert RUN.invoke(app, ["new", "visit", "Gate", f"--shelf={tmp_path / 'none'}"]).exit_code == 2


def test_a_letter_is_not_written_while_an_error_stands(shelf: Path, tmp_path: Path) -> None:
    (shelf / "clipping/broken.md").write_text("no front matter\n")
    made = RUN.invoke(app, on(shelf, "letter", DAY, f"--to={tmp_path / 'out'}"))
    assert made.exit_code == 1
    assert "broken.md:1:1: error" in made.output
    assert not (tmp_path / "out").exists()


def test_no_command_shows_help_a_gardener_understands() -> None:
    result = RUN.invoke(app, ["--help"])
    assert result.exit_code == 0
    for word in ("check", "build", "figures", "why", "new"):
        assert word in result.output
    assert "shelf" in result.output


def test_the_bar_counts_up_on_a_terminal_and_is_silent_elsewhere(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    with build_module._progress() as step:
        assert step is None
    monkeypatch.setattr("sys.stderr.isatty", lambda: True)
    with build_module._progress() as step:
        assert step is not None
        step(1, 2)
        step(2, 2)
    assert "Building" in capsys.readouterr().err


def test_no_colour_where_it_is_not_wanted(shelf: Path) -> None:
    (shelf / "clipping/broken.md").write_text("no front matter\n")
    command = [sys.executable, "-m", "howto", "check", f"--shelf={shelf}"]
    env = {**os.environ, "NO_COLOR": "1", "PYTHONPATH": str(ROOT)}
    done = subprocess.run(command, capture_output=True, text=True, env=env, check=False)
    assert done.returncode == 1
    assert "\x1b" not in done.stdout + done.stderr


def test_a_folder_that_cannot_be_written_is_told_plainly(
    shelf: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    blocked = tmp_path / "file"
    blocked.write_text("not a folder")
    monkeypatch.setattr("sys.argv", ["howto", *on(shelf, "build", DAY, f"--to={blocked}/out", "--only=cards")])
    with pytest.raises(SystemExit) as stop:
        main()
    assert stop.value.code == 2
    assert capsys.readouterr().err == (
        f"`{blocked}/out`: a file stands where a folder is needed, or a folder where a file is. Move it away, or "
        "choose another folder with --to.\n"
    )


@pytest.mark.parametrize("day", ["0001-01-01", "1899-12-31", "3000-01-01", "9999-12-31"])
def test_a_day_too_far_away_is_refused(shelf: Path, day: str) -> None:
    result = RUN.invoke(app, on(shelf, "figures", "clip-a-ball", f"--date={day}"))
    assert result.exit_code == 2
    assert result.output == f"`--date {day}` is too far away: the years are 1900 to 2999.\n"


@pytest.mark.parametrize("day", ["1900-01-01", "2999-12-31"])
def test_the_first_and_the_last_day_are_counted_from(shelf: Path, day: str) -> None:
    assert RUN.invoke(app, on(shelf, "figures", "clip-a-ball", f"--date={day}")).exit_code == 0


@pytest.mark.parametrize("encoding", ["ascii", "latin-1", "cp1252", "utf-8"])
def test_a_console_without_some_letters_shows_the_others(shelf: Path, encoding: str) -> None:
    words = [sys.executable, "-m", "howto", *on(shelf, "figures", "clip-a-ball", DAY)]
    env = {**os.environ, "PYTHONIOENCODING": encoding}
    result = subprocess.run(words, capture_output=True, cwd=ROOT, env=env, check=False)
    assert (result.returncode, result.stderr) == (0, b"")
    assert b"2/3 x" in result.stdout


def test_a_program_without_any_output_still_ends_well(shelf: Path) -> None:
    words = [sys.executable, "-c", "import sys; sys.stdout = None; from howto.cli.app import main; main()"]
    result = subprocess.run([*words, *on(shelf, "check", DAY)], capture_output=True, cwd=ROOT, check=False)
    assert (result.returncode, result.stderr) == (0, b"")


def test_a_photograph_that_stands_on_the_shelf_is_pointed_at(shelf: Path) -> None:
    away = RUN.invoke(app, on(shelf, "mark", "ball.jpg"))
    assert (away.exit_code, away.stderr) == (2, "There is no photograph `ball.jpg`.\n")
    (shelf / "pictures").mkdir()
    (shelf / "pictures/ball.jpg").write_bytes(b"")
    near = RUN.invoke(app, on(shelf, "mark", "ball.jpg"))
    assert near.stderr == f"There is no photograph `ball.jpg`. There is `{shelf / 'pictures/ball.jpg'}`.\n"


def test_the_readme_names_every_command() -> None:
    page = (ROOT / "README.md").read_text(encoding="utf-8")
    told = set(re.findall(r"^\| `howto (\w+)", page, re.MULTILINE))
    listed = set(re.findall(r"^│ (\w+) ", RUN.invoke(app, ["--help"]).stdout.partition("Commands")[2], re.MULTILINE))
    assert told == listed
    assert len(listed) >= 7


def test_the_visit_that_the_readme_shows_is_clean(tmp_path: Path) -> None:
    shown = re.findall(r"```markdown\n(---\nsite: .*?)```", (ROOT / "README.md").read_text(encoding="utf-8"), re.DOTALL)
    root = tmp_path / "mine"
    shutil.copytree(ROOT / "techniques", root, ignore=shutil.ignore_patterns("visits", "people.yaml"))
    visit = root / "visits/2026-10-14-orchard-end.md"
    visit.parent.mkdir()
    visit.write_text(shown[0], encoding="utf-8")
    result = RUN.invoke(app, on(root, "check", str(visit), DAY))
    assert (result.exit_code, result.stdout) == (0, "No findings.\n")


def test_nothing_printed_steers_the_terminal(capsys: pytest.CaptureFixture[str]) -> None:
    say("one\ntwo \x1b[31m\x9b\x07\u00a0three")
    assert capsys.readouterr().out == "one\ntwo ␛[31m<U+009B>␇\u00a0three\n"


def test_the_finding_that_the_readme_shows_is_what_is_printed(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    page = (ROOT / "README.md").read_text(encoding="utf-8")
    command, shown = re.findall(r"```console\n\$ howto (.*?)\n(.*?)```", page, re.DOTALL)[0]
    monkeypatch.chdir(tmp_path)
    assert RUN.invoke(app, ["new", "shelf", "techniques"]).exit_code == 0
    assert RUN.invoke(app, ["new", "technique", "Clip a dome", "--family", "clipping"]).exit_code == 0
    file = Path("techniques/clipping/clip-a-dome.md")
    text = re.sub(r"\b[Ss]ay (\w)", r"Mind \1", file.read_text(encoding="utf-8"))
    for key, value in (("shape", "dome"), ("finished width", "400 mm"), ("standing width", "890 mm"), ("passes", "6")):
        text = re.sub(rf"^  {key}: .*$", f"  {key}: {value}", text, flags=re.MULTILINE)
    file.write_text(text, encoding="utf-8")
    result = RUN.invoke(app, [*command.split(), DAY])
    assert result.exit_code == 1
    assert result.output.split("\n\n")[0] == shown.split("\n\n")[0]  # what else is said is of words still to write
