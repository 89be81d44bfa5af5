"""Rules over techniques of every family: what machines, blades, fuel and batteries ask of the cautions."""

from itertools import chain
from typing import Any, Final

from howto.families.safety import kit
from howto.families.safety import references as by
from howto.families.safety.needs import Ask, Need, listed, says
from howto.findings import Severity
from howto.model.family import Rule
from howto.model.reference import PRACTICE
from howto.model.work import AnyWork

LONG_MIN: Final = 120.0  # at 5 m/s² the action value is reached in 2 h: 100 / (2 x 5²)


def _hearing(work: AnyWork) -> Ask | None:
    item = kit.machine(work, *kit.LOUD)
    if item is None:
        return None
    battery = item.drive == "battery"
    return listed(
        item,
        "mowers, trimmers and blowers, electric ones too, were measured at 82 to 102 dB(A) at the operator's ear; "
        + (
            "a battery machine may stay under 85, so look at its plate"
            if battery
            else "85 is allowed for 8 h, 97 for 30 min"
        ),
        "- **Noise.** It is loud enough to harm: ear protection on before it starts and until it stops. → ear muffs",
        Severity.WARNING if battery else None,
    )


def _jam(work: AnyWork) -> Ask | None:
    item = kit.machine(work, *kit.SWINGING)
    if item is None:
        return None
    off = {
        "petrol": "Engine off, spark-plug lead off",
        "battery": "Battery out",
        "mains": "Unplugged",
        "unknown": "Engine off and spark-plug lead off, or battery out",
    }[item.drive]
    return listed(
        item,
        "a blade that is freed starts again while its drive is live: electric tools are unplugged first, petrol ones "
        "lose their spark-plug lead",
        f"- **Turning blade.** {off}, and the blade still, before a hand goes near it to clear a jam. → gloves",
    )


def _eyes(work: AnyWork) -> Ask | None:
    item = kit.machine(work, *kit.LOUD)
    return listed(
        item,
        "it throws twigs, grit and chips as high as the face",
        "- **Flying bits.** Eye protection on while it runs and while anyone beside you runs one. → eye protection",
    )


def _bystanders(work: AnyWork) -> Ask | None:
    item = kit.machine(work, *kit.THROWING)
    return listed(
        item,
        "what it throws reaches people who wear nothing against it",
        "- **Other people.** Pick up stones and sticks first, and stop when anyone comes near.",
    )


def _blades(work: AnyWork) -> Ask | None:
    item = kit.first(work, kit.HAND_BLADES) or kit.machine(work, kit.HEDGE_TRIMMER, kit.CHAINSAW)
    return listed(
        item,
        "most cuts are to the hand that is not holding the tool",
        "- **Blades.** Keep the free hand behind the blade, and close or sheathe it before you walk. → gloves",
    )


def _fuel(work: AnyWork) -> Ask | None:
    item = next((each for each in kit.items(work) if kit.mentioned(f"{each.name}: {each.note}", kit.PETROL)), None)
    return listed(
        item,
        "fuel on a hot engine burns, and exhaust in a closed place kills",
        "- **Fuel.** Let the engine cool, fill it in the open with nobody smoking, and start it away from the can.",
    )


def _chainsaw(work: AnyWork) -> Ask | None:
    item = kit.first(work, kit.CHAINSAW)
    return listed(
        item,
        "a chainsaw is started with its brake on, 3 m from where it was filled, held in two hands and never above "
        "the shoulder; in many places the law asks for a licence",
        "- **Chainsaw.** For the trained and licensed only: two hands, chain brake on to start and walk, never above "
        "the shoulder. → chainsaw trousers, chainsaw boots, helmet with visor and ear muffs, gloves",
    )


def _charging(work: AnyWork) -> Ask | None:
    item = kit.first(work, kit.words(r"(?:battery |fast |rapid )?chargers?"))
    return listed(
        item,
        "a lithium-ion pack charged below 0 °C or above 40 °C (32 to 105 °F) is spoiled, and may burn",
        "- **Charging.** Charge packs between 0 and 40 °C, dry and shaded; stop when one smells, swells or leaks.",
    )


def _mains(work: AnyWork) -> Ask | None:
    corded = (each for kind in kit.LOUD for each in kit.named(work, kind) if each.drive == "mains")
    item = next(chain(kit.named(work, kit.EXTENSION), corded), None)
    return listed(
        item,
        "a blade through a live cable is stopped only by a device that trips on leakage",
        "- **Cable.** Plug in through a residual-current device, and keep the cable behind you and off the blade.",
    )


def _vibration(work: AnyWork) -> Ask | None:
    item = kit.machine(work, kit.HEDGE_TRIMMER, kit.LINE_TRIMMER, kit.CHAINSAW, kit.MOWER)
    if item is None or work.technique.minutes is None or work.technique.minutes < LONG_MIN:
        return None
    return Ask(
        item.field,
        f"`{item.name}` is on the list for up to {work.technique.minutes:g} minutes",
        "at 5 m/s² the action value is reached in 100 / (2 x 5²) = 2 h; many trimmers shake more in use than declared",
        "- **Vibration.** Swap hands or workers every half hour; stop when fingers tingle or turn white.",
    )


NEEDS: Final = (
    Need(
        "hearing",
        Severity.ERROR,
        "Work with a loud machine carries a caution about noise.",
        "Grounds tools were measured at 76 to 109 dB(A), 82 % of them above 85; hearing lost does not come back.",
        (by.GROUNDS_NOISE, by.OPERATOR_NOISE, by.REL),
        "techniques with a powered trimmer, mower, blower, chainsaw, chipper, tiller or grinder",
        "noise",
        _hearing,
        (says(r"\bnois|\bloud|\bhearing\b|\bears?\b|\bmuffs?\b|ear[- ]?(?:plug|muff|defender|protect)|\bdB\b"),),
    ),
    Need(
        "jam",
        Severity.ERROR,
        "Work with a powered blade says how it is made safe before a hand goes near it.",
        "Unplug an electric tool, take the battery out, or take the spark-plug lead off, before clearing a jam.",
        (by.YARD_TOOLS,),
        "techniques with a powered trimmer, mower, chainsaw, chipper or tiller",
        "stopping the blade before a hand goes near",
        _jam,
        (
            says(
                r"\bjam|\bclog|\bblock(?:age|ed)\b|(?:engine|motor|power|switch(?:ed)?|turn(?:ed)?) (?:it )?off|unplug|"
                r"blades? (?:is |are |has |have )?(?:still|stopped|stops)|(?:battery|pack|key) (?:is )?out|"
                r"(?:take|remove|pull)[^.]{0,30}(?:battery|pack|key|lead)|spark[- ]?plug|isolat|"
                r"stop[^.]{0,20}(?:engine|motor|blade|mower|trimmer)"
            ),
        ),
    ),
    Need(
        "eyes",
        Severity.WARNING,
        "Work with a machine that throws bits carries a caution about eyes.",
        "Twigs, grit and chips fly as high as the face.",
        (PRACTICE,),
        "techniques with a powered trimmer, mower, blower, chainsaw, chipper, tiller or grinder",
        "eyes",
        _eyes,
        (says(r"\beyes?\b|goggles|\bglasses\b|spectacles|visor|face ?(?:shield|guard)"),),
    ),
    Need(
        "bystanders",
        Severity.WARNING,
        "Work with a machine that throws stones says how other people are kept clear.",
        "What is thrown reaches people who wear nothing against it.",
        (PRACTICE,),
        "techniques with a line trimmer, mower, blower, chipper or chainsaw",
        "other people",
        _bystanders,
        (says(r"bystander|\bothers?\b|\bpeople\b|\banyone\b|\bnobody\b|child|\bpets?\b|passer|\bstones?\b|throw"),),
        anywhere=True,
    ),
    Need(
        "blades",
        Severity.WARNING,
        "Work with a blade carries a caution about it.",
        "Most cuts are to the hand that is not holding the tool.",
        (PRACTICE,),
        "techniques with secateurs, shears, loppers, a saw, a knife or a powered cutter",
        "blades",
        _blades,
        (says(r"\bblades?\b|\bcuts?\b|\bcutting\b|\bsharp|secateurs|shears|\bsaws?\b|chainsaw|kni(?:fe|ves)|finger"),),
    ),
    Need(
        "fuel",
        Severity.ERROR,
        "Work with petrol says how it is filled.",
        "Never fuel a hot engine: cool first, no smoking, in open air.",
        (by.ENGINES,),
        "techniques with petrol, or a machine that runs on it",
        "filling with fuel",
        _fuel,
        (
            says(r"\b(?:re)?fuel|\bpetrol\b|\bgas(?:oline)?\b|\bfill(?:ed|ing)?\b|\btank\b"),
            says(r"\bhot\b|\bcool|smok|\bopen\b|outdoors|outside|ventilat|\bspill"),
        ),
    ),
    Need(
        "chainsaw",
        Severity.ERROR,
        "Work with a chainsaw is for the trained, in two hands, with the brake on.",
        "Start it on the ground with the chain brake on, hold it in two hands, never above the shoulder.",
        (by.CHAINSAW, by.CHAINSAW_QUEBEC),
        "techniques with a chainsaw",
        "training, two hands and the chain brake",
        _chainsaw,
        (says(r"\bbrake|(?:two|both) hands|kick ?back"), says(r"\btrain|licen[cs]|certif|qualif|competen")),
    ),
    Need(
        "charging",
        Severity.ERROR,
        "Work that takes a charger along says how packs are charged.",
        "Lithium-ion packs are charged from 0 to 40 °C (32 to 105 °F); smell, swelling, heat or a leak: stop.",
        (by.CHARGING,),
        "techniques with a battery charger",
        "charging",
        _charging,
        (says(r"\bcharg"),),
    ),
    Need(
        "mains",
        Severity.WARNING,
        "Work with a mains machine carries a caution about its cable.",
        "A residual-current device trips before a cut cable kills.",
        (PRACTICE,),
        "techniques with a corded machine or an extension lead",
        "the cable",
        _mains,
        (says(r"\bRCD\b|residual|GFCI|protected circuit|\bcables?\b|\bcords?\b|\bleads?\b|unplug"),),
    ),
    Need(
        "long-vibration",
        Severity.WARNING,
        "Two hours and more with a shaking machine carry a caution about vibration.",
        "At 5 m/s² the action value of 2.5 m/s² A(8) is reached in 2 h; nerves that are lost stay lost.",
        (by.RECKONER, by.TRIMMER_VIBRATION),
        "techniques of 120 minutes or more with a trimmer, brushcutter, chainsaw or mower",
        "vibration",
        _vibration,
        (says(r"vibrat|tingl|\bnumb|white finger|\bswap|take turns|change (?:hands|over)|rest every|\bbreaks?\b"),),
    ),
)
MACHINES: Final[tuple[Rule[Any], ...]] = tuple(need.rule for need in NEEDS)
