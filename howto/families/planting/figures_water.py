"""The figures of water and time: on the day, each time, by the week, until a plant has rooted; and when to plant."""

from collections.abc import Iterator
from datetime import date, timedelta

from howto.families.planting import references as by
from howto.families.planting import watering_in
from howto.families.planting.measures import PlantingMeasures
from howto.families.planting.watering_in import Span, Stage
from howto.model.figure import Figure, Table
from howto.model.reference import Reference
from howto.model.work import Work
from howto.quantities.amounts import Range, bare, dated, qty
from howto.seasons import month_run, months_here

T = Work[PlantingMeasures]

HOT_C = 30.0  # summers count as warm where the hottest month's mean maximum reaches this
DORMANT_NORTH = (11, 12, 1, 2, 3)  # see references.GRANT
OUT_OF_HEAT_NORTH = (9, 10, 11, 3, 4, 5)  # autumn and spring, see references.SEASON


def planted_on(work: T, today: date) -> date:
    """Return the day of planting: today, or so many weeks ago as is written."""
    return today - timedelta(days=round((work.measures.planted_weeks or 0.0) * 7))


def summers(work: T) -> str:
    """Return `cool` or `warm`: as written, else by the crew's hottest month."""
    own, climate = work.measures.summers, work.crew.climate
    return own or ("warm" if climate is not None and max(climate.max_c) >= HOT_C else "cool")


def each_time(work: T) -> Span | None:
    """Return the litres one plant takes each time: a tree by its trunk, else by its pot."""
    m = work.measures
    if m.calliper_mm is not None:
        rate = watering_in.WARM_GAL_PER_IN if summers(work) == "warm" else watering_in.COOL_GAL_PER_IN
        return watering_in.by_calliper(m.calliper_mm, rate)
    return None if m.pot_l is None else watering_in.by_pot(m.pot_l)


def sources(work: T) -> tuple[Reference, ...]:
    """Return who says how much and how often."""
    if work.measures.calliper_mm is None or summers(work) == "cool":
        return (by.WATER_COOL,)
    return (by.WATER_WARM, by.WATER_BIG)


def dormant_months(work: T) -> tuple[int, ...]:
    """Return the months in which bare roots are planted where the crew works."""
    return months_here(DORMANT_NORTH, work.crew.hemisphere)


def mild_months(work: T) -> tuple[int, ...]:
    """Return the months of autumn and spring where the crew works."""
    return months_here(OUT_OF_HEAT_NORTH, work.crew.hemisphere)


def water_figures(work: T, today: date) -> Iterator[Figure]:
    """Yield the water of a new tree or shrub, its dates, and when it has rooted."""
    m, system = work.measures, work.crew.units
    if m.work == "tree":
        day = watering_in.on_the_day()
        yield Figure(
            name="water on the day",
            label="Water on the day",
            value=f"{Range(day.low, day.high, 'L')}",
            working=(
                f"10 to 20 US gal × 3.785 = {bare(day.low)} to {qty(day.high, 'L', 3)}, to settle the soil and soak it",
            ),
            references=(by.FIRST_WATER,),
        )
    span = each_time(work)
    if span is None:
        return
    yield _each(work, span)
    if m.calliper_mm is not None:
        yield _week(m.calliper_mm, system)
    yield _dates(work, today, span)
    yield from _rooted(work, today)


def _each(work: T, span: Span) -> Figure:
    m, system = work.measures, work.crew.units
    if m.calliper_mm is None:
        lines: tuple[str, ...] = (
            f"25 to 30 % of a {qty(m.pot_l or 0, 'L', 3)} pot = {bare(span.low)} to {qty(span.high, 'L', 3)}",
        )
    else:
        cm = m.calliper_mm / 10
        rate = span.times(1 / cm)
        lines = (
            f"{qty(cm, 'cm', 3)} × {bare(rate.low)} to {qty(rate.high, 'L', 3)} a cm = {bare(span.low)} to {qty(span.high, 'L', 3)}",
            "advice runs from 1 to 3 US gal an inch each time, and to 10 a week: feel the soil first",
        )
    return Figure(
        name="water each time",
        label="Each plant, each time",
        value=f"{Range(span.low, span.high, 'L')}",
        working=lines,
        references=sources(work),
        headline=True,
        client=True,
    )


def _week(calliper_mm: float, system: str) -> Figure:
    span = watering_in.by_calliper(calliper_mm, watering_in.WEEK_GAL_PER_IN)
    dry = watering_in.litres_per_cm(watering_in.DRY_WEEK_GAL_PER_IN) * calliper_mm / 10
    cm = calliper_mm / 10
    return Figure(
        name="water a week",
        label="In a week without rain",
        value=f"{Range(span.low, span.high, 'L')}",
        working=(
            f"{qty(cm, 'cm', 3)} × {bare(span.low / cm)} to {qty(span.high / cm, 'L', 3)} a cm = "
            f"{bare(span.low)} to {qty(span.high, 'L', 3)}",
            f"in a dry summer as much as {bare(cm)} × {bare(dry / cm)} = {qty(dry, 'L', 3)}",
        ),
        references=(by.WATER_WEEK, by.WATER_DRY),
        client=True,
    )


def rooted_days(work: T) -> int:
    """Return the days until it is left to the weather: worked where it is warm, a year elsewhere."""
    months = _months(work)
    return watering_in.YEAR if months is None else round(months.high * watering_in.MONTH_DAYS)


def _months(work: T) -> Span | None:
    m = work.measures
    if m.calliper_mm is None or summers(work) != "warm":
        return None
    return watering_in.months_to_root(m.calliper_mm, container=m.stock == "container")


def _dates(work: T, today: date, span: Span) -> Figure:
    planted = planted_on(work, today)
    found = watering_in.stages(summers(work), work.measures.calliper_mm or 0.0, rooted_days(work))
    litres = f"{Range(span.low, span.high, 'L')}"
    gone = (today - planted).days
    now = next((stage for stage in found if gone < stage.end_day), found[-1])
    low, high = 0.0, 0.0
    for stage in found:
        days = max(0, min(stage.end_day, watering_in.TWELVE_WEEKS) - stage.start_day)
        some = watering_in.waterings(days, stage.every_low, stage.every_high)
        low, high = low + some.low, high + some.high
    return Figure(
        name="watering now",
        label="Watering, as it stands",
        value=f"every {_every(now)}",
        working=(
            f"planted {dated(planted, 'plain')}",
            *(f"days {stage.start_day} to {stage.end_day}: every {_every(stage)}" for stage in found),
            f"in the first 12 weeks {bare(low)} to {bare(high)} waterings",
        ),
        references=sources(work),
        table=Table(
            columns=("From", "To", "Every", "Each plant"),
            units=("", "", "", ""),
            rows=tuple(
                (
                    planted + timedelta(days=stage.start_day),
                    planted + timedelta(days=stage.end_day - 1),
                    _every(stage),
                    litres,
                )
                for stage in found
            ),
        ),
        client=True,
    )


def _every(stage: Stage) -> str:
    """Return how often in words: `day`, `2 to 3 days`."""
    if stage.every_low != stage.every_high:
        return f"{stage.every_low} to {stage.every_high} days"
    return {1: "day", 7: "week"}.get(stage.every_low, f"{stage.every_low} days")


def _rooted(work: T, today: date) -> Iterator[Figure]:
    m, months = work.measures, _months(work)
    if months is None or m.calliper_mm is None:
        return
    planted, inches = planted_on(work, today), m.calliper_mm / 25.4
    low, high = (end / inches for end in months)
    day = planted + timedelta(days=rooted_days(work))
    pot = ", 1 to 2 of them for the pot" if m.stock == "container" else ""
    yield Figure(
        name="rooted by",
        label="Rooted, and left to the weather",
        value=day,
        working=(
            f"{bare(inches)} in × {bare(low)} to {bare(high)} months an inch{pot} = "
            f"{bare(months.low)} to {bare(months.high)} months",
            f"{bare(months.high)} months on from {dated(planted, 'plain')}: {dated(day, 'plain')}",
        ),
        references=(by.ESTABLISHED, by.WATER_WARM),
        client=True,
    )


def season_figures(work: T) -> Iterator[Figure]:
    """Yield the months to plant in, where the crew works."""
    bare = work.measures.stock == "bare root"
    months = dormant_months(work)
    north = "November to March in the north"
    yield Figure(
        name="planting months",
        label="Plant in",
        value=month_run(months) if bare else "autumn or spring",
        working=(
            f"bare roots while they sleep: {north}, six months on in the south"
            if bare
            else "out of the heat, and with time to root before it or before the frost",
        ),
        references=(by.GRANT,) if bare else (by.SEASON,),
    )
