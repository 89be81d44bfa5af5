"""Feed mixed in water: how strong, how much in each can and sprayer, and the stock; and what a year costs."""

from collections.abc import Iterator

from howto.families.feeding import formulae, plan
from howto.families.feeding import references as by
from howto.families.feeding.label import Label, price_of
from howto.families.feeding.measures import FeedingMeasures
from howto.model.figure import Figure
from howto.model.reference import GEOMETRY
from howto.quantities.amounts import bare, qty

T = plan.T


def mix_g_per_l(m: FeedingMeasures, label: Label) -> float | None:
    """Return the grams of product in a litre: as written, else for the strength wanted."""
    if m.mix_g_per_l is not None:
        return m.mix_g_per_l
    percent = label.of(m.wanted)
    if m.feed_strength_ppm is None or percent <= 0:
        return None
    return formulae.g_per_l_for(m.feed_strength_ppm, percent)


def feed_l(m: FeedingMeasures) -> float | None:
    """Return the litres of mixed feed: as written, else by plants or by area."""
    if m.mixed_feed_l is not None:
        return m.mixed_feed_l
    if m.each_plant_l is not None:
        return m.each_plant_l * (m.plant_count or m.tree_count or 1)
    if m.drench_l_per_m2 is not None and m.area_m2 is not None:
        return m.drench_l_per_m2 * m.area_m2
    return None


def mixing(work: T, label: Label) -> Iterator[Figure]:
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


def _strength(m: FeedingMeasures, label: Label, grams: float) -> Iterator[Figure]:
    percent = label.of(m.wanted)
    if m.mix_g_per_l is None:
        yield Figure(
            name="grams a litre",
            label="Product in a litre of water",
            value=grams,
            unit="g/L",
            working=(f"{bare(m.feed_strength_ppm or 0)} ppm / (10 x {bare(percent)}) = {qty(grams, 'g/L', 3)}",),
            references=(by.MIX_US, by.MIX_METRIC),
            headline=True,
        )
    for name, symbol, oxide, factor in (
        ("mix strength", "N", label.nitrogen, 1.0),
        ("phosphorus strength", "P", label.phosphate, formulae.P_IN_P2O5),
        ("potassium strength", "K", label.potash, formulae.K_IN_K2O),
    ):
        found = formulae.ppm(oxide * factor, grams)
        times = "" if symbol == "N" else f" x {factor}"
        yield Figure(
            name=name,
            label=f"Strength of the feed, as {symbol}",
            value=found,
            unit="ppm",
            working=(f"10 x {bare(oxide)}{times} x {qty(grams, 'g/L', 3)} = {bare(found)} ppm {symbol}",),
            references=(by.MIX_US, by.MIX_METRIC, by.CONSTANT_FEED if symbol == "N" else by.CONVERSIONS),
        )


def _needed(m: FeedingMeasures, litres: float) -> Figure:
    if m.mixed_feed_l is not None:
        line = f"as written: {qty(litres, 'L', 3)}"
    elif m.each_plant_l is not None:
        line = f"{m.plant_count or m.tree_count or 1} plants x {qty(m.each_plant_l, 'L', 3)} = {qty(litres, 'L', 3)}"
    else:
        line = f"{qty(m.area_m2 or 0, 'm²', 3)} x {qty(m.drench_l_per_m2 or 0, 'L/m²', 3)} = {qty(litres, 'L', 3)}"
    return Figure(
        name="feed needed",
        label="Mixed feed for all of it",
        value=litres,
        unit="L",
        working=(line,),
        references=(GEOMETRY,),
    )


def _filling(m: FeedingMeasures, name: str, size: float, grams: float | None, litres: float | None) -> Iterator[Figure]:
    if grams is not None:
        yield Figure(
            name=f"grams a {name}",
            label=f"Product in a full {name}",
            value=grams * size,
            unit="g",
            working=(f"{qty(grams, 'g/L', 3)} x {qty(size, 'L', 3)} = {qty(grams * size, 'g', 3)}",),
            references=(GEOMETRY,),
            headline=True,
        )
    if m.concentrate_ml_per_l is not None:
        total = m.concentrate_ml_per_l * size
        yield Figure(
            name=f"concentrate a {name}",
            label=f"Concentrate in a full {name}",
            value=total,
            unit="mL",
            working=(f"{qty(m.concentrate_ml_per_l, 'mL/L', 3)} x {qty(size, 'L', 3)} = {qty(total, 'mL', 3)}",),
            references=(GEOMETRY,),
            headline=True,
        )
    if litres is None:
        return
    count = formulae.fills(litres, size)
    last = litres - (count - 1) * size
    yield Figure(
        name=f"{name} fills",
        label=f"Times to fill the {name}",
        value=float(count),
        working=(
            f"{qty(litres, 'L', 3)} / {qty(size, 'L', 3)} = {bare(litres / size)}, rounded up = {count}",
            f"the last holds {qty(last, 'L', 3)}",
        ),
        references=(GEOMETRY,),
        digits=3,
    )


def _stock(injector: float, grams: float, litres: float | None) -> Iterator[Figure]:
    strong = formulae.stock(grams, injector)
    yield Figure(
        name="stock mix",
        label=f"Stock for a 1:{bare(injector)} injector",
        value=strong,
        unit="g/L",
        working=(f"{bare(injector)} x {qty(grams, 'g/L', 3)} = {qty(strong, 'g/L', 3)}",),
        references=(by.MIX_US,),
    )
    if litres is None:
        return
    drawn = formulae.stock_volume(litres, injector)
    yield Figure(
        name="stock needed",
        label="Stock to mix",
        value=drawn,
        unit="L",
        working=(f"{qty(litres, 'L', 3)} / {bare(injector)} = {qty(drawn, 'L', 3)}",),
        references=(by.MIX_US,),
    )


def year_kg(work: T, label: Label) -> tuple[float, str] | None:
    """Return the product of a whole year in kg, with the sum; None where the amounts are not known."""
    m = work.measures
    if m.in_water:
        grams, litres = mix_g_per_l(m, label), feed_l(m)
        if grams is None or litres is None:
            return None
        total = grams * litres * m.doses / 1000
        return total, f"{qty(grams, 'g/L', 3)} x {qty(litres, 'L', 3)} x {m.doses} doses = {qty(total, 'kg', 3)}"
    if m.kind == "fruit tree":
        each = plan.year_product_g(work)
        if each is None:
            return None
        total = each * (m.tree_count or 1) / 1000
        return total, f"{m.tree_count or 1} x {qty(each, 'g', 4)} = {qty(total, 'kg', 3)}"
    found = plan.rate(m)
    if found is None or m.area_m2 is None or m.kind == "pots":
        return None
    total = found.product * m.area_m2 * m.doses / 1000
    return (
        total,
        f"{qty(m.area_m2, 'm²', 3)} x {qty(found.product, 'g/m²', 3)} x {m.doses} doses = {qty(total, 'kg', 3)}",
    )


def cost_of(work: T, label: Label) -> Iterator[Figure]:
    """Yield the product of a year, the bags, and what they cost in the crew's money."""
    m, year, money = work.measures, year_kg(work, label), work.crew.currency
    if year is not None:
        yield Figure(
            name="year product",
            label="Product in a year",
            value=year[0],
            unit="kg",
            working=(year[1],),
            references=(by.PRODUCT_AREA,),
        )
    if m.bag_kg is None:
        return
    if year is not None:
        count = formulae.bags(year[0], m.bag_kg)
        yield Figure(
            name="bags a year",
            label="Bags to buy for a year",
            value=float(count),
            working=(f"{qty(year[0], 'kg', 3)} / {qty(m.bag_kg, 'kg', 3)}, rounded up = {count}",),
            references=(GEOMETRY,),
        )
    paid = price_of(m.bag_price)
    if paid is None:
        return
    if year is not None:
        used = formulae.cost(year[0], m.bag_kg, paid)
        yield Figure(
            name="cost a year",
            label="Cost of the feed used in a year",
            value=f"{money}{used:.2f}",
            working=(f"{qty(year[0], 'kg', 3)} / {qty(m.bag_kg, 'kg', 3)} x {money}{paid:.2f} = {money}{used:.2f}",),
            references=(GEOMETRY,),
        )
    if label.nitrogen > 0:
        price = formulae.price_of_nutrient(paid, m.bag_kg, label.nitrogen)
        held = formulae.nutrient_in(m.bag_kg, label.nitrogen)
        yield Figure(
            name="price of nitrogen",
            label="Price of a kilogram of nitrogen",
            value=f"{money}{price:.2f}",
            working=(f"{money}{paid:.2f} / {bare(held)} kg N = {money}{price:.2f}",),
            references=(GEOMETRY,),
        )
