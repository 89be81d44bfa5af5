"""Rules over techniques of every family: what sprays, feeds, bagged mixes, bleach and heavy bags ask for."""

import re
from typing import Any, Final

from howto.families.safety import kit
from howto.families.safety import references as by
from howto.families.safety.kit import Item
from howto.families.safety.needs import Ask, Need, listed, says
from howto.findings import Severity
from howto.model.family import Rule
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
LOAD_CONSTANT_KG: Final = 23.0  # NIOSH: no lift, however good, is recommended above this


def _poison(work: AnyWork) -> Item | None:
    return kit.first(work, POISON)


def _sprayer(work: AnyWork) -> Item | None:
    return next((each for each in kit.named(work, SPRAYER) if not HARMLESS.search(f"{each.name} {each.note}")), None)


def _spray(work: AnyWork) -> Ask | None:
    item = _poison(work) or _sprayer(work)
    return listed(
        item,
        "the label is the law: it says what to wear, and that nobody unprotected is near while it is put on",
        "- **Chemical.** Keep to the label: no wind, nobody downwind, skin and eyes covered, hands washed after. "
        "→ chemical-resistant gloves, goggles, long sleeves",
    )


def _reentry(work: AnyWork) -> Ask | None:
    item = _poison(work)
    return listed(
        item,
        "a label prints how long nobody goes in, 12 h for a product of category III",
        "- **Keep out.** Nobody goes in again, pets included, before the time on the label is over and all is dry.",
    )


def _feed(work: AnyWork) -> Ask | None:
    item = kit.first(work, FEED)
    return listed(
        item,
        "salts and lime burn eyes and broken skin, and pets eat what tastes of bone",
        "- **Fertiliser.** Keep to the label; keep dust off skin and out of eyes, wash hands, and keep pets off it. "
        "→ gloves",
    )


def _mix(work: AnyWork) -> Ask | None:
    item = kit.first(work, MIX, NOT_MIX)
    return listed(
        item,
        "Legionella longbeachae lives in potting mix, compost, mulch and soil products, and is breathed in as dust",
        "- **Mix dust.** It can carry Legionella: mask and gloves on first, bags opened away from the face, damp it, "
        "wash hands. → mask, gloves",
    )


def _bleach(work: AnyWork) -> Ask | None:
    item = kit.first(work, kit.words(r"(?:household )?bleach|sodium hypochlorite"))
    return listed(
        item,
        "bleach goes into water, never water into bleach; it splashes, burns and gives off gas with acids",
        "- **Bleach.** Pour it into the water, in open air, never with another cleaner; rinse splashes off at once. "
        "→ gloves, goggles",
    )


def _heaviest(work: AnyWork) -> tuple[Item, float] | None:
    """Return the item with the heaviest single load that its words give, and its kg."""
    loads = [
        (quantity.to("kg"), item)
        for item in kit.items(work)
        if BAGS.search(f"{item.name} {item.note}")
        for _, _, quantity in find_all(f"{item.name}: {item.note}")
        if quantity.dimension.mass == 1 and sum(map(abs, quantity.dimension)) == 1
        if not re.search(r"\b(?:in all|total|altogether)\b", item.note, re.IGNORECASE)
    ]
    if not loads:
        return None
    kg, item = max(loads, key=lambda load: load[0])
    return (item, kg) if kg >= HEAVY_KG else None


def _lifting(work: AnyWork) -> Ask | None:
    found = _heaviest(work)
    if found is None:
        return None
    item, kg = found
    over = kg > LOAD_CONSTANT_KG
    return Ask(
        item.field,
        f"`{item.name}` weighs {qty(kg, 'kg', 3)} a lift",
        f"23 kg (51 lb) is the most that the NIOSH equation recommends, close in, at the waist; {qty(kg, 'kg', 3)} is "
        + ("over it" if over else "over it as soon as it is held out or lifted from the ground"),
        "- **Lifting.** Split the load or lift it in twos: load close, knees bent, no twist; a barrow does the rest. "
        "→ gloves, boots",
        None if over else Severity.WARNING,
    )


NEEDS: Final = (
    Need(
        "spray-label",
        Severity.ERROR,
        "Work with a sprayed or baited chemical says to keep to the label and what to wear.",
        "Use against the label breaks the law; at the least long sleeves and trousers, socks and shoes are worn.",
        (by.LABEL, by.LABEL_TRAINING),
        "techniques with a weedkiller, pesticide, fungicide, bait, or a sprayer not said to hold water",
        "the label and what to wear",
        _spray,
        (says(r"\blabel"), says(r"glove|\bdrift|\bwind\b|sleeves|\bmask|respirator|goggles|\bskin\b")),
    ),
    Need(
        "keep-out",
        Severity.ERROR,
        "Work with a chemical says when people may go in again.",
        "A label prints its restricted-entry time, from the acute toxicity of its active ingredients.",
        (by.LABEL_TRAINING, by.ENTRY),
        "techniques with a weedkiller, pesticide, fungicide or bait",
        "when people may go in again",
        _reentry,
        (
            says(
                r"re-?ent(?:er|ry)|keep (?:\w+ ){0,3}(?:off|out)|stay (?:off|out)|until (?:\w+ ){0,4}dr(?:y|ied)|"
                r"go(?:es)? (?:back )?in|\bno entry|time on the label"
            ),
        ),
    ),
    Need(
        "fertiliser",
        Severity.WARNING,
        "Work with fertiliser or lime carries a caution about it.",
        "Salts and lime burn eyes and broken skin.",
        (PRACTICE,),
        "techniques with fertiliser, lime or sulphur",
        "the fertiliser",
        _feed,
        (says(r"glove|\bwash|\bdust|\blabel|\bpets?\b|child|\beyes?\b"),),
    ),
    Need(
        "mix-dust",
        Severity.ERROR,
        "Work with potting mix, compost, mulch or soil products carries a caution about their dust.",
        "Legionella is breathed in: mask and gloves before opening, open away from the face, damp down, wash hands.",
        (by.LEGIONELLA, by.LEGIONELLA_WORK, by.LEGIONELLA_STEPS),
        "techniques with potting mix, compost, mulch, topsoil or soil improver",
        "dust that can carry Legionella",
        _mix,
        (
            says(r"\bmask|respirator|FFP ?[23]|\bP2\b|\bdust|\bbreath|legionel"),
            says(r"glove|\bdamp|\bwet|\bmoist|\bwash"),
        ),
    ),
    Need(
        "bleach",
        Severity.ERROR,
        "Work with bleach says how it is poured.",
        "Add bleach to water; it corrodes steel and burns skin.",
        (by.PRUNERS,),
        "techniques with bleach",
        "bleach",
        _bleach,
        (says(r"\bbleach|hypochlorite"), says(r"\bwater|never mix|ventilat|open air|splash|glove|goggles|\beyes?\b")),
    ),
    Need(
        "heavy-load",
        Severity.ERROR,
        "A load of 15 kg or more a lift carries a caution about lifting.",
        "The revised NIOSH equation starts from 23 kg (51 lb) and only ever takes off.",
        (by.WORKSHEET,),
        "techniques whose tools or materials give a bag, slab or pot of 15 kg or more",
        "lifting",
        _lifting,
        (says(r"\blift|\bbacks?\b|\bcarr(?:y|ied|ying)|two people|\btwos\b|barrow|trolley|\bheavy|\bweigh"),),
    ),
)
SUBSTANCES: Final[tuple[Rule[Any], ...]] = tuple(need.rule for need in NEEDS)
