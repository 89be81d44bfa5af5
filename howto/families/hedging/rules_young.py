"""The rules of young hedges: formative pruning by plant group, and height gained gradually."""

from collections.abc import Iterator
from math import ceil, floor

from howto.families.hedging import formulae
from howto.families.hedging.growing import FORMATIVE_YEARS, growth, plant_of
from howto.families.hedging.measures import HedgingMeasures
from howto.families.hedging.references import ARIZONA, TRIMMING
from howto.findings import Severity
from howto.model.family import SHARE, Breach, Edit, Limit, Rule, rule
from howto.model.plants import Plant
from howto.model.reference import PRACTICE
from howto.model.work import Work
from howto.quantities import show_number as num
from howto.quantities.amounts import bare, mm, percent

T = Work[HedgingMeasures]

AT_PLANTING = Limit(low=150, high=300, unit="mm", reference=TRIMMING)
NEW_GROWTH = Limit(low=0.33, high=0.5, unit=SHARE, of="of the new growth", reference=ARIZONA)
TOP_OFF = Limit(high=400, unit="mm", of="off the top in one cut", reference=PRACTICE)
VIGOROUS_MM_PER_YEAR = 400.0  # "fast" is about 400 mm a year or more: two hedge nurseries
LEAST_SHARE = 0.25  # a formative cut by a third may fall short by this much before it is spoken of


@rule(
    "hedging.formative-cut",
    Severity.WARNING,
    TRIMMING,
    ARIZONA,
    applies="young hedges of known plants in their first two years",
)
def formative_cut(work: T) -> Iterator[Breach]:
    """In its first two years a hedge is cut as its group asks: a third, or hard and then by half its growth.

    Upright deciduous plants are cut to 150 to 300 mm at planting and by half their growth a year on; upright
    evergreens and stocky deciduous plants by a third both times.
    """
    m, plant = work.measures, plant_of(work)
    stands = m.standing_height_mm
    if m.job != "thicken" or plant is None or stands is None or not 1 <= (m.year or 0) <= FORMATIVE_YEARS:
        return
    if plant.group == "upright deciduous":
        yield from _hard(m, plant, stands)
    elif plant.group in {"upright evergreen", "stocky deciduous"}:
        yield from _by_a_third(m, plant, stands)


def _hard(m: HedgingMeasures, plant: Plant, stands: float) -> Iterator[Breach]:
    if m.year == 1:
        if stands <= 150 or AT_PLANTING.allows(m.cut_mm):
            return
        near = 150 if m.cut_mm < 150 else min(300, floor(stands))
        why = "hawthorn, privet and their like are cut back to 150 to 300 mm at planting"
    else:
        last = m.last_cut_height_mm
        if last is None or stands <= last or 0.4 <= (stands - m.cut_mm) / (stands - last) <= 0.6:
            return
        near = ceil(last + (stands - last) / 2)
        why = f"in the second year half of the new growth stays: {bare(last, 5)} + ({bare(stands, 5)} - {bare(last, 5)}) / 2"
    yield _cut_at(m, plant, near, why)


def _by_a_third(m: HedgingMeasures, plant: Plant, stands: float) -> Iterator[Breach]:
    share = formulae.share_off(stands, m.cut_mm)
    if m.cut_mm > stands or share >= LEAST_SHARE - 1e-9:
        return
    least = ceil(formulae.lowest_cut_mm(stands) - 1e-9)
    why = f"{bare(stands, 5)} x 2/3 = {mm(least, 5)}: a third of stems and sides comes off at planting and a year on"
    yield _cut_at(m, plant, least, why)


def _cut_at(m: HedgingMeasures, plant: Plant, height: float, why: str) -> Breach:
    text = f"{num(height, 6)} mm"
    return Breach(
        field="measures.cut_height_mm" if m.cut_height_mm is not None else "measures.finished_height_mm",
        also="measures.year",
        what=f"{plant.botanical} in its year {m.year} is cut at {mm(m.cut_mm, 5)}",
        why=why,
        mend=f"write `cut height: {text}`",
        edit=Edit(key="cut height", text=text),
    )


@rule(
    "hedging.leave-the-leader",
    Severity.ERROR,
    TRIMMING,
    PRACTICE,
    applies="young hedges of plants whose leader is left",
)
def leave_the_leader(work: T) -> Iterator[Breach]:
    """Conifers and most evergreens keep their leader until the finished height; only the sides are trimmed.

    Yew, bay, laurel, cypress and their like rise on one leader; till then only their sides are trimmed.
    """
    m, plant = work.measures, plant_of(work)
    stands = m.standing_height_mm
    if m.job != "thicken" or plant is None or plant.group != "leave the leader" or stands is None:
        return
    keep = min(stands, m.finished_height_mm)
    if m.cut_mm >= keep - 1:  # a tape is read to the millimetre
        return
    vigorous = plant.kind != "conifer" and growth(work)[0] >= VIGOROUS_MM_PER_YEAR
    if vigorous and TOP_OFF.allows(stands - m.cut_mm):
        return
    text = f"{max(1, floor(keep))} mm"
    yield Breach(
        field="measures.cut_height_mm",
        also="measures.standing_height_mm",
        what=f"the leader of {plant.botanical} is cut at {mm(m.cut_mm, 5)}",
        why=f"it is stopped at the finished height, {mm(m.finished_height_mm, 5)}, and tied to a cane till then; "
        "only a vigorous broad-leaved evergreen may lose up to 400 mm of its top",
        mend=f"write `cut height: {text}`, and trim the sides only",
        edit=Edit(key="cut height", text=text),
        severity=None if plant.kind == "conifer" else Severity.WARNING,
    )


@rule("hedging.top-off", Severity.WARNING, PRACTICE, applies="young evergreen hedges")
def top_off(work: T) -> Iterator[Breach]:
    """One formative cut takes at most 400 mm off the top of an evergreen.

    A vigorous evergreen young hedge takes 300 to 400 mm off its top in one formative cut without harm.
    """
    m, plant = work.measures, plant_of(work)
    stands = m.standing_height_mm
    if m.job != "thicken" or plant is None or plant.kind != "evergreen" or stands is None:
        return
    if plant.group == "leave the leader":
        return  # leave_the_leader says it
    if plant.group == "upright deciduous" and (m.year or 9) <= FORMATIVE_YEARS:
        return  # privet, cut like hawthorn
    off = stands - m.cut_mm
    if TOP_OFF.allows(off) or formulae.share_off(stands, m.cut_mm) > 1 / 3 + 1e-9:
        return
    text = f"{ceil(stands - 400)} mm"
    yield Breach(
        field="measures.cut_height_mm" if m.cut_height_mm is not None else "measures.finished_height_mm",
        also="measures.standing_height_mm",
        what=f"{mm(off, 4)} comes off the top in one cut",
        why=f"{bare(stands, 5)} - {bare(m.cut_mm, 5)}; a vigorous young evergreen takes 300 to 400 mm without harm",
        mend=f"write `cut height: {text}`",
        edit=Edit(key="cut height", text=text),
    )


@rule(
    "hedging.topped-as-it-rises",
    Severity.WARNING,
    ARIZONA,
    PRACTICE,
    applies="young hedges that were never cut and stand at their finished height",
)
def topped_as_it_rises(work: T) -> Iterator[Breach]:
    """A young hedge is topped as it rises, and not left to run to its full height first.

    A cut shoot makes two, those two make four; never wait for full height before the first cut.
    """
    m = work.measures
    stands, plant = m.standing_height_mm, plant_of(work)
    if m.job != "thicken" or stands is None or m.last_cut_height_mm is not None:
        return
    if (plant and plant.group == "leave the leader") or stands < m.finished_height_mm:
        return
    least = ceil(formulae.lowest_cut_mm(stands) - 1e-9)
    if m.cut_mm < m.finished_height_mm or least >= m.finished_height_mm:
        return
    yield Breach(
        field="measures.standing_height_mm",
        also="measures.finished_height_mm",
        what=f"the hedge has run up to {mm(stands, 5)} without a cut",
        why="shoots double at each cut; one that was never cut is as thin at the foot as on the day it was planted",
        mend=f"write `cut height: {least} mm`, and let it rise again from there",
        edit=Edit(key="cut height", text=f"{least} mm"),
    )


@rule(
    "hedging.cut-back-growth",
    Severity.WARNING,
    ARIZONA,
    TRIMMING,
    applies="young hedges that write what each cut takes back",
)
def cut_back_growth(work: T) -> Iterator[Breach]:
    """Each cut of a young hedge takes back a third to a half of its new growth.

    Half of the new growth goes in each of the first years, a third where the plant is stocky.
    """
    m = work.measures
    back = m.cut_back_percent
    if m.job != "thicken" or back is None or NEW_GROWTH.allows(back / 100):
        return
    text = "50 %" if back > 50 else "1/3"
    lost = "the hedge hardly rises" if back > 50 else "shoots stay few and long"
    yield Breach(
        field="measures.cut_back_percent",
        what=f"each cut takes back {percent(back)} of the new growth",
        why=f"a third to a half is usual; at {percent(back)} {lost}",
        mend=f"write `cut back: {text}`",
        edit=Edit(key="cut back", text=text),
    )


YOUNG: tuple[Rule[HedgingMeasures], ...] = (
    formative_cut,
    leave_the_leader,
    top_off,
    topped_as_it_rises,
    cut_back_growth,
)
