from howto.layout.drawing.core import Core
from howto.layout.drawing.look import frame_look
from howto.model.crew import Colours
from howto.shapes import DimensionLine, Disc, Drawing, Label, Level, Polygon, Role, rectangle

LOOK = frame_look(Colours())
SHAPES = (
    Polygon(rectangle(-100, 0, 100, 400), Role.KEEP),
    DimensionLine((-100, 0), (100, 0), "200 mm", -50),
    DimensionLine((-60, 200), (60, 200), "120 mm"),
    Label((0, 300), "Stem"),
    Level((100, 400), "400 mm"),
    Disc((0, 100), 1),
)


def core(scale: float = 2.0, *, drop: int = 0) -> Core:
    return Core(Drawing(SHAPES[: len(SHAPES) - drop], "A box", "A box."), scale, 30.0, LOOK, (50.0, 80.0))


def test_up_in_the_drawing_is_up_in_the_box() -> None:
    assert core().place((-100, 400)) == (50, 80)
    assert core().place((100, 0)) == (450, 880)
    assert core().subject == (50, 80, 450, 880)


def test_outer_dimensions_come_before_inner_ones_and_the_inner_are_worded() -> None:
    outer, inner = core().dimensions
    assert (outer.text, outer.line) == ("200 mm", ((50, 925), (450, 925)))
    assert (inner.text, inner.loose, inner.line) == ("120 mm", False, ((130, 480), (370, 480)))


def test_the_box_leaves_room_for_a_levels_words_above_its_line() -> None:
    left, top, right, bottom = core().box
    assert top == 80 - 33
    assert bottom > 925
    assert left < 50
    assert right > 450


def test_labels_and_levels_are_called_out_from_left_to_right() -> None:
    assert [each.lines for each in core(0.4).callouts(300)] == [("Stem",), ("400 mm",)]
    assert [each.lines for each in core().callouts(300)] == [("400 mm",)]  # at five times the size, the stem's fits in
    assert core().pointed == ((250, 280), (450, 80))


def test_columns_may_keep_above_the_ground() -> None:
    ground = Polygon(rectangle(-300, -50, 300, 0), Role.SOIL)
    with_soil = Core(Drawing((*SHAPES, ground), "A box", "A box."), 2.0, 30.0, LOOK)
    assert with_soil.ground(1000, 0, 1200).limits == ((0, 1200), (0, 785))
    assert core().ground(1000, 0, 1200).limits == ((0, 1200),)


def test_marks_come_shapes_first_and_discs_last() -> None:
    marks = list(core().marks(()))
    assert type(marks[0]).__name__ == "Area"
    assert [type(mark).__name__ for mark in marks[-2:]] == ["Dot", "TextMark"]
    assert not any(type(mark).__name__ == "Dot" for mark in core(drop=1).marks(()))
