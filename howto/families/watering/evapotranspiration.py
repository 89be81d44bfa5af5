"""Reference evapotranspiration: the water a short green grass uses in a day, from the weather.

Every formula is from Crop evapotranspiration: guidelines for computing crop water needs, FAO Irrigation and Drainage
Paper 56, 1998, chapters 2 to 4. Temperatures in °C, vapour pressures in kPa, radiation in MJ/m² a day, wind
in m/s, latitude in degrees with the south negative, `day` the day of the year from 1 to 366.
"""

from math import acos, cos, exp, log, pi, radians, sin, sqrt, tan

SOLAR_CONSTANT = 0.0820  # MJ/m² a minute
STEFAN_BOLTZMANN = 4.903e-9  # MJ/m² a day and K⁴
MM_PER_MJ = 0.408  # depth of water that 1 MJ/m² evaporates, 1 / 2.45
KELVIN = 273.16  # as FAO-56 adds it
ALBEDO = 0.23  # of the grass reference
WIND_UNKNOWN_M_PER_S = 2.0  # what FAO-56 takes at 2 m where wind is not known
DARK_RATIO = 0.5  # ours, no source: how clear a sky is taken that has no sun all day to tell it by


def saturation_kpa(temperature_c: float) -> float:
    """Return the vapour pressure of air that holds all the water it can, e°(T); above -237.3 °C."""
    return 0.6108 * exp(17.27 * temperature_c / (temperature_c + 237.3))


def mean_saturation_kpa(max_c: float, min_c: float) -> float:
    """Return es: the mean of e° at both ends of the day, never e° of the mean temperature."""
    return (saturation_kpa(max_c) + saturation_kpa(min_c)) / 2


def vapour_kpa(max_c: float, min_c: float, humidity_max: float, humidity_min: float) -> float:
    """Return ea from the day's highest and lowest relative humidity in percent."""
    return (saturation_kpa(min_c) * humidity_max + saturation_kpa(max_c) * humidity_min) / 200


def vapour_from_mean_kpa(max_c: float, min_c: float, humidity_percent: float) -> float:
    """Return ea where only the mean relative humidity in percent is known: less sure than from both ends."""
    return humidity_percent / 100 * mean_saturation_kpa(max_c, min_c)


def slope_kpa_per_c(temperature_c: float) -> float:
    """Return Δ, how fast e° rises at a temperature."""
    return 4098 * saturation_kpa(temperature_c) / (temperature_c + 237.3) ** 2


def pressure_kpa(altitude_m: float) -> float:
    """Return the air pressure at a height above the sea."""
    return float(101.3 * ((293 - 0.0065 * altitude_m) / 293) ** 5.26)


def psychrometric_kpa_per_c(pressure: float) -> float:
    """Return γ at an air pressure in kPa."""
    return 0.665e-3 * pressure


def wind_factor(height_m: float) -> float:
    """Return what turns wind measured at a height into wind at 2 m; ValueError at or below 0.1 m."""
    if height_m <= 0.1:
        raise ValueError("wind is measured higher than 0.1 m above the ground")
    return 4.87 / log(67.8 * height_m - 5.42)


def wind_at_2_m(wind_m_per_s: float, height_m: float = 2.0) -> float:
    """Return u2; wind measured at 2 m is taken as it is."""
    return wind_m_per_s if height_m == 2 else wind_m_per_s * wind_factor(height_m)


def sun_distance(day: int) -> float:
    """Return dr, the inverse relative distance from earth to sun."""
    return 1 + 0.033 * cos(2 * pi * day / 365)


def declination_rad(day: int) -> float:
    """Return δ, how far north the sun stands."""
    return 0.409 * sin(2 * pi * day / 365 - 1.39)


def sunset_angle_rad(latitude_deg: float, day: int) -> float:
    """Return ωs; 0 where the sun does not rise that day, π where it does not set."""
    half_turn = -tan(radians(latitude_deg)) * tan(declination_rad(day))
    return acos(max(-1.0, min(1.0, half_turn)))


def daylight_hours(latitude_deg: float, day: int) -> float:
    """Return N, the hours from sunrise to sunset."""
    return 24 / pi * sunset_angle_rad(latitude_deg, day)


def extraterrestrial_mj_per_m2(latitude_deg: float, day: int) -> float:
    """Return Ra, the sun's radiation on a level square metre above the air."""
    angle, place, sun = sunset_angle_rad(latitude_deg, day), radians(latitude_deg), declination_rad(day)
    seen = angle * sin(place) * sin(sun) + cos(place) * cos(sun) * sin(angle)
    return max(0.0, 24 * 60 / pi * SOLAR_CONSTANT * sun_distance(day) * seen)


def solar_mj_per_m2(extraterrestrial: float, sunshine_hours: float, daylight: float) -> float:
    """Return Rs from hours of sunshine out of the hours of daylight; more sun than day counts as all of it."""
    share = min(1.0, sunshine_hours / daylight) if daylight > 0 else 0.0
    return (0.25 + 0.50 * share) * extraterrestrial


def solar_from_temperature_mj_per_m2(extraterrestrial: float, max_c: float, min_c: float, *, coast: bool) -> float:
    """Return Rs where sunshine is not known: 0.16 (inland) or 0.19 (coast) times √(Tmax - Tmin) times Ra."""
    return (0.19 if coast else 0.16) * sqrt(max(0.0, max_c - min_c)) * extraterrestrial


def clear_sky_mj_per_m2(extraterrestrial: float, altitude_m: float) -> float:
    """Return Rso, the solar radiation of a day without cloud."""
    return (0.75 + 2e-5 * altitude_m) * extraterrestrial


def net_shortwave_mj_per_m2(solar: float) -> float:
    """Return Rns, what grass keeps of the sun's radiation."""
    return (1 - ALBEDO) * solar


def net_longwave_mj_per_m2(max_c: float, min_c: float, vapour: float, solar: float, clear_sky: float) -> float:
    """Return Rnl, what the ground gives back; Rs/Rso is at most 1."""
    ratio = min(1.0, solar / clear_sky) if clear_sky > 0 else DARK_RATIO
    warmth = ((max_c + KELVIN) ** 4 + (min_c + KELVIN) ** 4) / 2
    return float(STEFAN_BOLTZMANN * warmth * (0.34 - 0.14 * sqrt(vapour)) * (1.35 * ratio - 0.35))


def monthly_soil_heat_mj_per_m2(month_c: float, previous_c: float) -> float:
    """Return G of a month from its mean temperature and that of the month before; a single day has none."""
    return 0.14 * (month_c - previous_c)


def penman_monteith_mm(
    net_mj_per_m2: float,
    soil_heat_mj_per_m2: float,
    temperature_c: float,
    wind_m_per_s: float,
    saturation: float,
    vapour: float,
    slope: float,
    psychrometric: float,
) -> float:
    """Return ETo in mm a day by equation 6; it may fall below 0 on a cold damp day."""
    energy = MM_PER_MJ * slope * (net_mj_per_m2 - soil_heat_mj_per_m2)
    air = psychrometric * 900 / (temperature_c + 273) * wind_m_per_s * (saturation - vapour)
    return (energy + air) / (slope + psychrometric * (1 + 0.34 * wind_m_per_s))


def hargreaves_mm(max_c: float, min_c: float, extraterrestrial_mj: float) -> float:
    """Return ETo in mm a day from temperature alone, by equation 52.

    `extraterrestrial_mj` is Ra in MJ/m² a day, turned here into mm a day (× 0.408): leaving that out gives
    2.45 times too much. ValueError where the highest temperature is below the lowest.
    """
    if max_c < min_c:
        raise ValueError("the day's highest temperature is below its lowest")
    return 0.0023 * ((max_c + min_c) / 2 + 17.8) * sqrt(max_c - min_c) * extraterrestrial_mj * MM_PER_MJ
