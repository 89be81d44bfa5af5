"""How a hedge grows and when it is cut: what figures, rules and diagrams share."""

from datetime import date
from typing import NamedTuple

from howto.families.hedging import formulae
from howto.families.hedging import references as by
from howto.families.hedging.measures import HedgingMeasures
from howto.model.plants import Plant
from howto.model.reference import MEASURED, Reference
from howto.model.work import Work
from howto.seasons import growth_date, month_start, months_here, next_in_months

T = Work[HedgingMeasures]

GROWTH_MM_PER_YEAR = 375.0  # the middle of references.GROWTH
SIDE_SHARE = 0.5  # of the top's growth; see references.SIDE_GROWTH
FORMATIVE_YEARS = 2  # Royal Horticultural Society, profile 353: at planting and in the year after
BLEEDERS = frozenset({"Carpinus", "Betula", "Acer", "Juglans"})  # cut hard from mid-winter on, they bleed
CUT_BACK_SHARE = 0.5  # of new growth, where none is written: references.TRIMMING and references.ARIZONA
MOST_CUTS = 24  # a longer way up is not planned cut by cut: nobody knows the growth so far ahead


class Rise(NamedTuple):
    """One cut of a hedge on its way up: when, how high it stands then, where it is cut, shoots on a plant."""

    day: date
    stands_mm: float
    cut_mm: float
    shoots: int


class CutStage(NamedTuple):
    """One cut of a hedge on its way down: when, and to which height."""

    day: date
    cut_mm: float


def plant_of(work: T) -> Plant | None:
    """Return the plant the hedge is made of: the first one the book knows."""
    return next(iter(work.plants), None)


def growth(work: T) -> tuple[float, Reference]:
    """Return the top's growth in mm a year and who says so: the author, the plant book, or the nurseries."""
    m = work.measures
    if m.growth_mm_per_year is not None:
        return m.growth_mm_per_year, MEASURED
    return work.book_growth or (GROWTH_MM_PER_YEAR, by.GROWTH)


def side_growth(work: T) -> tuple[float, Reference]:
    """Return each side's growth in mm a year and who says so: half of the top's where none is written."""
    written = work.measures.side_growth_mm_per_year
    if written is not None:
        return written, MEASURED
    return growth(work)[0] * SIDE_SHARE, by.SIDE_GROWTH


def cut_back(work: T) -> float:
    """Return the share of new growth each cut takes back: the author's, else the usual one."""
    written = work.measures.cut_back_percent
    return CUT_BACK_SHARE if written is None else written / 100


def cut_months(work: T) -> tuple[tuple[int, ...] | None, Reference | None]:
    """Return the months here in which this hedge is cut, and who says so; None where nobody does.

    A young deciduous hedge is cut while it is bare, in its first two years; a renovation falls in mid-spring
    for evergreens and mid-winter for others; every other cut in the plant's own months.
    """
    m, plant, here = work.measures, plant_of(work), work.crew.hemisphere
    if plant is None:
        return None, None
    bleeds = plant.botanical.split()[0] in BLEEDERS
    young = m.job == "thicken" and in_formative_years(m)
    if m.job == "renovate" and plant.kind != "conifer":
        northern = (4,) if plant.kind == "evergreen" else (11, 12) if bleeds else (1,)
        return months_here(northern, here), by.BLEEDING if bleeds else by.RENOVATION
    if young and plant.group == "upright deciduous":
        return months_here((2, 3), here), by.TRIMMING
    if young and plant.group == "stocky deciduous":
        return months_here((11, 12) if bleeds else (12, 1, 2), here), by.BLEEDING if bleeds else by.TRIMMING
    if plant.clip_months is None:
        return None, None
    return plant.clip_months.at(here), plant.clip_months.reference("clipping months")


def in_formative_years(m: HedgingMeasures) -> bool:
    """Tell whether the hedge is known to be in its first years."""
    return m.year is not None and m.year <= FORMATIVE_YEARS


def next_cut(work: T, after: date, growth_mm: float) -> date:
    """Return the day the hedge has grown by so much (a year's growth at most), or the next one in its months.

    Where its months stand apart (June and August) and it is cut in each of them, the next one is due.
    """
    months = cut_months(work)[0] or ()
    starts = tuple(month for month in months if (month + 10) % 12 + 1 not in months)
    if len(starts) > 1 and (work.measures.cuts_a_year or 1) >= len(starts):
        return next_in_months(month_start(after, 1), starts)
    due = growth_date(after, growth_mm, growth(work)[0], work.crew.hemisphere) or after
    return next_in_months(due, months) if months else due


def rises(work: T, today: date) -> tuple[Rise, ...]:
    """Return the cuts of a young hedge from today's to the one at the finished height; empty if it hardly rises."""
    m = work.measures
    a_cut, start, shoots = growth(work)[0] / (m.cuts_a_year or 1), m.cut_mm, m.shoots or 1
    stands = m.standing_height_mm if m.standing_height_mm is not None else start
    gain = formulae.gain_mm(a_cut, cut_back(work))
    if start >= m.finished_height_mm or m.finished_height_mm - start > gain * MOST_CUTS:
        return ()
    day, cuts = today, int(stands > start)
    found = [Rise(day, stands, start, formulae.shoots_after(cuts, shoots))]
    for stood, cut in formulae.heights_up_mm(start, m.finished_height_mm, a_cut, cut_back(work)):
        day = next_cut(work, day, a_cut)
        cuts += stood > cut + formulae.DUST  # a hedge that just reaches the line is not cut
        found.append(Rise(day, stood, cut, formulae.shoots_after(cuts, shoots)))
    return tuple(found)


def stages(work: T, today: date) -> tuple[CutStage, ...]:
    """Return the yearly cuts that bring a hedge down to its finished height by thirds; empty if it needs none.

    What grows between them is trimmed to the last one's line.
    """
    m = work.measures
    if m.standing_height_mm is None or m.standing_height_mm <= m.finished_height_mm:
        return ()
    months = cut_months(work)[0] or tuple(range(1, 13))
    day = next_in_months(today, months)
    found: list[CutStage] = []
    for height in formulae.staged_heights(m.standing_height_mm, m.finished_height_mm):
        found.append(CutStage(day, height))
        day = next_in_months(date(day.year + 1, day.month, min(day.day, 28)), months)
    return tuple(found)
