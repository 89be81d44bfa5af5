"""The rules of the planting hole and the ball; rules_after.py and rules_counts.py hold the others."""

from collections.abc import Iterator
from typing import Final

from howto.families.planting import hole
from howto.families.planting import references as by
from howto.families.planting.measures import PlantingMeasures
from howto.families.planting.parts import rewritten
from howto.families.planting.rules_after import AFTER
from howto.families.planting.rules_counts import COUNTED
from howto.findings import Severity
from howto.model.family import Breach, Limit, Rule, line_wanted, outside, rule, typed
from howto.model.reference import GEOMETRY
from howto.model.work import Work
from howto.quantities import round_down, round_up
from howto.quantities.amounts import Range, Share, bare, mm, percent, qty

T = Work[PlantingMeasures]

TAPE_MM: Final = 1.0  # a tape in a hole is read to a millimetre
SHALLOWEST_MM: Final = 10.0  # roots that reach less far down than this are a slip of the tape, and set no hole
SPADE_MM: Final = 5.0  # a hole and a ball are measured to this
TOPMOST = Limit(high=50, unit="mm", of="below the top of the ball", reference=by.SPECIFICATION)
ONE_LIFT_KG: Final = 23.0  # see references.LIFT
TWO_LIFT_KG: Final = 2 * ONE_LIFT_KG
HELPS: Final = (
    "trolley", "barrow", "hand truck", "sack truck", "machine", "loader", "digger", "crane", "hoist", "winch",
    "tractor", "dolly", "skid", "sling", "tarpaulin",
)  # fmt: skip
METRIC_AT = hole.CALLIPER_AT["metric"]
DEPTHS = ", ".join(f"{percent(share * 100)} of a width under {mm(under)}" for under, share in hole.DEPTH_SHARES[:-1])


@rule(
    "planting.hole-width",
    Severity.ERROR,
    by.SPECIFICATION,
    by.SAUCER,
    applies="plantings that write the hole and the ball",
    times=f"{bare(hole.LEAST_HOLE)}",
)
def hole_width(work: T) -> Iterator[Breach]:
    """The hole is at least {times} times as wide as the ball.

    new roots run into soil that was loosened, and hardly into a smooth wall: as wide as there is room for
    """
    m, ball = work.measures, hole.ball_mm(work.measures)
    if ball is None:
        return
    least, wide = ball * hole.LEAST_HOLE, ball * hole.WIDE_HOLE
    yield from outside(
        Limit(low=least, unit="mm", reference=by.SPECIFICATION),
        work,
        "hole_width_mm",
        also="measures.ball_width_mm" if m.ball_width_mm is not None else "measures.calliper_mm",
        what="the hole is {found} wide",
        why=f"{bare(hole.LEAST_HOLE)} × {mm(ball, 4)} = {mm(least, 4)} at least; {bare(hole.WIDE_HOLE)} times, "
        f"{mm(wide, 4)}, is better",
    )


@rule(
    "planting.hole-depth",
    Severity.ERROR,
    by.NOT_DEEPER,
    by.SPECIFICATION,
    applies="plantings that write the depth of the hole and of the ball",
)
def hole_depth(work: T) -> Iterator[Breach]:
    """The hole is never deeper than the ball.

    more young trees die of being planted too deep than of anything else in the hole
    """
    m = work.measures
    roots, advised = m.root_to_base_mm, hole.advised_depth_mm(m)
    if m.hole_depth_mm is None or roots is None or advised is None or roots < SHALLOWEST_MM:
        return
    if m.hole_depth_mm > roots + TAPE_MM:
        what = f"the hole is {mm(m.hole_depth_mm, 4)} deep, deeper than the roots"
        why = (
            f"from the topmost root to the base it is {mm(roots, 4)}; soil filled in under a ball sinks, and the "
            "trunk with it"
        )
        yield rewritten("hole_depth_mm", typed(advised, "mm"), what, why, also="ball_depth_mm")


@rule(
    "planting.set-proud",
    Severity.ERROR,
    by.SPECIFICATION,
    by.PROPER,
    applies="balls and containers that write the depth of the hole, or how proud they stand",
    share=f"{percent(hole.PROUD_SHARE * 100)}",
    proud=f"{Range(*hole.PROUD_MM, 'mm')}",
)
def set_proud(work: T) -> Iterator[Breach]:
    """A ball is set so that its topmost root stands a little above the ground, and higher on poor drainage.

    a hole is {share} shallower than the roots, {proud}; where water stands, {share} of the ball or more
    """
    m = work.measures
    roots, above = m.root_to_base_mm, hole.proud_mm(m)
    if roots is None or roots < SHALLOWEST_MM or above is None or not m.has_ball:
        return
    if m.proud_mm is None and (m.hole_depth_mm is None or m.hole_depth_mm > roots + TAPE_MM):
        return
    limit, poor = hole.proud(m, roots), m.drainage == "poor"
    bound = limit.nearest(above)
    if abs(above - bound) <= TAPE_MM:
        return
    field, right = ("proud_mm", bound) if m.proud_mm is not None else ("hole_depth_mm", roots - bound)
    less = f"{percent(hole.PROUD_SHARE * 100)} less hole than the {mm(roots, 4)} from topmost root to base"
    why = f"{limit} is right: {less}"
    if poor:
        whole = f"{Share(hole.PROUD_SHARE)} of the ball's {mm(m.ball_depth_mm or roots, 4)}"
        why = f"where drainage is poor {limit} is right: {whole}"
    yield rewritten(
        field,
        typed(right, "mm"),
        f"the topmost root stands {mm(above, 3)} above the ground",
        f"{why}, since every ball sinks a little",
        also="ball_depth_mm",
        severity=None if poor else Severity.WARNING,
    )


@rule("planting.levels-add-up", Severity.ERROR, GEOMETRY, applies="plantings that write both")
def levels_add_up(work: T) -> Iterator[Breach]:
    """The depth of the hole and the height above ground make the distance from topmost root to base.

    depth of hole and height above ground are the two parts of one length
    """
    m, roots = work.measures, work.measures.root_to_base_mm
    if m.hole_depth_mm is None or m.proud_mm is None or roots is None or m.hole_depth_mm > roots + TAPE_MM:
        return
    left = max(0.0, roots - m.hole_depth_mm)
    if abs(m.hole_depth_mm + m.proud_mm - roots) > SPADE_MM:
        yield rewritten(
            "proud_mm",
            typed(left, "mm"),
            f"a hole of {mm(m.hole_depth_mm, 4)} does not leave the topmost root {mm(m.proud_mm, 4)} up",
            f"{mm(roots, 4)} - {mm(m.hole_depth_mm, 4)} = {mm(left, 4)}",
            "measure again, and write {}",
            also="hole_depth_mm",
        )


@rule(
    "planting.topmost-root",
    Severity.ERROR,
    by.SPECIFICATION,
    applies="plantings that write the topmost root",
    most=TOPMOST.most,
)
def topmost_root(work: T) -> Iterator[Breach]:
    """The topmost root lies within {most} of the top of the ball.

    the flare is the level that counts, and not the soil in the pot
    """
    root = work.measures.first_root_mm
    if root is not None and not TOPMOST.allows(root):
        yield rewritten(
            "first_root_mm",
            typed(TOPMOST.nearest(root), "mm"),
            f"the topmost root lies {mm(root, 4)} down in the ball",
            f"within the top {TOPMOST.most} is right; a buried trunk stays buried, and its roots go round it",
            "scrape soil off the ball down to the topmost root, measure again, and write {} or less",
        )


@rule("planting.no-soil-over", Severity.ERROR, by.SPECIFICATION, applies="plantings that write soil over the ball")
def no_soil_over(work: T) -> Iterator[Breach]:
    """No soil goes on top of the ball: it ends level with the topmost root or just below it.

    water runs off to the sides of it, and the trunk stands in wet soil
    """
    if over := work.measures.soil_over_mm:
        yield rewritten("soil_over_mm", typed(0, "mm"), f"{mm(over, 3)} of soil on top of the ball")


@rule("planting.no-loose-soil-under", Severity.ERROR, by.NOT_DEEPER, applies="plantings that write loose soil under it")
def no_loose_soil_under(work: T) -> Iterator[Breach]:
    """The ball stands on soil that was not dug.

    dug soil sinks under the weight, and takes the topmost root below the ground
    """
    if loose := work.measures.loose_soil_mm:
        what = f"{mm(loose, 3)} of loose soil under the ball"
        mend = "tread or ram the foot of the hole firm, and write {}"
        yield rewritten("loose_soil_mm", typed(0, "mm"), what, mend=mend)


@rule(
    "planting.ball-size",
    Severity.WARNING,
    by.BALL_TEN,
    by.BALL_CITY,
    applies="dug trees that write ball and calliper",
    times=f"{bare(hole.BALL_PER_CALLIPER)}",
)
def ball_size(work: T) -> Iterator[Breach]:
    """A dug ball is at least {times} times as wide as the trunk.

    a small ball on a thick trunk has left most of its roots in the nursery
    """
    m = work.measures
    if m.stock != "balled" or m.ball_width_mm is None or m.calliper_mm is None:
        return
    least, times = m.calliper_mm * hole.BALL_PER_CALLIPER, hole.BALL_PER_CALLIPER
    if m.ball_width_mm < least - TAPE_MM:
        thin = round_down(m.ball_width_mm / times, 0.1)
        yield rewritten(
            "ball_width_mm",
            typed(least, "mm"),
            f"a ball of {mm(m.ball_width_mm, 4)} on a trunk of {mm(m.calliper_mm, 4)}",
            f"{bare(times)} × {mm(m.calliper_mm, 4)} = {mm(least, 4)}; this ball carries a trunk of {mm(thin, 3)}",
            "ask for a larger ball or a thinner tree, and write what came, such as {}",
            also="calliper_mm",
        )


@rule(
    "planting.ball-depth",
    Severity.WARNING,
    by.BALL_DEPTH,
    applies="dug trees that write width and depth of the ball",
    why=f"{DEPTHS}, and {percent(hole.DEPTH_SHARES[-1][1] * 100)} of a larger one",
)
def ball_depth(work: T) -> Iterator[Breach]:
    """A dug ball is deep enough for its width."""
    m = work.measures
    if m.stock != "balled" or m.ball_width_mm is None or m.ball_depth_mm is None:
        return
    wide, share, least = m.ball_width_mm, hole.ball_depth_share(m.ball_width_mm), hole.ball_depth_mm(m.ball_width_mm)
    if m.ball_depth_mm < least - TAPE_MM:
        yield rewritten(
            "ball_depth_mm",
            typed(round_up(least, 1), "mm"),
            f"a ball {mm(wide, 4)} wide and {mm(m.ball_depth_mm, 4)} deep",
            f"{percent(share * 100)} of {mm(wide, 4)} = {mm(least, 4)}; a flatter one left roots behind",
            "send it back, and write what came instead, such as {}",
            also="ball_width_mm",
        )


@rule(
    "planting.calliper-height",
    Severity.ERROR,
    by.CALLIPER,
    applies="plantings that write where the calliper was measured",
    low=f"{mm(METRIC_AT[0])}",
    high=f"{mm(METRIC_AT[1])}",
    thick=f"{mm(hole.THICK_TRUNK_MM)}",
)
def calliper_height(work: T) -> Iterator[Breach]:
    """Calliper is measured {low} up, and {high} up a trunk over {thick} thick.

    water, ball and time are reckoned from the calliper, and a trunk is thicker at its foot
    """
    m = work.measures
    if m.calliper_mm is None or m.calliper_at_mm is None:
        return
    up = hole.calliper_at_mm(m.calliper_mm, work.crew.units)
    if abs(m.calliper_at_mm - up) > SPADE_MM:
        yield rewritten(
            "calliper_at_mm",
            typed(up, "mm"),
            f"the trunk was measured {mm(m.calliper_at_mm, 4)} up",
            f"a trunk of {mm(m.calliper_mm, 4)} is measured {mm(up, 3)} up; the line is drawn at "
            f"{mm(hole.THICK_TRUNK_MM, 3)}",
            "measure again there, and write {} and the `calliper:` you find",
            also="calliper_mm",
        )


@rule(
    "planting.heavy-ball",
    Severity.WARNING,
    by.LIFT,
    by.BALL_WEIGHT,
    applies="dug trees whose ball is known",
    one=f"{qty(ONE_LIFT_KG, 'kg', 3)}",
    two=f"{qty(TWO_LIFT_KG, 'kg', 3)}",
)
def heavy_ball(work: T) -> Iterator[Breach]:
    """A ball heavier than two people should lift has a trolley or a machine among the tools.

    two people lift 2 × {one} = {two} at the most, close in and at the waist
    """
    mass = hole.weight_kg(work.measures)
    kit = " ".join(each.name for each in (*work.technique.tools, *work.technique.materials)).casefold()
    if mass is None or mass <= TWO_LIFT_KG or any(word in kit for word in HELPS):
        return
    what = f"the ball weighs about {qty(mass, 'kg', 2)}, and nothing on the list carries it"
    yield line_wanted("Tools", "- Ball trolley: with a strap, tyres hard", what=what, why="")


RULES: tuple[Rule[PlantingMeasures], ...] = (
    hole_width,
    hole_depth,
    set_proud,
    levels_add_up,
    topmost_root,
    no_soil_over,
    no_loose_soil_under,
    ball_size,
    ball_depth,
    calliper_height,
    heavy_ball,
    *AFTER,
    *COUNTED,
)
