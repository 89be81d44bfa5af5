"""The arithmetic of a planting hole, a root ball and a stake: numbers in, number out."""

from math import pi

PROUD_SHARE = 0.1  # of the distance from the topmost root to the base: UF/IFAS, ENH856
LEAST_HOLE = 1.5  # times the ball: UF/IFAS, ENH856
WIDE_HOLE = 3.0  # times the ball: Colorado State University, GardenNotes 633
BALL_PER_CALLIPER = 10.0  # a tree nursery
BALL_KG_PER_M3 = 1441.7  # 90 lb a cubic foot, from a nursery's ball of 36 in and 1,150 lb
THICK_TRUNK_MM = 101.6  # 4 in: over it calliper is measured at 12 in and not at 6 in
LOW_TIE = 1 / 3  # of the height; from memory
# Ball depth as a share of its width, by its width in mm: UF/IFAS after ANSI Z60.1 (under 20 in, 20 to 30, 31 to 48).
DEPTH_SHARES = ((508.0, 0.75), (787.4, 0.66), (float("inf"), 0.60))


def hole_depth_mm(root_to_base_mm: float) -> float:
    """Return the depth of a hole: a tenth less than from the topmost root to the base of the ball."""
    return root_to_base_mm * (1 - PROUD_SHARE)


def hole_widths_mm(ball_width_mm: float) -> tuple[float, float]:
    """Return the least width of a hole and the width it need not pass: 1.5 and 3 times the ball."""
    return ball_width_mm * LEAST_HOLE, ball_width_mm * WIDE_HOLE


def saucer_l(hole_width_mm: float, foot_width_mm: float, depth_mm: float) -> float:
    """Return the litres dug out of a saucer: wide at the top, as wide as the ball at its foot."""
    top, foot = hole_width_mm / 100, foot_width_mm / 100
    return pi * (depth_mm / 100) / 12 * (top**2 + top * foot + foot**2)


def ball_width_mm(calliper_mm: float) -> float:
    """Return the width of the ball that a trunk asks for by the trade's rule of ten."""
    return calliper_mm * BALL_PER_CALLIPER


def ball_depth_share(ball_width_mm: float) -> float:
    """Return the depth of a dug ball as a share of its width; beyond 48 in the last share is carried on."""
    return next(share for under, share in DEPTH_SHARES if ball_width_mm < under)


def ball_depth_mm(ball_width_mm: float) -> float:
    """Return the least depth of a dug ball."""
    return ball_width_mm * ball_depth_share(ball_width_mm)


def ball_volume_m3(width_mm: float, depth_mm: float) -> float:
    """Return the volume of a ball, taken as a cylinder."""
    return pi * (width_mm / 2000) ** 2 * depth_mm / 1000


def ball_weight_kg(width_mm: float, depth_mm: float, density_kg_per_m3: float = BALL_KG_PER_M3) -> float:
    """Return what a ball weighs."""
    return ball_volume_m3(width_mm, depth_mm) * density_kg_per_m3


def calliper_height_mm(calliper_mm: float) -> float:
    """Return how far up a trunk its calliper is measured: 150 mm (6 in), or 300 (12 in) where it is over 4 in thick."""
    return 300.0 if calliper_mm > THICK_TRUNK_MM else 150.0


def tie_height_mm(height_mm: float) -> float:
    """Return how far up a low stake holds a tree."""
    return height_mm * LOW_TIE


def ring_l(ring_width_mm: float, depth_mm: float, bare_width_mm: float = 0.0) -> float:
    """Return the litres of mulch in a ring, its bare middle left out."""
    return pi / 4 * max(0.0, ring_width_mm**2 - bare_width_mm**2) * depth_mm / 1e6
