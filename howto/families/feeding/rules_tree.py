"""The rules of a fruit tree: how much by trunk, age and shoots, and where it is put."""

from collections.abc import Iterator
from math import ceil
from typing import Any

from howto.families.feeding import formulae, plan, tables
from howto.families.feeding import references as by
from howto.families.feeding.label import BagLabel, label_of, numbers_in
from howto.families.feeding.measures import LEAST_G
from howto.families.feeding.parts import anew, at_most, doses, to_write
from howto.families.feeding.plan import T
from howto.families.feeding.season import has_autumn
from howto.findings import Severity
from howto.model.family import Breach, Edit, Limit, outside, rule
from howto.model.reference import CEILING
from howto.quantities.amounts import Range, Share, Word, Words, bare, mm, qty

SLACK = 1.02  # ours: a dose rounded to what a scale shows is no dose too much
MEASURED_AT = Limit(low=250, high=350, unit="mm", reference=by.TRUNK)  # ours: a hand's breadth round a foot
CLEAR = Limit(low=tables.STEM_CLEAR_MM, unit="mm", reference=by.TREE_CAP)


def _given(work: T, label: BagLabel | None) -> float | None:
    """Return the nitrogen of a year, in g, where the author wrote what a tree gets."""
    year = plan.year_product_g(work)
    if label is None or work.measures.kind != "fruit tree" or work.measures.product_each_g is None or year is None:
        return None
    return formulae.nutrient_in(year, label.nitrogen)


def _allowed(work: T) -> float | None:
    """Return the nitrogen of a year in g that a free-standing tree of this size may get, no cap laid on it."""
    need, fruit, thick = plan.full_need(work), plan.fruit_of(work), plan.trunk_cm(work.measures)
    if need is None:
        return None
    if plan.basis(work) == "trunk" and fruit is not None and thick is not None:
        return thick * fruit.nitrogen_g_per_cm
    return need.nitrogen_g


def _less(work: T, part: float, field: str, what: Words, why: Words = "", **more: Any) -> Breach:
    """Return the breach whose mend gives each tree this part of its feed; no nitrogen where that is next to nothing."""
    each = (plan.dose_g(work) or 0.0) * part
    if each < LEAST_G:
        return to_write(field, _no_nitrogen(work), what, why, first="use a feed without nitrogen, and ", **more)
    return to_write(field, Edit(at_most(each, "g"), "product each"), what, why, then=" or less", **more)


def _no_nitrogen(work: T) -> Edit:
    """Return the edit that keeps the feed's P and K and leaves its nitrogen out; potash alone where it has neither."""
    _, p, k = numbers_in(work.measures.analysis) or (0.0, 0.0, 0.0)
    return Edit(f"0-{p:g}-{k:g}" if p + k > 0 else "0-0-50", "analysis")


@rule(
    "feeding.tree-rate",
    Severity.ERROR,
    by.TRUNK,
    by.TRUNK_STONE,
    by.PER_AREA,
    applies="fruit trees that write what each gets, by a trunk, an age or an area",
    pome=f"{qty(tables.POME_G_PER_CM, 'g/cm', 3)}",
    stone=f"{qty(tables.STONE_G_PER_CM, 'g/cm', 3)}",
    up=f"{mm(tables.TRUNK_AT_MM)}",
)
def tree_rate(work: T) -> Iterator[Breach]:
    """A fruit tree gets no more nitrogen in a year than its trunk, age or area calls for.

    0.1 lb of N an inch of trunk for apple and pear ({pome}), 1/8 lb for stone fruit ({stone}), the trunk measured
    {up} up
    """
    given, allowed, need = _given(work, label_of(work.measures)), _allowed(work), plan.full_need(work)
    if given is None or allowed is None or need is None or given <= allowed * SLACK:
        return
    said = f"{qty(given, 'g', 3)}"
    times = f"{said} is {bare(given / allowed, 2)} times that" if allowed > 0 else "that leaves none to give"
    yield _less(
        work,
        allowed / given,
        "product_each_g",
        f"each tree gets {said} of nitrogen in a year",
        f"{need.working[0]}; {times}",
        reference=need.references[0],
    )


@rule(
    "feeding.tree-cap",
    Severity.WARNING,
    by.TREE_CAP,
    by.OLD_RATE,
    applies="fruit trees that write what each gets, by trunk or by nothing else",
    product=f"{qty(tables.CAP_PRODUCT_G / 1000, 'kg', 3)}",
    holds=f"{bare(tables.CAP_FEED_PERCENT)}",
    most=f"{qty(tables.MOST_TREE_G, 'g', 3)}",
)
def tree_cap(work: T) -> Iterator[Breach]:
    """No fruit tree gets more nitrogen in a year than {product} of 10-10-10 holds, {most}.

    the most is that of {product} of 10-10-10: {product} x {holds} / 100 = {most}; rates of 1977 were 2 to 4 times that
    """
    given = _given(work, label_of(work.measures))
    if given is None or plan.basis(work) not in {None, "trunk"} or given <= tables.MOST_TREE_G * SLACK:
        return
    what = f"each tree gets {qty(given, 'g', 3)} of nitrogen in a year"
    yield _less(work, tables.MOST_TREE_G / given, "product_each_g", what)


@rule(
    "feeding.age-cap",
    Severity.WARNING,
    by.TRUNK,
    applies="fruit trees over ten years old that write last year's feed",
    years=f"{qty(tables.SETTLED_YEARS, 'years', 3)}",
)
def age_cap(work: T) -> Iterator[Breach]:
    """After {years} a fruit tree's feed is not raised from year to year.

    the trunk goes on thickening, but the rate stays where it stood at 8 to {years}
    """
    m, year, age = work.measures, plan.year_product_g(work), work.measures.tree_age_years or 0
    if m.kind != "fruit tree" or m.last_year_g is None or year is None or age <= tables.SETTLED_YEARS:
        return
    if year > m.last_year_g * (1 + 1e-9):
        gets = f"{qty(year, 'g', 3)}, and {qty(m.last_year_g, 'g', 3)} last year"
        what = f"a tree {bare(age)} years old gets {gets}"
        yield _less(work, m.last_year_g / year, "last_year_g", what, also="measures.tree_age_years")


def _growths() -> Iterator[Words]:
    """Yield how long the shoots of each kind of fruit should be, those of a young tree behind."""
    for crop, fruit in tables.FRUITS.items():
        if fruit.bearing is not None:
            young = f", young {Range(*fruit.young, 'mm')}" if fruit.young else ""
            yield f"{Word(crop)} {Range(*fruit.bearing, 'mm')}{young}"


@rule(
    "feeding.growth-enough",
    Severity.ERROR,
    by.TRUNK_STONE,
    by.PER_AREA,
    by.SPUR_GROWTH,
    applies="fruit trees that write their shoot growth",
    growths="; ".join(_growths()),
)
def growth_enough(work: T) -> Iterator[Breach]:
    """A tree whose shoots grew past their range gets no nitrogen.

    only what grows less is fed: {growths}
    """
    m, label, wanted, fruit = work.measures, label_of(work.measures), plan.growth_wanted(work), plan.fruit_of(work)
    if m.kind != "fruit tree" or label is None or label.nitrogen <= 0 or wanted is None or fruit is None:
        return
    if m.shoot_growth_mm is None or m.shoot_growth_mm <= wanted.high + 0.5:
        return
    age = Word("bearing" if plan.is_bearing(m) or fruit.young is None else "young")
    yield to_write(
        "shoot_growth_mm",
        _no_nitrogen(work),
        f"shoots grew {mm(m.shoot_growth_mm, 3)}, and nitrogen is fed",
        f"a {age} {Word(plan.crop_of(work) or '')} should grow {Range(*wanted, 'mm')} a year; nitrogen drives shoots, "
        "and long ones shade the fruit and spoil a frame",
        first="leave nitrogen out this year: use a feed without it, and ",
        also="measures.analysis",
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

    roots do not ask whom a feed was meant for
    """
    m, label, allowed, lawn = (
        work.measures,
        label_of(work.measures),
        _allowed(work),
        plan.lawn_nitrogen_g(work.measures),
    )
    if label is None or allowed is None or lawn <= 0 or m.kind != "fruit tree":
        return
    given = _given(work, label) or 0.0
    if lawn < allowed and (given <= 0 or lawn + given <= allowed * SLACK):
        return
    puts, more = qty(lawn, "g", 3), f", and {qty(given, 'g', 3)} more is given" if given else ""
    sums = f"{qty(m.lawn_nitrogen_g_per_m2 or 0, 'g/m²', 3)} x {qty(plan.fed_m2(m) or 0.0, 'm²', 3)} = {puts}"
    field, what = "lawn_nitrogen_g_per_m2", f"the lawn's feed puts {puts} of nitrogen on the tree's roots"
    why = f"{sums}{more}; the tree needs {qty(allowed, 'g', 3)} in all"
    if lawn >= allowed:
        then = ", since the lawn feeds the tree enough nitrogen"
        yield to_write(field, _no_nitrogen(work), what, why, then=then)
    else:
        yield _less(work, (allowed - lawn) / given, field, what, why)


@rule(
    "feeding.trained-half",
    Severity.ADVICE,
    by.HALF,
    applies="espaliers, fans, cordons and step-overs that write what each gets",
    part=f"{Share(tables.TRAINED_PART)}",
)
def trained_half(work: T) -> Iterator[Breach]:
    """A trained tree gets about {part} of what a free-standing one of its size gets.

    a trained tree holds a frame a third the size: full feed goes into shoots that come off again
    """
    m, given, allowed = work.measures, _given(work, label_of(work.measures)), _allowed(work)
    if not m.is_trained or given is None or allowed is None or given <= allowed * tables.TRAINED_PART * SLACK:
        return
    most, whole = allowed * tables.TRAINED_PART, qty(allowed, "g", 3)
    yield _less(
        work,
        most / given,
        "product_each_g",
        f"the {Word(m.tree_form or '')} gets {qty(given, 'g', 3)} of nitrogen in a year",
        f"{Share(tables.TRAINED_PART)} of a free-standing tree's {whole} is {qty(most, 'g', 3)}; a flush of growth "
        "spoils the frame",
        also="measures.tree_form",
    )


@rule(
    "feeding.trained-doses",
    Severity.ADVICE,
    by.HALF,
    by.MATURE,
    applies="espaliers, fans, cordons and step-overs",
    few=f"{bare(tables.TRAINED_DOSES[0])}",
    many=f"{doses(tables.TRAINED_DOSES[1])}",
)
def trained_doses(work: T) -> Iterator[Breach]:
    """A trained tree's feed is split in {few} or {many}.

    nitrogen all at once is a flush of growth; lighter and oftener keeps it even: {few} or {many} a year
    """
    m = work.measures
    low, high = tables.TRAINED_DOSES
    count = m.doses + has_autumn(m)
    if not m.is_trained or m.kind != "fruit tree" or low <= count <= high or plan.spring_part(m) <= 0:
        return
    wanted = (low if count < low else high) - has_autumn(m)
    what = f"the {Word(m.tree_form or '')} gets its feed in {doses(count)}"
    yield anew("doses", str(wanted), what, also="measures.tree_form")


@rule(
    "feeding.trunk-height",
    Severity.WARNING,
    by.TRUNK,
    applies="fruit trees that write where the trunk was measured",
    up=f"{mm(tables.TRUNK_AT_MM)}",
)
def trunk_height(work: T) -> Iterator[Breach]:
    """The trunk is measured {up} above the ground.

    the rate is for the trunk {up} up; lower it swells, and higher it thins: a trunk measured at its foot is a fifth
    too thick, and the tree gets a fifth too much
    """
    height = work.measures.trunk_measured_at_mm
    if height is not None and not MEASURED_AT.allows(height):
        what = f"the trunk is measured {mm(height, 3)} above the ground"
        again = f"measure again {mm(tables.TRUNK_AT_MM)} up, and "
        yield anew("trunk_measured_at_mm", f"{tables.TRUNK_AT_MM:g} mm", what, first=again)


@rule(
    "feeding.stem-clear",
    Severity.WARNING,
    by.TREE_CAP,
    applies="techniques that write how far the stem is kept clear",
    least=CLEAR.least,
)
def stem_clear(work: T) -> Iterator[Breach]:
    """Fertiliser stays {least} off the stem.

    salts burn bark, and the roots that drink are farther out; {least} stays bare
    """
    yield from outside(CLEAR, work, "stem_clear_mm", what="feed starts {found} from the stem", why="")


@rule(
    "feeding.canopy-edge",
    Severity.WARNING,
    by.PER_AREA,
    by.TREE_CAP,
    applies="techniques that write how far the ring goes",
)
def canopy_edge(work: T) -> Iterator[Breach]:
    """Feed is spread out to the edge of the canopy, and outside the bare ring.

    the whole rooting area is fed, to just past the edge of the canopy
    """
    m, found = work.measures, plan.ring(work.measures)
    if m.ring_edge_mm is None or found is None:
        return
    inner, drip = found.inner_mm, (m.canopy_mm or 0.0) / 2
    if m.ring_edge_mm >= drip and m.ring_edge_mm > inner:
        return
    edge = ceil(max(drip, inner + tables.STEM_CLEAR_MM if m.ring_edge_mm <= inner else 0.0))
    canopy = f" and the canopy's edge is {mm(drip * 2, 5)} / 2 = {mm(drip, 5)} out" if drip else ""
    yield anew(
        "ring_edge_mm",
        f"{edge} mm",
        f"feed goes no farther than {mm(m.ring_edge_mm, 5)} from the stem",
        f"the first {mm(inner, 3)} stay bare{canopy}; the fine roots lie out there",
        then=" or a little more",
        also="measures.canopy_mm" if m.canopy_mm is not None else "",
    )


@rule("feeding.planting-hole", Severity.WARNING, by.NO_HOLE, applies="techniques that write where the feed is put")
def planting_hole(work: T) -> Iterator[Breach]:
    """No fertiliser goes in the planting hole.

    salts beside cut roots draw water out of them; a new tree is fed later, from above
    """
    if work.measures.place == "planting hole":
        yield anew("place", "ring", "fertiliser goes in the planting hole", then=", and feed once the tree grows")


RULES = (
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
