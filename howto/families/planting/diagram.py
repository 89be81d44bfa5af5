"""A planting drawn at true size: the hole in section and the staked tree here, the plan in diagram_plan.py."""

from datetime import date
from math import sin

from howto.families.planting import hole
from howto.families.planting.diagram_plan import bank, plan
from howto.families.planting.measures import PlantingMeasures
from howto.model.work import Work
from howto.quantities.amounts import Count, Word, mm, percent
from howto.shapes import (
    DimensionLine,
    Drawing,
    Label,
    Level,
    Line,
    Point,
    Polygon,
    Role,
    Shape,
    ellipse,
    leafy,
    rectangle,
)

T = Work[PlantingMeasures]

USUAL_BALL_MM = 400.0  # drawn where nothing tells the ball
USUAL_TRUNK = 0.1  # of the ball's width, where no calliper is written


def drawings(work: T, today: date) -> tuple[Drawing, ...]:
    """Return the hole and the staked tree of a tree or shrub; the plan where a spacing is written."""
    del today
    m = work.measures
    found = [section(m)] if m.work != "bed" or m.spacing_mm is None else []
    if m.work == "tree" and m.height_mm is not None and m.stakes != 0 and not m.stands_alone:
        found.append(staked(m, m.height_mm))
    if m.spacing_mm is not None:
        found.append(plan(m, m.spacing_mm))
        if m.slope_percent:
            found.append(bank(m, m.spacing_mm, m.slope_percent))
        elif m.work == "bed" and (m.pot_l is not None or m.ball_width_mm is not None):
            found.append(section(m))
    return tuple(found)


class _HoleSizes:
    """The sizes of a section in mm: what is known of it, and the usual for the rest."""

    def __init__(self, m: PlantingMeasures) -> None:
        pot = hole.pot_ball_mm(m.pot_l) if m.pot_l is not None and m.stock == "container" else None
        self.ball = hole.ball_mm(m) or pot or USUAL_BALL_MM
        self.deep = m.root_to_base_mm or (pot if hole.ball_mm(m) is None else None) or hole.ball_depth_mm(self.ball)
        advised = hole.depth_mm(m) if m.root_to_base_mm is not None else None
        self.hole = min(advised or hole.hole_depth_mm(self.deep), self.deep * 1.5)
        self.up = max(0.0, self.deep - self.hole) if m.proud_mm is None else min(m.proud_mm, self.deep)
        self.wide = max(hole.width_mm(m) or self.ball * hole.WIDE_HOLE, self.ball)
        self.trunk = min(m.calliper_mm or self.ball * USUAL_TRUNK, self.ball * 0.5)
        self.half = self.wide / 2 * 1.08
        self.floor = -self.hole - self.deep * 0.46
        self.tall = max(self.deep * 0.9, self.ball * 0.5)


def section(m: PlantingMeasures) -> Drawing:
    """Return the hole cut open: saucer, ball, topmost root, mulch ring and trunk flare."""
    sizes = _HoleSizes(m)
    half, foot = sizes.wide / 2, sizes.ball / 2
    brim = ((-sizes.half, 0.0), (-half, 0.0), (-foot, -sizes.hole), (foot, -sizes.hole), (half, 0.0), (sizes.half, 0.0))
    shapes: list[Shape] = [
        Polygon((*brim, (sizes.half, sizes.floor), (-sizes.half, sizes.floor)), Role.SOIL),
        Line(brim, Role.GROUND),
        Line(((-half, 0), (half, 0)), Role.LAST),
        Polygon(_ball(sizes), Role.KEEP),
        *_roots(sizes),
        *_posts(m, sizes),
        *_mulch(m, sizes),
        Polygon(_trunk(sizes), Role.WOOD),
        Line(((0, sizes.floor), (0, sizes.tall * 1.05)), Role.CENTRE),
        *_words(m, sizes),
    ]
    kind = Word("a ball" if m.has_ball else "roots")
    above = f" Its topmost root stands {mm(sizes.up)} above the ground." if sizes.up else ""
    return Drawing(
        shapes=tuple(shapes),
        caption=f"The hole: {mm(sizes.wide)} wide, {mm(sizes.hole)} deep",
        alt=f"A planting hole cut open: a saucer {mm(sizes.wide)} wide at the top and "
        f"{mm(sizes.hole)} deep, with {kind} {mm(sizes.ball)} wide on undug soil."
        f"{above} Mulch stops {mm(hole.clear_mm(m))} short of the trunk.",
    )


def _ball(sizes: _HoleSizes) -> tuple[Point, ...]:
    """Return the ball from its foot to the topmost root, its corners rounded."""
    base, top, half = sizes.up - sizes.deep, sizes.up, sizes.ball / 2
    cut = min(half, sizes.deep) * 0.18
    left = ((-half + cut, base), (-half, base + cut), (-half, top - cut * 0.5), (-half + cut * 0.6, top))
    return (*left, *((-x, y) for x, y in reversed(left)))


def _roots(sizes: _HoleSizes) -> list[Shape]:
    """Return roots that run out from the flare inside the ball."""
    base, half = sizes.up - sizes.deep * 0.9, sizes.ball / 2 * 0.9
    found: list[Shape] = []
    for at, (far, deep) in enumerate(((1.0, 0.12), (0.92, 0.4), (0.7, 0.72), (0.36, 1.0))):
        for side in (-1, 1):
            points = tuple(
                (
                    side * half * far * (part / 6) ** 0.75,
                    sizes.up + (base - sizes.up) * deep * part / 6 + sizes.deep * 0.012 * sin(part * 2.1 + at),
                )
                for part in range(7)
            )
            found.append(Line(points, Role.WOOD))
    return found


def _trunk(sizes: _HoleSizes) -> tuple[Point, ...]:
    """Return the trunk with its flare at the topmost root."""
    half = sizes.trunk / 2
    right = (
        (half * 2.1, sizes.up - sizes.deep * 0.03),
        (half * 1.35, sizes.up + sizes.deep * 0.05),
        (half * 1.05, sizes.up + sizes.deep * 0.16),
        (half, sizes.up + sizes.deep * 0.3),
        (half * 0.92, sizes.tall),
    )
    return (*((-x, y) for x, y in right), *reversed(right))


def _posts(m: PlantingMeasures, sizes: _HoleSizes) -> list[Shape]:
    """Return the feet of the stakes outside the ball, driven past the foot of the hole."""
    if m.work != "tree" or not m.stakes or m.stands_alone:
        return []
    thick = max(sizes.ball * 0.06, 20.0)
    x = sizes.ball / 2 + thick * 1.6
    foot = sizes.floor + sizes.deep * 0.05
    return [
        Polygon(
            ((side * x, foot), (side * x + thick / 2, foot + thick * 1.5), (side * x + thick / 2, sizes.tall * 0.9),
             (side * x - thick / 2, sizes.tall * 0.9), (side * x - thick / 2, foot + thick * 1.5)),
            Role.WOOD,
        )
        for side in ((-1,) if m.stakes == 1 else (-1, 1))
    ]  # fmt: skip


def _mulch(m: PlantingMeasures, sizes: _HoleSizes) -> list[Shape]:
    """Return the mulch on both sides, from the bare ring out to its edge."""
    deep = m.mulch_depth_mm or hole.MULCH_MM
    inner = sizes.trunk / 2 + hole.clear_mm(m)
    outer = min((m.mulch_width_mm or hole.RING_MM) / 2, sizes.half)
    if outer <= inner + deep:
        return []
    ball = sizes.ball / 2
    found: list[Shape] = []
    for side in (-1, 1):
        inside = [(inner, sizes.up), (ball, sizes.up)] if inner < ball else [(inner, 0.0)]
        under = [*inside, (max(ball, inner), 0.0), (outer, 0.0)] if inner < ball else [*inside, (outer, 0.0)]
        thin = min(deep, 25.0)  # little or none over a new ball
        over = [(outer, 0.0), (outer - deep * 0.5, deep), (max(ball * 1.12, inner + deep * 0.5), deep)]
        if inner < ball:
            over += [(ball * 0.96, sizes.up + thin), (inner + thin * 0.6, sizes.up + thin)]
        points = tuple((side * x, y) for x, y in (*under, *over[1:]))
        found += [Polygon(points, Role.MULCH), Line(points, Role.WIRE, closed=True)]
    return found


def _words(m: PlantingMeasures, sizes: _HoleSizes) -> list[Shape]:
    """Return dimensions, levels and labels of the section."""
    half, foot, clear = sizes.wide / 2, sizes.ball / 2, hole.clear_mm(m)
    found: list[Shape] = [
        DimensionLine((-half, 0), (half, 0), f"{mm(sizes.wide)}", offset=sizes.floor - sizes.deep * 0.16),
        DimensionLine((-foot, -sizes.hole), (foot, -sizes.hole), f"{mm(sizes.ball)}", offset=-sizes.deep * 0.18),
        DimensionLine((-half, -sizes.hole), (-half, 0), f"{mm(sizes.hole)}", offset=sizes.half - half * 0.8),
        Label(((half + foot) / 2, -sizes.hole * 0.4), "same soil back"),
        Label((foot * 0.6, sizes.floor + sizes.deep * 0.1), "not dug"),
        Label((sizes.trunk * 0.62, sizes.up + sizes.deep * 0.1), "flare in the air"),
    ]
    if sizes.up >= 1:
        found += [
            Line(((-foot * 1.05, sizes.up), (foot * 1.05, sizes.up)), Role.ACCENT),
            Level((sizes.half, sizes.up), f"root {mm(sizes.up)} up"),
        ]
    found.append(Level((sizes.half, 0), "ground"))
    if clear > 0:
        start = sizes.trunk / 2
        found.append(
            DimensionLine((start, sizes.up), (start + clear, sizes.up), f"{mm(clear)}", offset=sizes.deep * 0.5)
        )
    return found


def staked(m: PlantingMeasures, height: float) -> Drawing:
    """Return the tree from the side with its stakes, the tie and how far up it stands."""
    tie = min(m.tie_height_mm or height * hole.LOW_TIE, height)
    count = m.stakes or 2
    thick, post = height * 0.012, height * 0.016
    apart = max(height * 0.11, (hole.ball_mm(m) or 0.0) / 2 + post * 2)
    sides = (-1,) if count == 1 else (-1, 1)
    ground = height * 0.17
    shapes: list[Shape] = [
        Polygon(rectangle(-height * 0.42, -ground, height * 0.42, 0), Role.SOIL),
        Polygon(leafy(ellipse((0, height * 0.72), height * 0.2, height * 0.28)[:-1], height * 0.014, 30), Role.KEEP),
        Polygon(
            ((-thick * 1.5, 0), (-thick, height * 0.06), (-thick * 0.7, height * 0.6), (thick * 0.7, height * 0.6),
             (thick, height * 0.06), (thick * 1.5, 0)),
            Role.WOOD,
        ),
        *(Polygon(rectangle(side * apart - post, -ground * 0.8, side * apart + post, tie * 1.06), Role.WOOD)
          for side in sides),
        *(_tie(side, apart - post, tie, thick) for side in sides),
        Line(((-height * 0.42, 0), (height * 0.42, 0)), Role.GROUND),
        Line(((0, -ground * 0.5), (0, height * 1.04)), Role.CENTRE),
        Line(ellipse((0, height * 0.33), height * 0.71, height * 0.71, 78, 102, 16), Role.GUIDE),  # the head may move
        DimensionLine((-apart - post, 0), (-apart - post, tie), f"{mm(tie)}", offset=height * 0.12),
        DimensionLine((-height * 0.2, 0), (-height * 0.2, height), f"{mm(height)}", offset=height * 0.2),
        Label((thick, tie), "tie, loose and wide"),
        Label((height * 0.17, height * 0.9), "the head moves"),
        Label((apart, -ground * 0.45), "stake in undug soil"),
    ]  # fmt: skip
    return Drawing(
        shapes=tuple(shapes),
        caption=f"Tied {mm(tie)} up, for one growing season",
        alt=f"A young tree {mm(height)} tall from the side, with {Count(count, 'stake', 'stakes')} outside its ball. "
        f"A loose tie holds it {mm(tie)} up, {percent(round(100 * tie / height))} of its height, so that the head "
        "moves.",
    )


def _tie(side: int, stake: float, up: float, thick: float) -> Shape:
    """Return a tie from a stake to the trunk, sagging a little."""
    start, end = side * stake, side * thick * 0.8
    return Line(((start, up), ((start + end) / 2, up - stake * 0.08), (end, up)), Role.WIRE)
