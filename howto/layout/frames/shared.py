"""What the frames of one carousel share while they are made, and what each of them becomes."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import Any

from howto.findings import Finding
from howto.languages.form import Labels
from howto.layout.drawing.diagram import fit
from howto.layout.drawing.look import Look
from howto.layout.drawing.plane import Box
from howto.layout.frames.look import Board
from howto.model.family import Rule
from howto.model.photo import Photograph
from howto.model.ready import Ready
from howto.model.sheet import Area, Art, Dot, PaintMark, Pixels, Point, Stroke, TextMark
from howto.model.technique import AnyTechnique
from howto.shapes import Drawing


@dataclass(frozen=True, slots=True)
class Carousel:
    """One carousel to lay out."""

    ready: Ready
    photos: Mapping[str, Photograph]
    sheet: Board
    look: Look
    say: Labels

    @property
    def technique(self) -> AnyTechnique:
        """The technique, its `{words}` filled."""
        return self.ready.technique


@dataclass(frozen=True, slots=True)
class FramePage:
    """A frame all but its tape and title block: `alt` in sentences, the most important first, `name` for the tape."""

    sheet: Board
    marks: tuple[PaintMark, ...]
    alt: tuple[str, ...]
    credit: str = ""
    name: str = ""


Made = tuple[FramePage, tuple[Finding, ...]]


def finding(rule: Rule[Any], technique: AnyTechnique, where: str, what: str, why: str, mend: str) -> Finding:
    """Return the finding of a rule at a field of the technique."""
    return rule.finding(technique.spot(where), what, why, mend)


def drawn(job: Carousel, drawing: Drawing, box: Box) -> tuple[tuple[PaintMark, ...], tuple[str, ...]]:
    """Return a drawing's marks in a box of the frame, and why its labels would not fit, if they would not."""
    art, reasons = fit(drawing, box[2] - box[0], box[3] - box[1], job.look)
    return tuple(moved(art, box[0], box[1])), reasons


def moved(art: Art, right: float, down: float) -> Iterator[PaintMark]:
    """Yield the marks of a fitted drawing, moved to where it stands on the frame."""

    def there(point: Point) -> Point:
        return (point[0] + right, point[1] + down)

    for mark in art.marks:
        if isinstance(mark, Stroke | Area):
            yield mark.model_copy(update={"points": tuple(there(point) for point in mark.points)})
        elif isinstance(mark, Dot):
            yield mark.model_copy(update={"centre": there(mark.centre)})
        elif isinstance(mark, TextMark):
            yield mark.model_copy(update={"at": there(mark.at)})
        elif isinstance(mark, Pixels):
            left, top = there(mark.box[:2])
            yield mark.model_copy(update={"box": (left, top, *there(mark.box[2:]))})
