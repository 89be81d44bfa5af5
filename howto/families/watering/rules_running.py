"""The rules of running water: heads, catch cans, run time, cycle and soak, and drippers."""

from collections.abc import Iterator

from howto.families.watering import figures_running as running
from howto.families.watering import formulae, needs, plan, tables
from howto.families.watering import references as by
from howto.families.watering.measures import DAY_MIN, MOST_CANS, WateringMeasures
from howto.families.watering.mends import rewritten
from howto.findings import Severity
from howto.model.family import Breach, Limit, Rule, line_wanted, outside, rule, typed
from howto.model.reference import FORMAT, GEOMETRY
from howto.model.wording import says
from howto.model.work import Work
from howto.quantities import round_up
from howto.quantities.amounts import Count, Share, Word, bare, percent, qty

T = Work[WateringMeasures]

RUN_SLACK = 0.1  # ours: how far a written run may stand from the one worked out
SLACK = str(Share(RUN_SLACK))


@rule("watering.flow-known", Severity.WARNING, FORMAT, applies="sprinklers and drip lines")
def flow_known(work: T) -> Iterator[Breach]:
    """A sprinkler's rate, or a drip line's drippers and their flow, can be told from the measures.

    Without flow there are no minutes to write on the card.
    """
    m = work.measures
    if m.method == "sprinkler" and plan.sprinkler_rate(work) is None:
        what = "nothing tells how fast the sprinkler wets the ground"
        why = "minutes = 60 x depth / rate; the rate is caught in cans, or is flow over area"
        cans = "stand cans out, write `catch cans:`, `can mouth:` and `catch:`"
        yield rewritten(
            "method", "12 mm/h", what, why, f"{cans}, or write the rate you found, such as {{}}", key="rate"
        )
    why = "hours = litres / (drippers x flow of one)"
    if m.method == "drip" and m.drippers is None:
        where = "at each plant" if m.is_new else "on the area"
        mend = f"count the drippers {where}, and write the number, such as {{}}"
        yield rewritten("method", "2", "nothing tells how many drippers there are", why, mend, key="drippers")
    if m.method == "drip" and m.dripper_flow_l_per_h is None:
        mend = "read it off the dripper or catch an hour's water, and write it, such as {}"
        yield rewritten("method", "2 L/h", "nothing tells how fast one dripper drips", why, mend, key="dripper flow")


@rule(
    "watering.can-count",
    Severity.WARNING,
    by.QUARTER,
    by.UNIFORMITY,
    applies="techniques that write a can count or catch cans",
)
def can_count(work: T) -> Iterator[Breach]:
    """Catch cans are set out in a multiple of four, so that the low quarter is a whole number of cans.

    The low quarter of 15 cans is 4 of them (49.6 % in a published set); taking 3 gives 40.1 %.
    """
    m = work.measures
    count = m.can_count or len(m.catch_cans_ml or ())
    if count % 4:
        up, quarter = min(MOST_CANS, count + 4 - count % 4), Count(formulae.quarter_size(count), "can", "cans")
        what = str(Count(count, "catch can", "catch cans"))
        rounded = f"{bare(count)} / 4 = {bare(count / 4)}: the low quarter is rounded up to {quarter}"
        mend = f"set out {Count(up, 'can', 'cans')} the next time, and write {{}}"
        field = "can_count" if m.can_count else "catch_cans_ml"
        yield rewritten(field, str(up), what, f"{rounded}, which is more than a quarter", mend, key="can count")


@rule("watering.cans-caught", Severity.ERROR, by.QUARTER, GEOMETRY, applies="techniques that write catch cans")
def cans_caught(work: T) -> Iterator[Breach]:
    """Catch cans together caught something.

    Evenness is the mean of the lowest quarter over the mean of all, and needs water in the cans.
    """
    caught = work.measures.catch_cans_ml
    if caught and not plan.readings(work.measures):
        mend = "run the sprinkler longer, and write what each can holds, such as {}"
        text = ", ".join(["12 mL"] * len(caught))
        yield rewritten("catch_cans_ml", text, "the cans caught next to nothing", mend=mend)


@rule(
    "watering.evenness-agrees",
    Severity.WARNING,
    by.QUARTER,
    GEOMETRY,
    applies="techniques that write both catch cans and a uniformity",
)
def evenness_agrees(work: T) -> Iterator[Breach]:
    """A written uniformity is the one the cans give.

    Two numbers for one thing: the one that was caught is the one to keep.
    """
    caught, own = plan.readings(work.measures), work.measures.uniformity_percent
    if not caught or own is None or abs((found := formulae.uniformity(caught) * 100) - own) <= 1:
        return
    low, mean = formulae.low_quarter(caught), qty(formulae.mean(caught), "mL", 3)
    what = f"an evenness of {percent(own)} is written, and the cans give {percent(found)}"
    why = f"lowest {bare(len(low))} of {bare(len(caught))}: mean {bare(formulae.mean(low))} / {mean}"
    text = typed(float(f"{max(1.0, found):.3g}"), "%")
    yield rewritten("uniformity_percent", text, what, why, "write {}, or take the line out", also="catch_cans_ml")


@rule(
    "watering.uneven-heads",
    Severity.WARNING,
    by.UNIFORMITY,
    by.QUARTER,
    applies="sprinklers whose evenness is known",
    uneven=plan.VERY_UNEVEN.least,
    even=plan.EVEN.least,
)
def uneven_heads(work: T) -> Iterator[Breach]:
    """A very uneven sprinkler is put right before it is run longer, and the steps say so.

    Below {uneven} water is very uneven, at {even} or more even; running longer only drowns the wet part.
    """
    even = plan.evenness(work)
    if work.measures.method != "sprinkler" or even is None or plan.VERY_UNEVEN.allows(even * 100):
        return
    if says(work, "nozzle", "straighten", "clean the head", "level the head", "upright", "put the heads right"):
        return
    longer = formulae.strict_multiplier(even) if even >= plan.LEAST_EVEN else formulae.soft_multiplier(even)
    yield line_wanted(
        "Steps",
        "1. **Put the heads right.** Stand each head upright, clean its nozzle, and catch again.",
        field="measures.catch_cans_ml" if plan.readings(work.measures) else "measures.uniformity_percent",
        what=f"evenness is {percent(even * 100)}, and no step puts the heads right",
        why=f"under {plan.VERY_UNEVEN.least} is very uneven: the dry quarter would need {bare(longer)} times the run, "
        "and the rest drowns",
    )


@rule("watering.run-time", Severity.WARNING, by.SPRINKLER_RATE, applies="sprinklers that write a run", slack=SLACK)
def run_time(work: T) -> Iterator[Breach]:
    """A sprinkler's written run puts on the water that is wanted, within {slack}.

    At 1 in/h, 88 min a week are 1.467 in; a run that is off by a third leaves a third dry.
    """
    if work.measures.method == "sprinkler":
        yield from _run(work)


@rule("watering.drip-time", Severity.WARNING, by.DRIP_TIME, applies="drip lines that write a run", slack=SLACK)
def drip_time(work: T) -> Iterator[Breach]:
    """A drip line's written run gives the water that is wanted, within {slack}.

    1.8 L from a dripper of 8 L/h takes 13.5 min; an hour would give four times as much.
    """
    if work.measures.method == "drip":
        yield from _run(work)


def _run(work: T) -> Iterator[Breach]:
    own, found = work.measures.run_minutes, plan.run_time(work)
    if own is None or found is None or not 0.1 <= found.value <= DAY_MIN:
        return
    if abs(own - found.value) > max(RUN_SLACK * found.value, 0.5):
        text = typed(min(DAY_MIN, round_up(found.value, 1.0 if found.value >= 10 else 0.1)), "min")
        what = f"it runs {qty(own, 'min', 3)}, and the water wanted takes {qty(found.value, 'min', 3)}"
        yield rewritten("run_minutes", text, what, found.working[-1])


@rule(
    "watering.cycle-length",
    Severity.WARNING,
    by.INTAKE,
    by.SOAK,
    by.HUNG,
    applies="sprinklers that write a run or cycles, where the rate is above the soil's intake",
    clay=str(qty(running.CLAY_RUN_MIN, "min")),
)
def cycle_length(work: T) -> Iterator[Breach]:
    """No single run is longer than the soil takes without water running off.

    Wet soil takes less than most sprinklers give. Timed soil has its own longest run; a town on clay stops at {clay}
    at a time. Published intakes differ by a factor of 2, so the lowest is used: measure yours.
    """
    m, needed, limit, total = (
        work.measures,
        running.cycles_for(work),
        running.cycle_limit(work),
        running.run_minutes(work),
    )
    rate, intake = plan.sprinkler_rate(work), needs.steady_intake(work)
    if m.method != "sprinkler" or rate is None or needed is None or limit is None or total is None or needed > DAY_MIN:
        return
    if (m.cycles is None and m.run_minutes is None) or (m.cycles or 1) >= needed:
        return
    what = f"the sprinkler runs {qty(total / (m.cycles or 1), 'min', 3)} at a time"
    falls, soil = f"{qty(rate.value, 'mm/h', 3)} falls", Word(needs.soil_name(work))
    sums = f"{limit.working[1]}; {bare(total)} / {bare(limit.value)} rounded up = {bare(needed)}"
    why = f"{falls} and wet {soil} takes {qty(intake.value, 'mm/h', 3)}; {sums}"
    field = "run_minutes" if m.cycles is None else "cycles"
    yield rewritten(field, str(needed), what, why, "write {} or more", key="cycles")


@rule(
    "watering.soak-gap",
    Severity.WARNING,
    by.SOAK,
    by.INTAKE,
    GEOMETRY,
    applies="sprinklers that write cycles and a soak",
    least=str(qty(running.LEAST_SOAK_MIN, "min")),
)
def soak_gap(work: T) -> Iterator[Breach]:
    """Between two cycles the water has time to sink in, {least} at least.

    What fell faster than the soil drinks stands on top until it has caught up.
    """
    m = work.measures
    cycles, own = m.cycles or 1, m.soak_minutes
    least = running.soak_for(work, cycles)
    if m.method == "sprinkler" and cycles > 1 and own is not None and least is not None and own < least.value:
        what, why = f"{qty(own, 'min', 3)} of soak between cycles", "; ".join(least.working)
        yield rewritten("soak_minutes", typed(least.value, "min"), what, why, "write {} or more")


@rule("watering.dripper-spacing", Severity.ADVICE, by.WETTED_WIDTH, applies="drip lines that write a dripper spacing")
def dripper_spacing(work: T) -> Iterator[Breach]:
    """Drippers stand close enough for their wet patches to meet.

    A line of dry soil between two drippers is a line without roots.
    """
    soil = needs.soil_name(work)
    if work.measures.method == "drip":
        limit = Limit(unit="mm", high=tables.SOILS[soil].wide_mm, reference=by.WETTED_WIDTH)
        why = f"in {Word(soil)} one dripper wets a patch about {{most}} across; wider leaves dry soil"
        yield from outside(limit, work, "dripper_spacing_mm", what="drippers stand {found} apart", why=why)


RUNNING_RULES: tuple[Rule[WateringMeasures], ...] = (
    flow_known,
    can_count,
    cans_caught,
    evenness_agrees,
    uneven_heads,
    run_time,
    drip_time,
    cycle_length,
    soak_gap,
    dripper_spacing,
)
