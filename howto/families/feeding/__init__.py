"""Feeding: fruit trees, lawns, beds and pots; from the label to the dose, the dates and the can."""

from howto.families.feeding import rules_label, rules_text, rules_tree, rules_when
from howto.families.feeding.diagram import drawings
from howto.families.feeding.figures import figures
from howto.families.feeding.measures import FeedingMeasures
from howto.model.family import Family

FAMILY = Family(
    name="feeding",
    title="Feeding",
    about="From the label to the dose: trees by trunk, lawns by area, feed in water; dates, caps and cost.",
    measures=FeedingMeasures,
    figures=figures,
    rules=(*rules_label.RULES, *rules_tree.RULES, *rules_when.RULES, *rules_text.RULES),
    drawings=drawings,
    starter=(
        ("kind", "fruit tree"),
        ("analysis", "7-7-7"),
        ("crop", "apple"),
        ("trunk", "60 mm"),
        ("canopy", "2 m"),
        ("stem clear", "300 mm"),
    ),
    tags=("feeding", "fertiliser"),
)
