"""The geometry of clipped shapes: numbers in, number out.

A shape is `ball` (round or taller than wide), `dome` (half of one), `cone`, `cube` (a square block) or `cylinder`;
any other word raises ValueError.
"""

from math import asin, asinh, ceil, log, pi, sqrt

# What a shape fills of the box of its width, width and height, as volume / width² / height.
FILLS = {"ball": pi / 6, "dome": pi / 6, "cone": pi / 12, "cylinder": pi / 4, "cube": 1.0}


def volume_mm3(shape: str, width_mm: float, height_mm: float) -> float:
    """Return the volume of a shape of that width and height; a ball may be taller than wide (a spheroid)."""
    return _of(shape) * width_mm**2 * height_mm


def surface_mm2(shape: str, width_mm: float, height_mm: float) -> float:
    """Return the clipped surface: all of a ball, and all but the underside of every other shape."""
    _of(shape)
    radius = width_mm / 2
    if shape == "ball":
        return spheroid_mm2(radius, height_mm / 2)
    if shape == "dome":
        return spheroid_mm2(radius, height_mm) / 2
    if shape == "cone":
        return pi * radius * sqrt(radius**2 + height_mm**2)
    if shape == "cylinder":
        return pi * radius**2 + 2 * pi * radius * height_mm
    return width_mm**2 + 4 * width_mm * height_mm


def spheroid_mm2(across_mm: float, up_mm: float) -> float:
    """Return the surface of a spheroid with half-axes `across` (twice) and `up`."""
    if abs(across_mm - up_mm) <= 1e-6 * across_mm:
        return 4 * pi * across_mm**2
    if up_mm > across_mm:
        bend = sqrt(1 - (across_mm / up_mm) ** 2)
        return 2 * pi * across_mm**2 * (1 + up_mm / (across_mm * bend) * asin(bend))
    bend = sqrt(1 - (up_mm / across_mm) ** 2)
    return 2 * pi * across_mm**2 + 2 * pi * up_mm**2 / bend * asinh(bend * across_mm / up_mm)


def share_removed(shape: str, standing: tuple[float, float], finished: tuple[float, float]) -> float:
    """Return the part of the volume (0 to 1) between two sizes, each (width, height) in mm: the shell."""
    return 1 - volume_mm3(shape, *finished) / volume_mm3(shape, *standing)


def share_of_length(share_of_volume: float) -> float:
    """Return the part of each branch's length that a part of the crown's volume answers to: 1 - (1 - v)^(1/3)."""
    return 1.0 - float((1 - share_of_volume) ** (1 / 3))


def width_at_mm(shape: str, width_mm: float, height_mm: float, up_mm: float) -> float:
    """Return the width of the shape `up_mm` above its foot; 0 above the top or below the foot."""
    _of(shape)
    if not 0 <= up_mm <= height_mm:
        return 0.0
    part = up_mm / height_mm
    if shape == "ball":
        return width_mm * sqrt(max(0.0, 1 - (2 * part - 1) ** 2))
    if shape == "dome":
        return width_mm * sqrt(max(0.0, 1 - part**2))
    if shape == "cone":
        return width_mm * (1 - part)
    return width_mm


def passes_for(share: float, share_a_pass: float) -> int:
    """Return how many passes take off `share` (below 1) when each takes at most `share_a_pass` of what then stands."""
    if share <= 0:
        return 0
    return max(1, ceil(log(1 - share) / log(1 - share_a_pass) - 1e-9))


def share_a_pass(share: float, passes: int) -> float:
    """Return the part each of `passes` equal passes takes of what then stands."""
    return 1.0 - float((1 - share) ** (1 / passes))


def widest_standing_mm(finished_width_mm: float, share: float) -> float:
    """Return the width at which a clip to `finished_width_mm` takes `share` of the leaf, grown alike all round."""
    return finished_width_mm / (1 - share_of_length(share))


def width_leaving_mm(standing: tuple[float, float], finished_height_mm: float, share: float) -> float:
    """Return the finished width that takes `share` of a shape standing (width, height), at a finished height."""
    return standing[0] * sqrt((1 - share) * standing[1] / finished_height_mm)


def height_leaving_mm(standing: tuple[float, float], finished_width_mm: float, share: float) -> float:
    """Return the finished height that takes `share` of a shape standing (width, height), at a finished width."""
    return standing[1] * (1 - share) * (standing[0] / finished_width_mm) ** 2


def minutes_for(surface_m2: float, rate_m2_per_h: float) -> float:
    """Return the time one person takes, in minutes."""
    return surface_m2 / rate_m2_per_h * 60


def _of(shape: str) -> float:
    """Return what a shape fills of its box."""
    if shape not in FILLS:
        raise ValueError(f"{shape!r} is none of {', '.join(FILLS)}")
    return FILLS[shape]
