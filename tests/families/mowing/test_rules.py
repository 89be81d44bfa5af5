"""Each rule of mowing: broken, kept at its limit, and mended; and random lawns, every mend of which mends."""

from typing import Any

import pytest
from hypothesis import given

from howto.families.mowing import FAMILY
from howto.families.mowing.measures import MowingMeasures
from howto.findings import Severity
from howto.model.crew import Crew
from howto.model.family import Breach, Edit, Rule
from howto.model.plants import Grass, Mowing, PlantBook
from howto.model.prose import prose
from howto.model.reference import Grade
from howto.model.technique import Care, Hazard, Step, When
from howto.model.work import AnyWork
from tests.families.mowing.test_figures import MEASURES
from tests.support.builders import assert_mends, breaches, mended, only, technique
from tests.support.cases import book

RULES: dict[str, Rule[MowingMeasures]] = {rule.name.removeprefix("mowing."): rule for rule in FAMILY.rules}
OREGON: dict[str, Any] = {"grass": "tall fescue", "climate": "Oregon"}
IN_SHADE: dict[str, Any] = {"grass": "buffalo", "climate": "Australia, sun", "set_height_mm": 40.0, "shade": True}
OVERGROWN: dict[str, Any] = {"set_height_mm": 50.0, "standing_height_mm": 150.0}
FAST: dict[str, Any] = {**OVERGROWN, "growth_mm_per_day": 12.5}


def lawn(*steps: Step, **measures: Any) -> AnyWork:
    """A lawn of which only its set height is known, and what a test is about."""
    having = {"steps": steps} if steps else {}
    parts = {**having, **measures.pop("having", {})}
    start = {"standing_height_mm": None, "growth_mm_per_day": None}
    return technique(FAMILY, parts, book=measures.pop("book", None) or book(), **{**start, **measures})


def saying(text: str) -> Step:
    return Step(title="Mow.", text=prose(text))


def found(name: str, broken: AnyWork) -> list[Breach]:
    return breaches(RULES[name], broken)


def one(name: str, broken: AnyWork) -> Breach:
    return only(RULES[name], broken)


# -- what breaks each rule, and its mend --

BROKEN: list[tuple[str, AnyWork]] = [
    ("one-third", lawn(**OVERGROWN, cut_height_mm=99.0)),
    ("one-third", lawn(**OVERGROWN, cut_height_mm=50.0)),
    ("one-third", lawn(set_height_mm=60.0, standing_height_mm=80.0, cut_height_mm=40.0)),
    ("one-third", lawn(set_height_mm=90.0, standing_height_mm=80.0, cut_height_mm=40.0)),
    ("lower-than-it-stands", lawn(set_height_mm=60.0, standing_height_mm=60.0)),
    ("lower-than-it-stands", lawn(set_height_mm=60.0, standing_height_mm=70.0, cut_height_mm=75.0)),
    ("not-below-set-height", lawn(set_height_mm=60.0, cut_height_mm=59.0)),
    ("not-below-set-height", lawn(set_height_mm=60.0, standing_height_mm=80.0, cut_height_mm=55.0)),
    ("stages-apart", lawn(stage_wait_days=1.9)),
    ("lawn-keeps-up", lawn(**OVERGROWN, growth_mm_per_day=10.0)),
    ("lawn-keeps-up", lawn(**FAST)),
    ("lawn-keeps-up", lawn(set_height_mm=20.0, standing_height_mm=150.0)),
    ("lawn-keeps-up", lawn(set_height_mm=5.0, standing_height_mm=600.0, growth_mm_per_day=3.0)),
    ("growth-in-reason", lawn(growth_mm_per_day=0.19)),
    ("growth-in-reason", lawn(growth_mm_per_day=12.1)),
    ("height-for-the-grass", lawn(**OREGON, set_height_mm=49.8)),
    ("height-for-the-grass", lawn(**OREGON, set_height_mm=77.3)),
    ("height-for-the-grass", lawn(grass="dwarf buffalo", climate="Florida", set_height_mm=40.0)),
    ("climate-named", lawn(grass="kikuyu")),
    ("climate-named", lawn(grass="kikuyu", climate="Norway")),
    ("climate-named", lawn(grass="kikuyu", set_height_mm=200.0)),
    ("grass-known", lawn(grass="tall fescew")),
    ("which-buffalo", lawn(grass="Buffalo", climate="California")),
    ("which-buffalo", lawn(grass="buffalo grass")),
    ("shade-raised", lawn(**OREGON, set_height_mm=55.0, shade=True)),
    ("shade-raised", lawn(grass="kikuyu", climate="California", set_height_mm=30.0, shade=True)),
    ("shade-raised", lawn(**IN_SHADE)),
    ("drought-raised", lawn(**OREGON, set_height_mm=60.0, drought=True)),
    ("dry-grass", lawn(wet=True)),
    ("reel-or-rotary", lawn(mower="reel", set_height_mm=38.2)),
    ("reel-or-rotary", lawn(mower="Cylinder mower", set_height_mm=60.0)),
    ("sharp-blade", lawn(blade_hours=25.1)),
    ("turf-rooted", lawn(turf_age_weeks=2.9)),
    ("clippings-said", lawn()),
]


@pytest.mark.parametrize(("name", "broken"), BROKEN, ids=[name for name, _ in BROKEN])
def test_a_breach_is_found_and_its_mend_mends(name: str, broken: AnyWork) -> None:
    for each in found(name, broken):
        assert each.what
        assert each.why or RULES[name].why
        assert each.edit is not None
        assert each.edit.text in each.mend
        assert each.mend[:1].islower()
    assert found(name, assert_mends(RULES[name], broken)) == []


def test_every_rule_is_broken_above_but_one_of_prose() -> None:
    assert {name for name, _ in BROKEN} | {"third-of-the-height"} == set(RULES)


# -- what passes, at each limit --

PASSES: list[tuple[str, AnyWork]] = [
    ("one-third", lawn(**OVERGROWN, cut_height_mm=100.0)),
    ("one-third", lawn(**OVERGROWN)),
    ("one-third", lawn(set_height_mm=60.0, cut_height_mm=10.0)),  # not-below-set-height speaks of it
    ("lower-than-it-stands", lawn(set_height_mm=60.0, standing_height_mm=61.0)),
    ("lower-than-it-stands", lawn(set_height_mm=60.0)),
    ("not-below-set-height", lawn(set_height_mm=60.0, cut_height_mm=60.0)),
    ("not-below-set-height", lawn(set_height_mm=60.0)),
    ("not-below-set-height", lawn(set_height_mm=60.0, standing_height_mm=100.0, cut_height_mm=50.0)),  # one-third
    ("stages-apart", lawn(stage_wait_days=2.0)),
    ("stages-apart", lawn()),
    ("lawn-keeps-up", lawn(**OVERGROWN, growth_mm_per_day=8.3)),
    ("lawn-keeps-up", lawn(set_height_mm=50.0, standing_height_mm=70.0, growth_mm_per_day=30.0)),
    ("growth-in-reason", lawn(growth_mm_per_day=0.2)),
    ("growth-in-reason", lawn(growth_mm_per_day=12.0)),
    ("growth-in-reason", lawn()),
    ("height-for-the-grass", lawn(**OREGON, set_height_mm=49.9)),
    ("height-for-the-grass", lawn(**OREGON, set_height_mm=77.1)),
    ("height-for-the-grass", lawn(grass="tall fescue", set_height_mm=5.0)),
    ("height-for-the-grass", lawn(grass="moss", set_height_mm=5.0)),
    ("climate-named", lawn(**OREGON)),
    ("climate-named", lawn(grass="hybrid couch")),
    ("climate-named", lawn()),
    ("grass-known", lawn(grass="Kikuyu")),
    ("grass-known", lawn()),
    ("which-buffalo", lawn(grass="buffalo", climate="Australia")),
    ("which-buffalo", lawn(grass="buffalo", climate="New Zealand")),
    ("which-buffalo", lawn(grass="american buffalo grass", climate="California")),
    ("which-buffalo", lawn()),
    ("shade-raised", lawn(**OREGON, set_height_mm=63.0, shade=True)),
    ("shade-raised", lawn(**OREGON, set_height_mm=55.0, shade=False)),
    ("shade-raised", lawn(**OREGON, set_height_mm=55.0, shade=True, drought=True)),  # drought-raised speaks of it
    ("shade-raised", lawn(**{**IN_SHADE, "climate": "Australia, shade", "set_height_mm": 50.0})),
    ("shade-raised", lawn(**OREGON, set_height_mm=20.0, shade=True)),  # height-for-the-grass speaks of it
    ("shade-raised", lawn(shade=True)),
    ("drought-raised", lawn(**OREGON, set_height_mm=75.3, drought=True)),
    ("drought-raised", lawn(**OREGON, set_height_mm=60.0)),
    ("drought-raised", lawn(**OREGON, set_height_mm=20.0, drought=True)),
    ("drought-raised", lawn(drought=True)),
    ("dry-grass", lawn(wet=False)),
    ("dry-grass", lawn()),
    ("reel-or-rotary", lawn(mower="reel", set_height_mm=38.1)),
    ("reel-or-rotary", lawn(mower="rotary", set_height_mm=60.0)),
    ("reel-or-rotary", lawn()),
    ("sharp-blade", lawn(blade_hours=25.0)),
    ("sharp-blade", lawn()),
    ("turf-rooted", lawn(turf_age_weeks=3.0)),
    ("turf-rooted", lawn()),
    ("third-of-the-height", lawn(saying("Take a third off, 1/3 in spring and 1/3 in one cut."))),
    ("clippings-said", lawn(saying("Leave the clippings."))),
    ("clippings-said", lawn(having={"steps": ()})),
]


@pytest.mark.parametrize(("name", "whole"), PASSES, ids=[name for name, _ in PASSES])
def test_at_its_limit_a_rule_is_kept(name: str, whole: AnyWork) -> None:
    assert found(name, whole) == []


# -- traps --


@pytest.mark.parametrize(
    "text", ["Take off 1/3 inch.", "Take off a third of an inch.", "Cut 1/3 in.", 'Off comes ⅓"', "one third inch off"]
)
def test_t5_a_third_of_an_inch_is_refused(text: str) -> None:
    # T5: a general page [C] printed the one-third rule as a third of an inch
    said = one("third-of-the-height", lawn(saying("Measure."), saying(text)))
    assert said.field == "steps[1]"
    assert said.edit is None
    written = said.what.split("`")[1]
    assert written in text
    assert said.mend == f"write `a third of the height` in place of `{written}`"


def test_t5_is_refused_wherever_it_is_written() -> None:
    text = prose("Take 1/3 inch.")
    care = Care(when=When(text="Every week", kind="every", days=7), text=text)
    blades = Hazard(title="Blades.", text=text)
    broken = lawn(having={"intro": (text,), "cautions": (blades,), "finish": (text,), "aftercare": (care,)})
    fields = [each.field for each in found("third-of-the-height", broken)]
    assert fields == ["intro[0]", "cautions[0]", "finish[0]", "aftercare[0]"]


def test_t9_california_and_florida_are_never_averaged() -> None:
    # T9: St Augustine 25.4 to 50.8 mm (University of California [A]) against 88.9 to 101.6 mm (University of
    # Florida [A]); the mean of all four, 66.7 mm, keeps neither
    mean = {"grass": "st augustine", "set_height_mm": (25.4 + 50.8 + 88.9 + 101.6) / 4}
    assert one("height-for-the-grass", lawn(**mean, climate="California")).edit == Edit(key="set height", text="50 mm")
    assert one("height-for-the-grass", lawn(**mean, climate="Florida")).edit == Edit(key="set height", text="89 mm")
    said = one("climate-named", lawn(**mean))
    assert "California 25.4 mm to 50.8 mm; Florida 88.9 mm to 101.6 mm" in said.why
    assert "never averaged" in said.why


def test_t10_bermuda_at_5_inches_is_refused() -> None:
    # T10: a contractor's page [C] printed 5 to 5.5 in for bermuda in Florida; the chart it quotes [B] has 0.5 to 1.5
    for inches in (5.0, 5.5):
        said = one("height-for-the-grass", lawn(grass="bermuda", climate="Florida", set_height_mm=inches * 25.4))
        assert said.edit == Edit(key="set height", text="38 mm")
        assert "12.7 mm to 38.1 mm in Florida" in said.why
        assert "Tampa Bay Times" in str(said.reference)
        assert said.severity is Severity.ERROR


def test_t12_buffalo_is_matched_by_its_botanical_name() -> None:
    # T12: University of California Statewide IPM Program [A] lists both grasses
    said = one("which-buffalo", lawn(grass="buffalo", climate="California"))
    assert "Bouteloua dactyloides" in RULES["which-buffalo"].why
    assert said.edit == Edit(key="grass", text="Stenotaphrum secundatum")
    prairie = {"climate": "United States prairie", "set_height_mm": 90.0}
    assert found("height-for-the-grass", lawn(grass="Bouteloua dactyloides", **prairie)) == []
    assert found("climate-named", lawn(grass="Stenotaphrum secundatum", **prairie)) != []


# -- the arithmetic they show --


def test_a_lead_who_asks_for_too_much_gets_the_staged_heights() -> None:
    said = one("one-third", lawn(**OVERGROWN, cut_height_mm=50.0))
    assert said.what == "the cut takes 66.7 % of the height"
    assert "(150 - 50) / 150" in said.why
    assert said.why.endswith("come down in 3 cuts: 100 mm, 66.7 mm, 50 mm")
    assert said.edit == Edit(key="cut height", text="100 mm")


def test_one_mistake_is_spoken_of_once() -> None:
    deep = lawn(set_height_mm=60.0, standing_height_mm=80.0, cut_height_mm=40.0)
    assert [name for name in RULES if found(name, deep)] == ["one-third", "clippings-said"]
    assert one("one-third", deep).edit == Edit(key="cut height", text="60 mm")


def test_a_short_lawn_waits_until_it_is_due() -> None:
    said = one("lower-than-it-stands", lawn(set_height_mm=60.0, standing_height_mm=50.0))
    assert said.edit == Edit(key="standing height", text="90 mm")
    assert "60 mm x 1.5 = 90 mm" in said.why
    inches = one("lower-than-it-stands", lawn(crew=Crew(units="us"), set_height_mm=50.8, standing_height_mm=40.0))
    assert "2 in x 1.5 = 3 in" in inches.why


@pytest.mark.parametrize(
    ("measures", "edit"),
    [
        # 2 x 10 x 2 = 40 is below 50, so 2 days will do
        ({**OVERGROWN, "growth_mm_per_day": 10.0}, Edit(key="stage wait", text="2 days")),
        # 2 x 12.5 x 2 = 50 is not below 50: the lawn is kept higher, over 2 x 12.5 x 3 = 75
        (FAST, Edit(key="set height", text="76 mm")),
        # or at what today's cut leaves, where that is lower
        ({**FAST, "standing_height_mm": 90.0}, Edit(key="set height", text="60 mm")),
        ({**FAST, "standing_height_mm": 1500.0, "stage_wait_days": 60.0}, None),
    ],
)
def test_a_lawn_that_outgrows_its_cuts(measures: dict[str, Any], edit: Edit | None) -> None:
    said = one("lawn-keeps-up", lawn(**measures))
    assert said.edit == edit
    if edit is None:
        assert said.mend == "write `stage wait: 2 days` and `set height: 51 mm` until it grows more slowly"
        both = lawn(**{**measures, "stage_wait_days": 2.0, "set_height_mm": 51.0})
        assert found("lawn-keeps-up", both) == []


def test_growth_from_memory_only_advises() -> None:
    assert one("lawn-keeps-up", lawn(set_height_mm=20.0, standing_height_mm=150.0)).severity is Severity.ADVICE
    assert one("lawn-keeps-up", lawn(**FAST)).severity is None


def test_a_range_weighs_what_its_source_does() -> None:
    wanted = {"set_height_mm": 200.0}
    first = one("height-for-the-grass", lawn(grass="kikuyu", climate="California", **wanted))
    assert first.severity is Severity.ERROR
    assert str(first.reference) == (
        "University of California Statewide IPM Program, UC Guide to Healthy Lawns: mowing warm-season grasses, "
        "2017 copy, mowing heights of Cenchrus clandestinus, California"
    )
    assert "University" not in first.why
    trade = one("height-for-the-grass", lawn(grass="kikuyu", climate="Australia", **wanted))
    assert trade.severity is Severity.WARNING
    row = Mowing(climate="here", low_mm=40, high_mm=60, source="hearsay", grade=Grade.MEMORY)
    memory = PlantBook(grasses=(Grass(botanical="Herba ignota", season="cool", mowing=(row,)),))
    said = one("height-for-the-grass", lawn(grass="herba ignota", book=memory, **wanted))
    assert said.severity is Severity.ADVICE


@pytest.mark.parametrize(
    ("grass", "climate", "millimetres"),
    [
        # heights that guides print in whole millimetres beside inches (1 in is 25.4 mm)
        ("kikuyu", "California", 25.0),
        ("zoysia", "Florida", 64.0),
        ("tall fescue", "Oregon", 50.0),
        ("st augustine", "Florida", 102.0),
        ("hybrid couch", "California", 13.0),
    ],
)
def test_heights_rounded_from_inches_keep_their_range(grass: str, climate: str, millimetres: float) -> None:
    assert found("height-for-the-grass", lawn(grass=grass, climate=climate, set_height_mm=millimetres)) == []


def test_a_grass_nobody_knows_is_left_out_or_added() -> None:
    said = one("grass-known", lawn(grass="xyzzy"))
    assert said.edit is None
    assert said.mend == "leave `grass` out, or add it to grasses.yaml"
    near = one("grass-known", lawn(grass="fescue"))
    assert near.mend.startswith(f"write `grass: {near.edit.text if near.edit else ''}`, or one of: ")
    assert one("grass-known", lawn(grass="centipeed")).mend.startswith("write `grass: centipede`")


def test_a_step_to_add_bears_the_number_after_the_last() -> None:
    said = one("clippings-said", lawn(saying("Mow."), saying("Rest.")))
    assert said.edit is not None
    assert said.edit.text.startswith("3. **Leave or lift the clippings.**")


def test_weeks_and_days_are_counted_in_words() -> None:
    assert one("turf-rooted", lawn(turf_age_weeks=1.0)).what == "the turf was laid 1 week ago"
    assert one("stages-apart", lawn(stage_wait_days=1.0)).what == "1 day between two cuts on the way down"


# -- what must hold --


@given(measures=MEASURES)
def test_every_mend_mends_at_any_height(measures: dict[str, Any]) -> None:
    whole = lawn(**measures)
    for name in RULES:
        for said in found(name, whole):
            if said.edit is None:
                assert name in {"grass-known", "lawn-keeps-up"}
                continue
            after = mended(whole, said)
            assert found(name, after) == [], (name, said.mend)
