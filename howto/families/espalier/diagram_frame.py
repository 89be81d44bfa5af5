"""The frame from the front: wires, eyes, tiers, the arms that stay and the shoots that come off."""

from collections.abc import Iterator
from dataclasses import dataclass
from math import ceil, cos, radians, sin

from howto.families.espalier import formulae, frame
from howto.families.espalier.frame import T
from howto.families.espalier.parts import tiers, wires
from howto.quantities.amounts import Count, Words, bare, mm, qty
from howto.shapes import DimensionLine, Drawing, Label, Level, Line, Point, Polygon, Role, Shape, arc, leafy, rectangle

MOST_TREES = 2  # drawn; the rest stand as these do
MOST_EYES = 24  # drawn on a wire: closer ones would run together
MOST_HEIGHTS = 6  # told
MOST_CLUSTERS = 40  # of leaf along an arm: more are too fine to be seen at the scale of a long wall
LEAF_MM = 28.0  # how far a leaf cluster stands proud of its outline
BRICK_MM = (230.0, 75.0)


@dataclass(frozen=True)
class FrontDrawing:
    """Where everything stands: stems, wires, arms, and how much of the wall is drawn, all in mm from its left end."""

    heights: tuple[float, ...]
    gap: float  # from wire to wire, or the first wire's height where there is one alone
    span: float
    eyes: tuple[float, ...]
    stems: tuple[float, ...]
    arm: float
    wide: float
    made: int  # tiers laid level; those above are still to come
    whole: bool  # all of the wall is drawn
    bare: bool  # wires alone: the tree is still to be planted

    @property
    def top(self) -> float:
        """The height of the top wire."""
        return self.heights[-1]


def frame_of(work: T) -> FrontDrawing | None:
    """Return where everything stands, or None where the measures do not say."""
    m = work.measures
    heights, bay, arm = frame.heights_mm(m), frame.bay_mm(m), frame.arm_mm(m)
    if not heights or bay is None or arm is None:
        return None
    drawn = min(m.trees, MOST_TREES)
    wall = bay * m.trees if m.wall_length_m is None else m.wall_length_m * 1000
    whole = drawn == m.trees
    wide = wall if whole else min(wall, bay * drawn)
    span = frame.span_mm(m) or wide
    count = int(wide / span + 1e-6)
    eyes = tuple(span * at for at in range(0, count + 1, max(1, ceil(count / MOST_EYES))))
    middle = wide / 2
    stems = tuple(middle + (at - (drawn - 1) / 2) * bay for at in range(drawn))
    wired = m.job == "wiring"
    later = m.tiers_made > 0 or m.job == "planting"
    made = 0 if wired else min(m.tiers_made, m.tiers) if later else m.tiers
    gap = heights[0] if m.tiers == 1 else m.tier_spacing_mm or heights[0]
    return FrontDrawing(heights, gap, span, eyes, stems, arm, wide, made, whole, wired)


def elevation(work: T) -> Drawing | None:
    """Return the frame from the front, or None where heights or lengths are missing."""
    found = frame_of(work)
    if found is None:
        return None
    m = work.measures
    part = "" if found.whole else f", the first {bare(len(found.stems))} of {Count(m.trees, 'tree', 'trees')}"
    heights = ", ".join(f"{mm(height)}" for height in found.heights[:MOST_HEIGHTS])
    draw = _wires if found.bare else _trees
    return draw(work, found, part, heights)


def _trees(work: T, found: FrontDrawing, part: Words, heights: Words) -> Drawing:
    """Return the frame with its trees: what stays, what comes off, and the tiers to come."""
    m = work.measures
    shapes: list[Shape] = [*_ground(found), *_bricks(found)]
    for at, _ in enumerate(found.stems):
        shapes += _leaves(found, at)
    shapes += [Line(((0.0, height), (found.wide, height)), Role.WIRE) for height in found.heights]
    for stem in found.stems:
        shapes += [*_wood(found, stem), *_next_tier(found, stem, m.arm_angle_deg)]
    stem, top, last = found.stems[0], found.top, found.stems[-1]
    shapes += [*_fixings(found), *_levels(found)]
    shapes.append(Line(((stem, -top * 0.05), (stem, top + found.gap * 0.5)), Role.CENTRE))
    arm = f"arm {mm(found.arm)}"
    shapes.append(DimensionLine((stem - found.arm, top), (stem, top), arm, offset=found.gap + top * 0.2))
    shapes += _labels(found, last, m.arm_angle_deg)
    new = made = ""
    if found.made < m.tiers:
        made = f" {bare(found.made)} of {tiers(m.tiers)} are made."
        new = "" if m.arm_angle_deg is None else f"; new ones at {qty(m.arm_angle_deg, '°', 3)}, then level"
    arms = formulae.laterals(m.tiers, m.trees)
    return Drawing(
        shapes=tuple(shapes),
        caption=f"From the front: {wires(m.tiers)}, {Count(arms, 'arm', 'arms')}{part}{new}",
        alt=f"Front view{part}: {wires(m.tiers)} at {heights} above the ground, an eye each {mm(found.span)}. "
        f"One arm each side of the stem on each wire stays; hatched shoots come off.{made}",
    )


def _wires(work: T, found: FrontDrawing, part: Words, heights: Words) -> Drawing:
    """Return the wires alone, the tree to come dashed."""
    m = work.measures
    shapes: list[Shape] = [*_ground(found), *_bricks(found)]
    shapes += [Line(((stem, 0.0), (stem, found.top + found.gap * 0.3)), Role.LAST) for stem in found.stems]
    shapes += [Line(((0.0, height), (found.wide, height)), Role.ACCENT) for height in found.heights]
    shapes += [*_fixings(found), *_levels(found)]
    if len(found.eyes) > 1:
        shapes.append(Label((found.eyes[-1], found.heights[0]), "eye"))
    if found.whole:
        shapes.append(Label((found.wide - _eye(found) * 7, found.top), "tensioner"))
    spans = frame.spans(m)
    eyes = "" if spans is None else f", {Count(m.tiers * (spans + 1), 'eye', 'eyes')}"
    return Drawing(
        shapes=tuple(shapes),
        caption=f"From the front: {wires(m.tiers)}{eyes}{part}",
        alt=f"Front view{part}: level lines of wire at {heights} above the ground, an eye at each end and each "
        f"{mm(found.span)} between, a tensioner at the right end. The stem to come is dashed.",
    )


def _ground(found: FrontDrawing) -> Iterator[Shape]:
    out, deep = found.wide * 0.03, found.top * 0.13
    yield Polygon(rectangle(-out, -deep, found.wide + out, 0), Role.SOIL)
    yield Line(((-out, 0), (found.wide + out, 0)), Role.GROUND)


def _bricks(found: FrontDrawing) -> Iterator[Shape]:
    """Yield patches of brickwork, as a plan shows a wall without hatching all of it."""
    long, high = BRICK_MM
    clear = found.heights[0] - (LEAF_MM if found.bare else _deep(found) + LEAF_MM)
    for x in (found.wide * 0.06, found.wide * 0.94 - 3 * long):
        yield from _patch(x, high * 0.6, min(3, int(clear / high - 0.6)))
    if not found.bare:
        return
    courses = min(3, int(found.gap / high - 1.5))
    for at, height in enumerate(found.heights[:-1]):
        x = found.wide * (0.30, 0.12, 0.66)[at % 3]
        yield from _patch(x, height + (found.gap - courses * high) / 2, courses)


def _patch(x: float, low: float, courses: int) -> Iterator[Shape]:
    """Yield a few courses of bricks in stretcher bond."""
    long, high = BRICK_MM
    for course in range(courses):
        left, foot = x + (course % 2) * long / 2, low + course * high
        count = 3 - course % 2
        yield Line(((left, foot), (left + count * long, foot)), Role.WIRE)
        yield Line(((left, foot + high), (left + count * long, foot + high)), Role.WIRE)
        for brick in range(count + 1):
            yield Line(((left + brick * long, foot), (left + brick * long, foot + high)), Role.WIRE)


def _deep(found: FrontDrawing) -> float:
    """Return how far the leaf of an arm reaches above and below its wire."""
    return min(found.gap * 0.22, 95.0)


def _leaves(found: FrontDrawing, at: int) -> Iterator[Shape]:
    """Yield the leaf along each arm of one tree, and the shoots that come off it."""
    stem, deep = found.stems[at], _deep(found)
    for tier, height in enumerate(found.heights[: found.made]):
        for side in (-1, 1):
            near, far = stem + side * found.arm * 0.1, stem + side * found.arm * 0.96
            for share in _shoot_shares(tier):
                x = near + (far - near) * share
                yield Polygon(sprig(x, height, found.gap * 0.82, found.gap * 0.45), Role.REMOVE)
            left, right = min(near, far), max(near, far)
            strip = rectangle(left, height - deep, right, height + deep)
            yield Polygon(leafy(strip, LEAF_MM, max(6, min(MOST_CLUSTERS, round((right - left) / 140)))), Role.KEEP)


def _shoot_shares(tier: int) -> tuple[float, float]:
    """Return where along an arm its two upright shoots stand, so that no two tiers are alike."""
    return ((0.30, 0.74), (0.44, 0.86))[tier % 2]


def sprig(x: float, low: float, tall: float, wide: float) -> tuple[Point, ...]:
    """Return an upright shoot with its leaves as an outline, anticlockwise from its foot."""
    right = ((0.15, 0.0), (0.32, 0.3), (0.5, 0.52), (0.42, 0.74), (0.0, 1.0))
    left = tuple((-dx, up) for dx, up in reversed(right[:-1]))
    return tuple((x + dx * wide, low + up * tall) for dx, up in (*right, *left))


def _wood(found: FrontDrawing, stem: float) -> Iterator[Shape]:
    """Yield one tree's stem and arms, thinner outwards, each arm starting a little below its wire."""
    made = found.heights[: found.made]
    tip = made[-1] if made else found.heights[0]
    thick = min(found.top * 0.035, 60.0)
    stem_top = tip + (found.gap * 0.12 if found.made < len(found.heights) else 0.0)
    yield Polygon(
        (
            (stem - thick / 2, 0.0),
            (stem + thick / 2, 0.0),
            (stem + thick * 0.28, stem_top),
            (stem - thick * 0.28, stem_top),
        ),
        Role.WOOD,
    )
    for height in made:
        for side in (-1, 1):
            yield Polygon(_arm(stem, side, height, found, thick), Role.WOOD)


def _arm(stem: float, side: int, height: float, found: FrontDrawing, thick: float) -> tuple[Point, ...]:
    """Return an arm as an outline: up out of the stem, over on to the wire, and along it."""
    bend = min(found.gap * 0.16, 70.0)
    low = ((0.0, -bend), (bend * 0.8, -bend * 0.45), (bend * 2.0, -thick * 0.18), (found.arm * 0.97, -thick * 0.08))
    high = ((0.0, -bend * 0.35), (bend * 0.7, bend * 0.02), (bend * 2.0, thick * 0.2), (found.arm * 0.97, thick * 0.1))
    return tuple((stem + side * out, height + up) for out, up in (*low, *reversed(high)))


def _next_tier(found: FrontDrawing, stem: float, angle_deg: float | None) -> Iterator[Shape]:
    """Yield what is still to come: the next tier's arms as they are tied in summer, and the tiers above dashed."""
    coming = found.heights[found.made :]
    if not coming:
        return
    for height in coming:
        yield Line(((stem - found.arm * 0.97, height), (stem + found.arm * 0.97, height)), Role.LAST)
    made = found.heights[found.made - 1] if found.made else 0.0
    yield Line(((stem, max(made, coming[0] - found.gap * 0.3)), (stem, found.top)), Role.LAST)
    if angle_deg is not None:
        foot = (stem, coming[0] - found.gap * 0.12)
        for side in (-1, 1):
            yield Line((foot, _along(found, stem, side * 1.3, angle_deg)), Role.ACCENT)


def _along(found: FrontDrawing, stem: float, gaps: float, angle_deg: float) -> Point:
    """Return the point so many gaps along the next tier's arm, to the left where they are below nought."""
    reach, angle = found.gap * gaps, radians(angle_deg)
    return stem + reach * cos(angle), found.heights[found.made] - found.gap * 0.12 + abs(reach) * sin(angle)


def _eye(found: FrontDrawing) -> float:
    """Return the radius of an eye as drawn: larger than it is, so that it shows."""
    return min(found.gap * 0.05, 20.0)


def _fixings(found: FrontDrawing) -> Iterator[Shape]:
    """Yield an eye on each wire at each span, and a tensioner at the right end."""
    radius = _eye(found)
    for height in found.heights:
        for eye in found.eyes:
            yield Polygon(arc((eye, height), radius, steps=16)[:-1], Role.WOOD)
        if found.whole:
            left, right = found.wide - radius * 12, found.wide - radius * 3
            yield Polygon(rectangle(left, height - radius, right, height + radius), Role.WOOD)


def _levels(found: FrontDrawing) -> Iterator[Shape]:
    """Yield the height of each wire, a span and the whole length."""
    for height in found.heights:
        yield Level((found.wide, height), f"{mm(height)}")
    if len(found.eyes) > 1:
        yield DimensionLine((0, 0), (found.span, 0), f"{mm(found.span)}", offset=-found.top * 0.2)
    yield DimensionLine((0, 0), (found.wide, 0), f"{mm(found.wide)}", offset=-found.top * 0.32)


def _labels(found: FrontDrawing, stem: float, angle_deg: float | None) -> Iterator[Shape]:
    """Yield what stays, what comes off, and what is still to come, said of the last tree drawn."""
    if found.made:
        tier = found.made - 1
        near, far = stem + found.arm * 0.1, stem + found.arm * 0.96
        share = _shoot_shares(tier)[1]
        yield Label((near + (far - near) * share, found.heights[tier] + found.gap * 0.5), "off")
        yield Label((near + (far - near) * 0.96, found.heights[0] - _deep(found) * 0.4), "stays")
    if found.made < len(found.heights) and angle_deg is not None:
        yield Label(_along(found, stem, 1.1, angle_deg), f"{qty(angle_deg, '°', 3)}")
