"""The figures of feeding, in printing order: the label, what a tree or an area gets, when, in water, and the cost."""

from collections.abc import Iterator
from datetime import date

from howto.families.feeding import formulae, plan, tables
from howto.families.feeding import references as by
from howto.families.feeding.figures_mix import cost_of, mixing
from howto.families.feeding.label import BagLabel, label_of
from howto.families.feeding.measures import FeedingMeasures
from howto.families.feeding.parts import doses, figure
from howto.families.feeding.plan import T
from howto.families.feeding.season import dates
from howto.model.figure import Figure
from howto.model.reference import GEOMETRY, PRACTICE, Reference
from howto.quantities.amounts import Name, Range, Share, Word, Words, bare, mm, percent, qty

STRIP_M = 10.0  # the spreader is tried on a strip of this length
CLIPPINGS_PART = 0.2  # the lower end of 20 to 30 %


def figures(work: T, today: date) -> Iterator[Figure]:
    """Yield the figures of one feeding; `today` is the day of the work."""
    m = work.measures
    label = label_of(m)
    if label is None:
        return
    yield from _label(m, label)
    if m.kind == "fruit tree":
        yield from _tree(work)
    if m.kind in {"lawn", "bed"}:
        yield from _area(work, label)
    yield from dates(work, today)
    if m.in_water:
        yield from mixing(work, label)
    yield from cost_of(work, label)


def _label(m: FeedingMeasures, label: BagLabel) -> Iterator[Figure]:
    """Yield P and K of the label in the form that it is not printed in, and the nitrogen of a bag."""
    who = (by.CONVERSIONS, by.LABEL_NUMBERS)
    for name, symbol, oxide, factor, element, whole in (
        ("phosphorus", "P", "P2O5", formulae.P_IN_P2O5, label.phosphorus, label.phosphate),
        ("potassium", "K", "K2O", formulae.K_IN_K2O, label.potassium, label.potash),
    ):
        said = f"{percent(whole)} {oxide}", f"{percent(element)} {symbol}"
        found, line, form = element, f"{said[0]} x {bare(factor, 4)} = {said[1]}", symbol
        if m.label_basis == "element":
            found, line, form = whole, f"{said[1]} / {bare(factor, 4)} = {said[0]}", oxide
        yield figure(f"label {name}", f"{name.capitalize()} of the label, as {form}", found, "%", line, *who)
    if m.bag_kg is not None:
        held = formulae.nutrient_in(m.bag_kg, label.nitrogen)
        line = f"{qty(m.bag_kg, 'kg', 3)} x {bare(label.nitrogen)} / 100 = {qty(held, 'kg', 3)} N"
        yield figure("bag nitrogen", "Nitrogen in a bag", held, "kg", line, by.LABEL_NUMBERS)


# -- trees --


def _tree(work: T) -> Iterator[Figure]:
    need, each = plan.year_need(work), plan.dose_g(work)
    if need is not None:
        yield figure("year nitrogen", "Nitrogen a tree in a year", need.nitrogen_g, "g", need.working, *need.references)
    if each is not None:
        yield from _doses(work, each, need)
    yield from _ring(work, each)
    yield from _growth(work)


def _doses(work: T, each: float, need: plan.NitrogenNeed | None) -> Iterator[Figure]:
    m, said = work.measures, qty(each, "g", 4)
    who = need.references if need else (by.OWN_WEIGHING,)
    share = plan.spring_part(m)
    kept = "" if share >= 1 else f" x {percent(share * 100)} before autumn"
    line = f"as written: {qty(each, 'g', 3)}"
    if m.product_each_g is None and need is not None:
        line = f"{qty(need.product_g, 'g', 4)}{kept} / {bare(m.doses)} = {said}"
    yield figure("dose", "Each tree, each dose", each, "g", line, *who, headline=True)
    if m.tree_count is not None:
        whole = each * m.tree_count
        line = f"{bare(m.tree_count)} x {said} = {qty(whole, 'g', 3)}"
        yield figure("dose for all trees", "All trees, each dose", whole, "g", line, *who)
    if m.scoop_g is not None:
        scoops = each / m.scoop_g
        line = f"{said} / {qty(m.scoop_g, 'g', 3)} a scoop = {bare(scoops)}"
        yield figure("scoops", "Level scoops a tree, each dose", scoops, "", line, by.OWN_WEIGHING, digits=2)


def _ring(work: T, each: float | None) -> Iterator[Figure]:
    m, found, area = work.measures, plan.ring(work.measures), plan.fed_m2(work.measures)
    who = plan.ring_references(m)
    if found is not None and found.area_m2 > 0:
        yield figure("ring reach", "Feed from the stem out to", found.outer_mm, "mm", _reach(m, found), *who)
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
    yield figure("feed ring", "Soil to feed round one tree", area, "m2", lines, *who)
    if each is not None:
        line = f"{qty(each, 'g', 3)} / {qty(area, 'm²', 3)} = {qty(each / area, 'g/m²', 3)}"
        yield figure("dose on the ring", "That is, on each square metre", each / area, "g/m2", line, GEOMETRY)


def _reach(m: FeedingMeasures, found: plan.Ring) -> Words:
    outer = mm(found.outer_mm, 5)
    if m.ring_edge_mm is not None:
        return f"as written: {outer}"
    canopy = m.canopy_mm or 0.0
    if found.outer_mm > canopy / 2 + tables.JUST_PAST_MM:
        return f"a small tree: {mm(found.inner_mm, 5)} kept bare + {mm(tables.STEM_CLEAR_MM, 3)} = {outer}"
    return f"canopy {bare(canopy, 5)} / 2 + {mm(tables.JUST_PAST_MM, 3)} past it = {outer}"


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
    age = Word("bearing" if plan.is_bearing(m) else "young")
    line = f"{Word(plan.crop_of(work) or '')}, {age}: {Range(*wanted, 'mm')} wanted, {mm(grown, 3)} grown"
    yield figure("growth verdict", "What the shoots say", verdict, "", line, fruit.growth_from)


# -- lawns and beds --


def _area(work: T, label: BagLabel) -> Iterator[Figure]:
    m, found = work.measures, plan.rate(work.measures)
    if found is None:
        return
    each = qty(found.product, "g/m²", 3)
    line = f"as written: {each}"
    if m.product_rate_g_per_m2 is None:
        asked = qty(m.nutrient_rate_g_per_m2 or 0, "g/m²", 3)
        line = f"{asked} of {Word(m.wanted)} x 100 / {bare(label.of(m.wanted))} = {each}"
    nitrogen = qty(found.nitrogen, "g/m²", 3)
    lines = (line, f"its nitrogen: {bare(found.product)} x {bare(label.nitrogen)} / 100 = {nitrogen} N")
    who = (by.PRODUCT_RATE, by.LABEL_NUMBERS)
    yield figure("spread rate", "Product on a square metre", found.product, "g/m2", lines, *who, headline=True)
    if m.area_m2 is not None:
        dose = found.product * m.area_m2
        line = f"{qty(m.area_m2, 'm²', 3)} x {each} = {qty(dose, 'g', 3)}"
        yield figure("area dose", f"The whole {m.kind}, each dose", dose, "g", line, by.PRODUCT_AREA, headline=True)
    if m.kind == "lawn":
        yield from _passes(m, found)
    yield from _year(work, found)


def _passes(m: FeedingMeasures, found: plan.Rate) -> Iterator[Figure]:
    half = found.product / 2
    line = f"{bare(found.product)} / 2 = {qty(half, 'g/m²', 3)}"
    yield figure("each pass", "Each of two passes, crosswise", half, "g/m2", line, PRACTICE)
    if m.spreader_width_mm is not None:
        due, strip = m.spreader_width_mm / 1000 * STRIP_M * half, qty(STRIP_M, "m", 3)
        line = f"{qty(m.spreader_width_mm / 1000, 'm', 3)} x {strip} x {qty(half, 'g/m²', 3)} = {qty(due, 'g', 3)}"
        yield figure("test strip", f"A {strip} run of the spreader uses", due, "g", line, PRACTICE)


def _year(work: T, found: plan.Rate) -> Iterator[Figure]:
    m, grass = work.measures, plan.grass_of(work)
    total = found.nitrogen * m.doses
    lines = [f"{qty(found.nitrogen, 'g/m²', 3)} N x {doses(m.doses)} = {qty(total, 'g/m²', 3)} N"]
    who: list[Reference] = [by.PRODUCT_RATE]
    fact = grass.nitrogen_g_per_m2_year if grass and m.kind == "lawn" else None
    if grass is not None and fact is not None:
        lines.append(f"{Name(grass.botanical)}: {Range(fact.low, fact.high, 'g/m²')} N in a year")
        who.append(fact.reference(f"nitrogen of {grass.botanical}"))
        if m.clippings_left:
            part = 1 - CLIPPINGS_PART
            sums = f"{bare(fact.high)} x {bare(part)} = {qty(fact.high * part, 'g/m²', 3)} N"
            lines.append(f"clippings left give back {Share(CLIPPINGS_PART)} or more: {sums}")
            who.append(by.CLIPPINGS)
    yield figure("year nitrogen", "Nitrogen in a year", total, "g/m2", lines, *who)
