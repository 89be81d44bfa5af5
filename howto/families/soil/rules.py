"""The rules of soil work that look at depths; rules_sums.py adds up orders, rules_ground.py looks at the ground."""

from collections.abc import Iterator

from howto.families.soil import formulae
from howto.families.soil import references as by
from howto.families.soil.measures import SoilMeasures
from howto.families.soil.rules_ground import GROUND
from howto.families.soil.rules_sums import SUMS
from howto.findings import Severity
from howto.model.family import SHARE, Breach, Edit, Limit, Rule, rule
from howto.model.work import Work
from howto.quantities import round_down, round_up
from howto.quantities import show_number as num
from howto.quantities.amounts import bare, mm, percent

T = Work[SoilMeasures]

MULCH = Limit(low=25, high=100, unit="mm", reference=by.MULCH_TREES)
DUG_IN = Limit(low=25, high=100, unit="mm", reference=by.COMPOST_BEDS)
TOP_DRESSING = Limit(low=6, high=13, unit="mm", reference=by.COMPOST_DUG)
RING = Limit(low=25, unit="mm", reference=by.MULCH_TREES)
OVER_BALL = Limit(high=25, unit="mm", reference=by.MULCH_TRUNKS)  # "little or none", read here as the least mulch
SETTLED = Limit(high=150, unit="mm", reference=by.MULCH_ROT)
MIXED = Limit(high=1 / 3, unit=SHARE, of="of the mixed depth", reference=by.COMPOST_DUG)  # 50 mm in 150 mm


@rule("soil.mulch-depth", Severity.ERROR, by.MULCH_TREES, by.COMPOST_MULCH, applies="mulching")
def mulch_depth(work: T) -> Iterator[Breach]:
    """Mulch lies from 25 to 100 mm deep.

    Guides run from 25 to 75 mm for compost and 50 to 100 mm round trees; over 100 mm is a problem.
    """
    m = work.measures
    if m.work != "mulch" or MULCH.allows(m.depth_mm):
        return
    deep = m.depth_mm > 100
    near = "75 mm" if deep else "50 mm"
    yield Breach(
        field="measures.depth_mm",
        what=f"mulch {mm(m.depth_mm, 3)} deep",
        why="over 100 mm is a problem: air and rain do not reach the roots"
        if deep
        else "mulch starts at 25 mm; less lets light through to weeds",
        mend=f"write `depth: {near}`",
        edit=Edit(key="depth", text=near),
    )


@rule("soil.settled-depth", Severity.WARNING, by.MULCH_ROT, applies="mulching that writes the old layer")
def settled_depth(work: T) -> Iterator[Breach]:
    """Old mulch and new together settle to at most 150 mm.

    A layer topped up each spring grows, until the roots under it are short of air.
    """
    m = work.measures
    if m.work != "mulch" or m.old_layer_mm is None or not MULCH.allows(m.depth_mm):
        return
    whole = m.old_layer_mm + m.depth_mm
    if SETTLED.allows(whole):
        return
    text = f"{num(round_down(150 - m.depth_mm, 0.1), 6)} mm"
    yield Breach(
        field="measures.old_layer_mm",
        also="measures.depth_mm",
        what=f"{mm(whole, 3)} of old mulch and new over the roots",
        why=f"{bare(m.old_layer_mm)} + {mm(m.depth_mm, 3)}; over about 150 mm roots are short of air and rot",
        mend=f"rake off old mulch until it lies {text} deep, and write `old layer: {text}`",
        edit=Edit(key="old layer", text=text),
    )


@rule("soil.dug-in-depth", Severity.ERROR, by.COMPOST_BEDS, by.COMPOST_DUG, applies="compost dug into beds")
def dug_in_depth(work: T) -> Iterator[Breach]:
    """Compost dug in is a layer of 25 to 100 mm, once.

    Compost is dug into a bed once, 75 to 100 mm before planting; 25 to 50 mm where it went in before.
    """
    m = work.measures
    if not m.is_dug_in or not m.is_compost or DUG_IN.allows(m.depth_mm):
        return
    near = "75 mm" if m.depth_mm > 100 else "25 mm"
    yield Breach(
        field="measures.depth_mm",
        what=f"a layer of {mm(m.depth_mm, 3)} to dig in",
        why="new beds take 75 to 100 mm once, before planting, and 25 to 50 mm where compost went in before",
        mend=f"write `depth: {near}`",
        edit=Edit(key="depth", text=near),
    )


@rule("soil.top-dressing-depth", Severity.ERROR, by.COMPOST_DUG, applies="top-dressing")
def top_dressing_depth(work: T) -> Iterator[Breach]:
    """Top-dressing on a lawn is 6 to 13 mm.

    A quarter to half an inch falls between the blades; more buries them.
    """
    m = work.measures
    if m.work != "top-dress" or TOP_DRESSING.allows(m.depth_mm):
        return
    near = "13 mm" if m.depth_mm > 13 else "6 mm"
    yield Breach(
        field="measures.depth_mm",
        what=f"top-dressing {mm(m.depth_mm, 3)} deep",
        why="a lawn stands through 6 to 13 mm; a deeper layer smothers it, and less shows nowhere",
        mend=f"write `depth: {near}`",
        edit=Edit(key="depth", text=near),
    )


@rule(
    "soil.mixed-deep-enough",
    Severity.WARNING,
    by.COMPOST_DUG,
    by.DILUTION,
    applies="compost dug in, where the depth of digging is written",
)
def mixed_deep_enough(work: T) -> Iterator[Breach]:
    """Compost is mixed at least three times as deep as it is spread.

    Made soil is 20 to 30 % compost; one maker asks for four parts of soil to one.
    """
    m = work.measures
    if not m.is_dug_in or not m.is_compost or m.dig_depth_mm is None:
        return
    part = formulae.share_mixed_in(m.depth_mm, m.dig_depth_mm)
    if MIXED.allows(part) or not DUG_IN.allows(m.depth_mm):
        return
    deep = f"{num(round_up(m.depth_mm * 3, 1), 6)} mm"
    yield Breach(
        field="measures.dig_depth_mm",
        also="measures.depth_mm",
        what=f"{percent(part * 100)} of the mixed soil would be {m.material}",
        why=f"{mm(m.depth_mm, 3)} in {mm(m.dig_depth_mm, 3)}; made soil holds 20 to 30 % of compost, and a third "
        "(50 mm in 150 mm) is the most that is advised",
        mend=f"write `dig depth: {deep}` or deeper, or spread less",
        edit=Edit(key="dig depth", text=deep),
    )


@rule(
    "soil.clear-of-stems",
    Severity.ERROR,
    by.MULCH_TREES,
    by.COMPOST_MULCH,
    by.MULCH_TRUNKS,
    applies="mulching that writes the bare ring",
)
def clear_of_stems(work: T) -> Iterator[Breach]:
    """Mulch stops at least 25 mm short of every stem.

    Bark kept wet rots. Sources run from a bare ring of 25 mm to a foot.
    """
    m = work.measures
    if m.work != "mulch" or m.trunk_clear_mm is None or RING.allows(m.trunk_clear_mm):
        return
    yield Breach(
        field="measures.trunk_clear_mm",
        what=f"mulch {mm(m.trunk_clear_mm, 3)} from the stem" if m.trunk_clear_mm else "mulch against the stem",
        why="bark kept wet rots; a bare ring of 25 to 50 mm lets it dry",
        mend="write `trunk clear: 50 mm`",
        edit=Edit(key="trunk clear", text="50 mm"),
    )


@rule("soil.over-the-ball", Severity.WARNING, by.MULCH_TRUNKS, applies="mulching round new plants")
def over_the_ball(work: T) -> Iterator[Breach]:
    """Little or no mulch lies over a new root ball.

    A new root ball is watered through its top.
    """
    m = work.measures
    if m.work != "mulch" or m.over_the_ball_mm is None or OVER_BALL.allows(m.over_the_ball_mm):
        return
    yield Breach(
        field="measures.over_the_ball_mm",
        what=f"{mm(m.over_the_ball_mm, 3)} over a new root ball",
        why="a new ball is watered through its top, where mulch should be little or none; a deep layer drinks first",
        mend="write `over the ball: 25 mm` or less",
        edit=Edit(key="over the ball", text="25 mm"),
    )


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
