from datetime import date
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from howto.compute.ready import told
from howto.families.planting import FAMILY
from howto.layout.drawing.diagram import fit
from howto.layout.drawing.look import Look, frame_look, page_look
from howto.model.crew import Colours, Crew
from howto.shapes import DimensionLine, Drawing, Line, Polygon, Role, extent
from tests.support.builders import technique
from tests.support.drawings import words_of

TODAY = date(2026, 3, 1)
EMPTY: dict[str, Any] = {"pattern": None, "spacing_mm": None, "area_m2": None}
TREE: dict[str, Any] = {
    "work": "tree",
    "calliper_mm": 30.0,
    "height_mm": 2400.0,
    "ball_width_mm": 420.0,
    "ball_depth_mm": 350.0,
    "first_root_mm": 30.0,
    "hole_width_mm": 1200.0,
    "hole_depth_mm": 290.0,
    "stakes": 2,
    "mulch_width_mm": 1200.0,
    "mulch_depth_mm": 75.0,
}
BED: dict[str, Any] = {"work": "bed", "pattern": "triangle", "spacing_mm": 350.0, "area_m2": 7.0, "pot_l": 0.5}


def drawn(crew: Crew | None = None, **given: Any) -> tuple[Drawing, ...]:
    work = technique(FAMILY, crew=crew, **{**EMPTY, **given})
    return tuple(told(drawing, work.reader) for drawing in FAMILY.drawings(work, TODAY))


def outlines(drawing: Drawing, role: Role) -> list[tuple[tuple[float, float], ...]]:
    return [shape.points for shape in drawing.shapes if isinstance(shape, Polygon) and shape.role is role]


def measured(drawing: Drawing) -> list[tuple[str, float]]:
    """Return each dimension's words and how long it is drawn."""
    return [
        (
            shape.text.replace("\u00a0", " "),
            round(((shape.end[0] - shape.start[0]) ** 2 + (shape.end[1] - shape.start[1]) ** 2) ** 0.5, 1),
        )
        for shape in drawing.shapes
        if isinstance(shape, DimensionLine)
    ]


def middles(drawing: Drawing) -> list[tuple[float, float]]:
    """Return where plants stand in a plan: the middles of their stems."""
    return [
        (
            round((min(x for x, _ in p) + max(x for x, _ in p)) / 2),
            round((min(y for _, y in p) + max(y for _, y in p)) / 2),
        )
        for p in outlines(drawing, Role.WOOD)
    ]


def test_the_hole_stands_at_its_true_size() -> None:
    hole, _ = drawn(**TREE)
    assert measured(hole) == [("1.2 m", 1200), ("420 mm", 420), ("290 mm", 290), ("50 mm", 50)]
    (ball,) = outlines(hole, Role.KEEP)
    assert (min(y for _, y in ball), max(y for _, y in ball)) == (-290, 30)
    assert (min(x for x, _ in ball), max(x for x, _ in ball)) == (-210, 210)
    ground = next(shape for shape in hole.shapes if isinstance(shape, Line) and shape.role is Role.GROUND)
    assert [(round(x), round(y)) for x, y in ground.points[1:5]] == [(-600, 0), (-210, -290), (210, -290), (600, 0)]


def test_the_words_of_the_hole_are_the_figures() -> None:
    hole, _ = drawn(**TREE)
    assert words_of(hole) == [
        "1.2 m",
        "420 mm",
        "290 mm",
        "same soil back",
        "not dug",
        "flare in the air",
        "root 30 mm up",
        "ground",
        "50 mm",
    ]
    assert "Its topmost root stands 30 mm above the ground" in hole.alt.replace("\u00a0", " ")


def test_mulch_is_thin_over_the_ball_and_bare_at_the_trunk() -> None:
    hole, _ = drawn(**TREE)
    left, right = outlines(hole, Role.MULCH)
    assert min(x for x, _ in right) == 65  # half a trunk of 30 mm and a ring of 50 mm
    assert max(x for x, _ in right) == 600
    assert max(y for _, y in right) == 75
    over_ball = [y for x, y in right if x < 210]
    assert max(over_ball) <= 30 + 25
    assert [(-x, y) for x, y in left] == list(right)


def test_stakes_stand_outside_the_ball() -> None:
    both, _ = drawn(**TREE)
    posts = [post for post in outlines(both, Role.WOOD) if min(abs(x) for x, _ in post) > 210]
    assert len(posts) == 2
    assert all(min(y for _, y in post) < -290 for post in posts)
    (single, _) = drawn(**{**TREE, "stakes": 1})
    assert len([post for post in outlines(single, Role.WOOD) if min(abs(x) for x, _ in post) > 210]) == 1
    (alone,) = drawn(**{**TREE, "stakes": 0})
    assert len(outlines(alone, Role.WOOD)) == 1


def test_a_narrow_ring_over_the_ball_is_left_bare() -> None:
    hole, _ = drawn(**{**TREE, "mulch_width_mm": 200.0})
    assert outlines(hole, Role.MULCH) == []


def test_a_wide_bare_ring_passes_the_ball() -> None:
    hole, _ = drawn(**{**TREE, "trunk_clear_mm": 300.0})
    right = outlines(hole, Role.MULCH)[1]
    assert min(x for x, _ in right) == 315
    assert ("300 mm", 300) in measured(hole)
    against, _ = drawn(**{**TREE, "trunk_clear_mm": 0.0})
    assert len(measured(against)) == 3


def test_a_root_level_with_the_ground_has_no_level_of_its_own() -> None:
    (hole,) = drawn(work="shrub", stock="bare root", ball_width_mm=400.0, ball_depth_mm=300.0)
    assert [text for text in words_of(hole) if text.startswith("root ")] == []
    assert "with roots 400 mm wide" in hole.alt.replace("\u00a0", " ")


def test_a_staked_tree_is_tied_at_a_third() -> None:
    _, staked = drawn(**TREE)
    assert measured(staked) == [("800 mm", 800), ("2.4 m", 2400)]
    assert "holds it 800 mm up, 33 % of its height" in staked.alt.replace("\u00a0", " ")
    _, tied = drawn(**TREE, tie_height_mm=600.0)
    assert measured(tied)[0] == ("600 mm", 600)
    _, one = drawn(**{**TREE, "stakes": 1})
    assert "with 1 stake outside" in one.alt.replace("\u00a0", " ")


def test_a_tree_that_stands_alone_is_drawn_without_stakes() -> None:
    assert len(drawn(**TREE, stands_alone=True)) == 1
    assert len(drawn(**{**TREE, "height_mm": None})) == 1


def test_a_pot_tells_the_ball_where_nothing_else_does() -> None:
    (hole,) = drawn(work="shrub", pot_l=10.0)
    assert measured(hole)[1] == ("234 mm", 233.5)  # a pot as wide as it is high
    (usual,) = drawn(work="shrub")
    assert measured(usual)[1] == ("400 mm", 400)


def test_square_and_triangle_stand_side_by_side() -> None:
    grids, hole = drawn(**BED)
    assert measured(grids) == [("350 mm", 350), ("350 mm", 350), ("350 mm", 350), ("303 mm", 303.1)]
    places = middles(grids)
    assert len(places) == 18
    square, triangle = places[0::2], places[1::2]
    assert square[:2] == [(0, 0), (350, 0)]
    assert square[3] == (0, 350)
    assert triangle[3][0] - triangle[0][0] == 175
    assert triangle[3][1] == 303
    assert "This bed takes 66 plants" in grids.alt.replace("\u00a0", " ")
    assert words_of(grids)[-2:] == ["square, 8.16/m²", "triangle, 9.43/m²"]
    assert hole.caption.startswith("The hole")


def test_the_grid_that_is_planted_is_framed() -> None:
    for pattern, left in (("square", -210), ("triangle", 1155)):
        grids = drawn(**{**BED, "pattern": pattern})[0]
        frame = next(shape for shape in grids.shapes if isinstance(shape, Line) and shape.role is Role.CENTRE)
        assert min(x for x, _ in frame.points) == pytest.approx(left)


def test_a_double_row_is_staggered() -> None:
    (rows,) = drawn(work="bed", spacing_mm=400.0, rows=2, row_gap_mm=450.0, row_length_m=10.0)
    assert middles(rows) == [(200 + 400 * at, 0) for at in range(5)] + [(400 + 400 * at, 450) for at in range(4)]
    assert measured(rows) == [("400 mm", 400), ("in by 200 mm", 200), ("450 mm", 450)]
    assert "492 mm plant to plant" in words_of(rows)
    assert "takes 50 plants" in rows.alt.replace("\u00a0", " ")


def test_a_single_row_has_no_gap() -> None:
    (row,) = drawn(work="bed", pattern="row", spacing_mm=400.0)
    assert measured(row) == [("400 mm", 400), ("in by 200 mm", 200)]
    assert "takes" not in row.alt


def test_an_edge_grid_stands_on_the_edge() -> None:
    (edge,) = drawn(work="bed", pattern="edge", spacing_mm=500.0, bed_length_m=3.0, bed_width_m=1.2)
    assert len(middles(edge)) == 21
    line = next(shape for shape in edge.shapes if isinstance(shape, Line) and shape.role is Role.ACCENT)
    assert max(line.points) == (3000, 1000)
    (large,) = drawn(work="bed", pattern="edge", spacing_mm=500.0, bed_length_m=30.0, bed_width_m=12.0)
    assert len(middles(large)) == 35
    assert "61 plants along and 25 across" in large.alt.replace("\u00a0", " ")
    assert "The first of them are drawn" in large.alt
    (unknown,) = drawn(work="bed", pattern="edge", spacing_mm=500.0)
    assert len(middles(unknown)) == 12


def test_a_bank_shows_its_face() -> None:
    _, bank = drawn(**BED, slope_percent=75.0, bed_width_m=4.0)
    assert measured(bank) == [("5 m face", 5000), ("4 m on the plan", 4000), ("3 m", 3000)]
    _, metre = drawn(**{**BED, "pattern": "square"}, slope_percent=25.0)
    assert measured(metre)[1] == ("1 m on the plan", 1000)
    assert "Rows stand 350 mm apart" in metre.alt.replace("\u00a0", " ")


def test_a_tree_with_a_spacing_has_both_drawings() -> None:
    assert [drawing.caption.partition(":")[0] for drawing in drawn(**TREE, spacing_mm=4000.0, row_length_m=20.0)] == [
        "The hole",
        "Tied 800\u00a0mm up, for one growing season",
        "Plan",
    ]


def test_a_plan_in_feet_and_inches_speaks_of_inches() -> None:
    grids, _ = drawn(Crew(units="us"), **{**BED, "spacing_mm": 304.8})
    assert measured(grids)[0][0] == "12 in"
    assert "square, 1/sq ft" in words_of(grids)


@pytest.mark.parametrize("look", [page_look(Colours()), frame_look(Colours())], ids=["page", "frame"])
@pytest.mark.parametrize(
    "given_",
    [
        TREE,
        {"work": "shrub", "pot_l": 10.0, "drainage": "poor"},
        BED,
        {**BED, "slope_percent": 25.0},
        {"work": "bed", "spacing_mm": 400.0, "rows": 2, "row_gap_mm": 400.0, "row_length_m": 10.0},
        {"work": "bed", "pattern": "edge", "spacing_mm": 500.0, "bed_length_m": 3.0, "bed_width_m": 1.2},
    ],
    ids=["tree", "shrub", "bed", "bank", "row", "edge"],
)
def test_the_words_of_every_drawing_find_a_place(look: Look, given_: dict[str, Any]) -> None:
    box = (124.0, 90.0) if look.page else (984.0, 760.0)
    for drawing in drawn(**given_):
        _, reasons = fit(drawing, *box, look)
        assert reasons == ()


@given(
    work=st.sampled_from(["tree", "shrub", "bed"]),
    stock=st.sampled_from(["container", "balled", "bare root"]),
    calliper=st.none() | st.floats(1, 500),
    ball=st.none() | st.tuples(st.floats(10, 6000), st.floats(10, 4000), st.floats(0, 1000)),
    hole=st.none() | st.tuples(st.floats(10, 20_000), st.floats(1, 4000), st.floats(0, 4000)),
    layout=st.none() | st.tuples(st.sampled_from(["square", "triangle", "row", "edge"]), st.floats(10, 30_000)),
    rest=st.tuples(st.floats(10, 20_000), st.floats(10, 10_000), st.floats(1, 1000), st.floats(0, 2000)),
    units=st.sampled_from(["metric", "us", "uk"]),
)
def test_any_measures_can_be_drawn(
    work: str, stock: str, calliper: Any, ball: Any, hole: Any, layout: Any, rest: Any, units: Any
) -> None:
    found = drawn(
        Crew(units=units),
        work=work,
        stock=stock,
        calliper_mm=calliper,
        ball_width_mm=ball and ball[0],
        ball_depth_mm=ball and ball[1],
        first_root_mm=ball and ball[2],
        hole_width_mm=hole and hole[0],
        hole_depth_mm=hole and hole[1],
        proud_mm=hole and hole[2],
        pattern=layout and layout[0],
        spacing_mm=layout and layout[1],
        height_mm=rest[0],
        mulch_width_mm=rest[1],
        mulch_depth_mm=rest[2],
        trunk_clear_mm=rest[3],
        stakes=2,
        rows=3,
        row_gap_mm=700.0,
        bed_length_m=40.0,
        bed_width_m=20.0,
        row_length_m=1000.0,
        slope_percent=rest[3] / 10,
    )
    assert 1 <= len(found) <= 4
    for drawing in found:
        assert len(drawing.alt) <= 250
        assert len(drawing.caption) <= 80
        left, bottom, right, top = extent(drawing.shapes)
        assert 0 < right - left < 500_000
        assert 0 < top - bottom < 500_000
