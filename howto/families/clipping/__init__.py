"""Clipping: balls, domes, cones, cubes and cylinders."""

from howto.families.clipping.diagram import drawings
from howto.families.clipping.figures import figures
from howto.families.clipping.measures import ClippingMeasures
from howto.families.clipping.rules import RULES
from howto.model.family import BLADED_CAUTION, BLADED_TOOLS, Family

FAMILY = Family(
    name="clipping",
    title="Clipping",
    about="Shapes clipped to a line: how much comes off, gauge rings, passes and the next clip.",
    measures=ClippingMeasures,
    figures=figures,
    rules=RULES,
    drawings=drawings,
    starter=(("shape", "ball"), ("finished width", "900 mm ± 20 mm"), ("standing width", "980 mm"), ("passes", "2")),
    tags=("topiary", "clipping"),
    tools=BLADED_TOOLS,
    caution=BLADED_CAUTION,
)
