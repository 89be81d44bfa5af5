"""The drawings of feeding: which are drawn, how big, and that their words are the figures'."""

from datetime import date
from math import hypot, isfinite
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from howto.compute import ready
from howto.families.feeding import FAMILY
from howto.families.feeding.diagram import band
from howto.languages.reader import Reader
from howto.model.crew import Crew
from howto.model.shown import shown
from howto.shapes import DimensionLine, Drawing, Level, Line, Polygon, Role, extent
from tests.families.feeding.examples import BARE, COUCH, ESPALIER, LAWN_3, MEASURES, NORTH, POTS, SOUTH, TREE, made
from tests.families.feeding.test_figures import TODAY, figures
from tests.support.drawings import words_of

QUARTERS = ["1 Dec–28 Feb", "1 Mar–31 May", "1 Jun–31 Aug", "1 Sept–30 Nov"]


def drawn(crew: Crew = NORTH, today: date = TODAY, **measures: Any) -> tuple[Drawing, ...]:
    """Return the drawings as the crew reads them, spaces plain."""
    work = made(None, crew, **measures)
    return tuple(ready.told(each, work.reader) for each in FAMILY.drawings(work, today))


def of(drawing: Drawing, role: Role) -> list[Line | Polygon]:
    return [each for each in drawing.shapes if isinstance(each, Line | Polygon) and each.role is role]


@pytest.mark.parametrize(
    ("measures", "captions"),
    [
        (TREE, ["Plan: feed the ring", "The year: one dose", "Section: on the soil"]),
        ({**ESPALIER, "wall": True}, ["Plan: feed the half ring", "The year: 2 doses", "Section"]),
        ({**TREE, "canopy_mm": None}, ["The year"]),
        (LAWN_3, ["From above: half one way", "The year", "Section: from the leaf"]),
        ({**LAWN_3, "kind": "bed"}, ["Each square metre takes 30 g", "The year"]),
        ({**POTS, "feed_strength_ppm": 200.0}, ["The can", "The year"]),
        ({**LAWN_3, "mix_g_per_l": 1.0, "sprayer_l": 10.0}, ["The sprayer", "From above", "The year"]),
    ],
)
def test_what_is_drawn(measures: dict[str, Any], captions: list[str]) -> None:
    found = drawn(**measures)
    assert len(found) == len(captions)
    for drawing, caption in zip(found, captions, strict=True):
        assert drawing.caption.replace("\u00a0", " ").startswith(caption)


def test_the_ring_is_drawn_to_its_figures() -> None:
    """Canopy 2 m: bare 300 mm from a 60 mm trunk, fed to 1.15 m; the dotted band lies between."""
    plan = drawn(**TREE)[0]
    assert plan.true
    assert {"300 mm", "1.15 m", "2 m"} <= set(words_of(plan))
    (fed,) = of(plan, Role.MULCH)
    reaches = [hypot(x, y) for x, y in fed.points]
    assert min(reaches) == pytest.approx(330)
    assert max(reaches) == pytest.approx(1150)
    dose = shown(figures(**TREE)["dose"], Reader()).replace("\u00a0", " ")
    assert f"each dose {dose}" in " ".join(words_of(plan))


def test_dimensions_measure_what_they_say() -> None:
    for drawing in (drawn(**TREE)[0], drawn(**TREE)[2]):
        for each in drawing.shapes:
            if isinstance(each, DimensionLine):
                length = hypot(each.end[0] - each.start[0], each.end[1] - each.start[1])
                said = each.text.replace("\u00a0", " ")
                assert said == (f"{length:.0f} mm" if length < 1000 else f"{length / 1000:.2f} m".replace(".00", ""))


def test_before_a_wall_the_band_is_half_a_ring() -> None:
    plan = drawn(**ESPALIER, wall=True)[0]
    (fed,) = of(plan, Role.MULCH)
    assert min(y for _, y in fed.points) >= -1e-6
    assert of(plan, Role.WALL)
    assert "wall" in words_of(plan)


def test_a_trunk_that_is_not_measured_is_not_written_on_the_section() -> None:
    section = drawn(**{**TREE, "trunk_mm": None, "tree_age_years": 4.0})[2]
    assert "300 mm up" in words_of(section)
    assert not [word for word in words_of(section) if word.startswith("trunk")]


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
    assert [word for word in words_of(year) if "–" in word] == QUARTERS
    assert {"1 Mar: 268 g", "12 Apr: 268 g", "no nitrogen after 1 Jul"} <= set(words_of(year))
    assert "1 March 2027; 12 April 2027" in year.alt


def test_in_the_south_the_year_begins_half_a_year_on() -> None:
    year = drawn(SOUTH, **ESPALIER)[1]
    assert [word for word in words_of(year) if "–" in word] == [*QUARTERS[2:], "1 Dec–29 Feb", QUARTERS[1]]
    assert "no nitrogen after 1 Jan" in words_of(year)


def test_an_autumn_dose_ends_the_time_without_nitrogen() -> None:
    year = drawn(**TREE, autumn_share_percent=25.0)[1]
    (zone,) = of(year, Role.DANGER)
    autumn = max(max(x for x, _ in bar.points) for bar in of(year, Role.WOOD))
    assert max(x for x, _ in zone.points) < autumn
    assert "1 Oct: 268 g" in words_of(year)


def test_of_many_doses_the_first_and_the_last_are_named() -> None:
    year = drawn(**POTS, feed_strength_ppm=200.0, doses=8)[1]
    assert len(of(year, Role.WOOD)) == 8
    assert [word for word in words_of(year) if "g/L" in word] == ["1 Apr: 1 g/L", "8 Jul: 1 g/L"]


def test_today_stands_on_the_line_while_it_runs() -> None:
    assert "today" in words_of(drawn(today=date(2027, 4, 1), **ESPALIER)[1])
    assert "today" not in words_of(drawn(**ESPALIER)[1])


def test_the_can_is_as_big_as_it_is_and_its_levels_are_quarters() -> None:
    """A 9 L can: π/4 x width² x 1.15 width = 9 L, so 215 mm across."""
    can = drawn(**POTS, feed_strength_ppm=200.0, can_l=9.0)[0]
    (water,) = of(can, Role.WATER)
    width = max(x for x, _ in water.points) * 2
    full = max(y for _, y in water.points)
    assert 3.14159 / 4 * width**2 * full / 1e6 == pytest.approx(9, abs=0.001)
    heights = [each.at[1] for each in can.shapes if isinstance(each, Level)]
    assert heights == [pytest.approx(full * quarter / 4) for quarter in (1, 2, 3, 4)]
    assert "9 g in at half full" in words_of(can)


def test_a_concentrate_is_measured_in_millilitres() -> None:
    can = drawn(**POTS, concentrate_ml_per_l=10.0, can_l=9.0)[0]
    assert "90 mL in at half full" in words_of(can)
    assert "feed in at half full" in words_of(drawn(**{**POTS, "analysis": "0-0-50"}, feed_strength_ppm=200.0)[0])


def test_a_warm_lawn_shows_its_thermometer() -> None:
    warm = drawn(**COUCH, nutrient_rate_g_per_m2=3.0)[2]
    assert "18 °C or more" in words_of(warm)
    assert "100 mm" in words_of(warm)
    assert of(drawn(**LAWN_3)[2], Role.WALL) == []


def test_a_lawns_passes_are_as_wide_as_its_spreader() -> None:
    above = drawn(**LAWN_3, area_m2=9.0, spreader_width_mm=500.0)[0]
    assert len(of(above, Role.LAST)) == 6
    assert {"500 mm", "3 m"} <= set(words_of(above))
    assert "first pass, up and down: 15 g/m²" in words_of(above)


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
        assert all(words_of(drawing))
