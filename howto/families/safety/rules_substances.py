"""Rules over techniques of every family: what sprays, feeds, bagged mixes, bleach and heavy bags ask for."""

import re
from typing import Final

from howto.families.safety import kit
from howto.families.safety import references as by
from howto.families.safety.chemicals import ENTRY_HOURS
from howto.families.safety.kit import KitItem
from howto.families.safety.lifting import FORMS
from howto.families.safety.needs import Ask, Need, rules_of
from howto.findings import Severity
from howto.model.reference import PRACTICE
from howto.model.work import AnyWork
from howto.quantities import find_all
from howto.quantities.amounts import qty

POISON: Final = kit.words(
    r"(?:weed|moss|algae|slug)[ -]?killers?|herbicides?|pesticides?|insecticid(?:es?|al)(?: soap)?|fungicides?|"
    r"glyphosate|"
    r"slug (?:pellets|bait)|rat (?:bait|poison)|rodenticides?|miticides?|winter wash|copper spray|lime sulphur"
)
SPRAYER: Final = kit.words(r"(?:knapsack|backpack|hand|pump|pressure)?[ -]?sprayers?|knapsacks?")
HARMLESS: Final = kit.words(r"water|alcohol|bleach|meths|spirit|disinfectant|soapy|paint|limewash")
FEED: Final = kit.words(
    r"fertili[sz]ers?|superphosphate|urea|ammonium \w+|(?:sulphate|sulfate|muriate) of \w+|potash|"
    r"blood,? (?:and|&|fish) .*|bone ?meal|hoof and horn|(?:garden|hydrated|dolomite|agricultural|slaked|quick) ?lime|"
    r"sulphur|sulfur|(?:iron|magnesium|potassium) sul(?:ph|f)ate|lawn (?:food|sand|feed)|plant food"
)
MIX: Final = kit.words(
    r"potting (?:mix(?:es)?|composts?|soil)|compost(?:s|ed \w+)?|mulch(?:es)?|top ?soil|"
    r"soil (?:mix(?:es)?|conditioners?|improvers?)|leaf ?mou?ld|(?:bark|wood)[ -]chip(?:s|pings)?"
)
NOT_MIX: Final = kit.words(r"mulching|liquid|tea|extract|mulch mats?|paper mulch|stone mulch|gravel mulch")
BAGS: Final = kit.words(r"bags?|sacks?|slabs?|stones?|boulders?|tubs?|pots?|drums?|rolls?|each|apiece|root ?balls?")
HEAVY_KG: Final = 15.0  # a load this heavy asks for a thought
LOAD_KG, LOAD_LB = (FORMS[system].constant for system in FORMS)
MOST_LOAD: Final = f"{qty(LOAD_KG, 'kg', 3)} ({qty(LOAD_LB, 'lb', 3)})"


def _poison(work: AnyWork) -> KitItem | None:
    return kit.first(work, POISON)


def _spray(work: AnyWork) -> KitItem | None:
    sprayers = (each for each in kit.named(work, SPRAYER) if not HARMLESS.search(f"{each.name} {each.note}"))
    return _poison(work) or next(sprayers, None)


def _lifting(work: AnyWork) -> Ask | None:
    """Return what the heaviest single load asks for that the words of a list give."""
    loads = [
        (quantity.to("kg"), item)
        for item in kit.items(work)
        if BAGS.search(f"{item.name} {item.note}")
        for _, _, quantity in find_all(f"{item.name}: {item.note}")
        if quantity.dimension.mass == 1 and sum(map(abs, quantity.dimension)) == 1
        if not re.search(r"\b(?:in all|total|altogether)\b", item.note, re.IGNORECASE)
    ]
    kg, item = max(loads, key=lambda load: load[0], default=(0.0, None))
    if item is None or kg < HEAVY_KG:
        return None
    over, weight = kg > LOAD_KG, qty(kg, "kg", 3)
    so = "over it" if over else "over it as soon as it is held out or lifted from the ground"
    return Ask(
        item.field,
        f"`{item.name}` weighs {weight} a lift",
        f"{MOST_LOAD} is the most that the NIOSH equation recommends, close in, at the waist; {weight} is {so}",
        severity=None if over else Severity.WARNING,
    )


SUBSTANCES: Final = rules_of(
    Need(
        "spray-label", Severity.ERROR, (by.LABEL, by.LABEL_TRAINING),
        applies="techniques with a weedkiller, pesticide, fungicide, bait, or a sprayer not said to hold water",
        must="Work with a sprayed or baited chemical says to keep to the label and what to wear.",
        why="the label is the law: it says what to wear, and that nobody unprotected is near while it is put on",
        hazard="the label and what to wear",
        finds=_spray,
        covers=(r"\blabel", r"glove|\bdrift|\bwind\b|sleeves|\bmask|respirator|goggles|\bskin\b"),
        line="- **Chemical.** Keep to the label: no wind, nobody downwind, skin and eyes covered, hands washed after. "
        "→ chemical-resistant gloves, goggles, long sleeves",
    ),
    Need(
        "keep-out", Severity.ERROR, (by.LABEL_TRAINING, by.ENTRY),
        applies="techniques with a weedkiller, pesticide, fungicide or bait",
        must="Work with a chemical says when people may go in again.",
        why=f"a label prints how long nobody goes in, {qty(ENTRY_HOURS['III'], 'h')} for a product of category III",
        hazard="when people may go in again",
        finds=_poison,
        covers=(
            r"re-?ent(?:er|ry)|keep (?:\w+ ){0,3}(?:off|out)|stay (?:off|out)|until (?:\w+ ){0,4}dr(?:y|ied)|"
            r"go(?:es)? (?:back )?in|\bno entry|time on the label",
        ),
        line="- **Keep out.** Nobody goes in again, pets included, before the time on the label is over and all is "
        "dry.",
    ),
    Need(
        "fertiliser", Severity.WARNING, (PRACTICE,),
        applies="techniques with fertiliser, lime or sulphur",
        must="Work with fertiliser or lime carries a caution about it.",
        why="salts and lime burn eyes and broken skin, and pets eat what tastes of bone",
        hazard="the fertiliser",
        finds=lambda work: kit.first(work, FEED),
        covers=(r"glove|\bwash|\bdust|\blabel|\bpets?\b|child|\beyes?\b",),
        line="- **Fertiliser.** Keep to the label; keep dust off skin and out of eyes, wash hands, and keep pets off "
        "it. → gloves",
    ),
    Need(
        "mix-dust", Severity.ERROR, (by.LEGIONELLA, by.LEGIONELLA_WORK, by.LEGIONELLA_STEPS),
        applies="techniques with potting mix, compost, mulch, topsoil or soil improver",
        must="Work with potting mix, compost, mulch or soil products carries a caution about their dust.",
        why="the bacterium Legionella longbeachae lives in potting mix, compost and mulch, and is breathed in as dust",
        hazard="dust that can carry Legionella",
        finds=lambda work: kit.first(work, MIX, NOT_MIX),
        covers=(
            r"\bmask|respirator|FFP ?[23]|\bP2\b|\bdust|\bbreath|legionel", r"glove|\bdamp|\bwet|\bmoist|\bwash",
        ),
        line="- **Mix dust.** It can carry Legionella: mask and gloves on first, bags opened away from the face, damp "
        "it, wash hands. → mask, gloves",
    ),
    Need(
        "bleach", Severity.ERROR, (by.PRUNERS,),
        applies="techniques with bleach",
        must="Work with bleach says how it is poured.",
        why="bleach goes into water, never water into bleach; it splashes, burns and gives off gas with acids",
        hazard="bleach",
        finds=lambda work: kit.first(work, kit.words(r"(?:household )?bleach|sodium hypochlorite")),
        covers=(
            r"\bbleach|hypochlorite", r"\bwater|never mix|ventilat|open air|splash|glove|goggles|\beyes?\b",
        ),
        line="- **Bleach.** Pour it into the water, in open air, never with another cleaner; rinse splashes off at "
        "once. → gloves, goggles",
    ),
    Need(
        "heavy-load", Severity.ERROR, (by.WORKSHEET,),
        applies=f"techniques whose tools or materials give a bag, slab or pot of {qty(HEAVY_KG, 'kg')} or more",
        must=f"A load of {qty(HEAVY_KG, 'kg')} or more a lift carries a caution about lifting.",
        why=f"the revised NIOSH equation starts from {MOST_LOAD} and only ever takes off",
        hazard="lifting",
        finds=_lifting,
        covers=(r"\blift|\bbacks?\b|\bcarr(?:y|ied|ying)|two people|\btwos\b|barrow|trolley|\bheavy|\bweigh",),
        line="- **Lifting.** Split the load or lift it in twos: load close, knees bent, no twist; a barrow does the "
        "rest. → gloves, boots",
    ),
)  # fmt: skip
