"""A line of twelve months with a numbered disc on the day of each dated task."""

from collections.abc import Sequence
from datetime import date
from typing import Final, NamedTuple

from babel.dates import format_date

from howto.languages.reader import locale_of
from howto.model.crew import Colours
from howto.model.sheet import Area, Art, Dot, PaintMark, Stroke, TextMark
from howto.seasons import month_start, months_between

MONTHS: Final = 12
SIDE_MM: Final = 3.0  # room for a disc on the first or last day
WORDS_MM: Final = 6.0  # below the line, for the months' names
INK_MM, HAIR_MM = 0.35, 0.18
VISIT_MM: Final = 2.4  # how high the triangle of the visit stands
AIR_MM: Final = 0.8
LONGEST_NAME: Final = 5  # letters that stand between two ticks


class DayMark(NamedTuple):
    """A disc on the line: its number and its day."""

    number: int
    day: date


class LineLook(NamedTuple):
    """How wide the line is, how large its discs and words, and in which colours and language."""

    width_mm: float
    text_mm: float
    colours: Colours
    accent: str
    language: str


def year_line(visits: Sequence[date], marks: Sequence[DayMark], look: LineLook, caption: str, alt: str) -> Art | None:
    """Return the line from the month of the first visit; None where no mark falls within its twelve months."""
    first = visits[0].replace(day=1)
    last = month_start(first, MONTHS)
    shown = [mark for mark in sorted(marks, key=lambda mark: (mark.day, mark.number)) if first <= mark.day < last]
    if not shown:
        return None
    radius = look.text_mm * 0.72
    placed = _levels([(_x(mark.day, first, look), mark) for mark in shown], radius)
    row = 2 * radius + AIR_MM
    top = (max(level for _, _, level in placed) + 1) * row + VISIT_MM + AIR_MM
    painted = _months(first, top, look)
    for visit in visits:
        painted += _visit(visit, first, top, look) if first <= visit < last else []
    heights = [top - VISIT_MM - AIR_MM - radius - level * row for _, _, level in placed]
    painted += [_leader(x, y, top, look) for (x, _, _), y in zip(placed, heights, strict=True)]  # under every disc
    for (x, mark, _), y in zip(placed, heights, strict=True):
        painted += _disc(x, y, radius, mark, look)
    return Art(
        width=look.width_mm,
        height=round(top + look.text_mm * 1.2 + WORDS_MM / 2, 2),
        marks=tuple(painted),
        caption=caption,
        alt=alt,
    )


def _x(day: date, first: date, look: LineLook) -> float:
    """Return where a day stands on the line: each month is equally wide."""
    months = months_between(first, day)
    length = (month_start(day, 1) - day.replace(day=1)).days
    return SIDE_MM + (look.width_mm - 2 * SIDE_MM) / MONTHS * (months + (day.day - 1) / length)


def _levels(marks: Sequence[tuple[float, DayMark]], radius: float) -> list[tuple[float, DayMark, int]]:
    """Return each mark with the lowest row in which its disc touches no other."""
    ends: list[float] = []
    placed = []
    for x, mark in marks:
        level = next((at for at, end in enumerate(ends) if x - radius >= end + 0.5), len(ends))
        ends[level : level + 1] = [x + radius]
        placed.append((x, mark, level))
    return placed


def _months(first: date, y: float, look: LineLook) -> list[PaintMark]:
    """Return the line, a tick at each month's start, and the months' names between them."""
    ink = look.colours.ink
    step = (look.width_mm - 2 * SIDE_MM) / MONTHS
    marks: list[PaintMark] = [Stroke(points=((SIDE_MM, y), (look.width_mm - SIDE_MM, y)), width=INK_MM, colour=ink)]
    for at in range(MONTHS + 1):
        x = SIDE_MM + at * step
        marks.append(Stroke(points=((x - 0.9, y + 0.9), (x + 0.9, y - 0.9)), width=INK_MM, colour=ink))
        if at < MONTHS:
            name = _name(month_start(first, at), look.language)
            size = look.text_mm
            place = (x + step / 2, y + size * 1.2)
            marks.append(TextMark(text=name, at=place, size=size, face="head", colour=ink, align="middle"))
    return marks


def _name(month: date, language: str) -> str:
    """Return a month's short name, or its number where the language has none that is short."""
    name = format_date(month, "LLL", locale=locale_of(language)).rstrip(".")
    return name if len(name) <= LONGEST_NAME else str(month.month)


def _visit(day: date, first: date, y: float, look: LineLook) -> list[PaintMark]:
    """Return the triangle that stands on the day of a visit."""
    x = _x(day, first, look)
    return [Area(points=((x, y), (x - 1.3, y - VISIT_MM), (x + 1.3, y - VISIT_MM)), colour=look.accent)]


def _leader(x: float, y: float, line: float, look: LineLook) -> PaintMark:
    """Return the line that ties a disc to its day."""
    return Stroke(points=((x, line), (x, y)), width=HAIR_MM, colour=look.colours.ink)


def _disc(x: float, y: float, radius: float, mark: DayMark, look: LineLook) -> list[PaintMark]:
    """Return a numbered disc."""
    place, ground = (x, y + radius * 0.5), look.colours.ground
    return [
        Dot(centre=(x, y), radius=radius, colour=look.colours.ink),
        TextMark(text=str(mark.number), at=place, size=radius * 1.4, face="head-bold", colour=ground, align="middle"),
    ]
