"""A ladder against a wall at true size: its foot, its angle, and its rails past the landing."""

from math import atan2, cos, degrees, radians, sin

from howto.families.safety.ladder import LadderStance, country_of, law_of, measured_angle, rails_to_mm, stance
from howto.families.safety.measures import SafetyMeasures
from howto.model.work import Work
from howto.quantities.amounts import Word, mm, qty
from howto.shapes import DimensionLine, Drawing, Label, Level, Line, Point, Polygon, Role, Shape, arc, rectangle

RUNG_MM = 280.0
RAIL_MM = 70.0
SEEN_DEG = 0.6  # a ladder found further off its angle is drawn as well


def ladder_drawing(work: Work[SafetyMeasures]) -> Drawing | None:
    """Return the ladder as it should stand, over how it was found; None where nothing says how long or high it is."""
    m = work.measures
    stand = stance(m)
    if stand is None:
        return None
    top, contact, landing = rails_to_mm(m) or m.rail_top_mm, stand.contact_mm, m.landing_mm
    past = max(contact * 1.04, top or 0.0)
    high = past * 1.06
    thick = max(120.0, high * 0.035)
    angle, foot = qty(stand.angle_deg, "°", 3), mm(stand.foot_mm)
    shapes: list[Shape] = [*_wall(stand, landing, high, thick), *_ground(stand, thick)]
    labels: list[Shape] = []
    said = f"A ladder leans at {angle}: foot {foot} out, touching {mm(contact)} up."
    if stand.rule != "75 degrees":
        labels.append(Label(_on(stand, 0.5), f"foot set {Word(stand.rule)}"))
    if landing is not None:
        said += f" Its rails pass the landing at {mm(landing)} by {mm(law_of(m).past_mm)} ({country_of(m)})."
    found, out = measured_angle(m), m.foot_measured_mm
    if found is not None and out is not None and abs(found - stand.angle_deg) > SEEN_DEG:
        shapes.append(Line(((-out, 0.0), (0.0, contact)), Role.LAST))
        labels.append(Label((-out * 0.72, contact * 0.28), f"as found: {qty(found, '°', 3)}"))
        said += f" Dashed: as found, {qty(found, '°', 3)}."
    if landing is None or abs(landing - contact) > 1:
        labels.append(Level((thick, contact), "touches here"))
    if landing is not None and top is not None:
        labels += [
            Level((thick * 1.6, landing), f"landing {mm(landing)}"),
            DimensionLine((0.0, landing), (0.0, top), f"{mm(top - landing)} past", offset=-high * 0.24),
        ]
    shapes += [
        *_rails(stand.foot_mm, stand.angle_deg, past),
        *_angle(stand, stand.angle_deg),
        DimensionLine((-stand.foot_mm, 0.0), (0.0, 0.0), f"{foot}", offset=-high * 0.07),
        DimensionLine((0.0, 0.0), (0.0, contact), f"{mm(contact)}", offset=-high * 0.13),
        *labels,
    ]
    return Drawing(shapes=tuple(shapes), caption=f"Ladder: foot {foot} out, {angle}", alt=said)


def _on(stand: LadderStance, part: float) -> Point:
    """Return a point on the ladder, a part of the way up to where it touches."""
    return -stand.foot_mm * (1 - part), stand.contact_mm * part


def _wall(stand: LadderStance, landing: float | None, high: float, thick: float) -> list[Shape]:
    """Return the wall it leans on, cut open, with a landing where there is one."""
    leans = landing is not None and stand.contact_mm <= landing + 1
    top = stand.contact_mm if landing is not None and leans else high
    shapes: list[Shape] = [Polygon(rectangle(0.0, 0.0, thick, top), Role.WALL)]
    if landing is not None and leans:
        shapes.append(Polygon(rectangle(0.0, landing - thick * 0.5, thick * 5, landing), Role.WALL))
        shapes.append(Line(((thick * 5, landing), (0.0, landing), (0.0, 0.0)), Role.WOOD))
    else:
        shapes.append(Line(((0.0, 0.0), (0.0, high)), Role.WOOD))
    return shapes


def _ground(stand: LadderStance, thick: float) -> list[Shape]:
    left, right = -stand.foot_mm * 1.9, thick * 5
    return [
        Polygon(rectangle(left, -stand.contact_mm * 0.05, right, 0.0), Role.SOIL),
        Line(((left, 0.0), (right, 0.0)), Role.GROUND),
    ]


def _rails(foot: float, angle: float, top: float) -> list[Shape]:
    """Return the ladder from the side: one rail, and the ends of its rungs."""
    along = (cos(radians(angle)), sin(radians(angle)))
    out = (-along[1] * RAIL_MM / 2, along[0] * RAIL_MM / 2)
    long = top / along[1]
    start, end = (-foot, 0.0), (-foot + along[0] * long, top)
    rail = (
        (start[0] - out[0], start[1] - out[1]),
        (end[0] - out[0], end[1] - out[1]),
        (end[0] + out[0], end[1] + out[1]),
        (start[0] + out[0], start[1] + out[1]),
    )
    shapes: list[Shape] = [Polygon(rail, Role.WATER), Line(rail, Role.WOOD, closed=True)]
    step = RUNG_MM
    while step < long - RUNG_MM / 4:
        middle = (start[0] + along[0] * step, start[1] + along[1] * step)
        shapes.append(Line(arc(middle, RAIL_MM * 0.28, steps=10), Role.WOOD))
        step += RUNG_MM
    return shapes


def _angle(stand: LadderStance, angle: float) -> list[Shape]:
    """Return the arc of the angle at the foot."""
    reach = stand.contact_mm * 0.17
    shapes: list[Shape] = [
        Line(arc((-stand.foot_mm, 0.0), reach, 0, degrees(atan2(stand.contact_mm, stand.foot_mm)), 20), Role.ACCENT)
    ]
    middle = radians(angle / 2)
    shapes.append(
        Label((-stand.foot_mm + reach * cos(middle), reach * sin(middle)), f"{qty(angle, '°', 3)} from the ground")
    )
    return shapes
