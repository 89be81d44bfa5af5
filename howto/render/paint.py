"""Paints marks onto a picture with Pillow.

Lines and areas are drawn four times too large on a mask of their own box and brought down, so edges are smooth
and no more of the picture is touched than the mark covers. Marks of one colour that follow each other share
a mask. Text is set letter by letter at its final size with the basic layout engine.
"""

from collections.abc import Iterable, Iterator, Mapping, Sequence
from functools import cache
from itertools import groupby, pairwise
from math import ceil, floor, hypot

from PIL import Image, ImageColor, ImageDraw, ImageFont

from howto.fonts import Face, path, pens, width
from howto.fonts.letters import settable
from howto.model.sheet import Area, Dot, PaintMark, Pixels, Point, Stroke, TextMark

FINE = 4  # how many times too large a mask is drawn
INCLUDED = 0.8  # what the library adds to a slanting shape by counting its edges in: measured
BAND = 1 << 22  # pixels in one mask at most: 4 MB

Box = tuple[int, int, int, int]
Flat = Stroke | Area | Dot


def paint(image: Image.Image, marks: Iterable[PaintMark], pictures: Mapping[str, Image.Image] | None = None) -> None:
    """Paint the marks, in order, onto an RGB image; `pictures` are the photographs by their source."""
    for (colour, opacity), group in groupby(_flattened(marks), key=_layer):
        if colour:
            _lay(image, [mark for mark in group if isinstance(mark, Flat)], colour, opacity)
            continue
        for mark in group:
            if isinstance(mark, TextMark):
                _write(image, mark)
            if isinstance(mark, Pixels):
                _show(image, mark, (pictures or {})[mark.source])


def _flattened(marks: Iterable[PaintMark]) -> Iterator[PaintMark]:
    for mark in marks:
        if isinstance(mark, Dot) and mark.ring_width:
            yield Dot(centre=mark.centre, radius=mark.radius + mark.ring_width, colour=mark.ring_colour)
        yield mark


def _layer(mark: PaintMark) -> tuple[str, float]:
    """Return what marks must have in common to share a mask; words and pictures have nothing."""
    if isinstance(mark, TextMark | Pixels):
        return ("", 1.0)
    return (mark.colour, mark.opacity if isinstance(mark, Area) else 1.0)


# -- lines and areas --


def _lay(image: Image.Image, marks: list[Flat], colour: str, opacity: float) -> None:
    """Lay one colour through the marks' common mask, a band of rows at a time."""
    ink = ImageColor.getrgb(colour)
    for group in (marks,) if opacity == 1.0 else ([mark] for mark in marks):  # see-through marks add up
        left, top, right, bottom = _meet(_around(group), (0, 0, *image.size))
        if left >= right or top >= bottom:
            continue
        rows = max(1, BAND // (FINE * FINE * (right - left)))
        for start in range(top, bottom, rows):
            box = (left, start, right, min(start + rows, bottom))
            mask = _mask(group, box)
            if opacity < 1.0:
                mask = mask.point([round(value * opacity) for value in range(256)])
            image.paste(ink, box, mask)


def _mask(marks: Sequence[Flat], box: Box) -> Image.Image:
    left, top, right, bottom = box
    mask = Image.new("L", ((right - left) * FINE, (bottom - top) * FINE), 0)
    draw = ImageDraw.Draw(mask)

    def fine(points: Iterable[Point]) -> list[Point]:
        return [(round((x - left) * FINE), round((y - top) * FINE)) for x, y in points]

    for mark in marks:
        if isinstance(mark, Area):
            _fill(draw, fine(mark.points))
        elif isinstance(mark, Dot):
            (x, y), r = mark.centre, mark.radius
            (x0, y0), (x1, y1) = fine(((x - r, y - r), (x + r, y + r)))
            draw.ellipse((x0, y0, max(x0, x1 - 1), max(y0, y1 - 1)), fill=255)
        else:
            for line in dashes(mark):
                _line(draw, fine(line), max(1, round(mark.width * FINE)))
    return mask.reduce(FINE)


def _fill(draw: ImageDraw.ImageDraw, points: list[Point]) -> None:
    """Fill an outline; an upright box to the exact pixel, since the library counts the far edge in."""
    across, down = sorted({x for x, _ in points}), sorted({y for _, y in points})
    if len(points) == 4 and len(across) == len(down) == 2 and _is_upright(points):
        draw.rectangle((across[0], down[0], across[1] - 1, down[1] - 1), fill=255)
    else:
        draw.polygon(points, fill=255)


def _is_upright(points: list[Point]) -> bool:
    return all((x0 == x1) != (y0 == y1) for (x0, y0), (x1, y1) in pairwise((*points, points[0])))


def _line(draw: ImageDraw.ImageDraw, points: list[Point], width: int) -> None:
    """Draw a line piece by piece, round where the pieces meet."""
    for start, end in pairwise(points):
        _piece(draw, start, end, width)
    reach = (width - 1) / 2
    for x, y in points[1:-1] if width > 2 else ():
        draw.ellipse((x - 0.5 - reach, y - 0.5 - reach, x - 0.5 + reach, y - 0.5 + reach), fill=255)


def _piece(draw: ImageDraw.ImageDraw, start: Point, end: Point, width: int) -> None:
    """Draw a straight piece of a line; one that runs level or upright to the exact pixel."""
    (x0, y0), (x1, y1) = start, end
    if x0 != x1 and y0 != y1:
        reach = hypot(x1 - x0, y1 - y0)
        over = (width - INCLUDED) / 2 / reach
        ax, ay = (y1 - y0) * over, (x0 - x1) * over
        corners = ((x0 + ax, y0 + ay), (x1 + ax, y1 + ay), (x1 - ax, y1 - ay), (x0 - ax, y0 - ay))
        draw.polygon([(round(x - 0.5), round(y - 0.5)) for x, y in corners], fill=255)
        return
    left, right, top, bottom = min(x0, x1), max(x0, x1), min(y0, y1), max(y0, y1)
    if y0 == y1:
        top, bottom = top - width // 2, top - width // 2 + width
    else:
        left, right = left - width // 2, left - width // 2 + width
    if left < right and top < bottom:
        draw.rectangle((left, top, right - 1, bottom - 1), fill=255)


def _around(marks: Iterable[Flat]) -> Box:
    """Return the whole pixels that the marks can touch."""
    edges = [edge for mark in marks for edge in _reach(mark)]
    across, down = [x for x, _ in edges], [y for _, y in edges]
    return (floor(min(across)) - 1, floor(min(down)) - 1, ceil(max(across)) + 1, ceil(max(down)) + 1)


def _reach(mark: Flat) -> Iterator[Point]:
    points, margin = (
        ((mark.centre,), mark.radius)
        if isinstance(mark, Dot)
        else (mark.points, mark.width if isinstance(mark, Stroke) else 0.0)
    )
    for x, y in points:
        yield (x - margin, y - margin)
        yield (x + margin, y + margin)


def _meet(one: Box, other: Box) -> Box:
    return (max(one[0], other[0]), max(one[1], other[1]), min(one[2], other[2]), min(one[3], other[3]))


def dashes(stroke: Stroke) -> list[list[Point]]:
    """Return the stroke as the polylines that are inked; a solid one is a single line."""
    points = [*stroke.points, stroke.points[0], stroke.points[1]] if stroke.closed else [*stroke.points]
    if not stroke.dash or sum(stroke.dash) <= 0:
        return [points]
    if stroke.closed:
        points.pop()
    inked: list[list[Point]] = []
    turn, left = 0, stroke.dash[0]
    line = [points[0]]
    for (x0, y0), (x1, y1) in pairwise(points):
        span = hypot(x1 - x0, y1 - y0)
        done = 0.0
        while span - done > left:
            done += left
            at = (x0 + (x1 - x0) * done / span, y0 + (y1 - y0) * done / span)
            if turn % 2 == 0:
                inked.append([*line, at])
            line = [at]
            turn += 1
            left = stroke.dash[turn % len(stroke.dash)]
        left -= span - done
        line.append((x1, y1))
    if turn % 2 == 0 and len(line) > 1:
        inked.append(line)
    return inked


# -- words --


@cache
def font(face: Face, size: float) -> ImageFont.FreeTypeFont:
    """Return a face at a size in pixels, set by the basic layout engine."""
    return ImageFont.truetype(path(face), size, layout_engine=ImageFont.Layout.BASIC)


def _write(image: Image.Image, words: TextMark) -> None:
    words = words.model_copy(update={"text": settable(words.text, words.face)})
    wide = width(words.text, words.face) * words.size / 1000
    before = {"left": 0.0, "middle": wide / 2, "right": wide}[words.align]
    if not words.angle:
        draw = ImageDraw.Draw(image)
        x, y = words.at[0] - before, round(words.at[1])
        for pen in pens(words.text, words.face):
            at = (x + pen.x * words.size / 1000, y)
            draw.text(at, pen.letter, fill=words.colour, font=font(pen.face, words.size), anchor="ls")
        return
    tile, origin = _turned(words, wide, before)
    image.paste(ImageColor.getrgb(words.colour), (round(words.at[0]) - origin, round(words.at[1]) - origin), tile)


def _turned(words: TextMark, wide: float, before: float) -> tuple[Image.Image, int]:
    """Return the words turned on a square mask, and where their own point stands on it, across and down."""
    half = ceil(max(before, wide - before) + words.size)
    tile = Image.new("L", (2 * half + 1, 2 * half + 1), 0)
    draw = ImageDraw.Draw(tile)
    for pen in pens(words.text, words.face):
        at = (half - before + pen.x * words.size / 1000, half)
        draw.text(at, pen.letter, fill=255, font=font(pen.face, words.size), anchor="ls")
    if words.angle % 90 == 0:
        return tile.rotate(words.angle), half  # an odd square turns about its middle pixel
    return tile.rotate(words.angle, Image.Resampling.BICUBIC), half


# -- photographs --


def _show(image: Image.Image, pixels: Pixels, picture: Image.Image) -> None:
    left, top, right, bottom = (round(edge) for edge in pixels.box)
    size = (right - left, bottom - top)
    shown = picture.resize(size, Image.Resampling.LANCZOS, box=pixels.crop, reducing_gap=2.0)
    image.paste(shown.convert("RGB"), (left, top))
