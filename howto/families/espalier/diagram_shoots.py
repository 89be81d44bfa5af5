"""How a summer shoot is cut: what stays of one from the arm, one from a spur, and one too short to cut."""

from collections.abc import Iterator
from math import cos, radians, sin

from howto.families.espalier import frame, pruning
from howto.families.espalier.frame import T
from howto.families.espalier.parts import leaves
from howto.quantities.amounts import bare, mm
from howto.shapes import DimensionLine, Drawing, Label, Line, Point, Polygon, Role, Shape, arc

TALLEST_MM = 300.0  # how tall a shoot is drawn: the tip tells nothing
SHORT_AT_MM = 140.0
SPUR_AT_MM = 345.0
ARM_MM = 24.0
LEAF_MM = 50.0
NODE_MM = 25.0  # from leaf to leaf: three leaves in 75 mm, one in 25 mm, as the sources count them
SPUR_MM = 22.0


def shoots(work: T) -> Drawing:
    """Return three shoots on an arm, where each is cut, and what comes off it."""
    m, stubs = work.measures, pruning.stubs_of(frame.fruit_of(work))
    shortest, main, spur = pruning.cuts_mm(m, stubs)
    tall = max(min(m.shoot_length_mm or TALLEST_MM, TALLEST_MM), shortest * 1.15, main * 2, spur * 2)
    last = SPUR_AT_MM
    shapes: list[Shape] = [Polygon(_arm(last), Role.WOOD)]
    shapes += _shoot(0.0, 0.0, tall, main)
    shapes += _shoot(SHORT_AT_MM, 0.0, shortest * 0.7, None)
    shapes += _spur(last)
    shapes += _shoot(last, SPUR_MM, tall * 0.86, spur)
    first, spurs, beside, said = "a stub", "a shorter one", ("", ""), f"{mm(main)} of it"
    if stubs.counts_leaves:
        kept, of_spur = pruning.leaves_of(m)
        first, spurs, said = f"{leaves(kept)}", f"{bare(of_spur)}", f"{leaves(kept)} of it, {mm(main)},"
        beside = f", {leaves(kept)}", f", {leaves(of_spur)}"
    shapes += [
        DimensionLine((0, 0), (0, main), f"{mm(main)}{beside[0]}", offset=110),
        DimensionLine((SHORT_AT_MM, 0), (SHORT_AT_MM, shortest), f"{mm(shortest)}", offset=-LEAF_MM * 1.25),
        DimensionLine((last, SPUR_MM), (last, SPUR_MM + spur), f"{mm(spur)}{beside[1]}", offset=-110),
        Label((0, main + (tall - main) * 0.6), "off"),
    ]
    return Drawing(
        shapes=tuple(shapes),
        caption=f"Cut to {first}, {spurs} from a spur; under {mm(shortest)} stays",
        alt=f"Three shoots on an arm. Of a long one from the arm {said} stay; the rest, hatched, comes off. One from a "
        f"spur is cut to {mm(spur)}. One under {mm(shortest)} is left whole.",
    )


def _arm(last: float) -> tuple[Point, ...]:
    return ((-90.0, -ARM_MM), (last + 80, -ARM_MM * 0.8), (last + 80, 0.0), (-90.0, 0.0))


def _shoot(x: float, low: float, tall: float, cut: float | None) -> Iterator[Shape]:
    """Yield a shoot with its ring of small leaves; above the cut, where there is one, all of it comes off."""
    top = low + tall
    line = top if cut is None else low + cut
    if cut is not None:
        yield Line(((x, line + 10), (x, top)), Role.REMOVE)
    for at in range(int(tall / NODE_MM)):
        y = low + NODE_MM * (at + 1)
        size = LEAF_MM * (1.0 if top - y > NODE_MM * 2.5 else 0.7)
        stays = y <= line + 1e-6
        yield Polygon(
            leaf((x, y - 6 if stays else y), 34 if at % 2 else 146, size), Role.KEEP if stays else Role.REMOVE
        )
    for angle in (14, 166):
        yield Polygon(leaf((x, low + 4), angle, LEAF_MM * 0.42), Role.KEEP)
    yield Polygon(_stem(x, low, line, 3.6), Role.WOOD)
    if cut is not None:
        yield Line(((x - 32, line + 2), (x + 32, line + 14)), Role.ACCENT)


def leaf(foot: Point, angle_deg: float, long: float) -> tuple[Point, ...]:
    """Return a pointed leaf on a short stalk, from its foot outwards at an angle."""
    half = ((0.0, 0.0), (0.16, 0.02), (0.34, 0.2), (0.58, 0.24), (0.82, 0.12))
    outline = (*half, (1.0, 0.0), *((along, -out) for along, out in reversed(half[1:])))
    turn = radians(angle_deg)
    return tuple(
        (foot[0] + long * (along * cos(turn) - out * sin(turn)), foot[1] + long * (along * sin(turn) + out * cos(turn)))
        for along, out in outline
    )


def _stem(x: float, low: float, high: float, half: float) -> tuple[Point, ...]:
    return ((x - half, low), (x + half, low), (x + half * 0.7, high), (x - half * 0.7, high))


def _spur(x: float) -> Iterator[Shape]:
    """Yield an old spur: knuckled wood with two fat buds."""
    yield Polygon(((x - 13, 0), (x + 15, 0), (x + 11, 14), (x + 6, 24), (x - 7, 23), (x - 11, 12)), Role.WOOD)
    for side in (-1, 1):
        yield Polygon(arc((x + side * 19, 11), 8, steps=12)[:-1], Role.KEEP)
