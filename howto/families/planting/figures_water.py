"""The figures of water and time: on the day, each time, by the week, until a plant has rooted; and when to plant."""

from collections.abc import Iterator
from datetime import date, timedelta

from howto.families.planting import references as by
from howto.families.planting import watering_in
from howto.families.planting.measures import PlantingMeasures
from howto.families.planting.parts import worked
from howto.families.planting.watering_in import POT_MONTHS_PER_IN, LowHigh, WateringStage, planted_on, summers
from howto.model.figure import Figure, Table
from howto.model.reference import Reference
from howto.model.work import Work
from howto.quantities import convert
from howto.quantities.amounts import Count, Words, bare, dated, months_named, qty
from howto.seasons import months_here

T = Work[PlantingMeasures]

DORMANT_NORTH = (11, 12, 1, 2, 3)  # see references.GRANT
OUT_OF_HEAT_NORTH = (9, 10, 11, 3, 4, 5)  # autumn and spring, see references.SEASON


def months_to_plant(work: T) -> tuple[int, ...]:
    """Return the months to plant in where the crew works: bare roots asleep, others in autumn and spring."""
    north = DORMANT_NORTH if work.measures.stock == "bare root" else OUT_OF_HEAT_NORTH
    return months_here(north, work.crew.hemisphere)


def season_figure(work: T) -> Figure:
    """Return the months to plant in."""
    months: Words = "autumn or spring"
    line, who = "out of the heat, and with time to root before it or before the frost", by.SEASON
    if work.measures.stock == "bare root":
        months, who = f"{months_named(months_to_plant(work), 'to')}", by.GRANT
        north = months_named(DORMANT_NORTH, "to")
        line = f"bare roots while they sleep: {north} in the north, six months on in the south"
    return worked("planting months", "Plant in", months, "", [line], who)


def water_figures(work: T, today: date) -> Iterator[Figure]:
    """Yield the water of a new tree or shrub, its dates, and when it has rooted."""
    m, litres = work.measures, watering_in.each_time(work)
    if m.work == "tree":
        day, gallons = watering_in.on_the_day(), watering_in.FIRST_GAL
        line = (
            f"{bare(gallons.low)} to {qty(gallons.high, 'US gal', 3)} × {bare(convert(1, 'US gal', 'L'), 4)} = "
            f"{day.of('L')}, to settle the soil and soak it"
        )
        yield worked("water on the day", "Water on the day", f"{day.of('L')}", "", [line], by.FIRST_WATER)
    if litres is None:
        return
    cool = m.calliper_mm is None or summers(work) == "cool"
    who = (by.WATER_COOL,) if cool else (by.WATER_WARM, by.WATER_BIG)
    yield _each(m, litres, who)
    if m.calliper_mm is not None:
        yield _week(m, m.calliper_mm)
    yield _dates(work, today, litres, who)
    yield from _rooted(work, today)


def _each(m: PlantingMeasures, litres: LowHigh, who: tuple[Reference, ...]) -> Figure:
    lines = [watering_in.reckoned(m, litres)]
    if m.calliper_mm is not None:
        advised = LowHigh(watering_in.COOL_GAL_PER_IN.low, watering_in.WARM_GAL_PER_IN.high)
        lines.append(
            f"advice runs from {bare(advised.low)} to {qty(advised.high, 'US gal', 3)} an inch each time, "
            f"and to {bare(watering_in.DRY_WEEK_GAL_PER_IN)} a week: feel the soil first"
        )
    name, label = "water each time", "Each plant, each time"
    return worked(name, label, f"{litres.of('L')}", "", lines, *who, headline=True, client=True)


def _week(m: PlantingMeasures, calliper_mm: float) -> Figure:
    litres = watering_in.by_calliper(calliper_mm, watering_in.WEEK_GAL_PER_IN)
    rate, cm = watering_in.litres_per_cm(watering_in.DRY_WEEK_GAL_PER_IN), calliper_mm / 10
    lines = (
        watering_in.reckoned(m, litres),
        f"in a dry summer as much as {bare(cm)} × {bare(rate)} = {qty(rate * cm, 'L', 3)}",
    )
    name, label = "water a week", "In a week without rain"
    return worked(name, label, f"{litres.of('L')}", "", lines, by.WATER_WEEK, by.WATER_DRY, client=True)


def _dates(work: T, today: date, litres: LowHigh, who: tuple[Reference, ...]) -> Figure:
    planted, weeks = planted_on(work, today), watering_in.FIRST_WEEKS
    calliper, rooted = work.measures.calliper_mm or 0.0, watering_in.rooted_days(work)
    stages = watering_in.stages(summers(work), calliper, rooted)
    now = next((stage for stage in stages if (today - planted).days < stage.end_day), stages[-1])
    first = [watering_in.waterings(max(0, min(each.end_day, 7 * weeks) - each.start_day), each) for each in stages]
    low, high = (bare(sum(ends)) for ends in zip(*first, strict=True))
    lines = (
        f"planted {dated(planted, 'plain')}",
        *(f"days {bare(each.start_day)} to {bare(each.end_day)}: every {_every(each)}" for each in stages),
        f"in the first {Count(weeks, 'week', 'weeks')} {low} to {high} waterings",
    )
    ends = ((planted + timedelta(each.start_day), planted + timedelta(each.end_day - 1)) for each in stages)
    table = Table(
        columns=("From", "To", "Every", "Each plant"),
        units=("", "", "", ""),
        rows=tuple((*each, _every(stage), f"{litres.of('L')}") for each, stage in zip(ends, stages, strict=True)),
    )
    name, label = "watering now", "Watering, as it stands"
    return worked(name, label, f"every {_every(now)}", "", lines, *who, table=table, client=True)


def _every(stage: WateringStage) -> Words:
    """Return how often in words: `day`, `2 to 3 days`."""
    if stage.every_low != stage.every_high:
        return f"{bare(stage.every_low)} to {bare(stage.every_high)} days"
    return {1: "day", 7: "week"}.get(stage.every_low, f"{bare(stage.every_low)} days")


def _rooted(work: T, today: date) -> Iterator[Figure]:
    m, months = work.measures, watering_in.months_until_rooted(work)
    if months is None or m.calliper_mm is None:
        return
    inches, planted = convert(m.calliper_mm, "mm", "in"), planted_on(work, today)
    day = planted + timedelta(days=watering_in.rooted_days(work))
    rate, all_in = (f"{bare(span.low)} to {bare(span.high)} months" for span in (months.times(1 / inches), months))
    more = f"{bare(POT_MONTHS_PER_IN.low)} to {bare(POT_MONTHS_PER_IN.high)} of them for the pot"
    pot = f", {more}" if m.stock == "container" else ""
    lines = (
        f"{qty(inches, 'in', 3)} × {rate} an inch{pot} = {all_in}",
        f"{bare(months.high)} months on from {dated(planted, 'plain')}: {dated(day, 'plain')}",
    )
    label = "Rooted, and left to the weather"
    yield worked("rooted by", label, day, "", lines, by.ESTABLISHED, by.WATER_WARM, client=True)
