"""The rules of soil work that look at depths; rules_sums.py adds up orders, rules_ground.py looks at the ground."""

from collections.abc import Iterator

from howto.families.soil import formulae
from howto.families.soil import references as by
from howto.families.soil.figures import USUAL_RING, T
from howto.families.soil.measures import SoilMeasures
from howto.families.soil.mends import rewritten
from howto.families.soil.rules_ground import GROUND
from howto.families.soil.rules_sums import SUMS
from howto.findings import Severity
from howto.model.family import SHARE, Breach, Limit, Rule, outside, rule, typed
from howto.quantities import round_down, round_up
from howto.quantities.amounts import Name, Range, mm, percent

COMPOST_MULCH, TREE_MULCH = Range(25, 75, "mm"), Range(50, 100, "mm")  # as guides advise
MULCH_MOST_MM = TREE_MULCH.high
MULCH = Limit(unit="mm", low=COMPOST_MULCH.low, high=MULCH_MOST_MM, reference=by.MULCH_TREES)
NEW_BED, AGAIN = Range(75, 100, "mm"), Range(25, 50, "mm")  # compost dug in once, or where it went in before
DUG_IN = Limit(unit="mm", low=AGAIN.low, high=NEW_BED.high, reference=by.COMPOST_BEDS)
TOP_DRESSING = Limit(unit="mm", low=6, high=13, reference=by.COMPOST_DUG)
RING = Limit(unit="mm", low=USUAL_RING.low, reference=by.MULCH_TREES)
OVER_BALL = Limit(unit="mm", high=25, reference=by.MULCH_TRUNKS)  # "little or none", read here as the least mulch
SETTLED_MM = 150.0
SETTLED = Limit(unit="mm", high=SETTLED_MM, reference=by.MULCH_ROT)
MOST_MIXED = 1 / 3  # 50 mm in 150 mm
MIXED = Limit(unit=SHARE, of="of the mixed depth", high=MOST_MIXED, reference=by.COMPOST_DUG)
MADE_SOIL = Range(20, 30, "%")  # of compost


@rule(
    "soil.mulch-depth",
    Severity.ERROR,
    by.MULCH_TREES,
    by.COMPOST_MULCH,
    applies="mulching",
    limit=f"{MULCH}",
    compost=f"{COMPOST_MULCH}",
    trees=f"{TREE_MULCH}",
    most=MULCH.most,
)
def mulch_depth(work: T) -> Iterator[Breach]:
    """Mulch lies from {limit} deep.

    Guides run from {compost} for compost and {trees} round trees; over {most} is a problem.
    """
    m = work.measures
    if m.work != "mulch" or MULCH.allows(m.depth_mm):
        return
    near, why = TREE_MULCH.low, f"mulch starts at {MULCH.least}; less lets light through to weeds"
    if m.depth_mm > MULCH_MOST_MM:
        near, why = COMPOST_MULCH.high, f"over {MULCH.most} is a problem: air and rain do not reach the roots"
    yield rewritten("depth_mm", typed(near, "mm"), f"mulch {mm(m.depth_mm, 3)} deep", why)


@rule(
    "soil.settled-depth",
    Severity.WARNING,
    by.MULCH_ROT,
    applies="mulching that writes the old layer",
    most=SETTLED.most,
)
def settled_depth(work: T) -> Iterator[Breach]:
    """Old mulch and new together settle to at most {most}.

    A layer topped up each spring grows, until the roots under it are short of air.
    """
    m = work.measures
    if m.work != "mulch" or m.old_layer_mm is None or not MULCH.allows(m.depth_mm):
        return
    whole = m.old_layer_mm + m.depth_mm
    if SETTLED.allows(whole):
        return
    text, both = typed(round_down(SETTLED_MM - m.depth_mm, 0.1), "mm"), f"{mm(m.old_layer_mm, 3)} + {mm(m.depth_mm, 3)}"
    what = f"{mm(whole, 3)} of old mulch and new over the roots"
    why = f"{both}; over about {SETTLED.most} roots are short of air and rot"
    first = f"rake off old mulch until it lies {text} deep, and "
    yield rewritten("old_layer_mm", text, what, why, first, also="measures.depth_mm")


@rule(
    "soil.dug-in-depth",
    Severity.ERROR,
    by.COMPOST_BEDS,
    by.COMPOST_DUG,
    applies="compost dug into beds",
    limit=f"{DUG_IN}",
    new=f"{NEW_BED}",
    again=f"{AGAIN}",
)
def dug_in_depth(work: T) -> Iterator[Breach]:
    """Compost dug in is a layer of {limit}, once.

    New beds take {new} once, before planting, and {again} where compost went in before.
    """
    m = work.measures
    if m.is_dug_in and m.is_compost and not DUG_IN.allows(m.depth_mm):
        near = NEW_BED.low if m.depth_mm > NEW_BED.high else AGAIN.low
        yield rewritten("depth_mm", typed(near, "mm"), f"a layer of {mm(m.depth_mm, 3)} to dig in")


@rule("soil.top-dressing-depth", Severity.ERROR, by.COMPOST_DUG, applies="top-dressing", limit=f"{TOP_DRESSING}")
def top_dressing_depth(work: T) -> Iterator[Breach]:
    """Top-dressing on a lawn is {limit}.

    A lawn stands through {limit}; a deeper layer smothers it, and less shows nowhere.
    """
    if work.measures.work == "top-dress":
        yield from outside(TOP_DRESSING, work, "depth_mm", what="top-dressing {found} deep", why="")


@rule(
    "soil.mixed-deep-enough",
    Severity.WARNING,
    by.COMPOST_DUG,
    by.DILUTION,
    applies="compost dug in, where the depth of digging is written",
    most=MIXED.most,
    made=f"{MADE_SOIL}",
)
def mixed_deep_enough(work: T) -> Iterator[Breach]:
    """Compost dug in is at most {most} of the depth that it is mixed into.

    Made soil is {made} compost; one maker asks for four parts of soil to one.
    """
    m = work.measures
    if not m.is_dug_in or not m.is_compost or m.dig_depth_mm is None:
        return
    part = formulae.share_mixed_in(m.depth_mm, m.dig_depth_mm)
    if MIXED.allows(part) or not DUG_IN.allows(m.depth_mm):
        return
    what = f"{percent(part * 100)} of the mixed soil would be {Name(m.material)}"
    advised = f"made soil holds {MADE_SOIL} of compost, and {MIXED.most} is the most that is advised"
    why, deep = f"{mm(m.depth_mm, 3)} in {mm(m.dig_depth_mm, 3)}; {advised}", round_up(m.depth_mm / MOST_MIXED, 1)
    then, also = " or deeper, or spread less", "measures.depth_mm"
    yield rewritten("dig_depth_mm", typed(deep, "mm"), what, why, then=then, also=also)


@rule(
    "soil.clear-of-stems",
    Severity.ERROR,
    by.MULCH_TREES,
    by.COMPOST_MULCH,
    by.MULCH_TRUNKS,
    applies="mulching that writes the bare ring",
    least=RING.least,
    usual=f"{USUAL_RING}",
)
def clear_of_stems(work: T) -> Iterator[Breach]:
    """Mulch stops at least {least} short of every stem.

    Bark kept wet rots; a bare ring of {usual} lets it dry, and some ask for a foot.
    """
    m = work.measures
    if m.work == "mulch" and m.trunk_clear_mm is not None and not RING.allows(m.trunk_clear_mm):
        what = f"mulch {mm(m.trunk_clear_mm, 3)} from the stem" if m.trunk_clear_mm else "mulch against the stem"
        yield rewritten("trunk_clear_mm", typed(USUAL_RING.high, "mm"), what)


@rule("soil.over-the-ball", Severity.WARNING, by.MULCH_TRUNKS, applies="mulching round new plants")
def over_the_ball(work: T) -> Iterator[Breach]:
    """Little or no mulch lies over a new root ball.

    A new ball is watered through its top, where mulch should be little or none; a deep layer drinks first.
    """
    if work.measures.work == "mulch":
        yield from outside(OVER_BALL, work, "over_the_ball_mm", what="{found} over a new root ball", why="")


DEPTHS: tuple[Rule[SoilMeasures], ...] = (
    mulch_depth,
    settled_depth,
    dug_in_depth,
    top_dressing_depth,
    mixed_deep_enough,
    clear_of_stems,
    over_the_ball,
)
RULES: tuple[Rule[SoilMeasures], ...] = (*DEPTHS, *SUMS, *GROUND)
