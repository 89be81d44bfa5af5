"""Rules over techniques of every family: what machines, blades, fuel and batteries ask of the cautions."""

from itertools import chain
from typing import Final

from howto.families.safety import kit, noise, vibration
from howto.families.safety import references as by
from howto.families.safety.kit import KitItem
from howto.families.safety.machines import CHARGE, START
from howto.families.safety.needs import Ask, Need, on_list, rules_of
from howto.findings import Severity
from howto.model.reference import PRACTICE
from howto.model.work import AnyWork
from howto.quantities.amounts import Range, bare, percent, qty

TRIMMER_M_PER_S2: Final = 5.0  # a usual trimmer
LONG_MIN: Final = 60 * vibration.hours_to_points(TRIMMER_M_PER_S2, vibration.ACTION_POINTS)
LONG: Final = qty(LONG_MIN / 60, "h")
LOUD_DB: Final = 97.0  # still allowed for half an hour
ALLOWED: Final = bare(noise.NIOSH.criterion_db)
POWERED: Final = "techniques with a powered trimmer, mower, blower, chainsaw, chipper, tiller or grinder"
DRIVE_OFF: Final = {
    "petrol": "Engine off, spark-plug lead off",
    "battery": "Battery out",
    "mains": "Unplugged",
    "unknown": "Engine off and spark-plug lead off, or battery out",
}


def _loud(work: AnyWork) -> Ask | None:
    item = kit.machine(work, *kit.LOUD)
    if item is None:
        return None
    battery = item.drive == "battery"
    measured = f"electric ones too, were measured at {Range(82, 102, 'dB(A)')} at the operator's ear"
    so = (
        f"a battery machine may stay under {ALLOWED}, so look at its plate"
        if battery
        else f"{ALLOWED} is allowed for {qty(noise.DAY_H, 'h')}, {bare(LOUD_DB)} for "
        f"{qty(noise.allowed_minutes(LOUD_DB), 'min')}"
    )
    because = f"mowers, trimmers and blowers, {measured}; {so}"
    return on_list(item, because, severity=Severity.WARNING if battery else None)


def _turning(work: AnyWork) -> Ask | None:
    item = kit.machine(work, *kit.SWINGING)
    if item is None:
        return None
    off = DRIVE_OFF[item.drive]
    line = f"- **Turning blade.** {off}, and the blade still, before a hand goes near it to clear a jam. → gloves"
    return on_list(item, line=line)


def _fuel(work: AnyWork) -> KitItem | None:
    return next((each for each in kit.items(work) if kit.mentioned(f"{each.name}: {each.note}", kit.PETROL)), None)


def _mains(work: AnyWork) -> KitItem | None:
    corded = (each for kind in kit.LOUD for each in kit.named(work, kind) if each.drive == "mains")
    return next(chain(kit.named(work, kit.EXTENSION), corded), None)


def _shaking(work: AnyWork) -> Ask | None:
    item = kit.machine(work, kit.HEDGE_TRIMMER, kit.LINE_TRIMMER, kit.CHAINSAW, kit.MOWER)
    minutes = work.technique.minutes
    if item is None or minutes is None or minutes < LONG_MIN:
        return None
    return Ask(item.field, f"`{item.name}` is on the list for up to {qty(minutes, 'min', 3)}")


MACHINES: Final = rules_of(
    Need(
        "hearing", Severity.ERROR, (by.GROUNDS_NOISE, by.OPERATOR_NOISE, by.REL),
        applies=POWERED,
        must="Work with a loud machine carries a caution about noise.",
        why=f"grounds tools were measured at {Range(76, 109, 'dB(A)')}, {percent(82)} of them above {ALLOWED}; hearing "
        "lost does not come back",
        hazard="noise",
        finds=_loud,
        covers=(r"\bnois|\bloud|\bhearing\b|\bears?\b|\bmuffs?\b|ear[- ]?(?:plug|muff|defender|protect)|\bdB\b",),
        line="- **Noise.** It is loud enough to harm: ear protection on before it starts and until it stops. → ear "
        "muffs",
    ),
    Need(
        "jam", Severity.ERROR, (by.YARD_TOOLS,),
        applies="techniques with a powered trimmer, mower, chainsaw, chipper or tiller",
        must="Work with a powered blade says how it is made safe before a hand goes near it.",
        why="a blade that is freed starts again while its drive is live: electric tools are unplugged first, petrol "
        "ones lose their spark-plug lead",
        hazard="stopping the blade before a hand goes near",
        finds=_turning,
        covers=(
            r"\bjam|\bclog|\bblock(?:age|ed)\b|(?:engine|motor|power|switch(?:ed)?|turn(?:ed)?) (?:it )?off|unplug|"
            r"blades? (?:is |are |has |have )?(?:still|stopped|stops)|(?:battery|pack|key) (?:is )?out|"
            r"(?:take|remove|pull)[^.]{0,30}(?:battery|pack|key|lead)|spark[- ]?plug|isolat|"
            r"stop[^.]{0,20}(?:engine|motor|blade|mower|trimmer)",
        ),
    ),
    Need(
        "eyes", Severity.WARNING, (PRACTICE,),
        applies=POWERED,
        must="Work with a machine that throws bits carries a caution about eyes.",
        why="it throws twigs, grit and chips as high as the face",
        hazard="eyes",
        finds=lambda work: kit.machine(work, *kit.LOUD),
        covers=(r"\beyes?\b|goggles|\bglasses\b|spectacles|visor|face ?(?:shield|guard)",),
        line="- **Flying bits.** Eye protection on while it runs and while anyone beside you runs one. → eye "
        "protection",
    ),
    Need(
        "bystanders", Severity.WARNING, (PRACTICE,),
        applies="techniques with a line trimmer, mower, blower, chipper or chainsaw",
        must="Work with a machine that throws stones says how other people are kept clear.",
        why="what it throws reaches people who wear nothing against it",
        hazard="other people",
        finds=lambda work: kit.machine(work, *kit.THROWING),
        covers=(r"bystander|\bothers?\b|\bpeople\b|\banyone\b|\bnobody\b|child|\bpets?\b|passer|\bstones?\b|throw",),
        line="- **Other people.** Pick up stones and sticks first, and stop when anyone comes near.",
        anywhere=True,
    ),
    Need(
        "blades", Severity.WARNING, (PRACTICE,),
        applies="techniques with secateurs, shears, loppers, a saw, a knife or a powered cutter",
        must="Work with a blade carries a caution about it.",
        why="most cuts are to the hand that is not holding the tool",
        hazard="blades",
        finds=lambda work: kit.first(work, kit.HAND_BLADES) or kit.machine(work, kit.HEDGE_TRIMMER, kit.CHAINSAW),
        covers=(r"\bblades?\b|\bcuts?\b|\bcutting\b|\bsharp|secateurs|shears|\bsaws?\b|chainsaw|kni(?:fe|ves)|finger",),
        line="- **Blades.** Keep the free hand behind the blade, and close or sheathe it before you walk. → gloves",
    ),
    Need(
        "fuel", Severity.ERROR, (by.ENGINES,),
        applies="techniques with petrol, or a machine that runs on it",
        must="Work with petrol says how it is filled.",
        why="fuel on a hot engine burns, and exhaust in a closed place kills",
        hazard="filling with fuel",
        finds=_fuel,
        covers=(
            r"\b(?:re)?fuel|\bpetrol\b|\bgas(?:oline)?\b|\bfill(?:ed|ing)?\b|\btank\b",
            r"\bhot\b|\bcool|smok|\bopen\b|outdoors|outside|ventilat|\bspill",
        ),
        line="- **Fuel.** Let the engine cool, fill it in the open with nobody smoking, and start it away from the "
        "can.",
    ),
    Need(
        "chainsaw", Severity.ERROR, (by.CHAINSAW, by.CHAINSAW_QUEBEC),
        applies="techniques with a chainsaw",
        must="Work with a chainsaw is for the trained, in two hands, with the brake on.",
        why=f"a chainsaw is started with its brake on, {START.least} from where it was filled, held in two hands and "
        "never above the shoulder; in many places the law asks for a licence",
        hazard="training, two hands and the chain brake",
        finds=lambda work: kit.first(work, kit.CHAINSAW),
        covers=(r"\bbrake|(?:two|both) hands|kick ?back", r"\btrain|licen[cs]|certif|qualif|competen"),
        line="- **Chainsaw.** For the trained and licensed only: two hands, chain brake on to start and walk, never "
        "above the shoulder. → chainsaw trousers, chainsaw boots, helmet with visor and ear muffs, gloves",
    ),
    Need(
        "charging", Severity.ERROR, (by.CHARGING,),
        applies="techniques with a battery charger",
        must="Work that takes a charger along says how packs are charged.",
        why=f"a lithium-ion pack charged outside {CHARGE} is spoiled, and may burn",
        hazard="charging",
        finds=lambda work: kit.first(work, kit.words(r"(?:battery |fast |rapid )?chargers?")),
        covers=(r"\bcharg",),
        line=f"- **Charging.** Charge packs between {CHARGE.low} and {CHARGE.high} °C, dry and shaded; stop when "
        "one smells, swells or leaks.",
    ),
    Need(
        "mains", Severity.WARNING, (PRACTICE,),
        applies="techniques with a corded machine or an extension lead",
        must="Work with a mains machine carries a caution about its cable.",
        why="a blade through a live cable is stopped only by a device that trips on leakage",
        hazard="the cable",
        finds=_mains,
        covers=(r"\bRCD\b|residual|GFCI|protected circuit|\bcables?\b|\bcords?\b|\bleads?\b|unplug",),
        line="- **Cable.** Plug in through a residual-current device, and keep the cable behind you and off the blade.",
    ),
    Need(
        "long-vibration", Severity.WARNING, (by.RECKONER, by.TRIMMER_VIBRATION),
        applies=f"techniques of {LONG} or more with a trimmer, brushcutter, chainsaw or mower",
        must=f"Work of {LONG} or more with a shaking machine carries a caution about vibration.",
        why=f"at {qty(TRIMMER_M_PER_S2, 'm/s²')} the action value is reached in {bare(vibration.ACTION_POINTS)} / "
        f"(2 x {bare(TRIMMER_M_PER_S2)}²) = {LONG}; many trimmers shake more in use than declared",
        hazard="vibration",
        finds=_shaking,
        covers=(r"vibrat|tingl|\bnumb|white finger|\bswap|take turns|change (?:hands|over)|rest every|\bbreaks?\b",),
        line="- **Vibration.** Swap hands or workers every half hour; stop when fingers tingle or turn white.",
    ),
)  # fmt: skip
