"""Rules over the measures of safety: noise and vibration of a day."""

from collections.abc import Iterator
from math import ceil, floor

from howto.families.safety import noise, vibration
from howto.families.safety import references as by
from howto.families.safety.day import Spell, noises, shakes
from howto.families.safety.figures_noise import DAY, DOSE, dose_of, exposure_of, less_wear, scheme_of, under_protector
from howto.families.safety.figures_vibration import points_of
from howto.families.safety.measures import SafetyMeasures
from howto.findings import Severity
from howto.model.family import Breach, Edit, Limit, Rule, rule, typed
from howto.model.work import Work
from howto.quantities.amounts import Count, Words, bare, percent, qty

T = Work[SafetyMeasures]
INSIDE = Limit(high=noise.EU_LIMIT_DB, unit="dB(A)", of="inside the protector", reference=by.EU_NOISE)
CEILING_DB = 140.0
CEILING = Limit(high=CEILING_DB, unit="dB(A)", reference=by.CEILING_DB)
ACTION = Limit(high=vibration.ACTION_POINTS, unit="", of="points", reference=by.RECKONER)
SHAKE_LIMIT = Limit(high=vibration.LIMIT_POINTS, unit="", of="points", reference=by.RECKONER)
MOST_RATING_DB = 50.0
NEW_TOOL_MIN = 60.0  # ours: what a tool without a time is given


@rule("safety.times-pair", Severity.ERROR, by.FIVE_DB, by.RECKONER, applies="techniques with several tools in one day")
def lists_pair(work: T) -> Iterator[Breach]:
    """Each tool of the day has its own time.

    a time without its tool, or a tool without its time, cannot be added up
    """
    m = work.measures
    for amounts, times, key, time_key, field, time_field in (
        (m.noise_db, m.noise_time_minutes, "noise", "noise time", "noise_db", "noise_time_minutes"),
        (
            m.vibration_m_per_s2, m.trigger_time_minutes, "vibration", "trigger time", "vibration_m_per_s2",
            "trigger_time_minutes",
        ),
    ):  # fmt: skip
        wanted, given = len(amounts or ()), len(times or ())
        if not given or wanted == given:
            continue
        text = _minutes([*(times or ())][:wanted] + [NEW_TOOL_MIN] * (wanted - given))
        yield Breach(
            field=f"measures.{time_field}",
            what=f"`{key}` names {Count(wanted, 'tool', 'tools')}, and `{time_key}` has "
            f"{Count(given, 'time', 'times')}",
            why="",
            mend=f"write one time for each tool, in the same order: `{time_key}: {text}`"
            if wanted
            else f"write `{key}:` with {Count(given, 'level', 'levels')}, or take `{time_key}` out",
            edit=Edit(key=time_key, text=text) if wanted else None,
            also=f"measures.{field}" if wanted else "",
        )


def _minutes(times: list[float]) -> str:
    """Return times as their author types them."""
    return ", ".join(typed(each, "min", down=True) for each in times)


def _shorter(spells: tuple[Spell, ...], share: float) -> str:
    """Return the times of the tools cut to a share, in whole minutes, as their author types them."""
    return _minutes([float(floor(spell.spent * share)) for spell in spells])


@rule(
    "safety.noise-dose",
    Severity.ERROR,
    by.REL,
    by.TIME_TABLE,
    by.FIVE_DB,
    by.MUFFS,
    applies="techniques with `noise:` and `noise time:`",
    level=f"{qty(noise.NIOSH.criterion_db, 'dB(A)')} for {DAY}",
    step=f"{bare(noise.NIOSH.exchange_db)} dB",
    osha=f"{bare(noise.OSHA.criterion_db)} and {bare(noise.OSHA.exchange_db)}",
)
def noise_dose(work: T) -> Iterator[Breach]:
    """The noise of a day stays within its dose, or a protector brings it under.

    NIOSH: {level}, half the time for each {step}; OSHA's scheme takes {osha}; never mix them
    """
    m = work.measures
    dose = dose_of(m)
    if dose is None or DOSE.allows(dose):
        return
    scheme, spells = scheme_of(m), noises(m)
    average = noise.day_average_db(dose, scheme)
    if m.protector_rating_db is not None and under_protector(m, average) <= scheme.criterion_db:
        return
    text = _shorter(spells, (DOSE.high or 0) / dose)
    needed = ceil(average - scheme.criterion_db + noise.LOST_IN_WEAR_DB)
    muffs = f", or write `protector rating: {needed} dB(A)` or more where such muffs are worn"
    yield Breach(
        field="measures.noise_time_minutes",
        what=f"{percent(dose, 4)} of the day's noise by {scheme.name}",
        why=" + ".join(f"{bare(s.spent)} / {bare(noise.allowed_minutes(s.amount, scheme))}" for s in spells)
        + f" min = {percent(dose, 4)}, spread over {DAY} {qty(average, 'dB(A)', 3)}; a day holds "
        f"{DOSE.most}, {qty(scheme.criterion_db, 'dB(A)')} for {DAY}",
        mend=f"write `noise time: {text}`" + (muffs if needed <= MOST_RATING_DB else ""),
        edit=Edit(key="noise time", text=text),
        also="measures.noise_db",
        reference=by.REL if scheme is noise.NIOSH else by.FIVE_DB,
    )


@rule(
    "safety.noise-inside",
    Severity.ERROR,
    by.EU_NOISE,
    by.MUFFS,
    applies="techniques with `noise:`, `noise time:` and `protector rating:`",
    most=INSIDE.most,
    action=f"{bare(noise.EU_LOWER_DB)} and {bare(noise.EU_UPPER_DB)}",
)
def eu_limit(work: T) -> Iterator[Breach]:
    """In the European Union the day's level inside the protector is at most {most}.

    the protector counts for the limit of {most}, never for the action values of {action}
    """
    m = work.measures
    if m.protector_rating_db is None or (exposure := exposure_of(m)) is None:
        return
    inside = under_protector(m, exposure)
    if INSIDE.allows(inside):
        return
    needed = ceil(exposure - noise.EU_LIMIT_DB + noise.LOST_IN_WEAR_DB)
    stronger = needed <= MOST_RATING_DB
    field, key = ("protector_rating_db", "protector rating") if stronger else ("noise_time_minutes", "noise time")
    text = f"{needed} dB(A)" if stronger else _shorter(noises(m), 10 ** ((noise.EU_LIMIT_DB - inside) / 10))
    yield Breach(
        field=f"measures.{field}",
        what=f"{qty(inside, 'dB(A)', 3)} inside the protector over the day",
        why=f"LEX,8h {less_wear(exposure, m.protector_rating_db)}; the limit is {bare(noise.EU_LIMIT_DB)}",
        mend=f"{'wear and ' * stronger}write `{key}: {text}`",
        edit=Edit(key=key, text=text),
    )


@rule("safety.noise-ceiling", Severity.ADVICE, by.CEILING_DB, applies="techniques with `noise:`", most=CEILING.most)
def noise_ceiling(work: T) -> Iterator[Breach]:
    """No noise passes {most}.

    over {most} a single moment harms, and it is louder than any garden machine
    """
    spells = noises(work.measures)
    loud = next((spell for spell in spells if not CEILING.allows(spell.amount)), None)
    if loud is None:
        return
    text = ", ".join(typed(min(spell.amount, CEILING_DB), "dB(A)", down=True) for spell in spells)
    yield Breach(
        field="measures.noise_db",
        what=f"{loud.name} at {qty(loud.amount, 'dB(A)', 3)}",
        why="",
        mend=f"read the maker's plate again; at most `noise: {text}`",
        edit=Edit(key="noise", text=text),
    )


@rule(
    "safety.vibration-action",
    Severity.WARNING,
    by.RECKONER,
    by.EU_VIBRATION,
    applies="techniques with `vibration:` and `trigger time:`",
    most=ACTION.most,
    day=f"{qty(vibration.ACTION_M_PER_S2, 'm/s²')}",
)
def vibration_action(work: T) -> Iterator[Breach]:
    """The vibration of a day stays under the action value of {most} points.

    2 x a² x hours, added over the tools; at {most} points, A(8) {day}, the employer must bring it down
    """
    total = points_of(work.measures)
    if total is not None and not ACTION.allows(total) and SHAKE_LIMIT.allows(total):
        passed = f"the action value of {ACTION.most}"
        why = f"over {ACTION.most} points ({qty(vibration.ACTION_M_PER_S2, 'm/s²')}) it has to be brought down"
        yield _shaken(work, total, passed, why, "or share the work or take a tool that shakes less")


@rule(
    "safety.vibration-limit",
    Severity.ERROR,
    by.RECKONER,
    by.EU_VIBRATION,
    applies="techniques with `vibration:` and `trigger time:`",
    most=SHAKE_LIMIT.most,
    day=f"{qty(vibration.LIMIT_M_PER_S2, 'm/s²')}",
)
def vibration_limit(work: T) -> Iterator[Breach]:
    """The vibration of a day never passes the limit value of {most} points.

    {most} points, A(8) {day}, may not be passed in a day
    """
    total = points_of(work.measures)
    if total is not None and not SHAKE_LIMIT.allows(total):
        passed = f"the limit value of {SHAKE_LIMIT.most}"
        why = f"nobody may pass {SHAKE_LIMIT.most} points ({qty(vibration.LIMIT_M_PER_S2, 'm/s²')}) in a day"
        yield _shaken(work, total, passed, why, "which stays under the action value too")


def _shaken(work: T, total: float, passed: Words, why: Words, more: Words) -> Breach:
    """Return the breach of too many points; its mend cuts the times down to the action value."""
    spells = shakes(work.measures)
    text = _shorter(spells, vibration.ACTION_POINTS / total)
    sum_ = " + ".join(f"2 x {bare(s.amount)}² x {qty(s.spent / 60, 'h', 3)}" for s in spells)
    a8 = qty(vibration.exposure_of_points_m_per_s2(total), "m/s²", 3)
    return Breach(
        field="measures.trigger_time_minutes",
        what=f"{bare(total)} vibration points, over {passed}",
        why=f"{sum_} = {bare(total)} points, A(8) {a8}; {why}",
        mend=f"write `trigger time: {text}`, {more}",
        edit=Edit(key="trigger time", text=text),
        also="measures.vibration_m_per_s2",
    )


EXPOSURE: tuple[Rule[SafetyMeasures], ...] = (
    lists_pair, noise_dose, eu_limit, noise_ceiling, vibration_action, vibration_limit,
)  # fmt: skip
