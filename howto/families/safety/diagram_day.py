"""Bars that fill: the noise and the vibration of a day tool by tool, a mix by parts, and a wait by the clock."""

from howto.families.safety import chemicals, noise, vibration
from howto.families.safety.day import Spell, noises, shakes, timed
from howto.families.safety.figures_chemicals import wait_hours
from howto.families.safety.figures_noise import scheme_of
from howto.families.safety.measures import SafetyMeasures
from howto.model.prose import capital
from howto.model.work import Work
from howto.quantities import show_number as num
from howto.quantities.amounts import bare, qty
from howto.shapes import Dimension, Drawing, Label, Level, Line, Polygon, Role, Shape, rectangle

FULL_MM, TALL_MM = 1000.0, 200.0  # a full day is a metre of bar
MOST_PARTS = 4.0  # full days; what passes them is cut off
MOST_ALT = 250
FILLS = (Role.KEEP, Role.WATER, Role.MULCH, Role.BLADE, Role.SOIL, Role.WALL)


def noise_drawing(work: Work[SafetyMeasures]) -> Drawing | None:
    """Return the day's noise as a bar, a field a tool, up to a full dose; None where no times are written."""
    spells, scheme = noises(work.measures), scheme_of(work.measures)
    if not timed(spells):
        return None
    parts = [(s.minutes or 0.0) / noise.allowed_minutes(s.amount, scheme) for s in spells]
    return _bar(spells, parts, "%", f"noise of the day, {scheme.name}")


def vibration_drawing(work: Work[SafetyMeasures]) -> Drawing | None:
    """Return the day's vibration as a bar, a field a tool, up to the action value; None where no times are written."""
    spells = shakes(work.measures)
    if not timed(spells):
        return None
    points = [vibration.points(s.amount, (s.minutes or 0.0) / 60) for s in spells]
    return _bar(spells, [each / vibration.ACTION_POINTS for each in points], "points", "vibration of the day")


def _bar(spells: tuple[Spell, ...], parts: list[float], unit: str, what: str) -> Drawing:
    """Return one bar: a full day in outline, a field a tool, hatched where it passes the day."""
    end = max(1.0, min(sum(parts), MOST_PARTS)) * FULL_MM
    tall = end * 0.3
    shapes: list[Shape] = []
    left = 0.0
    for at, (spell, part) in enumerate(zip(spells, parts, strict=True)):
        right = min(left + part * FULL_MM, MOST_PARTS * FULL_MM)
        within, over = min(right, FULL_MM), max(left, FULL_MM)
        if within > left + 0.5:
            shapes.append(Polygon(rectangle(left, 0.0, within, tall), FILLS[at % len(FILLS)]))
        if right > over + 0.5:
            shapes.append(Polygon(rectangle(over, 0.0, right, tall), Role.REMOVE))
        if right > left + 0.5:
            shapes.append(Line(rectangle(left, 0.0, right, tall), Role.WOOD, closed=True))
            shapes.append(Label(((left + right) / 2, tall / 2), f"{spell.name}: {bare(part * 100)} {unit}"))
        left = right
    total = num(sum(parts) * 100)
    shapes += [
        Line(rectangle(0.0, 0.0, FULL_MM, tall), Role.CENTRE, closed=True),
        Line(((FULL_MM, -tall * 0.25), (FULL_MM, tall * 1.3)), Role.ACCENT),
        Level((FULL_MM, tall * 1.3), f"a full day: 100 {unit}"),
        Dimension((0.0, 0.0), (min(sum(parts), MOST_PARTS) * FULL_MM, 0.0), f"{total} {unit}", offset=-tall * 0.5),
    ]
    each = ", ".join(f"{s.name} {bare(part * 100)} {unit}" for s, part in zip(spells, parts, strict=True))
    alt = f"A bar for the {what}, filled tool by tool: {each}. In all {total} {unit}; a full day is 100."
    if len(alt) > MOST_ALT:
        alt = f"A bar for the {what}, filled by {len(spells)} tools: in all {total} {unit}; a full day is 100."
    return Drawing(
        shapes=tuple(shapes), caption=f"{capital(what)}: {total} {unit}, 100 is full", alt=alt, true=False, elastic=True
    )


def mix_drawing(work: Work[SafetyMeasures]) -> Drawing | None:
    """Return a jug filled to its parts, bleach on water; None without an amount to mix."""
    m, units = work.measures, work.crew.units
    if m.bleach_mix_l is None:
        return None
    one, nine = m.parts
    bleach = chemicals.part_of(m.bleach_mix_l * 1000, one, nine)
    water = m.bleach_mix_l * 1000 - bleach
    wide, high = 420.0, 700.0
    line = high * water / (water + bleach)
    shapes: list[Shape] = [
        Polygon(rectangle(0.0, 0.0, wide, line), Role.WATER),
        Polygon(rectangle(0.0, line, wide, high), Role.DANGER),
        Line(((-12, high * 1.1), (0.0, high * 1.08), (0.0, 0.0), (wide, 0.0), (wide, high * 1.08)), Role.WOOD),
        Dimension((0.0, 0.0), (0.0, line), f"{qty(water, 'mL')}", offset=110),
        Dimension((0.0, line), (0.0, high), f"{qty(bleach, 'mL')}", offset=110),
        Label((wide / 2, line / 2), f"water first: {bare(nine)} parts"),
        Label((wide / 2, (line + high) / 2), f"then bleach: {bare(one)} {'part' if one == 1 else 'parts'}"),
    ]
    return Drawing(
        shapes=tuple(shapes),
        caption=f"Bleach mix: {bare(one)} part to {bare(nine)} of water",
        alt=f"A jug filled with {qty(water, 'mL')} of water and on it {qty(bleach, 'mL')} of bleach: "
        f"{bare(one)} part to {bare(nine)}.",
        true=False,
    )


def wait_drawing(work: Work[SafetyMeasures]) -> Drawing | None:
    """Return the hours of no entry along a clock; None where no wait is known."""
    m = work.measures
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
        Dimension((0.0, 0.0), (end, 0.0), f"{qty(hours, 'h', 3)}", offset=-TALL_MM * 0.7),
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
        caption=f"Nobody goes in for {qty(hours, 'h', 3)}",
        alt=f"A time line from spraying: hatched for {bare(hours)} hours, when nobody goes in, then plain.",
        true=False,
        elastic=True,
    )
