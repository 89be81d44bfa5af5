"""The drawings of safety: at true size, with the figures' own numbers on them."""

from datetime import date
from typing import Any

import pytest

from howto.compute.ready import told
from howto.families.safety import FAMILY
from howto.families.safety.diagram_people import person
from howto.layout.drawing.diagram import fit
from howto.layout.drawing.look import Look, frame_look, page_look
from howto.model.crew import Colours, Crew
from howto.shapes import Disc, Drawing, Line, Polygon, Role, extent
from tests.support.builders import technique
from tests.support.drawings import words_of

TODAY = date(2026, 6, 10)
BARE: dict[str, Any] = dict.fromkeys(("noise_db", "noise_time_minutes", "vibration_m_per_s2", "trigger_time_minutes"))
LADDER: dict[str, Any] = {"country": "New Zealand", "top_contact_mm": 4000.0, "landing_mm": 3000.0}
LINE: dict[str, Any] = {
    "country": "New Zealand",
    "line": "low voltage",
    "line_consent": True,
    "line_height_mm": 6000.0,
    "reach_mm": 5400.0,
}
POLES: dict[str, Any] = {"country": "Victoria", "line": "on poles", "line_distance_mm": 2500.0}
LIFT: dict[str, Any] = {"load_kg": 8.0, "hands_out_cm": 40.0, "hands_up_cm": 15.0, "set_down_up_cm": 75.0}
DAY: dict[str, Any] = {
    "machines": ("hedge trimmer", "blower"),
    "noise_db": (95.0, 91.0),
    "noise_time_minutes": (30.0, 60.0),
    "vibration_m_per_s2": (4.0, 2.0),
    "trigger_time_minutes": (60.0, 60.0),
}
BLADE: dict[str, Any] = {"bevel_deg": 30.0, "blade_thickness_mm": 3.5}
MIX: dict[str, Any] = {"bleach_mix_l": 1.0, "toxicity": ("III",), "sprayed_at": "14:00"}


def drawn(crew: Crew | None = None, **measures: Any) -> tuple[Drawing, ...]:
    work = technique(FAMILY, {}, crew=crew, **{**BARE, **measures})
    return tuple(told(drawing, work.reader) for drawing in FAMILY.drawings(work, TODAY))


def areas(drawing: Drawing, role: Role) -> list[tuple[tuple[float, float], ...]]:
    return [each.points for each in drawing.shapes if isinstance(each, Polygon) and each.role is role]


def test_s26_a_ladder_at_true_size() -> None:
    (ladder,) = drawn(**LADDER, foot_measured_mm=1600.0)
    assert {"1 m", "4 m", "1 m past", "landing 3 m", "as found: 68.2°", "76° from the ground"} <= set(words_of(ladder))
    found = next(each for each in ladder.shapes if isinstance(each, Line) and each.role is Role.LAST)
    assert found.points == ((-1600.0, 0.0), (0.0, 4000.0))
    assert "foot 1\u00a0m out" in ladder.alt
    left, bottom, right, top = extent(ladder.shapes)
    assert -2200 < left < -1500
    assert bottom > -400
    assert right < 1500
    assert 4000 < top < 4700


def test_a_ladder_on_its_landing_passes_it() -> None:
    (ladder,) = drawn(country="Denmark", landing_mm=2600.0)
    assert "1 m past" in words_of(ladder)
    rail = areas(ladder, Role.WATER)[0]
    assert max(y for _, y in rail) == pytest.approx(3600, abs=20)
    assert ladder.caption == "Ladder: foot 697\u00a0mm out, 75°"
    assert "touches here" not in words_of(ladder)


def test_s30_the_zone_round_a_line() -> None:
    (line,) = drawn(**LINE)
    (zone,) = areas(line, Role.DANGER)
    across, up = [x for x, _ in zone], [y for _, y in zone]
    assert max(across) == pytest.approx(500)
    assert (max(up) + min(up)) / 2 == pytest.approx(6000, abs=5)
    assert {"500 mm", "600 mm", "highest point of the work"} <= set(words_of(line))
    assert "outside it" in line.alt


def test_a_branch_inside_the_zone_is_too_near() -> None:
    (line,) = drawn(**POLES)
    assert {"3 m", "2.5 m", "too near: stop", "spotter needed to here"} <= set(words_of(line))
    assert line.alt.endswith("inside the zone: stop.")


def test_a_line_without_the_work_shows_the_zone() -> None:
    (line,) = drawn(country="Victoria", line="on towers")
    assert "8 m" in words_of(line)
    assert line.alt.endswith("A worker stands below with a pole that ends outside it.")
    assert drawn(country="Denmark", line="on poles", line_distance_mm=1.0) == ()


def test_zones_of_a_lift() -> None:
    (lift,) = drawn(**LIFT)
    assert [(each.number, each.at) for each in lift.shapes if isinstance(each, Disc)] == [
        (1, (400.0, 150.0)),
        (2, (400.0, 750.0)),
    ]
    zone = areas(lift, Role.KEEP)[0]
    assert max(x for x, _ in zone) <= 630
    assert {"8 kg may be held here", "630 mm", "750 mm"} <= set(words_of(lift))
    assert "pick up at most 9.49 kg and set down at most 11.6 kg" in lift.alt.replace("\u00a0", " ")


def test_a_load_too_heavy_anywhere_has_no_zone() -> None:
    (lift,) = drawn(**{**LIFT, "load_kg": 25.0, "twist_deg": 30.0})
    assert areas(lift, Role.KEEP) == []
    assert "half of it, 12.5 kg, here" in words_of(lift)
    assert "nowhere may 25\u00a0kg be held so" in lift.alt
    (hopeless,) = drawn(**{**LIFT, "load_kg": 60.0, "set_down_up_cm": None})
    assert areas(hopeless, Role.KEEP) == []


def test_a_day_is_filled_tool_by_tool() -> None:
    loud, shaky = drawn(**DAY)
    assert {"hedge trimmer: 63 %", "blower: 50 %", "113 %", "a full day: 100 %"} <= set(words_of(loud))
    assert {"hedge trimmer: 32 points", "blower: 8 points", "40 points"} <= set(words_of(shaky))
    assert areas(loud, Role.KEEP)[0][1][0] == pytest.approx(630, abs=1)
    assert areas(loud, Role.REMOVE)[0][0][0] == 1000
    assert areas(shaky, Role.REMOVE) == []
    assert not loud.true
    assert "In all 113\u00a0%" in loud.alt


def test_a_day_of_many_tools_is_told_short() -> None:
    many: dict[str, Any] = {
        "machines": tuple(f"a machine with a very long name, number {at}" for at in range(8)),
        "noise_db": (100.0,) * 8,
        "noise_time_minutes": (60.0,) * 8,
    }
    (loud,) = drawn(**many)
    said = "A bar for the noise of the day, NIOSH, filled by 8 tools: in all 3200 %; a full day is 100."
    assert loud.alt.replace("\u00a0", " ") == said


def test_a_blade_is_cut_across() -> None:
    (blade,) = drawn(**BLADE)
    assert {"bevel 30°", "3.5 mm", "ground face 7 mm"} <= set(words_of(blade))
    assert areas(blade, Role.WALL)[0][3][0] == pytest.approx(6.06, abs=0.01)
    (usual,) = drawn(bevel_deg=45.0)
    assert "3.5 mm" in words_of(usual)


def test_a_mix_and_a_wait() -> None:
    mix, wait = drawn(**MIX)
    assert {"900 mL", "100 mL", "water first: 9 parts"} <= set(words_of(mix))
    assert {"12 h", "sprayed 14:00", "in from 02:00"} <= set(words_of(wait))
    assert areas(wait, Role.DANGER)[0][1][0] == pytest.approx(800)
    assert len(drawn(label_wait_hours=48.0)) == 1
    assert drawn(label_wait_hours=0.0) == ()


def test_at_most_three_drawings() -> None:
    assert len(drawn(**{**LADDER, **DAY, **BLADE, **MIX})) == 3
    assert drawn() == ()


def test_somebody_is_as_tall_as_people_are() -> None:
    _, foot, _, top = extent(person((0.0, 0.0), (400.0, 900.0)))
    assert (foot, top) == (0.0, 1750.0)


@pytest.mark.parametrize("look", [page_look(Colours()), frame_look(Colours())], ids=["page", "frame"])
@pytest.mark.parametrize(
    "measures",
    [LADDER, {"landing_mm": 2600.0}, LINE, POLES, LIFT, {**LIFT, "load_kg": 25.0}, DAY, BLADE, MIX],
    ids=["ladder", "landing", "line", "poles", "lift", "heavy", "day", "blade", "mix"],
)
@pytest.mark.parametrize("units", ["metric", "us"])
def test_the_words_of_every_drawing_find_a_place(look: Look, measures: dict[str, Any], units: Any) -> None:
    box = (124.0, 90.0) if look.page else (984.0, 760.0)
    for drawing in drawn(Crew(units=units), **measures):
        assert len(drawing.alt) <= 250
        assert len(drawing.caption) <= 60
        _, reasons = fit(drawing, *box, look)
        assert reasons == ()
