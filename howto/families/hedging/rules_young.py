"""The rules of young hedges: formative pruning by plant group, and height gained gradually."""

from collections.abc import Iterator
from fractions import Fraction

from howto.families.hedging import formulae
from howto.families.hedging import references as by
from howto.families.hedging.formulae import MOST, share_off
from howto.families.hedging.growing import growth, in_formative_years, plant_of
from howto.families.hedging.measures import HedgingMeasures
from howto.families.hedging.parts import to_cut, to_write, whole_mm
from howto.findings import Severity
from howto.model.family import SHARE, Breach, Limit, Rule, outside, rule
from howto.model.plants import Plant
from howto.model.reference import PRACTICE
from howto.model.work import Work
from howto.quantities import round_up
from howto.quantities.amounts import Name, Share, Words, bare, mm

T = Work[HedgingMeasures]

SHORT_MM = 150.0  # a plant no taller is not cut at planting: references.TRIMMING
AT_PLANTING = Limit(low=SHORT_MM, high=300, unit="mm", reference=by.TRIMMING)
GROWTH_OFF = Fraction(1, 2)  # of a year's growth, in the second year: references.TRIMMING
NEAR_ENOUGH = Limit(low=0.4, high=0.6, unit=SHARE, reference=by.TRIMMING)  # ours: that, as shears cut
NEW_GROWTH = Limit(low=33, high=50, unit="%", of="of the new growth", reference=by.ARIZONA)
TOP_OFF = Limit(high=400, unit="mm", of="off the top in one cut", reference=PRACTICE)
VIGOROUS_MM_PER_YEAR = 400.0  # "fast" is about so much or more: two hedge nurseries
LEAST_SHARE = 0.25  # a formative cut may fall short of its third by this much before it is spoken of
TAPE_MM = 1.0  # a tape is read to this


@rule(
    "hedging.formative-cut",
    Severity.WARNING,
    by.TRIMMING,
    by.ARIZONA,
    applies="young hedges of known plants in their first two years",
    hard=AT_PLANTING,
    third=f"{Share(float(MOST))}",
    grown=f"{Share(float(GROWTH_OFF))}",
)
def formative_cut(work: T) -> Iterator[Breach]:
    """In its first two years a hedge is cut as its group asks: {third}, or hard and then by {grown} its growth.

    Upright deciduous plants are cut to {hard} at planting and by {grown} their growth a year on; upright
    evergreens and stocky deciduous plants by {third} both times.
    """
    m, plant, stands = work.measures, plant_of(work), work.measures.standing_height_mm
    if m.job != "thicken" or plant is None or stands is None or not in_formative_years(m):
        return
    if plant.group == "upright deciduous":
        yield from _at_planting(m, plant, stands) if m.year == 1 else _a_year_on(m, plant, stands)
    elif plant.group in {"upright evergreen", "stocky deciduous"}:
        yield from _by_a_third(m, plant, stands)


def _at_planting(m: HedgingMeasures, plant: Plant, stands: float) -> Iterator[Breach]:
    if stands > SHORT_MM and not AT_PLANTING.allows(m.cut_mm):
        height = whole_mm(min(AT_PLANTING.nearest(m.cut_mm), stands), down=True)
        yield _cut_at(m, plant, height, f"hawthorn, privet and their like are cut back to {AT_PLANTING} at planting")


def _a_year_on(m: HedgingMeasures, plant: Plant, stands: float) -> Iterator[Breach]:
    last = m.last_cut_height_mm
    if last is None or stands <= last or NEAR_ENOUGH.allows((stands - m.cut_mm) / (stands - last)):
        return
    share, grown = Share(float(GROWTH_OFF)), f"({bare(stands, 5)} - {bare(last, 5)})"
    why = f"in the second year {share} of the new growth stays: {bare(last, 5)} + {grown} x {GROWTH_OFF}"
    yield _cut_at(m, plant, whole_mm(last + (stands - last) * GROWTH_OFF), why)


def _by_a_third(m: HedgingMeasures, plant: Plant, stands: float) -> Iterator[Breach]:
    if m.cut_mm > stands or share_off(stands, m.cut_mm) >= LEAST_SHARE - formulae.DUST:
        return
    least, third = formulae.lowest_cut_mm(stands), Share(float(MOST))
    why = f"{third} of stems and sides comes off at planting and a year on"
    yield _cut_at(m, plant, whole_mm(least), f"{bare(stands, 5)} x {1 - MOST} = {mm(least, 5)}: {why}")


def _cut_at(m: HedgingMeasures, plant: Plant, height: str, why: Words) -> Breach:
    what = f"{Name(plant.botanical)} in its year {bare(m.year or 0)} is cut at {mm(m.cut_mm, 5)}"
    return to_cut(m, height, what, why, also="measures.year")


@rule(
    "hedging.leave-the-leader",
    Severity.ERROR,
    by.TRIMMING,
    PRACTICE,
    applies="young hedges of plants whose leader is left",
)
def leave_the_leader(work: T) -> Iterator[Breach]:
    """Conifers and most evergreens keep their leader until the finished height; only the sides are trimmed.

    Yew, bay, laurel, cypress and their like rise on one leader; till then only their sides are trimmed.
    """
    m, plant, stands = work.measures, plant_of(work), work.measures.standing_height_mm
    if m.job != "thicken" or plant is None or plant.group != "leave the leader" or stands is None:
        return
    keep = min(stands, m.finished_height_mm)
    vigorous = plant.kind != "conifer" and growth(work)[0] >= VIGOROUS_MM_PER_YEAR
    if m.cut_mm >= keep - TAPE_MM or (vigorous and TOP_OFF.allows(stands - m.cut_mm)):
        return
    yield to_write(
        "cut_height_mm",
        whole_mm(keep, down=True),
        f"the leader of {Name(plant.botanical)} is cut at {mm(m.cut_mm, 5)}",
        f"it is stopped at the finished height, {mm(m.finished_height_mm, 5)}, and tied to a cane till then; "
        f"only a vigorous broad-leaved evergreen may lose up to {TOP_OFF.most} of its top",
        then=", and trim the sides only",
        also="measures.standing_height_mm",
        severity=None if plant.kind == "conifer" else Severity.WARNING,
    )


@rule("hedging.top-off", Severity.WARNING, PRACTICE, applies="young evergreen hedges", limit=TOP_OFF)
def top_off(work: T) -> Iterator[Breach]:
    """One formative cut takes at most {limit.most} off the top of an evergreen.

    A vigorous young evergreen loses up to {limit.most} of its top in one formative cut without harm.
    """
    m, plant, stands = work.measures, plant_of(work), work.measures.standing_height_mm
    if m.job != "thicken" or plant is None or plant.kind != "evergreen" or stands is None:
        return
    if plant.group == "leave the leader":
        return  # leave_the_leader says it
    if plant.group == "upright deciduous" and in_formative_years(m):
        return  # privet, cut like hawthorn
    off = stands - m.cut_mm
    if TOP_OFF.allows(off) or share_off(stands, m.cut_mm) > MOST + formulae.DUST:
        return  # third_of_height says what is over its share
    yield to_cut(
        m,
        whole_mm(stands - TOP_OFF.nearest(off)),
        f"{mm(off, 4)} comes off the top in one cut",
        f"{bare(stands, 5)} - {bare(m.cut_mm, 5)}; a vigorous young evergreen takes up to {TOP_OFF.most} without harm",
        also="measures.standing_height_mm",
    )


@rule(
    "hedging.topped-as-it-rises",
    Severity.WARNING,
    by.ARIZONA,
    PRACTICE,
    applies="young hedges that were never cut and stand at their finished height",
)
def topped_as_it_rises(work: T) -> Iterator[Breach]:
    """A young hedge is topped as it rises, and not left to run to its full height first.

    Shoots double at each cut; a hedge that was never cut is as thin at the foot as on the day it was planted.
    """
    m, plant, stands = work.measures, plant_of(work), work.measures.standing_height_mm
    if m.job != "thicken" or stands is None or m.last_cut_height_mm is not None:
        return
    if (plant and plant.group == "leave the leader") or stands < m.finished_height_mm:
        return
    least = round_up(formulae.lowest_cut_mm(stands), 1)
    if m.finished_height_mm <= m.cut_mm and least < m.finished_height_mm:
        yield to_write(
            "standing_height_mm",
            whole_mm(least),
            f"the hedge has run up to {mm(stands, 5)} without a cut",
            key="cut height",
            then=", and let it rise again from there",
            also="measures.finished_height_mm",
        )


@rule(
    "hedging.cut-back-growth",
    Severity.WARNING,
    by.ARIZONA,
    by.TRIMMING,
    applies="young hedges that write what each cut takes back",
    limit=NEW_GROWTH,
)
def cut_back_growth(work: T) -> Iterator[Breach]:
    """Each cut of a young hedge takes back {limit}.

    {limit.most} of the new growth goes in each of the first years, {limit.least} where the plant is stocky.
    """
    back = work.measures.cut_back_percent
    if work.measures.job == "thicken" and back is not None:
        lost = "the hedge hardly rises" if back > NEW_GROWTH.nearest(back) else "shoots stay few and long"
        what, why = "each cut takes back {found} of the new growth", f"{{limit}} is usual; at {{found}} {lost}"
        yield from outside(NEW_GROWTH, work, "cut_back_percent", what=what, why=why)


YOUNG: tuple[Rule[HedgingMeasures], ...] = (
    formative_cut, leave_the_leader, top_off, topped_as_it_rises, cut_back_growth,
)  # fmt: skip
