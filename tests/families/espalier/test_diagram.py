from datetime import date
from typing import Any

import pytest
from hypothesis import given

from howto.compute.ready import told
from howto.families.espalier import FAMILY
from howto.families.espalier.diagram import drawings
from howto.families.espalier.diagram_frame import elevation
from howto.families.espalier.diagram_shoots import shoots
from howto.families.espalier.diagram_side import side
from howto.families.espalier.diagram_wire import sag
from howto.languages.reader import Reader
from howto.shapes import DimensionLine, Drawing, Label, Level, Line, Polygon, Role, Shape, extent
from tests.families.espalier.test_figures import ANY, WIRE
from tests.support.builders import technique
from tests.support.told import ENGLISH

TODAY = date(2026, 10, 14)


def drawn(drawing: Drawing | None, reader: Reader = ENGLISH) -> Drawing:
    """Return a drawing that is there, as its reader sees it."""
    assert drawing is not None
    return told(drawing, reader)


def plain(text: str) -> str:
    """Return a text with plain spaces."""
    return text.replace("\u00a0", " ")


def words(drawing: Drawing, kind: type[DimensionLine | Level | Label]) -> list[str]:
    """Return the words of one kind of mark, spaces plain."""
    return [plain(shape.text) for shape in drawing.shapes if isinstance(shape, kind)]


def polygons(drawing: Drawing, role: Role) -> list[Polygon]:
    return [shape for shape in drawing.shapes if isinstance(shape, Polygon) and shape.role is role]


def size(shape: Shape) -> tuple[float, float, float, float]:
    return extent((shape,))


@pytest.mark.parametrize(
    ("job", "captions"),
    [
        ("wiring", ["From the front", "From the side", "One span"]),
        ("planting", ["From the front", "From the side", "Cut to 3 leaves"]),
        ("training", ["From the front", "Cut to 3 leaves", "From the side"]),
        ("summer pruning", ["Cut to 3 leaves", "From the front", "From the side"]),
        ("winter thinning", ["From the front", "Cut to 3 leaves", "From the side"]),
    ],
)
def test_each_job_has_its_drawings(job: str, captions: list[str]) -> None:
    found = [drawn(each) for each in drawings(technique(FAMILY, **{**WIRE, "job": job}), TODAY)]
    assert [plain(drawing.caption)[: len(start)] for drawing, start in zip(found, captions, strict=True)] == captions


def test_with_hardly_a_measure_the_shoots_are_drawn() -> None:
    (only,) = drawings(technique(FAMILY, job="wiring", wall_length_m=None, first_wire_mm=None), TODAY)
    assert plain(drawn(only).caption) == "Cut to 3 leaves, 1 from a spur; under 200 mm stays"


def test_the_frame_from_the_front() -> None:
    found = drawn(elevation(technique(FAMILY, eye_spacing_mm=1800.0)))
    assert words(found, Level) == ["450 mm", "850 mm", "1.25 m", "1.65 m"]
    assert words(found, DimensionLine) == ["1.6 m", "4.8 m", "arm 2.4 m"]
    heights = {shape.points[0][1] for shape in found.shapes if isinstance(shape, Line) and shape.role is Role.WIRE}
    assert {450.0, 850.0, 1250.0, 1650.0} <= heights
    assert len(polygons(found, Role.KEEP)) == 8  # an arm each side a tier
    assert len(polygons(found, Role.REMOVE)) == 16
    eyes = [each for each in polygons(found, Role.WOOD) if size(each)[2] - size(each)[0] <= 40.01]
    assert len(eyes) == 16
    left, bottom, right, top = extent(found.shapes)
    assert (left, right) == pytest.approx((-144, 4944))
    assert -300 < bottom < 0
    assert 1650 < top < 2100


def test_wires_alone_with_the_tree_to_come() -> None:
    found = drawn(elevation(technique(FAMILY, **WIRE)))
    assert plain(found.caption) == "From the front: 4 wires, 16 eyes"
    assert words(found, DimensionLine) == ["1.6 m", "4.8 m"]
    assert words(found, Label) == ["eye", "tensioner"]
    wires = [shape for shape in found.shapes if isinstance(shape, Line) and shape.role is Role.ACCENT]
    assert [wire.points for wire in wires] == [((0, y), (4800, y)) for y in (450, 850, 1250, 1650)]
    assert polygons(found, Role.KEEP) == polygons(found, Role.REMOVE) == []
    across = drawn(side(technique(FAMILY, **WIRE)))
    assert words(across, Label) == ["eye", "wire"]


def test_a_part_of_a_long_wall_without_a_second_eye() -> None:
    long = {**WIRE, "trees": 5, "wall_length_m": 20.0, "eye_spacing_mm": 20_000.0}
    found = drawn(elevation(technique(FAMILY, **long)))
    assert plain(found.caption) == "From the front: 4 wires, 8 eyes, the first 2 of 5 trees"
    assert words(found, Label) == []
    assert words(found, DimensionLine) == ["8 m"]


def test_tiers_to_come_are_dashed_and_new_arms_at_their_angle() -> None:
    found = drawn(elevation(technique(FAMILY, tiers_made=3, arm_angle_deg=45.0)))
    assert len(polygons(found, Role.KEEP)) == 6
    new = [shape for shape in found.shapes if isinstance(shape, Line) and shape.role is Role.ACCENT]
    assert len(new) == 2
    (x0, y0), (x1, y1) = new[1].points
    assert y1 - y0 == pytest.approx(x1 - x0)
    assert "3 of 4 tiers are made" in plain(found.alt)
    assert plain(found.caption) == "From the front: 4 wires, 8 arms; new ones at 45°, then level"
    assert any(isinstance(shape, Line) and shape.role is Role.LAST for shape in found.shapes)


def test_many_trees_are_shown_by_the_first_two() -> None:
    found = drawn(elevation(technique(FAMILY, trees=5, tree_spacing_mm=4000.0, wall_length_m=20.0)))
    assert plain(found.caption) == "From the front: 4 wires, 40 arms, the first 2 of 5 trees"
    assert extent(found.shapes)[2] == pytest.approx(8240)
    assert len(polygons(found, Role.KEEP)) == 16


def test_the_wall_in_section() -> None:
    found = drawn(side(technique(FAMILY, off_wall_mm=60.0, stem_off_wall_mm=150.0)))
    assert words(found, DimensionLine) == ["60 mm", "150 mm"]
    assert words(found, Level) == ["450 mm", "850 mm"]
    (wall,) = polygons(found, Role.WALL)
    assert size(wall)[2] == 0
    dots = polygons(found, Role.ACCENT)
    assert [round((size(dot)[0] + size(dot)[2]) / 2) for dot in dots] == [60, 60]
    assert len(polygons(found, Role.REMOVE)) == 1
    assert side(technique(FAMILY, off_wall_mm=60.0, support="posts")) is None
    assert side(technique(FAMILY)) is None


def test_the_sag_is_drawn_deeper_than_it_is_and_says_so() -> None:
    found = drawn(sag(technique(FAMILY, **WIRE)))
    assert plain(found.caption) == "One span, tightened to 600 N: the sag is drawn 15 times too deep"
    assert "15 times too deep" in plain(found.alt)
    assert not found.true
    assert words(found, DimensionLine) == ["1.6 m", "21 mm"]
    assert "limit 25 mm" in words(found, Label)
    assert "600 N: bare, it sags 0.2 mm" in words(found, Label)
    loaded = next(shape for shape in found.shapes if isinstance(shape, Line) and shape.role is Role.ACCENT)
    assert min(y for _, y in loaded.points) == pytest.approx(-317.2, abs=0.1)  # 21.15 mm fifteen times over
    assert loaded.points[0] == (0.0, 0.0)


def test_a_deep_sag_is_drawn_true() -> None:
    found = drawn(sag(technique(FAMILY, **{**WIRE, "tension_n": 60.0, "sag_limit_mm": None})))
    assert plain(found.caption) == "One span, tightened to 60 N: the sag is true to scale"
    assert found.true
    assert sag(technique(FAMILY)) is None
    assert sag(technique(FAMILY, **{**WIRE, "tension_n": 15.0})) is None  # 0.85 m of 1.6 m: no wire hangs so


def test_a_limit_that_no_wire_reaches_is_left_out() -> None:
    found = drawn(sag(technique(FAMILY, **{**WIRE, "sag_limit_mm": 5000.0})))
    assert not any(isinstance(shape, Line) and shape.role is Role.GUIDE for shape in found.shapes)
    assert "limit" not in plain(found.alt)


def test_a_shoot_is_cut_to_three_leaves_and_a_spurs_to_one() -> None:
    found = drawn(shoots(technique(FAMILY)))
    assert words(found, DimensionLine) == ["75 mm, 3 leaves", "200 mm", "25 mm, 1 leaf"]
    whole = [each for each in polygons(found, Role.KEEP) if size(each)[2] - size(each)[0] > 30]
    first = [each for each in whole if size(each)[2] < 60]
    spur = [each for each in whole if size(each)[0] > 290]
    assert (len(first), len(spur)) == (3, 1)
    off = polygons(found, Role.REMOVE)
    assert all(size(each)[1] > 75 for each in off if size(each)[2] < 60)
    assert all(size(each)[1] > 47 for each in off)
    stone = drawn(shoots(technique(FAMILY, fruit="stone fruit")))
    assert words(stone, DimensionLine) == ["50 mm", "200 mm", "25 mm"]


def test_a_drawing_in_feet_says_inches() -> None:
    found = drawn(shoots(technique(FAMILY)), Reader(units="us"))
    assert words(found, DimensionLine) == ["3 in, 3 leaves", "7¾ in", "1 in, 1 leaf"]


@given(measures=ANY)
def test_every_drawing_is_finite_and_described(measures: dict[str, Any]) -> None:
    work = technique(FAMILY, off_wall_mm=60.0, arm_angle_deg=45.0, **measures)
    found = [drawn(each) for each in drawings(work, TODAY)]
    assert 1 <= len(found) <= 3
    for drawing in found:
        assert 40 < len(drawing.alt) <= 250
        assert len(drawing.shapes) < 1200
        left, bottom, right, top = extent(drawing.shapes)
        assert 0 < right - left < 1_000_000
        assert 0 < top - bottom < 1_000_000


def test_a_wall_of_twenty_kilometres_is_drawn_with_no_more_leaf_than_can_be_seen() -> None:
    measures: dict[str, Any] = {"tiers": 4, "first_wire_mm": 450.0, "tier_spacing_mm": 400.0, "wall_length_m": 20_000.0}
    drawing = drawn(elevation(technique(FAMILY, None, **measures)))
    assert max(len(leaf.points) for leaf in polygons(drawing, Role.KEEP)) < 300
