"""Languages: one file each, one line in this table; and the reader, who is told everything in one of them."""

from collections.abc import Mapping
from typing import Final

from howto.languages import en, es, mi, vi
from howto.languages.form import Language
from howto.languages.tags import base

LANGUAGES: Final[Mapping[str, Language]] = {
    "en": en.LANGUAGE,
    "es": es.LANGUAGE,
    "vi": vi.LANGUAGE,
    "mi": mi.LANGUAGE,
}  # fmt: skip
# Units that are words, and so are told in every language; symbols are the same in all of them.
UNIT_WORDS: Final = frozenset(unit for each in LANGUAGES.values() for unit in each.units)


def language_of(tag: str) -> Language:
    """Return the language of a tag such as `en-NZ`; English where we have none of its own."""
    return LANGUAGES.get(base(tag), en.LANGUAGE)
