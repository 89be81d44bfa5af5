"""The geometry of a leaning ladder."""

from math import acos, atan, degrees, hypot, radians, sqrt, tan

ONE_IN = 4.0  # one out for four up
FLAT_DEG = 75.0


def foot_by_height(contact: float) -> float:
    """Return how far out the foot stands by the height of the top contact: a quarter of it."""
    return contact / ONE_IN


def foot_by_length(length: float) -> float:
    """Return how far out the foot stands by the working length of the ladder: a quarter of it."""
    return length / ONE_IN


def foot_by_angle(contact: float, angle_deg: float = FLAT_DEG) -> float:
    """Return how far out the foot stands for an angle from the ground; ValueError outside 0 to 90°."""
    if not 0 < angle_deg < 90:
        raise ValueError("a leaning ladder stands between 0 and 90 degrees")
    return contact / tan(radians(angle_deg))


def angle_by_height(foot: float, contact: float) -> float:
    """Return the angle from the ground in degrees of a ladder whose top contact is so high; 90 against the wall."""
    return degrees(atan(contact / foot)) if foot > 0 else 90.0


def angle_by_length(foot: float, length: float) -> float:
    """Return the angle from the ground in degrees of a ladder so long; ValueError for a foot beyond its length."""
    if length <= 0 or foot > length:
        raise ValueError("a foot cannot stand further out than the ladder is long")
    return degrees(acos(foot / length))


def length_to(contact: float, foot: float) -> float:
    """Return the length of ladder from its foot to the top contact."""
    return hypot(contact, foot)


def contact_of(length: float, foot: float) -> float:
    """Return how high a ladder so long touches with its foot so far out; ValueError where it cannot reach."""
    if foot > length:
        raise ValueError("a foot cannot stand further out than the ladder is long")
    return sqrt(length**2 - foot**2)
