"""What a planting's measures say of its hole: how deep, how wide, and how far the topmost root stands above ground."""

from math import pi
from typing import NamedTuple

from howto.families.planting import formulae
from howto.families.planting.measures import PlantingMeasures

PROUD_MM = (25.0, 50.0)  # UF/IFAS Okeechobee County, Proper Tree Planting
BARE_MM = 50.0  # bare ring at the trunk: the wider end of 25 to 50 mm
RING_MM = 1000.0  # Royal Horticultural Society, and WRAP's circle


class Proud(NamedTuple):
    """How far the topmost root stands above the ground, in mm: the least, and the most (None for no most)."""

    low: float
    high: float | None


def ball_mm(m: PlantingMeasures) -> float | None:
    """Return the ball's width: as written, else what a dug tree of its calliper has; None where nothing tells it."""
    if m.ball_width_mm is not None:
        return m.ball_width_mm
    if m.stock == "balled" and m.calliper_mm is not None:
        return formulae.ball_width_mm(m.calliper_mm)
    return None


def pot_ball_mm(pot_l: float) -> float:
    """Return the width of a pot that is as wide as it is high: what is drawn where only litres are written."""
    return float((4 * pot_l * 1e6 / pi) ** (1 / 3))


def depth_mm(m: PlantingMeasures) -> float | None:
    """Return how deep the hole is dug: as written, else worked from the ball and the drainage."""
    return m.hole_depth_mm if m.hole_depth_mm is not None else advised_depth_mm(m)


def advised_depth_mm(m: PlantingMeasures) -> float | None:
    """Return the depth that sources advise; bare roots stand level with the ground."""
    roots = m.root_to_base_mm
    if roots is None:
        return None
    return roots if not m.has_ball else roots - raised_mm(m, roots)


def raised_mm(m: PlantingMeasures, roots: float) -> float:
    """Return how far the topmost root is raised: a tenth of what is below it, or of the whole ball on poor drainage."""
    whole = m.ball_depth_mm if m.drainage == "poor" and m.ball_depth_mm else roots
    return min(formulae.PROUD_SHARE * whole, roots / 2)


def proud_range(m: PlantingMeasures, roots: float) -> Proud:
    """Return how far above the ground the topmost root may stand."""
    tenth = raised_mm(m, roots)
    if m.drainage == "poor":
        return Proud(tenth, None)
    return Proud(min(PROUD_MM[0], tenth), max(PROUD_MM[1], tenth))


def proud_mm(m: PlantingMeasures) -> float | None:
    """Return how far above the ground the topmost root is set: as written, else what the hole leaves."""
    if m.proud_mm is not None:
        return m.proud_mm
    roots, deep = m.root_to_base_mm, depth_mm(m)
    return None if roots is None or deep is None else max(0.0, roots - deep)


def width_mm(m: PlantingMeasures) -> float | None:
    """Return how wide the hole is at the top: as written, else three times the ball."""
    if m.hole_width_mm is not None:
        return m.hole_width_mm
    ball = ball_mm(m)
    return None if ball is None else formulae.hole_widths_mm(ball)[1]


def weight_kg(m: PlantingMeasures) -> float | None:
    """Return what a dug ball weighs: as written, else by its size; potting mix is not weighed."""
    if m.ball_weight_kg is not None:
        return m.ball_weight_kg
    wide = ball_mm(m)
    if m.stock != "balled" or wide is None:
        return None
    return formulae.ball_weight_kg(wide, m.ball_depth_mm or formulae.ball_depth_mm(wide))


def clear_mm(m: PlantingMeasures) -> float:
    """Return the bare ring kept at the trunk."""
    return BARE_MM if m.trunk_clear_mm is None else m.trunk_clear_mm
