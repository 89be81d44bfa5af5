"""Which section a heading names and which note a label names, in the language of the file or in English."""

from collections.abc import Mapping
from typing import Final

from howto.languages import LANGUAGES, language_of
from howto.languages.form import folded
from howto.read.nodes import tidy_key

PICTURE_NOTES: Final = ("focus", "alt", "credit")


def section_named(text: str, language: str) -> str | None:
    """Return which section a heading names, in its own language or in English, or None."""
    return _named(text, *(each.file.sections for each in (language_of(language), LANGUAGES["en"])))


def note_named(text: str, language: str) -> str | None:
    """Return which step note a label names, in its own language or in English, or None."""
    return _named(text, *(each.file.notes for each in (language_of(language), LANGUAGES["en"])))


def _named(text: str, *tables: Mapping[str, tuple[str, ...]]) -> str | None:
    """Return the first name in the tables that `text` is a word for, its accents left aside."""
    wanted = folded(tidy_key(text))
    for table in tables:
        for name, words in table.items():
            if wanted in {folded(tidy_key(word)) for word in words}:
                return name
    return None
