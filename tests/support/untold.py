"""Finds amounts that were printed before anybody told them: a private character in what people read."""

import re
from collections.abc import Iterable
from io import BytesIO
from typing import Final

from pypdf import PdfReader

from howto.findings import Finding
from howto.fonts.letters import SUBSTITUTE

PRIVATE: Final = re.compile("[\ue000-\ue002]")
PIXELS: Final = (".jpg", ".png")  # what a picture says is not read back: `fit.letter` tells of a letter it lacks


def untold(files: Iterable[tuple[str, bytes]]) -> list[str]:
    """Return the names of files that hold an amount nobody told."""
    return [name for name, data in files if PRIVATE.search(_text(name, data))]


def untold_in(findings: Iterable[Finding]) -> list[str]:
    """Return what findings say of amounts that nobody told."""
    texts = (text for each in findings for text in (each.what, each.why, each.mend, each.reference))
    return [text for text in texts if PRIVATE.search(text)]


def _text(name: str, data: bytes) -> str:
    """Return what a file says; a private character for each letter that its typefaces lack."""
    if name.endswith(".pdf"):
        pages = PdfReader(BytesIO(data)).pages
        return "".join(page.extract_text() for page in pages).replace(SUBSTITUTE, "\ue000")
    return "" if name.endswith(PIXELS) else data.decode("utf-8")
