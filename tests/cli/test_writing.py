"""What commands write: nobody else's file is lost, a kill leaves no trace, and the machine's refusals are told."""

import errno
import os
import re
import signal
import subprocess
import sys
import time
from collections.abc import Callable, Iterator
from pathlib import Path

import pytest
from PIL import Image
from typer.testing import CliRunner

from howto.cli.app import app, main
from howto.jobs.staging import MADE, STAGE
from tests.support.faults import stopped
from tests.support.source import ROOT

RUN = CliRunner()
DAY = "--date=2026-10-14"
GOOD = (ROOT / "techniques/clipping/clip-a-ball.md").read_text()
SECRET = "The wisteria by the blue gate is round again."  # noqa: S105 - a client's words, to look for


@pytest.fixture
def shelf(tmp_path: Path) -> Path:
    """Return a new shelf with one technique that has no pictures, a visit and a photograph."""
    root = tmp_path / "mine"
    assert RUN.invoke(app, ["new", "shelf", str(root)]).exit_code == 0
    (root / "clipping/my-first-technique.md").unlink()
    (root / "clipping/clip-a-ball.md").write_text(re.sub(r" +- Picture:.*\n( {5}- .*\n)+", "", GOOD))
    visit = ["new", "visit", "Gate", DAY, "--done=clip-a-ball: the ball, 3 m2", f"--words={SECRET}"]
    assert RUN.invoke(app, [*visit, "--next=2026-11-25", f"--shelf={root}"]).exit_code == 0
    (root / "pictures").mkdir()
    Image.new("RGB", (40, 30), "#5e7a4f").save(root / "pictures/ball.jpg")
    return root


@pytest.fixture
def run(
    shelf: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> Iterator[Callable[..., tuple[object, str]]]:
    """Yield what runs a command as a person does and returns its status and what it says of trouble."""
    handlers = {each: signal.getsignal(each) for each in (signal.SIGTERM, signal.SIGHUP)}

    def ran(*words: str) -> tuple[object, str]:
        monkeypatch.setattr("sys.argv", ["howto", *words, f"--shelf={shelf}"])
        capsys.readouterr()
        with pytest.raises(SystemExit) as stop:
            main()
        return stop.value.code, capsys.readouterr().err

    yield ran
    for each, handler in handlers.items():
        signal.signal(each, handler)


COMMANDS = (
    (("build", DAY, "--only=cards"), "cards/clip-a-ball.pdf"),
    (("build", DAY, "--only=leaflets"), "leaflets/2026-10-14-gate.ics"),
    (("build", DAY, "--only=shelf"), "index.html"),
    (("letter", DAY, "--month=2027-07"), "letters/2027-07.html"),
    (("mark", "{shelf}/pictures/ball.jpg"), "marks/ball.html"),
)


@pytest.mark.parametrize(("words", "name"), COMMANDS)
def test_no_command_writes_over_what_no_run_wrote(
    shelf: Path, tmp_path: Path, run: Callable[..., tuple[object, str]], words: tuple[str, ...], name: str
) -> None:
    out = tmp_path / "out"
    typed = [word.format(shelf=shelf) for word in words]
    (out / name).parent.mkdir(parents=True)
    (out / name).write_text("mine")
    (out / name).with_name("notes.txt").write_text("mine")
    status, told = run(*typed, f"--to={out}")
    assert status == 2
    assert told.endswith(
        f"`{out / name}` is there already, and by the record `{out / MADE}` no run of howto left it so. Nothing was "
        "written. Move it away, or choose another folder with --to.\n"
    )
    assert sorted(path.name for path in out.rglob("*") if path.is_file()) == sorted([Path(name).name, "notes.txt"])
    (out / name).unlink()
    for _ in range(2):
        assert run(*typed, f"--to={out}")[0] == 0
    assert (out / name).with_name("notes.txt").read_text() == "mine"


@pytest.mark.parametrize("folder", ["", "clipping", "visits/sent", "pictures", "clipping/../"])
def test_nothing_is_written_where_the_shelf_is_read(
    shelf: Path, run: Callable[..., tuple[object, str]], folder: str
) -> None:
    to = shelf / folder
    before = sorted(shelf.rglob("*"))
    for words, _ in COMMANDS:
        status, told = run(*(word.format(shelf=shelf) for word in words), f"--to={to}")
        assert status == 2
        assert told == (
            f"`{to}` belongs to the shelf `{shelf}`, and what is written there would be read with it. Choose another "
            "folder with --to.\n"
        )
    assert sorted(shelf.rglob("*")) == before


def test_a_shelf_named_as_an_output_is_not_built_into(shelf: Path, tmp_path: Path) -> None:
    cards = shelf.rename(tmp_path / "cards")
    result = RUN.invoke(app, [*BUILD, f"--to={tmp_path}", f"--shelf={cards}"])
    assert (result.exit_code, "belongs to the shelf" in result.output) == (2, True)


@pytest.mark.parametrize("folder", ["output", "_made", "../out"])
def test_what_is_built_beside_or_apart_on_the_shelf_is_no_finding(
    shelf: Path, run: Callable[..., tuple[object, str]], folder: str
) -> None:
    before = run("check", DAY)
    for words, _ in COMMANDS:
        assert run(*(word.format(shelf=shelf) for word in words), f"--to={shelf / folder}")[0] == 0
    assert run("check", DAY) == before
    assert run("build", DAY, f"--to={shelf / folder}", "--only=shelf")[0] == 0


def test_a_new_shelf_leaves_a_technique_that_is_there(tmp_path: Path) -> None:
    there = tmp_path / "clipping/my-first-technique.md"
    there.parent.mkdir()
    there.write_text("mine")
    result = RUN.invoke(app, ["new", "shelf", str(tmp_path)])
    assert (result.exit_code, there.read_text()) == (2, "mine")
    assert not (tmp_path / "crew.yaml").exists()


REFUSALS = (
    (errno.ENOSPC, "the disk is full"),
    (errno.EACCES, "you are not allowed"),
    (errno.EROFS, "this disk can only be read"),
)


@pytest.mark.parametrize(("number", "told"), REFUSALS)
@pytest.mark.parametrize(("words", "name"), [COMMANDS[0], COMMANDS[3], COMMANDS[4]])
def test_a_machine_that_refuses_is_told_with_the_file(
    shelf: Path,
    tmp_path: Path,
    run: Callable[..., tuple[object, str]],
    words: tuple[str, ...],
    name: str,
    number: int,
    told: str,
) -> None:
    out = tmp_path / "out"
    out.mkdir()
    typed = [word.format(shelf=shelf) for word in words]
    for at, named in ((2, f"{out}"), (3, f"{out / name}"), (4, f"{out / name}")):  # stage, folder, file
        with stopped(out, at, lambda: OSError(number, os.strerror(number)), torn=True):
            status, said = run(*typed, f"--to={out}")
        assert status == 2
        assert said.splitlines()[-1].startswith(f"`{named.rsplit('.', 1)[0]}")
        assert f"`: {told}" in said
        assert "Traceback" not in said
    assert run(*typed, f"--to={out}")[0] == 0


def test_a_name_too_long_for_the_disk_is_told(tmp_path: Path, run: Callable[..., tuple[object, str]]) -> None:
    long = "a" * 300
    status, said = run("build", DAY, f"--to={tmp_path / long}", "--only=shelf")
    assert (status, said) == (
        2,
        f"`{tmp_path / long}`: the name is too long for this disk. Give the file, or the folders it is in, shorter "
        "names.\n",
    )


BUILD = ("build", DAY, "--only=leaflets", "--only=shelf")


def begin(shelf: Path, out: Path, code: str = "") -> subprocess.Popen[bytes]:
    """Start a build in a program of its own, after some code, with a temporary folder of its own."""
    temp = shelf.parent / "temp"
    temp.mkdir(exist_ok=True)
    lines = f"{HEEDING}\n{code}\nfrom howto.cli.app import main\nmain()"
    words = [sys.executable, "-c", lines, *BUILD, f"--shelf={shelf}", f"--to={out}"]
    env = {**os.environ, "TMPDIR": str(temp), "PYTHONPATH": str(ROOT)}
    return subprocess.Popen(words, cwd=ROOT, env=env, stdout=subprocess.PIPE, stderr=subprocess.PIPE)


HEEDING = """
import signal
for each in (signal.SIGINT, signal.SIGHUP):  # ignored by what a shell starts in the background
    signal.signal(each, signal.default_int_handler if each == signal.SIGINT else signal.SIG_DFL)
"""
SUICIDE = """
import os, signal, sys
left = [{at}]
def hook(event, given):
    changes = event in ("os.mkdir", "os.rename", "os.remove", "os.rmdir") or event == "open" and given[2] & 3
    if changes and str(given[0]).startswith({folder!r}):
        left[0] -= 1
        if not left[0]:
            os.kill(os.getpid(), signal.{signal})
sys.addaudithook(hook)
"""


def files(folder: Path) -> dict[str, bytes]:
    """Return every file of a folder with its bytes."""
    return {path.relative_to(folder).as_posix(): path.read_bytes() for path in folder.rglob("*") if path.is_file()}


@pytest.mark.parametrize("at", [2, 6, 14, 17, 20, 24])
def test_a_build_that_is_really_killed_leaves_no_words_and_is_made_good(shelf: Path, tmp_path: Path, at: int) -> None:
    out, whole = tmp_path / "out", tmp_path / "whole"
    with begin(shelf, out, SUICIDE.format(at=at, folder=str(out), signal="SIGKILL")) as killed:
        killed.communicate()
    assert killed.returncode == -signal.SIGKILL
    left = b"".join(path.read_bytes() for path in (tmp_path / "temp").rglob("*") if path.is_file())
    assert SECRET.encode() not in left
    assert b"wisteria" not in left
    if (out / STAGE).exists():
        assert (out / STAGE).stat().st_mode & 0o077 == 0
    for to in (out, whole):
        assert RUN.invoke(app, [*BUILD, f"--shelf={shelf}", f"--to={to}"]).exit_code == 0
    assert files(out) == files(whole)


@pytest.mark.parametrize("name", ["SIGTERM", "SIGHUP", "SIGINT"])
@pytest.mark.parametrize("at", [6, 18])
def test_a_build_that_is_told_to_stop_clears_away(shelf: Path, tmp_path: Path, name: str, at: int) -> None:
    out = tmp_path / "out"
    with begin(shelf, out, SUICIDE.format(at=at, folder=str(out), signal=name)) as ended:
        _, said = ended.communicate()
    assert (ended.returncode, said) == (128 + getattr(signal, name), b"")
    assert not (out / STAGE).exists()
    assert not list((tmp_path / "temp").iterdir())
    assert not files(out) or "index.html" in files(out)


def test_a_hang_up_that_nohup_takes_stops_nothing(shelf: Path, tmp_path: Path) -> None:
    out = tmp_path / "out"
    ignore = "import signal; signal.signal(signal.SIGHUP, signal.SIG_IGN)"
    with begin(shelf, out, ignore) as going:
        while not out.exists():
            time.sleep(0.01)
        going.send_signal(signal.SIGHUP)
        going.communicate()
    assert going.returncode == 0
