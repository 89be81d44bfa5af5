"""The last good output stays whole until the new one is complete."""

from pathlib import Path

import pytest

from howto.output import ASIDE, STAGE, Stage, recover


def tree(folder: Path) -> dict[str, str]:
    """Return every file below a folder with its text."""
    return {
        path.relative_to(folder).as_posix(): path.read_text() for path in sorted(folder.rglob("*")) if path.is_file()
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


def test_a_swap_cut_off_half_way_is_put_right_by_the_next_build(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    (tmp_path / "cards").mkdir()
    (tmp_path / "cards/old.txt").write_text("old")
    stage = Stage(tmp_path)
    stage.write("cards/new.txt", b"new")

    def cut(self: Path, target: Path) -> None:
        if STAGE in str(self):
            raise KeyboardInterrupt
        self.rename(target)

    monkeypatch.setattr("howto.output.replace", cut)
    with pytest.raises(KeyboardInterrupt):
        stage.swap_in(["cards"])
    monkeypatch.undo()
    assert not (tmp_path / "cards").exists()
    recover(tmp_path)
    assert tree(tmp_path / "cards") == {"old.txt": "old"}
    assert not (tmp_path / ASIDE).exists()
