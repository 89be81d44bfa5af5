"""The table of trades, written by hand and read top to bottom."""

from howto.families.clipping import FAMILY as CLIPPING
from howto.families.espalier import FAMILY as ESPALIER
from howto.families.feeding import FAMILY as FEEDING
from howto.families.hedging import FAMILY as HEDGING
from howto.families.mowing import FAMILY as MOWING
from howto.families.planting import FAMILY as PLANTING
from howto.families.safety import FAMILY as SAFETY
from howto.families.soil import FAMILY as SOIL
from howto.families.watering import FAMILY as WATERING
from howto.model.family import AnyFamily

FAMILIES: tuple[AnyFamily, ...] = (CLIPPING, HEDGING, ESPALIER, MOWING, FEEDING, WATERING, SOIL, PLANTING, SAFETY)


def family(name: str) -> AnyFamily | None:
    """Return the family of that name, or None."""
    return next((each for each in FAMILIES if each.name == name), None)
