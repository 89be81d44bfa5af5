"""Writing outputs so that the last good ones stay whole until the new ones are complete, and nobody else's are lost.

Files are staged in a hidden folder beside their place. A record names each file that runs wrote and what was in it:
what it does not name is never replaced or removed. When all is staged, the record is widened to the old files and the
new, and then a record of the new ones is put into the stage, which begins the swap. A build that is stopped before
that leaves the old output as it was; one that is stopped after it is finished by the next.
"""

import os
import re
import shutil
import sys
from collections.abc import Iterable, Iterator, Mapping
from contextlib import contextmanager, suppress
from hashlib import sha256
from pathlib import Path, PurePosixPath, PureWindowsPath
from typing import Final

if sys.platform != "win32":
    import fcntl

STAGE: Final = ".howto-new"
MADE: Final = ".howto-made"  # as `sha256sum` writes it; in the stage it is the record to be, and begins the swap
DRAFT: Final = ".howto-made.draft"
END: Final = "# end"  # the last line of a record that is not cut off
AS_NAMED: Final = "surrogateescape"  # how Python holds file names that are no UTF-8
MOST_NAMED: Final = 5

Record = Mapping[str, frozenset[str]]  # by name, what a run of ours may have left there


class RefusedError(OSError):
    """A place that is not written to; the sentence says why and what to do."""


class Stage:
    """A folder being filled; nothing shows in `to` until `swap_in`. RefusedError where another build writes there."""

    def __init__(self, to: Path) -> None:
        self.to = to
        self.folder = to / STAGE
        self.written: list[str] = []
        self._new: dict[str, frozenset[str]] = {}
        self._strangers: list[Path] = []
        self._open = True
        with _named(to):
            to.mkdir(parents=True, exist_ok=True)
        self._lock = _locked(to)
        try:
            recover(to)
            self._old = _record(to)[0]
            with _named(to):
                self.folder.mkdir(mode=0o700)  # a client's words are nobody else's to read before they are sent
        except BaseException:
            self._release()
            raise

    def write(self, name: str, data: bytes) -> None:
        """Stage one file under its name in `to`, such as `cards/clip-a-ball.pdf`."""
        place, mark = self.to / name, _mark(data)
        with _named(place):
            (self.folder / name).parent.mkdir(parents=True, exist_ok=True)
            (self.folder / name).write_bytes(data)
        self.written.append(name)
        self._new[name] = frozenset({mark})
        stranger = _stranger(self.to, name, self._old.get(name, frozenset()) | self._new[name])
        if stranger is not None:
            self._strangers.append(stranger)

    def swap_in(self, whole: Iterable[str] = ()) -> None:
        """Put the staged files in place; what earlier runs wrote in the folders named in `whole` goes.

        RefusedError, with nothing changed, where a file stands in a place that no run of ours wrote.
        """
        if self._strangers:
            raise RefusedError(_left_alone(self.to, self._strangers))
        folders = set(whole)
        stay = {name: marks for name, marks in self._old.items() if PurePosixPath(name).parts[0] not in folders}
        either = {
            name: self._old.get(name, frozenset()) | self._new.get(name, frozenset())
            for name in {*self._old, *self._new}
        }
        self._keep(either, self.to / MADE)
        self._keep({**stay, **self._new}, self.folder / MADE)
        recover(self.to)
        self._release()

    def drop(self) -> None:
        """Throw the staged files away; a swap that has begun is finished instead, and one that is done is left."""
        try:
            if self._open:  # else another build may be writing here by now
                with suppress(OSError):  # the next build tries again
                    recover(self.to)
        finally:
            self._release()

    def _keep(self, record: Record, path: Path) -> None:
        """Write a record whole or not at all."""
        lines = [f"{mark}  {name}" for name in sorted(record) for mark in sorted(record[name])]
        draft = self.folder / DRAFT
        with _named(path):
            draft.write_bytes("\n".join([*lines, END, ""]).encode(errors=AS_NAMED))
            draft.replace(path)

    def _release(self) -> None:
        """Let other builds write here."""
        self._open = False
        if self._lock is not None:
            os.close(self._lock)
            self._lock = None


def write_new(path: Path, data: bytes) -> None:
    """Write a file where there is none, whole or not at all."""
    path.parent.mkdir(parents=True, exist_ok=True)
    with _named(path), path.open("xb"):  # where there is one, this says so
        pass
    try:
        with _named(path):
            path.write_bytes(data)
    except BaseException:
        path.unlink()
        raise


def recover(to: Path) -> None:
    """Finish a swap that was begun, then clear away what was staged."""
    new, whole = ({}, False) if (to / STAGE).is_symlink() else _record(to / STAGE)
    if whole:
        old, _ = _record(to)
        for name in sorted({*old} - {*new}):
            _remove(to, name, old[name])
        for name in sorted(new):
            _move(to, name, old.get(name, frozenset()) | new[name])
        (to / STAGE / MADE).replace(to / MADE)
    _clear(to / STAGE)


def _move(to: Path, name: str, marks: frozenset[str]) -> None:
    """Put a staged file in its place, unless an earlier try has, or somebody else's file has come there since."""
    staged, place = to / STAGE / name, to / name
    if _barred(to / STAGE, name) is None and staged.is_file() and _stranger(to, name, marks) is None:
        with _named(place):
            place.parent.mkdir(parents=True, exist_ok=True)
            staged.replace(place)


def _remove(to: Path, name: str, marks: frozenset[str]) -> None:
    """Delete a file that still is as we wrote it, and the folders that it leaves empty."""
    if _stranger(to, name, marks) is None:
        (to / name).unlink(missing_ok=True)
        for folder in reversed(_on_the_way(to, name)):
            with suppress(OSError):  # something else is in it
                folder.rmdir()


def _record(folder: Path) -> tuple[Record, bool]:
    """Return what a record says, and whether it is all there; lines that are damaged, or lead out, say nothing."""
    path = folder / MADE
    if path.is_symlink() or not path.is_file():
        return {}, False
    lines = path.read_bytes().decode(errors=AS_NAMED).split("\n")
    found: dict[str, frozenset[str]] = {}
    for line in lines:
        read = re.fullmatch(r"([0-9a-f]{64})  (.+)", line)
        if read is not None and _inside(read[2]):
            found[read[2]] = found.get(read[2], frozenset()) | {read[1]}
    return found, lines[-2:] == [END, ""]


def _inside(name: str) -> bool:
    """Tell whether a name, as it is spelled, stays in its folder on every kind of computer, and is no record's."""
    parts = PureWindowsPath(name).parts  # it knows both kinds of slash, and letters of disks
    within = not PureWindowsPath(name).anchor and ".." not in parts and "\0" not in name
    return within and parts[:1] not in {(STAGE,), (MADE,), ()}


def _stranger(to: Path, name: str, marks: frozenset[str]) -> Path | None:
    """Return what stands at a name, or on the way there, that is not ours by these marks; None where nothing does."""
    barred, place = _barred(to, name), to / name
    if barred is not None or not place.exists():
        return barred
    return None if place.is_file() and _mark(place.read_bytes()) in marks else place


def _barred(folder: Path, name: str) -> Path | None:
    """Return the link, or the file in a folder's place, for which a name cannot be followed; None where it can."""
    way = _on_the_way(folder, name)
    if (folder / name).is_symlink():
        return folder / name
    return next((path for path in way if path.is_symlink() or (path.exists() and not path.is_dir())), None)


def _on_the_way(folder: Path, name: str) -> list[Path]:
    """Return each folder between `folder` and a file in it, the outermost first."""
    return [folder / each for each in reversed(PurePosixPath(name).parents[:-1])]


def _mark(data: bytes) -> str:
    """Return what a record knows some contents by."""
    return sha256(data).hexdigest()


def _left_alone(to: Path, strangers: Iterable[Path]) -> str:
    """Return why nothing is written: what stands there, and what to do."""
    shown = list(dict.fromkeys(f"`{path}`" for path in strangers))
    more = len(shown) - MOST_NAMED
    named = ", ".join(shown[:MOST_NAMED]) + (f" and {more} more" if more > 0 else "")
    are, them = ("is", "it") if len(shown) == 1 else ("are", "them")
    return (
        f"{named} {are} there already, and by the record `{to / MADE}` no run of howto left {them} so. Nothing was "
        f"written. Move {them} away, or choose another folder with --to."
    )


def _locked(to: Path) -> int | None:
    """Return a lock on a folder, held until it is closed or the program ends; None where there are no locks."""
    if sys.platform == "win32":  # pragma: no cover - a folder cannot be locked there
        return None
    lock = os.open(to, os.O_RDONLY)
    try:
        fcntl.flock(lock, fcntl.LOCK_EX | fcntl.LOCK_NB)
    except BlockingIOError:
        os.close(lock)
        raise RefusedError(f"Another build is writing in `{to}`. Wait until it is done.") from None
    except OSError:  # some network drives have no locks
        os.close(lock)
        return None
    return lock


@contextmanager
def _named(place: Path) -> Iterator[None]:
    """Let an error name the place that is written to: on a full disk it names none, and staged files mean nothing."""
    try:
        yield
    except OSError as problem:
        raise OSError(problem.errno, problem.strerror, str(place)) from problem


def _clear(path: Path) -> None:
    """Delete a file or a folder, if there is one."""
    if path.is_dir() and not path.is_symlink():
        shutil.rmtree(path)
    elif path.is_symlink() or path.exists():
        path.unlink()
