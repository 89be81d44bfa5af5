from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from howto.families.hedging import FAMILY
from howto.families.hedging.measures import HedgingMeasures
from howto.findings import Severity
from howto.model.crew import Crew
from howto.model.family import Breach, Edit, Rule
from howto.model.prose import prose
from howto.model.technique import Hazard, Kit, Step
from howto.model.work import AnyWork
from tests.support.builders import assert_mends, breaches, mended, only, technique
from tests.support.cases import book

RULES: dict[str, Rule[HedgingMeasures]] = {rule.name.removeprefix("hedging."): rule for rule in FAMILY.rules}
BARE: dict[str, Any] = {
    "standing_base_width_mm": None,
    "standing_top_width_mm": None,
    "base_width_mm": None,
    "top_width_mm": None,
}


def hedge(*plants: str, season: str = "", crew: Crew | None = None, **measures: Any) -> AnyWork:
    """A hedge with only the measures a test is about; `having` replaces parts of the technique."""
    having = {"plants": plants, "season": season, **measures.pop("having", {})}
    start = {} if measures.pop("whole", False) else BARE
    return technique(FAMILY, having, book=book(), crew=crew, **{**start, "standing_height_mm": None, **measures})


def found(name: str, broken: AnyWork) -> list[Breach]:
    return breaches(RULES[name], broken)


def one(name: str, broken: AnyWork) -> Breach:
    return only(RULES[name], broken)


def young(*plants: str, **measures: Any) -> AnyWork:
    return hedge(*plants, **{"job": "thicken", "finished_height_mm": 1500.0, **measures})


# -- what breaks each rule, and its mend --

BROKEN: list[tuple[str, AnyWork]] = [
    ("something-to-cut", hedge(standing_height_mm=1500.0, finished_height_mm=1600.0)),
    ("something-to-cut", hedge(standing_height_mm=1500.0, cut_height_mm=1501.0)),
    ("third-of-height", hedge(standing_height_mm=2700.0, finished_height_mm=1200.0)),
    ("third-of-height", hedge("beech", job="renovate", standing_height_mm=2000.0, finished_height_mm=1200.0)),
    ("one-face-a-year", hedge(job="renovate", standing_base_width_mm=1300.0, base_width_mm=800.0)),
    ("one-face-a-year", hedge(job="renovate", standing_base_width_mm=1300.0, base_width_mm=800.0, faces=2)),
    ("inside-the-face", hedge(job="renovate", inside_face_mm=149.0)),
    ("room-to-regrow", hedge(job="renovate", standing_height_mm=2000.0, finished_height_mm=1800.0)),
    ("past-the-green", hedge("leylandii", standing_base_width_mm=1200.0, base_width_mm=900.0, green_depth_mm=100.0)),
    ("third-of-the-section", hedge(whole=True, standing_height_mm=1700.0, standing_base_width_mm=1200.0)),
    ("third-of-the-section", hedge(whole=True, standing_height_mm=2300.0, standing_base_width_mm=1000.0)),
    ("base-wider", hedge(base_width_mm=500.0, top_width_mm=500.0, finished_height_mm=1001.0)),
    ("base-wider", hedge(base_width_mm=700.0, top_width_mm=5000.0, finished_height_mm=1600.0)),
    ("base-wider", hedge(base_width_mm=499.0, top_width_mm=500.0, finished_height_mm=900.0)),
    ("lean", hedge(base_width_mm=1000.0, top_width_mm=300.0, finished_height_mm=1000.0)),
    ("top-within-reach", hedge(top_width_mm=601.0)),
    ("formative-cut", young("hawthorn", year=1, standing_height_mm=600.0, cut_height_mm=400.0)),
    ("formative-cut", young("hawthorn", year=1, standing_height_mm=600.0, cut_height_mm=100.0)),
    ("formative-cut", young("privet", year=2, standing_height_mm=900.0, cut_height_mm=800.0, last_cut_height_mm=300.0)),
    ("formative-cut", young("box", year=1, standing_height_mm=300.0, cut_height_mm=290.0)),
    ("formative-cut", young("hornbeam", year=2, standing_height_mm=900.0, cut_height_mm=800.0)),
    ("leave-the-leader", young("yew", standing_height_mm=900.0, cut_height_mm=700.0)),
    ("leave-the-leader", young("viburnum", standing_height_mm=900.0, cut_height_mm=700.0)),
    ("top-off", young("escallonia", year=3, standing_height_mm=1500.0, cut_height_mm=1050.0)),
    ("topped-as-it-rises", young("hornbeam", standing_height_mm=1600.0)),
    ("cut-back-growth", young(cut_back_percent=60.0)),
    ("cut-back-growth", young(cut_back_percent=10.0)),
    ("nests", hedge(season="June", country="england")),
    ("nests-elsewhere", hedge()),
    ("nests-elsewhere", hedge(season="December", country="new zealand")),
    ("closed-season", hedge(season="June", country="england", farm_hedge=True)),
    ("closed-season-ireland", hedge(country="ireland")),
    ("closed-season-ireland", hedge(country="ireland", season="August to October")),
    ("clip-months", hedge("hornbeam", season="December")),
    ("spacing", hedge("hornbeam", spacing_mm=299.0)),
    ("spacing", hedge("hornbeam", spacing_mm=401.0)),
    ("double-row", hedge(rows=2, spacing_mm=401.0)),
    ("farm-row", hedge(rows=2, spacing_mm=340.0, farm_hedge=True, country="england")),
    ("farm-row", hedge(spacing_mm=340.0, farm_hedge=True, country="england")),
    ("row-gap", hedge(rows=2, row_gap_mm=399.0)),
    ("row-gap", hedge(rows=2, row_gap_mm=451.0)),
    ("big-leaves", hedge("laurel", having={"tools": (Kit(name="Hedge trimmer"),)})),
    ("bottom-up", hedge()),
    ("level-line", hedge()),
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
    ("something-to-cut", hedge(standing_height_mm=1600.0, finished_height_mm=1600.0)),
    ("something-to-cut", hedge(finished_height_mm=1600.0)),
    ("third-of-height", hedge(standing_height_mm=2400.0, finished_height_mm=1600.0)),
    ("third-of-height", young("privet", year=1, standing_height_mm=900.0, cut_height_mm=300.0)),
    ("third-of-height", hedge()),
    ("one-face-a-year", hedge(job="renovate", standing_base_width_mm=1200.0, base_width_mm=800.0)),
    ("one-face-a-year", hedge(job="renovate", standing_base_width_mm=1300.0, base_width_mm=800.0, faces=1)),
    ("one-face-a-year", hedge(job="trim", standing_base_width_mm=1300.0, base_width_mm=800.0)),
    ("inside-the-face", hedge(job="renovate", inside_face_mm=150.0)),
    ("inside-the-face", hedge(job="trim", inside_face_mm=10.0)),
    ("room-to-regrow", hedge(job="renovate", standing_height_mm=2000.0, finished_height_mm=1800.0, cut_height_mm=1500)),
    ("room-to-regrow", hedge(job="renovate", standing_height_mm=2400.0, finished_height_mm=1800.0)),
    ("past-the-green", hedge("leylandii", standing_base_width_mm=1200.0, base_width_mm=1000.0, green_depth_mm=100.0)),
    ("past-the-green", hedge("yew", standing_base_width_mm=1200.0, base_width_mm=800.0, green_depth_mm=10.0)),
    ("third-of-the-section", hedge(whole=True, standing_height_mm=1750.0)),
    ("base-wider", hedge(base_width_mm=501.0, top_width_mm=500.0, finished_height_mm=2000.0)),
    ("base-wider", hedge(base_width_mm=500.0, top_width_mm=500.0, finished_height_mm=1000.0)),
    ("lean", hedge(base_width_mm=949.0, top_width_mm=300.0, finished_height_mm=1000.0)),
    ("top-within-reach", hedge(top_width_mm=600.0)),
    ("formative-cut", young("hawthorn", year=1, standing_height_mm=600.0, cut_height_mm=300.0)),
    ("formative-cut", young("hawthorn", year=1, standing_height_mm=600.0, cut_height_mm=150.0)),
    ("formative-cut", young("hawthorn", year=1, standing_height_mm=150.0, cut_height_mm=150.0)),
    ("formative-cut", young("privet", year=2, standing_height_mm=900.0, cut_height_mm=600.0, last_cut_height_mm=300.0)),
    ("formative-cut", young("privet", year=2, standing_height_mm=900.0, cut_height_mm=800.0)),
    ("formative-cut", young("privet", year=3, standing_height_mm=900.0, cut_height_mm=800.0)),
    ("formative-cut", young("box", year=1, standing_height_mm=300.0, cut_height_mm=225.0)),
    ("formative-cut", young("yew", year=1, standing_height_mm=300.0, cut_height_mm=300.0)),
    ("leave-the-leader", young("yew", standing_height_mm=900.0, cut_height_mm=900.0)),
    ("leave-the-leader", young("yew", standing_height_mm=1700.0, cut_height_mm=1500.0)),
    ("leave-the-leader", young("laurel", standing_height_mm=1300.0, cut_height_mm=900.0)),
    ("leave-the-leader", young("box", standing_height_mm=900.0, cut_height_mm=700.0)),
    ("top-off", young("escallonia", standing_height_mm=1500.0, cut_height_mm=1100.0)),
    ("top-off", young("privet", year=1, standing_height_mm=800.0, cut_height_mm=300.0)),
    ("top-off", young("hornbeam", standing_height_mm=2000.0, cut_height_mm=1400.0)),
    ("topped-as-it-rises", young("hornbeam", standing_height_mm=1600.0, last_cut_height_mm=1200.0)),
    ("topped-as-it-rises", young("hornbeam", standing_height_mm=1499.0)),
    ("topped-as-it-rises", young("yew", standing_height_mm=1600.0)),
    ("topped-as-it-rises", young("hornbeam", standing_height_mm=2300.0)),
    ("cut-back-growth", young(cut_back_percent=50.0)),
    ("cut-back-growth", young(cut_back_percent=33.0)),
    ("nests", hedge(season="December", country="england")),
    ("nests-elsewhere", hedge(season="June", having={"cautions": (Hazard(title="Nests.", text=prose("Look.")),)})),
    ("nests-elsewhere", hedge(season="June", country="australia")),
    ("nests", hedge(country="australia")),
    ("nests-elsewhere", hedge(country="scotland")),
    ("closed-season-ireland", hedge(season="September to February", country="ireland")),
    ("closed-season", hedge(season="June", country="england")),
    ("closed-season", hedge(season="June", country="wales", farm_hedge=True)),
    ("clip-months", hedge("hornbeam", season="August")),
    ("clip-months", hedge("hornbeam")),
    ("clip-months", young("privet", season="March", year=2)),
    ("clip-months", hedge(season="March")),
    ("spacing", hedge("hornbeam", spacing_mm=300.0)),
    ("spacing", hedge("hornbeam", spacing_mm=400.0)),
    ("spacing", hedge("hornbeam", spacing_mm=500.0, rows=2)),
    ("double-row", hedge(rows=2, spacing_mm=400.0)),
    ("farm-row", hedge(rows=2, spacing_mm=333.0, farm_hedge=True, country="england")),
    ("farm-row", hedge(rows=2, spacing_mm=400.0, farm_hedge=True, country="wales")),
    ("farm-row", hedge(farm_hedge=True, country="england")),
    ("double-row", hedge(rows=1, spacing_mm=1000.0)),
    ("row-gap", hedge(rows=2, row_gap_mm=400.0)),
    ("row-gap", hedge(rows=2, row_gap_mm=450.0)),
    ("row-gap", hedge(rows=1, row_gap_mm=100.0)),
    ("big-leaves", hedge("laurel", having={"tools": (Kit(name="Secateurs"),)})),
    ("big-leaves", hedge("hornbeam", having={"tools": (Kit(name="Hedge trimmer"),)})),
    ("bottom-up", hedge(having={"steps": (Step(title="Cut the sides from the bottom up."),)})),
    ("bottom-up", young()),
    ("level-line", hedge(having={"materials": (Kit(name="Builder's line"),)})),
]


@pytest.mark.parametrize(("name", "whole"), PASSES, ids=[name for name, _ in PASSES])
def test_at_its_limit_a_rule_is_kept(name: str, whole: AnyWork) -> None:
    assert found(name, whole) == []


# -- the arithmetic they show --


def test_a_lead_who_asks_for_more_than_a_third_gets_the_staged_heights() -> None:
    said = one("third-of-height", hedge("hornbeam", standing_height_mm=2700.0, finished_height_mm=1200.0))
    assert said.what == "the cut takes 55.6 % of the height"
    assert "(2700 - 1200) / 2700" in said.why
    assert "In stages: 1800 mm, 1200 mm, one a year, in June or August" in said.why
    assert said.edit == Edit(key="cut height", text="1800 mm")
    assert "`staged cuts` gives heights and dates" in said.mend


def test_t7_between_a_third_and_a_half_both_versions_of_the_source_are_named() -> None:
    # T7: two copies of Royal Horticultural Society, Hedges: renovation [A]: over one third, or over one half
    softer = one(
        "third-of-height", hedge("beech", job="renovate", standing_height_mm=2000.0, finished_height_mm=1100.0)
    )
    assert softer.severity is Severity.WARNING
    assert "one copy of the source stages over a third, another over half" in softer.why
    harder = one("third-of-height", hedge("beech", job="renovate", standing_height_mm=2000.0, finished_height_mm=990.0))
    assert harder.severity is None
    at_half = one(
        "third-of-height", hedge("beech", job="renovate", standing_height_mm=2000.0, finished_height_mm=1000.0)
    )
    assert at_half.severity is Severity.WARNING


def test_t7_a_plant_that_no_source_calls_hardy_is_refused_from_a_third_on() -> None:
    said = one("third-of-height", hedge("laurel", job="renovate", standing_height_mm=2000.0, finished_height_mm=1300.0))
    assert said.severity is None
    assert RULES["third-of-height"].severity is Severity.ERROR


def test_t7_the_width_is_staged_the_same_way() -> None:
    broken = hedge("beech", job="renovate", standing_base_width_mm=1300.0, base_width_mm=800.0)
    assert one("one-face-a-year", broken).severity is Severity.WARNING
    broken = hedge("beech", job="renovate", standing_base_width_mm=1700.0, base_width_mm=800.0)
    assert one("one-face-a-year", broken).severity is None


def test_h60_a_third_of_the_width_may_go_in_one_year() -> None:
    # H60: Royal Horticultural Society, Hedges: renovation [A]: 1.2 m wanted at 0.8 m is 33 %
    assert found("one-face-a-year", hedge(job="renovate", standing_base_width_mm=1200.0, base_width_mm=800.0)) == []
    assert one("inside-the-face", hedge(job="renovate", inside_face_mm=100.0)).edit == Edit(
        key="inside face", text="150 mm"
    )


def test_a_conifer_without_a_written_green_depth_is_only_warned_about() -> None:
    broken = hedge("leylandii", standing_base_width_mm=3000.0, base_width_mm=900.0, standing_top_width_mm=600.0)
    assert one("past-the-green", broken).severity is Severity.WARNING


def test_both_widths_are_held_to_the_green() -> None:
    broken = hedge(
        "leylandii",
        standing_base_width_mm=1200.0,
        base_width_mm=900.0,
        standing_top_width_mm=1000.0,
        top_width_mm=700.0,
        green_depth_mm=100.5,
    )
    base, top = found("past-the-green", broken)
    assert (base.edit, top.edit) == (Edit(key="base width", text="999 mm"), Edit(key="top width", text="799 mm"))
    assert found("past-the-green", mended(mended(broken, base), top)) == []


def test_a_trim_that_no_wider_base_saves_is_a_renovation() -> None:
    broken = hedge(whole=True, standing_height_mm=2300.0, standing_base_width_mm=700.0, standing_top_width_mm=690.0)
    said = one("third-of-the-section", broken)
    assert said.edit == Edit(key="job", text="renovate")


def test_what_a_third_of_the_height_says_is_not_said_twice() -> None:
    broken = hedge(whole=True, standing_height_mm=2700.0, standing_base_width_mm=1200.0)
    assert found("third-of-the-section", broken) == []
    assert len(found("third-of-height", broken)) == 1


@pytest.mark.parametrize(
    ("country", "hemisphere", "months", "name"),
    [
        ("england", "north", "March to August", "nests"),
        ("ireland", "north", "March to August", "nests"),
        ("australia", "south", "August to January", "nests-elsewhere"),
        ("new zealand", "south", "August to January", "nests-elsewhere"),
        ("united states", "north", "March to August", "nests-elsewhere"),
        (None, "north", "March to August", "nests-elsewhere"),
        ("elsewhere", "south", "August to January", "nests-elsewhere"),
    ],
)
def test_the_law_of_the_country_decides_how_much_a_nest_weighs(
    country: str | None, hemisphere: Any, months: str, name: str
) -> None:
    broken = hedge(country=country, crew=Crew(hemisphere=hemisphere))
    assert months in one(name, broken).why
    other = {"nests": "nests-elsewhere", "nests-elsewhere": "nests"}[name]
    assert found(other, broken) == []
    assert RULES[name].severity is {"nests": Severity.ERROR, "nests-elsewhere": Severity.ADVICE}[name]


def test_a_leader_of_a_broad_leaved_evergreen_only_warns() -> None:
    conifer = young("yew", standing_height_mm=900.0, cut_height_mm=700.0)
    assert one("leave-the-leader", conifer).severity is None
    assert one("leave-the-leader", young("bay", standing_height_mm=900.0, cut_height_mm=700.0)).severity is (
        Severity.WARNING
    )


def test_the_months_of_a_job_differ() -> None:
    # RHS, Hedge trimming [A] for young privet; RHS, Hedges: renovation [A] for evergreens in mid-spring;
    # RHS, Bleeding from pruning cuts [A] keeps hornbeam out of mid-winter
    assert one("clip-months", young("privet", season="June", year=2)).edit == Edit(
        key="season", text="February, March", top=True
    )
    assert one("clip-months", hedge("box", season="June", job="renovate")).edit == Edit(
        key="season", text="April", top=True
    )
    assert one("clip-months", hedge("hornbeam", season="June", job="renovate")).edit == Edit(
        key="season", text="November, December", top=True
    )
    assert one("clip-months", hedge("beech", season="June", job="renovate")).edit == Edit(
        key="season", text="January", top=True
    )
    south = Crew(hemisphere="south")
    assert one("clip-months", hedge("beech", season="June", crew=south)).edit == Edit(
        key="season", text="December, February", top=True
    )


def test_a_spacing_from_memory_only_advises() -> None:
    assert one("spacing", hedge("griselinia", spacing_mm=2000.0)).severity is Severity.ADVICE
    assert one("spacing", hedge("hornbeam", spacing_mm=2000.0)).severity is None


@given(stands=st.floats(200, 9000), share=st.floats(0.34, 0.95))
def test_no_cut_over_a_third_survives_its_mend(stands: float, share: float) -> None:
    broken = hedge(standing_height_mm=stands, finished_height_mm=stands * (1 - share))
    assert found("third-of-height", assert_mends(RULES["third-of-height"], broken)) == []


@given(base=st.floats(50, 5000), top=st.floats(50, 5000), height=st.floats(100, 6000))
def test_taper_mends_mend_at_any_size(base: float, top: float, height: float) -> None:
    whole = hedge(base_width_mm=base, top_width_mm=top, finished_height_mm=height)
    for name in ("base-wider", "lean", "top-within-reach"):
        said = found(name, whole)
        if not said:
            continue
        assert said[0].edit is not None
        if float(said[0].edit.text.removesuffix(" mm")) <= 5000:  # what a hedge may measure at most
            assert found(name, mended(whole, said[0])) == []


@given(spacing=st.floats(50, 4000), rows=st.integers(1, 3), farm=st.booleans())
def test_row_mends_mend_at_any_spacing(spacing: float, rows: int, farm: bool) -> None:
    whole = hedge("hornbeam", spacing_mm=spacing, rows=rows, farm_hedge=farm, country="england")
    for name in ("spacing", "double-row", "farm-row"):
        for said in found(name, whole):
            assert found(name, mended(whole, said)) == []


@given(
    plant=st.sampled_from(["hawthorn", "privet", "box", "hornbeam", "yew", "laurel", "griselinia", "unknown"]),
    year=st.integers(1, 4),
    stands=st.floats(160, 4000),
    cut=st.floats(0.1, 1.0),
    last=st.none() | st.floats(0.1, 0.95),
)
def test_mends_of_young_hedges_mend(plant: str, year: int, stands: float, cut: float, last: float | None) -> None:
    whole = young(
        plant,
        year=year,
        standing_height_mm=stands,
        cut_height_mm=stands * cut,
        last_cut_height_mm=None if last is None else stands * last,
    )
    for name in ("formative-cut", "leave-the-leader", "top-off", "topped-as-it-rises", "third-of-height"):
        for said in found(name, whole):
            assert found(name, mended(whole, said)) == []
