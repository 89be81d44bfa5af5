"""A day's or month's weather, and the reference evapotranspiration it gives with every term kept."""

from typing import NamedTuple

from howto.families.watering import evapotranspiration as et


class Weather(NamedTuple):
    """What is known of a day or a month; None where it was not measured.

    `vapour_kpa` stands before both humidities, they before their mean; `solar_mj_per_m2` before
    `sunshine_hours`; `previous_c` is the mean temperature of the month before, for a monthly mean only.
    """

    latitude_deg: float
    altitude_m: float
    day: int
    max_c: float
    min_c: float
    vapour_kpa: float | None = None
    humidity_max_percent: float | None = None
    humidity_min_percent: float | None = None
    humidity_percent: float | None = None
    wind_m_per_s: float | None = None
    wind_height_m: float = 2.0
    sunshine_hours: float | None = None
    solar_mj_per_m2: float | None = None
    month_c: float | None = None
    previous_c: float | None = None
    coast: bool = False
    extraterrestrial_mj_per_m2: float | None = None


class Terms(NamedTuple):
    """Every term of the full formula, in the units of `evapotranspiration`, and the depth a day it gives."""

    mean_c: float
    wind: float
    slope: float
    psychrometric: float
    saturation: float
    vapour: float
    extraterrestrial: float
    daylight: float
    solar: float
    clear_sky: float
    net_shortwave: float
    net_longwave: float
    net: float
    soil_heat: float
    mm_per_day: float


def extraterrestrial(weather: Weather) -> float:
    """Return Ra: as given, else from latitude and day."""
    given = weather.extraterrestrial_mj_per_m2
    return given if given is not None else et.extraterrestrial_mj_per_m2(weather.latitude_deg, weather.day)


def vapour(weather: Weather) -> float:
    """Return ea from the best humidity given; with none the dew point is taken at the lowest temperature."""
    high, low = weather.max_c, weather.min_c
    wettest, driest = weather.humidity_max_percent, weather.humidity_min_percent
    if weather.vapour_kpa is not None:
        return weather.vapour_kpa
    if wettest is not None and driest is not None:
        return et.vapour_kpa(high, low, wettest, driest)
    if weather.humidity_percent is not None:
        return et.vapour_from_mean_kpa(high, low, weather.humidity_percent)
    if wettest is not None:
        return et.saturation_kpa(low) * wettest / 100
    return et.saturation_kpa(low)


def solar(weather: Weather, above_air: float, daylight: float) -> float:
    """Return Rs: as given, from sunshine, or from the spread of temperature."""
    if weather.solar_mj_per_m2 is not None:
        return weather.solar_mj_per_m2
    if weather.sunshine_hours is not None:
        return et.solar_mj_per_m2(above_air, weather.sunshine_hours, daylight)
    return et.solar_from_temperature_mj_per_m2(above_air, weather.max_c, weather.min_c, coast=weather.coast)


def terms(weather: Weather) -> Terms:
    """Return the full formula's terms; what was not measured is filled in the way FAO-56 says."""
    mean_c = (weather.max_c + weather.min_c) / 2
    blown = weather.wind_m_per_s
    wind = et.WIND_UNKNOWN_M_PER_S if blown is None else et.wind_at_2_m(blown, weather.wind_height_m)
    slope = et.slope_kpa_per_c(mean_c)
    gamma = et.psychrometric_kpa_per_c(et.pressure_kpa(weather.altitude_m))
    full, held = et.mean_saturation_kpa(weather.max_c, weather.min_c), vapour(weather)
    above, daylight = extraterrestrial(weather), et.daylight_hours(weather.latitude_deg, weather.day)
    sun, clear = solar(weather, above, daylight), et.clear_sky_mj_per_m2(above, weather.altitude_m)
    short = et.net_shortwave_mj_per_m2(sun)
    long = et.net_longwave_mj_per_m2(weather.max_c, weather.min_c, held, sun, clear)
    month_c = mean_c if weather.month_c is None else weather.month_c
    heat = 0.0 if weather.previous_c is None else et.monthly_soil_heat_mj_per_m2(month_c, weather.previous_c)
    depth = et.penman_monteith_mm(short - long, heat, mean_c, wind, full, held, slope, gamma)
    sunny = (above, daylight, sun, clear, short, long, short - long)
    return Terms(mean_c, wind, slope, gamma, full, held, *sunny, heat, depth)


def only_temperature(weather: Weather) -> bool:
    """Tell whether nothing but temperature is known, so that the temperature-only formula is the one to use."""
    air = weather.vapour_kpa, weather.humidity_max_percent, weather.humidity_percent, weather.wind_m_per_s
    return all(each is None for each in (*air, weather.sunshine_hours, weather.solar_mj_per_m2))
