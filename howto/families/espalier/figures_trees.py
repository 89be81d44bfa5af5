"""The figures of the trees: room, the years of a frame, and how and when shoots are cut."""

from collections.abc import Iterator
from datetime import date, timedelta

from howto.families.espalier import formulae, frame, pruning
from howto.families.espalier import references as by
from howto.families.espalier.frame import T
from howto.families.espalier.measures import EspalierMeasures, Fruit, Rootstock
from howto.languages.reader import day_told as shown_day
from howto.model.figure import Cell, Figure, Table
from howto.model.reference import PRACTICE, Reference
from howto.quantities import round_down
from howto.quantities.amounts import bare, mm
from howto.seasons import month_here

STOCK_MM: dict[Rootstock, tuple[float, Reference]] = {
    "M26": (3300, by.STOCK_SPACING),
    "MM106": (4500, by.STOCK_SPACING),
    "MM111": (4000, by.SEMI_VIGOROUS),
    "quince A": (3750, by.ESPALIERS),
}
LEAST_SPACING_MM = 3750.0  # references.ESPALIERS, which prints it as 12 ft too
LEADER_ABOVE_MM = 50.0
TIE_CHECK_DAYS = 182  # twice a year


def tree_figures(work: T, today: date) -> Iterator[Figure]:
    """Yield what can be said of the trees, from planting to pruning."""
    m = work.measures
    yield from _room(m)
    if m.job == "wiring":
        return
    yield from _leader(m)
    yield from _filled(work, today)
    yield from _first_crop(work, today)
    yield from _pruning(work, today)
    yield _stubs(work)
    yield from _leaves(work)
    yield _ties(work, today)


def least_spacing(m: EspalierMeasures) -> tuple[float, Reference]:
    """Return the least distance between two trees, by rootstock where it is written, and who says so."""
    return STOCK_MM[m.rootstock] if m.rootstock else (LEAST_SPACING_MM, by.ESPALIERS)


def _room(m: EspalierMeasures) -> Iterator[Figure]:
    if m.wall_length_m is None:
        return
    least, source = least_spacing(m)
    wall = m.wall_length_m * 1000
    fit = max(1, int(round_down(wall / least, 1)))
    yield Figure(
        name="trees that fit",
        label="Trees that the wall has room for",
        value=float(fit),
        working=(
            f"a tree{f' on {m.rootstock}' if m.rootstock else ''} wants {mm(least, 5)} of wall at least",
            f"{bare(wall, 6)} / {bare(least, 5)} = {bare(wall / least)}, rounded down = {fit}"
            if wall >= least
            else f"{mm(wall, 6)} is short of it: one tree, on a weak stock",
        ),
        references=(source,),
        digits=6,
    )


def _leader(m: EspalierMeasures) -> Iterator[Figure]:
    if m.first_wire_mm is None:
        return
    height = m.first_wire_mm + LEADER_ABOVE_MM
    yield Figure(
        name="leader height",
        label="Cut the leader at planting",
        value=height,
        unit="mm",
        working=(f"first wire {bare(m.first_wire_mm, 5)} + {bare(LEADER_ABOVE_MM)} = {mm(height, 5)}, above a bud",),
        references=(by.LEADER,),
    )


def _filled(work: T, today: date) -> Iterator[Figure]:
    m = work.measures
    made = min(m.tiers_made, m.tiers)
    left = formulae.years_to_fill(m.tiers, made)
    yield Figure(
        name="years to fill",
        label="Years until the frame is full",
        value=float(left),
        unit="years",
        working=(f"{m.tiers} tiers - {made} made, one a year = {left} years",),
        references=(by.TIER_A_YEAR,),
        client=True,
    )
    if not left:
        return
    day = pruning.lowered_on(today, left, work.crew.hemisphere)
    first = pruning.lowered_on(today, 1, work.crew.hemisphere)
    yield Figure(
        name="frame filled",
        label="Top tier laid level",
        value=day,
        working=(
            f"the next tier's arms grow in the summer before, and are laid level from {_said(work, first)}",
            f"{left - 1} more at a tier a year: {_said(work, day)}",
        ),
        references=(by.TIER_A_YEAR, by.ARMS, by.SEASONS),
        headline=m.job in {"planting", "training"},
        client=True,
    )


def _first_crop(work: T, today: date) -> Iterator[Figure]:
    m = work.measures
    age = 0.0 if m.age_years is None and m.job == "planting" else m.age_years
    if age is None or frame.fruit_of(work) is None:
        return
    planted = today - timedelta(days=round(age * 365.25))
    spring = pruning.next_month(month_here(3, work.crew.hemisphere), planted)
    off = pruning.BLOSSOM_SPRINGS if m.blossom_off_springs is None else m.blossom_off_springs
    first = spring.replace(year=spring.year + off)
    if first < today:
        return
    yield Figure(
        name="first crop",
        label="First spring in which blossom stays",
        value=first,
        working=(
            f"its first spring began on {_said(work, spring)}; blossom comes off in {off} springs",
            f"{spring.year} + {off} = {first.year}",
        ),
        references=(by.ESPALIERS,),
        client=True,
    )


def _pruning(work: T, today: date) -> Iterator[Figure]:
    fruit = frame.fruit_of(work)
    if fruit is None:
        return
    window, side = pruning.WINDOWS[fruit], work.crew.hemisphere
    first, last = pruning.next_window(fruit, today, side)
    south = "" if side == "north" else ", six months on in the south"
    yield Figure(
        name="summer pruning",
        label="Summer pruning begins",
        value=max(first, today),
        working=(f"{fruit}: {window.words} in the north{south}", f"from {_said(work, first)} to {_said(work, last)}"),
        references=(window.reference, by.SEASONS),
        headline=work.measures.job in {"training", "summer pruning"},
        client=True,
    )
    if fruit == "stone fruit":
        return
    september = pruning.next_month(month_here(pruning.REGROWTH_MONTH_NORTH, side), first)
    yield Figure(
        name="regrowth off",
        label="What grows again comes off",
        value=september,
        working=(f"the September after, in the north{south}: from {_said(work, september)}",),
        references=(by.LEAVES, by.STUBS),
        client=True,
    )


def _stubs(work: T) -> Figure:
    """Return how short each kind of shoot is cut, as a table."""
    units = work.crew.units
    fruit: Fruit = frame.fruit_of(work) or "apple"
    stubs = pruning.stubs_of(fruit)
    m = work.measures
    shortest = f"{mm(m.shortest_cut_mm or pruning.SHORTEST_CUT_MM)}"
    main, spur = m.main_stub_mm or stubs.main_mm, m.spur_stub_mm or stubs.spur_mm
    rows: tuple[tuple[Cell, ...], ...] = (
        (f"over {shortest}, from stem or arm", *_left(m.main_leaves or pruning.MAIN_LEAVES, main, stubs)),
        (f"over {shortest}, from a spur", *_left(m.spur_leaves or pruning.SPUR_LEAVES, spur, stubs)),
        (f"under {shortest}", "all of it", "-"),
        ("to the front, or to the wall", "nothing", "-"),
    )
    counted = "leaves are counted above the ring of small leaves at the foot of the shoot"
    return Figure(
        name="shoots",
        label="What is left of a shoot",
        value=f"{mm(main)}, or {mm(spur)} from a spur",
        working=(
            counted if stubs.counts_leaves else "stone fruit is measured, and not counted in leaves",
            f"a shoot under {shortest} is left: it mostly ends in fruit buds",
        ),
        references=(*stubs.references, PRACTICE),
        table=Table(
            columns=("Shoot", "Leave", "About"),
            units=("", "", ""),
            rows=tuple((row[0], row[1], _about(row[2], units)) for row in rows),
        ),
    )


def _left(leaves: int, length_mm: float, stubs: pruning.Stubs) -> tuple[Cell, Cell]:
    return (f"{leaves} {'leaf' if leaves == 1 else 'leaves'}" if stubs.counts_leaves else "a stub", length_mm)


def _about(cell: Cell, units: str) -> Cell:
    return f"{mm(cell)}" if isinstance(cell, float | int) else cell


def _leaves(work: T) -> Iterator[Figure]:
    """Yield how much of a shoot of the written length comes off."""
    m = work.measures
    if m.shoot_length_mm is None:
        return
    stubs = pruning.stubs_of(frame.fruit_of(work) or "apple")
    shortest = m.shortest_cut_mm or pruning.SHORTEST_CUT_MM
    main = m.main_stub_mm or stubs.main_mm
    off = max(0.0, m.shoot_length_mm - main) if m.shoot_length_mm > shortest else 0.0
    yield Figure(
        name="comes off",
        label="Off a shoot from an arm",
        value=off,
        unit="mm",
        working=(
            f"{bare(m.shoot_length_mm, 5)} - {bare(main)} = {mm(off, 5)}"
            if off
            else f"{mm(m.shoot_length_mm, 5)} is not over {mm(shortest, 3)}, or no longer than its stub: it stays",
        ),
        references=stubs.references,
    )


def _ties(work: T, today: date) -> Figure:
    checks = max(work.measures.tie_checks or 2, 1)
    days = TIE_CHECK_DAYS * 2 // checks
    return Figure(
        name="next tie check",
        label="Look at the ties again",
        value=today + timedelta(days=days),
        working=(f"{checks} times a year: {days} days on",),
        references=(by.TIES,),
        client=True,
    )


def _said(work: T, day: date) -> str:
    return shown_day(day, work.crew.language)
