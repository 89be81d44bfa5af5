"""The rules of counts and spacing, of the season, and of what a planting card says in words."""

import re
from collections.abc import Iterator
from math import floor
from typing import Final

from howto.families.planting import counts, figures_counts
from howto.families.planting import references as by
from howto.families.planting.figures_water import DORMANT_NORTH, months_to_plant
from howto.families.planting.measures import PlantingMeasures
from howto.families.planting.parts import rewritten
from howto.findings import Severity
from howto.model.family import Breach, Edit, Rule, line_wanted, rule, typed
from howto.model.reference import GEOMETRY, PRACTICE, Grade
from howto.model.wording import words_of_cautions, words_of_steps
from howto.model.work import Work
from howto.quantities.amounts import Count, Name, Range, Share, Words, mm, months_named
from howto.seasons import month_run, months_of

T = Work[PlantingMeasures]

SPARE_SHARE: Final = 0.2  # no more is ordered over what was worked out
BURIED: Final = re.compile(r"\b(?:cables?|pipes?|services|utilities|buried|underground)\b", re.IGNORECASE)
DEEP_TOOLS: Final = re.compile(r"auger|digger|excavator|pick ?axe|mattock|trencher", re.IGNORECASE)  # safety asks there


@rule(
    "planting.ordered-up",
    Severity.ERROR,
    GEOMETRY,
    by.COUNTS,
    applies="plantings that write spacing, size and what was ordered",
    over=f"{Share(SPARE_SHARE)}",
)
def ordered_up(work: T) -> Iterator[Breach]:
    """The plants ordered are what the layout takes, rounded up.

    a chart that shows 26 for 26.4 plants leaves a gap; {over} over is money in the compost heap
    """
    m, need = work.measures, counts.to_order(work.measures)
    if m.ordered is None or need is None or need <= m.ordered <= max(need + 1, floor(need * (1 + SPARE_SHARE))):
        return
    working = next(each for each in figures_counts.count_figures(work) if each.name == "plants needed").working
    what = f"{Count(m.ordered, 'plant is', 'plants are')} ordered"
    why = f"{'; '.join(working)}. Charts drop the fraction; an order is rounded up"
    yield rewritten("ordered", str(need), what, why, also="spacing_mm")


@rule(
    "planting.spacing", Severity.WARNING, by.BOOK, applies="beds and single rows of plants whose spacing the book knows"
)
def spacing(work: T) -> Iterator[Breach]:
    """Plants stand as far apart as their kind wants.

    too wide, weeds fill the gaps for years; too close, plants starve one another
    """
    m, known = work.measures, figures_counts.book_spacing(work)
    if known is None or m.spacing_mm is None or m.row_count > 1:
        return
    plant, fact = known
    if not fact.low - 1e-6 <= m.spacing_mm <= fact.high + 1e-6:
        close = m.spacing_mm < fact.low
        yield rewritten(
            "spacing_mm",
            typed(fact.low if close else fact.high, "mm", down=not close),
            f"{Name(plant)} every {mm(m.spacing_mm, 4)}",
            f"its range is {Range(fact.low, fact.high, 'mm')}, {figures_counts.said_by(fact)}",
            severity=Severity.ADVICE if fact.grade in {Grade.MEMORY, Grade.PRACTICE} else None,
        )


@rule(
    "planting.bare-root-season",
    Severity.WARNING,
    by.GRANT,
    applies="bare-root stock with a season",
    months=f"{months_named(DORMANT_NORTH, 'to')}",
)
def bare_root_season(work: T) -> Iterator[Breach]:
    """Bare roots are planted while they sleep: {months} in the north.

    an English grant pays for hedges planted in those months; the south is six months on
    """
    out = _out_of_season(work)
    if work.measures.stock == "bare root" and out:
        months = months_to_plant(work)
        why = f"{months_named(months, 'to')} is the time here: bare roots in leaf dry out before they root"
        yield _replanned(out, month_run(months), why, also="measures.stock")


@rule("planting.planting-season", Severity.ADVICE, by.SEASON, applies="pots and balls with a season")
def planting_season(work: T) -> Iterator[Breach]:
    """Pots and balls are best planted in autumn or spring.

    roots grow in cool damp soil, before leaves ask for water; a plant set in heat or frost stands still
    """
    out = _out_of_season(work)
    if work.measures.stock != "bare root" and out and out == _season(work):
        yield _replanned(out, "autumn, spring")


def _season(work: T) -> tuple[int, ...]:
    """Return the months that the season names; none where it names none."""
    season = work.technique.season
    return (months_of(season, work.crew.hemisphere) or ()) if season else ()


def _out_of_season(work: T) -> tuple[int, ...]:
    """Return the months of the season that are none to plant in."""
    return tuple(month for month in _season(work) if month not in months_to_plant(work))


def _replanned(out: tuple[int, ...], text: str, why: Words = "", also: str = "") -> Breach:
    """Return the breach of a season; the mend writes another."""
    what, mend = f"planting in {months_named(out[:3])}", f"write `season: {text}`"
    return Breach("season", what, why, mend, Edit(key="season", text=text, top=True), also)


@rule("planting.roots-covered", Severity.WARNING, PRACTICE, applies="bare-root stock")
def roots_covered(work: T) -> Iterator[Breach]:
    """Bare roots are kept wet and covered until they are in the ground, and the card says so.

    fine roots dry in wind and sun while a hole is dug: they have minutes, not hours
    """
    if work.measures.stock != "bare root" or _says(work, "cover", "soak", "damp", "wet", "bucket", "sack"):
        return
    line = "- **Dry roots.** Keep bare roots covered and damp until the moment they go in; wind kills them in minutes."
    yield line_wanted("Cautions", line, what="nothing says to keep bare roots covered", why="")


@rule("planting.circling-roots", Severity.ADVICE, PRACTICE, applies="trees and shrubs from containers")
def circling_roots(work: T) -> Iterator[Breach]:
    """Roots that circle in a pot are cut or teased out, and the card says so.

    a root that circles goes on circling, and chokes the trunk years on
    """
    m = work.measures
    if m.work == "bed" or m.stock != "container" or _says(work, "circl", "tease", "pot-bound", "shave", "slice"):
        return
    line = "1. **Free the roots.** Slide the pot off, and cut or tease out every root that circles."
    yield line_wanted("Steps", line, what="no step looks for roots that circle in the pot", why="")


@rule("planting.dig-safe", Severity.WARNING, PRACTICE, applies="trees and shrubs, dug in by hand")
def dig_safe(work: T) -> Iterator[Breach]:
    """Whoever digs a planting hole looks for buried cables and pipes first.

    garden cables and pipes lie no deeper than a spade, and one cut costs more than the garden
    """
    if work.measures.work == "bed" or any(DEEP_TOOLS.search(kit.name) for kit in work.technique.tools):
        return
    if not BURIED.search(_told(work)):
        line = "- **Buried services.** Ask for the plans of cables and pipes, and dig the first spit by hand. → boots"
        yield line_wanted("Cautions", line, what="nothing warns of what is buried", why="")


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
