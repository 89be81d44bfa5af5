"""Watering in time: the cycles and soaks of one day, and the first weeks of new plants.

Time has no true length, so each drawing sets its own scale and writes the minutes and dates on it.
"""

from datetime import date, timedelta

from howto.families.watering import needs, plan, soil_water
from howto.families.watering.figures_running import LEAST_SOAK_MIN, cycles_for, run_minutes, soak_for
from howto.families.watering.figures_young import every
from howto.families.watering.measures import WateringMeasures
from howto.families.watering.needs import between
from howto.model.work import Work
from howto.quantities.amounts import Count, Word, bare, dated, qty
from howto.shapes import DimensionLine, Drawing, Label, Line, Point, Polygon, Role, Shape, arc, rectangle

T = Work[WateringMeasures]
MOST_DRAWN = 6  # cycles; the rest are as these
LONG_MM = 1200.0  # of the day bar
WEEKS_DRAWN = 16
CELL_MM = 80.0  # a day of the calendar
FOOT_MM = -7 * CELL_MM


def day_bar(work: T) -> Drawing:
    """Return the day's bar: water on, soak, water on; and the water standing on the soil meanwhile."""
    m = work.measures
    total, cycles = run_minutes(work) or 1.0, m.cycles or cycles_for(work) or 2
    least = soak_for(work, cycles)
    usual = least.value if least else LEAST_SOAK_MIN
    soak = usual if m.soak_minutes is None else m.soak_minutes
    drawn = soil_water.day_plan(total / cycles * min(cycles, MOST_DRAWN), min(cycles, MOST_DRAWN), soak)
    end = drawn[-1].off + soak
    scale, tall = LONG_MM / end, LONG_MM * 0.22
    shapes: list[Shape] = [Polygon(rectangle(0, -tall * 0.5, LONG_MM, 0), Role.SOIL)]
    shapes += [Polygon(rectangle(each.on * scale, 0, each.off * scale, tall), Role.WATER) for each in drawn]
    shapes += [Line(((0, 0), (LONG_MM, 0)), Role.GROUND), Line(_standing(work, drawn, end, scale, tall), Role.ACCENT)]
    on = drawn[0].off
    shapes.append(DimensionLine((0, tall), (on * scale, tall), str(qty(on, "min")), offset=tall * 0.5))
    if soak > 0:
        shapes.append(DimensionLine((on * scale, 0), ((on + soak) * scale, 0), str(qty(soak, "min")), offset=-tall))
        shapes.append(Label(((on + soak / 2) * scale, -tall * 0.25), "soak: water off"))
    middle = (drawn[-1].on * scale + on * scale / 2, tall * 0.7)
    shapes.append(Label(middle, f"cycle {bare(len(drawn))} of {bare(cycles)}"))
    times, all_day = Count(cycles, "cycle", "cycles"), total + soak * (cycles - 1)
    return Drawing(
        shapes=tuple(shapes),
        caption=f"{times} of {qty(on, 'min')}, {qty(soak, 'min')} apart",
        alt=f"A day's bar: {times} of {qty(on, 'min')} with {qty(soak, 'min')} of soak, "
        f"{qty(all_day, 'min')} from start to end. A line shows water standing on the soil in each cycle and "
        "sinking in while it soaks.",
        true=False,
        elastic=True,
    )


def _standing(work: T, drawn: tuple[soil_water.Cycle, ...], end: float, scale: float, tall: float) -> tuple[Point, ...]:
    """Return the line of water on top of the soil: up while more falls than it drinks, then down to nothing."""
    rate = plan.sprinkler_rate(work)
    steady = needs.steady_intake(work).value
    falls = max(rate.value if rate else steady, steady)
    points: list[Point] = [(0.0, 0.0)]
    left = 0.0
    peak = max((falls - steady) * drawn[0].off * len(drawn), 1e-9)
    for at, each in enumerate(drawn):
        left += (falls - steady) * (each.off - each.on)
        points.append((each.off * scale, tall * 1.6 * left / peak))
        until = drawn[at + 1].on if at + 1 < len(drawn) else end
        gone = each.off + left / steady
        if gone < until:
            points.append((gone * scale, 0.0))
        left = max(0.0, left - steady * (until - each.off))
        points.append((until * scale, tall * 1.6 * left / peak))
    return tuple(points)


def first_weeks(work: T, today: date) -> Drawing:
    """Return sixteen weeks of new plants as a calendar, a column a week: a drop for each watering, today ringed."""
    stages, planted = plan.first_year(work), plan.planted_on(work, today)
    days = WEEKS_DRAWN * 7
    shapes = _calendar()
    said: list[str] = []
    for number, stage in enumerate(stage for stage in stages if stage.start_day < days):
        end = min(stage.end_day, days)
        shapes += [Polygon(_drop(*_cell(day)), Role.WATER) for day in range(stage.start_day, end, stage.every_high)]
        said.append(every(stage))
        left, right = (stage.start_day / 7 * CELL_MM, FOOT_MM), (end / 7 * CELL_MM, FOOT_MM)
        first = planted + timedelta(days=stage.start_day)
        words = f"{dated(first, 'short')}: {Word(every(stage))}"
        shapes.append(DimensionLine(left, right, words, offset=-CELL_MM * (0.9 + 0.9 * (number % 2))))
    gone = round((work.measures.planted_weeks or 0.0) * 7)
    if gone < days:
        x, y = _cell(gone)
        half = CELL_MM / 2
        shapes.append(Line(rectangle(x - half, y - half, x + half, y + half), Role.ACCENT, closed=True))
    span = plan.plant_litres(work)
    each = f", {between(span, 'L')} a plant" if span else ""
    weeks, planting = Count(WEEKS_DRAWN, "week", "weeks"), dated(planted)
    return Drawing(
        shapes=tuple(shapes),
        caption=f"The first {weeks}, planted {planting}{', today ringed' if gone < days else ''}",
        alt=f"A calendar of {weeks} from planting on {planting}, a drop for each watering{each}: "
        f"{', then '.join(str(Word(each)) for each in said)}.",
        true=False,
    )


def _calendar() -> list[Shape]:
    """Return the lines of the calendar: a column a week, a row a day."""
    right = WEEKS_DRAWN * CELL_MM
    across = [Line(((0, -row * CELL_MM), (right, -row * CELL_MM)), Role.WIRE) for row in range(8)]
    down = [Line(((week * CELL_MM, 0), (week * CELL_MM, FOOT_MM)), Role.WIRE) for week in range(WEEKS_DRAWN + 1)]
    return [*across, *down]


def _cell(day: int) -> Point:
    """Return the middle of a day's cell, days counted from planting."""
    return (day // 7 + 0.5) * CELL_MM, -(day % 7 + 0.5) * CELL_MM


def _drop(x: float, y: float) -> tuple[Point, ...]:
    """Return a drop of water with its point up, in the middle of a cell."""
    radius = CELL_MM * 0.22
    return (*arc((x, y - radius * 0.5), radius, 150, 390, 16), (x, y + radius * 1.6))
