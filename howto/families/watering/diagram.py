"""A watering drawn at true size: the soil it wets, the cans that caught it, the day's cycles, a dripper's bulb."""

from datetime import date

from howto.families.watering.diagram_lines import day_bar, first_weeks
from howto.families.watering.diagram_soil import catch_plan, drip_bulb, soil_section
from howto.families.watering.figures_running import cycles_for
from howto.families.watering.measures import WateringMeasures
from howto.families.watering.plan import readings
from howto.model.technique import Technique
from howto.shapes import Drawing


def drawings(technique: Technique[WateringMeasures], today: date) -> tuple[Drawing, ...]:
    """Return two or three drawings of how the water goes on and where it goes."""
    m = technique.measures
    drawn: list[Drawing] = []
    if m.method == "drip" or m.is_new:
        drawn.append(drip_bulb(technique))
    elif readings(m):
        drawn.append(catch_plan(technique))
    if not m.is_new:
        drawn.append(soil_section(technique))
    if m.method == "sprinkler" and (m.cycles or cycles_for(technique) or 1) > 1:
        drawn.append(day_bar(technique))
    if m.is_new:
        drawn.append(first_weeks(technique, today))
    return tuple(drawn[:3])
