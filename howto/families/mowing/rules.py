"""The rules of mowing: today's cut and the way down, then grasses and heights, then conditions."""

from collections.abc import Iterator
from math import ceil, floor

from howto.families.mowing import formulae
from howto.families.mowing import references as by
from howto.families.mowing.figures import in_days
from howto.families.mowing.lawn import first_cut, growth, standing, wait_days, way_down
from howto.families.mowing.measures import HIGHEST_SET_MM, TALLEST_MM, MowingMeasures
from howto.families.mowing.rules_conditions import CONDITIONS
from howto.families.mowing.rules_grasses import GRASSES
from howto.findings import Severity
from howto.model.family import SHARE, Breach, Edit, Limit, Rule, rule
from howto.model.reference import CEILING, GEOMETRY
from howto.model.work import Work
from howto.quantities import show_number as num
from howto.quantities.amounts import bare, mm, percent

T = Work[MowingMeasures]

THIRD = Limit(high=1 / 3, unit=SHARE, of="of the height in one cut", reference=by.UC_AMOUNT)
STAGE_WAIT = Limit(low=2, unit="days", reference=by.WAIT)
SLOWEST, FASTEST = 0.2, 12.0  # mm a day; a tenth and twice of the usual 2 to 6, from memory
DUST = 1e-3  # days or mm


@rule(
    "mowing.one-third",
    Severity.ERROR,
    by.UC_AMOUNT,
    by.CORNELL,
    applies="lawns that write today's cut and how high they stand",
)
def one_third(work: T) -> Iterator[Breach]:
    """A cut takes no more than a third of the standing height.

    A lawn feeds by its leaf; a deeper cut bares the soil. An overgrown lawn comes down in steps.
    """
    m = work.measures
    if not _too_deep(m) or m.cut_height_mm is None:
        return
    stands, cut = standing(m), m.cut_height_mm
    lowest = ceil(formulae.lowest_cut_mm(stands) - 1e-9)
    least = f"{format(m.set_height_mm, '.12g') if lowest < m.set_height_mm < stands else lowest} mm"
    down = formulae.heights_down_mm(stands, min(cut, m.set_height_mm))
    stages = ", ".join(num(height) for height in down)
    yield Breach(
        field="measures.cut_height_mm",
        also="measures.standing_height_mm",
        what=f"the cut takes {percent(formulae.share_removed(stands, cut) * 100)} of the height",
        why=f"({bare(stands, 4)} - {bare(cut, 4)}) / {bare(stands, 4)}; the most is a third. Bared soil dries, washes and "
        f"lets weeds in. Growth left out, come down in {len(down)} cuts: {stages} mm",
        mend=f"write `cut height: {least}` today, and lower the rest in the later cuts",
        edit=Edit(key="cut height", text=least),
    )


def _too_deep(m: MowingMeasures) -> bool:
    """Tell whether today's cut takes more than a third of what was measured."""
    if m.cut_height_mm is None or m.standing_height_mm is None:
        return False
    return not THIRD.allows(formulae.share_removed(m.standing_height_mm, m.cut_height_mm))


@rule("mowing.lower-than-it-stands", Severity.ERROR, GEOMETRY, applies="lawns that write how high they stand")
def lower_than_it_stands(work: T) -> Iterator[Breach]:
    """The grass stands higher than the cut.

    A mower set above the grass takes nothing off.
    """
    m = work.measures
    stands, cut = m.standing_height_mm, first_cut(m)
    if stands is None or stands > cut:
        return
    grown = min(floor(formulae.mow_at_mm(cut) + 1e-9), TALLEST_MM)
    yield Breach(
        field="measures.standing_height_mm",
        also="measures.cut_height_mm" if m.cut_height_mm is not None else "measures.set_height_mm",
        what=f"the grass stands {mm(stands, 4)} and would be cut to {mm(cut, 4)}",
        why=f"a mower set above the grass takes nothing off; it is due at {bare(cut, 4)} x 1.5 = "
        f"{mm(formulae.mow_at_mm(cut), 3)}",
        mend=f"measure again, or leave it until it is due, and write `standing height: {grown} mm`",
        edit=Edit(key="standing height", text=f"{grown} mm"),
    )


@rule("mowing.not-below-set-height", Severity.ERROR, GEOMETRY, applies="lawns that write today's cut")
def not_below_set_height(work: T) -> Iterator[Breach]:
    """A cut is not lower than the height the lawn is kept at.

    The set height is the lowest the lawn is kept at, so the cut and it cannot disagree.
    """
    m = work.measures
    if m.cut_height_mm is None or m.cut_height_mm >= m.set_height_mm - 1e-9 or _too_deep(m):
        return
    text = f"{m.set_height_mm:.12g} mm"
    yield Breach(
        field="measures.cut_height_mm",
        also="measures.set_height_mm",
        what=f"the cut at {mm(m.cut_height_mm, 4)} is below the set height of {mm(m.set_height_mm, 4)}",
        why="the set height is the lowest this lawn is kept at",
        mend=f"write `cut height: {text}` or more",
        edit=Edit(key="cut height", text=text),
    )


@rule("mowing.stages-apart", Severity.WARNING, by.WAIT, applies="lawns that write the wait")
def stages_apart(work: T) -> Iterator[Breach]:
    """Two cuts on the way down stand at least two days apart.

    The leaf needs a few days to recover between two cuts on the way down.
    """
    wait = work.measures.stage_wait_days
    if wait is None or STAGE_WAIT.allows(wait):
        return
    yield Breach(
        field="measures.stage_wait_days",
        what=f"{in_days(wait)} between two cuts on the way down",
        why="trade advice runs from a couple of days to four, so that the leaf recovers",
        mend="write `stage wait: 2 days` or more",
        edit=Edit(key="stage wait", text="2 days"),
    )


@rule("mowing.lawn-keeps-up", Severity.WARNING, GEOMETRY, by.UC_AMOUNT, applies="lawns brought down in stages")
def lawn_keeps_up(work: T) -> Iterator[Breach]:
    """On the way down, less grows between two cuts than a cut takes off.

    If as much grows back as comes off, the staged cuts never end.
    """
    m = work.measures
    (a_day, source), wait = growth(work), wait_days(m)
    back = a_day * wait
    if len(way_down(m).heights) < 2 or formulae.comes_down(m.set_height_mm, back):
        return
    mend, edit = _slower(m, a_day)
    yield Breach(
        field="measures.set_height_mm" if edit and edit.key == "set height" else "measures.stage_wait_days",
        what=f"{mm(back, 3)} grows back between two cuts",
        why=f"{mm(a_day, 3)} a day x {in_days(wait)}; cuts of a third then end at twice that, {mm(2 * back, 3)}, "
        f"and never reach {mm(m.set_height_mm, 4)}",
        mend=mend,
        edit=edit,
        severity=None if m.growth_mm_per_day is not None else CEILING[source.grade],
        reference=None if m.growth_mm_per_day is not None else source,
    )


def _slower(m: MowingMeasures, a_day: float) -> tuple[str, Edit | None]:
    """Return what brings the lawn down after all: a shorter wait, a higher set height, or both."""
    days = ceil(m.set_height_mm / 2 / a_day - DUST) - 1
    if days >= 2:
        return f"write `stage wait: {days} days`", Edit(key="stage wait", text=f"{days} days")
    set_to = min(floor(2 * a_day * wait_days(m) + DUST) + 1, ceil(way_down(m).heights[0] - DUST))
    if set_to <= HIGHEST_SET_MM:
        text = f"{set_to} mm"
        return f"write `set height: {text}` until it grows more slowly", Edit(key="set height", text=text)
    return f"write `stage wait: 2 days` and `set height: {floor(4 * a_day) + 1} mm` until it grows more slowly", None


@rule("mowing.growth-in-reason", Severity.ADVICE, by.GROWTH, applies="lawns that write growth a day")
def growth_in_reason(work: T) -> Iterator[Breach]:
    """Growth a day is within what lawns do.

    A fed summer lawn grows about 2 to 6 mm a day; far from that the measure is likely a slip.
    """
    a_day = work.measures.growth_mm_per_day
    if a_day is None or SLOWEST <= a_day <= FASTEST:
        return
    yield Breach(
        field="measures.growth_mm_per_day",
        what=f"{mm(a_day, 3)} of growth a day",
        why="a fed summer lawn grows about 2 to 6 mm a day",
        mend="measure it over a week, and write it as mm a day, such as `growth: 4 mm/day`",
        edit=Edit(key="growth", text="4 mm/day"),
    )


RULES: tuple[Rule[MowingMeasures], ...] = (
    one_third,
    lower_than_it_stands,
    not_below_set_height,
    stages_apart,
    lawn_keeps_up,
    growth_in_reason,
    *GRASSES,
    *CONDITIONS,
)
