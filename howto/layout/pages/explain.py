"""Explains each trade word of a leaflet in brackets, the first time it stands there."""

import re
from collections.abc import Callable
from typing import Final

from howto.languages.glossary import EXPLAINED
from howto.languages.tags import is_english
from howto.model.prose import Prose
from howto.model.sheet import Block, Bullets, Dated, Paragraph, Section, Sheet

_KNOWN: Final = re.compile(
    r"(?<![\w-])(?:" + "|".join(sorted(map(re.escape, EXPLAINED), key=len, reverse=True)) + r")(?![\w-])", re.IGNORECASE
)
Change = Callable[[Prose], Prose]


def explained(sheet: Sheet) -> Sheet:
    """Return the sheet with each known trade word explained at its first use, in reading order; English only."""
    if not is_english(sheet.language):
        return sheet
    told: set[str] = set()

    def change(text: Prose) -> Prose:
        return _with_meanings(text, told)

    under = change(sheet.under)
    sections = tuple(_section(section, change) for section in sheet.sections)
    return sheet.model_copy(update={"under": under, "sections": sections})


def _section(section: Section, change: Change) -> Section:
    """Return a section with its words explained; what was done names techniques, which explain themselves."""
    if section.name == "done":
        return section
    return section.model_copy(update={"blocks": tuple(_block(block, change) for block in section.blocks)})


def _block(block: Block, change: Change) -> Block:
    if isinstance(block, Paragraph | Dated):
        return block.model_copy(update={"text": change(block.text)})
    if isinstance(block, Bullets):
        return block.model_copy(update={"items": tuple(change(item) for item in block.items)})
    return block


def _with_meanings(text: Prose, told: set[str]) -> Prose:
    """Return prose with the meaning after each known word that was not met before; strong words are names."""

    def meaning(found: re.Match[str]) -> str:
        word = found[0].casefold()
        said = EXPLAINED[word]
        if said in told or found.string[found.end() :].lstrip().startswith("("):
            return found[0]
        told.add(said)
        told.update(other for name, other in EXPLAINED.items() if name.rstrip("s") == word.rstrip("s"))
        return f"{found[0]} ({said})"

    return tuple(run if run.strong else run.model_copy(update={"text": _KNOWN.sub(meaning, run.text)}) for run in text)
