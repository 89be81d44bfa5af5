"""The rules of clipping that turn on the plant, the season and the weather."""

from collections.abc import Iterator
from math import ceil

from howto.families.clipping import references as by
from howto.families.clipping.figures import growth
from howto.families.clipping.measures import ClippingMeasures
from howto.findings import Severity
from howto.model.family import Breach, Edit, Limit, Rule, rule
from howto.model.plants import Plant
from howto.model.reference import CEILING, Reference
from howto.model.work import Work
from howto.quantities.amounts import bare, mm, months_named, qty
from howto.seasons import month_list, months_of

T = Work[ClippingMeasures]

HOTTEST = Limit(high=32, unit="°C", reference=by.HEAT)
COLDEST = Limit(low=-4, unit="°C", reference=by.COLD)
FROST_WEEKS = Limit(low=6, unit="weeks", reference=by.FROST)
BY_WEIGHT = (Severity.ADVICE, Severity.WARNING, Severity.ERROR)


@rule(
    "clipping.past-the-green",
    Severity.ERROR,
    by.RENOVATION,
    by.CONIFERS,
    applies="plants that the plant book marks as shooting from green wood only",
)
def past_the_green(work: T) -> Iterator[Breach]:
    """A plant that shoots only from green wood is never clipped deeper than a year's growth.

    Most conifers, yew apart, do not shoot from old wood: past the green the hole stays.
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
        text = f"{ceil(least - 1e-9)} mm"
        yield Breach(
            field=f"measures.finished_{side}_mm",
            also=f"measures.standing_{side}_mm",
            what=f"{mm(off, 3)} comes off {where} of {plant.botanical}",
            why=f"it shoots only from green wood, and about {mm(a_year, 3)} of it is green, a year's growth{said}: "
            "bare wood stays bare",
            mend=f"write `finished {side}: {text}` or more, so the cut stays in green",
            edit=Edit(key=f"finished {side}", text=text),
            severity=min(weights, key=BY_WEIGHT.index),
            reference=plant.regrows.reference(f"what {plant.botanical} shoots from"),
        )


@rule(
    "clipping.clip-months", Severity.WARNING, by.TRIMMING, applies="plants whose clipping months the plant book knows"
)
def clip_months(work: T) -> Iterator[Breach]:
    """The season falls in months in which the plant is clipped.

    Shoots cut too late do not harden, and shoots cut too early grow out at once.
    """
    here = work.crew.hemisphere
    written = months_of(work.technique.season, here) if work.technique.season else None
    if not written:
        return
    known = [(plant, plant.clip_months.at(here)) for plant in work.plants if plant.clip_months]
    shared = [month for month in range(1, 13) if all(month in months for _, months in known)]
    for plant, months in known:
        if plant.clip_months is None or set(written) & set(months):
            continue
        names = month_list(shared or months)
        yield Breach(
            field="season",
            what=f"{plant.botanical} is not clipped in {work.technique.season}",
            why=f"here its months are {months_named(months)}",
            mend=f"write `season: {names}`",
            edit=Edit(key="season", text=names, top=True),
            severity=CEILING[plant.clip_months.grade],
            reference=_months_of(plant),
        )


def _months_of(plant: Plant) -> Reference | None:
    """Return who says when a plant is clipped."""
    months = plant.clip_months
    title = f"clipping months of {plant.botanical}"
    return months.reference(title) if months else None


@rule("clipping.day-temperature", Severity.WARNING, by.HEAT, by.COLD, applies="techniques that write a day temperature")
def day_temperature(work: T) -> Iterator[Breach]:
    """Clip on a mild day: fresh cuts scorch in hot sun, and frozen wood breaks.

    Fresh cuts scorch in hot sun, and frozen wood breaks.
    """
    day = work.measures.day_temperature_c
    if day is None or (HOTTEST.allows(day) and COLDEST.allows(day)):
        return
    hot = not HOTTEST.allows(day)
    bound = "32 °C" if hot else "-4 °C"
    yield Breach(
        field="measures.day_temperature_c",
        what=f"the day {'reaches' if hot else 'gets no warmer than'} {qty(day, '°C', 3)}",
        why="cut leaf burned after days over 32 °C" if hot else "wood is brittle below −4 °C",
        mend=f"wait for a {'cooler' if hot else 'milder'} day, and write `day temperature: {bound}`",
        edit=Edit(key="day temperature", text=bound),
        reference=by.HEAT if hot else by.COLD,
    )


@rule("clipping.before-frost", Severity.WARNING, by.FROST, applies="techniques that write the weeks to the first frost")
def before_frost(work: T) -> Iterator[Breach]:
    """The last clip falls at least six weeks before frost, so that new shoots harden.

    New shoots need the time to harden.
    """
    weeks = work.measures.first_frost_weeks
    if weeks is None or FROST_WEEKS.allows(weeks):
        return
    yield Breach(
        field="measures.first_frost_weeks",
        what=f"frost is {bare(weeks)} weeks away",
        why="soft shoots after a clip need at least 6 weeks to harden",
        mend="leave the clip until spring, and write `first frost: 6 weeks` or more",
        edit=Edit(key="first frost", text="6 weeks"),
    )


PLANTS: tuple[Rule[ClippingMeasures], ...] = (past_the_green, clip_months, day_temperature, before_frost)
