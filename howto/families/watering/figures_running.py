"""The figures of running water: rate, evenness, run time, and cycle and soak."""

from collections.abc import Iterator
from math import ceil

from howto.families.watering import formulae, needs, plan, soil_water
from howto.families.watering import references as by
from howto.families.watering.measures import DAY_MIN, WateringMeasures
from howto.families.watering.needs import WorkedSum
from howto.model.figure import Figure, Table
from howto.model.reference import GEOMETRY, Reference
from howto.model.work import Work
from howto.quantities.amounts import Count, Word, Words, bare, mm, percent, qty

T = Work[WateringMeasures]
LEAST_SOAK_MIN = 30.0  # see references.SOAK
CLAY_RUN_MIN = 6.0  # see references.SOAK
CLAYS = ("clay", "silty clay")
USUAL_RUN_MIN = 15.0  # ours: a cycle where nobody timed the soil and it is no clay
SHORTEST_RUN_MIN = 1.0
MOST_SOAK_MIN = DAY_MIN  # ours: a day's rest is soak enough for any soil
SHOWN_CANS = 6  # of a sum; the rest are dots


def putting_on(work: T) -> Iterator[Figure]:
    """Yield what concerns taps, heads and drippers."""
    m = work.measures
    if m.method == "sprinkler":
        if (rate := plan.sprinkler_rate(work)) is not None:
            yield rate.figure("sprinkler rate", "Sprinkler rate", "mm/h")
        yield needs.steady_intake(work).figure("soil intake", "Soil drinks, once wet", "mm/h")
        if (even := plan.evenness(work)) is not None:
            yield _evenness(even * 100, plan.readings(m))
        if (uneven := plan.multiplier(work)) is not None:
            yield uneven.figure("uneven factor", "Run time longer by")
    if (run := plan.run_time(work)) is not None:
        yield run.figure("run time", "Run time each watering", "min", headline=True, client=True, digits=2)
    if (bulb := plan.bulb(work)) is not None:
        yield _bulb(work, bulb)
    if m.method == "sprinkler":
        yield from _cycles(work)


def _evenness(even: float, caught: tuple[float, ...]) -> Figure:
    lines: tuple[Words, ...] = (f"as written: {percent(even)}",)
    if caught:
        low, mean = formulae.low_quarter(caught), formulae.mean(caught)
        dry, cans, few = formulae.mean(low), bare(len(caught)), bare(len(low))
        terms = " + ".join(str(bare(each)) for each in low[:SHOWN_CANS])
        lines = (
            f"mean of {Count(len(caught), 'can', 'cans')}: {bare(sum(caught), 5)} / {cans} = {qty(mean, 'mL', 4)}",
            f"lowest {cans} / 4, rounded up = {few}: ({terms}{' + ...' if len(low) > SHOWN_CANS else ''}) / {few} = "
            f"{qty(dry, 'mL', 4)}",
            f"{bare(dry, 4)} / {bare(mean, 4)} = {percent(even, 4)}",
        )
    said = "very uneven: mend the heads first" if not plan.VERY_UNEVEN.allows(even) else "fair"
    said = "even" if plan.EVEN.allows(even) else said
    scale = f"under {plan.VERY_UNEVEN.least} is very uneven, {plan.EVEN.least} or more is even: {Word(said)}"
    return WorkedSum(even, (*lines, scale), (by.UNIFORMITY, by.QUARTER)).figure(
        "evenness", "Evenness, low quarter", "%"
    )


def _bulb(work: T, bulb: plan.Bulb) -> Figure:
    share = bare(bulb.share)
    lines = (
        f"{qty(bulb.water_l, 'L')} each makes half a ball, and goes deeper once it is {mm(plan.wetted_width_mm(work))} "
        f"across in {Word(needs.soil_name(work))}; here {qty(bulb.wide_m, 'm')}",
        f"water fills {share} of the soil: {qty(bulb.water_l / 1000, 'm³')} / (2/3 x π x {bare(bulb.wide_m / 2)}² x "
        f"{share}) = {qty(bulb.deep_m, 'm')}",
    )
    sources = (by.WETTED_WIDTH, GEOMETRY, *((by.BALL, by.BALL_DEPTH) if work.measures.is_new else ()))
    label = "Depth wet under each dripper" if work.measures.method == "drip" else "Depth wet at each plant"
    return WorkedSum(bulb.deep_m * 1000, lines, sources).figure("wet patch", label, "mm")


def run_minutes(work: T) -> float | None:
    """Return the whole run: as written, else as worked out."""
    own, found = work.measures.run_minutes, plan.run_time(work)
    return own if own is not None else None if found is None else found.value


def cycle_limit(work: T) -> WorkedSum | None:
    """Return the longest single cycle in minutes and why, or None where the soil keeps up with the sprinkler.

    Hung's formula where the soil was timed; the town's practice on clay; else a usual cycle.
    """
    rate, intake = plan.sprinkler_rate(work), needs.steady_intake(work)
    if rate is None or rate.value <= intake.value:
        return None
    m, timed = work.measures, plan.longest_run(work)
    sources: tuple[Reference, ...] = (by.SOAK, by.INTAKE)
    if timed is not None and m.first_intake_mm_per_h is not None and m.intake_decay is not None:
        longest, sources = max(SHORTEST_RUN_MIN, timed), (by.HUNG,)
        p, f0, fc, b = (bare(each) for each in (rate.value, m.first_intake_mm_per_h, intake.value, m.intake_decay))
        said = f"60 / ({p} x {b}) x ({f0} - {p} + {fc} x ln(({f0} - {fc}) / ({p} - {fc}))) = {qty(timed, 'min', 3)}"
        if timed <= 0:
            shortest = qty(SHORTEST_RUN_MIN, "min", 3)
            said = f"{qty(rate.value, 'mm/h', 3)} is more than even dry soil takes: the shortest cycle, {shortest}"
    elif needs.soil_name(work) in CLAYS and m.intake_mm_per_h is None:
        longest, said = CLAY_RUN_MIN, f"clay: no more than {qty(CLAY_RUN_MIN, 'min', 3)} at a time"
    else:
        longest, said = USUAL_RUN_MIN, f"soil not timed: short cycles of at most {qty(USUAL_RUN_MIN, 'min', 3)}"
    return WorkedSum(
        longest, (f"{qty(rate.value, 'mm/h')} falls, wet soil takes {qty(intake.value, 'mm/h')}", said), sources
    )


def cycles_for(work: T) -> int | None:
    """Return how many cycles a run should be split into; None where it need not be or is not known."""
    total, limit = run_minutes(work), cycle_limit(work)
    return None if total is None or limit is None else soil_water.cycles_needed(total, limit.value)


def soak_for(work: T, cycles: int) -> WorkedSum | None:
    """Return the least soak between cycles in whole minutes; None where nothing is known."""
    total, rate = run_minutes(work), plan.sprinkler_rate(work)
    if total is None or rate is None:
        return None
    on, steady = total / cycles, needs.steady_intake(work).value
    sinks = soil_water.soak_minutes(on, rate.value, steady)
    least = float(ceil(min(MOST_SOAK_MIN, max(LEAST_SOAK_MIN, sinks)) - 1e-9))
    lines = (
        f"{qty(on, 'min', 3)} x ({bare(rate.value)} / {bare(steady)} - 1) = {qty(sinks, 'min', 3)} to sink in",
        f"at least {qty(LEAST_SOAK_MIN, 'min', 3)} and at most a day",
    )
    return WorkedSum(least, lines, (GEOMETRY, by.SOAK))


def _cycles(work: T) -> Iterator[Figure]:
    total, limit, needed = run_minutes(work), cycle_limit(work), cycles_for(work)
    if total is None or limit is None or needed is None:
        return
    cycles = work.measures.cycles or needed
    yield limit.figure("longest run", "Longest run before water runs off", "min")
    equal = f"{Count(cycles, 'equal cycle', 'equal cycles')} = {qty(total / cycles, 'min')} each"
    line = f"{qty(total, 'min')} in {equal} (longest {qty(limit.value, 'min')})"
    yield WorkedSum(float(cycles), (line,), limit.references).figure("cycles needed", "Cycles", digits=2)
    least, own = soak_for(work, cycles), work.measures.soak_minutes
    if cycles == 1 or least is None:
        return
    soak = least.value if own is None else own
    days = enumerate(soil_water.day_plan(total, cycles, soak), 1)
    rows = tuple((float(number), cycle.on, cycle.off) for number, cycle in days)
    table = Table(columns=("Cycle", "On", "Off"), units=("", "min", "min"), rows=rows)
    sinks, bounds = least.working
    whole = f"{bounds}, whole minutes up = {qty(least.value, 'min')}"
    lines = sinks, whole if own is None else f"{whole}; as written {qty(own, 'min')}"
    yield WorkedSum(soak, lines, least.references).figure("soak time", "Soak between cycles", "min", table=table)
