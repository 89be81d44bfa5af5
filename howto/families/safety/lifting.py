"""The revised NIOSH lifting equation: what a load may weigh, from its formulas or from its printed multipliers.

RWL = LC x HM x VM x DM x AM x FM x CM. Lengths are in cm with `metric` and in inches with `us`, since the two
published forms round apart (25 cm is not 10 in); weights are in kg or lb likewise.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from math import floor, prod

from howto.families.safety.lifting_tables import DISTANCE, FREQUENCY, GRIP, HEIGHT, REACH, TWIST, Grip, System

MOST_TWIST_DEG, TWIST_SLOPE = 135.0, 0.0032
MOST_LIFTS_A_MIN, MOST_HOURS = 15, 8.0
TRAVEL_FLOOR = 0.82


@dataclass(frozen=True, slots=True)
class LiftForm:
    """A published form: its units, the load constant, and the bounds and slopes of its multipliers."""

    weight: str
    length: str
    constant: float
    near: float  # the nearest reach, and the least travel that counts
    most_reach: float
    knuckles: float
    most_height: float  # and the most travel
    height_slope: float
    travel_part: float


FORMS: dict[System, LiftForm] = {
    "metric": LiftForm("kg", "cm", 23.0, 25.0, 63.0, 75.0, 175.0, 0.003, 4.5),
    "us": LiftForm("lb", "in", 51.0, 10.0, 25.0, 30.0, 70.0, 0.0075, 1.8),
}


@dataclass(frozen=True, slots=True)
class Lift:
    """One end of a lift: hands out, hands up, travel, twist, how often, for how long, and the grip."""

    out: float
    up: float
    travel: float = 0.0
    twist_deg: float = 0.0
    lifts_a_min: float = 0.2
    hours: float = 1.0
    grip: Grip = "good"
    system: System = "metric"

    @property
    def form(self) -> LiftForm:
        """The published form that it is worked in."""
        return FORMS[self.system]


def reach_multiplier(out: float, system: System = "metric", *, table: bool = False) -> float:
    """Return HM: 25 / H in cm, 10 / H in inches; nothing beyond 63 cm (25 in)."""
    form = FORMS[system]
    if out > form.most_reach:
        return 0.0
    return _printed(REACH[system], out, form.near / max(out, form.near), table=table)


def height_multiplier(up: float, system: System = "metric", *, table: bool = False) -> float:
    """Return VM: 1 - 0.003 |V - 75| in cm, 1 - 0.0075 |V - 30| in inches; nothing above 175 cm (70 in)."""
    form = FORMS[system]
    if up < 0 or up > form.most_height:
        return 0.0
    return _printed(HEIGHT[system], up, 1 - form.height_slope * abs(up - form.knuckles), table=table)


def distance_multiplier(travel: float, system: System = "metric", *, table: bool = False) -> float:
    """Return DM: 0.82 + 4.5 / D in cm, 0.82 + 1.8 / D in inches; 1 below 25 cm (10 in), nothing beyond 175 cm."""
    form = FORMS[system]
    if travel > form.most_height:
        return 0.0
    if travel <= form.near:
        return 1.0
    return _printed(DISTANCE[system], travel, TRAVEL_FLOOR + form.travel_part / travel, table=table)


def twist_multiplier(twist_deg: float, *, table: bool = False) -> float:
    """Return AM: 1 - 0.0032 A; nothing beyond 135°."""
    if twist_deg > MOST_TWIST_DEG:
        return 0.0
    return _printed(TWIST, twist_deg, 1 - TWIST_SLOPE * twist_deg, table=table)


def frequency_multiplier(lifts_a_min: float, hours: float, up: float, system: System = "metric") -> float:
    """Return FM from its printed table, straight lines between its rows; nothing over 15 lifts a minute or 8 hours."""
    if lifts_a_min > MOST_LIFTS_A_MIN or hours > MOST_HOURS:
        return 0.0
    column = (0 if hours <= 1 else 2 if hours <= 2 else 4) + (up >= FORMS[system].knuckles)
    rows = [(often, row[column]) for often, row in FREQUENCY]
    if lifts_a_min <= rows[0][0]:
        return rows[0][1]
    at = next(place for place, (often, _) in enumerate(rows) if often >= lifts_a_min)
    (below, low), (above, high) = rows[at - 1], rows[at]
    return low + (high - low) * (lifts_a_min - below) / (above - below)


def grip_multiplier(grip: Grip, up: float, system: System = "metric") -> float:
    """Return CM: good 1, poor 0.90, fair 0.95 with the hands below 75 cm (30 in) and 1 from there."""
    return GRIP[grip][up >= FORMS[system].knuckles]


def multipliers(lift: Lift, *, table: bool = False) -> dict[str, float]:
    """Return the six multipliers of a lift by their published letters."""
    return {
        "HM": reach_multiplier(lift.out, lift.system, table=table),
        "VM": height_multiplier(lift.up, lift.system, table=table),
        "DM": distance_multiplier(lift.travel, lift.system, table=table),
        "AM": twist_multiplier(lift.twist_deg, table=table),
        "FM": frequency_multiplier(lift.lifts_a_min, lift.hours, lift.up, lift.system),
        "CM": grip_multiplier(lift.grip, lift.up, lift.system),
    }


def limit_from(constant: float, factors: Sequence[float]) -> float:
    """Return a recommended weight limit from a load constant and given multipliers."""
    return constant * prod(factors)


def weight_limit(lift: Lift, *, table: bool = False) -> float:
    """Return the recommended weight limit of a lift, in kg or lb; by the formulas unless `table` is set."""
    return limit_from(lift.form.constant, tuple(multipliers(lift, table=table).values()))


def lifting_index(load: float, limit: float) -> float:
    """Return load over limit; without end where nothing may be lifted, nothing for no load."""
    if limit <= 0:
        return float("inf") if load > 0 else 0.0
    return load / limit


def _printed(printed: Mapping[int, float], value: float, exact: float, *, table: bool) -> float:
    """Return the multiplier: exact, or as printed; off the printed grid rounded to two decimals."""
    if not table:
        return exact
    near = printed.get(round(value)) if abs(value - round(value)) < 1e-6 else None
    return near if near is not None else floor(exact * 100 + 0.5 + 1e-9) / 100
