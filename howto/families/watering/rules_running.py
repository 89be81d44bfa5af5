"""The rules of running water: heads, catch cans, run time, cycle and soak, and drippers."""

from collections.abc import Iterator

from howto.families.watering import formulae, needs, plan, tables
from howto.families.watering import references as by
from howto.families.watering.figures_running import cycle_limit, cycles_for, run_minutes, soak_for
from howto.families.watering.measures import WateringMeasures
from howto.findings import Severity
from howto.model.family import SHARE, Breach, Edit, Limit, Rule, line_wanted, rule
from howto.model.reference import FORMAT, GEOMETRY
from howto.model.wording import says
from howto.model.work import Work
from howto.quantities import round_down, round_up
from howto.quantities import show_number as num
from howto.quantities.amounts import bare, mm, percent, qty

T = Work[WateringMeasures]

VERY_UNEVEN = Limit(low=0.6, unit=SHARE, of="of the mean", reference=by.UNIFORMITY)
RUN_SLACK = 0.1  # ours: how far a written run may stand from the one worked out
DAY_MIN = 1_440


@rule("watering.flow-known", Severity.WARNING, FORMAT, applies="sprinklers and drip lines")
def flow_known(work: T) -> Iterator[Breach]:
    """A sprinkler's rate, or a drip line's drippers and their flow, can be told from the measures.

    Without flow there are no minutes to write on the card.
    """
    m = work.measures
    if m.method == "sprinkler" and plan.sprinkler_rate(work) is None:
        yield Breach(
            field="measures.method",
            what="nothing tells how fast the sprinkler wets the ground",
            why="minutes = 60 x depth / rate; the rate is caught in cans, or is flow over area",
            mend="stand cans out, write `catch cans:`, `can mouth:` and `catch:`, or write the rate you found, such as "
            "`rate: 12 mm/h`",
            edit=Edit(key="rate", text="12 mm/h"),
        )
    if m.method != "drip":
        return
    where = "at each plant" if m.is_new else "on the area"
    if m.drippers is None:
        yield Breach(
            field="measures.method",
            what="nothing tells how many drippers there are",
            why="hours = litres / (drippers x flow of one)",
            mend=f"count the drippers {where}, and write the number, such as `drippers: 2`",
            edit=Edit(key="drippers", text="2"),
        )
    if m.dripper_flow_l_per_h is None:
        yield Breach(
            field="measures.method",
            what="nothing tells how fast one dripper drips",
            why="hours = litres / (drippers x flow of one)",
            mend="read it off the dripper or catch an hour's water, and write it, such as `dripper flow: 2 L/h`",
            edit=Edit(key="dripper flow", text="2 L/h"),
        )


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
    if count % 4 == 0:
        return
    up = count + 4 - count % 4 if count <= 396 else 400
    yield Breach(
        field="measures.can_count" if m.can_count else "measures.catch_cans_ml",
        what=f"{count} catch cans",
        why=f"{count} / 4 = {bare(count / 4)}: the low quarter is rounded up to {formulae.quarter_size(count)} cans, "
        "which is more than a quarter",
        mend=f"set out {up} cans the next time, and write `can count: {up}`",
        edit=Edit(key="can count", text=str(up)),
    )


@rule("watering.cans-caught", Severity.ERROR, by.QUARTER, GEOMETRY, applies="techniques that write catch cans")
def cans_caught(work: T) -> Iterator[Breach]:
    """Catch cans together caught something.

    A mean of nothing cannot be divided by.
    """
    m = work.measures
    if not m.catch_cans_ml or plan.readings(m):
        return
    sample = ", ".join(["12 mL"] * len(m.catch_cans_ml))
    yield Breach(
        field="measures.catch_cans_ml",
        what="the cans caught next to nothing",
        why="evenness is the mean of the lowest quarter over the mean of all, and needs water in the cans",
        mend=f"run the sprinkler longer, and write what each can holds, such as `catch cans: {sample}`",
        edit=Edit(key="catch cans", text=sample),
    )


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
    m = work.measures
    caught = plan.readings(m)
    if m.uniformity_percent is None or not caught:
        return
    found = formulae.uniformity(caught) * 100
    if abs(found - m.uniformity_percent) <= 1:
        return
    text = f"{num(max(1.0, found))} %"
    low = formulae.low_quarter(caught)
    yield Breach(
        field="measures.uniformity_percent",
        also="measures.catch_cans_ml",
        what=f"an evenness of {percent(m.uniformity_percent)} is written, and the cans give {percent(found)}",
        why=f"lowest {len(low)} of {len(caught)}: mean {bare(formulae.mean(low))} / {qty(formulae.mean(caught), 'mL', 3)}",
        mend=f"write `uniformity: {text}`, or take the line out",
        edit=Edit(key="uniformity", text=text),
    )


@rule(
    "watering.uneven-heads", Severity.WARNING, by.UNIFORMITY, by.QUARTER, applies="sprinklers whose evenness is known"
)
def uneven_heads(work: T) -> Iterator[Breach]:
    """A very uneven sprinkler is put right before it is run longer, and the steps say so.

    Below 60 % water is very uneven, at 80 % or more even; running longer only drowns the wet part.
    """
    even = plan.evenness(work)
    if work.measures.method != "sprinkler" or even is None or VERY_UNEVEN.allows(even):
        return
    if says(work, "nozzle", "straighten", "clean the head", "level the head", "upright", "put the heads right"):
        return
    longer = formulae.strict_multiplier(even) if even >= plan.LEAST_EVEN else formulae.soft_multiplier(even)
    line = "1. **Put the heads right.** Stand each head upright, clean its nozzle, and catch again."
    yield line_wanted(
        "Steps",
        line,
        field="measures.catch_cans_ml" if plan.readings(work.measures) else "measures.uniformity_percent",
        what=f"evenness is {percent(even * 100)}, and no step puts the heads right",
        why=f"under 60 % is very uneven: the dry quarter would need {bare(longer)} times the run, and the rest drowns",
    )


@rule("watering.run-time", Severity.WARNING, by.SPRINKLER_RATE, applies="sprinklers that write a run")
def run_time(work: T) -> Iterator[Breach]:
    """A sprinkler's written run puts on the water that is wanted, within a tenth.

    At 1 in/h, 88 min a week are 1.467 in; a run that is off by a third leaves a third dry.
    """
    if work.measures.method == "sprinkler":
        yield from _run(work)


@rule("watering.drip-time", Severity.WARNING, by.DRIP_TIME, applies="drip lines that write a run")
def drip_time(work: T) -> Iterator[Breach]:
    """A drip line's written run gives the water that is wanted, within a tenth.

    1.8 L from a dripper of 8 L/h takes 13.5 min; an hour would give four times as much.
    """
    if work.measures.method == "drip":
        yield from _run(work)


def _run(work: T) -> Iterator[Breach]:
    own, found = work.measures.run_minutes, plan.run_time(work)
    if own is None or found is None or not 0.1 <= found.value <= DAY_MIN:
        return
    if abs(own - found.value) <= max(RUN_SLACK * found.value, 0.5):
        return
    text = f"{num(min(DAY_MIN, round_up(found.value, 1.0 if found.value >= 10 else 0.1)), 5)} min"
    yield Breach(
        field="measures.run_minutes",
        what=f"it runs {qty(own, 'min', 3)}, and the water wanted takes {qty(found.value, 'min', 3)}",
        why=found.working[-1],
        mend=f"write `run: {text}`",
        edit=Edit(key="run", text=text),
    )


@rule(
    "watering.cycle-length",
    Severity.WARNING,
    by.INTAKE,
    by.SOAK,
    by.HUNG,
    applies="sprinklers that write a run or cycles, where the rate is above the soil's intake",
)
def cycle_length(work: T) -> Iterator[Breach]:
    """No single run is longer than the soil takes without water running off.

    Wet soil takes less than most sprinklers give. Timed soil has its own longest run; a town on clay stops at 6
    min at a time. Published intakes differ by a factor of 2, so the lowest is used: measure yours.
    """
    m, needed, limit, total = (work.measures, cycles_for(work), cycle_limit(work), run_minutes(work))
    if m.method != "sprinkler" or needed is None or limit is None or total is None or not 0 < needed <= DAY_MIN:
        return
    if (m.cycles is None and m.run_minutes is None) or (m.cycles or 1) >= needed:
        return
    rate, intake = plan.sprinkler_rate(work), needs.steady_intake(work)
    falls = rate.value if rate else 0.0
    yield Breach(
        field="measures.cycles" if m.cycles is not None else "measures.run_minutes",
        what=f"the sprinkler runs {qty(total / (m.cycles or 1), 'min', 3)} at a time",
        why=f"{qty(falls, 'mm/h', 3)} falls and wet {needs.soil_name(work)} takes {qty(intake.value, 'mm/h', 3)}; "
        f"{limit[1]}; {bare(total)} / {bare(limit[0])} rounded up = {needed}",
        mend=f"write `cycles: {needed}` or more",
        edit=Edit(key="cycles", text=str(needed)),
    )


@rule(
    "watering.soak-gap",
    Severity.WARNING,
    by.SOAK,
    by.INTAKE,
    GEOMETRY,
    applies="sprinklers that write cycles and a soak",
)
def soak_gap(work: T) -> Iterator[Breach]:
    """Between two cycles the water has time to sink in, half an hour at least.

    What fell faster than the soil drinks stands on top until it has caught up; 30 to 60 min between starts is
    usual.
    """
    m = work.measures
    if m.method != "sprinkler" or m.soak_minutes is None or (m.cycles or 1) < 2:
        return
    least, rate, total = soak_for(work, m.cycles or 1), plan.sprinkler_rate(work), run_minutes(work)
    if least is None or rate is None or total is None or m.soak_minutes >= least:
        return
    on, intake = total / (m.cycles or 1), needs.steady_intake(work).value
    yield Breach(
        field="measures.soak_minutes",
        what=f"{qty(m.soak_minutes, 'min', 3)} of soak between cycles",
        why=f"{qty(on, 'min', 3)} on x ({bare(rate.value)} / {bare(intake)} - 1) = "
        f"{qty(on * max(0.0, rate.value / intake - 1), 'min', 3)} to sink in; 30 min at least, a day at most",
        mend=f"write `soak: {num(least, 5)} min` or more",
        edit=Edit(key="soak", text=f"{qty(least, 'min', 5)}"),
    )


@rule("watering.dripper-spacing", Severity.ADVICE, by.WETTED_WIDTH, applies="drip lines that write a dripper spacing")
def dripper_spacing(work: T) -> Iterator[Breach]:
    """Drippers stand close enough for their wet patches to meet.

    A line of dry soil between two drippers is a line without roots.
    """
    m, name = work.measures, needs.soil_name(work)
    wide = tables.SOILS[name].wide_mm
    if m.method != "drip" or m.dripper_spacing_mm is None or m.dripper_spacing_mm <= wide:
        return
    text = f"{num(round_down(wide, 1), 5)} mm"
    yield Breach(
        field="measures.dripper_spacing_mm",
        what=f"drippers stand {mm(m.dripper_spacing_mm, 5)} apart",
        why=f"in {name} one dripper wets a patch about {mm(wide, 3)} across; wider leaves dry soil",
        mend=f"write `dripper spacing: {text}` or less",
        edit=Edit(key="dripper spacing", text=text),
    )


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
