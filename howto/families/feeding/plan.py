"""What is chosen before the sums: the kind of fruit, a tree's year, the rate on an area, and the ring it goes on."""

from math import pi
from typing import NamedTuple

from howto.families.feeding import formulae, tables
from howto.families.feeding import references as by
from howto.families.feeding.label import BagLabel, label_of
from howto.families.feeding.measures import Basis, CropName, FeedingMeasures
from howto.model.plants import Grass
from howto.model.reference import GEOMETRY, Reference
from howto.model.work import Work
from howto.quantities.amounts import Share, Word, Words, bare, percent, qty

T = Work[FeedingMeasures]


class NitrogenNeed(NamedTuple):
    """One tree's year: nitrogen and product in g, the sums, and who says so."""

    nitrogen_g: float
    product_g: float
    working: tuple[Words, ...]
    references: tuple[Reference, ...]


class Ring(NamedTuple):
    """The soil that is fed round a stem: from and to in mm out from its middle, the part of the circle, m².

    `bark_mm` is how far out the bark stands, half the trunk; the bare ring is measured from there.
    """

    bark_mm: float
    inner_mm: float
    outer_mm: float
    part: float
    area_m2: float


class Rate(NamedTuple):
    """One dose on an area: product and its nitrogen, g/m²."""

    product: float
    nitrogen: float


def crop_of(work: T) -> CropName | None:
    """Return the kind of fruit: as written, else by the plants."""
    if work.measures.crop is not None:
        return work.measures.crop
    names = [plant.botanical for plant in work.plants] + list(work.technique.plants)
    for name in (each.casefold() for each in names):
        named = tables.ALSO.get(name, name)
        for crop in tables.CROP_NAMES:
            genus = tables.FRUITS[crop].genus.casefold()
            if named == crop or (genus and named.startswith(genus)):
                return crop
    return None


def fruit_of(work: T) -> tables.Fruit | None:
    """Return what is known of the kind of fruit."""
    crop = crop_of(work)
    return tables.FRUITS[crop] if crop else None


def trunk_cm(m: FeedingMeasures) -> float | None:
    """Return how thick the trunk is, from its width or its girth."""
    if m.trunk_mm is not None:
        return m.trunk_mm / 10
    return None if m.trunk_girth_mm is None else m.trunk_girth_mm / pi / 10


def is_bearing(m: FeedingMeasures) -> bool:
    """Tell whether the tree crops: as written, else from five years on, and when its age is not known."""
    if m.bearing is not None:
        return m.bearing
    return m.tree_age_years is None or m.tree_age_years >= tables.MATURE_YEARS


def growth_wanted(work: T) -> tables.Growth | None:
    """Return how long new shoots should be on this tree."""
    fruit = fruit_of(work)
    if fruit is None:
        return None
    return fruit.bearing if is_bearing(work.measures) or fruit.young is None else fruit.young


def ring(m: FeedingMeasures) -> Ring | None:
    """Return the ring to feed, from the bare ring round the stem to just past the canopy; None if nothing tells."""
    if m.ring_edge_mm is None and m.canopy_mm is None:
        return None
    bark = (trunk_cm(m) or 0.0) * 5
    inner = bark + (tables.STEM_CLEAR_MM if m.stem_clear_mm is None else m.stem_clear_mm)
    outer = m.ring_edge_mm
    if outer is None:
        outer = max((m.canopy_mm or 0.0) / 2 + tables.JUST_PAST_MM, inner + tables.STEM_CLEAR_MM)
    part = 0.5 if m.wall else 1.0
    return Ring(bark, inner, outer, part, formulae.ring_m2(inner, outer, part))


def fed_m2(m: FeedingMeasures) -> float | None:
    """Return the soil fed round one tree: as written, else the ring."""
    if m.rooting_area_m2 is not None:
        return m.rooting_area_m2
    found = ring(m)
    return found.area_m2 if found and found.area_m2 > 0 else None


def basis(work: T) -> Basis | None:
    """Return how a tree's year is reckoned: as written, else by what was measured."""
    m = work.measures
    if m.kind != "fruit tree":
        return None
    if m.dose_by is not None:
        return m.dose_by
    if trunk_cm(m) is not None:
        return "trunk"
    if m.tree_age_years is not None:
        return "age"
    return "area" if fed_m2(m) is not None else None


def full_need(work: T) -> NitrogenNeed | None:
    """Return what a free-standing tree of this size gets in a year, its lawn's feed not counted."""
    m, label, fruit, how = work.measures, label_of(work.measures), fruit_of(work), basis(work)
    if label is None or label.nitrogen <= 0 or how is None:
        return None
    if how == "mature tree":
        line = f"a grown tree: {qty(tables.MATURE_G / tables.POUND_G, 'lb', 3)} of N a year = {_n(tables.MATURE_G)}"
        return NitrogenNeed(
            tables.MATURE_G, formulae.product_for(tables.MATURE_G, label.nitrogen), (line,), (by.MATURE,)
        )
    if fruit is None:
        return None
    return {"trunk": _by_trunk, "area": _by_area, "age": _by_age}[how](m, label, fruit)


def year_need(work: T) -> NitrogenNeed | None:
    """Return what one tree gets in a year: its lawn's feed taken off, and half for a trained tree."""
    m, need, label = work.measures, full_need(work), label_of(work.measures)
    if need is None or label is None:
        return None
    nitrogen, working, references = need.nitrogen_g, list(need.working), list(need.references)
    lawn = lawn_nitrogen_g(m)
    if lawn > 0:
        left = max(0.0, nitrogen - lawn)
        working.append(f"less the lawn's {_n(lawn)} on its roots: {bare(nitrogen)} - {bare(lawn)} = {_n(left)}")
        nitrogen = left
        references.append(by.TRUNK_STONE)
    if m.is_trained:
        part = nitrogen * tables.TRAINED_PART
        sums = f"{_n(nitrogen, 4)} / {bare(1 / tables.TRAINED_PART)} = {_n(part, 4)}"
        working.append(f"{Word(m.tree_form or '')}: {Share(tables.TRAINED_PART)} = {sums}")
        nitrogen = part
        references.append(by.HALF)
    product = formulae.product_for(nitrogen, label.nitrogen)
    if lawn > 0 or m.is_trained or basis(work) in {"trunk", "mature tree"}:
        working.append(f"{_n(nitrogen, 4)} x 100 / {bare(label.nitrogen)} = {qty(product, 'g', 4)} of product")
    return NitrogenNeed(nitrogen, product, tuple(working), tuple(references))


def _n(grams: float, digits: int = 3) -> Words:
    """Return grams of nitrogen."""
    return f"{qty(grams, 'g', digits)} N"


def lawn_nitrogen_g(m: FeedingMeasures) -> float:
    """Return the nitrogen that the lawn's own feed puts on the tree's roots in a year."""
    area = fed_m2(m)
    if m.ground != "grass" or m.lawn_nitrogen_g_per_m2 is None or area is None:
        return 0.0
    return m.lawn_nitrogen_g_per_m2 * area


def _by_trunk(m: FeedingMeasures, label: BagLabel, fruit: tables.Fruit) -> NitrogenNeed | None:
    thick = trunk_cm(m)
    if thick is None:
        return None
    asked = thick * fruit.nitrogen_g_per_cm
    given = min(asked, tables.MOST_TREE_G)
    lines = [f"trunk {qty(thick, 'cm', 3)} x {qty(fruit.nitrogen_g_per_cm, 'g/cm', 4)} N = {_n(asked, 4)}"]
    if m.trunk_mm is None:
        lines.insert(0, f"girth {qty((m.trunk_girth_mm or 0) / 10, 'cm', 3)} / π = {qty(thick, 'cm', 3)} across")
    references = [fruit.trunk_from, by.TRUNK_STONE]
    if given < asked:
        lines.append(f"at most {_n(given)} a tree, as in {qty(tables.CAP_PRODUCT_G / 1000, 'kg', 3)} of 10-10-10")
        references.append(by.TREE_CAP)
    product = formulae.product_for(given, label.nitrogen)
    return NitrogenNeed(given, product, tuple(lines), tuple(dict.fromkeys(references)))


def _by_area(m: FeedingMeasures, label: BagLabel, fruit: tables.Fruit) -> NitrogenNeed | None:
    rate, area = fruit.grass_g_per_m2 if m.ground == "grass" else fruit.bare_g_per_m2, fed_m2(m)
    if rate is None or area is None:
        return None
    product = rate * area
    of = f"{qty(rate, 'g/m²', 3)} of general fertiliser, {Word(m.ground or 'bare')}"
    line = f"{qty(area, 'm²', 3)} x {of} = {qty(product, 'g', 3)}"
    return _weaker(product, tables.AREA_FEED_PERCENT, label, line, (by.PER_AREA, by.GENERAL_FEED))


def _by_age(m: FeedingMeasures, label: BagLabel, fruit: tables.Fruit) -> NitrogenNeed | None:
    if fruit.full_g is None or m.tree_age_years is None:
        return None
    part, most = formulae.age_part(m.tree_age_years), bare(1 / formulae.AGE_PART)
    product = fruit.full_g * part
    line = (
        f"{Share(formulae.AGE_PART)} for each of {bare(m.tree_age_years)} years, {most} at most: "
        f"{percent(part * 100)} of {qty(fruit.full_g, 'g', 3)} = {qty(product, 'g', 3)}"
    )
    return _weaker(product, fruit.full_percent, label, line, (by.PER_AGE,))


def _weaker(
    product: float, rated_percent: float, label: BagLabel, line: Words, references: tuple[Reference, ...]
) -> NitrogenNeed:
    """Return the need with less of a product that is stronger than the one the rate is for; never with more."""
    given, lines = product, [line]
    if label.nitrogen > rated_percent:
        given = product * rated_percent / label.nitrogen
        lines.append(
            f"the rate is for {percent(rated_percent)} N and the bag has {percent(label.nitrogen)}: "
            f"{bare(product)} x {bare(rated_percent)} / {bare(label.nitrogen)} = {qty(given, 'g', 3)}"
        )
    nitrogen = formulae.nutrient_in(given, label.nitrogen)
    lines.append(f"{qty(given, 'g', 3)} x {bare(label.nitrogen)} / 100 = {_n(nitrogen)}")
    return NitrogenNeed(nitrogen, given, tuple(lines), references)


def dose_g(work: T) -> float | None:
    """Return the product one tree gets in one dose: as written, else its year split."""
    m, need = work.measures, year_need(work)
    if m.product_each_g is not None:
        return m.product_each_g
    if need is None:
        return None
    return need.product_g * spring_part(m) / m.doses


def autumn_g(work: T) -> float:
    """Return the product of the autumn dose, in the same proportion to the others."""
    m, each = work.measures, dose_g(work)
    part = spring_part(m)
    need = year_need(work)
    if part >= 1 or each is None:
        return 0.0
    if part <= 0:
        return need.product_g if need and m.product_each_g is None else each
    return each * m.doses / part * (1 - part)


def spring_part(m: FeedingMeasures) -> float:
    """Return the part of a tree's year that does not wait for autumn; all of it for what is no tree."""
    if m.kind != "fruit tree" or m.autumn_share_percent is None:
        return 1.0
    return 1 - m.autumn_share_percent / 100


def year_product_g(work: T) -> float | None:
    """Return what one tree gets in the year as it is dosed."""
    m, each = work.measures, dose_g(work)
    if each is None:
        return None
    spring = each * m.doses if spring_part(m) > 0 else 0.0
    return spring + autumn_g(work)


def rate(m: FeedingMeasures) -> Rate | None:
    """Return one dose on an area: the product rate as written, else from the nutrient wanted."""
    label = label_of(m)
    if label is None:
        return None
    product = m.product_rate_g_per_m2
    if product is None:
        percent = label.of(m.wanted)
        if m.nutrient_rate_g_per_m2 is None or percent <= 0:
            return None
        product = formulae.product_for(m.nutrient_rate_g_per_m2, percent)
    return Rate(product, formulae.nutrient_in(product, label.nitrogen))


def dose_amounts(work: T, count: int) -> tuple[tuple[float, ...], str]:
    """Return the product of each dose, and its unit: a tree's, or on a square metre; no doses where not known."""
    m = work.measures
    if m.kind == "fruit tree":
        each = dose_g(work)
        autumn = (autumn_g(work),) if spring_part(m) < 1 else ()
        return () if each is None else (each,) * (count - len(autumn)) + autumn, "g"
    found = rate(m) if m.kind != "pots" else None
    return () if found is None else (found.product,) * count, "g/m2"


def grass_of(work: T) -> Grass | None:
    """Return the lawn's grass, if the book knows it."""
    name = work.measures.grass
    return work.book.grass(name) if name else None


def ring_references(m: FeedingMeasures) -> tuple[Reference, ...]:
    """Return who says how far the ring goes."""
    said = (by.TREE_CAP, by.PER_AREA, GEOMETRY)
    return (*said, by.JUST_PAST) if m.ring_edge_mm is None else said
