"""The last good output stays whole until the new one is complete, and nobody else's file is lost."""

import errno
import os
import re
from collections.abc import Callable
from contextlib import suppress
from hashlib import sha256
from pathlib import Path

import pytest

from howto.jobs.staging import END, MADE, STAGE, RefusedError, Stage, recover, write_new
from tests.support.faults import KilledError, stopped

FIRST = {"cards/a.txt": "a1", "cards/gone.txt": "g1", "carousels/a/1x1/01.jpg": "p1", "index.html": "i1"}
LATER = {"cards/a.txt": "a2", "cards/new.txt": "n2", "carousels/b/1x1/01.jpg": "q2", "index.html": "i2"}
FOREIGN = {"cards/notes.txt": "mine", "carousels/a/mine.txt": "mine too", "README.md": "kept"}
WHOLE = ("cards", "carousels", "leaflets")


def tree(folder: Path) -> dict[str, str]:
    """Return every file below a folder with its text, but for what builds know themselves by."""
    return {
        path.relative_to(folder).as_posix(): path.read_text()
        for path in sorted(folder.rglob("*"))
        if path.is_file() and path.name != MADE
    }


def put(folder: Path, files: dict[str, str]) -> None:
    """Write files as a person does."""
    for name, text in files.items():
        (folder / name).parent.mkdir(parents=True, exist_ok=True)
        (folder / name).write_text(text)


def build(to: Path, files: dict[str, str], whole: tuple[str, ...] = WHOLE) -> None:
    """Write files as a run does."""
    stage = Stage(to)
    try:
        for name, text in files.items():
            stage.write(name, text.encode())
        stage.swap_in(whole)
    finally:
        stage.drop()


def test_nothing_shows_before_the_swap(tmp_path: Path) -> None:
    stage = Stage(tmp_path)
    stage.write("cards/one.txt", b"new")
    assert not (tmp_path / "cards").exists()
    assert (tmp_path / STAGE).stat().st_mode & 0o077 == 0
    stage.swap_in()
    assert tree(tmp_path) == {"cards/one.txt": "new"}


def test_what_runs_wrote_in_a_whole_folder_goes_and_all_else_stays(tmp_path: Path) -> None:
    put(tmp_path, FOREIGN)
    build(tmp_path, FIRST)
    assert tree(tmp_path) == {**FIRST, **FOREIGN}
    build(tmp_path, LATER)
    assert tree(tmp_path) == {**LATER, **FOREIGN}
    assert not (tmp_path / "carousels/a/1x1").exists()
    build(tmp_path, {"letters/x.txt": "l"}, ())
    build(tmp_path, {}, ("carousels",))
    assert tree(tmp_path) == {
        **{name: text for name, text in LATER.items() if not name.startswith("carousels")},
        **FOREIGN,
        "letters/x.txt": "l",
    }


def test_a_record_is_what_sha256sum_checks(tmp_path: Path) -> None:
    build(tmp_path, FIRST)
    *lines, end, last = (tmp_path / MADE).read_text().split("\n")
    assert (end, last) == (END, "")
    assert [line.split("  ")[1] for line in lines] == sorted(FIRST)
    assert all(re.fullmatch(r"[0-9a-f]{64}  \S+", line) for line in lines)


def test_a_dropped_stage_leaves_no_trace(tmp_path: Path) -> None:
    (tmp_path / "index.html").write_text("old")
    stage = Stage(tmp_path)
    stage.write("index.html", b"new")
    stage.drop()
    assert tree(tmp_path) == {"index.html": "old"}
    assert not (tmp_path / STAGE).exists()


@pytest.mark.parametrize("name", sorted(FIRST))
def test_a_file_that_no_run_wrote_is_named_and_left(tmp_path: Path, name: str) -> None:
    put(tmp_path, {name: "mine"})
    with pytest.raises(RefusedError) as refused:
        build(tmp_path, FIRST)
    assert str(refused.value) == (
        f"`{tmp_path / name}` is there already, and by the record `{tmp_path / MADE}` no run of howto left it so. "
        "Nothing was written. Move it away, or choose another folder with --to."
    )
    assert tree(tmp_path) == {name: "mine"}
    (tmp_path / name).unlink()
    build(tmp_path, FIRST)
    assert tree(tmp_path) == FIRST


def test_a_file_of_ours_that_a_person_changed_is_theirs(tmp_path: Path) -> None:
    build(tmp_path, FIRST)
    put(tmp_path, {"cards/gone.txt": "with my notes"})
    build(tmp_path, LATER)
    assert tree(tmp_path) == {**LATER, "cards/gone.txt": "with my notes"}
    put(tmp_path, {"cards/a.txt": "with my notes"})
    with pytest.raises(RefusedError, match=r"cards/a\.txt` is there already"):
        build(tmp_path, {**LATER, "cards/a.txt": "a3"})
    assert tree(tmp_path) == {**LATER, "cards/gone.txt": "with my notes", "cards/a.txt": "with my notes"}


def test_many_files_in_the_way_are_counted(tmp_path: Path) -> None:
    names = {f"cards/{number}.txt": "mine" for number in range(8)}
    put(tmp_path, names)
    with pytest.raises(RefusedError, match=r"`\S+cards/4\.txt` and 3 more are there already.*Move them away"):
        build(tmp_path, dict.fromkeys(names, "ours"))
    build(tmp_path, names)  # the very same bytes: nothing is lost by calling them ours
    build(tmp_path, dict.fromkeys(names, "ours"))


@pytest.mark.parametrize("there", ["folder", "file", "link", "link to nothing", "link on the way"])
def test_what_stands_in_the_way_is_never_followed(tmp_path: Path, there: str) -> None:
    to, away = tmp_path / "out", tmp_path / "away"
    put(away, {"a.txt": "mine"})
    place = to / "cards/a.txt"
    place.parent.mkdir(parents=True)
    if there == "folder":
        place.mkdir()
    elif there == "file":
        place.parent.rmdir()
        (to / "cards").write_text("mine")
    elif there == "link on the way":
        place.parent.rmdir()
        (to / "cards").symlink_to(away)
    else:
        place.symlink_to(away / ("a.txt" if there == "link" else "none"))
    shown = "cards" if there in {"file", "link on the way"} else "cards/a.txt"
    with pytest.raises(RefusedError, match=rf"{shown}` is there already"):
        build(to, FIRST)
    assert tree(away) == {"a.txt": "mine"}


OUT = ("/etc/passwd", "../away/a.txt", "cards/../../away/a.txt", "C:\\away", "..\\away\\a.txt", f"{STAGE}/x", MADE, "")


@pytest.mark.parametrize("name", [*OUT, "{away}/a.txt", "link/a.txt", "cards/link.txt"])
@pytest.mark.parametrize("whole", [True, False])
def test_a_name_in_a_record_is_never_followed_out(tmp_path: Path, name: str, whole: bool) -> None:
    to, away = tmp_path / "out", tmp_path / "away"
    put(away, {"a.txt": "mine"})
    build(to, FIRST)
    mine = sha256(b"mine").hexdigest()
    (to / "link").symlink_to(away)
    (to / "cards/link.txt").symlink_to(away / "a.txt")
    line = f"{mine}  {name.format(away=away)}\n"
    (to / MADE).write_text(line + (to / MADE).read_text())
    if whole:  # a swap that puts the name in its place, from a stage that leads out too
        put(to / STAGE, {"cards/b.txt": "b", MADE: f"{mine}  link/b.txt\n{line}{END}\n"})
        (to / STAGE / "link").symlink_to(away)
    build(to, LATER, (*WHOLE, "link", "..", "/", ""))
    assert tree(away) == {"a.txt": "mine"}
    assert {each: text for each, text in tree(to).items() if "link" not in each} == LATER


JUNK = (b"", b"\0", b"\xff\xfe\x00", b"cards\nindex.html\n", b"{}", b"# end\n", b"[1]\n# end\n", b"0" * 64 + b"  ")


@pytest.mark.parametrize("junk", JUNK)
def test_a_record_that_is_no_record_is_healed_or_said(tmp_path: Path, junk: bytes) -> None:
    build(tmp_path, FIRST)
    (tmp_path / MADE).write_bytes(junk)
    with pytest.raises(RefusedError, match="there already, and by the record"):
        build(tmp_path, LATER)
    assert tree(tmp_path) == FIRST
    build(tmp_path, FIRST)  # the same bytes heal it
    build(tmp_path, LATER)
    assert tree(tmp_path) == LATER


@pytest.mark.parametrize("junk", JUNK)
def test_a_swap_whose_record_is_damaged_is_done_anew(tmp_path: Path, junk: bytes) -> None:
    build(tmp_path, FIRST)
    with pytest.raises(KilledError), stopped(tmp_path, len(changes(tmp_path, LATER)) // 2):
        build(tmp_path, LATER)
    put(tmp_path / STAGE, {"cards/a.txt": "half"})
    (tmp_path / STAGE / MADE).write_bytes(junk)
    build(tmp_path, LATER)
    assert tree(tmp_path) == LATER


def test_a_record_that_is_cut_off_keeps_what_it_still_says(tmp_path: Path) -> None:
    build(tmp_path, FIRST)
    record = (tmp_path / MADE).read_bytes()
    (tmp_path / MADE).write_bytes(record[: record.index(b"index.html") + 3])
    with pytest.raises(RefusedError, match=r"^`\S+index\.html` is there already"):
        build(tmp_path, LATER)


@pytest.mark.parametrize("kind", ["file", "folder", "link"])
def test_a_stage_left_behind_is_cleared_away_whatever_it_is(tmp_path: Path, kind: str) -> None:
    to, away = tmp_path / "out", tmp_path / "away"
    put(away, {"half.pdf": "mine", MADE: f"{'0' * 64}  half.pdf\n{END}\n"})
    to.mkdir()
    if kind == "link":
        (to / STAGE).symlink_to(away)
    else:
        put(to, {STAGE if kind == "file" else f"{STAGE}/half.pdf": "ha"})
    build(to, {"index.html": "new"})
    assert sorted(path.name for path in to.iterdir()) == [MADE, "index.html"]
    assert tree(away) == {"half.pdf": "mine"}


def changes(to: Path, files: dict[str, str]) -> list[str]:
    """Return each change that a build makes to files, on a copy."""
    copy = to.parent / f"{to.name}-copy"
    put(copy, tree(to))
    if (to / MADE).exists():
        (copy / MADE).write_bytes((to / MADE).read_bytes())
    with stopped(copy, 0, lasting=False) as seen:
        build(copy, files)
    return seen


def full() -> OSError:
    return OSError(errno.ENOSPC, os.strerror(errno.ENOSPC))


WAYS: dict[str, tuple[Callable[[], BaseException], bool, bool]] = {
    "killed": (KilledError, True, False),
    "killed while writing": (KilledError, True, True),
    "interrupted": (KeyboardInterrupt, False, False),
    "the disk is full for a moment": (full, False, True),
    "the disk is full": (full, True, True),
}


@pytest.mark.parametrize("way", WAYS)
@pytest.mark.parametrize("later", [False, True], ids=["a first build", "a later build"])
def test_a_build_stopped_at_any_change_is_wholly_old_or_wholly_new(tmp_path: Path, way: str, later: bool) -> None:
    problem, lasting, torn = WAYS[way]

    def begin(to: Path) -> dict[str, str]:
        put(to, FOREIGN)
        if later:
            build(to, FIRST)
        return tree(to)

    begin(tmp_path / "count")
    count = len(changes(tmp_path / "count", LATER))
    assert count > 20
    new, record = {**LATER, **FOREIGN}, (tmp_path / "count-copy" / MADE).read_bytes()
    ends = set()
    for at in range(1, count + 1):
        to = tmp_path / str(at)
        old = begin(to)
        done = False
        with suppress(KilledError, KeyboardInterrupt, OSError), stopped(to, at, problem, lasting=lasting, torn=torn):
            build(to, LATER)
            done = True
        again = tmp_path / f"{at}-again"  # elsewhere, as another program: the lock died with the first
        to.rename(again)
        recover(again)
        assert tree(again) in ([new] if done else [old, new]), at
        ends.add(tree(again) == new)
        build(again, LATER)
        assert tree(again) == new
        assert (again / MADE).read_bytes() == record
        assert not (again / STAGE).exists()
        build(again, FIRST)
        assert tree(again) == {**FIRST, **FOREIGN}
    assert ends == {False, True}


def test_a_recovery_that_is_stopped_anywhere_is_done_by_the_next(tmp_path: Path) -> None:
    build(tmp_path / "count", FIRST)
    count = len(changes(tmp_path / "count", LATER))
    for first in range(count // 2, count, 3):
        for second in range(1, 12):
            to = tmp_path / f"{first}-{second}"
            build(to, FIRST)
            with pytest.raises(KilledError), stopped(to, first):
                build(to, LATER)
            try:
                with stopped(to, second):
                    recover(to)
            except KilledError:
                recover(to)
            assert tree(to) in (FIRST, LATER)
            build(to, LATER)
            assert tree(to) == LATER


def test_a_file_put_in_the_way_of_a_begun_swap_is_left(tmp_path: Path) -> None:
    with pytest.raises(KilledError), stopped(tmp_path, len(changes(tmp_path, FIRST)) - 12):
        build(tmp_path, FIRST)
    missing = sorted({*FIRST} - {*tree(tmp_path)})
    assert missing
    put(tmp_path, {missing[0]: "mine"})
    with pytest.raises(RefusedError, match=missing[0]):
        build(tmp_path, LATER | {missing[0]: "ours"})
    assert (tmp_path / missing[0]).read_text() == "mine"


def test_two_builds_do_not_write_in_one_place_at_once(tmp_path: Path) -> None:
    first = Stage(tmp_path)
    first.write("index.html", b"first")
    with pytest.raises(RefusedError) as refused:
        Stage(tmp_path)
    assert str(refused.value) == f"Another build is writing in `{tmp_path}`. Wait until it is done."
    first.swap_in()
    second = Stage(tmp_path)
    second.write("index.html", b"second")
    first.drop()  # which is over, and leaves the second alone
    second.swap_in()
    assert tree(tmp_path) == {"index.html": "second"}


def test_a_place_without_locks_is_written_to_all_the_same(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    def none(_file: int, _how: int) -> None:
        raise OSError

    monkeypatch.setattr("howto.jobs.staging.fcntl.flock", none)
    build(tmp_path, {"index.html": "new"})
    assert tree(tmp_path) == {"index.html": "new"}


def test_a_new_file_is_whole_or_not_there(tmp_path: Path) -> None:
    path = tmp_path / "visits/a.md"
    with pytest.raises(OSError, match="No space left") as told, stopped(tmp_path, 3, full, torn=True, lasting=False):
        write_new(path, b"words")
    assert told.value.filename == str(path)
    assert tree(tmp_path) == {}
    write_new(path, b"words")
    with pytest.raises(FileExistsError):
        write_new(path, b"other words")
    assert tree(tmp_path) == {"visits/a.md": "words"}
