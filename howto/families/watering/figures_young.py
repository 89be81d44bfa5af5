"""The figures of new trees and shrubs: litres each time, the first year with its dates, and when they are settled."""

from collections.abc import Iterable, Iterator
from datetime import date, timedelta

from howto.families.watering import formulae, garden, plan, soil_water, tables
from howto.families.watering import references as by
from howto.families.watering.formulae import Bounds, GrowthStage
from howto.families.watering.measures import WateringMeasures
from howto.families.watering.needs import WorkedSum, between, figure
from howto.model.figure import Figure, Table
from howto.model.prose import capital
from howto.model.reference import Reference
from howto.model.work import Work
from howto.quantities import convert
from howto.quantities.amounts import Range, Word, Words, bare, dated, qty
from howto.quantities.cans import usual_can_l

T = Work[WateringMeasures]
MONTH_DAYS = soil_water.YEAR_DAYS / 12
COUNTED_WEEKS = 12


def young(work: T, today: date) -> Iterator[Figure]:
    """Yield the figures of new plants; none for a planting that has rooted."""
    span = plan.plant_litres(work)
    if span is None:
        return
    yield from _each(work, span)
    yield _first_year(work, span, today)
    yield _first_waterings(work)
    yield from _settled(work, today)


def sources(work: T) -> tuple[Reference, ...]:
    """Return who says how much and how often."""
    if plan.summer(work) == "cool":
        return (by.NEW_TREES,)
    if work.measures.calliper_mm is None:
        return (by.NEW_TREES, by.NEW_TREES_WARM)
    return (by.NEW_TREES_WARM, by.BIG_TREES_WARM)


def asked(work: T) -> Words:
    """Return what asks for a new plant's water: its stem, else its pot."""
    m = work.measures
    if m.calliper_mm is not None:
        rates = tables.LITRES_PER_CM[plan.summer(work)]
        return f"stem {qty(m.calliper_mm / 10, 'cm', 3)} x {between(rates, 'L')} a cm"
    return f"{between(tables.POT_SHARE.times(100), '%')} of a {qty(m.pot_l or 0, 'L', 3)} pot"


def cans(work: T, litres: float, times: int, working: Iterable[Words], references: tuple[Reference, ...]) -> Figure:
    """Return a watering by can, so many times a week."""
    value = garden.can_words(litres, times, work.crew.units, work.measures.can_size_l)
    return figure("cans", "In watering cans", value, working, references, client=True)


def per_can(work: T, litres: float) -> Words:
    """Return the end of a sum that turns litres into cans."""
    size = work.measures.can_size_l or usual_can_l(work.crew.units)
    return f"/ {qty(size, 'L')} a can = {bare(litres / size)} cans, filled up to the next quarter"


def every(stage: GrowthStage) -> Words:
    """Return how often in words: `every day`, `every 2 to 3 days`."""
    return f"every {_gap(stage)}"


def _gap(stage: GrowthStage) -> Words:
    if stage.every_high == 1:
        return "day"
    low = "" if stage.every_low == stage.every_high else f"{bare(stage.every_low)} to "
    return f"{low}{bare(stage.every_high)} days"


def _each(work: T, span: Bounds) -> Iterator[Figure]:
    lines = f"{asked(work)} = {between(span, 'L')}", "feel the soil first; too much drowns a new plant"
    value, by_whom = str(Range(span.low, span.high, "L")), sources(work)
    yield figure("litres a plant", "Each plant, each watering", value, lines, by_whom, headline=True, client=True)
    number, (each, said) = work.measures.plant_count or 1, plan.given_each(work, span)
    total, stage = each * number, plan.stage_now(work)
    line = f"{bare(number)} x {qty(each, 'L')} ({Word(said)}) = {qty(total, 'L')}"
    all_plants = WorkedSum(total, (line,), by_whom)
    yield all_plants.figure("litres all plants", "All new plants, each watering", "L", client=True)
    times = garden.times_a_week(stage.every_high)
    often = f"{Word(stage.name)}: {Word(every(stage))}, so {Word(garden.times_words(times))}"
    yield cans(work, total, times, (f"{qty(total, 'L')} {per_can(work, total)}", often), by_whom)


def _first_year(work: T, span: Bounds, today: date) -> Figure:
    planted = plan.planted_on(work, today)
    rows, lines = [], [f"planted {dated(planted, 'plain')}"]
    for stage in plan.first_year(work):
        first, last = (planted + timedelta(days=day) for day in (stage.start_day, stage.end_day - 1))
        rows.append((capital(stage.name), first, last, _gap(stage), str(Range(span.low, span.high, "L"))))
        days = f"days {bare(stage.start_day)} to {bare(stage.end_day)}"
        lines.append(f"{Word(stage.name)}: {Word(every(stage))}, {days}")
    table = Table(columns=("Stretch", "From", "To", "Every", "Each plant"), units=("",) * 5, rows=tuple(rows))
    now, label = f"{every(plan.stage_now(work))} now", "Watering in the first year"
    return figure("first year", label, now, lines, sources(work), table=table, client=True)


def _first_waterings(work: T) -> Figure:
    lines, low, high = [], 0.0, 0.0
    for stage in plan.first_year(work):
        days = min(stage.end_day, COUNTED_WEEKS * 7) - stage.start_day
        if days > 0:
            span = formulae.waterings(days, stage.every_low, stage.every_high)
            low, high = low + span.low, high + span.high
            lines.append(f"{Word(stage.name)}: {bare(days)} days / {Word(every(stage))} = {between(span)}")
    fewest, most = bare(round(low)), bare(round(high))
    lines.append(f"in all {between(Bounds(low, high))}")
    value = str(most) if fewest == most else f"{fewest} to {most}"
    name, label = f"waterings in {COUNTED_WEEKS} weeks", f"Waterings in the first {bare(COUNTED_WEEKS)} weeks"
    return figure(name, label, value, lines, sources(work))


def _settled(work: T, today: date) -> Iterator[Figure]:
    m = work.measures
    if m.calliper_mm is None or plan.summer(work) != "warm":
        return
    cm, planted = m.calliper_mm / 10, plan.planted_on(work, today)
    rate, inches = tables.ROOTED_MONTHS_PER_IN.times(convert(1, "cm", "in")), convert(cm, "cm", "in")
    rooted, more = tables.ROOTED_MONTHS_PER_IN.times(inches), tables.POT_MONTHS_PER_IN.times(inches)
    said = f"{qty(cm, 'cm')} x {bare(rate.low, 2)} to {bare(rate.high, 2)} months a cm = {between(rooted)} months"
    if m.pot_l is not None:
        rooted = Bounds(rooted.low + more.low, rooted.high + more.high)
        said += f"; from a pot {between(more)} more"
    settled = planted + timedelta(days=round(rooted.high * MONTH_DAYS))
    lines = said, f"{bare(rooted.high)} months on from {dated(planted, 'plain')}: {dated(settled, 'plain')}"
    yield figure("settled by", "Rooted, and then watered by weather", settled, lines, (by.ESTABLISHED,), client=True)
