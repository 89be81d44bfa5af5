"""Finds which pictures of a shelf are one: under another spelling or link, copied, or saved again."""

import hashlib
from collections.abc import Iterator
from functools import cached_property
from pathlib import Path
from typing import Final, NamedTuple

from PIL import Image

from howto.model.names import on_disk
from howto.model.shelf import Shelf
from howto.read.photo import name_in, read_photo
from howto.span import Span

POINTS: Final = (16, 16)  # a picture's look: its colours at so many points across and down
DECODED: Final = (256, 256)  # px, ours: the least that is decoded to find them
NEAR: Final = (
    6.0  # of 255 at a point, ours: a copy saved small, poor or brighter is within it, another photograph beyond 25
)
SHAPE: Final = 0.02  # of width to height, ours: what rounding does to a small copy


class _Appearance(NamedTuple):
    """What a picture looks like from afar."""

    shape: float
    mean: float
    points: bytes

    def near(self, other: "_Appearance") -> bool:
        """Tell whether the two are one photograph."""
        if abs(self.shape / other.shape - 1) > SHAPE or abs(self.mean - other.mean) > NEAR:
            return False
        apart = sum(abs(here - there) for here, there in zip(self.points, other.points, strict=True))
        return apart <= NEAR * len(self.points)


class _File:
    """A picture as it stands on the disk; opened only as far as it must be."""

    def __init__(self, folder: Path, name: str, file: str) -> None:
        self.folder, self.name, self.file = folder, name, file
        self.path = on_disk(folder, name_in(folder, file))
        try:
            found = self.path.stat() if self.path.is_file() else None
        except (OSError, ValueError):  # a name that no disk can hold
            found = None
        self.there = found is not None
        self.place = (found.st_dev, found.st_ino) if found else (0, 0)
        self.size = found.st_size if found else 0

    @cached_property
    def content(self) -> bytes:
        """The digest of its bytes; nothing where they cannot be read."""
        try:
            with self.path.open("rb") as stream:
                return hashlib.file_digest(stream, "sha256").digest()
        except OSError:
            return b""

    @cached_property
    def look(self) -> _Appearance | None:
        """What it looks like; None where it is no picture."""
        photo, _ = read_photo(self.folder, self.file, Span(self.file), "", held=lambda _: DECODED)
        if photo is None:
            return None
        image = Image.frombytes("RGB", (photo.width, photo.height), photo.rgb).resize(POINTS, Image.Resampling.BOX)
        points = image.tobytes()
        return _Appearance(photo.full_width / photo.full_height, sum(points) / len(points), points)

    def copies(self, other: "_File") -> bool:
        """Tell whether the two are one file, or hold the same bytes."""
        return self.place == other.place or (self.size == other.size and self.content == other.content != b"")

    def resembles(self, other: "_File") -> bool:
        """Tell whether the two are one photograph."""
        return self.look is not None and other.look is not None and self.look.near(other.look)


def same_pictures(shelf: Shelf) -> dict[str, str]:
    """Return the names of pictures that are a visit's picture under another name, each with that name.

    Only what could go where it should not is opened: nothing where every client gave leave and there is one of them.
    """
    known: list[_File] = []
    same: dict[str, str] = {}
    private, clients = _of_visits(shelf)
    if not private and len({visit.site for visit in shelf.visits}) < 2:
        return same
    files = [_File(Path(shelf.root) / "pictures", name, name) for name in clients]
    public = {file.name: file for file in _public(shelf) if file.name not in clients} if private else {}
    for file in filter(lambda each: each.there, (*files, *public.values())):
        found = next(filter(file.copies, known), None) or next(filter(file.resembles, known), None)
        if found is not None:
            same[file.name] = found.name
        elif file.name in clients:
            known.append(file)
    return same


def _of_visits(shelf: Shelf) -> tuple[list[str], list[str]]:
    """Return the pictures that may not go out, and all pictures of visits, those first."""
    named = [(each, visit.may_publish) for visit in shelf.visits for each in (*visit.before, *visit.after)]
    private = list(dict.fromkeys(picture.file for picture, may_publish in named if not may_publish))
    return private, list(dict.fromkeys((*private, *(picture.file for picture, _ in named))))


def _public(shelf: Shelf) -> Iterator[_File]:
    """Yield the pictures that go out: those of steps, and the crew's own mark."""
    root = Path(shelf.root)
    for technique in shelf.techniques:
        for step in technique.steps:
            yield from (_File(root / "pictures", picture.file, picture.file) for picture in step.pictures)
    if shelf.crew.mark:
        yield _File(root, f"../{shelf.crew.mark}", shelf.crew.mark)
