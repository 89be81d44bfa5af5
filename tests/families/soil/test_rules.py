from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from howto.families.soil import FAMILY
from howto.families.soil.measures import SoilMeasures
from howto.findings import Severity
from howto.model.crew import Crew
from howto.model.family import Breach, Edit, Rule
from howto.model.prose import prose
from howto.model.technique import Step
from howto.model.work import AnyWork
from howto.quantities import convert
from tests.support.builders import assert_mends, breaches, only, technique

RULES: dict[str, Rule[SoilMeasures]] = {rule.name.removeprefix("soil."): rule for rule in FAMILY.rules}
SQ_FT_1000 = convert(1000, "sq ft", "m2")


def soil(work: str = "mulch", **measures: Any) -> AnyWork:
    """A technique with only the measures a test is about; `having` replaces parts of it."""
    having = measures.pop("having", {})
    return technique(FAMILY, having, **{"work": work, "trunk_clear_mm": None, **measures})


def found(name: str, broken: AnyWork) -> list[Breach]:
    return breaches(RULES[name], broken)


def one(name: str, broken: AnyWork) -> Breach:
    return only(RULES[name], broken)


TESTED = {"steps": (Step(title="Test the drainage.", text=prose("Fill a hole.")),)}

# -- what breaks each rule, and its mend --

BROKEN: list[tuple[str, AnyWork]] = [
    ("mulch-depth", soil(depth_mm=101.0)),
    ("mulch-depth", soil(depth_mm=24.0)),
    ("settled-depth", soil(depth_mm=75.0, old_layer_mm=76.0)),
    ("dug-in-depth", soil("dig in", depth_mm=101.0)),
    ("dug-in-depth", soil("new bed", depth_mm=24.0)),
    ("top-dressing-depth", soil("top-dress", depth_mm=13.1)),
    ("top-dressing-depth", soil("top-dress", depth_mm=5.9)),
    ("mixed-deep-enough", soil("new bed", depth_mm=75.0, dig_depth_mm=224.0)),
    ("clear-of-stems", soil(trunk_clear_mm=24.0)),
    ("clear-of-stems", soil(trunk_clear_mm=0.0)),
    ("over-the-ball", soil(over_the_ball_mm=26.0)),
    ("volume-adds-up", soil(area_m2=20.0, depth_mm=75.0, volume_m3=1.4)),
    ("volume-adds-up", soil(area_m2=20.0, depth_mm=75.0, volume_m3=1.8)),
    ("bags-add-up", soil(area_m2=40.0, depth_mm=100.0, bag_l=30.0, bags=40)),
    ("bags-add-up", soil(area_m2=40.0, depth_mm=100.0, bag_l=30.0, bags=161)),
    ("bags-add-up", soil(area_m2=1.0, depth_mm=25.0, bag_l=20.0, bags=1)),
    ("within-payload", soil(load_m3=1.5, payload_kg=750.0)),
    ("within-payload", soil(material="wet soil", density_kg_per_m3=1600.0, load_m3=1.0, payload_kg=750.0)),
    ("lime-by-test", soil(lime=True)),
    ("lime-by-test", soil(lime=True, soil_test=True)),
    ("lime-by-test", soil(lime=True, soil_test=True, ph=6.0)),
    ("gypsum-for-sodic", soil(gypsum=True)),
    ("gypsum-for-sodic", soil(gypsum=True, sodic=False)),
    ("ph-in-reason", soil(ph=5.9)),
    ("ph-in-reason", soil(ph=7.6)),
    ("hole-deep-enough", soil(drained_mm=302.0)),
    ("hole-deep-enough", soil(drained_mm=302.0, test_hole_mm=250.0)),
    ("drains", soil("new bed", drained_mm=24.0, drained_in_hours=2.0)),
    ("drains", soil("new bed", drained_mm=0.0, drained_in_hours=24.0)),
    ("drains", soil("new bed", drained_mm=37.0, drained_in_hours=2.0, test_hole_mm=450.0)),
    ("drainage-tested", soil("new bed")),
    ("not-wet-or-frozen", soil(wet_or_frozen=True)),
]


@pytest.mark.parametrize(("name", "broken"), BROKEN, ids=[name for name, _ in BROKEN])
def test_a_breach_is_found_and_its_mend_mends(name: str, broken: AnyWork) -> None:
    for each in found(name, broken):
        assert each.what
        assert each.why or RULES[name].why
        assert each.mend[:1].islower()
    assert_mends(RULES[name], broken)


def test_every_rule_is_broken_above() -> None:
    assert {name for name, _ in BROKEN} == set(RULES)


# -- what passes, at each limit --

PASSES: list[tuple[str, AnyWork]] = [
    ("mulch-depth", soil(depth_mm=25.0)),
    ("mulch-depth", soil(depth_mm=100.0)),
    ("mulch-depth", soil("dig in", depth_mm=101.0)),
    ("settled-depth", soil(depth_mm=75.0, old_layer_mm=75.0)),
    ("settled-depth", soil(depth_mm=75.0)),
    ("settled-depth", soil("dig in", depth_mm=100.0, old_layer_mm=100.0)),
    ("dug-in-depth", soil("dig in", depth_mm=25.0)),
    ("dug-in-depth", soil("new bed", depth_mm=100.0)),
    ("dug-in-depth", soil("new bed", depth_mm=150.0, material="topsoil")),
    ("dug-in-depth", soil("mulch", depth_mm=150.0)),
    ("top-dressing-depth", soil("top-dress", depth_mm=6.0)),
    ("top-dressing-depth", soil("top-dress", depth_mm=13.0)),
    ("top-dressing-depth", soil(depth_mm=75.0)),
    ("mixed-deep-enough", soil("new bed", depth_mm=75.0, dig_depth_mm=225.0)),
    ("mixed-deep-enough", soil("new bed", depth_mm=75.0)),
    ("mixed-deep-enough", soil("new bed", depth_mm=75.0, dig_depth_mm=75.0, material="topsoil")),
    ("mixed-deep-enough", soil("mulch", depth_mm=75.0, dig_depth_mm=75.0)),
    ("mixed-deep-enough", soil("new bed", depth_mm=150.0, dig_depth_mm=150.0)),
    ("clear-of-stems", soil(trunk_clear_mm=25.0)),
    ("clear-of-stems", soil()),
    ("clear-of-stems", soil("top-dress", trunk_clear_mm=0.0)),
    ("over-the-ball", soil(over_the_ball_mm=25.0)),
    ("over-the-ball", soil()),
    ("over-the-ball", soil("dig in", over_the_ball_mm=75.0)),
    ("volume-adds-up", soil(area_m2=20.0, depth_mm=75.0, volume_m3=1.425)),
    ("volume-adds-up", soil(area_m2=20.0, depth_mm=75.0, volume_m3=1.725)),
    ("volume-adds-up", soil(area_m2=20.0, depth_mm=60.0, settling_percent=20.0, volume_m3=1.2)),
    ("volume-adds-up", soil(area_m2=20.0, depth_mm=60.0, settling_percent=20.0, volume_m3=1.5)),
    ("volume-adds-up", soil(area_m2=20.0, depth_mm=60.0)),
    ("bags-add-up", soil(area_m2=40.0, depth_mm=100.0, bag_l=30.0, bags=134)),
    ("bags-add-up", soil(area_m2=40.0, depth_mm=100.0, bag_l=30.0, bags=160)),
    ("bags-add-up", soil(area_m2=1.0, depth_mm=25.0, bag_l=20.0, bags=3)),
    ("bags-add-up", soil(bags=3)),
    ("bags-add-up", soil(bag_l=30.0)),
    ("within-payload", soil(load_m3=1.15, payload_kg=747.5)),
    ("within-payload", soil(load_m3=1.5)),
    ("within-payload", soil(payload_kg=750.0)),
    ("within-payload", soil(load_m3=5.0, payload_kg=750.0, material="bark")),
    ("lime-by-test", soil(lime=True, soil_test=True, ph=5.9)),
    ("lime-by-test", soil(lime=False)),
    ("gypsum-for-sodic", soil(gypsum=True, sodic=True)),
    ("gypsum-for-sodic", soil(gypsum=False)),
    ("ph-in-reason", soil(ph=6.0)),
    ("ph-in-reason", soil(ph=7.5)),
    ("ph-in-reason", soil(ph=5.0, lime=True, soil_test=True)),
    ("hole-deep-enough", soil(drained_mm=301.0)),
    ("hole-deep-enough", soil()),
    ("drains", soil("new bed", drained_mm=25.0, drained_in_hours=2.0)),
    ("drains", soil("new bed", drained_mm=37.5, drained_in_hours=2.0, test_hole_mm=450.0)),
    ("drains", soil("new bed", drained_mm=1.0)),
    ("drainage-tested", soil("new bed", drained_mm=60.0)),
    ("drainage-tested", soil("new bed", having=TESTED)),
    ("drainage-tested", soil("dig in")),
    ("not-wet-or-frozen", soil(wet_or_frozen=False)),
    ("not-wet-or-frozen", soil()),
]


@pytest.mark.parametrize(("name", "whole"), PASSES, ids=[name for name, _ in PASSES])
def test_at_its_limit_a_rule_is_kept(name: str, whole: AnyWork) -> None:
    assert found(name, whole) == []


# -- the traps: published sums that are wrong are refused --


def test_t1_four_cubic_yards_for_two_inches_are_refused() -> None:
    # T1: Colorado State University, PlantTalk 1605 and Organic amendments [A]
    broken = soil(area_m2=SQ_FT_1000, depth_mm=50.8, volume_m3=convert(4, "cu yd", "m3"))
    said = one("volume-adds-up", broken)
    assert "lies 32.9 mm deep" in said.why
    assert said.edit == Edit(key="volume", text="4.72 m3")  # 6.17 cubic yards
    yards = soil(crew=Crew(units="us"), area_m2=SQ_FT_1000, depth_mm=50.8, volume_m3=convert(4, "cu yd", "m3"))
    assert "1000 sq ft × 2 in = 6.17 cu yd" in one("volume-adds-up", yards).why
    assert RULES["volume-adds-up"].severity is Severity.ERROR


def test_t3_forty_bags_for_four_cubic_metres_are_refused() -> None:
    # T3: a gardening magazine [C]
    said = one("bags-add-up", soil(area_m2=40.0, depth_mm=100.0, bag_l=30.0, bags=40))
    assert said.what == "1.2 m³ in 40 bags of 30 L"
    assert said.why == "4 m³ is needed: 4000 L / 30 L = 134 bags"
    assert said.edit == Edit(key="bags", text="134")
    assert found("volume-adds-up", soil(area_m2=40.0, depth_mm=100.0, volume_m3=4.0)) == []  # H31


def test_t4_a_cubic_metre_for_15_square_metres_is_refused() -> None:
    # T4: a garden page [C]
    said = one("volume-adds-up", soil(area_m2=15.0, depth_mm=75.0, volume_m3=1.0))
    assert "covers 13.3 m² at 75 mm" in said.why
    assert found("volume-adds-up", soil(area_m2=13.3, depth_mm=75.0, volume_m3=1.0)) == []


# -- the arithmetic they show --


def test_one_bag_is_spoken_of_as_one() -> None:
    said = one("bags-add-up", soil(area_m2=1.0, depth_mm=25.0, bag_l=20.0, bags=1))
    assert said.what == "0.02 m³ in 1 bag of 20 L"
    assert said.why.endswith("= 2 bags")


def test_a_drained_hole_is_held_to_its_own_depth() -> None:
    said = one("drains", soil("new bed", drained_mm=37.0, drained_in_hours=2.0, test_hole_mm=450.0))
    assert "a hole of 450 mm needs 450 mm / 24 h = 18.8 mm/h" in said.why
    assert said.edit == Edit(key="drained", text="37.5 mm")


def test_the_hole_is_pointed_at_where_it_is_written() -> None:
    assert one("hole-deep-enough", soil(drained_mm=302.0)).field == "measures.drained_mm"
    assert one("hole-deep-enough", soil(drained_mm=302.0, test_hole_mm=250.0)).field == "measures.test_hole_mm"


def test_why_lime_is_refused() -> None:
    assert one("lime-by-test", soil(lime=True)).why.startswith("no soil test is written")
    assert one("lime-by-test", soil(lime=True, soil_test=True)).why.startswith("the test gives no pH")
    assert one("lime-by-test", soil(lime=True, soil_test=True, ph=6.8)).why.startswith("the test shows pH 6.8")


def test_a_number_from_memory_only_advises() -> None:
    assert RULES["not-wet-or-frozen"].severity is Severity.ADVICE


@given(
    work=st.sampled_from(["dig in", "mulch", "top-dress", "new bed"]),
    depth=st.floats(0.1, 1000),
    old=st.none() | st.floats(0, 1000),
    dig=st.none() | st.floats(1, 3000),
    ring=st.none() | st.floats(0, 3000),
)
def test_mends_of_depths_mend(
    work: str, depth: float, old: float | None, dig: float | None, ring: float | None
) -> None:
    whole = soil(work, depth_mm=depth, old_layer_mm=old, dig_depth_mm=dig, trunk_clear_mm=ring)
    for name in ("mulch-depth", "settled-depth", "dug-in-depth", "top-dressing-depth", "mixed-deep-enough"):
        if found(name, whole):
            assert_mends(RULES[name], whole)


@given(
    area=st.floats(0.01, 100_000),
    depth=st.floats(1, 1000),
    settling=st.none() | st.floats(0, 60),
    part=st.floats(0.1, 3),
    bag=st.floats(1, 2000),
    bags=st.integers(1, 10_000),
)
def test_mends_of_sums_mend(
    area: float, depth: float, settling: float | None, part: float, bag: float, bags: int
) -> None:
    whole = soil(
        area_m2=area,
        depth_mm=depth,
        settling_percent=settling,
        volume_m3=area * depth / 1000 * part,
        bag_l=bag,
        bags=bags,
    )
    for name in ("volume-adds-up", "bags-add-up"):
        if found(name, whole):
            assert_mends(RULES[name], whole)


@given(load=st.floats(0.001, 100), payload=st.floats(0.1, 50_000), density=st.floats(50, 3000))
def test_mends_of_loads_mend(load: float, payload: float, density: float) -> None:
    whole = soil(load_m3=load, payload_kg=payload, density_kg_per_m3=density)
    if found("within-payload", whole):
        assert_mends(RULES["within-payload"], whole)


@given(drained=st.floats(0, 2000), hours=st.floats(0.01, 24), hole=st.none() | st.floats(50, 2000))
def test_mends_of_the_drainage_test_mend(drained: float, hours: float, hole: float | None) -> None:
    whole = soil("new bed", drained_mm=drained, drained_in_hours=hours, test_hole_mm=hole)
    for name in ("hole-deep-enough", "drains"):
        if found(name, whole):
            whole = assert_mends(RULES[name], whole)
    assert found("drains", whole) == []
