"""Places labels and levels in columns left and right of a subject, so that no leader crosses another.

Labels are dealt to the two sides by an upright cut through their points, which keeps the leaders of one side
clear of the other's; down a column they stand as near to their points as their neighbours let them.
"""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from itertools import combinations, pairwise, permutations, product
from math import dist

from howto.layout.drawing.callouts import RUN, Callout, PlacedCallout
from howto.layout.drawing.hatch import inside
from howto.layout.drawing.plane import Outline, Profile, Segment, apart, around, boxes_meet, enters, span

BREATH = 0.55  # air between two labels, in sizes
LEVEL_BREATH = 0.15  # and between two levels


# -- one column --


def column_room(column: Sequence[Callout]) -> float:
    """Return the least height a column of callouts takes."""
    gaps = sum(breath(one, other) for one, other in pairwise(column))
    return sum(each.above + each.below for each in column) + gaps


def breath(one: Callout, other: Callout) -> float:
    """Return the air between two callouts; levels stand closer, since a line parts them."""
    return one.size * (LEVEL_BREATH if one.level and other.level else BREATH)


def stacked(column: Sequence[Callout], top: float, bottom: float) -> list[float]:
    """Return the leader heights of a column, in its order, nearest to their points in least squares.

    Neighbours that would meet are pooled and share the mean of what they want; a level outweighs all
    labels, since its line should stay straight.
    """
    offsets = [0.0]
    for one, other in pairwise(column):
        offsets.append(offsets[-1] + one.below + breath(one, other) + other.above)
    pools: list[tuple[float, float, int]] = []  # mean wanted, weight, how many
    for each, offset in zip(column, offsets, strict=True):
        pool = (each.at[1] - offset, 1e4 if each.level else 1.0, 1)
        while pools and pools[-1][0] > pool[0]:
            mean, weight, count = pools.pop()
            total = weight + pool[1]
            pool = ((mean * weight + pool[0] * pool[1]) / total, total, count + pool[2])
        pools.append(pool)
    low, high = top + column[0].above, bottom - column[-1].below - offsets[-1]
    wanted = [min(max(mean, low), high) for mean, _, count in pools for _ in range(count)]
    return [want + offset for want, offset in zip(wanted, offsets, strict=True)]


# -- both columns --


@dataclass(frozen=True, slots=True)
class Ground:
    """What the callouts are placed round, and what their words and leaders keep clear of."""

    profile: Profile  # how far out the drawing reaches, height by height
    limits: tuple[tuple[float, float], ...]  # the heights a column may fill, best first
    across: tuple[float, float]  # where the drawing ends on the left and right
    width: float  # of the whole box
    blocks: tuple[Outline, ...]  # words of dimensions, discs
    lines: tuple[Segment, ...]  # leaders of discs: not to be crossed
    rules: tuple[Segment, ...]  # dimension lines: better not crossed


def place_columns(
    left: Sequence[Callout], right: Sequence[Callout], ground: Ground
) -> tuple[PlacedCallout, ...] | None:
    """Return both columns placed, or None where something would meet."""
    west = _settled(left, ground, is_right=False) if left else []
    east = _settled(right, ground, is_right=True) if west is not None and right else []
    if west is None or east is None or any(_meet(one, other) for one, other in product(west, east)):
        return None
    return (*west, *east)


def _settled(column: Sequence[Callout], ground: Ground, *, is_right: bool) -> list[PlacedCallout] | None:
    """Return one column at the heights that bring it nearest to the subject, or None where none holds."""
    found: list[list[PlacedCallout]] = []
    for limits in ground.limits:
        if column_room(column) <= limits[1] - limits[0]:
            placed = _untangled(column, ground, limits, is_right=is_right)
            if placed:
                found.append(placed)
    return min(found, key=lambda placed: abs(placed[0].inner) if is_right else -placed[0].inner, default=None)


def _untangled(
    column: Sequence[Callout], ground: Ground, limits: tuple[float, float], *, is_right: bool
) -> list[PlacedCallout] | None:
    """Return one column in an order in which nothing meets; neighbours change places until none does."""
    order = sorted(column, key=lambda each: (each.at[1], each.at[0], each.lines))
    placed = _column(order, ground, limits, is_right=is_right)
    tried: set[tuple[Callout, ...]] = set()
    while tuple(order) not in tried and not _too_wide(placed, ground):
        tried.add(tuple(order))
        pairs = combinations(range(len(placed)), 2)
        crossing = next(((i, j) for i, j in pairs if _meet(placed[i], placed[j])), None)
        if crossing is None:
            break
        i, j = crossing
        order[i], order[j] = order[j], order[i]
        placed = _column(order, ground, limits, is_right=is_right)
    if _too_wide(placed, ground):
        return None
    if not _clash(placed, ground):
        return placed
    trials = (
        _column([*order[:at], order[at + 1], order[at], *order[at + 2 :]], ground, limits, is_right=is_right)
        for at in range(len(order) - 1)
    )
    return next((trial for trial in trials if not _clash(trial, ground)), None)


def _too_wide(placed: Sequence[PlacedCallout], ground: Ground) -> bool:
    """Tell whether the column and the drawing are wider than the box, whatever stands on the other side."""
    low, high = ground.across
    edges = [edge for each in placed for edge in (each.box[0], each.box[2])]
    return max(high, *edges) - min(low, *edges) > ground.width


def _column(
    order: Sequence[Callout], ground: Ground, limits: tuple[float, float], *, is_right: bool
) -> list[PlacedCallout]:
    """Return a column in the order given, as near to the subject as what stands beside each label lets it."""
    heights = stacked(order, *limits)
    size, run = order[0].size, order[0].size * column_run(order)
    reaches: list[float] = []
    for each, y in zip(order, heights, strict=True):
        top, bottom = y - each.above - size * 0.4, y + each.below + size * 0.4
        if each.level:
            top, bottom = min(top, each.at[1] - size * 0.7), max(bottom, each.at[1] + size * 0.7)
        reach = ground.profile.right(top, bottom) if is_right else -ground.profile.left(top, bottom)
        reaches.append(max(reach, each.at[0] if is_right else -each.at[0]))
    inner = (max(reaches) + run) * (1 if is_right else -1)
    return [
        PlacedCallout(each, is_right, inner, y, each.level and _is_close_below(each, order))
        for each, y in zip(order, heights, strict=True)
    ]


def _is_close_below(each: Callout, column: Sequence[Callout]) -> bool:
    """Tell whether another level stands so close above that a triangle would not fit between."""
    return any(other.level and 0 < each.at[1] - other.at[1] < each.size * 0.7 for other in column)


def column_run(column: Sequence[Callout]) -> float:
    """Return the room for leaders between the subject and a column, in sizes."""
    return RUN + 1.2 if any(each.level for each in column) else RUN


def _clash(placed: Sequence[PlacedCallout], ground: Ground) -> bool:
    """Tell whether words or leaders meet each other, a disc, a dimension's words or a disc's leader."""
    return (
        any(_meet(one, other) or boxes_meet(one.box, other.box) for one, other in combinations(placed, 2))
        or any(_struck(one, other.outline) for one, other in permutations(placed, 2))
        or any(_struck(each, block) for each in placed for block in ground.blocks)
        or any(_near(each, line) for each in placed for line in ground.lines)
    )


def _meet(one: PlacedCallout, other: PlacedCallout) -> bool:
    """Tell whether two leaders cross or touch, but for a point they share."""
    clear = one.callout.size * 0.12
    if not boxes_meet(one.reach, other.reach, clear):
        return False
    if dist(one.callout.at, other.callout.at) < clear:
        return any(apart(a, b) < clear for a in one.leader[1:] for b in other.leader[1:])
    return any(apart(a, b) < clear for a in one.leader for b in other.leader)


def _near(each: PlacedCallout, line: Segment) -> bool:
    clear = each.callout.size * 0.1
    return boxes_meet(each.reach, around(line), clear) and any(apart(piece, line) < clear for piece in each.leader)


def _struck(each: PlacedCallout, block: Outline) -> bool:
    """Tell whether a leader runs into a block, but for a disc that stands on its own point."""
    if not boxes_meet(each.reach, around(block)) or inside(each.callout.at, block):
        return False
    return any(enters(piece, block) for piece in each.leader)


def cost(placed: Iterable[PlacedCallout], ground: Ground) -> float:
    """Return how long the leaders are, with a charge for lines crossed and words broken."""
    total = 0.0
    for each in placed:
        size = each.callout.size
        total += sum(span(piece) for piece in each.leader)
        total += sum(size * 4 for piece in each.leader for rule in ground.rules if apart(piece, rule) == 0.0)
        if each.callout.level:
            total += abs(each.y - each.callout.at[1]) * 6
        total += size * len(each.callout.lines)
    return total
