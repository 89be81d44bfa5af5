"""The figures of new trees and shrubs: litres each time, the first year with its dates, and when they are settled."""

from collections.abc import Iterator
from datetime import date, timedelta

from howto.families.watering import formulae, garden, plan
from howto.families.watering import references as by
from howto.families.watering.formulae import Span, Stage
from howto.families.watering.measures import WateringMeasures
from howto.model.figure import Figure, Table
from howto.model.prose import capital
from howto.model.reference import Reference
from howto.model.work import Work
from howto.quantities.amounts import Range, bare, dated, qty

T = Work[WateringMeasures]
MONTHS_A_CM = (3 / 2.54, 4 / 2.54)  # see references.ESTABLISHED: 3 to 4 months an inch, so 1.2 to 1.6 a cm
POT_MONTHS_A_CM = (1 / 2.54, 2 / 2.54)  # and 1 to 2 months an inch more from a container
MONTH_DAYS = 365 / 12
TWELVE_WEEKS = 84


def young(work: T, today: date) -> Iterator[Figure]:
    """Yield the figures of new plants; none for a planting that has rooted."""
    span = plan.plant_litres(work)
    if span is None:
        return
    yield from _each(work, span)
    yield _first_year(work, span, today)
    yield _twelve_weeks(work)
    yield from _settled(work, today)


def sources(work: T) -> tuple[Reference, ...]:
    """Return who says how much and how often."""
    m = work.measures
    if plan.summer(work) == "cool":
        return (by.NEW_TREES,)
    return (by.NEW_TREES, by.NEW_TREES_WARM) if m.calliper_mm is None else (by.NEW_TREES_WARM, by.BIG_TREES_WARM)


def _each(work: T, span: Span) -> Iterator[Figure]:
    m, system = work.measures, work.crew.units
    each, said = plan.given_each(work, span)
    if m.calliper_mm is not None:
        cm = m.calliper_mm / 10
        form = (
            f"stem {qty(cm, 'cm', 3)} x {bare(span.low / cm)} to {qty(span.high / cm, 'L', 3)} a cm = "
            f"{bare(span.low)} to {qty(span.high, 'L', 3)}"
        )
    else:
        form = f"25 to 30 % of a {qty(m.pot_l or 0, 'L', 3)} pot = {bare(span.low)} to {qty(span.high, 'L', 3)}"
    yield Figure(
        name="litres a plant",
        label="Each plant, each watering",
        value=f"{Range(span.low, span.high, 'L')}",
        working=(form, "feel the soil first; too much drowns a new plant"),
        references=sources(work),
        headline=True,
        client=True,
    )
    number = m.plant_count or 1
    stage = plan.stage_now(work)
    times = garden.times_a_week(stage.every_high)
    yield Figure(
        name="litres all plants",
        label="All new plants, each watering",
        value=each * number,
        unit="L",
        working=(f"{number} x {qty(each, 'L', 3)} ({said}) = {qty(each * number, 'L', 3)}",),
        references=sources(work),
        client=True,
    )
    size = m.can_size_l or garden.usual_can_l(system)
    yield Figure(
        name="cans",
        label="In watering cans",
        value=garden.can_words(each * number, times, system, m.can_size_l),
        working=(
            f"{qty(each * number, 'L', 3)} / {qty(size, 'L', 3)} a can = {bare(each * number / size)} cans, filled up to the "
            "next quarter",
            f"{stage.name}: every {every_words(stage)}, so {garden.times_words(times)}",
        ),
        references=sources(work),
        client=True,
    )


def every_words(stage: Stage) -> str:
    """Return how often in words: `day`, `2 to 3 days`."""
    if stage.every_low == stage.every_high:
        return "day" if stage.every_low == 1 else f"{stage.every_low} days"
    return f"{stage.every_low} to {stage.every_high} days"


def _first_year(work: T, span: Span, today: date) -> Figure:
    stages, planted = plan.first_year(work), plan.planted_on(work, today)
    litres = f"{Range(span.low, span.high, 'L')}"
    rows = tuple(
        (
            capital(stage.name),
            planted + timedelta(days=stage.start_day),
            planted + timedelta(days=stage.end_day - 1),
            every_words(stage),
            litres,
        )
        for stage in stages
    )
    now = plan.stage_now(work)
    return Figure(
        name="first year",
        label="Watering in the first year",
        value=f"every {every_words(now)} now",
        working=(
            f"planted {dated(planted, 'plain')}",
            *(
                f"{stage.name}: every {every_words(stage)}, days {stage.start_day} to {stage.end_day}"
                for stage in stages
            ),
        ),
        references=sources(work),
        table=Table(columns=("Stretch", "From", "To", "Every", "Each plant"), units=("", "", "", "", ""), rows=rows),
        client=True,
    )


def _twelve_weeks(work: T) -> Figure:
    lines, low, high = [], 0.0, 0.0
    for stage in plan.first_year(work):
        days = min(stage.end_day, TWELVE_WEEKS) - stage.start_day
        if days <= 0:
            continue
        span = formulae.waterings(days, stage.every_low, stage.every_high)
        low, high = low + span.low, high + span.high
        lines.append(f"{stage.name}: {days} days / every {every_words(stage)} = {bare(span.low)} to {bare(span.high)}")
    fewest, most = round(low), round(high)
    return Figure(
        name="waterings in 12 weeks",
        label="Waterings in the first 12 weeks",
        value=f"{fewest}" if fewest == most else f"{fewest} to {most}",
        working=(*lines, f"in all {bare(low)} to {bare(high)}"),
        references=sources(work),
    )


def _settled(work: T, today: date) -> Iterator[Figure]:
    m = work.measures
    if m.calliper_mm is None or plan.summer(work) != "warm":
        return
    cm, planted = m.calliper_mm / 10, plan.planted_on(work, today)
    low, high = (cm * months for months in MONTHS_A_CM)
    said = f"{qty(cm, 'cm', 3)} x 1.2 to 1.6 months a cm = {bare(low)} to {bare(high)} months"
    if m.pot_l is not None:
        more = tuple(cm * months for months in POT_MONTHS_A_CM)
        low, high = low + more[0], high + more[1]
        said += f"; from a pot {bare(more[0])} to {bare(more[1])} more"
    settled = planted + timedelta(days=round(high * MONTH_DAYS))
    yield Figure(
        name="settled by",
        label="Rooted, and then watered by weather",
        value=settled,
        working=(said, f"{bare(high)} months on from {dated(planted, 'plain')}: {dated(settled, 'plain')}"),
        references=(by.ESTABLISHED,),
        client=True,
    )
