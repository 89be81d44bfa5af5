"""The rules of the trees: training, the years of a frame, and pruning by fruit and season."""

from collections.abc import Iterator
from dataclasses import replace

from howto.families.espalier import frame, pruning
from howto.families.espalier import references as by
from howto.families.espalier.frame import T
from howto.families.espalier.measures import EspalierMeasures
from howto.findings import Severity
from howto.model.family import Breach, Edit, Limit, Rule, rule
from howto.quantities.amounts import bare, mm, months_named
from howto.seasons import month_here, month_run, months_of, season_months

STEEP = Limit(low=45, high=60, unit="degrees", reference=by.ARMS)
SPRINGS = Limit(low=3, unit="", of="springs", reference=by.ESPALIERS)
CHECKS = Limit(low=2, unit="times", of="a year", reference=by.TIES)
SHORTEST = Limit(low=200, unit="mm", reference=by.STONE)
OLD_SPURS = Limit(low=7, unit="years", reference=by.ESPALIERS)
INCH_MM = 25.4


@rule("espalier.arm-angle", Severity.WARNING, by.ARMS, applies="techniques that write how steep new arms are tied")
def arm_angle(work: T) -> Iterator[Breach]:
    """New arms are tied at 45 degrees in their first summer, and laid level after leaf fall.

    45 degrees in the first summer (one grower: 60), then level once the leaves are down.
    """
    angle = work.measures.arm_angle_deg
    if angle is None or STEEP.allows(angle):
        return
    why = (
        "an arm laid down while it grows stops growing; at 45 degrees it fills the wall, and bends down in autumn"
        if angle < 45
        else "an arm tied too steep stiffens and snaps when it is bent down; 45 degrees is usual, 60 the steepest"
    )
    yield _one("arm angle", "arm_angle_deg", f"new arms are tied at {bare(angle)} degrees", "45 deg", why)


@rule(
    "espalier.tier-a-year",
    Severity.WARNING,
    by.TIER_A_YEAR,
    applies="techniques that write in how many years the frame is full",
)
def tier_a_year(work: T) -> Iterator[Breach]:
    """A frame fills at a tier a year.

    The cut leader makes the next stem and two arms once a year: four tiers take four years.
    """
    m = work.measures
    left = max(0, m.tiers - m.tiers_made)
    if m.filled_in_years is None or m.filled_in_years >= left:
        return
    years = f"{left} year{'' if left == 1 else 's'}"
    yield _one(
        "filled in",
        "filled_in_years",
        f"the frame is to be full in {bare(m.filled_in_years)} years",
        years,
        f"{m.tiers} tiers - {m.tiers_made} made, one a year = {left}; the leader makes the next two arms once a year",
    )


@rule("espalier.blossom-off", Severity.WARNING, by.ESPALIERS, applies="fruit")
def blossom_off(work: T) -> Iterator[Breach]:
    """Blossom comes off for the first three springs.

    Fruit in the first three years is wood that the frame goes without.
    """
    springs = work.measures.blossom_off_springs
    if springs is None or frame.fruit_of(work) is None or SPRINGS.allows(springs):
        return
    yield _one(
        "blossom off springs",
        "blossom_off_springs",
        f"blossom comes off in {springs} of the first three springs",
        "3",
        "a tree that ripens fruit in its first three years makes little wood, and the frame stops short",
    )


@rule("espalier.tie-checks", Severity.WARNING, by.TIES, applies="techniques that write how often ties are looked at")
def tie_checks(work: T) -> Iterator[Breach]:
    """Ties are looked at twice a year.

    A tie that fits in spring cuts in by autumn.
    """
    checks = work.measures.tie_checks
    if checks is None or CHECKS.allows(checks):
        return
    yield _one(
        "tie checks",
        "tie_checks",
        f"ties are looked at {'never' if checks == 0 else 'once a year'}",
        "2",
        "an arm thickens within a season, and a tight tie cuts through its bark; twice a year at least",
    )


@rule("espalier.prune-months", Severity.WARNING, by.SUMMER, by.SEASONS, applies="summer pruning of apples and pears")
def prune_months(work: T) -> Iterator[Breach]:
    """Trained fruit is summer pruned in its own weeks: pears from late July, apples from mid August, in the north.

    Pears late July to early August, apples mid to late August, once the end bud is set; in the south six months
    on.
    """
    fruit = frame.fruit_of(work)
    if work.measures.job != "summer pruning" or fruit is None or fruit == "stone fruit" or not work.technique.season:
        return
    side = work.crew.hemisphere
    written, good = months_of(work.technique.season, side), pruning.summer_months(fruit, side)
    if not written or set(written) & set(good):
        return
    text = month_run(good)
    yield Breach(
        field="season",
        what=f"{fruit} trees are not summer pruned in {work.technique.season}",
        why=f"their weeks are {pruning.WINDOWS[fruit].words} in the north, which is {text} here: sooner, they grow "
        "again; later, the spurs do not ripen",
        mend=f"write `season: {text}`",
        edit=Edit(key="season", text=text, top=True),
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

    Silver leaf and canker enter through cuts made in the wet half of the year.
    """
    if frame.fruit_of(work) != "stone fruit" or work.measures.job == "wiring" or not work.technique.season:
        return
    side = work.crew.hemisphere
    written = months_of(work.technique.season, side)
    good = season_months("spring", side) + season_months("summer", side)
    if not written or set(written) <= set(good):
        return
    yield Breach(
        field="season",
        what=f"stone fruit is cut in {work.technique.season}",
        why=f"here spring and summer are {months_named(good, 'to')}; silver leaf and canker get in through cuts made in the "
        "wet half of the year",
        mend="write `season: spring to summer`",
        edit=Edit(key="season", text="spring to summer", top=True),
    )


@rule("espalier.winter-thinning", Severity.WARNING, by.ESPALIERS, applies="winter thinning of apples and pears")
def winter_thinning(work: T) -> Iterator[Breach]:
    """Old spurs are thinned in winter, once they are seven years old.

    Spur systems are thinned after seven or eight years to one or two fruit buds, November to March in the
    north.
    """
    m = work.measures
    if m.job != "winter thinning" or frame.fruit_of(work) == "stone fruit":
        return
    if m.age_years is not None and not OLD_SPURS.allows(m.age_years):
        why = "spurs crowd after seven or eight years; thinned sooner they are next year's fruit lost"
        yield _one("age", "age_years", f"spurs of a tree of {bare(m.age_years)} years are thinned", "7 years", why)
    side = work.crew.hemisphere
    good = tuple(month_here(month, side) for month in pruning.THINNING_MONTHS_NORTH)
    written = months_of(work.technique.season, side) if work.technique.season else None
    if not written or set(written) & set(good):
        return
    text = month_run(good)
    yield Breach(
        field="season",
        what=f"spurs are thinned in {work.technique.season}",
        why=f"they are thinned while the tree is at rest, {text} here",
        mend=f"write `season: {text}`",
        edit=Edit(key="season", text=text, top=True),
    )


@rule(
    "espalier.leaves-left",
    Severity.WARNING,
    by.LEAVES,
    by.STUBS,
    applies="summer pruning of apples and pears that counts leaves",
)
def leaves_left(work: T) -> Iterator[Breach]:
    """A shoot from the frame keeps three leaves, and one from a spur a single leaf, above the ring at its foot.

    Three leaves on a shoot from the frame (about 75 mm), one on a shoot from a spur (about 25 mm).
    """
    m = work.measures
    if frame.fruit_of(work) == "stone fruit":
        return
    if m.main_leaves is not None and m.main_leaves != pruning.MAIN_LEAVES:
        yield _leaves("main leaves", "main_leaves", m.main_leaves, pruning.MAIN_LEAVES, "the stem or an arm", 75)
    if m.spur_leaves is not None and m.spur_leaves != pruning.SPUR_LEAVES:
        yield _leaves("spur leaves", "spur_leaves", m.spur_leaves, pruning.SPUR_LEAVES, "a spur", 25)


def _leaves(key: str, field: str, written: int, right: int, from_: str, about_mm: float) -> Breach:
    more = (
        "fewer, and the buds that should fruit grow out" if written < right else "more, and the spur stands too far out"
    )
    return _one(
        key,
        field,
        f"{written} leaves are left on a shoot from {from_}",
        str(right),
        f"{right} above the ring of small leaves, about {mm(about_mm, 3)}; {more}",
    )


@rule("espalier.stubs", Severity.WARNING, by.STUBS, by.STONE, applies="techniques that write how long a stub is left")
def stubs(work: T) -> Iterator[Breach]:
    """Stubs are as long as the fruit asks: 75 mm and 25 mm, or on stone fruit 50 mm and 25 mm.

    75 mm and 25 mm on apple and pear; 50 mm from the stem and 25 mm from a spur on stone fruit.
    """
    m = work.measures
    right = pruning.stubs_of(frame.fruit_of(work) or "apple")
    fruit = "on stone fruit" if not right.counts_leaves else "on apple and pear"
    for key, field, written, bound in (
        ("main stub", "main_stub_mm", m.main_stub_mm, right.main_mm),
        ("spur stub", "spur_stub_mm", m.spur_stub_mm, right.spur_mm),
    ):
        # "about 75 mm (3 in)" and "about 25 mm (1 in)": within a third
        if written is None or abs(written - bound) <= bound / 3 + 1e-9:
            continue
        from_ = "the stem or an arm" if key == "main stub" else "a spur"
        why = f"{fruit} a shoot from {from_} is cut to about {mm(bound, 3)} ({bare(bound / INCH_MM, 1)} in)"
        breach = _one(key, field, f"a shoot from {from_} is cut to {mm(written, 3)}", f"{mm(bound, 3)}", why)
        yield replace(breach, reference=right.references[-1])


@rule(
    "espalier.short-shoots",
    Severity.WARNING,
    by.LEAVES,
    by.STONE,
    applies="techniques that write the shortest shoot to cut",
)
def shortest_cut(work: T) -> Iterator[Breach]:
    """Shoots under 200 mm are left.

    Short shoots are next year's fruit.
    """
    shortest = work.measures.shortest_cut_mm
    if shortest is None or SHORTEST.allows(shortest):
        return
    yield _one(
        "shortest cut",
        "shortest_cut_mm",
        f"shoots from {mm(shortest, 3)} up are cut",
        "200 mm",
        "a shoot that stops short of 200 mm (8 in) mostly ends in fruit buds",
    )


def _one(key: str, field: str, what: str, text: str, why: str) -> Breach:
    """Return a breach whose mend writes one measure."""
    return Breach(
        field=f"measures.{field}", what=what, why=why, mend=f"write `{key}: {text}`", edit=Edit(key=key, text=text)
    )


TREE_RULES: tuple[Rule[EspalierMeasures], ...] = (
    arm_angle,
    tier_a_year,
    blossom_off,
    tie_checks,
    prune_months,
    stone_fruit_season,
    winter_thinning,
    leaves_left,
    stubs,
    shortest_cut,
)
