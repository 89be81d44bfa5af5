"""Feed mixed in water: how strong, how much in each can and sprayer, and the stock; and what a year costs."""

from collections.abc import Iterator

from howto.families.feeding import formulae, plan
from howto.families.feeding import references as by
from howto.families.feeding.label import BagLabel, price_of
from howto.families.feeding.measures import FeedingMeasures
from howto.families.feeding.parts import doses, figure
from howto.families.feeding.plan import T
from howto.model.figure import Figure
from howto.model.reference import GEOMETRY
from howto.quantities.amounts import Count, Name, Words, bare, qty


def mix_g_per_l(m: FeedingMeasures, label: BagLabel | None) -> float | None:
    """Return the grams of product in a litre: as written, else for the strength wanted."""
    if label is None:
        return None
    percent = label.of(m.wanted)
    if m.mix_g_per_l is not None or m.feed_strength_ppm is None or percent <= 0:
        return m.mix_g_per_l
    return formulae.g_per_l_for(m.feed_strength_ppm, percent)


def feed_l(m: FeedingMeasures) -> float | None:
    """Return the litres of mixed feed: as written, else by plants or by area."""
    if m.mixed_feed_l is not None:
        return m.mixed_feed_l
    if m.each_plant_l is not None:
        return m.each_plant_l * _plants(m)
    if m.drench_l_per_m2 is not None and m.area_m2 is not None:
        return m.drench_l_per_m2 * m.area_m2
    return None


def _plants(m: FeedingMeasures) -> int:
    return m.plant_count or m.tree_count or 1


def mixing(work: T, label: BagLabel) -> Iterator[Figure]:
    """Yield the figures of a feed in water; those whose measures are missing are left out."""
    m = work.measures
    grams, litres = mix_g_per_l(m, label), feed_l(m)
    if grams is not None:
        yield from _strength(m, label, grams)
    if litres is not None:
        yield _needed(m, litres)
    for name, size in (("can", m.can_l), ("sprayer", m.sprayer_l)):
        if size is not None:
            yield from _filling(m, name, size, grams, litres)
    if m.injector is not None and grams is not None:
        yield from _stock(m.injector, grams, litres)


def _strength(m: FeedingMeasures, label: BagLabel, grams: float) -> Iterator[Figure]:
    mixes = (by.MIX_US, by.MIX_METRIC)
    if m.mix_g_per_l is None:
        asked = f"{qty(m.feed_strength_ppm or 0, 'ppm', 3)} / (10 x {bare(label.of(m.wanted))})"
        line = f"{asked} = {qty(grams, 'g/L', 3)}"
        yield figure("grams a litre", "Product in a litre of water", grams, "g/L", line, *mixes, headline=True)
    for name, symbol, oxide, factor in (
        ("mix strength", "N", label.nitrogen, 1.0),
        ("phosphorus strength", "P", label.phosphate, formulae.P_IN_P2O5),
        ("potassium strength", "K", label.potash, formulae.K_IN_K2O),
    ):
        found = formulae.ppm(oxide * factor, grams)
        times = "" if symbol == "N" else f" x {bare(factor, 4)}"
        line = f"10 x {bare(oxide)}{times} x {qty(grams, 'g/L', 3)} = {qty(found, 'ppm', 3)} {symbol}"
        who = by.CONSTANT_FEED if symbol == "N" else by.CONVERSIONS
        yield figure(name, f"Strength of the feed, as {symbol}", found, "ppm", line, *mixes, who)


def _needed(m: FeedingMeasures, litres: float) -> Figure:
    if m.mixed_feed_l is not None:
        line = f"as written: {qty(litres, 'L', 3)}"
    elif m.each_plant_l is not None:
        plants = Count(_plants(m), "plant", "plants")
        line = f"{plants} x {qty(m.each_plant_l, 'L', 3)} = {qty(litres, 'L', 3)}"
    else:
        line = f"{qty(m.area_m2 or 0, 'm²', 3)} x {qty(m.drench_l_per_m2 or 0, 'L/m²', 3)} = {qty(litres, 'L', 3)}"
    return figure("feed needed", "Mixed feed for all of it", litres, "L", line, GEOMETRY)


def _filling(m: FeedingMeasures, name: str, size: float, grams: float | None, litres: float | None) -> Iterator[Figure]:
    for what, kind, each, rate, unit in (
        ("grams", "Product", grams, "g/L", "g"),
        ("concentrate", "Concentrate", m.concentrate_ml_per_l, "mL/L", "mL"),
    ):
        if each is not None:
            line = f"{qty(each, rate, 3)} x {qty(size, 'L', 3)} = {qty(each * size, unit, 3)}"
            label = f"{kind} in a full {name}"
            yield figure(f"{what} a {name}", label, each * size, unit, line, GEOMETRY, headline=True)
    if litres is None:
        return
    count = formulae.fills(litres, size)
    lines = (
        f"{qty(litres, 'L', 3)} / {qty(size, 'L', 3)} = {bare(litres / size)}, rounded up = {bare(count)}",
        f"the last holds {qty(litres - (count - 1) * size, 'L', 3)}",
    )
    yield figure(f"{name} fills", f"Times to fill the {name}", float(count), "", lines, GEOMETRY, digits=3)


def _stock(injector: float, grams: float, litres: float | None) -> Iterator[Figure]:
    strong = grams * injector
    line = f"{bare(injector)} x {qty(grams, 'g/L', 3)} = {qty(strong, 'g/L', 3)}"
    yield figure("stock mix", f"Stock for a 1:{bare(injector)} injector", strong, "g/L", line, by.MIX_US)
    if litres is not None:
        drawn = litres / injector
        line = f"{qty(litres, 'L', 3)} / {bare(injector)} = {qty(drawn, 'L', 3)}"
        yield figure("stock needed", "Stock to mix", drawn, "L", line, by.MIX_US)


def year_kg(work: T, label: BagLabel) -> tuple[float, Words] | None:
    """Return the product of a whole year in kg, with the sum; None where the amounts are not known."""
    m = work.measures
    if m.in_water:
        grams, litres = mix_g_per_l(m, label), feed_l(m)
        if grams is None or litres is None:
            return None
        total, sums = grams * litres * m.doses, f"{qty(grams, 'g/L', 3)} x {qty(litres, 'L', 3)} x {doses(m.doses)}"
    elif m.kind == "fruit tree":
        each, trees = plan.year_product_g(work), m.tree_count or 1
        if each is None:
            return None
        total, sums = each * trees, f"{bare(trees)} x {qty(each, 'g', 4)}"
    else:
        found = plan.rate(m)
        if found is None or m.area_m2 is None or m.kind == "pots":
            return None
        total = found.product * m.area_m2 * m.doses
        sums = f"{qty(m.area_m2, 'm²', 3)} x {qty(found.product, 'g/m²', 3)} x {doses(m.doses)}"
    return total / 1000, f"{sums} = {qty(total / 1000, 'kg', 3)}"


def cost_of(work: T, label: BagLabel) -> Iterator[Figure]:
    """Yield the product of a year, the bags, and what they cost in the crew's money."""
    m, year, paid = work.measures, year_kg(work, label), price_of(work.measures.bag_price)

    def money(amount: float) -> Words:
        return f"{Name(f'{work.crew.currency}{amount:.2f}')}"

    if year is not None:
        yield figure("year product", "Product in a year", year[0], "kg", year[1], by.PRODUCT_AREA)
    if m.bag_kg is None:
        return
    if year is not None:
        count, part = formulae.bags(year[0], m.bag_kg), f"{qty(year[0], 'kg', 3)} / {qty(m.bag_kg, 'kg', 3)}"
        line = f"{part}, rounded up = {bare(count)}"
        yield figure("bags a year", "Bags to buy for a year", float(count), "", line, GEOMETRY)
        if paid is not None:
            used = money(year[0] / m.bag_kg * paid)
            line = f"{part} x {money(paid)} = {used}"
            yield figure("cost a year", "Cost of the feed used in a year", used, "", line, GEOMETRY)
    if paid is not None and label.nitrogen > 0:
        held = formulae.nutrient_in(m.bag_kg, label.nitrogen)
        price = money(paid / held)
        line = f"{money(paid)} / {qty(held, 'kg', 3)} N = {price}"
        yield figure("price of nitrogen", "Price of a kilogram of nitrogen", price, "", line, GEOMETRY)
