"""The figures of safety, in printing order: those whose measures are written."""

from collections.abc import Iterator
from datetime import date
from itertools import chain

from howto.families.safety.figures_chemicals import chemical_figures
from howto.families.safety.figures_height import ladder_figures, line_figures
from howto.families.safety.figures_lifting import lift_figures
from howto.families.safety.figures_noise import loudness
from howto.families.safety.figures_vibration import shaking
from howto.families.safety.figures_wear import wear_figures
from howto.families.safety.figures_weather import weather_figures
from howto.families.safety.measures import SafetyMeasures
from howto.model.figure import Figure
from howto.model.work import Work

PARTS = (
    loudness, shaking, lift_figures, ladder_figures, line_figures, weather_figures, chemical_figures, wear_figures,
)  # fmt: skip


def figures(work: Work[SafetyMeasures], today: date) -> Iterator[Figure]:
    """Yield every figure that the measures are enough for."""
    del today
    yield from chain.from_iterable(part(work) for part in PARTS)
