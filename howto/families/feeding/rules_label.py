"""The rules of the label: what it says, what it allows, and sums that do not follow from it."""

import re
from collections.abc import Iterator
from typing import get_args

from howto.families.feeding import formulae, plan
from howto.families.feeding import references as by
from howto.families.feeding.figures_mix import mix_g_per_l
from howto.families.feeding.label import BagLabel, as_oxides, label_of, numbers_in, price_of
from howto.families.feeding.measures import FeedingMeasures, Nutrient
from howto.families.feeding.parts import anew, at_most, to_write, written
from howto.families.feeding.plan import T
from howto.families.feeding.season import gap_weeks
from howto.findings import Severity
from howto.model.family import Breach, Edit, Limit, rule
from howto.model.reference import FORMAT, PRACTICE
from howto.quantities.amounts import Name, Word, bare, percent, qty

SLACK = 0.02  # ours: how far two numbers for one thing may stand apart; the wrong sums in print are 8 % off or more
STEADY = Limit(high=250, unit="ppm", of="N", reference=by.CONSTANT_FEED)
LEAST_PRODUCT_RATE, MOST_PRODUCT_RATE, MOST_MIX = 0.001, 5_000.0, 5_000.0  # see measures.py


def _apart(one: float, two: float) -> bool:
    return abs(one - two) > SLACK * max(one, two)


@rule("feeding.label-numbers", Severity.ERROR, by.LABEL_NUMBERS, applies="every feeding")
def label_numbers(work: T) -> Iterator[Breach]:
    """The label is written as its three numbers, nitrogen first.

    a label gives percent by weight of N, P and K, in that order: 10 lb of 10-10-10 holds 1 lb of each
    """
    m = work.measures
    if numbers_in(m.analysis) is not None:
        return
    found = re.findall(r"\d+(?:\.\d+)?", m.analysis)
    three = {1: [*found, "0", "0"], 3: found}.get(len(found), ["10", "10", "10"])
    if sum(map(float, three)) > 100:
        three = ["10", "10", "10"]
    text = "-".join(three)
    yield Breach(
        field="measures.analysis",
        what=f"`{Name(m.analysis)}` cannot be read as a label",
        why="",
        mend=f"copy the three numbers from the bag, 0 for one that is missing, such as `analysis: {text}`",
        edit=Edit(key="analysis", text=text),
    )


@rule(
    "feeding.label-total",
    Severity.ERROR,
    by.CONVERSIONS,
    by.LABEL_NUMBERS,
    applies="every feeding whose label can be read",
    p=f"{bare(1 / formulae.P_IN_P2O5)}",
    k=f"{bare(1 / formulae.K_IN_K2O)}",
)
def label_total(work: T) -> Iterator[Breach]:
    """The three numbers of a label make more than nothing and at most 100 % together.

    P counts {p} times as P2O5 and K {k} times as K2O, so a label read the wrong way round feeds too little or too
    much by that
    """
    m, numbers = work.measures, numbers_in(work.measures.analysis)
    if numbers is None:
        return
    label = as_oxides(numbers, m.label_basis or "oxide")
    if 0 < label.total <= 100 + 1e-9:
        return
    as_written = f"{bare(label.nitrogen)} + {bare(label.phosphate)} + {bare(label.potash)} = {percent(label.total)}"
    oxides = m.label_basis == "element" and 0 < sum(numbers) <= 100
    yield Breach(
        field="measures.analysis",
        also="measures.label_basis" if oxides else "",
        what=f"the label adds up to {percent(label.total)}",
        why=f"{as_written}, counted as N, P2O5 and K2O; a bag holds more than nothing and no more than 100 %",
        mend="the numbers are of oxides: write `label basis: oxide`"
        if oxides
        else "copy the three numbers from the bag again, such as `analysis: 10-10-10`",
        edit=Edit(key="label basis", text="oxide") if oxides else Edit(key="analysis", text="10-10-10"),
    )


@rule(
    "feeding.label-nutrient",
    Severity.ERROR,
    by.PRODUCT_RATE,
    applies="techniques that write a nutrient rate or a feed strength",
)
def label_nutrient(work: T) -> Iterator[Breach]:
    """The bag holds the nutrient that a rate or strength is for.

    no amount of a product without the nutrient supplies it: product = rate x 100 / percent, and its percent is 0
    """
    m, label = work.measures, label_of(work.measures)
    asked = m.nutrient_rate_g_per_m2 is not None or m.feed_strength_ppm is not None
    if label is None or label.total <= 0 or not asked or label.of(m.wanted) > 0:
        return
    held = max(get_args(Nutrient), key=label.of)
    yield Breach(
        field="measures.nutrient" if "nutrient" in m.written else "measures.analysis",
        what=f"{Word(m.wanted)} is wanted from a bag of {Name(m.analysis)}, which holds none",
        why="",
        mend=f"choose another bag, or write `nutrient: {held}`",
        edit=Edit(key="nutrient", text=held),
    )


@rule(
    "feeding.rate-agrees",
    Severity.ERROR,
    by.PRODUCT_RATE,
    by.PRODUCT_AREA,
    applies="techniques that write both a product rate and a nutrient rate",
)
def rate_agrees(work: T) -> Iterator[Breach]:
    """Product and nutrient rates that are both written follow from the label.

    1 lb of N comes from 10 lb of 10-10-10, 20 lb of 5-10-15 and 2.17 lb of 46-0-0, not from 2 lb of it
    """
    m, label = work.measures, label_of(work.measures)
    if label is None or m.nutrient_rate_g_per_m2 is None or m.product_rate_g_per_m2 is None:
        return
    part = label.of(m.wanted)
    held = formulae.nutrient_in(m.product_rate_g_per_m2, part)
    if part <= 0 or not _apart(held, m.nutrient_rate_g_per_m2):
        return
    product = formulae.product_for(m.nutrient_rate_g_per_m2, part)
    fits = LEAST_PRODUCT_RATE <= product <= MOST_PRODUCT_RATE
    key, value = ("product rate", product) if fits else ("nutrient rate", held)
    given, asked = qty(m.product_rate_g_per_m2, "g/m²", 3), qty(m.nutrient_rate_g_per_m2, "g/m²", 3)
    yield to_write(
        "product_rate_g_per_m2",
        Edit(written(value, "g/m2"), key),
        f"{given} of {Name(m.analysis)} is not {asked} of {Word(m.wanted)}",
        f"{given} x {bare(part)} / 100 = {qty(held, 'g/m²', 3)}; for {asked}: x 100 / {bare(part)} = "
        f"{qty(product, 'g/m²', 3)} of product",
        also="measures.nutrient_rate_g_per_m2",
    )


@rule(
    "feeding.bag-covers",
    Severity.ERROR,
    by.PRODUCT_AREA,
    by.PRODUCT_RATE,
    applies="techniques that write a bag, what it covers and a rate",
)
def bag_covers(work: T) -> Iterator[Breach]:
    """The area a bag is said to feed follows from its weight and the rate.

    a 50 lb bag of 46-0-0 does 23,000 sq ft at 1 lb of N, though 25,000 has been printed; 200 lb at 5 lb a thousand is
    40,000 sq ft and no acre
    """
    m, found = work.measures, plan.rate(work.measures)
    if m.bag_kg is None or m.bag_covers_m2 is None or found is None:
        return
    area = m.bag_kg * 1000 / found.product
    if _apart(area, m.bag_covers_m2):
        yield anew(
            "bag_covers_m2",
            written(area, "m2"),
            f"a bag of {qty(m.bag_kg, 'kg', 3)} is said to feed {qty(m.bag_covers_m2, 'm²', 4)}",
            f"{qty(m.bag_kg * 1000, 'g', 3)} / {qty(found.product, 'g/m²', 3)} = {qty(area, 'm²', 4)}",
            also="measures.bag_kg",
        )


@rule("feeding.bag-price", Severity.WARNING, FORMAT, applies="techniques that write the price of a bag")
def bag_price(work: T) -> Iterator[Breach]:
    """The price of a bag is one amount of money.

    a year's cost is its product / a bag x one price
    """
    text = work.measures.bag_price
    if text is not None and price_of(text) is None:
        yield Breach(
            field="measures.bag_price",
            what=f"`{Name(text)}` cannot be read as a price",
            why="",
            mend="write one amount, without thousands marks, such as `bag price: 24.50`",
            edit=Edit(key="bag price", text="24.50"),
        )


@rule("feeding.label-rate", Severity.ERROR, by.LABEL_LAW, PRACTICE, applies="techniques that write the label's rate")
def label_rate(work: T) -> Iterator[Breach]:
    """No dose is more than the label allows; the label comes before every other rate.

    the maker answers for the label; a feed with a weed killer in it is a pesticide, and its label is law; for a plain
    feed this warns
    """
    m, label = work.measures, label_of(work.measures)
    most = m.label_rate_g_per_m2
    if most is None or label is None:
        return
    each, area, found = plan.dose_g(work), plan.fed_m2(m), plan.rate(m)
    if m.kind == "fruit tree":
        given = each / area if each is not None and area is not None else 0.0
    else:
        given = found.product if found else 0.0
    if given <= most * (1 + 1e-9):
        return
    said = qty(given, "g/m²", 3)
    edit, why = rate_edit(m, label, most), f"{said} in one dose"
    if m.kind == "fruit tree":
        edit = Edit(at_most(most * (area or 0.0), "g"), "product each")
        why = f"{qty(each or 0.0, 'g', 3)} a tree / {qty(area or 0.0, 'm²', 3)} = {said}"
    law = ", and with a weed killer in it, it is law" if m.weed_killer else ""
    yield to_write(
        "label_rate_g_per_m2",
        edit,
        f"a dose of {said}, and the label allows {qty(most, 'g/m²', 3)}",
        f"{why}; the label outranks every rate here{law}",
        severity=None if m.weed_killer else Severity.WARNING,
        reference=by.LABEL_LAW if m.weed_killer else PRACTICE,
    )


def rate_edit(m: FeedingMeasures, label: BagLabel, product: float) -> Edit:
    """Return the edit that brings a dose on an area down to so much product, by the rate the author wrote."""
    if m.product_rate_g_per_m2 is not None:
        return Edit(at_most(product, "g/m2"), "product rate")
    return Edit(at_most(formulae.nutrient_in(product, label.of(m.wanted)), "g/m2"), "nutrient rate")


@rule(
    "feeding.strength-agrees",
    Severity.ERROR,
    by.MIX_US,
    by.MIX_METRIC,
    applies="techniques that write both a feed strength and a mix",
)
def strength_agrees(work: T) -> Iterator[Breach]:
    """A strength and a mix that are both written follow from the label.

    0.33 x 75 is 24.75 ppm an ounce in 100 US gal, though 29.75 has been printed: 150 ppm is 6.06 oz, not 5
    """
    m, label = work.measures, label_of(work.measures)
    if label is None or m.feed_strength_ppm is None or m.mix_g_per_l is None:
        return
    part = label.of(m.wanted)
    found = formulae.ppm(part, m.mix_g_per_l)
    if part <= 0 or not _apart(found, m.feed_strength_ppm):
        return
    grams = formulae.g_per_l_for(m.feed_strength_ppm, part)
    edit = Edit(written(grams, "g/L"), "mix")
    if grams > MOST_MIX:
        edit = Edit(written(found, "ppm"), "feed strength")
    makes = qty(found, "ppm", 3)
    yield to_write(
        "mix_g_per_l",
        edit,
        f"{qty(m.mix_g_per_l, 'g/L', 3)} of {Name(m.analysis)} makes {makes}, not {bare(m.feed_strength_ppm)}",
        f"10 x {bare(part)} x {bare(m.mix_g_per_l)} = {makes}; "
        f"{bare(m.feed_strength_ppm)} / (10 x {bare(part)}) = {bare(grams)} g/L",
        also="measures.feed_strength_ppm",
    )


@rule("feeding.label-mix", Severity.ERROR, by.LABEL_LAW, PRACTICE, applies="techniques that write the label's mix")
def label_mix(work: T) -> Iterator[Breach]:
    """No mix is stronger than the label allows.

    the label outranks every strength here; a stronger feed draws water out of roots and burns leaves; for a plain
    feed this warns
    """
    m, label = work.measures, label_of(work.measures)
    grams, most = mix_g_per_l(m, label), m.label_mix_g_per_l
    if label is None or grams is None or most is None or grams <= most * (1 + 1e-9):
        return
    yield to_write(
        "label_mix_g_per_l",
        _mix_edit(m, label, most),
        f"{qty(grams, 'g', 3)} goes into a litre, and the label allows {qty(most, 'g', 3)}",
        "the label outranks every strength here; a stronger feed burns roots and leaves",
        severity=None if m.weed_killer else Severity.WARNING,
        reference=by.LABEL_LAW if m.weed_killer else PRACTICE,
    )


@rule(
    "feeding.steady-strength",
    Severity.WARNING,
    by.CONSTANT_FEED,
    applies="feed in water, given every week or oftener",
    most=STEADY.most,
)
def steady_strength(work: T) -> Iterator[Breach]:
    """Feed that is given every week or oftener is no stronger than {most} of nitrogen.

    salts of a stronger feed, given so often, build up in the pot
    """
    m, label = work.measures, label_of(work.measures)
    grams = mix_g_per_l(m, label)
    if label is None or grams is None or gap_weeks(work) > 1:
        return
    strong = formulae.ppm(label.nitrogen, grams)
    if STEADY.allows(strong):
        return
    said = qty(strong, "ppm", 3)
    yield to_write(
        "mix_g_per_l" if m.mix_g_per_l is not None else "feed_strength_ppm",
        _mix_edit(m, label, formulae.g_per_l_for(STEADY.nearest(strong), label.nitrogen)),
        f"a feed of {said} N, {bare(gap_weeks(work) * 7)} days apart",
        f"10 x {percent(label.nitrogen)} x {bare(grams)} g/L = {said}; steady feed is {STEADY}",
        then=", or feed less often",
        also="measures.dose_gap_weeks",
    )


def _mix_edit(m: FeedingMeasures, label: BagLabel, grams: float) -> Edit:
    """Return the edit that brings a mix down to so many grams a litre, by the measure the author wrote."""
    if m.mix_g_per_l is not None:
        return Edit(at_most(grams, "g/L"), "mix")
    return Edit(at_most(formulae.ppm(label.of(m.wanted), grams), "ppm"), "feed strength")


RULES = (
    label_numbers,
    label_total,
    label_nutrient,
    rate_agrees,
    bag_covers,
    bag_price,
    label_rate,
    strength_agrees,
    label_mix,
    steady_strength,
)
