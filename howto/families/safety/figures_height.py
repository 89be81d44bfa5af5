"""The figures of a ladder, and of a line overhead; each names the country whose limit it is."""

from collections.abc import Iterator

from howto.families.safety import height, ladder
from howto.families.safety import references as by
from howto.families.safety.countries import BORROWED, Zone, line_zone
from howto.families.safety.figure import figure
from howto.families.safety.measures import SafetyMeasures
from howto.model.figure import Figure
from howto.model.reference import GEOMETRY
from howto.model.work import Work
from howto.quantities.amounts import Word, Words, bare, mm, qty

T = Work[SafetyMeasures]
FLAT = qty(height.FLAT_DEG, "°")
ONE_IN = bare(height.ONE_IN)


def ladder_figures(work: T) -> Iterator[Figure]:
    """Yield how the ladder stands, and how far its rails go."""
    m = work.measures
    stand, top, angle = ladder.stance(m), ladder.rails_to_mm(m), ladder.measured_angle(m)
    if stand is not None:
        yield _foot(m, stand)
        yield _angle(stand)
    if angle is not None and m.foot_measured_mm is not None:
        yield _measured(m, m.foot_measured_mm, angle)
    if top is not None and m.landing_mm is not None and stand is not None:
        yield _rails(m, m.landing_mm, top)
        yield _length(stand, top)


def _rails(m: SafetyMeasures, landing_mm: float, top_mm: float) -> Figure:
    law = ladder.law_of(m)
    working = (
        f"{bare(landing_mm, 5)} + {bare(law.past_mm, 5)} past the landing = {mm(top_mm, 5)} above the ground",
        *_borrowed(m),
    )
    return figure("rails to", f"Rails end at least at ({ladder.country_of(m)})", top_mm, "mm", working, law.landing)


def _length(stand: ladder.LadderStance, top_mm: float) -> Figure:
    long = stand.length_mm * top_mm / stand.contact_mm
    contact, foot = bare(stand.contact_mm, 5), bare(stand.foot_mm, 5)
    working = f"√({contact}² + {foot}²) x {bare(top_mm, 5)} / {contact} = {mm(long, 5)}"
    return figure("ladder length", "Length of ladder to that height", long, "mm", working, GEOMETRY)


def _borrowed(m: SafetyMeasures) -> tuple[Words, ...]:
    if m.place not in BORROWED:
        return ()
    return (
        f"{ladder.country_of(m)}: no number on record, so the more careful of the published ones; ask the local code",
    )


def _foot(m: SafetyMeasures, stand: ladder.LadderStance) -> Figure:
    contact, length = stand.contact_mm, stand.length_mm
    flat = stand.rule == "75 degrees"
    own = (
        f"{bare(contact, 5)} / tan {FLAT}"
        if flat
        else f"{bare(contact if stand.rule == 'by height' else length, 5)} / {ONE_IN}"
    )
    given = (
        f"ladder {mm(length, 5)} to its top contact, so it touches at {mm(contact, 5)}"
        if ladder.contact_of(m) is None
        else f"it touches at {mm(contact, 5)}, so it is {mm(length, 5)} long to there"
    )
    others = [each for rule in ("by height", "by length", "75 degrees") if (each := ladder.stance(m, rule))]
    apart = ", ".join(f"{Word(each.rule)} {mm(each.foot_mm, 4)}" for each in others)
    working = (
        given,
        f"{own} = {mm(stand.foot_mm, 5)} out",
        f"one in four is read in three ways: {apart}",
        *_borrowed(m),
    )
    label = f"Foot out from the wall ({FLAT if flat else Word(stand.rule)}, {ladder.country_of(m)})"
    return figure("ladder foot", label, stand.foot_mm, "mm", working, ladder.law_of(m).foot, GEOMETRY, headline=True)


def _angle(stand: ladder.LadderStance) -> Figure:
    working = (
        f"atan({bare(stand.contact_mm, 5)} / {bare(stand.foot_mm, 5)}) = {qty(stand.angle_deg, '°', 4)}; "
        f"{ladder.ANGLE} holds all three ways of reading one in four"
    )
    value = stand.angle_deg
    return figure("ladder angle", "Angle from the ground", value, "deg", working, by.ANGLES, headline=True, digits=4)


def _measured(m: SafetyMeasures, foot_mm: float, angle: float) -> Figure:
    contact, foot = ladder.contact_of(m), bare(foot_mm, 5)
    by_length = f"acos({foot} / {bare(m.working_length_mm or 0.0, 5)})"
    form = by_length if contact is None else f"atan({bare(contact, 5)} / {foot})"
    said = "good" if ladder.ANGLE.allows(angle) else "too flat" if angle < ladder.ANGLE.nearest(angle) else "too steep"
    working = f"{form} = {qty(angle, '°', 4)}; {ladder.ANGLE} is good: {Word(said)}"
    return figure("measured angle", "Angle as it stands", angle, "deg", working, by.ANGLES, digits=4)


def zone_of(m: SafetyMeasures) -> Zone | None:
    """Return the zone round the line that the author names, where the country has one on record."""
    return None if m.line is None else line_zone(m.place, m.line, m.line_kv, consent=bool(m.line_consent))


def distance_mm(m: SafetyMeasures) -> float | None:
    """Return how near the line anything comes: as written, else the line's height less the reach."""
    if m.line_distance_mm is not None:
        return m.line_distance_mm
    return None if m.line_height_mm is None or m.reach_mm is None else m.line_height_mm - m.reach_mm


def line_figures(work: T) -> Iterator[Figure]:
    """Yield how far to keep from a line, and how far the work does."""
    m = work.measures
    zone, found = zone_of(m), distance_mm(m)
    if zone is not None:
        spotter = (f"with a spotter from there to {mm(zone.spotter_mm)}",) if zone.spotter_mm is not None else ()
        working = (
            f"{Word(zone.note)}: nothing nearer than {mm(zone.no_go_mm)}, body, tool or branch",
            *spotter,
            "treat every line as live; a line sags lower in heat",
        )
        label = f"Keep from the line ({ladder.country_of(m)})"
        value = zone.no_go_mm
        yield figure("keep from the line", label, value, "mm", working, zone.reference, by.QLD_PLANTS, headline=True)
    if found is None or m.line is None:
        return
    less = (
        f"{bare(m.line_height_mm or 0, 6)} - {bare(m.reach_mm or 0, 6)}"
        if m.line_distance_mm is None
        else "as measured"
    )
    nearest = f"{less} = {mm(found, 6)} between the line and the nearest of body, tool or branch"
    yield figure("nearest to the line", "Nearest anything comes", found, "mm", nearest, GEOMETRY)
