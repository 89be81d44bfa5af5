"""What a title is called as a file: small letters, digits and dashes."""

import re
import unicodedata
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
