"""The figures of a lift by the revised NIOSH equation: both ends, formulas and printed multipliers side by side."""

import re
from collections.abc import Iterator
from typing import Final

from howto.families.safety import lifting
from howto.families.safety import references as by
from howto.families.safety.figure import figure, table
from howto.families.safety.lifting import FORMS, Lift
from howto.families.safety.lifting_tables import System
from howto.families.safety.measures import SafetyMeasures
from howto.model.family import Limit
from howto.model.figure import Figure
from howto.model.work import Work
from howto.quantities import convert
from howto.quantities.amounts import Word, Words, bare, qty

T = Work[SafetyMeasures]
Ends = tuple[tuple[str, Lift], ...]
_INCHES: Final = re.compile(r"\b(?:lbs?|pounds?|in|inch|inches|ft|feet|foot)\b|[\"″′']", re.IGNORECASE)
_ASKED: Final = ("load_kg", "hands_out_cm", "hands_up_cm")
TERMS: Final = {
    "HM": "hands out", "VM": "hands up", "DM": "travel", "AM": "twist", "FM": "how often", "CM": "grip",
}  # fmt: skip
ZONES: Final = (  # Health and Safety Executive, from memory: kg, close and at arm's length
    ("over the shoulder", 10.0, 5.0, 7.0, 3.0),
    ("elbow to shoulder", 20.0, 10.0, 13.0, 7.0),
    ("knuckle to elbow", 25.0, 15.0, 16.0, 10.0),
    ("mid shin to knuckle", 20.0, 10.0, 13.0, 7.0),
    ("below mid shin", 10.0, 5.0, 7.0, 3.0),
)


WAIST_KG: Final = ZONES[2]
INDEX = Limit(high=1, unit="", of="load over recommended limit", reference=by.WORKSHEET)
MANY_AT_RISK: Final = 3.0  # an index of it
INDEX_SAID: Final = f"up to {INDEX.most} is a lift for nearly everyone; over {bare(MANY_AT_RISK)} many are at risk"


def system_of(m: SafetyMeasures) -> System:
    """Return which published form holds: inches and pounds where the lift was written in them, else metric."""
    return "us" if any(_INCHES.search(m.written.get(field, "")) for field in _ASKED) else "metric"


def lifts_of(m: SafetyMeasures) -> Ends:
    """Return the lift at each end, `pick up` first; nothing where the hands were not measured."""
    if m.hands_out_cm is None or m.hands_up_cm is None:
        return ()
    system, down_up, travel = system_of(m), m.set_down_up_cm, m.lift_travel_cm
    if travel is None:
        travel = abs(down_up - m.hands_up_cm) if down_up is not None else 0.0

    def end(out: float, up: float, twist: float) -> Lift:
        far, high, way = (convert(each, "cm", FORMS[system].length) for each in (out, up, travel))
        often = 0.2 if m.lifts_a_minute is None else m.lifts_a_minute
        return Lift(far, high, way, twist, often, m.lifting_time_hours or 1.0, m.grip or "poor", system)

    turn = m.twist_deg or 0.0
    first = ("pick up", end(m.hands_out_cm, m.hands_up_cm, turn))
    if down_up is None:
        return (first,)
    out = m.hands_out_cm if m.set_down_out_cm is None else m.set_down_out_cm
    twist = turn if m.set_down_twist_deg is None else m.set_down_twist_deg
    return first, ("set down", end(out, down_up, twist))


def limit_kg(m: SafetyMeasures, *, table: bool = False) -> float | None:
    """Return the smaller weight limit of the two ends in kg, or None where the hands were not measured."""
    limits = (convert(lifting.weight_limit(lift, table=table), lift.form.weight, "kg") for _, lift in lifts_of(m))
    return min(limits, default=None)


def lift_figures(work: T) -> Iterator[Figure]:
    """Yield what may be lifted so, and how this load stands to it."""
    m = work.measures
    ends = lifts_of(m)
    if ends:
        for name, lift in ends if len(ends) > 1 else ():
            yield _end(name, lift)
        yield _limit(ends)
        yield _printed(ends)
        if m.load_kg is not None:
            yield from _index(m, m.load_kg)
    if ends or m.load_kg is not None:
        yield _guide()


def _end(name: str, lift: Lift) -> Figure:
    working = (*_terms(lift), _product(lift))
    label = f"Weight limit, {Word(name)}"
    return figure(
        f"{name} limit", label, lifting.weight_limit(lift), lift.form.weight, working, by.WORKSHEET, by.EQUATION
    )


def _terms(lift: Lift) -> tuple[Words, ...]:
    """Return each multiplier as a pencil would work it."""
    form, found = lift.form, lifting.multipliers(lift)
    out, up, travel, near = (qty(each, form.length, 3) for each in (lift.out, lift.up, lift.travel, form.near))
    reach, rise = f"{bare(form.near)} / {bare(max(lift.out, form.near))}", f"|{bare(lift.up)} - {bare(form.knuckles)}|"
    way = f"{bare(lifting.TRAVEL_FLOOR)} + {bare(form.travel_part)} / {bare(lift.travel)}"
    worked = {
        "HM": reach if found["HM"] else f"{out} is out of reach",
        "VM": f"1 - {bare(form.height_slope)} x {rise}" if found["VM"] else f"{up} is too high",
        "DM": f"{travel} is too far"
        if not found["DM"]
        else way
        if lift.travel > form.near
        else f"{travel}, up to {near}",
        "AM": f"1 - {bare(lifting.TWIST_SLOPE)} x {bare(lift.twist_deg)}"
        if found["AM"]
        else f"{qty(lift.twist_deg, '°', 3)} is over {qty(lifting.MOST_TWIST_DEG, '°', 3)}",
    }
    return (
        *(f"{term} = {how} = {bare(found[term])}" for term, how in worked.items()),
        f"FM = {bare(found['FM'])} from the table, {bare(lift.lifts_a_min)} a minute for {qty(lift.hours, 'h', 3)}",
        f"CM = {bare(found['CM'])}, a {Word(lift.grip)} grip",
    )


def _product(lift: Lift, *, table: bool = False) -> Words:
    factors = (lift.form.constant, *lifting.multipliers(lift, table=table).values())
    chain = " x ".join(str(bare(each)) for each in factors)
    return f"{chain} = {qty(lifting.weight_limit(lift, table=table), lift.form.weight, 3)}"


def _limit(ends: Ends) -> Figure:
    name, lift = min(ends, key=lambda end: lifting.weight_limit(end[1]))
    kinds = [(end, one, how) for end, one in ends for how in ("formula", "printed")]
    found = [lifting.multipliers(one, table=how == "printed") for _, one, how in kinds]
    rows = table(
        dict.fromkeys(("Multiplier", *(f"{Word(end)}, {Word(how)}" for end, _, how in kinds)), ""),
        ((f"{term}, {Word(words)}", *(each[term] for each in found)) for term, words in TERMS.items()),
    )
    working = (
        (*_terms(lift), _product(lift))
        if len(ends) == 1
        else (f"the smaller of the two ends: {Word(name)}, {_product(lift)}",)
    )
    value = lifting.weight_limit(lift)
    label = "Recommended weight limit"
    return figure(
        "weight limit", label, value, lift.form.weight, working, by.WORKSHEET, by.EQUATION, table=rows, headline=True
    )


def _printed(ends: Ends) -> Figure:
    name, lift = min(ends, key=lambda end: lifting.weight_limit(end[1], table=True))
    working = (
        *(f"{Word(end)}: {_product(each, table=True)}" for end, each in ends),
        f"{Word(name)} governs; printed multipliers have two decimals, so they differ from the formulas by up to 2 %",
    )
    value = lifting.weight_limit(lift, table=True)
    label = "The same by the printed multipliers"
    return figure("printed limit", label, value, lift.form.weight, working, by.WORKSHEET, by.CCOHS_LIFT)


def _index(m: SafetyMeasures, load_kg: float) -> Iterator[Figure]:
    limit, printed = limit_kg(m), limit_kg(m, table=True)
    if not limit or not printed:
        return
    unit = FORMS[system_of(m)].weight
    load, formula, table = (bare(convert(each, "kg", unit)) for each in (load_kg, limit, printed))
    index = lifting.lifting_index(load_kg, limit)
    working = (
        f"{load} / {formula} = {bare(index)} by the formulas",
        f"{load} / {table} = {bare(load_kg / printed)} by the printed multipliers",
        INDEX_SAID,
    )
    yield figure(
        "lifting index", "Lifting index", index, "", working, by.WORKSHEET, by.EQUATION, headline=True, digits=2
    )


def _guide() -> Figure:
    rows = table(
        {"Hands": "", "Man, close": "kg", "Man, arm's length": "kg", "Woman, close": "kg", "Woman, arm's length": "kg"},
        ZONES,
    )
    working = (
        "by the height of the hands, close to the body and at arm's length; no law sets a maximum",
        "less a tenth for a turn of 45°, a fifth for 90°; less 30 % at 1 or 2 lifts a minute",
    )
    value = f"{qty(WAIST_KG[1], 'kg')} a man, {qty(WAIST_KG[3], 'kg')} a woman, at the waist and close"
    label = "Guide weights (United Kingdom)"
    return figure("guide weights", label, value, "", working, by.GUIDELINES, by.WAIST, table=rows)
