"""The figures of heat, sun and drink."""

from collections.abc import Iterator

from howto.families.safety import heat
from howto.families.safety import references as by
from howto.families.safety.measures import SafetyMeasures
from howto.model.figure import Figure
from howto.model.work import Work
from howto.quantities.amounts import Range, bare, qty

T = Work[SafetyMeasures]
BANDS = (
    (125.0, "extreme danger"),
    (103.0, "danger"),
    (90.0, "extreme caution"),
    (80.0, "caution"),
)  # °F, the lower set
MILD_C = 21.0  # OSHA Technical Manual: from there heat can matter at moderate work
SUN_F = 15.0


def index_f(m: SafetyMeasures) -> float | None:
    """Return the heat index in °F, or None where temperature or humidity is not written."""
    if m.air_temperature_c is None or m.humidity_percent is None:
        return None
    return heat.heat_index_f(heat.fahrenheit(m.air_temperature_c), m.humidity_percent)


def band(index: float) -> str:
    """Return the band of a heat index in °F, by the lower of the two sets in print."""
    return next((name for low, name in BANDS if index >= low), "mild")


def is_hot(m: SafetyMeasures) -> bool:
    """Tell whether heat can matter to people at work: air over 21 °C, or nothing known but hours in the heat."""
    return m.air_temperature_c is None or m.air_temperature_c > MILD_C


def alone(m: SafetyMeasures) -> bool:
    """Tell whether the weather is what the card is about: no machine's noise or vibration comes before it."""
    return m.noise_db is None and m.vibration_m_per_s2 is None


def weather_figures(work: T) -> Iterator[Figure]:
    """Yield the heat index and its band, what to drink, and what to do about the sun."""
    m = work.measures
    if (index := index_f(m)) is not None:
        yield from _index(m, index)
    if m.wet_bulb_c is not None and m.globe_c is not None:
        yield _wet_bulb(m, m.wet_bulb_c, m.globe_c)
    if m.heat_time_hours is not None or (m.air_temperature_c is not None and is_hot(m)):
        yield from _drink(work)
    if m.uv_index is not None:
        yield _uv(m.uv_index)


def _index(m: SafetyMeasures, index: float) -> Iterator[Figure]:
    air_c, damp = m.air_temperature_c or 0.0, m.humidity_percent or 0.0
    air = heat.fahrenheit(air_c)
    simple = heat.simple_index_f(air, damp)
    working = [
        f"{qty(air_c, '°C', 3)} = {qty(air, '°F', 4)}",
        f"simple: (0.5 x ({bare(air, 4)} + 61 + 1.2 x ({bare(air, 4)} - 68) + 0.094 x {bare(damp)}) + {bare(air, 4)}) / 2 "
        f"= {qty(simple, '°F', 4)}",
    ]
    if simple >= 80:
        added = heat.adjustment_f(air, damp)
        working.append(f"80 or more, so the regression of SR 90-23: {qty(heat.regression_f(air, damp), '°F', 4)}")
        if added:
            working.append(
                f"{'damp' if added > 0 else 'dry'} heat: {'+' if added > 0 else '-'} {qty(abs(added), '°F', 3)}"
            )
    chart = heat.chart_index_f(air, damp)
    apart = abs(chart - index) >= 1
    working.append(
        f"{qty(index, '°F', 4)} = {qty(heat.celsius(index), '°C', 3)} in the shade; the printed chart "
        + (f"leaves the addition out and shows {chart} °F" if apart else f"shows about {chart} °F")
    )
    yield Figure(
        name="heat index",
        label="Heat index, in the shade",
        value=heat.celsius(index),
        unit="°C",
        working=tuple(working),
        references=(by.HEAT_INDEX, by.HEAT_CHART),
        headline=alone(m),
    )
    felt = index + (SUN_F if m.in_sun else 0.0)
    yield Figure(
        name="heat band",
        label="Heat band" + (", in full sun" if m.in_sun else ""),
        value=band(felt),
        working=(
            *((f"full sun adds up to 15: {bare(index, 4)} + 15 = {qty(felt, '°F', 4)}",) if m.in_sun else ()),
            f"{qty(felt, '°F', 4)}: caution from 80, extreme caution 90, danger 103, extreme danger 125 °F; "
            "another set in print puts danger at 105, and the lower is the safer",
        ),
        references=(by.HEAT_BANDS, by.HEAT_CHART),
    )


def _wet_bulb(m: SafetyMeasures, wet: float, globe: float) -> Figure:
    dry = m.air_temperature_c if m.in_sun else None
    value = heat.wbgt_c(wet, globe, dry)
    form = (
        f"0.7 x {bare(wet)} + 0.2 x {bare(globe)} + 0.1 x {bare(dry)}"
        if dry is not None
        else f"0.7 x {bare(wet)} + 0.3 x {bare(globe)}"
    )
    return Figure(
        name="wbgt",
        label="Wet-bulb globe temperature",
        value=value,
        unit="°C",
        working=(f"{form} = {qty(value, '°C', 3)}",),
        references=(by.WBGT,),
    )


def _drink(work: T) -> Iterator[Figure]:
    m, units = work.measures, work.crew.units
    low, high = heat.drink_l_per_h()
    yield Figure(
        name="drink each hour",
        label="Drink each hour in the heat",
        value=f"{Range(low, high, 'L')}",
        working=(
            f"8 US fl oz (0.237 L) every 20 to 15 min: 3 to 4 cups an hour = {bare(low)} to {qty(high, 'L', 3)}",
            f"never over 48 US fl oz in an hour = {qty(heat.most_drink_l_per_h(), 'L', 3)}",
        ),
        references=(by.DRINK, by.DRINK_CEILING, by.HEAT_STRESS),
    )
    if m.heat_time_hours is None:
        return
    hours = m.heat_time_hours
    least, most = heat.drink_l(hours)
    yield Figure(
        name="drink in the day",
        label="Drink over the hours in the heat",
        value=f"{Range(least, most, 'L')}",
        working=(
            f"{qty(hours, 'h', 3)} x {bare(low)} to {qty(high, 'L', 3)} = {bare(least)} to {qty(most, 'L', 3)} a person",
        ),
        references=(by.DRINK,),
        headline=alone(m),
    )
    yield Figure(
        name="water to take",
        label="Water to take, a person",
        value=f"{Range(hours, 1.5 * hours, 'L')}",
        working=(f"1 to 1.5 L an hour x {qty(hours, 'h', 3)} = {qty(hours, 'L')} to {qty(1.5 * hours, 'L')}",),
        references=(by.CARRY,),
    )


def _uv(index: float) -> Figure:
    name = heat.uv_band(index)
    cover = index >= 3
    return Figure(
        name="uv band",
        label="Sun's ultraviolet",
        value=f"{name}: cover up" if cover else f"{name}: outdoor crews still cover up",
        working=(
            f"index {bare(index)}: low to 2, moderate 3 to 5, high 6 and 7, very high 8 to 10, extreme from 11",
            "from 3 up: shade, hat, sleeves, sunglasses and sunscreen; outdoor workers all year",
        ),
        references=(by.UV, by.UV_WORKERS),
    )
