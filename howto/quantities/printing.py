"""How an amount is printed for a reader: rounding, the units of the reader's system, and the spaces between."""

import re
from collections.abc import Callable, Mapping
from dataclasses import dataclass, replace
from math import ceil, floor
from types import MappingProxyType
from typing import Final

from howto.quantities.units import convert, convert_difference, unit_named

Change = Callable[[float, str, str], float]
_SPACE: Final = "\u00a0"
_MINUS: Final = "−"
_GLYPHS: Final = {(1, 4): "¼", (1, 2): "½", (3, 4): "¾"}
_SYSTEMS: Final = ("metric", "us", "uk")

# What a metric unit becomes for a reader in feet and pounds; `gal` and `fl oz` get their country.
_IMPERIAL: Final = {
    "mm": "in", "cm": "in", "m": "in", "km": "mi", "mm²": "sq in", "cm²": "sq in", "m²": "sq ft", "ha": "acre",
    "m³": "cu yd", "L": "gal", "mL": "gal", "g": "oz", "kg": "oz", "t": "lb", "°C": "°F", "N": "lbf", "kN": "lbf",
    "kPa": "psi", "bar": "psi", "MPa": "psi", "GPa": "psi", "N/mm²": "psi", "g/m²": "lb/1000 sq ft",
    "kg/m²": "lb/sq ft", "L/m²": "gal/100 sq ft", "mL/m²": "fl oz/100 sq ft", "mm/h": "in/h", "mm/day": "in/day",
    "mm/week": "in/week", "mm/month": "in/month", "mm/year": "in/year", "cm/year": "in/year", "L/h": "gal/h",
    "L/min": "gal/min", "L/day": "gal/day", "L/week": "gal/week", "g/L": "oz/gal", "mL/L": "fl oz/gal",
    "kg/m³": "lb/cu ft", "m/s": "ft/s", "km/h": "mph", "/m": "/ft", "/m²": "/sq ft", "plant/m": "plants/ft",
    "plant/m²": "plants/sq ft", "kg/m": "lb/ft", "N/m": "lbf/ft", "kN/m": "lbf/ft", "g/cm": "lb/in",
    "kg/cm": "lb/in", "L/cm": "gal/in", "mm/m": "in/ft", "L/m": "gal/ft", "g/m": "oz/ft", "kg/ha": "lb/acre",
    "L/ha": "gal/acre", "m/s²": "ft/s²", "m²/h": "sq ft/h",
}  # fmt: skip
_KEPT: Final = frozenset({"m/s²"})  # vibration limits are set in m/s² everywhere
# What an imperial unit becomes for a metric reader.
_METRIC: Final = {
    "in": "mm", "ft": "mm", "yd": "m", "mi": "km", "sq in": "cm²", "sq ft": "m²", "sq yd": "m²", "acre": "ha",
    "cu in": "mL", "cu ft": "m³", "cu yd": "m³", "oz": "g", "lb": "kg", "US ton": "t", "UK ton": "t", "°F": "°C",
    "lbf": "N", "psi": "kPa", "mph": "km/h", "lb/1000 sq ft": "g/m²", "lb/sq ft": "kg/m²", "oz/sq yd": "g/m²",
    "in/h": "mm/h", "in/day": "mm/day", "in/week": "mm/week", "in/month": "mm/month", "in/year": "mm/year",
    "lb/cu ft": "kg/m³", "ft/s": "m/s", "/ft": "/m", "/sq ft": "/m²", "plant/ft": "plants/m",
    "plant/sq ft": "plants/m²", "plant/sq yd": "plants/m²", "lb/ft": "kg/m", "lb/in": "g/cm", "lbf/ft": "N/m",
    "in/ft": "mm/m", "oz/ft": "g/m", "lb/acre": "kg/ha", "sq ft/h": "m²/h",
}  # fmt: skip
_NO_WORDS: Final[Mapping[str, str]] = MappingProxyType({})
# Where the next larger or smaller unit reads better: unit, at or over this number, the other unit.
_LARGER: Final = {"g": (1000, "kg"), "cm": (1000, "m"), "mL": (1000, "L"), "mg": (1000, "g"), "oz": (16, "lb")}
_SMALLER: Final = {"kg": (1, "g"), "L": (1, "mL"), "cu yd": (0.25, "cu ft")}


@dataclass(frozen=True, slots=True)
class Printed:
    """A number as printed and the unit that follows it, for it and for many; `rest` is 30 min of 1 h 30 min."""

    number: str
    unit: str = ""
    many: str = ""
    rest: "Printed | None" = None

    def __str__(self) -> str:
        """Return number and unit as they stand in English."""
        return self.told()

    def told(self, mark: str = ".", words: Mapping[str, str] = _NO_WORDS) -> str:
        """Return number and unit tied together, with a decimal mark, and units that are words in those given."""
        tight = self.unit[:1] in {"", "°", "/"} and not self.unit.startswith(("°C", "°F"))
        unit = unit_told(self.unit, words).replace(" ", _SPACE)
        rest = f"{_SPACE}{self.rest.told(mark, words)}" if self.rest else ""
        return f"{self.number.replace('.', mark)}{'' if tight else _SPACE}{unit}{rest}"


def unit_told(unit: str, words: Mapping[str, str]) -> str:
    """Return a unit with what it is of, and what it is for each of, told in the words given: `plants/m`."""
    return "/".join(words.get(part, part) for part in unit.split("/"))


def show_number(value: float, digits: int = 3) -> str:
    """Return a number rounded to `digits` figures, whole figures always kept: `1234`, `12.3`, `0.0123`."""
    if value == 0:
        return "0"
    size = floor(_log10(abs(value)))
    places = max(0, digits - 1 - size)
    return _fixed(value, places)


def _log10(value: float) -> float:
    """Return the exponent of a number as it is written, free of dust at powers of ten."""
    return float(f"{value:e}".partition("e")[2])


def _fixed(value: float, places: int) -> str:
    """Return a number with at most `places` decimals and no idle zeros; halves go away from zero."""
    nudged = value * (1 + 1e-12)  # 0.125 and 2.675 were meant as halves
    text = f"{nudged:.{min(places, 15)}f}"
    text = text.rstrip("0").rstrip(".") if "." in text else text
    return "0" if text in {"-0", "0"} else text.replace("-", _MINUS)


def round_up(value: float, step: float) -> float:
    """Return the first multiple of `step` that is not below `value`."""
    return _multiple(ceil(_steps(value, step)), step)


def round_down(value: float, step: float) -> float:
    """Return the last multiple of `step` that is not above `value`."""
    return _multiple(floor(_steps(value, step)), step)


def _steps(value: float, step: float) -> float:
    """Return how many steps a value is, whole when only dust keeps it from being so."""
    exact = value / step
    near = round(exact)
    return near if abs(exact - near) <= max(1e-9, 1e-14 * abs(exact)) else exact


def _multiple(count: int, step: float) -> float:
    """Return so many steps without dust."""
    return float(f"{count * step:.12g}")


def _country(unit: str, system: str) -> str:
    """Return a unit with its gallon named: `gal/min` → `US gal/min`."""
    return re.sub(r"\b(gal|fl oz)\b", f"{system.upper()} \\1", unit)


def _for_reader(unit: str, system: str) -> str:
    """Return the unit in which a reader of this system is shown an amount written in `unit`."""
    if system not in _SYSTEMS:
        raise ValueError(f"{system!r} is not one of {', '.join(_SYSTEMS)}")
    symbol = unit_named(unit).symbol
    metric = _METRIC.get(symbol, _as_metric_liquid(symbol))
    if system == "metric":
        return metric
    wanted = _IMPERIAL.get(unit_named(metric).symbol)
    return _country(wanted, system) if wanted and symbol not in _KEPT else symbol or unit


def _as_metric_liquid(symbol: str) -> str:
    """Return the metric unit for one with a gallon, pint or ounce in it: `US gal/in` → `L/cm`."""
    liquid = r"(?:US|UK) (?:gal|qt|pt|fl oz)"
    if not re.search(liquid, symbol):
        return symbol
    top, _, under = symbol.partition("/")
    top = "mL" if top.endswith("fl oz") else "L" if re.fullmatch(liquid, top) else {"oz": "g", "lb": "g"}.get(top, top)
    under = re.sub(r"^[0-9]+ ", "", under)
    below = {"in": "cm", "ft": "m", "sq ft": "m²", "sq yd": "m²", "acre": "ha"}
    under = "L" if re.fullmatch(liquid, under) else below.get(under, under)
    return f"{top}/{under}" if under else top


def printed(
    value: float, unit: str, system: str = "metric", digits: int | None = None, *, difference: bool = False
) -> Printed:
    """Return an amount as a reader of this system is shown it; a number alone where it has no unit."""
    if not unit:
        return as_worked(value, unit, digits)
    target = _for_reader(unit, system)
    change = convert_difference if difference else convert
    number = change(value, unit, target)
    symbol = unit_named(target).symbol
    if symbol in {"min", "h"} and digits is None:
        return _time(number, symbol)
    if symbol in {"in", "ft", "yd"} and digits is None:
        return _feet(convert(number, symbol, "in"))
    if symbol in {"mm", "m"} and digits is None:
        return _metres(number, symbol)
    return as_worked(*_in_better(number, symbol, change), digits)


def as_worked(value: float, unit: str, digits: int | None = None) -> Printed:
    """Return an amount in the very unit it is in; a number alone where it has none."""
    text = show_number(value) if digits is None else show_number(value, digits)
    if not unit:
        return Printed(text)
    named = unit_named(unit)
    return Printed(text, named.symbol if text == "1" else named.many, named.many)


def _in_better(number: float, symbol: str, change: Change = convert) -> tuple[float, str]:
    """Return an amount in the larger or smaller unit that keeps its number short, and that unit."""
    better = _better(number, symbol)
    return change(number, symbol, better), better


def _better(number: float, symbol: str) -> str:
    """Return the larger or smaller unit that keeps the number short."""
    size = abs(number)
    country, _, liquid = symbol.partition(" ")
    if liquid == "gal" and size < 1:
        return f"{country} pt" if size * 8 >= 1 else f"{country} fl oz"
    over, larger = _LARGER.get(symbol, (0.0, symbol))
    if over and round(size, 3 - len(str(int(size)))) >= over:
        return larger
    under, smaller = _SMALLER.get(symbol, (0.0, symbol))
    return smaller if 0 < size < under else symbol


def _time(number: float, symbol: str) -> Printed:
    """Return minutes below an hour and a half, hours and minutes from there."""
    whole = symbol == "h" and number == floor(number)
    minutes = floor(abs(convert(number, symbol, "min")) + 0.5)
    if minutes < 90 and not whole:
        return Printed(show_number(convert(number, symbol, "min")), "min", "min")
    hours, rest = divmod(minutes, 60)
    sign = _MINUS if number < 0 else ""
    return Printed(f"{sign}{hours}", "h", "h", Printed(str(rest), "min", "min") if rest else None)


def _metres(number: float, symbol: str) -> Printed:
    """Return millimetres whole below a metre (one decimal below 10 mm), metres to a centimetre from there."""
    size = abs(convert(number, symbol, "mm"))
    if symbol == "m" and (size >= 100 or size == 0):
        return Printed(_fixed(number, 2) if size >= 1000 else show_number(number), "m", "m")
    if _half_up(size) >= 1000:
        return Printed(_fixed(convert(number, "mm", "m"), 2), "m", "m")
    number = convert(number, symbol, "mm")
    places = 0 if size >= 9.95 else 1
    text = _fixed(number, places) if size >= 0.05 else show_number(number)
    return Printed(text, "mm", "mm")


def _half_up(value: float) -> int:
    """Return the nearest whole number, halves away from zero for what is not below it."""
    return floor(value + 0.5)


def _feet(inches: float) -> Printed:
    """Return inches to the nearest quarter (finer below 2 in), feet and inches from 24 in."""
    size = abs(inches)
    sign = _MINUS if inches < 0 else ""
    if size < 1 / 16:
        return Printed(show_number(inches, 2), "in", "in")
    parts = 16 if size < 0.5 else 8 if size < 2 else 4 if size < 120 else 1
    count = _half_up(size * parts)
    if count < 24 * parts:
        return Printed(sign + _mixed(count, parts), "in", "in")
    feet, rest = divmod(count, 12 * parts)
    if size >= 1200:
        feet, rest = _half_up(size / 12), 0
    return Printed(f"{sign}{feet}", "ft", "ft", Printed(_mixed(rest, parts), "in", "in") if rest else None)


def _mixed(count: int, parts: int) -> str:
    """Return a count of parts as a whole number and a fraction: 11 quarters are `2¾`."""
    whole, top = divmod(count, parts)
    while top and top % 2 == 0:
        top, parts = top // 2, parts // 2
    if not top:
        return str(whole)
    glyph = _GLYPHS.get((top, parts))
    if glyph:
        return f"{whole or ''}{glyph}"
    return f"{whole}{_SPACE}{top}/{parts}" if whole else f"{top}/{parts}"


def show(value: float, unit: str, system: str = "metric", digits: int | None = None) -> str:
    """Return an amount for a reader of a `system` (metric, us, uk); `digits` asks for that many figures."""
    return str(printed(value, unit, system, digits))


def rounded(value: float, unit: str, system: str = "metric", digits: int | None = None) -> tuple[float, str]:
    """Return a volume or mass as its reader is shown it: the number with its figures, and the unit it is shown in."""
    target = _for_reader(unit, system)
    number, better = _in_better(convert(value, unit, target), unit_named(target).symbol)
    size = floor(_log10(abs(number))) if number else 0
    return round(number * (1 + 1e-12), max(0, (3 if digits is None else digits) - 1 - size)), better


def show_tolerance(value: float, unit: str, system: str = "metric") -> str:
    """Return a tolerance for a reader: `± 20 mm`."""
    return f"±{_SPACE}{printed(value, unit, system, difference=True)}"


def show_range(low: float, high: float, unit: str, system: str = "metric") -> str:
    """Return a range for a reader, with the unit once where both share it: `600 to 750 mm`."""
    return " to ".join(map(str, range_ends(low, high, unit, system)))


def range_ends(low: float, high: float, unit: str, system: str = "metric") -> tuple[Printed, ...]:
    """Return both ends of a range for a reader, the unit of the first left out where both share it; equal ones once."""
    first, last = (printed(value, unit, system) for value in (low, high))
    if last.unit == "m" and first.unit == "mm" and abs(metres := convert(low, unit, "m")) >= 0.1:
        first = Printed(_fixed(metres, 2), "m", "m")
    return (last,) if first == last else row(first, last)


def row(*amounts: Printed) -> tuple[Printed, ...]:
    """Return amounts to stand in a row: where all are in one unit, it is said once, at the end."""
    if len(amounts) < 2 or any(each.rest for each in amounts) or len({each.many for each in amounts}) > 1:
        return amounts
    *before, last = amounts
    return (*(Printed(each.number) for each in before), replace(last, unit=last.many))
