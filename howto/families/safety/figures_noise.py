"""The figures of noise: time allowed, the day's dose and level, and the level under a muff."""

from collections.abc import Iterator

from howto.families.safety import noise
from howto.families.safety import references as by
from howto.families.safety.day import Spell, noises, timed
from howto.families.safety.measures import SafetyMeasures
from howto.model.figure import Figure, Table
from howto.model.reference import Reference
from howto.model.work import Work
from howto.quantities import show
from howto.quantities import show_number as num
from howto.quantities.amounts import bare, percent, qty

BLINK_MIN = 1e-6  # ours: less than that is no time at all
EU_LOWER, EU_UPPER, EU_LIMIT = 80.0, 85.0, 87.0  # Directive 2003/10/EC


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


def loudness(work: Work[SafetyMeasures]) -> Iterator[Figure]:
    """Yield what the noise of the day comes to."""
    m = work.measures
    spells = noises(m)
    if not spells:
        return
    yield _allowed(m, spells)
    dose = dose_of(m)
    if dose is not None:
        yield _dose(m, spells, dose)
        yield from _average(m, dose)
        yield from _left(m, spells, dose)
    exposure = exposure_of(m)
    if exposure is not None:
        yield _eu(spells, exposure)
    yield from _at_ear(m, spells)


def _sources(scheme: noise.Scheme) -> tuple[Reference, ...]:
    return (by.REL, by.TIME_TABLE) if scheme is noise.NIOSH else (by.FIVE_DB,)


def _time(minutes: float) -> str:
    """Return a time down to the second where it is short: `47 min 37 s`."""
    if minutes >= 90:
        return show(minutes, "min").replace("\u00a0", " ")
    whole, seconds = divmod(round(minutes * 60), 60)
    parts = [f"{whole} min"] * bool(whole) + [f"{seconds} s"] * bool(seconds or not whole)
    return " ".join(parts)


def _allowed(m: SafetyMeasures, spells: tuple[Spell, ...]) -> Figure:
    scheme = scheme_of(m)
    loudest = max(spells, key=lambda spell: spell.amount)
    other = noise.OSHA if scheme is noise.NIOSH else noise.NIOSH
    times = [noise.allowed_minutes(spell.amount, scheme) for spell in spells]
    return Figure(
        name="time allowed",
        label=f"Time allowed for the loudest ({scheme.name})",
        value=noise.allowed_minutes(loudest.amount, scheme),
        unit="min",
        working=(
            *(
                f"{spell.name}: 480 / 2^(({bare(spell.amount)} - {bare(scheme.criterion_db)}) / "
                f"{bare(scheme.exchange_db)}) = {_time(spent)}"
                for spell, spent in zip(spells, times, strict=True)
            ),
            f"by {scheme.name}, {bare(scheme.exchange_db)} dB from {qty(scheme.criterion_db, 'dB(A)', 3)}; by {other.name} "
            f"{qty(loudest.amount, 'dB(A)', 3)} is allowed {_time(noise.allowed_minutes(loudest.amount, other))}: never mix",
        ),
        references=_sources(scheme),
        table=Table(
            columns=("Tool", "Level", f"Allowed in a day ({scheme.name})"),
            units=("", "dB(A)", "min"),
            rows=tuple((spell.name, spell.amount, spent) for spell, spent in zip(spells, times, strict=True)),
        ),
    )


def _dose(m: SafetyMeasures, spells: tuple[Spell, ...], dose: float) -> Figure:
    scheme = scheme_of(m)
    parts = [100 * (s.minutes or 0.0) / noise.allowed_minutes(s.amount, scheme) for s in spells]
    return Figure(
        name="noise dose",
        label=f"Noise dose of the day ({scheme.name})",
        value=dose,
        unit="%",
        working=(
            *(
                f"{s.name}: {qty(s.minutes or 0.0, 'min', 3)} / {qty(noise.allowed_minutes(s.amount, scheme), 'min', 3)} x 100 = "
                f"{percent(part, 4)}"
                for s, part in zip(spells, parts, strict=True)
            ),
            f"{' + '.join(num(part, 4) for part in parts)} = {percent(dose, 4)}; 100 % is a full day",
        ),
        references=_sources(scheme),
        table=Table(
            columns=("Tool", "Level", "Time", "Dose"),
            units=("", "dB(A)", "min", "%"),
            rows=tuple((s.name, s.amount, s.minutes or 0.0, part) for s, part in zip(spells, parts, strict=True)),
        ),
        headline=True,
    )


def _average(m: SafetyMeasures, dose: float) -> Iterator[Figure]:
    scheme = scheme_of(m)
    if dose <= 0:
        return
    level = noise.day_average_db(dose, scheme)
    yield Figure(
        name="day average",
        label=f"Level spread over 8 h ({scheme.name})",
        value=level,
        unit="dB(A)",
        working=(
            f"{bare(scheme.factor, 4)} x log10({bare(dose, 4)} / 100) + {bare(scheme.criterion_db)} = {qty(level, 'dB(A)', 3)}",
        ),
        references=(by.AVERAGE,) if scheme is noise.NIOSH else (by.FIVE_DB,),
    )


def _left(m: SafetyMeasures, spells: tuple[Spell, ...], dose: float) -> Iterator[Figure]:
    scheme = scheme_of(m)
    loudest = max(spells, key=lambda spell: spell.amount)
    part = max(0.0, 1 - dose / 100)
    allowed = noise.allowed_minutes(loudest.amount, scheme)
    yield Figure(
        name="time left",
        label=f"Left today with the loudest ({scheme.name})",
        value=part * allowed,
        unit="min",
        working=(
            f"(100 - {bare(dose, 4)}) / 100 = {bare(part)} of the day left" if part else "the day is used up",
            f"{bare(part)} x {qty(allowed, 'min', 3)} with {loudest.name} = {qty(part * allowed, 'min', 3)}",
        ),
        references=_sources(scheme),
    )


def _eu(spells: tuple[Spell, ...], exposure: float) -> Figure:
    inside = " + ".join(f"{bare((s.minutes or 0.0) / 60)} x 10^({bare(s.amount)} / 10)" for s in spells)
    passed = (
        "over the upper action value of 85 dB(A): protection is worn, and the noise is brought down"
        if exposure >= EU_UPPER
        else "over the lower action value of 80 dB(A): protection is offered, and people are taught"
        if exposure >= EU_LOWER
        else "under the lower action value of 80 dB(A)"
    )
    return Figure(
        name="daily exposure",
        label="LEX,8h (European Union)",
        value=exposure,
        unit="dB(A)",
        working=(f"10 x log10(({inside}) / 8) = {qty(exposure, 'dB(A)', 3)}", passed),
        references=(by.EU_NOISE, by.EU_ENERGY),
    )


def under_protector(m: SafetyMeasures, level: float) -> float:
    """Return a level under the protector that is worn; the level itself without one."""
    rating = m.protector_rating_db
    return level if rating is None else noise.level_at_ear_db(level, rating)


def _at_ear(m: SafetyMeasures, spells: tuple[Spell, ...]) -> Iterator[Figure]:
    rating = m.protector_rating_db
    if rating is None:
        return
    loudest = max(spells, key=lambda spell: spell.amount)
    under = under_protector(m, loudest.amount)
    working = [f"{bare(loudest.amount)} - ({bare(rating)} - 4 lost in real wear) = {qty(under, 'dB(A)', 3)}"]
    exposure = exposure_of(m)
    if exposure is not None:
        day = under_protector(m, exposure)
        working.append(
            f"the day's LEX,8h inside: {bare(exposure)} - ({bare(rating)} - 4) = {qty(day, 'dB(A)', 3)}; the limit is 87, "
            "and action values are counted without the protector"
        )
    yield Figure(
        name="level at the ear",
        label="Loudest, under the protector",
        value=under,
        unit="dB(A)",
        working=tuple(working),
        references=(by.MUFFS, by.EU_NOISE),
    )
