from dataclasses import replace
from itertools import combinations, product
from math import dist

import pytest
from hypothesis import given
from hypothesis import strategies as st

from howto.layout.drawing import diagram
from howto.layout.drawing.diagram import fit, fitted
from howto.layout.drawing.look import Look, frame_look, page_look
from howto.layout.drawing.plane import Outline, Point, Segment, box_outline, disc_outline, turned_box
from howto.layout.drawing.search import Fitted
from howto.layout.text import length
from howto.model.crew import Colours
from howto.model.sheet import Area, Art, Stroke, TextMark
from howto.shapes import DimensionLine, Disc, Drawing, Label, Level, Line, Polygon, Role, Shape, rectangle
from tests.support.drawings import DRAWINGS, ball, blade, hedge

PAGE = page_look(Colours())
FRAME = frame_look(Colours())


def words_of(art: Art) -> list[TextMark]:
    return [mark for mark in art.marks if isinstance(mark, TextMark)]


def place_of(words: TextMark) -> Outline:
    """The ink of a line of words, from its capitals to its baseline."""
    wide = length(words.text, words.face, words.size)
    along = {"left": wide / 2, "middle": 0.0, "right": -wide / 2}[words.align]
    rise = words.size * 0.33
    if words.angle == 90:
        centre = (words.at[0] - rise, words.at[1] - along)
    else:
        assert words.angle == 0
        centre = (words.at[0] + along, words.at[1] - rise)
    return turned_box(centre, wide / 2, rise, words.angle)


def sides(point: Point, segment: Segment) -> float:
    (ax, ay), (bx, by) = segment
    return (bx - ax) * (point[1] - ay) - (by - ay) * (point[0] - ax)


def crosses(one: Segment, other: Segment) -> bool:
    return sides(other[0], one) * sides(other[1], one) < -1e-6 and sides(one[0], other) * sides(one[1], other) < -1e-6


def cuts(segment: Segment, outline: Outline) -> bool:
    edges = list(zip(outline, (*outline[1:], outline[0]), strict=True))
    return any(crosses(segment, edge) for edge in edges) or all(sides(segment[0], edge) > 1e-6 for edge in edges)


def apart(one: Outline, other: Outline) -> bool:
    """Two upright boxes do not overlap."""
    a, b = bounds(one), bounds(other)
    return a[2] <= b[0] + 1e-6 or b[2] <= a[0] + 1e-6 or a[3] <= b[1] + 1e-6 or b[3] <= a[1] + 1e-6


def bounds(outline: Outline) -> tuple[float, float, float, float]:
    across, down = [x for x, _ in outline], [y for _, y in outline]
    return (min(across), min(down), max(across), max(down))


def assert_clear(found: Fitted, art: Art) -> None:
    """No words over words or discs, no leader through either, no leaders crossing, nothing out of the box."""
    numbers = {str(disc.number) for disc in found.core.discs or ()}
    words = [each for each in words_of(art) if each.face != "head-bold"]
    assert {each.text for each in words_of(art) if each.face == "head-bold"} == numbers
    boxes = [place_of(each) for each in words]
    for (i, one), (j, other) in combinations(enumerate(boxes), 2):
        assert apart(one, other), f"{words[i].text!r} lies over {words[j].text!r}"
    discs = [disc_outline(each.centre, each.radius) for each in found.core.discs or ()]
    for first, second in combinations(found.core.discs or (), 2):
        assert dist(first.centre, second.centre) >= first.radius + second.radius
    for box, disc in product(boxes, discs):
        assert apart(box, box_outline(bounds(disc))) or not any(
            cuts(edge, disc) for edge in zip(box, (*box[1:], box[0]), strict=True)
        )
    leaders = [each.leader for each in found.callouts]
    for one_leader, other_leader in combinations(leaders, 2):
        assert not any(crosses(a, b) for a, b in product(one_leader, other_leader))
    for placed, box in product(found.callouts, boxes):
        assert not any(cuts(piece, box) for piece in placed.leader)
    for x, y in (point for box in (*boxes, *discs) for point in box):
        assert -1e-6 <= x <= art.width + 1e-6
        assert -1e-6 <= y <= art.height + 1e-6


@pytest.mark.parametrize("name", sorted(DRAWINGS))
@pytest.mark.parametrize(("width", "height", "look"), [(124, 80, PAGE), (952, 1000, FRAME), (952, 700, FRAME)])
def test_test_drawings_fit_without_touching(name: str, width: float, height: float, look: Look) -> None:
    drawing = DRAWINGS[name]()
    art, reasons = fit(drawing, width, height, look)
    assert reasons == ()
    found = fitted(drawing, width, height, look)
    assert found is not None
    if look.page:
        found = found.moved(0, -found.box[1])
    assert_clear(found, art)
    texts = " ".join(each.text for each in words_of(art)).replace("\u00a0", " ")
    for shape in drawing.shapes:
        if isinstance(shape, DimensionLine | Level):
            assert shape.text in texts


coordinates = st.tuples(st.integers(-500, 500), st.integers(0, 1000)).map(lambda each: (float(each[0]), float(each[1])))
phrases = st.sampled_from(
    ["Stem", "Widest ring", "40 mm off", "Set this first, from above", "What comes off this year", "Keep"]
)
marks = st.one_of(
    st.builds(Label, coordinates, phrases),
    st.builds(Level, coordinates, st.sampled_from(["520 mm", "1.50 m finished"])),
    st.builds(Disc, coordinates, st.integers(1, 12)),
    st.builds(
        lambda at, run, up, offset: DimensionLine(at, (at[0] + up * run, at[1] + (1 - up) * run), "900 mm", offset),
        coordinates,
        st.sampled_from([60.0, 200.0, -400.0]),
        st.sampled_from([0, 1]),
        st.sampled_from([0.0, 80.0, -80.0, 1200.0]),
    ),
)


@given(st.lists(marks, min_size=1, max_size=8, unique_by=lambda each: (type(each), getattr(each, "number", each))))
def test_random_marks_never_touch(shapes: list[Shape]) -> None:
    subject = Polygon(rectangle(-500, 0, 500, 1000), Role.KEEP)
    found = fitted(Drawing((subject, *shapes), "A square", "A square with marks."), 952, 1000, FRAME)
    if found:
        assert_clear(found, diagram._art(found, 952, 1000))


def test_nearly_all_random_marks_find_a_place() -> None:
    """Twelve labels and discs spread over a square, from a fixed list of numbers, all fit."""
    seeds = [(n * 37 % 101 / 101 * 1000 - 500, n * 53 % 97 / 97 * 1000) for n in range(1, 13)]
    shapes: tuple[Shape, ...] = (
        Polygon(rectangle(-500, 0, 500, 1000), Role.KEEP),
        *(Label(at, f"Part {n}, as it should be") for n, at in enumerate(seeds[:8], start=1)),
        *(Disc(at, n) for n, at in enumerate(seeds[8:], start=1)),
    )
    found = fitted(Drawing(shapes, "A square", "A square with marks."), 952, 1000, FRAME)
    assert found is not None
    assert len(found.callouts) == 8
    assert_clear(found, diagram._art(found, 952, 1000))


# -- scales --


@pytest.mark.parametrize(
    ("high", "box", "scale"),
    [(30, 80, "2:1"), (75, 80, "1:1"), (900, 50, "1:20"), (900, 80, "1:20"), (1640, 80, "1:25"), (30_000, 80, "1:400")],
)
def test_a_page_gets_the_largest_scale_that_a_scale_rule_shows(high: float, box: float, scale: str) -> None:
    drawing = Drawing((Line(((0, 0), (0, high)), Role.CENTRE),), "A line", "A line.")
    art, reasons = fit(drawing, 124, box, PAGE)
    assert reasons == ()
    assert art.scale == scale


def test_a_millimetre_on_the_page_is_a_millimetre_at_that_scale() -> None:
    drawing = Drawing((Line(((0, 0), (0, 900)), Role.KEEP),), "A line", "A line 900 mm tall.")
    art, _ = fit(drawing, 124, 80, PAGE)
    (stroke,) = art.marks
    assert isinstance(stroke, Stroke)
    (x0, y0), (x1, y1) = stroke.points
    assert x0 == x1
    assert y0 - y1 == pytest.approx(45)  # 900 mm at 1:20
    assert y1 < y0  # up in the drawing is up on the page


def test_a_page_is_no_higher_than_its_drawing_and_a_picture_keeps_its_box() -> None:
    art, _ = fit(ball(), 124, 80, PAGE)
    assert art.width == 124
    assert 60 < art.height < 70
    framed, _ = fit(ball(), 952, 1000, FRAME)
    assert (framed.width, framed.height, framed.scale) == (952, 1000, "")


def test_a_year_line_has_no_scale() -> None:
    bar = Drawing((Polygon(rectangle(0, 0, 365, 30), Role.KEEP),), "A year", "A year.", true=False)
    art, reasons = fit(bar, 124, 60, PAGE)
    assert (art.scale, reasons) == ("", ())
    area = next(mark for mark in art.marks if isinstance(mark, Area))
    assert max(x for x, _ in area.points) - min(x for x, _ in area.points) > 110


def test_words_keep_their_size_while_the_box_allows() -> None:
    art, _ = fit(blade(), 952, 1000, FRAME)
    assert {words.size for words in words_of(art)} == {38}
    small, _ = fit(hedge(), 700, 700, FRAME)
    assert min(words.size for words in words_of(small)) >= 28


def test_a_drawing_whose_words_cannot_fit_shows_its_shapes_and_says_why() -> None:
    art, reasons = fit(ball(), 220, 200, FRAME)
    assert reasons == (
        "9 labels and 3 numbered marks find no place without touching in 220 × 200 px; "
        "the longest is “40 mm off all round, in two light passes”",
    )
    assert words_of(art) == []
    assert any(isinstance(mark, Area) for mark in art.marks)
    for mark in art.marks:
        for x, y in mark.points if isinstance(mark, Stroke | Area) else ():
            assert -1 <= x <= 221
            assert -1 <= y <= 201


def test_a_drawing_too_large_for_any_scale_says_so() -> None:
    far = Drawing((Line(((0, 0), (1e7, 0)), Role.WIRE), Label((0, 0), "Pole")), "A line", "A line 10 km long.")
    art, reasons = fit(far, 124, 80, PAGE)
    assert reasons == ("1 label finds no place without touching in 124 × 80 mm; the longest is “Pole”",)
    assert art.scale == ""


def test_discs_that_crowd_one_point_say_so() -> None:
    crowd = Drawing(tuple(Disc((0, 0), number) for number in range(1, 60)), "A point", "A point.")
    _, reasons = fit(crowd, 952, 1000, FRAME)
    assert reasons == ("59 numbered marks find no place without touching in 952 × 1000 px",)


def test_an_empty_drawing_is_an_empty_picture() -> None:
    art, reasons = fit(Drawing((), "Nothing", "Nothing."), 952, 1000, FRAME)
    assert (art.marks, reasons) == ((), ())


def test_the_same_drawing_gives_the_same_marks() -> None:
    for width, height, look in ((952, 1000, FRAME), (124, 80, PAGE)):
        first, _ = fit(hedge(), width, height, look)
        fit.cache_clear()
        assert fit(hedge(), width, height, look) == (first, ())


def test_a_short_chain_inside_a_drawing_is_labelled_apart() -> None:
    shapes: tuple[Shape, ...] = (
        Polygon(rectangle(0, 0, 1000, 1000), Role.WALL),
        *(DimensionLine((500, at), (500, at + 20), "20 mm") for at in range(0, 1000, 20)),
    )
    found = fitted(Drawing(shapes[:5], "A wall", "A wall."), 952, 1000, FRAME)
    assert found is not None
    assert_clear(found, diagram._art(found, 952, 1000))
    assert any(each.loose for each in found.core.dimensions)


def test_an_elastic_drawing_is_drawn_higher_until_it_fills_its_room() -> None:
    bar = Drawing((Polygon(rectangle(0, 0, 1000, 100), Role.KEEP),), "A bar", "A bar.", true=False)
    flat, _ = fit(bar, 952, 500, FRAME)
    high, _ = fit(replace(bar, elastic=True), 952, 500, FRAME)
    assert (round(_tall(flat)), round(_tall(high))) == (94, 187)
    assert round(_wide(high)) == round(_wide(flat))


def test_an_elastic_drawing_without_room_above_stays_as_it_is() -> None:
    bar = Drawing((Polygon(rectangle(0, 0, 1000, 100), Role.KEEP),), "A bar", "A bar.", true=False)
    assert fit(replace(bar, elastic=True), 952, 104, FRAME) == fit(bar, 952, 104, FRAME)


def _tall(art: Art) -> float:
    ys = [y for mark in art.marks if isinstance(mark, Area) for _, y in mark.points]
    return max(ys) - min(ys)


def _wide(art: Art) -> float:
    xs = [x for mark in art.marks if isinstance(mark, Area) for x, _ in mark.points]
    return max(xs) - min(xs)
