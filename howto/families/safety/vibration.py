"""The arithmetic of hand-arm vibration: points, the daily exposure A(8), and time to a limit.

`a` is the vibration total value in m/s², the root of the sum of three axes squared; time is time on the trigger.
"""

from collections.abc import Sequence
from math import sqrt

ACTION_POINTS, LIMIT_POINTS = 100.0, 400.0  # Health and Safety Executive, ready-reckoner
POINTS_OF_ONE = 16.0  # points of 1 m/s² A(8): 2 x 1² x 8 h


def points(a_m_per_s2: float, hours: float) -> float:
    """Return the points of one tool: 2 x a² x hours; ValueError below 0 hours."""
    if hours < 0:
        raise ValueError("a time below zero cannot be spent")
    return 2 * a_m_per_s2**2 * hours


def day_points(a_m_per_s2: Sequence[float], hours: Sequence[float]) -> float:
    """Return the points of several tools in one day, which add up; ValueError for unequal lists."""
    return sum(points(each, spent) for each, spent in zip(a_m_per_s2, hours, strict=True))


def exposure_of_points_m_per_s2(total: float) -> float:
    """Return the A(8) that so many points are: √(points / 16); ValueError below 0 points."""
    if total < 0:
        raise ValueError("points are never below zero")
    return sqrt(total / POINTS_OF_ONE)


def hours_to_points(a_m_per_s2: float, wanted: float) -> float:
    """Return the trigger hours after which a tool has given so many points; ValueError without vibration."""
    if a_m_per_s2 <= 0:
        raise ValueError("a vibration over zero is needed")
    return wanted / (2 * a_m_per_s2**2)


ACTION_M_PER_S2, LIMIT_M_PER_S2 = map(exposure_of_points_m_per_s2, (ACTION_POINTS, LIMIT_POINTS))
