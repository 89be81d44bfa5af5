"""The planting hole, the ball, the stake and the ring: their arithmetic, and what a planting's measures say of them."""

from math import pi

from howto.families.planting import references as by
from howto.families.planting.measures import PlantingMeasures
from howto.model.crew import System
from howto.model.family import Limit

PROUD_SHARE = 0.1  # of the distance from the topmost root to the base: UF/IFAS, ENH856
PROUD_MM = (25.0, 50.0)  # the topmost root above the ground: UF/IFAS Okeechobee County, Proper Tree Planting
BARE_MM = (25.0, 50.0)  # bare ring at the trunk; the wider end where none is written: see references.MULCH_TREES
MULCH_MM = 75.0  # where no depth is written: the middle of what is right
RING_MM = 1000.0  # Royal Horticultural Society, and WRAP's circle
LEAST_HOLE = 1.5  # times the ball: UF/IFAS, ENH856
WIDE_HOLE = 3.0  # times the ball: Colorado State University, GardenNotes 633
BALL_PER_CALLIPER = 10.0  # a tree nursery
BALL_KG_PER_M3 = 1441.7  # 90 lb a cubic foot, from a nursery's ball of 36 in and 1,150 lb
LOW_TIE = 1 / 3  # of the height; from memory
# Ball depth as a share of its width, by its width in mm: UF/IFAS after ANSI Z60.1 (under 20 in, 20 to 30, 31 to 48).
DEPTH_SHARES = ((508.0, 0.75), (787.4, 0.66), (float("inf"), 0.60))
THICK_TRUNK_MM = 101.6  # 4 in: over it calliper is measured at 12 in and not at 6 in
INCHES = (152.4, 304.8)
CALLIPER_AT: dict[System, tuple[float, float]] = {"metric": (150.0, 300.0), "us": INCHES, "uk": INCHES}


# -- arithmetic: numbers in, number out --


def hole_depth_mm(root_to_base_mm: float) -> float:
    """Return the depth of a hole: a tenth less than from the topmost root to the base of the ball."""
    return root_to_base_mm * (1 - PROUD_SHARE)


def saucer_l(hole_width_mm: float, foot_width_mm: float, depth_mm: float) -> float:
    """Return the litres dug out of a saucer: wide at the top, as wide as the ball at its foot."""
    top, foot = hole_width_mm / 100, foot_width_mm / 100
    return pi * (depth_mm / 100) / 12 * (top**2 + top * foot + foot**2)


def ball_depth_share(ball_width_mm: float) -> float:
    """Return the depth of a dug ball as a share of its width; beyond 48 in the last share is carried on."""
    return next(share for under, share in DEPTH_SHARES if ball_width_mm < under)


def ball_depth_mm(ball_width_mm: float) -> float:
    """Return the least depth of a dug ball."""
    return ball_width_mm * ball_depth_share(ball_width_mm)


def ball_volume_m3(width_mm: float, depth_mm: float) -> float:
    """Return the volume of a ball, taken as a cylinder."""
    return pi * (width_mm / 2000) ** 2 * depth_mm / 1000


def ball_weight_kg(width_mm: float, depth_mm: float) -> float:
    """Return what a ball weighs."""
    return ball_volume_m3(width_mm, depth_mm) * BALL_KG_PER_M3


def ring_l(ring_width_mm: float, depth_mm: float, bare_width_mm: float = 0.0) -> float:
    """Return the litres of mulch in a ring, its bare middle left out."""
    return pi / 4 * max(0.0, ring_width_mm**2 - bare_width_mm**2) * depth_mm / 1e6


def pot_ball_mm(pot_l: float) -> float:
    """Return the width of a pot that is as wide as it is high: what is drawn where only litres are written."""
    return float((4 * pot_l * 1e6 / pi) ** (1 / 3))


def calliper_at_mm(calliper_mm: float, units: System) -> float:
    """Return how far up a trunk its calliper is measured, by the crew's tape: further where it is thick."""
    return CALLIPER_AT[units][calliper_mm > THICK_TRUNK_MM]


# -- what the measures say: as written, else worked out; None where nothing tells it --


def ball_mm(m: PlantingMeasures) -> float | None:
    """Return the ball's width; a dug tree has one for its calliper."""
    if m.ball_width_mm is None and m.stock == "balled" and m.calliper_mm is not None:
        return m.calliper_mm * BALL_PER_CALLIPER
    return m.ball_width_mm


def depth_mm(m: PlantingMeasures) -> float | None:
    """Return how deep the hole is dug."""
    return m.hole_depth_mm if m.hole_depth_mm is not None else advised_depth_mm(m)


def advised_depth_mm(m: PlantingMeasures) -> float | None:
    """Return the depth that sources advise; bare roots stand level with the ground."""
    roots = m.root_to_base_mm
    return roots if roots is None or not m.has_ball else roots - raised_mm(m, roots)


def raised_mm(m: PlantingMeasures, roots: float) -> float:
    """Return how far the topmost root is raised: a tenth of what is below it, or of the whole ball on poor drainage."""
    whole = m.ball_depth_mm if m.drainage == "poor" and m.ball_depth_mm else roots
    return min(PROUD_SHARE * whole, roots / 2)


def proud(m: PlantingMeasures, roots: float) -> Limit:
    """Return how far above the ground the topmost root may stand; on poor drainage there is no most."""
    tenth = raised_mm(m, roots)
    if m.drainage == "poor":
        return Limit(low=tenth, unit="mm", reference=by.SPECIFICATION)
    low, high = PROUD_MM
    return Limit(low=min(low, tenth), high=max(high, tenth), unit="mm", reference=by.PROPER)


def proud_mm(m: PlantingMeasures) -> float | None:
    """Return how far above the ground the topmost root is set."""
    roots, deep = m.root_to_base_mm, depth_mm(m)
    if m.proud_mm is not None or roots is None or deep is None:
        return m.proud_mm
    return max(0.0, roots - deep)


def width_mm(m: PlantingMeasures) -> float | None:
    """Return how wide the hole is at the top; where there is room."""
    ball = ball_mm(m)
    return m.hole_width_mm if m.hole_width_mm is not None or ball is None else ball * WIDE_HOLE


def weight_kg(m: PlantingMeasures) -> float | None:
    """Return what a dug ball weighs; potting mix is not weighed."""
    wide = ball_mm(m)
    if m.ball_weight_kg is not None or m.stock != "balled" or wide is None:
        return m.ball_weight_kg
    return ball_weight_kg(wide, m.ball_depth_mm or ball_depth_mm(wide))


def clear_mm(m: PlantingMeasures) -> float:
    """Return the bare ring kept at the trunk."""
    return BARE_MM[1] if m.trunk_clear_mm is None else m.trunk_clear_mm
