from dataclasses import replace
from datetime import date
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from howto.compute.ready import told as told_drawing
from howto.families.soil import FAMILY
from howto.layout.drawing.diagram import fit
from howto.layout.drawing.look import Look, frame_look, page_look
from howto.model.crew import Colours, Crew
from howto.shapes import DimensionLine, Drawing, Line, Polygon, Role, extent
from tests.support.builders import technique
from tests.support.drawings import words_of
from tests.support.told import told

TODAY = date(2026, 3, 1)
MULCH: dict[str, Any] = {"work": "mulch", "depth_mm": 60.0, "settling_percent": 20.0, "trunk_clear_mm": 50.0}
BED: dict[str, Any] = {
    "work": "new bed",
    "depth_mm": 75.0,
    "dig_depth_mm": 300.0,
    "drained_mm": 60.0,
    "drained_in_hours": 2.0,
    "test_hole_mm": 300.0,
}


def drawn(crew: Crew | None = None, **measures: Any) -> tuple[Drawing, ...]:
    """Return the drawings as their reader sees them, spaces plain."""
    made = technique(FAMILY, crew=crew, **measures)
    seen = [told_drawing(each, made.reader) for each in FAMILY.drawings(made, TODAY)]
    return tuple(replace(each, caption=told(each.caption), alt=told(each.alt)) for each in seen)


def outlines(drawing: Drawing, role: Role) -> list[tuple[tuple[float, float], ...]]:
    return [shape.points for shape in drawing.shapes if isinstance(shape, Polygon) and shape.role is role]


def dimensions(drawing: Drawing) -> dict[str, float]:
    """Return how long each dimension is drawn, by its words."""
    return {
        told(shape.text): abs(shape.end[0] - shape.start[0]) + abs(shape.end[1] - shape.start[1])
        for shape in drawing.shapes
        if isinstance(shape, DimensionLine)
    }


def test_mulch_stands_clear_of_the_trunk_at_its_true_size() -> None:
    section, plan = drawn(**MULCH)
    left, right = outlines(section, Role.MULCH)
    assert max(x for x, _ in left) == -80  # half a trunk of 60 mm, and a ring of 50 mm
    assert min(x for x, _ in right) == 80
    assert max(y for _, y in right) == pytest.approx(75, abs=3)
    assert dimensions(section) == {"75 mm": 75, "50 mm": 50}
    assert words_of(section) == ["75 mm", "compost", "flare in the air", "50 mm", "sinks to 60 mm"]
    assert dimensions(plan) == {"50 mm": 50, "1 m": 1000}
    assert "75 L here" in words_of(plan)
    assert "stops 50 mm short of the bark" in section.alt


def test_an_old_layer_lies_under_the_new_one() -> None:
    section, _ = drawn(**{**MULCH, "settling_percent": None}, old_layer_mm=40.0)
    new = outlines(section, Role.MULCH)[0]
    assert min(y for _, y in new) == 40
    assert "old layer 40 mm" in words_of(section)
    assert len(outlines(section, Role.LAST)) == 2


def test_mulch_against_the_stem_has_no_ring_to_measure() -> None:
    section, _ = drawn(**{**MULCH, "trunk_clear_mm": 0.0})
    assert dimensions(section) == {"75 mm": 75}


def test_a_bed_is_drawn_spread_and_mixed() -> None:
    bed, hole = drawn(**BED)
    spread, mixed = outlines(bed, Role.MULCH)
    assert max(y for _, y in spread) == pytest.approx(75, abs=3)
    assert min(y for _, y in mixed) == -225
    assert max(y for _, y in mixed) == pytest.approx(75, abs=3)
    assert dimensions(bed) == {"75 mm": 75, "300 mm": 300}
    assert "2 mixed: 25 %" in words_of(bed)
    assert words_of(hole) == ["300 mm", "ruler", "full", "60 mm down after 2 h"]
    (water,) = outlines(hole, Role.WATER)
    assert max(y for _, y in water) == -60


def test_a_test_not_yet_made_shows_only_how() -> None:
    _, hole = drawn(work="new bed", depth_mm=75.0)
    assert words_of(hole) == ["300 mm", "ruler", "full"]
    assert "empties within a day" in hole.alt


def test_a_bed_that_says_no_depth_of_digging_is_drawn_to_200_mm() -> None:
    # Michigan Recycling Coalition [B]: mixed 150 to 200 mm deep
    (bed, _) = drawn(work="dig in", depth_mm=50.0)
    assert dimensions(bed) == {"50 mm": 50, "200 mm": 200}


def test_leaf_tips_stand_out_of_top_dressing() -> None:
    lawn, plan = drawn(work="top-dress", depth_mm=10.0)
    assert max(y for blade in outlines(lawn, Role.BLADE) for _, y in blade) == pytest.approx(40, abs=1)
    assert dimensions(lawn) == {"10 mm": 10}
    assert plan.caption == "Each square metre takes 10 L"
    assert not outlines(plan, Role.WOOD)


def test_heaps_stand_in_the_middle_of_the_square_they_cover() -> None:
    *_, heaps = drawn(work="mulch", depth_mm=80.0, barrow_l=80.0)
    assert dimensions(heaps) == {"1 m": 1000}
    assert extent(heaps.shapes) == (0, 0, 3000, 2000)
    assert "one barrow, 80 L" in words_of(heaps)


def test_a_watered_border_shows_its_drainage_test_too() -> None:
    found = drawn(**MULCH, drained_mm=60.0, drained_in_hours=1.5)
    assert len(found) == 3
    assert "60 mm down after 90 min" in words_of(found[1]) or "60 mm down after 1 h 30 min" in words_of(found[1])


def test_a_section_in_feet_and_inches_speaks_of_inches() -> None:
    section, _ = drawn(Crew(units="us"), **{**MULCH, "settling_percent": None, "depth_mm": 76.2})
    assert "3 in" in words_of(section)


@pytest.mark.parametrize("look", [page_look(Colours()), frame_look(Colours())], ids=["page", "frame"])
@pytest.mark.parametrize(
    "measures",
    [MULCH, {**MULCH, "old_layer_mm": 40.0}, BED, {"work": "top-dress", "depth_mm": 8.0, "barrow_l": 80.0}],
    ids=["mulch", "old", "bed", "lawn"],
)
def test_the_words_of_every_drawing_find_a_place(look: Look, measures: dict[str, Any]) -> None:
    box = (124.0, 90.0) if look.page else (984.0, 760.0)
    for drawing in drawn(**measures):
        _, reasons = fit(drawing, *box, look)
        assert reasons == ()


@given(
    work=st.sampled_from(["dig in", "mulch", "top-dress", "new bed"]),
    depth=st.floats(1, 1000),
    settling=st.none() | st.floats(0, 60),
    dig=st.none() | st.floats(1, 3000),
    ring=st.none() | st.floats(0, 3000),
    old=st.none() | st.floats(1, 1000),
    drained=st.none() | st.floats(0, 2000),
    units=st.sampled_from(["metric", "us", "uk"]),
)
def test_any_measures_can_be_drawn(
    work: str,
    depth: float,
    settling: float | None,
    dig: float | None,
    ring: float | None,
    old: float | None,
    drained: float | None,
    units: Any,
) -> None:
    found = drawn(
        Crew(units=units),
        work=work,
        depth_mm=depth,
        settling_percent=settling,
        dig_depth_mm=dig,
        trunk_clear_mm=ring,
        old_layer_mm=old,
        drained_mm=drained,
        drained_in_hours=7.25,
        barrow_l=old,
        material="a material with a name of forty letters",
    )
    assert 1 <= len(found) <= 3
    for drawing in found:
        assert len(drawing.alt) <= 250
        assert len(drawing.caption) <= 80
        left, bottom, right, top = extent(drawing.shapes)
        assert 0 < right - left < 200_000
        assert 0 < top - bottom < 200_000
        assert any(isinstance(shape, Line) and shape.role is Role.GROUND for shape in drawing.shapes)
