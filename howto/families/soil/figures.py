"""The figures of soil work, in printing order, each with working a pencil can follow."""

from collections.abc import Iterator
from datetime import date
from typing import Any

from howto.families.soil import formulae
from howto.families.soil import references as by
from howto.families.soil.measures import SoilMeasures
from howto.model.figure import Cell, Figure, Table
from howto.model.reference import GEOMETRY, PRACTICE, Reference
from howto.model.work import Work
from howto.quantities.amounts import Count, Name, Range, Words, bare, mm, percent, qty

T = Work[SoilMeasures]

COMPOST_WEIGHS = Range(593, 712, "kg/m³")  # see references.WEIGHT
COMPOST_KG_PER_M3 = 650.0  # its middle
USUAL_RING = Range(25, 50, "mm")  # see references.MULCH_TREES
GOOD_DRAINAGE = Range(25, 50, "mm/h")  # see references.PERCOLATION
STANDS_MM_PER_H = 0.1  # below it water stands: a tape shows 1 mm in ten hours
DEPTHS_MM = (25.0, 50.0, 75.0, 100.0)
DOCKET = Reference(title="the supplier's docket", grade=PRACTICE.grade)


def figures(work: T, today: date) -> Iterator[Figure]:
    """Yield the figures of one bed or lawn; nothing here depends on `today`."""
    del today
    m = work.measures
    yield from _layer(m)
    yield from _bags(m)
    yield from _weight(m)
    yield from _loads(m)
    yield _spread_at(m)
    yield from _barrows(m)
    yield _cover(m)
    yield from _mixed(m)
    yield from _ring(m)
    yield from _drainage(m)


def figure(
    name: str, label: Words, value: Cell, unit: str, working: Words | tuple[Words, ...], *who: Reference, **more: Any
) -> Figure:
    """Return a figure from its parts in the order they are printed; most need one line of working."""
    lines = (working,) if isinstance(working, str) else working
    return Figure(name=name, label=label, value=value, unit=unit, working=lines, references=who, **more)


def volume(m: SoilMeasures) -> float:
    """Return the volume of the layer that is wanted, in m³."""
    return formulae.volume_m3(m.area_m2, m.depth_mm)


def spread_mm(m: SoilMeasures) -> float:
    """Return how deep the loose material is spread, so that the wanted depth is left when it has sunk."""
    return formulae.before_settling(m.depth_mm, m.settles)


def to_order(m: SoilMeasures) -> float:
    """Return the loose volume to order, in m³."""
    return formulae.before_settling(volume(m), m.settles)


def density(m: SoilMeasures) -> tuple[float, Reference] | None:
    """Return what a cubic metre weighs in kg, and who says so; None for a material nobody weighed."""
    if m.density_kg_per_m3 is not None:
        return m.density_kg_per_m3, DOCKET
    return (COMPOST_KG_PER_M3, by.WEIGHT) if m.is_compost else None


def ring_mm(m: SoilMeasures) -> float:
    """Return the bare ring kept round stems: as written, or the wider end of the usual range."""
    return m.trunk_clear_mm if m.trunk_clear_mm is not None else USUAL_RING.high


def _layer(m: SoilMeasures) -> Iterator[Figure]:
    wanted, loose, order = qty(volume(m), "m³", 3), mm(spread_mm(m), 3), qty(to_order(m), "m³", 3)
    line = f"{qty(m.area_m2, 'm²', 5)} × {mm(m.depth_mm, 5)} / 1000 = {wanted}"
    yield figure("volume", "Volume of the layer", volume(m), "m3", line, by.VOLUME, by.COMPOST_MULCH, headline=True)
    said = "no settling is written, so the volume of the layer is ordered"
    if m.settles:
        said = f"{wanted} / (1 - {bare(m.settles)}) = {order}, to make up for what sinks"
        line, who = f"{mm(m.depth_mm, 5)} / (1 - {bare(m.settles)}) = {loose}", (GEOMETRY, PRACTICE)
        yield figure("spread depth", "Spread it, before it sinks", spread_mm(m), "mm", line, *who, client=True)
    yield figure("order", "Order", to_order(m), "m3", said, GEOMETRY, headline=True)


def _bags(m: SoilMeasures) -> Iterator[Figure]:
    if m.bag_l is None:
        return
    exact, count = to_order(m) * 1000 / m.bag_l, formulae.bags(to_order(m), m.bag_l)
    line = f"{qty(to_order(m), 'm³', 3)} × 1000 / {qty(m.bag_l, 'L', 3)} = {bare(exact)}"
    line = f"{line}, rounded up = {Count(count, 'bag', 'bags')}"
    yield figure("bags needed", "Bags", float(count), "", line, GEOMETRY, digits=6)


def _weight(m: SoilMeasures) -> Iterator[Figure]:
    found = density(m)
    if found is None:
        return
    mass = formulae.mass_kg(to_order(m), found[0])
    line = f"{qty(to_order(m), 'm³', 3)} × {qty(found[0], 'kg/m³', 3)} = {qty(mass, 'kg', 3)}"
    yield figure("weight", "Weight, more when wet", mass, "kg", line, found[1], digits=2)


def _loads(m: SoilMeasures) -> Iterator[Figure]:
    if m.load_m3 is None:
        return
    each, *who = density(m) or (None,)
    room = formulae.load_room_m3(m.load_m3, m.payload_kg, each)
    trips = formulae.loads(to_order(m), room)
    lines = [f"a load has room for {qty(m.load_m3, 'm³', 3)}"]
    if m.payload_kg is not None and each is not None:
        carried = f"{qty(m.payload_kg, 'kg', 3)} / {qty(each, 'kg/m³', 3)} = {qty(m.payload_kg / each, 'm³', 3)}"
        lines.append(f"it may carry {carried}")
    lines.append(f"{qty(to_order(m), 'm³', 3)} / {qty(room, 'm³', 3)}, rounded up = {bare(trips)}")
    yield figure("loads", "Loads", float(trips), "", tuple(lines), *who, GEOMETRY, digits=6)


def _spread_at(m: SoilMeasures) -> Figure:
    metre, litre, deep = qty(1, "m²"), qty(1, "L"), spread_mm(m)
    line = f"{metre} × {mm(deep, 3)} = {qty(deep, 'L', 3)}, since {mm(1)} on {metre} is {litre}"
    return figure("spread at", "Spread at", deep, "L/m2", line, GEOMETRY)


def _barrows(m: SoilMeasures) -> Iterator[Figure]:
    if m.barrow_l is None:
        return
    barrow, covers = qty(m.barrow_l, "L", 3), m.barrow_l / spread_mm(m)
    count, apart = formulae.bags(to_order(m), m.barrow_l), formulae.heap_every_m(m.barrow_l, spread_mm(m))
    line = f"{qty(to_order(m), 'm³', 3)} × 1000 / {barrow}, rounded up = {bare(count)}"
    yield figure("barrows", "Barrow loads", float(count), "", line, GEOMETRY, digits=6)
    lines = (
        f"a barrow covers {barrow} / {mm(spread_mm(m), 3)} = {qty(covers, 'm²', 3)}",
        f"√{bare(covers)} = {qty(apart, 'm', 3)} each way",
    )
    yield figure("heap every", "Tip a barrow every", apart, "m", lines, GEOMETRY)


def _cover(m: SoilMeasures) -> Figure:
    each = formulae.cover_m2(1, spread_mm(m))
    depths = sorted({*DEPTHS_MM, round(spread_mm(m), 1)})
    table = Table(
        columns=("Depth", "A cubic metre covers", "This area takes"),
        units=("mm", "m2", "m3"),
        rows=tuple((deep, formulae.cover_m2(1, deep), formulae.volume_m3(m.area_m2, deep)) for deep in depths),
    )
    line = f"{qty(1, 'm³')} × 1000 / {mm(spread_mm(m), 3)} = {qty(each, 'm²', 3)}"
    return figure("cover", "One cubic metre covers", each, "m2", line, by.VOLUME, GEOMETRY, table=table)


def _mixed(m: SoilMeasures) -> Iterator[Figure]:
    if m.dig_depth_mm is None or not m.is_dug_in:
        return
    part = formulae.share_mixed_in(m.depth_mm, m.dig_depth_mm) * 100
    line = f"{mm(m.depth_mm, 3)} in {mm(m.dig_depth_mm, 3)} mixed = {percent(part)}"
    label = f"{Name(m.material.capitalize())} in the mixed soil"
    yield figure("share mixed in", label, part, "%", line, by.COMPOST_DUG, by.DILUTION, digits=2)


def _ring(m: SoilMeasures) -> Iterator[Figure]:
    if m.work != "mulch":
        return
    line, who = f"a bare ring of {USUAL_RING} at least; wider round old trunks", (by.MULCH_TREES, by.COMPOST_MULCH)
    yield figure("clear of stems", "Keep clear of every stem", ring_mm(m), "mm", line, *who, headline=True, client=True)


def _drainage(m: SoilMeasures) -> Iterator[Figure]:
    if m.drained_mm is None or m.drained_in_hours is None:
        return
    rate, who = formulae.drainage_mm_per_h(m.drained_mm, m.drained_in_hours), (by.PERCOLATION, by.DRAINAGE)
    lines = (
        f"{mm(m.drained_mm, 3)} in {qty(m.drained_in_hours, 'h', 3)} = {qty(rate, 'mm/h', 3)}",
        f"{GOOD_DRAINAGE} is good; slower than a hole a day is too slow",
    )
    yield figure("drainage", "Drains at", rate, "mm/h", lines, *who, headline=True)
    if rate >= STANDS_MM_PER_H:
        hours = formulae.hours_to_drain(m.hole_mm, rate)
        line = f"{mm(m.hole_mm)} / {qty(rate, 'mm/h', 3)} = {qty(hours, 'h', 3)}"
        yield figure("hole empties in", "A full test hole empties in", hours, "h", line, *who)
