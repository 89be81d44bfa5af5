"""A lift from the side at true size: where this load may be held, and where it is picked up and set down."""

from howto.families.safety import lifting
from howto.families.safety.diagram_people import person
from howto.families.safety.figures_lifting import Ends, lifts_of
from howto.families.safety.lifting import FORMS, Lift
from howto.families.safety.measures import SafetyMeasures
from howto.model.work import Work
from howto.quantities import convert
from howto.quantities.amounts import Amount, Word, mm, qty
from howto.shapes import DimensionLine, Disc, Drawing, Label, Level, Line, Point, Polygon, Role, Shape, rectangle

CM = FORMS["metric"]
NEAR_MM, FAR_MM, TOP_MM, KNUCKLE_MM = (10 * each for each in (CM.near, CM.most_reach, CM.most_height, CM.knuckles))
LEFT_MM = NEAR_MM * 0.4
SLICES = 35


def lift_drawing(work: Work[SafetyMeasures]) -> Drawing | None:
    """Return the zones of the load by reach and height, and both ends of the lift; None without a load or hands."""
    m, ends = work.measures, lifts_of(work.measures)
    if not ends or m.load_kg is None:
        return None
    lift, load = ends[0][1], qty(m.load_kg, "kg")
    whole, half = _zone(lift, m.load_kg), _zone(lift, m.load_kg / 2)
    points = [_hands(each) for _, each in ends]
    shapes: list[Shape] = [
        Polygon(rectangle(-420, -70, FAR_MM * 1.35, 0.0), Role.SOIL),
        Line(((-420, 0.0), (FAR_MM * 1.35, 0.0)), Role.GROUND),
        Polygon(rectangle(LEFT_MM, 0.0, FAR_MM, TOP_MM), Role.REMOVE),
        *(Polygon(zone, role) for zone, role in ((half, Role.MULCH), (whole, Role.KEEP)) if zone),
        *person((0.0, 0.0), points[0]),
        Line(((0.0, -70), (0.0, TOP_MM * 1.04)), Role.CENTRE),
        Line(((LEFT_MM, KNUCKLE_MM), (FAR_MM, KNUCKLE_MM)), Role.GUIDE),
        Level((FAR_MM, KNUCKLE_MM), f"{mm(KNUCKLE_MM)}"),
        Level((FAR_MM, TOP_MM), f"{mm(TOP_MM)}"),
        DimensionLine((0.0, 0.0), (FAR_MM, 0.0), f"{mm(FAR_MM)}", offset=-180),
    ]
    for number, ((name, each), point) in enumerate(zip(ends, points, strict=True), 1):
        shapes += [Disc(point, number), Label(point, f"{Word(name)}: at most {_limit(each)}")]
    if len(points) > 1:
        shapes.append(Line(tuple(points), Role.ACCENT))
    if whole:
        shapes.append(Label(_inside(whole), f"{load} may be held here"))
    elif half:
        shapes.append(Label(_inside(half), f"half of it, {qty(m.load_kg / 2, 'kg')}, here"))
    return Drawing(
        shapes=tuple(shapes), caption=f"Lifting {load}: where it may be held", alt=_alt(load, ends, whole=bool(whole))
    )


def _limit(lift: Lift) -> Amount:
    return qty(lifting.weight_limit(lift), lift.form.weight)


def _alt(load: Amount, ends: Ends, *, whole: bool) -> str:
    zone = f"the plain zone near the body is where {load} may be held" if whole else f"nowhere may {load} be held so"
    limits = " and ".join(f"{Word(name)} at most {_limit(lift)}" for name, lift in ends)
    return f"A person from the side with zones of reach and height: {zone}. This lift allows {limits}."


def _hands(lift: Lift) -> Point:
    return convert(lift.out, lift.form.length, "mm"), convert(lift.up, lift.form.length, "mm")


def _zone(lift: Lift, load_kg: float) -> tuple[Point, ...]:
    """Return where so much may be held in this lift: the reach at which the limit is the load, by height."""
    found: list[Point] = []
    rest = lifting.multipliers(lift)
    for at in range(SLICES + 1):
        up = TOP_MM * at / SLICES
        here = rest["DM"] * rest["AM"] * lifting.height_multiplier(up / 10)
        here *= lifting.frequency_multiplier(lift.lifts_a_min, lift.hours, up / 10)
        here *= lifting.grip_multiplier(lift.grip, up / 10)
        reach = NEAR_MM * CM.constant * here / load_kg
        if reach >= NEAR_MM - 1e-9:
            found.append((min(reach, FAR_MM), up))
    if len(found) < 2:
        return ()
    return ((LEFT_MM, found[0][1]), *found, (LEFT_MM, found[-1][1]))


def _inside(zone: tuple[Point, ...]) -> Point:
    """Return a point well inside a zone: half out at the middle of its height."""
    low, high = min(y for _, y in zone), max(y for _, y in zone)
    middle = (low + high) / 2
    across = min((x for x, y in zone[1:-1] if abs(y - middle) <= TOP_MM / SLICES), default=NEAR_MM)
    return (LEFT_MM + across) / 2, middle
