"""An espalier drawn at true size: from the front and the side; its sag and its shoots are drawn beside this file."""

from datetime import date

from howto.families.espalier.diagram_frame import elevation
from howto.families.espalier.diagram_shoots import shoots
from howto.families.espalier.diagram_side import side
from howto.families.espalier.diagram_wire import sag
from howto.families.espalier.frame import T
from howto.shapes import Drawing

ORDER = {
    "wiring": (elevation, side, sag),
    "planting": (elevation, side, shoots),
    "training": (elevation, shoots, side),
    "summer pruning": (shoots, elevation, side),
    "winter thinning": (elevation, shoots, side),
}


def drawings(work: T, today: date) -> tuple[Drawing, ...]:
    """Return the drawings that this job's measures allow, the most telling first; the shoots where there is no other.

    `today` changes nothing that is drawn.
    """
    del today
    found = [drawing for draw in ORDER[work.measures.job] if (drawing := draw(work))]
    return tuple(found or (shoots(work),))
