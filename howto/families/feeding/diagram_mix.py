"""The can drawn at true size, with a level for each quarter and what goes into it."""

from math import pi

from howto.families.feeding.figures_mix import mix_g_per_l
from howto.families.feeding.label import label_of
from howto.families.feeding.plan import T
from howto.quantities import convert
from howto.quantities.amounts import Words, mm, qty
from howto.quantities.cans import usual_can_l
from howto.shapes import DimensionLine, Drawing, Label, Level, Line, Polygon, Role, Shape, arc, rectangle

SLENDER = 1.15  # height over width
ROOM = 0.08  # of the height, left above the full mark


def can(work: T) -> Drawing:
    """Return a watering can, or a sprayer where only that is written: levels by quarters, and the measure of feed."""
    m = work.measures
    size = m.can_l or m.sprayer_l or usual_can_l(work.crew.units)
    name = "sprayer" if m.can_l is None and m.sprayer_l is not None else "can"
    width = (convert(size, "L", "m3") * 4 / (pi * SLENDER)) ** (1 / 3) * 1000
    full, half = width * SLENDER, width / 2
    shapes: list[Shape] = [
        Polygon(rectangle(-half, 0, half, full), Role.WATER),
        Line(((-half, full * (1 + ROOM)), (-half, 0), (half, 0), (half, full * (1 + ROOM))), Role.KEEP),
        *(_sprayer(half, full) if name == "sprayer" else _spout(half, full)),
        Line(((-width, 0), (width * 1.1, 0)), Role.GROUND),
        Line(((0, -full * 0.05), (0, full * 1.2)), Role.CENTRE),
    ]
    for quarter in (1, 2, 3, 4):
        up = full * quarter / 4
        shapes.append(Line(((half * 0.55, up), (half, up)), Role.ACCENT if quarter == 4 else Role.GUIDE))
        shapes.append(Level((half, up), _level(size, quarter)))
    shapes.append(DimensionLine((-half, 0), (half, 0), f"{mm(width)}", offset=-full * 0.16))
    what = _what(work, size)
    shapes.append(Label((-half * 0.4, full / 2), f"{what or 'feed'} in at half full"))
    into = f"{what} of feed" if what else "The feed"
    return Drawing(
        shapes=tuple(shapes),
        caption=f"The {name}: half fill, feed in, stir, fill up",
        alt=f"A {qty(size, 'L')} {name} from the side with a level for each quarter. {into} goes in at half full, "
        f"is stirred, and the {name} is filled to its mark.",
    )


def _level(size: float, quarter: int) -> Words:
    said = f"{qty(size * quarter / 4, 'L')}"
    return {2: f"{said}: feed in, stir", 4: f"{said}: full"}.get(quarter, said)


def _what(work: T, size: float) -> Words:
    """Return what goes into the can: grams or millilitres; nothing where neither is known."""
    m = work.measures
    grams = mix_g_per_l(m, label_of(m))
    if grams is not None:
        return f"{qty(grams * size, 'g')}"
    return f"{qty(m.concentrate_ml_per_l * size, 'mL')}" if m.concentrate_ml_per_l is not None else ""


def _spout(half: float, full: float) -> list[Shape]:
    """Return the spout with its rose to the left, and the handle over the top."""
    tip = (-half * 2.3, full * 1.02)
    end = ((tip[0], tip[1] + full * 0.03), (tip[0] - half * 0.08, tip[1] - full * 0.03))
    spout = ((-half, full * 0.12), (-half, full * 0.3), *end)
    corners = ((0.05, 0.1), (-0.3, 0.06), (-0.12, -0.1))
    rose = tuple((tip[0] + half * x, tip[1] + full * y) for x, y in corners)
    handle = tuple((x, full * (1 + ROOM) + y * 0.62) for x, y in arc((0, 0), half, 0, 180))
    return [Line(spout, Role.KEEP, closed=True), Polygon(rose, Role.WOOD), Line(handle, Role.KEEP)]


def _sprayer(half: float, full: float) -> list[Shape]:
    """Return the pump on top, and the hose with its lance to the left."""
    top = full * (1 + ROOM)
    return [
        Polygon(rectangle(-half * 0.3, top, half * 0.3, top * 1.12), Role.WOOD),
        Line(((-half, top), (half, top)), Role.KEEP),
        Line(((-half, full * 0.15), (-half * 1.7, full * 0.3), (-half * 1.9, full * 0.9)), Role.WIRE),
        Polygon(rectangle(-half * 1.98, full * 0.9, -half * 1.82, full * 1.25), Role.WOOD),
    ]
