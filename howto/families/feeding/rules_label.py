"""The rules of the label: what it says, what it allows, and sums that do not follow from it."""

import re
from collections.abc import Iterator

from howto.families.feeding import formulae, plan
from howto.families.feeding.figures_mix import mix_g_per_l
from howto.families.feeding.label import Label, as_oxides, label_of, numbers_in, price_of
from howto.families.feeding.measures import FeedingMeasures
from howto.families.feeding.mends import at_most
from howto.families.feeding.plan import T
from howto.families.feeding.references import (
    CONSTANT_FEED,
    CONVERSIONS,
    LABEL_LAW,
    LABEL_NUMBERS,
    MIX_METRIC,
    MIX_US,
    PRODUCT_AREA,
    PRODUCT_RATE,
)
from howto.families.feeding.season import gap_weeks
from howto.findings import Severity
from howto.model.family import Breach, Edit, Limit, Rule
from howto.model.reference import FORMAT, PRACTICE
from howto.quantities import show_number as num

SLACK = 0.02  # ours: how far two numbers for one thing may stand apart; the wrong sums in print are 8 % off or more
STEADY = Limit(high=250, unit="ppm N", reference=CONSTANT_FEED)
LEAST_PRODUCT_RATE, MOST_PRODUCT_RATE, MOST_MIX = 0.001, 5_000.0, 5_000.0  # see measures.py
NUTRIENTS = ("nitrogen", "phosphate", "potash")


def _apart(one: float, two: float) -> bool:
    return abs(one - two) > SLACK * max(one, two)


def label_numbers(technique: T) -> Iterator[Breach]:
    """The label is written as its three numbers, nitrogen first."""
    m = technique.measures
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


def label_total(technique: T) -> Iterator[Breach]:
    """The three numbers of a label make more than nothing and at most 100 % together."""
    m, numbers = technique.measures, numbers_in(technique.measures.analysis)
    if numbers is None:
        return
    label = as_oxides(numbers, m.label_basis or "oxide")
    if 0 < label.total <= 100 + 1e-9:
        return
    as_written = f"{num(label.nitrogen)} + {num(label.phosphate)} + {num(label.potash)} = {num(label.total)} %"
    oxides = m.label_basis == "element" and 0 < sum(numbers) <= 100
    yield Breach(
        field="measures.analysis",
        also="measures.label_basis" if oxides else "",
        what=f"the label adds up to {num(label.total)} %",
        why=f"{as_written}, counted as N, P2O5 and K2O; a bag holds more than nothing and no more than 100 %",
        mend="the numbers are of oxides: write `label basis: oxide`"
        if oxides
        else "copy the three numbers from the bag again, such as `analysis: 10-10-10`",
        edit=Edit(key="label basis", text="oxide") if oxides else Edit(key="analysis", text="10-10-10"),
    )


def label_nutrient(technique: T) -> Iterator[Breach]:
    """The bag holds the nutrient that a rate or strength is for."""
    m, label = technique.measures, label_of(technique.measures)
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


def rate_agrees(technique: T) -> Iterator[Breach]:
    """Product and nutrient rates that are both written follow from the label."""
    m, label = technique.measures, label_of(technique.measures)
    if label is None or m.nutrient_rate_g_per_m2 is None or m.product_rate_g_per_m2 is None:
        return
    percent = label.of(m.wanted)
    held = formulae.nutrient_in(m.product_rate_g_per_m2, percent)
    if percent <= 0 or not _apart(held, m.nutrient_rate_g_per_m2):
        return
    product = formulae.product_for(m.nutrient_rate_g_per_m2, percent)
    fits = LEAST_PRODUCT_RATE <= product <= MOST_PRODUCT_RATE
    key, value = ("product rate", product) if fits else ("nutrient rate", held)
    text = f"{num(value, 4)} g/m2"
    yield Breach(
        field="measures.product_rate_g_per_m2",
        also="measures.nutrient_rate_g_per_m2",
        what=f"{num(m.product_rate_g_per_m2)} g/m² of {m.analysis} is not {num(m.nutrient_rate_g_per_m2)} g/m² of "
        f"{m.wanted}",
        why=f"{num(m.product_rate_g_per_m2)} x {num(percent)} / 100 = {num(held)} g/m²; for "
        f"{num(m.nutrient_rate_g_per_m2)} g/m²: x 100 / {num(percent)} = {num(product)} g/m² of product",
        mend=f"write `{key}: {text}`",
        edit=Edit(key=key, text=text),
    )


def bag_covers(technique: T) -> Iterator[Breach]:
    """The area a bag is said to feed follows from its weight and the rate."""
    m, found = technique.measures, plan.rate(technique.measures)
    if m.bag_kg is None or m.bag_covers_m2 is None or found is None:
        return
    area = m.bag_kg * 1000 / found.product
    if not _apart(area, m.bag_covers_m2):
        return
    text = f"{num(area, 4)} m2"
    yield Breach(
        field="measures.bag_covers_m2",
        also="measures.bag_kg",
        what=f"a bag of {num(m.bag_kg)} kg is said to feed {num(m.bag_covers_m2, 4)} m²",
        why=f"{num(m.bag_kg * 1000)} g / {num(found.product)} g/m² = {num(area, 4)} m²",
        mend=f"write `bag covers: {text}`",
        edit=Edit(key="bag covers", text=text),
    )


def bag_price(technique: T) -> Iterator[Breach]:
    """The price of a bag is one amount of money."""
    text = technique.measures.bag_price
    if text is None or price_of(text) is not None:
        return
    yield Breach(
        field="measures.bag_price",
        what=f"`{text}` cannot be read as a price",
        why="a year's cost is its product / a bag x one price",
        mend="write one amount, without thousands marks, such as `bag price: 24.50`",
        edit=Edit(key="bag price", text="24.50"),
    )


def label_rate(technique: T) -> Iterator[Breach]:
    """No dose is more than the label allows; the label comes before every other rate."""
    m, label = technique.measures, label_of(technique.measures)
    most = m.label_rate_g_per_m2
    if most is None or label is None:
        return
    each, area = plan.dose_g(technique), plan.fed_m2(m)
    if m.kind == "fruit tree":
        if each is None or area is None or each / area <= most * (1 + 1e-9):
            return
        given, edit = each / area, Edit(key="product each", text=f"{at_most(most * area)} g")
        why = f"{num(each)} g a tree / {num(area)} m² = {num(given)} g/m²"
    else:
        found = plan.rate(m)
        if found is None or found.product <= most * (1 + 1e-9):
            return
        given, edit = found.product, rate_edit(m, label, most)
        why = f"{num(given)} g/m² in one dose"
    yield Breach(
        field="measures.label_rate_g_per_m2",
        what=f"a dose of {num(given)} g/m², and the label allows {num(most)}",
        why=f"{why}; the label outranks every rate here"
        + (", and with a weed killer in it, it is law" if m.weed_killer else ""),
        mend=f"write `{edit.key}: {edit.text}`",
        edit=edit,
        severity=None if m.weed_killer else Severity.WARNING,
        reference=LABEL_LAW if m.weed_killer else PRACTICE,
    )


def rate_edit(m: FeedingMeasures, label: Label, product: float) -> Edit:
    """Return the edit that brings a dose on an area down to so much product, by the rate the author wrote."""
    if m.product_rate_g_per_m2 is not None:
        return Edit(key="product rate", text=f"{at_most(product)} g/m2")
    nutrient = formulae.nutrient_in(product, label.of(m.wanted))
    return Edit(key="nutrient rate", text=f"{at_most(nutrient)} g/m2")


def strength_agrees(technique: T) -> Iterator[Breach]:
    """A strength and a mix that are both written follow from the label."""
    m, label = technique.measures, label_of(technique.measures)
    if label is None or m.feed_strength_ppm is None or m.mix_g_per_l is None:
        return
    percent = label.of(m.wanted)
    found = formulae.ppm(percent, m.mix_g_per_l)
    if percent <= 0 or not _apart(found, m.feed_strength_ppm):
        return
    grams = formulae.g_per_l_for(m.feed_strength_ppm, percent)
    edit = Edit(key="mix", text=f"{num(grams, 4)} g/L")
    if grams > MOST_MIX:
        edit = Edit(key="feed strength", text=f"{num(found, 4)} ppm")
    yield Breach(
        field="measures.mix_g_per_l",
        also="measures.feed_strength_ppm",
        what=f"{num(m.mix_g_per_l)} g/L of {m.analysis} makes {num(found)} ppm, not {num(m.feed_strength_ppm)}",
        why=f"10 x {num(percent)} x {num(m.mix_g_per_l)} = {num(found)} ppm; "
        f"{num(m.feed_strength_ppm)} / (10 x {num(percent)}) = {num(grams)} g/L",
        mend=f"write `{edit.key}: {edit.text}`",
        edit=edit,
    )


def label_mix(technique: T) -> Iterator[Breach]:
    """No mix is stronger than the label allows."""
    m, label = technique.measures, label_of(technique.measures)
    grams = mix_g_per_l(m, label) if label else None
    if label is None or grams is None or m.label_mix_g_per_l is None or grams <= m.label_mix_g_per_l * (1 + 1e-9):
        return
    edit = _mix_edit(m, label, m.label_mix_g_per_l)
    yield Breach(
        field="measures.label_mix_g_per_l",
        what=f"{num(grams)} g goes into a litre, and the label allows {num(m.label_mix_g_per_l)}",
        why="the label outranks every strength here; a stronger feed burns roots and leaves",
        mend=f"write `{edit.key}: {edit.text}`",
        edit=edit,
        severity=None if m.weed_killer else Severity.WARNING,
        reference=LABEL_LAW if m.weed_killer else PRACTICE,
    )


def steady_strength(technique: T) -> Iterator[Breach]:
    """Feed that is given every week or oftener is no stronger than 250 ppm of nitrogen."""
    m, label = technique.measures, label_of(technique.measures)
    grams = mix_g_per_l(m, label) if label else None
    if label is None or grams is None or gap_weeks(technique) > 1:
        return
    strong = formulae.ppm(label.nitrogen, grams)
    if STEADY.allows(strong):
        return
    edit = _mix_edit(m, label, formulae.g_per_l_for(250, label.nitrogen))
    yield Breach(
        field="measures.mix_g_per_l" if m.mix_g_per_l is not None else "measures.feed_strength_ppm",
        also="measures.dose_gap_weeks",
        what=f"a feed of {num(strong)} ppm N, {num(gap_weeks(technique) * 7)} days apart",
        why=f"10 x {num(label.nitrogen)} % x {num(grams)} g/L = {num(strong)} ppm; steady feed is 150 to 250 ppm N",
        mend=f"write `{edit.key}: {edit.text}`, or feed less often",
        edit=edit,
    )


def _mix_edit(m: FeedingMeasures, label: Label, grams: float) -> Edit:
    """Return the edit that brings a mix down to so many grams a litre, by the measure the author wrote."""
    if m.mix_g_per_l is not None:
        return Edit(key="mix", text=f"{at_most(grams)} g/L")
    return Edit(key="feed strength", text=f"{at_most(formulae.ppm(label.of(m.wanted), grams))} ppm")


LABEL_RULES: tuple[Rule[FeedingMeasures], ...] = (
    Rule(
        name="feeding.label-numbers",
        severity=Severity.ERROR,
        why="Every other sum starts from the label.",
        references=(LABEL_NUMBERS,),
        applies="every feeding",
        check=label_numbers,
    ),
    Rule(
        name="feeding.label-total",
        severity=Severity.ERROR,
        why="P counts 2.29 times as P2O5 and K 1.2 times as K2O, so a label read the wrong way round feeds too little "
        "or too much by that.",
        references=(CONVERSIONS, LABEL_NUMBERS),
        applies="every feeding whose label can be read",
        check=label_total,
    ),
    Rule(
        name="feeding.label-nutrient",
        severity=Severity.ERROR,
        why="No amount of a product without the nutrient supplies it.",
        references=(PRODUCT_RATE,),
        applies="techniques that write a nutrient rate or a feed strength",
        check=label_nutrient,
    ),
    Rule(
        name="feeding.rate-agrees",
        severity=Severity.ERROR,
        why="1 lb of N comes from 10 lb of 10-10-10, 20 lb of 5-10-15 and 2.17 lb of 46-0-0, not from 2 lb of it.",
        references=(PRODUCT_RATE, PRODUCT_AREA),
        applies="techniques that write both a product rate and a nutrient rate",
        check=rate_agrees,
    ),
    Rule(
        name="feeding.bag-covers",
        severity=Severity.ERROR,
        why="A 50 lb bag of 46-0-0 does 23,000 sq ft at 1 lb of N, though 25,000 has been printed; 200 lb at 5 lb a "
        "thousand is 40,000 sq ft and no acre.",
        references=(PRODUCT_AREA, PRODUCT_RATE),
        applies="techniques that write a bag, what it covers and a rate",
        check=bag_covers,
    ),
    Rule(
        name="feeding.bag-price",
        severity=Severity.WARNING,
        why="Without it there is no cost to tell a client.",
        references=(FORMAT,),
        applies="techniques that write the price of a bag",
        check=bag_price,
    ),
    Rule(
        name="feeding.label-rate",
        severity=Severity.ERROR,
        why="The maker answers for the label; a feed with a weed killer in it is a pesticide, and its label is law. "
        "For a plain feed this warns.",
        references=(LABEL_LAW, PRACTICE),
        applies="techniques that write the label's rate",
        check=label_rate,
    ),
    Rule(
        name="feeding.strength-agrees",
        severity=Severity.ERROR,
        why="0.33 x 75 is 24.75 ppm an ounce in 100 US gal, though 29.75 has been printed: 150 ppm is 6.06 oz, not 5.",
        references=(MIX_US, MIX_METRIC),
        applies="techniques that write both a feed strength and a mix",
        check=strength_agrees,
    ),
    Rule(
        name="feeding.label-mix",
        severity=Severity.ERROR,
        why="A feed that is too strong draws water out of roots; for a plain feed this warns.",
        references=(LABEL_LAW, PRACTICE),
        applies="techniques that write the label's mix",
        check=label_mix,
    ),
    Rule(
        name="feeding.steady-strength",
        severity=Severity.WARNING,
        why="Constant feed is 150 to 250 ppm of nitrogen; salts of a stronger one build up in the pot.",
        references=(CONSTANT_FEED,),
        applies="feed in water, given every week or oftener",
        check=steady_strength,
    ),
)
