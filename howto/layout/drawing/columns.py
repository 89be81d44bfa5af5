"""Places labels and levels in columns left and right of a subject, so that no leader crosses another.

Labels are dealt to the two sides by an upright cut through their points, which keeps the leaders of one side
clear of the other's; down a column they stand as near to their points as their neighbours let them.
"""

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from functools import cached_property
from itertools import combinations, pairwise, permutations, product
from math import dist, inf

from howto.layout.drawing.callouts import RUN, Callout, PlacedCallout
from howto.layout.drawing.hatch import inside
from howto.layout.drawing.plane import (
    Box,
    Outline,
    Profile,
    Reach,
    Segment,
    around,
    boxes_meet,
    cross,
    enters,
    nearer,
    span,
)

BREATH = 0.55  # air between two labels, in sizes
LEVEL_BREATH = 0.15  # and between two levels
SURELY = 0.08  # how much wider than its box a guess must be not to be tried, in widths of the box


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


@dataclass(frozen=True)
class Ground:
    """What the callouts are placed round, and what their words and leaders keep clear of."""

    reach: Profile | Reach  # how far out the drawing reaches, height by height
    limits: tuple[tuple[float, float], ...]  # the heights a column may fill, best first
    across: tuple[float, float]  # where the drawing ends on the left and right
    width: float  # of the whole box
    blocks: tuple[Outline, ...]  # words of dimensions, discs
    lines: tuple[Segment, ...]  # leaders of discs: not to be crossed
    rules: tuple[Segment, ...]  # dimension lines: better not crossed

    @cached_property
    def boxed_blocks(self) -> list[tuple[Box, Outline]]:
        """The blocks, each with the box round it."""
        return [(around(block), block) for block in self.blocks]

    @cached_property
    def boxed_rules(self) -> list[tuple[Box, Segment]]:
        """The rules, each with the box round it."""
        return [(around(rule), rule) for rule in self.rules]


@dataclass(frozen=True, slots=True)
class Column:
    """Callouts down one side, the limits they were set between, and what their leaders cost."""

    placed: tuple[PlacedCallout, ...] = ()
    limits: tuple[float, float] = (0.0, 0.0)
    cost: float = 0.0


@dataclass(frozen=True, slots=True)
class Deal:
    """Callouts dealt to two columns, and what their leaders cost."""

    placed: tuple[PlacedCallout, ...]
    cost: float


def deal(callouts: Sequence[Callout], ground: Ground, most: float = inf) -> Deal | float:
    """Return the cheapest way to deal callouts, from left to right, to two columns, if it costs less than `most`.

    Cuts are tried from the cheapest guess up. Where none holds, return by how much the narrowest was too wide for the
    box: infinity where none was low enough, 0 where width was not to blame.
    """
    best: Deal | None = None
    narrowest = inf
    for least, guess, cut in sorted(_guesses(callouts, ground)):
        if least >= most or guess > ground.width * SURELY:
            narrowest = min(narrowest, guess)
            continue
        sides = (_choices(callouts[:cut], ground, is_right=False), _choices(callouts[cut:], ground, is_right=True))
        for west, east in sorted(product(*sides), key=lambda pair: pair[0].cost + pair[1].cost):
            over = _wide((*west.placed, *east.placed), ground) - ground.width
            narrowest = min(narrowest, over)
            placed = _both(west, east, ground) if over <= 0 and west.cost + east.cost < most else None
            if placed is not None:
                price = cost(placed, ground)
                best, most = (Deal(placed, price), price) if price < most else (best, most)
                break
    return best or max(narrowest, 0.0)


def _guesses(callouts: Sequence[Callout], ground: Ground) -> Iterator[tuple[float, float, int]]:
    """Yield for every cut what it would cost and by how much it would be too wide, were each level with its point."""
    ends: list[tuple[float, float]] = []
    for each in callouts:
        top, bottom, run = each.at[1] - each.above, each.at[1] + each.below, each.size * column_run([each])
        west, east = ground.reach.left(top, bottom), ground.reach.right(top, bottom)
        ends.append((min(west, each.at[0]) - run, max(east, each.at[0]) + run))
    words = sum(each.size * (len(each.lines) - 0.3) for each in callouts)
    pairs = list(zip(callouts, ends, strict=True))
    for cut in range(len(callouts) + 1):
        left, right = pairs[:cut], pairs[cut:]
        if left and right and left[-1][0].level and right[0][0].level and left[-1][0].at[0] == right[0][0].at[0]:
            continue  # levels over one another stay on one side
        price = sum(each.at[0] - west for each, (west, _) in left) + sum(east - each.at[0] for each, (_, east) in right)
        low = min((west for _, (west, _) in left), default=inf) - max((each.wide for each, _ in left), default=0.0)
        high = max((east for _, (_, east) in right), default=-inf) + max((each.wide for each, _ in right), default=0.0)
        yield price + words, max(high, ground.across[1]) - min(low, ground.across[0]) - ground.width, cut


def _choices(column: Sequence[Callout], ground: Ground, *, is_right: bool) -> list[Column]:
    """Return one column, from the top down, within each of the limits that hold it."""
    if not column:
        return [Column()]
    room = column_room(column)
    order = sorted(column, key=lambda each: (each.at[1], each.at[0], each.lines))
    holding = [limits for limits in ground.limits if room <= limits[1] - limits[0]]
    placed = [_column(order, ground, limits, is_right=is_right) for limits in holding]
    return [Column(each, limits, cost(each, ground)) for each, limits in zip(placed, holding, strict=True)]


def _untangled(column: Column, ground: Ground) -> tuple[PlacedCallout, ...]:
    """Return a column in an order in which no leaders meet, if there is one: those that do change places."""
    placed = column.placed
    tried: set[tuple[int, ...]] = set()
    turns = list(range(len(placed)))
    while tuple(turns) not in tried:
        tried.add(tuple(turns))
        pairs = combinations(range(len(placed)), 2)
        crossing = next(((i, j) for i, j in pairs if _meet(placed[i], placed[j])), None)
        if crossing is None:
            break
        i, j = crossing
        turns[i], turns[j] = turns[j], turns[i]
        order = [column.placed[turn].callout for turn in turns]
        placed = _column(order, ground, column.limits, is_right=placed[0].right)
    return placed


def _both(west: Column, east: Column, ground: Ground) -> tuple[PlacedCallout, ...] | None:
    """Return both columns, or None where something meets or they are too wide once nothing does."""
    left = _held(west, ground)
    right = _held(east, ground) if left is not None else None
    if left is None or right is None or any(_meet(one, other) for one, other in product(left, right)):
        return None
    return (*left, *right) if _wide((*left, *right), ground) <= ground.width else None


def _held(column: Column, ground: Ground) -> tuple[PlacedCallout, ...] | None:
    """Return a column in which nothing meets, two neighbours changed about if need be; None where there is none."""
    placed = _untangled(column, ground)
    if not _clash(placed, ground):
        return placed
    order = [each.callout for each in placed]
    for at in range(len(order) - 1):
        swapped = [*order[:at], order[at + 1], order[at], *order[at + 2 :]]
        trial = _column(swapped, ground, column.limits, is_right=placed[0].right)
        if not _clash(trial, ground):
            return trial
    return None


def _wide(placed: Sequence[PlacedCallout], ground: Ground) -> float:
    """Return how wide columns are with the drawing between them."""
    low, high = ground.across
    return max(high, *(each.box[2] for each in placed), high) - min(low, *(each.box[0] for each in placed), low)


def _column(
    order: Sequence[Callout], ground: Ground, limits: tuple[float, float], *, is_right: bool
) -> tuple[PlacedCallout, ...]:
    """Return a column in the order given, as near to the subject as what stands beside each label lets it."""
    heights = stacked(order, *limits)
    size, run = order[0].size, order[0].size * column_run(order)
    reaches: list[float] = []
    for each, y in zip(order, heights, strict=True):
        top, bottom = y - each.above - size * 0.4, y + each.below + size * 0.4
        if each.level:
            top, bottom = min(top, each.at[1] - size * 0.7), max(bottom, each.at[1] + size * 0.7)
        reach = ground.reach.right(top, bottom) if is_right else -ground.reach.left(top, bottom)
        reaches.append(max(reach, each.at[0] if is_right else -each.at[0]))
    inner = (max(reaches) + run) * (1 if is_right else -1)
    return tuple(
        PlacedCallout(each, is_right, inner, y, each.level and _is_close_below(each, order))
        for each, y in zip(order, heights, strict=True)
    )


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
        or any(_struck(one, other.box, other.outline) for one, other in permutations(placed, 2))
        or any(_struck(each, box, block) for each in placed for box, block in ground.boxed_blocks)
        or any(_near(each, line) for each in placed for line in ground.lines)
    )


def _meet(one: PlacedCallout, other: PlacedCallout) -> bool:
    """Tell whether two leaders cross or touch, but for a point they share."""
    clear = one.callout.size * 0.12
    if not boxes_meet(one.reach, other.reach, clear):
        return False
    if dist(one.callout.at, other.callout.at) < clear:
        return any(nearer(a, b, clear) for a in one.leader[1:] for b in other.leader[1:])
    return any(nearer(a, b, clear) for a in one.leader for b in other.leader)


def _near(each: PlacedCallout, line: Segment) -> bool:
    clear = each.callout.size * 0.1
    return any(nearer(piece, line, clear) for piece in each.leader)


def _struck(each: PlacedCallout, box: Box, block: Outline) -> bool:
    """Tell whether a leader runs into a block, but for a disc that stands on its own point."""
    if not boxes_meet(each.reach, box) or inside(each.callout.at, block):
        return False
    return any(enters(piece, block) for piece in each.leader)


def cost(placed: Iterable[PlacedCallout], ground: Ground) -> float:
    """Return how long the leaders are, with a charge for lines crossed and words broken."""
    total = 0.0
    for each in placed:
        size = each.callout.size
        total += sum(span(piece) for piece in each.leader)
        met = [rule for box, rule in ground.boxed_rules if boxes_meet(each.reach, box)]
        total += sum(size * 4 for piece in each.leader for rule in met if cross(piece, rule))
        if each.callout.level:
            total += abs(each.y - each.callout.at[1]) * 6
        total += size * len(each.callout.lines)
    return total


def least_cost(callouts: Iterable[Callout]) -> float:
    """Return what callouts cost at least, wherever they stand: each leader runs level past the drawing to its words."""
    return sum(each.size * (column_run([each]) - 0.3 + 1) for each in callouts)
