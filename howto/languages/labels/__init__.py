"""The words a page prints of its own accord: headings, short labels, and the caution at its foot."""

from typing import Final

from howto.languages.labels.en import ENGLISH
from howto.languages.labels.es import SPANISH
from howto.languages.labels.form import Labels
from howto.languages.labels.mi import MAORI
from howto.languages.labels.vi import VIETNAMESE
from howto.languages.tags import base

__all__ = ["ENGLISH", "LANGUAGES", "Labels", "labels"]

LANGUAGES: Final[dict[str, Labels]] = {"en": ENGLISH, "es": SPANISH, "vi": VIETNAMESE, "mi": MAORI}


def labels(language: str) -> Labels:
    """Return the labels of a language tag such as `en-NZ`; English where we have none of its own."""
    return LANGUAGES.get(base(language), ENGLISH)
