"""The arithmetic of sprayed chemicals, of bleach and of wounds: shares, waiting times, the clock, and boosters."""

import re
from collections.abc import Sequence
from typing import Literal

# 40 CFR 156.208: hours of no entry by the worst acute toxicity of the active ingredients. III was read in EPA's label
# training; I, II and the dry-area case are from memory.
ENTRY_HOURS = {"I": 48.0, "II": 24.0, "III": 12.0, "IV": 12.0}
DRY_NERVE_POISON_HOURS = 72.0
_CLOCK = re.compile(r"\s*(\d{1,2})(?:[:.h](\d{2}))?\s*(?:([ap])\.?\s*m\.?)?\s*", re.IGNORECASE)
Wound = Literal["clean", "dirty"]  # soil, thorns and depth make it dirty
ORDER = ("I", "II", "III", "IV")  # the most toxic first: 40 CFR 156.62
BOOSTER_YEARS: dict[Wound, int] = {"clean": 10, "dirty": 5}  # Merck Manual
FULL_COURSE = 3


def part_of(total: float, parts: float, others: float) -> float:
    """Return the share of a mix of `parts` + `others`; ValueError for a mix of nothing."""
    if parts < 0 or others < 0 or parts + others <= 0:
        raise ValueError("a mix needs at least one part")
    return total * parts / (parts + others)


def worst(categories: Sequence[str]) -> str:
    """Return the most toxic of several categories; ValueError for none, or for one that is not I to IV."""
    return min(categories, key=ORDER.index)


def entry_hours(categories: Sequence[str], *, dry_nerve_poison: bool = False) -> float:
    """Return the hours of no entry by the worst category.

    `dry_nerve_poison`: a category I cholinesterase inhibitor used outdoors where little rain falls.
    """
    found = worst(categories)
    return DRY_NERVE_POISON_HOURS if found == "I" and dry_nerve_poison else ENTRY_HOURS[found]


def clock_minutes(text: str) -> int | None:
    """Return a time of day such as `14:00`, `2 pm` or `14h30` as minutes after midnight; None for no time."""
    found = _CLOCK.fullmatch(text.replace("\u00a0", " "))
    if found is None:
        return None
    hour, minute, half = int(found[1]), int(found[2] or 0), (found[3] or "").lower()
    if half and not 1 <= hour <= 12:
        return None
    hour = hour % 12 + 12 * (half == "p") if half else hour
    return hour * 60 + minute if hour < 24 and minute < 60 and (half or found[2]) else None


def after(start_min: int, hours: float) -> tuple[int, int]:
    """Return the days later and the minutes after midnight at which a wait is over, whole minutes, never early."""
    end = start_min + -int(-hours * 60 // 1)
    return end // 1440, end % 1440


def clock(minutes: int) -> str:
    """Return minutes after midnight as a clock shows them: `02:00`."""
    return f"{minutes // 60:02d}:{minutes % 60:02d}"


def tetanus(wound: Wound, doses: int | None, last_years: float | None) -> str:
    """Return `none due`, `booster due`, `vaccine due` or `vaccine and immune globulin due`.

    `doses` is None where nobody knows them; with three or more, a booster is due when the last one lies too far back,
    as one that nobody can date does.
    """
    if doses is None or doses < FULL_COURSE:
        return "vaccine due" if wound == "clean" else "vaccine and immune globulin due"
    return "booster due" if last_years is None or last_years > BOOSTER_YEARS[wound] else "none due"
