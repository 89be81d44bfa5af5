"""The statics of wires and the strength of wire rope: numbers in, number out.

The formulae take a level wire with little sag, whose curve is then a parabola: within about 2 % of the true
curve at a sag of an eighth of the span, and far closer below it (worked from the series of the hanging curve).
Any unit of force goes with any unit of length, as long as load, tension and span are in the same two.
"""

from itertools import pairwise
from math import ceil, pi, sqrt

GRAVITY_M_PER_S2 = 9.80665  # standard gravity, as in NIST Special Publication 811
GRADE_N_PER_MM2 = 1570.0  # see references.STRENGTH
WIRES = {"1x19": 19, "7x7": 49, "7x19": 133}
LAY_FACTORS = {"1x19": 0.88, "7x7": 0.838, "7x19": 0.80}  # see references.STRENGTH
WIRES_ACROSS = {"1x19": 5, "7x7": 9, "7x19": 15}  # the rope is so many of its wires across
STEEL_KG_PER_M3 = 8000.0  # see references.STEEL_MASS
MOST_SHARE = 0.5  # of the breaking load, in use; see references.STRENGTH
STRETCH_SHARE, STRETCH_MM, STRETCH_OVER_MM = 0.05, 1.0, 2000.0  # 1x19 grows so by so much; see references.STRETCH
STRETCH_STRAIN = STRETCH_MM / STRETCH_OVER_MM
STIFF_TIMES = STRETCH_SHARE / STRETCH_STRAIN  # the pull that would double its length, in breaking loads
MOST_SAG_SHARE = 1 / 8  # of the span: past it the parabola no longer holds

# Published tension in N by diameter, lay and post spacing in mm; None is a cross in the table: past the safe load.
# See references.BARRIERS; wires 80 mm apart; the table's own note says which row a size between two uses.
BARRIER_SPANS_MM = (600, 900, 1000, 1200, 1500, 1800, 2000)
BARRIER_ROWS_MM = {3.2: 3.0}
BARRIER_TENSIONS_N: dict[tuple[float, str], tuple[int | None, ...]] = {
    (2.5, "7x7"): (382, 730, 824, 1025, 1288, None, None),
    (2.5, "1x19"): (420, 735, 840, 1050, 1400, 1750, None),
    (3.0, "7x7"): (250, 500, 741, 818, 1083, 1370, 1565),
    (3.0, "1x19"): (325, 670, 785, 1015, 1330, 1725, 1980),
    (4.0, "7x7"): (196, 480, 524, 760, 1100, 1358, 1530),
    (4.0, "1x19"): (30, 300, 415, 593, 1105, 1303, 1435),
}


# -- a load spread along the wire --


def sag(load: float, span: float, tension: float) -> float:
    """Return the sag of an evenly loaded wire, w·L²/(8T): N/m, m and N give m; ValueError for no tension."""
    _some(tension, "tension")
    return load * span**2 / (8 * tension)


def tension_for_sag(load: float, span: float, most_sag: float) -> float:
    """Return the tension at which an evenly loaded wire sags so far, w·L²/(8s); ValueError for no sag at all."""
    _some(most_sag, "sag")
    return load * span**2 / (8 * most_sag)


def end_force(load: float, span: float, tension: float) -> float:
    """Return the pull on each end, √(T² + (w·L/2)²)."""
    return sqrt(tension**2 + (load * span / 2) ** 2)


def wire_length(span: float, wire_sag: float) -> float:
    """Return the length of the wire between two supports, L + 8s²/(3L); ValueError for no span."""
    _some(span, "span")
    return span + 8 * wire_sag**2 / (3 * span)


def span_for_sag(load: float, tension: float, most_sag: float) -> float:
    """Return the span at which an evenly loaded wire sags so far, √(8·T·s/w); ValueError for no load."""
    _some(load, "load")
    return sqrt(8 * tension * most_sag / load)


def curve_error(sag_over_span: float) -> float:
    """Return how far the parabola may be off the true curve, as a part of the sag: x²/12 with x = 4s/L."""
    return (4 * sag_over_span) ** 2 / 12


# -- one weight in the middle --


def point_sag(weight: float, span: float, tension: float) -> float:
    """Return the sag under one weight in the middle, P·L/(4T): N, m and N give m; ValueError for no tension."""
    _some(tension, "tension")
    return weight * span / (4 * tension)


# -- a wire held at both ends, which tightens as it is loaded --


def loaded_tension_n(load_n_per_m: float, span_m: float, set_n: float, stiffness_n: float) -> float:
    """Return the tension of a wire held fast at both ends once it is loaded.

    It solves T = T0 + EA·(w·L)²/(24·T²): the sagging wire is longer by 8s²/(3L), and pulls that much harder.
    `stiffness_n` is EA, the pull that would double its length.
    """
    more = stiffness_n * (load_n_per_m * span_m) ** 2 / 24
    low, high = set_n, set_n + float(more ** (1 / 3))
    for _ in range(100):
        middle = (low + high) / 2
        low, high = (middle, high) if middle**3 - set_n * middle**2 < more else (low, middle)
    return high


def stiffness_n(breaking_n: float) -> float:
    """Return the pull that would double a 1x19 wire's length, by the folding rule."""
    return breaking_n * STIFF_TIMES


# -- strength --


def wire_diameter_mm(rope_mm: float, lay: str) -> float:
    """Return the diameter of one wire of a rope: a fifth (1x19), ninth (7x7) or fifteenth (7x19) of the rope's."""
    return rope_mm / WIRES_ACROSS[lay]


def metal_area_mm2(rope_mm: float, lay: str) -> float:
    """Return the steel in a cut across the rope: its wires' areas together."""
    return WIRES[lay] * pi * (wire_diameter_mm(rope_mm, lay) / 2) ** 2


def breaking_load_n(rope_mm: float, lay: str, grade_n_per_mm2: float = GRADE_N_PER_MM2) -> float:
    """Return the breaking load of stainless rope, n·π·r²·1570·k, k being what the lay loses."""
    return metal_area_mm2(rope_mm, lay) * grade_n_per_mm2 * LAY_FACTORS[lay]


def mass_kg_per_m(rope_mm: float, lay: str) -> float:
    """Return the bare mass of a metre of rope, without what the lay and the maker's excess add (up to 12 %)."""
    return metal_area_mm2(rope_mm, lay) * 1e-6 * STEEL_KG_PER_M3


def weight_n_per_m(mass_kg_per_m: float) -> float:
    """Return the weight of a mass spread along a metre."""
    return mass_kg_per_m * GRAVITY_M_PER_S2


def share_of_breaking(tension: float, breaking: float) -> float:
    """Return the part of its breaking load that a wire carries; ValueError for no breaking load."""
    _some(breaking, "breaking load")
    return tension / breaking


# -- the folding rule --


def stretch_mm(share: float, length_mm: float) -> float:
    """Return how much a length of 1x19 grows when pulled to a part of its breaking load: 5 % is 1 mm in 2 m."""
    return share / STRETCH_SHARE * STRETCH_STRAIN * length_mm


def share_from_stretch(stretched_mm: float, length_mm: float) -> float:
    """Return the part of its breaking load that a length of 1x19 carries, from how much it grew."""
    _some(length_mm, "length")
    return stretched_mm / length_mm / STRETCH_STRAIN * STRETCH_SHARE


# -- the table of barrier wires --


def barrier_row_mm(rope_mm: float) -> float:
    """Return the diameter whose row of the table a wire uses."""
    return BARRIER_ROWS_MM.get(rope_mm, rope_mm)


def barrier_tension_n(rope_mm: float, lay: str, span_mm: float) -> float | None:
    """Return the published tension of a barrier wire, between two columns in proportion, or None off the table."""
    row = BARRIER_TENSIONS_N.get((barrier_row_mm(rope_mm), lay))
    if row is None:
        return None
    for (near, low), (far, high) in pairwise(zip(BARRIER_SPANS_MM, row, strict=True)):
        if near <= span_mm <= far:
            if low is None or (high is None and span_mm > near):
                return None
            return low if high is None else low + (high - low) * (span_mm - near) / (far - near)
    return None


# -- counting --


def spans_of(run_mm: float, most_mm: float) -> int:
    """Return into how many equal spans a run is cut so that none is over the most."""
    return max(1, ceil(run_mm / most_mm - 1e-9))


def laterals(tiers: int, trees: int = 1) -> int:
    """Return the arms of a frame: one each side of the stem on each tier."""
    return 2 * tiers * trees


def wire_to_buy_m(run_m: float, wires: int, ends_m: float, waste_share: float) -> float:
    """Return the wire to buy: each run and what its two ends take, and the waste on top."""
    return wires * (run_m + ends_m) * (1 + waste_share)


def years_to_fill(tiers: int, made: int = 0) -> int:
    """Return the years until every tier is trained, at a tier a year."""
    return max(0, tiers - made)


def _some(value: float, name: str) -> None:
    if value <= 0:
        raise ValueError(f"{name} must be more than 0")
