"""The figures of how many plants: rows, grids, slopes and what to order."""

from collections.abc import Iterator

from howto.families.planting import counts
from howto.families.planting import references as by
from howto.families.planting.measures import PlantingMeasures
from howto.families.planting.parts import worked
from howto.model.figure import Figure
from howto.model.plants import Fact
from howto.model.reference import GEOMETRY, Grade, Reference, from_memory
from howto.model.work import Work
from howto.quantities.amounts import Name, Range, Words, bare, mm, percent, qty

T = Work[PlantingMeasures]


def book_spacing(work: T) -> tuple[str, Fact] | None:
    """Return the first plant that the book knows a spacing of, and the spacing."""
    known = ((plant.botanical, plant.spacing_mm) for plant in work.plants)
    return next(((name, fact) for name, fact in known if fact is not None), None)


def said_by(fact: Fact) -> Words:
    """Return who says so, in words."""
    return "from memory" if fact.grade is Grade.MEMORY else f"by {Name(fact.source)}"


def count_figures(work: T) -> Iterator[Figure]:
    """Yield the spacing, the density, the count and the order."""
    m, known = work.measures, book_spacing(work)
    if m.spacing_mm is None:
        return
    if known is not None:
        _, fact = known
        spread = f"{Range(fact.low, fact.high, 'mm')}"
        who = from_memory("spacing of this plant") if fact.grade is Grade.MEMORY else by.BOOK
        line = f"{bare(fact.low, 4)} to {mm(fact.high, 4)}, {said_by(fact)}"
        yield worked("book spacing", "Usual spacing of this plant", spread, "", [line], who)
    yield from _slope(m)
    yield _density(m, m.spacing_mm)
    yield from _row_gap(m, m.spacing_mm)
    yield from _needed(m, m.spacing_mm)


def _slope(m: PlantingMeasures) -> Iterator[Figure]:
    area = counts.area_m2(m)
    if not m.slope_percent or area is None or m.layout == "row":
        return
    factor = counts.sloped(1, m.slope_percent)
    lines = (
        f"√(1 + {bare(m.slope_percent / 100)}²) = {bare(factor, 4)}",
        f"{qty(area / factor, 'm²', 3)} on the plan × {bare(factor, 4)} = {qty(area, 'm²', 3)}",
    )
    yield worked("sloped face", "Face up the slope", area, "m2", lines, by.SLOPES, GEOMETRY)


def _density(m: PlantingMeasures, spacing: float) -> Figure:
    if m.layout == "row":
        each = counts.per_metre(spacing, m.row_count)
        line = f"{bare(m.row_count)} × 1000 / {bare(spacing, 4)} = {bare(each)} a metre"
        return worked("plants a metre", "Plants a metre", each, "/m", [line], by.HALF_IN, GEOMETRY)
    found = square = counts.per_m2(spacing)
    lines = [f"1000² / {bare(spacing, 4)}² = {bare(square)} a square metre"]
    if m.layout == "triangle":
        found, more = counts.per_m2(spacing, triangle=True), bare(1 / counts.TRIANGLE, 4)
        lines.append(f"a triangle holds 2/√3 = {more} as many: {bare(square)} × {more} = {bare(found)}")
    return worked("plants a square metre", "Plants a square metre", found, "/m2", lines, by.COUNTS, GEOMETRY)


def _row_gap(m: PlantingMeasures, spacing: float) -> Iterator[Figure]:
    if m.layout == "triangle":
        gap, apart = counts.triangle_row_gap_mm(spacing), bare(spacing, 4)
        line = f"√3 / 2 × {apart} = {bare(counts.TRIANGLE)} × {apart} = {mm(gap, 4)}"
        yield worked("row to row", "Row to row", gap, "mm", [line], GEOMETRY, headline=True)
    elif m.layout == "row" and m.row_count > 1 and m.row_gap_mm is not None:
        near = counts.neighbour_mm(spacing, m.row_gap_mm)
        line = f"√({bare(spacing / 2, 4)}² + {bare(m.row_gap_mm, 4)}²) = {mm(near, 4)}, staggered by half"
        yield worked("plant to plant", "Plant to plant across the rows", near, "mm", [line], GEOMETRY)


def _needed(m: PlantingMeasures, spacing: float) -> Iterator[Figure]:
    count, order = counts.plants(m), counts.to_order(m)
    if count is None or order is None:
        return
    (*lines,), who = counted(m, spacing, count)
    ordered = f"{bare(count)}, none to spare"
    if m.spare_percent:
        share, more = percent(m.spare_percent), bare(1 + m.spare_percent / 100, 4)
        ordered = f"{share} to spare: {bare(count)} × {more}, rounded up = {bare(order)}"
        lines.append(ordered)
    yield worked("plants needed", "Plants needed", float(count), "", lines, *who, headline=True, digits=9)
    yield worked("order", "Order", float(order), "", [ordered], *who, digits=9)


def counted(m: PlantingMeasures, spacing: float, count: int) -> tuple[list[Words], tuple[Reference, ...]]:
    """Return how the plants are counted, and who says so."""
    area, sides, every = counts.area_m2(m), counts.edge_sides(m), bare(spacing, 4)
    if m.layout == "row":
        long, a_row = (m.row_length_m or 0.0) * 1000, bare(count // m.row_count)
        lines = [f"{bare(long, 6)} / {every} = {bare(long / spacing)}, rounded up to {a_row} a row"]
        if m.row_count > 1:
            lines.append(f"{bare(m.row_count)} × {a_row} = {bare(count)}")
        return [*lines, f"the end plants stand {mm(spacing / 2, 4)} in"], (by.HALF_IN, GEOMETRY)
    if m.layout == "edge" and sides is not None:
        long, wide = counts.edge_mm(m)
        along, across = map(bare, sides)
        return [
            f"along: {bare(long, 6)} / {every}, rounded down, and 1 more = {along}",
            f"across: {bare(wide, 6)} / {every}, rounded down, and 1 more = {across}",
            f"{along} × {across} = {bare(count)}",
        ], (GEOMETRY,)
    each = counts.per_m2(spacing, triangle=m.layout == "triangle")
    exact = bare((area or 0.0) * each, 4)
    line = f"{qty(area or 0, 'm²', 3)} × {bare(each)} a square metre = {exact}, rounded up = {bare(count)}"
    return [line], (by.COUNTS, GEOMETRY)
