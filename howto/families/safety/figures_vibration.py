"""The figures of hand-arm vibration: points, A(8), and the time to the action and the limit value."""

from collections.abc import Iterator

from howto.families.safety import references as by
from howto.families.safety import vibration
from howto.families.safety.day import Spell, shakes, timed
from howto.families.safety.measures import SafetyMeasures
from howto.model.figure import Figure, Table
from howto.model.work import Work
from howto.quantities import show_number as num
from howto.quantities.amounts import bare, qty


def points_of(m: SafetyMeasures) -> float | None:
    """Return the day's points, or None where a trigger time is missing."""
    pairs = timed(shakes(m))
    return vibration.day_points(pairs[0], [each / 60 for each in pairs[1]]) if pairs else None


def shaking(work: Work[SafetyMeasures]) -> Iterator[Figure]:
    """Yield what the vibration of the day comes to."""
    m = work.measures
    spells = shakes(m)
    if not spells:
        return
    total = points_of(m)
    if total is not None:
        yield _points(spells, total)
        yield _exposure(total)
    yield from _times(spells)
    if total is not None:
        yield _left(spells, total)


def _points(spells: tuple[Spell, ...], total: float) -> Figure:
    parts = [vibration.points(s.amount, (s.minutes or 0.0) / 60) for s in spells]
    reached = (
        "over the limit value: stop"
        if total > 400
        else "over the action value: cut it down"
        if total > 100
        else "under"
    )
    return Figure(
        name="vibration points",
        label="Vibration points of the day",
        value=total,
        working=(
            *(
                f"{s.name}: 2 x {bare(s.amount)}² x {bare(s.minutes or 0.0)} / 60 = {bare(part)} points"
                for s, part in zip(spells, parts, strict=True)
            ),
            f"{' + '.join(num(part) for part in parts)} = {bare(total)}; action value 100, limit value 400: {reached}",
        ),
        references=(by.RECKONER, by.POINTS),
        table=Table(
            columns=("Tool", "Vibration", "Trigger time", "Points"),
            units=("", "m/s2", "min", ""),
            rows=tuple((s.name, s.amount, s.minutes or 0.0, part) for s, part in zip(spells, parts, strict=True)),
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
        working=(f"√({bare(total)} / 16) = {qty(level, 'm/s²', 3)}; action value 2.5, limit value 5",),
        references=(by.A8, by.EU_VIBRATION),
    )


def _times(spells: tuple[Spell, ...]) -> Iterator[Figure]:
    worst = max(spells, key=lambda spell: spell.amount)
    rows = tuple(
        (s.name, s.amount, vibration.hours_to_action(s.amount) * 60, vibration.hours_to_limit(s.amount) * 60)
        for s in spells
    )
    for name, wanted, label in (
        ("time to action value", vibration.ACTION_POINTS, "Trigger time to the action value, hardest shaker"),
        ("time to limit value", vibration.LIMIT_POINTS, "Trigger time to the limit value, hardest shaker"),
    ):
        hours = vibration.hours_to_points(worst.amount, wanted)
        yield Figure(
            name=name,
            label=label,
            value=hours * 60,
            unit="min",
            working=(f"{worst.name}: {bare(wanted)} / (2 x {bare(worst.amount)}²) = {qty(hours, 'h', 3)}",),
            references=(by.RECKONER, by.POINTS),
            table=Table(
                columns=("Tool", "Vibration", "To action value", "To limit value"),
                units=("", "m/s2", "min", "min"),
                rows=rows,
            )
            if wanted == vibration.ACTION_POINTS
            else None,
        )


def _left(spells: tuple[Spell, ...], total: float) -> Figure:
    worst = max(spells, key=lambda spell: spell.amount)
    left = max(0.0, vibration.ACTION_POINTS - total)
    minutes = vibration.hours_to_points(worst.amount, left) * 60
    return Figure(
        name="trigger time left",
        label="Left to the action value, hardest shaker",
        value=minutes,
        unit="min",
        working=(
            f"100 - {bare(total)} = {bare(left)} points left" if left else "the action value is reached",
            f"{bare(left)} / (2 x {bare(worst.amount)}²) x 60 = {qty(minutes, 'min', 3)} with {worst.name}",
        ),
        references=(by.RECKONER, by.POINTS),
    )
