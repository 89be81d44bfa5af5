"""Rules over the measures of safety: noise and vibration of a day."""

from collections.abc import Iterator
from math import floor

from howto.families.safety import noise, vibration
from howto.families.safety import references as by
from howto.families.safety.day import noises, shakes
from howto.families.safety.figures_noise import EU_LIMIT, dose_of, exposure_of, scheme_of, under_protector
from howto.families.safety.figures_vibration import points_of
from howto.families.safety.measures import SafetyMeasures
from howto.findings import Severity
from howto.model.family import Breach, Edit, Limit, Rule, rule
from howto.model.work import Work
from howto.quantities import show_number as num
from howto.quantities.amounts import bare, percent, qty

T = Work[SafetyMeasures]
DOSE = Limit(high=100, unit="%", of="of the day's dose", reference=by.REL)
INSIDE = Limit(high=EU_LIMIT, unit="dB(A)", of="inside the protector", reference=by.EU_NOISE)
CEILING = Limit(high=140, unit="dB(A)", reference=by.CEILING_DB)
ACTION = Limit(high=vibration.ACTION_POINTS, unit="", of="points", reference=by.RECKONER)
SHAKE_LIMIT = Limit(high=vibration.LIMIT_POINTS, unit="", of="points", reference=by.RECKONER)
MOST_RATING_DB = 50.0


@rule("safety.times-pair", Severity.ERROR, by.FIVE_DB, by.RECKONER, applies="techniques with several tools in one day")
def lists_pair(work: T) -> Iterator[Breach]:
    """Each tool of the day has its own time.

    Levels and times are added up tool by tool, so the lists are as long as each other.
    """
    m = work.measures
    for amounts, times, key, time_key, field in (
        (m.noise_db, m.noise_time_minutes, "noise", "noise time", "noise_time_minutes"),
        (m.vibration_m_per_s2, m.trigger_time_minutes, "vibration", "trigger time", "trigger_time_minutes"),
    ):
        wanted, given = len(amounts or ()), len(times or ())
        if not given or wanted == given:
            continue
        kept = [*(times or ())][:wanted] + [60.0] * max(0, wanted - given)
        text = _minutes(kept)
        yield Breach(
            field=f"measures.{field}",
            what=f"`{key}` names {_counted(wanted, 'tool')}, and `{time_key}` has {_counted(given, 'time')}",
            why="a time without its tool, or a tool without its time, cannot be added up",
            mend=f"write one time for each tool, in the same order: `{time_key}: {text}`"
            if wanted
            else f"write `{key}:` with {_counted(given, 'level')}, or take `{time_key}` out",
            edit=Edit(key=time_key, text=text) if wanted else None,
            also=f"measures.{field.replace('noise_time_minutes', 'noise_db')}" if wanted and key == "noise" else "",
        )


def _counted(count: int, word: str) -> str:
    return f"{count} {word}" if count == 1 else f"{count} {word}s"


def _minutes(times: list[float]) -> str:
    return ", ".join(f"{qty(each, 'min', 3)}" for each in times)


@rule(
    "safety.noise-dose",
    Severity.ERROR,
    by.REL,
    by.TIME_TABLE,
    by.FIVE_DB,
    by.MUFFS,
    applies="techniques with `noise:` and `noise time:`",
)
def noise_dose(work: T) -> Iterator[Breach]:
    """The noise of a day stays within its dose, or a protector brings it under.

    NIOSH: 85 dB(A) for 8 h, half the time for each 3 dB; OSHA's scheme takes 90 and 5. Never mix them.
    """
    m = work.measures
    dose = dose_of(m)
    if dose is None or DOSE.allows(dose):
        return
    scheme = scheme_of(m)
    average = noise.day_average_db(dose, scheme)
    if m.protector_rating_db is not None and under_protector(m, average) <= scheme.criterion_db:
        return
    spells = noises(m)
    kept = [float(floor((s.minutes or 0.0) * 100 / dose)) for s in spells]
    text = _minutes(kept)
    needed = average - scheme.criterion_db + 4
    muffs = f", or write `protector rating: {num(-(-needed // 1))} dB(A)` or more where such muffs are worn"
    yield Breach(
        field="measures.noise_time_minutes",
        what=f"{percent(dose, 4)} of the day's noise by {scheme.name}",
        why=" + ".join(f"{bare(s.minutes or 0.0)} / {bare(noise.allowed_minutes(s.amount, scheme))}" for s in spells)
        + f" min = {percent(dose, 4)}, spread over 8 h {qty(average, 'dB(A)', 3)}; a day holds 100 %, {_criterion(scheme)}",
        mend=f"write `noise time: {text}`" + (muffs if needed <= MOST_RATING_DB else ""),
        edit=Edit(key="noise time", text=text),
        also="measures.noise_db",
        reference=by.REL if scheme is noise.NIOSH else by.FIVE_DB,
    )


def _criterion(scheme: noise.Scheme) -> str:
    return f"{qty(scheme.criterion_db, 'dB(A)', 3)} for 8 h"


@rule(
    "safety.noise-inside",
    Severity.ERROR,
    by.EU_NOISE,
    by.MUFFS,
    applies="techniques with `noise:`, `noise time:` and `protector rating:`",
)
def eu_limit(work: T) -> Iterator[Breach]:
    """In the European Union the day's level inside the protector is at most 87 dB(A).

    The protector counts for the limit of 87 dB(A), never for the action values of 80 and 85.
    """
    m = work.measures
    if m.protector_rating_db is None or (exposure := exposure_of(m)) is None:
        return
    inside = under_protector(m, exposure)
    if INSIDE.allows(inside):
        return
    needed = -(-(exposure - EU_LIMIT + 4) // 1)
    within = needed <= MOST_RATING_DB
    share = 10 ** ((EU_LIMIT - inside) / 10)
    text = _minutes([float(floor((s.minutes or 0.0) * share)) for s in noises(m)])
    yield Breach(
        field="measures.protector_rating_db" if within else "measures.noise_time_minutes",
        what=f"{qty(inside, 'dB(A)', 3)} inside the protector over the day",
        why=f"LEX,8h {bare(exposure)} - ({bare(m.protector_rating_db)} - 4 lost in real wear) = {qty(inside, 'dB(A)', 3)}; "
        f"the limit is {bare(EU_LIMIT)}",
        mend=f"wear and write `protector rating: {num(needed)} dB(A)`" if within else f"write `noise time: {text}`",
        edit=Edit(key="protector rating", text=f"{qty(needed, 'dB(A)', 3)}")
        if within
        else Edit(key="noise time", text=text),
    )


@rule("safety.noise-ceiling", Severity.ADVICE, by.CEILING_DB, applies="techniques with `noise:`")
def noise_ceiling(work: T) -> Iterator[Breach]:
    """No noise passes 140 dB(A).

    Over 140 dB(A) a single moment harms.
    """
    loud = [spell for spell in noises(work.measures) if not CEILING.allows(spell.amount)]
    if not loud:
        return
    text = ", ".join(f"{qty(min(spell.amount, 140.0), 'dB(A)', 3)}" for spell in noises(work.measures))
    yield Breach(
        field="measures.noise_db",
        what=f"{loud[0].name} at {qty(loud[0].amount, 'dB(A)', 3)}",
        why="140 dB(A) is never allowed, however short; it is louder than any garden machine",
        mend=f"read the maker's plate again; at most `noise: {text}`",
        edit=Edit(key="noise", text=text),
    )


def _shorter(work: T, total: float, most: float) -> str:
    return _minutes([float(floor((s.minutes or 0.0) * most / total)) for s in shakes(work.measures)])


@rule(
    "safety.vibration-action",
    Severity.WARNING,
    by.RECKONER,
    by.EU_VIBRATION,
    applies="techniques with `vibration:` and `trigger time:`",
)
def vibration_action(work: T) -> Iterator[Breach]:
    """The vibration of a day stays under the action value of 100 points.

    2 x a² x hours, added over the tools; at 100 points, A(8) 2.5 m/s², the employer must bring it down.
    """
    total = points_of(work.measures)
    if total is None or ACTION.allows(total) or not SHAKE_LIMIT.allows(total):
        return
    text = _shorter(work, total, vibration.ACTION_POINTS)
    yield Breach(
        field="measures.trigger_time_minutes",
        what=f"{bare(total)} vibration points, over the action value of 100",
        why=f"{_sum(work)} = {bare(total)} points, A(8) {qty(vibration.exposure_of_points_m_per_s2(total), 'm/s²', 3)}; "
        "over 100 points (2.5 m/s²) it has to be brought down",
        mend=f"write `trigger time: {text}`, or share the work or take a tool that shakes less",
        edit=Edit(key="trigger time", text=text),
        also="measures.vibration_m_per_s2",
    )


@rule(
    "safety.vibration-limit",
    Severity.ERROR,
    by.RECKONER,
    by.EU_VIBRATION,
    applies="techniques with `vibration:` and `trigger time:`",
)
def vibration_limit(work: T) -> Iterator[Breach]:
    """The vibration of a day never passes the limit value of 400 points.

    400 points, A(8) 5 m/s², may not be passed in a day.
    """
    total = points_of(work.measures)
    if total is None or SHAKE_LIMIT.allows(total):
        return
    text = _shorter(work, total, vibration.ACTION_POINTS)
    yield Breach(
        field="measures.trigger_time_minutes",
        what=f"{bare(total)} vibration points, over the limit value of 400",
        why=f"{_sum(work)} = {bare(total)} points, A(8) {qty(vibration.exposure_of_points_m_per_s2(total), 'm/s²', 3)}; "
        "nobody may pass 400 points (5 m/s²) in a day",
        mend=f"write `trigger time: {text}`, which stays under the action value too",
        edit=Edit(key="trigger time", text=text),
        also="measures.vibration_m_per_s2",
    )


def _sum(work: T) -> str:
    return " + ".join(f"2 x {bare(s.amount)}² x {qty((s.minutes or 0.0) / 60, 'h', 3)}" for s in shakes(work.measures))


EXPOSURE: tuple[Rule[SafetyMeasures], ...] = (
    lists_pair,
    noise_dose,
    eu_limit,
    noise_ceiling,
    vibration_action,
    vibration_limit,
)
