"""The rules of an espalier that look at what the card says."""

from collections.abc import Iterator

from howto.families.espalier import frame
from howto.families.espalier import references as by
from howto.families.espalier.frame import T
from howto.families.espalier.measures import EspalierMeasures
from howto.findings import Severity
from howto.model.family import Breach, Rule, line_wanted, rule
from howto.model.reference import PRACTICE
from howto.model.wording import says
from howto.quantities.amounts import bare, percent, qty

CUTTING = ("planting", "training", "summer pruning", "winter thinning")
EYES = ("eye protection", "goggles")
ALCOHOL_PERCENT = 70  # see references.BLADES
SOAK_MINUTES, WATER_PARTS = 10, 9  # likewise


@rule("espalier.tightened", Severity.WARNING, PRACTICE, by.ORCHARD_SPRING, applies="wiring")
def tightened(work: T) -> Iterator[Breach]:
    """A technique that puts up wires says how they are tightened.

    each wire settles and sags in its first years, and is tightened again
    """
    if work.measures.job != "wiring" or says(work, "tensioner", "turnbuckle", "strainer", "ratchet"):
        return
    line = f"- Tensioners: {work.measures.tensioners or work.measures.tiers}, one a wire"
    yield line_wanted("Materials", line, what="nothing is listed to tighten the wires with", why="")


@rule("espalier.wire-ends", Severity.WARNING, PRACTICE, applies="wiring")
def wire_ends(work: T) -> Iterator[Breach]:
    """A technique that pulls wires tight warns of the ends that whip.

    a wire cut or slipped under pull whips back as far as it is long, at the height of a face
    """
    worn = " ".join(item for hazard in work.technique.cautions for item in hazard.wear).casefold()
    if work.measures.job != "wiring" or any(word in worn for word in EYES):
        return
    if says(work, "whip", "wire end", "cut end", "ends of wire", *EYES):
        return
    line = (
        "- **Wire ends.** Hold both sides of a cut, and stand out of line with a tight wire. → eye protection, gloves"
    )
    yield line_wanted("Cautions", line, what="nothing warns of a tight wire that lets go", why="")


@rule("espalier.in-the-wall", Severity.WARNING, PRACTICE, applies="wiring of walls")
def in_the_wall(work: T) -> Iterator[Breach]:
    """A technique that drills a wall says to look for cables and pipes first.

    a cable or a pipe behind brick or plaster shows only once the drill is in it, near doors, taps and lamps above all
    """
    if work.measures.job != "wiring" or work.measures.support != "wall" or says(work, "cable", "pipe", "detector"):
        return
    line = "- **In the wall.** Look for cables and pipes with a detector before drilling. → eye protection"
    yield line_wanted("Cautions", line, what="nothing says to look for cables and pipes in the wall", why="")


@rule("espalier.soft-ties", Severity.WARNING, by.TIES, by.EIGHT, applies="planting and training")
def soft_ties(work: T) -> Iterator[Breach]:
    """Ties are soft, with room to swell, so that bark never rubs on wire.

    a hard or tight tie cuts into bark as the arm thickens, and bark on wire chafes through
    """
    if work.measures.job not in {"planting", "training"}:
        return
    if says(work, "soft", "figure of eight", "figure-of-eight", "room to swell", "loose"):
        return
    line = "- Soft ties: tied to the wire first, crossed, a finger's room round the arm"
    yield line_wanted("Materials", line, what="nothing says that ties are soft and loose", why="")


@rule("espalier.left-and-right", Severity.ADVICE, PRACTICE, applies="training and summer pruning")
def left_and_right(work: T) -> Iterator[Breach]:
    """Only shoots that run left and right along the wall stay.

    what comes forward shades the spurs and breaks under its fruit; what goes straight up robs the arm
    """
    if work.measures.job not in {"training", "summer pruning"}:
        return
    if says(work, "forward", "to the front", "toward you", "away from the wall", "out from the wall"):
        return
    line = "1. **Take off what comes forward.** Cut away each shoot that grows out from the wall or in to it."
    field = f"steps[{len(work.technique.steps) - 1}]" if work.technique.steps else "steps"
    yield line_wanted("Steps", line, field=field, what="no step takes off the shoots that come forward", why="")


@rule(
    "espalier.clean-blades",
    Severity.WARNING,
    by.BLADES,
    applies="planting, training and pruning",
    alcohol=f"{percent(ALCOHOL_PERCENT)} alcohol",
)
def clean_blades(work: T) -> Iterator[Breach]:
    """Blades are disinfected between trees, and the card says so.

    disease goes from tree to tree on blades; {alcohol}, wiped on or dipped in, is enough for most: no soak, no rinse
    """
    if work.measures.job not in CUTTING or says(work, "disinfect", "alcohol", "bleach", "wiped clean", "wipe", "sanit"):
        return
    line = f"- **Clean blades.** Wipe the blades with {ALCOHOL_PERCENT} % alcohol before the next tree."
    yield line_wanted("Cautions", line, what="nothing tells the reader to clean the blades between trees", why="")


@rule(
    "espalier.fire-blight",
    Severity.WARNING,
    by.BLADES,
    applies="apples and pears of techniques that name fire blight",
    soak=f"{qty(SOAK_MINUTES, 'min')}",
    parts=f"{bare(WATER_PARTS)}",
)
def fire_blight(work: T) -> Iterator[Breach]:
    """Where fire blight is about, blades go into bleach and not alcohol.

    alcohol is not enough for fire blight; bleach is, 1 part to {parts} parts water for {soak}, used within 2 hours
    """
    if work.measures.job not in CUTTING or frame.fruit_of(work) not in {"apple", "pear"}:
        return
    if not says(work, "fire blight") or says(work, "bleach"):
        return
    line = (
        f"- **Fire blight.** Soak blades for {SOAK_MINUTES} minutes in 1 part bleach to {WATER_PARTS} parts water, "
        "made the same hour; rinse. → gloves, eye protection"
    )
    yield line_wanted("Cautions", line, what="fire blight is named, and no bleach", why="")


@rule("espalier.dry-day", Severity.WARNING, by.STONE, applies="plums, cherries, peaches, apricots and almonds")
def dry_day(work: T) -> Iterator[Breach]:
    """Stone fruit is cut on a dry day.

    silver leaf and canker settle on wet cuts
    """
    if work.measures.job not in CUTTING or frame.fruit_of(work) != "stone fruit" or says(work, "dry"):
        return
    line = "- **Silver leaf.** Cut stone fruit on a dry day only, with more dry days to come."
    yield line_wanted("Cautions", line, what="nothing says that stone fruit is cut on a dry day", why="")


SAID_RULES: tuple[Rule[EspalierMeasures], ...] = (
    tightened, wire_ends, in_the_wall, soft_ties, left_and_right, clean_blades, fire_blight, dry_day,
)  # fmt: skip
