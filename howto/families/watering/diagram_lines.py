"""Watering in time: the cycles and soaks of one day, and the first weeks of new plants.

Time has no true length, so each drawing sets its own scale and writes the minutes and dates on it.
"""

from datetime import date, timedelta

from howto.families.watering import needs, plan, soil_water
from howto.families.watering.figures_running import LEAST_SOAK_MIN, cycles_for, run_minutes, soak_for
from howto.families.watering.measures import WateringMeasures
from howto.model.shown import shown_day
from howto.model.technique import Technique
from howto.quantities import show
from howto.quantities import show_number as num
from howto.shapes import Dimension, Drawing, Label, Line, Point, Polygon, Role, Shape, arc, rectangle

T = Technique[WateringMeasures]
MOST_DRAWN = 4  # cycles; the rest are as these
LONG_MM = 1200.0  # of the day bar
WEEKS_DRAWN = 16
DAY_MM = 12.0


def day_bar(technique: T) -> Drawing:
    """Return the day's bar: water on, soak, water on; and the water standing on the soil meanwhile."""
    m, units = technique.measures, technique.crew.units
    total, cycles = run_minutes(technique) or 1.0, m.cycles or cycles_for(technique) or 2
    least = soak_for(technique, cycles) or LEAST_SOAK_MIN
    soak = least if m.soak_minutes is None else m.soak_minutes
    drawn = soil_water.day_plan(total / cycles * min(cycles, MOST_DRAWN), min(cycles, MOST_DRAWN), soak)
    end = drawn[-1].off + soak
    scale, tall = LONG_MM / end, LONG_MM * 0.12
    shapes: list[Shape] = [Polygon(rectangle(0, -tall * 0.5, LONG_MM, 0), Role.SOIL)]
    shapes += [Polygon(rectangle(each.on * scale, 0, each.off * scale, tall), Role.WATER) for each in drawn]
    shapes += [
        Line(((0, 0), (LONG_MM, 0)), Role.GROUND),
        Line(_standing(technique, drawn, end, scale, tall), Role.ACCENT),
    ]
    on = drawn[0].off
    shapes.append(Dimension((0, tall), (on * scale, tall), show(on, "min", units), offset=tall * 0.5))
    if soak > 0:
        shapes.append(Dimension((on * scale, 0), ((on + soak) * scale, 0), show(soak, "min", units), offset=-tall))
        shapes.append(Label(((on + soak / 2) * scale, -tall * 0.25), "soak: water off"))
    shapes.append(Label((drawn[-1].on * scale + on * scale / 2, tall * 0.7), f"cycle {len(drawn)} of {cycles}"))
    all_day = total + soak * (cycles - 1)
    return Drawing(
        shapes=tuple(shapes),
        caption=f"{cycles} cycles of {show(on, 'min', units)}, {show(soak, 'min', units)} apart",
        alt=f"A day's bar: {cycles} cycles of {show(on, 'min', units)} with {show(soak, 'min', units)} of soak, "
        f"{show(all_day, 'min', units)} from start to end. A line shows water standing on the soil in each cycle and "
        "sinking in while it soaks.",
    )


def _standing(
    technique: T, drawn: tuple[soil_water.Cycle, ...], end: float, scale: float, tall: float
) -> tuple[Point, ...]:
    """Return the line of water on top of the soil: up while more falls than it drinks, then down to nothing."""
    rate = plan.sprinkler_rate(technique)
    steady = needs.steady_intake(technique).value
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


def first_weeks(technique: T, today: date) -> Drawing:
    """Return the first sixteen weeks of new plants: a drop for each watering, and the day of today."""
    stages, planted = plan.first_year(technique), plan.planted_on(technique, today)
    days = WEEKS_DRAWN * 7
    shapes: list[Shape] = [Line(((0, 0), (days * DAY_MM, 0)), Role.GROUND)]
    said: list[str] = []
    for number, stage in enumerate(stages):
        start, end = stage.start_day, min(stage.end_day, days)
        if start >= days:
            continue
        every = stage.every_high
        shapes += [
            Polygon(_drop((day + 0.5) * DAY_MM, DAY_MM * 1.6, DAY_MM * 0.38), Role.WATER)
            for day in range(start, end, every)
        ]
        low, high = stage.every_low, stage.every_high
        often = "every day" if high == 1 else f"every {high} days" if low == high else f"every {low} to {high} days"
        said.append(often)
        shapes.append(
            Dimension(
                (start * DAY_MM, 0),
                (end * DAY_MM, 0),
                often,
                offset=-DAY_MM * (2.6 + 2.4 * (number % 2)),
            )
        )
        if number:
            first = shown_day(planted + timedelta(days=start), technique.crew.language)
            shapes.append(Label((start * DAY_MM, DAY_MM * 0.2), f"from {first}"))
    gone = round((technique.measures.planted_weeks or 0.0) * 7)
    if gone < days:
        shapes.append(Line((((gone + 0.5) * DAY_MM, -DAY_MM), ((gone + 0.5) * DAY_MM, DAY_MM * 5)), Role.ACCENT))
        shapes.append(Label(((gone + 0.5) * DAY_MM, DAY_MM * 5), "today" if gone else "planted today"))
    planting = shown_day(planted, technique.crew.language)
    span = plan.plant_litres(technique)
    each = f", {num(span.low)} to {num(span.high)} L a plant" if span else ""
    return Drawing(
        shapes=tuple(shapes),
        caption=f"The first {WEEKS_DRAWN} weeks, planted {planting}",
        alt=f"A line of {WEEKS_DRAWN} weeks from planting on {planting}, a drop for each watering{each}: "
        f"{', then '.join(said)}.",
    )


def _drop(x: float, y: float, radius: float) -> tuple[Point, ...]:
    """Return a drop of water with its point up."""
    return (*arc((x, y), radius, 150, 390, 16), (x, y + radius * 2.4))
