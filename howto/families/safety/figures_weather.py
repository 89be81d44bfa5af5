"""The figures of heat, sun and drink."""

from collections.abc import Iterator

from howto.families.safety import heat
from howto.families.safety import references as by
from howto.families.safety.figure import figure
from howto.families.safety.measures import SafetyMeasures
from howto.model.figure import Figure
from howto.model.work import Work
from howto.quantities.amounts import Range, Word, bare, qty

T = Work[SafetyMeasures]
BANDS_F = {"extreme danger": 125.0, "danger": 103.0, "extreme caution": 90.0, "caution": 80.0}  # the lower set
OTHER_DANGER_F = 105.0  # of the other set
MILD_C = 21.0  # OSHA Technical Manual: from there heat can matter at moderate work
SUN_F = 15.0
LEAST_CARRY_L_PER_H, MOST_CARRY_L_PER_H = 1.0, 1.5
CARRY = Range(LEAST_CARRY_L_PER_H, MOST_CARRY_L_PER_H, "L")
CUP = qty(heat.CUP_FL_OZ, "US fl oz", 3)
CEILING = qty(heat.CEILING_FL_OZ, "US fl oz", 3)


def index_f(m: SafetyMeasures) -> float | None:
    """Return the heat index in °F, or None where temperature or humidity is not written."""
    if m.air_temperature_c is None or m.humidity_percent is None:
        return None
    return heat.heat_index_f(heat.fahrenheit(m.air_temperature_c), m.humidity_percent)


def band(index: float) -> str:
    """Return the band of a heat index in °F, by the lower of the two sets in print."""
    return next((name for name, low in BANDS_F.items() if index >= low), "mild")


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
        yield _index(m, index)
        yield _band(index, in_sun=bool(m.in_sun))
    if m.wet_bulb_c is not None and m.globe_c is not None:
        yield _wet_bulb(m.wet_bulb_c, m.globe_c, m.air_temperature_c if m.in_sun else None)
    if m.heat_time_hours is not None or (m.air_temperature_c is not None and is_hot(m)):
        yield _drink()
    if m.heat_time_hours is not None:
        yield from _drink_in(m.heat_time_hours, headline=alone(m))
    if m.uv_index is not None:
        yield _uv(m.uv_index)


def _index(m: SafetyMeasures, index: float) -> Figure:
    air_c, damp = m.air_temperature_c or 0.0, m.humidity_percent or 0.0
    air = heat.fahrenheit(air_c)
    warm = bare(air, 4)
    simple, added, chart = heat.simple_index_f(air, damp), heat.adjustment_f(air, damp), heat.chart_index_f(air, damp)
    working = [
        f"{qty(air_c, '°C', 3)} = {qty(air, '°F', 4)}",
        f"simple: (0.5 x ({warm} + 61 + 1.2 x ({warm} - 68) + 0.094 x {bare(damp)}) + {warm}) / 2 = "
        f"{qty(simple, '°F', 4)}",
    ]
    if simple >= heat.SIMPLE_UP_TO_F:
        plain = qty(heat.regression_f(air, damp), "°F", 4)
        working.append(f"{bare(heat.SIMPLE_UP_TO_F)} or more, so the regression of SR 90-23: {plain}")
        if added:
            kind, sign = ("damp", "+") if added > 0 else ("dry", "-")
            working.append(f"{kind} heat: {sign} {qty(abs(added), '°F', 3)}")
    shows = "leaves the addition out and shows" if abs(chart - index) >= 1 else "shows about"
    working.append(
        f"{qty(index, '°F', 4)} = {qty(heat.celsius(index), '°C', 3)} in the shade; the printed chart {shows} "
        f"{qty(chart, '°F', 3)}"
    )
    value = heat.celsius(index)
    label = "Heat index, in the shade"
    return figure("heat index", label, value, "°C", working, by.HEAT_INDEX, by.HEAT_CHART, headline=alone(m))


def _band(index: float, *, in_sun: bool) -> Figure:
    felt = index + SUN_F * in_sun
    sun = f"full sun adds up to {bare(SUN_F)}: {bare(index, 4)} + {bare(SUN_F)} = {qty(felt, '°F', 4)}"
    bands = ", ".join(f"{Word(name)} from {bare(low)}" for name, low in reversed(BANDS_F.items()))
    working = (
        *([sun] * in_sun),
        f"{qty(felt, '°F', 4)}: {bands} °F; another set in print puts danger at {bare(OTHER_DANGER_F)}, and "
        "the lower is the safer",
    )
    label = "Heat band" + (", in full sun" if in_sun else "")
    return figure("heat band", label, band(felt), "", working, by.HEAT_BANDS, by.HEAT_CHART)


def _wet_bulb(wet: float, globe: float, dry: float | None) -> Figure:
    value = heat.wbgt_c(wet, globe, dry)
    shares = f"0.3 x {bare(globe)}" if dry is None else f"0.2 x {bare(globe)} + 0.1 x {bare(dry)}"
    working = f"0.7 x {bare(wet)} + {shares} = {qty(value, '°C', 3)}"
    return figure("wbgt", "Wet-bulb globe temperature", value, "°C", working, by.WBGT)


def _drink() -> Figure:
    low, high = heat.drink_l_per_h()
    cups = f"{bare(60 / heat.MOST_MIN)} to {bare(60 / heat.FEWEST_MIN)} cups an hour"
    cup = f"{CUP} ({qty(heat.CUP_FL_OZ * heat.L_PER_FL_OZ, 'L', 3)})"
    every = f"every {bare(heat.MOST_MIN)} to {qty(heat.FEWEST_MIN, 'min')}"
    working = (
        f"{cup} {every}: {cups} = {bare(low)} to {qty(high, 'L', 3)}",
        f"never over {CEILING} in an hour = {qty(heat.most_drink_l_per_h(), 'L', 3)}",
    )
    value = f"{Range(low, high, 'L')}"
    label = "Drink each hour in the heat"
    return figure("drink each hour", label, value, "", working, by.DRINK, by.DRINK_CEILING, by.HEAT_STRESS)


def _drink_in(hours: float, *, headline: bool) -> Iterator[Figure]:
    (low, high), (least, most) = heat.drink_l_per_h(), heat.drink_l(hours)
    working = (
        f"{qty(hours, 'h', 3)} x {bare(low)} to {qty(high, 'L', 3)} = {bare(least)} to {qty(most, 'L', 3)} a person"
    )
    value = f"{Range(least, most, 'L')}"
    yield figure(
        "drink in the day", "Drink over the hours in the heat", value, "", working, by.DRINK, headline=headline
    )
    carried = Range(LEAST_CARRY_L_PER_H * hours, MOST_CARRY_L_PER_H * hours, "L")
    working = f"{CARRY} an hour x {qty(hours, 'h', 3)} = {carried}"
    yield figure("water to take", "Water to take, a person", f"{carried}", "", working, by.CARRY)


def _uv(index: float) -> Figure:
    name = heat.uv_band(index)
    bands = ", ".join(f"{Word(each)} to {bare(most)}" for each, most in heat.UV_BANDS)
    working = (
        f"index {bare(index)}: {bands}, extreme over that",
        f"from {bare(heat.COVER_UP)} up: shade, hat, sleeves, sunglasses and sunscreen; outdoor workers all year",
    )
    value = f"{Word(name)}: cover up" if index >= heat.COVER_UP else f"{Word(name)}: outdoor crews still cover up"
    return figure("uv band", "Sun's ultraviolet", value, "", working, by.UV, by.UV_WORKERS)
