from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from howto.families.planting import FAMILY
from howto.families.planting.measures import PlantingMeasures
from howto.findings import Severity
from howto.model.crew import Crew
from howto.model.family import Breach, Edit, Rule
from howto.model.prose import prose
from howto.model.technique import Hazard, Kit, Step
from howto.model.work import AnyWork
from tests.support.builders import assert_mends, breaches, only, technique
from tests.support.cases import book

RULES: dict[str, Rule[PlantingMeasures]] = {rule.name.removeprefix("planting."): rule for rule in FAMILY.rules}
EMPTY: dict[str, Any] = {"pattern": None, "spacing_mm": None, "area_m2": None}
BALL: dict[str, Any] = {"ball_width_mm": 400.0, "ball_depth_mm": 330.0, "first_root_mm": 30.0}  # 300 mm of roots
SOUTH = Crew(hemisphere="south")
WARNED = {"cautions": (Hazard(title="Buried services.", text=prose("Ask for the plans of cables.")),)}
FREED = {"steps": (Step(title="Free the roots.", text=prose("Cut what circles.")),)}


def plant(work: str = "tree", *plants: str, crew: Crew | None = None, **given: Any) -> AnyWork:
    """A planting with only the measures a test is about; `having` replaces parts of the technique."""
    having = {"plants": plants, "season": given.pop("season", ""), **given.pop("having", {})}
    return technique(FAMILY, having, book=book(), crew=crew, **{**EMPTY, "work": work, **given})


def found(name: str, broken: AnyWork) -> list[Breach]:
    return breaches(RULES[name], broken)


def one(name: str, broken: AnyWork) -> Breach:
    return only(RULES[name], broken)


def kit(*names: str) -> dict[str, Any]:
    return {"tools": tuple(Kit(name=name) for name in names)}


# -- what breaks each rule, and its mend --

BROKEN: list[tuple[str, AnyWork]] = [
    ("hole-width", plant(ball_width_mm=400.0, hole_width_mm=599.0)),
    ("hole-width", plant(stock="balled", calliper_mm=40.0, hole_width_mm=599.0)),
    ("hole-depth", plant(**BALL, hole_depth_mm=302.0)),
    ("hole-depth", plant(**BALL, hole_depth_mm=302.0, stock="bare root")),
    ("set-proud", plant(**BALL, hole_depth_mm=280.0)),
    ("set-proud", plant(**BALL, hole_depth_mm=240.0)),
    ("set-proud", plant(**BALL, proud_mm=10.0)),
    ("set-proud", plant(**BALL, proud_mm=60.0)),
    ("set-proud", plant(**BALL, hole_depth_mm=270.0, drainage="poor")),
    ("set-proud", plant(**BALL, proud_mm=31.0, drainage="poor")),
    ("levels-add-up", plant(**BALL, hole_depth_mm=260.0, proud_mm=30.0)),
    ("topmost-root", plant(first_root_mm=51.0)),
    ("no-soil-over", plant(soil_over_mm=20.0)),
    ("no-loose-soil-under", plant(loose_soil_mm=50.0)),
    ("ball-size", plant(stock="balled", ball_width_mm=450.0, calliper_mm=50.0)),
    ("ball-depth", plant(stock="balled", ball_width_mm=400.0, ball_depth_mm=250.0)),
    ("calliper-height", plant(calliper_mm=50.0, calliper_at_mm=300.0)),
    ("calliper-height", plant(calliper_mm=120.0, calliper_at_mm=150.0)),
    ("heavy-ball", plant(stock="balled", ball_width_mm=600.0)),
    ("heavy-ball", plant(ball_weight_kg=47.0)),
    ("stakes-off", plant(staked_months=18.0)),
    ("stakes-off", plant(staked_months=36.0)),
    ("stake-only-if-needed", plant(stands_alone=True, stakes=2)),
    ("tie-low", plant(height_mm=2400.0, tie_height_mm=801.0)),
    ("no-feed-in-hole", plant(feed_in_hole=True)),
    ("mulch-depth", plant(mulch_depth_mm=101.0)),
    ("mulch-depth", plant("shrub", mulch_depth_mm=49.0)),
    ("mulch-clear", plant(trunk_clear_mm=24.0)),
    ("mulch-clear", plant(trunk_clear_mm=0.0)),
    ("mulch-ring", plant(mulch_width_mm=999.0)),
    ("water-on-the-day", plant(first_water_l=10.0)),
    ("water-on-the-day", plant(first_water_l=100.0)),
    ("water-each", plant(calliper_mm=50.8, water_each_l=7.0)),
    ("water-each", plant(calliper_mm=50.8, water_each_l=12.0)),
    ("water-each", plant(calliper_mm=50.8, water_each_l=12.0, summers="warm")),
    ("water-each", plant("shrub", pot_l=10.0, water_each_l=2.4)),
    ("water-each", plant("shrub", pot_l=0.5, water_each_l=0.2)),
    ("ordered-up", plant("bed", pattern="square", spacing_mm=457.2, area_m2=5.574182, ordered=26)),
    ("ordered-up", plant("bed", pattern="triangle", spacing_mm=300.0, area_m2=10.0, ordered=200)),
    ("ordered-up", plant("bed", spacing_mm=330.0, row_length_m=10.0, spare_percent=10.0, ordered=34)),
    ("spacing", plant("bed", "box", spacing_mm=149.0)),
    ("spacing", plant("bed", "box", spacing_mm=201.0)),
    ("spacing", plant("bed", "Vinca minor", spacing_mm=600.0)),
    ("bare-root-season", plant(stock="bare root", season="April")),
    ("bare-root-season", plant(stock="bare root", season="spring")),
    ("bare-root-season", plant(stock="bare root", season="December", crew=SOUTH)),
    ("planting-season", plant(season="summer")),
    ("planting-season", plant(season="July", crew=SOUTH)),
    ("roots-covered", plant(stock="bare root")),
    ("circling-roots", plant()),
    ("dig-safe", plant()),
    ("dig-safe", plant("shrub")),
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
    ("hole-width", plant(ball_width_mm=400.0, hole_width_mm=600.0)),
    ("hole-width", plant(hole_width_mm=600.0)),
    ("hole-width", plant(ball_width_mm=400.0)),
    ("hole-depth", plant(**BALL, hole_depth_mm=301.0)),
    ("hole-depth", plant(hole_depth_mm=301.0)),
    ("hole-depth", plant(**BALL)),
    ("set-proud", plant(**BALL, hole_depth_mm=275.0)),
    ("set-proud", plant(**BALL, hole_depth_mm=250.0)),
    ("set-proud", plant(**BALL, proud_mm=25.0)),
    ("set-proud", plant(**BALL, proud_mm=50.0)),
    ("set-proud", plant(ball_width_mm=800.0, ball_depth_mm=600.0, proud_mm=60.0)),
    ("set-proud", plant(**BALL, proud_mm=33.0, drainage="poor")),
    ("set-proud", plant(**BALL, proud_mm=150.0, drainage="poor")),
    ("set-proud", plant(**BALL)),
    ("set-proud", plant(proud_mm=0.0)),
    ("set-proud", plant(**BALL, hole_depth_mm=300.0, stock="bare root")),
    ("set-proud", plant(**BALL, hole_depth_mm=400.0)),
    ("levels-add-up", plant(**BALL, hole_depth_mm=265.0, proud_mm=30.0)),
    ("levels-add-up", plant(**BALL, hole_depth_mm=265.0)),
    ("levels-add-up", plant(**BALL, hole_depth_mm=400.0, proud_mm=30.0)),
    ("topmost-root", plant(first_root_mm=50.0)),
    ("topmost-root", plant()),
    ("no-soil-over", plant(soil_over_mm=0.0)),
    ("no-soil-over", plant()),
    ("no-loose-soil-under", plant(loose_soil_mm=0.0)),
    ("ball-size", plant(stock="balled", ball_width_mm=500.0, calliper_mm=50.0)),
    ("ball-size", plant(ball_width_mm=300.0, calliper_mm=50.0)),
    ("ball-depth", plant(stock="balled", ball_width_mm=400.0, ball_depth_mm=300.0)),
    ("ball-depth", plant(ball_width_mm=400.0, ball_depth_mm=200.0)),
    ("calliper-height", plant(calliper_mm=50.0, calliper_at_mm=152.4)),
    ("calliper-height", plant(calliper_mm=120.0, calliper_at_mm=304.8)),
    ("calliper-height", plant(calliper_mm=50.0)),
    ("heavy-ball", plant(ball_weight_kg=46.0)),
    ("heavy-ball", plant(ball_weight_kg=200.0, having=kit("Sack truck"))),
    ("heavy-ball", plant(ball_width_mm=600.0)),
    ("stakes-off", plant(staked_months=12.0)),
    ("stakes-off", plant(staked_months=36.0, stakes=0)),
    ("stake-only-if-needed", plant(stands_alone=True, stakes=0)),
    ("stake-only-if-needed", plant(stands_alone=False, stakes=2)),
    ("tie-low", plant(height_mm=2400.0, tie_height_mm=800.0)),
    ("tie-low", plant(tie_height_mm=800.0)),
    ("no-feed-in-hole", plant(feed_in_hole=False)),
    ("mulch-depth", plant(mulch_depth_mm=50.0)),
    ("mulch-depth", plant(mulch_depth_mm=100.0)),
    ("mulch-depth", plant("bed", mulch_depth_mm=25.0)),
    ("mulch-clear", plant(trunk_clear_mm=25.0)),
    ("mulch-clear", plant()),
    ("mulch-ring", plant(mulch_width_mm=1000.0)),
    ("mulch-ring", plant("shrub", mulch_width_mm=500.0)),
    ("water-on-the-day", plant(first_water_l=38.0)),
    ("water-on-the-day", plant(first_water_l=76.0)),
    ("water-on-the-day", plant("shrub", first_water_l=5.0)),
    ("water-each", plant(calliper_mm=50.8, water_each_l=7.6)),
    ("water-each", plant(calliper_mm=50.8, water_each_l=11.35)),
    ("water-each", plant(calliper_mm=50.8, water_each_l=15.2, summers="warm")),
    ("water-each", plant("shrub", pot_l=10.0, water_each_l=3.0)),
    ("water-each", plant(water_each_l=3.0)),
    ("ordered-up", plant("bed", pattern="square", spacing_mm=457.2, area_m2=5.574182, ordered=27)),
    ("ordered-up", plant("bed", pattern="triangle", spacing_mm=300.0, area_m2=10.0, ordered=154)),
    ("ordered-up", plant("bed", pattern="square", ordered=10)),
    ("ordered-up", plant("bed", pattern="square", spacing_mm=300.0, area_m2=10.0)),
    ("spacing", plant("bed", "box", spacing_mm=150.0)),
    ("spacing", plant("bed", "box", spacing_mm=200.0)),
    ("spacing", plant("bed", "box", spacing_mm=400.0, rows=2)),
    ("spacing", plant("bed", spacing_mm=400.0)),
    ("spacing", plant("bed", "box")),
    ("bare-root-season", plant(stock="bare root", season="November to March")),
    ("bare-root-season", plant(stock="bare root", season="May to September", crew=SOUTH)),
    ("bare-root-season", plant(stock="bare root")),
    ("bare-root-season", plant(season="July")),
    ("planting-season", plant(season="late summer to early autumn")),
    ("planting-season", plant(season="spring")),
    ("planting-season", plant()),
    ("planting-season", plant(season="whenever it suits")),
    ("planting-season", plant(season="July", stock="bare root")),
    ("roots-covered", plant(stock="bare root", having={"steps": (Step(title="Soak the roots."),)})),
    ("roots-covered", plant()),
    ("circling-roots", plant(having=FREED)),
    ("circling-roots", plant(stock="balled")),
    ("circling-roots", plant("bed")),
    ("dig-safe", plant(having=WARNED)),
    ("dig-safe", plant("bed")),
    ("dig-safe", plant(having=kit("Earth auger"))),
]


@pytest.mark.parametrize(("name", "whole"), PASSES, ids=[name for name, _ in PASSES])
def test_at_its_limit_a_rule_is_kept(name: str, whole: AnyWork) -> None:
    assert found(name, whole) == []


# -- the arithmetic they show --


def test_h38_a_chart_that_drops_the_fraction_is_refused() -> None:
    # H38: a plant nursery's chart [C] shows 26 for 26.4 plants
    said = one("ordered-up", plant("bed", pattern="square", spacing_mm=457.2, area_m2=5.574182, ordered=26))
    assert said.what == "26 plants are ordered"
    assert said.why.startswith("5.57 m² × 4.78 a square metre = 26.67, rounded up = 27.")
    assert said.edit == Edit(key="ordered", text="27")
    assert RULES["ordered-up"].severity is Severity.ERROR


def test_one_deep_hole_gives_one_finding() -> None:
    broken = plant(**BALL, hole_depth_mm=400.0, proud_mm=0.0)
    names = [name for name in ("hole-depth", "levels-add-up") if found(name, broken)]
    assert names == ["hole-depth"]
    assert one("hole-depth", broken).edit == Edit(key="hole depth", text="270 mm")


def test_poor_drainage_makes_a_low_ball_an_error() -> None:
    # University of Florida IFAS, ENH856 [A]: 10 % or more above grade
    poor = one("set-proud", plant(**BALL, proud_mm=20.0, drainage="poor"))
    assert poor.severity is None
    assert "where drainage is poor at least 33 mm is right: a tenth of the ball's 330 mm" in poor.why
    good = one("set-proud", plant(**BALL, proud_mm=20.0))
    assert good.severity is Severity.WARNING
    assert "25 to 50 mm is right" in good.why


def test_two_years_of_stakes_stop_a_build() -> None:
    # Beatrice Daily Sun [B]: one growing season; a nursery [C]: two years
    assert one("stakes-off", plant(staked_months=24.0)).severity is Severity.WARNING
    assert one("stakes-off", plant(staked_months=25.0)).severity is None
    assert one("stake-only-if-needed", plant(stands_alone=True, stakes=1)).what == "1 stake at a tree that stands alone"


def test_h43_what_a_trunk_calls_for() -> None:
    # H43: University of Minnesota [A]: 7.6 to 11.4 L
    said = one("water-each", plant(calliper_mm=50.8, water_each_l=12.0))
    assert said.why.startswith("cool summers: 5.08 cm × 1.49 to 2.24 L/cm = 7.57 to 11.4 L")
    assert said.edit == Edit(key="water each", text="11.3 L")
    assert one("water-each", plant("shrub", pot_l=10.0, water_each_l=2.0)).also == "measures.pot_l"


def test_the_season_of_bare_roots_turns_with_the_hemisphere() -> None:
    north = one("bare-root-season", plant(stock="bare root", season="April"))
    assert north.edit == Edit(key="season", text="November to March", top=True)
    assert north.what == "planting in April"
    south = one("bare-root-season", plant(stock="bare root", season="December", crew=SOUTH))
    assert south.edit == Edit(key="season", text="May to September", top=True)


def test_a_spacing_from_memory_only_advises() -> None:
    assert one("spacing", plant("bed", "Vinca minor", spacing_mm=600.0)).severity is Severity.ADVICE
    assert one("spacing", plant("bed", "box", spacing_mm=600.0)).severity is None


def test_a_ball_that_is_too_small_says_which_trunk_it_carries() -> None:
    said = one("ball-size", plant(stock="balled", ball_width_mm=450.0, calliper_mm=50.0))
    assert said.why == "10 × 50 mm = 500 mm; this ball carries a trunk of 45 mm"


@given(
    ball=st.floats(10, 6000),
    deep=st.floats(10, 4000),
    first=st.none() | st.floats(0, 1000),
    hole=st.none() | st.floats(1, 4000),
    wide=st.none() | st.floats(10, 20_000),
    proud=st.none() | st.floats(0, 4000),
    drainage=st.sampled_from(["good", "poor"]),
    stock=st.sampled_from(["container", "balled", "bare root"]),
)
def test_mends_of_the_hole_mend(
    ball: float, deep: float, first: Any, hole: Any, wide: Any, proud: Any, drainage: str, stock: str
) -> None:
    whole = plant(
        ball_width_mm=ball,
        ball_depth_mm=deep,
        first_root_mm=first,
        hole_depth_mm=hole,
        hole_width_mm=wide,
        proud_mm=proud,
        drainage=drainage,
        stock=stock,
    )
    for name in ("hole-width", "hole-depth", "set-proud", "levels-add-up", "topmost-root", "ball-depth"):
        if found(name, whole):
            assert_mends(RULES[name], whole)


@given(calliper=st.floats(1, 500), ball=st.floats(10, 6000), at=st.floats(1, 2000))
def test_mends_of_the_ball_mend(calliper: float, ball: float, at: float) -> None:
    whole = plant(stock="balled", calliper_mm=calliper, ball_width_mm=ball, calliper_at_mm=at)
    for name in ("ball-size", "calliper-height", "heavy-ball"):
        if found(name, whole):
            assert_mends(RULES[name], whole)


@given(
    calliper=st.none() | st.floats(1, 500),
    pot=st.floats(0.1, 2000),
    each=st.floats(0.001, 5000),
    day=st.floats(0.01, 5000),
    height=st.floats(10, 20_000),
    tie=st.floats(1, 8000),
)
def test_mends_of_water_and_ties_mend(
    calliper: float | None, pot: float, each: float, day: float, height: float, tie: float
) -> None:
    whole = plant(
        calliper_mm=calliper, pot_l=pot, water_each_l=each, first_water_l=day, height_mm=height, tie_height_mm=tie
    )
    for name in ("water-each", "water-on-the-day", "tie-low"):
        if found(name, whole):
            assert_mends(RULES[name], whole)


@given(
    pattern=st.sampled_from(["square", "triangle", "row", "edge"]),
    spacing=st.floats(10, 30_000),
    size=st.floats(0.01, 1000),
    slope=st.none() | st.floats(0, 200),
    spare=st.none() | st.floats(0, 100),
    ordered=st.integers(1, 100_000),
)
def test_mends_of_counts_mend(pattern: str, spacing: float, size: float, slope: Any, spare: Any, ordered: int) -> None:
    whole = plant(
        "bed",
        "box",
        pattern=pattern,
        spacing_mm=spacing,
        bed_length_m=size,
        bed_width_m=2.0,
        row_length_m=size,
        slope_percent=slope,
        spare_percent=spare,
        ordered=ordered,
    )
    for name in ("ordered-up", "spacing"):
        if found(name, whole):
            assert_mends(RULES[name], whole)
