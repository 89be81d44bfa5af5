"""The figures of a watering, in printing order, each with working a pencil can follow."""

from collections.abc import Iterator
from datetime import date

from howto.families.watering import formulae, garden, needs, plan, soil_water
from howto.families.watering import references as by
from howto.families.watering.figures_running import putting_on
from howto.families.watering.figures_young import young
from howto.families.watering.measures import WateringMeasures
from howto.model.figure import Figure, Table
from howto.model.work import Work
from howto.quantities.amounts import bare, mm, qty
from howto.seasons import month_name

T = Work[WateringMeasures]
BY_HAND = ("hose", "can")


def figures(work: T, today: date) -> Iterator[Figure]:
    """Yield the figures of one planting and its watering; `today` is the day of the visit."""
    m = work.measures
    if not m.is_new or m.area_m2 is not None:
        yield from _weather(work)
        yield from _plants(work)
    yield from _soil(work)
    if not m.is_new:
        yield from _each_time(work)
        yield from _a_week(work)
    yield from putting_on(work)
    yield from young(work, today)


def _weather(work: T) -> Iterator[Figure]:
    found = needs.reference_et(work)
    if found is None:
        return
    year = garden.year_of_reference_et(work.crew)
    factor = needs.coefficient(work).value
    rows = tuple((month_name(month), each, each * factor * 7) for month, each in enumerate(year, 1))
    table = Table(
        columns=("Month", "Reference evapotranspiration", "This planting, a week"),
        units=("", "mm/day", "L/m2"),
        rows=rows,
    )
    yield Figure(
        name="reference et",
        label="Reference evapotranspiration",
        value=found.value,
        unit="mm/day",
        working=found.working,
        references=(*found.references, *((by.FAO56,) if rows and by.FAO56 not in found.references else ())),
        table=table if rows else None,
    )


def _plants(work: T) -> Iterator[Figure]:
    factor, use = needs.coefficient(work), needs.plant_use(work)
    yield Figure(
        name="plant factor",
        label="Water use against grass",
        value=factor.value,
        working=factor.working,
        references=factor.references,
    )
    if use is None:
        return
    yield Figure(
        name="plant use",
        label="Planting uses",
        value=use.value,
        unit="mm/day",
        working=(use.working[-1], "1 mm is 1 L on each m²"),
        references=(*use.references, by.LITRE_A_MM),
    )


def _soil(work: T) -> Iterator[Figure]:
    soil, m = needs.ground(work), work.measures
    if soil is None:
        return
    yield Figure(
        name="soil holds",
        label="Water the root zone holds",
        value=soil.total_mm,
        unit="L/m2",
        working=(
            f"{soil.name}, roots {mm(soil.root_m * 1000, 3)} deep",
            f"1000 x ({bare(soil.field_capacity)} - {bare(soil.wilting_point)}) x {qty(soil.root_m, 'm', 3)} = "
            f"{mm(soil.total_mm, 3)}, or L on each m²",
        ),
        references=soil.references[:2],
    )
    yield Figure(
        name="easy water",
        label="Taken before plants slow",
        value=soil.easy_mm,
        unit="L/m2",
        working=(soil.depletion_said, f"{bare(soil.depletion)} x {bare(soil.total_mm)} = {mm(soil.easy_mm, 3)}"),
        references=soil.references,
    )
    if m.dried_mm is not None:
        yield _stress(soil, m.dried_mm)
    if not m.is_new:
        yield from _days(work, soil)


def _stress(soil: needs.Ground, dried: float) -> Figure:
    ks = soil_water.stress_factor(soil.total_mm, soil.depletion, dried)
    if dried <= soil.easy_mm:
        working = f"{mm(dried, 3)} gone is within the easy {mm(soil.easy_mm, 3)}: Ks = 1"
    else:
        working = (
            f"({bare(soil.total_mm)} - {bare(dried)}) / ((1 - {bare(soil.depletion)}) x {bare(soil.total_mm)}) = "
            f"{bare(ks)}, at least 0"
        )
    return Figure(
        name="water stress",
        label="Growth left in dry soil, Ks",
        value=ks,
        working=(working,),
        references=(by.FAO56_SOIL,),
    )


def _days(work: T, soil: needs.Ground) -> Iterator[Figure]:
    use, days = needs.plant_use(work), needs.days_between(work)
    if use is None or days is None:
        return
    kept = min(365, soil_water.whole_days(days))
    yield Figure(
        name="days between",
        label="Days between waterings",
        value=float(kept),
        unit="days",
        working=(
            f"{mm(soil.easy_mm, 3)} / {mm(use.value, 3)} a day = {bare(days)} days",
            f"rounded down, at least 1: {kept}",
        ),
        references=soil.references,
        client=True,
    )


def _each_time(work: T) -> Iterator[Figure]:
    depth, soil, m = plan.net_depth(work), needs.ground(work), work.measures
    if depth is None:
        return
    yield Figure(
        name="depth each time",
        label="Water to the roots each time",
        value=depth.value,
        unit="L/m2",
        working=depth.working,
        references=(*depth.references, by.LITRE_A_MM),
        headline=m.area_m2 is None,
    )
    if soil is not None:
        reach = soil_water.wetted_m(depth.value, soil.available, soil.depletion)
        yield Figure(
            name="wetted depth",
            label="How deep it wets",
            value=reach * 1000,
            unit="mm",
            working=(
                f"{mm(depth.value, 3)} / (1000 x {bare(soil.available)} x {bare(soil.depletion)}) = {qty(reach, 'm', 3)}",
            ),
            references=(by.DEEP, *soil.references[1:]),
        )
    total = plan.applied_litres(work)
    if total is None or m.area_m2 is None:
        return
    part, net = plan.efficiency(work), formulae.litres(m.area_m2, depth.value)
    yield Figure(
        name="litres each time",
        label="Put on each time",
        value=total,
        unit="L",
        working=(
            f"{qty(m.area_m2, 'm²', 3)} x {mm(depth.value, 3)} = {qty(net, 'L', 3)} at the roots",
            f"{bare(net)} / {bare(part.value)} ({part.working[0]}) = {qty(total, 'L', 3)}",
        ),
        references=(by.LITRE_A_MM, *part.references),
        headline=True,
        client=True,
    )


def _a_week(work: T) -> Iterator[Figure]:
    use, area = needs.plant_use(work), work.measures.area_m2
    if use is None or area is None:
        return
    part = plan.efficiency(work)
    net = formulae.litres(area, use.value * 7)
    week = formulae.applied(net, part.value)
    yield Figure(
        name="litres a week",
        label="Water a week without rain",
        value=week,
        unit="L",
        working=(
            f"{qty(area, 'm²', 3)} x {mm(use.value, 3)} x 7 = {qty(net, 'L', 3)} at the roots",
            f"{bare(net)} / {bare(part.value)} = {qty(week, 'L', 3)} put on",
        ),
        references=(*use.references, by.LITRE_A_MM, *part.references),
        client=True,
    )
    days = needs.kept_interval(work)
    if week <= 0 or days is None or work.measures.method not in BY_HAND:
        return
    system, size = work.crew.units, work.measures.can_size_l
    times = garden.times_a_week(days)
    can = size or garden.usual_can_l(system)
    yield Figure(
        name="cans",
        label="In watering cans",
        value=garden.can_words(week / times, times, system, size),
        working=(
            f"every {bare(days)} days: {times} times a week",
            f"{qty(week, 'L', 3)} / {times} = {qty(week / times, 'L', 3)} each time; / {qty(can, 'L', 3)} a can = "
            f"{bare(week / times / can)} cans, filled up to the next quarter",
        ),
        references=(by.LITRE_A_MM,),
        client=True,
    )
