"""Writing outputs so that the last good ones stay whole until the new ones are complete.

Files are staged in a hidden folder beside their place, then swapped in by renaming. If a swap is cut off, the
next one finds the set-aside originals and puts them back first.
"""

import shutil
from collections.abc import Iterable
from pathlib import Path, PurePosixPath

STAGE = ".howto-new"
ASIDE = ".howto-old"


class Stage:
    """A folder being filled; nothing shows in `to` until `swap_in`."""

    def __init__(self, to: Path) -> None:
        self.to = to
        self.folder = to / STAGE
        to.mkdir(parents=True, exist_ok=True)
        recover(to)
        shutil.rmtree(self.folder, ignore_errors=True)
        self.written: list[str] = []

    def write(self, name: str, data: bytes) -> None:
        """Stage one file under its name in `to`, such as `cards/clip-a-ball.pdf`."""
        path = self.folder / name
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_bytes(data)
        self.written.append(name)

    def swap_in(self, whole: Iterable[str] = ()) -> None:
        """Put the staged files in place; each folder named in `whole` is replaced entirely, old files gone."""
        aside = self.to / ASIDE
        aside.mkdir(exist_ok=True)
        units = set(whole)
        for name in self.written:
            parts = PurePosixPath(name).parts
            if parts[0] not in units:
                units.add(name)
        for unit in sorted(units):
            _swap(self.folder / unit, self.to / unit, aside / unit)
        shutil.rmtree(aside, ignore_errors=True)
        shutil.rmtree(self.folder, ignore_errors=True)

    def drop(self) -> None:
        """Throw the staged files away."""
        shutil.rmtree(self.folder, ignore_errors=True)


def replace(old: Path, new: Path) -> None:
    """Rename a file or folder, which cannot be half done."""
    old.replace(new)


def _swap(new: Path, place: Path, aside: Path) -> None:
    """Set the old file or folder aside, then move the new one in."""
    if place.exists():
        aside.parent.mkdir(parents=True, exist_ok=True)
        replace(place, aside)
    if new.exists():
        place.parent.mkdir(parents=True, exist_ok=True)
        replace(new, place)


def recover(to: Path) -> None:
    """Put back what a swap cut off half-way had set aside and not yet replaced."""
    aside = to / ASIDE
    if not aside.is_dir():
        return
    for path in sorted(aside.rglob("*")):
        place = to / path.relative_to(aside)
        if path.is_file() and not place.exists():
            place.parent.mkdir(parents=True, exist_ok=True)
            replace(path, place)
    shutil.rmtree(aside, ignore_errors=True)
