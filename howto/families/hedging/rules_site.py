"""The rules of site and season: nests, months, spacing, tools and lines."""

from collections.abc import Iterator
from dataclasses import replace

from howto.families.hedging import formulae
from howto.families.hedging import references as by
from howto.families.hedging.figures import BELOW_MM
from howto.families.hedging.growing import cut_months, plant_of
from howto.families.hedging.measures import ROW_GAP_MM, HedgingMeasures
from howto.families.hedging.parts import season_to_write, to_write, whole_mm
from howto.findings import Severity
from howto.model.family import Breach, Limit, Rule, line_wanted, outside, rule
from howto.model.reference import Grade
from howto.model.wording import words_of_cautions, words_of_steps
from howto.model.work import Work
from howto.quantities.amounts import Name, Words, bare, mm, month_named, months_named
from howto.seasons import month_list, month_run, months_of

T = Work[HedgingMeasures]

PROTECTED = frozenset({"england", "wales", "scotland", "northern ireland", "ireland"})  # by a law that was read
NORTHERN = PROTECTED | {"united states"}
SOUTHERN = frozenset({"australia", "new zealand"})
SPRING_TO_AUGUST = (3, 4, 5, 6, 7, 8)
AUGUST_TO_JANUARY = (8, 9, 10, 11, 12, 1)
OPEN_MONTHS = (9, 10, 11, 12, 1, 2)  # of farm hedges in England, and of hedges in Ireland
NORTH, SOUTH = f"{months_named(SPRING_TO_AUGUST, 'to')}", f"{months_named(AUGUST_TO_JANUARY, 'to')}"
CLOSED = f"the start of {month_named(SPRING_TO_AUGUST[0])} to the end of {month_named(SPRING_TO_AUGUST[-1])}"
DOUBLE = Limit(low=5, unit="", of="plants a metre", reference=by.SPACING)
FARM = Limit(low=6, unit="", of="plants a metre", reference=by.GRANT)
GAP = Limit(low=ROW_GAP_MM, high=450, unit="mm", reference=by.GRANT)
LINES = ("string", "stretch", "laser", "builder's line", "level line", "garden line", "chalk line")
UPWARD = ("bottom up", "upward", "from the foot", "from the bottom", "from below")
BIG_LEAVES = ("Prunus laurocerasus", "Prunus lusitanica", "Laurus nobilis", "Aucuba japonica")
FIRM = frozenset({Grade.A, Grade.B, Grade.C})  # who may warn of a plant's months and spacing; others advise


def _nesting_months(work: T) -> tuple[int, ...]:
    """Return the months in which birds mainly nest where the hedge stands."""
    country, here = work.measures.country, work.crew.hemisphere
    north = country in NORTHERN or (country not in SOUTHERN and here == "north")
    return SPRING_TO_AUGUST if north else AUGUST_TO_JANUARY


def _written_months(work: T) -> tuple[int, ...]:
    """Return the months of the season; all twelve where none is written."""
    found = months_of(work.technique.season, work.crew.hemisphere) if work.technique.season else None
    return found or tuple(range(1, 13))


@rule(
    "hedging.nests",
    Severity.ERROR,
    by.NESTS_UK,
    by.NESTS_IRELAND,
    applies=f"hedges in the UK and Ireland that are cut from {NORTH}, or without a season",
    months=NORTH,
)
def nests(work: T) -> Iterator[Breach]:
    """Where the law protects nests, a hedge cut in the nesting season is looked through first, and the card says so.

    A nest in use or being built is protected in the UK, with no dates in the Act, and in Ireland; the main
    season is about {months}.
    """
    if work.measures.country in PROTECTED:
        yield from _unsaid_nests(work, "to harm a nest in use or being built is an offence there")


@rule(
    "hedging.nests-elsewhere",
    Severity.ADVICE,
    by.NESTS_ELSEWHERE,
    applies="hedges anywhere else that are cut in those months, or without a season",
    north=NORTH,
    south=SOUTH,
)
def nests_elsewhere(work: T) -> Iterator[Breach]:
    """Everywhere else too a hedge cut while birds nest is looked through first, and the card says so.

    Birds nest mainly from {north} in the north and from {south} in the south; most places protect a nest in use.
    """
    if work.measures.country not in PROTECTED:
        yield from _unsaid_nests(work, "look up the law of the place, and write `country:`")


def _unsaid_nests(work: T, after: Words) -> Iterator[Breach]:
    months = _nesting_months(work)
    shared = set(months) & set(_written_months(work))
    if not shared or "nest" in words_of_cautions(work.technique.cautions).casefold():
        return
    yield line_wanted(
        "Cautions",
        "- **Nests.** Look through the hedge first, and leave it until the young have flown if a nest is in use.",
        also="season" if work.technique.season else "",
        what="nothing tells the reader to look for nests",
        why=f"birds nest mainly from {months_named(months, 'to')}, and this work falls in {bare(len(shared))} of those "
        f"months; {after}",
    )


@rule("hedging.closed-season", Severity.ERROR, by.NESTS_FARM, applies="farm hedges in England", closed=CLOSED)
def closed_farm(work: T) -> Iterator[Breach]:
    """Farm hedges in England are not cut from {closed}.

    The law forbids cutting farm hedges from {closed}; garden hedges in England are exempt.
    """
    if _farm(work):
        yield from _closed(work)


@rule("hedging.closed-season-ireland", Severity.ERROR, by.NESTS_IRELAND, applies="hedges in Ireland", closed=CLOSED)
def closed_ireland(work: T) -> Iterator[Breach]:
    """Hedges in Ireland are not cut from {closed}.

    The law forbids cutting hedges, ditches and uncultivated land from {closed}.
    """
    if work.measures.country == "ireland":
        yield from _closed(work)


def _farm(work: T) -> bool:
    return work.measures.farm_hedge is True and work.measures.country == "england"


def _closed(work: T) -> Iterator[Breach]:
    if shared := [month for month in SPRING_TO_AUGUST if month in _written_months(work)]:
        what = f"the season takes in {months_named(shared)}" if work.technique.season else "no season is written"
        yield season_to_write(month_run(OPEN_MONTHS), what, also="measures.country")


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
    if written and not set(written) & set(good):
        yield season_to_write(
            month_list(good),
            f"{Name(plant.botanical)} is not cut in {Name(work.technique.season)}",
            f"for this job its months here are {months_named(good)}",
            severity=Severity.WARNING if source.grade in FIRM else Severity.ADVICE,
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
    fact = plant.spacing_mm if plant else None
    if m.spacing_mm is None or m.row_count != 1 or plant is None or fact is None:
        return
    said_by = fact.reference(f"spacing of {plant.botanical}")
    limit = Limit(low=fact.low, high=fact.high, unit="mm", reference=said_by)
    dense = bare(formulae.plants_per_metre(m.spacing_mm))
    what = f"{Name(plant.botanical)} every {{found}}"
    why = f"1000 / {bare(m.spacing_mm, 4)} = {dense} plants a metre; its range is {{limit}}"
    severity = None if fact.grade in FIRM else Severity.ADVICE
    for breach in outside(limit, work, "spacing_mm", what=what, why=why):
        yield replace(breach, severity=severity, reference=said_by)


@rule("hedging.double-row", Severity.WARNING, by.SPACING, applies="double rows", limit=DOUBLE)
def double_row(work: T) -> Iterator[Breach]:
    """A staggered double row holds {limit}.

    Nurseries set double rows so; in thinner ones the gaps stay open for years.
    """
    if work.measures.row_count > 1 and not _farm(work):
        yield from _thin(work, DOUBLE)


@rule("hedging.farm-row", Severity.ERROR, by.GRANT, applies="farm hedges in England", limit=FARM)
def farm_row(work: T) -> Iterator[Breach]:
    """A native farm hedge in England holds {limit}.

    The English planting grant asks for a staggered double row with {limit}.
    """
    if _farm(work):
        yield from _thin(work, FARM)


def _thin(work: T, limit: Limit) -> Iterator[Breach]:
    m = work.measures
    if m.spacing_mm is None:
        return
    found = formulae.plants_per_metre(m.spacing_mm, m.row_count)
    if not limit.allows(found):
        yield to_write(
            "spacing_mm",
            whole_mm(formulae.spacing_for_mm(limit.nearest(found), m.row_count), down=True),
            f"{bare(found)} plants a metre",
            f"{bare(m.row_count)} x 1000 / {bare(m.spacing_mm, 4)} = {bare(found)}; it wants {limit}",
            then=" or less",
            also="measures.rows" if m.rows else "",
        )


@rule(
    "hedging.row-gap",
    Severity.WARNING,
    by.GRANT,
    by.SPACING,
    applies="double rows that write the distance from row to row",
    limit=GAP,
)
def row_gap(work: T) -> Iterator[Breach]:
    """The rows of a double hedge stand {limit} apart.

    Nearer, the rows compete; further, a gap is left down the middle.
    """
    if work.measures.row_count > 1:
        why = "published plantings keep {least} (a government grant) to {most} (a nursery)"
        yield from outside(GAP, work, "row_gap_mm", what="the rows stand {found} apart", why=why)


@rule("hedging.big-leaves", Severity.WARNING, by.TRIMMING, applies="laurel, bay and other large-leaved hedges")
def big_leaves(work: T) -> Iterator[Breach]:
    """Laurel, bay and other large leaves are cut with secateurs or hand shears, not a power trimmer.

    A power trimmer tears large leaves, and the torn halves brown.
    """
    plant = next((each for each in work.plants if each.botanical in BIG_LEAVES), None)
    tools = " ".join(kit.name for kit in work.technique.tools).casefold()
    if plant is not None and not any(word in tools for word in ("secateurs", "pruner", "hand shears")):
        what = f"no secateurs or hand shears are listed for {Name(plant.botanical)}"
        yield line_wanted("Tools", "- Secateurs: sharp, for every leaf that a trimmer would tear", what=what, why="")


@rule("hedging.bottom-up", Severity.WARNING, by.HOW_TO_TRIM, applies="trims")
def bottom_up(work: T) -> Iterator[Breach]:
    """The sides are cut from the bottom up.

    Clippings then fall clear of what is still to be cut, and the taper can be seen.
    """
    said = words_of_steps(work.technique.steps).casefold()
    if work.measures.job == "trim" and not any(word in said for word in UPWARD):
        line = "1. **Cut the sides from the bottom up.** Sweep upwards along the line, so that clippings fall clear."
        yield _step_wanted(work, line, "no step says that the sides are cut from the bottom up")


@rule("hedging.level-line", Severity.ADVICE, by.LEVEL_LINE, applies="trims", below=f"{mm(BELOW_MM)}")
def level_line(work: T) -> Iterator[Breach]:
    """The top of a trimmed hedge is cut to a stretched line, set a little below the finished height.

    A line {below} below the finished height lets the blade ride level over it; a top cut by eye follows the ground.
    """
    kit = " ".join(each.name for each in (*work.technique.tools, *work.technique.materials))
    said = f"{words_of_steps(work.technique.steps)} {kit}".casefold()
    if work.measures.job == "trim" and not any(word in said for word in LINES):
        line = "1. **Stretch a level line.** Set it {string line} above the ground between two canes."
        yield _step_wanted(work, line, "no step stretches a line for the top")


def _step_wanted(work: T, line: str, what: Words) -> Breach:
    """Return the breach of a step that is missing, beside the last one."""
    field = f"steps[{len(work.technique.steps) - 1}]" if work.technique.steps else "steps"
    return line_wanted("Steps", line, field=field, what=what, why="")


SITE: tuple[Rule[HedgingMeasures], ...] = (
    nests, nests_elsewhere, closed_farm, closed_ireland, clip_months, spacing, double_row, farm_row, row_gap,
    big_leaves, bottom_up, level_line,
)  # fmt: skip
