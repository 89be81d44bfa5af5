"""The rules of a fruit tree: how much by trunk, age and shoots, and where it is put."""

from collections.abc import Iterator
from math import ceil

from howto.families.feeding import formulae, plan, tables
from howto.families.feeding import references as by
from howto.families.feeding.label import Label, label_of, numbers_in
from howto.families.feeding.measures import LEAST_G, FeedingMeasures
from howto.families.feeding.mends import at_most
from howto.families.feeding.plan import T
from howto.families.feeding.season import has_autumn
from howto.findings import Severity
from howto.model.family import Breach, Edit, Limit, Rule, rule
from howto.model.reference import CEILING
from howto.quantities.amounts import bare, mm, qty

SLACK = 1.02  # ours: a dose rounded to what a scale shows is no dose too much
MEASURED_AT = Limit(low=250, high=350, unit="mm", reference=by.TRUNK)  # ours: a hand's breadth round a foot
CLEAR = Limit(low=tables.STEM_CLEAR_MM, unit="mm", reference=by.TREE_CAP)


def _given(work: T, label: Label) -> float | None:
    """Return the nitrogen of a year, in g, where the author wrote what a tree gets."""
    year = plan.year_product_g(work)
    if work.measures.kind != "fruit tree" or work.measures.product_each_g is None or year is None:
        return None
    return formulae.nutrient_in(year, label.nitrogen)


def _less(work: T, part: float) -> Edit:
    """Return the edit that gives each tree this part of what is written; no nitrogen where that is next to nothing."""
    each = (plan.dose_g(work) or 0.0) * part
    if each < LEAST_G:
        return _no_nitrogen(work)
    return Edit(key="product each", text=f"{at_most(each)} g")


def _less_told(edit: Edit) -> str:
    """Return the mend that brings a tree's feed down, in words."""
    written = f"write `{edit.key}: {edit.text}`"
    return f"use a feed without nitrogen, and {written}" if edit.key == "analysis" else f"{written} or less"


def _allowed(work: T) -> float | None:
    """Return the nitrogen of a year in g that a free-standing tree of this size may get, no cap laid on it."""
    need, fruit, thick = plan.full_need(work), plan.fruit_of(work), plan.trunk_cm(work.measures)
    if need is None:
        return None
    if plan.basis(work) == "trunk" and fruit is not None and thick is not None:
        return formulae.tree_nitrogen(thick, fruit.nitrogen_g_per_cm)
    return need.nitrogen_g


def _no_nitrogen(work: T) -> Edit:
    """Return the edit that keeps the feed's P and K and leaves its nitrogen out; potash alone where it has neither."""
    _, p, k = numbers_in(work.measures.analysis) or (0.0, 0.0, 0.0)
    text = f"0-{bare(p, 4)}-{bare(k, 4)}" if p + k > 0 else "0-0-50"
    return Edit(key="analysis", text=text)


@rule(
    "feeding.tree-rate",
    Severity.ERROR,
    by.TRUNK,
    by.TRUNK_STONE,
    by.PER_AREA,
    applies="fruit trees that write what each gets, by a trunk, an age or an area",
)
def tree_rate(work: T) -> Iterator[Breach]:
    """A fruit tree gets no more nitrogen in a year than its trunk, age or area calls for.

    0.1 lb of N an inch of trunk for apple and pear (17.9 g a cm), 1/8 lb for stone fruit (22.3 g a cm), the
    trunk measured a foot up.
    """
    label = label_of(work.measures)
    given = _given(work, label) if label else None
    allowed = _allowed(work)
    if given is None or allowed is None or given <= allowed * SLACK:
        return
    need = plan.full_need(work)
    edit = _less(work, allowed / given)
    yield Breach(
        field="measures.product_each_g",
        what=f"each tree gets {qty(given, 'g', 3)} of nitrogen in a year",
        why=f"{need.working[0] if need else ''}; "
        + (
            f"{qty(given, 'g', 3)} is {bare(given / allowed, 2)} times that"
            if allowed > 0
            else "that leaves none to give"
        ),
        mend=_less_told(edit),
        edit=edit,
        reference=need.references[0] if need else None,
    )


@rule(
    "feeding.tree-cap",
    Severity.WARNING,
    by.TREE_CAP,
    by.OLD_RATE,
    applies="fruit trees that write what each gets, by trunk or by nothing else",
)
def tree_cap(work: T) -> Iterator[Breach]:
    """No fruit tree gets more nitrogen in a year than 1.13 kg of 10-10-10 holds, 113 g.

    Advice of 1977 gave a dwarf apple 5 to 10 lb of 10-10-10; today's cap is 2.5 lb for any tree.
    """
    label = label_of(work.measures)
    given = _given(work, label) if label else None
    if given is None or plan.basis(work) not in {None, "trunk"} or given <= tables.MOST_TREE_G * SLACK:
        return
    edit = _less(work, tables.MOST_TREE_G / given)
    yield Breach(
        field="measures.product_each_g",
        what=f"each tree gets {qty(given, 'g', 3)} of nitrogen in a year",
        why="the most is that of 2.5 lb of 10-10-10: 1.13 kg x 10 / 100 = 113 g; rates of 1977 were 2 to 4 times that",
        mend=_less_told(edit),
        edit=edit,
    )


@rule(
    "feeding.age-cap", Severity.WARNING, by.TRUNK, applies="fruit trees over ten years old that write last year's feed"
)
def age_cap(work: T) -> Iterator[Breach]:
    """After ten years a fruit tree's feed is not raised from year to year.

    An old trunk thickens without asking for more.
    """
    m, year = work.measures, plan.year_product_g(work)
    if m.kind != "fruit tree" or m.last_year_g is None or year is None or (m.tree_age_years or 0) <= 10:
        return
    if year <= m.last_year_g * (1 + 1e-9):
        return
    edit = _less(work, m.last_year_g / year)
    yield Breach(
        field="measures.last_year_g",
        also="measures.tree_age_years",
        what=f"a tree {bare(m.tree_age_years or 0)} years old gets {qty(year, 'g', 3)}, and {qty(m.last_year_g, 'g', 3)} last year",
        why="the trunk goes on thickening, but the rate stays where it stood at 8 to 10 years",
        mend=_less_told(edit),
        edit=edit,
    )


@rule(
    "feeding.growth-enough",
    Severity.ERROR,
    by.TRUNK_STONE,
    by.PER_AREA,
    by.SPUR_GROWTH,
    applies="fruit trees that write their shoot growth",
)
def growth_enough(work: T) -> Iterator[Breach]:
    """A tree whose shoots grew past their range gets no nitrogen.

    Bearing apple 12 to 24 in, pear 6 to 12, peach 10 to 18; young apple 24 to 36, pear 12 to 26, peach 16 to
    24; plum and cherry 10 to 14. Feed only what grows less; reduce or skip where growth is strong.
    """
    m, label, wanted = work.measures, label_of(work.measures), plan.growth_wanted(work)
    fruit = plan.fruit_of(work)
    if m.kind != "fruit tree" or label is None or label.nitrogen <= 0 or wanted is None or fruit is None:
        return
    if m.shoot_growth_mm is None or m.shoot_growth_mm <= wanted.high + 0.5:
        return
    edit = _no_nitrogen(work)
    age = "a bearing" if plan.is_bearing(m) or fruit.young is None else "a young"
    yield Breach(
        field="measures.shoot_growth_mm",
        also="measures.analysis",
        what=f"shoots grew {mm(m.shoot_growth_mm, 3)}, and nitrogen is fed",
        why=f"{age} {plan.crop_of(work)} should grow {bare(wanted.low)} to {mm(wanted.high, 3)} a year; nitrogen "
        "drives shoots, and long ones shade the fruit and spoil a frame",
        mend=f"leave nitrogen out this year: use a feed without it, and write `{edit.key}: {edit.text}`",
        edit=edit,
        reference=fruit.growth_from,
        severity=CEILING[fruit.growth_from.grade],
    )


@rule(
    "feeding.lawn-counts",
    Severity.WARNING,
    by.TRUNK_STONE,
    applies="fruit trees in grass that write what the lawn is fed",
)
def lawn_counts(work: T) -> Iterator[Breach]:
    """What a lawn is fed under a tree counts as the tree's.

    Roots do not ask whom a feed was meant for.
    """
    m, label, allowed = work.measures, label_of(work.measures), _allowed(work)
    lawn = plan.lawn_nitrogen_g(m)
    if label is None or allowed is None or lawn <= 0 or m.kind != "fruit tree":
        return
    given = _given(work, label) or 0.0
    if lawn < allowed and (given <= 0 or lawn + given <= allowed * SLACK):
        return
    edit = _no_nitrogen(work) if lawn >= allowed else _less(work, (allowed - lawn) / given)
    area = plan.fed_m2(m) or 0.0
    yield Breach(
        field="measures.lawn_nitrogen_g_per_m2",
        what=f"the lawn's feed puts {qty(lawn, 'g', 3)} of nitrogen on the tree's roots",
        why=f"{qty(m.lawn_nitrogen_g_per_m2 or 0, 'g/m²', 3)} x {qty(area, 'm²', 3)} = {qty(lawn, 'g', 3)}"
        + (f", and {qty(given, 'g', 3)} more is given" if given else "")
        + f"; the tree needs {qty(allowed, 'g', 3)} in all",
        mend=f"write `{edit.key}: {edit.text}`, since the lawn feeds the tree enough nitrogen"
        if lawn >= allowed
        else _less_told(edit),
        edit=edit,
    )


@rule(
    "feeding.trained-half",
    Severity.ADVICE,
    by.HALF,
    applies="espaliers, fans, cordons and step-overs that write what each gets",
)
def trained_half(work: T) -> Iterator[Breach]:
    """A trained tree gets about half of what a free-standing one of its size gets.

    A trained tree holds a frame a third the size: full feed goes into shoots that come off again.
    """
    m, label, allowed = work.measures, label_of(work.measures), _allowed(work)
    given = _given(work, label) if label else None
    if not m.is_trained or given is None or allowed is None or given <= allowed * tables.TRAINED_PART * SLACK:
        return
    edit = _less(work, allowed * tables.TRAINED_PART / given)
    yield Breach(
        field="measures.product_each_g",
        also="measures.tree_form",
        what=f"the {m.tree_form} gets {qty(given, 'g', 3)} of nitrogen in a year",
        why=f"half of a free-standing tree's {qty(allowed, 'g', 3)} is {qty(allowed / 2, 'g', 3)} ({by.HALF}); a flush of growth "
        "spoils the frame",
        mend=_less_told(edit),
        edit=edit,
    )


@rule("feeding.trained-doses", Severity.ADVICE, by.HALF, by.MATURE, applies="espaliers, fans, cordons and step-overs")
def trained_doses(work: T) -> Iterator[Breach]:
    """A trained tree's feed is split in two or three.

    Nitrogen all at once is a flush of growth; 3 lots 6 weeks apart are published for grown trees.
    """
    m = work.measures
    low, high = tables.TRAINED_DOSES
    count = m.doses + has_autumn(m)
    if not m.is_trained or m.kind != "fruit tree" or low <= count <= high or plan.spring_part(m) <= 0:
        return
    wanted = (low if count < low else high) - has_autumn(m)
    yield Breach(
        field="measures.doses",
        also="measures.tree_form",
        what=f"the {m.tree_form} gets its feed in {count} {'dose' if count == 1 else 'doses'}",
        why=f"lighter and oftener keeps growth even: 2 or 3 doses a year ({by.HALF})",
        mend=f"write `doses: {wanted}`",
        edit=Edit(key="doses", text=str(wanted)),
    )


@rule("feeding.trunk-height", Severity.WARNING, by.TRUNK, applies="fruit trees that write where the trunk was measured")
def trunk_height(work: T) -> Iterator[Breach]:
    """The trunk is measured 300 mm above the ground.

    A trunk measured at its foot is a fifth too thick, and the tree gets a fifth too much.
    """
    m = work.measures
    if m.trunk_measured_at_mm is None or MEASURED_AT.allows(m.trunk_measured_at_mm):
        return
    yield Breach(
        field="measures.trunk_measured_at_mm",
        what=f"the trunk is measured {mm(m.trunk_measured_at_mm, 3)} above the ground",
        why="the rate is for the trunk a foot up, 300 mm; lower it swells, and higher it thins",
        mend="measure again 300 mm up, and write `trunk measured at: 300 mm`",
        edit=Edit(key="trunk measured at", text="300 mm"),
    )


@rule(
    "feeding.stem-clear", Severity.WARNING, by.TREE_CAP, applies="techniques that write how far the stem is kept clear"
)
def stem_clear(work: T) -> Iterator[Breach]:
    """Fertiliser stays 300 mm off the stem.

    Off the stem by 12 in: no root near it drinks, and bark burns.
    """
    clear = work.measures.stem_clear_mm
    if clear is None or CLEAR.allows(clear):
        return
    yield Breach(
        field="measures.stem_clear_mm",
        what=f"feed starts {mm(clear, 3)} from the stem",
        why="salts burn bark, and the roots that drink are farther out; 300 mm stays bare",
        mend="write `stem clear: 300 mm` or more",
        edit=Edit(key="stem clear", text="300 mm"),
    )


@rule(
    "feeding.canopy-edge",
    Severity.WARNING,
    by.PER_AREA,
    by.TREE_CAP,
    applies="techniques that write how far the ring goes",
)
def canopy_edge(work: T) -> Iterator[Breach]:
    """Feed is spread out to the edge of the canopy, and outside the bare ring.

    The whole rooting area is fed, to just past the edge of the canopy.
    """
    m = work.measures
    if m.ring_edge_mm is None:
        return
    found = plan.ring(m)
    inner = found.inner_mm if found else 0.0
    drip = (m.canopy_mm or 0.0) / 2
    if m.ring_edge_mm >= drip and m.ring_edge_mm > inner:
        return
    edge = ceil(max(drip, inner + tables.STEM_CLEAR_MM if m.ring_edge_mm <= inner else 0.0))
    text = f"{edge} mm"
    yield Breach(
        field="measures.ring_edge_mm",
        also="measures.canopy_mm" if m.canopy_mm is not None else "",
        what=f"feed goes no farther than {mm(m.ring_edge_mm, 5)} from the stem",
        why=f"the first {mm(inner, 3)} stay bare"
        + (f" and the canopy's edge is {bare(m.canopy_mm or 0, 5)} / 2 = {mm(drip, 5)} out" if drip else "")
        + "; the fine roots lie out there",
        mend=f"write `ring edge: {text}` or a little more",
        edit=Edit(key="ring edge", text=text),
    )


@rule("feeding.planting-hole", Severity.WARNING, by.NO_HOLE, applies="techniques that write where the feed is put")
def planting_hole(work: T) -> Iterator[Breach]:
    """No fertiliser goes in the planting hole.

    New roots burn where fertiliser lies in the hole.
    """
    if work.measures.place != "planting hole":
        return
    yield Breach(
        field="measures.place",
        what="fertiliser goes in the planting hole",
        why="salts beside cut roots draw water out of them; a new tree is fed later, from above",
        mend="write `place: ring`, and feed once the tree grows",
        edit=Edit(key="place", text="ring"),
    )


TREE_RULES: tuple[Rule[FeedingMeasures], ...] = (
    tree_rate,
    tree_cap,
    age_cap,
    growth_enough,
    lawn_counts,
    trained_half,
    trained_doses,
    trunk_height,
    stem_clear,
    canopy_edge,
    planting_hole,
)
