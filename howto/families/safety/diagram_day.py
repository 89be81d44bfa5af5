"""Bars that fill: the noise and the vibration of a day tool by tool, a mix by parts, and a wait by the clock."""

from collections.abc import Callable

from howto.families.safety import chemicals, noise, vibration
from howto.families.safety.day import Spell, noises, shakes, timed
from howto.families.safety.figures_chemicals import wait_hours
from howto.families.safety.figures_noise import scheme_of
from howto.families.safety.measures import SafetyMeasures
from howto.model.prose import capital
from howto.model.work import Work
from howto.quantities.amounts import Amount, Count, Name, Words, bare, percent, qty
from howto.shapes import DimensionLine, Drawing, Label, Level, Line, Polygon, Role, Shape, rectangle

T = Work[SafetyMeasures]
FULL_MM, TALL_MM = 1000.0, 200.0  # a full day is a metre of bar
MOST_PARTS = 4.0  # full days; what passes them is cut off
MOST_LETTERS, EACH_LETTERS = 150, 18  # of the tools in a description, and of one beside its name
FILLS = (Role.KEEP, Role.WATER, Role.MULCH, Role.BLADE, Role.SOIL, Role.WALL)
FULL = bare(100)


def noise_drawing(work: T) -> Drawing | None:
    """Return the day's noise as a bar, a field a tool, up to a full dose; None where no times are written."""
    spells, scheme = noises(work.measures), scheme_of(work.measures)
    if not timed(spells):
        return None
    parts = [spell.spent / noise.allowed_minutes(spell.amount, scheme) for spell in spells]
    return _bar(work, spells, parts, percent, f"noise of the day, {Name(scheme.name)}")


def vibration_drawing(work: T) -> Drawing | None:
    """Return the day's vibration as a bar, a field a tool, up to the action value; None where no times are written."""
    spells = shakes(work.measures)
    if not timed(spells):
        return None
    parts = [vibration.points(spell.amount, spell.spent / 60) / vibration.ACTION_POINTS for spell in spells]
    return _bar(work, spells, parts, lambda found: f"{bare(found)} points", "vibration of the day")


def _bar(
    work: T, spells: tuple[Spell, ...], parts: list[float], told: Callable[[float], Amount | Words], what: Words
) -> Drawing:
    """Return one bar: a full day in outline, a field a tool, hatched where it passes the day."""
    full_days = min(sum(parts), MOST_PARTS)
    tall = max(1.0, full_days) * FULL_MM * 0.3
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
            shapes.append(Label(((left + right) / 2, tall / 2), f"{spell.name}: {told(part * 100)}"))
        left = right
    total = told(sum(parts) * 100)
    shapes += [
        Line(rectangle(0.0, 0.0, FULL_MM, tall), Role.CENTRE, closed=True),
        Line(((FULL_MM, -tall * 0.25), (FULL_MM, tall * 1.3)), Role.ACCENT),
        Level((FULL_MM, tall * 1.3), f"a full day: {told(100)}"),
        DimensionLine((0.0, 0.0), (full_days * FULL_MM, 0.0), f"{total}", offset=-tall * 0.5),
    ]
    each = ", ".join(f"{spell.name} {told(part * 100)}" for spell, part in zip(spells, parts, strict=True))
    letters = sum(map(len, work.measures.machines or ())) + EACH_LETTERS * len(spells)
    filled = (
        f"filled tool by tool: {each}. In all {total}"
        if letters <= MOST_LETTERS
        else f"filled by {Count(len(spells), 'tool', 'tools')}: in all {total}"
    )
    return Drawing(
        shapes=tuple(shapes),
        caption=f"{capital(what)}: {total}, {FULL} is full",
        alt=f"A bar for the {what}, {filled}; a full day is {FULL}.",
        true=False,
        elastic=True,
    )


def mix_drawing(work: T) -> Drawing | None:
    """Return a jug filled to its parts, bleach on water; None without an amount to mix."""
    m = work.measures
    if m.bleach_mix_l is None:
        return None
    one, nine = m.parts
    bleach_ml = chemicals.part_of(m.bleach_mix_l * 1000, one, nine)
    bleach, water = qty(bleach_ml, "mL"), qty(m.bleach_mix_l * 1000 - bleach_ml, "mL")
    wide, high = 420.0, 700.0
    line = high * nine / (one + nine)
    shapes: list[Shape] = [
        Polygon(rectangle(0.0, 0.0, wide, line), Role.WATER),
        Polygon(rectangle(0.0, line, wide, high), Role.DANGER),
        Line(((-12, high * 1.1), (0.0, high * 1.08), (0.0, 0.0), (wide, 0.0), (wide, high * 1.08)), Role.WOOD),
        DimensionLine((0.0, 0.0), (0.0, line), f"{water}", offset=110),
        DimensionLine((0.0, line), (0.0, high), f"{bleach}", offset=110),
        Label((wide / 2, line / 2), f"water first: {bare(nine)} parts"),
        Label((wide / 2, (line + high) / 2), f"then bleach: {bare(one)} {'part' if one == 1 else 'parts'}"),
    ]
    shares = f"{bare(one)} part to {bare(nine)}"
    return Drawing(
        shapes=tuple(shapes),
        caption=f"Bleach mix: {shares} of water",
        alt=f"A jug filled with {water} of water and on it {bleach} of bleach: {shares}.",
        true=False,
    )


def wait_drawing(work: T) -> Drawing | None:
    """Return the hours of no entry along a clock; None where no wait is known."""
    m = work.measures
    hours = wait_hours(m)
    if hours is None or hours <= 0:
        return None
    start = chemicals.clock_minutes(m.sprayed_at) if m.sprayed_at else None
    long = FULL_MM * 1.6
    end = long * hours / max(24.0, hours * 1.15)
    wait = qty(hours, "h", 3)
    shapes: list[Shape] = [
        Polygon(rectangle(0.0, 0.0, end, TALL_MM), Role.DANGER),
        Polygon(rectangle(end, 0.0, long, TALL_MM), Role.KEEP),
        Line(rectangle(0.0, 0.0, long, TALL_MM), Role.WOOD, closed=True),
        DimensionLine((0.0, 0.0), (end, 0.0), f"{wait}", offset=-TALL_MM * 0.7),
        Label((end / 2, TALL_MM / 2), "nobody goes in"),
        Label(((end + long) / 2, TALL_MM / 2), "once it is dry"),
    ]
    if start is not None:
        _, at = chemicals.after(start, hours)
        shapes += [
            Label((0.0, TALL_MM), f"sprayed {Name(chemicals.clock(start))}"),
            Label((end, TALL_MM), f"in from {Name(chemicals.clock(at))}"),
        ]
    return Drawing(
        shapes=tuple(shapes),
        caption=f"Nobody goes in for {wait}",
        alt=f"A time line from spraying: hatched for {wait}, when nobody goes in, then plain.",
        true=False,
        elastic=True,
    )
