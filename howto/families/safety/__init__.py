"""Safety: noise, vibration, lifting, ladders, lines, heat, chemicals, and what to wear."""

from collections.abc import Iterator
from dataclasses import replace
from datetime import date

from howto.families.safety.diagram_blade import blade_drawing
from howto.families.safety.diagram_day import mix_drawing, noise_drawing, vibration_drawing, wait_drawing
from howto.families.safety.diagram_ladder import ladder_drawing
from howto.families.safety.diagram_lifting import lift_drawing
from howto.families.safety.diagram_line import line_drawing
from howto.families.safety.figures_chemicals import chemical_figures
from howto.families.safety.figures_height import ladder_figures, line_figures
from howto.families.safety.figures_lifting import lift_figures
from howto.families.safety.figures_noise import loudness
from howto.families.safety.figures_vibration import shaking
from howto.families.safety.figures_wear import wear_figures
from howto.families.safety.figures_weather import weather_figures
from howto.families.safety.measures import SafetyMeasures
from howto.families.safety.rules_chemicals import CHEMICALS
from howto.families.safety.rules_exposure import EXPOSURE
from howto.families.safety.rules_height import HEIGHTS
from howto.families.safety.rules_lifting import LIFTS
from howto.families.safety.rules_machines import MACHINES
from howto.families.safety.rules_places import PLACES
from howto.families.safety.rules_plants import PLANTS
from howto.families.safety.rules_said import SAID
from howto.families.safety.rules_substances import SUBSTANCES
from howto.families.safety.rules_wear import WEARING
from howto.families.safety.rules_weather import WEATHER
from howto.model.family import Family
from howto.model.figure import Figure
from howto.model.work import Work
from howto.shapes import Drawing

T = Work[SafetyMeasures]
PARTS = (
    loudness, shaking, lift_figures, ladder_figures, line_figures, weather_figures, chemical_figures, wear_figures,
)  # fmt: skip
KINDS = (
    ladder_drawing, line_drawing, lift_drawing, noise_drawing, vibration_drawing, blade_drawing, mix_drawing,
    wait_drawing,
)  # fmt: skip
MOST_DRAWINGS = 3


def figures(work: T, today: date) -> Iterator[Figure]:
    """Yield every figure that the measures are enough for, in printing order."""
    del today
    for part in PARTS:
        yield from part(work)


def drawings(work: T, today: date) -> tuple[Drawing, ...]:
    """Return the first three drawings that the measures are enough for."""
    del today
    return tuple(drawing for kind in KINDS if (drawing := kind(work)) is not None)[:MOST_DRAWINGS]


RULES = (*EXPOSURE, *LIFTS, *HEIGHTS, *WEATHER, *CHEMICALS, *WEARING)
EVERY = (*MACHINES, *PLACES, *SUBSTANCES, *PLANTS, *SAID)
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
