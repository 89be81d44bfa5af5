"""Rules over the measures of safety: how a ladder stands, and how near a line anything comes."""

from collections.abc import Iterator
from math import ceil, floor

from howto.families.safety import references as by
from howto.families.safety.countries import FALL_MM, FALLS
from howto.families.safety.figures_height import country_of, distance_mm, zone_of
from howto.families.safety.ladder import contact_of, law_of, measured_angle, rails_to_mm, stance
from howto.families.safety.measures import SafetyMeasures
from howto.families.safety.needs import cautions, says
from howto.findings import Severity
from howto.model.family import Breach, Edit, Limit, Rule, rule
from howto.model.reference import CEILING, GEOMETRY
from howto.model.work import Work
from howto.quantities import show
from howto.quantities import show_number as num
from howto.quantities.amounts import bare, mm, qty

T = Work[SafetyMeasures]
ANGLE = Limit(low=74, high=77, unit="degrees", of="from the ground", reference=by.ANGLES)
ASKED = says(r"lines?['’]?s? owner|lines? company|network (?:owner|operator)|owner of the lines?")
UK_TIME = Limit(high=30, unit="min", reference=by.UK_SHORT)
UK_LOAD = Limit(high=10, unit="kg", reference=by.UK_SHORT)


@rule(
    "safety.ladder-angle",
    Severity.ERROR,
    by.NZ_LADDER,
    by.WA_LADDER,
    by.ALBERTA_LADDER,
    by.DK_LADDER,
    by.ANGLES,
    applies="techniques with `foot measured:` and a top contact or a working length",
)
def ladder_angle(work: T) -> Iterator[Breach]:
    """A leaning ladder stands at 74 to 77° from the ground.

    Flatter, its foot slides out; steeper, it tips back. 74 to 77° holds the three published readings.
    """
    m = work.measures
    angle, stand = measured_angle(m), stance(m)
    if angle is None or stand is None or ANGLE.allows(angle):
        return
    text = f"{round(stand.foot_mm)} mm"
    flat = angle < (ANGLE.low or 0)
    yield Breach(
        field="measures.foot_measured_mm",
        what=f"the ladder stands at {qty(angle, '°', 3)}, {'too flat' if flat else 'too steep'}",
        why=f"foot {mm(m.foot_measured_mm or 0, 5)} out, touching at {mm(stand.contact_mm, 5)}; one in four is "
        f"read as 75°, 75.5° or 76°, so {ANGLE}",
        mend=f"{'bring the foot in' if flat else 'take the foot out'}: write `foot measured: {text}` ({stand.rule}, "
        f"{country_of(m)})",
        edit=Edit(key="foot measured", text=text),
        reference=by.ANGLES,
    )


@rule("safety.ladder-foot", Severity.ERROR, GEOMETRY, applies="techniques with `foot measured:` and `working length:`")
def foot_on_ladder(work: T) -> Iterator[Breach]:
    """A ladder's foot stands no further out than the ladder is long.

    A foot that far out leaves no height at all.
    """
    m = work.measures
    if m.foot_measured_mm is None or m.working_length_mm is None or contact_of(m) is not None:
        return
    if m.foot_measured_mm < m.working_length_mm:
        return
    stand = stance(m)
    text = f"{round(stand.foot_mm)} mm" if stand else f"{floor(m.working_length_mm / 4)} mm"
    yield Breach(
        field="measures.foot_measured_mm",
        what="the foot stands further out than the ladder is long",
        why=f"{mm(m.foot_measured_mm, 5)} out against {mm(m.working_length_mm, 5)} of ladder",
        mend=f"measure again, and write `foot measured: {text}`",
        edit=Edit(key="foot measured", text=text),
    )


@rule(
    "safety.landing",
    Severity.ERROR,
    by.WA_LADDER,
    by.US_LADDER,
    by.NZ_LADDER,
    by.ALBERTA_LADDER,
    by.DK_LADDER,
    applies="techniques with `landing:` and `rail top:`",
)
def past_the_landing(work: T) -> Iterator[Breach]:
    """The rails of a ladder pass the landing by what the country asks.

    0.9 m past a landing in Western Australia and the United States, 1 m in New Zealand, Alberta and Denmark.
    """
    m = work.measures
    wanted = rails_to_mm(m)
    if m.rail_top_mm is None or wanted is None or m.landing_mm is None or m.rail_top_mm >= wanted - 1e-6:
        return
    law = law_of(m)
    past = m.rail_top_mm - m.landing_mm
    text = f"{ceil(wanted - 1e-6)} mm"
    yield Breach(
        field="measures.rail_top_mm",
        what=f"the rails end {mm(past, 5)} past the landing",
        why=f"{bare(m.rail_top_mm, 5)} - {bare(m.landing_mm, 5)} = {mm(past, 5)}; {country_of(m)}: at least "
        f"{mm(law.past_mm, 5)}",
        mend=f"take a longer ladder: write `rail top: {text}` or more",
        edit=Edit(key="rail top", text=text),
        also="measures.landing_mm",
        severity=CEILING[law.landing.grade],
        reference=law.landing,
    )


@rule("safety.falls-law", Severity.ERROR, by.VICTORIA_FALLS, applies="techniques with `country: victoria` and `fall:`")
def falls_law(work: T) -> Iterator[Breach]:
    """In Victoria a fall over 2 m is assessed and controlled in the law's order, and the card says so.

    Over 2 m: identify, assess, control by the order of the law, review.
    """
    m = work.measures
    if m.place not in FALLS or m.fall_mm is None or m.fall_mm <= FALL_MM:
        return
    said = cautions(work).casefold()
    if "platform" in said and any(word in said for word in ("ground first", "from the ground", "assess")):
        return
    line = "- **Falls.** Assess it first: from the ground if it can be done, then a platform, a ladder last."
    yield Breach(
        field="measures.fall_mm",
        what=f"a fall of {mm(m.fall_mm)}, and no caution gives the order of controls",
        why=f"over {mm(FALL_MM)} the law of Victoria asks: ground or solid platform, "
        "then a passive device, positioning, arrest, and a ladder last",
        mend=f"add under `## Cautions` the line `{line}`",
        edit=Edit(section="Cautions", text=line),
    )


@rule("safety.short-on-ladder", Severity.ADVICE, by.UK_SHORT, applies="techniques with `ladder time:` or `carried:`")
def short_and_light(work: T) -> Iterator[Breach]:
    """Work from a leaning ladder is short and light: 30 minutes and 10 kg.

    A ladder is for short, light work.
    """
    m = work.measures
    if m.ladder_time_minutes is not None and not UK_TIME.allows(m.ladder_time_minutes):
        yield Breach(
            field="measures.ladder_time_minutes",
            what=f"{bare(m.ladder_time_minutes)} minutes on the ladder",
            why=f"{UK_TIME} at a time in the United Kingdom",
            mend="come down and rest: write `ladder time: 30 min` or less, or work from a platform",
            edit=Edit(key="ladder time", text="30 min"),
        )
    if m.carried_kg is not None and not UK_LOAD.allows(m.carried_kg):
        yield Breach(
            field="measures.carried_kg",
            what=f"{qty(m.carried_kg, 'kg', 3)} carried up the ladder",
            why=f"{UK_LOAD} in the United Kingdom",
            mend="haul it up on a rope: write `carried: 10 kg` or less",
            edit=Edit(key="carried", text="10 kg"),
        )


@rule(
    "safety.line-clearance",
    Severity.ERROR,
    by.NZ_LINES,
    by.QLD_LINES,
    by.QLD_PLANTS,
    by.VIC_LINES,
    applies="techniques with `line:` in a country whose distances are on record",
)
def clear_of_line(work: T) -> Iterator[Breach]:
    """Body, tool and branch stay outside the distance that the country keeps from its lines.

    New Zealand 4 m, or 0.5 m with consent, at low voltage; Queensland 3 m to 132 kV, 6 m to 330 kV.
    """
    m, units = work.measures, work.crew.units
    zone, found = zone_of(m), distance_mm(m)
    if zone is None or found is None or found >= zone.no_go_mm - 1e-6:
        return
    text = f"{num(zone.no_go_mm / 1000)} m"
    least = f"`line distance: {text}` or more where that can be kept, leaf and wind included"
    yield Breach(
        field="measures.line_distance_mm" if m.line_distance_mm is not None else "measures.reach_mm",
        what=f"{show(found, 'mm', units) if found > 0 else 'nothing'} between the line and the work",
        why=f"{country_of(m)}, {zone.note}: at least {mm(zone.no_go_mm)} for body, tool and branch",
        mend=f"stop, and have the line's owner isolate it or leave the work to the licensed; write {least}",
        edit=Edit(key="line distance", text=text),
        severity=CEILING[zone.reference.grade],
        reference=zone.reference,
    )


@rule(
    "safety.line-on-record",
    Severity.WARNING,
    by.NZ_LINES,
    by.QLD_LINES,
    by.VIC_LINES,
    applies="techniques with `line:` in a country without a distance on record for it",
)
def line_on_record(work: T) -> Iterator[Breach]:
    """A distance from a line is one that the country has set.

    Limits are national; none is borrowed for a line.
    """
    m = work.measures
    if m.line is None or zone_of(m) is not None:
        return
    line = "- **Power lines.** Ask the line's owner for the distance, and stay out until you have it in writing."
    if ASKED.search(cautions(work)):
        return
    yield Breach(
        field="measures.line",
        what=f"no distance is on record for this line ({country_of(m)})",
        why="distances are national, from 0.5 m to 8 m, so another country's is not used here",
        mend=f"add under `## Cautions` the line `{line}`",
        edit=Edit(section="Cautions", text=line),
    )


HEIGHTS: tuple[Rule[SafetyMeasures], ...] = (
    ladder_angle,
    foot_on_ladder,
    past_the_landing,
    falls_law,
    short_and_light,
    clear_of_line,
    line_on_record,
)
