"""How near a line the work comes, at true size: the zone round it, and the highest of body, tool or branch."""

from howto.families.safety.diagram_people import SHOULDER_MM, TALL_MM, person
from howto.families.safety.figures_height import distance_mm, zone_of
from howto.families.safety.ladder import country_of
from howto.families.safety.measures import SafetyMeasures
from howto.model.work import Work
from howto.quantities.amounts import Word, mm
from howto.shapes import DimensionLine, Drawing, Label, Level, Line, Polygon, Role, Shape, arc, rectangle

USUAL_LINE_MM = 6000.0  # ours: where nobody measured how high the line hangs
DUST = 1e-6


def line_drawing(work: Work[SafetyMeasures]) -> Drawing | None:
    """Return the line with its zone over the work; None where the country has no distance on record for it."""
    m = work.measures
    zone, gap = zone_of(m), distance_mm(m)
    if zone is None:
        return None
    keep = zone.no_go_mm
    line = m.line_height_mm or max(USUAL_LINE_MM, keep + TALL_MM + 1000, (gap or 0.0) + TALL_MM + 400)
    wide = max(keep, zone.spotter_mm or 0.0) * 1.1
    shapes: list[Shape] = [
        Polygon(rectangle(-wide, -line * 0.05, wide, 0.0), Role.SOIL),
        Line(((-wide, 0.0), (wide, 0.0)), Role.GROUND),
    ]
    if zone.spotter_mm is not None:
        shapes.append(Line(arc((0.0, line), zone.spotter_mm), Role.GUIDE, closed=True))
        shapes.append(Label((zone.spotter_mm * 0.7071, line + zone.spotter_mm * 0.7071), "spotter needed to here"))
    shapes += [
        Polygon(arc((0.0, line), keep)[:-1], Role.DANGER),
        Line(arc((0.0, line), keep), Role.REMOVE, closed=True),
        Polygon(arc((0.0, line), max(30.0, line * 0.012), steps=16)[:-1], Role.WOOD),
        Level((wide * 0.98, line), f"line {mm(line)} up" if m.line_height_mm else "line"),
        DimensionLine((0.0, line), (keep, line), f"{mm(keep)}", offset=keep * 0.12),
        Label((-keep * 0.6, line + keep * 0.6), "keep out: live"),
    ]
    reach = line - (keep if gap is None else gap)
    shapes += _worker(min(max(reach, 0.0), line))
    said = f"A line overhead, {Word(zone.note)}, with a hatched zone of {mm(keep)} round it."
    if gap is None:
        said += " A worker stands below with a pole that ends outside it."
    else:
        near, off = gap < keep - DUST, mm(max(gap, 0.0))
        shapes += [
            DimensionLine((0.0, reach), (0.0, line), f"{off}", offset=wide * 0.35),
            Label((0.0, reach), "too near: stop" if near else "highest point of the work"),
        ]
        said += f" The work comes within {off} of the line, {'inside the zone: stop' if near else 'outside it'}."
    return Drawing(shapes=tuple(shapes), caption=f"Line overhead: keep {mm(keep)} away ({country_of(m)})", alt=said)


def _worker(reach: float) -> list[Shape]:
    """Return somebody under the line, a pole in their hands up to the reach."""
    hands = (0.0, min(SHOULDER_MM - 250, reach))
    shapes: list[Shape] = person((-320.0, 0.0), hands)
    if reach > hands[1]:
        shapes.append(Line(((0.0, max(0.0, hands[1] - 500)), (0.0, reach)), Role.ACCENT))
    return shapes
