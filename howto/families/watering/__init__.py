"""Watering: how much, how often and how long, by weather, plant, soil and tap; and the first year of new plants."""

from howto.families.watering.diagram import drawings
from howto.families.watering.figures import figures
from howto.families.watering.measures import WateringMeasures
from howto.families.watering.rules import RULES
from howto.model.family import Family

FAMILY = Family(
    name="watering",
    title="Watering",
    about="Litres and minutes from weather, plants and soil; evenness of sprinklers; the first year of new plants.",
    measures=WateringMeasures,
    figures=figures,
    rules=RULES,
    drawings=drawings,
    starter=(
        ("method", "hose"),
        ("area", "12 m2"),
        ("plant water", "moderate"),
        ("soil", "loam"),
        ("root depth", "300 mm"),
        ("reference et", "4 mm/day"),
    ),
    tags=("watering", "gardenwater"),
)
