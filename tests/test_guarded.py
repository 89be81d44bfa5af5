"""Whatever raises costs one finding: it names the file and the rule, the rest goes on, and the status is 3."""

import json
import os
import shutil
import subprocess
import sys
from collections.abc import Callable
from dataclasses import replace
from datetime import date
from pathlib import Path
from typing import Any, NoReturn

import pytest
from typer.testing import CliRunner

import howto
from howto.cli.app import app, main
from howto.families import FAMILIES
from howto.families.clipping import FAMILY
from howto.findings import OUR_FAULT, Finding, exit_status
from howto.guarded import COMMAND, LOUD, guarded
from howto.jobs.rulebook import rules_named
from howto.span import Span
from tests.support.source import ROOT

TODAY = date(2026, 10, 14)
DAY = "--date=2026-10-14"
KINDS = {"card": "cards", "picture": "carousels", "leaflet": "leaflets", "page": "shelf"}
RUN = CliRunner()
BALL = "clipping/clip-a-ball.md"
OTHER = "mowing/mow-by-thirds.md"
VISIT = "visits/2026-10-14-long-field.md"
pytestmark = pytest.mark.usefixtures("as_an_author")


@pytest.fixture
def shelf(tmp_path: Path) -> Path:
    """Return a shelf of a ball with its pictures, a lawn that breaks a rule softly, a visit, plants and people."""
    root = tmp_path / "shelf"
    for folder in ("clipping", "mowing", "pictures", "visits"):
        (root / folder).mkdir(parents=True)
    pictures = ("ball-from-above.jpg", "ball-from-side.jpg", "lawn-stripes.jpg")
    for file in ("crew.yaml", BALL, OTHER, *(f"pictures/{each}" for each in pictures)):
        shutil.copy(ROOT / "techniques" / file, root / file)
    (root / "plants.yaml").write_text("- botanical: Testus plantus\n  common: test plant\n  kind: evergreen\n")
    (root / "people.yaml").write_text("- name: Ash\n")
    (root / VISIT).write_text(
        "---\nsite: Long field\ndate: 2026-10-14\nmay publish: yes\nafter: ball-from-side.jpg\ndone:\n"
        "  - technique: clip-a-ball\n    what: the ball by the gate\n    measures:\n      finished width: 690 mm\n"
        "---\nThe ball is round again.\n"
    )
    return root


def broken(original: Callable[..., object], only: str = "") -> Callable[..., Any]:
    """Return a function that breaks off; with `only`, just where an argument speaks of it."""

    def run(*given: object, **named: object) -> object:
        if only in f"{given}{named}":
            raise ZeroDivisionError("float division\nby zero \x1b[31m")
        return original(*given, **named)

    return run


def breaks(monkeypatch: pytest.MonkeyPatch, name: str, only: str = "") -> None:
    """Make the function of that dotted name break off."""
    module, _, function = name.rpartition(".")
    monkeypatch.setattr(name, broken(getattr(sys.modules[module], function), only))


def family_breaks(monkeypatch: pytest.MonkeyPatch, **parts: object) -> None:
    """Put another clipping family into the tables of those who run it."""
    changed = replace(FAMILY, **parts)  # type: ignore[arg-type]
    families = tuple(changed if each is FAMILY else each for each in FAMILIES)
    monkeypatch.setattr("howto.jobs.check.FAMILIES", families)
    monkeypatch.setattr("howto.jobs.check.BY_NAME", {each.name: each for each in families})


def faults(findings: tuple[Finding, ...]) -> list[Finding]:
    """Return the findings of our own faults."""
    return [each for each in findings if each.rule == OUR_FAULT]


STAGES = [
    ("howto.read.shelf.crew_of", "", "crew.yaml", "read this file"),
    ("howto.read.plants.entries_of", "plants.yaml", "plants.yaml", "read this file"),
    ("howto.read.shelf.people_of", "", "people.yaml", "read this file"),
    ("howto.read.shelf.assemble", "clip-a-ball", BALL, "read this file"),
    ("howto.read.shelf.read_text", "clip-a-ball", BALL, "read this file"),
    ("howto.read.shelf.read_visit", "", VISIT, "read this file"),
    ("howto.read.shelf._folders", "", "", "read the shelf"),
    ("howto.read.photo.kind_of", "", BALL, "read the picture `ball-from-above.jpg`"),
    ("howto.compute.ready.figures_of", "clip-a-ball", BALL, "work out its figures and draw its drawings"),
    ("howto.jobs.check.check_technique", "id='clip-a-ball'", BALL, "check it against its trade"),
    ("howto.jobs.check.check_claims", "clip-a-ball", BALL, "hold its words against its figures"),
    ("howto.check.shelf.disagreement", "", "", "run `shelf.same-plant` over the shelf"),
    ("howto.check.shelf.language_findings", "", "", "compare its files"),
    ("howto.check.privacy.given_away", "Long field", VISIT, "look for what gives the client away"),
    ("howto.check.privacy._shared", "", "", "look for pictures that may not go out"),
    ("howto.check.client_words.counts", "round again", VISIT, "look at how easy its words to the client are"),
    ("howto.jobs.check.colour_findings", "", "", "compare its files"),
    ("howto.jobs.check.garden_figures", "", VISIT, "check its jobs and list its tasks"),
    ("howto.jobs.check.plan_of", "", VISIT, "check its jobs and list its tasks"),
    ("howto.jobs.outputs.card_sheet", "clip-a-ball", BALL, "make its card"),
    ("howto.jobs.outputs.pdf", "Clip a ball", BALL, "make its card"),
    ("howto.jobs.outputs.card_words", "clip-a-ball", BALL, "make its card"),
    ("howto.jobs.outputs.frames", "clip-a-ball", BALL, "make its pictures"),
    ("howto.jobs.leaflet.leaflet_sheet", "", VISIT, "make its leaflet"),
    ("howto.jobs.leaflet.jpeg", "", VISIT, "make its leaflet"),
]
WRITING = [
    ("howto.jobs.outputs.picture", "", BALL, "make its pictures"),
    ("howto.jobs.outputs.contact_sheet", "", BALL, "make its pictures"),
    ("howto.jobs.outputs.page", "clip-a-ball", BALL, "make its card"),
    ("howto.jobs.leaflet.calendar", "", VISIT, "make its leaflet"),
    ("howto.jobs.outputs.shelf_page", "", "", "make the page of the whole shelf"),
]


def named(shelf: Path, file: str) -> str:
    """Return the name that findings give a file of the shelf, or the shelf itself."""
    return (shelf / file).as_posix()


@pytest.mark.parametrize(("name", "only", "file", "job"), STAGES)
def test_a_stage_that_breaks_off_costs_its_own_file_only(
    shelf: Path, monkeypatch: pytest.MonkeyPatch, name: str, only: str, file: str, job: str
) -> None:
    breaks(monkeypatch, name, only)
    examined = howto.check_shelf(shelf, TODAY)
    told = faults(examined.findings)
    assert (named(shelf, file), f"`howto` could not {job}") in {(each.span.path, each.what) for each in told}
    for each in told:
        assert "not in what you wrote: ZeroDivisionError: float division by zero" in each.why
        assert each.mend.startswith("send `")
    if name != "howto.read.shelf._folders":  # without folders no file can be found
        assert (named(shelf, OTHER), "mowing.climate-named") in {
            (each.span.path, each.rule) for each in examined.findings
        }
    assert exit_status(examined.findings) == 3


@pytest.mark.parametrize(("name", "only", "file", "job"), [*STAGES, *WRITING])
def test_a_build_that_breaks_off_writes_nothing_and_says_which_file(
    shelf: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch, name: str, only: str, file: str, job: str
) -> None:
    breaks(monkeypatch, name, only)
    out = tmp_path / "out"
    kinds = [f"--only={kind}" for words, kind in KINDS.items() if words in job]
    result = RUN.invoke(app, ["build", str(shelf / file), f"--shelf={shelf}", DAY, f"--to={out}", *kinds])
    assert result.exit_code == 3
    place = f"{named(shelf, file)}:"
    heads = [line for line in result.stderr.split("\n") if line.startswith(place)]
    assert f"error {OUR_FAULT}: `howto` could not {job}" in "\n".join(heads)
    assert "Traceback" not in result.output
    assert "\x1b" not in result.output
    assert not [path for path in out.rglob("*") if path.is_file()]


def test_a_rule_that_breaks_off_is_named_and_the_others_run(shelf: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    first, *rest = FAMILY.rules
    family_breaks(monkeypatch, rules=(replace(first, check=broken(print)), *rest))
    file = shelf / BALL
    waived = f"waive:\n  {first.name}: the hedge is old\n  {OUR_FAULT}: never mind\nfamily:"
    text = file.read_text().replace("finished width: 700 mm", "finished width: 300 mm").replace("family:", waived, 1)
    file.write_text(text)
    findings = howto.check_shelf(shelf, TODAY).findings
    (fault,) = faults(findings)
    assert fault.what == f"`howto` could not run the rule `{first.name}` on this technique"
    assert (fault.span.path, fault.text) == (file.as_posix(), "title: Clip a ball")
    rules = {each.rule for each in findings}
    assert "clipping.half-at-most" in rules
    strays = [each.what for each in findings if each.rule == "technique.waiver"]
    assert strays == [f"`{OUR_FAULT}` is waived, and no rule of that name looks at this technique"]


def test_a_rule_that_breaks_off_on_a_visits_measures_is_told_at_the_visit(
    shelf: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    first, *rest = FAMILY.rules
    family_breaks(monkeypatch, rules=(replace(first, check=broken(lambda _: iter(()), "690")), *rest))
    (fault,) = faults(howto.check_shelf(shelf, TODAY).findings)
    assert fault.span.path == named(shelf, VISIT)
    assert fault.text.strip() == "finished width: 690 mm"
    assert fault.also is not None
    assert fault.also.path == named(shelf, BALL)


def test_figures_and_drawings_that_break_off_are_named(shelf: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    def half(*given: object) -> object:
        yield next(iter(FAMILY.figures(*given)))  # type: ignore[arg-type]
        raise RecursionError("too deep")

    family_breaks(monkeypatch, figures=half)
    found = {(each.span.path, each.what) for each in faults(howto.check_shelf(shelf, TODAY).findings)}
    assert found == {
        (named(shelf, BALL), "`howto` could not work out its figures and draw its drawings"),
        (named(shelf, VISIT), "`howto` could not check its jobs and list its tasks"),
    }
    family_breaks(monkeypatch, drawings=broken(print))
    (fault,) = faults(howto.check_shelf(shelf, TODAY).findings)  # for card and pictures one mistake is one finding
    assert (fault.span.path, fault.what) == (
        named(shelf, BALL),
        "`howto` could not work out its figures and draw its drawings",
    )


def test_the_mend_mends(shelf: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    breaks(monkeypatch, "howto.read.shelf.assemble", "clip-a-ball.md")
    (shelf / VISIT).unlink()
    (fault,) = faults(howto.check_shelf(shelf, TODAY).findings)
    assert "rename the file to `_clip-a-ball.md`" in fault.mend
    (shelf / BALL).rename((shelf / BALL).with_name("_clip-a-ball.md"))
    assert not faults(howto.check_shelf(shelf, TODAY).findings)


def test_a_fault_of_the_whole_shelf_is_told_for_any_part_of_it(shelf: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    breaks(monkeypatch, "howto.jobs.check.check_shelf")
    examined = howto.check_shelf(shelf, TODAY, [shelf / OTHER])
    assert [each.span.path for each in faults(examined.findings)] == [shelf.as_posix()]


def test_json_stays_json(shelf: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    breaks(monkeypatch, "howto.compute.ready.figures_of", "clip-a-ball")
    words = [f"--shelf={shelf}", DAY, "--format=json"]
    checked = RUN.invoke(app, ["check", *words])
    assert checked.exit_code == 3
    assert OUR_FAULT in {each["rule"] for each in json.loads(checked.stdout)["findings"]}
    figures = RUN.invoke(app, ["figures", "clip-a-ball", *words])
    assert (figures.exit_code, json.loads(figures.stdout)) == (3, [])
    assert "could not work out its figures" in figures.stderr
    visit = RUN.invoke(app, ["figures", "2026-10-14-long-field", *words])
    assert (visit.exit_code, json.loads(visit.stdout)) == (3, [])
    letter = RUN.invoke(app, ["letter", f"--shelf={shelf}", f"--to={shelf.parent / 'out'}"])
    assert letter.exit_code == 3


@pytest.mark.parametrize(
    ("words", "name"),
    [
        (["why"], "howto.cli.why.rulebook"),
        (["figures", "clip-a-ball", "--shelf={}"], "howto.cli.working.figures_as_text"),
        (["check", "--shelf={}"], "howto.cli.report.terminal"),
        (["letter", "--shelf={}", "--to={}/../out"], "howto.jobs.letter.letter_sheet"),
        (["mark", "{}/pictures/ball-from-side.jpg", "--shelf={}", "--to={}/../out"], "howto.jobs.new.marker_page"),
        (["new", "technique", "Cut", "--family=mowing", "--shelf={}"], "howto.jobs.new.technique_text"),
    ],
)
def test_a_command_that_breaks_off_says_so_in_a_sentence(
    shelf: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str], words: list[str], name: str
) -> None:
    breaks(monkeypatch, name)
    monkeypatch.setattr("sys.argv", ["howto", *(word.format(shelf) for word in words)])
    with pytest.raises(SystemExit) as stop:
        main()
    assert stop.value.code == 3
    told = capsys.readouterr().err
    assert "howto: `howto` could not finish this command\n  why:  this is a mistake in `howto`" in told
    assert "ZeroDivisionError" in told
    assert "the command as you typed it" in told
    assert "\x1b" not in told


def test_a_picture_to_mark_that_breaks_off_is_a_finding(shelf: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    breaks(monkeypatch, "howto.read.photo.kind_of")
    photo = shelf / "pictures/ball-from-side.jpg"
    result = RUN.invoke(app, ["mark", str(photo), f"--shelf={shelf}", f"--to={shelf.parent / 'out'}"])
    assert result.exit_code == 3
    assert f"send `{photo}` and these lines to whoever looks after `howto` for you " in " ".join(result.stderr.split())


def raising(problem: BaseException) -> list[Finding]:
    """Return what is found where that is raised."""

    def step() -> NoReturn:
        raise problem

    found: list[Finding] = []
    with guarded(found, Span("a.md"), "do it"):
        step()
    return found


@pytest.mark.parametrize(
    "problem",
    [
        KeyboardInterrupt(),
        SystemExit(2),
        MemoryError(),
        OSError(28, "No space left on device"),
        PermissionError(13, "no"),
    ],
)
def test_what_is_no_mistake_of_ours_passes(problem: BaseException) -> None:
    with pytest.raises(type(problem)):
        raising(problem)


@pytest.mark.parametrize(
    "problem",
    [RecursionError("deep"), OSError("cannot identify image"), StopIteration(), UnicodeError("x"), AssertionError()],
)
def test_what_is_ours_is_caught(problem: Exception) -> None:
    (found,) = raising(problem)
    assert type(problem).__name__ in found.why


def test_long_words_are_cut_and_stay_on_one_line() -> None:
    (found,) = raising(ValueError("a\nb " * 200))
    assert "\n" not in found.why
    assert found.why.endswith("…")
    assert len(found.why) < 300


def test_where_it_is_loud_nothing_is_caught() -> None:
    token = LOUD.set(True)
    try:
        with pytest.raises(ZeroDivisionError):
            raising(ZeroDivisionError())
    finally:
        LOUD.reset(token)


def test_the_line_of_ours_is_named_and_the_traceback_waits_to_be_asked_for(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    def run() -> Finding:
        found: list[Finding] = []
        with guarded(found, COMMAND, "do it"):
            rules_named(None)  # type: ignore[arg-type]
        return found[0]

    assert "(howto/jobs/rulebook.py:" in run().why
    assert run().why.endswith(", rules_named)")
    assert capsys.readouterr().err == ""
    monkeypatch.setenv("HOWTO_TRACEBACK", "1")
    run()
    assert "Traceback (most recent call last)" in capsys.readouterr().err


def test_no_memory_is_told_plainly(monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]) -> None:
    def full() -> NoReturn:
        raise MemoryError

    monkeypatch.setattr("howto.cli.why.rulebook", full)
    monkeypatch.setattr("sys.argv", ["howto", "why"])
    with pytest.raises(SystemExit) as stop:
        main()
    assert stop.value.code == 3
    assert capsys.readouterr().err.startswith("howto: there is no memory left.")


def test_outside_of_tests_it_is_caught(shelf: Path) -> None:
    line = "import howto.jobs.check as p; p.check_shelf = None; from howto.cli.app import main; main()"
    command = [sys.executable, "-c", line, "check", f"--shelf={shelf}", DAY]
    done = subprocess.run(command, capture_output=True, text=True, cwd=ROOT, env={**os.environ}, check=False)
    assert done.returncode == 3
    assert f"{shelf}:1:1: error file.our-fault: `howto` could not compare its files\n" in done.stdout
    assert "Traceback" not in done.stderr
