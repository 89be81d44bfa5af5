"""Planting: holes, balls, stakes and rings of new trees and shrubs; how many plants a row or a bed takes."""

from howto.families.planting.diagram import drawings
from howto.families.planting.figures import figures
from howto.families.planting.measures import PlantingMeasures
from howto.families.planting.rules import RULES
from howto.model.family import Family

FAMILY = Family(
    name="planting",
    title="Planting",
    about="New trees, shrubs, rows and beds: hole, depth, ball, stakes, counts and spacing, water and time to root.",
    measures=PlantingMeasures,
    figures=figures,
    rules=RULES,
    drawings=drawings,
    starter=(("work", "bed"), ("pattern", "triangle"), ("spacing", "400 mm"), ("area", "6 m2")),
    tags=("planting", "newplants"),
)
