"""The rules of a fruit tree: how much by trunk, age and shoots, and where it is put."""

from collections.abc import Iterator
from math import ceil

from howto.families.feeding import formulae, plan, tables
from howto.families.feeding.label import Label, label_of, numbers_in
from howto.families.feeding.measures import LEAST_G, FeedingMeasures
from howto.families.feeding.mends import at_most
from howto.families.feeding.plan import T
from howto.families.feeding.references import (
    HALF,
    MATURE,
    NO_HOLE,
    OLD_RATE,
    PER_AREA,
    SPUR_GROWTH,
    TREE_CAP,
    TRUNK,
    TRUNK_STONE,
)
from howto.families.feeding.season import has_autumn
from howto.findings import Severity
from howto.model.family import Breach, Edit, Limit, Rule
from howto.model.reference import CEILING
from howto.quantities import show_number as num

SLACK = 1.02  # ours: a dose rounded to what a scale shows is no dose too much
MEASURED_AT = Limit(low=250, high=350, unit="mm", reference=TRUNK)  # ours: a hand's breadth round a foot
CLEAR = Limit(low=tables.STEM_CLEAR_MM, unit="mm", reference=TREE_CAP)


def _given(technique: T, label: Label) -> float | None:
    """Return the nitrogen of a year, in g, where the author wrote what a tree gets."""
    year = plan.year_product_g(technique)
    if technique.measures.kind != "fruit tree" or technique.measures.product_each_g is None or year is None:
        return None
    return formulae.nutrient_in(year, label.nitrogen)


def _less(technique: T, part: float) -> Edit:
    """Return the edit that gives each tree this part of what is written; no nitrogen where that is next to nothing."""
    each = (plan.dose_g(technique) or 0.0) * part
    if each < LEAST_G:
        return _no_nitrogen(technique)
    return Edit(key="product each", text=f"{at_most(each)} g")


def _less_told(edit: Edit) -> str:
    """Return the mend that brings a tree's feed down, in words."""
    written = f"write `{edit.key}: {edit.text}`"
    return f"use a feed without nitrogen, and {written}" if edit.key == "analysis" else f"{written} or less"


def _allowed(technique: T) -> float | None:
    """Return the nitrogen of a year in g that a free-standing tree of this size may get, no cap laid on it."""
    need, fruit, thick = plan.full_need(technique), plan.fruit_of(technique), plan.trunk_cm(technique.measures)
    if need is None:
        return None
    if plan.basis(technique) == "trunk" and fruit is not None and thick is not None:
        return formulae.tree_nitrogen(thick, fruit.nitrogen_g_per_cm)
    return need.nitrogen_g


def _no_nitrogen(technique: T) -> Edit:
    """Return the edit that keeps the feed's P and K and leaves its nitrogen out; potash alone where it has neither."""
    _, p, k = numbers_in(technique.measures.analysis) or (0.0, 0.0, 0.0)
    text = f"0-{num(p, 4)}-{num(k, 4)}" if p + k > 0 else "0-0-50"
    return Edit(key="analysis", text=text)


def tree_rate(technique: T) -> Iterator[Breach]:
    """A fruit tree gets no more nitrogen in a year than its trunk, age or area calls for."""
    label = label_of(technique.measures)
    given = _given(technique, label) if label else None
    allowed = _allowed(technique)
    if given is None or allowed is None or given <= allowed * SLACK:
        return
    need = plan.full_need(technique)
    edit = _less(technique, allowed / given)
    yield Breach(
        field="measures.product_each_g",
        what=f"each tree gets {num(given)} g of nitrogen in a year",
        why=f"{need.working[0] if need else ''}; "
        + (f"{num(given)} g is {num(given / allowed, 2)} times that" if allowed > 0 else "that leaves none to give"),
        mend=_less_told(edit),
        edit=edit,
        reference=need.references[0] if need else None,
    )


def tree_cap(technique: T) -> Iterator[Breach]:
    """No fruit tree gets more nitrogen in a year than 1.13 kg of 10-10-10 holds, 113 g."""
    label = label_of(technique.measures)
    given = _given(technique, label) if label else None
    if given is None or plan.basis(technique) not in {None, "trunk"} or given <= tables.MOST_TREE_G * SLACK:
        return
    edit = _less(technique, tables.MOST_TREE_G / given)
    yield Breach(
        field="measures.product_each_g",
        what=f"each tree gets {num(given)} g of nitrogen in a year",
        why="the most is that of 2.5 lb of 10-10-10: 1.13 kg x 10 / 100 = 113 g; rates of 1977 were 2 to 4 times that",
        mend=_less_told(edit),
        edit=edit,
    )


def age_cap(technique: T) -> Iterator[Breach]:
    """After ten years a fruit tree's feed is not raised from year to year."""
    m, year = technique.measures, plan.year_product_g(technique)
    if m.kind != "fruit tree" or m.last_year_g is None or year is None or (m.tree_age_years or 0) <= 10:
        return
    if year <= m.last_year_g * (1 + 1e-9):
        return
    edit = _less(technique, m.last_year_g / year)
    yield Breach(
        field="measures.last_year_g",
        also="measures.tree_age_years",
        what=f"a tree {num(m.tree_age_years or 0)} years old gets {num(year)} g, and {num(m.last_year_g)} g last year",
        why="the trunk goes on thickening, but the rate stays where it stood at 8 to 10 years",
        mend=_less_told(edit),
        edit=edit,
    )


def growth_enough(technique: T) -> Iterator[Breach]:
    """A tree whose shoots grew past their range gets no nitrogen."""
    m, label, wanted = technique.measures, label_of(technique.measures), plan.growth_wanted(technique)
    fruit = plan.fruit_of(technique)
    if m.kind != "fruit tree" or label is None or label.nitrogen <= 0 or wanted is None or fruit is None:
        return
    if m.shoot_growth_mm is None or m.shoot_growth_mm <= wanted.high + 0.5:
        return
    edit = _no_nitrogen(technique)
    age = "a bearing" if plan.is_bearing(m) or fruit.young is None else "a young"
    yield Breach(
        field="measures.shoot_growth_mm",
        also="measures.analysis",
        what=f"shoots grew {num(m.shoot_growth_mm)} mm, and nitrogen is fed",
        why=f"{age} {plan.crop_of(technique)} should grow {num(wanted.low)} to {num(wanted.high)} mm a year; nitrogen "
        "drives shoots, and long ones shade the fruit and spoil a frame",
        mend=f"leave nitrogen out this year: use a feed without it, and write `{edit.key}: {edit.text}`",
        edit=edit,
        reference=fruit.growth_from,
        severity=CEILING[fruit.growth_from.grade],
    )


def lawn_counts(technique: T) -> Iterator[Breach]:
    """What a lawn is fed under a tree counts as the tree's."""
    m, label, allowed = technique.measures, label_of(technique.measures), _allowed(technique)
    lawn = plan.lawn_nitrogen_g(m)
    if label is None or allowed is None or lawn <= 0 or m.kind != "fruit tree":
        return
    given = _given(technique, label) or 0.0
    if lawn < allowed and (given <= 0 or lawn + given <= allowed * SLACK):
        return
    edit = _no_nitrogen(technique) if lawn >= allowed else _less(technique, (allowed - lawn) / given)
    area = plan.fed_m2(m) or 0.0
    yield Breach(
        field="measures.lawn_nitrogen_g_per_m2",
        what=f"the lawn's feed puts {num(lawn)} g of nitrogen on the tree's roots",
        why=f"{num(m.lawn_nitrogen_g_per_m2 or 0)} g/m² x {num(area)} m² = {num(lawn)} g"
        + (f", and {num(given)} g more is given" if given else "")
        + f"; the tree needs {num(allowed)} g in all",
        mend=f"write `{edit.key}: {edit.text}`, since the lawn feeds the tree enough nitrogen"
        if lawn >= allowed
        else _less_told(edit),
        edit=edit,
    )


def trained_half(technique: T) -> Iterator[Breach]:
    """A trained tree gets about half of what a free-standing one of its size gets."""
    m, label, allowed = technique.measures, label_of(technique.measures), _allowed(technique)
    given = _given(technique, label) if label else None
    if not m.is_trained or given is None or allowed is None or given <= allowed * tables.TRAINED_PART * SLACK:
        return
    edit = _less(technique, allowed * tables.TRAINED_PART / given)
    yield Breach(
        field="measures.product_each_g",
        also="measures.tree_form",
        what=f"the {m.tree_form} gets {num(given)} g of nitrogen in a year",
        why=f"half of a free-standing tree's {num(allowed)} g is {num(allowed / 2)} g ({HALF}); a flush of growth "
        "spoils the frame",
        mend=_less_told(edit),
        edit=edit,
    )


def trained_doses(technique: T) -> Iterator[Breach]:
    """A trained tree's feed is split in two or three."""
    m = technique.measures
    low, high = tables.TRAINED_DOSES
    count = m.doses + has_autumn(m)
    if not m.is_trained or m.kind != "fruit tree" or low <= count <= high or plan.spring_part(m) <= 0:
        return
    wanted = (low if count < low else high) - has_autumn(m)
    yield Breach(
        field="measures.doses",
        also="measures.tree_form",
        what=f"the {m.tree_form} gets its feed in {count} {'dose' if count == 1 else 'doses'}",
        why=f"lighter and oftener keeps growth even: 2 or 3 doses a year ({HALF})",
        mend=f"write `doses: {wanted}`",
        edit=Edit(key="doses", text=str(wanted)),
    )


def trunk_height(technique: T) -> Iterator[Breach]:
    """The trunk is measured 300 mm above the ground."""
    m = technique.measures
    if m.trunk_measured_at_mm is None or MEASURED_AT.allows(m.trunk_measured_at_mm):
        return
    yield Breach(
        field="measures.trunk_measured_at_mm",
        what=f"the trunk is measured {num(m.trunk_measured_at_mm)} mm above the ground",
        why="the rate is for the trunk a foot up, 300 mm; lower it swells, and higher it thins",
        mend="measure again 300 mm up, and write `trunk measured at: 300 mm`",
        edit=Edit(key="trunk measured at", text="300 mm"),
    )


def stem_clear(technique: T) -> Iterator[Breach]:
    """Fertiliser stays 300 mm off the stem."""
    clear = technique.measures.stem_clear_mm
    if clear is None or CLEAR.allows(clear):
        return
    yield Breach(
        field="measures.stem_clear_mm",
        what=f"feed starts {num(clear)} mm from the stem",
        why="salts burn bark, and the roots that drink are farther out; 300 mm stays bare",
        mend="write `stem clear: 300 mm` or more",
        edit=Edit(key="stem clear", text="300 mm"),
    )


def canopy_edge(technique: T) -> Iterator[Breach]:
    """Feed is spread out to the edge of the canopy, and outside the bare ring."""
    m = technique.measures
    if m.ring_edge_mm is None:
        return
    found = plan.ring(m)
    bare = found.inner_mm if found else 0.0
    drip = (m.canopy_mm or 0.0) / 2
    if m.ring_edge_mm >= drip and m.ring_edge_mm > bare:
        return
    edge = ceil(max(drip, bare + tables.STEM_CLEAR_MM if m.ring_edge_mm <= bare else 0.0))
    text = f"{edge} mm"
    yield Breach(
        field="measures.ring_edge_mm",
        also="measures.canopy_mm" if m.canopy_mm is not None else "",
        what=f"feed goes no farther than {num(m.ring_edge_mm, 5)} mm from the stem",
        why=f"the first {num(bare)} mm stay bare"
        + (f" and the canopy's edge is {num(m.canopy_mm or 0, 5)} / 2 = {num(drip, 5)} mm out" if drip else "")
        + "; the fine roots lie out there",
        mend=f"write `ring edge: {text}` or a little more",
        edit=Edit(key="ring edge", text=text),
    )


def planting_hole(technique: T) -> Iterator[Breach]:
    """No fertiliser goes in the planting hole."""
    if technique.measures.place != "planting hole":
        return
    yield Breach(
        field="measures.place",
        what="fertiliser goes in the planting hole",
        why="salts beside cut roots draw water out of them; a new tree is fed later, from above",
        mend="write `place: ring`, and feed once the tree grows",
        edit=Edit(key="place", text="ring"),
    )


TREE_RULES: tuple[Rule[FeedingMeasures], ...] = (
    Rule(
        name="feeding.tree-rate",
        severity=Severity.ERROR,
        why="0.1 lb of N an inch of trunk for apple and pear (17.9 g a cm), 1/8 lb for stone fruit (22.3 g a cm), the "
        "trunk measured a foot up.",
        references=(TRUNK, TRUNK_STONE, PER_AREA),
        applies="fruit trees that write what each gets, by a trunk, an age or an area",
        check=tree_rate,
    ),
    Rule(
        name="feeding.tree-cap",
        severity=Severity.WARNING,
        why="Advice of 1977 gave a dwarf apple 5 to 10 lb of 10-10-10; today's cap is 2.5 lb for any tree.",
        references=(TREE_CAP, OLD_RATE),
        applies="fruit trees that write what each gets, by trunk or by nothing else",
        check=tree_cap,
    ),
    Rule(
        name="feeding.age-cap",
        severity=Severity.WARNING,
        why="An old trunk thickens without asking for more.",
        references=(TRUNK,),
        applies="fruit trees over ten years old that write last year's feed",
        check=age_cap,
    ),
    Rule(
        name="feeding.growth-enough",
        severity=Severity.ERROR,
        why="Bearing apple 12 to 24 in, pear 6 to 12, peach 10 to 18; young apple 24 to 36, pear 12 to 26, peach 16 to "
        "24; plum and cherry 10 to 14. Feed only what grows less; reduce or skip where growth is strong.",
        references=(TRUNK_STONE, PER_AREA, SPUR_GROWTH),
        applies="fruit trees that write their shoot growth",
        check=growth_enough,
    ),
    Rule(
        name="feeding.lawn-counts",
        severity=Severity.WARNING,
        why="Roots do not ask whom a feed was meant for.",
        references=(TRUNK_STONE,),
        applies="fruit trees in grass that write what the lawn is fed",
        check=lawn_counts,
    ),
    Rule(
        name="feeding.trained-half",
        severity=Severity.ADVICE,
        why="A trained tree holds a frame a third the size: full feed goes into shoots that come off again.",
        references=(HALF,),
        applies="espaliers, fans, cordons and step-overs that write what each gets",
        check=trained_half,
    ),
    Rule(
        name="feeding.trained-doses",
        severity=Severity.ADVICE,
        why="Nitrogen all at once is a flush of growth; 3 lots 6 weeks apart are published for grown trees.",
        references=(HALF, MATURE),
        applies="espaliers, fans, cordons and step-overs",
        check=trained_doses,
    ),
    Rule(
        name="feeding.trunk-height",
        severity=Severity.WARNING,
        why="A trunk measured at its foot is a fifth too thick, and the tree gets a fifth too much.",
        references=(TRUNK,),
        applies="fruit trees that write where the trunk was measured",
        check=trunk_height,
    ),
    Rule(
        name="feeding.stem-clear",
        severity=Severity.WARNING,
        why="Off the stem by 12 in: no root near it drinks, and bark burns.",
        references=(TREE_CAP,),
        applies="techniques that write how far the stem is kept clear",
        check=stem_clear,
    ),
    Rule(
        name="feeding.canopy-edge",
        severity=Severity.WARNING,
        why="The whole rooting area is fed, to just past the edge of the canopy.",
        references=(PER_AREA, TREE_CAP),
        applies="techniques that write how far the ring goes",
        check=canopy_edge,
    ),
    Rule(
        name="feeding.planting-hole",
        severity=Severity.WARNING,
        why="New roots burn where fertiliser lies in the hole.",
        references=(NO_HOLE,),
        applies="techniques that write where the feed is put",
        check=planting_hole,
    ),
)
