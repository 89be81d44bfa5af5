"""The rules of soil work that look at chemistry, drainage and the state of the ground."""

from collections.abc import Iterator
from typing import Final

from howto.families.soil import formulae
from howto.families.soil import references as by
from howto.families.soil.measures import SoilMeasures
from howto.findings import Severity
from howto.model.family import Breach, Edit, Limit, Rule, line_wanted, rule
from howto.model.prose import plain
from howto.model.reference import GEOMETRY
from howto.model.work import Work
from howto.quantities import round_up
from howto.quantities import show_number as num
from howto.quantities.amounts import bare, mm, qty

T = Work[SoilMeasures]

ACID: Final = 6.0  # below it a test may ask for lime, see references.LIME
PH = Limit(low=ACID, high=7.5, unit="", of="pH", reference=by.LIME)
TAPE_MM = 1.0  # a tape in a hole is read to a millimetre


@rule("soil.lime-by-test", Severity.ERROR, by.LIME, applies="work that limes")
def lime_by_test(work: T) -> Iterator[Breach]:
    """Lime goes on only when a soil test asks for it.

    Lime is a cure for acid soil, and only a test shows acid soil; most plants are happy from pH 6 to 7.5.
    """
    m = work.measures
    if not m.lime or (m.soil_test and m.ph is not None and m.ph < ACID):
        return
    why = "no soil test is written" if not m.soil_test else "the test gives no pH"
    if m.soil_test and m.ph is not None:
        why = f"the test shows pH {bare(m.ph)}"
    yield Breach(
        field="measures.lime",
        what="lime without a test that asks for it",
        why=f"{why}; most plants are happy from pH 6 to 7.5",
        mend="write `lime: no`; to lime all the same, send a sample and write `soil test: yes` and its `ph:`",
        edit=Edit(key="lime", text="no"),
    )


@rule("soil.gypsum-for-sodic", Severity.ERROR, by.LIME, applies="work that spreads gypsum")
def gypsum_for_sodic(work: T) -> Iterator[Breach]:
    """Gypsum goes on only where a test calls the soil sodic.

    Gypsum swaps sodium; where there is none to swap it is money spread on clay.
    """
    m = work.measures
    if not m.gypsum or m.sodic:
        return
    yield Breach(
        field="measures.gypsum",
        what="gypsum on soil that no test calls sodic",
        why="gypsum treats sodic soil; on other clays it does little, and it does not change pH",
        mend="write `gypsum: no`",
        edit=Edit(key="gypsum", text="no"),
    )


@rule("soil.ph-in-reason", Severity.ADVICE, by.LIME, applies="work that writes the pH")
def ph_in_reason(work: T) -> Iterator[Breach]:
    """Soil from pH 6 to 7.5 suits most plants; outside that, plants are chosen for it.

    Outside it, choose plants for the soil before soil for the plants.
    """
    m = work.measures
    if m.ph is None or PH.allows(m.ph) or (m.lime and m.soil_test and m.ph < ACID):
        return
    yield Breach(
        field="measures.ph",
        what=f"pH {bare(m.ph)}",
        why="most plants are happy from 6 to 7.5",
        mend="choose plants that like it; or treat the soil, test again, and write what it then is, such as `ph: 6.5`",
        edit=Edit(key="ph", text="6.5"),
    )


@rule("soil.hole-deep-enough", Severity.ERROR, GEOMETRY, applies="work that writes a drainage test")
def hole_deep_enough(work: T) -> Iterator[Breach]:
    """Water in a test hole cannot fall further than the hole is deep.

    A fall deeper than the hole is a slip of the tape or of the pen, and the rate made from it is wrong.
    """
    m = work.measures
    if m.drained_mm is None or m.drained_mm <= m.hole_mm + TAPE_MM:
        return
    text = f"{num(round_up(m.drained_mm, 1), 6)} mm"
    yield Breach(
        field="measures.test_hole_mm" if m.test_hole_mm is not None else "measures.drained_mm",
        also="measures.drained_mm",
        what=f"the water fell {mm(m.drained_mm, 3)} in a hole {mm(m.hole_mm, 3)} deep",
        why=f"{bare(m.drained_mm)} is more than {bare(m.hole_mm)}; 300 mm is meant where no depth is written",
        mend=f"measure both again, and write the depth of the hole, such as `test hole: {text}`",
        edit=Edit(key="test hole", text=text),
    )


@rule("soil.drains", Severity.ERROR, by.PERCOLATION, by.DRAINAGE, applies="work that writes a drainage test")
def drains(work: T) -> Iterator[Breach]:
    """A full test hole is empty within a day.

    25 to 50 mm an hour is good; a hole of 300 or 450 mm that still holds water after 24 hours is too slow.
    """
    m = work.measures
    if m.drained_mm is None or m.drained_in_hours is None:
        return
    rate, least = formulae.drainage_mm_per_h(m.drained_mm, m.drained_in_hours), formulae.slowest_mm_per_h(m.hole_mm)
    if rate >= least * (1 - 1e-9):
        return
    text = f"{num(round_up(m.drained_in_hours * least, 0.1), 6)} mm"
    yield Breach(
        field="measures.drained_mm",
        also="measures.drained_in_hours",
        what=f"the hole drains at {qty(rate, 'mm/h', 3)}",
        why=f"{mm(m.drained_mm, 3)} / {qty(m.drained_in_hours, 'h', 3)}; to be empty in a day a hole of {mm(m.hole_mm, 3)} "
        f"needs {bare(m.hole_mm)} / 24 = {qty(least, 'mm/h', 3)}, and 25 to 50 is good",
        mend=f"drain it or raise the bed, test again, and write what it then does: `drained: {text}` or more",
        edit=Edit(key="drained", text=text),
    )


@rule("soil.drainage-tested", Severity.WARNING, by.DRAINAGE, by.PERCOLATION, applies="new beds")
def drainage_tested(work: T) -> Iterator[Breach]:
    """A new bed's drainage is tested before it is planted.

    A hole, two fillings and a day tell more than any book of soils.
    """
    m = work.measures
    if m.work != "new bed" or m.drained_mm is not None:
        return
    said = " ".join(f"{step.title} {plain(step.text)}" for step in work.technique.steps).casefold()
    if "drain" in said or "test hole" in said:
        return
    line = "1. **Test the drainage.** Dig a hole 300 mm deep, fill it, and fill it again next day; watch it for a day."
    yield line_wanted(
        "Steps",
        line,
        what="no step tests whether the new bed drains",
        why="a hole of 300 mm that still holds water after a day is too slow for most roots",
    )


@rule("soil.not-wet-or-frozen", Severity.ADVICE, by.WET_SOIL, applies="work that says the ground is soaked or frozen")
def not_wet_or_frozen(work: T) -> Iterator[Breach]:
    """Soil is not dug or walked on when it is soaked or frozen.

    Wet clay smears under a boot and dries as brick.
    """
    if not work.measures.wet_or_frozen:
        return
    yield Breach(
        field="measures.wet_or_frozen",
        what="the ground is soaked or frozen",
        why="soil worked wet or frozen loses its crumb and sets hard",
        mend="wait until a handful crumbles, and write `wet or frozen: no`",
        edit=Edit(key="wet or frozen", text="no"),
    )


GROUND: tuple[Rule[SoilMeasures], ...] = (
    lime_by_test,
    gypsum_for_sodic,
    ph_in_reason,
    hole_deep_enough,
    drains,
    drainage_tested,
    not_wet_or_frozen,
)
