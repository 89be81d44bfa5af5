"""The figures of running water: rate, evenness, run time, and cycle and soak."""

from collections.abc import Iterator
from math import ceil

from howto.families.watering import formulae, needs, plan, soil_water
from howto.families.watering import references as by
from howto.families.watering.measures import WateringMeasures
from howto.model.figure import Figure, Table
from howto.model.reference import GEOMETRY
from howto.model.work import Work
from howto.quantities import show_number as num
from howto.quantities.amounts import bare, mm, percent, qty

T = Work[WateringMeasures]
LEAST_SOAK_MIN = 30.0  # see references.SOAK
CLAY_RUN_MIN = 6.0  # see references.SOAK
CLAYS = ("clay", "silty clay")
USUAL_RUN_MIN = 15.0  # ours: a cycle where nobody timed the soil and it is no clay
MOST_SOAK_MIN = 1_440.0  # ours: a day's rest is soak enough for any soil


def putting_on(work: T) -> Iterator[Figure]:
    """Yield what concerns taps, heads and drippers."""
    if work.measures.method == "sprinkler":
        yield from _rate(work)
        yield from _evenness(work)
        yield from _uneven(work)
    yield from _run(work)
    yield from _bulb(work)
    if work.measures.method == "sprinkler":
        yield from _cycles(work)


def _rate(work: T) -> Iterator[Figure]:
    rate = plan.sprinkler_rate(work)
    if rate is not None:
        yield Figure(
            name="sprinkler rate",
            label="Sprinkler rate",
            value=rate.value,
            unit="mm/h",
            working=rate.working,
            references=rate.references,
        )
    intake = needs.steady_intake(work)
    yield Figure(
        name="soil intake",
        label="Soil drinks, once wet",
        value=intake.value,
        unit="mm/h",
        working=intake.working,
        references=intake.references,
    )


def _evenness(work: T) -> Iterator[Figure]:
    even, caught = plan.evenness(work), plan.readings(work.measures)
    if even is None:
        return
    working: tuple[str, ...] = (f"as written: {percent(even * 100)}",)
    if caught:
        low = formulae.low_quarter(caught)
        quarter = f"{len(caught)} / 4, rounded up = {len(low)}"
        working = (
            f"mean of {len(caught)} cans: {bare(sum(caught), 5)} / {len(caught)} = {qty(formulae.mean(caught), 'mL', 4)}",
            f"lowest {quarter}: ({' + '.join(num(each) for each in low[:6])}{' + ...' if len(low) > 6 else ''}) / "
            f"{len(low)} = {qty(formulae.mean(low), 'mL', 4)}",
            f"{bare(formulae.mean(low), 4)} / {bare(formulae.mean(caught), 4)} = {percent(even * 100, 4)}",
        )
    said = "even" if even >= 0.8 else "very uneven: mend the heads first" if even < 0.6 else "fair"
    yield Figure(
        name="evenness",
        label="Evenness, low quarter",
        value=even * 100,
        unit="%",
        working=(*working, f"under 60 % is very uneven, 80 % or more is even: {said}"),
        references=(by.UNIFORMITY, by.QUARTER),
    )


def _uneven(work: T) -> Iterator[Figure]:
    uneven = plan.multiplier(work)
    if uneven is None:
        return
    yield Figure(
        name="uneven factor",
        label="Run time longer by",
        value=uneven.value,
        working=uneven.working,
        references=uneven.references,
    )


def _run(work: T) -> Iterator[Figure]:
    run = plan.run_time(work)
    if run is None:
        return
    yield Figure(
        name="run time",
        label="Run time each watering",
        value=run.value,
        unit="min",
        working=run.working,
        references=run.references,
        headline=True,
        client=True,
        digits=2,
    )


def _bulb(work: T) -> Iterator[Figure]:
    bulb = plan.bulb(work)
    if bulb is None:
        return
    yield Figure(
        name="wet patch",
        label="Depth wet under each dripper" if work.measures.method == "drip" else "Depth wet at each plant",
        value=bulb.deep_m * 1000,
        unit="mm",
        working=(
            f"{qty(bulb.water_l, 'L', 3)} each makes half a ball, and goes deeper once it is "
            f"{mm(plan.wetted_width_mm(work), 3)} across in {needs.soil_name(work)}; "
            f"here {qty(bulb.wide_m, 'm', 3)}",
            f"water fills {bare(bulb.share)} of the soil: {qty(bulb.water_l / 1000, 'm³', 3)} / "
            f"(2/3 x π x {bare(bulb.wide_m / 2)}² x {bare(bulb.share)}) = {qty(bulb.deep_m, 'm', 3)}",
        ),
        references=(by.WETTED_WIDTH, GEOMETRY, *((by.BALL, by.BALL_DEPTH) if work.measures.is_new else ())),
    )


def run_minutes(work: T) -> float | None:
    """Return the whole run: as written, else as worked out."""
    own, found = work.measures.run_minutes, plan.run_time(work)
    return own if own is not None else None if found is None else found.value


def cycle_limit(work: T) -> tuple[float, str] | None:
    """Return the longest single cycle in minutes and why, or None where the soil keeps up with the sprinkler.

    Hung's formula where the soil was timed; 6 minutes on clay; else a quarter of an hour.
    """
    rate, steady = plan.sprinkler_rate(work), needs.steady_intake(work).value
    if rate is None or rate.value <= steady:
        return None
    m, timed = work.measures, plan.longest_run(work)
    if timed is not None and m.first_intake_mm_per_h is not None and m.intake_decay is not None:
        if timed <= 0:
            return 1.0, f"{qty(rate.value, 'mm/h', 3)} is more than even dry soil takes: the shortest cycle, 1 min"
        p, f0, fc, b = rate.value, m.first_intake_mm_per_h, steady, m.intake_decay
        form = (
            f"60 / ({bare(p)} x {bare(b)}) x ({bare(f0)} - {bare(p)} + {bare(fc)} x "
            f"ln(({bare(f0)} - {bare(fc)}) / ({bare(p)} - {bare(fc)}))) = {qty(timed, 'min', 3)}"
        )
        return max(1.0, timed), form
    if needs.soil_name(work) in CLAYS and m.intake_mm_per_h is None:
        return CLAY_RUN_MIN, f"clay: no more than {qty(CLAY_RUN_MIN, 'min', 3)} at a time"
    return USUAL_RUN_MIN, f"soil not timed: short cycles of at most {qty(USUAL_RUN_MIN, 'min', 3)}"


def cycles_for(work: T) -> int | None:
    """Return how many cycles a run should be split into; None where it need not be or is not known."""
    total, limit = run_minutes(work), cycle_limit(work)
    if total is None or limit is None:
        return None
    return soil_water.cycles_needed(total, limit[0])


def soak_for(work: T, cycles: int) -> float | None:
    """Return the least soak between cycles in whole minutes, 30 to a day; None where nothing is known."""
    total, rate = run_minutes(work), plan.sprinkler_rate(work)
    if total is None or rate is None:
        return None
    sinks = soil_water.soak_minutes(total / cycles, rate.value, needs.steady_intake(work).value)
    return float(ceil(min(MOST_SOAK_MIN, max(LEAST_SOAK_MIN, sinks)) - 1e-9))


def _cycles(work: T) -> Iterator[Figure]:
    total, limit = run_minutes(work), cycle_limit(work)
    rate, intake = plan.sprinkler_rate(work), needs.steady_intake(work)
    cycles = cycles_for(work)
    if total is None or limit is None or rate is None or cycles is None:
        return
    cycles = work.measures.cycles or cycles
    sources = (by.HUNG,) if plan.longest_run(work) is not None else (by.SOAK, by.INTAKE)
    yield Figure(
        name="longest run",
        label="Longest run before water runs off",
        value=limit[0],
        unit="min",
        working=(f"{qty(rate.value, 'mm/h', 3)} falls, wet soil takes {qty(intake.value, 'mm/h', 3)}", limit[1]),
        references=sources,
    )
    yield Figure(
        name="cycles needed",
        label="Cycles",
        value=float(cycles),
        working=(
            f"{qty(total, 'min', 3)} in {cycles} equal cycles = {qty(total / cycles, 'min', 3)} each (longest {qty(limit[0], 'min', 3)})",
        ),
        references=sources,
        digits=2,
    )
    if cycles > 1:
        yield _soak(work, total, cycles)


def _soak(work: T, total: float, cycles: int) -> Figure:
    rate, steady = plan.sprinkler_rate(work), needs.steady_intake(work).value
    falls = rate.value if rate else steady
    least = soak_for(work, cycles) or LEAST_SOAK_MIN
    own = work.measures.soak_minutes
    soak = least if own is None else own
    sinks = soil_water.soak_minutes(total / cycles, falls, steady)
    rows = tuple(
        (float(number), cycle.on, cycle.off) for number, cycle in enumerate(soil_water.day_plan(total, cycles, soak), 1)
    )
    return Figure(
        name="soak time",
        label="Soak between cycles",
        value=soak,
        unit="min",
        working=(
            f"{qty(total / cycles, 'min', 3)} x ({bare(falls)} / {bare(steady)} - 1) = {qty(sinks, 'min', 3)} to sink in",
            f"at least {qty(LEAST_SOAK_MIN, 'min', 3)} and at most a day, whole minutes up = {qty(least, 'min', 3)}"
            + ("" if own is None else f"; as written {qty(own, 'min', 3)}"),
        ),
        references=(GEOMETRY, by.SOAK),
        table=Table(columns=("Cycle", "On", "Off"), units=("", "min", "min"), rows=rows),
    )
