"""The arithmetic of noise: how long a level is allowed, the dose of a day, and its daily level.

Two schemes stand in print and give 47.6 min and 4 h for the same 95 dB(A); each result names its own.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from math import log10


@dataclass(frozen=True, slots=True)
class Scheme:
    """A way of counting noise: the level allowed for a whole day, the step that halves the time, the day's factor."""

    name: str
    criterion_db: float
    exchange_db: float
    factor: float  # as published: 10 and 16.61, near exchange / log10(2)


NIOSH = Scheme("NIOSH", 85.0, 3.0, 10.0)  # 98-126; average over a day: 10 log10(D / 100) + 85
OSHA = Scheme("OSHA", 90.0, 5.0, 16.61)  # WAC 296-307-63415; average: 16.61 log10(D / 100) + 90
SCHEMES = {scheme.name: scheme for scheme in (NIOSH, OSHA)}
DAY_H = 8.0
DAY_MIN = 60 * DAY_H
EU_LOWER_DB, EU_UPPER_DB, EU_LIMIT_DB = 80.0, 85.0, 87.0  # Directive 2003/10/EC
LOST_IN_WEAR_DB = 4.0  # Health and Safety Executive, from memory


def allowed_minutes(level_db: float, scheme: Scheme = NIOSH) -> float:
    """Return the minutes a level is allowed in a day: 480 / 2^((level - criterion) / exchange)."""
    return DAY_MIN / 2 ** ((level_db - scheme.criterion_db) / scheme.exchange_db)


def dose_percent(levels_db: Sequence[float], minutes: Sequence[float], scheme: Scheme = NIOSH) -> float:
    """Return the dose of several noises in a day, 100 where it is just used up; ValueError for unequal lists."""
    _check(levels_db, minutes)
    return 100 * sum(spent / allowed_minutes(level, scheme) for level, spent in zip(levels_db, minutes, strict=True))


def day_average_db(dose: float, scheme: Scheme = NIOSH) -> float:
    """Return the steady level of eight hours that gives a dose in percent; ValueError for a dose of nothing."""
    if dose <= 0:
        raise ValueError("a dose over zero is needed")
    return scheme.factor * log10(dose / 100) + scheme.criterion_db


def daily_exposure_db(levels_db: Sequence[float], minutes: Sequence[float]) -> float:
    """Return LEX,8h of Directive 2003/10/EC: 10 log10 of the energy of the day spread over eight hours.

    ValueError for unequal lists, or where no time is spent at all.
    """
    _check(levels_db, minutes)
    energy = sum(spent / 60 * 10 ** (level / 10) for level, spent in zip(levels_db, minutes, strict=True))
    if energy <= 0:
        raise ValueError("a time over zero is needed")
    return 10 * log10(energy / DAY_H)


def level_at_ear_db(level_db: float, rating_db: float) -> float:
    """Return the level under a muff or plug by its single number rating, less what is lost in real wear.

    EN 458 estimate, from memory. Never above the level outside.
    """
    return level_db - max(0.0, rating_db - LOST_IN_WEAR_DB)


def _check(levels_db: Sequence[float], minutes: Sequence[float]) -> None:
    if len(levels_db) != len(minutes):
        raise ValueError(f"{len(levels_db)} levels and {len(minutes)} times do not pair")
    if any(spent < 0 for spent in minutes):
        raise ValueError("a time below zero cannot be spent")
