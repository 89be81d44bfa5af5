"""The year as a line of months: a bar for each dose, and hatched the time in which no nitrogen is given.

Time has no true length: a month is 100 mm wide here, and the bars are as high as their doses are large.
"""

from calendar import monthrange
from datetime import date, timedelta

from howto.families.feeding import plan, season
from howto.families.feeding.figures_mix import mix_g_per_l
from howto.families.feeding.label import label_of
from howto.families.feeding.parts import doses
from howto.families.feeding.plan import T
from howto.quantities.amounts import Word, Words, bare, dated, qty
from howto.seasons import month_start, months_between
from howto.shapes import DimensionLine, Drawing, Label, Line, Polygon, Role, Shape, rectangle

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
    shapes: list[Shape] = [*_zone(work, days, start, end)]
    shapes.append(Line(((0, 0), (12 * MONTH_MM, 0)), Role.GROUND))
    shapes += [Line(((at * MONTH_MM, 0), (at * MONTH_MM, -18)), Role.WIRE) for at in range(13)]
    shapes += [
        DimensionLine((at * MONTH_MM, 0), ((at + 3) * MONTH_MM, 0), _quarter(month_start(start, at)), offset=-75)
        for at in range(0, 12, 3)
    ]
    amounts, unit = _amounts(work, len(days))
    largest = max(amounts, default=1.0) or 1.0
    for at, day in enumerate(drawn):
        x, high = _x(day, start), max(TALL_MM * (amounts[at] / largest if amounts else 1.0), 30.0)
        shapes.append(Polygon(rectangle(x - BAR_MM / 2, 0, x + BAR_MM / 2, high), Role.WOOD))
        if len(drawn) <= MOST_WORDS or at in {0, len(drawn) - 1}:
            words = f"{dated(day, 'short')}: {qty(amounts[at], unit)}" if amounts else f"{dated(day, 'short')}"
            shapes.append(DimensionLine((x, 0), (x, high), words, offset=-BAR_MM * 1.7))
    if start <= today < end:
        shapes.append(Line(((_x(today, start), -20), (_x(today, start), TALL_MM * 0.6)), Role.ACCENT))
        shapes.append(Label((_x(today, start), TALL_MM * 0.6), "today"))
    count = doses(len(days)) if len(days) > 1 else Word("one dose")
    each = f" of {qty(amounts[0], unit)}" if amounts else ""
    return Drawing(
        tuple(shapes), f"The year: {count} from {dated(days[0])}", _alt(work, days, each), true=False, elastic=True
    )


def _zone(work: T, days: tuple[date, ...], start: date, end: date) -> list[Shape]:
    """Return the hatched time without nitrogen, to the autumn dose or the end of the line."""
    last = season.cut_off(work, days[0])
    until = min(days[-1], end) if season.has_autumn(work.measures) else end
    if last is None or not start <= last < until:
        return []
    left, right = _x(last, start), _x(until, start)
    said = f"no nitrogen after {dated(last, 'short')}"
    return [
        Polygon(rectangle(left, 0, right, ZONE_MM), Role.DANGER),
        Label((left + (right - left) * 0.85, ZONE_MM), said),
    ]


def _x(day: date, start: date) -> float:
    """Return where a day stands on the line: each month is equally wide."""
    return (months_between(start, day) + (day.day - 1) / monthrange(day.year, day.month)[1]) * MONTH_MM


def _quarter(first: date) -> Words:
    """Return three months by their first and their last day: `1 Mar–31 May`."""
    return f"{dated(first, 'short')}–{dated(month_start(first, 3) - timedelta(days=1), 'short')}"


def _amounts(work: T, count: int) -> tuple[tuple[float, ...], str]:
    """Return the product of each dose and its unit: in a litre of water where it is mixed; none where not known."""
    m = work.measures
    if not m.in_water:
        return plan.dose_amounts(work, count)
    grams = mix_g_per_l(m, label_of(m))
    return () if grams is None else (grams,) * count, "g/L"


def _alt(work: T, days: tuple[date, ...], each: Words) -> Words:
    said = "; ".join(f"{dated(day)}" for day in days[:MOST_WORDS])
    more = f" and {bare(len(days) - MOST_WORDS)} more" if len(days) > MOST_WORDS else ""
    last = season.cut_off(work, days[0])
    stop = f" Hatched: no nitrogen after {dated(last)}." if last else ""
    return f"A line of twelve months with a bar for each dose{each}: {said}{more}.{stop}"
