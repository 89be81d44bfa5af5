"""The figures of noise: time allowed, the day's dose and level, and the level under a muff."""

from collections.abc import Iterator
from math import floor

from howto.families.safety import noise
from howto.families.safety import references as by
from howto.families.safety.day import Spell, hardest, noises, timed
from howto.families.safety.figure import figure, table
from howto.families.safety.measures import SafetyMeasures
from howto.model.family import Limit
from howto.model.figure import Figure
from howto.model.reference import Reference
from howto.model.work import Work
from howto.quantities.amounts import Name, Words, bare, percent, qty

BLINK_MIN = 1e-6  # ours: less than that is no time at all
DAY = qty(noise.DAY_H, "h")
DOSE = Limit(high=100, unit="%", of="of the day's dose", reference=by.REL)


def scheme_of(m: SafetyMeasures) -> noise.Scheme:
    """Return the scheme that the author counts noise by."""
    return noise.SCHEMES[m.noise_scheme or "NIOSH"]


def dose_of(m: SafetyMeasures) -> float | None:
    """Return the day's dose in percent by the author's scheme, or None where a time is missing."""
    pairs = timed(noises(m))
    return noise.dose_percent(*pairs, scheme_of(m)) if pairs else None


def exposure_of(m: SafetyMeasures) -> float | None:
    """Return LEX,8h in dB(A), or None where a time is missing or no time is spent."""
    pairs = timed(noises(m))
    return noise.daily_exposure_db(*pairs) if pairs and sum(pairs[1]) > BLINK_MIN else None


def under_protector(m: SafetyMeasures, level: float) -> float:
    """Return a level under the protector that is worn; the level itself without one."""
    rating = m.protector_rating_db
    return level if rating is None else noise.level_at_ear_db(level, rating)


def less_wear(level: float, rating: float, how: Words = " lost in real wear") -> Words:
    """Return the working of a level under a protector."""
    under = qty(noise.level_at_ear_db(level, rating), "dB(A)", 3)
    return f"{bare(level)} - ({bare(rating)} - {bare(noise.LOST_IN_WEAR_DB)}{how}) = {under}"


def loudness(work: Work[SafetyMeasures]) -> Iterator[Figure]:
    """Yield what the noise of the day comes to."""
    m = work.measures
    spells, dose, exposure = noises(m), dose_of(m), exposure_of(m)
    if not spells:
        return
    scheme = scheme_of(m)
    yield _allowed(scheme, spells)
    if dose is not None:
        yield _dose(scheme, spells, dose)
        if dose > 0:
            yield _average(scheme, dose)
        yield _left(scheme, hardest(spells), dose)
    if exposure is not None:
        yield _eu(spells, exposure)
    if m.protector_rating_db is not None:
        yield _at_ear(hardest(spells).amount, exposure, m.protector_rating_db)


def _sources(scheme: noise.Scheme) -> tuple[Reference, ...]:
    return (by.REL, by.TIME_TABLE) if scheme is noise.NIOSH else (by.FIVE_DB,)


def _time(minutes: float) -> Words:
    """Return a time to the minute, below an hour and a half down to the second: `47 min 37 s`."""
    long = minutes >= 90
    parts = divmod(floor(minutes + 0.5) if long else round(minutes * 60), 60)
    told = [
        str(qty(part, unit)) for part, unit in zip(parts, ("h", "min") if long else ("min", "s"), strict=True) if part
    ]
    return " ".join(told) or str(qty(0, "s"))


def _allowed(scheme: noise.Scheme, spells: tuple[Spell, ...]) -> Figure:
    loudest = hardest(spells)
    other = noise.OSHA if scheme is noise.NIOSH else noise.NIOSH
    times = [(spell, noise.allowed_minutes(spell.amount, scheme)) for spell in spells]
    criterion, exchange = bare(scheme.criterion_db), bare(scheme.exchange_db)
    by_other = _time(noise.allowed_minutes(loudest.amount, other))
    rows = table(
        {"Tool": "", "Level": "dB(A)", f"Allowed in a day ({Name(scheme.name)})": "min"},
        ((spell.name, spell.amount, allowed) for spell, allowed in times),
    )
    working = (
        *(
            f"{spell.name}: {bare(noise.DAY_MIN)} / 2^(({bare(spell.amount)} - {criterion}) / {exchange}) = "
            f"{_time(allowed)}"
            for spell, allowed in times
        ),
        f"by {Name(scheme.name)}, {exchange} dB from {qty(scheme.criterion_db, 'dB(A)', 3)}; by {Name(other.name)} "
        f"{qty(loudest.amount, 'dB(A)', 3)} is allowed {by_other}: never mix",
    )
    label = f"Time allowed for the loudest ({Name(scheme.name)})"
    value = noise.allowed_minutes(loudest.amount, scheme)
    return figure("time allowed", label, value, "min", working, *_sources(scheme), table=rows)


def _dose(scheme: noise.Scheme, spells: tuple[Spell, ...], dose: float) -> Figure:
    times = [(spell, noise.allowed_minutes(spell.amount, scheme)) for spell in spells]
    parts = [100 * spell.spent / allowed for spell, allowed in times]
    rows = table(
        {"Tool": "", "Level": "dB(A)", "Time": "min", "Dose": "%"},
        ((s.name, s.amount, s.spent, part) for s, part in zip(spells, parts, strict=True)),
    )
    working = (
        *(
            f"{spell.name}: {qty(spell.spent, 'min', 3)} / {qty(allowed, 'min', 3)} x 100 = {percent(part, 4)}"
            for (spell, allowed), part in zip(times, parts, strict=True)
        ),
        f"{' + '.join(str(bare(part, 4)) for part in parts)} = {percent(dose, 4)}; {DOSE.most} is a full day",
    )
    label = f"Noise dose of the day ({Name(scheme.name)})"
    return figure("noise dose", label, dose, "%", working, *_sources(scheme), table=rows, headline=True)


def _average(scheme: noise.Scheme, dose: float) -> Figure:
    level = noise.day_average_db(dose, scheme)
    working = (
        f"{bare(scheme.factor, 4)} x log10({bare(dose, 4)} / 100) + {bare(scheme.criterion_db)} = "
        f"{qty(level, 'dB(A)', 3)}"
    )
    label, said_by = (
        f"Level spread over {DAY} ({Name(scheme.name)})",
        by.AVERAGE if scheme is noise.NIOSH else by.FIVE_DB,
    )
    return figure("day average", label, level, "dB(A)", working, said_by)


def _left(scheme: noise.Scheme, loudest: Spell, dose: float) -> Figure:
    part, allowed = max(0.0, 1 - dose / 100), noise.allowed_minutes(loudest.amount, scheme)
    working = (
        f"(100 - {bare(dose, 4)}) / 100 = {bare(part)} of the day left" if part else "the day is used up",
        f"{bare(part)} x {qty(allowed, 'min', 3)} with {loudest.name} = {qty(part * allowed, 'min', 3)}",
    )
    label = f"Left today with the loudest ({Name(scheme.name)})"
    return figure("time left", label, part * allowed, "min", working, *_sources(scheme))


def _eu(spells: tuple[Spell, ...], exposure: float) -> Figure:
    inside = " + ".join(f"{bare(s.spent / 60)} x 10^({bare(s.amount)} / 10)" for s in spells)
    upper, lower = (f"action value of {qty(each, 'dB(A)')}" for each in (noise.EU_UPPER_DB, noise.EU_LOWER_DB))
    passed = (
        f"over the upper {upper}: protection is worn, and the noise is brought down"
        if exposure >= noise.EU_UPPER_DB
        else f"over the lower {lower}: protection is offered, and people are taught"
        if exposure >= noise.EU_LOWER_DB
        else f"under the lower {lower}"
    )
    working = (f"10 x log10(({inside}) / {bare(noise.DAY_H)}) = {qty(exposure, 'dB(A)', 3)}", passed)
    return figure("daily exposure", "LEX,8h (European Union)", exposure, "dB(A)", working, by.EU_NOISE, by.EU_ENERGY)


def _at_ear(loudest: float, exposure: float | None, rating: float) -> Figure:
    working = [less_wear(loudest, rating)]
    if exposure is not None:
        working.append(
            f"the day's LEX,8h inside: {less_wear(exposure, rating, '')}; the limit is {bare(noise.EU_LIMIT_DB)}, "
            "and action values are counted without the protector"
        )
    value = noise.level_at_ear_db(loudest, rating)
    return figure("level at the ear", "Loudest, under the protector", value, "dB(A)", working, by.MUFFS, by.EU_NOISE)
