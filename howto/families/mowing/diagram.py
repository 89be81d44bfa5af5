"""A lawn drawn at true size: the grass blade with its cut lines, and growth against cuts over time."""

from datetime import date

from howto.families.mowing import formulae
from howto.families.mowing.figures import in_days
from howto.families.mowing.lawn import first_cut, growth, standing, way_down
from howto.families.mowing.measures import MowingMeasures
from howto.model.work import Work
from howto.quantities import show_number as num
from howto.quantities.amounts import mm
from howto.shapes import Dimension, Drawing, Label, Level, Line, Point, Polygon, Role, Shape, rectangle

LEAN = (0.10, -0.07, 0.04, -0.12, 0.13, -0.03, 0.08)  # how far each blade's tip leans, in heights
MOST_DRAWN = 6  # cuts that a drawing and a short description can hold


def drawings(work: Work[MowingMeasures], today: date) -> tuple[Drawing, ...]:
    """Return the blades in thirds with today's cut, then the cuts on the way down or the saw of growth."""
    del today
    second = staged(work) if len(way_down(work.measures).heights) > 1 else saw(work)
    return in_thirds(work), second


def in_thirds(work: Work[MowingMeasures]) -> Drawing:
    """Return grass blades as they stand, thirds marked, what today's cut takes hatched."""
    m, units = work.measures, work.crew.units
    stands = standing(m)
    cut = min(first_cut(m), stands)
    wide = stands * 0.9
    stood, left = f"{mm(stands)}", f"{mm(cut)}"
    shapes: list[Shape] = [Polygon(rectangle(-wide / 2, -stands * 0.16, wide / 2, 0), Role.SOIL)]
    for at, lean in enumerate(LEAN):
        foot = wide * (-0.36 + 0.12 * at)
        shapes += _blade(foot, stands * (0.93 + 0.07 * (at % 2)), stands * lean, cut)
    shapes += [Line(((-wide / 2, 0), (wide / 2, 0)), Role.GROUND)]
    shapes += [Line(((-wide / 2, stands * part), (wide / 2, stands * part)), Role.CENTRE) for part in (1 / 3, 2 / 3)]
    shapes += [
        Level((wide / 2, stands), f"stands {stood}"),
        Dimension((-wide / 2, 0), (-wide / 2, stands), stood, offset=wide * 0.26),
    ]
    if cut >= stands:
        return Drawing(
            shapes=tuple(shapes),
            caption=f"Today: {stood}, nothing to cut",
            alt=f"Grass blades {stood} high in section. Nothing comes off today; thirds of the height are marked.",
        )
    off = num(formulae.share_removed(stands, cut) * 100)
    shapes += [
        Line(((-wide / 2, cut), (wide / 2, cut)), Role.ACCENT),
        Level((wide / 2, cut), f"cut {left}"),
        Dimension((-wide / 2, cut), (-wide / 2, stands), f"{off} % off", offset=wide * 0.1),
    ]
    return Drawing(
        shapes=tuple(shapes),
        caption=f"Today: {stood} down to {left}",
        alt=f"Grass blades {stood} high in section. The part above {left}, {off} % of the height, is hatched and "
        "comes off; thirds of the height are marked.",
    )


def _blade(foot: float, tall: float, lean: float, cut: float) -> list[Shape]:
    """Return one blade split at the cut: what stays and what comes off."""
    steps = 12
    thick = tall * 0.035
    left: list[Point] = []
    right: list[Point] = []
    for step in range(steps + 1):
        part = step / steps
        x, y = foot + lean * part**2, tall * part
        half = thick * (1 - part**2) + thick * 0.05
        left.append((x - half, y))
        right.append((x + half, y))
    low = [(a, b) for a, b in zip(left, right, strict=True) if a[1] <= cut]
    high = [(a, b) for a, b in zip(left, right, strict=True) if a[1] > cut]
    if low and high:
        edge = _between(low[-1], high[0], cut)
        low.append(edge)
        high.insert(0, edge)
    return [
        Polygon(tuple(a for a, _ in part) + tuple(b for _, b in reversed(part)), role)
        for part, role in ((low, Role.KEEP), (high, Role.REMOVE))
        if len(part) > 1
    ]


def _between(lower: tuple[Point, Point], upper: tuple[Point, Point], y: float) -> tuple[Point, Point]:
    """Return the two edge points at height `y` between two rows of a blade."""
    part = (y - lower[0][1]) / (upper[0][1] - lower[0][1])
    a, b = ((low[0] + (high[0] - low[0]) * part, y) for low, high in zip(lower, upper, strict=True))
    return a, b


def staged(work: Work[MowingMeasures]) -> Drawing:
    """Return one blade a cut, each as it stands before it, with the level it is cut to; of many, the first."""
    m, units = work.measures, work.crew.units
    stands, down = standing(m), way_down(m)
    count = len(down.heights)
    heights = down.heights[:MOST_DRAWN]
    pitch = stands * 0.42
    befores = (stands, *(height + down.between_mm for height in heights))
    shapes: list[Shape] = []
    for at, (high, low) in enumerate(zip(befores, heights, strict=False)):
        shapes += _blade(pitch * at, high, high * 0.08, low)
        shapes += [
            Line(((pitch * at - pitch * 0.3, low), (pitch * at + pitch * 0.4, low)), Role.ACCENT),
            Level((pitch * at + pitch * 0.4, low), f"{mm(low)}"),
        ]
    end = pitch * (len(heights) - 0.4)
    shapes += [
        Polygon(rectangle(-pitch * 0.5, -stands * 0.12, end, 0), Role.SOIL),
        Line(((-pitch * 0.5, 0), (end, 0)), Role.GROUND),
        Dimension((-pitch * 0.5, 0), (-pitch * 0.5, stands), f"{mm(stands)}", offset=pitch * 0.25),
    ]
    listed = ", ".join(f"{mm(height)}" for height in heights)
    if count > len(heights):
        listed += f" and so on to {mm(down.heights[-1])}"
    first = f"The first {len(heights)} of {count} cuts" if count > len(heights) else f"Down in {count} cuts"
    return Drawing(
        shapes=tuple(shapes),
        caption=f"{first}, a third at most each time",
        alt=f"A lawn {mm(stands)} high brought down in {count} cuts, to {listed}; each hatched "
        "tip is at most a third of the blade.",
    )


def saw(work: Work[MowingMeasures]) -> Drawing:
    """Return four rounds of growth and cut: up to the mowing height, down to the set height; across is time."""
    m, units = work.measures, work.crew.units
    low, high = m.set_height_mm, formulae.mow_at_mm(m.set_height_mm)
    a_day, _ = growth(work)
    days = formulae.days_between_cuts(m.set_height_mm, a_day)
    across = high * 0.5  # one interval on the drawing: time has no true length
    teeth: list[Point] = []
    for at in range(4):
        teeth += [(across * at, low), (across * (at + 1), high)]
    teeth.append((across * 4, low))
    shapes: list[Shape] = [
        Polygon(rectangle(0, 0, across * 4, low), Role.KEEP),
        Line(((0, 0), (across * 4, 0)), Role.GROUND),
        Line(tuple(teeth), Role.ACCENT),
        Line(((0, high), (across * 4, high)), Role.CENTRE),
        Level((across * 4, high), f"mow at {mm(high)}"),
        Level((across * 4, low), f"set {mm(low)}"),
        Dimension((across, low), (across * 2, low), in_days(days), offset=-high * 0.2),
        Label((across * 4, (low + high) / 2), "each cut"),
    ]
    return Drawing(
        shapes=tuple(shapes),
        caption=f"A cut every {in_days(days)} keeps the one-third rule",
        alt=f"Grass height over time as a saw: it grows from {mm(low)} to {mm(high)} in "
        f"{in_days(days)} and each cut brings it back.",
        true=False,
        elastic=True,
    )
