"""A ladder against a wall at true size: its foot, its angle, and its rails past the landing."""

from math import atan2, cos, degrees, radians, sin

from howto.families.safety.figures_height import country_of
from howto.families.safety.ladder import Stance, law_of, measured_angle, rails_to_mm, stance
from howto.families.safety.measures import SafetyMeasures
from howto.model.work import Work
from howto.quantities.amounts import mm, qty
from howto.shapes import Dimension, Drawing, Label, Level, Line, Point, Polygon, Role, Shape, arc, rectangle

RUNG_MM = 280.0
RAIL_MM = 70.0


def ladder_drawing(work: Work[SafetyMeasures]) -> Drawing | None:
    """Return the ladder as it should stand, over how it was found; None where nothing says how long or high it is."""
    m, units = work.measures, work.crew.units
    stand = stance(m)
    if stand is None:
        return None
    top = rails_to_mm(m) or m.rail_top_mm
    past = max(stand.contact_mm * 1.04, top or 0.0)
    angle = stand.angle_deg
    high = max(past, stand.contact_mm) * 1.06
    thick = max(120.0, high * 0.035)
    shapes: list[Shape] = [*_wall(stand, m.landing_mm, high, thick), *_ground(stand, thick)]
    found = measured_angle(m)
    if found is not None and abs(found - angle) > 0.6 and m.foot_measured_mm is not None:
        shapes.append(Line(((-m.foot_measured_mm, 0.0), (0.0, stand.contact_mm)), Role.LAST))
    shapes += _rails(stand.foot_mm, angle, past)
    shapes += _angle(stand, angle)
    shapes += [
        Dimension((-stand.foot_mm, 0.0), (0.0, 0.0), f"{mm(stand.foot_mm)}", offset=-high * 0.07),
        Dimension((0.0, 0.0), (0.0, stand.contact_mm), f"{mm(stand.contact_mm)}", offset=-high * 0.13),
    ]
    if stand.rule != "75 degrees":
        shapes.append(Label(_on(stand, 0.5), f"foot set {stand.rule}"))
    if found is not None and abs(found - angle) > 0.6 and m.foot_measured_mm is not None:
        shapes.append(Label((-m.foot_measured_mm * 0.72, stand.contact_mm * 0.28), f"as found: {qty(found, '°', 3)}"))
    if m.landing_mm is None or abs(m.landing_mm - stand.contact_mm) > 1:
        shapes.append(Level((thick, stand.contact_mm), "touches here"))
    if m.landing_mm is not None and top is not None:
        shapes += [
            Level((thick * 1.6, m.landing_mm), f"landing {mm(m.landing_mm)}"),
            Dimension((0.0, m.landing_mm), (0.0, top), f"{mm(top - m.landing_mm)} past", offset=-high * 0.24),
        ]
    return Drawing(
        shapes=tuple(shapes),
        caption=f"Ladder: foot {mm(stand.foot_mm)} out, {qty(angle, '°', 3)}",
        alt=_alt(work, stand, found),
    )


def _alt(work: Work[SafetyMeasures], stand: Stance, found: float | None) -> str:
    m, units = work.measures, work.crew.units
    said = (
        f"A ladder leans at {qty(stand.angle_deg, '°', 3)}: foot {mm(stand.foot_mm)} out, touching "
        f"{mm(stand.contact_mm)} up."
    )
    if m.landing_mm is not None:
        landing, past = f"{mm(m.landing_mm)}", f"{mm(law_of(m).past_mm)}"
        said += f" Its rails pass the landing at {landing} by {past} ({country_of(m)})."
    if found is not None and abs(found - stand.angle_deg) > 0.6:
        said += f" Dashed: as found, {qty(found, '°', 3)}."
    return said


def _on(stand: Stance, part: float) -> Point:
    """Return a point on the ladder, a part of the way up to where it touches."""
    return -stand.foot_mm * (1 - part), stand.contact_mm * part


def _wall(stand: Stance, landing: float | None, high: float, thick: float) -> list[Shape]:
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


def _ground(stand: Stance, thick: float) -> list[Shape]:
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


def _angle(stand: Stance, angle: float) -> list[Shape]:
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
