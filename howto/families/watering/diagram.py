"""A watering drawn at true size: the soil it wets, the cans that caught it, the day's cycles, a dripper's bulb."""

from datetime import date

from howto.families.watering.diagram_lines import day_bar, first_weeks
from howto.families.watering.diagram_soil import catch_plan, drip_bulb, soil_section
from howto.families.watering.figures_running import cycles_for
from howto.families.watering.measures import WateringMeasures
from howto.families.watering.plan import readings
from howto.model.work import Work
from howto.shapes import Drawing


def drawings(work: Work[WateringMeasures], today: date) -> tuple[Drawing, ...]:
    """Return two or three drawings of how the water goes on and where it goes."""
    m = work.measures
    drawn: list[Drawing] = []
    if m.method == "drip" or m.is_new:
        drawn.append(drip_bulb(work))
    elif readings(m):
        drawn.append(catch_plan(work))
    if not m.is_new:
        drawn.append(soil_section(work))
    if m.method == "sprinkler" and (m.cycles or cycles_for(work) or 1) > 1:
        drawn.append(day_bar(work))
    if m.is_new:
        drawn.append(first_weeks(work, today))
    return tuple(drawn[:3])
