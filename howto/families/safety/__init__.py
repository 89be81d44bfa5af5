"""Safety: noise, vibration, lifting, ladders, lines, heat, chemicals, and what to wear."""

from dataclasses import replace

from howto.families.safety.diagram import drawings
from howto.families.safety.figures import figures
from howto.families.safety.measures import SafetyMeasures
from howto.families.safety.rules import EVERY, RULES
from howto.model.family import Family

FAMILY = Family(
    name="safety",
    title="Safety",
    about="Noise, vibration, lifting, ladders, power lines, heat, chemicals, and what to wear for each.",
    measures=SafetyMeasures,
    figures=figures,
    rules=tuple(replace(each, harm=True) for each in RULES),
    drawings=drawings,
    starter=(
        ("noise", "88 dB(A), 84 dB(A)"),
        ("noise time", "60 min, 90 min"),
        ("vibration", "4 m/s2, 3 m/s2"),
        ("trigger time", "60 min, 60 min"),
    ),
    every=tuple(replace(each, harm=True) for each in EVERY),
    tags=("safety", "ppe"),
)
