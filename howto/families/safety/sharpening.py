"""The geometry of a blade sharpened on one side: the width of its bevel, and how a file is held to it."""

from math import asin, degrees, radians, sin


def bevel_width(thickness: float, bevel_deg: float) -> float:
    """Return the width of the ground face of a blade so thick; ValueError outside 0 to 90°."""
    return thickness / sin(_angle(bevel_deg))


def bevel_of(thickness: float, width: float) -> float:
    """Return the bevel in degrees of a blade so thick with a ground face so wide; ValueError where it is narrower."""
    if width < thickness or width <= 0:
        raise ValueError("a ground face is at least as wide as the blade is thick")
    return degrees(asin(thickness / width))


def raised_end(length: float, bevel_deg: float) -> float:
    """Return how high the far end of a file so long is raised to lie at the bevel; ValueError outside 0 to 90°."""
    return length * sin(_angle(bevel_deg))


def _angle(bevel_deg: float) -> float:
    if not 0 < bevel_deg < 90:
        raise ValueError("a bevel lies between 0 and 90 degrees")
    return radians(bevel_deg)
