"""The figures of a lift by the revised NIOSH equation: both ends, formulas and printed multipliers side by side."""

import re
from collections.abc import Iterator
from typing import Final

from howto.families.safety import lifting
from howto.families.safety import references as by
from howto.families.safety.lifting import Lift
from howto.families.safety.lifting_tables import System
from howto.families.safety.measures import SafetyMeasures
from howto.model.figure import Figure, Table
from howto.model.work import Work
from howto.quantities import convert
from howto.quantities import show_number as num
from howto.quantities.amounts import bare, qty

T = Work[SafetyMeasures]
_INCHES: Final = re.compile(r"\b(?:lbs?|pounds?|in|inch|inches|ft|feet|foot)\b|[\"″′']", re.IGNORECASE)
_ASKED: Final = ("load_kg", "hands_out_cm", "hands_up_cm")
WEIGHT: Final[dict[System, str]] = {"metric": "kg", "us": "lb"}
LENGTH: Final[dict[System, str]] = {"metric": "cm", "us": "in"}
TERMS: Final = (
    ("HM", "hands out"),
    ("VM", "hands up"),
    ("DM", "travel"),
    ("AM", "twist"),
    ("FM", "how often"),
    ("CM", "grip"),
)
ZONES: Final = (  # Health and Safety Executive, from memory: kg, close and at arm's length
    ("over the shoulder", 10.0, 5.0, 7.0, 3.0),
    ("elbow to shoulder", 20.0, 10.0, 13.0, 7.0),
    ("knuckle to elbow", 25.0, 15.0, 16.0, 10.0),
    ("mid shin to knuckle", 20.0, 10.0, 13.0, 7.0),
    ("below mid shin", 10.0, 5.0, 7.0, 3.0),
)


def system_of(work: T) -> System:
    """Return which published form holds: inches and pounds for a crew that works or wrote in them, else metric."""
    m = work.measures
    wrote = any(_INCHES.search(m.written.get(field, "")) for field in _ASKED)
    return "us" if work.crew.units == "us" or wrote else "metric"


def lifts_of(work: T) -> tuple[tuple[str, Lift], ...]:
    """Return the lift at each end, `pick up` first; nothing where the hands were not measured."""
    m = work.measures
    if m.hands_out_cm is None or m.hands_up_cm is None:
        return ()
    system = system_of(work)
    down_up = m.set_down_up_cm
    travel = m.lift_travel_cm
    if travel is None:
        travel = abs(down_up - m.hands_up_cm) if down_up is not None else 0.0

    def end(out: float, up: float, twist: float) -> Lift:
        return Lift(
            out=convert(out, "cm", LENGTH[system]),
            up=convert(up, "cm", LENGTH[system]),
            travel=convert(travel, "cm", LENGTH[system]),
            twist_deg=twist,
            lifts_a_min=0.2 if m.lifts_a_minute is None else m.lifts_a_minute,
            hours=m.lifting_time_hours or 1.0,
            grip=m.grip or "poor",
            system=system,
        )

    turn = m.twist_deg or 0.0
    first = ("pick up", end(m.hands_out_cm, m.hands_up_cm, turn))
    if down_up is None:
        return (first,)
    out = m.hands_out_cm if m.set_down_out_cm is None else m.set_down_out_cm
    twist = turn if m.set_down_twist_deg is None else m.set_down_twist_deg
    return first, ("set down", end(out, down_up, twist))


def limit_kg(work: T, *, table: bool = False) -> float | None:
    """Return the smaller weight limit of the two ends in kg, or None where the hands were not measured."""
    ends = lifts_of(work)
    if not ends:
        return None
    return min(convert(lifting.weight_limit(lift, table=table), WEIGHT[lift.system], "kg") for _, lift in ends)


def lift_figures(work: T) -> Iterator[Figure]:
    """Yield what may be lifted so, and how this load stands to it."""
    m, ends = work.measures, lifts_of(work)
    if not ends:
        if m.load_kg is not None:
            yield _guide()
        return
    for name, lift in ends if len(ends) > 1 else ():
        yield _end(name, lift)
    yield _limit(ends)
    yield _printed(ends)
    if m.load_kg is not None:
        yield from _index(work, m.load_kg)
    yield _guide()


def _end(name: str, lift: Lift) -> Figure:
    limit = lifting.weight_limit(lift)
    return Figure(
        name=f"{name} limit",
        label=f"Weight limit, {name}",
        value=limit,
        unit=WEIGHT[lift.system],
        working=(*_terms(lift), _product(lift, table=False)),
        references=(by.WORKSHEET, by.EQUATION),
    )


def _terms(lift: Lift) -> tuple[str, ...]:
    """Return each multiplier as a pencil would work it."""
    us, found = lift.system == "us", lifting.multipliers(lift)
    near, middle = (10, 30) if us else (25, 75)
    out, up, travel = num(lift.out), num(lift.up), num(lift.travel)
    unit = LENGTH[lift.system]
    reach = f"{near} / {bare(max(lift.out, near))}" if found["HM"] else f"{out} {unit} is out of reach"
    rise = f"1 - {0.0075 if us else 0.003} x |{up} - {middle}|" if found["VM"] else f"{up} {unit} is too high"
    way = f"0.82 + {1.8 if us else 4.5} / {travel}" if lift.travel > near else f"{travel} {unit}, up to {near} {unit}"
    turn = f"1 - 0.0032 x {bare(lift.twist_deg)}" if found["AM"] else f"{qty(lift.twist_deg, '°', 3)} is over 135°"
    return (
        f"HM = {reach} = {bare(found['HM'])}",
        f"VM = {rise} = {bare(found['VM'])}",
        f"DM = {way if found['DM'] else f'{travel} {unit} is too far'} = {bare(found['DM'])}",
        f"AM = {turn} = {bare(found['AM'])}",
        f"FM = {bare(found['FM'])} from the table, {bare(lift.lifts_a_min)} a minute for {qty(lift.hours, 'h', 3)}",
        f"CM = {bare(found['CM'])}, a {lift.grip} grip",
    )


def _product(lift: Lift, *, table: bool) -> str:
    found = lifting.multipliers(lift, table=table)
    constant, unit = lifting.LOAD_CONSTANT[lift.system], WEIGHT[lift.system]
    chain = " x ".join(num(each) for each in (constant, *found.values()))
    return f"{chain} = {bare(lifting.limit_from(constant, tuple(found.values())))} {unit}"


def _limit(ends: tuple[tuple[str, Lift], ...]) -> Figure:
    name, lift = min(ends, key=lambda end: lifting.weight_limit(end[1]))
    rows = tuple(
        (f"{letters}, {words}", *(num(lifting.multipliers(one, table=printed)[letters])
                                  for _, one in ends for printed in (False, True)))
        for letters, words in TERMS
    )  # fmt: skip
    columns = ("Multiplier", *(f"{end}, {how}" for end, _ in ends for how in ("formula", "printed")))
    return Figure(
        name="weight limit",
        label="Recommended weight limit",
        value=lifting.weight_limit(lift),
        unit=WEIGHT[lift.system],
        working=(
            (*_terms(lift), _product(lift, table=False))
            if len(ends) == 1
            else (f"the smaller of the two ends: {name}, {_product(lift, table=False)}",)
        ),
        references=(by.WORKSHEET, by.EQUATION),
        table=Table(columns=columns, units=("",) * len(columns), rows=rows),
        headline=True,
    )


def _printed(ends: tuple[tuple[str, Lift], ...]) -> Figure:
    name, lift = min(ends, key=lambda end: lifting.weight_limit(end[1], table=True))
    return Figure(
        name="printed limit",
        label="The same by the printed multipliers",
        value=lifting.weight_limit(lift, table=True),
        unit=WEIGHT[lift.system],
        working=(
            *(f"{end}: {_product(each, table=True)}" for end, each in ends),
            f"{name} governs; printed multipliers have two decimals, so they differ from the formulas by up to 2 %",
        ),
        references=(by.WORKSHEET, by.CCOHS_LIFT),
    )


def _index(work: T, load_kg: float) -> Iterator[Figure]:
    limit, printed = limit_kg(work), limit_kg(work, table=True)
    if not limit or not printed:
        return
    index = lifting.lifting_index(load_kg, limit)
    system = system_of(work)
    shown = [num(convert(each, "kg", WEIGHT[system])) for each in (load_kg, limit, printed)]
    yield Figure(
        name="lifting index",
        label="Lifting index",
        value=index,
        working=(
            f"{shown[0]} / {shown[1]} = {bare(index)} by the formulas",
            f"{shown[0]} / {shown[2]} = {bare(load_kg / printed)} by the printed multipliers",
            "up to 1 is a lift for nearly everyone; over 3 many are at risk",
        ),
        references=(by.WORKSHEET, by.EQUATION),
        headline=True,
        digits=2,
    )


def _guide() -> Figure:
    return Figure(
        name="guide weights",
        label="Guide weights (United Kingdom)",
        value="25 kg a man, 16 kg a woman, at the waist and close",
        working=(
            "by the height of the hands, close to the body and at arm's length; no law sets a maximum",
            "less a tenth for a turn of 45°, a fifth for 90°; less 30 % at 1 or 2 lifts a minute",
        ),
        references=(by.GUIDELINES, by.WAIST),
        table=Table(
            columns=("Hands", "Man, close", "Man, arm's length", "Woman, close", "Woman, arm's length"),
            units=("", "kg", "kg", "kg", "kg"),
            rows=ZONES,
        ),
    )
