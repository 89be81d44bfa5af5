"""Rules over the measures of safety: how a ladder stands, and how near a line anything comes."""

from collections.abc import Iterator
from math import ceil

from howto.families.safety import countries, height
from howto.families.safety import references as by
from howto.families.safety.countries import ALL_ZONES, FALL, LADDERS
from howto.families.safety.figures_height import distance_mm, zone_of
from howto.families.safety.ladder import ANGLE, contact_of, country_of, law_of, measured_angle, rails_to_mm, stance
from howto.families.safety.measures import SafetyMeasures
from howto.families.safety.needs import cautions, says
from howto.findings import Severity
from howto.model.family import Breach, Edit, Limit, Rule, line_wanted, outside, rule, typed
from howto.model.reference import CEILING, GEOMETRY
from howto.model.work import Work
from howto.quantities.amounts import Word, mm, qty

T = Work[SafetyMeasures]
ASKED = says(r"lines?['’]?s? owner|lines? company|network (?:owner|operator)|owner of the lines?")
UK_TIME = Limit(high=30, unit="min", reference=by.UK_SHORT)
UK_LOAD = Limit(high=10, unit="kg", reference=by.UK_SHORT)
READINGS = (height.FLAT_DEG, height.angle_by_length(1, height.ONE_IN), height.angle_by_height(1, height.ONE_IN))
FLAT, BY_LENGTH, BY_HEIGHT = (qty(each, "°", 3) for each in READINGS)


@rule(
    "safety.ladder-angle",
    Severity.ERROR,
    by.NZ_LADDER,
    by.WA_LADDER,
    by.ALBERTA_LADDER,
    by.DK_LADDER,
    by.ANGLES,
    applies="techniques with `foot measured:` and a top contact or a working length",
    limit=ANGLE,
)
def ladder_angle(work: T) -> Iterator[Breach]:
    """A leaning ladder stands at {limit} from the ground.

    flatter, its foot slides out; steeper, it tips back; {limit} holds the three published readings
    """
    m = work.measures
    angle, stand = measured_angle(m), stance(m)
    if angle is None or stand is None or ANGLE.allows(angle):
        return
    text = typed(round(stand.foot_mm), "mm")
    flat = angle < ANGLE.nearest(angle)
    yield Breach(
        field="measures.foot_measured_mm",
        what=f"the ladder stands at {qty(angle, '°', 3)}, {Word('too flat' if flat else 'too steep')}",
        why=f"foot {mm(m.foot_measured_mm or 0, 5)} out, touching at {mm(stand.contact_mm, 5)}; one in four is read as "
        f"{FLAT}, {BY_LENGTH} or {BY_HEIGHT}, so {ANGLE} from the ground",
        mend=f"{'bring the foot in' if flat else 'take the foot out'}: write `foot measured: {text}` "
        f"({Word(stand.rule)}, {country_of(m)})",
        edit=Edit(key="foot measured", text=text),
        reference=by.ANGLES,
    )


@rule("safety.ladder-foot", Severity.ERROR, GEOMETRY, applies="techniques with `foot measured:` and `working length:`")
def foot_on_ladder(work: T) -> Iterator[Breach]:
    """A ladder's foot stands no further out than the ladder is long.

    a foot that far out leaves no height at all
    """
    m, stand = work.measures, stance(work.measures)
    if m.foot_measured_mm is None or m.working_length_mm is None or contact_of(m) is not None or stand is None:
        return
    if m.foot_measured_mm < m.working_length_mm:
        return
    text = typed(round(stand.foot_mm), "mm")
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
    short=f"{mm(LADDERS['Western Australia'].past_mm)}",
    long=f"{mm(LADDERS['New Zealand'].past_mm)}",
)
def past_the_landing(work: T) -> Iterator[Breach]:
    """The rails of a ladder pass the landing by what the country asks.

    {short} past a landing in Western Australia and the United States, {long} in New Zealand, Alberta and Denmark
    """
    m = work.measures
    wanted, law = rails_to_mm(m), law_of(m)
    if m.rail_top_mm is None or wanted is None or m.landing_mm is None or m.rail_top_mm >= wanted - 1e-6:
        return
    past = mm(m.rail_top_mm - m.landing_mm, 5)
    text = typed(ceil(wanted - 1e-6), "mm")
    yield Breach(
        field="measures.rail_top_mm",
        what=f"the rails end {past} past the landing",
        why=f"{mm(m.rail_top_mm, 5)} - {mm(m.landing_mm, 5)} = {past}; {country_of(m)}: at least {mm(law.past_mm, 5)}",
        mend=f"take a longer ladder: write `rail top: {text}` or more",
        edit=Edit(key="rail top", text=text),
        also="measures.landing_mm",
        severity=CEILING[law.landing.grade],
        reference=law.landing,
    )


@rule(
    "safety.falls-law",
    Severity.ERROR,
    by.VICTORIA_FALLS,
    applies="techniques with `country: victoria` and `fall:`",
    most=FALL.most,
)
def falls_law(work: T) -> Iterator[Breach]:
    """In Victoria a fall over {most} is assessed and controlled in the law's order, and the card says so.

    over {most} the law of Victoria asks: ground or solid platform, then a passive device, positioning, arrest, and a
    ladder last
    """
    m, said = work.measures, cautions(work).casefold()
    if m.place != "Victoria" or m.fall_mm is None or FALL.allows(m.fall_mm):
        return
    if "platform" in said and any(word in said for word in ("ground first", "from the ground", "assess")):
        return
    line = "- **Falls.** Assess it first: from the ground if it can be done, then a platform, a ladder last."
    what = f"a fall of {mm(m.fall_mm)}, and no caution gives the order of controls"
    yield line_wanted("Cautions", line, what=what, why="", field="measures.fall_mm")


@rule(
    "safety.short-on-ladder",
    Severity.ADVICE,
    by.UK_SHORT,
    applies="techniques with `ladder time:` or `carried:`",
    time=UK_TIME.most,
    load=UK_LOAD.most,
)
def short_and_light(work: T) -> Iterator[Breach]:
    """Work from a leaning ladder is short and light: {time} and {load}.

    a ladder is for short, light work
    """
    rest = "{limit} at a time in the United Kingdom: come down and rest, or work from a platform"
    yield from outside(UK_TIME, work, "ladder_time_minutes", what="{found} on the ladder", why=rest)
    rope = "{limit} in the United Kingdom: haul it up on a rope"
    yield from outside(UK_LOAD, work, "carried_kg", what="{found} carried up the ladder", why=rope)


@rule(
    "safety.line-clearance",
    Severity.ERROR,
    by.NZ_LINES,
    by.QLD_LINES,
    by.QLD_PLANTS,
    by.VIC_LINES,
    applies="techniques with `line:` in a country whose distances are on record",
    alone=f"{mm(countries.NZ_ALONE.no_go_mm)}",
    consent=f"{mm(countries.NZ_CONSENT.no_go_mm)}",
    bands=", ".join(f"{mm(zone.no_go_mm)} to {qty(kv, 'kV')}" for kv, zone in countries.QLD_ZONES),
)
def clear_of_line(work: T) -> Iterator[Breach]:
    """Body, tool and branch stay outside the distance that the country keeps from its lines.

    New Zealand {alone}, or {consent} with consent, at low voltage; Queensland {bands}
    """
    m = work.measures
    zone, found = zone_of(m), distance_mm(m)
    if zone is None or found is None or found >= zone.no_go_mm - 1e-6:
        return
    text = typed(zone.no_go_mm / 1000, "m")
    yield Breach(
        field="measures.line_distance_mm" if m.line_distance_mm is not None else "measures.reach_mm",
        what=f"{mm(found) if found > 0 else 'nothing'} between the line and the work",
        why=f"{country_of(m)}, {Word(zone.note)}: at least {mm(zone.no_go_mm)} for body, tool and branch",
        mend="stop, and have the line's owner isolate it or leave the work to the licensed; write "
        f"`line distance: {text}` or more where that can be kept, leaf and wind included",
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
    zones=f"{ALL_ZONES}",
)
def line_on_record(work: T) -> Iterator[Breach]:
    """A distance from a line is one that the country has set.

    distances are national, from {zones}, so another country's is not used here
    """
    m = work.measures
    if m.line is None or zone_of(m) is not None or ASKED.search(cautions(work)):
        return
    line = "- **Power lines.** Ask the line's owner for the distance, and stay out until you have it in writing."
    what = f"no distance is on record for this line ({country_of(m)})"
    yield line_wanted("Cautions", line, what=what, why="", field="measures.line")


HEIGHTS: tuple[Rule[SafetyMeasures], ...] = (
    ladder_angle, foot_on_ladder, past_the_landing, falls_law, short_and_light, clear_of_line, line_on_record,
)  # fmt: skip
