"""The rules of feeding that look at what the card says."""

from collections.abc import Iterator

from howto.families.feeding import plan
from howto.families.feeding import references as by
from howto.families.feeding.label import label_of
from howto.families.feeding.parts import anew
from howto.families.feeding.plan import T
from howto.findings import Severity
from howto.model.family import Breach, line_wanted, rule
from howto.model.reference import PRACTICE
from howto.model.wording import says
from howto.quantities.amounts import Word, Words


def _unless(work: T, *said: str, what: Words, line: str) -> Iterator[Breach]:
    """Yield the breach of cautions that lack a line, unless one of the words stands on the card."""
    if not says(work, *said):
        yield line_wanted("Cautions", line, what=what, why="")


@rule("feeding.label-first", Severity.WARNING, PRACTICE, by.LABEL_LAW, applies="every feeding")
def label_first(work: T) -> Iterator[Breach]:
    """The card sends the reader to the label first, and lets the label rule.

    the label gives the most that may be used, what to wear and what to do in an accident; it outranks a card, which
    does not know which bag is in the van
    """
    yield from _unless(
        work,
        *("the label", "product label", "label's", "label rules", "label says"),
        what="nothing sends the reader to the product's label",
        line="- **Label first.** Read the label; where it allows less than this card, the label rules. → gloves",
    )


@rule("feeding.pear-blight", Severity.WARNING, by.OLD_RATE, applies="pears fed with nitrogen")
def pear_blight(work: T) -> Iterator[Breach]:
    """The card of a pear that is fed nitrogen warns of fire blight in soft growth.

    pears go easy on nitrogen: soft growth takes fire blight, and there is no cure
    """
    label = label_of(work.measures)
    if label and label.nitrogen > 0 and work.measures.kind == "fruit tree" and plan.crop_of(work) == "pear":
        line = "- **Fire blight.** Give no more than this; soft growth on a pear takes fire blight."
        yield from _unless(work, "blight", what="nothing warns of fire blight", line=line)


@rule("feeding.weed-and-feed", Severity.ADVICE, by.WEED_AND_FEED, applies="feeds that kill weeds")
def weed_and_feed(work: T) -> Iterator[Breach]:
    """A feed with a weed killer goes on lawns, and on nothing else.

    its weed killer is made for lawns and harms trees, beds and pots through their roots
    """
    m = work.measures
    if m.weed_killer and m.kind != "lawn":
        what = f"a feed that kills weeds is given to a {Word(m.kind)}"
        yield anew("weed_killer", "no", what, first="use a feed without it, and ")


@rule("feeding.off-paving", Severity.WARNING, PRACTICE, applies="lawns fed with granules")
def off_paving(work: T) -> Iterator[Breach]:
    """Granules that fall on paving are swept up, away from drains, and the card says so.

    rain takes them down the drain to the nearest stream, and iron in them stains stone
    """
    if work.measures.kind == "lawn" and not work.measures.in_water:
        yield from _unless(
            work,
            *("sweep", "swept", "off the path", "off paving", "drain"),
            what="nothing tells the reader to sweep granules off paving",
            line="- **Drains.** Sweep granules off paths and paving back on the lawn, before any water.",
        )


@rule("feeding.water-in", Severity.ADVICE, by.WATER_IN, applies="granules")
def water_in(work: T) -> Iterator[Breach]:
    """Granules are watered in, and the card says so.

    dry granules burn leaf and feed nothing: nutrients reach roots only in water
    """
    if not work.measures.in_water:
        yield from _unless(
            work,
            *("water in", "watered in", "water it in", "water them in", "rain"),
            what="nothing says that the granules are watered in",
            line="- **Burn.** Spread on dry leaf, then water in until the soil is damp.",
        )


@rule("feeding.pets", Severity.ADVICE, by.PETS, applies="every feeding")
def pets(work: T) -> Iterator[Breach]:
    """Children and animals are kept off until the feed is watered in, and the card says so.

    granules look like food, and a dog eats what smells of bone and blood
    """
    line = "- **Children and pets.** Keep both off until it is watered in and dry, and the bag shut and out of reach."
    said = ("children", "pets", "dogs", "animals", "stock off")
    yield from _unless(work, *said, what="nothing keeps children and animals away from the feed", line=line)


RULES = (label_first, pear_blight, weed_and_feed, off_paving, water_in, pets)
