"""The rules of the planting hole and the ball; rules_after.py and rules_counts.py hold the others."""

from collections.abc import Iterator
from typing import Final

from howto.families.planting import formulae, hole
from howto.families.planting import references as by
from howto.families.planting.measures import PlantingMeasures
from howto.families.planting.rules_after import AFTER
from howto.families.planting.rules_counts import COUNTED
from howto.findings import Severity
from howto.model.family import Breach, Edit, Limit, Rule, line_wanted, rule
from howto.model.reference import GEOMETRY
from howto.model.work import Work
from howto.quantities import round_down, round_up
from howto.quantities import show_number as num
from howto.quantities.amounts import bare, mm, percent, qty

T = Work[PlantingMeasures]

TAPE_MM: Final = 1.0  # a tape in a hole is read to a millimetre
SHALLOWEST_MM: Final = 10.0  # roots that reach less far down than this are a slip of the tape, and set no hole
SPADE_MM: Final = 5.0  # a hole and a ball are measured to this
TOPMOST = Limit(high=50, unit="mm", of="below the top of the ball", reference=by.SPECIFICATION)
TWO_LIFT_KG: Final = 46.0  # two people at 23 kg each, see references.LIFT
HELPS: Final = (
    "trolley", "barrow", "hand truck", "sack truck", "machine", "loader", "digger", "crane", "hoist", "winch",
    "tractor", "dolly", "skid", "sling", "tarpaulin",
)  # fmt: skip


@rule(
    "planting.hole-width",
    Severity.ERROR,
    by.SPECIFICATION,
    by.SAUCER,
    applies="plantings that write the hole and the ball",
)
def hole_width(work: T) -> Iterator[Breach]:
    """The hole is at least 1.5 times as wide as the ball.

    New roots run into soil that was loosened, and hardly into a smooth wall. As wide as there is room for.
    """
    m, ball = work.measures, hole.ball_mm(work.measures)
    if m.hole_width_mm is None or ball is None:
        return
    least, wide = formulae.hole_widths_mm(ball)
    if m.hole_width_mm >= least - 1e-6:
        return
    text = f"{num(round_up(least, 1), 6)} mm"
    yield Breach(
        field="measures.hole_width_mm",
        also="measures.ball_width_mm" if m.ball_width_mm is not None else "measures.calliper_mm",
        what=f"the hole is {mm(m.hole_width_mm, 4)} wide",
        why=f"1.5 × {mm(ball, 4)} = {mm(least, 4)} at least; three times, {mm(wide, 4)}, is better",
        mend=f"write `hole width: {text}` or more",
        edit=Edit(key="hole width", text=text),
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

    More young trees die of being planted too deep than of anything else in the hole.
    """
    m = work.measures
    roots, advised = m.root_to_base_mm, hole.advised_depth_mm(m)
    if m.hole_depth_mm is None or roots is None or advised is None or m.hole_depth_mm <= roots + TAPE_MM:
        return
    if roots < SHALLOWEST_MM:
        return
    text = f"{num(advised, 6)} mm"
    yield Breach(
        field="measures.hole_depth_mm",
        also="measures.ball_depth_mm",
        what=f"the hole is {mm(m.hole_depth_mm, 4)} deep, deeper than the roots",
        why=f"from the topmost root to the base it is {mm(roots, 4)}; soil filled in under a ball sinks, and the "
        "trunk with it",
        mend=f"write `hole depth: {text}`",
        edit=Edit(key="hole depth", text=text),
    )


@rule(
    "planting.set-proud",
    Severity.ERROR,
    by.SPECIFICATION,
    by.PROPER,
    applies="balls and containers that write the depth of the hole, or how proud they stand",
)
def set_proud(work: T) -> Iterator[Breach]:
    """A ball is set so that its topmost root stands a little above the ground, and higher on poor drainage.

    A hole 10 % shallower than the roots, 25 to 50 mm; where water stands, 10 % of the ball or more.
    """
    m = work.measures
    roots, above = m.root_to_base_mm, hole.proud_mm(m)
    if roots is None or roots < SHALLOWEST_MM or above is None or not m.has_ball:
        return
    if m.proud_mm is None and (m.hole_depth_mm is None or m.hole_depth_mm > roots + TAPE_MM):
        return
    low, high = hole.proud_range(m, roots)
    if above >= low - TAPE_MM and (high is None or above <= high + TAPE_MM):
        return
    bound = low if above < low or high is None else high
    key = "proud" if m.proud_mm is not None else "hole depth"
    text = f"{num(bound if key == 'proud' else roots - bound, 6)} mm"
    said = f"at least {bare(low)}" if high is None else f"{bare(low)} to {bare(high)}"
    why = f"{said} mm is right: 10 % less hole than the {mm(roots, 4)} from topmost root to base"
    if high is None:
        why = f"where drainage is poor {said} mm is right: a tenth of the ball's {mm(m.ball_depth_mm or roots, 4)}"
    yield Breach(
        field=f"measures.{key.replace(' ', '_')}_mm",
        also="measures.ball_depth_mm",
        what=f"the topmost root stands {mm(above, 3)} above the ground",
        why=f"{why}, since every ball sinks a little",
        mend=f"write `{key}: {text}`",
        edit=Edit(key=key, text=text),
        severity=None if m.drainage == "poor" else Severity.WARNING,
    )


@rule("planting.levels-add-up", Severity.ERROR, GEOMETRY, applies="plantings that write both")
def levels_add_up(work: T) -> Iterator[Breach]:
    """The depth of the hole and the height above ground make the distance from topmost root to base.

    Depth of hole and height above ground are the two parts of one length.
    """
    m, roots = work.measures, work.measures.root_to_base_mm
    if m.hole_depth_mm is None or m.proud_mm is None or roots is None or m.hole_depth_mm > roots + TAPE_MM:
        return
    if abs(m.hole_depth_mm + m.proud_mm - roots) <= SPADE_MM:
        return
    text = f"{num(max(0.0, roots - m.hole_depth_mm), 6)} mm"
    yield Breach(
        field="measures.proud_mm",
        also="measures.hole_depth_mm",
        what=f"a hole of {mm(m.hole_depth_mm, 4)} does not leave the topmost root {mm(m.proud_mm, 4)} up",
        why=f"{bare(roots, 4)} - {bare(m.hole_depth_mm, 4)} = {mm(max(0.0, roots - m.hole_depth_mm), 4)}",
        mend=f"measure again, and write `proud: {text}`",
        edit=Edit(key="proud", text=text),
    )


@rule("planting.topmost-root", Severity.ERROR, by.SPECIFICATION, applies="plantings that write the topmost root")
def topmost_root(work: T) -> Iterator[Breach]:
    """The topmost root lies within 50 mm of the top of the ball.

    The flare is the level that counts, and not the soil in the pot.
    """
    m = work.measures
    if m.first_root_mm is None or TOPMOST.allows(m.first_root_mm):
        return
    yield Breach(
        field="measures.first_root_mm",
        what=f"the topmost root lies {mm(m.first_root_mm, 4)} down in the ball",
        why="within the top 50 mm is right; a trunk buried in its pot stays buried, and its roots go round it",
        mend="scrape soil off the ball down to the topmost root, measure again, and write `first root: 50 mm` or less",
        edit=Edit(key="first root", text="50 mm"),
    )


@rule("planting.no-soil-over", Severity.ERROR, by.SPECIFICATION, applies="plantings that write soil over the ball")
def no_soil_over(work: T) -> Iterator[Breach]:
    """No soil goes on top of the ball.

    Soil ends level with the topmost root or just below it.
    """
    m = work.measures
    if not m.soil_over_mm:
        return
    yield Breach(
        field="measures.soil_over_mm",
        what=f"{mm(m.soil_over_mm, 3)} of soil on top of the ball",
        why="water runs off to the sides of it, and the trunk stands in wet soil",
        mend="write `soil over: 0 mm`",
        edit=Edit(key="soil over", text="0 mm"),
    )


@rule(
    "planting.no-loose-soil-under",
    Severity.ERROR,
    by.NOT_DEEPER,
    applies="plantings that write loose soil under the ball",
)
def no_loose_soil_under(work: T) -> Iterator[Breach]:
    """The ball stands on soil that was not dug.

    Only undisturbed soil carries a ball for years.
    """
    m = work.measures
    if not m.loose_soil_mm:
        return
    yield Breach(
        field="measures.loose_soil_mm",
        what=f"{mm(m.loose_soil_mm, 3)} of loose soil under the ball",
        why="dug soil sinks under the weight, and takes the topmost root below the ground",
        mend="tread or ram the foot of the hole firm, and write `loose soil: 0 mm`",
        edit=Edit(key="loose soil", text="0 mm"),
    )


@rule(
    "planting.ball-size", Severity.WARNING, by.BALL_TEN, by.BALL_CITY, applies="dug trees that write ball and calliper"
)
def ball_size(work: T) -> Iterator[Breach]:
    """A dug ball is at least ten times as wide as the trunk.

    A small ball on a thick trunk has left most of its roots in the nursery.
    """
    m = work.measures
    if m.stock != "balled" or m.ball_width_mm is None or m.calliper_mm is None:
        return
    least = formulae.ball_width_mm(m.calliper_mm)
    if m.ball_width_mm >= least - TAPE_MM:
        return
    thin = round_down(m.ball_width_mm / formulae.BALL_PER_CALLIPER, 0.1)
    text = f"{num(least, 6)} mm"
    yield Breach(
        field="measures.ball_width_mm",
        also="measures.calliper_mm",
        what=f"a ball of {mm(m.ball_width_mm, 4)} on a trunk of {mm(m.calliper_mm, 4)}",
        why=f"10 × {bare(m.calliper_mm, 4)} = {mm(least, 4)}; this ball carries a trunk of {mm(thin, 3)}",
        mend=f"ask for a larger ball or a thinner tree, and write what came, such as `ball width: {text}`",
        edit=Edit(key="ball width", text=text),
    )


@rule(
    "planting.ball-depth", Severity.WARNING, by.BALL_DEPTH, applies="dug trees that write width and depth of the ball"
)
def ball_depth(work: T) -> Iterator[Breach]:
    """A dug ball is deep enough for its width: 75 % of a small one, 60 % of a large one.

    Under 500 mm wide 75 %, to 760 mm 66 %, above it 60 %.
    """
    m = work.measures
    if m.stock != "balled" or m.ball_width_mm is None or m.ball_depth_mm is None:
        return
    share, least = formulae.ball_depth_share(m.ball_width_mm), formulae.ball_depth_mm(m.ball_width_mm)
    if m.ball_depth_mm >= least - TAPE_MM:
        return
    text = f"{num(round_up(least, 1), 6)} mm"
    yield Breach(
        field="measures.ball_depth_mm",
        also="measures.ball_width_mm",
        what=f"a ball {mm(m.ball_width_mm, 4)} wide and {mm(m.ball_depth_mm, 4)} deep",
        why=f"{percent(share * 100)} of {bare(m.ball_width_mm, 4)} = {mm(least, 4)}; a flatter one left roots behind",
        mend=f"send it back, and write what came instead, such as `ball depth: {text}`",
        edit=Edit(key="ball depth", text=text),
    )


@rule(
    "planting.calliper-height",
    Severity.ERROR,
    by.CALLIPER,
    applies="plantings that write where the calliper was measured",
)
def calliper_height(work: T) -> Iterator[Breach]:
    """Calliper is measured 150 mm up, and 300 mm up a trunk over 100 mm thick.

    Water, ball and time are reckoned from the calliper, and a trunk is thicker at its foot.
    """
    m = work.measures
    if m.calliper_mm is None or m.calliper_at_mm is None:
        return
    up = formulae.calliper_height_mm(m.calliper_mm)
    if abs(m.calliper_at_mm - up) <= SPADE_MM:
        return
    text = f"{num(up)} mm"
    yield Breach(
        field="measures.calliper_at_mm",
        also="measures.calliper_mm",
        what=f"the trunk was measured {mm(m.calliper_at_mm, 4)} up",
        why=f"a trunk of {mm(m.calliper_mm, 4)} is measured {mm(up, 3)} up; the line is drawn at 4 in (102 mm)",
        mend=f"measure again there, and write `calliper at: {text}` and the `calliper:` you find",
        edit=Edit(key="calliper at", text=text),
    )


@rule("planting.heavy-ball", Severity.WARNING, by.LIFT, by.BALL_WEIGHT, applies="dug trees whose ball is known")
def heavy_ball(work: T) -> Iterator[Breach]:
    """A ball heavier than two people should lift has a trolley or a machine among the tools.

    Root balls run from 147 kg at 610 mm wide to 520 kg at 915 mm.
    """
    mass = hole.weight_kg(work.measures)
    kit = " ".join(each.name for each in (*work.technique.tools, *work.technique.materials)).casefold()
    if mass is None or mass <= TWO_LIFT_KG or any(word in kit for word in HELPS):
        return
    line = "- Ball trolley: with a strap, tyres hard"
    yield line_wanted(
        "Tools",
        line,
        what=f"the ball weighs about {qty(mass, 'kg', 2)}, and nothing on the list carries it",
        why=f"two people lift 2 × 23 = {qty(TWO_LIFT_KG, 'kg', 3)} at the most, close in and at the waist",
    )


HOLE: tuple[Rule[PlantingMeasures], ...] = (
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
)
RULES: tuple[Rule[PlantingMeasures], ...] = (*HOLE, *AFTER, *COUNTED)
