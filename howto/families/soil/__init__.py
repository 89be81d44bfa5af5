"""Soil: compost and mulch by area and depth, bags and loads, drainage, lime only by test."""

from howto.families.soil.diagram import drawings
from howto.families.soil.figures import figures
from howto.families.soil.measures import SoilMeasures
from howto.families.soil.rules import RULES
from howto.model.family import Family

FAMILY = Family(
    name="soil",
    title="Soil",
    about="Compost, mulch and top-dressing: volume, bags, loads and weight; drainage, lime and gypsum.",
    measures=SoilMeasures,
    figures=figures,
    rules=RULES,
    drawings=drawings,
    starter=(("work", "mulch"), ("area", "20 m2"), ("depth", "75 mm"), ("trunk clear", "50 mm")),
    tags=("soil", "compost", "mulch"),
)
