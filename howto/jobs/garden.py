"""The figures of one client's garden that join two trades: water for what was worked on, and the mower's setting."""

from collections.abc import Iterator
from datetime import date, timedelta
from typing import Final

from howto.families.mowing.measures import MowingMeasures
from howto.families.watering import formulae, garden
from howto.families.watering.garden import GardenWater
from howto.families.watering.measures import WateringMeasures
from howto.families.watering.references import LITRE_A_MM
from howto.model.crew import Crew
from howto.model.figure import Figure
from howto.model.plants import Grass
from howto.model.reference import PRACTICE
from howto.model.visit import Job, Visit
from howto.model.work import AnyWork
from howto.quantities.amounts import Count, Word, Words, bare, mm, month_named, qty
from howto.quantities.cans import usual_can_l
from howto.seasons import month_start, months_between

AHEAD: Final = timedelta(days=42)  # ours: how far a leaflet looks where no next visit is set
FURTHEST: Final = timedelta(days=92)  # ours: by then the next leaflet says more
LAWN: Final = "sprinkler"  # what a client is taken to water with: a sprinkler on a lawn, a can or hose elsewhere
BED: Final = "can"
WEEKS_A_MONTH: Final = 365 / 12 / 7
NOTHING: Final = "none, as the usual rain is enough"


def garden_figures(visit: Visit, job: Job, work: AnyWork) -> tuple[Figure, ...]:
    """Return what a job's planting needs until the next visit, for the leaflet and for `howto figures`."""
    return (*_mower(job), *_water(visit, job, work))


def _mower(job: Job) -> Iterator[Figure]:
    """Yield the height to set the mower to, where the client may cut between visits."""
    m = job.technique.measures
    if isinstance(m, MowingMeasures):
        yield Figure(
            name="mower setting",
            label="Set the mower to",
            value=m.set_height_mm,
            unit="mm",
            working=(f"the height this lawn is kept at: {mm(m.set_height_mm, 4)}",),
            references=(PRACTICE,),
            client=True,
        )


def _water(visit: Visit, job: Job, work: AnyWork) -> Iterator[Figure]:
    """Yield a week's water in the thirstiest month until the next visit; the trade of watering has its own."""
    m, crew = work.measures, work.crew
    if job.area_m2 is None or isinstance(m, WateringMeasures):
        return
    month = thirstiest_until_next(visit, crew)
    need = None if month is None else _need(job, work, month)
    if need is None or month is None:
        return
    enough, rain = rain_is_enough(need, crew), usual_rain_mm(crew, month)
    working = need.working
    if rain > 0:
        working = (*working, f"usual rain: {mm(rain, 3)} a week, {'enough' if enough else 'not enough by itself'}")
    yield Figure(
        name="water a week",
        label=f"Water a week in {month_named(month)}{'' if enough else ', if no rain falls'}",
        value=NOTHING if enough else need.litres_a_week,
        unit="" if enough else "L",
        working=working,
        references=(*need.references, PRACTICE),
        client=True,
        digits=None if enough else 2,
    )
    if not enough:
        words, line = each_watering(need, job.area_m2, crew)
        times = garden.times_a_week(need.days_between)
        yield Figure(
            name="each watering",
            label="Each watering",
            value=words,
            working=(
                f"the soil holds {Count(need.days_between, 'day', 'days')} of water: {garden.times_words(times)}",
                f"{qty(need.litres_a_week, 'L', 3)} / {bare(times)} = {qty(need.litres_a_week / times, 'L', 3)} "
                "each time",
                line,
            ),
            references=(LITRE_A_MM,),
            client=True,
        )


def usual_rain_mm(crew: Crew, month: int) -> float:
    """Return a month's mean rain in mm a week; 0 where the crew keeps none."""
    return crew.climate.rain_mm[month - 1] / WEEKS_A_MONTH if crew.climate else 0.0


def rain_is_enough(need: GardenWater, crew: Crew) -> bool:
    """Tell whether the month's mean rain covers what the plants use."""
    rain = usual_rain_mm(crew, need.month)
    return rain > 0 and rain >= need.plant_mm_per_day * 7


def thirstiest_until_next(visit: Visit, crew: Crew) -> int | None:
    """Return the month with the most thirst from the visit to the next one, or None without climate."""
    year = garden.year_of_reference_et(crew)
    if not year:
        return None
    following = visit.next_visit if visit.next_visit and visit.next_visit > visit.date else visit.date + AHEAD
    last = min(following, visit.date + FURTHEST)
    return max(_months(visit.date, last), key=lambda month: year[month - 1])


def _months(first: date, last: date) -> tuple[int, ...]:
    """Return the months from one day to another, in order."""
    return tuple(month_start(first, step).month for step in range(months_between(first, last) + 1))


def lawn_need(crew: Crew, month: int, area_m2: float, grass: Grass | None) -> GardenWater | None:
    """Return a lawn's water in a month, cool-season grass where it is not known; None without climate."""
    crop = "warm lawn" if grass is not None and grass.season == "warm" else "cool lawn"
    return garden.garden_water(crew, month, area_m2, crop=crop, method=LAWN)


def _need(job: Job, work: AnyWork, month: int) -> GardenWater | None:
    """Return a month's water: of the lawn's grass, else of the plant's kind, moderate where that is not known."""
    area, m, crew = job.area_m2 or 0.0, work.measures, work.crew
    if isinstance(m, MowingMeasures):
        return lawn_need(crew, month, area, work.book.grass(m.grass or job.plant))
    water = next((plant.water.text for plant in work.plants if plant.water), "moderate")
    return garden.garden_water(crew, month, area, plant_water=water, method=BED)


def each_watering(need: GardenWater, area_m2: float, crew: Crew) -> tuple[Words, Words]:
    """Return one watering in the simplest true words, and their working: in cans where few, else by depth in a tin."""
    times, size = garden.times_a_week(need.days_between), usual_can_l(crew.units)
    each = need.litres_a_week / times
    if formulae.as_cans(need.litres_a_week, size, times).number <= garden.MOST_CANS:
        words = garden.can_words(each, times, crew.units)
        return words, f"a can holds {qty(size, 'L', 3)}, filled up to the next quarter"
    depth = each / area_m2
    words = f"{Word(f'{mm(depth)} deep in a tin set on the ground')}, {Word(garden.times_words(times))}"
    return words, f"{qty(each, 'L', 3)} on {qty(area_m2, 'm²', 3)} stand {mm(depth, 3)} deep"
