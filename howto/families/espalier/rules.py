"""The rules of an espalier's frame, in reading order; the wires, the trees and the words follow from beside it."""

from collections.abc import Iterator
from dataclasses import replace

from howto.families.espalier import frame
from howto.families.espalier import references as by
from howto.families.espalier.figures_trees import LEADER_ABOVE_MM, least_spacing
from howto.families.espalier.frame import T
from howto.families.espalier.measures import EspalierMeasures
from howto.families.espalier.rules_said import SAID_RULES
from howto.families.espalier.rules_trees import TREE_RULES
from howto.families.espalier.rules_wires import WIRE_RULES
from howto.findings import Severity
from howto.model.family import Breach, Edit, Limit, Rule, rule
from howto.model.reference import GEOMETRY
from howto.quantities import round_down, round_up
from howto.quantities import show_number as num
from howto.quantities.amounts import bare, mm, qty

INCH_MM = 25.4
# Each limit reaches to the rounder of its source's metric and inch figures.
GAP = Limit(low=350, high=18 * INCH_MM, unit="mm", reference=by.ESPALIERS)
WIDE_GAP = Limit(low=300, high=600, unit="mm", reference=by.WIRE_GAPS)
FIRST = Limit(low=300, high=18 * INCH_MM, unit="mm", reference=by.FIRST_WIRE)
TIERS = Limit(high=5, unit="", of="wires", reference=by.TIER_COUNT)
TOP = Limit(high=6 * 12 * INCH_MM, unit="mm", reference=by.POSTS)
EYES = Limit(high=6 * 12 * INCH_MM, unit="mm", reference=by.WALL_EYES)
POST_GAP = Limit(high=4000, unit="mm", reference=by.POSTS)
POST_DEPTH = Limit(low=450, unit="mm", reference=by.POSTS)
OFF = Limit(low=50, unit="mm", reference=by.OFF_WALL)
STEM_OFF = Limit(low=150, unit="mm", reference=by.STEM_OFF_WALL)
SPACING = Limit(low=12 * 12 * INCH_MM, high=20 * 12 * INCH_MM, unit="mm", reference=by.ESPALIERS)
LEADER_CUT = Limit(low=25, high=75, unit="mm", of="above the first wire", reference=by.LEADER)


@rule("espalier.first-wire", Severity.WARNING, by.FIRST_WIRE, applies="techniques that write a first wire")
def first_wire(work: T) -> Iterator[Breach]:
    """The first wire stands 300 to 450 mm above the ground.

    Below 300 mm soil splashes the arms; above 450 mm a band of wall stays bare for good.
    """
    height = work.measures.first_wire_mm
    if height is None or FIRST.allows(height):
        return
    bound = 300 if height < 300 else 450
    yield _length("first wire", "first_wire_mm", f"the first wire is at {mm(height, 5)}", bound, (
        "low arms are splashed with soil and lost in grass" if height < 300 else "wall is left bare below it"
    ) + "; growers set it at 300 to 450 mm (12 to 18 in)")  # fmt: skip


@rule(
    "espalier.tier-spacing",
    Severity.WARNING,
    by.ESPALIERS,
    by.WIRE_GAPS,
    applies="techniques that write a tier spacing",
)
def tier_spacing(work: T) -> Iterator[Breach]:
    """Wires stand 350 to 450 mm apart.

    350 to 450 mm (15 to 18 in) leaves room for spurs and closes with leaf; growers range from 300 to 600 mm,
    which draws advice alone.
    """
    gap = work.measures.tier_spacing_mm
    if gap is None or GAP.allows(gap):
        return
    bound = 350 if gap < 350 else 450
    wide = WIDE_GAP.allows(gap)
    grown = "growers who differ stay within 300 to 600 mm" if wide else "no grower here goes past 300 to 600 mm"
    close = "arms shade one another and spurs find no room" if gap < 350 else "leaf does not cover the wall between"
    yield _length(
        "tier spacing",
        "tier_spacing_mm",
        f"wires stand {mm(gap, 5)} apart",
        bound,
        f"{close}; the usual is 350 to 450 mm (15 to 18 in), and {grown}",
        severity=Severity.ADVICE if wide else None,
    )


@rule("espalier.tier-count", Severity.WARNING, by.TIER_COUNT, applies="every espalier")
def tier_count(work: T) -> Iterator[Breach]:
    """Five wires are enough.

    Two or three tiers are usual, four or five with a vigorous stock.
    """
    tiers = work.measures.tiers
    if TIERS.allows(tiers):
        return
    yield Breach(
        field="measures.tiers",
        what=f"{tiers} tiers are planned",
        why=f"at a tier a year the top one comes in year {tiers}; four or five wires are usually enough",
        mend="write `tiers: 5` or fewer",
        edit=Edit(key="tiers", text="5"),
    )


@rule("espalier.top-wire", Severity.WARNING, by.POSTS, applies="techniques that write the heights of their wires")
def top_wire(work: T) -> Iterator[Breach]:
    """The top wire is at most 1.8 m up, so that the tree is pruned and picked from the ground.

    Frames are 1.5 to 1.8 m high; a higher one is pruned from a ladder for the rest of its life.
    """
    m = work.measures
    heights = frame.heights_mm(m)
    if not heights or TOP.allows(heights[-1]) or m.first_wire_mm is None or not TOP.allows(m.first_wire_mm):
        return
    gap = m.tier_spacing_mm or 1.0
    fits = int(round_down((1800 - min(m.first_wire_mm, 1800.0)) / gap, 1)) + 1
    yield Breach(
        field="measures.tiers",
        also="measures.tier_spacing_mm",
        what=f"the top wire is at {mm(heights[-1], 5)}",
        why=f"{bare(m.first_wire_mm, 5)} + {m.tiers - 1} x {bare(gap, 5)} = {mm(heights[-1], 5)}; frames stop at "
        "1.5 to 1.8 m, and above that every cut is made from a ladder",
        mend=f"write `tiers: {fits}`, or set the wires closer",
        edit=Edit(key="tiers", text=str(fits)),
    )


@rule("espalier.eye-spacing", Severity.WARNING, by.WALL_EYES, applies="wires on a wall")
def eye_spacing(work: T) -> Iterator[Breach]:
    """Wall eyes stand no more than 1.8 m apart.

    Sag grows with the square of the span: 1.8 m at the most (6 ft).
    """
    m = work.measures
    if m.eye_spacing_mm is None or m.support != "wall" or EYES.allows(m.eye_spacing_mm):
        return
    why = "a longer span sags by the square of its length, and loads each eye the more; the most is 1.8 m (6 ft)"
    yield _length("eye spacing", "eye_spacing_mm", f"eyes are {mm(m.eye_spacing_mm, 5)} apart", 1800, why)


@rule("espalier.post-spacing", Severity.WARNING, by.POSTS, applies="wires on posts")
def post_spacing(work: T) -> Iterator[Breach]:
    """Posts of a free-standing frame stand no more than 4 m apart.

    2.5 to 3.5 m is usual, 4 m the most.
    """
    m = work.measures
    if m.eye_spacing_mm is None or m.support != "posts" or POST_GAP.allows(m.eye_spacing_mm):
        return
    why = "growers set posts 2.5 to 3.5 m apart, and one in every 4 m at the least"
    yield _length("eye spacing", "eye_spacing_mm", f"posts are {mm(m.eye_spacing_mm, 5)} apart", 4000, why)


@rule("espalier.post-depth", Severity.WARNING, by.POSTS, applies="wires on posts")
def post_depth(work: T) -> Iterator[Breach]:
    """Posts stand at least 450 mm deep.

    450 to 600 mm in the ground for 1.5 to 1.8 m out of it.
    """
    m = work.measures
    if m.post_depth_mm is None or m.support != "posts" or POST_DEPTH.allows(m.post_depth_mm):
        return
    why = "the wires pull at the top of the end post; posts go 450 to 600 mm (18 to 24 in) into the ground"
    yield _length("post depth", "post_depth_mm", f"posts stand {mm(m.post_depth_mm, 5)} deep", 450, why)


@rule(
    "espalier.off-wall", Severity.WARNING, by.OFF_WALL, applies="techniques that write how far wires run off the wall"
)
def off_wall(work: T) -> Iterator[Breach]:
    """Wires run at least 50 mm off the wall.

    Ties, hands and air need room behind the wire.
    """
    gap = work.measures.off_wall_mm
    if gap is None or OFF.allows(gap):
        return
    why = "a hand and a tie must pass behind, and air, or leaf mildews against the wall; the usual is 50 mm (2 in)"
    yield _length("off wall", "off_wall_mm", f"the wire runs {mm(gap, 3)} off the wall", 50, why)


@rule(
    "espalier.stem-off-wall",
    Severity.WARNING,
    by.STEM_OFF_WALL,
    applies="techniques that write how far the stem stands off the wall",
)
def stem_off_wall(work: T) -> Iterator[Breach]:
    """A stem is planted at least 150 mm off the wall.

    The foot of a wall is dry, and the stem thickens.
    """
    gap = work.measures.stem_off_wall_mm
    if gap is None or STEM_OFF.allows(gap):
        return
    why = "the foot of a wall is dry, and a stem thickens; growers keep 150 mm (6 in)"
    yield _length("stem off wall", "stem_off_wall_mm", f"the stem stands {mm(gap, 3)} off the wall", 150, why)


@rule(
    "espalier.tree-spacing",
    Severity.WARNING,
    by.ESPALIERS,
    by.STOCK_SPACING,
    by.SEMI_VIGOROUS,
    applies="two trees or more, or a written tree spacing",
)
def tree_spacing(work: T) -> Iterator[Breach]:
    """Trees stand as far apart as their rootstock asks, and no more than 6 m.

    3.75 to 6 m (12 to 20 ft) by vigour; M26 takes 3.3 m, MM106 4.5 m, a semi-vigorous stock 4 m.
    """
    m = work.measures
    bay, (least, source) = frame.bay_mm(m), least_spacing(m)
    if bay is None or (m.trees == 1 and m.tree_spacing_mm is None):
        return
    stock = f"on {m.rootstock}" if m.rootstock else "of middling vigour"
    if bay < (least if m.rootstock else SPACING.low or least) * (1 - 1e-9):
        why = f"a tree {stock} wants {mm(least, 5)}, or its arms meet its neighbour's"
        yield replace(_apart(m, bay, least, why), reference=source)
    elif SPACING.high is not None and bay > SPACING.high and m.tree_spacing_mm is not None:
        yield _apart(m, bay, 6000, "the widest spacing given is 6 m (20 ft); arms on most stocks never reach so far")


def _apart(m: EspalierMeasures, bay: float, bound: float, why: str) -> Breach:
    """Return the breach of trees too close or too far: a spacing where it is written, else fewer trees."""
    what = f"trees stand {mm(bay, 5)} apart"
    if m.tree_spacing_mm is not None:
        return _length("tree spacing", "tree_spacing_mm", what, bound, why)
    wall = (m.wall_length_m or 0.0) * 1000
    fit = max(1, int(round_down(wall / bound, 1)))
    return Breach(
        field="measures.trees",
        also="measures.wall_length_m",
        what=what,
        why=f"{bare(wall, 6)} / {m.trees} = {mm(bay, 5)}; {why}",
        mend=f"write `trees: {fit}`",
        edit=Edit(key="trees", text=str(fit)),
    )


@rule(
    "espalier.trees-on-the-wall",
    Severity.ERROR,
    GEOMETRY,
    applies="techniques that write a wall length and a tree spacing",
)
def trees_on_the_wall(work: T) -> Iterator[Breach]:
    """The trees at their spacing have room on the wall.

    Trees less one, times their spacing, is the least wall that holds them.
    """
    m = work.measures
    if m.tree_spacing_mm is None or m.wall_length_m is None:
        return
    wall, wanted = m.wall_length_m * 1000, m.tree_spacing_mm * (m.trees - 1)
    if wanted <= wall:
        return
    need = f"{num(round_up(m.tree_spacing_mm * m.trees / 1000, 0.1), 6)} m"
    yield Breach(
        field="measures.wall_length_m",
        also="measures.tree_spacing_mm",
        what=f"{m.trees} trees have no room on {qty(m.wall_length_m, 'm', 5)} of wall",
        why=f"{m.trees - 1} x {bare(m.tree_spacing_mm, 5)} = {mm(wanted, 6)} from the first stem to the last alone",
        mend=f"plant fewer, or write `wall length: {need}`",
        edit=Edit(key="wall length", text=need),
    )


@rule("espalier.leader-cut", Severity.WARNING, by.LEADER, applies="techniques that write where the leader is cut")
def leader_cut(work: T) -> Iterator[Breach]:
    """At planting the leader is cut to a bud about 50 mm above the first wire.

    The buds just under the cut make the first arms, and must be level with the first wire.
    """
    m = work.measures
    if m.leader_cut_mm is None or m.first_wire_mm is None:
        return
    above = m.leader_cut_mm - m.first_wire_mm
    if LEADER_CUT.allows(above):
        return
    right = m.first_wire_mm + LEADER_ABOVE_MM
    yield Breach(
        field="measures.leader_cut_mm",
        also="measures.first_wire_mm",
        what=f"the leader is cut {mm(abs(above), 5)} {'above' if above >= 0 else 'below'} the first wire",
        why=f"the three buds under the cut make the next stem and the first two arms, which start a little below the "
        f"wire: {bare(m.first_wire_mm, 5)} + {bare(LEADER_ABOVE_MM)} = {mm(right, 5)}",
        mend=f"write `leader cut: {num(right, 6)} mm`",
        edit=Edit(key="leader cut", text=f"{mm(right, 6)}"),
    )


@rule("espalier.tiers-made", Severity.ERROR, GEOMETRY, applies="techniques that write how many tiers are made")
def tiers_made(work: T) -> Iterator[Breach]:
    """No more tiers are made than there are.

    Years to fill are tiers less tiers made.
    """
    m = work.measures
    if m.tiers_made <= m.tiers:
        return
    yield Breach(
        field="measures.tiers_made",
        also="measures.tiers",
        what=f"{m.tiers_made} tiers are made of {m.tiers}",
        why="the tiers to be made are worked out from the two",
        mend=f"count them again, and write `tiers made: {m.tiers}` or fewer",
        edit=Edit(key="tiers made", text=str(m.tiers)),
    )


def _length(key: str, field: str, what: str, bound_mm: float, why: str, severity: Severity | None = None) -> Breach:
    """Return the breach of a length past its bound, which the mend writes."""
    text = f"{num(bound_mm, 6)} mm"
    return Breach(
        field=f"measures.{field}",
        what=what,
        why=why,
        mend=f"write `{key}: {text}`",
        edit=Edit(key=key, text=text),
        severity=severity,
    )


RULES: tuple[Rule[EspalierMeasures], ...] = (
    first_wire,
    tier_spacing,
    tier_count,
    top_wire,
    eye_spacing,
    post_spacing,
    post_depth,
    off_wall,
    stem_off_wall,
    tree_spacing,
    trees_on_the_wall,
    leader_cut,
    tiers_made,
    *WIRE_RULES,
    *TREE_RULES,
    *SAID_RULES,
)
