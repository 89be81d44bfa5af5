"""The figures of bleach, of sprayed chemicals, of bagged mixes, and of a wound."""

from collections.abc import Iterator

from howto.families.safety import chemicals
from howto.families.safety import references as by
from howto.families.safety.figure import figure, table
from howto.families.safety.measures import SafetyMeasures
from howto.model.family import Limit
from howto.model.figure import Figure
from howto.model.reference import Reference
from howto.model.work import Work
from howto.quantities.amounts import Count, Name, Range, Word, bare, percent, qty

T = Work[SafetyMeasures]
WATER_TO_ONE = Limit(low=9, high=9, unit="", of="parts of water to one of bleach", reference=by.PRUNERS)
SOAK = Limit(low=10, unit="min", reference=by.PRUNERS)
LASTS = Limit(high=2, unit="h", reference=by.PRUNERS)
SHORTER = Range(2, 5, "min")  # University of Arizona
ALCOHOL = f"{percent(70)} alcohol"
ONE_TO_NINE = f"1 part to {WATER_TO_ONE.least} of water"
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
        yield from _bleach(m, m.bleach_mix_l * 1000)
    if m.disinfectant is not None or m.disease is not None:
        yield _clean_with(blight=m.disease == "fire blight")
    if (hours := wait_hours(m)) is not None:
        yield from _entry(m, hours)
    if m.bag_holds is not None:
        yield _steps(m.bag_holds)
    if m.wound is not None:
        yield _tetanus(m, m.wound)


def _bleach(m: SafetyMeasures, total_ml: float) -> Iterator[Figure]:
    one, nine = m.parts
    bleach = chemicals.part_of(total_ml, one, nine)
    for name, label, part, value in (
        ("bleach to measure", "Household bleach", one, bleach),
        ("water to measure", "Water, in first", nine, total_ml - bleach),
    ):
        working = (
            f"{qty(total_ml, 'mL', 5)} x {bare(part)} / ({bare(one)} + {bare(nine)}) = "
            f"{bare(total_ml, 5)} x {bare(part)} / {bare(one + nine)} = {qty(value, 'mL', 3)}",
            "water first, then the bleach into it; it corrodes steel, so rinse and dry the blades",
        )
        yield figure(
            name,
            label,
            value,
            "mL",
            working,
            by.PRUNERS,
            by.PRUNERS_MINNESOTA,
            headline=name == "bleach to measure" and m.bevel_deg is None,
        )
    use = f"blades in it {SOAK.least} or more; pour it away {LASTS.most} after mixing"
    yield figure("use the mix within", "Use the mix within", LASTS.high or 0, "h", use, by.PRUNERS)


def _clean_with(*, blight: bool) -> Figure:
    working = (
        f"fire blight: alcohol kills some and not all, so bleach mix, {ONE_TO_NINE}"
        if blight
        else f"routine work: {ALCOHOL}, no soak and no rinse",
        f"advice runs from a wipe through {SHORTER} to {SOAK.least}; the longer one is kept",
    )
    value = f"bleach mix, {SOAK.least} or more" if blight else f"{ALCOHOL}, wiped or dipped, or the bleach mix"
    label = "Clean blades with"
    return figure("clean blades with", label, value, "", working, by.PRUNERS, by.PRUNERS_MINNESOTA, by.PRUNERS_ARIZONA)


def wait_hours(m: SafetyMeasures) -> float | None:
    """Return the hours of no entry: the label's, else by toxicity category; the longer where both are written."""
    return max((hours for hours in (m.label_wait_hours, category_hours(m)) if hours is not None), default=None)


def category_hours(m: SafetyMeasures) -> float | None:
    """Return the hours of no entry by the worst toxicity category, or None without one."""
    return chemicals.entry_hours(m.toxicity, dry_nerve_poison=bool(m.dry_nerve_poison)) if m.toxicity else None


def wait_sources(m: SafetyMeasures) -> tuple[Reference, ...]:
    """Return who says how long the wait is."""
    if not m.toxicity:
        return (by.LABEL, by.ENTRY)
    read = chemicals.worst(m.toxicity) == "III"
    return (by.LABEL_TRAINING if read else by.ENTRY_OTHERS, by.ENTRY, by.CATEGORIES)


def _entry(m: SafetyMeasures, hours: float) -> Iterator[Figure]:
    working = []
    if m.toxicity:
        worst, wait = chemicals.worst(m.toxicity), qty(category_hours(m) or 0, "h", 3)
        working.append(f"worst of {Name(', '.join(m.toxicity))} is category {Name(worst)}: {wait}")
    if m.label_wait_hours is not None:
        working.append(f"the label says {qty(m.label_wait_hours, 'h', 3)}; the longer wait is kept")
    working.append("the label outranks this figure")
    label = "Nobody goes in for (United States)"
    yield figure("no entry for", label, hours, "h", working, *wait_sources(m), headline=True, client=True)
    start = chemicals.clock_minutes(m.sprayed_at) if m.sprayed_at else None
    if start is None:
        return
    days, at = chemicals.after(start, hours)
    day = "the same day" if not days else "the next day" if days == 1 else f"{Count(days, 'day', 'days')} later"
    end = f"{Name(chemicals.clock(at))} {day}"
    added = f"{Name(chemicals.clock(start))} + {qty(hours, 'h', 3)} = {end}"
    yield figure("entry from", "Entry from", end, "", added, *wait_sources(m), client=True)


def _steps(mix: str) -> Figure:
    rows = table({"Step": "", "What": ""}, tuple((float(number), words) for number, words in enumerate(MIX_STEPS, 1)))
    working = (
        "Legionella longbeachae lives in potting mix, compost, mulch and soil mixes; it is breathed in",
        "illness comes 2 to 10 days later; over 50, smokers and the ill are hit hardest",
    )
    label = f"Opening {Word(mix)}: keep the dust out of your lungs"
    value = f"{Count(len(MIX_STEPS), 'step', 'steps')}"
    return figure(
        "dust steps", label, value, "", working, by.LEGIONELLA_STEPS, by.LEGIONELLA, by.LEGIONELLA_WORK, table=rows
    )


def _tetanus(m: SafetyMeasures, wound: chemicals.Wound) -> Figure:
    answer = chemicals.tetanus(wound, m.tetanus_doses, m.last_dose_years)
    doses = "doses not known" if m.tetanus_doses is None else f"{Count(m.tetanus_doses, 'dose', 'doses')}"
    last = "" if m.last_dose_years is None else f", the last {bare(m.last_dose_years)} years ago"
    full, years = bare(chemicals.FULL_COURSE), Count(chemicals.BOOSTER_YEARS[wound], "year", "years")
    working = (
        f"a {Word(wound)} wound, {doses}{last}",
        f"with {full} or more doses a booster is due over {years}: {Word(answer)}; a doctor decides",
    )
    return figure("tetanus", "Tetanus", answer, "", working, by.TETANUS)
