"""A file's Markdown body read into sections: tools, steps, cautions, finish and aftercare, each with its place."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from typing import Final, TypeVar

from howto.findings import Finding, Severity
from howto.languages import language_of
from howto.read.blocks import Block, Heading, Item, Listing, ParagraphBlock, passages_of, read_blocks
from howto.read.headings import section_named
from howto.read.items import CareText, CautionText, KitText, care, caution, kit, without_box
from howto.read.letters import note_parts
from howto.read.notes import Notes, lines_of, listed, nearest, short, whole_line
from howto.read.passage import Passage
from howto.read.steps import StepText, read_steps, typed
from howto.span import Located, SourceText, Span


@dataclass(frozen=True, slots=True)
class Body:
    """The body of a technique file; `headings` says where each section's heading stands, `located` each letter."""

    intro: tuple[Passage, ...] = ()
    tools: tuple[KitText, ...] = ()
    materials: tuple[KitText, ...] = ()
    steps: tuple[StepText, ...] = ()
    cautions: tuple[CautionText, ...] = ()
    finish: tuple[Passage, ...] = ()
    aftercare: tuple[CareText, ...] = ()
    headings: Mapping[str, Span] = field(default_factory=dict)
    located: Mapping[Span, Located] = field(default_factory=dict)
    end: Span = field(default_factory=lambda: Span(""))


T = TypeVar("T")
SECTION_DEPTH: Final = 2
REQUIRED: Final = ("tools", "steps", "cautions", "finish")
_SHOWN: Final = {
    "tools": "- Hand shears: sharp, wiped clean",
    "materials": "- Drop sheet: 2",
    "steps": "1. **Find the circle from above.** Stand over the plant.",
    "cautions": "- **Hands and feet.** Keep hands, feet and other people clear. → gloves",
    "finish": "- [ ] The outline is round from two sides",
    "aftercare": "- Within 2 days: water once",
}
_WHY: Final = {
    "tools": "the card says what to bring before the work starts",
    "materials": "the card says what is used up, so that it is there before the work starts",
    "steps": "the card and the pictures follow the steps",
    "cautions": "whoever could do the work from a card, the pictures or a leaflet is told what can hurt",
    "finish": "the card ends with what good looks like",
    "aftercare": "the client's leaflet is made from it",
}


def read_body(source: SourceText, first_line: int, language: str = "en") -> tuple[Body, tuple[Finding, ...]]:
    """Return the sections of a technique's body, which starts on `first_line` of the file, and findings."""
    notes = Notes(source)
    last = max((at for at, line in enumerate(lines_of(source), 1) if line.strip()), default=1)
    end = whole_line(source, last)
    blocks = read_blocks(notes, first_line)
    before, sections = _sections(notes, blocks, language)
    intro = _intro(notes, before, min((s.heading for s in sections.values()), key=_line, default=end))
    for name in (*REQUIRED, "aftercare"):
        if name not in sections:
            _note_missing(notes, name, end, language)
    lists = {name: _items(notes, name, found) for name, found in sections.items() if name != "steps"}
    found_steps = sections.get("steps")
    steps = read_steps(notes, found_steps.blocks, language) if found_steps else ()
    body = Body(
        intro=intro,
        tools=_each(kit(notes, item) for item in lists.get("tools", ())),
        materials=_each(kit(notes, item) for item in lists.get("materials", ())),
        steps=steps,
        cautions=_each(caution(notes, item) for item in lists.get("cautions", ())),
        finish=tuple(item.words for item in lists.get("finish", ())),
        aftercare=_each(care(notes, item, language) for item in lists.get("aftercare", ())),
        headings={name: found.heading for name, found in sections.items()},
        located={**located_in(passages_of(blocks)), **{each.span: each.located for each in steps}},
        end=end,
    )
    note_parts(notes, (body,))
    held = {**lists, "steps": found_steps.blocks if found_steps else ()}
    for name, found in sections.items():
        if not held[name]:
            _note_empty(notes, name, found.heading)
    return body, notes.findings


def read_words(source: SourceText, first_line: int) -> tuple[tuple[Passage, ...], tuple[Finding, ...]]:
    """Return the paragraphs of a body that is only words, such as a visit's words to the client."""
    notes = Notes(source)
    words: list[Passage] = []
    for block in read_blocks(notes, first_line):
        if isinstance(block, ParagraphBlock):
            words.append(block.words)
        elif isinstance(block, Listing):
            words.extend(item.words for item in block.items)
        else:
            notes.add(
                "heading",
                block.span,
                f"the heading `{short(block.text)}` stands here",
                "the words to a client are a paragraph or two, without headings",
                "take out the `#` signs",
            )
    note_parts(notes, words)
    return tuple(each for each in words if each.text.strip()), notes.findings


def located_in(passages: Iterable[Passage]) -> dict[Span, Located]:
    """Return the place of every letter of some passages, by the place of each."""
    return {each.span: each.located for each in passages}


@dataclass(slots=True)
class _Section:
    """A section as it is gathered: where its heading stands, and its blocks."""

    heading: Span
    blocks: list[ParagraphBlock | Listing] = field(default_factory=list)


def _line(span: Span) -> int:
    """Return the line of a span, to sort by."""
    return span.line


def _each(found: Iterable[T | None]) -> tuple[T, ...]:
    """Return what could be read."""
    return tuple(each for each in found if each is not None)


def _sections(
    notes: Notes, blocks: Iterable[Block], language: str
) -> tuple[list[ParagraphBlock | Listing], dict[str, _Section]]:
    """Return the blocks before the first section, and the sections by name."""
    before: list[ParagraphBlock | Listing] = []
    sections: dict[str, _Section] = {}
    here: list[ParagraphBlock | Listing] = before
    for block in blocks:
        if isinstance(block, Heading):
            name = _heading(notes, block, language)
            span = block.span
        else:
            name = _worded(notes, block, language)
            span = block.words.span if isinstance(block, ParagraphBlock) else block.span
        if name is None and not isinstance(block, Heading):
            here.append(block)
        elif name == "":
            here = []
        elif name is not None:
            if name in sections:
                _note_repeat(notes, name, span, sections[name].heading, language)
            here = sections.setdefault(name, _Section(span)).blocks
    return before, sections


def _heading(notes: Notes, heading: Heading, language: str) -> str | None:
    """Return the section a heading opens, "" for one that is not known, None for one that opens none."""
    known = [words[0] for words in language_of(language).file.sections.values()]
    name = section_named(heading.text, language)
    near = nearest(heading.text, known) if heading.text else None
    if name is None and heading.depth != SECTION_DEPTH:
        notes.add(
            "heading",
            heading.span,
            f"the heading `{short(heading.text)}` is not a section",
            "the title stands in the front matter, and sections have no headings within them",
            f"take this line out, or write `## {near or known[0]}` if a section starts here",
        )
        return section_named(near, language) if near else None
    if name is None:
        notes.add(
            "unknown-section",
            heading.span,
            f"`{short(heading.text)}` is not a section",
            f"the sections are {listed(known).replace(' or ', ' and ')}",
            f"write `## {near}`" if near else "move these lines under one of them, and take this heading out",
        )
        return section_named(near, language) if near else ""
    if heading.depth != SECTION_DEPTH:
        notes.add(
            "heading",
            heading.span,
            f"the section `{heading.text}` has {heading.depth} `#` in front",
            "a section starts with two",
            f"write `## {heading.text.strip(' :')}`",
        )
    return name


def _worded(notes: Notes, block: ParagraphBlock | Listing, language: str) -> str | None:
    """Return the section that a paragraph of one word names, noted: it was meant as a heading."""
    if not isinstance(block, ParagraphBlock):
        return None
    name = section_named(block.words.text, language)
    if name is None or block.words.text.strip(" :").islower():
        return None
    word = block.words.text.strip(" :")
    notes.add(
        "heading",
        block.words.span,
        f"`{word}` stands on a line of its own, but not as a heading",
        "a section starts with a heading: two `#` and a space",
        f"write `## {word}`",
    )
    return name


def _intro(notes: Notes, blocks: Iterable[ParagraphBlock | Listing], below: Span) -> tuple[Passage, ...]:
    """Return the paragraphs above the first section; note a list there, or none at all."""
    words: list[Passage] = []
    for block in blocks:
        if isinstance(block, ParagraphBlock):
            words.append(block.words)
            continue
        notes.add(
            "list",
            block.span,
            f"{'a table' if block.table else 'a list'} stands above the first section",
            "a technique opens with a paragraph: what good looks like, and why it is worth the trouble",
            "write it as a sentence or two, or move it under the heading it belongs to",
        )
        words.extend(item.words for item in block.items)
    found = tuple(each for each in words if each.text.strip())
    if not found:
        notes.add(
            "intro",
            below,
            "no paragraph stands above this line",
            "a technique opens with what good looks like, and why it is worth the trouble",
            "write a sentence or two above this line, with an empty line after it",
        )
    return found


def _note_missing(notes: Notes, name: str, end: Span, language: str) -> None:
    """Note a section that is not there, at the end of the file, where it can be added."""
    word = language_of(language).file.sections[name][0]
    notes.add(
        "missing-section",
        end,
        f"there is no section `{word}`",
        _WHY[name],
        f"write a line `## {word}` below the last line, and under it a line such as `{_SHOWN[name]}`",
        severity=Severity.WARNING if name == "aftercare" else Severity.ERROR,
    )


def _note_repeat(notes: Notes, name: str, span: Span, first: Span, language: str) -> None:
    """Note a section that starts twice."""
    notes.add(
        "repeated-section",
        span,
        f"the section `{language_of(language).file.sections[name][0]}` starts a second time",
        f"it already starts on line {first.line}",
        f"move the lines below to the section on line {first.line}, and take this heading out",
        also=first,
    )


def _note_empty(notes: Notes, name: str, heading: Span) -> None:
    """Note a section with nothing in it."""
    notes.add(
        "empty-section",
        heading,
        "nothing stands under this heading",
        _WHY[name],
        f"write a line under it, such as `{_SHOWN[name]}`" + ("" if name in REQUIRED else ", or take the heading out"),
    )


def _items(notes: Notes, name: str, section: _Section) -> tuple[Item, ...]:
    """Return the items of a section's lists; note paragraphs and tables where a list should be."""
    items: list[Item] = []
    start = "- [ ] " if name == "finish" else "- "
    for block in section.blocks:
        if isinstance(block, Listing) and not block.table:
            items.extend(flat for item in block.items for flat in _flat(notes, item, start))
            continue
        found = block.items if isinstance(block, Listing) else (Item(block.words),)
        table = isinstance(block, Listing)
        first = next((typed(item.words) for item in found if item.words.text), "")
        notes.add(
            "table" if table else "list",
            block.span if isinstance(block, Listing) else block.words.span,
            f"{'a table' if table else 'a paragraph'} stands where a list should",
            "each line of the list becomes a line to read or to tick",
            f"start each line with `{start}`" + (f": the first is `{start}{short(first, 60)}`" if first else ""),
        )
        items.extend(found)
    bare = (Item(without_box(item.words), item.under) for item in items)
    return tuple(item for item in bare if item.words.text)


def _flat(notes: Notes, item: Item, start: str) -> Iterable[Item]:
    """Yield an item and those under it, which are noted: these lists have one level."""
    yield item
    for under in item.under:
        notes.add(
            "list",
            under.words.span,
            f"`{short(under.words.text)}` stands under another line",
            "only steps have lines under them",
            f"start this line at the left edge: `{start}{short(typed(under.words), 60)}`",
        )
        yield from _flat(notes, under, start)
