"""Checks that the pictures a shelf names are on the disk, and that those on the disk are named."""

import os
from collections import Counter
from collections.abc import Iterator
from difflib import get_close_matches
from pathlib import Path
from typing import Any, Final

from howto.check.place import Sources, noted
from howto.findings import Finding, Severity
from howto.model.family import Rule
from howto.model.names import as_seen, on_disk
from howto.model.reference import FORMAT, PRACTICE
from howto.model.shelf import Shelf
from howto.model.technique import Picture
from howto.span import Span

FOLDER: Final = "pictures"
ENDINGS: Final = frozenset(
    {".jpg", ".jpeg", ".png", ".webp", ".heic", ".heif", ".gif", ".tif", ".tiff", ".bmp", ".avif"}
)

PHOTOGRAPHS: Final = (".jpg", ".jpeg", ".png", ".webp")
PICTURE: Final[Rule[Any]] = Rule(
    name="shelf.picture",
    severity=Severity.ERROR,
    statement="Every picture that a file names is in the shelf's `pictures` folder, in the same letters.",
    why="a name that differs in capitals is found on one computer and missing on the next",
    references=(FORMAT,),
    applies="pictures of steps and visits",
)
UNUSED: Final[Rule[Any]] = Rule(
    name="shelf.picture-unused",
    severity=Severity.ADVICE,
    statement="Every picture in the `pictures` folder is shown by some file.",
    why="a picture that nothing shows may be one whose line was lost, or a client's that should not be kept",
    references=(PRACTICE,),
    applies="the `pictures` folder",
)
TWICE: Final[Rule[Any]] = Rule(
    name="shelf.picture-twice",
    severity=Severity.ERROR,
    statement="No two pictures have names that look the same.",
    why="a letter with an accent is stored in two ways, so that nobody could tell which of the two will be shown",
    references=(FORMAT,),
    applies="the `pictures` folder",
)
PICTURE_RULES: Final = (PICTURE, UNUSED, TWICE)


def pictures_of(shelf: Shelf) -> tuple[str, ...]:
    """Return the pictures of a shelf by their names inside its `pictures` folder as they are seen, sorted."""
    folder = Path(shelf.root) / FOLDER
    if not folder.is_dir():
        return ()
    files = (path for path in folder.rglob("*") if path.suffix.casefold() in ENDINGS and path.is_file())
    return tuple(sorted(as_seen(path.relative_to(folder).as_posix()) for path in files))


def named_pictures(shelf: Shelf) -> Iterator[tuple[Picture, Span]]:
    """Yield each picture that a technique or visit names, with its place."""
    for technique in shelf.techniques:
        for at, step in enumerate(technique.steps):
            for number, picture in enumerate(step.pictures):
                yield picture, technique.spot(f"steps[{at}].pictures[{number}]")
    for visit in shelf.visits:
        for name, pictures in (("before", visit.before), ("after", visit.after)):
            for number, picture in enumerate(pictures):
                yield picture, visit.spans.get(f"{name}[{number}]", visit.spans.get(name, Span(visit.path)))


def picture_findings(shelf: Shelf, sources: Sources) -> Iterator[Finding]:
    """Yield a finding for each picture that is named and missing, or there and not named."""
    there = pictures_of(shelf)
    named: set[str] = set()
    for picture, span in named_pictures(shelf):
        if not picture.file:  # told while it was read
            continue
        file = as_seen(picture.file).removeprefix("./").removeprefix(f"{FOLDER}/")
        named.add(file.casefold())
        if file not in there:
            what, why, mend = _missing(file, there, Path(shelf.root) / FOLDER)
            yield noted(PICTURE, span, sources, what, why, mend)
    for file, count in Counter(there).items():
        if count > 1:
            what = f"`{file}` is there twice: {count} files have names that look the same"
            mend = "open each of them, and take out of the folder or rename all but one"
            yield noted(TWICE, Span(f"{shelf.root}/{FOLDER}/{file}"), sources, what, TWICE.why, mend)
    for file in dict.fromkeys(there) if _all_read(shelf) else ():
        if file.casefold() not in named:
            path = f"{shelf.root}/{FOLDER}/{file}"
            what, why = f"`{file}` is shown by no technique and no visit", UNUSED.why
            mend = f"write `- Picture: {file}` under the step it shows, or take it out of the folder"
            yield noted(UNUSED, Span(path), sources, what, why, mend)


def _all_read(shelf: Shelf) -> bool:
    """Tell whether every technique and visit could be read: what one that could not be shows is not known."""
    known = {each.path for each in shelf.techniques} | {each.path for each in shelf.visits}
    root = Path(shelf.root)
    files = (path for path in (*root.glob("*.[mM][dD]"), *root.glob("*/*.[mM][dD]")) if path.parent.name != FOLDER)
    notes = ("readme", "_", ".")  # to oneself: they are not read
    meant = {path.as_posix() for path in files if not path.name.casefold().startswith(notes)}
    return meant | {path for path in shelf.sources if path.casefold().endswith(".md")} <= known


def _missing(file: str, there: tuple[str, ...], folder: Path) -> tuple[str, str, str]:
    """Return what, why and mend of a picture that is not where it should be."""
    alike = next((each for each in there if each.casefold() == file.casefold()), "")
    if alike:
        return f"`{file}` is `{alike}` on the disk", PICTURE.why, f"write `{alike}`"
    path = str(on_disk(folder, file))
    if os.path.isdir(path):  # noqa: PTH112 - Path.is_dir stops at a name too long for the disk
        return f"`{file}` is a folder", PICTURE.why, "write the name of a picture in it, or take the line out"
    if os.path.isfile(path):  # noqa: PTH113 - as above
        return (
            f"`{file}` is no photograph by its name",
            f"photographs end in {', '.join(sorted(PHOTOGRAPHS))}",
            f"open `{file}`, save or export it as JPEG, and write the new name",
        )
    stems = {each.rsplit(".", 1)[0].casefold(): each for each in there}
    near = [stems[each] for each in get_close_matches(file.rsplit(".", 1)[0].casefold(), stems, n=1, cutoff=0.6)]
    put = f"put the picture at `{folder.as_posix()}/{file}`"
    return (
        f"`{file}` is not in `{folder.as_posix()}`",
        "a picture that is missing cannot be shown",
        f"write `{near[0]}`, or {put}" if near else f"{put}, or take the line out",
    )
