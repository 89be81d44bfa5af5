"""The rules true of every technique: the limits, the words, and the mends."""

from typing import Any

import pytest

from howto.check.common import COMMON_RULES
from howto.model.crew import Crew
from howto.model.family import Rule
from howto.model.plants import Grass, Mowing, Plant, PlantBook
from howto.model.prose import prose
from howto.model.reference import Grade
from howto.model.technique import Hazard, Kit, Picture, Step
from howto.model.work import AnyWork
from howto.span import Span
from tests.support.builders import DIGGING, assert_mends, breaches, mended, technique

RULES: dict[str, Rule[Any]] = {rule.name: rule for rule in COMMON_RULES}
SOUTH = Crew(hemisphere="south")
BOOK = PlantBook(
    plants=(
        Plant(botanical="Fagus sylvatica", common=("beech",), kind="deciduous"),
        Plant(botanical="Taxus baccata", common=("yew",), kind="conifer"),
    ),
    grasses=(
        Grass(
            botanical="Lolium perenne",
            common=("perennial ryegrass",),
            season="cool",
            mowing=(Mowing(climate="cool", low_mm=38, high_mm=64, source="none", grade=Grade.MEMORY),),
        ),
    ),
)


def steps(count: int, **parts: Any) -> tuple[Step, ...]:
    return tuple(Step(title=f"Step {at}.", **parts) for at in range(1, count + 1))


def made(**parts: Any) -> AnyWork:
    crew, book = parts.pop("crew", None), parts.pop("book", None)
    return technique(DIGGING, parts, crew=crew, book=book)


def whats(rule: str, which: AnyWork) -> list[str]:
    return [breach.what for breach in breaches(RULES[rule], which)]


@pytest.mark.parametrize("rule", [rule for rule in COMMON_RULES if rule.check], ids=lambda rule: rule.name)
def test_a_sound_technique_breaks_none(rule: Rule[Any]) -> None:
    assert breaches(rule, made()) == []


# Seven steps hold on one card and eight do not: Job Instruction breakdown (War Manpower Commission, 1944), as
# restated in The TWI Workbook, 2nd edition (CRC Press, 2016), pp. 58 and 67; grade B; exact.
@pytest.mark.parametrize(("count", "broken"), [(5, False), (7, False), (8, True), (20, True)])
def test_steps_on_a_card(count: int, broken: bool) -> None:
    assert bool(whats("technique.steps", made(steps=steps(count)))) is broken


def test_eight_steps_are_split_in_halves() -> None:
    (breach,) = breaches(RULES["technique.steps"], made(steps=steps(8)))
    assert breach.field == "steps[7]"
    assert breach.what == "8 steps on one card"
    assert breach.why == "a breakdown that can be taught at one go has at most 7 steps"
    assert breach.mend == (
        "split the card: keep steps 1 to 4 here and move steps 5 to 8 into a new file with `needs: [do-the-work]`"
    )
    assert not whats("technique.steps", made(steps=steps(4)))


def test_fifteen_steps_are_split_in_three() -> None:
    (breach,) = breaches(RULES["technique.steps"], made(steps=steps(15)))
    assert breach.mend == (
        "split the card: keep steps 1 to 5 here and move steps 6 to 10 into a new file with "
        "`needs: [do-the-work]`, and so on"
    )


# Five key points in a step hold and six do not: the same source; grade B; exact.
@pytest.mark.parametrize(("count", "broken"), [(1, False), (5, False), (6, True)])
def test_key_points_in_a_step(count: int, broken: bool) -> None:
    points = tuple(prose(f"point {at}") for at in range(count))
    which = made(steps=(*steps(1), Step(title="Two.", key_points=points, reasons=(prose("why"),))))
    found = breaches(RULES["technique.key-points"], which)
    assert bool(found) is broken
    if broken:
        assert found[0].field == "steps[1].key_points[5]"
        assert found[0].mend == "split the step: move key points 4 to 6 into a step after it"


def test_many_key_points_are_split_over_as_many_steps_as_hold_them() -> None:
    many = tuple(prose(f"point {number}") for number in range(12))
    found = breaches(RULES["technique.key-points"], made(steps=(Step(title="One.", key_points=many),)))
    assert found[0].mend == (
        "split the step: keep key points 1 to 4, and move the others into 2 steps after it, at most 4 in each"
    )


# Nine items at one pause point hold and ten do not: A Checklist for Checklists (Project Check, 2010); grade B; exact.
@pytest.mark.parametrize(("count", "broken"), [(0, False), (9, False), (10, True)])
def test_items_at_the_finish(count: int, broken: bool) -> None:
    found = breaches(RULES["technique.finish"], made(finish=tuple(prose(f"item {at}") for at in range(count))))
    assert [(each.field, each.what) for each in found] == (
        [("finish[9]", "10 items to tick at the finish")] if broken else []
    )


def test_a_key_point_without_a_reason() -> None:
    which = made(steps=(Step(title="One.", key_points=(prose("mind it"),)), *steps(1)))
    assert whats("technique.reason", which) == ["step 1 has a key point and no reason"]
    reasoned = made(steps=(Step(title="One.", key_points=(prose("mind it"),), reasons=(prose("it holds"),)),))
    assert whats("technique.reason", reasoned) == []


@pytest.mark.parametrize(("length", "broken"), [(60, False), (61, True)])
def test_the_length_of_a_title(length: int, broken: bool) -> None:
    found = whats("technique.title", made(title="x" * length))
    assert found == (["the title has 61 characters"] if broken else [])


def test_no_cautions_at_all() -> None:
    bare = made(cautions=())
    (breach,) = breaches(RULES["technique.cautions"], bare)
    assert breach.mend.endswith("such as `- **Hand shears.** Keep hands, feet and other people clear. → gloves`")
    after = assert_mends(RULES["technique.cautions"], bare)
    assert after.technique.cautions[0].wear == ("gloves",)
    assert whats("technique.caution-words", after) == []


def test_no_cautions_and_no_tools() -> None:
    (breach,) = breaches(RULES["technique.cautions"], made(cautions=(), tools=()))
    assert "`- **Do the work.** Keep" in breach.mend


def test_a_file_without_cautions_is_reported_where_it_is_read() -> None:
    assert whats("technique.cautions", made(cautions=(), spans={"cautions": Span("a.md", 9)})) == []


def test_a_caution_that_only_names_the_danger() -> None:
    which = made(cautions=(Hazard(title="Blades."), Hazard(title="Sun.", wear=("hat",))))
    found = breaches(RULES["technique.caution-words"], which)
    assert [(each.field, each.what) for each in found] == [
        ("cautions[0]", "the caution `Blades.` names a danger and stops there")
    ]


def test_a_technique_that_needs_itself() -> None:
    which = made(needs=("sharpen", "do-the-work"))
    (breach,) = breaches(RULES["technique.needs"], which)
    assert (breach.field, breach.mend) == ("needs[1]", "write `needs: [sharpen]`")
    assert assert_mends(RULES["technique.needs"], which).technique.needs == ("sharpen",)


@pytest.mark.parametrize(
    ("minutes", "count", "what"),
    [
        (3.0, 3, []),
        (2.5, 3, ["2.5 minutes for 3 steps"]),
        (480.0, 3, []),
        (481.0, 3, ["481 minutes, or 8.0 hours"]),
        (None, 3, []),
        (1.0, 0, []),
    ],
)
def test_minutes_against_steps(minutes: float | None, count: int, what: list[str]) -> None:
    which = made(minutes=minutes, steps=steps(count))
    assert whats("technique.pace", which) == what
    if what:
        assert_mends(RULES["technique.pace"], which)


def test_the_arithmetic_of_the_pace_is_shown() -> None:
    (breach,) = breaches(RULES["technique.pace"], made(minutes=6.0, steps=steps(7)))
    assert breach.why == "6 ÷ 7 = 0.9 minutes a step; a minute a step at the least is usual"
    assert breach.mend == "write `minutes: 7` or more, or join steps that are one movement"


@pytest.mark.parametrize(
    "season", ["late spring to early autumn", "March to May", "any time", "spring, autumn", "Winter", "", " "]
)
@pytest.mark.parametrize("crew", [Crew(), SOUTH])
def test_seasons_that_are_read(season: str, crew: Crew) -> None:
    assert whats("technique.season", made(season=season, crew=crew)) == []


@pytest.mark.parametrize(
    ("season", "crew", "what", "mend"),
    [
        (
            "spring (March to May)",
            SOUTH,
            "`spring (March to May)` names no month in the south",
            "write `season: spring`",
        ),
        ("spring (March to May)", Crew(), "`spring (March to May)` is written twice over", "write `season: spring`"),
        (
            "autumn (after leaf fall)",
            Crew(),
            "`autumn (after leaf fall)` is written twice over",
            "write `season: autumn`",
        ),
        (
            "late sprng to early autum",
            Crew(),
            "`late sprng to early autum` is no season that can be read",
            "write `season: late spring to early autumn`, or the months",
        ),
        (
            "when the sap is down",
            Crew(),
            "`when the sap is down` is no season that can be read",
            "write `season: any time`, or the months",
        ),
        (
            "erly sumer to late summer",
            Crew(),
            "`erly sumer to late summer` is no season that can be read",
            "write `season: early summer to late summer`, or the months",
        ),
        ("(spring)", Crew(), "`(spring)` is no season that can be read", "write `season: spring`, or the months"),
    ],
)
def test_seasons_that_are_not(season: str, crew: Crew, what: str, mend: str) -> None:
    which = made(season=season, crew=crew)
    (breach,) = breaches(RULES["technique.season"], which)
    assert (breach.what, breach.mend) == (what, mend)
    assert_mends(RULES["technique.season"], which)


def test_a_season_in_another_language_is_left_alone() -> None:
    assert whats("technique.season", made(season="finales de primavera", language="es")) == []


def test_a_plant_the_book_does_not_know() -> None:
    which = made(plants=("Beech", "beach", "perennial ryegrass"), book=BOOK)
    (breach,) = breaches(RULES["technique.plants"], which)
    assert (breach.field, breach.what) == ("plants[1]", "`beach` is not in the plant book")
    assert breach.mend == "write `beech`, or add it to the shelf's own `plants.yaml`"
    assert assert_mends(RULES["technique.plants"], which).technique.plants == ("Beech", "beech", "perennial ryegrass")


def test_a_plant_like_no_other() -> None:
    (breach,) = breaches(RULES["technique.plants"], made(plants=("zzz",), book=BOOK))
    assert (breach.mend, breach.edit) == ("add it to the shelf's own `plants.yaml`", None)


def test_without_a_book_no_plant_is_unknown() -> None:
    assert whats("technique.plants", made(plants=("zzz",))) == []


@pytest.mark.parametrize(
    ("said", "tool"),
    [
        ("Take the loppers to it.", "loppers"),
        ("Dig with a spade.", "spade"),
        ("Stand on the step ladder.", "step ladder"),
        ("Push the mower.", "mower"),
        ("Fill a watering can.", "watering can"),
        ("Do not lean. Use a Ladder.", "ladder"),
    ],
)
def test_a_tool_that_is_not_on_the_list(said: str, tool: str) -> None:
    which = made(steps=(*steps(1), Step(title="Two.", text=prose(said)), Step(title="Three.", text=prose(said))))
    (breach,) = breaches(RULES["technique.tools"], which)
    assert breach.field == "steps[1]"
    assert breach.what == f"step 2 takes up the {tool}, and the list of tools does not have it"
    assert breach.mend == f"add under `## Tools` the line `- {tool.capitalize()}`"
    assert_mends(RULES["technique.tools"], which)


@pytest.mark.parametrize(
    "said",
    [
        "Clip with the shears.",
        "Never use a ladder here.",
        "Work without a ladder.",
        "Use your hands instead of a spade.",
        "Dig it a spade's depth down, one spade deep.",
        "Rake up, fork it over, saw through, level off.",
        "A spadeful of soil.",
    ],
)
def test_words_that_name_no_missing_tool(said: str) -> None:
    assert whats("technique.tools", made(steps=(Step(title="One.", text=prose(said)),))) == []


@pytest.mark.parametrize("name", ["Rotary mower", "Lawnmower"])
def test_a_tool_by_its_longer_name(name: str) -> None:
    which = made(tools=(Kit(name=name),), steps=(Step(title="Push the mower."),))
    assert whats("technique.tools", which) == []


def test_tools_in_another_language_are_left_alone() -> None:
    assert whats("technique.tools", made(language="es", steps=(Step(title="Use the spade."),))) == []


def test_a_mend_of_the_list_is_followed_to_the_letter() -> None:
    which = made(steps=(Step(title="Dig with the spade."),))
    (breach,) = breaches(RULES["technique.tools"], which)
    assert [kit.name for kit in mended(which, breach).technique.tools] == ["Hand shears", "Spade"]


def test_what_a_new_file_says_is_to_be_written_over() -> None:
    photographed = Step(title="Look.", pictures=(Picture(file="a.jpg", alt="Say what the  picture shows"),))
    left = breaches(RULES["technique.to-write"], made(steps=(*steps(1, text=prose("Say why.")), photographed)))
    assert [(each.field, each.what) for each in left] == [
        ("steps[0]", "`Say why.` stands as in a new file, and so does 1 more")
    ]
    alone = breaches(RULES["technique.to-write"], made(intro=(prose("Say why you do it."),), steps=(photographed,)))
    assert [(each.field, each.what) for each in alone] == [
        ("steps[0].pictures[0].alt", "`Say what the picture shows` stands as in a new file")
    ]
