"""The arithmetic of heat: the heat index as the US National Weather Service works it, and water to drink."""

from math import sqrt

CUP_FL_OZ, FEWEST_MIN, MOST_MIN = 8.0, 15.0, 20.0  # 8 US fl oz each 15 to 20 min
CEILING_FL_OZ = 48.0  # in an hour
L_PER_FL_OZ = 0.0295735295625  # US fluid ounce, 231 in³ / 128
SIMPLE_UP_TO_F = 80.0  # from there the regression
COVER_UP = 3.0  # ultraviolet index
UV_BANDS = (("low", 2), ("moderate", 5), ("high", 7), ("very high", 10))


def fahrenheit(celsius: float) -> float:
    """Return a temperature in °F."""
    return celsius * 9 / 5 + 32


def celsius(fahrenheit_: float) -> float:
    """Return a temperature in °C."""
    return (fahrenheit_ - 32) * 5 / 9


def simple_index_f(air_f: float, humidity: float) -> float:
    """Return the simple heat index averaged with the air temperature, which holds below 80 °F."""
    return (0.5 * (air_f + 61 + (air_f - 68) * 1.2 + humidity * 0.094) + air_f) / 2


def regression_f(air_f: float, humidity: float) -> float:
    """Return the plain regression behind the printed chart (SR 90-23), without its two adjustments."""
    t, r = air_f, humidity
    return (
        -42.379
        + 2.04901523 * t
        + 10.14333127 * r
        - 0.22475541 * t * r
        - 0.00683783 * t**2
        - 0.05481717 * r**2
        + 0.00122874 * t**2 * r
        + 0.00085282 * t * r**2
        - 0.00000199 * t**2 * r**2
    )


def adjustment_f(air_f: float, humidity: float) -> float:
    """Return what is added to the regression: less in dry heat, more in damp heat between 80 and 87 °F."""
    if humidity < 13 and 80 <= air_f <= 112:
        return -((13 - humidity) / 4) * sqrt((17 - abs(air_f - 95)) / 17)
    if humidity > 85 and 80 <= air_f <= 87:
        return (humidity - 85) / 10 * (87 - air_f) / 5
    return 0.0


def heat_index_f(air_f: float, humidity: float) -> float:
    """Return the heat index in °F from air temperature in °F and relative humidity in percent.

    ValueError for a humidity outside 0 to 100.
    """
    if not 0 <= humidity <= 100:
        raise ValueError("relative humidity is 0 to 100 %")
    simple = simple_index_f(air_f, humidity)
    return simple if simple < SIMPLE_UP_TO_F else regression_f(air_f, humidity) + adjustment_f(air_f, humidity)


def chart_index_f(air_f: float, humidity: float) -> int:
    """Return the heat index as the printed chart has it: whole degrees, the damp-heat addition left out."""
    simple = simple_index_f(air_f, humidity)
    return round(simple if simple < SIMPLE_UP_TO_F else regression_f(air_f, humidity))


def warmest_f(humidity: float, most_f: float) -> float:
    """Return the highest air temperature in whole °F whose heat index stays under `most_f`."""
    too_hot = next((air for air in range(-40, 141) if heat_index_f(air, humidity) >= most_f), 141)
    return float(too_hot - 1)


def wbgt_c(natural_wet_bulb_c: float, globe_c: float, dry_c: float | None = None) -> float:
    """Return the wet-bulb globe temperature: in the sun with the dry bulb given, out of it without (ISO 7243)."""
    if dry_c is None:
        return 0.7 * natural_wet_bulb_c + 0.3 * globe_c
    return 0.7 * natural_wet_bulb_c + 0.2 * globe_c + 0.1 * dry_c


def drink_l_per_h() -> tuple[float, float]:
    """Return the least and the most of the advised drink in litres an hour."""
    cup = CUP_FL_OZ * L_PER_FL_OZ
    return cup * 60 / MOST_MIN, cup * 60 / FEWEST_MIN


def drink_l(hours: float) -> tuple[float, float]:
    """Return the advised drink over so many hours of heat, in litres; ValueError below no time."""
    if hours < 0:
        raise ValueError("a time below zero cannot be spent")
    low, high = drink_l_per_h()
    return low * hours, high * hours


def most_drink_l_per_h() -> float:
    """Return the most to drink in any hour, in litres."""
    return CEILING_FL_OZ * L_PER_FL_OZ


def uv_band(index: float) -> str:
    """Return the band of an ultraviolet index, rounded to a whole number as it is forecast."""
    whole = int(index + 0.5)
    return next((name for name, most in UV_BANDS if whole <= most), "extreme")
