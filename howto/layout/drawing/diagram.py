"""Fits a drawing to a box: chooses its scale and deals its labels to the columns beside it.

On paper the scale is one that a scale rule shows; in a picture it is the largest that leaves the words room.
"""

from dataclasses import replace
from functools import lru_cache

from howto.layout.drawing.core import Core
from howto.layout.drawing.look import Look
from howto.layout.drawing.search import Fitted, Search
from howto.layout.text import length
from howto.model.sheet import Art
from howto.shapes import DimensionLine, Disc, Drawing, Label, Level, Line, Polygon, higher

STRETCHES = (1.2, 1.4, 1.6, 1.8, 2.0)  # how much higher an elastic drawing may be
KEPT_WORTH = 0.95  # what it keeps of its worth at least when it is stretched


@lru_cache(maxsize=256)  # frames of one carousel ask for the same drawing again
def fit(drawing: Drawing, width: float, height: float, look: Look) -> tuple[Art, tuple[str, ...]]:
    """Return the drawing fitted to a box, and the reasons why its words would not fit, if they would not.

    In a picture the art fills the box; on a page it is no higher than it needs. With a reason, the art holds
    the shapes alone: words never overlap and are never cut.
    """
    best = best_fit(drawing, width, height, look)
    if best is None:
        return _bare(drawing, width, height, look)
    if not look.page:
        return _art(best, width, height), ()
    _, top, _, bottom = best.box
    return _art(best.moved(0.0, -top), width, bottom - top), ()


def best_fit(drawing: Drawing, width: float, height: float, look: Look) -> Fitted | None:
    """Return the best way of fitting a drawing; an elastic one is higher than it is where that costs it no width."""
    best = fitted(drawing, width, height, look)
    if best is None or not drawing.elastic:
        return best
    least = best.worth * KEPT_WORTH
    for factor in STRETCHES:
        tried = fitted(higher(drawing, factor), width, height, look, least)
        if tried is None:
            break
        best = tried
    return best


def fitted(drawing: Drawing, width: float, height: float, look: Look, least: float = 0.0) -> Fitted | None:
    """Return the best way of fitting the drawing, or None where its words find no place that is worth more."""
    best = Search(drawing, (width, height), look).best(least)
    if best is None:
        return None
    left, _, right, _ = best.box
    return best.moved((width - right - left) / 2, (height - best.core.box[3] - best.core.box[1]) / 2)


def _art(found: Fitted, width: float, height: float) -> Art:
    core = found.core
    return Art(
        width=width,
        height=height,
        marks=tuple(core.marks(found.callouts)),
        caption=core.drawing.caption,
        alt=core.drawing.alt,
        scale=_named(core.scale) if core.look.page and core.drawing.true else "",
    )


def _named(scale: float) -> str:
    """Return a scale as a drawing prints it: 1:20, 2:1."""
    return f"{scale:g}:1" if scale > 1 else f"1:{1 / scale:g}"


def _bare(drawing: Drawing, width: float, height: float, look: Look) -> tuple[Art, tuple[str, ...]]:
    """Return the shapes alone, at any scale that fits, with the reason why the words would not."""
    shapes = tuple(shape for shape in drawing.shapes if isinstance(shape, Line | Polygon))
    bare = replace(drawing, shapes=shapes, true=False)
    found = fitted(bare, width, height, look) or Fitted(Core(bare, 0.0, look.small, look), (), 0.0)
    words = [shape.text for shape in drawing.shapes if isinstance(shape, DimensionLine | Level | Label)]
    discs = sum(isinstance(shape, Disc) for shape in drawing.shapes)
    return _art(found, width, height), (_reason(words, discs, f"{width:.0f} × {height:.0f}", look),)


def _reason(words: list[str], discs: int, box: str, look: Look) -> str:
    parts = [
        f"{count} {name}{'s' if count > 1 else ''}"
        for count, name in ((len(words), "label"), (discs, "numbered mark"))
        if count
    ]
    finds = "finds" if len(words) + discs == 1 else "find"
    said = f"{' and '.join(parts)} {finds} no place without touching in {box} {'mm' if look.page else 'px'}"
    longest = max(words, key=lambda text: length(text, "text", look.small), default="")
    return f"{said}; the longest is “{longest}”" if longest else said
