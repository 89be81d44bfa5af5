from datetime import date
from typing import Any

import pytest

from howto.compute.ready import told
from howto.families.hedging import FAMILY
from howto.layout.drawing.diagram import fit
from howto.layout.drawing.look import Look, frame_look, page_look
from howto.model.crew import Colours, Crew
from howto.shapes import Disc, Drawing, Line, Polygon, Role, extent
from tests.support.builders import technique
from tests.support.cases import book
from tests.support.drawings import words_of

TODAY = date(2026, 2, 20)
YOUNG: dict[str, Any] = {
    "job": "thicken",
    "finished_height_mm": 1400.0,
    "standing_height_mm": 900.0,
    "cut_height_mm": 600.0,
    "last_cut_height_mm": 300.0,
    "base_width_mm": 400.0,
    "top_width_mm": 300.0,
    "standing_base_width_mm": None,
    "standing_top_width_mm": None,
    "year": 2,
    "shoots": 4,
    "growth_mm_per_year": 450.0,
    "spacing_mm": 300.0,
}


def drawn(*plants: str, crew: Crew | None = None, **measures: Any) -> tuple[Drawing, ...]:
    work = technique(FAMILY, {"plants": plants}, book=book(), crew=crew, **measures)
    return tuple(told(drawing, work.reader) for drawing in FAMILY.drawings(work, TODAY))


def outline(drawing: Drawing, role: Role) -> tuple[tuple[float, float], ...]:
    return next(shape.points for shape in drawing.shapes if isinstance(shape, Polygon) and shape.role is role)


def test_the_section_stands_at_its_true_size() -> None:
    section, _ = drawn()
    assert outline(section, Role.KEEP) == ((-350.0, 0.0), (350.0, 0.0), (250.0, 1600.0), (-250.0, 1600.0))
    left, bottom, right, top = extent(section.shapes)
    assert -800 < left < -400
    assert 400 < right < 800
    assert -300 < bottom < 0
    assert 1750 < top < 2000


def test_the_words_of_the_section_are_the_figures() -> None:
    section, _ = drawn()
    assert words_of(section) == [
        "700 mm",
        "500 mm",
        "800 mm now",
        "1.6 m",
        "1.75 m now",
        "leans 3.6°",
        "in by 100 mm",
        "150 mm off",
        "line 1.59 m",
    ]
    assert "21.6 % of the section comes off" in section.alt.replace("\u00a0", " ")


def test_this_years_line_stands_over_the_last() -> None:
    section, _ = drawn(last_cut_height_mm=1500.0)
    last = next(shape for shape in section.shapes if isinstance(shape, Line) and shape.role is Role.LAST)
    assert max(y for _, y in last.points) == 1500
    assert "1.5 m last cut" in words_of(section)


def test_a_renovation_cuts_one_face_inside_the_wanted_one() -> None:
    (section,) = drawn(
        job="renovate",
        faces=1,
        standing_base_width_mm=1200.0,
        standing_top_width_mm=1200.0,
        base_width_mm=800.0,
        top_width_mm=600.0,
        inside_face_mm=150.0,
    )
    assert outline(section, Role.KEEP) == ((-600.0, 0.0), (250.0, 0.0), (150.0, 1600.0), (-600.0, 1600.0))
    assert "150 mm inside" in words_of(section)
    assert "One face is cut hard this year" in section.alt


def test_a_hedge_with_nothing_to_cut_has_nothing_hatched() -> None:
    (section,) = drawn(
        standing_height_mm=None, standing_base_width_mm=None, standing_top_width_mm=None, base_width_mm=None
    )
    assert not [each for each in section.shapes if isinstance(each, Polygon) and each.role is Role.REMOVE]
    assert "1.6 m" in words_of(section)


def test_the_batter_board_shows_how_far_in_the_leaf_stands() -> None:
    _, board = drawn()
    assert words_of(board) == ["100 mm", "1.6 m", "plumb", "block", "in by 25 mm", "in by 50 mm", "in by 75 mm"]
    assert outline(board, Role.KEEP) == ((0.0, 0.0), (300.0, 0.0), (300.0, 1600.0), (100.0, 1600.0))
    assert "25 mm at 400 mm, 50 mm at 800 mm, 75 mm at 1.2 m up" in board.alt.replace("\u00a0", " ")


def test_an_upright_hedge_needs_no_batter_board() -> None:
    assert len(drawn(base_width_mm=500.0)) == 1


def test_a_young_hedge_is_drawn_at_each_cut() -> None:
    rise, section, plan = drawn("privet", **YOUNG)
    cuts = [shape for shape in rise.shapes if isinstance(shape, Line) and shape.role is Role.ACCENT]
    assert [cut.points[0][1] for cut in cuts] == [600, 825, 1050, 1400]
    assert [shape.number for shape in rise.shapes if isinstance(shape, Disc)] == [1, 2, 3, 4]
    assert words_of(rise) == ["600 mm", "300 mm", "8", "825 mm", "16", "1.05 m", "32", "1.4 m", "64"]
    assert "8, 16, 32, 64 shoots" in rise.alt
    assert "300 mm last cut" in words_of(section)
    assert plan.caption.startswith("Plan: 3.33")


def test_shoots_fork_in_two_at_each_earlier_cut() -> None:
    rise, *_ = drawn("privet", **YOUNG)
    stems = [
        shape
        for shape in rise.shapes
        if (isinstance(shape, Polygon) and shape.role is Role.WOOD)
        or (isinstance(shape, Line) and shape.role is Role.WIRE)
    ]
    # from the ground: 1 + 2, then 1 + 2 + 4, then 1 + 2 + 4 + 8, then 1 + 2 + 4 + 8 + 16
    assert len(stems) == 3 + 7 + 15 + 31


def test_a_long_rise_shows_its_first_cuts_and_its_last() -> None:
    rise, *_ = drawn("privet", **{**YOUNG, "finished_height_mm": 3000.0})
    heights = [shape.points[0][1] for shape in rise.shapes if isinstance(shape, Line) and shape.role is Role.ACCENT]
    assert heights == [600, 825, 1050, 3000]


def test_a_hedge_cut_before_today_shows_nothing_off_its_first_plant() -> None:
    rise, *_ = drawn("privet", **{**YOUNG, "standing_height_mm": None})
    assert words_of(rise)[:2] == ["600 mm", "4"]
    removed = [shape for shape in rise.shapes if isinstance(shape, Polygon) and shape.role is Role.REMOVE]
    assert len(removed) == 3


def test_a_hedge_that_does_not_rise_has_only_its_section() -> None:
    assert len(drawn("privet", **{**YOUNG, "finished_height_mm": 600.0, "spacing_mm": None})) == 1


def test_the_plan_is_staggered_by_half_a_spacing() -> None:
    *_, plan = drawn(spacing_mm=400.0, rows=2, row_gap_mm=400.0)
    stems = [shape.points for shape in plan.shapes if isinstance(shape, Polygon) and shape.role is Role.WOOD]
    middles = [(round((min(x for x, _ in p) + max(x for x, _ in p)) / 2), round(p[0][1])) for p in stems]
    assert middles == [(200 + 400 * at, 0) for at in range(5)] + [(400 + 400 * at, 400) for at in range(4)]
    assert words_of(plan) == ["400 mm", "in by 200 mm", "end of the hedge", "400 mm", "447 mm plant to plant"]
    assert "447 mm plant to plant" in plan.alt.replace("\u00a0", " ")


def test_a_plan_in_feet_and_inches_speaks_of_inches() -> None:
    *_, plan = drawn(spacing_mm=304.8, crew=Crew(units="us"))
    assert "12 in" in words_of(plan)


@pytest.mark.parametrize("look", [page_look(Colours()), frame_look(Colours())], ids=["page", "frame"])
@pytest.mark.parametrize(
    "measures",
    [{}, YOUNG, {"spacing_mm": 400.0, "rows": 2}, {"job": "renovate", "faces": 1, "standing_base_width_mm": 1200.0}],
    ids=["trim", "young", "double", "renovate"],
)
def test_the_words_of_every_drawing_find_a_place(look: Look, measures: dict[str, Any]) -> None:
    box = (124.0, 90.0) if look.page else (984.0, 760.0)
    for drawing in drawn("privet", **measures):
        assert len(drawing.alt) <= 250
        assert len(drawing.caption) <= 60
        _, reasons = fit(drawing, *box, look)
        assert reasons == ()
