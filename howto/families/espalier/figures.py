"""The figures of an espalier, in printing order: the frame here, then its wires, then its trees."""

from collections.abc import Iterator
from datetime import date

from howto.families.espalier import formulae, frame, pruning
from howto.families.espalier.figures_trees import tree_figures
from howto.families.espalier.figures_wires import wire_figures
from howto.families.espalier.frame import T
from howto.families.espalier.measures import EspalierMeasures
from howto.families.espalier.references import ESPALIERS, TIER_A_YEAR, WALL_EYES
from howto.model.figure import Cell, Figure, Table
from howto.model.reference import GEOMETRY, PRACTICE
from howto.quantities import round_up
from howto.quantities.amounts import bare, mm, percent, qty

TIE_EVERY_MM = 300.0  # along an arm: common practice


def figures(work: T, today: date) -> Iterator[Figure]:
    """Yield the figures of one frame; `today` is the day of the work."""
    m = work.measures
    yield from _heights(work, today)
    yield _arms(m)
    yield from _arm_length(m)
    yield from _spans(m)
    if m.job == "wiring":
        yield from _wire_to_buy(m)
        yield from _materials(work)
    else:
        yield from _ties(m)
    yield from wire_figures(work)
    yield from tree_figures(work, today)


def _heights(work: T, today: date) -> Iterator[Figure]:
    m, units = work.measures, work.crew.units
    heights = frame.heights_mm(m)
    if not heights:
        return
    made = min(m.tiers_made, m.tiers)
    years = [pruning.lowered_on(today, tier, work.crew.hemisphere).year for tier in range(1, m.tiers - made + 1)]
    rows: tuple[tuple[Cell, ...], ...] = tuple(
        (float(tier), height, float(2 * m.trees), "made" if tier <= made else f"{years[tier - made - 1]}")
        for tier, height in enumerate(heights, 1)
    )
    step = "" if m.tiers == 1 or m.tier_spacing_mm is None else f" + {m.tiers - 1} x {bare(m.tier_spacing_mm, 5)}"
    yield Figure(
        name="wire heights",
        label="Wires above the ground",
        value=_listed([f"{mm(height)}" for height in heights]),
        working=(
            f"first wire {mm(heights[0], 5)}, each next one {mm(m.tier_spacing_mm or 0, 5)} higher"
            if step
            else f"one wire at {mm(heights[0], 5)}",
            "a tier a year: its arms level in late autumn of the year shown",
        ),
        references=(ESPALIERS, TIER_A_YEAR),
        table=Table(columns=("Tier", "Above the ground", "Arms", "Level in"), units=("", "mm", "", ""), rows=rows),
        headline=True,
    )
    yield Figure(
        name="top wire",
        label="Top wire",
        value=heights[-1],
        unit="mm",
        working=(f"{bare(heights[0], 5)}{step} = {mm(heights[-1], 5)}",),
        references=(GEOMETRY,),
    )


def _listed(words: list[str]) -> str:
    """Return amounts as a list in words, a unit that all share said once."""
    parts = [word.partition("\u00a0") for word in words]
    if len({unit for _, _, unit in parts}) == 1 and all(unit for _, _, unit in parts):
        words = [number for number, _, _ in parts[:-1]] + words[-1:]
    return words[0] if len(words) == 1 else f"{', '.join(words[:-1])} and {words[-1]}"


def _arms(m: EspalierMeasures) -> Figure:
    count = formulae.laterals(m.tiers, m.trees)
    trees = f" x {m.trees} trees" if m.trees > 1 else ""
    return Figure(
        name="arms",
        label="Arms kept, one each side a tier",
        value=float(count),
        working=(f"2 x {m.tiers} tiers{trees} = {count}",),
        references=(PRACTICE,),
        headline=m.job in {"planting", "training"},
        digits=6,
    )


def _arm_length(m: EspalierMeasures) -> Iterator[Figure]:
    arm, bay = frame.arm_mm(m), frame.bay_mm(m)
    if arm is None or bay is None:
        return
    working = [f"half of what one tree has: {bare(2 * arm, 6)} / 2 = {mm(arm, 6)}"]
    if m.wall_length_m is not None and 2 * arm < bay:
        working.insert(0, f"the wall gives each tree {bare(m.wall_length_m * 1000, 6)} / {m.trees} = {mm(2 * arm, 6)}")
    yield Figure(
        name="arm length",
        label="Arm, from stem to tip",
        value=arm,
        unit="mm",
        working=tuple(working),
        references=(GEOMETRY,),
    )


def _spans(m: EspalierMeasures) -> Iterator[Figure]:
    span, count = frame.span_mm(m), frame.spans(m)
    if span is None or count is None or m.wall_length_m is None or m.eye_spacing_mm is None:
        return
    run = m.wall_length_m * 1000
    yield Figure(
        name="span",
        label="From eye to eye",
        value=span,
        unit="mm",
        working=(
            f"{bare(run, 6)} / {bare(m.eye_spacing_mm, 5)} rounded up = {count} spans a wire",
            f"{bare(run, 6)} / {count} = {mm(span, 5)}",
        ),
        references=(WALL_EYES,) if m.support == "wall" else (GEOMETRY,),
        headline=m.job == "wiring",
    )
    eyes = m.tiers * (count + 1)
    yield Figure(
        name="eyes",
        label="Eyes",
        value=float(eyes),
        working=(f"({count} spans + 1) x {m.tiers} wires = {eyes}",),
        references=(GEOMETRY,),
        digits=6,
    )


def _wire_to_buy(m: EspalierMeasures) -> Iterator[Figure]:
    if m.wall_length_m is None:
        return
    exact = formulae.wire_to_buy_m(m.wall_length_m, m.tiers, frame.ENDS_M, m.waste_percent / 100)
    yield Figure(
        name="wire to buy",
        label="Wire to buy",
        value=round_up(exact, 1),
        unit="m",
        working=(
            f"each run and its two ends: {bare(m.wall_length_m, 5)} + {qty(frame.ENDS_M, 'm', 3)}",
            f"{m.tiers} x {qty(m.wall_length_m + frame.ENDS_M, 'm', 5)} x (1 + {bare(m.waste_percent / 100)}) = "
            f"{qty(exact, 'm', 5)}, to the next metre",
        ),
        references=(GEOMETRY, PRACTICE),
    )


def _materials(work: T) -> Iterator[Figure]:
    m, units = work.measures, work.crew.units
    count = frame.spans(m)
    if count is None or m.wall_length_m is None:
        return
    wire = round_up(formulae.wire_to_buy_m(m.wall_length_m, m.tiers, frame.ENDS_M, m.waste_percent / 100), 1)
    eyes = m.tiers * (count + 1)
    tensioners = m.tensioners or m.tiers
    rows: list[tuple[Cell, ...]] = [
        (_wire_named(work), f"{qty(wire, 'm')}"),
        ("Eyes", float(eyes)),
        ("Tensioners", float(tensioners)),
        ("Grips or ferrules, two a wire", float(2 * m.tiers)),
        ("Posts", float(count + 1)) if m.support == "posts" else ("Wall plugs", float(eyes)),
    ]
    working = (
        f"wire: {m.tiers} runs, two ends each and {percent(m.waste_percent)} for waste",
        f"eyes: {count + 1} a wire x {m.tiers} wires = {eyes}; tensioners: {tensioners}",
    )
    yield Figure(
        name="materials",
        label="Materials, waste included",
        value=f"{qty(wire, 'm')} of wire, {eyes} eyes, {_counted(tensioners, 'tensioner')}",
        working=working,
        references=(GEOMETRY, PRACTICE),
        table=Table(columns=("What", "How much"), units=("", ""), rows=tuple(rows)),
    )


def _ties(m: EspalierMeasures) -> Iterator[Figure]:
    arm = frame.arm_mm(m)
    if arm is None:
        return
    arms, each = formulae.laterals(m.tiers, m.trees), formulae.spans_of(arm, TIE_EVERY_MM)
    stems = m.tiers * m.trees
    yield Figure(
        name="ties",
        label="Soft ties for the whole frame",
        value=float(arms * each + stems),
        working=(
            f"one each {mm(TIE_EVERY_MM, 3)} of arm: {bare(arm, 6)} / {bare(TIE_EVERY_MM)} rounded up = {each}",
            f"{arms} arms x {each} + {stems} where a stem meets a wire = {arms * each + stems}",
        ),
        references=(PRACTICE,),
        digits=6,
    )


def _wire_named(work: T) -> str:
    m = work.measures
    size = "" if m.wire_diameter_mm is None else f"{mm(m.wire_diameter_mm)}"
    return "Wire" + "".join(f", {part}" for part in (size, m.lay or "", m.wire or "") if part)


def _counted(count: int, word: str) -> str:
    return f"{count} {word}{'' if count == 1 else 's'}"
