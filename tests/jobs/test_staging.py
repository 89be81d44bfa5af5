"""The last good output stays whole until the new one is complete."""

from pathlib import Path

import pytest

from howto.jobs.staging import ASIDE, MADE, STAGE, Stage, recover


def tree(folder: Path) -> dict[str, str]:
    """Return every file below a folder with its text."""
    return {
        path.relative_to(folder).as_posix(): path.read_text()
        for path in sorted(folder.rglob("*"))
        if path.is_file() and path.name != MADE
    }


def test_nothing_shows_before_the_swap(tmp_path: Path) -> None:
    stage = Stage(tmp_path)
    stage.write("cards/one.txt", b"new")
    assert not (tmp_path / "cards").exists()
    stage.swap_in()
    assert tree(tmp_path) == {"cards/one.txt": "new"}


def test_a_whole_folder_is_replaced_and_a_part_is_not(tmp_path: Path) -> None:
    (tmp_path / "cards").mkdir()
    (tmp_path / "cards/old.txt").write_text("old")
    (tmp_path / "README.md").write_text("kept")
    part = Stage(tmp_path)
    part.write("cards/new.txt", b"new")
    part.swap_in()
    assert tree(tmp_path) == {"README.md": "kept", "cards/new.txt": "new", "cards/old.txt": "old"}
    whole = Stage(tmp_path)
    whole.write("cards/newer.txt", b"newer")
    whole.swap_in(["cards", "leaflets"])
    assert tree(tmp_path) == {"README.md": "kept", "cards/newer.txt": "newer"}


def test_a_dropped_stage_leaves_no_trace(tmp_path: Path) -> None:
    (tmp_path / "index.html").write_text("old")
    stage = Stage(tmp_path)
    stage.write("index.html", b"new")
    stage.drop()
    assert tree(tmp_path) == {"index.html": "old"}
    assert not (tmp_path / STAGE).exists()


def begun(to: Path) -> Stage:
    """Return a stage over two old outputs, one to be replaced, one to go, and a new one to come."""
    for name in ("cards/old.txt", "leaflets/old.txt"):
        (to / name).parent.mkdir()
        (to / name).write_text("old")
    stage = Stage(to)
    stage.write("cards/new.txt", b"new")
    stage.write("index.html", b"new")
    return stage


@pytest.mark.parametrize("moves", range(1, 5))
def test_a_swap_cut_off_anywhere_is_finished_by_the_next_build(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, moves: int
) -> None:
    stage = begun(tmp_path)
    left = [moves]

    def cut(old: Path, new: Path) -> None:
        if not left[0]:
            raise KeyboardInterrupt
        left[0] -= 1
        old.rename(new)

    monkeypatch.setattr("howto.jobs.staging.replace", cut)
    with pytest.raises(KeyboardInterrupt):
        stage.swap_in(["cards", "leaflets"])
    monkeypatch.undo()
    stage.drop()
    assert tree(tmp_path) == {"cards/new.txt": "new", "index.html": "new"}
    assert not (tmp_path / ASIDE).exists()
    assert not (tmp_path / STAGE).exists()


def test_a_build_cut_off_before_the_swap_leaves_the_old_output(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    stage = begun(tmp_path)

    def cut(_old: Path, _new: Path) -> None:
        raise KeyboardInterrupt

    monkeypatch.setattr("howto.jobs.staging.replace", cut)
    with pytest.raises(KeyboardInterrupt):
        stage.swap_in(["cards", "leaflets"])
    monkeypatch.undo()
    stage.drop()
    assert tree(tmp_path) == {"cards/old.txt": "old", "leaflets/old.txt": "old"}


def test_a_swap_that_cannot_be_finished_is_left_for_the_next_build(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    stage = begun(tmp_path)

    def full(old: Path, new: Path) -> None:
        if STAGE in str(old) and STAGE not in str(new):
            raise OSError
        old.rename(new)

    monkeypatch.setattr("howto.jobs.staging.replace", full)
    with pytest.raises(OSError, match=r"^$"):
        stage.swap_in(["cards", "leaflets"])
    stage.drop()
    monkeypatch.undo()
    recover(tmp_path)
    assert tree(tmp_path) == {"cards/new.txt": "new", "index.html": "new"}


def test_a_stage_left_behind_is_cleared_away_whatever_it_is(tmp_path: Path) -> None:
    (tmp_path / STAGE).mkdir()
    (tmp_path / STAGE / "half.pdf").write_bytes(b"ha")
    (tmp_path / ASIDE).write_bytes(b"a file")
    stage = Stage(tmp_path)
    stage.write("index.html", b"new")
    stage.swap_in()
    assert tree(tmp_path) == {"index.html": "new"}
    assert sorted(path.name for path in tmp_path.iterdir()) == [MADE, "index.html"]


def test_two_builds_do_not_write_in_one_place_at_once(tmp_path: Path) -> None:
    first = Stage(tmp_path)
    first.write("index.html", b"first")
    with pytest.raises(BlockingIOError, match="another build is writing here") as refused:
        Stage(tmp_path)
    assert refused.value.filename == str(tmp_path)
    first.swap_in()
    second = Stage(tmp_path)
    second.drop()
    assert tree(tmp_path) == {"index.html": "first"}


def test_a_place_without_locks_is_written_to_all_the_same(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    def none(_file: int, _how: int) -> None:
        raise OSError

    monkeypatch.setattr("howto.jobs.staging.fcntl.flock", none)
    stage = Stage(tmp_path)
    stage.write("index.html", b"new")
    stage.swap_in()
    assert tree(tmp_path) == {"index.html": "new"}
