"""Seasons and months in either hemisphere, and dates that growth decides.

Northern spring is March to May and southern spring September to November: the meteorological seasons, as the
Met Office (UK) defines them; a southern month is six months on.
"""

import re
from calendar import monthrange
from collections.abc import Iterable, Sequence
from datetime import date, timedelta
from difflib import get_close_matches
from typing import Literal

from howto.languages import LANGUAGES
from howto.languages.form import MONTHS

Hemisphere = Literal["north", "south"]

NORTHERN_SEASONS = {"spring": (3, 4, 5), "summer": (6, 7, 8), "autumn": (9, 10, 11), "winter": (12, 1, 2)}
ANY_TIME = ("any time", "all year", "any season", "year round")
GROWING_MONTHS_NORTH = (3, 4, 5, 6, 7, 8, 9, 10)  # from memory: most shoot growth falls from March to October
_PARTS = {"early": 0, "mid": 1, "late": 2}
_OTHER_WORDS = {"fall": "autumn", "sept": "september"}


def southern(month: int) -> int:
    """Return the southern month that answers to a northern one, six on."""
    return (month + 5) % 12 + 1


def month_here(northern: int, hemisphere: Hemisphere) -> int:
    """Return the month of a hemisphere that answers to a northern one."""
    return northern if hemisphere == "north" else southern(northern)


def months_here(northern: Iterable[int], hemisphere: Hemisphere) -> tuple[int, ...]:
    """Return the months of a hemisphere that answer to northern ones, in their order."""
    return tuple(month_here(month, hemisphere) for month in northern)


def month_name(month: int) -> str:
    """Return the English name of a month (1 to 12): `March`."""
    return MONTHS[month - 1].capitalize()


def month_list(months: Iterable[int]) -> str:
    """Return months one by one, as a season may be written: `March, May`."""
    return ", ".join(map(month_name, months))


def month_run(months: Sequence[int]) -> str:
    """Return months that run on, as a season may be written: `November to March`; one stands alone."""
    first, last = month_name(months[0]), month_name(months[-1])
    return first if len(months) == 1 else f"{first} to {last}"


def season_months(season: str, hemisphere: Hemisphere) -> tuple[int, ...]:
    """Return the three months of a season, in order; KeyError for a word that is no season."""
    return months_here(NORTHERN_SEASONS[season], hemisphere)


def season_of(month: int, hemisphere: Hemisphere) -> str:
    """Return the season a month falls in."""
    return next(name for name in NORTHERN_SEASONS if month in season_months(name, hemisphere))


def months_of(text: str, hemisphere: Hemisphere) -> tuple[int, ...] | None:
    """Return the months that words such as `late spring to early autumn` or `March, May` name, or None.

    Several stretches may be joined by commas, `and` or `or`; each stretch runs forward round the year. Words that
    are not English are tried in each of the other languages we know.
    """
    for words in (text, *(each.in_english(text) for each in LANGUAGES.values())):
        if found := _months(words, hemisphere):
            return found
    return None


def _months(text: str, hemisphere: Hemisphere) -> tuple[int, ...] | None:
    """Return the months that English words name, or None."""
    words = re.sub(r"\s+", " ", text.casefold()).strip(" .")
    words = re.sub(r"\b(early|mid|late)[- ]+", r"\1 ", words)
    if words in ANY_TIME:
        return tuple(range(1, 13))
    months: list[int] = []
    for stretch in re.split(r"\s*(?:,|;|\band\b|\bor\b)\s*", words):
        if not stretch:
            continue
        ends = [_point(end, hemisphere) for end in re.split(r"\s+(?:to|until|till)\s+|\s*[–—-]\s*", stretch)]
        first, last = ends[0], ends[-1]
        if len(ends) > 2 or first is None or last is None:
            return None
        months.append(first[0])
        while months[-1] != last[-1]:
            months.append(months[-1] % 12 + 1)
    return tuple(dict.fromkeys(months)) or None


def nearest_season_word(text: str) -> str | None:
    """Return the season or month word nearest to `text`, or None."""
    known = (*NORTHERN_SEASONS, *MONTHS, "any time")
    close = get_close_matches(text.casefold(), known, n=1, cutoff=0.6)
    return close[0] if close else None


def _point(words: str, hemisphere: Hemisphere) -> tuple[int, ...] | None:
    """Return the months one end of a stretch names: three for a season, one for a part of it or a month."""
    part, _, name = words.partition(" ") if words.split(" ", 1)[0] in _PARTS else ("", "", words)
    name = re.sub(r"^(?:the|in)\s+", "", name)
    name = _OTHER_WORDS.get(name, name)
    if name in NORTHERN_SEASONS:
        months = season_months(name, hemisphere)
        return (months[_PARTS[part]],) if part else months
    matches = [at for at, month in enumerate(MONTHS, 1) if month == name or (len(name) >= 3 and month[:3] == name)]
    return (matches[0],) if len(matches) == 1 else None


def growing_days(hemisphere: Hemisphere) -> int:
    """Return how many days of a year without a leap day fall in the growing months."""
    return sum(monthrange(2023, month)[1] for month in months_here(GROWING_MONTHS_NORTH, hemisphere))


def growth_date(start: date, growth_mm: float, mm_per_year: float, hemisphere: Hemisphere) -> date | None:
    """Return the day on which `growth_mm` has grown since `start`, or None if it takes over ten years.

    The year's growth is spread evenly over the growing months (March to October in the north, from memory);
    nothing grows in the others.
    """
    if mm_per_year <= 0:
        return None
    months = months_here(GROWING_MONTHS_NORTH, hemisphere)
    left = growth_mm * growing_days(hemisphere) / mm_per_year
    day = start
    for _ in range(3653):
        if left <= 1e-9:
            return day
        day += timedelta(days=1)
        if day.month in months:
            left -= 1
    return None


def month_start(day: date, count: int) -> date:
    """Return the first day of the month that is `count` months after a day's own."""
    months = day.year * 12 + day.month - 1 + count
    return date(months // 12, months % 12 + 1, 1)


def months_between(first: date, last: date) -> int:
    """Return how many months the month of one day comes before the month of another."""
    return (last.year - first.year) * 12 + last.month - first.month


def next_in_months(after: date, months: tuple[int, ...]) -> date:
    """Return `after` if its month is one of `months`, else the first day of the next one that is."""
    day = after
    while day.month not in months:
        day = month_start(day, 1)
    return day
