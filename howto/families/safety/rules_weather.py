"""Rules over the measures of safety: heat, drink and sun."""

from collections.abc import Iterator
from math import ceil

from howto.families.safety import heat
from howto.families.safety import references as by
from howto.families.safety.figures_weather import band, index_f, is_hot
from howto.families.safety.measures import SafetyMeasures
from howto.families.safety.needs import cautions, says
from howto.findings import Severity
from howto.model.family import Breach, Edit, Limit, Rule, rule
from howto.model.work import Work
from howto.quantities import round_down
from howto.quantities import show_number as num
from howto.quantities.amounts import bare, percent, qty

T = Work[SafetyMeasures]
DANGER_F = 103.0
DRINK_LEAST = Limit(low=heat.drink_l_per_h()[0], unit="L/h", reference=by.DRINK)
DRINK_MOST = Limit(high=heat.most_drink_l_per_h(), unit="L/h", reference=by.DRINK_CEILING)
CARRY_LEAST = Limit(low=1.0, unit="L", of="an hour", reference=by.CARRY)
COVER_UP = 3.0
SUN = says(r"\bsun|\bshade\b|\bUV\b|ultraviolet|\bhat\b")


@rule(
    "safety.heat-danger",
    Severity.WARNING,
    by.HEAT_INDEX,
    by.HEAT_BANDS,
    by.HEAT_CHART,
    applies="techniques with `air temperature:` and `humidity:`",
)
def heat_danger(work: T) -> Iterator[Breach]:
    """Nobody works while the heat index stands in the danger band.

    Danger is printed as from 105 and from 103 °F; the lower is the safer. Full sun adds up to 15 °F.
    """
    m = work.measures
    index = index_f(m)
    if index is None or m.humidity_percent is None:
        return
    felt = index + (15 if m.in_sun else 0)
    if felt < DANGER_F:
        return
    air = heat.warmest_f(m.humidity_percent, DANGER_F - (15 if m.in_sun else 0))
    us = work.crew.units == "us"
    cooler = air if us else round_down(heat.celsius(air), 0.5)
    text = f"{bare(cooler)} {'°F' if us else '°C'}"
    sun = " + 15 in full sun" if m.in_sun else ""
    yield Breach(
        field="measures.air_temperature_c",
        what=f"heat index {qty(felt, '°F', 4)} ({qty(heat.celsius(felt), '°C', 3)}): {band(felt)}",
        why=f"{qty(heat.fahrenheit(m.air_temperature_c or 0), '°F', 4)} and {percent(m.humidity_percent)} give "
        f"{qty(index, '°F', 4)}{sun}; danger starts at 103 (in the other set in print at 105)",
        mend=f"work in a cooler hour: write `air temperature: {text}` or less at that humidity",
        edit=Edit(key="air temperature", text=text),
    )


@rule("safety.drink-enough", Severity.WARNING, by.DRINK, applies="techniques with `drink:` in air over 21 °C")
def drink_enough(work: T) -> Iterator[Breach]:
    """In the heat everyone drinks a cup of 8 US fl oz at least every 20 minutes.

    A cup of 8 US fl oz (0.24 L) every 15 to 20 minutes, thirsty or not.
    """
    m = work.measures
    if m.drink_l_per_h is None or not is_hot(m) or DRINK_LEAST.allows(m.drink_l_per_h):
        return
    least = ceil((DRINK_LEAST.low or 0) * 100) / 100
    yield Breach(
        field="measures.drink_l_per_h",
        what=f"{qty(m.drink_l_per_h, 'L', 3)} an hour to drink",
        why=f"8 US fl oz every 15 to 20 min is {bare(DRINK_LEAST.low or 0)} to {qty(heat.drink_l_per_h()[1], 'L', 3)} an hour",
        mend=f"write `drink: {num(least)} L/h` or more",
        edit=Edit(key="drink", text=f"{qty(least, 'L/h', 3)}"),
    )


@rule("safety.drink-ceiling", Severity.WARNING, by.DRINK_CEILING, applies="techniques with `drink:`")
def drink_too_much(work: T) -> Iterator[Breach]:
    """Nobody drinks more than 48 US fl oz in an hour.

    More than 48 US fl oz (1.42 L) in an hour thins the salt of the blood.
    """
    m = work.measures
    if m.drink_l_per_h is None or DRINK_MOST.allows(m.drink_l_per_h):
        return
    most = round_down(heat.most_drink_l_per_h(), 0.01)
    yield Breach(
        field="measures.drink_l_per_h",
        what=f"{qty(m.drink_l_per_h, 'L', 3)} an hour to drink",
        why=f"over 48 US fl oz, {qty(heat.most_drink_l_per_h(), 'L', 3)}, in an hour thins the salt of the blood",
        mend=f"write `drink: {num(most)} L/h` or less",
        edit=Edit(key="drink", text=f"{qty(most, 'L/h', 3)}"),
    )


@rule("safety.water-carried", Severity.WARNING, by.CARRY, applies="techniques with `water carried:` and `heat time:`")
def water_along(work: T) -> Iterator[Breach]:
    """Each person takes a litre of water for each hour of heat.

    1 to 1.5 L an hour are carried, since nobody walks back to the van for a drink.
    """
    m = work.measures
    if m.water_carried_l is None or m.heat_time_hours is None or not is_hot(m):
        return
    if CARRY_LEAST.allows(m.water_carried_l / m.heat_time_hours):
        return
    text = f"{num(ceil(m.heat_time_hours * 10) / 10)} L"
    yield Breach(
        field="measures.water_carried_l",
        what=f"{qty(m.water_carried_l, 'L', 3)} of water for {qty(m.heat_time_hours, 'h', 3)} of heat",
        why=f"{bare(m.water_carried_l)} / {bare(m.heat_time_hours)} = {qty(m.water_carried_l / m.heat_time_hours, 'L', 3)} an "
        "hour; 1 to 1.5 L an hour is advised",
        mend=f"write `water carried: {text}` or more",
        edit=Edit(key="water carried", text=text),
        also="measures.heat_time_hours",
    )


@rule("safety.cover-up", Severity.WARNING, by.UV, by.UV_WORKERS, applies="techniques with `uv index:` of 3 or more")
def cover_up(work: T) -> Iterator[Breach]:
    """From an ultraviolet index of 3 a caution says to cover up.

    Skin is harmed from an index of 3, on cool days too.
    """
    index = work.measures.uv_index
    if index is None or index < COVER_UP or SUN.search(cautions(work)):
        return
    line = (
        "- **Sun.** Hat, sleeves and sunglasses; sunscreen every two hours; shade for breaks. → sun hat, long sleeves"
    )
    yield Breach(
        field="measures.uv_index",
        what=f"ultraviolet index {bare(index)}, {heat.uv_band(index)}, and no caution speaks of the sun",
        why="from 3 up everyone covers up; outdoor crews all year",
        mend=f"add under `## Cautions` the line `{line}`",
        edit=Edit(section="Cautions", text=line),
    )


WEATHER: tuple[Rule[SafetyMeasures], ...] = (heat_danger, drink_enough, drink_too_much, water_along, cover_up)
