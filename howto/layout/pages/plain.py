"""A leaflet or letter as plain text for a message, within a length: what matters least is left out first."""

from collections.abc import Iterator, Sequence
from typing import Final

from howto.languages import language_of
from howto.model.prose import plain
from howto.model.sheet import Block, Bullets, Dated, Facts, Grid, Paragraph, Section, Sheet

LONGEST: Final = 1500  # characters, ours: a message read without scrolling far
LEAST: Final = ("numbers", "done", "about", "later")  # left out in this order


def message(sheet: Sheet, limit: int = LONGEST) -> str:
    """Return the sheet's words in at most `limit` characters.

    Left out in turn: the numbers, what was done, the lead's words and what comes later; then tasks from the last
    one back. What not to do, when to call and the caution at the foot always stand; a line says that there is more.
    """
    parts = {name: text for name, text in _parts(sheet) if text}
    more = language_of(sheet.language).labels["more_on_page"]
    if len(_joined(parts)) <= limit:
        return _joined(parts)
    parts["more"] = more
    for name in LEAST:
        parts.pop(name, None)
        if len(_joined(parts)) <= limit:
            return _joined(parts)
    lines = parts.get("first", "").split("\n")
    while len(lines) > 2 and len(_joined(parts)) > limit:
        lines.pop()
        parts["first"] = "\n".join(lines)
    return _joined(parts)


def _joined(parts: dict[str, str]) -> str:
    """Return the parts with a blank line between them."""
    return "\n\n".join(parts.values())


def _parts(sheet: Sheet) -> Iterator[tuple[str, str]]:
    """Yield every part of the sheet under its name, in reading order."""
    yield "title", "\n".join(filter(None, (sheet.title, sheet.over)))
    yield "about", plain(sheet.under)
    for at, section in enumerate(sheet.sections):
        lines = [line for block in section.blocks for line in _lines(block)]
        if lines:
            yield section.name or f"part {at}", "\n".join((*_heading(section), *lines))
    yield "footer", sheet.footer


def _heading(section: Section) -> Sequence[str]:
    return (section.heading.upper(),) if section.heading else ()


def _lines(block: Block) -> Iterator[str]:
    """Yield the lines of a block; pictures, drawings and codes have none."""
    if isinstance(block, Paragraph):
        yield plain(block.text)
    elif isinstance(block, Bullets):
        yield from (f"- {plain(item)}" for item in block.items)
    elif isinstance(block, Dated):
        note = f" ({block.note})" if block.note else ""
        lead = f"{block.number}. " if block.number else "- "
        yield f"{lead}{block.when}: {plain(block.text)}{note}"
    elif isinstance(block, Facts):
        for entry in block.entries:
            yield f"- {entry.label}: {entry.value}{f' ({entry.note})' if entry.note else ''}"
    elif isinstance(block, Grid):
        yield from (" · ".join(filter(None, row)) for row in block.rows)
