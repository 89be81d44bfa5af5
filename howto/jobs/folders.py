"""Which folders a command may read and write: a shelf that is there, and an output that is no part of it."""

from collections.abc import Iterable
from pathlib import Path

from howto.read.shelf import is_read

FOLDERS = ("cards", "carousels", "leaflets", "letters", "marks")  # what is written into an output folder


def not_a_shelf(root: Path, paths: Iterable[Path]) -> str:
    """Return why a command cannot start: no such shelf, or a path that is not on it; empty if it can."""
    if not root.is_dir():
        return f"There is no folder `{root}`. Name yours with --shelf, or make one: howto new shelf {root}"
    for path in paths:
        if not path.exists():
            return f"There is no file or folder `{path}`."
        if root.resolve() not in (path.resolve(), *path.resolve().parents):
            return f"`{path}` is not on the shelf `{root}`. Name its shelf with --shelf."
    return ""


def not_an_output(to: Path, root: Path) -> str:
    """Return why nothing can be written into `to`: it would be read as part of the shelf; empty if it can."""
    shelf = root.resolve()
    for place in (to, *(to / name for name in FOLDERS)):
        here = place.resolve()
        if shelf.is_dir() and here.is_relative_to(shelf) and is_read(shelf, here):
            return (
                f"`{place}` belongs to the shelf `{root}`, and what is written there would be read with it. Choose "
                "another folder with --to."
            )
    return ""
