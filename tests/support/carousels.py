"""A small carousel to test layouts with: the sample technique, a ball to draw, and pictures with marks."""

from collections.abc import Sequence
from dataclasses import replace
from typing import Any

from howto.findings import Finding
from howto.layout.frames.carousel import frames
from howto.layout.frames.look import Ratio
from howto.model.figure import Figure
from howto.model.photo import Photograph
from howto.model.sheet import Frame
from howto.model.technique import Mark, Picture, Step
from howto.shapes import DimensionLine, Drawing, Label, Line, Polygon, Role, arc
from tests.support import sample
from tests.support.photos import photograph, shipped

BALL = Drawing(
    shapes=(
        Polygon(arc((0.0, 490.0), 490.0), Role.REMOVE),
        Polygon(arc((0.0, 490.0), 450.0), Role.KEEP),
        Line(((-600.0, 0.0), (600.0, 0.0)), Role.GROUND),
        DimensionLine((-450.0, 0.0), (450.0, 0.0), "900 mm", -90.0),
        Label((330.0, 820.0), "40 mm off"),
    ),
    caption="A ball in section",
    alt="A ball 900 mm across on the ground, 40 mm hatched round it.",
)

# the same ball, with words in its caption that tie it to every step of the sample
SPEAKING = replace(BALL, caption="The circle, belt, ribs and quarter of a ball clipped, brushed and cleared")


class Empty(sample.BallMeasures):
    """Measures that hold nothing."""

    def given(self) -> dict[str, Any]:
        """Return nothing."""
        return {}


def laid(
    ratio: Ratio = "4x5",
    photos: dict[str, Photograph] | None = None,
    drawings: tuple[Drawing, ...] = (BALL,),
    figures: Sequence[Figure] = sample.FIGURES,
    **changes: Any,
) -> tuple[tuple[Frame, ...], tuple[Finding, ...]]:
    return frames(sample.ready(figures, drawings, **changes), photos or {}, ratio)


def with_picture(
    *marks: tuple[float, float], focus: tuple[float, float] = (50.0, 50.0), **more: str
) -> tuple[Step, ...]:
    picture = Picture(
        file="p.jpg",
        focus_percent=focus,
        marks=tuple(Mark(x_percent=x, y_percent=y, text=f"spot {n}") for n, (x, y) in enumerate(marks, 1)),
        **more,
    )
    return (sample.STEPS[0].model_copy(update={"pictures": (picture,)}), *sample.STEPS[1:])


def pictures(number: int = 0) -> dict[str, Photograph]:
    return {"p.jpg": photograph(shipped(number), full=2)}
