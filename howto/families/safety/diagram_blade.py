"""A blade in section at many times its size: the bevel, the flat back, and the file at its angle."""

from math import cos, radians, sin, tan

from howto.families.safety import machines
from howto.families.safety.measures import SafetyMeasures
from howto.model.work import Work
from howto.quantities.amounts import mm, qty
from howto.shapes import DimensionLine, Drawing, Label, Line, Polygon, Role, Shape, arc

USUAL_THICKNESS_MM = 3.5  # ours: hand shears, where nobody measured


def blade_drawing(work: Work[SafetyMeasures]) -> Drawing | None:
    """Return the edge cut across with the file on its bevel; None without a bevel."""
    m = work.measures
    if m.bevel_deg is None:
        return None
    thick = m.blade_thickness_mm or USUAL_THICKNESS_MM
    bevel = qty(m.bevel_deg, "°", 3)
    angle = radians(m.bevel_deg)
    back = thick / tan(angle)
    long = back + thick * 2.2
    wide = machines.bevel_width(thick, m.bevel_deg)
    blade = ((0.0, 0.0), (long, 0.0), (long, thick), (back, thick))
    gap, depth = thick * 0.06, thick * 0.9
    lean, out = (cos(angle), sin(angle)), (-sin(angle), cos(angle))

    def on_file(along: float, off: float) -> tuple[float, float]:
        return along * lean[0] + off * out[0], along * lean[1] + off * out[1]

    start, end = -wide * 0.35, wide * 1.4
    file_ = (on_file(start, gap), on_file(end, gap), on_file(end, gap + depth), on_file(start, gap + depth))
    shapes: list[Shape] = [
        Polygon(blade, Role.WALL),
        Line(blade, Role.WOOD, closed=True),
        Polygon(file_, Role.WATER),
        Line(file_, Role.WOOD, closed=True),
        Line(((0.0, 0.0), on_file(wide, 0.0)), Role.ACCENT),
        Line(arc((0.0, 0.0), back * 0.45, 0, m.bevel_deg, 16), Role.GUIDE),
        Line(((-thick, 0.0), (long * 1.06, 0.0)), Role.CENTRE),
        DimensionLine((long, 0.0), (long, thick), f"{mm(thick)}", offset=-thick * 0.7),
        Label((back * 0.42, back * 0.16), f"bevel {bevel}"),
        Label((long * 0.7, 0.0), "flat back: never filed"),
        Label(on_file(end * 0.8, gap + depth), "file, pushed towards the edge"),
        Label(on_file(wide * 0.5, 0.0), f"ground face {mm(wide)}"),
    ]
    return Drawing(
        shapes=tuple(shapes),
        caption=f"Blade in section: bevel {bevel}",
        alt=f"A blade {mm(thick)} thick cut across. A file lies at {bevel} to its "
        f"flat back; the ground face is {mm(wide)} wide.",
    )
