"""The figures of how many plants: rows, grids, slopes and what to order."""

from collections.abc import Iterator

from howto.families.planting import counts
from howto.families.planting import references as by
from howto.families.planting.measures import PlantingMeasures
from howto.model.figure import Figure
from howto.model.plants import Fact
from howto.model.reference import GEOMETRY, Grade, Reference, from_memory
from howto.model.work import Work
from howto.quantities.amounts import Range, bare, mm, percent, qty

T = Work[PlantingMeasures]


def book_spacing(work: T) -> Fact | None:
    """Return the spacing of the first plant that the book knows one of."""
    return next((plant.spacing_mm for plant in work.plants if plant.spacing_mm is not None), None)


def said_by(fact: Fact) -> str:
    """Return who says so, in words."""
    return "from memory" if fact.grade is Grade.MEMORY else f"by {fact.source}"


def area_m2(m: PlantingMeasures) -> float | None:
    """Return the face that is planted: as written or length by width, measured up the slope."""
    level = m.area_m2
    if level is None and m.bed_length_m is not None and m.bed_width_m is not None:
        level = m.bed_length_m * m.bed_width_m
    return None if level is None else counts.sloped(level, m.slope_percent or 0.0)


def plants(m: PlantingMeasures) -> int | None:
    """Return the plants that the layout takes, without any to spare; None where a measure is missing."""
    if m.spacing_mm is None:
        return None
    if m.layout == "row":
        return None if m.row_length_m is None else counts.row_count(m.row_length_m * 1000, m.spacing_mm) * m.row_count
    if m.layout == "edge":
        sides = edge_sides(m)
        return None if sides is None else sides[0] * sides[1]
    area = area_m2(m)
    if area is None:
        return None
    return (counts.square_count if m.layout == "square" else counts.triangle_count)(area, m.spacing_mm)


def edge_sides(m: PlantingMeasures) -> tuple[int, int] | None:
    """Return the plants along the length and up the width of a grid that stands on the edge."""
    if m.spacing_mm is None or m.bed_length_m is None or m.bed_width_m is None:
        return None
    wide = counts.sloped(m.bed_width_m, m.slope_percent or 0.0)
    return counts.edge_grid(m.bed_length_m * 1000, wide * 1000, m.spacing_mm)


def to_order(m: PlantingMeasures) -> int | None:
    """Return the plants to order, those to spare among them."""
    count = plants(m)
    return None if count is None else counts.with_spare(count, m.spare_percent or 0.0)


def count_figures(work: T) -> Iterator[Figure]:
    """Yield the spacing, the density, the count and the order."""
    m = work.measures
    yield from _book(work)
    if m.spacing_mm is None:
        return
    yield from _slope(m)
    yield from _density(m, m.spacing_mm)
    yield from _row_gap(m, m.spacing_mm)
    yield from _needed(m)


def _book(work: T) -> Iterator[Figure]:
    fact = book_spacing(work)
    if fact is None or work.measures.spacing_mm is None:
        return
    memory = fact.grade is Grade.MEMORY
    yield Figure(
        name="book spacing",
        label="Usual spacing of this plant",
        value=f"{Range(fact.low, fact.high, 'mm')}",
        working=(f"{bare(fact.low, 4)} to {mm(fact.high, 4)}, {said_by(fact)}",),
        references=(from_memory("spacing of this plant") if memory else by.BOOK,),
    )


def _slope(m: PlantingMeasures) -> Iterator[Figure]:
    area = area_m2(m)
    if not m.slope_percent or area is None or m.layout == "row":
        return
    factor = counts.sloped(1, m.slope_percent)
    yield Figure(
        name="sloped face",
        label="Face up the slope",
        value=area,
        unit="m2",
        working=(
            f"√(1 + {bare(m.slope_percent / 100)}²) = {bare(factor, 4)}",
            f"{qty(area / factor, 'm²', 3)} on the plan × {bare(factor, 4)} = {qty(area, 'm²', 3)}",
        ),
        references=(by.SLOPES, GEOMETRY),
    )


def _density(m: PlantingMeasures, spacing: float) -> Iterator[Figure]:
    if m.layout == "row":
        each = counts.per_metre(spacing, m.row_count)
        yield Figure(
            name="plants a metre",
            label="Plants a metre",
            value=each,
            unit="/m",
            working=(f"{m.row_count} × 1000 / {bare(spacing, 4)} = {bare(each)} a metre",),
            references=(by.HALF_IN, GEOMETRY),
        )
        return
    square = counts.square_per_m2(spacing)
    lines = [f"1000² / {bare(spacing, 4)}² = {bare(square)} a square metre"]
    found = square
    if m.layout == "triangle":
        found = counts.triangle_per_m2(spacing)
        lines.append(f"a triangle holds 2/√3 = 1.155 as many: {bare(square)} × 1.155 = {bare(found)}")
    yield Figure(
        name="plants a square metre",
        label="Plants a square metre",
        value=found,
        unit="/m2",
        working=tuple(lines),
        references=(by.COUNTS, GEOMETRY),
    )


def _row_gap(m: PlantingMeasures, spacing: float) -> Iterator[Figure]:
    if m.layout == "triangle":
        gap = counts.triangle_row_gap_mm(spacing)
        yield Figure(
            name="row to row",
            label="Row to row",
            value=gap,
            unit="mm",
            working=(f"√3 / 2 × {bare(spacing, 4)} = 0.866 × {bare(spacing, 4)} = {mm(gap, 4)}",),
            references=(GEOMETRY,),
            headline=True,
        )
    elif m.layout == "row" and m.row_count > 1 and m.row_gap_mm is not None:
        near = counts.neighbour_mm(spacing, m.row_gap_mm)
        yield Figure(
            name="plant to plant",
            label="Plant to plant across the rows",
            value=near,
            unit="mm",
            working=(f"√({bare(spacing / 2, 4)}² + {bare(m.row_gap_mm, 4)}²) = {mm(near, 4)}, staggered by half",),
            references=(GEOMETRY,),
        )


def _needed(m: PlantingMeasures) -> Iterator[Figure]:
    count, order = plants(m), to_order(m)
    if count is None or order is None:
        return
    lines, source = _counted(m, count)
    if m.spare_percent:
        lines.append(
            f"{percent(m.spare_percent)} to spare: {count} × {bare(1 + m.spare_percent / 100, 4)}, rounded up = {order}"
        )
    yield Figure(
        name="plants needed",
        label="Plants needed",
        value=float(count),
        working=tuple(lines),
        references=source,
        headline=True,
        digits=9,
    )
    yield Figure(
        name="order",
        label="Order",
        value=float(order),
        working=(lines[-1] if m.spare_percent else f"{count}, none to spare",),
        references=source,
        digits=9,
    )


def _counted(m: PlantingMeasures, count: int) -> tuple[list[str], tuple[Reference, ...]]:
    """Return how the plants are counted, and who says so."""
    spacing, area, sides = m.spacing_mm or 0.0, area_m2(m), edge_sides(m)
    if m.layout == "row":
        long = (m.row_length_m or 0.0) * 1000
        lines = [
            f"{bare(long, 6)} / {bare(spacing, 4)} = {bare(long / spacing)}, rounded up to {count // m.row_count} a row"
        ]
        if m.row_count > 1:
            lines.append(f"{m.row_count} × {count // m.row_count} = {count}")
        return [*lines, f"the end plants stand {mm(spacing / 2, 4)} in"], (by.HALF_IN, GEOMETRY)
    if m.layout == "edge" and sides is not None:
        return [
            f"along: {bare((m.bed_length_m or 0) * 1000, 6)} / {bare(spacing, 4)}, rounded down, and 1 more = {sides[0]}",
            f"across: {bare(counts.sloped(m.bed_width_m or 0, m.slope_percent or 0) * 1000, 6)} / {bare(spacing, 4)}, "
            f"rounded down, and 1 more = {sides[1]}",
            f"{sides[0]} × {sides[1]} = {count}",
        ], (GEOMETRY,)
    each = counts.square_per_m2(spacing) if m.layout == "square" else counts.triangle_per_m2(spacing)
    exact = (area or 0.0) * each
    return [f"{qty(area or 0, 'm²', 3)} × {bare(each)} a square metre = {bare(exact, 4)}, rounded up = {count}"], (
        by.COUNTS,
        GEOMETRY,
    )
