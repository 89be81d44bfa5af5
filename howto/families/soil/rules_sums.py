"""The rules of soil work that add up an order: volume, bags, and what a load weighs."""

from collections.abc import Callable, Iterator
from math import floor, log10

from howto.families.soil import formulae
from howto.families.soil import references as by
from howto.families.soil.figures import COMPOST_WEIGHS, T, density, to_order, volume
from howto.families.soil.measures import SoilMeasures
from howto.families.soil.mends import rewritten
from howto.findings import Severity
from howto.model.family import SHARE, Breach, Limit, Rule, rule
from howto.model.reference import GEOMETRY
from howto.quantities import round_down, round_up
from howto.quantities.amounts import Count, Share, mm, qty

SHORT = Limit(unit=SHARE, of="of what is needed", low=0.95, reference=GEOMETRY)  # published sums are rounded this far
OVER = Limit(unit=SHARE, of="of what is needed", high=1.15, reference=GEOMETRY)  # an order is made up to a whole load
SPARE = 0.2  # bags over what is needed
A_BAG_L, AN_ORDER_M3, A_DEPTH_MM, CLAIMED_M2 = 30, 4, 75, 15  # of published sums that are wrong


@rule(
    "soil.volume-adds-up",
    Severity.ERROR,
    by.VOLUME,
    by.COMPOST_MULCH,
    GEOMETRY,
    applies="work that writes the volume ordered",
    covers=f"{qty(formulae.cover_m2(1, A_DEPTH_MM), 'm²', 3)}",
    deep=f"{mm(A_DEPTH_MM)}",
    claimed=f"{qty(CLAIMED_M2, 'm²', 3)}",
)
def volume_adds_up(work: T) -> Iterator[Breach]:
    """The volume written is what area times depth makes.

    Square metres times millimetres over a thousand. Published sums go wrong here: a cubic metre covers {covers} at
    {deep}, not {claimed}.
    """
    m = work.measures
    if m.volume_m3 is None:
        return
    low, high = volume(m), to_order(m)
    if SHORT.allows(m.volume_m3 / low) and OVER.allows(m.volume_m3 / high):
        return
    ordered, area, deep = qty(m.volume_m3, "m³", 3), qty(m.area_m2, "m²", 3), mm(m.depth_mm, 3)
    lies, covers = formulae.depth_mm(m.volume_m3, m.area_m2), formulae.cover_m2(m.volume_m3, m.depth_mm)
    sinks = f", {qty(high, 'm³', 3)} with settling" if m.settles else ""
    found = f"{ordered} lies {mm(lies, 3)} deep, and covers {qty(covers, 'm²', 3)} at {deep}"
    why = f"{area} × {deep} = {qty(low, 'm³', 3)}{sinks}; {found}"
    yield rewritten(
        "volume_m3", _m3(high, round_up), f"{ordered} is not {deep} over {area}", why, also="measures.area_m2"
    )


@rule(
    "soil.bags-add-up",
    Severity.ERROR,
    GEOMETRY,
    applies="work that writes bags and their size",
    spare=f"{Share(SPARE)}",
    bag=f"{qty(A_BAG_L, 'L', 3)}",
    ten=f"{qty(10 * A_BAG_L / 1000, 'm³', 3)}",
    order=f"{qty(AN_ORDER_M3, 'm³', 3)}",
    takes=f"{Count(formulae.bags(AN_ORDER_M3, A_BAG_L), 'bag', 'bags')}",
)
def bags_add_up(work: T) -> Iterator[Breach]:
    """The bags written hold what is needed, and not {spare} more.

    Ten bags of {bag} are {ten}; {order} takes {takes}.
    """
    m = work.measures
    if m.bags is None or m.bag_l is None:
        return
    order, need = to_order(m), formulae.bags(to_order(m), m.bag_l)
    if need <= m.bags <= max(need + 1, floor(need * (1 + SPARE) + formulae.DUST)):
        return
    bag = qty(m.bag_l, "L", 3)
    what = f"{qty(m.bags * m.bag_l / 1000, 'm³', 3)} in {Count(m.bags, 'bag', 'bags')} of {bag}"
    worked = f"{qty(order * 1000, 'L', 3)} / {bag} = {Count(need, 'bag', 'bags')}"
    why = f"{qty(order, 'm³', 3)} is needed: {worked}"
    yield rewritten("bags", str(need), what, why, also="measures.bag_l")


@rule(
    "soil.within-payload",
    Severity.WARNING,
    by.WEIGHT,
    applies="work that writes the load and the payload, for compost or a material with its weight",
    weighs=f"{COMPOST_WEIGHS}",
)
def within_payload(work: T) -> Iterator[Breach]:
    """A full load weighs no more than the trailer may carry.

    Compost weighs {weighs}, more when wet; the plate on the trailer rules.
    """
    m, found = work.measures, density(work.measures)
    if m.load_m3 is None or m.payload_kg is None or found is None:
        return
    load, mass = qty(m.load_m3, "m³", 3), formulae.mass_kg(m.load_m3, found[0])
    if mass <= m.payload_kg * (1 + 1e-9):
        return
    room = m.payload_kg / found[0]
    carried = f"the trailer may carry {qty(m.payload_kg, 'kg', 3)}, {qty(room, 'm³', 3)} of it, and less when it is wet"
    what, why = f"a load of {load} weighs {qty(mass, 'kg', 3)}", f"{load} × {qty(found[0], 'kg/m³', 3)}; {carried}"
    yield rewritten("load_m3", _m3(room, round_down), what, why, also="measures.payload_kg")


def _m3(volume: float, rounded: Callable[[float, float], float]) -> str:
    """Return a volume as its author types it, rounded at its third figure."""
    near = rounded(volume, float(f"1e{floor(log10(volume)) - 2}"))
    return f"{f'{near:.12f}'.rstrip('0').rstrip('.')} m3"


SUMS: tuple[Rule[SoilMeasures], ...] = (volume_adds_up, bags_add_up, within_payload)
