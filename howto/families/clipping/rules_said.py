"""The rules of clipping that look at what the card says."""

import re
from collections.abc import Iterator

from howto.families.clipping.measures import ClippingMeasures
from howto.families.clipping.references import TOOLS, WET_BOX
from howto.families.clipping.rules_plants import T
from howto.findings import Severity
from howto.model.family import Breach, Rule, line_wanted, rule
from howto.model.reference import PRACTICE
from howto.model.wording import words_of_cautions, words_of_kit, words_of_steps
from howto.quantities.amounts import percent

CLEAN = re.compile(r"disinfect|alcohol|bleach|\bwip(?:e|ed|es|ing)\b|saniti[sz]|sterili[sz]")
DRY = re.compile(r"\b(?:wet|dry|damp|rain|blight|splash\w*)\b")
FROM_ABOVE = re.compile(r"\b(?:from above|stand(?:ing)? over|straight down|look(?:ing)? down|rings?)\b")
RUFFLE = re.compile(r"\b(?:ruffl\w*|shak(?:e|en|ing)|brush(?:ed|ing)? over|stands? (?:out|up|proud))\b")
ALCOHOL_PERCENT = 70


@rule(
    "clipping.clean-blades",
    Severity.WARNING,
    TOOLS,
    applies="every clipped shape",
    alcohol=f"{percent(ALCOHOL_PERCENT)} alcohol",
)
def clean_blades(work: T) -> Iterator[Breach]:
    """Blades are disinfected between plants, and the card says so.

    disease goes from plant to plant on blades; {alcohol}, wiped on or dipped in, is enough for most: no soak, no rinse
    """
    if CLEAN.search(_said(work)):
        return
    line = f"- **Clean blades.** Wipe the blades with {ALCOHOL_PERCENT} % alcohol before the next plant."
    what = "nothing tells the reader to clean the blades between plants"
    yield line_wanted("Cautions", line, what=what, why="")


@rule("clipping.box-in-the-dry", Severity.WARNING, WET_BOX, applies="box")
def box_in_the_dry(work: T) -> Iterator[Breach]:
    """Box is clipped dry, since splash spreads blight.

    splashing water spreads box blight to fresh cuts; clippings left behind carry it over
    """
    if DRY.search(_said(work)) or not any(plant.botanical.startswith("Buxus") for plant in work.plants):
        return
    line = "- **Blight.** Clip box on a dry day only, and take every clipping away."
    yield line_wanted("Cautions", line, what="nothing says that box is clipped dry", why="")


@rule("clipping.ring-from-above", Severity.ADVICE, PRACTICE, applies="balls")
def ring_from_above(work: T) -> Iterator[Breach]:
    """A ball is begun looking straight down, with a ring round its widest part.

    the widest ring, clipped first, is the line every other cut is judged by
    """
    if work.measures.shape != "ball" or FROM_ABOVE.search(_said(work)):
        return
    step = "**Find the widest ring.** Stand over the plant, look straight down, and clip a level ring round it."
    yield _step_wanted(work, step, "no step looks at the ball from above")


@rule("clipping.ruffle", Severity.ADVICE, PRACTICE, applies="every clipped shape")
def ruffle(work: T) -> Iterator[Breach]:
    """The plant is ruffled after clipping, so that folded shoots stand out, then clipped once more.

    shoots folded under by the blades stand up again within days and spoil the outline
    """
    if RUFFLE.search(_said(work)):
        return
    step = "**Ruffle and clip once more.** Run both hands over the plant, then take off what stands out."
    yield _step_wanted(work, step, "no step ruffles the plant before the last pass")


def _step_wanted(work: T, step: str, what: str) -> Breach:
    """Return the breach of a step that is not there; its line bears the number that follows the last."""
    last = len(work.technique.steps)
    field = f"steps[{last - 1}]" if last else "steps"
    return line_wanted("Steps", f"{last + 1}. {step}", field=field, what=what, why="")


def _said(work: T) -> str:
    """Return everything the tools, steps and cautions say, lower case."""
    technique = work.technique
    told = words_of_kit(technique.tools), words_of_steps(technique.steps), words_of_cautions(technique.cautions)
    return " ".join(told).casefold()


SAID: tuple[Rule[ClippingMeasures], ...] = (clean_blades, box_in_the_dry, ring_from_above, ruffle)
