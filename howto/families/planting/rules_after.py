"""The rules of what follows the hole: stakes, mulch, feed and water."""

from collections.abc import Iterator

from howto.families.planting import formulae, hole
from howto.families.planting.figures_water import each_time, summers
from howto.families.planting.measures import PlantingMeasures
from howto.families.planting.references import (
    FIRST_WATER,
    LOW_STAKE,
    MULCH_CIRCLE,
    MULCH_TREES,
    NO_FEED,
    ONE_SEASON,
    RING,
    TWO_YEARS,
    WATER_BIG,
    WATER_COOL,
    WATER_DRY,
    WATER_WARM,
)
from howto.families.planting.watering_in import on_the_day
from howto.findings import Severity
from howto.model.family import Breach, Edit, Limit, Rule, rule
from howto.model.work import Work
from howto.quantities import round_down, round_up
from howto.quantities import show_number as num
from howto.quantities.amounts import bare, mm, qty

T = Work[PlantingMeasures]

STAKED = Limit(high=12, unit="months", reference=ONE_SEASON)
LONGEST = Limit(high=24, unit="months", reference=TWO_YEARS)
MULCH = Limit(low=50, high=100, unit="mm", reference=MULCH_TREES)
CLEAR = Limit(low=25, unit="mm", reference=MULCH_TREES)
CIRCLE = Limit(low=hole.RING_MM, unit="mm", reference=RING)


@rule(
    "planting.stakes-off",
    Severity.ERROR,
    ONE_SEASON,
    TWO_YEARS,
    applies="plantings that write how long the stakes stay",
)
def stakes_off(work: T) -> Iterator[Breach]:
    """Stakes come off after one growing season, and never stay past two years.

    A stake left on saws through the bark it was to save.
    """
    m = work.measures
    if m.staked_months is None or m.stakes == 0 or STAKED.allows(m.staked_months):
        return
    longest = "" if LONGEST.allows(m.staked_months) else ", and over two years it is cut by its tie"
    yield Breach(
        field="measures.staked_months",
        what=f"stakes stay for {bare(m.staked_months)} months",
        why=f"one growing season, 12 months at most: a trunk that may not move does not thicken{longest}",
        mend="write `staked: 12 months` or less",
        edit=Edit(key="staked", text="12 months"),
        severity=Severity.WARNING if LONGEST.allows(m.staked_months) else None,
    )


@rule("planting.stake-only-if-needed", Severity.WARNING, ONE_SEASON, applies="plantings that say the tree stands alone")
def stake_only_if_needed(work: T) -> Iterator[Breach]:
    """A tree that stands alone is not staked.

    Most balls and containers stand by their own weight.
    """
    m = work.measures
    if not m.stands_alone or not m.stakes:
        return
    yield Breach(
        field="measures.stakes",
        also="measures.stands_alone",
        what=f"{m.stakes} stake{'s' if m.stakes > 1 else ''} at a tree that stands alone",
        why="stakes only where a tree cannot stand: a trunk that sways is a trunk that thickens",
        mend="write `stakes: 0`",
        edit=Edit(key="stakes", text="0"),
    )


@rule("planting.tie-low", Severity.ADVICE, LOW_STAKE, applies="plantings that write the tie and the height")
def tie_low(work: T) -> Iterator[Breach]:
    """A stake holds a tree low, at about a third of its height.

    Tied low, the head moves and the roots are held.
    """
    m = work.measures
    if m.tie_height_mm is None or m.height_mm is None:
        return
    low = formulae.tie_height_mm(m.height_mm)
    if m.tie_height_mm <= low + 1e-6:
        return
    text = f"{num(round_down(low, 0.1), 6)} mm"
    yield Breach(
        field="measures.tie_height_mm",
        also="measures.height_mm",
        what=f"the tie stands {mm(m.tie_height_mm, 4)} up",
        why=f"{bare(m.height_mm, 4)} / 3 = {mm(low, 4)}",
        mend=f"write `tie height: {text}` or less",
        edit=Edit(key="tie height", text=text),
    )


@rule("planting.no-feed-in-hole", Severity.WARNING, NO_FEED, applies="plantings that put feed in the hole")
def no_feed_in_hole(work: T) -> Iterator[Breach]:
    """No fertiliser goes in the planting hole.

    Salt draws water out of roots that were cut last week.
    """
    if not work.measures.feed_in_hole:
        return
    yield Breach(
        field="measures.feed_in_hole",
        what="fertiliser goes in the hole",
        why="it burns cut roots, and a tree has no use for it until it has rooted",
        mend="write `feed in hole: no`",
        edit=Edit(key="feed in hole", text="no"),
    )


@rule(
    "planting.mulch-depth", Severity.ERROR, MULCH_TREES, applies="trees and shrubs that write the depth of their mulch"
)
def mulch_depth(work: T) -> Iterator[Breach]:
    """Mulch round a new tree lies 50 to 100 mm deep.

    50 to 100 mm; over 100 mm is a problem.
    """
    m = work.measures
    if m.work == "bed" or m.mulch_depth_mm is None or MULCH.allows(m.mulch_depth_mm):
        return
    near = "75 mm" if m.mulch_depth_mm > 100 else "50 mm"
    yield Breach(
        field="measures.mulch_depth_mm",
        what=f"mulch {mm(m.mulch_depth_mm, 3)} deep round a new plant",
        why="50 to 100 mm is right; deeper is a problem, and less lets grass through",
        mend=f"write `mulch depth: {near}`",
        edit=Edit(key="mulch depth", text=near),
    )


@rule("planting.mulch-clear", Severity.ERROR, MULCH_TREES, MULCH_CIRCLE, applies="plantings that write the bare ring")
def mulch_clear(work: T) -> Iterator[Breach]:
    """Mulch stops at least 25 mm short of the trunk.

    The flare stays in the air.
    """
    m = work.measures
    if m.trunk_clear_mm is None or CLEAR.allows(m.trunk_clear_mm):
        return
    yield Breach(
        field="measures.trunk_clear_mm",
        what=f"mulch {mm(m.trunk_clear_mm, 3)} from the trunk" if m.trunk_clear_mm else "mulch against the trunk",
        why="bark kept wet rots; a bare ring of 25 to 50 mm lets it dry",
        mend="write `trunk clear: 50 mm`",
        edit=Edit(key="trunk clear", text="50 mm"),
    )


@rule("planting.mulch-ring", Severity.WARNING, RING, MULCH_CIRCLE, applies="trees that write the width of their ring")
def mulch_ring(work: T) -> Iterator[Breach]:
    """The ring round a new tree, mulched and free of grass, is at least a metre wide.

    Grass up to the trunk costs a young tree its growth, and the mower its bark.
    """
    m = work.measures
    if m.work != "tree" or m.mulch_width_mm is None or CIRCLE.allows(m.mulch_width_mm):
        return
    yield Breach(
        field="measures.mulch_width_mm",
        what=f"a ring {mm(m.mulch_width_mm, 4)} wide",
        why="1 m is kept free of grass, which drinks first and calls the mower to the trunk",
        mend="write `mulch width: 1 m` or more",
        edit=Edit(key="mulch width", text="1 m"),
    )


@rule("planting.water-on-the-day", Severity.WARNING, FIRST_WATER, applies="trees that write the water on the day")
def water_on_the_day(work: T) -> Iterator[Breach]:
    """A new tree gets 38 to 76 L on the day.

    Water closes the gaps that a boot leaves.
    """
    m, span = work.measures, on_the_day()
    if m.work != "tree" or m.first_water_l is None:
        return
    if span.low - 0.5 <= m.first_water_l <= span.high + 0.5:
        return
    text = "38 L" if m.first_water_l < span.low else "76 L"
    yield Breach(
        field="measures.first_water_l",
        what=f"{qty(m.first_water_l, 'L', 3)} on the day",
        why=f"10 to 20 US gal, {bare(span.low)} to {qty(span.high, 'L', 3)}, settle the soil round a ball and soak it",
        mend=f"write `first water: {text}`, slowly, in two fillings",
        edit=Edit(key="first water", text=text),
    )


@rule(
    "planting.water-each",
    Severity.WARNING,
    WATER_COOL,
    WATER_WARM,
    WATER_BIG,
    WATER_DRY,
    applies="plantings that write calliper or pot, and the water each time",
)
def water_each(work: T) -> Iterator[Breach]:
    """Each time, a new plant gets what its trunk or its pot calls for.

    1 to 1.5 US gal an inch of calliper where summers are cool, 2 to 3 where they are warm; a shrub 25 to 30 %
    of its pot. Advice runs to 10 gal a week, so feel the soil.
    """
    m, span = work.measures, each_time(work)
    if m.water_each_l is None or span is None:
        return
    if span.low * (1 - 1e-9) <= m.water_each_l <= span.high * (1 + 1e-9):
        return
    step = 0.1 if span.high - span.low > 0.2 else 0.0001
    bound = round_up(span.low, step) if m.water_each_l < span.low else round_down(span.high, step)
    text = f"{num(bound, 6)} L"
    by = f"25 to 30 % of its {qty(m.pot_l or 0, 'L', 3)} pot"
    if m.calliper_mm is not None:
        rate = span.times(10 / m.calliper_mm)
        by = f"{summers(work)} summers: {qty(m.calliper_mm / 10, 'cm', 3)} × {bare(rate.low)} to {qty(rate.high, 'L', 3)} a cm"
    yield Breach(
        field="measures.water_each_l",
        also="measures.calliper_mm" if m.calliper_mm is not None else "measures.pot_l",
        what=f"{qty(m.water_each_l, 'L', 3)} each time",
        why=f"{by} = {bare(span.low)} to {qty(span.high, 'L', 3)}; less leaves the ball dry, more drowns it",
        mend=f"write `water each: {text}`",
        edit=Edit(key="water each", text=text),
    )


AFTER: tuple[Rule[PlantingMeasures], ...] = (
    stakes_off,
    stake_only_if_needed,
    tie_low,
    no_feed_in_hole,
    mulch_depth,
    mulch_clear,
    mulch_ring,
    water_on_the_day,
    water_each,
)
