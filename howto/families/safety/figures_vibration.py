"""The figures of hand-arm vibration: points, A(8), and the time to the action and the limit value."""

from collections.abc import Iterator

from howto.families.safety import references as by
from howto.families.safety import vibration
from howto.families.safety.day import Spell, hardest, shakes, timed
from howto.families.safety.figure import figure, table
from howto.families.safety.measures import SafetyMeasures
from howto.families.safety.vibration import ACTION_M_PER_S2, ACTION_POINTS, LIMIT_M_PER_S2, LIMIT_POINTS
from howto.model.figure import Figure
from howto.model.work import Work
from howto.quantities.amounts import bare, qty


def points_of(m: SafetyMeasures) -> float | None:
    """Return the day's points, or None where a trigger time is missing."""
    pairs = timed(shakes(m))
    return vibration.day_points(pairs[0], [each / 60 for each in pairs[1]]) if pairs else None


def shaking(work: Work[SafetyMeasures]) -> Iterator[Figure]:
    """Yield what the vibration of the day comes to."""
    spells, total = shakes(work.measures), points_of(work.measures)
    if not spells:
        return
    if total is not None:
        yield _points(spells, total)
        yield _exposure(total)
    yield from _times(spells)
    if total is not None:
        yield _left(hardest(spells), total)


def _points(spells: tuple[Spell, ...], total: float) -> Figure:
    parts = [(spell, vibration.points(spell.amount, spell.spent / 60)) for spell in spells]
    reached = (
        "over the limit value: stop"
        if total > LIMIT_POINTS
        else "over the action value: cut it down"
        if total > ACTION_POINTS
        else "under"
    )
    rows = table(
        {"Tool": "", "Vibration": "m/s2", "Trigger time": "min", "Points": ""},
        ((s.name, s.amount, s.spent, part) for s, part in parts),
    )
    working = (
        *(f"{s.name}: 2 x {bare(s.amount)}² x {bare(s.spent)} / 60 = {bare(part)} points" for s, part in parts),
        f"{' + '.join(str(bare(part)) for _, part in parts)} = {bare(total)}; action value {bare(ACTION_POINTS)}, "
        f"limit value {bare(LIMIT_POINTS)}: {reached}",
    )
    label = "Vibration points of the day"
    return figure(
        "vibration points", label, total, "", working, by.RECKONER, by.POINTS, table=rows, headline=True, digits=3
    )


def _exposure(total: float) -> Figure:
    level = vibration.exposure_of_points_m_per_s2(total)
    working = (
        f"√({bare(total)} / {bare(vibration.POINTS_OF_ONE)}) = {qty(level, 'm/s²', 3)}; action value "
        f"{bare(ACTION_M_PER_S2)}, limit value {bare(LIMIT_M_PER_S2)}"
    )
    return figure("day vibration", "A(8)", level, "m/s2", working, by.A8, by.EU_VIBRATION)


def _times(spells: tuple[Spell, ...]) -> Iterator[Figure]:
    worst, values = hardest(spells), {"action": ACTION_POINTS, "limit": LIMIT_POINTS}
    minutes = [[60 * vibration.hours_to_points(spell.amount, each) for each in values.values()] for spell in spells]
    rows = table(
        {"Tool": "", "Vibration": "m/s2", "To action value": "min", "To limit value": "min"},
        ((spell.name, spell.amount, *each) for spell, each in zip(spells, minutes, strict=True)),
    )
    for what, wanted in values.items():
        hours = vibration.hours_to_points(worst.amount, wanted)
        working = f"{worst.name}: {bare(wanted)} / (2 x {bare(worst.amount)}²) = {qty(hours, 'h', 3)}"
        name, label = f"time to {what} value", f"Trigger time to the {what} value, hardest shaker"
        more = {"table": rows} if what == "action" else {}
        yield figure(name, label, hours * 60, "min", working, by.RECKONER, by.POINTS, **more)


def _left(worst: Spell, total: float) -> Figure:
    left = max(0.0, ACTION_POINTS - total)
    minutes = vibration.hours_to_points(worst.amount, left) * 60
    working = (
        f"{bare(ACTION_POINTS)} - {bare(total)} = {bare(left)} points left" if left else "the action value is reached",
        f"{bare(left)} / (2 x {bare(worst.amount)}²) x 60 = {qty(minutes, 'min', 3)} with {worst.name}",
    )
    label = "Left to the action value, hardest shaker"
    return figure("trigger time left", label, minutes, "min", working, by.RECKONER, by.POINTS)
