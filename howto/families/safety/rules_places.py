"""Rules over techniques of every family: what ladders, platforms, lines overhead, walls and ground ask for."""

from typing import Final

from howto.families.safety import kit
from howto.families.safety import references as by
from howto.families.safety.countries import ALL_ZONES, FALL
from howto.families.safety.heat import COVER_UP
from howto.families.safety.needs import Ask, Need, on_list, rules_of, steps
from howto.findings import Severity
from howto.model.prose import plain
from howto.model.reference import PRACTICE, from_memory
from howto.model.work import AnyWork
from howto.quantities.amounts import bare, mm, qty
from howto.seasons import months_of, season_months

LINES: Final = kit.words(
    r"(?:power|overhead|electric(?:al|ity)?|service|live) (?:lines?|cables?|wires?)|powerlines?|pylons?"
)
DRILL: Final = kit.words(r"(?:hammer |masonry |cordless |battery |power |SDS )?drills?(?! bits?)")
DEEP: Final = kit.words(
    r"(?:post[- ]hole |earth |fence )?augers?|post[- ]hole (?:diggers?|borers?)|pick ?axes?|mattocks?|trenchers?|"
    r"mini[- ]?diggers?|excavators?"
)
CLIMBING: Final = kit.words(r"(?:climbing |tree )?harness(?:es)?|climbing (?:ropes?|lines?|irons|spikes|kit)|lanyards?")
LONG_MIN: Final = 180.0  # ours: half a working morning and more
LONG: Final = qty(LONG_MIN / 60, "h")
LOW_FALL_MM: Final = 3000.0  # WorkSafe New Zealand


def _ladder(work: AnyWork) -> Ask | None:
    item = kit.first(work, kit.LADDER)
    if item is None:
        return None
    leaned = "Foot one out for four up, on firm level ground, top secured"
    set_up = "Fully open on firm level ground" if kit.STEPLADDER.search(item.name) else leaned
    line = f"- **Ladder.** {set_up}; three points of contact, and move it rather than reach. → shoes with a grip"
    return on_list(item, line=line)


def _trimmer_on_ladder(work: AnyWork) -> Ask | None:
    ladder, machine = kit.first(work, kit.LADDER), kit.machine(work, kit.HEDGE_TRIMMER, kit.CHAINSAW)
    if ladder is None or machine is None:
        return None
    called = machine.name[:1].lower() + machine.name[1:]
    line = f"- **Never from the ladder.** The {called} runs with both feet on the ground or on a platform."
    return Ask(ladder.field, f"`{machine.name}` and `{ladder.name}` are on the list", line=line)


def _power_line(work: AnyWork) -> Ask | None:
    for field, text in _places(work):
        if seen := kit.mentioned(text, LINES):
            return Ask(field, f"`{seen}` is named here")
    item = kit.first(work, kit.TALL)
    if item is None:
        return None
    return Ask(item.field, f"`{item.name}` reaches overhead", severity=Severity.WARNING)


def _places(work: AnyWork) -> list[tuple[str, str]]:
    """Return each text that may name a place, cautions left out."""
    technique = work.technique
    return [
        *((f"intro[{at}]", plain(each)) for at, each in enumerate(technique.intro)),
        *((item.field, f"{item.name}: {item.note}") for item in kit.items(work)),
        *((f"steps[{at}]", steps(work.having(steps=(step,)))) for at, step in enumerate(technique.steps)),
    ]


def _sun(work: AnyWork) -> Ask | None:
    minutes, season, hemisphere = work.technique.minutes, work.technique.season, work.crew.hemisphere
    if minutes is None or minutes < LONG_MIN or not season:
        return None
    months = months_of(season, hemisphere) or ()
    if len(months) == 12 or not set(months) & set(season_months("summer", hemisphere)):
        return None
    return Ask("season", f"{qty(minutes, 'min', 3)} of work in `{season}`")


PLACES: Final = rules_of(
    Need(
        "ladder", Severity.ERROR, (by.NZ_LADDER, by.WA_LADDER, by.ALBERTA_LADDER, by.THREE_POINTS, by.NZ_FALLS),
        applies="techniques with a ladder or stepladder",
        must="Work from a ladder says how it stands and how to stay on it.",
        why=f"over half of falls are from under {mm(LOW_FALL_MM)}, and most of all from ladders and roofs",
        hazard="how the ladder stands",
        finds=_ladder,
        covers=(
            r"\b(?:step)?ladder|\bfall(?:s|ing)?\b|\bheight\b",
            r"(?:one|1)(?: out)? (?:in|for) (?:four|4)|1:4|quarter|75 ?°|\bfirm\b|\blevel\b|stable|steady|secure|"
            r"\btied?\b|footed|three points|\breach|\block",
        ),
    ),
    Need(
        "trimmer-on-ladder", Severity.ERROR, (by.YARD_TOOLS, by.CHAINSAW_QUEBEC),
        applies="techniques with a ladder beside a hedge trimmer or chainsaw",
        must="A powered blade is never run from a ladder, and the card says so.",
        why="a powered blade takes both hands, and both feet on the ground; not from stools or ladders",
        hazard="keeping the powered blade off the ladder",
        finds=_trimmer_on_ladder,
        covers=(
            r"(?:never|not|no|nor)\b[^.]{0,60}\bladder|ladder[^.]{0,40}\b(?:never|not|only for|for hand)\b|"
            r"off (?:the|a) ladder|both feet|feet on the (?:ground|platform)|from the ground",
        ),
    ),
    Need(
        "platform", Severity.ERROR, (by.VICTORIA_FALLS, by.NZ_FALLS),
        applies="techniques with a platform, scaffold, trestle or lift",
        must="Work from a platform carries a caution about falls.",
        why="ground first, a solid platform next: it is only solid when it stands level, braked and railed; the law of "
        f"Victoria controls falls over {FALL.most}, and falls from less are managed too",
        hazard="falls",
        finds=lambda work: kit.first(work, kit.PLATFORM),
        covers=(r"\bfall(?:s|ing)?\b|guard ?rail|\brails?\b|harness|brakes?|\bheight\b|\bedge\b|platform",),
        line="- **Falls.** Platform level, brakes locked and rails closed before you climb; never stand on the rails.",
    ),
    Need(
        "power-line", Severity.ERROR, (by.NZ_LINES, by.QLD_LINES, by.QLD_PLANTS),
        applies="techniques that name a power line, or have a tool that reaches overhead",
        must="Work near a line overhead, or with a tool that reaches one, carries a caution about it.",
        why=f"a line may not be touched, nor come near: the distance is national, {ALL_ZONES}; ask its owner",
        hazard="power lines",
        finds=_power_line,
        covers=(
            r"(?:power|overhead|electric\w*|service|live)\b[^.]{0,40}\b(?:lines?|cables?|wires?)\b|powerline|"
            r"\b(?:lines?|wires?|cables?) (?:overhead|above)",
        ),
        line="- **Power lines.** Treat every line as live: body, tool and branch stay as far off as its owner says.",
    ),
    Need(
        "drill", Severity.ADVICE,
        (from_memory("trade practice: look for services before drilling; eye protection and a mask for masonry"),),
        applies="techniques with a drill",
        must="Work with a drill carries a caution about what is in the wall.",
        why="a wall hides cables and pipes, and its dust is sharp",
        hazard="what is in the wall, or its dust",
        finds=lambda work: kit.first(work, DRILL, kit.words("seed")),
        covers=(r"\bcables?\b|\bpipes?\b|\bwiring\b|\bdust\b|\beyes?\b|goggles|drill",),
        line="- **Drilling.** Look for cables and pipes in the wall first; keep the dust out of eyes and lungs. "
        "→ eye protection, dust mask",
    ),
    Need(
        "deep-digging", Severity.ADVICE,
        (from_memory("trade practice: ask for the plans of buried services before digging deep"),),
        applies="techniques with an auger, a post-hole digger, a pickaxe, a mattock or a digger",
        must="Deep digging carries a caution about what is buried.",
        why="it goes as deep as cables and pipes lie",
        hazard="buried services",
        finds=lambda work: kit.first(work, DEEP),
        covers=(r"\bcables?\b|\bpipes?\b|services|utilities|buried|underground",),
        line="- **Buried services.** Ask for the plans of cables and pipes, and dig the first spit by hand. → boots",
    ),
    Need(
        "climbing", Severity.WARNING, (PRACTICE,),
        applies="techniques with a harness or climbing kit",
        must="Climbing is left to the trained and licensed, and the card says so.",
        why="tree climbing that needs a licence is left to the licensed",
        hazard="who may climb",
        finds=lambda work: kit.first(work, CLIMBING),
        covers=(r"\btrain|licen[cs]|certif|qualif|competen",),
        line="- **Climbing.** Only the trained and licensed leave the ground, never alone, with a way to be brought "
        "down.",
    ),
    Need(
        "sun", Severity.ADVICE, (by.UV, by.UV_WORKERS),
        applies=f"techniques of {LONG} or more whose season has a summer month where the crew works",
        must=f"Work of {LONG} or more in summer carries a caution about sun and heat.",
        why=f"a summer sun passes an ultraviolet index of {bare(COVER_UP)}, from which everyone covers up; outdoor "
        "crews all year",
        hazard="sun or heat",
        finds=_sun,
        covers=(r"\bsun|\bheat\b|\bhot\b|\bshade\b|\bUV\b|\bdrink",),
        line="- **Sun and heat.** Hat, sleeves and sunscreen; shade and a drink every 20 minutes. → sun hat, long "
        "sleeves",
    ),
)  # fmt: skip
