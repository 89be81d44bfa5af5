"""Safety drawn: a ladder, a line overhead, a lift, a day of noise and vibration, a mix, a wait, a blade."""

from datetime import date

from howto.families.safety.diagram_blade import blade_drawing
from howto.families.safety.diagram_day import mix_drawing, noise_drawing, vibration_drawing, wait_drawing
from howto.families.safety.diagram_ladder import ladder_drawing
from howto.families.safety.diagram_lifting import lift_drawing
from howto.families.safety.diagram_line import line_drawing
from howto.families.safety.measures import SafetyMeasures
from howto.model.work import Work
from howto.shapes import Drawing

MOST = 3
KINDS = (
    ladder_drawing,
    line_drawing,
    lift_drawing,
    noise_drawing,
    vibration_drawing,
    blade_drawing,
    mix_drawing,
    wait_drawing,
)


def drawings(work: Work[SafetyMeasures], today: date) -> tuple[Drawing, ...]:
    """Return the first three drawings that the measures are enough for."""
    del today
    found = (kind(work) for kind in KINDS)
    return tuple(drawing for drawing in found if drawing is not None)[:MOST]
