"""The figures of an espalier, in printing order: the frame here, then its wires, then its trees."""

from collections.abc import Iterator
from datetime import date

from howto.families.espalier import formulae, frame, pruning
from howto.families.espalier.figures_trees import tree_figures
from howto.families.espalier.figures_wires import wire_figures
from howto.families.espalier.frame import T
from howto.families.espalier.measures import EspalierMeasures
from howto.families.espalier.parts import figure, tiers, wires
from howto.families.espalier.references import ESPALIERS, TIER_A_YEAR, WALL_EYES
from howto.model.figure import Cell, Figure, Table
from howto.model.reference import GEOMETRY, PRACTICE
from howto.quantities import round_up
from howto.quantities.amounts import Count, Name, Word, Words, bare, mm, percent, qty

TIE_EVERY_MM = 300.0  # along an arm: common practice


def figures(work: T, today: date) -> Iterator[Figure]:
    """Yield the figures of one frame; `today` is the day of the work."""
    m = work.measures
    yield from _heights(work, today)
    yield _arms(m)
    yield from _arm_length(m)
    yield from _spans(m)
    if m.job == "wiring":
        yield from _to_buy(m)
    else:
        yield from _ties(m)
    yield from wire_figures(work)
    yield from tree_figures(work, today)


def _heights(work: T, today: date) -> Iterator[Figure]:
    m = work.measures
    heights = frame.heights_mm(m)
    if not heights:
        return
    first, top, made = bare(heights[0], 5), mm(heights[-1], 5), min(m.tiers_made, m.tiers)
    years = [pruning.lowered_on(today, tier, work.crew.hemisphere).year for tier in range(1, m.tiers - made + 1)]
    rows: tuple[tuple[Cell, ...], ...] = tuple(
        (float(tier), height, float(2 * m.trees), "made" if tier <= made else str(years[tier - made - 1]))
        for tier, height in enumerate(heights, 1)
    )
    step, start = "", f"one wire at {mm(heights[0], 5)}"
    if m.tiers > 1 and m.tier_spacing_mm is not None:
        step = f" + {bare(m.tiers - 1)} x {bare(m.tier_spacing_mm, 5)}"
        start = f"first wire {mm(heights[0], 5)}, each next one {mm(m.tier_spacing_mm, 5)} higher"
    table = Table(columns=("Tier", "Above the ground", "Arms", "Level in"), units=("", "mm", "", ""), rows=rows)
    working = (start, "a tier a year: its arms level in late autumn of the year shown")
    yield figure(
        "wire heights", "Wires above the ground", _listed(heights), "", working, ESPALIERS, TIER_A_YEAR,
        table=table, headline=True,
    )  # fmt: skip
    yield figure("top wire", "Top wire", heights[-1], "mm", [f"{first}{step} = {top}"], GEOMETRY)


def _listed(heights: tuple[float, ...]) -> Words:
    """Return heights as a list in words."""
    *lower, top = (f"{mm(height)}" for height in heights)
    return f"{', '.join(lower)} and {top}" if lower else top


def _arms(m: EspalierMeasures) -> Figure:
    count = formulae.laterals(m.tiers, m.trees)
    trees = f" x {Count(m.trees, 'tree', 'trees')}" if m.trees > 1 else ""
    return figure(
        "arms", "Arms kept, one each side a tier", float(count), "", [f"2 x {tiers(m.tiers)}{trees} = {bare(count)}"],
        PRACTICE, headline=m.job in {"planting", "training"}, digits=6,
    )  # fmt: skip


def _arm_length(m: EspalierMeasures) -> Iterator[Figure]:
    arm, bay = frame.arm_mm(m), frame.bay_mm(m)
    if arm is None or bay is None:
        return
    working = [f"half of what one tree has: {bare(2 * arm, 6)} / 2 = {mm(arm, 6)}"]
    if m.wall_length_m is not None and 2 * arm < bay:
        wall = bare(m.wall_length_m * 1000, 6)
        working.insert(0, f"the wall gives each tree {wall} / {bare(m.trees)} = {mm(2 * arm, 6)}")
    yield figure("arm length", "Arm, from stem to tip", arm, "mm", working, GEOMETRY)


def _spans(m: EspalierMeasures) -> Iterator[Figure]:
    span, count = frame.span_mm(m), frame.spans(m)
    if span is None or count is None or m.wall_length_m is None or m.eye_spacing_mm is None:
        return
    run, spans, eyes = bare(m.wall_length_m * 1000, 6), Count(count, "span", "spans"), m.tiers * (count + 1)
    working = (
        f"{run} / {bare(m.eye_spacing_mm, 5)} rounded up = {spans} a wire",
        f"{run} / {bare(count)} = {mm(span, 5)}",
    )
    who = WALL_EYES if m.support == "wall" else GEOMETRY
    yield figure("span", "From eye to eye", span, "mm", working, who, headline=m.job == "wiring")
    line = f"({spans} + 1) x {wires(m.tiers)} = {bare(eyes)}"
    yield figure("eyes", "Eyes", float(eyes), "", [line], GEOMETRY, digits=6)


def _to_buy(m: EspalierMeasures) -> Iterator[Figure]:
    """Yield the wire, and where the spans are known all the materials."""
    if m.wall_length_m is None:
        return
    exact = formulae.wire_to_buy_m(m.wall_length_m, m.tiers, frame.ENDS_M, m.waste_percent / 100)
    wire = round_up(exact, 1)
    working = (
        f"each run and its two ends: {bare(m.wall_length_m, 5)} + {qty(frame.ENDS_M, 'm', 3)}",
        f"{bare(m.tiers)} x {qty(m.wall_length_m + frame.ENDS_M, 'm', 5)} x (1 + {bare(m.waste_percent / 100)}) = "
        f"{qty(exact, 'm', 5)}, to the next metre",
    )
    yield figure("wire to buy", "Wire to buy", wire, "m", working, GEOMETRY, PRACTICE)
    if (count := frame.spans(m)) is None:
        return
    eyes, tensioners = m.tiers * (count + 1), m.tensioners or m.tiers
    rows: tuple[tuple[Cell, ...], ...] = (
        (_wire_named(m), f"{qty(wire, 'm')}"),
        ("Eyes", float(eyes)),
        ("Tensioners", float(tensioners)),
        ("Grips or ferrules, two a wire", float(2 * m.tiers)),
        ("Posts", float(count + 1)) if m.support == "posts" else ("Wall plugs", float(eyes)),
    )
    working = (
        f"wire: {Count(m.tiers, 'run', 'runs')}, two ends each and {percent(m.waste_percent)} for waste",
        f"eyes: {bare(count + 1)} a wire x {wires(m.tiers)} = {bare(eyes)}; tensioners: {bare(tensioners)}",
    )
    said = f"{qty(wire, 'm')} of wire, {Count(eyes, 'eye', 'eyes')}, {Count(tensioners, 'tensioner', 'tensioners')}"
    table = Table(columns=("What", "How much"), units=("", ""), rows=rows)
    yield figure("materials", "Materials, waste included", said, "", working, GEOMETRY, PRACTICE, table=table)


def _wire_named(m: EspalierMeasures) -> Words:
    parts = (m.wire_diameter_mm and mm(m.wire_diameter_mm), m.lay and Name(m.lay), m.wire and Word(m.wire))
    return "".join(("Wire", *(f", {part}" for part in parts if part)))


def _ties(m: EspalierMeasures) -> Iterator[Figure]:
    arm = frame.arm_mm(m)
    if arm is None:
        return
    arms, each = formulae.laterals(m.tiers, m.trees), formulae.spans_of(arm, TIE_EVERY_MM)
    stems = m.tiers * m.trees
    every, total = bare(TIE_EVERY_MM), arms * each + stems
    working = (
        f"one each {mm(TIE_EVERY_MM, 3)} of arm: {bare(arm, 6)} / {every} rounded up = {bare(each)}",
        f"{Count(arms, 'arm', 'arms')} x {bare(each)} + {bare(stems)} where a stem meets a wire = {bare(total)}",
    )
    yield figure("ties", "Soft ties for the whole frame", float(total), "", working, PRACTICE, digits=6)
