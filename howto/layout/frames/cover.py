"""The cover: what the technique makes, in one picture, with its main numbers on a dimension line."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import Final

from howto.colour import TEXT_RATIO, luminance, rgb
from howto.layout.drawing.plane import Box, box_outline
from howto.layout.frames.contrast import under, veil, worst
from howto.layout.frames.crop import Crop, cropped
from howto.layout.frames.look import EDGE, SMALLEST, Board
from howto.layout.frames.parts import Block, block, chain, headline, rule, steps_down
from howto.layout.text import ASCENT, CAP, DESCENT, length
from howto.model.photo import Photograph
from howto.model.sheet import Area, PaintMark, Pixels, Stroke, TextMark
from howto.model.technique import Picture

TITLE_SIZES: Final = steps_down(264, 96, 8)
OVER_SIZE: Final = 42.0
VALUE_SIZES: Final = steps_down(84, 44)
BOLD: Final = 56.0  # px: smaller than this a number would rather stand alone
LABEL_SIZE: Final = 32.0
MOST_NUMBERS: Final = 3


@dataclass(frozen=True, slots=True)
class Number:
    """A number for the chain: what it is and how much."""

    label: str
    value: str


@dataclass(frozen=True, slots=True)
class CoverNumbers:
    """The numbers set to one size, each in its own division of the chain."""

    values: tuple[Block, ...]
    labels: tuple[Block, ...]
    told: tuple[Number, ...] = ()

    @property
    def height(self) -> float:
        """From the top of the values to the foot of the labels."""
        if not self.values:
            return 0.0
        return self.values[0].size * (CAP["head-bold"] + 0.42) + 2 * 22 + max(each.height for each in self.labels)


def set_numbers(numbers: Sequence[Number], width: float) -> CoverNumbers:
    """Return as many of the numbers, from the first, as fit side by side, at one size."""
    counts = range(min(len(numbers), MOST_NUMBERS), 0, -1)
    tries = [(count, size) for count in counts for size in VALUE_SIZES if size >= BOLD or count == 1]
    for count, size in tries:
        room = width / count - 36
        values = tuple(block(each.value, "head-bold", size, 10 * width) for each in numbers[:count])
        labels = tuple(block(each.label, "text", LABEL_SIZE, room, 1.12) for each in numbers[:count])
        if all(each.width <= room for each in (*values, *labels)) and all(len(each.lines) <= 2 for each in labels):
            return CoverNumbers(values, labels, tuple(numbers[:count]))
    return CoverNumbers((), ())


def paint_numbers(sheet: Board, numbers: CoverNumbers, top: float) -> Iterator[PaintMark]:
    """Yield the chain: values above the line, end ticks between them, what they are below it."""
    if not numbers.values:
        return
    left, _, right, _ = sheet.area
    count = len(numbers.values)
    size = numbers.values[0].size
    line = top + size * (CAP["head-bold"] + 0.42)
    yield from chain(sheet, left, right, line, count)
    for number, (value, label) in enumerate(zip(numbers.values, numbers.labels, strict=True)):
        middle = left + (right - left) * (number + 0.5) / count
        at = (middle, line - size * 0.3)
        yield TextMark(text=value.lines[0], at=at, size=size, face="head-bold", colour=sheet.ink, align="middle")
        for row, text in enumerate(label.evened.lines):
            baseline = line + 22 + label.size * (ASCENT + row * label.leading)
            yield TextMark(text=text, at=(middle, baseline), size=label.size, colour=sheet.ink, align="middle")


def cover_title(sheet: Board, title: str, share: float) -> Block | None:
    """Return the title at the largest size at which it takes three lines and `share` of the height at most."""
    left, top, right, bottom = sheet.area
    for size in TITLE_SIZES:
        tried = headline(title, (size,), right - left, 3)
        if tried and tried.height <= share * (bottom - top):
            return tried
    return headline(title, TITLE_SIZES[-1:], right - left, 4)


def paint_over(sheet: Board, over: str, top: float, colour: str) -> Iterator[PaintMark]:
    """Yield the line above the title."""
    size = OVER_SIZE
    while length(over, "head", size) > sheet.area[2] - sheet.area[0] and size > SMALLEST:
        size -= 2
    yield TextMark(text=over, at=(sheet.area[0], top + size * ASCENT), size=size, face="head", colour=colour)


@dataclass(frozen=True, slots=True)
class Design:
    """A cover with a drawing: its title, where that stands, and the box the drawing goes into."""

    title: Block
    title_top: float
    box: Box


def above(sheet: Board, title: Block, numbers: CoverNumbers) -> Design:
    """Return the cover with its title above the drawing."""
    left, top, right, _ = sheet.area
    title_top = top + OVER_SIZE * (ASCENT + DESCENT) + 6
    return Design(title, title_top, (left, title_top + title.height + 24, right, _chain_top(sheet, numbers) - 40))


def _chain_top(sheet: Board, numbers: CoverNumbers) -> float:
    """Return where the chain of numbers begins."""
    return sheet.area[3] - numbers.height


def drawing_cover(sheet: Board, over: str, design: Design, numbers: CoverNumbers) -> Iterator[PaintMark]:
    """Yield the marks of a cover with a drawing, all but the drawing."""
    left, top, _, _ = sheet.area
    yield from paint_over(sheet, over, top, sheet.accent)
    yield from design.title.at(left - design.title.size * 0.03, design.title_top, sheet.ink)
    yield from paint_numbers(sheet, numbers, _chain_top(sheet, numbers))


def cover_crop(sheet: Board, numbers: CoverNumbers, photo: Photograph, picture: Picture) -> Crop:
    """Return the cover's photograph cut to the sheet's width, from its upper edge down to the numbers."""
    foot = round(sheet.area[3] - numbers.height - 34) if numbers.values else sheet.tape
    return cropped(photo, picture, (0.0, 0.0, sheet.width, foot), 0.0)


def photo_cover(
    sheet: Board, over: str, title: Block, numbers: CoverNumbers, photo: Photograph, picture: Picture
) -> tuple[PaintMark, ...]:
    """Return the marks of a cover with a photograph: it fills the sheet down to the numbers, the title stands on it."""
    left, _, right, _ = sheet.area
    crop = cover_crop(sheet, numbers, photo, picture)
    foot = crop.box[3]
    title_top = foot - title.height - 26
    over_top = title_top - OVER_SIZE * (ASCENT + DESCENT) - 2
    area = (left, over_top, right, foot - 4)
    words, cover, strength = ground_for(sheet, photo, crop, area)
    return (
        Pixels(source=picture.file, crop=crop.part, box=crop.box),
        *_veil(sheet, cover, strength, round(over_top - 22), foot),
        Stroke(points=((0, foot), (sheet.width, foot)), width=EDGE, colour=sheet.ink),
        *paint_over(sheet, over, over_top, words),
        *title.at(left - title.size * 0.03, title_top, words),
        *paint_numbers(sheet, numbers, foot + 34),
    )


def ground_for(sheet: Board, photo: Photograph, crop: Crop, area: Box) -> tuple[str, str, float]:
    """Return the colour of words on this part of a photograph, and the weakest veil under them that makes AA.

    TextMark are pale on a veil of the crew's darker colour; dark without a veil where the picture is pale enough by
    itself. Contrast is measured block by block, and the worst block counts (WCAG 2.2, 1.4.3).
    """
    found = under(photo, crop, area)
    pale, dark = sorted((sheet.ground, sheet.ink), key=lambda colour: -luminance(rgb(colour)))
    if worst(found, dark) >= TEXT_RATIO:
        return dark, pale, 0.0
    strength = veil(found, pale, dark, TEXT_RATIO)
    return pale, dark, 1.0 if strength is None else strength


def _veil(sheet: Board, cover: str, strength: float, top: float, bottom: float) -> Iterator[PaintMark]:
    """Yield a sheet of tracing paper laid over the picture from `top` to `bottom`, its edge ruled."""
    if strength:
        yield Area(points=box_outline((0, top, sheet.width, bottom)), colour=cover, opacity=strength)
        yield rule(0, sheet.width, top, cover, EDGE)
