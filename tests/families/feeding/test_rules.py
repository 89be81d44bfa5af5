"""Each rule of feeding: broken, kept at its limit, and mended; and random measures, every mend of which mends."""

from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from howto.families.feeding import FAMILY, plan
from howto.families.feeding.measures import FeedingMeasures
from howto.findings import Severity
from howto.model.crew import Crew
from howto.model.family import Rule
from howto.model.reference import Grade
from howto.model.work import Work
from tests.families.feeding.examples import (
    BARE,
    BROKEN,
    COUCH,
    KEPT,
    LAWN,
    LAWN_3,
    MEASURES,
    NORTH,
    SEASONS,
    SOUTH,
    TREE,
    made,
    telling,
)
from tests.support.builders import assert_mends, breaches, mended

RULES = FAMILY.rules
NAMED = {rule.name.removeprefix("feeding."): rule for rule in RULES}


@pytest.mark.parametrize(("name", "given", "what", "mend"), BROKEN)
def test_a_breach_says_what_and_its_mend_mends(name: str, given: dict[str, Any], what: str, mend: str) -> None:
    broken = made(**given)
    found = breaches(NAMED[name], broken)
    assert found
    assert what in found[0].what
    assert found[0].edit is not None
    if mend:
        assert found[0].edit.text.startswith(mend)
    assert found[0].edit.text in found[0].mend
    assert_mends(NAMED[name], broken)


@pytest.mark.parametrize(("name", "given"), KEPT)
def test_at_its_limit_a_rule_is_kept(name: str, given: dict[str, Any]) -> None:
    assert breaches(NAMED[name], made(**given)) == []


@pytest.mark.parametrize(
    ("name", "given", "words"),
    [
        ("label-first", {}, "Read the label first."),
        ("pear-blight", {"crop": "pear"}, "Soft growth takes fire blight."),
        ("off-paving", LAWN_3, "Sweep the path."),
        ("water-in", {}, "Water in at once."),
        ("pets", {}, "Keep pets off."),
    ],
)
def test_what_is_said_is_not_asked_for_again(name: str, given: dict[str, Any], words: str) -> None:
    assert breaches(NAMED[name], made(telling(words), **given)) == []


def test_the_season_holds_the_first_dose() -> None:
    rule = NAMED["season-start"]
    kept = made({"season": "spring"}, **TREE)
    assert breaches(rule, kept) == []
    assert breaches(rule, made({"season": "whenever"}, **TREE)) == []
    broken = made({"season": "late summer to autumn"}, **TREE, start_month="april")
    found = breaches(rule, broken)[0]
    assert found.what == "the first dose falls in April, and the season is late summer to autumn"
    assert found.edit is not None
    assert found.edit.text == "august"
    assert_mends(rule, broken)


@pytest.mark.parametrize(
    ("given", "what", "mend"),
    [
        ({**TREE, "doses": 4}, "dose 4 of 4 falls on 5 January", "3"),
        ({**TREE, "start_month": "february"}, "the first dose falls in February", "september"),
    ],
)
def test_in_the_south_the_last_day_is_half_a_year_on(given: dict[str, Any], what: str, mend: str) -> None:
    broken = made(crew=SOUTH, **given)
    found = breaches(NAMED["tree-cut-off"], broken)[0]
    assert found.what == what
    assert found.edit is not None
    assert found.edit.text == mend
    assert breaches(NAMED["tree-cut-off"], made(crew=SOUTH, **TREE, doses=3)) == []
    assert breaches(NAMED["turf-cut-off"], made(crew=SOUTH, **COUCH, start_month="february")) == []


def test_a_first_dose_too_late_and_too_many_doses_are_both_told() -> None:
    broken = made(**TREE, start_month="august", doses=9)
    rule = NAMED["tree-cut-off"]
    assert [each.edit.text for each in breaches(rule, broken) if each.edit] == ["march", "3"]
    assert breaches(rule, assert_mends(rule, assert_mends(rule, broken))) == []


def test_a_plain_feed_over_its_label_warns_and_a_weed_killer_stops() -> None:
    over = {**LAWN, "product_rate_g_per_m2": 40.0, "label_rate_g_per_m2": 35.0}
    assert breaches(NAMED["label-rate"], made(**over))[0].severity is Severity.WARNING
    assert breaches(NAMED["label-rate"], made(**over, weed_killer=True))[0].severity is None
    assert NAMED["label-rate"].severity is Severity.ERROR


def test_a_grass_from_memory_only_advises() -> None:
    of_ryegrass = breaches(NAMED["year-cap"], made(**LAWN_3, doses=7))[0]
    of_kikuyu = breaches(NAMED["year-cap"], made(**{**LAWN_3, "grass": "kikuyu"}, doses=7))[0]
    assert (of_ryegrass.severity, of_kikuyu.severity) == (None, Severity.ADVICE)


def test_a_plum_grows_by_a_source_that_only_warns() -> None:
    plum = breaches(NAMED["growth-enough"], made(analysis="10-10-10", crop="plum", shoot_growth_mm=400.0))[0]
    apple = breaches(NAMED["growth-enough"], made(**TREE, shoot_growth_mm=700.0))[0]
    assert (plum.severity, apple.severity) == (Severity.WARNING, Severity.ERROR)


def test_what_rests_on_memory_only_advises() -> None:
    for rule in RULES:
        if {reference.grade for reference in rule.references} == {Grade.MEMORY}:
            assert rule.severity is Severity.ADVICE, rule.name


def test_every_rule_is_broken_and_kept_here() -> None:
    elsewhere = {"season-start"}
    assert {name for name, *_ in BROKEN} | elsewhere == set(NAMED)
    assert {name for name, _ in KEPT} | elsewhere | {"label-first", "pets"} == set(NAMED)


# -- random measures --


@given(given=MEASURES, crew=st.sampled_from((NORTH, SOUTH)), season=st.sampled_from(SEASONS))
def test_every_mend_mends(given: dict[str, Any], crew: Crew, season: str) -> None:
    broken = made({"season": season}, crew, **BARE | given)
    for rule in RULES:
        _assert_all_mend(rule, broken)


def _assert_all_mend(rule: Rule[FeedingMeasures], broken: Work[FeedingMeasures]) -> None:
    """Follow one mend after another until none is offered; each takes its breach away."""
    left = breaches(rule, broken)
    while left:
        broken = mended(broken, left[0])
        now = breaches(rule, broken)
        assert len(now) < len(left), f"{rule.name}: {left[0].mend} → {now[0].what} ({now[0].why})"
        left = now


def test_plants_tell_the_kind_of_fruit() -> None:
    def of(*plants: str) -> str | None:
        return plan.crop_of(made({"plants": plants}, **BARE))

    assert of("Pyrus communis") == "pear"
    assert of("nashi") == "pear"
    assert of("apple") == "apple"
    assert of("morello cherry") == "cherry"
    assert of("nectarine") == "peach"
    assert of("Carpinus betulus", "Prunus domestica") == "plum"
    assert of("Carpinus betulus") is None
