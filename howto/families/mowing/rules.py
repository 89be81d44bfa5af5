"""The rules of mowing: today's cut and the way down, then grasses and heights, then conditions."""

from collections.abc import Iterator
from math import ceil, floor

from howto.families.mowing import formulae
from howto.families.mowing import references as by
from howto.families.mowing.lawn import THIRD, T, first_cut, growth, standing, wait_days, way_down
from howto.families.mowing.measures import HIGHEST_SET_MM, TALLEST_MM, MowingMeasures
from howto.families.mowing.mends import rewritten
from howto.families.mowing.rules_conditions import CONDITIONS
from howto.families.mowing.rules_grasses import GRASSES
from howto.findings import Severity
from howto.model.family import Breach, Edit, Limit, Rule, outside, rule
from howto.model.reference import CEILING, GEOMETRY
from howto.quantities.amounts import Count, Range, bare, mm, percent, qty

STAGE_WAIT = Limit(unit="days", low=2, reference=by.WAIT)
USUAL = Range(2, 6, "mm")  # a day; see references.GROWTH
GROWTH = Limit(unit="mm/day", low=USUAL.low / 10, high=USUAL.high * 2, reference=by.GROWTH)
DUST = 1e-3  # days or mm


@rule(
    "mowing.one-third",
    Severity.ERROR,
    by.UC_AMOUNT,
    by.CORNELL,
    applies="lawns that write today's cut and how high they stand",
    most=THIRD.most,
)
def one_third(work: T) -> Iterator[Breach]:
    """A cut takes no more than {most} of the standing height.

    A lawn feeds by its leaf; a deeper cut bares the soil. An overgrown lawn comes down in steps.
    """
    m = work.measures
    if not _too_deep(m) or m.cut_height_mm is None:
        return
    stands, cut = standing(m), m.cut_height_mm
    lowest = ceil(formulae.lowest_cut_mm(stands) - 1e-9)
    least = f"{m.set_height_mm if lowest < m.set_height_mm < stands else lowest:.12g} mm"
    down = formulae.heights_down_mm(stands, min(cut, m.set_height_mm))
    stages = f"{Count(len(down), 'cut', 'cuts')}: {', '.join(f'{mm(height, 3)}' for height in down)}"
    what = f"the cut takes {percent(formulae.share_removed(stands, cut) * 100)} of the height"
    taken = f"({bare(stands, 4)} - {bare(cut, 4)}) / {bare(stands, 4)}; the most is {THIRD.most}"
    why = f"{taken}. Bared soil dries, washes and lets weeds in. Growth left out, come down in {stages}"
    then = " today, and lower the rest in the later cuts"
    yield rewritten("cut_height_mm", least, what, why, then=then, also="measures.standing_height_mm")


def _too_deep(m: MowingMeasures) -> bool:
    """Tell whether today's cut takes more of what was measured than a cut may."""
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
    due = formulae.mow_at_mm(cut)
    what = f"the grass stands {mm(stands, 4)} and would be cut to {mm(cut, 4)}"
    worked = f"{mm(cut, 4)} x {bare(1 / formulae.KEPT)} = {mm(due, 3)}"
    why = f"a mower set above the grass takes nothing off; it is due at {worked}"
    first, text = "measure again, or leave it until it is due, and ", f"{min(floor(due + 1e-9), TALLEST_MM)} mm"
    also = "measures.cut_height_mm" if m.cut_height_mm is not None else "measures.set_height_mm"
    yield rewritten("standing_height_mm", text, what, why, first, also=also)


@rule("mowing.not-below-set-height", Severity.ERROR, GEOMETRY, applies="lawns that write today's cut")
def not_below_set_height(work: T) -> Iterator[Breach]:
    """A cut is not lower than the height the lawn is kept at.

    The set height is the lowest the lawn is kept at, so the cut and it cannot disagree.
    """
    m = work.measures
    if m.cut_height_mm is None or m.cut_height_mm >= m.set_height_mm - 1e-9 or _too_deep(m):
        return
    what = f"the cut at {mm(m.cut_height_mm, 4)} is below the set height of {mm(m.set_height_mm, 4)}"
    text = f"{m.set_height_mm:.12g} mm"
    yield rewritten("cut_height_mm", text, what, then=" or more", also="measures.set_height_mm")


@rule("mowing.stages-apart", Severity.WARNING, by.WAIT, applies="lawns that write the wait", least=STAGE_WAIT.least)
def stages_apart(work: T) -> Iterator[Breach]:
    """Two cuts on the way down stand at least {least} apart.

    Trade advice runs from a couple of days to four, so that the leaf recovers between two cuts.
    """
    yield from outside(STAGE_WAIT, work, "stage_wait_days", what="{found} between two cuts on the way down", why="")


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
    measured = m.growth_mm_per_day is not None
    yield Breach(
        field="measures.set_height_mm" if edit and edit.key == "set height" else "measures.stage_wait_days",
        what=f"{mm(back, 3)} grows back between two cuts",
        why=f"{mm(a_day, 3)} a day x {qty(wait, 'd', 3)}; cuts of {THIRD.most} then end at twice that, "
        f"{mm(2 * back, 3)}, and never reach {mm(m.set_height_mm, 4)}",
        mend=mend,
        edit=edit,
        severity=None if measured else CEILING[source.grade],
        reference=None if measured else source,
    )


def _slower(m: MowingMeasures, a_day: float) -> tuple[str, Edit | None]:
    """Return what brings the lawn down after all: a shorter wait, a higher set height, or both."""
    shortest = round(STAGE_WAIT.nearest(0))
    days = ceil(m.set_height_mm / 2 / a_day - DUST) - 1
    if days >= shortest:
        return f"write `stage wait: {days} days`", Edit(key="stage wait", text=f"{days} days")
    set_to = min(floor(2 * a_day * wait_days(m) + DUST) + 1, ceil(way_down(m).heights[0] - DUST))
    if set_to <= HIGHEST_SET_MM:
        text = f"{set_to} mm"
        return f"write `set height: {text}` until it grows more slowly", Edit(key="set height", text=text)
    both = f"`stage wait: {shortest} days` and `set height: {floor(2 * a_day * shortest) + 1} mm`"
    return f"write {both} until it grows more slowly", None


@rule("mowing.growth-in-reason", Severity.ADVICE, by.GROWTH, applies="lawns that write growth a day", usual=f"{USUAL}")
def growth_in_reason(work: T) -> Iterator[Breach]:
    """Growth a day is within what lawns do.

    A fed summer lawn grows about {usual} a day; far from that the measure is likely a slip.
    """
    a_day = work.measures.growth_mm_per_day
    if a_day is not None and not GROWTH.allows(a_day):
        mend = "measure it over a week, and write it as mm a day, such as `growth: 4 mm/day`"
        what, edit = f"{mm(a_day, 3)} of growth a day", Edit("4 mm/day", "growth")
        yield Breach("measures.growth_mm_per_day", what, "", mend, edit)


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
