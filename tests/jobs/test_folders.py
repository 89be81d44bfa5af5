"""A command that cannot start says why."""

from pathlib import Path

from howto.jobs.folders import not_a_shelf


def test_a_command_that_cannot_start_says_why(shelf: Path, tmp_path: Path) -> None:
    assert not_a_shelf(shelf, [shelf / "clipping"]) == ""
    assert "There is no folder" in not_a_shelf(tmp_path / "none", [])
    assert "There is no file or folder" in not_a_shelf(shelf, [shelf / "none.md"])
    assert "is not on the shelf" in not_a_shelf(shelf, [tmp_path])
