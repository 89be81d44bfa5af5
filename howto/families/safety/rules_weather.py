"""Rules over the measures of safety: heat, drink and sun."""

from collections.abc import Iterator
from math import ceil

from howto.families.safety import figures_weather as weather
from howto.families.safety import heat
from howto.families.safety import references as by
from howto.families.safety.measures import SafetyMeasures
from howto.families.safety.needs import cautions, says
from howto.findings import Severity
from howto.model.family import Breach, Edit, Limit, Rule, line_wanted, outside, rule, typed
from howto.model.work import Work
from howto.quantities import round_down, round_up
from howto.quantities.amounts import Range, Word, bare, percent, qty

T = Work[SafetyMeasures]
DANGER_F = weather.BANDS_F["danger"]
DRINK_LEAST = Limit(low=round_up(heat.drink_l_per_h()[0], 0.01), unit="L/h", reference=by.DRINK)
DRINK_MOST = Limit(high=round_down(heat.most_drink_l_per_h(), 0.01), unit="L/h", reference=by.DRINK_CEILING)
CARRY_LEAST = Limit(low=weather.LEAST_CARRY_L_PER_H, unit="L", of="an hour", reference=by.CARRY)
SUN = says(r"\bsun|\bshade\b|\bUV\b|ultraviolet|\bhat\b")


@rule(
    "safety.heat-danger",
    Severity.WARNING,
    by.HEAT_INDEX,
    by.HEAT_BANDS,
    by.HEAT_CHART,
    applies="techniques with `air temperature:` and `humidity:`",
    other=f"{bare(weather.OTHER_DANGER_F)}",
    danger=f"{qty(DANGER_F, '°F', 3)}",
    sun=f"{qty(weather.SUN_F, '°F', 3)}",
)
def heat_danger(work: T) -> Iterator[Breach]:
    """Nobody works while the heat index stands in the danger band.

    danger is printed as from {other} and from {danger}; the lower is the safer; full sun adds up to {sun}
    """
    m = work.measures
    index = weather.index_f(m)
    if index is None or m.humidity_percent is None:
        return
    sun = weather.SUN_F if m.in_sun else 0.0
    in_sun = f" + {bare(sun)} in full sun" if sun else ""
    felt = index + sun
    if felt < DANGER_F:
        return
    air_c = round_down(heat.celsius(heat.warmest_f(m.humidity_percent, DANGER_F - sun)), 0.5)
    text = typed(air_c, "°C", down=True)
    yield Breach(
        field="measures.air_temperature_c",
        what=f"heat index {qty(felt, '°F', 4)} ({qty(heat.celsius(felt), '°C', 3)}): {Word(weather.band(felt))}",
        why=f"{qty(heat.fahrenheit(m.air_temperature_c or 0), '°F', 4)} and {percent(m.humidity_percent)} give "
        f"{qty(index, '°F', 4)}{in_sun}; danger starts at {bare(DANGER_F)} (in the other set in print at "
        f"{bare(weather.OTHER_DANGER_F)})",
        mend=f"work in a cooler hour: write `air temperature: {text}` or less at that humidity",
        edit=Edit(key="air temperature", text=text),
    )


@rule(
    "safety.drink-enough",
    Severity.WARNING,
    by.DRINK,
    applies=f"techniques with `drink:` in air over {qty(weather.MILD_C, '°C')}",
    cup=f"{weather.CUP}",
    slowest=f"{qty(heat.MOST_MIN, 'min')}",
    every=f"{Range(heat.FEWEST_MIN, heat.MOST_MIN, 'min')}",
    so=f"{Range(*heat.drink_l_per_h(), 'L/h')}",
)
def drink_enough(work: T) -> Iterator[Breach]:
    """In the heat everyone drinks a cup of {cup} at least every {slowest}.

    {cup} every {every}, thirsty or not, is {so}
    """
    if weather.is_hot(work.measures):
        yield from outside(DRINK_LEAST, work, "drink_l_per_h", what="a drink of {found}", why="")


@rule(
    "safety.drink-ceiling",
    Severity.WARNING,
    by.DRINK_CEILING,
    applies="techniques with `drink:`",
    most=f"{weather.CEILING}",
    litres=f"{qty(heat.most_drink_l_per_h(), 'L', 3)}",
)
def drink_too_much(work: T) -> Iterator[Breach]:
    """Nobody drinks more than {most} in an hour.

    over {most}, {litres}, in an hour thins the salt of the blood
    """
    yield from outside(DRINK_MOST, work, "drink_l_per_h", what="a drink of {found}", why="")


@rule(
    "safety.water-carried",
    Severity.WARNING,
    by.CARRY,
    applies="techniques with `water carried:` and `heat time:`",
    least=CARRY_LEAST.least,
    both=f"{weather.CARRY}",
)
def water_along(work: T) -> Iterator[Breach]:
    """Each person takes {least} of water for each hour of heat.

    {both} an hour are carried, since nobody walks back to the van for a drink
    """
    m = work.measures
    if m.water_carried_l is None or m.heat_time_hours is None or not weather.is_hot(m):
        return
    carried = m.water_carried_l / m.heat_time_hours
    if CARRY_LEAST.allows(carried):
        return
    text = typed(ceil(m.heat_time_hours * weather.LEAST_CARRY_L_PER_H * 10) / 10, "L")
    yield Breach(
        field="measures.water_carried_l",
        what=f"{qty(m.water_carried_l, 'L', 3)} of water for {qty(m.heat_time_hours, 'h', 3)} of heat",
        why=f"{bare(m.water_carried_l)} / {bare(m.heat_time_hours)} = {qty(carried, 'L', 3)} an hour; "
        f"{weather.CARRY} an hour is advised",
        mend=f"write `water carried: {text}` or more",
        edit=Edit(key="water carried", text=text),
        also="measures.heat_time_hours",
    )


@rule(
    "safety.cover-up",
    Severity.WARNING,
    by.UV,
    by.UV_WORKERS,
    applies=f"techniques with `uv index:` of {bare(heat.COVER_UP)} or more",
    least=f"{bare(heat.COVER_UP)}",
)
def cover_up(work: T) -> Iterator[Breach]:
    """From an ultraviolet index of {least} a caution says to cover up.

    from {least} up everyone covers up, on cool days too; outdoor crews all year
    """
    index = work.measures.uv_index
    if index is None or index < heat.COVER_UP or SUN.search(cautions(work)):
        return
    line = (
        "- **Sun.** Hat, sleeves and sunglasses; sunscreen every two hours; shade for breaks. → sun hat, long sleeves"
    )
    what = f"ultraviolet index {bare(index)}, {Word(heat.uv_band(index))}, and no caution speaks of the sun"
    yield line_wanted("Cautions", line, what=what, why="", field="measures.uv_index")


WEATHER: tuple[Rule[SafetyMeasures], ...] = (heat_danger, drink_enough, drink_too_much, water_along, cover_up)
