"""A lawn drawn at true size: the grass blade with its cut lines, and growth against cuts over time."""

from datetime import date

from howto.families.mowing import formulae
from howto.families.mowing.lawn import THIRD, T, first_cut, growth, standing, way_down
from howto.quantities.amounts import Count, bare, mm, percent, qty
from howto.shapes import DimensionLine, Drawing, Label, Level, Line, Point, Polygon, Role, Shape, rectangle

LEAN = (0.10, -0.07, 0.04, -0.12, 0.13, -0.03, 0.08)  # how far each blade's tip leans, in heights
MOST_DRAWN = 6  # cuts that a drawing and a short description can hold


def drawings(work: T, today: date) -> tuple[Drawing, ...]:
    """Return the blades in thirds with today's cut, then the cuts on the way down or the saw of growth."""
    del today
    second = staged(work) if len(way_down(work.measures).heights) > 1 else saw(work)
    return in_thirds(work), second


def in_thirds(work: T) -> Drawing:
    """Return grass blades as they stand, thirds marked, what today's cut takes hatched."""
    m = work.measures
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
        DimensionLine((-wide / 2, 0), (-wide / 2, stands), stood, offset=wide * 0.26),
    ]
    if cut >= stands:
        alt = f"Grass blades {stood} high in section. Nothing comes off today; thirds of the height are marked."
        return Drawing(tuple(shapes), f"Today: {stood}, nothing to cut", alt)
    off = percent(formulae.share_removed(stands, cut) * 100)
    shapes += [
        Line(((-wide / 2, cut), (wide / 2, cut)), Role.ACCENT),
        Level((wide / 2, cut), f"cut {left}"),
        DimensionLine((-wide / 2, cut), (-wide / 2, stands), f"{off} off", offset=wide * 0.1),
    ]
    hatched = f"The part above {left}, {off} of the height, is hatched and comes off"
    alt = f"Grass blades {stood} high in section. {hatched}; thirds of the height are marked."
    return Drawing(tuple(shapes), f"Today: {stood} down to {left}", alt)


def _blade(foot: float, tall: float, lean: float, cut: float) -> list[Shape]:
    """Return one blade split at the cut: what stays and what comes off."""
    split = min(cut / tall, 1.0)
    parts = sorted({split, *(step / 12 for step in range(13))})
    stays, goes = [part for part in parts if part <= split], [part for part in parts if part >= split]

    def edge(part: float, side: int) -> Point:
        return foot + lean * part**2 + side * tall * 0.035 * (1.05 - part**2), tall * part

    return [
        Polygon((*(edge(part, -1) for part in each), *(edge(part, 1) for part in reversed(each))), role)
        for each, role in ((stays, Role.KEEP), (goes, Role.REMOVE))
        if len(each) > 1
    ]


def staged(work: T) -> Drawing:
    """Return one blade a cut, each as it stands before it, with the level it is cut to; of many, the first."""
    stands, down = standing(work.measures), way_down(work.measures)
    cuts, heights = Count(len(down.heights), "cut", "cuts"), down.heights[:MOST_DRAWN]
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
        DimensionLine((-pitch * 0.5, 0), (-pitch * 0.5, stands), f"{mm(stands)}", offset=pitch * 0.25),
    ]
    listed = ", ".join(f"{mm(height)}" for height in heights)
    first = f"Down in {cuts}"
    if cuts.number > len(heights):
        listed += f" and so on to {mm(down.heights[-1])}"
        first = f"The first {bare(len(heights))} of {cuts}"
    down_to = f"A lawn {mm(stands)} high brought down in {cuts}, to {listed}"
    alt = f"{down_to}; each hatched tip is at most {THIRD.most} of the blade."
    return Drawing(tuple(shapes), f"{first}, {THIRD.most} at most each time", alt)


def saw(work: T) -> Drawing:
    """Return four rounds of growth and cut: up to the mowing height, down to the set height; across is time."""
    low = work.measures.set_height_mm
    high, days = formulae.mow_at_mm(low), qty(formulae.days_between_cuts(low, growth(work)[0]), "d", 3)
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
        DimensionLine((across, low), (across * 2, low), f"{days}", offset=-high * 0.2),
        Label((across * 4, (low + high) / 2), "each cut"),
    ]
    grows = f"it grows from {mm(low)} to {mm(high)} in {days} and each cut brings it back"
    caption, alt = f"A cut every {days} keeps the one-third rule", f"Grass height over time as a saw: {grows}."
    return Drawing(tuple(shapes), caption, alt, true=False, elastic=True)
