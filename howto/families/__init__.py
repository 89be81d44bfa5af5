"""The table of trades, written by hand and read top to bottom."""

from howto.families.clipping import FAMILY as CLIPPING
from howto.families.mowing import FAMILY as MOWING
from howto.model.family import AnyFamily

FAMILIES: tuple[AnyFamily, ...] = (CLIPPING, MOWING)


def family(name: str) -> AnyFamily | None:
    """Return the family of that name, or None."""
    return next((each for each in FAMILIES if each.name == name), None)
