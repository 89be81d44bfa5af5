"""The figures of the trees: room, the years of a frame, and how and when shoots are cut."""

from collections.abc import Iterator
from datetime import date, timedelta

from howto.families.espalier import formulae, frame, pruning
from howto.families.espalier import references as by
from howto.families.espalier.frame import T
from howto.families.espalier.measures import EspalierMeasures, Rootstock
from howto.families.espalier.parts import figure, leaves, tiers
from howto.model.figure import Cell, Figure, Table
from howto.model.reference import PRACTICE, Reference
from howto.quantities import round_down
from howto.quantities.amounts import Count, Name, Word, bare, dated, mm, month_named
from howto.seasons import month_here

STOCK_MM: dict[Rootstock, tuple[float, Reference]] = {
    "M26": (3300, by.STOCK_SPACING),
    "MM106": (4500, by.STOCK_SPACING),
    "MM111": (4000, by.SEMI_VIGOROUS),
    "quince A": (3750, by.ESPALIERS),
}
LEAST_SPACING_MM = 3750.0  # references.ESPALIERS, which prints it as 12 ft too
LEADER_ABOVE_MM = 50.0
TIE_CHECKS = 2  # a year; see references.TIES
HALF_A_YEAR_DAYS = 182
SPRING_MONTH_NORTH = 3


def tree_figures(work: T, today: date) -> Iterator[Figure]:
    """Yield what can be said of the trees, from planting to pruning."""
    m = work.measures
    yield from _room(m)
    if m.job == "wiring":
        return
    if m.first_wire_mm is not None:
        height = m.first_wire_mm + LEADER_ABOVE_MM
        line = f"first wire {bare(m.first_wire_mm, 5)} + {bare(LEADER_ABOVE_MM)} = {mm(height, 5)}, above a bud"
        yield figure("leader height", "Cut the leader at planting", height, "mm", [line], by.LEADER)
    yield from _filled(work, today)
    yield from _first_crop(work, today)
    yield from _pruning(work, today)
    yield from _stubs(work)
    yield _ties(m, today)


def least_spacing(m: EspalierMeasures) -> tuple[float, Reference]:
    """Return the least distance between two trees, by rootstock where it is written, and who says so."""
    return STOCK_MM[m.rootstock] if m.rootstock else (LEAST_SPACING_MM, by.ESPALIERS)


def _room(m: EspalierMeasures) -> Iterator[Figure]:
    if m.wall_length_m is None:
        return
    least, source = least_spacing(m)
    wall = m.wall_length_m * 1000
    fit = max(1, int(round_down(wall / least, 1)))
    working = (
        f"a tree{f' on {Name(m.rootstock)}' if m.rootstock else ''} wants {mm(least, 5)} of wall at least",
        f"{bare(wall, 6)} / {bare(least, 5)} = {bare(wall / least)}, rounded down = {bare(fit)}"
        if wall >= least
        else f"{mm(wall, 6)} is short of it: one tree, on a weak stock",
    )
    yield figure("trees that fit", "Trees that the wall has room for", float(fit), "", working, source, digits=6)


def _filled(work: T, today: date) -> Iterator[Figure]:
    m, side = work.measures, work.crew.hemisphere
    made = min(m.tiers_made, m.tiers)
    left = formulae.years_to_fill(m.tiers, made)
    line = f"{tiers(m.tiers)} - {bare(made)} made, one a year = {Count(left, 'year', 'years')}"
    yield figure(
        "years to fill", "Years until the frame is full", float(left), "years", [line], by.TIER_A_YEAR, client=True
    )
    if not left:
        return
    first, day = pruning.lowered_on(today, 1, side), pruning.lowered_on(today, left, side)
    working = (
        f"the next tier's arms grow in the summer before, and are laid level from {dated(first)}",
        f"{bare(left - 1)} more at a tier a year: {dated(day)}",
    )
    yield figure(
        "frame filled", "Top tier laid level", day, "", working, by.TIER_A_YEAR, by.ARMS, by.SEASONS,
        headline=m.job in {"planting", "training"}, client=True,
    )  # fmt: skip


def _first_crop(work: T, today: date) -> Iterator[Figure]:
    m = work.measures
    age = 0.0 if m.age_years is None and m.job == "planting" else m.age_years
    if age is None or frame.fruit_of(work) is None:
        return
    planted = today - timedelta(days=round(age * 365.25))
    spring = pruning.next_month(month_here(SPRING_MONTH_NORTH, work.crew.hemisphere), planted)
    off = pruning.BLOSSOM_SPRINGS if m.blossom_off_springs is None else m.blossom_off_springs
    first = spring.replace(year=spring.year + off)
    if first < today:
        return
    springs = Count(off, "spring", "springs")
    working = (
        f"its first spring began on {dated(spring)}; blossom comes off in {springs}",
        f"{bare(spring.year)} + {bare(off)} = {bare(first.year)}",
    )
    yield figure("first crop", "First spring in which blossom stays", first, "", working, by.ESPALIERS, client=True)


def _pruning(work: T, today: date) -> Iterator[Figure]:
    fruit = frame.fruit_of(work)
    if fruit is None:
        return
    window, side = pruning.WINDOWS[fruit], work.crew.hemisphere
    first, last = pruning.next_window(fruit, today, side)
    north = "in the north" if side == "north" else "in the north, six months on in the south"
    working = [f"{Word(fruit)}: {window.words} {north}", f"from {dated(first)} to {dated(last)}"]
    yield figure(
        "summer pruning", "Summer pruning begins", max(first, today), "", working, window.reference, by.SEASONS,
        headline=work.measures.job in {"training", "summer pruning"}, client=True,
    )  # fmt: skip
    if fruit == "stone fruit":
        return
    month = pruning.REGROWTH_MONTH_NORTH
    day = pruning.next_month(month_here(month, side), first)
    working = [f"the {month_named(month)} after, {north}: from {dated(day)}"]
    yield figure("regrowth off", "What grows again comes off", day, "", working, by.LEAVES, by.STUBS, client=True)


def _stubs(work: T) -> Iterator[Figure]:
    """Yield how short each kind of shoot is cut, as a table, and how much of one of the written length comes off."""
    m, stubs = work.measures, pruning.stubs_of(frame.fruit_of(work))
    shortest, main, spur = pruning.cuts_mm(m, stubs)
    left = [f"{leaves(count)}" if stubs.counts_leaves else "a stub" for count in pruning.leaves_of(m)]
    rows: tuple[tuple[Cell, ...], ...] = (
        (f"over {mm(shortest)}, from stem or arm", left[0], f"{mm(main)}"),
        (f"over {mm(shortest)}, from a spur", left[1], f"{mm(spur)}"),
        (f"under {mm(shortest)}", "all of it", "-"),
        ("to the front, or to the wall", "nothing", "-"),
    )
    working = (
        "leaves are counted above the ring of small leaves at the foot of the shoot"
        if stubs.counts_leaves
        else "stone fruit is measured, and not counted in leaves",
        f"a shoot under {mm(shortest)} is left: it mostly ends in fruit buds",
    )
    yield figure(
        "shoots", "What is left of a shoot", f"{mm(main)}, or {mm(spur)} from a spur", "", working,
        *stubs.references, PRACTICE, table=Table(columns=("Shoot", "Leave", "About"), units=("", "", ""), rows=rows),
    )  # fmt: skip
    if m.shoot_length_mm is None:
        return
    off = max(0.0, m.shoot_length_mm - main) if m.shoot_length_mm > shortest else 0.0
    line = f"{mm(m.shoot_length_mm, 5)} is not over {mm(shortest, 3)}, or no longer than its stub: it stays"
    if off:
        line = f"{bare(m.shoot_length_mm, 5)} - {bare(main)} = {mm(off, 5)}"
    yield figure("comes off", "Off a shoot from an arm", off, "mm", [line], *stubs.references)


def _ties(m: EspalierMeasures, today: date) -> Figure:
    checks = max(m.tie_checks or TIE_CHECKS, 1)
    days = HALF_A_YEAR_DAYS * 2 // checks
    line = f"{Count(checks, 'time', 'times')} a year: {Count(days, 'day', 'days')} on"
    day = today + timedelta(days=days)
    return figure("next tie check", "Look at the ties again", day, "", [line], by.TIES, client=True)
