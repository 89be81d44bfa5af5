"""Cuts a photograph to a box round its focus, so that every mark stays in; says which one cannot."""

from dataclasses import dataclass

from howto.layout.drawing.plane import Box
from howto.model.photo import Photograph
from howto.model.sheet import Point
from howto.model.technique import Picture


@dataclass(frozen=True, slots=True)
class Crop:
    """The part of a photograph that is shown, in its own pixels, and the box on the frame that it fills."""

    part: Box
    box: Box

    @property
    def scale(self) -> float:
        """How many frame pixels one pixel of the photograph becomes."""
        return (self.box[2] - self.box[0]) / (self.part[2] - self.part[0])

    def at(self, photo: Photograph, percent: Point) -> Point:
        """Return where a point, in percent of the whole photograph, falls on the frame."""
        x, y = photo.width * percent[0] / 100, photo.height * percent[1] / 100
        return (self.box[0] + (x - self.part[0]) * self.scale, self.box[1] + (y - self.part[1]) * self.scale)


def cropped(photo: Photograph, picture: Picture, box: Box, edge: float) -> Crop:
    """Return the largest cut of the box's shape, centred on the focus, moved no further than the marks ask.

    `edge` is the room in frame pixels that each mark keeps from the cut. Where the marks lie too far apart for
    all of them, the cut centres on their middle.
    """
    wide, high = box[2] - box[0], box[3] - box[1]
    scale = max(wide / photo.width, high / photo.height)
    part_w, part_h = min(photo.width, wide / scale), min(photo.height, high / scale)
    focus_x, focus_y = picture.focus_percent
    left = _start(photo.width, part_w, focus_x, [mark.x_percent for mark in picture.marks], edge / scale)
    top = _start(photo.height, part_h, focus_y, [mark.y_percent for mark in picture.marks], edge / scale)
    return Crop((left, top, left + part_w, top + part_h), box)


def _start(whole: float, part: float, focus: float, marks: list[float], edge: float) -> float:
    """Return where a stretch of `part` begins along `whole`, centred on the focus with the marks inside."""
    start = whole * focus / 100 - part / 2
    if marks:
        first, last = whole * min(marks) / 100, whole * max(marks) / 100
        low, high = last + edge - part, first - edge
        start = (first + last - part) / 2 if low > high else min(max(start, low), high)
    return min(max(start, 0.0), whole - part)


def lost(photo: Photograph, picture: Picture, crop: Crop) -> int | None:
    """Return the number (from 1) of the first mark that the cut leaves out, or None."""
    left, top, right, bottom = crop.box
    for number, mark in enumerate(picture.marks, start=1):
        x, y = crop.at(photo, (mark.x_percent, mark.y_percent))
        if not (left <= x <= right and top <= y <= bottom):
            return number
    return None


def pixels_needed(photo: Photograph, crop: Crop) -> tuple[int, int] | None:
    """Return the size the photograph would need to fill its box pixel for pixel; None where it has it."""
    full_scale = crop.scale * photo.width / photo.full_width
    if full_scale <= 1.0 + 1e-9:
        return None
    return (round(photo.full_width * full_scale + 0.5), round(photo.full_height * full_scale + 0.5))
