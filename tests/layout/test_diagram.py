from itertools import combinations, product
from math import dist

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from howto.layout.diagram import Fitted, fit, fitted
from howto.layout.look import Look, frame_look, page_look
from howto.layout.plane import Outline, Point, Segment, box_outline, disc_outline, turned_box
from howto.layout.text import length
from howto.model.crew import Colours
from howto.model.sheet import Art, Words
from howto.shapes import Dimension, Disc, Drawing, Label, Level, Polygon, Role, Shape, rectangle
from tests.support.drawings import DRAWINGS

PAGE = page_look(Colours())
FRAME = frame_look(Colours())


def words_of(art: Art) -> list[Words]:
    return [mark for mark in art.marks if isinstance(mark, Words)]


def place_of(words: Words) -> Outline:
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
        if isinstance(shape, Dimension | Level):
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
        lambda at, run, up, offset: Dimension(at, (at[0] + up * run, at[1] + (1 - up) * run), "900 mm", offset),
        coordinates,
        st.sampled_from([60.0, 200.0, -400.0]),
        st.sampled_from([0, 1]),
        st.sampled_from([0.0, 80.0, -80.0, 1200.0]),
    ),
)


@settings(max_examples=60, deadline=None, suppress_health_check=[HealthCheck.too_slow], derandomize=True)
@given(st.lists(marks, min_size=1, max_size=9, unique_by=lambda each: (type(each), getattr(each, "number", each))))
def test_random_marks_never_touch(shapes: list[Shape]) -> None:
    subject = Polygon(rectangle(-500, 0, 500, 1000), Role.KEEP)
    drawing = Drawing((subject, *shapes), "A square", "A square with marks.")
    art, reasons = fit(drawing, 952, 1000, FRAME)
    found = fitted(drawing, 952, 1000, FRAME)
    if reasons:
        assert found is None
        assert words_of(art) == []
    else:
        assert found is not None
        assert_clear(found, art)
