"""The drawings of a clip: at true size, in the figures' own words, and with a place for each of them."""

from datetime import date
from math import isfinite
from typing import Any

import pytest
from hypothesis import given

from howto.compute.ready import told
from howto.families.clipping import FAMILY
from howto.families.clipping.diagram import outline
from howto.layout.drawing.diagram import fit
from howto.layout.drawing.look import Look, frame_look, page_look
from howto.model.crew import Colours, Crew
from howto.shapes import Drawing, Line, Polygon, Role, extent
from tests.families.clipping.test_figures import MEASURES
from tests.support.builders import technique
from tests.support.drawings import words_of

TODAY = date(2026, 6, 10)
CONE: dict[str, Any] = {
    "shape": "cone",
    "finished_width_mm": 800.0,
    "standing_width_mm": 900.0,
    "finished_height_mm": 1600.0,
    "standing_height_mm": 1700.0,
}
TOP_ONLY: dict[str, Any] = {**CONE, "shape": "dome", "standing_width_mm": 800.0}
NOTHING: dict[str, Any] = {"finished_width_mm": 900.0, "standing_width_mm": 900.0}


def drawn(crew: Crew | None = None, **measures: Any) -> tuple[Drawing, ...]:
    work = technique(FAMILY, crew=crew, **measures)
    return tuple(told(drawing, work.reader) for drawing in FAMILY.drawings(work, TODAY))


def bounds(drawing: Drawing, role: Role) -> tuple[float, ...]:
    return extent([shape for shape in drawing.shapes if isinstance(shape, Polygon) and shape.role is role])


def roles(drawing: Drawing) -> set[Role]:
    return {shape.role for shape in drawing.shapes if isinstance(shape, Polygon | Line)}


def test_the_section_of_a_ball_stands_at_its_true_size() -> None:
    section, _ = drawn()
    assert bounds(section, Role.KEEP) == pytest.approx((-450, 0, 450, 900))
    left, bottom, right, top = bounds(section, Role.REMOVE)  # a shell of 40 mm all round, its leaf 16 mm proud
    assert 490 <= right <= 506
    assert -506 <= left <= -490
    assert -56 <= bottom <= -40
    assert 940 <= top <= 956
    assert section.true


def test_the_words_of_the_section_are_the_figures() -> None:
    # rings at every 150 mm of 900: 900 x √(1 - (1/3)²) = 848.5 and 900 x √(1 - (2/3)²) = 670.8
    section, _ = drawn()
    assert words_of(section) == [
        "671 mm", "849 mm", "900 mm", "849 mm", "671 mm", "900 mm", "900 mm", "40 mm off each side",
    ]  # fmt: skip
    assert section.alt.replace("\u00a0", " ") == (
        "A ball in section, 900 mm wide and 900 mm high when done. It stands 980 mm wide; the hatched shell, 40 mm a "
        "side and 22.5 % of the leaf, comes off."
    )
    rings = [shape for shape in section.shapes if isinstance(shape, Line) and shape.role is Role.GUIDE]
    assert [round(ring.points[0][1]) for ring in rings] == [150, 300, 450, 600, 750]
    assert [round(ring.points[1][0] * 2) for ring in rings] == [671, 849, 900, 849, 671]


def test_the_section_of_a_cone_grows_from_its_foot() -> None:
    section, plan = drawn(**CONE)
    assert bounds(section, Role.KEEP) == (-400, 0, 400, 1600)
    assert bounds(section, Role.REMOVE)[3] == pytest.approx(1700, abs=20)
    assert words_of(section) == [
        "700 mm", "600 mm", "500 mm", "400 mm", "300 mm", "200 mm", "100 mm", "800 mm", "1.6 m", "50 mm off each side",
    ]  # fmt: skip
    assert words_of(plan) == ["800 mm", "line at the foot", "900 mm"]


def test_straight_sides_need_one_level() -> None:
    section, plan = drawn(shape="cube")
    assert words_of(section) == ["900 mm", "900 mm", "900 mm", "40 mm off each side"]
    assert words_of(plan) == ["900 mm", "finished line", "980 mm"]
    assert bounds(plan, Role.KEEP) == (-450, -450, 450, 450)
    assert words_of(drawn(shape="cylinder")[1]) == ["900 mm", "finished line", "980 mm"]


def test_the_plan_of_a_ball_is_its_widest_ring() -> None:
    _, plan = drawn()
    assert bounds(plan, Role.KEEP) == pytest.approx((-450, -450, 450, 450))
    assert words_of(plan) == ["900 mm", "widest ring", "980 mm"]
    assert plan.caption == "From above: the widest ring first"
    assert "900 mm across, drawn heavy inside an outline 980 mm across" in plan.alt.replace("\u00a0", " ")


def test_where_only_the_top_comes_off_no_side_is_named() -> None:
    section, plan = drawn(**TOP_ONLY)
    assert Role.REMOVE in roles(section)
    assert Role.REMOVE not in roles(plan)
    assert "each side" not in " ".join(words_of(section))
    assert section.alt.replace("\u00a0", " ").endswith("the hatched shell, 5.88 % of the leaf, comes off.")


def test_where_nothing_comes_off_nothing_is_hatched() -> None:
    section, plan = drawn(**NOTHING)
    assert Role.REMOVE not in roles(section) | roles(plan)
    assert section.alt.endswith("nothing comes off.")
    assert plan.alt.endswith("drawn heavy; nothing stands outside it.")


def test_a_gauge_with_many_rings_is_drawn_with_few() -> None:
    section, _ = drawn(gauge_every_mm=60.0)
    assert words_of(section)[:5] == ["671 mm", "849 mm", "900 mm", "849 mm", "671 mm"]


def test_a_crew_in_inches_reads_inches() -> None:
    section, _ = drawn(Crew(units="uk"), finished_width_mm=609.6, standing_width_mm=660.4)
    assert words_of(section)[-3:] == ["2 ft", "2 ft", "1 in off each side"]


@pytest.mark.parametrize("shape", ["ball", "dome", "cone", "cube", "cylinder"])
def test_an_outline_is_as_wide_and_high_as_its_shape(shape: str) -> None:
    points = outline(shape, 700, 1500, foot=-20)
    assert extent([Polygon(points, Role.KEEP)]) == pytest.approx((-350, -20, 350, 1480))


@pytest.mark.parametrize("look", [page_look(Colours()), frame_look(Colours())], ids=["page", "frame"])
@pytest.mark.parametrize(
    "measures",
    [{}, CONE, TOP_ONLY, NOTHING, {"shape": "cube"}, {"shape": "cylinder"}, {"gauge_every_mm": 90.0}],
    ids=["ball", "cone", "top", "nothing", "cube", "cylinder", "ten rings"],
)
def test_the_words_of_every_drawing_find_a_place(look: Look, measures: dict[str, Any]) -> None:
    box = (124.0, 90.0) if look.page else (984.0, 760.0)
    for drawing in drawn(**measures):
        assert len(drawing.caption) <= 60
        _, reasons = fit(drawing, *box, look)
        assert reasons == ()


@given(measures=MEASURES)
def test_no_measures_break_the_drawings(measures: dict[str, Any]) -> None:
    m = technique(FAMILY, **measures).measures
    size = max(m.standing_width_mm, m.finished_width_mm, m.standing_mm, m.height_mm)
    for drawing in drawn(**measures):
        assert 0 < len(drawing.alt) <= 250
        assert all(isfinite(edge) and abs(edge) < 1.2 * size for edge in extent(drawing.shapes))
        assert len(drawing.shapes) < 60
