"""Chemicals, wounds, saws, batteries, gloves and blades against published worked examples."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from howto.families.safety import chemicals, machines, ppe


def test_s42_the_worst_category_rules() -> None:
    """EPA label review training (A): category III, 12 h; exact."""
    assert chemicals.worst(["IV", "III"]) == "III"
    assert chemicals.entry_hours(["IV", "III"]) == 12


@pytest.mark.parametrize(("category", "hours"), [("I", 48), ("II", 24), ("III", 12), ("IV", 12)])
def test_hours_by_category(category: str, hours: float) -> None:
    """40 CFR 156.208: III read in EPA's training (A), I and II from memory."""
    assert chemicals.entry_hours([category]) == hours


def test_category_one_in_dry_country() -> None:
    assert chemicals.entry_hours(["I"], dry_nerve_poison=True) == 72
    assert chemicals.entry_hours(["II"], dry_nerve_poison=True) == 24


def test_s43_sprayed_at_two_in_the_afternoon() -> None:
    """EPA (A) and a clock: 14:00 and 12 h is 02:00 next day; exact."""
    start = chemicals.clock_minutes("14:00")
    assert start == 840
    assert chemicals.after(start, 12) == (1, 120)
    assert chemicals.clock(120) == "02:00"


@pytest.mark.parametrize(
    ("text", "minutes"),
    [
        ("14:00", 840), ("2 pm", 840), ("2pm", 840), ("14.30", 870), ("14h30", 870), ("12 am", 0), ("12:15 p.m.", 735),
        ("0:05", 5), ("2\u00a0pm", 840), ("25:00", None), ("13 pm", None), ("14", None), ("noon", None),
        ("14:60", None),
    ],
)  # fmt: skip
def test_times_of_day(text: str, minutes: int | None) -> None:
    assert chemicals.clock_minutes(text) == minutes


@given(st.integers(0, 1439), st.floats(0, 200))
def test_a_wait_never_ends_early(start: int, hours: float) -> None:
    days, at = chemicals.after(start, hours)
    assert days * 1440 + at >= start + hours * 60 - 1e-6
    assert days * 1440 + at <= start + hours * 60 + 1


def test_s44_a_litre_of_one_and_nine() -> None:
    """Iowa State University Extension (A): 100 mL and 900 mL; exact."""
    assert chemicals.part_of(1000, 1, 9) == 100
    assert chemicals.part_of(1000, 9, 1) == 900


@given(st.floats(1, 10_000), st.floats(0.1, 20), st.floats(0.1, 200))
def test_double_the_mix_double_the_bleach(total: float, parts: float, others: float) -> None:
    assert chemicals.part_of(2 * total, parts, others) == pytest.approx(2 * chemicals.part_of(total, parts, others))


def test_a_mix_of_nothing_is_refused() -> None:
    with pytest.raises(ValueError, match="part"):
        chemicals.part_of(1, 0, 0)
    with pytest.raises(ValueError, match=r"empty|arg"):
        chemicals.worst([])


@pytest.mark.parametrize(
    ("wound", "doses", "years", "answer"),
    [
        pytest.param("dirty", 3, 7, "booster due", id="S45"),
        pytest.param("clean", 3, 7, "none due", id="S46"),
        ("clean", 3, 10, "none due"),
        ("clean", 3, 10.1, "booster due"),
        ("dirty", 4, 5, "none due"),
        ("dirty", 3, None, "booster due"),
        ("dirty", 2, 1, "vaccine and immune globulin due"),
        ("dirty", None, None, "vaccine and immune globulin due"),
        ("clean", None, None, "vaccine due"),
    ],
)
def test_tetanus(wound: chemicals.Wound, doses: int | None, years: float | None, answer: str) -> None:
    """Merck Manual (A): over 5 years for a dirty wound, over 10 for a clean one; exact."""
    assert chemicals.tetanus(wound, doses, years) == answer


def test_s48_a_chain_at_22_metres_a_second() -> None:
    """EN ISO 11393-2 as a workwear maker prints it (C): class 1 fails, class 2 covers."""
    assert not ppe.covers("1", 22)
    assert ppe.class_for(22) == "2"
    assert ppe.class_for(20) == "1"
    assert ppe.class_for(28.1) is None


def test_s49_spectacles_marked_b() -> None:
    """EN 166 marking guide (C): B is for goggles and shields."""
    assert ppe.IMPACT_WORN_AS["B"] == ("goggles", "shield")
    assert "spectacles" in ppe.IMPACT_WORN_AS["F"]
    assert ppe.IMPACT_WORN_AS["A"] == ("shield",)


def test_s50_two_metres_is_too_near() -> None:
    """29 CFR 1910.266 (A): 3 m (10 ft)."""
    assert not machines.START.allows(2000)
    assert machines.START.allows(3000)


@pytest.mark.parametrize(("pack", "may"), [(-3, False), (0, True), (40, True), (40.1, False)])
def test_s51_charging(pack: float, *, may: bool) -> None:
    """US Fire Administration (A): 0 to 40 °C."""
    assert machines.CHARGE.allows(pack) is may


def test_glove_marks() -> None:
    """EN 388:2016 + A1:2018, a glove maker's tables (C)."""
    marks = ppe.read_marks("4X43D P")
    assert marks == ppe.Marks(4, None, 4, 3, "D", impact=True)
    assert ppe.cut_newtons(marks) == 15
    assert ppe.read_marks("EN 388: 2121X") == ppe.Marks(2, 1, 2, 1, None, impact=False)
    assert ppe.cut_newtons(ppe.Marks(2, 1, 2, 1)) is None
    assert [ppe.read_marks(text) for text in ("5121X", "21", "gloves", "2161")] == [None] * 4


def test_bevels() -> None:
    assert machines.bevel_width(3.5, 30) == pytest.approx(7.0)
    assert machines.raised_end(200, 30) == pytest.approx(100)
    with pytest.raises(ValueError, match="bevel"):
        machines.bevel_width(3.5, 90)


def test_every_task_names_its_standards() -> None:
    assert ppe.WEAR["chainsaw"][0].standard == "EN ISO 11393-2"
    assert {piece.standard for piece in ppe.WEAR["hedge trimming"]} == {
        "EN 388",
        "EN 166",
        "EN 352-1, EN 352-2",
        "EN ISO 20345",
    }
    assert all(piece.level for pieces in ppe.WEAR.values() for piece in pieces)
