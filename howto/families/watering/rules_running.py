"""The rules of running water: heads, catch cans, run time, cycle and soak, and drippers."""

from collections.abc import Iterator

from howto.families.watering import formulae, needs, plan, tables
from howto.families.watering.figures_running import cycle_limit, cycles_for, run_minutes, soak_for
from howto.families.watering.measures import WateringMeasures
from howto.families.watering.references import (
    DRIP_TIME,
    HUNG,
    INTAKE,
    QUARTER,
    SOAK,
    SPRINKLER_RATE,
    UNIFORMITY,
    WETTED_WIDTH,
)
from howto.findings import Severity
from howto.model.family import Breach, Edit, Limit, Rule, line_wanted
from howto.model.reference import FORMAT, GEOMETRY
from howto.model.technique import Technique
from howto.model.wording import says
from howto.quantities import round_down, round_up
from howto.quantities import show_number as num

T = Technique[WateringMeasures]

VERY_UNEVEN = Limit(low=0.6, unit="of the mean", reference=UNIFORMITY)
RUN_SLACK = 0.1  # ours: how far a written run may stand from the one worked out
DAY_MIN = 1_440


def flow_known(technique: T) -> Iterator[Breach]:
    """A sprinkler's rate, or a drip line's drippers and their flow, can be told from the measures."""
    m = technique.measures
    if m.method == "sprinkler" and plan.sprinkler_rate(technique) is None:
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


def can_count(technique: T) -> Iterator[Breach]:
    """Catch cans are set out in a multiple of four, so that the low quarter is a whole number of cans."""
    m = technique.measures
    count = m.can_count or len(m.catch_cans_ml or ())
    if count % 4 == 0:
        return
    up = count + 4 - count % 4 if count <= 396 else 400
    yield Breach(
        field="measures.can_count" if m.can_count else "measures.catch_cans_ml",
        what=f"{count} catch cans",
        why=f"{count} / 4 = {num(count / 4)}: the low quarter is rounded up to {formulae.quarter_size(count)} cans, "
        "which is more than a quarter",
        mend=f"set out {up} cans the next time, and write `can count: {up}`",
        edit=Edit(key="can count", text=str(up)),
    )


def cans_caught(technique: T) -> Iterator[Breach]:
    """Catch cans together caught something."""
    m = technique.measures
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


def evenness_agrees(technique: T) -> Iterator[Breach]:
    """A written uniformity is the one the cans give."""
    m = technique.measures
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
        what=f"an evenness of {num(m.uniformity_percent)} % is written, and the cans give {num(found)} %",
        why=f"lowest {len(low)} of {len(caught)}: mean {num(formulae.mean(low))} / {num(formulae.mean(caught))} mL",
        mend=f"write `uniformity: {text}`, or take the line out",
        edit=Edit(key="uniformity", text=text),
    )


def uneven_heads(technique: T) -> Iterator[Breach]:
    """A very uneven sprinkler is put right before it is run longer, and the steps say so."""
    even = plan.evenness(technique)
    if technique.measures.method != "sprinkler" or even is None or VERY_UNEVEN.allows(even):
        return
    if says(technique, "nozzle", "straighten", "clean the head", "level the head", "upright", "put the heads right"):
        return
    longer = formulae.strict_multiplier(even) if even >= plan.LEAST_EVEN else formulae.soft_multiplier(even)
    line = "1. **Put the heads right.** Stand each head upright, clean its nozzle, and catch again."
    yield line_wanted(
        "Steps",
        line,
        field="measures.catch_cans_ml" if plan.readings(technique.measures) else "measures.uniformity_percent",
        what=f"evenness is {num(even * 100)} %, and no step puts the heads right",
        why=f"under 60 % is very uneven: the dry quarter would need {num(longer)} times the run, and the rest drowns",
    )


def run_time(technique: T) -> Iterator[Breach]:
    """A sprinkler's written run puts on the water that is wanted, within a tenth."""
    if technique.measures.method == "sprinkler":
        yield from _run(technique)


def drip_time(technique: T) -> Iterator[Breach]:
    """A drip line's written run gives the water that is wanted, within a tenth."""
    if technique.measures.method == "drip":
        yield from _run(technique)


def _run(technique: T) -> Iterator[Breach]:
    own, found = technique.measures.run_minutes, plan.run_time(technique)
    if own is None or found is None or not 0.1 <= found.value <= DAY_MIN:
        return
    if abs(own - found.value) <= max(RUN_SLACK * found.value, 0.5):
        return
    text = f"{num(min(DAY_MIN, round_up(found.value, 1.0 if found.value >= 10 else 0.1)), 5)} min"
    yield Breach(
        field="measures.run_minutes",
        what=f"it runs {num(own)} min, and the water wanted takes {num(found.value)} min",
        why=found.working[-1],
        mend=f"write `run: {text}`",
        edit=Edit(key="run", text=text),
    )


def cycle_length(technique: T) -> Iterator[Breach]:
    """No single run is longer than the soil takes without water running off."""
    m, needed, limit, total = (
        technique.measures,
        cycles_for(technique),
        cycle_limit(technique),
        run_minutes(technique),
    )
    if m.method != "sprinkler" or needed is None or limit is None or total is None or not 0 < needed <= DAY_MIN:
        return
    if (m.cycles is None and m.run_minutes is None) or (m.cycles or 1) >= needed:
        return
    rate, intake = plan.sprinkler_rate(technique), needs.steady_intake(technique)
    falls = rate.value if rate else 0.0
    yield Breach(
        field="measures.cycles" if m.cycles is not None else "measures.run_minutes",
        what=f"the sprinkler runs {num(total / (m.cycles or 1))} min at a time",
        why=f"{num(falls)} mm/h falls and wet {needs.soil_name(technique)} takes {num(intake.value)} mm/h; "
        f"{limit[1]}; {num(total)} / {num(limit[0])} rounded up = {needed}",
        mend=f"write `cycles: {needed}` or more",
        edit=Edit(key="cycles", text=str(needed)),
    )


def soak_gap(technique: T) -> Iterator[Breach]:
    """Between two cycles the water has time to sink in, half an hour at least."""
    m = technique.measures
    if m.method != "sprinkler" or m.soak_minutes is None or (m.cycles or 1) < 2:
        return
    least, rate, total = soak_for(technique, m.cycles or 1), plan.sprinkler_rate(technique), run_minutes(technique)
    if least is None or rate is None or total is None or m.soak_minutes >= least:
        return
    on, intake = total / (m.cycles or 1), needs.steady_intake(technique).value
    yield Breach(
        field="measures.soak_minutes",
        what=f"{num(m.soak_minutes)} min of soak between cycles",
        why=f"{num(on)} min on x ({num(rate.value)} / {num(intake)} - 1) = "
        f"{num(on * max(0.0, rate.value / intake - 1))} min to sink in; 30 min at least, a day at most",
        mend=f"write `soak: {num(least, 5)} min` or more",
        edit=Edit(key="soak", text=f"{num(least, 5)} min"),
    )


def dripper_spacing(technique: T) -> Iterator[Breach]:
    """Drippers stand close enough for their wet patches to meet."""
    m, name = technique.measures, needs.soil_name(technique)
    wide = tables.SOILS[name].wide_mm
    if m.method != "drip" or m.dripper_spacing_mm is None or m.dripper_spacing_mm <= wide:
        return
    text = f"{num(round_down(wide, 1), 5)} mm"
    yield Breach(
        field="measures.dripper_spacing_mm",
        what=f"drippers stand {num(m.dripper_spacing_mm, 5)} mm apart",
        why=f"in {name} one dripper wets a patch about {num(wide)} mm across; wider leaves dry soil",
        mend=f"write `dripper spacing: {text}` or less",
        edit=Edit(key="dripper spacing", text=text),
    )


RUNNING_RULES: tuple[Rule[WateringMeasures], ...] = (
    Rule(
        name="watering.flow-known",
        severity=Severity.WARNING,
        why="Without flow there are no minutes to write on the card.",
        references=(FORMAT,),
        applies="sprinklers and drip lines",
        check=flow_known,
    ),
    Rule(
        name="watering.can-count",
        severity=Severity.WARNING,
        why="The low quarter of 15 cans is 4 of them (49.6 % in a published set); taking 3 gives 40.1 %.",
        references=(QUARTER, UNIFORMITY),
        applies="techniques that write a can count or catch cans",
        check=can_count,
    ),
    Rule(
        name="watering.cans-caught",
        severity=Severity.ERROR,
        why="A mean of nothing cannot be divided by.",
        references=(QUARTER, GEOMETRY),
        applies="techniques that write catch cans",
        check=cans_caught,
    ),
    Rule(
        name="watering.evenness-agrees",
        severity=Severity.WARNING,
        why="Two numbers for one thing: the one that was caught is the one to keep.",
        references=(QUARTER, GEOMETRY),
        applies="techniques that write both catch cans and a uniformity",
        check=evenness_agrees,
    ),
    Rule(
        name="watering.uneven-heads",
        severity=Severity.WARNING,
        why="Below 60 % water is very uneven, at 80 % or more even; running longer only drowns the wet part.",
        references=(UNIFORMITY, QUARTER),
        applies="sprinklers whose evenness is known",
        check=uneven_heads,
    ),
    Rule(
        name="watering.run-time",
        severity=Severity.WARNING,
        why="At 1 in/h, 88 min a week are 1.467 in; a run that is off by a third leaves a third dry.",
        references=(SPRINKLER_RATE,),
        applies="sprinklers that write a run",
        check=run_time,
    ),
    Rule(
        name="watering.drip-time",
        severity=Severity.WARNING,
        why="1.8 L from a dripper of 8 L/h takes 13.5 min; an hour would give four times as much.",
        references=(DRIP_TIME,),
        applies="drip lines that write a run",
        check=drip_time,
    ),
    Rule(
        name="watering.cycle-length",
        severity=Severity.WARNING,
        why="Wet soil takes less than most sprinklers give. Timed soil has its own longest run; a town on clay stops "
        "at 6 min at a time. Published intakes differ by a factor of 2, so the lowest is used: measure yours.",
        references=(INTAKE, SOAK, HUNG),
        applies="sprinklers that write a run or cycles, where the rate is above the soil's intake",
        check=cycle_length,
    ),
    Rule(
        name="watering.soak-gap",
        severity=Severity.WARNING,
        why="What fell faster than the soil drinks stands on top until it has caught up; 30 to 60 min between starts "
        "is usual.",
        references=(SOAK, INTAKE, GEOMETRY),
        applies="sprinklers that write cycles and a soak",
        check=soak_gap,
    ),
    Rule(
        name="watering.dripper-spacing",
        severity=Severity.ADVICE,
        why="A line of dry soil between two drippers is a line without roots.",
        references=(WETTED_WIDTH,),
        applies="drip lines that write a dripper spacing",
        check=dripper_spacing,
    ),
)
