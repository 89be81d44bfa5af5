"""The figures of soil work, in printing order, each with working a pencil can follow."""

from collections.abc import Iterator
from datetime import date

from howto.families.soil import formulae
from howto.families.soil import references as by
from howto.families.soil.measures import SoilMeasures
from howto.model.figure import Figure, Table
from howto.model.reference import GEOMETRY, PRACTICE, Reference
from howto.model.work import Work
from howto.quantities.amounts import bare, mm, percent, qty

COMPOST_KG_PER_M3 = 650.0  # the middle of 593 to 712, see references.WEIGHT
RING_MM = 50.0  # the wider end of 25 to 50, see references.MULCH_TREES
STANDS_MM_PER_H = 0.1  # below it water stands: a tape shows 1 mm in ten hours
DEPTHS_MM = (25.0, 50.0, 75.0, 100.0)
DOCKET = Reference(title="the supplier's docket", grade=PRACTICE.grade)


def figures(work: Work[SoilMeasures], today: date) -> Iterator[Figure]:
    """Yield the figures of one bed or lawn; nothing here depends on `today`."""
    del today
    m = work.measures
    yield _volume(m)
    yield from _settling(m)
    yield _to_order(m)
    yield from _bags(m)
    yield from _weight(m)
    yield from _loads(m)
    yield _spread_at(m)
    yield from _barrows(m)
    yield _cover(m)
    yield from _mixed(m)
    yield from _ring(m)
    yield from _drainage(m)


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
    return m.trunk_clear_mm if m.trunk_clear_mm is not None else RING_MM


def _volume(m: SoilMeasures) -> Figure:
    return Figure(
        name="volume",
        label="Volume of the layer",
        value=volume(m),
        unit="m3",
        working=(f"{qty(m.area_m2, 'm²', 5)} × {mm(m.depth_mm, 5)} / 1000 = {qty(volume(m), 'm³', 3)}",),
        references=(by.VOLUME, by.COMPOST_MULCH),
        headline=True,
    )


def _settling(m: SoilMeasures) -> Iterator[Figure]:
    if not m.settles:
        return
    yield Figure(
        name="spread depth",
        label="Spread it, before it sinks",
        value=spread_mm(m),
        unit="mm",
        working=(f"{mm(m.depth_mm, 5)} / (1 - {bare(m.settles)}) = {mm(spread_mm(m), 3)}",),
        references=(GEOMETRY, PRACTICE),
        client=True,
    )


def _to_order(m: SoilMeasures) -> Figure:
    said = "no settling is written, so the volume of the layer is ordered"
    if m.settles:
        said = f"{qty(volume(m), 'm³', 3)} / (1 - {bare(m.settles)}) = {qty(to_order(m), 'm³', 3)}, to make up for what sinks"
    return Figure(
        name="order",
        label="Order",
        value=to_order(m),
        unit="m3",
        working=(said,),
        references=(GEOMETRY,),
        headline=True,
    )


def _bags(m: SoilMeasures) -> Iterator[Figure]:
    if m.bag_l is None:
        return
    exact = to_order(m) * 1000 / m.bag_l
    count = formulae.bags(to_order(m), m.bag_l)
    yield Figure(
        name="bags needed",
        label="Bags",
        value=float(count),
        working=(
            f"{qty(to_order(m), 'm³', 3)} × 1000 / {qty(m.bag_l, 'L', 3)} = {bare(exact)}, rounded up = {count} bags",
        ),
        references=(GEOMETRY,),
        digits=6,
    )


def _weight(m: SoilMeasures) -> Iterator[Figure]:
    found = density(m)
    if found is None:
        return
    mass = formulae.mass_kg(to_order(m), found[0])
    yield Figure(
        name="weight",
        label="Weight, more when wet",
        value=mass,
        unit="kg",
        working=(f"{qty(to_order(m), 'm³', 3)} × {qty(found[0], 'kg/m³', 3)} = {qty(mass, 'kg', 3)}",),
        references=(found[1],),
        digits=2,
    )


def _loads(m: SoilMeasures) -> Iterator[Figure]:
    if m.load_m3 is None:
        return
    found = density(m)
    each, source = found or (None, GEOMETRY)
    room = formulae.load_room_m3(m.load_m3, m.payload_kg, each)
    lines = [f"a load has room for {qty(m.load_m3, 'm³', 3)}"]
    if m.payload_kg is not None and each is not None:
        lines.append(
            f"it may carry {qty(m.payload_kg, 'kg', 3)} / {qty(each, 'kg/m³', 3)} = {qty(m.payload_kg / each, 'm³', 3)}"
        )
    trips = formulae.loads(to_order(m), room)
    lines.append(f"{qty(to_order(m), 'm³', 3)} / {qty(room, 'm³', 3)}, rounded up = {trips}")
    yield Figure(
        name="loads",
        label="Loads",
        value=float(trips),
        working=tuple(lines),
        references=(source, GEOMETRY) if source is not GEOMETRY else (GEOMETRY,),
        digits=6,
    )


def _spread_at(m: SoilMeasures) -> Figure:
    return Figure(
        name="spread at",
        label="Spread at",
        value=spread_mm(m),
        unit="L/m2",
        working=(f"1 m² × {mm(spread_mm(m), 3)} = {qty(spread_mm(m), 'L', 3)}, since 1 mm on 1 m² is 1 L",),
        references=(GEOMETRY,),
    )


def _barrows(m: SoilMeasures) -> Iterator[Figure]:
    if m.barrow_l is None:
        return
    count = formulae.bags(to_order(m), m.barrow_l)
    apart = formulae.heap_every_m(m.barrow_l, spread_mm(m))
    yield Figure(
        name="barrows",
        label="Barrow loads",
        value=float(count),
        working=(f"{qty(to_order(m), 'm³', 3)} × 1000 / {qty(m.barrow_l, 'L', 3)}, rounded up = {count}",),
        references=(GEOMETRY,),
        digits=6,
    )
    yield Figure(
        name="heap every",
        label="Tip a barrow every",
        value=apart,
        unit="m",
        working=(
            f"a barrow covers {qty(m.barrow_l, 'L', 3)} / {mm(spread_mm(m), 3)} = {qty(m.barrow_l / spread_mm(m), 'm²', 3)}",
            f"√{bare(m.barrow_l / spread_mm(m))} = {qty(apart, 'm', 3)} each way",
        ),
        references=(GEOMETRY,),
    )


def _cover(m: SoilMeasures) -> Figure:
    each = formulae.cover_m2(1, spread_mm(m))
    depths = sorted({*DEPTHS_MM, round(spread_mm(m), 1)})
    return Figure(
        name="cover",
        label="One cubic metre covers",
        value=each,
        unit="m2",
        working=(f"1 m³ × 1000 / {mm(spread_mm(m), 3)} = {qty(each, 'm²', 3)}",),
        references=(by.VOLUME, GEOMETRY),
        table=Table(
            columns=("Depth", "A cubic metre covers", "This area takes"),
            units=("mm", "m2", "m3"),
            rows=tuple((mm, formulae.cover_m2(1, mm), formulae.volume_m3(m.area_m2, mm)) for mm in depths),
        ),
    )


def _mixed(m: SoilMeasures) -> Iterator[Figure]:
    if m.dig_depth_mm is None or not m.is_dug_in:
        return
    part = formulae.share_mixed_in(m.depth_mm, m.dig_depth_mm)
    yield Figure(
        name="share mixed in",
        label=f"{m.material.capitalize()} in the mixed soil",
        value=part * 100,
        unit="%",
        working=(f"{mm(m.depth_mm, 3)} in {mm(m.dig_depth_mm, 3)} mixed = {percent(part * 100)}",),
        references=(by.COMPOST_DUG, by.DILUTION),
        digits=2,
    )


def _ring(m: SoilMeasures) -> Iterator[Figure]:
    if m.work != "mulch":
        return
    yield Figure(
        name="clear of stems",
        label="Keep clear of every stem",
        value=ring_mm(m),
        unit="mm",
        working=("a bare ring of 25 to 50 mm at least; wider round old trunks",),
        references=(by.MULCH_TREES, by.COMPOST_MULCH),
        headline=True,
        client=True,
    )


def _drainage(m: SoilMeasures) -> Iterator[Figure]:
    if m.drained_mm is None or m.drained_in_hours is None:
        return
    rate = formulae.drainage_mm_per_h(m.drained_mm, m.drained_in_hours)
    yield Figure(
        name="drainage",
        label="Drains at",
        value=rate,
        unit="mm/h",
        working=(
            f"{mm(m.drained_mm, 3)} in {qty(m.drained_in_hours, 'h', 3)} = {qty(rate, 'mm/h', 3)}",
            "25 to 50 mm/h is good; slower than a hole a day is too slow",
        ),
        references=(by.PERCOLATION, by.DRAINAGE),
        headline=True,
    )
    if rate < STANDS_MM_PER_H:
        return
    hours = formulae.hours_to_drain(m.hole_mm, rate)
    yield Figure(
        name="hole empties in",
        label="A full test hole empties in",
        value=hours,
        unit="h",
        working=(f"{mm(m.hole_mm)} / {qty(rate, 'mm/h', 3)} = {qty(hours, 'h', 3)}",),
        references=(by.PERCOLATION, by.DRAINAGE),
    )
