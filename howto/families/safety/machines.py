"""Distances, temperatures and angles that saws, fuel, batteries and blades are held to."""

from math import radians, sin

from howto.families.safety import references as by
from howto.model.family import Limit

START = Limit(low=3000, unit="mm", reference=by.CHAINSAW)  # from where it was filled
CHARGE = Limit(low=0, high=40, unit="°C", reference=by.CHARGING)


def bevel_width(thickness: float, bevel_deg: float) -> float:
    """Return the width of the ground face of a blade so thick; ValueError outside 0 to 90°."""
    return thickness / sin(_angle(bevel_deg))


def raised_end(length: float, bevel_deg: float) -> float:
    """Return how high the far end of a file so long is raised to lie at the bevel; ValueError outside 0 to 90°."""
    return length * sin(_angle(bevel_deg))


def _angle(bevel_deg: float) -> float:
    if not 0 < bevel_deg < 90:
        raise ValueError("a bevel lies between 0 and 90 degrees")
    return radians(bevel_deg)
