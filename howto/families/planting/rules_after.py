"""The rules of what follows the hole: stakes, mulch, feed and water."""

from collections.abc import Iterator

from howto.families.planting import hole, watering_in
from howto.families.planting import references as by
from howto.families.planting.measures import PlantingMeasures
from howto.families.planting.parts import rewritten
from howto.findings import Severity
from howto.model.family import Breach, Limit, Rule, outside, rule, typed
from howto.model.work import Work
from howto.quantities import round_down, round_up
from howto.quantities.amounts import Count, Range, Share, Word, mm, qty

T = Work[PlantingMeasures]

STAKED = Limit(high=12, unit="months", reference=by.ONE_SEASON)
LONGEST = Limit(high=2, unit="years", reference=by.TWO_YEARS)
MULCH = Limit(low=50, high=100, unit="mm", reference=by.MULCH_TREES)
CLEAR = Limit(low=hole.BARE_MM[0], unit="mm", reference=by.MULCH_TREES)
CIRCLE = Limit(low=hole.RING_MM, unit="mm", reference=by.RING)
SLACK_L = 0.5  # water on the day is poured to a litre


@rule(
    "planting.stakes-off",
    Severity.ERROR,
    by.ONE_SEASON,
    by.TWO_YEARS,
    applies="plantings that write how long the stakes stay",
    longest=LONGEST.most,
)
def stakes_off(work: T) -> Iterator[Breach]:
    """Stakes come off after one growing season, and never stay past {longest}.

    a stake left on saws through the bark it was to save
    """
    stay = work.measures.staked_months
    if stay is None or work.measures.stakes == 0 or STAKED.allows(stay):
        return
    bearable = LONGEST.allows(stay / 12)
    cut = "" if bearable else f", and over {LONGEST.most} it is cut by its tie"
    yield rewritten(
        "staked_months",
        typed(STAKED.nearest(stay), STAKED.unit),
        f"stakes stay for {qty(stay, 'months', 3)}",
        f"one growing season, {STAKED.most} at most: a trunk that may not move does not thicken{cut}",
        "write {} or less",
        severity=Severity.WARNING if bearable else None,
    )


@rule(
    "planting.stake-only-if-needed", Severity.WARNING, by.ONE_SEASON, applies="plantings that say the tree stands alone"
)
def stake_only_if_needed(work: T) -> Iterator[Breach]:
    """A tree that stands alone is not staked.

    most balls and containers stand by their own weight, and a trunk that sways is a trunk that thickens
    """
    m = work.measures
    if m.stands_alone and m.stakes:
        what = f"{Count(m.stakes, 'stake', 'stakes')} at a tree that stands alone"
        yield rewritten("stakes", "0", what, also="stands_alone")


@rule(
    "planting.tie-low",
    Severity.ADVICE,
    by.LOW_STAKE,
    applies="plantings that write the tie and the height",
    low=f"{Share(hole.LOW_TIE)}",
)
def tie_low(work: T) -> Iterator[Breach]:
    """A stake holds a tree low, at about {low} of its height.

    tied low, the head moves and the roots are held
    """
    m = work.measures
    if m.tie_height_mm is None or m.height_mm is None:
        return
    low = m.height_mm * hole.LOW_TIE
    if m.tie_height_mm > low + 1e-6:
        what = f"the tie stands {mm(m.tie_height_mm, 4)} up"
        why = f"{Share(hole.LOW_TIE)} of {mm(m.height_mm, 4)} is {mm(low, 4)}"
        text = typed(round_down(low, 0.1), "mm")
        yield rewritten("tie_height_mm", text, what, why, "write {} or less", also="height_mm")


@rule("planting.no-feed-in-hole", Severity.WARNING, by.NO_FEED, applies="plantings that put feed in the hole")
def no_feed_in_hole(work: T) -> Iterator[Breach]:
    """No fertiliser goes in the planting hole.

    salt burns roots that were cut last week, and a tree has no use for it until it has rooted
    """
    if work.measures.feed_in_hole:
        yield rewritten("feed_in_hole", "no", "fertiliser goes in the hole")


@rule(
    "planting.mulch-depth",
    Severity.ERROR,
    by.MULCH_TREES,
    applies="trees and shrubs that write the depth of their mulch",
    right=f"{MULCH}",
)
def mulch_depth(work: T) -> Iterator[Breach]:
    """Mulch round a new tree lies {right} deep.

    {right} is right; deeper is a problem, and less lets grass through
    """
    if work.measures.work != "bed":
        what = "mulch {found} deep round a new plant"
        yield from outside(MULCH, work, "mulch_depth_mm", what=what, why="")


@rule(
    "planting.mulch-clear",
    Severity.ERROR,
    by.MULCH_TREES,
    by.MULCH_CIRCLE,
    applies="plantings that write the bare ring",
    least=CLEAR.least,
    ring=f"{Range(*hole.BARE_MM, 'mm')}",
)
def mulch_clear(work: T) -> Iterator[Breach]:
    """Mulch stops at least {least} short of the trunk, so that the flare stays in the air.

    bark kept wet rots; a bare ring of {ring} lets it dry
    """
    what = "mulch {found} from the trunk" if work.measures.trunk_clear_mm else "mulch against the trunk"
    yield from outside(CLEAR, work, "trunk_clear_mm", what=what, why="")


@rule(
    "planting.mulch-ring",
    Severity.WARNING,
    by.RING,
    by.MULCH_CIRCLE,
    applies="trees that write the width of their ring",
    least=CIRCLE.least,
)
def mulch_ring(work: T) -> Iterator[Breach]:
    """The ring round a new tree, mulched and free of grass, is at least {least} wide.

    {least} is kept free of grass, which drinks first and calls the mower to the trunk
    """
    if work.measures.work == "tree":
        yield from outside(CIRCLE, work, "mulch_width_mm", what="a ring {found} wide", why="")


@rule(
    "planting.water-on-the-day",
    Severity.WARNING,
    by.FIRST_WATER,
    applies="trees that write the water on the day",
    right=f"{watering_in.on_the_day().of('L')}",
)
def water_on_the_day(work: T) -> Iterator[Breach]:
    """A new tree gets {right} on the day.

    {right} settles the soil round a ball and soaks it: water closes the gaps that a boot leaves
    """
    m, span = work.measures, watering_in.on_the_day()
    if m.work != "tree" or m.first_water_l is None:
        return
    if not span.low - SLACK_L <= m.first_water_l <= span.high + SLACK_L:
        text = typed(round(span.low if m.first_water_l < span.low else span.high), "L")
        what = f"{qty(m.first_water_l, 'L', 3)} on the day"
        yield rewritten("first_water_l", text, what, mend="write {}, slowly, in two fillings")


@rule(
    "planting.water-each",
    Severity.WARNING,
    by.WATER_COOL,
    by.WATER_WARM,
    by.WATER_BIG,
    by.WATER_DRY,
    applies="plantings that write calliper or pot, and the water each time",
    cool=f"{watering_in.COOL_GAL_PER_IN.of('US gal/in')}",
    warm=f"{watering_in.WARM_GAL_PER_IN.of('US gal/in')}",
    pot=f"{watering_in.POT_SHARE.times(100).of('%')}",
    week=f"{qty(watering_in.DRY_WEEK_GAL_PER_IN, 'US gal/in')}",
)
def water_each(work: T) -> Iterator[Breach]:
    """Each time, a new plant gets what its trunk or its pot calls for.

    {cool} of calliper where summers are cool, {warm} where they are warm; a shrub {pot} of its pot; advice runs
    to {week} a week, so feel the soil
    """
    m, span = work.measures, watering_in.each_time(work)
    if m.water_each_l is None or span is None:
        return
    if span.low * (1 - 1e-9) <= m.water_each_l <= span.high * (1 + 1e-9):
        return
    step = 0.1 if span.high - span.low > 0.2 else 0.0001
    bound = round_up(span.low, step) if m.water_each_l < span.low else round_down(span.high, step)
    trunk = m.calliper_mm is not None
    where = f"{Word(watering_in.summers(work))} summers: " if trunk else ""
    yield rewritten(
        "water_each_l",
        typed(bound, "L"),
        f"{qty(m.water_each_l, 'L', 3)} each time",
        f"{where}{watering_in.reckoned(m, span)}; less leaves the ball dry, more drowns it",
        also="calliper_mm" if trunk else "pot_l",
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
