"""The rules of site and season: nests, months, spacing, tools and lines."""

from collections.abc import Iterator
from math import ceil, floor
from typing import NamedTuple

from howto.families.hedging import formulae
from howto.families.hedging import references as by
from howto.families.hedging.growing import cut_months, plant_of
from howto.families.hedging.measures import HedgingMeasures
from howto.findings import Severity
from howto.model.family import Breach, Edit, Limit, Rule, line_wanted, rule
from howto.model.reference import Grade
from howto.model.wording import words_of_cautions, words_of_steps
from howto.model.work import Work
from howto.quantities.amounts import bare, mm, months_named
from howto.seasons import month_list, months_of

T = Work[HedgingMeasures]

UK = ("england", "wales", "scotland", "northern ireland")
SPRING_TO_AUGUST = (3, 4, 5, 6, 7, 8)
AUGUST_TO_JANUARY = (8, 9, 10, 11, 12, 1)
DOUBLE = Limit(low=5, unit="", of="plants a metre", reference=by.SPACING)
FARM = Limit(low=6, unit="", of="plants a metre", reference=by.GRANT)
GAP = Limit(low=400, high=450, unit="mm", reference=by.GRANT)
LINES = ("string", "stretch", "laser", "builder's line", "level line", "garden line", "chalk line")
UPWARD = ("bottom up", "upward", "from the foot", "from the bottom", "from below")
BIG_LEAVES = ("Prunus laurocerasus", "Prunus lusitanica", "Laurus nobilis", "Aucuba japonica")


class Nesting(NamedTuple):
    """The months in which birds nest somewhere, and whether a law that was read protects their nests there."""

    months: tuple[int, ...]
    law: bool


def nesting(work: T) -> Nesting:
    """Return the main nesting months where the hedge stands."""
    country = work.measures.country
    if country in UK:
        return Nesting(SPRING_TO_AUGUST, law=True)
    if country == "ireland":
        return Nesting(SPRING_TO_AUGUST, law=True)
    if country in ("australia", "new zealand"):
        return Nesting(AUGUST_TO_JANUARY, law=False)
    south = work.crew.hemisphere == "south" and country != "united states"
    return Nesting(AUGUST_TO_JANUARY if south else SPRING_TO_AUGUST, law=False)


def _written_months(work: T) -> tuple[int, ...]:
    """Return the months of the season; all twelve where none is written."""
    found = months_of(work.technique.season, work.crew.hemisphere) if work.technique.season else None
    return found or tuple(range(1, 13))


@rule(
    "hedging.nests",
    Severity.ERROR,
    by.NESTS_UK,
    by.NESTS_IRELAND,
    applies="hedges in the UK and Ireland that are cut from March to August, or without a season",
)
def nests(work: T) -> Iterator[Breach]:
    """Where the law protects nests, a hedge cut in the nesting season is looked through first, and the card says so.

    A nest in use or being built is protected in the UK, with no dates in the Act, and in Ireland; the main
    season is about March to August.
    """
    if nesting(work).law:
        yield from _unsaid_nests(work, "; to harm a nest in use or being built is an offence there")


@rule(
    "hedging.nests-elsewhere",
    Severity.ADVICE,
    by.NESTS_ELSEWHERE,
    applies="hedges anywhere else that are cut in those months, or without a season",
)
def nests_elsewhere(work: T) -> Iterator[Breach]:
    """Everywhere else too a hedge cut while birds nest is looked through first, and the card says so.

    Birds nest mainly from March to August in the north and from August to January in the south; most places
    protect a nest in use.
    """
    if not nesting(work).law:
        yield from _unsaid_nests(work, "; look up the law of the place, and write `country:`")


def _unsaid_nests(work: T, after: str) -> Iterator[Breach]:
    where = nesting(work)
    shared = [month for month in where.months if month in _written_months(work)]
    words = words_of_cautions(work.technique.cautions).casefold()
    if not shared or "nest" in words:
        return
    line = "- **Nests.** Look through the hedge first, and leave it until the young have flown if a nest is in use."
    yield line_wanted(
        "Cautions",
        line,
        also="season" if work.technique.season else "",
        what="nothing tells the reader to look for nests",
        why=f"birds nest mainly from {months_named(where.months, 'to')}, and this work falls in {len(shared)} of those "
        f"months{after}",
    )


@rule("hedging.closed-season", Severity.ERROR, by.NESTS_FARM, applies="farm hedges in England")
def closed_farm(work: T) -> Iterator[Breach]:
    """Farm hedges in England are not cut from 1 March to 31 August.

    The law forbids cutting from 1 March to 31 August; garden hedges in England are exempt.
    """
    if work.measures.country == "england" and work.measures.farm_hedge is True:
        yield from _closed(work, "farm hedges in England are")


@rule("hedging.closed-season-ireland", Severity.ERROR, by.NESTS_IRELAND, applies="hedges in Ireland")
def closed_ireland(work: T) -> Iterator[Breach]:
    """Hedges in Ireland are not cut from 1 March to 31 August.

    The law forbids cutting hedges, ditches and uncultivated land from 1 March to 31 August.
    """
    if work.measures.country == "ireland":
        yield from _closed(work, "hedges in Ireland are")


def _closed(work: T, which: str) -> Iterator[Breach]:
    shared = [month for month in SPRING_TO_AUGUST if month in _written_months(work)]
    if not shared:
        return
    names = month_list(shared)
    yield Breach(
        field="season",
        also="measures.country",
        what=f"the season takes in {names}" if work.technique.season else "no season is written",
        why=f"{which} not cut from 1 March to 31 August",
        mend="write `season: September to February`",
        edit=Edit(key="season", text="September to February", top=True),
    )


@rule("hedging.clip-months", Severity.WARNING, by.TRIMMING, applies="hedges whose months are known")
def clip_months(work: T) -> Iterator[Breach]:
    """The season falls in months in which this hedge is cut.

    Shoots cut too late do not harden; bare young hedges are cut before the buds break; hornbeam bleeds from
    mid-winter on.
    """
    plant, (good, source) = plant_of(work), cut_months(work)
    if not work.technique.season or plant is None or not good or source is None:
        return
    written = months_of(work.technique.season, work.crew.hemisphere)
    if not written or set(written) & set(good):
        return
    names = month_list(good)
    yield Breach(
        field="season",
        what=f"{plant.botanical} is not cut in {work.technique.season}",
        why=f"for this job its months here are {names}",
        mend=f"write `season: {names}`",
        edit=Edit(key="season", text=names, top=True),
        severity=Severity.WARNING if source.grade in (Grade.A, Grade.B, Grade.C) else Severity.ADVICE,
        reference=source,
    )


@rule(
    "hedging.spacing", Severity.WARNING, by.SPACING, applies="single rows of plants whose spacing the plant book knows"
)
def spacing(work: T) -> Iterator[Breach]:
    """Plants of a single row stand close enough to knit and far enough apart to thrive.

    Too wide, the gaps stay open for years; too close, the plants starve one another.
    """
    m, plant = work.measures, plant_of(work)
    if m.spacing_mm is None or m.row_count != 1 or plant is None or plant.spacing_mm is None:
        return
    fact = plant.spacing_mm
    if fact.low - 1e-9 <= m.spacing_mm <= fact.high + 1e-9:
        return
    near = ceil(fact.low) if m.spacing_mm < fact.low else floor(fact.high)
    dense = formulae.plants_per_metre(m.spacing_mm)
    yield Breach(
        field="measures.spacing_mm",
        what=f"{plant.botanical} every {mm(m.spacing_mm, 4)}",
        why=f"1000 / {bare(m.spacing_mm, 4)} = {bare(dense)} plants a metre; its range is {bare(fact.low, 4)} to "
        f"{mm(fact.high, 4)}",
        mend=f"write `spacing: {near} mm`",
        edit=Edit(key="spacing", text=f"{near} mm"),
        severity=None if fact.grade in (Grade.A, Grade.B, Grade.C) else Severity.ADVICE,
        reference=fact.reference(f"spacing of {plant.botanical}"),
    )


@rule("hedging.double-row", Severity.WARNING, by.SPACING, applies="double rows")
def double_row(work: T) -> Iterator[Breach]:
    """A staggered double row holds at least 5 plants a metre.

    Nurseries set plants every 400 mm in two rows, which makes 5 a metre.
    """
    if work.measures.row_count > 1 and not _farm(work):
        yield from _thin(work, DOUBLE)


@rule("hedging.farm-row", Severity.ERROR, by.GRANT, applies="farm hedges in England")
def farm_row(work: T) -> Iterator[Breach]:
    """A native farm hedge in England holds at least 6 plants a metre.

    The English planting grant asks for a staggered double row with at least 6 plants a metre.
    """
    if _farm(work):
        yield from _thin(work, FARM)


def _farm(work: T) -> bool:
    return work.measures.farm_hedge is True and work.measures.country == "england"


def _thin(work: T, limit: Limit) -> Iterator[Breach]:
    m = work.measures
    if m.spacing_mm is None or limit.low is None:
        return
    found = formulae.plants_per_metre(m.spacing_mm, m.row_count)
    if limit.allows(found):
        return
    near = floor(formulae.spacing_for_mm(limit.low, m.row_count) + 1e-9)
    yield Breach(
        field="measures.spacing_mm",
        also="measures.rows" if m.rows else "",
        what=f"{bare(found)} plants a metre",
        why=f"{m.row_count} x 1000 / {bare(m.spacing_mm, 4)} = {bare(found)}; it wants {limit}",
        mend=f"write `spacing: {near} mm` or less",
        edit=Edit(key="spacing", text=f"{near} mm"),
    )


@rule(
    "hedging.row-gap",
    Severity.WARNING,
    by.GRANT,
    by.SPACING,
    applies="double rows that write the distance from row to row",
)
def row_gap(work: T) -> Iterator[Breach]:
    """The rows of a double hedge stand 400 to 450 mm apart.

    Nearer, the rows compete; further, a gap is left down the middle.
    """
    m = work.measures
    if m.row_count < 2 or m.row_gap_mm is None or GAP.allows(m.row_gap_mm):
        return
    near = 400 if m.row_gap_mm < 400 else 450
    yield Breach(
        field="measures.row_gap_mm",
        what=f"the rows stand {mm(m.row_gap_mm, 4)} apart",
        why="published plantings keep 400 mm (a government grant) to 450 mm (a nursery)",
        mend=f"write `row gap: {near} mm`",
        edit=Edit(key="row gap", text=f"{near} mm"),
    )


@rule("hedging.big-leaves", Severity.WARNING, by.TRIMMING, applies="laurel, bay and other large-leaved hedges")
def big_leaves(work: T) -> Iterator[Breach]:
    """Laurel, bay and other large leaves are cut with secateurs or hand shears, not a power trimmer.

    A power trimmer cuts large leaves in half, and the halves brown.
    """
    plant = next((each for each in work.plants if each.botanical in BIG_LEAVES), None)
    tools = " ".join(kit.name for kit in work.technique.tools).casefold()
    if plant is None or any(word in tools for word in ("secateurs", "pruner", "hand shears")):
        return
    line = "- Secateurs: sharp, for every leaf that a trimmer would tear"
    yield line_wanted(
        "Tools",
        line,
        what=f"no secateurs or hand shears are listed for {plant.botanical}",
        why="a power trimmer tears large leaves, and the torn halves brown",
    )


@rule("hedging.bottom-up", Severity.WARNING, by.HOW_TO_TRIM, applies="trims")
def bottom_up(work: T) -> Iterator[Breach]:
    """The sides are cut from the bottom up.

    Clippings fall clear of what is still to be cut.
    """
    said = words_of_steps(work.technique.steps).casefold()
    if work.measures.job != "trim" or any(word in said for word in UPWARD):
        return
    line = "1. **Cut the sides from the bottom up.** Sweep upwards along the line, so that clippings fall clear."
    yield line_wanted(
        "Steps",
        line,
        field=f"steps[{len(work.technique.steps) - 1}]" if work.technique.steps else "steps",
        what="no step says that the sides are cut from the bottom up",
        why="clippings then fall clear of what is still to be cut, and the taper can be seen",
    )


@rule("hedging.level-line", Severity.ADVICE, by.LEVEL_LINE, applies="trims")
def level_line(work: T) -> Iterator[Breach]:
    """The top of a trimmed hedge is cut to a stretched line, set a little below the finished height.

    A top cut by eye follows the ground.
    """
    kit = " ".join(each.name for each in (*work.technique.tools, *work.technique.materials))
    said = f"{words_of_steps(work.technique.steps)} {kit}".casefold()
    if work.measures.job != "trim" or any(word in said for word in LINES):
        return
    line = "1. **Stretch a level line.** Set it {string line} above the ground between two canes."
    yield line_wanted(
        "Steps",
        line,
        field=f"steps[{len(work.technique.steps) - 1}]" if work.technique.steps else "steps",
        what="no step stretches a line for the top",
        why="a line 10 mm below the finished height lets the blade ride level over it",
    )


SITE: tuple[Rule[HedgingMeasures], ...] = (
    nests,
    nests_elsewhere,
    closed_farm,
    closed_ireland,
    clip_months,
    spacing,
    double_row,
    farm_row,
    row_gap,
    big_leaves,
    bottom_up,
    level_line,
)
