"""The rules of clipping that turn on the plant, the season and the weather."""

from collections.abc import Iterator
from dataclasses import replace
from math import ceil
from typing import Any

from howto.families.clipping import references as by
from howto.families.clipping.figures import growth
from howto.families.clipping.measures import ClippingMeasures
from howto.findings import Severity
from howto.model.family import Breach, Edit, Limit, Rule, outside, rule
from howto.model.reference import CEILING
from howto.model.work import Work
from howto.quantities import field_unit
from howto.quantities.amounts import Name, Words, mm, months_named
from howto.seasons import month_list, months_of

T = Work[ClippingMeasures]

HOTTEST = Limit(high=32, unit="°C", reference=by.HEAT)
COLDEST = Limit(low=-4, unit="°C", reference=by.COLD)
FROST_WEEKS = Limit(low=6, unit="weeks", reference=by.FROST)
BY_WEIGHT = (Severity.ADVICE, Severity.WARNING, Severity.ERROR)


def to_write(field: str, text: str, what: Words, why: Words, then: str = "", **more: Any) -> Breach:
    """Return the breach of a measure that has to be written anew; `then` follows in its mend."""
    key, _ = field_unit(field)
    return Breach(f"measures.{field}", what, why, f"write `{key}: {text}`{then}", Edit(text, key), **more)


def left_larger(side: str, least_mm: float, what: Words, why: Words, then: str, **more: Any) -> Breach:
    """Return the breach of a finished width or height that has to be larger, and `then` what follows."""
    text, also = f"{ceil(least_mm - 1e-9)} mm", f"measures.standing_{side}_mm"
    return to_write(f"finished_{side}_mm", text, what, why, f" or more{then}", also=also, **more)


@rule(
    "clipping.past-the-green",
    Severity.ERROR,
    by.RENOVATION,
    by.CONIFERS,
    applies="plants that the plant book marks as shooting from green wood only",
)
def past_the_green(work: T) -> Iterator[Breach]:
    """A plant that shoots only from green wood is never clipped deeper than a year's growth.

    most conifers, yew apart, do not shoot from old wood: past the green the hole stays
    """
    m = work.measures
    plant = next((p for p in work.plants if p.regrows and p.regrows.text == "green wood only"), None)
    if plant is None or plant.regrows is None:
        return
    a_year, source = growth(work)
    weights = [CEILING[plant.regrows.grade]]
    said = " as written"
    if m.growth_mm_per_year is None:
        weights.append(CEILING[source.grade])
        said = f" ({source})"
    deep = [("width", "each side", m.side_mm, m.standing_width_mm - 2 * a_year)]
    if m.top_mm is not None:
        deep.append(("height", "the top", m.top_mm, m.standing_mm - a_year))
    for side, where, off, least in deep:
        if off <= a_year + 1e-9:
            continue
        yield left_larger(
            side,
            least,
            f"{mm(off, 3)} comes off {where} of {Name(plant.botanical)}",
            f"it shoots only from green wood, and about {mm(a_year, 3)} of it is green, a year's growth{said}: "
            "bare wood stays bare",
            ", so the cut stays in green",
            severity=min(weights, key=BY_WEIGHT.index),
            reference=plant.regrows.reference(f"what {plant.botanical} shoots from"),
        )


@rule(
    "clipping.clip-months", Severity.WARNING, by.TRIMMING, applies="plants whose clipping months the plant book knows"
)
def clip_months(work: T) -> Iterator[Breach]:
    """The season falls in months in which the plant is clipped.

    shoots cut too late do not harden, and shoots cut too early grow out at once
    """
    season, here = work.technique.season, work.crew.hemisphere
    written = months_of(season, here) if season else None
    if not written:
        return
    known = [(plant, plant.clip_months, plant.clip_months.at(here)) for plant in work.plants if plant.clip_months]
    shared = [month for month in range(1, 13) if all(month in months for _, _, months in known)]
    for plant, fact, months in known:
        if set(written) & set(months):
            continue
        names = month_list(shared or months)
        yield Breach(
            field="season",
            what=f"{Name(plant.botanical)} is not clipped in {Name(season)}",
            why=f"here its months are {months_named(months)}",
            mend=f"write `season: {names}`",
            edit=Edit(key="season", text=names, top=True),
            severity=CEILING[fact.grade],
            reference=fact.reference(f"clipping months of {plant.botanical}"),
        )


@rule("clipping.day-temperature", Severity.WARNING, by.HEAT, by.COLD, applies="techniques that write a day temperature")
def day_temperature(work: T) -> Iterator[Breach]:
    """Clip on a mild day: fresh cuts scorch in hot sun, and frozen wood breaks.

    cut leaf burns in hot sun, and wood is brittle in frost
    """
    for limit, what, why, wait in (
        (HOTTEST, "reaches", "cut leaf burned after days over {most}", "wait for a cooler day"),
        (COLDEST, "gets no warmer than", "wood is brittle below {least}", "wait for a milder day"),
    ):
        for breach in outside(limit, work, "day_temperature_c", what=f"the day {what} {{found}}", why=why):
            yield replace(breach, mend=f"{wait}, and {breach.mend}", reference=limit.reference)


@rule(
    "clipping.before-frost",
    Severity.WARNING,
    by.FROST,
    applies="techniques that write the weeks to the first frost",
    limit=FROST_WEEKS,
)
def before_frost(work: T) -> Iterator[Breach]:
    """The last clip falls at least {limit.least} before frost, so that new shoots harden.

    soft shoots after a clip need at least {limit.least} to harden
    """
    for breach in outside(FROST_WEEKS, work, "first_frost_weeks", what="frost is {found} away", why=""):
        yield replace(breach, mend=f"leave the clip until spring, and {breach.mend}")


PLANTS: tuple[Rule[ClippingMeasures], ...] = (past_the_green, clip_months, day_temperature, before_frost)
