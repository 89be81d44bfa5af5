"""The rules of an espalier's frame, in reading order; the wires, the trees and the words follow from beside it."""

from collections.abc import Iterator

from howto.families.espalier import frame
from howto.families.espalier import references as by
from howto.families.espalier.figures_trees import LEADER_ABOVE_MM, LEAST_SPACING_MM, STOCK_MM, least_spacing
from howto.families.espalier.frame import T
from howto.families.espalier.measures import EspalierMeasures
from howto.families.espalier.parts import tiers, to_write
from howto.families.espalier.rules_said import SAID_RULES
from howto.families.espalier.rules_trees import TREE_RULES
from howto.families.espalier.rules_wires import WIRE_RULES
from howto.findings import Severity
from howto.model.family import Breach, Limit, Rule, outside, rule, typed
from howto.model.reference import GEOMETRY, Reference
from howto.quantities import round_down, round_up
from howto.quantities.amounts import Count, Name, Range, Words, bare, mm, qty

INCH_MM, PRINTED_INCH_MM = 25.4, 25.0  # sources round as they print: 18 in beside 450 mm, 6 ft beside 1.8 m
GAP = Limit(low=350, high=450, unit="mm", reference=by.ESPALIERS)
WIDE_GAP = Limit(low=300, high=600, unit="mm", reference=by.WIRE_GAPS)
FIRST = Limit(low=300, high=450, unit="mm", reference=by.FIRST_WIRE)
TIERS = Limit(high=5, unit="", of="wires", reference=by.TIER_COUNT)
TOP_MM = 1800.0
TOP = Limit(high=TOP_MM, unit="mm", reference=by.POSTS)
EYES = Limit(high=1800, unit="mm", reference=by.WALL_EYES)
POST_GAP = Limit(high=4000, unit="mm", reference=by.POSTS)
POST_DEPTH = Limit(low=450, unit="mm", reference=by.POSTS)
OFF = Limit(low=50, unit="mm", reference=by.OFF_WALL)
STEM_OFF = Limit(low=150, unit="mm", reference=by.STEM_OFF_WALL)
TWELVE_FEET_MM = 12 * 12 * INCH_MM  # which the source prints beside LEAST_SPACING_MM
MOST_SPACING_MM = 6000.0
SPACING = Limit(high=MOST_SPACING_MM, unit="mm", reference=by.ESPALIERS)
LEADER_CUT = Limit(low=25, high=75, unit="mm", of="above the first wire", reference=by.LEADER)


@rule("espalier.first-wire", Severity.WARNING, by.FIRST_WIRE, applies="techniques that write a first wire", limit=FIRST)
def first_wire(work: T) -> Iterator[Breach]:
    """The first wire stands {limit} above the ground.

    below {limit.least} low arms are splashed with soil and lost in grass; above {limit.most} a band of wall
    stays bare for good
    """
    if not _kept(FIRST, work.measures.first_wire_mm):
        yield from outside(FIRST, work, "first_wire_mm", what="the first wire is at {found}", why="")


@rule(
    "espalier.tier-spacing",
    Severity.WARNING,
    by.ESPALIERS,
    by.WIRE_GAPS,
    applies="techniques that write a tier spacing",
    limit=GAP,
    wide=WIDE_GAP,
)
def tier_spacing(work: T) -> Iterator[Breach]:
    """Wires stand {limit} apart.

    {limit} is usual: closer, arms shade one another and spurs find no room; wider, leaf does not cover the wall
    between; growers who differ stay within {wide}, which draws advice alone
    """
    gap = work.measures.tier_spacing_mm
    if gap is None or _kept(GAP, gap):
        return
    bound = typed(GAP.nearest(gap), "mm")
    severity = Severity.ADVICE if WIDE_GAP.allows(gap) else None
    yield to_write("tier_spacing_mm", bound, f"wires stand {mm(gap, 5)} apart", severity=severity)


@rule("espalier.tier-count", Severity.WARNING, by.TIER_COUNT, applies="every espalier", limit=TIERS)
def tier_count(work: T) -> Iterator[Breach]:
    """{limit.most} wires are enough.

    two or three tiers are usual, four or {limit.most} with a vigorous stock
    """
    why = "at a tier a year the top one comes in year {found}; {most} wires are enough, even with a vigorous stock"
    yield from outside(TIERS, work, "tiers", what="{found} tiers are planned", why=why)


@rule(
    "espalier.top-wire",
    Severity.WARNING,
    by.POSTS,
    applies="techniques that write the heights of their wires",
    limit=TOP,
)
def top_wire(work: T) -> Iterator[Breach]:
    """The top wire is at most {limit.most} up, so that the tree is pruned and picked from the ground.

    a higher frame is pruned from a ladder for the rest of its life
    """
    m = work.measures
    heights = frame.heights_mm(m)
    if not heights or m.first_wire_mm is None or _kept(TOP, heights[-1]) or not _kept(TOP, m.first_wire_mm):
        return
    gap = m.tier_spacing_mm or 1.0
    fits = int(round_down((TOP_MM - min(m.first_wire_mm, TOP_MM)) / gap, 1)) + 1
    yield to_write(
        "tiers",
        str(fits),
        f"the top wire is at {mm(heights[-1], 5)}",
        f"{bare(m.first_wire_mm, 5)} + {bare(m.tiers - 1)} x {bare(gap, 5)} = {mm(heights[-1], 5)}; frames stop at "
        f"{TOP.most}, and above that every cut is made from a ladder",
        then=", or set the wires closer",
        also="measures.tier_spacing_mm",
    )


@rule("espalier.eye-spacing", Severity.WARNING, by.WALL_EYES, applies="wires on a wall", limit=EYES)
def eye_spacing(work: T) -> Iterator[Breach]:
    """Wall eyes stand no more than {limit.most} apart.

    a longer span sags by the square of its length, and loads each eye the more
    """
    m = work.measures
    if m.support == "wall" and not _kept(EYES, m.eye_spacing_mm):
        yield from outside(EYES, work, "eye_spacing_mm", what="eyes are {found} apart", why="")


@rule(
    "espalier.post-spacing",
    Severity.WARNING,
    by.POSTS,
    applies="wires on posts",
    usual=f"{Range(2500, 3500, 'mm')}",
    limit=POST_GAP,
)
def post_spacing(work: T) -> Iterator[Breach]:
    """Posts of a free-standing frame stand no more than {limit.most} apart.

    growers set posts {usual} apart, and one in every {limit.most} at the least
    """
    if work.measures.support == "posts":
        yield from outside(POST_GAP, work, "eye_spacing_mm", what="posts are {found} apart", why="")


@rule("espalier.post-depth", Severity.WARNING, by.POSTS, applies="wires on posts", limit=POST_DEPTH)
def post_depth(work: T) -> Iterator[Breach]:
    """Posts stand at least {limit.least} deep.

    the wires pull at the top of the end post
    """
    if work.measures.support == "posts":
        yield from outside(POST_DEPTH, work, "post_depth_mm", what="posts stand {found} deep", why="")


@rule(
    "espalier.off-wall",
    Severity.WARNING,
    by.OFF_WALL,
    applies="techniques that write how far wires run off the wall",
    limit=OFF,
)
def off_wall(work: T) -> Iterator[Breach]:
    """Wires run at least {limit.least} off the wall.

    a hand and a tie must pass behind, and air, or leaf mildews against the wall
    """
    yield from outside(OFF, work, "off_wall_mm", what="the wire runs {found} off the wall", why="")


@rule(
    "espalier.stem-off-wall",
    Severity.WARNING,
    by.STEM_OFF_WALL,
    applies="techniques that write how far the stem stands off the wall",
    limit=STEM_OFF,
)
def stem_off_wall(work: T) -> Iterator[Breach]:
    """A stem is planted at least {limit.least} off the wall.

    the foot of a wall is dry, and a stem thickens
    """
    yield from outside(STEM_OFF, work, "stem_off_wall_mm", what="the stem stands {found} off the wall", why="")


@rule(
    "espalier.tree-spacing",
    Severity.WARNING,
    by.ESPALIERS,
    by.STOCK_SPACING,
    by.SEMI_VIGOROUS,
    applies="two trees or more, or a written tree spacing",
    most=SPACING.most,
    limit=f"{Range(LEAST_SPACING_MM, MOST_SPACING_MM, 'mm')}",
    stocks=", ".join(f"{Name(stock)} takes {mm(least)}" for stock, (least, _) in STOCK_MM.items()),
)
def tree_spacing(work: T) -> Iterator[Breach]:
    """Trees stand as far apart as their rootstock asks, and no more than {most}.

    {limit} by vigour; {stocks}
    """
    m = work.measures
    bay, (least, source) = frame.bay_mm(m), least_spacing(m)
    if bay is None or (m.trees == 1 and m.tree_spacing_mm is None):
        return
    if bay < (least if m.rootstock else TWELVE_FEET_MM) * (1 - 1e-9):
        stock = f"on {Name(m.rootstock)}" if m.rootstock else "of middling vigour"
        yield _apart(m, bay, least, f"a tree {stock} wants {mm(least, 5)}, or its arms meet its neighbour's", source)
    elif m.tree_spacing_mm is not None and not _kept(SPACING, bay):
        why = f"the widest spacing given is {SPACING.most}; arms on most stocks never reach so far"
        yield _apart(m, bay, MOST_SPACING_MM, why, by.ESPALIERS)


def _apart(m: EspalierMeasures, bay: float, bound: float, why: Words, source: Reference) -> Breach:
    """Return the breach of trees too close or too far: a spacing where it is written, else fewer trees."""
    what = f"trees stand {mm(bay, 5)} apart"
    if m.tree_spacing_mm is not None:
        return to_write("tree_spacing_mm", typed(bound, "mm"), what, why, reference=source)
    wall = (m.wall_length_m or 0.0) * 1000
    fit = str(max(1, int(round_down(wall / bound, 1))))
    why = f"{bare(wall, 6)} / {bare(m.trees)} = {mm(bay, 5)}; {why}"
    return to_write("trees", fit, what, why, also="measures.wall_length_m", reference=source)


@rule(
    "espalier.trees-on-the-wall",
    Severity.ERROR,
    GEOMETRY,
    applies="techniques that write a wall length and a tree spacing",
)
def trees_on_the_wall(work: T) -> Iterator[Breach]:
    """The trees at their spacing have room on the wall.

    trees less one, times their spacing, is the least wall that holds them
    """
    m = work.measures
    if m.tree_spacing_mm is None or m.wall_length_m is None:
        return
    wall, wanted = m.wall_length_m * 1000, m.tree_spacing_mm * (m.trees - 1)
    if wanted <= wall:
        return
    need = typed(round_up(m.tree_spacing_mm * m.trees / 1000, 0.1), "m")
    yield to_write(
        "wall_length_m",
        need,
        f"{Count(m.trees, 'tree', 'trees')} have no room on {qty(m.wall_length_m, 'm', 5)} of wall",
        f"{bare(m.trees - 1)} x {bare(m.tree_spacing_mm, 5)} = {mm(wanted, 6)} from the first stem to the last alone",
        first="plant fewer, or ",
        also="measures.tree_spacing_mm",
    )


@rule(
    "espalier.leader-cut",
    Severity.WARNING,
    by.LEADER,
    applies="techniques that write where the leader is cut",
    above=f"{mm(LEADER_ABOVE_MM)}",
)
def leader_cut(work: T) -> Iterator[Breach]:
    """At planting the leader is cut to a bud about {above} above the first wire.

    the buds just under the cut make the first arms, and must be level with the first wire
    """
    m = work.measures
    if m.leader_cut_mm is None or m.first_wire_mm is None:
        return
    above = m.leader_cut_mm - m.first_wire_mm
    if LEADER_CUT.allows(above):
        return
    right = m.first_wire_mm + LEADER_ABOVE_MM
    yield to_write(
        "leader_cut_mm",
        typed(right, "mm"),
        f"the leader is cut {mm(abs(above), 5)} {'above' if above >= 0 else 'below'} the first wire",
        f"the three buds under the cut make the next stem and the first two arms, which start a little below the "
        f"wire: {bare(m.first_wire_mm, 5)} + {bare(LEADER_ABOVE_MM)} = {mm(right, 5)}",
        also="measures.first_wire_mm",
    )


@rule("espalier.tiers-made", Severity.ERROR, GEOMETRY, applies="techniques that write how many tiers are made")
def tiers_made(work: T) -> Iterator[Breach]:
    """No more tiers are made than there are.

    the tiers to be made are worked out from the two
    """
    m = work.measures
    if m.tiers_made > m.tiers:
        what, first = f"{tiers(m.tiers_made)} are made of {bare(m.tiers)}", "count them again, and "
        yield to_write("tiers_made", str(m.tiers), what, first=first, then=" or fewer", also="measures.tiers")


def _kept(limit: Limit, length_mm: float | None) -> bool:
    """Tell whether a length keeps a limit, in millimetres or in inches as its source rounds them."""
    if length_mm is None:
        return True
    return limit.allows(length_mm) or limit.allows(length_mm / INCH_MM * PRINTED_INCH_MM)


RULES: tuple[Rule[EspalierMeasures], ...] = (
    first_wire, tier_spacing, tier_count, top_wire, eye_spacing, post_spacing, post_depth, off_wall, stem_off_wall,
    tree_spacing, trees_on_the_wall, leader_cut, tiers_made, *WIRE_RULES, *TREE_RULES, *SAID_RULES,
)  # fmt: skip
