"""What spoils files does so the same way each time, and what is found is made small and kept."""

from collections.abc import Iterable
from datetime import date
from pathlib import Path
from random import Random

import pytest

from tests.fuzz import __main__ as command
from tests.fuzz import mutate, watched
from tests.fuzz.corpus import Files, pool, tried
from tests.fuzz.mutate import MUTATIONS, Mutation, mutated
from tests.fuzz.smallest import smallest
from tests.fuzz.watched import Watched

TODAY = date(2026, 10, 14)
LINES = ["title: Clip a ball", "width: 700 mm", "", "## Tools", "- Shears: sharp", "", "## Steps", "1. Clip."]
OTHER = ["name: Orchard end", "- Cane: long"]


def chance(seed: int = 1) -> Random:
    return Random(seed)  # noqa: S311 - the same each time


@pytest.mark.parametrize("way", dict.fromkeys(MUTATIONS), ids=lambda way: way.__name__)
def test_every_way_changes_a_text_and_bears_an_empty_one(way: Mutation) -> None:
    found = [way([*LINES], [*OTHER], chance(seed)) for seed in range(40)]
    assert any(each != LINES for each in found)
    assert found == [way([*LINES], [*OTHER], chance(seed)) for seed in range(40)]
    for seed in range(10):
        assert way([""], [""], chance(seed)) is not None


@pytest.mark.parametrize(
    ("way", "holds"),
    [
        (mutate.moved, lambda lines: sorted(lines) == sorted(LINES)),
        (mutate.cut, lambda lines: len(lines) < len(LINES) and set(lines) <= set(LINES)),
        (mutate.doubled, lambda lines: len(lines) > len(LINES) and set(lines) == set(LINES)),
        (mutate.swapped, lambda lines: sorted(lines) == sorted(LINES)),
        (mutate.borrowed, lambda lines: [each for each in lines if each not in OTHER] == LINES),
        (mutate.section_moved, lambda lines: sorted(lines) == sorted(LINES)),
        (mutate.emptied, lambda lines: len(lines) <= len(LINES)),
        (mutate.cut_off, lambda lines: "\n".join(LINES).startswith("\n".join(lines))),
        (mutate.stretched, lambda lines: len(lines) == len(LINES)),
    ],
)
def test_a_way_does_what_it_says(way: Mutation, holds: object) -> None:
    assert callable(holds)
    for seed in range(40):
        assert holds(way([*LINES], [*OTHER], chance(seed)))


def test_a_section_is_emptied() -> None:
    found = [mutate.emptied([*LINES], [], chance(seed)) for seed in range(60)]
    assert ["title: Clip a ball", "width: 700 mm", "", "## Tools", "## Steps", "1. Clip."] in found


def test_a_value_comes_from_another_key_of_another_file() -> None:
    found = {line for seed in range(60) for line in mutate.other_value([*LINES], [*OTHER], chance(seed))}
    assert "width: Orchard end" in found
    assert "title: 700 mm" in found


def test_a_number_goes_to_an_extreme_and_its_unit_stays() -> None:
    found = {line for seed in range(200) for line in mutate.number([*LINES], [], chance(seed))}
    assert {"width: 0 mm", "width: 1e400 mm", "width: -1 mm"} <= found


def test_every_kind_of_file_is_there_and_some_of_each_are_right() -> None:
    assert all(pool().values())
    assert len(pool()["technique"]) > 400
    for kind in ("technique", "visit", "crew"):
        assert any(each.right for each in pool()[kind])


def test_a_shelf_before_it_is_spoiled_has_what_it_needs() -> None:
    shelves = [tried(chance(seed), gently=True).before for seed in range(99)]
    told = next(each for each in shelves if "visits/2027-06-16-weir-garden.md" in each)
    assert {"crew.yaml", "clipping/clip-a-ball.md", "clipping/clip-a-ball.es.md"} <= set(told)


def test_gently_only_one_file_is_spoiled() -> None:
    for seed in range(30):
        shelf = tried(chance(seed), gently=True)
        assert len([place for place in shelf.before if shelf.before[place] != shelf.after[place]]) == 1


def test_the_same_run_tries_the_same_shelf() -> None:
    assert tried(chance(7), gently=False) == tried(chance(7), gently=False)
    assert mutated("a: 1", "b: 2", chance(3)) == mutated("a: 1", "b: 2", chance(3))


def test_the_smallest_is_what_still_shows_it() -> None:
    files = {"a.md": "\n".join(f"line {n}" for n in range(100)), "b.md": "not\nneeded"}
    found = smallest(files, lambda each: "line 7\n" in f"{each.get('a.md', '')}\n" and "line 60" in each["a.md"])
    assert found == {"a.md": "line 7\nline 60"}


def test_making_it_small_ends() -> None:
    asked: list[Files] = []

    def still(files: Files) -> bool:
        asked.append(files)
        return False

    files = {"a.md": "\n".join(map(str, range(1000)))}
    assert smallest(files, still, tries=50) == files
    assert len(asked) == 50
    assert smallest(files, still, seconds=0) == files
    assert len(asked) == 50


@pytest.fixture
def folder(tmp_path: Path) -> Watched:
    return Watched(tmp_path)


def broken(*_: object) -> tuple[object, ...]:
    raise ZeroDivisionError


def test_nothing_is_wrong_with_a_shelf_that_is_merely_full_of_mistakes(folder: Watched) -> None:
    assert folder.trouble({"crew.yaml": "hemisphere: up", "clipping/a.md": "---\n---\n"}, "read", TODAY) is None


def test_an_exception_is_told_by_its_kind_and_our_innermost_line(
    folder: Watched, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr("howto.jobs.check.check_shelf", broken)
    found = folder.trouble({"crew.yaml": "hemisphere: north"}, "read", TODAY)
    assert found is not None
    assert found.what == "ZeroDivisionError in howto/jobs/check.py:examine"
    assert "in broken" in found.full


def test_a_hang_is_cut_short(folder: Watched, monkeypatch: pytest.MonkeyPatch) -> None:
    def hangs(*_: object) -> None:
        while True:
            pass

    monkeypatch.setattr(watched, "HANGS_S", 0.05)
    monkeypatch.setattr("howto.jobs.check.check_shelf", hangs)
    found = folder.trouble({"crew.yaml": "hemisphere: north"}, "read", TODAY)
    assert found is not None
    assert found.what == "HangsError in anywhere"


def test_what_is_slow_is_slow_twice_and_slower_than_before(folder: Watched, monkeypatch: pytest.MonkeyPatch) -> None:
    def takes(*seconds: float) -> None:
        left: Iterable[float] = iter(seconds)
        monkeypatch.setattr(folder, "_once", lambda *_: (None, next(left)))  # type: ignore[call-overload]

    takes(1.9)
    assert folder.trouble({}, "read", TODAY) is None
    takes(5.0, 4.0)
    assert folder.trouble({}, "read", TODAY, {}) is None
    takes(5.0, 1.0, 0.5)
    assert folder.trouble({}, "read", TODAY, {}) is None
    takes(5.0, 1.0, 5.0)
    found = folder.trouble({}, "read", TODAY, {})
    assert found is not None
    assert found.what == "slow to read"


def test_the_command_keeps_the_smallest_and_says_so(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    monkeypatch.setattr("howto.jobs.check.check_shelf", broken)
    monkeypatch.setattr(command, "SHARES", {"read": 1})
    assert command.main(["--runs", "3", "--to", str(tmp_path)]) == 1
    assert "     3 × ZeroDivisionError in howto/jobs/check.py:examine" in capsys.readouterr().out
    home = tmp_path / "zerodivisionerror-in-howto-jobs-check-py-examine"
    assert "seed 0, run 0, read on 2026-" in (home / "trouble.txt").read_text(encoding="utf-8")
    assert len([path for path in home.rglob("*") if path.suffix in {".md", ".yaml"}]) == 1


def test_the_command_ends_well_where_there_is_no_trouble(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert command.main(["--minutes", "0", "--to", str(tmp_path / "none")]) == 0
    assert "0 runs" in capsys.readouterr().out
    assert not (tmp_path / "none").exists()
