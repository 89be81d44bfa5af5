from typing import Any

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from howto.families.espalier import FAMILY
from howto.families.espalier.rules import RULES
from howto.findings import Severity
from howto.model.crew import Crew
from howto.model.family import Breach, Rule
from howto.model.prose import prose
from howto.model.technique import Hazard, Kit, Step
from howto.model.work import AnyWork
from tests.families.espalier.test_figures import ANY, BOOK, SOUTH, WIRE
from tests.support.builders import assert_mends, breaches, keys_of, mended, technique

BY_NAME: dict[str, Rule[Any]] = {rule.name.removeprefix("espalier."): rule for rule in RULES}
SEA = Crew(coast=True)
PEAR = {"plants": ("Pyrus communis",)}
PLUM = {"plants": ("Prunus domestica",)}


def made(having: dict[str, Any] | None = None, crew: Crew | None = None, **measures: Any) -> AnyWork:
    """Return a technique of this family with the package's plants."""
    return technique(FAMILY, having, crew=crew, book=BOOK, **measures)


def found(name: str, whole: AnyWork) -> list[Breach]:
    """Return what one rule finds."""
    return breaches(BY_NAME[name], whole)


# -- each measure: what breaks, what passes at the limit, and what the mend writes --

LENGTHS: list[tuple[str, dict[str, Any], str, list[dict[str, Any]]]] = [
    ("first-wire", {"first_wire_mm": 299.0}, "300 mm", [{"first_wire_mm": 300.0}, {"first_wire_mm": 457.2}]),
    ("first-wire", {"first_wire_mm": 458.0}, "450 mm", [{"first_wire_mm": 450.0}, {"first_wire_mm": None}]),
    ("tier-spacing", {"tier_spacing_mm": 349.0}, "350 mm", [{"tier_spacing_mm": 350.0}]),
    ("tier-spacing", {"tier_spacing_mm": 458.0}, "450 mm", [{"tier_spacing_mm": 457.2}]),
    ("tier-count", {"tiers": 6}, "5", [{"tiers": 5}]),
    ("top-wire", {"tiers": 5, "tier_spacing_mm": 400.0}, "4", [{"tiers": 4, "tier_spacing_mm": 450.0}]),
    ("eye-spacing", {"eye_spacing_mm": 1830.0}, "1800 mm", [{"eye_spacing_mm": 1828.8}]),
    ("post-spacing", {"support": "posts", "eye_spacing_mm": 4001.0}, "4000 mm", [{"support": "posts"}]),
    ("post-depth", {"support": "posts", "post_depth_mm": 449.0}, "450 mm", [{"post_depth_mm": 450.0}]),
    ("off-wall", {"off_wall_mm": 49.0}, "50 mm", [{"off_wall_mm": 50.0}]),
    ("stem-off-wall", {"stem_off_wall_mm": 149.0}, "150 mm", [{"stem_off_wall_mm": 150.0}]),
    ("tree-spacing", {"tree_spacing_mm": 3650.0}, "3750 mm", [{"tree_spacing_mm": 3657.6}]),
    ("tree-spacing", {"tree_spacing_mm": 6100.0}, "6000 mm", [{"tree_spacing_mm": 6096.0}]),
    ("tree-spacing", {"tree_spacing_mm": 3299.0, "rootstock": "M26"}, "3300 mm",
     [{"tree_spacing_mm": 3300.0, "rootstock": "M26"}]),
    ("tree-spacing", {"tree_spacing_mm": 4499.0, "rootstock": "MM106"}, "4500 mm",
     [{"tree_spacing_mm": 4500.0, "rootstock": "MM106"}]),
    ("tree-spacing", {"tree_spacing_mm": 3999.0, "rootstock": "MM111"}, "4000 mm",
     [{"tree_spacing_mm": 4000.0, "rootstock": "MM111"}]),
    ("tree-spacing", {"trees": 2}, "1", [{"trees": 1}, {"trees": 2, "wall_length_m": 7.5}]),
    ("trees-on-the-wall", {"trees": 3, "tree_spacing_mm": 4000.0, "wall_length_m": 7.99}, "12 m",
     [{"trees": 3, "tree_spacing_mm": 4000.0, "wall_length_m": 8.0}]),
    ("leader-cut", {"leader_cut_mm": 474.0}, "500 mm", [{"leader_cut_mm": 475.0}, {"leader_cut_mm": 525.0}]),
    ("leader-cut", {"leader_cut_mm": 526.0}, "500 mm", [{"leader_cut_mm": 500.0}]),
    ("tiers-made", {"tiers_made": 5}, "4", [{"tiers_made": 4}]),
    ("arm-angle", {"arm_angle_deg": 44.0}, "45 deg", [{"arm_angle_deg": 45.0}]),
    ("arm-angle", {"arm_angle_deg": 61.0}, "45 deg", [{"arm_angle_deg": 60.0}]),
    ("tier-a-year", {"filled_in_years": 3.9}, "4 years", [{"filled_in_years": 4.0}]),
    ("tier-a-year", {"filled_in_years": 0.5, "tiers_made": 3}, "1 year",
     [{"filled_in_years": 1.0, "tiers_made": 3}]),
    ("blossom-off", {"blossom_off_springs": 2, "fruit": "apple"}, "3",
     [{"blossom_off_springs": 3, "fruit": "apple"}, {"blossom_off_springs": 0}]),
    ("tie-checks", {"tie_checks": 1}, "2", [{"tie_checks": 2}]),
    ("leaves-left", {"main_leaves": 2}, "3", [{"main_leaves": 3}, {"main_leaves": 2, "fruit": "stone fruit"}]),
    ("leaves-left", {"spur_leaves": 2}, "1", [{"spur_leaves": 1}]),
    ("stubs", {"main_stub_mm": 101.0}, "75 mm", [{"main_stub_mm": 100.0}, {"main_stub_mm": 50.0}]),
    ("stubs", {"spur_stub_mm": 16.0}, "25 mm", [{"spur_stub_mm": 17.0}, {"spur_stub_mm": 33.0}]),
    ("stubs", {"main_stub_mm": 75.0, "fruit": "stone fruit"}, "50 mm",
     [{"main_stub_mm": 50.0, "fruit": "stone fruit"}]),
    ("short-shoots", {"shortest_cut_mm": 199.0}, "200 mm", [{"shortest_cut_mm": 200.0}]),
    ("tensioners", {"tensioners": 3}, "4", [{"tensioners": 4}]),
]  # fmt: skip


@pytest.mark.parametrize(("name", "broken", "mend", "fine"), LENGTHS)
def test_a_measure_past_its_limit(name: str, broken: dict[str, Any], mend: str, fine: list[dict[str, Any]]) -> None:
    whole = made(**broken)
    (breach,) = found(name, whole)
    assert breach.edit is not None
    assert breach.edit.text == mend
    assert f"{breach.edit.key}: {mend}" in breach.mend
    assert found(name, mended(whole, breach)) == []
    for measures in fine:
        assert found(name, made(**measures)) == []


def test_what_some_growers_use_draws_advice_alone() -> None:
    (close,) = found("tier-spacing", made(tier_spacing_mm=300.0))
    (closer,) = found("tier-spacing", made(tier_spacing_mm=299.0))
    (wide,) = found("tier-spacing", made(tier_spacing_mm=600.0))
    assert (close.severity, closer.severity, wide.severity) == (Severity.ADVICE, None, Severity.ADVICE)


def test_a_first_wire_too_high_is_not_said_twice() -> None:
    assert found("top-wire", made(first_wire_mm=1900.0)) == []
    assert found("top-wire", made(first_wire_mm=None)) == []


def test_posts_and_walls_have_their_own_spacing() -> None:
    assert found("eye-spacing", made(eye_spacing_mm=3000.0, support="posts")) == []
    assert found("post-spacing", made(eye_spacing_mm=5000.0)) == []


# -- wires --

HALF_N = 3711.0  # 3 mm 1x19 breaks at 7,422.1 N by the formula


def test_the_sea_wants_316() -> None:
    for wire in (None, "304 stainless", "galvanised"):
        broken = made(crew=SEA, job="wiring", wire=wire)
        assert assert_mends(BY_NAME["coast"], broken).measures.wire == "316 stainless"
    assert found("coast", made(crew=SEA, job="wiring", wire="316 stainless")) == []
    assert found("coast", made(job="wiring", wire="galvanised")) == []
    assert found("coast", made(crew=SEA, job="training")) == []
    assert len(found("coast", made(crew=SEA, job="training", wire="galvanised"))) == 1


def test_no_more_than_half_of_the_breaking_load() -> None:
    assert found("half-of-breaking", made(**{**WIRE, "tension_n": HALF_N})) == []
    broken = made(**{**WIRE, "tension_n": 3712.0})
    (breach,) = found("half-of-breaking", broken)
    assert breach.edit is not None
    assert breach.edit.text == "3710 N"
    assert breach.what == "the wire is pulled to 50 % of what breaks it"
    assert_mends(BY_NAME["half-of-breaking"], broken)


def test_half_by_the_makers_load_and_by_how_much_the_wire_grew() -> None:
    (breach,) = found("half-of-breaking", made(**{**WIRE, "tension_n": 3500.0, "breaking_load_n": 6700.0}))
    assert breach.edit is not None
    assert breach.edit.text == "3350 N"
    grown = made(**{**WIRE, "tension_n": None, "stretch_mm_per_m": 5.1})
    assert assert_mends(BY_NAME["half-of-breaking"], grown).measures.stretch_mm_per_m == 5.0


def test_a_load_that_draws_the_wire_past_half() -> None:
    broken = made(**{**WIRE, "load_kg_per_m": 60.0, "tension_n": 2000.0})
    (breach,) = found("half-when-loaded", broken)
    assert breach.edit is not None
    assert breach.edit.text == "1482 mm"
    assert found("half-when-loaded", mended(broken, breach)) == []
    assert found("half-when-loaded", made(**WIRE)) == []
    assert found("half-when-loaded", made(**{**WIRE, "tension_n": 5000.0})) == []  # said by half-of-breaking


def test_a_load_no_spacing_can_carry_is_shared() -> None:
    broken = made(**{**WIRE, "load_kg_per_m": 600.0, "wall_length_m": None})
    (breach,) = found("half-when-loaded", broken)
    assert breach.edit is not None
    assert breach.edit.key == "load"
    assert found("half-when-loaded", mended(broken, breach)) == []


def test_a_sag_past_its_limit() -> None:
    broken = made(**{**WIRE, "tension_n": 500.0})
    (breach,) = found("sag-limit", broken)
    assert breach.edit is not None
    assert breach.edit.text == "508 N"  # 507.5 N, rounded inwards
    assert found("sag-limit", mended(broken, breach)) == []
    assert found("sag-limit", made(**WIRE)) == []
    assert found("sag-limit", made(**{**WIRE, "sag_limit_mm": None, "tension_n": 10.0})) == []


def test_a_sag_that_no_pull_may_hold_is_mended_by_closer_eyes() -> None:
    broken = made(**{**WIRE, "sag_limit_mm": 3.0})
    (breach,) = found("sag-limit", broken)
    assert breach.edit is not None
    assert breach.edit.text == "602 mm"
    assert "4229.1 N would hold it" in breach.why
    assert found("sag-limit", mended(broken, breach)) == []


def test_a_sag_that_nothing_mends_is_told_without_an_edit() -> None:
    (breach,) = found("sag-limit", made(**{**WIRE, "sag_limit_mm": 0.1, "load_kg_per_m": 100.0}))
    assert breach.edit is None
    assert "no wire of this size holds it" in breach.mend


def test_a_wire_that_hangs_past_an_eighth_of_its_span() -> None:
    broken = made(**{**WIRE, "tension_n": 60.0, "sag_limit_mm": None})
    (breach,) = found("shallow-sag", broken)
    assert breach.edit is not None
    assert breach.edit.text == "64 N"  # w x L = 39.65 x 1.6 = 63.44 N
    assert found("shallow-sag", mended(broken, breach)) == []
    assert found("shallow-sag", made(**WIRE)) == []


def test_the_published_pull_only_advises() -> None:
    broken = made(**{**WIRE, "wall_length_m": 3.6, "tension_n": 1726.0})
    (breach,) = found("published-pull", broken)
    assert breach.edit is not None
    assert breach.edit.text == "1720 N"
    assert BY_NAME["published-pull"].severity is Severity.ADVICE
    assert found("published-pull", mended(broken, breach)) == []
    assert found("published-pull", made(**{**WIRE, "wall_length_m": 3.6, "tension_n": 1725.0})) == []
    assert found("published-pull", made(**{**WIRE, "lay": "7x19", "tension_n": 3000.0})) == []


def test_the_stretch_agrees_with_the_pull() -> None:
    # 600 N of 7,422 N is 8.08 %: 0.808 mm/m, and a quarter either way
    broken = made(**WIRE, stretch_mm_per_m=1.02)
    (breach,) = found("stretch", broken)
    assert breach.edit is not None
    assert breach.edit.text == "0.808 mm/m"
    assert found("stretch", mended(broken, breach)) == []
    assert found("stretch", made(**WIRE, stretch_mm_per_m=1.01)) == []
    assert found("stretch", made(**WIRE, stretch_mm_per_m=0.61)) == []
    assert len(found("stretch", made(**WIRE, stretch_mm_per_m=0.6))) == 1
    assert found("stretch", made(**{**WIRE, "lay": "7x7"}, stretch_mm_per_m=9.0)) == []
    assert found("stretch", made(**{**WIRE, "tension_n": 8000.0}, stretch_mm_per_m=9.0)) == []  # past breaking


# -- seasons --


@pytest.mark.parametrize(
    ("plant", "crew", "season", "mend"),
    [
        ("Pyrus communis", Crew(), "June", "July to August"),
        ("Pyrus communis", SOUTH, "July to August", "January to February"),
        ("Malus domestica", Crew(), "July", "August"),
        ("Malus domestica", SOUTH, "winter", "February"),
    ],
)
def test_summer_pruning_out_of_its_weeks(plant: str, crew: Crew, season: str, mend: str) -> None:
    broken = made({"plants": (plant,), "season": season}, crew, job="summer pruning")
    (breach,) = found("prune-months", broken)
    assert breach.edit is not None
    assert (breach.edit.top, breach.edit.text) == (True, mend)
    assert found("prune-months", mended(broken, breach)) == []


def test_summer_pruning_in_its_weeks() -> None:
    for season in ("July", "August", "late summer", "summer", "", "when the swallows go"):
        assert found("prune-months", made({**PEAR, "season": season}, job="summer pruning")) == []
    assert found("prune-months", made({**PEAR, "season": "winter"}, job="training")) == []


@pytest.mark.parametrize("season", ["winter", "autumn", "February to May", "summer to early autumn"])
def test_stone_fruit_is_not_cut_in_the_wet_half_of_the_year(season: str) -> None:
    broken = made({**PLUM, "season": season})
    assert assert_mends(BY_NAME["stone-fruit-season"], broken).technique.season == "spring to summer"
    assert BY_NAME["stone-fruit-season"].severity is Severity.ERROR


def test_stone_fruit_is_cut_in_spring_and_summer() -> None:
    assert found("stone-fruit-season", made({**PLUM, "season": "March to August"})) == []
    assert found("stone-fruit-season", made({**PLUM, "season": "September to February"}, SOUTH)) == []
    assert len(found("stone-fruit-season", made({**PLUM, "season": "March to August"}, SOUTH))) == 1
    assert found("stone-fruit-season", made({**PLUM, "season": "winter"}, job="wiring")) == []
    assert found("stone-fruit-season", made({**PEAR, "season": "winter"})) == []


def test_old_spurs_are_thinned_at_rest_and_not_before_their_time() -> None:
    young = made({**PEAR, "season": "January"}, job="winter thinning", age_years=6.9)
    assert assert_mends(BY_NAME["winter-thinning"], young).measures.age_years == 7
    warm = made({**PEAR, "season": "June"}, job="winter thinning", age_years=7.0)
    assert assert_mends(BY_NAME["winter-thinning"], warm).technique.season == "November to March"
    south = made({**PEAR, "season": "January"}, SOUTH, job="winter thinning")
    assert assert_mends(BY_NAME["winter-thinning"], south).technique.season == "May to September"
    assert found("winter-thinning", made({**PEAR, "season": "November"}, job="winter thinning", age_years=8.0)) == []


# -- what the card says --


def saying(text: str) -> dict[str, Any]:
    """Return one step more that says so, and nothing else that any rule looks for."""
    return {
        "tools": (Kit(name="Secateurs"),),
        "steps": (Step(title="Do it.", text=prose(text)),),
        "cautions": (Hazard(title="Stand well.", text=prose("Feet apart.")),),
    }


@pytest.mark.parametrize(
    ("name", "measures", "having", "enough"),
    [
        ("tightened", {"job": "wiring"}, {}, "Open the tensioner."),
        ("wire-ends", {"job": "wiring"}, {}, "Ends whip."),
        ("in-the-wall", {"job": "wiring"}, {}, "Look for cables first."),
        ("soft-ties", {"job": "training"}, {}, "Tie with soft twine."),
        ("left-and-right", {"job": "training"}, {}, "Take off what comes forward."),
        ("left-and-right", {"job": "summer pruning"}, {}, "Cut what grows out from the wall."),
        ("clean-blades", {"job": "summer pruning"}, {}, "Disinfect between trees."),
        ("dry-day", {"job": "training"}, PLUM, "Choose a dry day."),
    ],
)
def test_what_a_card_has_to_say(name: str, measures: dict[str, Any], having: dict[str, Any], enough: str) -> None:
    assert_mends(BY_NAME[name], made({**saying("Look."), **having}, **measures))
    assert found(name, made({**saying(enough), **having}, **measures)) == []


def test_what_a_card_need_not_say() -> None:
    quiet = saying("Look.")
    assert found("tightened", made(quiet, job="training")) == []
    assert found("in-the-wall", made(quiet, job="wiring", support="posts")) == []
    assert found("clean-blades", made(quiet, job="wiring")) == []
    assert found("dry-day", made({**quiet, **PEAR})) == []
    assert found("soft-ties", made(quiet, job="winter thinning")) == []


def test_fire_blight_wants_bleach_and_not_alcohol() -> None:
    # Iowa State University Extension [A]: alcohol is not for fire blight on apple; 1 part bleach to 9 for 10 minutes
    trap = saying("Wipe with alcohol where fire blight shows.")
    assert_mends(BY_NAME["fire-blight"], made({**trap, **PEAR}))
    assert found("fire-blight", made({**trap, **PLUM})) == []
    assert found("fire-blight", made({**saying("Wipe with alcohol."), **PEAR})) == []
    assert found("fire-blight", made({**saying("For fire blight, soak in bleach."), **PEAR})) == []


def test_the_tensioners_to_list_are_one_a_wire() -> None:
    (breach,) = found("tightened", made(saying("Look."), job="wiring", tiers=3))
    assert breach.edit is not None
    assert breach.edit.text == "- Tensioners: 3, one a wire"


# -- all of them --


@given(measures=ANY, season=st.sampled_from(["", "winter", "June", "spring"]), sea=st.booleans())
def test_every_mend_mends(measures: dict[str, Any], season: str, sea: bool) -> None:
    whole = made({"season": season}, SEA if sea else Crew(), off_wall_mm=20.0, arm_angle_deg=30.0, **measures)
    for rule in RULES:
        for breach in breaches(rule, whole):
            assert breach.what
            assert breach.why or rule.why
            assert breach.field.split("[")[0].removeprefix("measures.") in {
                *keys_of(type(whole.measures)).values(), "season", "steps", "cautions", "materials",
            }  # fmt: skip
            if breach.edit is None:
                continue
            left = breaches(rule, mended(whole, breach))
            assert breach.what not in [each.what for each in left], f"{rule.name}: {breach.mend}"


@given(
    pull=st.floats(20, 6000),
    load=st.floats(0.1, 60),
    limit=st.floats(1, 200),
    eyes=st.floats(300, 4000),
    rope=st.sampled_from([2.0, 2.5, 3.0, 3.2, 4.0, 5.0]),
    lay=st.sampled_from(["1x19", "7x7", "7x19"]),
)
def test_every_mend_of_a_wire_mends(pull: float, load: float, limit: float, eyes: float, rope: float, lay: str) -> None:
    wire = {"tension_n": pull, "load_kg_per_m": load, "sag_limit_mm": limit, "eye_spacing_mm": eyes}
    whole = made(**{**WIRE, **wire, "wire_diameter_mm": rope, "lay": lay})
    broken = [(rule, breach) for rule in RULES for breach in breaches(rule, whole)]
    assume(broken)
    for rule, breach in broken:
        if breach.edit is not None and breach.edit.key:
            assert breaches(rule, mended(whole, breach)) == [], f"{rule.name}: {breach.mend}"
