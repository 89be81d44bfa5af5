"""Mowing: set heights, the one-third rule, coming down in stages, and when the next cut is due."""

from howto.families.mowing.diagram import drawings
from howto.families.mowing.figures import figures
from howto.families.mowing.measures import MowingMeasures
from howto.families.mowing.rules import RULES
from howto.model.family import Family

FAMILY = Family(
    name="mowing",
    title="Mowing",
    about="Lawns kept at a height: how much a cut takes, stages on the way down, days between cuts.",
    measures=MowingMeasures,
    figures=figures,
    rules=RULES,
    drawings=drawings,
    starter=(("set height", "60 mm"), ("standing height", "85 mm"), ("growth", "4 mm/day")),
    tags=("lawn", "mowing"),
)
