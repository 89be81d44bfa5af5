"""Feed mixed in water: how strong, how much in each can and sprayer, and the stock; and what a year costs."""

from collections.abc import Iterator

from howto.families.feeding import formulae, plan
from howto.families.feeding.label import Label, price_of
from howto.families.feeding.measures import FeedingMeasures
from howto.families.feeding.references import CONSTANT_FEED, CONVERSIONS, MIX_METRIC, MIX_US, PRODUCT_AREA
from howto.model.figure import Figure
from howto.model.reference import GEOMETRY
from howto.quantities import show_number as num

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
            working=(f"{num(m.feed_strength_ppm or 0)} ppm / (10 x {num(percent)}) = {num(grams)} g/L",),
            references=(MIX_US, MIX_METRIC),
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
            working=(f"10 x {num(oxide)}{times} x {num(grams)} g/L = {num(found)} ppm {symbol}",),
            references=(MIX_US, MIX_METRIC, CONSTANT_FEED if symbol == "N" else CONVERSIONS),
        )


def _needed(m: FeedingMeasures, litres: float) -> Figure:
    if m.mixed_feed_l is not None:
        line = f"as written: {num(litres)} L"
    elif m.each_plant_l is not None:
        line = f"{m.plant_count or m.tree_count or 1} plants x {num(m.each_plant_l)} L = {num(litres)} L"
    else:
        line = f"{num(m.area_m2 or 0)} m² x {num(m.drench_l_per_m2 or 0)} L/m² = {num(litres)} L"
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
            working=(f"{num(grams)} g/L x {num(size)} L = {num(grams * size)} g",),
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
            working=(f"{num(m.concentrate_ml_per_l)} mL/L x {num(size)} L = {num(total)} mL",),
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
            f"{num(litres)} L / {num(size)} L = {num(litres / size)}, rounded up = {count}",
            f"the last holds {num(last)} L",
        ),
        references=(GEOMETRY,),
        digits=3,
    )


def _stock(injector: float, grams: float, litres: float | None) -> Iterator[Figure]:
    strong = formulae.stock(grams, injector)
    yield Figure(
        name="stock mix",
        label=f"Stock for a 1:{num(injector)} injector",
        value=strong,
        unit="g/L",
        working=(f"{num(injector)} x {num(grams)} g/L = {num(strong)} g/L",),
        references=(MIX_US,),
    )
    if litres is None:
        return
    drawn = formulae.stock_volume(litres, injector)
    yield Figure(
        name="stock needed",
        label="Stock to mix",
        value=drawn,
        unit="L",
        working=(f"{num(litres)} L / {num(injector)} = {num(drawn)} L",),
        references=(MIX_US,),
    )


def year_kg(work: T, label: Label) -> tuple[float, str] | None:
    """Return the product of a whole year in kg, with the sum; None where the amounts are not known."""
    m = work.measures
    if m.in_water:
        grams, litres = mix_g_per_l(m, label), feed_l(m)
        if grams is None or litres is None:
            return None
        total = grams * litres * m.doses / 1000
        return total, f"{num(grams)} g/L x {num(litres)} L x {m.doses} doses = {num(total)} kg"
    if m.kind == "fruit tree":
        each = plan.year_product_g(work)
        if each is None:
            return None
        total = each * (m.tree_count or 1) / 1000
        return total, f"{m.tree_count or 1} x {num(each, 4)} g = {num(total)} kg"
    found = plan.rate(m)
    if found is None or m.area_m2 is None or m.kind == "pots":
        return None
    total = found.product * m.area_m2 * m.doses / 1000
    return total, f"{num(m.area_m2)} m² x {num(found.product)} g/m² x {m.doses} doses = {num(total)} kg"


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
            references=(PRODUCT_AREA,),
        )
    if m.bag_kg is None:
        return
    if year is not None:
        count = formulae.bags(year[0], m.bag_kg)
        yield Figure(
            name="bags a year",
            label="Bags to buy for a year",
            value=float(count),
            working=(f"{num(year[0])} kg / {num(m.bag_kg)} kg, rounded up = {count}",),
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
            working=(f"{num(year[0])} kg / {num(m.bag_kg)} kg x {money}{paid:.2f} = {money}{used:.2f}",),
            references=(GEOMETRY,),
        )
    if label.nitrogen > 0:
        price = formulae.price_of_nutrient(paid, m.bag_kg, label.nitrogen)
        held = formulae.nutrient_in(m.bag_kg, label.nitrogen)
        yield Figure(
            name="price of nitrogen",
            label="Price of a kilogram of nitrogen",
            value=f"{money}{price:.2f}",
            working=(f"{money}{paid:.2f} / {num(held)} kg N = {money}{price:.2f}",),
            references=(GEOMETRY,),
        )
