"""The rules of the label: what it says, what it allows, and sums that do not follow from it."""

import re
from collections.abc import Iterator

from howto.families.feeding import formulae, plan
from howto.families.feeding import references as by
from howto.families.feeding.figures_mix import mix_g_per_l
from howto.families.feeding.label import Label, as_oxides, label_of, numbers_in, price_of
from howto.families.feeding.measures import FeedingMeasures
from howto.families.feeding.mends import at_most
from howto.families.feeding.plan import T
from howto.families.feeding.season import gap_weeks
from howto.findings import Severity
from howto.model.family import Breach, Edit, Limit, Rule, rule, typed
from howto.model.reference import FORMAT, PRACTICE
from howto.quantities.amounts import bare, percent, qty

SLACK = 0.02  # ours: how far two numbers for one thing may stand apart; the wrong sums in print are 8 % off or more
STEADY = Limit(high=250, unit="ppm", of="N", reference=by.CONSTANT_FEED)
LEAST_PRODUCT_RATE, MOST_PRODUCT_RATE, MOST_MIX = 0.001, 5_000.0, 5_000.0  # see measures.py
NUTRIENTS = ("nitrogen", "phosphate", "potash")


def _apart(one: float, two: float) -> bool:
    return abs(one - two) > SLACK * max(one, two)


@rule("feeding.label-numbers", Severity.ERROR, by.LABEL_NUMBERS, applies="every feeding")
def label_numbers(work: T) -> Iterator[Breach]:
    """The label is written as its three numbers, nitrogen first.

    Every other sum starts from the label.
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
        what=f"`{m.analysis}` cannot be read as a label",
        why="a label gives percent by weight of N, P and K, in that order: 10 lb of 10-10-10 holds 1 lb of each",
        mend=f"copy the three numbers from the bag, 0 for one that is missing, such as `analysis: {text}`",
        edit=Edit(key="analysis", text=text),
    )


@rule(
    "feeding.label-total",
    Severity.ERROR,
    by.CONVERSIONS,
    by.LABEL_NUMBERS,
    applies="every feeding whose label can be read",
)
def label_total(work: T) -> Iterator[Breach]:
    """The three numbers of a label make more than nothing and at most 100 % together.

    P counts 2.29 times as P2O5 and K 1.2 times as K2O, so a label read the wrong way round feeds too little or
    too much by that.
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

    No amount of a product without the nutrient supplies it.
    """
    m, label = work.measures, label_of(work.measures)
    asked = m.nutrient_rate_g_per_m2 is not None or m.feed_strength_ppm is not None
    if label is None or label.total <= 0 or not asked or label.of(m.wanted) > 0:
        return
    held = max(NUTRIENTS, key=label.of)
    yield Breach(
        field="measures.nutrient" if "nutrient" in m.written else "measures.analysis",
        what=f"{m.wanted} is wanted from a bag of {m.analysis}, which holds none",
        why=f"product = rate x 100 / percent, and its percent of {m.wanted} is 0",
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

    1 lb of N comes from 10 lb of 10-10-10, 20 lb of 5-10-15 and 2.17 lb of 46-0-0, not from 2 lb of it.
    """
    m, label = work.measures, label_of(work.measures)
    if label is None or m.nutrient_rate_g_per_m2 is None or m.product_rate_g_per_m2 is None:
        return
    percent = label.of(m.wanted)
    held = formulae.nutrient_in(m.product_rate_g_per_m2, percent)
    if percent <= 0 or not _apart(held, m.nutrient_rate_g_per_m2):
        return
    product = formulae.product_for(m.nutrient_rate_g_per_m2, percent)
    fits = LEAST_PRODUCT_RATE <= product <= MOST_PRODUCT_RATE
    key, value = ("product rate", product) if fits else ("nutrient rate", held)
    text = typed(value, "g/m2")
    yield Breach(
        field="measures.product_rate_g_per_m2",
        also="measures.nutrient_rate_g_per_m2",
        what=f"{qty(m.product_rate_g_per_m2, 'g/m²', 3)} of {m.analysis} is not {qty(m.nutrient_rate_g_per_m2, 'g/m²', 3)} of "
        f"{m.wanted}",
        why=f"{bare(m.product_rate_g_per_m2)} x {bare(percent)} / 100 = {qty(held, 'g/m²', 3)}; for "
        f"{qty(m.nutrient_rate_g_per_m2, 'g/m²', 3)}: x 100 / {bare(percent)} = {qty(product, 'g/m²', 3)} of product",
        mend=f"write `{key}: {text}`",
        edit=Edit(key=key, text=text),
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

    A 50 lb bag of 46-0-0 does 23,000 sq ft at 1 lb of N, though 25,000 has been printed; 200 lb at 5 lb a
    thousand is 40,000 sq ft and no acre.
    """
    m, found = work.measures, plan.rate(work.measures)
    if m.bag_kg is None or m.bag_covers_m2 is None or found is None:
        return
    area = m.bag_kg * 1000 / found.product
    if not _apart(area, m.bag_covers_m2):
        return
    text = f"{bare(area, 4)} m2"
    yield Breach(
        field="measures.bag_covers_m2",
        also="measures.bag_kg",
        what=f"a bag of {qty(m.bag_kg, 'kg', 3)} is said to feed {qty(m.bag_covers_m2, 'm²', 4)}",
        why=f"{qty(m.bag_kg * 1000, 'g', 3)} / {qty(found.product, 'g/m²', 3)} = {qty(area, 'm²', 4)}",
        mend=f"write `bag covers: {text}`",
        edit=Edit(key="bag covers", text=text),
    )


@rule("feeding.bag-price", Severity.WARNING, FORMAT, applies="techniques that write the price of a bag")
def bag_price(work: T) -> Iterator[Breach]:
    """The price of a bag is one amount of money.

    Without it there is no cost to tell a client.
    """
    text = work.measures.bag_price
    if text is None or price_of(text) is not None:
        return
    yield Breach(
        field="measures.bag_price",
        what=f"`{text}` cannot be read as a price",
        why="a year's cost is its product / a bag x one price",
        mend="write one amount, without thousands marks, such as `bag price: 24.50`",
        edit=Edit(key="bag price", text="24.50"),
    )


@rule("feeding.label-rate", Severity.ERROR, by.LABEL_LAW, PRACTICE, applies="techniques that write the label's rate")
def label_rate(work: T) -> Iterator[Breach]:
    """No dose is more than the label allows; the label comes before every other rate.

    The maker answers for the label; a feed with a weed killer in it is a pesticide, and its label is law. For a
    plain feed this warns.
    """
    m, label = work.measures, label_of(work.measures)
    most = m.label_rate_g_per_m2
    if most is None or label is None:
        return
    each, area = plan.dose_g(work), plan.fed_m2(m)
    if m.kind == "fruit tree":
        if each is None or area is None or each / area <= most * (1 + 1e-9):
            return
        given, edit = each / area, Edit(key="product each", text=f"{at_most(most * area)} g")
        why = f"{qty(each, 'g', 3)} a tree / {qty(area, 'm²', 3)} = {qty(given, 'g/m²', 3)}"
    else:
        found = plan.rate(m)
        if found is None or found.product <= most * (1 + 1e-9):
            return
        given, edit = found.product, rate_edit(m, label, most)
        why = f"{qty(given, 'g/m²', 3)} in one dose"
    yield Breach(
        field="measures.label_rate_g_per_m2",
        what=f"a dose of {qty(given, 'g/m²', 3)}, and the label allows {bare(most)}",
        why=f"{why}; the label outranks every rate here"
        + (", and with a weed killer in it, it is law" if m.weed_killer else ""),
        mend=f"write `{edit.key}: {edit.text}`",
        edit=edit,
        severity=None if m.weed_killer else Severity.WARNING,
        reference=by.LABEL_LAW if m.weed_killer else PRACTICE,
    )


def rate_edit(m: FeedingMeasures, label: Label, product: float) -> Edit:
    """Return the edit that brings a dose on an area down to so much product, by the rate the author wrote."""
    if m.product_rate_g_per_m2 is not None:
        return Edit(key="product rate", text=f"{at_most(product)} g/m2")
    nutrient = formulae.nutrient_in(product, label.of(m.wanted))
    return Edit(key="nutrient rate", text=f"{at_most(nutrient)} g/m2")


@rule(
    "feeding.strength-agrees",
    Severity.ERROR,
    by.MIX_US,
    by.MIX_METRIC,
    applies="techniques that write both a feed strength and a mix",
)
def strength_agrees(work: T) -> Iterator[Breach]:
    """A strength and a mix that are both written follow from the label.

    0.33 x 75 is 24.75 ppm an ounce in 100 US gal, though 29.75 has been printed: 150 ppm is 6.06 oz, not 5.
    """
    m, label = work.measures, label_of(work.measures)
    if label is None or m.feed_strength_ppm is None or m.mix_g_per_l is None:
        return
    percent = label.of(m.wanted)
    found = formulae.ppm(percent, m.mix_g_per_l)
    if percent <= 0 or not _apart(found, m.feed_strength_ppm):
        return
    grams = formulae.g_per_l_for(m.feed_strength_ppm, percent)
    edit = Edit(key="mix", text=f"{qty(grams, 'g/L', 4)}")
    if grams > MOST_MIX:
        edit = Edit(key="feed strength", text=f"{bare(found, 4)} ppm")
    yield Breach(
        field="measures.mix_g_per_l",
        also="measures.feed_strength_ppm",
        what=f"{qty(m.mix_g_per_l, 'g/L', 3)} of {m.analysis} makes {bare(found)} ppm, not {bare(m.feed_strength_ppm)}",
        why=f"10 x {bare(percent)} x {bare(m.mix_g_per_l)} = {bare(found)} ppm; "
        f"{bare(m.feed_strength_ppm)} / (10 x {bare(percent)}) = {qty(grams, 'g/L', 3)}",
        mend=f"write `{edit.key}: {edit.text}`",
        edit=edit,
    )


@rule("feeding.label-mix", Severity.ERROR, by.LABEL_LAW, PRACTICE, applies="techniques that write the label's mix")
def label_mix(work: T) -> Iterator[Breach]:
    """No mix is stronger than the label allows.

    A feed that is too strong draws water out of roots; for a plain feed this warns.
    """
    m, label = work.measures, label_of(work.measures)
    grams = mix_g_per_l(m, label) if label else None
    if label is None or grams is None or m.label_mix_g_per_l is None or grams <= m.label_mix_g_per_l * (1 + 1e-9):
        return
    edit = _mix_edit(m, label, m.label_mix_g_per_l)
    yield Breach(
        field="measures.label_mix_g_per_l",
        what=f"{qty(grams, 'g', 3)} goes into a litre, and the label allows {bare(m.label_mix_g_per_l)}",
        why="the label outranks every strength here; a stronger feed burns roots and leaves",
        mend=f"write `{edit.key}: {edit.text}`",
        edit=edit,
        severity=None if m.weed_killer else Severity.WARNING,
        reference=by.LABEL_LAW if m.weed_killer else PRACTICE,
    )


@rule(
    "feeding.steady-strength", Severity.WARNING, by.CONSTANT_FEED, applies="feed in water, given every week or oftener"
)
def steady_strength(work: T) -> Iterator[Breach]:
    """Feed that is given every week or oftener is no stronger than 250 ppm of nitrogen.

    Constant feed is 150 to 250 ppm of nitrogen; salts of a stronger one build up in the pot.
    """
    m, label = work.measures, label_of(work.measures)
    grams = mix_g_per_l(m, label) if label else None
    if label is None or grams is None or gap_weeks(work) > 1:
        return
    strong = formulae.ppm(label.nitrogen, grams)
    if STEADY.allows(strong):
        return
    edit = _mix_edit(m, label, formulae.g_per_l_for(250, label.nitrogen))
    yield Breach(
        field="measures.mix_g_per_l" if m.mix_g_per_l is not None else "measures.feed_strength_ppm",
        also="measures.dose_gap_weeks",
        what=f"a feed of {bare(strong)} ppm N, {bare(gap_weeks(work) * 7)} days apart",
        why=f"10 x {percent(label.nitrogen)} x {qty(grams, 'g/L', 3)} = {bare(strong)} ppm; steady feed is 150 to 250 ppm N",
        mend=f"write `{edit.key}: {edit.text}`, or feed less often",
        edit=edit,
    )


def _mix_edit(m: FeedingMeasures, label: Label, grams: float) -> Edit:
    """Return the edit that brings a mix down to so many grams a litre, by the measure the author wrote."""
    if m.mix_g_per_l is not None:
        return Edit(key="mix", text=f"{at_most(grams)} g/L")
    return Edit(key="feed strength", text=f"{at_most(formulae.ppm(label.of(m.wanted), grams))} ppm")


LABEL_RULES: tuple[Rule[FeedingMeasures], ...] = (
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
