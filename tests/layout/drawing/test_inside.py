import pytest

from howto.layout.drawing.core import Core
from howto.layout.drawing.look import frame_look
from howto.model.crew import Colours
from howto.model.sheet import Area, TextMark
from howto.shapes import DimensionLine, Drawing, Label, Line, Polygon, Role, Shape, rectangle

LOOK = frame_look(Colours())
BED = Polygon(rectangle(0, 0, 600, 300), Role.KEEP)


def inner(*shapes: Shape, scale: float = 1.0) -> dict[str, tuple[str, ...]]:
    found = Core(Drawing(shapes, "A bed", "A bed."), scale, 30.0, LOOK).inner
    return {label.text: placed.lines for label, placed in found.items()}


def test_a_label_stands_in_the_outline_it_points_into() -> None:
    assert inner(BED, Label((300, 150), "raked out")) == {"raked out": ("raked out",)}


def test_words_too_long_for_one_line_stand_on_two() -> None:
    narrow = Polygon(rectangle(0, 0, 190, 300), Role.KEEP)
    assert inner(narrow, Label((95, 150), "one barrow, 80 L")) == {"one barrow, 80 L": ("one barrow,", "80\u00a0L")}


@pytest.mark.parametrize(
    "shapes",
    [
        (BED, Label((300, 300), "edge")),
        (BED, Label((300, 150), "one"), Label((500, 150), "other")),
        (BED, Label((300, 450), "outside")),
        (BED, Line(((0, 150), (600, 150)), Role.GUIDE), Label((300, 150), "on a line")),
        (Polygon(BED.points, Role.WOOD), Label((300, 150), "on dark wood")),
        (Polygon(rectangle(0, 0, 90, 40), Role.KEEP), Label((45, 20), "more than there is room for")),
    ],
    ids=["on an edge", "two in one outline", "outside", "on a line", "dark", "too small"],
)
def test_other_labels_stay_beside_the_drawing(shapes: tuple[Shape, ...]) -> None:
    assert inner(*shapes) == {}


def test_words_move_towards_the_middle_to_clear_a_line() -> None:
    shapes = (BED, DimensionLine((0, 0), (0, 300), "300 mm", -60), Label((110, 150), "raked out"))
    (placed,) = Core(Drawing(shapes, "A bed", "A bed."), 1.0, 30.0, LOOK).inner.values()
    assert placed.centre[0] > 110
    assert placed.box[0] > 60


def test_a_line_that_the_outline_hides_is_no_hindrance() -> None:
    heap = Polygon(rectangle(250, 100, 350, 200), Role.MULCH)
    assert inner(heap, BED, Label((300, 150), "raked out")) == {"raked out": ("raked out",)}
    assert (
        inner(BED, Line(rectangle(250, 100, 350, 200), Role.GUIDE, closed=True), Label((280, 150), "raked out")) == {}
    )


def test_words_on_hatching_have_a_ground_of_their_own() -> None:
    hatched = Core(Drawing((Polygon(BED.points, Role.MULCH), Label((300, 150), "compost")), "A", "A."), 1.0, 30.0, LOOK)
    marks = list(hatched.marks(()))
    at = next(n for n, mark in enumerate(marks) if isinstance(mark, TextMark) and mark.text == "compost")
    ground = marks[at - 1]
    assert isinstance(ground, Area)
    assert ground.colour == LOOK.ground
