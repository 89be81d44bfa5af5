"""Puts a photograph into a frame: cut round its focus, its marks as discs on leaders, what is lost as findings."""

from collections.abc import Iterator
from dataclasses import dataclass

from howto.layout.drawing.plane import Box
from howto.layout.frames.crop import Crop, cropped, lost, pixels_needed
from howto.layout.frames.look import Board
from howto.layout.frames.marks import SIZES, Circle, MarkCallout, crowded, place
from howto.layout.frames.parts import disc
from howto.model.photo import Photograph
from howto.model.sheet import Dot, PaintMark, Pixels, Stroke
from howto.model.technique import Picture

SUBJECT_SHARE = 0.10  # of the shown picture's smaller side: the circle round the focus that discs leave free


@dataclass(frozen=True, slots=True)
class Trouble:
    """What would not work with a picture: which mark (0 for the picture itself), what was seen, and what to do."""

    rule: str
    mark: int
    what: str
    why: str
    mend: str


@dataclass(frozen=True, slots=True)
class PlacedPhoto:
    """A photograph placed: its cut and its discs."""

    crop: Crop
    callouts: tuple[MarkCallout, ...]


def show(
    photo: Photograph, picture: Picture, box: Box, free: Box, ratio: str
) -> tuple[PlacedPhoto | None, tuple[Trouble, ...]]:
    """Return the photograph cut to `box` with its discs inside `free`, or what stands in the way."""
    crop = cropped(photo, picture, box, SIZES.point + SIZES.air)
    small = tuple(too_small(photo, picture, crop, ratio))
    gone = lost(photo, picture, crop)
    if gone is not None:
        return None, (_gone(picture, gone, ratio),)
    points = [crop.at(photo, (mark.x_percent, mark.y_percent)) for mark in picture.marks]
    pair = crowded(points)
    if pair is not None:
        return None, (_crowded(picture, pair),)
    callouts = place(points, free, subject(photo, picture, crop))
    if callouts is None:
        return None, (_no_room(picture, ratio),)
    return PlacedPhoto(crop, callouts), small


def subject(photo: Photograph, picture: Picture, crop: Crop) -> Circle:
    """Return the circle on the frame that discs leave free: round the author's focus."""
    x, y = crop.at(photo, picture.focus_percent)
    least = min(crop.box[2] - crop.box[0], crop.box[3] - crop.box[1])
    return (x, y, least * SUBJECT_SHARE)


def paint_photo(sheet: Board, picture: Picture, shown: PlacedPhoto) -> Iterator[PaintMark]:
    """Yield the photograph, its leaders and its discs."""
    yield Pixels(source=picture.file, crop=shown.crop.part, box=shown.crop.box)
    for width, colour in ((10.0, sheet.ground), (4.0, sheet.ink)):
        for each in shown.callouts:
            yield Stroke(points=(each.at, each.disc), width=width, colour=colour)
    for each in shown.callouts:
        yield Dot(centre=each.at, radius=SIZES.point - 4, colour=sheet.accent, ring_width=4.0, ring_colour=sheet.ground)
    for each in shown.callouts:
        yield from disc(sheet, each.disc, each.number, SIZES.disc - 4)


def too_small(photo: Photograph, picture: Picture, crop: Crop, ratio: str) -> Iterator[Trouble]:
    """Yield what to say of a photograph with too few pixels for its box."""
    need = pixels_needed(photo, crop)
    if need is None:
        return
    yield Trouble(
        rule="fit.picture-small",
        mark=0,
        what=f"`{picture.file}`, {photo.full_width} × {photo.full_height} px, is small for the {_named(ratio)} frame",
        why=f"its cut has to fill {crop.box[2] - crop.box[0]:.0f} × {crop.box[3] - crop.box[1]:.0f} pixels, so it "
        f"would be blown up {crop.scale * photo.width / photo.full_width:.1f} times and look soft",
        mend=f"use a picture of at least {need[0]} × {need[1]} pixels",
    )


def _gone(picture: Picture, number: int, ratio: str) -> Trouble:
    """Return what to say of a mark that the cut leaves out."""
    mark = picture.marks[number - 1]
    xs = [each.x_percent for each in picture.marks]
    ys = [each.y_percent for each in picture.marks]
    spread = f"the marks of `{picture.file}` are spread over {max(xs) - min(xs):g} % of its width and "
    return Trouble(
        rule="fit.mark",
        mark=number,
        what=f"mark {number} ({mark.text}) falls outside the {_named(ratio)} frame",
        why=spread + f"{max(ys) - min(ys):g} % of its height: more than this frame can show at once",
        mend=f"take out mark {number}, or take the photograph from further back, so that the marks stand closer",
    )


def _crowded(picture: Picture, pair: tuple[int, int]) -> Trouble:
    """Return what to say of two marks on one spot."""
    one, other = (picture.marks[number - 1].text for number in pair)
    return Trouble(
        rule="fit.mark",
        mark=pair[1],
        what=f"marks {pair[0]} ({one}) and {pair[1]} ({other}) point at the same spot",
        why=f"on the frame their points need {2 * SIZES.point + SIZES.air:.0f} pixels between them to be told apart",
        mend=f"take out mark {pair[1]}, or move it away from mark {pair[0]}",
    )


def _no_room(picture: Picture, ratio: str) -> Trouble:
    """Return what to say of a picture with more marks than discs can be placed for."""
    last = len(picture.marks)
    return Trouble(
        rule="fit.mark",
        mark=last,
        what=f"there is no free place for the numbers of the {last} marks in the {_named(ratio)} frame",
        why="a number may not cover another mark, nor what the picture is about, and leaders may not cross",
        mend=f"take out mark {last}",
    )


def _named(ratio: str) -> str:
    """Return a ratio as people write it."""
    return ratio.replace("x", ":")
