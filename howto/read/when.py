"""When a care task falls due, from the words before its colon."""

import re
from typing import Final, Literal, cast

from howto.findings import README, Finding, Severity
from howto.languages import language_of
from howto.languages.form import MONTHS
from howto.model.technique import When
from howto.read.items import forms
from howto.read.notes import nearest, short
from howto.span import Span

Season = Literal["spring", "summer", "autumn", "winter"]
Part = Literal["early", "mid", "late"]
_DAYS: Final = {"day": 1, "week": 7, "fortnight": 14, "month": 30, "year": 365}
_WORDS: Final = {
    word: number
    for number, word in enumerate(
        ("one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve"), 1
    )
} | {"a": 1, "an": 1}
_LENGTH: Final = r"(?:(?P<{0}n>\d{{1,4}}|[a-z]+)[ -])?(?P<{0}unit>day|week|fortnight|month|year)s?"
_SPAN: Final = re.compile(
    r"(?P<kind>within|in|for|after|from|every|each)(?: the (?:first|next))? "
    + _LENGTH.format("a")
    + r"(?:,? (?P<until>for|until|up to)(?: the (?:first|next))? "
    + _LENGTH.format("b")
    + ")?"
)
_SEASON: Final = re.compile(
    r"(?:in |next |every |each )?(?:the )?(?:(?P<part>early|mid|late)[ -])?(?P<season>spring|summer|autumn|fall|winter)"
)
_MONTH: Final = re.compile(r"(?:in |next |every |each )?(?:(?:early|mid|late)[ -])?(?P<month>[a-z]{3,9})\.?")
_PLAIN: Final[dict[str, Literal["next visit", "always"]]] = {
    "next visit": "next visit",
    "at the next visit": "next visit",
    "at next visit": "next visit",
    "on the next visit": "next visit",
    "before the next visit": "next visit",
    "always": "always",
    "at all times": "always",
    "all year": "always",
    "never": "always",
}
_KINDS: Final[dict[str, Literal["within", "after"]]] = {
    "within": "within",
    "in": "within",
    "after": "after",
    "from": "after",
}
_LONGEST_DAYS: Final = 3660


def read_when(text: str, span: Span, line: str = "", language: str = "en") -> tuple[When | None, tuple[Finding, ...]]:
    """Return when a task falls due, or None with the forms that are understood: in English or the file's language."""
    words = " ".join(re.sub(r"[\s\u00a0]+", " ", text).split()).rstrip(".:").casefold()
    for said in (words, language_of(language).in_english(words)):
        when = _plain(text, said) or _length(text, said) or _calendar(text, said)
        if when is not None:
            return when, ()
    near = nearest(words, language_of(language).file.forms)
    finding = Finding(
        "file.when",
        Severity.ERROR,
        span,
        line,
        f"`{short(text)}` does not say a time that is understood",
        "the leaflet gives each task its date",
        f"write {f'`{near}:`' if near else 'one of these'}; {forms(language)}",
        reference=README,
    )
    return None, (finding,)


def _plain(text: str, words: str) -> When | None:
    """Return the times that are a word or two."""
    kind = _PLAIN.get(words)
    if kind is not None:
        return When(text=text, kind=kind)
    if words in ("daily", "weekly", "monthly", "yearly"):
        return When(text=text, kind="every", days={"daily": 1, "weekly": 7, "monthly": 30, "yearly": 365}[words])
    if words in ("today", "straight away", "at once"):
        return When(text=text, kind="within", days=0)
    if words in ("tomorrow", "the next day"):
        return When(text=text, kind="after", days=1)
    return None


def _length(text: str, words: str) -> When | None:
    """Return `within 2 days`, `after 6 weeks`, `every 3 days` or `every week for 12 weeks`."""
    found = _SPAN.fullmatch(words)
    if found is None:
        return None
    days = _in_days(found["an"], found["aunit"])
    until = _in_days(found["bn"], found["bunit"]) if found["until"] else None
    if days is None or (found["until"] and until is None):
        return None
    if found["kind"] in ("every", "each"):
        return When(text=text, kind="every", days=days, until_days=until)
    if found["kind"] == "for" and not found["until"]:  # "for 2 weeks": each day of them
        return When(text=text, kind="every", days=1, until_days=days)
    return None if found["until"] else When(text=text, kind=_KINDS[found["kind"]], days=days)


def _in_days(number: str | None, unit: str) -> int | None:
    """Return a length of time in days, or None for a number that is none or out of reason; a month is 30 days."""
    many = 1 if number is None else int(number) if number.isdecimal() else _WORDS.get(number)
    if not many or many * _DAYS[unit] > _LONGEST_DAYS:
        return None
    return many * _DAYS[unit]


def _calendar(text: str, words: str) -> When | None:
    """Return a season or a month."""
    if found := _SEASON.fullmatch(words):
        season = "autumn" if found["season"] == "fall" else found["season"]
        part = cast("Part | None", found["part"])
        return When(text=text, kind="season", season=cast("Season", season), part=part)
    if found := _MONTH.fullmatch(words):
        names = [month for month in MONTHS if month == found["month"] or month[:3] == found["month"]]
        if found["month"] == "sept":
            names = ["september"]
        if names:
            return When(text=text, kind="month", month=MONTHS.index(names[0]) + 1)
    return None
