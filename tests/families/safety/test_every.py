"""The rules over techniques of every family: what is found on a list, what covers it, and the line that mends it."""

from typing import Any

import pytest

from howto.families.clipping import FAMILY as CLIPPING
from howto.families.safety import FAMILY, kit
from howto.findings import Severity
from howto.model.family import Breach, Rule
from howto.model.plants import Plant, PlantBook, VouchedWords
from howto.model.prose import prose
from howto.model.reference import Grade
from howto.model.technique import Hazard, Kit, Step
from howto.model.work import AnyWork
from tests.support.builders import assert_mends, breaches, technique
from tests.support.cases import book

RULES: dict[str, Rule[Any]] = {rule.name.removeprefix("safety."): rule for rule in FAMILY.every}


def kits(*written: str) -> tuple[Kit, ...]:
    """Tools as an author writes them: `Hedge trimmer: battery`."""
    return tuple(
        Kit(name=name, note=prose(note.strip())) for name, _, note in (each.partition(":") for each in written)
    )


def hazards(*written: str) -> tuple[Hazard, ...]:
    """Cautions as an author writes them: `Noise. Wear muffs. → ear muffs`."""
    found = []
    for each in written:
        words, _, wear = each.partition("→")
        title, _, text = words.strip().partition(". ")
        worn = tuple(part.strip() for part in wear.split(",") if part.strip())
        found.append(Hazard(title=f"{title}.", text=prose(text), wear=worn))
    return tuple(found)


def work(*tools: str, cautions: tuple[str, ...] = ("Slips. Boots with a grip.",), **parts: Any) -> AnyWork:
    """A technique of another family with these tools and cautions."""
    having = {"tools": kits(*tools), "cautions": hazards(*cautions), "season": "any time", **parts}
    having.setdefault("materials", ())
    return technique(CLIPPING, having, book=parts.pop("book", None) or book())


def found(name: str, broken: AnyWork) -> list[Breach]:
    return breaches(RULES[name], broken)


def asked(name: str, *tools: str, **parts: Any) -> bool:
    return bool(found(name, work(*tools, **parts)))


ASKS: list[tuple[str, str]] = [
    *(("hearing", tool) for tool in (
        "Hedge trimmer", "Hedge trimmer: battery", "hedge cutters", "Trimmer: petrol", "Line trimmer", "String trimmer",
        "Brushcutter", "Brush-cutter: petrol", "Strimmer", "Rotary mower", "Lawnmower", "Leaf blower", "Blowers",
        "Hand-held blower", "Chainsaw", "Chain saw", "Wood chipper", "Garden shredder", "Rotavator", "Stump grinder",
        "Angle grinder", "Power tools: hedge trimmer, blower", "Long-reach hedge trimmer",
    )),
    ("jam", "Hedge trimmer: battery"), ("jam", "Electric mower: corded"), ("jam", "Chipper: petrol"),
    ("eyes", "Line trimmer"), ("bystanders", "Mower: petrol"), ("bystanders", "Leaf blower"),
    *(("blades", tool) for tool in (
        "Secateurs", "Bypass pruners", "Hand shears: sharp", "Edging shears", "Loppers", "Pruning saw", "Folding saws",
        "Grafting knife", "Budding knives", "Billhook", "Axe", "Hedge trimmer",
    )),
    *(("fuel", tool) for tool in (
        "Mower: petrol", "Petrol hedge trimmer", "Gasoline blower", "Gas-powered trimmer", "Two-stroke brushcutter",
        "Fuel can: 5 L", "Jerry can", "Gas mower",
    )),
    ("chainsaw", "Chainsaw: battery"), ("charging", "Battery charger"), ("charging", "Charger: for the trimmer"),
    ("mains", "Extension lead: 25 m"), ("mains", "Electric hedge trimmer: corded"), ("mains", "Mower: mains"),
    *(("ladder", tool) for tool in ("Ladder", "Stepladder", "Step ladder: 2 m", "Tripod ladder", "Extension ladders")),
    *(("platform", tool) for tool in ("Work platform", "Scaffold tower", "Trestles: 2", "Hop-up", "Cherry picker")),
    ("power-line", "Pole saw"), ("power-line", "Long-reach hedge trimmer"), ("power-line", "Telescopic loppers"),
    ("drill", "Hammer drill"), ("drill", "Cordless drill"), ("deep-digging", "Post-hole auger"),
    ("deep-digging", "Mattock"), ("climbing", "Climbing harness"),
    *(("spray-label", tool) for tool in (
        "Weedkiller: glyphosate", "Herbicide", "Fungicide", "Insecticidal soap", "Knapsack sprayer", "Slug pellets",
        "Moss killer",
    )),
    ("keep-out", "Herbicide"), ("keep-out", "Rat bait"),
    *(("fertiliser", tool) for tool in (
        "Fertiliser: 20 kg", "Slow-release fertilizer", "Blood and bone", "Sulphate of potash", "Garden lime",
        "Bone meal", "Urea", "Lawn food",
    )),
    *(("mix-dust", tool) for tool in (
        "Potting mix: 40 L", "Bag of compost", "Compost: 4 bags", "Bark mulch", "Mulch", "Topsoil", "Seed compost",
        "Composted bark", "Soil conditioner", "Wood chips", "Potting soil",
    )),
    ("bleach", "Household bleach"), ("bleach", "Bleach: plain"),
    ("heavy-load", "Compost: 3 bags of 25 kg"), ("heavy-load", "Sand: 20 kg bags"), ("heavy-load", "Cement bag: 55 lb"),
]  # fmt: skip


@pytest.mark.parametrize(("name", "tool"), ASKS)
def test_a_tool_asks_for_its_caution_and_the_line_gives_it(name: str, tool: str) -> None:
    broken = work(tool)
    assert found(name, broken)[0].field == "tools[0]"
    whole = assert_mends(RULES[name], broken)
    assert found(name, whole) == []


LEAVES_ALONE: list[tuple[str, str]] = [
    *(("hearing", tool) for tool in (
        "Hand mower", "Reel mower", "Robot mower", "Mower blade", "Spare line for the trimmer", "Mower shed key",
        "Grease for the mower", "Chainsaw oil", "Chainsaw trousers", "Hand shears: no hedge trimmer",
        "No hedge trimmer", "Hedge clippers", "Edging iron", "Shears: instead of a hedge trimmer",
        "Trimmer: not needed",
        "Rake: in place of a blower", "Beard", "Lawn edger: half-moon", "Woodchips: 2 bags",
    )),
    ("jam", "Leaf blower"), ("bystanders", "Hedge trimmer"),
    *(("blades", tool) for tool in ("Rake", "Sawdust", "Seesaw", "Trowel", "Sheath for the saw", "Knife sheath")),
    *(("fuel", tool) for tool in (
        "Hedge trimmer: battery, not petrol", "Mower: battery", "Gas bottle", "Watering can", "Hedge trimmer",
    )),
    ("charging", "Battery"), ("mains", "Electric fence tester"), ("mains", "Hedge trimmer: battery, electric start"),
    ("mains", "Watering can"),
    *(("ladder", tool) for tool in (
        "No ladder", "Ladder rack", "Ladder: not needed", "Bladder pump", "Rope for the ladder",
    )),
    *(("platform", tool) for tool in ("Trestle table", "Platform ladder", "Platform shoes: none")),
    ("power-line", "Builder's line"), ("power-line", "Line trimmer"), ("power-line", "Extension lead"),
    ("drill", "Seed drill"), ("drill", "Drill bits"), ("climbing", "Climbing rose ties"),
    *(("spray-label", tool) for tool in (
        "Hand sprayer: clean water", "Sprayer: 70 % alcohol", "No weedkiller", "Hose", "Spray paint", "Mist nozzle",
    )),
    *(("fertiliser", tool) for tool in ("Lime tree stakes", "No fertiliser", "Limestone")),
    *(("mix-dust", tool) for tool in (
        "Compost bin", "Compost heap thermometer", "Mulching mower", "Mulch mats", "Compost fork", "Compost tea",
        "Barrow for the compost", "No mulch", "Gravel mulch", "Soil test kit",
    )),
    ("bleach", "Bleached canes"), ("heavy-load", "Compost: 200 kg in all"), ("heavy-load", "Fertiliser: 25 kg"),
    ("heavy-load", "Sand bags: 10 kg"), ("heavy-load", "Pot: 40 L"),
]  # fmt: skip


@pytest.mark.parametrize(("name", "tool"), LEAVES_ALONE)
def test_what_only_sounds_like_it_asks_for_nothing(name: str, tool: str) -> None:
    assert not asked(name, tool)


COVERS: list[tuple[str, str, str]] = [
    ("hearing", "Hedge trimmer", "Noise. It passes 85 dB(A)."),
    ("hearing", "Mower", "Machine. Keep clear. → ear defenders"),
    ("hearing", "Blower", "Loud work. Warn the neighbours."),
    ("jam", "Mower", "Turning blade. Engine off and blade still before a hand goes near."),
    ("jam", "Hedge trimmer", "Blades. Battery out before you clear it."),
    ("jam", "Mower", "Blades. Take off the spark-plug lead before you reach under."),
    ("eyes", "Brushcutter", "Stones. They fly. → goggles"),
    ("bystanders", "Brushcutter", "Stones. They fly."),
    ("blades", "Secateurs", "Sharp edges. Close them before you walk."),
    ("fuel", "Mower: petrol", "Fuel. Never fill a hot engine."),
    ("ladder", "Stepladder", "Falls. On firm level ground, locked open."),
    ("platform", "Trestles", "Height. Rails on."),
    ("power-line", "Pole saw", "Electricity. Stay 4 m from any power line."),
    ("spray-label", "Herbicide", "Herbicide. Keep to the label. → gloves"),
    ("keep-out", "Herbicide", "Children. Keep children out until the label's time is over."),
    ("keep-out", "Herbicide", "Pets. Off the lawn until the leaf is dry: keep them off."),
    ("fertiliser", "Fertiliser", "Dust. Wash hands after. → gloves"),
    ("mix-dust", "Compost", "Legionella. Damp it down. → mask"),
    ("bleach", "Bleach", "Bleach. Bleach goes into the water."),
    ("heavy-load", "Sand: 25 kg bags", "Back. Bend your knees."),
    ("charging", "Charger", "Charging. Indoors only."),
    ("mains", "Extension lead", "Cable. Behind you."),
    ("chainsaw", "Chainsaw", "Chainsaw. Licensed users only, both hands, brake on."),
    ("climbing", "Harness", "Climbing. Only with a certificate."),
    ("deep-digging", "Auger", "Pipes. Ask first."),
    ("drill", "Drill", "Dust. Wear a mask."),
]


@pytest.mark.parametrize(("name", "tool", "caution"), COVERS)
def test_a_caution_in_other_words_counts(name: str, tool: str, caution: str) -> None:
    assert asked(name, tool)
    assert not asked(name, tool, cautions=(caution,))


def test_no_line_covers_another_need_of_the_same_tools() -> None:
    """Following one mend does not silence a rule about something else: fuel is not noise."""
    line = "Fuel. Let the engine cool, fill it in the open with nobody smoking, and start it away from the can."
    said = {each for each in RULES if asked(each, "Brushcutter: petrol")}
    left = {each for each in RULES if asked(each, "Brushcutter: petrol", cautions=(line,))}
    assert said - left == {"fuel", "bystanders"}  # its `nobody` speaks of other people


def test_every_rule_is_asked_for_or_tested_below() -> None:
    elsewhere = {"long-vibration", "trimmer-on-ladder", "sun", "thorns", "poisonous-plant", "sap", "standard-number"}
    assert {name for name, _ in ASKS} | elsewhere == set(RULES)


def test_another_language_is_left_alone() -> None:
    spanish = work("Ladder", "Hedge trimmer: petrol").having(language="es")
    assert [name for name in RULES if found(name, spanish)] == []


def test_a_battery_machine_only_warns_of_noise() -> None:
    assert found("hearing", work("Hedge trimmer: battery"))[0].severity is Severity.WARNING
    assert found("hearing", work("Hedge trimmer: petrol"))[0].severity is None


@pytest.mark.parametrize(
    ("tool", "off"),
    [
        ("Mower: petrol", "Engine off, spark-plug lead off,"),
        ("Mower: battery", "Battery out,"),
        ("Mower: corded", "Unplugged,"),
        ("Mower", "Engine off and spark-plug lead off, or battery out,"),
    ],
)
def test_the_line_fits_how_the_machine_is_driven(tool: str, off: str) -> None:
    edit = found("jam", work(tool))[0].edit
    assert edit is not None
    assert edit.text.startswith(f"- **Turning blade.** {off}")


def test_stones_in_the_steps_cover_other_people() -> None:
    steps = (Step(title="Walk the lawn.", text=prose("Pick up sticks, stones and toys.")),)
    assert not asked("bystanders", "Mower", steps=steps)


def test_long_work_with_a_shaking_machine() -> None:
    """HSE ready-reckoner: 100 / (2 x 5²) = 2 h."""
    assert asked("long-vibration", "Hedge trimmer", minutes=120.0)
    assert not asked("long-vibration", "Hedge trimmer", minutes=119.0)
    assert not asked("long-vibration", "Hedge trimmer", minutes=None)
    assert not asked("long-vibration", "Hand shears", minutes=400.0)
    assert_mends(RULES["long-vibration"], work("Hedge trimmer", minutes=150.0))


def test_a_powered_blade_beside_a_ladder() -> None:
    both = work("Ladder", "Hedge trimmer")
    assert found("trimmer-on-ladder", both)[0].what.startswith("`Hedge trimmer` and `Ladder` are on the list")
    whole = assert_mends(RULES["trimmer-on-ladder"], both)
    assert found("ladder", whole)  # how it stands is another caution
    assert not asked("trimmer-on-ladder", "Ladder", "Hand shears")
    for said in ("Ladder. Never run the trimmer from it or any ladder.", "Feet. Both feet on the ground with it."):
        assert not asked("trimmer-on-ladder", "Ladder", "Hedge trimmer", cautions=(said,))


def test_a_stepladder_is_opened_and_a_ladder_is_leaned() -> None:
    step, lean = (found("ladder", work(tool))[0].edit for tool in ("Stepladder", "Ladder"))
    assert step is not None
    assert lean is not None
    assert "Fully open" in step.text
    assert "Foot one out for four up" in lean.text


@pytest.mark.parametrize(
    ("words", "asks"),
    [
        ("The hedge runs under the power line.", True),
        ("Overhead cables cross the gate.", True),
        ("Look for pylons.", True),
        ("There is no power line here.", False),
        ("Stretch the builder's line.", False),
        ("The string line is level.", False),
    ],
)
def test_a_line_overhead_is_named_in_a_step(words: str, asks: bool) -> None:
    steps = (Step(title="Look up.", text=prose(words)),)
    said = found("power-line", work("Rake", steps=steps))
    assert bool(said) is asks
    if asks:
        assert said[0].field == "steps[0]"
        assert said[0].severity is None
        assert_mends(RULES["power-line"], work("Rake", steps=steps))


def test_a_tall_tool_only_warns_of_lines() -> None:
    assert found("power-line", work("Pole saw"))[0].severity is Severity.WARNING


@pytest.mark.parametrize(
    ("season", "minutes", "asks"),
    [
        ("June", 180.0, True), ("summer", 240.0, True), ("June", 179.0, False), ("November", 300.0, False),
        ("any time", 300.0, False), ("", 300.0, False),
    ],
)  # fmt: skip
def test_hours_of_summer_work_ask_for_shade(season: str, minutes: float, asks: bool) -> None:
    assert asked("sun", "Rake", season=season, minutes=minutes) is asks
    if asks:
        assert_mends(RULES["sun"], work("Rake", season=season, minutes=minutes))


def test_loads_are_weighed_one_lift_at_a_time() -> None:
    heavy, lighter = found("heavy-load", work("Sand: 25 kg bags"))[0], found("heavy-load", work("Sand: 20 kg bags"))[0]
    assert heavy.severity is None
    assert lighter.severity is Severity.WARNING
    assert heavy.what == "`Sand` weighs 25 kg a lift, and no caution speaks of lifting"
    assert found("heavy-load", work("Rake", materials=kits("Slabs: 24.9 kg each")))[0].field == "materials[0]"


# -- plants --


@pytest.mark.parametrize(
    ("name", "plant", "severity"),
    [
        ("thorns", "hawthorn", Severity.ADVICE),
        ("poisonous-plant", "privet", Severity.ERROR),
        ("poisonous-plant", "yew", Severity.ERROR),
        ("poisonous-plant", "laurel", Severity.WARNING),
        ("poisonous-plant", "box", Severity.ADVICE),
        ("sap", "fig", Severity.ERROR),
    ],
)
def test_the_plant_book_reaches_the_cautions_by_its_grade(name: str, plant: str, severity: Severity) -> None:
    broken = work("Secateurs", plants=(plant,))
    said = found(name, broken)
    assert [each.severity for each in said] == [severity]
    assert said[0].field == "plants[0]"
    assert_mends(RULES[name], broken)


def test_plants_that_are_not_cut_ask_for_nothing() -> None:
    for name in ("thorns", "poisonous-plant", "sap"):
        assert not asked(name, "Watering can", plants=("privet", "hawthorn", "fig", "no such plant"))
        assert not asked(name, "Secateurs", plants=("hornbeam",))


def test_a_stone_fruit_is_not_called_poisonous_for_its_kernel() -> None:
    assert not asked("poisonous-plant", "Secateurs", plants=("apricot",))


def test_the_best_vouched_for_caution_is_the_one_that_is_asked_for() -> None:
    def said(text: str, grade: Grade) -> VouchedWords:
        return VouchedWords(text=text, source="somebody", grade=grade)

    cautions = (said("Poisonous berries.", Grade.MEMORY), said("Poisonous leaves → beware.", Grade.A))
    shelf = PlantBook(plants=(Plant(botanical="Invented plant", kind="evergreen", cautions=cautions),))
    broken = technique(
        CLIPPING, {"tools": kits("Secateurs"), "plants": ("invented plant",), "cautions": ()}, book=shelf
    )
    breach = found("poisonous-plant", broken)[0]
    assert breach.severity is Severity.ERROR
    assert "Poisonous leaves , beware. Take every clipping away. → gloves" in breach.mend


# -- standards --


@pytest.mark.parametrize(
    ("worn", "fault"),
    [
        ("gloves EN 388", ""),
        ("EN166 safety glasses", ""),
        ("ear muffs (EN 352-1)", ""),
        ("EN ISO 11393-2 chain-saw trousers", ""),
        ("EN ISO 11393-4 gloves", ""),
        ("FFP2 mask EN 149", ""),
        ("gloves EN 166", "EN 166 is the standard of eye protection"),
        ("safety glasses EN 388", "EN 388 is the standard of gloves"),
        ("EN 352 goggles", "EN 352 is the standard of ear muffs and plugs"),
        ("EN 1731 gloves", "EN 1731 is the standard of mesh visors"),
        ("EN 388", "EN 388 is the standard of gloves"),
    ],
)
def test_a_standard_stands_beside_what_it_is_for(worn: str, fault: str) -> None:
    said = found("standard-number", work("Rake", cautions=(f"Work. With care. → {worn}",)))
    assert [each.why for each in said] == ([fault] if fault else [])


def test_the_wrong_number_comes_off() -> None:
    said = found("standard-number", work("Rake", cautions=("Work. With care. → gloves EN 166",)))
    assert said[0].mend == "write `gloves` in place of `gloves EN 166`"
    bare = found("standard-number", work("Rake", cautions=("Work. With care. → EN 388",)))
    assert bare[0].mend == "write what is worn before `EN 388`"


def test_names_are_read_as_whole_words() -> None:
    assert kit.is_named("Bag of potting mix", kit.words("potting mix"))
    assert not kit.is_named("Repotting mixture", kit.words("potting mix"))
