"""The rules of the trees: training, the years of a frame, and pruning by fruit and season."""

from collections.abc import Iterator

from howto.families.espalier import formulae, frame, pruning
from howto.families.espalier import references as by
from howto.families.espalier.figures_trees import TIE_CHECKS
from howto.families.espalier.frame import T
from howto.families.espalier.measures import EspalierMeasures
from howto.families.espalier.parts import leaves, season_to_write, tiers, to_write
from howto.findings import Severity
from howto.model.family import SHARE, Breach, Limit, Rule, outside, rule, typed
from howto.quantities.amounts import Name, Word, bare, mm, months_named, qty
from howto.seasons import month_run, months_here, months_of, season_months

ARM_DEG = 45
STEEP = Limit(low=ARM_DEG, high=60, unit="°", reference=by.ARMS)
SPRINGS = Limit(low=pruning.BLOSSOM_SPRINGS, unit="", of="springs", reference=by.ESPALIERS)
CHECKS = Limit(low=TIE_CHECKS, unit="", of="times a year", reference=by.TIES)
SHORTEST = Limit(low=pruning.SHORTEST_CUT_MM, unit="mm", reference=by.STONE)
OLD_SPURS = Limit(low=7, unit="years", reference=by.ESPALIERS)
ABOUT = Limit(high=1 / 3, unit=SHARE, of="of a stub", reference=by.STUBS)  # ours: what "about 75 mm (3 in)" leaves open
POME, STONE = pruning.POME_STUBS, pruning.STONE_STUBS
FROM_FRAME, FROM_SPUR = "the stem or an arm", "a spur"


@rule(
    "espalier.arm-angle",
    Severity.WARNING,
    by.ARMS,
    applies="techniques that write how steep new arms are tied",
    limit=STEEP,
)
def arm_angle(work: T) -> Iterator[Breach]:
    """New arms are tied at {limit.least} in their first summer, and laid level after leaf fall.

    an arm laid down while it grows stops growing, and one tied too steep stiffens and snaps when it is bent down;
    {limit.least} is usual, {limit.most} the steepest
    """
    angle = work.measures.arm_angle_deg
    if angle is not None and not STEEP.allows(angle):
        yield to_write("arm_angle_deg", f"{ARM_DEG} deg", f"new arms are tied at {qty(angle, '°', 3)}")


@rule(
    "espalier.tier-a-year",
    Severity.WARNING,
    by.TIER_A_YEAR,
    applies="techniques that write in how many years the frame is full",
)
def tier_a_year(work: T) -> Iterator[Breach]:
    """A frame fills at a tier a year.

    the cut leader makes the next stem and two arms once a year: four tiers take four years
    """
    m = work.measures
    left = formulae.years_to_fill(m.tiers, m.tiers_made)
    if m.filled_in_years is None or m.filled_in_years >= left:
        return
    yield to_write(
        "filled_in_years",
        "1 year" if left == 1 else f"{left} years",
        f"the frame is to be full in {qty(m.filled_in_years, 'years', 3)}",
        f"{tiers(m.tiers)} - {bare(m.tiers_made)} made, one a year = {bare(left)}; the leader makes the next two arms "
        "once a year",
    )


@rule("espalier.blossom-off", Severity.WARNING, by.ESPALIERS, applies="fruit", limit=SPRINGS)
def blossom_off(work: T) -> Iterator[Breach]:
    """Blossom comes off for the first {limit.least} springs.

    a tree that ripens fruit in its first {limit.least} years makes little wood, and the frame stops short
    """
    if frame.fruit_of(work) is not None:
        what = "blossom comes off in {found} of the first {least} springs"
        yield from outside(SPRINGS, work, "blossom_off_springs", what=what, why="")


@rule(
    "espalier.tie-checks",
    Severity.WARNING,
    by.TIES,
    applies="techniques that write how often ties are looked at",
    limit=CHECKS,
)
def tie_checks(work: T) -> Iterator[Breach]:
    """Ties are looked at {limit.least} times a year or more.

    an arm thickens within a season, and a tie that fits in spring cuts through its bark by autumn
    """
    found = "once a year" if work.measures.tie_checks else "never"
    yield from outside(CHECKS, work, "tie_checks", what=f"ties are looked at {found}", why="")


@rule(
    "espalier.prune-months",
    Severity.WARNING,
    by.SUMMER,
    by.SEASONS,
    applies="summer pruning of apples and pears",
    pears=pruning.WINDOWS["pear"].words,
    apples=pruning.WINDOWS["apple"].words,
)
def prune_months(work: T) -> Iterator[Breach]:
    """Trained fruit is summer pruned in its own weeks: in the north pears {pears}, apples {apples}.

    once the end bud is set, and in the south six months on: sooner, they grow again; later, the spurs do not ripen
    """
    fruit, season, side = frame.fruit_of(work), work.technique.season, work.crew.hemisphere
    if work.measures.job != "summer pruning" or fruit is None or fruit == "stone fruit" or not season:
        return
    written, good = months_of(season, side), pruning.summer_months(fruit, side)
    if not written or set(written) & set(good):
        return
    north, here = pruning.WINDOWS[fruit].words, months_named(good, "to")
    yield season_to_write(
        month_run(good),
        f"{Word(fruit)} trees are not summer pruned in {Name(season)}",
        f"their weeks are {north} in the north, which is {here} here: sooner, they grow again; later, the spurs do not "
        "ripen",
    )


@rule(
    "espalier.stone-fruit-season",
    Severity.ERROR,
    by.STONE,
    by.SEASONS,
    applies="plums, cherries, peaches, apricots and almonds",
)
def stone_fruit_season(work: T) -> Iterator[Breach]:
    """Stone fruit is cut only in spring and summer.

    silver leaf and canker get in through cuts made in the wet half of the year
    """
    season, side = work.technique.season, work.crew.hemisphere
    if frame.fruit_of(work) != "stone fruit" or work.measures.job == "wiring" or not season:
        return
    written = months_of(season, side)
    good = season_months("spring", side) + season_months("summer", side)
    if not written or set(written) <= set(good):
        return
    yield season_to_write(
        "spring to summer",
        f"stone fruit is cut in {Name(season)}",
        f"here spring and summer are {months_named(good, 'to')}; silver leaf and canker get in through cuts made in "
        "the wet half of the year",
    )


@rule(
    "espalier.winter-thinning",
    Severity.WARNING,
    by.ESPALIERS,
    applies="winter thinning of apples and pears",
    months=f"{months_named(pruning.THINNING_MONTHS_NORTH, 'to')}",
    limit=OLD_SPURS,
)
def winter_thinning(work: T) -> Iterator[Breach]:
    """Old spurs are thinned in winter, once they are {limit.least} old.

    spurs crowd after {limit.least} or so, and are thinned to one or two fruit buds, {months} in the north
    """
    season, side = work.technique.season, work.crew.hemisphere
    if work.measures.job != "winter thinning" or frame.fruit_of(work) == "stone fruit":
        return
    why = "spurs crowd after {least} or so; thinned sooner they are next year's fruit lost"
    yield from outside(OLD_SPURS, work, "age_years", what="spurs of a tree of {found} are thinned", why=why)
    good = months_here(pruning.THINNING_MONTHS_NORTH, side)
    written = months_of(season, side) if season else None
    if written and not set(written) & set(good):
        why = f"they are thinned while the tree is at rest, {months_named(good, 'to')} here"
        yield season_to_write(month_run(good), f"spurs are thinned in {Name(season)}", why)


@rule(
    "espalier.leaves-left",
    Severity.WARNING,
    by.LEAVES,
    by.STUBS,
    applies="summer pruning of apples and pears that counts leaves",
    main=f"{leaves(pruning.MAIN_LEAVES)}",
    spur=f"{leaves(pruning.SPUR_LEAVES)}",
    main_mm=f"{mm(POME.main_mm)}",
    spur_mm=f"{mm(POME.spur_mm)}",
)
def leaves_left(work: T) -> Iterator[Breach]:
    """A shoot from the frame keeps {main}, and one from a spur {spur}, above the ring at its foot.

    {main} on a shoot from the frame (about {main_mm}), {spur} on a shoot from a spur (about {spur_mm})
    """
    m = work.measures
    if frame.fruit_of(work) == "stone fruit":
        return
    for field, written, right, place, about in (
        ("main_leaves", m.main_leaves, pruning.MAIN_LEAVES, FROM_FRAME, POME.main_mm),
        ("spur_leaves", m.spur_leaves, pruning.SPUR_LEAVES, FROM_SPUR, POME.spur_mm),
    ):
        if written is None or written == right:
            continue
        fewer = "fewer, and the buds that should fruit grow out"
        more = fewer if written < right else "more, and the spur stands too far out"
        why = f"{bare(right)} above the ring of small leaves, about {mm(about, 3)}; {more}"
        yield to_write(field, str(right), f"a shoot from {Word(place)} keeps {leaves(written)}", why)


@rule(
    "espalier.stubs",
    Severity.WARNING,
    by.STUBS,
    by.STONE,
    applies="techniques that write how long a stub is left",
    main=f"{mm(POME.main_mm)}",
    spur=f"{mm(POME.spur_mm)}",
    stone=f"{mm(STONE.main_mm)}",
    stone_spur=f"{mm(STONE.spur_mm)}",
)
def stubs(work: T) -> Iterator[Breach]:
    """Stubs are as long as the fruit asks: {main} and {spur}, or on stone fruit {stone} and {stone_spur}.

    a shoot is cut to {main} and one from a spur to {spur} on apple and pear, to {stone} and {stone_spur} on stone fruit
    """
    m = work.measures
    right = pruning.stubs_of(frame.fruit_of(work))
    fruit = Word("on apple and pear" if right.counts_leaves else "on stone fruit")
    for field, written, bound, place in (
        ("main_stub_mm", m.main_stub_mm, right.main_mm, FROM_FRAME),
        ("spur_stub_mm", m.spur_stub_mm, right.spur_mm, FROM_SPUR),
    ):
        if written is None or ABOUT.allows(abs(written - bound) / bound):
            continue
        what = f"a shoot from {Word(place)} is cut to {mm(written, 3)}"
        why = f"{fruit} a shoot from {Word(place)} is cut to about {mm(bound, 3)}"
        yield to_write(field, typed(bound, "mm"), what, why, reference=right.references[-1])


@rule(
    "espalier.short-shoots",
    Severity.WARNING,
    by.LEAVES,
    by.STONE,
    applies="techniques that write the shortest shoot to cut",
    limit=SHORTEST,
)
def shortest_cut(work: T) -> Iterator[Breach]:
    """Shoots under {limit.least} are left.

    a shoot that stops short of {limit.least} mostly ends in fruit buds
    """
    yield from outside(SHORTEST, work, "shortest_cut_mm", what="shoots from {found} up are cut", why="")


TREE_RULES: tuple[Rule[EspalierMeasures], ...] = (
    arm_angle, tier_a_year, blossom_off, tie_checks, prune_months, stone_fruit_season, winter_thinning, leaves_left,
    stubs, shortest_cut,
)  # fmt: skip
