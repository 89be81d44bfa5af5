"""The figures of bleach, of sprayed chemicals, of bagged mixes, and of a wound."""

from collections.abc import Iterator

from howto.families.safety import chemicals, wounds
from howto.families.safety.measures import SafetyMeasures
from howto.families.safety.references import (
    CATEGORIES,
    ENTRY,
    ENTRY_OTHERS,
    LABEL,
    LABEL_TRAINING,
    LEGIONELLA,
    LEGIONELLA_STEPS,
    LEGIONELLA_WORK,
    PRUNERS,
    PRUNERS_ARIZONA,
    PRUNERS_MINNESOTA,
    TETANUS,
)
from howto.model.figure import Figure, Table
from howto.model.reference import Reference
from howto.model.work import Work
from howto.quantities.amounts import bare, qty

T = Work[SafetyMeasures]
SOAK_MIN, MIX_LASTS_H = 10.0, 2.0  # Iowa State University Extension
MIX_STEPS = (
    "Read the warning on the bag",
    "Mask and gloves on before it is opened",
    "Cut it open with scissors or a knife, away from the face",
    "Damp it down with a gentle spray",
    "Work where the air moves, not in a closed shed",
    "Wash hands with soap, then take the mask off",
)


def chemical_figures(work: T) -> Iterator[Figure]:
    """Yield the shares of a mix, the waiting time, the steps for a bag, and the booster."""
    m = work.measures
    if m.bleach_mix_l is not None:
        yield from _bleach(m, m.bleach_mix_l)
    if m.disinfectant is not None or m.disease is not None:
        yield _clean_with(m)
    hours = wait_hours(m)
    if hours is not None:
        yield from _entry(m, hours)
    if m.bag_holds is not None:
        yield _steps(m.bag_holds)
    if m.wound is not None:
        yield _tetanus(m, m.wound)


def _bleach(m: SafetyMeasures, litres: float) -> Iterator[Figure]:
    one, nine = m.parts
    bleach = chemicals.part_of(litres * 1000, one, nine)
    parts = one + nine
    sources = (PRUNERS, PRUNERS_MINNESOTA)
    for name, label, part, value in (
        ("bleach to measure", "Household bleach", one, bleach),
        ("water to measure", "Water, in first", nine, litres * 1000 - bleach),
    ):
        yield Figure(
            name=name,
            label=label,
            value=value,
            unit="mL",
            working=(
                f"{qty(litres * 1000, 'mL', 5)} x {bare(part)} / ({bare(one)} + {bare(nine)}) = "
                f"{bare(litres * 1000, 5)} x {bare(part)} / {bare(parts)} = {qty(value, 'mL', 3)}",
                "water first, then the bleach into it; it corrodes steel, so rinse and dry the blades",
            ),
            references=sources,
            headline=name == "bleach to measure" and m.bevel_deg is None,
        )
    yield Figure(
        name="use the mix within",
        label="Use the mix within",
        value=MIX_LASTS_H,
        unit="h",
        working=(
            f"blades in it {qty(SOAK_MIN, 'min', 3)} or more; pour it away {qty(MIX_LASTS_H, 'h', 3)} after mixing",
        ),
        references=(PRUNERS,),
    )


def _clean_with(m: SafetyMeasures) -> Figure:
    blight = m.disease == "fire blight"
    return Figure(
        name="clean blades with",
        label="Clean blades with",
        value="bleach mix, 10 min or more" if blight else "70 % alcohol, wiped or dipped, or the bleach mix",
        working=(
            "fire blight: alcohol kills some and not all, so bleach mix, 1 part to 9 of water"
            if blight
            else "routine work: 70 % alcohol, no soak and no rinse",
            "advice runs from a wipe through 2 to 5 min to 10 min; the longer one is kept",
        ),
        references=(PRUNERS, PRUNERS_MINNESOTA, PRUNERS_ARIZONA),
    )


def wait_hours(m: SafetyMeasures) -> float | None:
    """Return the hours of no entry: the label's, else by toxicity category; the longer where both are written."""
    found = [m.label_wait_hours] if m.label_wait_hours is not None else []
    if m.toxicity:
        found.append(chemicals.entry_hours(m.toxicity, dry_nerve_poison=bool(m.dry_nerve_poison)))
    return max(found) if found else None


def wait_sources(m: SafetyMeasures) -> tuple[Reference, ...]:
    """Return who says how long the wait is."""
    if not m.toxicity:
        return (LABEL, ENTRY)
    read = chemicals.worst(m.toxicity) == "III"
    return (LABEL_TRAINING, ENTRY, CATEGORIES) if read else (ENTRY_OTHERS, ENTRY, CATEGORIES)


def _entry(m: SafetyMeasures, hours: float) -> Iterator[Figure]:
    working = []
    if m.toxicity:
        worst = chemicals.worst(m.toxicity)
        by = chemicals.entry_hours(m.toxicity, dry_nerve_poison=bool(m.dry_nerve_poison))
        working.append(f"worst of {', '.join(m.toxicity)} is category {worst}: {qty(by, 'h', 3)}")
    if m.label_wait_hours is not None:
        working.append(f"the label says {qty(m.label_wait_hours, 'h', 3)}; the longer wait is kept")
    yield Figure(
        name="no entry for",
        label="Nobody goes in for (United States)",
        value=hours,
        unit="h",
        working=(*working, "the label outranks this figure"),
        references=wait_sources(m),
        headline=True,
        client=True,
    )
    start = chemicals.clock_minutes(m.sprayed_at) if m.sprayed_at else None
    if start is None:
        return
    days, at = chemicals.after(start, hours)
    day = "the same day" if not days else "the next day" if days == 1 else f"{days} days later"
    yield Figure(
        name="entry from",
        label="Entry from",
        value=f"{chemicals.clock(at)} {day}",
        working=(f"{chemicals.clock(start)} + {qty(hours, 'h', 3)} = {chemicals.clock(at)} {day}",),
        references=wait_sources(m),
        client=True,
    )


def _steps(mix: str) -> Figure:
    return Figure(
        name="dust steps",
        label=f"Opening {mix}: keep the dust out of your lungs",
        value=f"{len(MIX_STEPS)} steps",
        working=(
            "Legionella longbeachae lives in potting mix, compost, mulch and soil mixes; it is breathed in",
            "illness comes 2 to 10 days later; over 50, smokers and the ill are hit hardest",
        ),
        references=(LEGIONELLA_STEPS, LEGIONELLA, LEGIONELLA_WORK),
        table=Table(
            columns=("Step", "What"),
            units=("", ""),
            rows=tuple((float(number), words) for number, words in enumerate(MIX_STEPS, 1)),
        ),
    )


def _tetanus(m: SafetyMeasures, wound: wounds.Wound) -> Figure:
    answer = wounds.tetanus(wound, m.tetanus_doses, m.last_dose_years)
    most = wounds.CLEAN_YEARS if wound == "clean" else wounds.DIRTY_YEARS
    doses = "doses not known" if m.tetanus_doses is None else f"{m.tetanus_doses} doses"
    last = "" if m.last_dose_years is None else f", the last {bare(m.last_dose_years)} years ago"
    return Figure(
        name="tetanus",
        label="Tetanus",
        value=answer,
        working=(
            f"a {wound} wound, {doses}{last}",
            f"with 3 or more doses a booster is due over {bare(most)} years: {answer}; a doctor decides",
        ),
        references=(TETANUS,),
    )
