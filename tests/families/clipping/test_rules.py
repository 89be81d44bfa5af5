"""Each rule of clipping: broken, kept at its limit, and mended; and random shapes, every mend of which mends."""

from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st
from pydantic import ValidationError

from howto.families.clipping import FAMILY
from howto.families.clipping.measures import ClippingMeasures
from howto.findings import Severity
from howto.model.crew import Crew
from howto.model.family import Breach, Edit, Rule
from howto.model.plants import Fact, Plant, PlantBook, PlantMonths, VouchedWords
from howto.model.prose import prose
from howto.model.reference import Grade
from howto.model.technique import Hazard, Kit, Step
from howto.model.work import AnyWork
from tests.support.builders import assert_mends, breaches, mended, only, technique
from tests.support.cases import book

RULES: dict[str, Rule[ClippingMeasures]] = {rule.name.removeprefix("clipping."): rule for rule in FAMILY.rules}
CONE: dict[str, Any] = {
    "shape": "cone",
    "finished_width_mm": 800.0,
    "standing_width_mm": 900.0,
    "finished_height_mm": 1600.0,
    "standing_height_mm": 1700.0,
}


def shaped(*plants: str, season: str = "", crew: Crew | None = None, **measures: Any) -> AnyWork:
    """A clipped shape; `having` replaces parts of the technique."""
    having = {"plants": plants, "season": season, **measures.pop("having", {})}
    return technique(FAMILY, having, book=measures.pop("book", None) or book(), crew=crew, **measures)


def saying(*words: str) -> dict[str, Any]:
    """Parts of a technique whose only step, tool and caution say no more than these words."""
    return {
        "tools": (Kit(name="Shears"),),
        "steps": tuple(Step(title=each) for each in words),
        "cautions": (Hazard(title="Blades."),),
    }


def cone(*plants: str, **measures: Any) -> AnyWork:
    return shaped(*plants, **{**CONE, **measures})


def found(name: str, broken: AnyWork) -> list[Breach]:
    return breaches(RULES[name], broken)


def one(name: str, broken: AnyWork) -> Breach:
    return only(RULES[name], broken)


# -- what breaks each rule, and its mend --

BROKEN: list[tuple[str, AnyWork]] = [
    ("something-to-clip", shaped(standing_width_mm=899.0)),
    ("something-to-clip", shaped(standing_width_mm=900.0)),
    ("something-to-clip", cone(standing_height_mm=1599.0)),
    ("something-to-clip", cone(standing_width_mm=799.0)),
    ("something-to-clip", cone(standing_width_mm=800.0, standing_height_mm=1600.0)),
    ("half-at-most", shaped(finished_width_mm=489.0)),
    ("half-at-most", cone(standing_height_mm=3201.0)),
    ("third-of-the-leaf", shaped(finished_width_mm=850.0)),
    ("third-of-the-leaf", shaped(shape="cone", finished_width_mm=850.0, finished_height_mm=1700.0)),
    ("third-of-the-leaf", cone(standing_width_mm=1000.0)),
    ("third-of-the-leaf", cone(standing_width_mm=801.0, standing_height_mm=2500.0)),
    ("third-of-the-leaf", shaped(shape="cylinder", standing_width_mm=905.0, standing_height_mm=1600.0)),
    ("third-of-the-leaf", shaped(standing_width_mm=1000.0, standing_height_mm=1100.0)),
    ("third-of-the-leaf", shaped(standing_width_mm=1200.0, standing_height_mm=910.0)),
    ("light-passes", shaped(standing_width_mm=1000.0, passes=1)),
    ("light-passes", shaped(standing_width_mm=1100.0, passes=2)),
    ("past-the-green", shaped("leylandii", growth_mm_per_year=39.0)),
    ("past-the-green", cone("leylandii", growth_mm_per_year=60.0)),
    ("round-ball", shaped(finished_height_mm=946.0)),
    ("round-ball", shaped(finished_height_mm=921.0, tolerances={"finished_width_mm": 20.0})),
    ("tolerance-within-cut", shaped(tolerances={"finished_width_mm": 80.0})),
    ("tolerance-within-cut", shaped(standing_width_mm=900.8, tolerances={"finished_width_mm": 1.0})),
    ("rings-to-read", shaped(gauge_every_mm=56.0)),
    ("rings-to-read", shaped(gauge_every_mm=451.0)),
    ("rings-to-read", shaped(gauge_every_mm=20.0, crew=Crew(units="us"))),
    ("clip-months", shaped("box", season="December")),
    ("clip-months", shaped("box", "yew", season="January")),
    ("day-temperature", shaped(day_temperature_c=32.1)),
    ("day-temperature", shaped(day_temperature_c=-4.1)),
    ("before-frost", shaped(first_frost_weeks=5.9)),
    ("clean-blades", shaped(having=saying("Clip."))),
    ("box-in-the-dry", shaped("box", having=saying("Clip."))),
    ("box-in-the-dry", shaped("japanese box", having=saying("Brush the laundry off the drying green."))),
    ("ring-from-above", shaped(having=saying("Clip in spring.", "Bring it all in during the day."))),
    ("ruffle", shaped(having=saying("Clip."))),
]


@pytest.mark.parametrize(("name", "broken"), BROKEN, ids=[name for name, _ in BROKEN])
def test_a_breach_is_found_and_its_mend_mends(name: str, broken: AnyWork) -> None:
    for each in found(name, broken):
        assert each.what
        assert each.why or RULES[name].why
        assert each.edit is not None
        assert each.edit.text in each.mend
        assert each.mend[:1].islower()
    assert_mends(RULES[name], broken)


def test_every_rule_is_broken_above() -> None:
    assert {name for name, _ in BROKEN} == set(RULES)


# -- what passes, at each limit --

PASSES: list[tuple[str, AnyWork]] = [
    ("something-to-clip", shaped(standing_width_mm=901.0)),
    ("something-to-clip", cone(standing_width_mm=800.0, standing_height_mm=1601.0)),
    ("something-to-clip", cone(standing_height_mm=1600.0)),
    ("half-at-most", shaped(finished_width_mm=490.0)),
    ("half-at-most", cone(standing_height_mm=3200.0)),
    ("third-of-the-leaf", shaped(finished_width_mm=857.0)),  # 980 x (2/3)^(1/3) = 856.1
    ("third-of-the-leaf", shaped(finished_width_mm=489.0)),  # half-at-most speaks of it
    ("third-of-the-leaf", shaped(standing_width_mm=800.0)),
    ("light-passes", shaped(standing_width_mm=990.0, passes=1)),  # 1 - (900/990)³ = 24.9 %
    ("light-passes", shaped(standing_width_mm=1090.0, passes=2)),
    ("light-passes", shaped(standing_width_mm=2000.0, passes=1)),  # half-at-most speaks of it
    ("light-passes", shaped(standing_width_mm=800.0)),
    ("past-the-green", shaped("leylandii", growth_mm_per_year=40.0)),
    ("past-the-green", cone("leylandii", growth_mm_per_year=100.0)),
    ("past-the-green", shaped("yew", growth_mm_per_year=10.0)),
    ("past-the-green", shaped("unknown", growth_mm_per_year=10.0)),
    ("round-ball", shaped(finished_width_mm=900.0, finished_height_mm=945.0)),
    ("round-ball", shaped(finished_height_mm=920.0, tolerances={"finished_width_mm": 20.0})),
    ("round-ball", cone()),
    ("round-ball", shaped()),
    ("tolerance-within-cut", shaped(tolerances={"finished_width_mm": 79.0})),
    ("tolerance-within-cut", shaped(finished_width_mm=900.0)),
    ("tolerance-within-cut", shaped(standing_width_mm=900.0)),
    ("rings-to-read", shaped(gauge_every_mm=450.0)),
    ("rings-to-read", shaped(gauge_every_mm=56.25)),
    ("rings-to-read", shaped()),
    ("clip-months", shaped("box", season="May")),
    ("clip-months", shaped("box", season="September to December")),
    ("clip-months", shaped("box")),
    ("clip-months", shaped("box", season="when the mood takes")),
    ("clip-months", shaped("unknown", season="December")),
    ("day-temperature", shaped(day_temperature_c=32.0)),
    ("day-temperature", shaped(day_temperature_c=-4.0)),
    ("day-temperature", shaped()),
    ("before-frost", shaped(first_frost_weeks=6.0)),
    ("before-frost", shaped()),
    ("clean-blades", shaped(having=saying("Wipe the blades."))),
    ("clean-blades", shaped(having={"cautions": (Hazard(title="Disinfect", text=prose("between plants")),)})),
    ("box-in-the-dry", shaped("box", having=saying("Wait for a dry day."))),
    ("box-in-the-dry", shaped("yew", having=saying("Clip."))),
    ("ring-from-above", shaped(having=saying("Look straight down."))),
    ("ring-from-above", shaped(having=saying("Clip a level ring."))),
    ("ring-from-above", cone(having=saying("Clip."))),
    ("ruffle", shaped(having=saying("Shake it."))),
    ("ruffle", shaped(having=saying("Take off what stands out."))),
]


@pytest.mark.parametrize(("name", "whole"), PASSES, ids=[name for name, _ in PASSES])
def test_at_its_limit_a_rule_is_kept(name: str, whole: AnyWork) -> None:
    assert found(name, whole) == []


# -- the arithmetic they show --


def test_the_shell_is_the_leaf() -> None:
    said = one("third-of-the-leaf", shaped(finished_width_mm=850.0))
    assert said.what == "the clip takes 34.8 % of the leaf"
    assert "the shell between 980 x 980 and 850 x 850 mm" in said.why
    assert said.edit == Edit(key="finished width", text="857 mm")  # 980 x 0.87358 = 856.1, rounded inwards


@pytest.mark.parametrize(
    ("measures", "edits"),
    [
        # 1000 x √(2/3 x 1700 / 1600) = 841.6
        ({"standing_width_mm": 1000.0}, [("finished width", "842 mm")]),
        # 2500 x 2/3 x (801 / 800)² = 1670.8
        ({"standing_width_mm": 801.0, "standing_height_mm": 2500.0}, [("finished height", "1671 mm")]),
        # a height that follows the width must be held: 1200 x √(2/3 x 910 / 900) = 985.2
        (
            {
                "shape": "ball",
                "finished_width_mm": 900.0,
                "finished_height_mm": None,
                "standing_width_mm": 1200.0,
                "standing_height_mm": 910.0,
            },
            [("finished width", "986 mm"), ("finished height", "900 mm")],
        ),
        # neither alone: both to the cube root of two thirds, 0.87358
        (
            {"standing_width_mm": 1000.0, "standing_height_mm": 2700.0},
            [("finished width", "874 mm"), ("finished height", "2359 mm")],
        ),
    ],
)
def test_a_third_is_left_by_a_wider_shape_a_higher_one_or_both(
    measures: dict[str, Any], edits: list[tuple[str, str]]
) -> None:
    broken = cone(**measures)
    said = found("third-of-the-leaf", broken)
    assert [(each.edit.key, each.edit.text) for each in said if each.edit] == edits
    for each in said:
        broken = mended(broken, each)
    assert found("third-of-the-leaf", broken) == []


def test_one_mistake_is_spoken_of_once() -> None:
    broken = shaped(finished_width_mm=300.0, passes=1)
    assert [name for name in RULES if found(name, broken)] == ["half-at-most", "ring-from-above", "ruffle"]


def test_what_is_dry_of_a_conifer_weighs_what_is_known_of_it() -> None:
    # leylandii: RHS profile 398 [A]; its growth from two nurseries [C]; a crew's own measure takes nothing off
    said = one("past-the-green", shaped("leylandii", growth_mm_per_year=39.0))
    assert said.severity is Severity.ERROR
    assert said.what == "40 mm comes off each side of × Cuprocyparis leylandii"
    assert str(said.reference) == (
        "Royal Horticultural Society, Hedges: renovation (profile 398), 2012 copy, what × Cuprocyparis leylandii "
        "shoots from"
    )
    growing = one("past-the-green", shaped("leylandii", finished_width_mm=2000.0, standing_width_mm=4000.0))
    assert growing.severity is Severity.WARNING
    assert growing.edit == Edit(key="finished width", text="2100 mm")
    hearsay = shaped("italian cypress", growth_mm_per_year=39.0)  # from memory in the plant book
    assert one("past-the-green", hearsay).severity is Severity.ADVICE


def test_the_top_of_a_conifer_is_held_to_its_green_too() -> None:
    said = one("past-the-green", cone("leylandii", growth_mm_per_year=60.0))
    assert said.what == "100 mm comes off the top of × Cuprocyparis leylandii"
    assert said.edit == Edit(key="finished height", text="1640 mm")


def test_the_months_of_two_plants_are_those_they_share() -> None:
    # box May to September (RHS [A]), yew August and September (contractor and diary [C])
    box, yew = found("clip-months", shaped("box", "yew", season="January"))
    assert box.edit == yew.edit == Edit(key="season", text="August, September", top=True)
    assert (box.severity, yew.severity) == (Severity.ERROR, Severity.WARNING)
    assert RULES["clip-months"].severity is Severity.WARNING
    assert str(box.reference) == (
        "Royal Horticultural Society, Hedge trimming (profile 353), clipping months of Buxus sempervirens"
    )
    assert "Royal" not in box.why


def test_months_from_memory_only_advise() -> None:
    said = one("clip-months", shaped("japanese holly", season="December"))
    assert said.severity is Severity.ADVICE
    assert str(said.reference) == "from memory: clipping months of Ilex crenata"


def test_plants_that_share_no_month_each_name_their_own() -> None:
    apart = [(1, "one"), (7, "two")]
    plants = tuple(
        Plant(
            botanical=name,
            kind="evergreen",
            clip_months=PlantMonths(months=(month,), source="a book", grade=Grade.C),
            regrows=VouchedWords(text="old wood", source="a book", grade=Grade.C),
            growth_mm_per_year=Fact(low=1, high=3, unit="mm/year", source="a book", grade=Grade.C),
        )
        for month, name in apart
    )
    broken = shaped("one", "two", season="April", book=PlantBook(plants=plants))
    assert [each.mend for each in found("clip-months", broken)] == ["write `season: January`", "write `season: July`"]


def test_in_the_south_months_are_turned() -> None:
    said = one("clip-months", shaped("yew", season="August", crew=Crew(hemisphere="south")))
    assert said.edit == Edit(key="season", text="February, March", top=True)


def test_heat_and_frost_each_name_their_own_source() -> None:
    hot, cold = (one("day-temperature", shaped(day_temperature_c=day)) for day in (35.0, -9.0))
    assert hot.what == "the day reaches 35 °C"
    assert cold.what == "the day gets no warmer than −9 °C"
    assert "a garden diary" in str(hot.reference)
    assert "a gardening site" in str(cold.reference)
    assert (hot.edit, cold.edit) == (Edit(key="day temperature", text="32 °C"), Edit("-4 °C", "day temperature"))


def test_a_step_to_add_bears_the_number_after_the_last() -> None:
    said = one("ruffle", shaped(having=saying("Look down on it.", "Clip it.")))
    assert said.edit is not None
    assert said.edit.text.startswith("3. **Ruffle and clip once more.**")
    assert said.field == "steps[1]"
    assert one("ruffle", shaped(having=saying())).field == "steps"


def test_a_crew_in_inches_is_offered_whole_inches() -> None:
    broken = shaped(finished_width_mm=609.6, gauge_every_mm=12.7, crew=Crew(units="us"))
    assert one("rings-to-read", broken).edit == Edit(key="gauge every", text="3 in")


@pytest.mark.parametrize("field", ["finished_width_mm", "standing_width_mm", "finished_height_mm"])
def test_a_shape_under_50_mm_is_refused(field: str) -> None:
    with pytest.raises(ValidationError):
        technique(FAMILY, **{field: 49.0})  # type: ignore[arg-type]


SIZE = st.floats(min_value=50, max_value=10_000)


@given(
    shape=st.sampled_from(["ball", "dome", "cone", "cube", "cylinder"]),
    width=SIZE,
    height=st.none() | SIZE,
    wider=st.floats(0.9, 2.5),
    higher=st.none() | st.floats(0.9, 2.5),
    passes=st.integers(1, 12),
    rest=st.fixed_dictionaries(
        {},
        optional={
            "gauge_every_mm": st.floats(10, 2000),
            "growth_mm_per_year": st.floats(1, 5000),
            "day_temperature_c": st.floats(-40, 60),
            "first_frost_weeks": st.floats(0, 60),
        },
    ),
    plants=st.sampled_from([(), ("box",), ("leylandii",), ("italian cypress", "yew")]),
    slack=st.none() | st.floats(0, 300),
)
def test_every_mend_mends_at_any_size(  # noqa: PLR0913 - one argument a measure
    *,
    shape: str,
    width: float,
    height: float | None,
    wider: float,
    higher: float | None,
    passes: int,
    rest: dict[str, Any],
    plants: tuple[str, ...],
    slack: float | None,
) -> None:
    stands = None if higher is None else max(50.0, min(12_000.0, (height or width) * higher))
    whole = shaped(
        *plants,
        season="January",
        shape=shape,
        finished_width_mm=width,
        standing_width_mm=max(50.0, min(12_000.0, width * wider)),
        finished_height_mm=height,
        standing_height_mm=stands,
        passes=passes,
        tolerances={} if slack is None else {"finished_width_mm": slack},
        **rest,
    )
    for name in RULES:
        broken = whole
        for said in found(name, whole):
            assert said.edit is not None
            broken = mended(broken, said)
        if found(name, whole):
            assert found(name, broken) == [], name
