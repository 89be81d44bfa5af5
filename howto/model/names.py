"""What a title is called as a file, and which file a name means, however its accents are stored."""

import os
import re
import unicodedata
from pathlib import Path
from typing import Final

LONGEST: Final = 60  # letters: with a date in front and an ending behind, short enough for every computer
_SPELLED: Final = str.maketrans({"đ": "d", "ø": "o", "ł": "l", "æ": "ae", "œ": "oe", "þ": "th", "ð": "d", "ı": "i"})


def file_name(title: str) -> str:
    """Return the file name of a title, accents left off; nothing where it has no Latin letter and no digit."""
    bare = unicodedata.normalize("NFKD", title.casefold().translate(_SPELLED))
    plain = "".join(letter for letter in bare if not unicodedata.combining(letter))
    return re.sub(r"[^a-z0-9]+", "-", plain).strip("-")


def short_name(title: str) -> str:
    """Return the file name of a title, cut after a word where it is long."""
    name = file_name(title)
    return name if len(name) <= LONGEST else (name[: LONGEST + 1].rpartition("-")[0] or name[:LONGEST])


def as_seen(name: str) -> str:
    """Return a file's name as it is seen: some computers store é as an e and an accent."""
    return unicodedata.normalize("NFC", name)


def on_disk(folder: Path, name: str) -> Path:
    """Return the file of a folder that a name means, one stored in these very letters first."""
    path = folder / name
    if name.isascii() or os.path.exists(path):  # noqa: PTH110 - Path.exists stops at a name that no disk takes
        return path
    here = folder
    for part in Path(name).parts:
        there = sorted(each.name for each in here.iterdir()) if os.path.isdir(here) else []  # noqa: PTH112 - as above
        here /= next((each for each in there if as_seen(each) == as_seen(part)), part)
    return here
