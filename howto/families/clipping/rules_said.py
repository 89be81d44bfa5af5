"""The rules of clipping that look at what the card says."""

import re
from collections.abc import Iterator

from howto.families.clipping.measures import ClippingMeasures
from howto.families.clipping.references import TOOLS, WET_BOX
from howto.findings import Severity
from howto.model.family import Breach, Rule, line_wanted, rule
from howto.model.reference import PRACTICE
from howto.model.wording import words_of_cautions, words_of_kit, words_of_steps
from howto.model.work import Work

T = Work[ClippingMeasures]

CLEAN = re.compile(r"disinfect|alcohol|bleach|\bwip(?:e|ed|es|ing)\b|saniti[sz]|sterili[sz]")
DRY = re.compile(r"\b(?:wet|dry|damp|rain|blight|splash\w*)\b")
FROM_ABOVE = re.compile(r"\b(?:from above|stand(?:ing)? over|straight down|look(?:ing)? down|rings?)\b")
RUFFLE = re.compile(r"\b(?:ruffl\w*|shak(?:e|en|ing)|brush(?:ed|ing)? over|stands? (?:out|up|proud))\b")


@rule("clipping.clean-blades", Severity.WARNING, TOOLS, applies="every clipped shape")
def clean_blades(work: T) -> Iterator[Breach]:
    """Blades are disinfected between plants, and the card says so.

    Disease goes from plant to plant on blades; wipe or dip in 70 % alcohol, no soak and no rinse.
    """
    if CLEAN.search(_said(work)):
        return
    line = "- **Clean blades.** Wipe the blades with 70 % alcohol before the next plant."
    yield line_wanted(
        "Cautions",
        line,
        what="nothing tells the reader to clean the blades between plants",
        why="disease goes from plant to plant on blades; 70 % alcohol, wiped on, is enough for most",
    )


@rule("clipping.box-in-the-dry", Severity.WARNING, WET_BOX, applies="box")
def box_in_the_dry(work: T) -> Iterator[Breach]:
    """Box is clipped dry, since splash spreads blight.

    Splash spreads blight to fresh cuts; clippings left behind carry it over.
    """
    if not any(plant.botanical.startswith("Buxus") for plant in work.plants):
        return
    if DRY.search(_said(work)):
        return
    line = "- **Blight.** Clip box on a dry day only, and take every clipping away."
    yield line_wanted(
        "Cautions",
        line,
        what="nothing says that box is clipped dry",
        why="splashing water spreads box blight to fresh cuts",
    )


@rule("clipping.ring-from-above", Severity.ADVICE, PRACTICE, applies="balls")
def ring_from_above(work: T) -> Iterator[Breach]:
    """A ball is begun looking straight down, with a ring round its widest part.

    The widest ring is the line every other cut is judged by.
    """
    if work.measures.shape != "ball" or FROM_ABOVE.search(_said(work)):
        return
    yield _advise_step(
        work,
        "no step looks at the ball from above",
        "the widest ring, clipped first, is the line every other cut is judged by",
        "**Find the widest ring.** Stand over the plant, look straight down, and clip a level ring round it.",
    )


@rule("clipping.ruffle", Severity.ADVICE, PRACTICE, applies="every clipped shape")
def ruffle(work: T) -> Iterator[Breach]:
    """The plant is ruffled after clipping, so that folded shoots stand out, then clipped once more.

    Shoots folded under by the blades stand up again within days.
    """
    if RUFFLE.search(_said(work)):
        return
    yield _advise_step(
        work,
        "no step ruffles the plant before the last pass",
        "shoots folded under by the blades stand up again within days and spoil the outline",
        "**Ruffle and clip once more.** Run both hands over the plant, then take off what stands out.",
    )


def _advise_step(work: T, what: str, why: str, step: str) -> Breach:
    """Return the breach of a step that is not there; its line bears the number that follows the last."""
    line = f"{len(work.technique.steps) + 1}. {step}"
    return line_wanted(
        "Steps",
        line,
        field=f"steps[{len(work.technique.steps) - 1}]" if work.technique.steps else "steps",
        what=what,
        why=why,
    )


def _said(work: T) -> str:
    """Return everything the tools, steps and cautions say, lower case."""
    told = (
        words_of_kit(work.technique.tools),
        words_of_steps(work.technique.steps),
        words_of_cautions(work.technique.cautions),
    )
    return " ".join(told).casefold()


SAID: tuple[Rule[ClippingMeasures], ...] = (clean_blades, box_in_the_dry, ring_from_above, ruffle)
