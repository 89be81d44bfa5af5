"""Inline text: runs of plain, strong and emphasised words, `{words}` still to be filled, a first letter set large."""

import re
from collections.abc import Iterable
from typing import Final

from howto.model.value import Value

BRACED: Final = re.compile(r"\{([^{}]*)\}")  # `{words}`; its group is what stands between the braces


class Run(Value):
    """A stretch of text in one style."""

    text: str
    strong: bool = False
    emphasis: bool = False


Prose = tuple[Run, ...]


def plain(prose: Iterable[Run]) -> str:
    """Return the words without their style."""
    return "".join(run.text for run in prose)


def compared(words: str) -> str:
    """Return `{words}` as they are compared: small letters, single spaces, `-` and `_` read as spaces."""
    return re.sub(r"[\s_\-]+", " ", words).strip().casefold()


def capital(text: str) -> str:
    """Return the text with its first letter large and the rest as it stands."""
    return text[:1].upper() + text[1:]


def prose(text: str, *, strong: bool = False) -> Prose:
    """Return one run of text."""
    return (Run(text=text, strong=strong),) if text else ()
