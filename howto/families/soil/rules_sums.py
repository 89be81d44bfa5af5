"""The rules of soil work that add up an order: volume, bags, and what a load weighs."""

from collections.abc import Iterator
from math import floor, log10

from howto.families.soil import formulae
from howto.families.soil.figures import density, to_order, volume
from howto.families.soil.measures import SoilMeasures
from howto.families.soil.references import COMPOST_MULCH, VOLUME, WEIGHT
from howto.findings import Severity
from howto.model.family import SHARE, Breach, Edit, Limit, Rule, rule
from howto.model.reference import GEOMETRY
from howto.model.work import Work
from howto.quantities import round_down, round_up
from howto.quantities.amounts import bare, mm, qty

T = Work[SoilMeasures]

SHORT = Limit(low=0.95, unit=SHARE, of="of what is needed", reference=GEOMETRY)  # published sums are rounded this far
OVER = Limit(
    high=1.15, unit=SHARE, of="of what is needed", reference=GEOMETRY
)  # and an order is made up to a whole load
SPARE = 1.2  # bags: no more than a fifth over


@rule(
    "soil.volume-adds-up",
    Severity.ERROR,
    VOLUME,
    COMPOST_MULCH,
    GEOMETRY,
    applies="work that writes the volume ordered",
)
def volume_adds_up(work: T) -> Iterator[Breach]:
    """The volume written is what area times depth makes.

    Square metres times millimetres over a thousand. Published sums go wrong here: 4 cubic yards over 1,000
    square feet is 1.3 in, not 2; 1 m³ covers 13.3 m² at 75 mm, not 15.
    """
    m = work.measures
    if m.volume_m3 is None:
        return
    low, high = volume(m), to_order(m)
    if SHORT.allows(m.volume_m3 / low) and OVER.allows(m.volume_m3 / high):
        return
    deep = formulae.depth_mm(m.volume_m3, m.area_m2)
    text = f"{bare(round_up(high, _step(high)), 5)} m3"
    sinks = f", {qty(high, 'm³', 3)} with settling" if m.settles else ""
    yield Breach(
        field="measures.volume_m3",
        also="measures.area_m2",
        what=f"{qty(m.volume_m3, 'm³', 3)} is not {mm(m.depth_mm, 3)} over {qty(m.area_m2, 'm²', 3)}",
        why=f"{qty(m.area_m2, 'm²', 3)} × {mm(m.depth_mm, 3)} / 1000 = {qty(low, 'm³', 3)}{sinks}; "
        f"{qty(m.volume_m3, 'm³', 3)} lies {mm(deep, 3)} deep, and covers "
        f"{qty(formulae.cover_m2(m.volume_m3, m.depth_mm), 'm²', 3)} at {mm(m.depth_mm, 3)}",
        mend=f"write `volume: {text}`",
        edit=Edit(key="volume", text=text),
    )


@rule("soil.bags-add-up", Severity.ERROR, GEOMETRY, applies="work that writes bags and their size")
def bags_add_up(work: T) -> Iterator[Breach]:
    """The bags written hold what is needed, and not a fifth more.

    Ten bags of 30 L are 0.3 m³, not one; 4 m³ takes 134 of them.
    """
    m = work.measures
    if m.bags is None or m.bag_l is None:
        return
    need = formulae.bags(to_order(m), m.bag_l)
    if need <= m.bags <= max(need + 1, floor(need * SPARE)):
        return
    held = f"{m.bags} bags of {qty(m.bag_l, 'L', 3)} hold" if m.bags > 1 else f"1 bag of {qty(m.bag_l, 'L', 3)} holds"
    yield Breach(
        field="measures.bags",
        also="measures.bag_l",
        what=f"{held} {qty(m.bags * m.bag_l / 1000, 'm³', 3)}",
        why=f"{qty(to_order(m), 'm³', 3)} is needed: × 1000 / {qty(m.bag_l, 'L', 3)} = {need} bag{'s' if need > 1 else ''}",
        mend=f"write `bags: {need}`",
        edit=Edit(key="bags", text=str(need)),
    )


@rule(
    "soil.within-payload",
    Severity.WARNING,
    WEIGHT,
    applies="work that writes the load and the payload, for compost or a material with its weight",
)
def within_payload(work: T) -> Iterator[Breach]:
    """A full load weighs no more than the trailer may carry.

    Compost weighs 593 to 712 kg a cubic metre, more when wet; the plate on the trailer rules.
    """
    m, found = work.measures, density(work.measures)
    if m.load_m3 is None or m.payload_kg is None or found is None:
        return
    mass = formulae.mass_kg(m.load_m3, found[0])
    if mass <= m.payload_kg * (1 + 1e-9):
        return
    room = m.payload_kg / found[0]
    text = f"{bare(round_down(room, _step(room)), 5)} m3"
    yield Breach(
        field="measures.load_m3",
        also="measures.payload_kg",
        what=f"a load of {qty(m.load_m3, 'm³', 3)} weighs {qty(mass, 'kg', 3)}",
        why=f"{qty(m.load_m3, 'm³', 3)} × {qty(found[0], 'kg/m³', 3)}; the trailer may carry {qty(m.payload_kg, 'kg', 3)}, "
        f"{qty(room, 'm³', 3)} of it, and less when it is wet",
        mend=f"write `load: {text}`",
        edit=Edit(key="load", text=text),
    )


def _step(value: float) -> float:
    """Return the third place of a number, to which a mend is rounded."""
    return float(f"1e{floor(log10(value)) - 2}")


SUMS: tuple[Rule[SoilMeasures], ...] = (volume_adds_up, bags_add_up, within_payload)
