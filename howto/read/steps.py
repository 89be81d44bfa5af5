"""The steps of a technique: a numbered list, with key points, reasons, checks and pictures under each."""

import re
from collections.abc import Sequence
from dataclasses import dataclass, field, replace
from typing import Final

from howto.languages import language_of
from howto.read.blocks import Item, Listing, ParagraphBlock
from howto.read.headings import PICTURE_NOTES, note_named
from howto.read.notes import Notes, listed, nearest, short
from howto.read.passage import Passage, first_sentence, lead_of, split_label
from howto.span import NOWHERE, Located, Span

MOST_STEPS: Final = 99
_MARK: Final = re.compile(
    r"\(?\s*(?P<x>[-+−]?\d{1,9}(?:[.]\d+)?)\s*%?\s*[ ,;x×/]\s*(?P<y>[-+−]?\d{1,9}(?:[.]\d+)?)\s*%?\s*\)?"
    r"\s*(?:[:：–—=]\s*(?P<text>.*))?",
    re.DOTALL,
)


@dataclass(frozen=True, slots=True)
class MarkText:
    """A numbered mark on a picture, in percent from the upper left."""

    x_percent: float
    y_percent: float
    text: str
    span: Span


@dataclass(frozen=True, slots=True)
class PictureText:
    """A picture with the point a crop keeps, its marks, description and credit."""

    file: str
    span: Span
    focus_percent: tuple[float, float] | None = None
    marks: tuple[MarkText, ...] = ()
    alt: str = ""
    credit: str = ""
    said_at: tuple[tuple[str, Span], ...] = ()  # where its description and its credit stand


@dataclass(frozen=True, slots=True)
class StepText:
    """One step, each part with its place."""

    title: str
    text: Passage
    span: Span
    key_points: tuple[Passage, ...] = ()
    reasons: tuple[Passage, ...] = ()
    checks: tuple[Passage, ...] = ()
    pictures: tuple[PictureText, ...] = ()
    words: tuple[Passage, ...] = field(default=(), repr=False)  # the whole of it, as its title and text were parted

    @property
    def located(self) -> Located:
        """The place of every letter of its title and text."""
        first, *more = (each.located for each in self.words)
        text = " ".join((first.text, *(each.text for each in more)))
        places = (*first.places, *(place for each in more for place in (NOWHERE, *each.places)))
        return Located(first.path, text, places)


def read_steps(notes: Notes, blocks: Sequence[ParagraphBlock | Listing], language: str) -> tuple[StepText, ...]:
    """Return the steps of the section; note bullets, paragraphs or a table where the numbers should be."""
    steps: list[StepText] = []
    told = False
    for block in blocks:
        if steps and isinstance(block, Listing) and _are_notes(block, language):
            # Set in too little to stand under its step: it can only mean the one above.
            for item in block.items:
                steps[-1] = _noted(notes, steps[-1], item, language)
            continue
        if steps and isinstance(block, ParagraphBlock) and not told:
            text, words = steps[-1].text.followed_by(block.words), (*steps[-1].words, block.words)
            steps[-1] = replace(steps[-1], text=text, words=words)
            continue
        items = (Item(block.words),) if isinstance(block, ParagraphBlock) else block.items
        if not told and not (isinstance(block, Listing) and block.numbered):
            _note_unnumbered(notes, block, items)
            told = True
        steps += [_step(notes, item, language) for item in items if _has_words(notes, item)]
    if len(steps) > MOST_STEPS:
        notes.add(
            "too-many",
            steps[MOST_STEPS].span,
            f"{len(steps)} steps are written",
            f"a step's number has room for two digits: {MOST_STEPS} steps at the most",
            f"move steps {MOST_STEPS + 1} to {len(steps)} into a file of their own; a card is best taught with seven",
        )
    return tuple(steps[:MOST_STEPS])


def _are_notes(block: Listing, language: str) -> bool:
    """Tell whether a list that is not numbered holds key points, reasons, checks or pictures."""
    if block.numbered or block.table:
        return False
    parted = split_label(block.items[0].words)
    return bool(parted and note_named(parted[0], language))


def _note_unnumbered(notes: Notes, block: ParagraphBlock | Listing, items: tuple[Item, ...]) -> None:
    """Note steps that are not a numbered list, and show the first line as it should be."""
    table = isinstance(block, Listing) and block.table
    kind = "a table stands" if table else "bullets stand" if isinstance(block, Listing) else "a paragraph stands"
    first = next((typed(item.words) for item in items if item.words.text), "**Find the circle from above.**")
    more = ", the next `2.`, and so on" if len(items) > 1 else ""
    notes.add(
        "table" if table else "steps-numbered",
        block.span if isinstance(block, Listing) else block.words.span,
        f"{kind} where the numbered steps should",
        "a step is called by its number, on the card and in the pictures",
        f"start each step with its number: the first line is `1. {short(first, 60)}`{more}",
    )


def _has_words(notes: Notes, item: Item) -> bool:
    """Tell whether a step says anything; note one that does not."""
    if item.words.text.strip():
        return True
    notes.add(
        "step",
        item.words.span,
        "this step says nothing",
        "a number without words leaves a gap on the card",
        "write what to do after the number, or take the line out",
    )
    return False


def _step(notes: Notes, item: Item, language: str) -> StepText:
    """Return one step with what stands under it; the bold lead or the first sentence is its title."""
    words = item.words
    title, end = lead_of(words)
    if not title:
        end = first_sentence(words.text)
        title = " ".join(words.text[:end].split())
    step = StepText(title, words.part(end), words.span, words=(words,))
    for each in item.under:
        step = _noted(notes, step, each, language)
    return step


def _noted(notes: Notes, step: StepText, item: Item, language: str) -> StepText:
    """Return the step with one item under it added, and the items under that."""
    words = item.words
    mark = _mark(notes, words) if step.pictures and re.match(r"[-+−(]?\d", words.text) else None
    if mark is not None:
        return _with_picture(step, replace(step.pictures[-1], marks=(*step.pictures[-1].marks, *mark)))
    parted = split_label(words)
    name = note_named(parted[0], language) if parted else None
    if parted is None or name is None:
        _note_unknown(notes, words, parted[0] if parted else None, language)
        return step
    if not parted[1].text:
        notes.add(
            "step-note",
            words.span,
            f"nothing stands after `{parted[0]}:`",
            "an empty line on the card teaches nothing",
            f"write the {name} after the colon, or take the line out",
        )
        if name == "picture":  # kept, so that its description and marks are not taken for strays
            step = replace(step, pictures=(*step.pictures, PictureText("", words.span)))
    elif name == "picture":
        step = replace(step, pictures=(*step.pictures, _picture(notes, parted[1])))
    elif name in PICTURE_NOTES:
        step = _picture_note(notes, step, name, parted[1])
    elif name == "key point":
        step = replace(step, key_points=(*step.key_points, parted[1]))
    elif name == "reason":
        step = replace(step, reasons=(*step.reasons, parted[1]))
    else:
        step = replace(step, checks=(*step.checks, parted[1]))
    for each in item.under:
        step = _noted(notes, step, each, language)
    return step


def _with_picture(step: StepText, picture: PictureText) -> StepText:
    """Return the step with its last picture changed."""
    return replace(step, pictures=(*step.pictures[:-1], picture))


def _note_unknown(notes: Notes, words: Passage, label: str | None, language: str) -> None:
    """Note a line under a step that starts with no known label."""
    stray = _MARK.fullmatch(words.text.strip())
    if stray is not None and stray["text"]:
        _note_no_picture(notes, words, "a mark")
        return
    known = [names[0] for names in language_of(language).file.notes.values()]
    near = nearest(label, known) if label else None
    notes.add(
        "step-note",
        words.span,
        f"`{short(label or words.text)}` is not one of the labels under a step"
        if label
        else f"`{short(words.text)}` starts with no label",
        f"a line under a step starts with {listed(f'{word}:' for word in known[:4])}; "
        f"under a picture also with {listed(f'{word}:' for word in known[4:])}, or a mark such as `52 38: widest ring`",
        f"write `- {near}: {short(words.text.partition(':')[2].strip(), 60)}`"
        if near
        else f"write `- {known[0]}: {short(words.text, 60)}`",
    )


def _note_no_picture(notes: Notes, words: Passage, kind: str) -> None:
    """Note something that belongs to a picture where there is none."""
    notes.add(
        "step-note",
        words.span,
        f"{kind} stands here without a picture",
        f"{kind} says something about the picture above it",
        "write a line `- Picture: name.jpg` above this one",
    )


def _picture(notes: Notes, words: Passage) -> PictureText:
    """Return a picture by its file name."""
    file = words.text.strip().strip("\"'“”")
    return PictureText(file_inside(notes, file, words.span), words.span)


def file_inside(notes: Notes, file: str, span: Span) -> str:
    """Return a picture's name inside the folder `pictures`, spelled one way; note one that leads out of it."""
    parts = re.split(r"[/\\]", file)
    if "\\" not in file and ".." not in parts and not file.startswith("/"):
        return "/".join(part for part in parts if part not in ("", ".")).removeprefix("pictures/") or file
    name = next((part for part in reversed(parts) if part not in ("", "..")), "name.jpg")
    notes.add(
        "picture",
        span,
        f"`{short(file)}` leads out of the folder `pictures`",
        "all pictures of the shelf stand in that folder",
        f"move the picture there and write its name alone: `{name}`",
    )
    return name


def _picture_note(notes: Notes, step: StepText, name: str, words: Passage) -> StepText:
    """Return the step with the focus, description or credit of its last picture added."""
    if not step.pictures:
        _note_no_picture(notes, words, f"`{name}:`")
        return step
    picture = step.pictures[-1]
    said_at = (*picture.said_at, (name, words.span))
    if name == "alt":
        return _with_picture(step, replace(picture, alt=words.text, said_at=said_at))
    if name == "credit":
        return _with_picture(step, replace(picture, credit=words.text, said_at=said_at))
    focus = focus_of(notes, words.text, words.span)
    return _with_picture(step, replace(picture, focus_percent=focus)) if focus else step


def focus_of(notes: Notes, text: str, span: Span) -> tuple[float, float] | None:
    """Return the point of a picture that a crop keeps, in percent, from `60 40`; note what is none."""
    found = _MARK.fullmatch(text.strip())
    if found is None or found["text"]:
        notes.add(
            "focus",
            span,
            f"`{short(text)}` is not a point on a picture",
            "the point a crop keeps is two numbers: percent from the left, then percent from the top",
            "write two numbers from 0 to 100, such as `focus: 60 40`",
        )
        return None
    x, y = (_number(found[name]) for name in ("x", "y"))
    if 0 <= x <= 100 and 0 <= y <= 100:
        return x, y
    _note_off(notes, "focus", span, x, y, "focus: ", "")
    return None


def _mark(notes: Notes, words: Passage) -> tuple[MarkText, ...]:
    """Return `52 38: widest ring` as a mark; nothing, noted, where it is off the picture or cannot be read."""
    found = _MARK.fullmatch(words.text.strip())
    text = " ".join((found["text"] or "").split()) if found else ""
    if found is None or not text:
        notes.add(
            "mark",
            words.span,
            f"`{short(words.text)}` is not a mark" if found is None else "this mark says nothing",
            "a mark is percent from the left, percent from the top, a colon, and a word or two",
            "write it as `52 38: widest ring`",
        )
        return ()
    x, y = _number(found["x"]), _number(found["y"])
    if 0 <= x <= 100 and 0 <= y <= 100:
        return (MarkText(x, y, text, words.span),)
    _note_off(notes, "mark", words.span, x, y, "", f": {text}")
    return ()


def _note_off(notes: Notes, rule: str, span: Span, x: float, y: float, before: str, after: str) -> None:
    """Note a point that is off the picture, with the nearest one on it."""
    near = tuple(min(100.0, max(0.0, each)) for each in (x, y))
    notes.add(
        rule,
        span,
        f"{x:g} {y:g} is off the picture",
        "both numbers are percent of the picture, from 0 to 100, counted from its upper left corner",
        f"write `{before}{near[0]:g} {near[1]:g}{after}`",
    )


def _number(text: str) -> float:
    """Return a number whose minus sign may be a typographic one."""
    return float(text.replace("−", "-"))


def typed(passage: Passage) -> str:
    """Return a passage as an author types it, bold in stars."""
    return "".join(
        f"**{piece.text}**" if piece.strong and piece.text.strip() else piece.text for piece in passage.pieces
    )
