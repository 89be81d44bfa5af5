"""Writing outputs so that the last good ones stay whole until the new ones are complete.

Files are staged in a hidden folder beside their place. When all of them are there, a list of what to swap is
written, and then each is renamed into place. A build that is stopped before the list leaves the old output as it
was; one that is stopped after it is finished by the next build.
"""

import json
import os
import shutil
import sys
from collections.abc import Iterable
from contextlib import suppress
from errno import EWOULDBLOCK
from pathlib import Path, PurePosixPath

if sys.platform != "win32":
    import fcntl

STAGE = ".howto-new"
ASIDE = ".howto-old"
MADE = ".howto-made"  # names the files and folders beside it that builds wrote, a line each
READY = ".swap.json"  # in the stage: what to swap, written when all of it is there


class Stage:
    """A folder being filled; nothing shows in `to` until `swap_in`. OSError where another build is writing there."""

    def __init__(self, to: Path) -> None:
        self.to = to
        self.folder = to / STAGE
        to.mkdir(parents=True, exist_ok=True)
        self._lock = _locked(to)
        recover(to)
        self.written: list[str] = []

    def write(self, name: str, data: bytes) -> None:
        """Stage one file under its name in `to`, such as `cards/clip-a-ball.pdf`."""
        path = self.folder / name
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_bytes(data)
        self.written.append(name)

    def swap_in(self, whole: Iterable[str] = ()) -> None:
        """Put the staged files in place; each folder named in `whole` is replaced entirely, old files gone."""
        units = set(whole)
        for name in self.written:
            parts = PurePosixPath(name).parts
            if parts[0] not in units:
                units.add(name)
        new = {unit: (self.folder / unit).exists() for unit in sorted(units)}
        self.folder.mkdir(exist_ok=True)
        draft = self.folder / f"{READY}.draft"
        draft.write_text(json.dumps(new), encoding="utf-8")
        replace(draft, self.folder / READY)
        recover(self.to)
        made = _made(self.to) | {PurePosixPath(unit).parts[0] for unit in units}
        (self.to / MADE).write_text("".join(f"{unit}\n" for unit in sorted(made)), encoding="utf-8")
        self._release()

    def drop(self) -> None:
        """Throw the staged files away; a swap that has begun is finished instead."""
        with suppress(OSError):  # the next build tries again
            recover(self.to)
        self._release()

    def _release(self) -> None:
        """Let other builds write here."""
        if self._lock is not None:
            os.close(self._lock)
            self._lock = None


def not_ours(to: Path, units: Iterable[str]) -> Path | None:
    """Return the first of `units` that stands in `to` and that no build of ours wrote; None where there is none."""
    made = _made(to)
    return next((to / unit for unit in units if unit not in made and (to / unit).exists()), None)


def _made(to: Path) -> set[str]:
    """Return the names in `to` that builds wrote."""
    path = to / MADE
    return set(path.read_text(encoding="utf-8").split("\n")) - {""} if path.is_file() else set()


def _locked(to: Path) -> int | None:
    """Return a lock on a folder, held until it is closed or the program ends; None where there are no locks."""
    if sys.platform == "win32":  # pragma: no cover - a folder cannot be locked there
        return None
    lock = os.open(to, os.O_RDONLY)
    try:
        fcntl.flock(lock, fcntl.LOCK_EX | fcntl.LOCK_NB)
    except BlockingIOError:
        os.close(lock)
        raise BlockingIOError(EWOULDBLOCK, "another build is writing here; wait until it is done", str(to)) from None
    except OSError:  # some network drives have no locks
        os.close(lock)
        return None
    return lock


def replace(old: Path, new: Path) -> None:
    """Rename a file or folder, which cannot be half done."""
    old.replace(new)


def recover(to: Path) -> None:
    """Finish a swap that was begun, then clear away what was staged and set aside."""
    ready = to / STAGE / READY
    if ready.is_file():
        for unit, is_new in json.loads(ready.read_text(encoding="utf-8")).items():
            _swap(to, unit, is_new=is_new)
        ready.unlink()
    for name in (ASIDE, STAGE):
        _clear(to / name)


def _swap(to: Path, unit: str, *, is_new: bool) -> None:
    """Set the old file or folder aside and move the new one in; what an earlier try has done is left as it is."""
    new, place, aside = to / STAGE / unit, to / unit, to / ASIDE / unit
    done = is_new and not new.exists()
    if not done and (place.exists() or place.is_symlink()):
        _clear(aside)
        aside.parent.mkdir(parents=True, exist_ok=True)
        replace(place, aside)
    if not done and is_new:
        place.parent.mkdir(parents=True, exist_ok=True)
        replace(new, place)


def _clear(path: Path) -> None:
    """Delete a file or a folder, if there is one."""
    if path.is_dir() and not path.is_symlink():
        shutil.rmtree(path, ignore_errors=True)
    else:
        path.unlink(missing_ok=True)
