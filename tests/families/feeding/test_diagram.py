"""The drawings of feeding: which are drawn, how big, and that their words are the figures'."""

from datetime import date
from math import hypot, isfinite
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from howto.families.feeding import FAMILY
from howto.families.feeding.diagram import band
from howto.model.crew import Crew
from howto.model.shown import shown
from howto.shapes import Dimension, Drawing, Label, Level, Line, Polygon, Role, extent
from tests.families.feeding.examples import BARE, COUCH, ESPALIER, LAWN_3, MEASURES, NORTH, POTS, SOUTH, TREE, made
from tests.families.feeding.test_figures import TODAY, figures


def drawn(crew: Crew = NORTH, today: date = TODAY, **measures: Any) -> tuple[Drawing, ...]:
    return FAMILY.drawings(made(None, crew, **measures), today)


def words(drawing: Drawing) -> list[str]:
    """Return what dimensions, levels and labels say."""
    return [each.text for each in drawing.shapes if isinstance(each, Dimension | Level | Label)]


def of(drawing: Drawing, role: Role) -> list[Line | Polygon]:
    return [each for each in drawing.shapes if isinstance(each, Line | Polygon) and each.role is role]


@pytest.mark.parametrize(
    ("measures", "captions"),
    [
        (TREE, ["Plan: feed the ring", "The year: one dose", "Section: on the soil"]),
        ({**ESPALIER, "wall": True}, ["Plan: feed the half ring", "The year: 2 doses", "Section"]),
        ({**TREE, "canopy_mm": None}, ["The year"]),
        (LAWN_3, ["From above: half one way", "The year", "Section: from the leaf"]),
        ({**LAWN_3, "kind": "bed"}, ["Each square metre takes 30\u00a0g", "The year"]),
        ({**POTS, "feed_strength_ppm": 200.0}, ["The can", "The year"]),
        ({**LAWN_3, "mix_g_per_l": 1.0, "sprayer_l": 10.0}, ["The sprayer", "From above", "The year"]),
    ],
)
def test_what_is_drawn(measures: dict[str, Any], captions: list[str]) -> None:
    found = drawn(**measures)
    assert len(found) == len(captions)
    for drawing, caption in zip(found, captions, strict=True):
        assert drawing.caption.startswith(caption)


def test_the_ring_is_drawn_to_its_figures() -> None:
    """Canopy 2 m: bare 300 mm from a 60 mm trunk, fed to 1.15 m; the dotted band lies between."""
    plan = drawn(**TREE)[0]
    assert plan.true
    assert {"300 mm", "1.15 m", "2 m"} <= {word.replace("\u00a0", " ") for word in words(plan)}
    (fed,) = of(plan, Role.MULCH)
    reaches = [hypot(x, y) for x, y in fed.points]
    assert min(reaches) == pytest.approx(330)
    assert max(reaches) == pytest.approx(1150)
    assert f"each dose {shown(figures(**TREE)['dose'], NORTH)}" in " ".join(words(plan))


def test_dimensions_measure_what_they_say() -> None:
    for drawing in (drawn(**TREE)[0], drawn(**TREE)[2]):
        for each in drawing.shapes:
            if isinstance(each, Dimension):
                length = hypot(each.end[0] - each.start[0], each.end[1] - each.start[1])
                said = each.text.replace("\u00a0", " ")
                assert said == (f"{length:.0f} mm" if length < 1000 else f"{length / 1000:.2f} m".replace(".00", ""))


def test_before_a_wall_the_band_is_half_a_ring() -> None:
    plan = drawn(**ESPALIER, wall=True)[0]
    (fed,) = of(plan, Role.MULCH)
    assert min(y for _, y in fed.points) >= -1e-6
    assert of(plan, Role.WALL)
    assert "wall" in words(plan)


def test_a_trunk_that_is_not_measured_is_not_written_on_the_section() -> None:
    section = drawn(**{**TREE, "trunk_mm": None, "tree_age_years": 4.0})[2]
    assert "300\u00a0mm up" in words(section)
    assert not [word for word in words(section) if word.startswith("trunk")]


def test_a_band_is_closed_from_outside_in() -> None:
    outline = band(100, 200)
    assert outline[0] == pytest.approx((200, 0))
    assert outline[-1] == pytest.approx((100, 0))
    assert hypot(*outline[len(outline) // 4]) == pytest.approx(200)


def test_the_year_shows_each_dose_and_the_time_without_nitrogen() -> None:
    year = drawn(**ESPALIER)[1]
    assert not year.true
    assert len(of(year, Role.WOOD)) == 2
    assert len(of(year, Role.DANGER)) == 1
    assert [word for word in words(year) if "–" in word] == ["Dec–Feb", "Mar–May", "Jun–Aug", "Sep–Nov"]
    assert {"1 Mar: 268\u00a0g", "12 Apr: 268\u00a0g", "no nitrogen after 1 Jul"} <= set(words(year))
    assert "1 March 2027; 12 April 2027" in year.alt


def test_in_the_south_the_year_begins_half_a_year_on() -> None:
    year = drawn(SOUTH, **ESPALIER)[1]
    assert [word for word in words(year) if "–" in word] == ["Jun–Aug", "Sep–Nov", "Dec–Feb", "Mar–May"]
    assert "no nitrogen after 1 Jan" in words(year)


def test_an_autumn_dose_ends_the_time_without_nitrogen() -> None:
    year = drawn(**TREE, autumn_share_percent=25.0)[1]
    (zone,) = of(year, Role.DANGER)
    autumn = max(max(x for x, _ in bar.points) for bar in of(year, Role.WOOD))
    assert max(x for x, _ in zone.points) < autumn
    assert "1 Oct: 268\u00a0g" in words(year)


def test_of_many_doses_the_first_and_the_last_are_named() -> None:
    year = drawn(**POTS, feed_strength_ppm=200.0, doses=8)[1]
    assert len(of(year, Role.WOOD)) == 8
    assert [word for word in words(year) if "g/L" in word] == ["1 Apr: 1\u00a0g/L", "8 Jul: 1\u00a0g/L"]


def test_today_stands_on_the_line_while_it_runs() -> None:
    assert "today" in words(drawn(today=date(2027, 4, 1), **ESPALIER)[1])
    assert "today" not in words(drawn(**ESPALIER)[1])


def test_the_can_is_as_big_as_it_is_and_its_levels_are_quarters() -> None:
    """A 9 L can: π/4 x width² x 1.15 width = 9 L, so 215 mm across."""
    can = drawn(**POTS, feed_strength_ppm=200.0, can_l=9.0)[0]
    (water,) = of(can, Role.WATER)
    width = max(x for x, _ in water.points) * 2
    full = max(y for _, y in water.points)
    assert 3.14159 / 4 * width**2 * full / 1e6 == pytest.approx(9, abs=0.001)
    heights = [each.at[1] for each in can.shapes if isinstance(each, Level)]
    assert heights == [pytest.approx(full * quarter / 4) for quarter in (1, 2, 3, 4)]
    assert "9\u00a0g in at half full" in words(can)


def test_a_concentrate_is_measured_in_millilitres() -> None:
    can = drawn(**POTS, concentrate_ml_per_l=10.0, can_l=9.0)[0]
    assert "90\u00a0mL in at half full" in words(can)
    assert "feed in at half full" in words(drawn(**{**POTS, "analysis": "0-0-50"}, feed_strength_ppm=200.0)[0])


def test_a_warm_lawn_shows_its_thermometer() -> None:
    warm = drawn(**COUCH, nutrient_rate_g_per_m2=3.0)[2]
    assert "18\u00a0°C or more" in words(warm)
    assert "100\u00a0mm" in words(warm)
    assert of(drawn(**LAWN_3)[2], Role.WALL) == []


def test_a_lawns_passes_are_as_wide_as_its_spreader() -> None:
    above = drawn(**LAWN_3, area_m2=9.0, spreader_width_mm=500.0)[0]
    assert len(of(above, Role.LAST)) == 6
    assert {"500\u00a0mm", "3\u00a0m"} <= set(words(above))
    assert "first pass, up and down: 15\u00a0g/m²" in words(above)


@given(given=MEASURES, crew=st.sampled_from((NORTH, SOUTH, Crew(units="us"))))
def test_every_drawing_is_sound(given: dict[str, Any], crew: Crew) -> None:
    found = drawn(crew, **BARE | given)
    assert 1 <= len(found) <= 3
    for drawing in found:
        left, bottom, right, top = extent(drawing.shapes)
        assert all(map(isfinite, (left, bottom, right, top)))
        assert 10 < right - left < 50_000
        assert 10 < top - bottom < 80_000
        assert 20 < len(drawing.alt) <= 250
        assert len(drawing.caption) <= 70
        assert all(words(drawing))
