"""The rules of soil work that look at chemistry, drainage and the state of the ground."""

from collections.abc import Iterator

from howto.families.soil import formulae
from howto.families.soil import references as by
from howto.families.soil.figures import GOOD_DRAINAGE, T
from howto.families.soil.measures import USUAL_HOLE_MM, SoilMeasures
from howto.families.soil.mends import rewritten
from howto.findings import Severity
from howto.model.family import Breach, Edit, Limit, Rule, line_wanted, rule, typed
from howto.model.prose import plain
from howto.model.reference import GEOMETRY
from howto.quantities import round_up
from howto.quantities.amounts import bare, mm, qty

ACID = 6.0  # below it a test may ask for lime, see references.LIME
PH = Limit(unit="", low=ACID, high=7.5, reference=by.LIME)
TAPE_MM = 1.0  # a tape in a hole is read to a millimetre
A_HOLE = f"{mm(USUAL_HOLE_MM)}"


@rule("soil.lime-by-test", Severity.ERROR, by.LIME, applies="work that limes", ph=PH)
def lime_by_test(work: T) -> Iterator[Breach]:
    """Lime goes on only when a soil test asks for it.

    Lime is a cure for acid soil, and only a test shows acid soil; most plants are happy from pH {ph}.
    """
    m = work.measures
    if not m.lime or (m.soil_test and m.ph is not None and m.ph < ACID):
        return
    shown = "no soil test is written" if not m.soil_test else "the test gives no pH"
    if m.soil_test and m.ph is not None:
        shown = f"the test shows pH {bare(m.ph)}"
    what, why = "lime without a test that asks for it", f"{shown}; most plants are happy from pH {PH}"
    then = "; to lime all the same, send a sample and write `soil test: yes` and its `ph:`"
    yield rewritten("lime", "no", what, why, then=then)


@rule("soil.gypsum-for-sodic", Severity.ERROR, by.LIME, applies="work that spreads gypsum")
def gypsum_for_sodic(work: T) -> Iterator[Breach]:
    """Gypsum goes on only where a test calls the soil sodic.

    Gypsum treats sodic soil; on other clays it does little, and it does not change pH.
    """
    if work.measures.gypsum and not work.measures.sodic:
        yield rewritten("gypsum", "no", "gypsum on soil that no test calls sodic")


@rule("soil.ph-in-reason", Severity.ADVICE, by.LIME, applies="work that writes the pH", ph=PH)
def ph_in_reason(work: T) -> Iterator[Breach]:
    """Soil from pH {ph} suits most plants; outside that, plants are chosen for it.

    Most plants are happy from pH {ph}; outside it, choose plants for the soil before soil for the plants.
    """
    m = work.measures
    if m.ph is None or PH.allows(m.ph) or (m.lime and m.soil_test and m.ph < ACID):
        return
    mend = "choose plants that like it; or treat the soil, test again, and write what it then is, such as `ph: 6.5`"
    yield Breach("measures.ph", f"pH {bare(m.ph)}", "", mend, Edit("6.5", "ph"))


@rule("soil.hole-deep-enough", Severity.ERROR, GEOMETRY, applies="work that writes a drainage test", hole=A_HOLE)
def hole_deep_enough(work: T) -> Iterator[Breach]:
    """Water in a test hole cannot fall further than the hole is deep.

    A deeper fall is a slip of the tape or of the pen; a hole of {hole} is meant where no depth is written.
    """
    m = work.measures
    if m.drained_mm is None or m.drained_mm <= m.hole_mm + TAPE_MM:
        return
    field = "measures.test_hole_mm" if m.test_hole_mm is not None else "measures.drained_mm"
    what, text = (
        f"the water fell {mm(m.drained_mm, 3)} in a hole {mm(m.hole_mm, 3)} deep",
        typed(round_up(m.drained_mm, 1), "mm"),
    )
    mend = f"measure both again, and write the depth of the hole, such as `test hole: {text}`"
    yield Breach(field, what, "", mend, Edit(text, "test hole"), "measures.drained_mm")


@rule(
    "soil.drains",
    Severity.ERROR,
    by.PERCOLATION,
    by.DRAINAGE,
    applies="work that writes a drainage test",
    good=f"{GOOD_DRAINAGE}",
    hole=A_HOLE,
)
def drains(work: T) -> Iterator[Breach]:
    """A full test hole is empty within a day.

    Drainage of {good} is good; a hole of {hole} that still holds water after a day is too slow.
    """
    m = work.measures
    if m.drained_mm is None or m.drained_in_hours is None:
        return
    rate, least = formulae.drainage_mm_per_h(m.drained_mm, m.drained_in_hours), formulae.slowest_mm_per_h(m.hole_mm)
    if rate >= least * (1 - 1e-9):
        return
    hole, needs = mm(m.hole_mm, 3), qty(least, "mm/h", 3)
    shown = f"{mm(m.drained_mm, 3)} / {qty(m.drained_in_hours, 'h', 3)}"
    needed = f"a hole of {hole} needs {hole} / {qty(formulae.HOURS_A_DAY, 'h', 3)} = {needs}"
    what, also = f"the hole drains at {qty(rate, 'mm/h', 3)}", "measures.drained_in_hours"
    why = f"{shown}; to be empty in a day {needed}, and {GOOD_DRAINAGE} is good"
    first = "drain it or raise the bed, test again, and write what it then does: "
    text = typed(round_up(m.drained_in_hours * least, 0.1), "mm")
    mend = f"{first}`drained: {text}` or more"
    yield Breach("measures.drained_mm", what, why, mend, Edit(text, "drained"), also)


@rule("soil.drainage-tested", Severity.WARNING, by.DRAINAGE, by.PERCOLATION, applies="new beds", hole=A_HOLE)
def drainage_tested(work: T) -> Iterator[Breach]:
    """A new bed's drainage is tested before it is planted.

    A hole of {hole} that still holds water after a day is too slow for most roots.
    """
    m = work.measures
    if m.work != "new bed" or m.drained_mm is not None:
        return
    said = " ".join(f"{step.title} {plain(step.text)}" for step in work.technique.steps).casefold()
    if "drain" in said or "test hole" in said:
        return
    test = f"Dig a hole {typed(USUAL_HOLE_MM, 'mm')} deep, fill it, and fill it again next day; watch it for a day."
    line, what = f"1. **Test the drainage.** {test}", "no step tests whether the new bed drains"
    yield line_wanted("Steps", line, what=what, why="")


@rule("soil.not-wet-or-frozen", Severity.ADVICE, by.WET_SOIL, applies="work that says the ground is soaked or frozen")
def not_wet_or_frozen(work: T) -> Iterator[Breach]:
    """Soil is not dug or walked on when it is soaked or frozen.

    Soil worked wet or frozen loses its crumb and sets hard.
    """
    if work.measures.wet_or_frozen:
        first = "wait until a handful crumbles, and "
        yield rewritten("wet_or_frozen", "no", "the ground is soaked or frozen", first=first)


GROUND: tuple[Rule[SoilMeasures], ...] = (
    lime_by_test,
    gypsum_for_sodic,
    ph_in_reason,
    hole_deep_enough,
    drains,
    drainage_tested,
    not_wet_or_frozen,
)
