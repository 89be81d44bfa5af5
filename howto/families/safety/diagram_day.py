"""Bars that fill: the noise and the vibration of a day tool by tool, a mix by parts, and a wait by the clock."""

from howto.families.safety import chemicals, noise, vibration
from howto.families.safety.day import Spell, noises, shakes, timed
from howto.families.safety.figures_chemicals import wait_hours
from howto.families.safety.figures_noise import scheme_of
from howto.families.safety.measures import SafetyMeasures
from howto.model.technique import Technique
from howto.quantities import show
from howto.quantities import show_number as num
from howto.shapes import Dimension, Drawing, Label, Level, Line, Polygon, Role, Shape, rectangle

FULL_MM, TALL_MM, MOST_PARTS = 1000.0, 240.0, 3.0  # a full day is a metre of bar; more than three are cut off
FILLS = (Role.KEEP, Role.WATER, Role.MULCH, Role.BLADE, Role.SOIL, Role.WALL)


def day_drawing(technique: Technique[SafetyMeasures]) -> Drawing | None:
    """Return the day's bars, noise over vibration; None where no times are written."""
    m = technique.measures
    loud, shaky = noises(m), shakes(m)
    shapes: list[Shape] = []
    said: list[str] = []
    if timed(loud):
        scheme = scheme_of(m)
        parts = [(s.minutes or 0.0) / noise.allowed_minutes(s.amount, scheme) for s in loud]
        shapes += _bar(TALL_MM * 1.8, loud, parts, "%")
        total = num(sum(parts) * 100)
        shapes.append(Level((_end(parts), TALL_MM * 2.3), f"noise {total} % ({scheme.name})"))
        said.append(f"noise {total} % of a day by {scheme.name}: {_each(loud, parts, 100, '%')}")
    if timed(shaky):
        points = [vibration.points(s.amount, (s.minutes or 0.0) / 60) for s in shaky]
        parts = [each / vibration.ACTION_POINTS for each in points]
        shapes += _bar(0.0, shaky, parts, "points")
        total = num(sum(points))
        shapes.append(Level((_end(parts), TALL_MM * 0.5), f"vibration {total} of 100 points"))
        said.append(f"vibration {total} of 100 points: {_each(shaky, parts, 100, 'points')}")
    if not shapes:
        return None
    top = TALL_MM * 3.3 if timed(loud) else TALL_MM * 1.6
    shapes += [
        Line(((FULL_MM, -TALL_MM * 0.5), (FULL_MM, top)), Role.ACCENT),
        Level((FULL_MM, top), "a full day"),
    ]
    alt = f"Bars filled tool by tool up to a line that is a full day: {'; '.join(said)}."
    return Drawing(
        shapes=tuple(shapes),
        caption="The day, filled tool by tool",
        alt=alt if len(alt) <= 250 else f"{alt[:246].rsplit(',', 1)[0]} ...",
        true=False,
    )


def _each(spells: tuple[Spell, ...], parts: list[float], times: float, unit: str) -> str:
    return ", ".join(f"{s.name} {num(part * times)} {unit}" for s, part in zip(spells, parts, strict=True))


def _end(parts: list[float]) -> float:
    return max(FULL_MM, min(sum(parts), MOST_PARTS) * FULL_MM)


def _bar(foot: float, spells: tuple[Spell, ...], parts: list[float], unit: str) -> list[Shape]:
    """Return one bar: a full day in outline, a field a tool, hatched where it passes the day."""
    shapes: list[Shape] = []
    left = 0.0
    for at, (spell, part) in enumerate(zip(spells, parts, strict=True)):
        right = min(left + part * FULL_MM, MOST_PARTS * FULL_MM)
        within = min(right, FULL_MM)
        if within > left + 0.5:
            shapes.append(Polygon(rectangle(left, foot, within, foot + TALL_MM), FILLS[at % len(FILLS)]))
        if right > max(left, FULL_MM) + 0.5:
            shapes.append(Polygon(rectangle(max(left, FULL_MM), foot, right, foot + TALL_MM), Role.REMOVE))
        if right > left + 0.5:
            shapes.append(Line(rectangle(left, foot, right, foot + TALL_MM), Role.WOOD, closed=True))
            shapes.append(Label(((left + right) / 2, foot + TALL_MM / 2), f"{spell.name}: {num(part * 100)} {unit}"))
        left = right
    shapes.append(Line(rectangle(0.0, foot, FULL_MM, foot + TALL_MM), Role.CENTRE, closed=True))
    return shapes


def mix_drawing(technique: Technique[SafetyMeasures]) -> Drawing | None:
    """Return a jug filled to its parts, bleach on water; None without an amount to mix."""
    m, units = technique.measures, technique.crew.units
    if m.bleach_mix_l is None:
        return None
    bleach = chemicals.part_of(m.bleach_mix_l * 1000, m.bleach_parts, m.water_parts)
    water = m.bleach_mix_l * 1000 - bleach
    wide, high = 420.0, 700.0
    line = high * water / (water + bleach)
    shapes: list[Shape] = [
        Polygon(rectangle(0.0, 0.0, wide, line), Role.WATER),
        Polygon(rectangle(0.0, line, wide, high), Role.DANGER),
        Line(((-12, high * 1.1), (0.0, high * 1.08), (0.0, 0.0), (wide, 0.0), (wide, high * 1.08)), Role.WOOD),
        Dimension((0.0, 0.0), (0.0, line), show(water, "mL", units), offset=110),
        Dimension((0.0, line), (0.0, high), show(bleach, "mL", units), offset=110),
        Label((wide / 2, line / 2), f"water first: {num(m.water_parts)} parts"),
        Label((wide / 2, (line + high) / 2), f"then bleach: {num(m.bleach_parts)}"),
    ]
    return Drawing(
        shapes=tuple(shapes),
        caption=f"Bleach mix: {num(m.bleach_parts)} part to {num(m.water_parts)} of water",
        alt=f"A jug filled with {show(water, 'mL', units)} of water and on it {show(bleach, 'mL', units)} of bleach: "
        f"{num(m.bleach_parts)} part to {num(m.water_parts)}.",
        true=False,
    )


def wait_drawing(technique: Technique[SafetyMeasures]) -> Drawing | None:
    """Return the hours of no entry along a clock; None where no wait is known."""
    m = technique.measures
    hours = wait_hours(m)
    if hours is None or hours <= 0:
        return None
    start = chemicals.clock_minutes(m.sprayed_at) if m.sprayed_at else None
    day = max(24.0, hours * 1.15)
    per = FULL_MM * 1.6 / day
    end = hours * per
    shapes: list[Shape] = [
        Polygon(rectangle(0.0, 0.0, end, TALL_MM), Role.DANGER),
        Polygon(rectangle(end, 0.0, day * per, TALL_MM), Role.KEEP),
        Line(rectangle(0.0, 0.0, day * per, TALL_MM), Role.WOOD, closed=True),
        Dimension((0.0, 0.0), (end, 0.0), f"{num(hours)} h", offset=-TALL_MM * 0.7),
        Label((end / 2, TALL_MM / 2), "nobody goes in"),
        Label(((end + day * per) / 2, TALL_MM / 2), "once it is dry"),
    ]
    if start is not None:
        _, at = chemicals.after(start, hours)
        shapes += [
            Label((0.0, TALL_MM), f"sprayed {chemicals.clock(start)}"),
            Label((end, TALL_MM), f"in from {chemicals.clock(at)}"),
        ]
    return Drawing(
        shapes=tuple(shapes),
        caption=f"Nobody goes in for {num(hours)} h",
        alt=f"A time line from spraying: hatched for {num(hours)} hours, when nobody goes in, then plain.",
        true=False,
    )
