"""The rules of feeding that look at what the card says."""

from collections.abc import Iterator

from howto.families.feeding import plan
from howto.families.feeding import references as by
from howto.families.feeding.label import label_of
from howto.families.feeding.measures import FeedingMeasures
from howto.families.feeding.plan import T
from howto.findings import Severity
from howto.model.family import Breach, Edit, Rule, line_wanted, rule
from howto.model.reference import PRACTICE, from_memory
from howto.model.wording import says

WEED_AND_FEED = from_memory("weed killers in lawn feed harm trees and beds through their roots")


@rule("feeding.label-first", Severity.WARNING, PRACTICE, by.LABEL_LAW, applies="every feeding")
def label_first(work: T) -> Iterator[Breach]:
    """The card sends the reader to the label first, and lets the label rule.

    Products differ and change; a card does not know which bag is in the van.
    """
    if says(work, "the label", "product label", "label's", "label rules", "label says"):
        return
    yield _caution(
        "nothing sends the reader to the product's label",
        "the label gives the most that may be used, what to wear and what to do in an accident; it outranks this card",
        "- **Label first.** Read the label; where it allows less than this card, the label rules. → gloves",
    )


@rule("feeding.pear-blight", Severity.WARNING, by.OLD_RATE, applies="pears fed with nitrogen")
def pear_blight(work: T) -> Iterator[Breach]:
    """The card of a pear that is fed nitrogen warns of fire blight in soft growth.

    Fire blight comes in through soft growth, and there is no cure.
    """
    label = label_of(work.measures)
    if label is None or label.nitrogen <= 0 or work.measures.kind != "fruit tree":
        return
    if plan.crop_of(work) != "pear" or says(work, "blight"):
        return
    yield _caution(
        "nothing warns of fire blight",
        "pears go easy on nitrogen: soft growth takes fire blight",
        "- **Fire blight.** Give no more than this; soft growth on a pear takes fire blight.",
    )


@rule("feeding.weed-and-feed", Severity.ADVICE, WEED_AND_FEED, applies="feeds that kill weeds")
def weed_and_feed(work: T) -> Iterator[Breach]:
    """A feed with a weed killer goes on lawns, and on nothing else.

    What kills a dandelion harms a pear.
    """
    m = work.measures
    if not m.weed_killer or m.kind == "lawn":
        return
    yield Breach(
        field="measures.weed_killer",
        what=f"a feed that kills weeds is given to a {m.kind}",
        why="its weed killer is made for lawns and harms trees, beds and pots through their roots",
        mend="use a feed without it, and write `weed killer: no`",
        edit=Edit(key="weed killer", text="no"),
    )


@rule("feeding.off-paving", Severity.WARNING, PRACTICE, applies="lawns fed with granules")
def off_paving(work: T) -> Iterator[Breach]:
    """Granules that fall on paving are swept up, away from drains, and the card says so.

    What lies on paving feeds the drain.
    """
    m = work.measures
    if m.kind != "lawn" or m.in_water or says(work, "sweep", "swept", "off the path", "off paving", "drain"):
        return
    yield _caution(
        "nothing tells the reader to sweep granules off paving",
        "rain takes them down the drain to the nearest stream, and iron in them stains stone",
        "- **Drains.** Sweep granules off paths and paving back on the lawn, before any water.",
    )


@rule("feeding.water-in", Severity.ADVICE, by.WATER_IN, applies="granules")
def water_in(work: T) -> Iterator[Breach]:
    """Granules are watered in, and the card says so.

    Nutrients reach roots only in water.
    """
    if work.measures.in_water or says(work, "water in", "watered in", "water it in", "water them in", "rain"):
        return
    yield _caution(
        "nothing says that the granules are watered in",
        f"dry granules burn leaf and feed nothing ({by.WATER_IN})",
        "- **Burn.** Spread on dry leaf, then water in until the soil is damp.",
    )


@rule("feeding.pets", Severity.ADVICE, by.PETS, applies="every feeding")
def pets(work: T) -> Iterator[Breach]:
    """Children and animals are kept off until the feed is watered in, and the card says so.

    A dog eats what smells of bone and blood.
    """
    if says(work, "children", "pets", "dogs", "animals", "stock off"):
        return
    yield _caution(
        "nothing keeps children and animals away from the feed",
        f"granules look like food ({by.PETS})",
        "- **Children and pets.** Keep both off until it is watered in and dry, and the bag shut and out of reach.",
    )


def _caution(what: str, why: str, line: str) -> Breach:
    return line_wanted("Cautions", line, what=what, why=why)


TEXT_RULES: tuple[Rule[FeedingMeasures], ...] = (label_first, pear_blight, weed_and_feed, off_paving, water_in, pets)
