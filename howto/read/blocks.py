"""Markdown into blocks: paragraphs and lists with their lines and columns, and a finding for what has no place."""

import re
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, replace
from typing import Final

from markdown_it import MarkdownIt
from markdown_it.tree import SyntaxTreeNode

from howto.fonts.letters import tidied
from howto.read.notes import LONGEST, Notes, line_of, lines_of, note_long, short, whole_line
from howto.read.passage import Passage, Piece
from howto.span import NOWHERE, Span

_SPACES: Final = str.maketrans(dict.fromkeys("\r\u00a0\u2002\u2003\u2009\u200a\u202f\u3000\u200b\u2060\ufeff", " "))
_BULLET: Final = re.compile(  # as phones write them, and as word processors paste them
    r"^(\s*)(?:[•▪◦‣●○☐☑□·∙⁃\uf0a7\uf0b7\uf0d8\uf0fc](?=\s)|[o§Øü–—−](?=[\t\u00a0]))\s*"
)
_DASH: Final = re.compile(r"^(\s*)[–—−](?=\s)")
_IN_A_LIST: Final = re.compile(r"\s*(?:$|#|[-*+]\s|\d{1,9}[.)]\s)")
_TIGHT: Final = re.compile(r"^(#{2,6})(?=[^#\s])")
_TAG: Final = re.compile(r"</?[A-Za-z][A-Za-z0-9-]*(?:\s[^<>]*)?/?>|<!--.*?(?:-->|$)")
_PARSER: Final = MarkdownIt("commonmark", {"html": False}).enable("table")


@dataclass(frozen=True, slots=True)
class Item:
    """One item of a list, or one row of a table: its own words, and the items under it."""

    words: Passage
    under: "tuple[Item, ...]" = ()


@dataclass(frozen=True, slots=True)
class Heading:
    """A heading of any depth."""

    text: str
    depth: int
    span: Span


@dataclass(frozen=True, slots=True)
class ParagraphBlock:
    """A paragraph of words."""

    words: Passage


@dataclass(frozen=True, slots=True)
class Listing:
    """A list; a table is one too, its cells joined by a colon."""

    items: tuple[Item, ...]
    numbered: bool
    span: Span
    table: bool = False


Block = Heading | ParagraphBlock | Listing

_NO_PLACE: Final = {
    "code_block": (
        "these words are set in by four spaces or more, which makes them program code",
        "take the spaces away, or set an item that belongs to a step in by three spaces",
    ),
    "fence": ("a block of program code stands here", "take out the lines of ``` round these words"),
    "blockquote": ("these words are marked as a quotation", "take out the `>` at the start of the line"),
    "html_block": ("a page tag stands here", "take out what stands between `<` and `>`"),
    "hr": ("a line is drawn here", "take this line out; a new `## ` heading parts one section from the next"),
}


def passages_of(blocks: Iterable[Block]) -> Iterator[Passage]:
    """Yield the words of every paragraph and item."""
    for block in blocks:
        if isinstance(block, ParagraphBlock):
            yield block.words
        elif isinstance(block, Listing):
            yield from _words_of(block.items)


def _words_of(items: Iterable[Item]) -> Iterator[Passage]:
    for item in items:
        yield item.words
        yield from _words_of(item.under)


def read_blocks(notes: Notes, first_line: int) -> tuple[Block, ...]:
    """Return the blocks of a file from `first_line` on, in order."""
    lines = lines_of(notes.source)
    body = _fitted(lines[first_line - 1 :])
    tokens = _PARSER.parse("\n".join(body))
    for token in tokens:
        if token.type == "inline":  # kept flat: a tree of thousands of nested stars would be too deep to walk
            token.meta, token.children = {"flat": token.children or []}, None
    return tuple(_Reader(notes, first_line).blocks(SyntaxTreeNode(tokens)))


def _fitted(lines: Sequence[str]) -> list[str]:
    """Return the lines of a body with the signs Markdown knows; a long dash starts an item within a section."""
    body: list[str] = []
    in_section = False
    for line in lines:
        fit = _fit(line)
        if in_section and _IN_A_LIST.match(body[-1]):
            fit = _DASH.sub(r"\1-", fit)
        in_section = in_section or fit.startswith("#")
        body.append(fit)
    return body


def _fit(line: str) -> str:
    """Return a line as typed on a phone with the signs Markdown knows."""
    plain = _BULLET.sub(r"\1- ", line).translate(_SPACES)
    return _TIGHT.sub(r"\1 ", plain)


class _Reader:
    """Walks Markdown's tree; lines are counted from the file's own first."""

    def __init__(self, notes: Notes, first_line: int) -> None:
        self.notes = notes
        self.first_line = first_line

    def blocks(self, parent: SyntaxTreeNode) -> Iterator[Block]:
        """Yield the blocks under a node; what has no place is noted."""
        for node in parent.children:
            if node.type == "heading":
                line = self.line(node)
                text = " ".join(self.words(node.children[0]).text.split()) if node.children else ""
                yield Heading(text, int(node.tag[1]), whole_line(self.notes.source, line))
            elif node.type == "paragraph":
                yield ParagraphBlock(self.words(node.children[0]))
            elif node.type in ("bullet_list", "ordered_list"):
                items = tuple(self.item(each) for each in node.children)
                yield Listing(items, node.type == "ordered_list", whole_line(self.notes.source, self.line(node)))
            elif node.type == "table":
                yield self.table(node)
            elif node.type == "blockquote":
                self.no_place(node)
                yield from self.blocks(node)
            else:
                self.no_place(node)

    def line(self, node: SyntaxTreeNode) -> int:
        """Return the line of the file a node starts on."""
        return self.first_line + (node.map[0] if node.map else 0)

    def no_place(self, node: SyntaxTreeNode) -> None:
        """Note a block that no output can carry."""
        what, mend = _NO_PLACE.get(node.type, ("something other than words and lists stands here", "write it as words"))
        why = "cards, frames and leaflets are set from paragraphs and lists alone"
        self.notes.add("block", whole_line(self.notes.source, self.line(node)), what, why, mend)

    def item(self, node: SyntaxTreeNode) -> Item:
        """Return a list item: its paragraphs joined, and the items of the lists in it."""
        words: list[Passage] = []
        under: list[Item] = []
        for block in self.blocks(node):
            if isinstance(block, ParagraphBlock):
                words.append(block.words)
            elif isinstance(block, Listing):
                under.extend(block.items)
            else:
                self.notes.add(
                    "heading",
                    block.span,
                    f"the heading `{short(block.text)}` stands in a list",
                    "a heading starts a section of its own",
                    "take out the `#` signs, or move the line to the left edge",
                )
        if not words:
            return Item(Passage((), whole_line(self.notes.source, self.line(node))), tuple(under))
        pieces = list(words[0].pieces)
        for passage in words[1:]:
            pieces += [Piece(" "), *passage.pieces]
        return Item(self.cut(Passage(tuple(pieces), words[0].span)), tuple(under))

    def table(self, node: SyntaxTreeNode) -> Listing:
        """Return a table as a list of its rows under the header, cells joined by a colon."""
        rows = [each for part in node.children for each in part.children]
        items = []
        for row in rows[1:] or rows:
            span = whole_line(self.notes.source, self.line(row))
            cells = [self.words(cell.children[0]).pieces for cell in row.children if cell.children]
            filled = [cell for cell in cells if "".join(piece.text for piece in cell).strip()]
            pieces: list[Piece] = []
            for number, cell in enumerate(filled):
                pieces += [Piece(": " if number == 1 else ", ")] if number else []
                pieces += cell
            items.append(Item(Passage(tuple(pieces), span)))
        span = whole_line(self.notes.source, self.line(node))
        return Listing(tuple(items), numbered=False, span=span, table=True)

    def words(self, node: SyntaxTreeNode) -> Passage:
        """Return the words of an inline node with their place; pictures, links and code in them are noted."""
        span = self.place(node)
        content = node.content
        for tag in _TAG.finditer(content):
            self.note_inline(span, content, tag.group(), "a page tag", f"take out `{short(tag.group())}`")
        return self.cut(Passage(tuple(_joined(self.pieces(node, span))), span))

    def cut(self, words: Passage) -> Passage:
        """Return words without what runs on past all reading, which is noted."""
        return words.part(0, LONGEST) if note_long(self.notes, words.span, len(words.text)) else words

    def place(self, node: SyntaxTreeNode) -> Span:
        """Return the place of an inline node's first line."""
        line = self.line(node)
        first = node.content.split("\n")[0].strip()
        at = line_of(self.notes.source, line).translate(_SPACES).find(first) if first else -1
        if at < 0:
            return whole_line(self.notes.source, line)
        return Span(self.notes.source.path, line, at + 1, at + 1 + len(first))

    def places(self, node: SyntaxTreeNode) -> list[tuple[int, int]]:
        """Return the line and column of each letter of an inline node."""
        found: list[tuple[int, int]] = []
        for line, text in enumerate(node.content.split("\n"), self.line(node)):
            words = text.strip()
            at = line_of(self.notes.source, line).translate(_SPACES).find(words) - text.find(words)
            found += [(line, at + each + 1) if at >= 0 else NOWHERE for each in range(len(text))] + [NOWHERE]
        return found

    def pieces(self, node: SyntaxTreeNode, span: Span) -> Iterator[Piece]:
        """Yield the styled stretches of a line of words."""
        tokens, content, places = node.meta["flat"], node.content, self.places(node)
        strong = emphasis = last = 0
        for at, token in enumerate(tokens):
            strong += {"strong_open": 1, "strong_close": -1}.get(token.type, 0)
            emphasis += {"em_open": 1, "em_close": -1}.get(token.type, 0)
            if token.type in ("softbreak", "hardbreak"):
                yield Piece(" ", strong > 0, emphasis > 0)
            elif token.type == "image":
                file = short(str(token.attrs.get("src", "")).rpartition("/")[2]) or "name.jpg"
                mend = f"write `- Picture: {file}` under the step, set in by three spaces"
                self.note_inline(span, content, "![", "a picture", mend)
            elif token.type == "link_open":
                text = tokens[at + 1].content if at + 1 < len(tokens) else ""
                sign = next((sign for sign in (f"[{text}", f"<{text}") if sign in content), "[")
                self.note_inline(span, content, sign, "a link", f"write the words alone: `{short(text)}`")
            elif token.type == "code_inline":
                mend = f"take out the backquotes round `{short(token.content)}`"
                self.note_inline(span, content, "`", "program code", mend)
            if token.type in ("code_inline", "text") and token.content:
                where = _aligned(token.content, content, last)
                last = where[-1] + 1
                yield Piece(token.content, strong > 0, emphasis > 0, tuple(places[each] for each in where))

    def note_inline(self, span: Span, content: str, sign: str, name: str, mend: str) -> None:
        """Note something in a line of words that paper cannot carry."""
        at = content.find(sign)
        line = span.line + content.count("\n", 0, max(at, 0))
        column = line_of(self.notes.source, line).find(sign) + 1
        place = Span(span.path, line, column, column + len(sign)) if column else span
        why = "cards, frames and leaflets are set from plain words, bold and italics alone"
        self.notes.add("block", place, f"{name} stands among the words", why, mend)


def _aligned(text: str, content: str, start: int) -> list[int]:
    """Return where each letter of a token stands in the content, from `start` on; signs that are unescaped between."""
    at = content.find(text, start)
    if at >= 0:
        return list(range(at, at + len(text)))
    found: list[int] = []
    for letter in text:
        at = content.find(letter, start)
        found.append(at if at >= 0 else min(start, len(content)))
        start = at + 1 if at >= 0 else start
    return found


def _joined(pieces: Iterator[Piece]) -> list[Piece]:
    """Return the pieces with neighbours of one style made one, and runs of spaces made one space."""
    joined: list[Piece] = []
    for piece in map(_tidied, pieces):
        if joined and (joined[-1].strong, joined[-1].emphasis) == (piece.strong, piece.emphasis):
            last = joined[-1]
            joined[-1] = replace(last, text=last.text + piece.text, places=(*last.places, *piece.places))
        else:
            joined.append(piece)
    return joined


def _tidied(piece: Piece) -> Piece:
    """Return a piece with runs of spaces made one, and without letters that nobody sees."""
    letters: list[str] = []
    places: list[tuple[int, int]] = []
    for letter, place in zip(piece.text, piece.places or (NOWHERE,) * len(piece.text), strict=True):
        tidy = re.sub(r"\s", " ", tidied(letter))
        if tidy and not (tidy == " " and letters[-1:] == [" "]):
            letters.append(tidy)
            places.append(place)
    return replace(piece, text="".join(letters), places=tuple(places))
