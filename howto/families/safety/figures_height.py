"""The figures of a ladder, and of a line overhead; each names the country whose limit it is."""

from collections.abc import Iterator

from howto.families.safety import height
from howto.families.safety.countries import BORROWED, Zone, line_zone
from howto.families.safety.ladder import Stance, contact_of, law_of, measured_angle, rails_to_mm, stance
from howto.families.safety.measures import SafetyMeasures
from howto.families.safety.references import ANGLES, QLD_PLANTS
from howto.model.figure import Figure
from howto.model.reference import GEOMETRY
from howto.model.work import Work
from howto.quantities import show_number as num
from howto.quantities.amounts import bare, mm, qty

T = Work[SafetyMeasures]


def country_of(m: SafetyMeasures) -> str:
    """Return the country as it is printed."""
    return "no country named" if m.place == "elsewhere" else m.place


def ladder_figures(work: T) -> Iterator[Figure]:
    """Yield how the ladder stands, and how far its rails go."""
    m = work.measures
    stand = stance(m)
    if stand is not None:
        yield _foot(m, stand)
        yield _angle(stand)
    if m.foot_measured_mm is not None:
        yield from _measured(work)
    top = rails_to_mm(m)
    if top is None or m.landing_mm is None or stand is None:
        return
    law = law_of(m)
    yield Figure(
        name="rails to",
        label=f"Rails end at least at ({country_of(m)})",
        value=top,
        unit="mm",
        working=(
            f"{bare(m.landing_mm, 5)} + {bare(law.past_mm, 5)} past the landing = {mm(top, 5)} above the ground",
            *_borrowed(m),
        ),
        references=(law.landing,),
    )
    long = height.length_to(stand.contact_mm, stand.foot_mm) * top / stand.contact_mm
    yield Figure(
        name="ladder length",
        label="Length of ladder to that height",
        value=long,
        unit="mm",
        working=(
            f"√({bare(stand.contact_mm, 5)}² + {bare(stand.foot_mm, 5)}²) x {bare(top, 5)} / "
            f"{bare(stand.contact_mm, 5)} = {mm(long, 5)}",
        ),
        references=(GEOMETRY,),
    )


def _borrowed(m: SafetyMeasures) -> tuple[str, ...]:
    if m.place not in BORROWED:
        return ()
    return (f"{country_of(m)}: no number on record, so the more careful of the published ones; ask the local code",)


def _foot(m: SafetyMeasures, stand: Stance) -> Figure:
    contact, length = num(stand.contact_mm, 5), num(stand.length_mm, 5)
    own = {
        "by height": f"{contact} / 4 = {mm(stand.foot_mm, 5)} out",
        "by length": f"{length} / 4 = {mm(stand.foot_mm, 5)} out",
        "75 degrees": f"{contact} / tan 75° = {mm(stand.foot_mm, 5)} out",
    }[stand.rule]
    given = (
        f"ladder {mm(m.working_length_mm or 0, 5)} to its top contact, so it touches at {contact} mm"
        if contact_of(m) is None
        else f"it touches at {contact} mm, so it is {length} mm long to there"
    )
    others = [each for rule in ("by height", "by length", "75 degrees") if (each := stance(m, rule))]
    apart = ", ".join(f"{each.rule} {mm(each.foot_mm, 4)}" for each in others)
    return Figure(
        name="ladder foot",
        label=f"Foot out from the wall ({'75°' if stand.rule == '75 degrees' else stand.rule}, {country_of(m)})",
        value=stand.foot_mm,
        unit="mm",
        working=(given, own, f"one in four is read in three ways: {apart}", *_borrowed(m)),
        references=(law_of(m).foot, GEOMETRY),
        headline=True,
    )


def _angle(stand: Stance) -> Figure:
    return Figure(
        name="ladder angle",
        label="Angle from the ground",
        value=stand.angle_deg,
        unit="deg",
        working=(
            f"atan({bare(stand.contact_mm, 5)} / {bare(stand.foot_mm, 5)}) = {qty(stand.angle_deg, '°', 4)}; "
            "74 to 77° holds all three ways of reading one in four",
        ),
        references=(ANGLES,),
        headline=True,
        digits=4,
    )


def _measured(work: T) -> Iterator[Figure]:
    m, angle = work.measures, measured_angle(work.measures)
    contact = contact_of(m)
    if angle is None or m.foot_measured_mm is None:
        return
    foot = num(m.foot_measured_mm, 5)
    form = (
        f"atan({bare(contact, 5)} / {foot})"
        if contact is not None
        else f"acos({foot} / {bare(m.working_length_mm or 0.0, 5)})"
    )
    said = "too flat" if angle < 74 else "too steep" if angle > 77 else "good"
    yield Figure(
        name="measured angle",
        label="Angle as it stands",
        value=angle,
        unit="deg",
        working=(f"{form} = {qty(angle, '°', 4)}; 74 to 77° is good: {said}",),
        references=(ANGLES,),
        digits=4,
    )


def zone_of(m: SafetyMeasures) -> Zone | None:
    """Return the zone round the line that the author names, where the country has one on record."""
    return None if m.line is None else line_zone(m.place, m.line, m.line_kv, consent=bool(m.line_consent))


def distance_mm(m: SafetyMeasures) -> float | None:
    """Return how near the line anything comes: as written, else the line's height less the reach."""
    if m.line_distance_mm is not None:
        return m.line_distance_mm
    if m.line_height_mm is None or m.reach_mm is None:
        return None
    return height.clearance(m.line_height_mm, m.reach_mm)


def line_figures(work: T) -> Iterator[Figure]:
    """Yield how far to keep from a line, and how far the work does."""
    m, units = work.measures, work.crew.units
    zone = zone_of(m)
    if zone is not None:
        working = [f"{zone.note}: nothing nearer than {mm(zone.no_go_mm)}, body, tool or branch"]
        if zone.spotter_mm is not None:
            working.append(f"with a spotter from there to {mm(zone.spotter_mm)}")
        working.append("treat every line as live; a line sags lower in heat")
        yield Figure(
            name="keep from the line",
            label=f"Keep from the line ({country_of(m)})",
            value=zone.no_go_mm,
            unit="mm",
            working=tuple(working),
            references=(zone.reference, QLD_PLANTS),
            headline=True,
        )
    found = distance_mm(m)
    if found is None or m.line is None:
        return
    form = (
        "as measured"
        if m.line_distance_mm is not None
        else f"{bare(m.line_height_mm or 0, 6)} - {bare(m.reach_mm or 0, 6)}"
    )
    yield Figure(
        name="nearest to the line",
        label="Nearest anything comes",
        value=found,
        unit="mm",
        working=(f"{form} = {mm(found, 6)} between the line and the nearest of body, tool or branch",),
        references=(GEOMETRY,),
    )
