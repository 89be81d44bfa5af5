"""The figures of a watering, in printing order, each with working a pencil can follow."""

from collections.abc import Iterator
from datetime import date

from howto.families.watering import formulae, garden, needs, plan, soil_water
from howto.families.watering import references as by
from howto.families.watering.figures_running import putting_on
from howto.families.watering.figures_young import cans, per_can, young
from howto.families.watering.measures import WateringMeasures
from howto.families.watering.needs import WorkedSum
from howto.model.figure import Figure, Table
from howto.model.work import Work
from howto.quantities.amounts import Word, bare, mm, month_named, qty

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
    factor = needs.coefficient(work).value
    year = enumerate(garden.year_of_reference_et(work.crew), 1)
    rows = tuple((str(month_named(month)), each, each * factor * 7) for month, each in year)
    if rows and by.FAO56 not in found.references:
        found = found._replace(references=(*found.references, by.FAO56))
    columns = ("Month", "Reference evapotranspiration", "This planting, a week")
    table = Table(columns=columns, units=("", "mm/day", "L/m2"), rows=rows) if rows else None
    yield found.figure("reference et", "Reference evapotranspiration", "mm/day", table=table)


def _plants(work: T) -> Iterator[Figure]:
    yield needs.coefficient(work).figure("plant factor", "Water use against grass")
    if (use := needs.plant_use(work)) is not None:
        lines = use.working[-1], f"{mm(1)} is {qty(1, 'L')} on each m²"
        told = WorkedSum(use.value, lines, (*use.references, by.LITRE_A_MM))
        yield told.figure("plant use", "Planting uses", "mm/day")


def _soil(work: T) -> Iterator[Figure]:
    soil, m = needs.ground(work), work.measures
    if soil is None:
        return
    lines = (
        f"{Word(soil.name)}, roots {mm(soil.root_m * 1000)} deep",
        f"1000 x ({bare(soil.field_capacity)} - {bare(soil.wilting_point)}) x {qty(soil.root_m, 'm')} = "
        f"{mm(soil.total_mm)}, or L on each m²",
    )
    holds = WorkedSum(soil.total_mm, lines, soil.references[:2])
    yield holds.figure("soil holds", "Water the root zone holds", "L/m2")
    line = f"{bare(soil.depletion)} x {bare(soil.total_mm)} = {mm(soil.easy_mm)}"
    easy = WorkedSum(soil.easy_mm, (soil.depletion_said, line), soil.references)
    yield easy.figure("easy water", "Taken before plants slow", "L/m2")
    if m.dried_mm is not None:
        yield _stress(soil, m.dried_mm).figure("water stress", "Growth left in dry soil, Ks")
    use, days = needs.plant_use(work), needs.days_between(work)
    if not m.is_new and use is not None and days is not None:
        kept = soil_water.whole_days(days)
        lines = (
            f"{mm(soil.easy_mm)} / {mm(use.value)} a day = {bare(days)} days",
            f"rounded down, at least 1: {bare(kept)}",
        )
        between = WorkedSum(float(kept), lines, soil.references)
        yield between.figure("days between", "Days between waterings", "days", client=True)


def _stress(soil: needs.RootZone, dried: float) -> WorkedSum:
    ks = soil_water.stress_factor(soil.total_mm, soil.depletion, dried)
    if dried <= soil.easy_mm:
        line = f"{mm(dried)} gone is within the easy {mm(soil.easy_mm)}: Ks = 1"
    else:
        whole = bare(soil.total_mm)
        line = f"({whole} - {bare(dried)}) / ((1 - {bare(soil.depletion)}) x {whole}) = {bare(ks)}, at least 0"
    return WorkedSum(ks, (line,), (by.FAO56_SOIL,))


def _each_time(work: T) -> Iterator[Figure]:
    depth, soil, area = plan.net_depth(work), needs.ground(work), work.measures.area_m2
    if depth is None:
        return
    each = depth._replace(references=(*depth.references, by.LITRE_A_MM))
    yield each.figure("depth each time", "Water to the roots each time", "L/m2", headline=area is None)
    if soil is not None:
        reach = soil_water.wetted_m(depth.value, soil.available, soil.depletion)
        line = f"{mm(depth.value)} / (1000 x {bare(soil.available)} x {bare(soil.depletion)}) = {qty(reach, 'm')}"
        wets = WorkedSum(reach * 1000, (line,), (by.DEEP, *soil.references[1:]))
        yield wets.figure("wetted depth", "How deep it wets", "mm")
    if area is None:
        return
    part, net = plan.efficiency(work), formulae.litres(area, depth.value)
    total = formulae.applied(net, part.value)
    lines = (
        f"{qty(area, 'm²')} x {mm(depth.value)} = {qty(net, 'L')} at the roots",
        f"{bare(net)} / {bare(part.value)} ({part.working[0]}) = {qty(total, 'L')}",
    )
    put_on = WorkedSum(total, lines, (by.LITRE_A_MM, *part.references))
    yield put_on.figure("litres each time", "Put on each time", "L", headline=True, client=True)


def _a_week(work: T) -> Iterator[Figure]:
    m, use = work.measures, needs.plant_use(work)
    if use is None or m.area_m2 is None:
        return
    part, net = plan.efficiency(work), formulae.litres(m.area_m2, use.value * 7)
    week = formulae.applied(net, part.value)
    lines = (
        f"{qty(m.area_m2, 'm²')} x {mm(use.value)} x 7 = {qty(net, 'L')} at the roots",
        f"{bare(net)} / {bare(part.value)} = {qty(week, 'L')} put on",
    )
    put_on = WorkedSum(week, lines, (*use.references, by.LITRE_A_MM, *part.references))
    yield put_on.figure("litres a week", "Water a week without rain", "L", client=True)
    days = needs.kept_interval(work)
    if week > 0 and days is not None and m.method in BY_HAND:
        times = garden.times_a_week(days)
        each = week / times
        lines = (
            f"every {bare(days)} days: {bare(times)} times a week",
            f"{qty(week, 'L')} / {bare(times)} = {qty(each, 'L')} each time; {per_can(work, each)}",
        )
        yield cans(work, each, times, lines, (by.LITRE_A_MM,))
