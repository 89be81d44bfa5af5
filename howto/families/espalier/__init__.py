"""Espalier: trees on wires against a wall, their frame, training and pruning."""

from howto.families.espalier.diagram import drawings
from howto.families.espalier.figures import figures
from howto.families.espalier.measures import EspalierMeasures
from howto.families.espalier.rules import RULES
from howto.model.family import BLADED_CAUTION, BLADED_TOOLS, Family

FAMILY = Family(
    name="espalier",
    title="Espalier",
    about="Trees on wires against a wall: heights, spans and pull of the wires, tiers, and what each shoot is cut to.",
    measures=EspalierMeasures,
    figures=figures,
    rules=RULES,
    drawings=drawings,
    starter=(
        ("job", "training"),
        ("tiers", "4"),
        ("wall length", "4.8 m"),
        ("first wire", "450 mm"),
        ("tier spacing", "400 mm"),
        ("eye spacing", "1.6 m"),
    ),
    tags=("espalier", "fruit"),
    tools=BLADED_TOOLS,
    caution=BLADED_CAUTION,
)
