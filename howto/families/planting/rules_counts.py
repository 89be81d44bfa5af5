"""The rules of counts and spacing, of the season, and of what a planting card says in words."""

import re
from collections.abc import Iterator
from math import ceil, floor
from typing import Final

from howto.families.planting import figures_counts
from howto.families.planting import references as by
from howto.families.planting.figures_water import dormant_months, mild_months
from howto.families.planting.measures import PlantingMeasures
from howto.findings import Severity
from howto.model.family import Breach, Edit, Rule, line_wanted, rule
from howto.model.reference import GEOMETRY, PRACTICE, Grade
from howto.model.wording import words_of_cautions, words_of_steps
from howto.model.work import Work
from howto.quantities.amounts import bare, mm, months_named
from howto.seasons import month_run, months_of

T = Work[PlantingMeasures]

SPARE: Final = 1.2  # no more than a fifth over what was worked out
BURIED: Final = re.compile(r"\b(?:cables?|pipes?|services|utilities|buried|underground)\b", re.IGNORECASE)
DEEP_TOOLS: Final = re.compile(r"auger|digger|excavator|pick ?axe|mattock|trencher", re.IGNORECASE)  # safety asks there


@rule(
    "planting.ordered-up",
    Severity.ERROR,
    GEOMETRY,
    by.COUNTS,
    applies="plantings that write spacing, size and what was ordered",
)
def ordered_up(work: T) -> Iterator[Breach]:
    """The plants ordered are what the layout takes, rounded up.

    A chart that shows 26 for 26.4 plants leaves a gap; a fifth over is money in the compost heap.
    """
    m, need = work.measures, figures_counts.to_order(work.measures)
    if m.ordered is None or need is None or need <= m.ordered <= max(need + 1, floor(need * SPARE)):
        return
    working = next(each for each in figures_counts.count_figures(work) if each.name == "plants needed").working
    yield Breach(
        field="measures.ordered",
        also="measures.spacing_mm",
        what=f"{m.ordered} plants are ordered",
        why=f"{'; '.join(working)}. Charts drop the fraction; an order is rounded up",
        mend=f"write `ordered: {need}`",
        edit=Edit(key="ordered", text=str(need)),
    )


@rule(
    "planting.spacing",
    Severity.WARNING,
    by.BOOK,
    applies="beds and single rows of plants whose spacing the plant book knows",
)
def spacing(work: T) -> Iterator[Breach]:
    """Plants stand as far apart as their kind wants.

    Too wide, weeds fill the gaps for years; too close, plants starve one another.
    """
    m = work.measures
    plant = next((each for each in work.plants if each.spacing_mm is not None), None)
    if plant is None or plant.spacing_mm is None or m.spacing_mm is None or m.row_count > 1:
        return
    fact = plant.spacing_mm
    if fact.low - 1e-6 <= m.spacing_mm <= fact.high + 1e-6:
        return
    near = f"{ceil(fact.low) if m.spacing_mm < fact.low else floor(fact.high)} mm"
    yield Breach(
        field="measures.spacing_mm",
        what=f"{plant.botanical} every {mm(m.spacing_mm, 4)}",
        why=f"its range is {bare(fact.low, 4)} to {mm(fact.high, 4)}, {figures_counts.said_by(fact)}",
        mend=f"write `spacing: {near}`",
        edit=Edit(key="spacing", text=near),
        severity=Severity.ADVICE if fact.grade in {Grade.MEMORY, Grade.PRACTICE} else None,
    )


@rule("planting.bare-root-season", Severity.WARNING, by.GRANT, applies="bare-root stock with a season")
def bare_root_season(work: T) -> Iterator[Breach]:
    """Bare roots are planted while they sleep: November to March in the north.

    An English grant pays for hedges planted from 1 November to 31 March; the south is six months on.
    """
    if work.measures.stock == "bare root":
        yield from _out_of_season(work, dormant_months(work), "bare roots in leaf dry out before they root")


@rule(
    "planting.planting-season",
    Severity.ADVICE,
    by.SEASON,
    applies="pots and balls whose season holds no month of autumn or spring",
)
def planting_season(work: T) -> Iterator[Breach]:
    """Pots and balls are best planted in autumn or spring.

    Roots grow in cool damp soil, before leaves ask for water.
    """
    if work.measures.stock == "bare root":
        return
    months = mild_months(work)
    found = months_of(work.technique.season, work.crew.hemisphere) if work.technique.season else None
    if found and set(found) & set(months):
        return
    yield from _out_of_season(work, months, "a plant set in heat or frost stands still, and needs more water")


def _out_of_season(work: T, months: tuple[int, ...], why: str) -> Iterator[Breach]:
    """Yield a breach where the season holds a month that is not one of these."""
    found = months_of(work.technique.season, work.crew.hemisphere) if work.technique.season else None
    if found is None:
        return
    out = [month for month in found if month not in months]
    if not out:
        return
    run = work.measures.stock == "bare root"
    text = month_run(months) if run else "autumn, spring"
    yield Breach(
        field="season",
        also="measures.stock" if run else "",
        what=f"planting in {months_named(out[:3])}",
        why=f"{text if run else 'autumn or spring'} is the time here: {why}",
        mend=f"write `season: {text}`",
        edit=Edit(key="season", text=text, top=True),
    )


@rule("planting.roots-covered", Severity.WARNING, PRACTICE, applies="bare-root stock")
def roots_covered(work: T) -> Iterator[Breach]:
    """Bare roots are kept wet and covered until they are in the ground, and the card says so.

    Bare roots have minutes, not hours, in a dry wind.
    """
    if work.measures.stock != "bare root" or _says(work, "cover", "soak", "damp", "wet", "bucket", "sack"):
        return
    line = "- **Dry roots.** Keep bare roots covered and damp until the moment they go in; wind kills them in minutes."
    yield line_wanted(
        "Cautions",
        line,
        what="nothing says to keep bare roots covered",
        why="fine roots dry in wind and sun while a hole is dug",
    )


@rule("planting.circling-roots", Severity.ADVICE, PRACTICE, applies="trees and shrubs from containers")
def circling_roots(work: T) -> Iterator[Breach]:
    """Roots that circle in a pot are cut or teased out, and the card says so.

    What grew round in the pot does not straighten by itself.
    """
    m = work.measures
    if m.work == "bed" or m.stock != "container" or _says(work, "circl", "tease", "pot-bound", "shave", "slice"):
        return
    line = "1. **Free the roots.** Slide the pot off, and cut or tease out every root that circles."
    yield line_wanted(
        "Steps",
        line,
        what="no step looks for roots that circle in the pot",
        why="a root that circles goes on circling, and chokes the trunk years on",
    )


@rule("planting.dig-safe", Severity.WARNING, PRACTICE, applies="trees and shrubs, dug in by hand")
def dig_safe(work: T) -> Iterator[Breach]:
    """Whoever digs a planting hole looks for buried cables and pipes first.

    One spade through a cable costs more than the garden.
    """
    if work.measures.work == "bed" or any(DEEP_TOOLS.search(kit.name) for kit in work.technique.tools):
        return
    if BURIED.search(_told(work)):
        return
    line = "- **Buried services.** Ask for the plans of cables and pipes, and dig the first spit by hand. → boots"
    yield line_wanted(
        "Cautions",
        line,
        what="nothing warns of what is buried",
        why="garden cables and pipes lie no deeper than a spade",
    )


def _says(work: T, *words: str) -> bool:
    """Tell whether steps or cautions say one of these words."""
    said = _told(work)
    return any(re.search(rf"\b{word}", said) for word in words)


def _told(work: T) -> str:
    """Return everything that cautions and steps say, lower case."""
    return f"{words_of_cautions(work.technique.cautions)} {words_of_steps(work.technique.steps)}".casefold()


COUNTED: tuple[Rule[PlantingMeasures], ...] = (
    ordered_up,
    spacing,
    bare_root_season,
    planting_season,
    roots_covered,
    circling_roots,
    dig_safe,
)
