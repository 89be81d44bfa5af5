"""The figures of feeding, in printing order: the label, what a tree or an area gets, when, in water, and the cost."""

from collections.abc import Iterator
from datetime import date

from howto.families.feeding import formulae, plan, tables
from howto.families.feeding import references as by
from howto.families.feeding.figures_mix import cost_of, mixing
from howto.families.feeding.figures_when import dates
from howto.families.feeding.label import Label, label_of
from howto.families.feeding.measures import FeedingMeasures
from howto.model.figure import Figure
from howto.model.reference import GEOMETRY, PRACTICE, Reference
from howto.quantities.amounts import bare, mm, percent, qty

T = plan.T
STRIP_M = 10.0  # the spreader is tried on a strip of this length
CLIPPINGS_PART = 0.2  # the lower end of 20 to 30 %


def figures(work: T, today: date) -> Iterator[Figure]:
    """Yield the figures of one feeding; `today` is the day of the work."""
    m = work.measures
    label = label_of(m)
    if label is None:
        return
    yield from _label(m, label)
    if m.bag_kg is not None:
        yield _bag(m.bag_kg, label)
    if m.kind == "fruit tree":
        yield from _tree(work)
    if m.kind in {"lawn", "bed"}:
        yield from _area(work, label)
    yield from dates(work, today)
    if m.in_water:
        yield from mixing(work, label)
    yield from cost_of(work, label)


def _label(m: FeedingMeasures, label: Label) -> Iterator[Figure]:
    """Yield P and K of the label in the form that it is not printed in."""
    oxide = m.label_basis != "element"
    for name, symbol, oxide_symbol, factor, element, whole in (
        ("phosphorus", "P", "P2O5", formulae.P_IN_P2O5, label.phosphorus, label.phosphate),
        ("potassium", "K", "K2O", formulae.K_IN_K2O, label.potassium, label.potash),
    ):
        found, line = element, f"{percent(whole)} {oxide_symbol} x {factor} = {percent(element)} {symbol}"
        if not oxide:
            found, line = whole, f"{percent(element)} {symbol} / {factor} = {percent(whole)} {oxide_symbol}"
        yield Figure(
            name=f"label {name}",
            label=f"{name.capitalize()} of the label, as {symbol if oxide else oxide_symbol}",
            value=found,
            unit="%",
            working=(line,),
            references=(by.CONVERSIONS, by.LABEL_NUMBERS),
        )


def _bag(bag_kg: float, label: Label) -> Figure:
    held = formulae.nutrient_in(bag_kg, label.nitrogen)
    return Figure(
        name="bag nitrogen",
        label="Nitrogen in a bag",
        value=held,
        unit="kg",
        working=(f"{qty(bag_kg, 'kg', 3)} x {bare(label.nitrogen)} / 100 = {bare(held)} kg N",),
        references=(by.LABEL_NUMBERS,),
    )


# -- trees --


def _tree(work: T) -> Iterator[Figure]:
    need = plan.year_need(work)
    if need is not None:
        yield Figure(
            name="year nitrogen",
            label="Nitrogen a tree in a year",
            value=need.nitrogen_g,
            unit="g",
            working=need.working,
            references=need.references,
        )
    each = plan.dose_g(work)
    if each is not None:
        yield from _doses(work, each)
    yield from _ring(work, each)
    yield from _growth(work)


def _doses(work: T, each: float) -> Iterator[Figure]:
    m, need = work.measures, plan.year_need(work)
    references = need.references if need else (by.OWN_WEIGHING,)
    share = plan.spring_part(m)
    kept = "" if share >= 1 else f" x {percent(share * 100)} before autumn"
    if m.product_each_g is not None or need is None:
        line = f"as written: {qty(each, 'g', 3)}"
    else:
        line = f"{qty(need.product_g, 'g', 4)}{kept} / {m.doses} = {qty(each, 'g', 4)}"
    yield Figure(
        name="dose",
        label="Each tree, each dose",
        value=each,
        unit="g",
        working=(line,),
        references=references,
        headline=True,
    )
    if m.tree_count is not None:
        yield Figure(
            name="dose for all trees",
            label="All trees, each dose",
            value=each * m.tree_count,
            unit="g",
            working=(f"{m.tree_count} x {qty(each, 'g', 4)} = {qty(each * m.tree_count, 'g', 3)}",),
            references=references,
        )
    if m.scoop_g is not None:
        scoops = each / m.scoop_g
        yield Figure(
            name="scoops",
            label="Level scoops a tree, each dose",
            value=scoops,
            working=(f"{qty(each, 'g', 4)} / {qty(m.scoop_g, 'g', 3)} a scoop = {bare(scoops)}",),
            references=(by.OWN_WEIGHING,),
            digits=2,
        )


def _ring(work: T, each: float | None) -> Iterator[Figure]:
    m, found, area = work.measures, plan.ring(work.measures), plan.fed_m2(work.measures)
    references = plan.ring_references(m)
    if found is not None and found.area_m2 > 0:
        yield Figure(
            name="ring reach",
            label="Feed from the stem out to",
            value=found.outer_mm,
            unit="mm",
            working=(_reach(m, found),),
            references=references,
        )
    if area is None:
        return
    lines = [f"as written: {qty(area, 'm²', 3)}"]
    if m.rooting_area_m2 is None and found is not None:
        half = " / 2, since a wall takes half" if m.wall else ""
        lines = [
            f"bare: half the trunk {bare(found.bark_mm)} + {mm(found.inner_mm - found.bark_mm, 3)} = "
            f"{mm(found.inner_mm, 3)} from the middle",
            f"π x ({bare(found.outer_mm / 1000)}² - {bare(found.inner_mm / 1000)}²){half} = {qty(area, 'm²', 3)}",
        ]
    yield Figure(
        name="feed ring",
        label="Soil to feed round one tree",
        value=area,
        unit="m2",
        working=tuple(lines),
        references=references,
    )
    if each is not None:
        yield Figure(
            name="dose on the ring",
            label="That is, on each square metre",
            value=each / area,
            unit="g/m2",
            working=(f"{qty(each, 'g', 3)} / {qty(area, 'm²', 3)} = {qty(each / area, 'g/m²', 3)}",),
            references=(GEOMETRY,),
        )


def _reach(m: FeedingMeasures, found: plan.Ring) -> str:
    if m.ring_edge_mm is not None:
        return f"as written: {mm(found.outer_mm, 5)}"
    just_past = (m.canopy_mm or 0.0) / 2 + tables.JUST_PAST_MM
    if found.outer_mm > just_past:
        return f"a small tree: {mm(found.inner_mm, 5)} kept bare + 300 mm = {mm(found.outer_mm, 5)}"
    return f"canopy {bare(m.canopy_mm or 0.0, 5)} / 2 + {mm(tables.JUST_PAST_MM, 3)} past it = {mm(found.outer_mm, 5)}"


def _growth(work: T) -> Iterator[Figure]:
    m, wanted, fruit = work.measures, plan.growth_wanted(work), plan.fruit_of(work)
    if m.shoot_growth_mm is None or wanted is None or fruit is None:
        return
    grown = m.shoot_growth_mm
    if grown > wanted.high:
        verdict = "too strong: no nitrogen this year"
    elif grown < wanted.low:
        verdict = "short of its range: feed"
    else:
        verdict = "within its range: feed no more than this"
    yield Figure(
        name="growth verdict",
        label="What the shoots say",
        value=verdict,
        working=(
            f"{plan.crop_of(work)}, {'bearing' if plan.is_bearing(m) else 'young'}: "
            f"{bare(wanted.low)} to {mm(wanted.high, 3)} wanted, {mm(grown, 3)} grown",
        ),
        references=(fruit.growth_from,),
    )


# -- lawns and beds --


def _area(work: T, label: Label) -> Iterator[Figure]:
    m, found = work.measures, plan.rate(work.measures)
    if found is None:
        return
    yield _spread_rate(m, label, found)
    if m.area_m2 is not None:
        dose = formulae.on_area(found.product, m.area_m2)
        yield Figure(
            name="area dose",
            label=f"The whole {m.kind}, each dose",
            value=dose,
            unit="g",
            working=(f"{qty(m.area_m2, 'm²', 3)} x {qty(found.product, 'g/m²', 3)} = {qty(dose, 'g', 3)}",),
            references=(by.PRODUCT_AREA,),
            headline=True,
        )
    if m.kind == "lawn":
        yield from _passes(m, found)
    yield from _year(work, found)


def _spread_rate(m: FeedingMeasures, label: Label, found: plan.Rate) -> Figure:
    percent = label.of(m.wanted)
    if m.product_rate_g_per_m2 is None:
        line = (
            f"{qty(m.nutrient_rate_g_per_m2 or 0, 'g/m²', 3)} of {m.wanted} x 100 / {bare(percent)} = "
            f"{qty(found.product, 'g/m²', 3)}"
        )
    else:
        line = f"as written: {qty(found.product, 'g/m²', 3)}"
    return Figure(
        name="spread rate",
        label="Product on a square metre",
        value=found.product,
        unit="g/m2",
        working=(
            line,
            f"its nitrogen: {bare(found.product)} x {bare(label.nitrogen)} / 100 = {bare(found.nitrogen)} g/m² N",
        ),
        references=(by.PRODUCT_RATE, by.LABEL_NUMBERS),
        headline=True,
    )


def _passes(m: FeedingMeasures, found: plan.Rate) -> Iterator[Figure]:
    yield Figure(
        name="each pass",
        label="Each of two passes, crosswise",
        value=found.product / 2,
        unit="g/m2",
        working=(f"{bare(found.product)} / 2 = {qty(found.product / 2, 'g/m²', 3)}",),
        references=(PRACTICE,),
    )
    if m.spreader_width_mm is None:
        return
    strip = m.spreader_width_mm / 1000 * STRIP_M
    due = strip * found.product / 2
    yield Figure(
        name="test strip",
        label=f"A {qty(STRIP_M, 'm', 3)} run of the spreader uses",
        value=due,
        unit="g",
        working=(
            f"{qty(m.spreader_width_mm / 1000, 'm', 3)} x {qty(STRIP_M, 'm', 3)} x {qty(found.product / 2, 'g/m²', 3)} = {qty(due, 'g', 3)}",
        ),
        references=(PRACTICE,),
    )


def _year(work: T, found: plan.Rate) -> Iterator[Figure]:
    m, grass = work.measures, plan.grass_of(work)
    total = found.nitrogen * m.doses
    lines = [f"{bare(found.nitrogen)} g/m² N x {m.doses} doses = {bare(total)} g/m² N"]
    references: list[Reference] = [by.PRODUCT_RATE]
    fact = grass.nitrogen_g_per_m2_year if grass and m.kind == "lawn" else None
    if grass is not None and fact is not None:
        lines.append(f"{grass.botanical}: {bare(fact.low)} to {bare(fact.high)} g/m² N in a year")
        references.append(fact.reference(f"nitrogen of {grass.botanical}"))
        if m.clippings_left:
            less = fact.high * (1 - CLIPPINGS_PART)
            lines.append(f"clippings left give back a fifth or more: {bare(fact.high)} x 0.8 = {bare(less)} g/m² N")
            references.append(by.CLIPPINGS)
    yield Figure(
        name="year nitrogen",
        label="Nitrogen in a year",
        value=total,
        unit="g/m2",
        working=tuple(lines),
        references=tuple(references),
    )
