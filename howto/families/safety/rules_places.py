"""Rules over techniques of every family: what ladders, platforms, lines overhead, walls and ground ask for."""

from typing import Any, Final

from howto.families.safety import kit
from howto.families.safety import references as by
from howto.families.safety.needs import Ask, Need, listed, says, steps
from howto.findings import Severity
from howto.model.family import Rule
from howto.model.prose import plain
from howto.model.reference import PRACTICE, from_memory
from howto.model.work import AnyWork
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


def _ladder(work: AnyWork) -> Ask | None:
    item = kit.first(work, kit.LADDER)
    if item is None:
        return None
    set_up = (
        "Fully open on firm level ground"
        if kit.STEPLADDER.search(item.name)
        else "Foot one out for four up, on firm level ground, top secured"
    )
    return Ask(
        item.field,
        f"`{item.name}` is on the list",
        "over half of falls are from under 3 m, and most of all from ladders and roofs",
        f"- **Ladder.** {set_up}; three points of contact, and move it rather than reach. → shoes with a grip",
    )


def _trimmer_on_ladder(work: AnyWork) -> Ask | None:
    ladder, machine = kit.first(work, kit.LADDER), kit.machine(work, kit.HEDGE_TRIMMER, kit.CHAINSAW)
    if ladder is None or machine is None:
        return None
    return Ask(
        ladder.field,
        f"`{machine.name}` and `{ladder.name}` are on the list",
        "a powered blade takes both hands, and both feet on the ground; not from stools or ladders",
        f"- **Never from the ladder.** The {_called(machine.name)} runs with both feet on the ground or on a platform.",
    )


def _called(name: str) -> str:
    """Return a tool's name as it stands inside a sentence."""
    return name[:1].lower() + name[1:]


def _platform(work: AnyWork) -> Ask | None:
    item = kit.first(work, kit.PLATFORM)
    return listed(
        item,
        "ground first, a solid platform next: it is only solid when it stands level, braked and railed",
        "- **Falls.** Platform level, brakes locked and rails closed before you climb; never stand on the rails.",
    )


def _power_line(work: AnyWork) -> Ask | None:
    line = "- **Power lines.** Treat every line as live: body, tool and branch stay as far off as its owner says."
    because = "a line may not be touched, nor come near: the distance is national, 0.5 m to 8 m; ask its owner"
    for field, text in _places(work):
        if seen := kit.mentioned(text, LINES):
            return Ask(field, f"`{seen}` is named here", because, line)
    item = kit.first(work, kit.TALL)
    if item is None:
        return None
    return Ask(item.field, f"`{item.name}` reaches overhead", because, line, Severity.WARNING)


def _places(work: AnyWork) -> list[tuple[str, str]]:
    """Return each text that may name a place, cautions left out."""
    found = [(f"intro[{at}]", plain(each)) for at, each in enumerate(work.technique.intro)]
    found += [(item.field, f"{item.name}: {item.note}") for item in kit.items(work)]
    found += [
        (f"steps[{at}]", steps(work.having(**{"steps": (step,)}))) for at, step in enumerate(work.technique.steps)
    ]
    return found


def _drill(work: AnyWork) -> Ask | None:
    item = kit.first(work, DRILL, kit.words("seed"))
    return listed(
        item,
        "a wall hides cables and pipes, and its dust is sharp",
        "- **Drilling.** Look for cables and pipes in the wall first; keep the dust out of eyes and lungs. "
        "→ eye protection, dust mask",
    )


def _digging(work: AnyWork) -> Ask | None:
    item = kit.first(work, DEEP)
    return listed(
        item,
        "it goes as deep as cables and pipes lie",
        "- **Buried services.** Ask for the plans of cables and pipes, and dig the first spit by hand. → boots",
    )


def _climbing(work: AnyWork) -> Ask | None:
    item = kit.first(work, CLIMBING)
    return listed(
        item,
        "tree climbing that needs a licence is left to the licensed",
        "- **Climbing.** Only the trained and licensed leave the ground, never alone, with a way to be brought down.",
    )


def _sun(work: AnyWork) -> Ask | None:
    if work.technique.minutes is None or work.technique.minutes < LONG_MIN or not work.technique.season:
        return None
    hemisphere = work.crew.hemisphere
    months = months_of(work.technique.season, hemisphere) or ()
    if len(months) == 12 or not set(months) & set(season_months("summer", hemisphere)):
        return None
    return Ask(
        "season",
        f"{work.technique.minutes:g} minutes of work in `{work.technique.season}`",
        "a summer sun passes an ultraviolet index of 3, from which everyone covers up; outdoor crews all year",
        "- **Sun and heat.** Hat, sleeves and sunscreen; shade and a drink every 20 minutes. → sun hat, long sleeves",
    )


NEEDS: Final = (
    Need(
        "ladder",
        Severity.ERROR,
        "Work from a ladder says how it stands and how to stay on it.",
        "One out for four up, on firm level ground, secured; three points of contact; move it, do not reach.",
        (by.NZ_LADDER, by.WA_LADDER, by.ALBERTA_LADDER, by.THREE_POINTS, by.NZ_FALLS),
        "techniques with a ladder or stepladder",
        "how the ladder stands",
        _ladder,
        (
            says(r"\b(?:step)?ladder|\bfall(?:s|ing)?\b|\bheight\b"),
            says(
                r"(?:one|1)(?: out)? (?:in|for) (?:four|4)|1:4|quarter|75 ?°|\bfirm\b|\blevel\b|stable|steady|secure|"
                r"\btied?\b|footed|three points|\breach|\block"
            ),
        ),
    ),
    Need(
        "trimmer-on-ladder",
        Severity.ERROR,
        "A powered blade is never run from a ladder, and the card says so.",
        "Both feet on the ground; not from stools or ladders.",
        (by.YARD_TOOLS, by.CHAINSAW_QUEBEC),
        "techniques with a ladder beside a hedge trimmer or chainsaw",
        "keeping the powered blade off the ladder",
        _trimmer_on_ladder,
        (
            says(
                r"(?:never|not|no|nor)\b[^.]{0,60}\bladder|ladder[^.]{0,40}\b(?:never|not|only for|for hand)\b|"
                r"off (?:the|a) ladder|both feet|feet on the (?:ground|platform)|from the ground"
            ),
        ),
    ),
    Need(
        "platform",
        Severity.ERROR,
        "Work from a platform carries a caution about falls.",
        "A fall over 2 m is assessed and controlled by law in Victoria, and falls from less are managed too.",
        (by.VICTORIA_FALLS, by.NZ_FALLS),
        "techniques with a platform, scaffold, trestle or lift",
        "falls",
        _platform,
        (says(r"\bfall(?:s|ing)?\b|guard ?rail|\brails?\b|harness|brakes?|\bheight\b|\bedge\b|platform"),),
    ),
    Need(
        "power-line",
        Severity.ERROR,
        "Work near a line overhead, or with a tool that reaches one, carries a caution about it.",
        "New Zealand: 4 m, or 0.5 m with consent; Queensland: 3 m to 132 kV; every line counts as live.",
        (by.NZ_LINES, by.QLD_LINES, by.QLD_PLANTS),
        "techniques that name a power line, or have a tool that reaches overhead",
        "power lines",
        _power_line,
        (
            says(
                r"(?:power|overhead|electric\w*|service|live)\b[^.]{0,40}\b(?:lines?|cables?|wires?)\b|powerline|"
                r"\b(?:lines?|wires?|cables?) (?:overhead|above)"
            ),
        ),
    ),
    Need(
        "drill",
        Severity.ADVICE,
        "Work with a drill carries a caution about what is in the wall.",
        "Walls hide cables and pipes.",
        (from_memory("trade practice: look for services before drilling; eye protection and a mask for masonry"),),
        "techniques with a drill",
        "what is in the wall, or its dust",
        _drill,
        (says(r"\bcables?\b|\bpipes?\b|\bwiring\b|\bdust\b|\beyes?\b|goggles|drill"),),
    ),
    Need(
        "deep-digging",
        Severity.ADVICE,
        "Deep digging carries a caution about what is buried.",
        "Cables and pipes lie where posts and trees go.",
        (from_memory("trade practice: ask for the plans of buried services before digging deep"),),
        "techniques with an auger, a post-hole digger, a pickaxe, a mattock or a digger",
        "buried services",
        _digging,
        (says(r"\bcables?\b|\bpipes?\b|services|utilities|buried|underground"),),
    ),
    Need(
        "climbing",
        Severity.WARNING,
        "Climbing is left to the trained and licensed, and the card says so.",
        "Tree climbing that needs a licence is left to the licensed.",
        (PRACTICE,),
        "techniques with a harness or climbing kit",
        "who may climb",
        _climbing,
        (says(r"\btrain|licen[cs]|certif|qualif|competen"),),
    ),
    Need(
        "sun",
        Severity.ADVICE,
        "Three hours and more of work in summer carry a caution about sun and heat.",
        "From an ultraviolet index of 3 everyone covers up.",
        (by.UV, by.UV_WORKERS),
        "techniques of 180 minutes or more whose season has a summer month where the crew works",
        "sun or heat",
        _sun,
        (says(r"\bsun|\bheat\b|\bhot\b|\bshade\b|\bUV\b|\bdrink"),),
    ),
)
PLACES: Final[tuple[Rule[Any], ...]] = tuple(need.rule for need in NEEDS)
