"""The drawings of a lawn: at true size, in the figures' own words, and with a place for each of them."""

from dataclasses import replace
from datetime import date
from math import isfinite
from typing import Any

import pytest
from hypothesis import given

from howto.compute.ready import told as told_drawing
from howto.families.mowing import FAMILY
from howto.layout.drawing.diagram import fit
from howto.layout.drawing.look import Look, frame_look, page_look
from howto.model.crew import Colours, Crew
from howto.shapes import Drawing, Line, Polygon, Role, extent
from tests.families.mowing.test_figures import MEASURES
from tests.support.builders import technique
from tests.support.drawings import words_of
from tests.support.told import told

TODAY = date(2026, 6, 10)
OVERGROWN: dict[str, Any] = {"set_height_mm": 50.0, "standing_height_mm": 150.0, "growth_mm_per_day": 4.0}
MEADOW: dict[str, Any] = {"set_height_mm": 5.0, "standing_height_mm": 2000.0, "growth_mm_per_day": None}
SHORT: dict[str, Any] = {"set_height_mm": 60.0, "standing_height_mm": 50.0}


def drawn(crew: Crew | None = None, **measures: Any) -> tuple[Drawing, ...]:
    """Return the drawings as their reader sees them, spaces plain."""
    made = technique(FAMILY, crew=crew, **measures)
    seen = [told_drawing(each, made.reader) for each in FAMILY.drawings(made, TODAY)]
    return tuple(replace(each, caption=told(each.caption), alt=told(each.alt)) for each in seen)


def bounds(drawing: Drawing, role: Role) -> tuple[float, ...]:
    return extent([shape for shape in drawing.shapes if isinstance(shape, Polygon) and shape.role is role])


def accents(drawing: Drawing) -> list[float]:
    lines = (shape for shape in drawing.shapes if isinstance(shape, Line) and shape.role is Role.ACCENT)
    return [round(line.points[0][1], 1) for line in lines]


def test_blades_stand_at_their_true_height_and_are_hatched_above_the_cut() -> None:
    blades, _ = drawn(standing_height_mm=90.0)
    assert bounds(blades, Role.KEEP)[1::2] == pytest.approx((0, 60))
    assert bounds(blades, Role.REMOVE)[1::2] == pytest.approx((60, 90))
    assert accents(blades) == [60]
    thirds = [shape.points[0][1] for shape in blades.shapes if isinstance(shape, Line) and shape.role is Role.CENTRE]
    assert thirds == pytest.approx([30, 60])
    assert blades.true


def test_the_words_of_the_blades_are_the_figures() -> None:
    blades, _ = drawn(standing_height_mm=85.0)
    assert words_of(blades) == ["stands 85 mm", "85 mm", "cut 60 mm", "29.4 % off"]
    assert blades.caption == "Today: 85 mm down to 60 mm"
    assert "The part above 60 mm, 29.4 % of the height" in blades.alt


def test_a_lawn_that_is_not_cut_today_has_nothing_hatched() -> None:
    blades, _ = drawn(**SHORT)
    roles = {shape.role for shape in blades.shapes if isinstance(shape, Polygon | Line)}
    assert not {Role.REMOVE, Role.ACCENT} & roles
    assert words_of(blades) == ["stands 50 mm", "50 mm"]
    assert "Nothing comes off today" in blades.alt


def test_the_way_down_is_a_blade_a_cut() -> None:
    # 12 mm grows back in 3 days: 150 to 100, 112 to 74.7, 86.7 to 57.8, 69.8 to 50
    _, staged = drawn(**OVERGROWN)
    assert accents(staged) == [100, 74.7, 57.8, 50]
    assert words_of(staged) == ["100 mm", "75 mm", "58 mm", "50 mm", "150 mm"]
    tips = [
        max(y for _, y in shape.points)
        for shape in staged.shapes
        if isinstance(shape, Polygon) and shape.role is Role.REMOVE
    ]
    assert tips == pytest.approx([150, 112, 86.67, 69.78], abs=0.01)
    assert staged.caption == "Down in 4 cuts, a third at most each time"
    assert "to 100 mm, 75 mm, 58 mm, 50 mm" in staged.alt
    assert staged.true


def test_of_many_cuts_the_first_six_are_drawn() -> None:
    _, staged = drawn(**MEADOW)
    assert len(accents(staged)) == 6
    assert staged.caption == "The first 6 of 15 cuts, a third at most each time"
    assert "and so on to 5 mm" in staged.alt


def test_growth_and_cuts_are_a_saw() -> None:
    _, saw = drawn()
    assert words_of(saw) == ["mow at 90 mm", "set 60 mm", "7.5 days", "each cut"]
    teeth = next(shape for shape in saw.shapes if isinstance(shape, Line) and shape.role is Role.ACCENT)
    assert {round(y, 6) for _, y in teeth.points} == {60, 90}
    assert len(teeth.points) == 9
    assert not saw.true  # across is time
    assert saw.caption == "A cut every 7.5 days keeps the one-third rule"


def test_a_crew_in_inches_reads_inches() -> None:
    blades, _ = drawn(Crew(units="us"), set_height_mm=76.2, standing_height_mm=101.6)
    assert words_of(blades) == ["stands 4 in", "4 in", "cut 3 in", "25 % off"]


@pytest.mark.parametrize("look", [page_look(Colours()), frame_look(Colours())], ids=["page", "frame"])
@pytest.mark.parametrize("measures", [{}, OVERGROWN, MEADOW, SHORT], ids=["kept", "overgrown", "meadow", "short"])
def test_the_words_of_every_drawing_find_a_place(look: Look, measures: dict[str, Any]) -> None:
    box = (124.0, 90.0) if look.page else (984.0, 760.0)
    for drawing in drawn(**measures):
        assert len(drawing.caption) <= 60
        _, reasons = fit(drawing, *box, look)
        assert reasons == ()


@given(measures=MEASURES)
def test_no_measures_break_the_drawings(measures: dict[str, Any]) -> None:
    m = technique(FAMILY, **measures).measures
    size = max(m.standing_height_mm or 0, m.set_height_mm * 1.5)
    for drawing in drawn(**measures):
        assert 0 < len(drawing.alt) <= 250
        assert all(isfinite(edge) and abs(edge) <= 3 * size for edge in extent(drawing.shapes))
        assert len(drawing.shapes) < 60
