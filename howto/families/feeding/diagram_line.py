"""The year as a line of months: a bar for each dose, and hatched the time in which no nitrogen is given.

Time has no true length: a month is 100 mm wide here, and the bars are as high as their doses are large.
"""

from calendar import monthrange
from datetime import date

from babel.dates import format_date, format_skeleton

from howto.families.feeding import plan, season
from howto.families.feeding.figures_mix import mix_g_per_l
from howto.families.feeding.label import label_of
from howto.families.feeding.plan import T
from howto.languages.reader import day_told as shown_day
from howto.languages.reader import locale_of
from howto.model.shown import shown_cell
from howto.seasons import month_start, months_between
from howto.shapes import Dimension, Drawing, Label, Line, Polygon, Role, Shape, rectangle

MONTH_MM = 100.0
TALL_MM = 320.0  # the largest dose
BAR_MM = 26.0
ZONE_MM = 80.0
MOST_WORDS = 4  # doses that are labelled one by one; of more, the first and the last


def year_line(work: T, today: date) -> Drawing:
    """Return twelve months by quarters, from the one before the first dose, and the time without nitrogen."""
    days = season.dose_days(work, today)
    start = month_start(days[0], -1)
    start = month_start(start, -(start.month % 3))
    end = month_start(start, 12)
    drawn = [day for day in days if day < end]
    language = work.crew.language
    shapes: list[Shape] = [*_zone(work, days, start, end)]
    shapes.append(Line(((0, 0), (12 * MONTH_MM, 0)), Role.GROUND))
    shapes += [Line(((at * MONTH_MM, 0), (at * MONTH_MM, -18)), Role.WIRE) for at in range(13)]
    shapes += [
        Dimension((at * MONTH_MM, 0), ((at + 3) * MONTH_MM, 0), _quarter(month_start(start, at), language), offset=-75)
        for at in range(0, 12, 3)
    ]
    amounts = _amounts(work, days)
    largest = max(amounts, default=1.0) or 1.0
    for number, day in enumerate(drawn, 1):
        high = TALL_MM * (amounts[number - 1] / largest if amounts else 1.0)
        x = _x(day, start)
        shapes.append(Polygon(rectangle(x - BAR_MM / 2, 0, x + BAR_MM / 2, max(high, 30.0)), Role.WOOD))
        if len(drawn) <= MOST_WORDS or number in {1, len(drawn)}:
            said = _short_day(day, language)
            words = f"{said}: {_amount(work, amounts, number)}" if amounts else said
            shapes.append(Dimension((x, 0), (x, max(high, 30.0)), words, offset=-BAR_MM * 1.7))
    if start <= today < end:
        shapes.append(Line(((_x(today, start), -20), (_x(today, start), TALL_MM * 0.6)), Role.ACCENT))
        shapes.append(Label((_x(today, start), TALL_MM * 0.6), "today"))
    return Drawing(
        shapes=tuple(shapes), caption=_caption(work, days), alt=_alt(work, days, amounts), true=False, elastic=True
    )


def _zone(work: T, days: tuple[date, ...], start: date, end: date) -> list[Shape]:
    """Return the hatched time without nitrogen, to the autumn dose or the end of the line."""
    last = season.cut_off(work, days[0])
    until = min(days[-1], end) if season.has_autumn(work.measures) else end
    if last is None or not start <= last < until:
        return []
    left, right = _x(last, start), _x(until, start)
    said = f"no nitrogen after {_short_day(last, work.crew.language)}"
    return [
        Polygon(rectangle(left, 0, right, ZONE_MM), Role.DANGER),
        Label((left + (right - left) * 0.85, ZONE_MM), said),
    ]


def _x(day: date, start: date) -> float:
    """Return where a day stands on the line: each month is equally wide."""
    return (months_between(start, day) + (day.day - 1) / monthrange(day.year, day.month)[1]) * MONTH_MM


def _quarter(first: date, language: str) -> str:
    """Return three months by their short names: `Mar–May`."""
    ends = (format_date(each, "LLL", locale=locale_of(language)).rstrip(".") for each in (first, month_start(first, 2)))
    return "–".join(ends)


def _short_day(day: date, language: str) -> str:
    """Return a day without its year: `1 Mar`."""
    return format_skeleton("MMMd", day, locale=locale_of("en-GB" if language == "en" else language))


def _amounts(work: T, days: tuple[date, ...]) -> tuple[float, ...]:
    """Return the product of each dose, in the unit of `_unit`; nothing where it is not known."""
    m, label = work.measures, label_of(work.measures)
    if m.in_water:
        grams = mix_g_per_l(m, label) if label else None
        return () if grams is None else (grams,) * len(days)
    if m.kind == "fruit tree":
        each = plan.dose_g(work)
        if each is None:
            return ()
        autumn = (plan.autumn_g(work),) if season.has_autumn(m) else ()
        return (each,) * (len(days) - len(autumn)) + autumn
    found = plan.rate(m)
    return () if found is None else (found.product,) * len(days)


def _unit(work: T) -> str:
    if work.measures.in_water:
        return "g/L"
    return "g" if work.measures.kind == "fruit tree" else "g/m2"


def _amount(work: T, amounts: tuple[float, ...], number: int) -> str:
    return shown_cell(amounts[number - 1], _unit(work), work.reader)


def _caption(work: T, days: tuple[date, ...]) -> str:
    count = "one dose" if len(days) == 1 else f"{len(days)} doses"
    return f"The year: {count} from {shown_day(days[0], work.crew.language)}"


def _alt(work: T, days: tuple[date, ...], amounts: tuple[float, ...]) -> str:
    language = work.crew.language
    each = f" of {_amount(work, amounts, 1)}" if amounts else ""
    said = "; ".join(shown_day(day, language) for day in days[:MOST_WORDS])
    more = f" and {len(days) - MOST_WORDS} more" if len(days) > MOST_WORDS else ""
    last = season.cut_off(work, days[0])
    stop = f" Hatched: no nitrogen after {shown_day(last, language)}." if last else ""
    return f"A line of twelve months with a bar for each dose{each}: {said}{more}.{stop}"
