"""The figures of hand-arm vibration: points, A(8), and the time to the action and the limit value."""

from collections.abc import Iterator

from howto.families.safety import references as by
from howto.families.safety import vibration
from howto.families.safety.day import Spell, hardest, shakes, timed
from howto.families.safety.measures import SafetyMeasures
from howto.families.safety.vibration import ACTION_M_PER_S2, ACTION_POINTS, LIMIT_M_PER_S2, LIMIT_POINTS
from howto.model.figure import Figure, Table
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
    return Figure(
        name="vibration points",
        label="Vibration points of the day",
        value=total,
        working=(
            *(f"{s.name}: 2 x {bare(s.amount)}² x {bare(s.spent)} / 60 = {bare(part)} points" for s, part in parts),
            f"{' + '.join(str(bare(part)) for _, part in parts)} = {bare(total)}; action value {bare(ACTION_POINTS)}, "
            f"limit value {bare(LIMIT_POINTS)}: {reached}",
        ),
        references=(by.RECKONER, by.POINTS),
        table=Table(
            columns=("Tool", "Vibration", "Trigger time", "Points"),
            units=("", "m/s2", "min", ""),
            rows=tuple((s.name, s.amount, s.spent, part) for s, part in parts),
        ),
        headline=True,
        digits=3,
    )


def _exposure(total: float) -> Figure:
    level = vibration.exposure_of_points_m_per_s2(total)
    return Figure(
        name="day vibration",
        label="A(8)",
        value=level,
        unit="m/s2",
        working=(
            f"√({bare(total)} / {bare(vibration.POINTS_OF_ONE)}) = {qty(level, 'm/s²', 3)}; action value "
            f"{bare(ACTION_M_PER_S2)}, limit value {bare(LIMIT_M_PER_S2)}",
        ),
        references=(by.A8, by.EU_VIBRATION),
    )


def _times(spells: tuple[Spell, ...]) -> Iterator[Figure]:
    worst = hardest(spells)
    both = (ACTION_POINTS, LIMIT_POINTS)
    minutes = [[vibration.hours_to_points(spell.amount, each) * 60 for each in both] for spell in spells]
    table = Table(
        columns=("Tool", "Vibration", "To action value", "To limit value"),
        units=("", "m/s2", "min", "min"),
        rows=tuple((spell.name, spell.amount, *each) for spell, each in zip(spells, minutes, strict=True)),
    )
    for what, wanted in zip(("action", "limit"), both, strict=True):
        hours = vibration.hours_to_points(worst.amount, wanted)
        yield Figure(
            name=f"time to {what} value",
            label=f"Trigger time to the {what} value, hardest shaker",
            value=hours * 60,
            unit="min",
            working=(f"{worst.name}: {bare(wanted)} / (2 x {bare(worst.amount)}²) = {qty(hours, 'h', 3)}",),
            references=(by.RECKONER, by.POINTS),
            table=table if what == "action" else None,
        )


def _left(worst: Spell, total: float) -> Figure:
    left = max(0.0, ACTION_POINTS - total)
    minutes = vibration.hours_to_points(worst.amount, left) * 60
    return Figure(
        name="trigger time left",
        label="Left to the action value, hardest shaker",
        value=minutes,
        unit="min",
        working=(
            f"{bare(ACTION_POINTS)} - {bare(total)} = {bare(left)} points left"
            if left
            else "the action value is reached",
            f"{bare(left)} / (2 x {bare(worst.amount)}²) x 60 = {qty(minutes, 'min', 3)} with {worst.name}",
        ),
        references=(by.RECKONER, by.POINTS),
    )
