"""Letters made fit to be set: unseen ones left out, look-alikes swapped, a block for what no face has."""

from typing import Final

from howto.fonts import Face, missing

SUBSTITUTE: Final = "■"  # every face has it, and nobody reads it as a letter
_SPACES: Final = dict.fromkeys((*range(0x2000, 0x2007), *range(0x2008, 0x200B), 0x205F, 0x3000), " ")
_HYPHENS: Final = {0x2010: "-", 0x2011: "-"}  # what phones and word processors write for a plain hyphen
_UNSEEN: Final = dict.fromkeys(
    (
        *(0x00AD, 0x034F, 0x061C, 0x115F, 0x1160, 0x180E, 0x3164, 0xFEFF),
        *(*range(0x200B, 0x2010), *range(0x202A, 0x202F), *range(0x2060, 0x2070)),  # joiners, turns of direction
        *(*range(0xFE00, 0xFE10), *range(0xE0000, 0xE01F0)),  # variants of the letter before, and tags
    )
)
_TABLE: Final = {**_SPACES, **_HYPHENS, **_UNSEEN}


def tidied(text: str) -> str:
    """Return a text without the letters that nobody sees, and with plain spaces and hyphens for their look-alikes."""
    return text.translate(_TABLE)


def settable(text: str, face: Face = "text") -> str:
    """Return a text that a page can be set in: tidied, and with a block for each letter that the face lacks."""
    tidy = tidied(text)
    gaps = missing(tidy, face)
    return tidy.translate(dict.fromkeys(map(ord, gaps), SUBSTITUTE)) if gaps else tidy
