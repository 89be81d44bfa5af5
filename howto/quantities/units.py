"""The units a crew may write, what each is worth, and how a unit stands in a name, a text and on paper.

Factors are those of NIST Special Publication 811 (2008), appendix B.8, in the exact definitions behind its
rounded rows: 1 in = 25.4 mm, 1 lb = 0.453 592 37 kg, 1 US gal = 231 in³, 1 UK gal = 4.546 09 L,
standard gravity 9.806 65 m/s². A foot and an acre are the international ones, never the survey ones; a year
is the 365 days of that table and a month a twelfth of it.
"""

import math
import re
from dataclasses import dataclass
from fractions import Fraction
from functools import cache, lru_cache
from typing import Final, NamedTuple


class Dimension(NamedTuple):
    """What a quantity measures: the power of each base it is built from."""

    length: int = 0
    mass: int = 0
    time: int = 0
    temperature: int = 0
    current: int = 0
    angle: int = 0
    level: int = 0


@dataclass(frozen=True, slots=True)
class Unit:
    """A unit: its size in SI base units, where its scale starts, and how it is printed (one, many)."""

    factor: Fraction
    dimension: Dimension
    symbol: str
    many: str
    offset: Fraction = Fraction(0)


NUMBER: Final = Dimension()
LENGTH: Final = Dimension(length=1)
AREA: Final = Dimension(length=2)
VOLUME: Final = Dimension(length=3)
MASS: Final = Dimension(mass=1)
TIME: Final = Dimension(time=1)
TEMPERATURE: Final = Dimension(temperature=1)
SPEED: Final = Dimension(length=1, time=-1)
FORCE: Final = Dimension(length=1, mass=1, time=-2)
PRESSURE: Final = Dimension(length=-1, mass=1, time=-2)
ENERGY: Final = Dimension(length=2, mass=1, time=-2)
POWER: Final = Dimension(length=2, mass=1, time=-3)
CURRENT: Final = Dimension(current=1)
VOLTAGE: Final = Dimension(length=2, mass=1, time=-3, current=-1)
CONDUCTANCE: Final = Dimension(length=-2, mass=-1, time=3, current=2)
FREQUENCY: Final = Dimension(time=-1)
ANGLE: Final = Dimension(angle=1)
LEVEL: Final = Dimension(level=1)

KINDS: Final = {
    NUMBER: "a plain number",
    LENGTH: "a length",
    AREA: "an area",
    VOLUME: "a volume",
    MASS: "a weight",
    TIME: "a time",
    TEMPERATURE: "a temperature",
    SPEED: "a speed",
    FORCE: "a force",
    PRESSURE: "a pressure",
    ENERGY: "an energy",
    POWER: "a power",
    CURRENT: "a current",
    VOLTAGE: "a voltage",
    ANGLE: "an angle",
    LEVEL: "a sound level",
}

_F = Fraction
_FOOT, _POUND, _GRAVITY, _DAY = _F("0.3048"), _F("0.45359237"), _F("9.80665"), _F(86400)
_INCH, _YARD = _FOOT / 12, _FOOT * 3
_US_GALLON, _UK_GALLON = 231 * _INCH**3, _F("0.00454609")
_PSI = _POUND * _GRAVITY / _INCH**2
_YEAR = 365 * _DAY

# One row a unit: printed symbol, dimension, size, other symbols (read as they stand), words (read in any case).
_Row = tuple[str, Dimension, Fraction, str, str]
_ROWS: Final[tuple[_Row, ...]] = (
    ("mm", LENGTH, _F(1, 1000), "", "millimetre|millimetres|millimeter|millimeters"),
    ("cm", LENGTH, _F(1, 100), "", "centimetre|centimetres|centimeter|centimeters"),
    ("m", LENGTH, _F(1), "", "metre|metres|meter|meters"),
    ("km", LENGTH, _F(1000), "", "kilometre|kilometres|kilometer|kilometers"),
    ("in", LENGTH, _INCH, "\"|''", "inch|inches|ins"),
    ("ft", LENGTH, _FOOT, "'", "foot|feet"),
    ("yd", LENGTH, _YARD, "yds", "yard|yards"),
    ("mi", LENGTH, 5280 * _FOOT, "", "mile|miles"),
    ("ha", AREA, _F(10_000), "", "hectare|hectares"),
    ("acre", AREA, 43_560 * _FOOT**2, "ac", "acre|acres"),
    ("L", VOLUME, _F(1, 1000), "l|ℓ", "litre|litres|liter|liters"),
    ("mL", VOLUME, _F(1, 1_000_000), "ml|cc", "millilitre|millilitres|milliliter|milliliters"),
    ("g", MASS, _F(1, 1000), "", "gram|grams|gramme|grammes"),
    ("mg", MASS, _F(1, 1_000_000), "", "milligram|milligrams"),
    ("kg", MASS, _F(1), "", "kilogram|kilograms|kilo|kilos"),
    ("t", MASS, _F(1000), "", "tonne|tonnes"),
    ("lb", MASS, _POUND, "lbs", "pound|pounds"),
    ("oz", MASS, _POUND / 16, "", "ounce|ounces"),
    ("US ton", MASS, 2000 * _POUND, "", "US ton|US tons|short ton|short tons"),
    ("UK ton", MASS, 2240 * _POUND, "", "UK ton|UK tons|long ton|long tons"),
    ("s", TIME, _F(1), "", "sec|secs|second|seconds"),
    ("min", TIME, _F(60), "", "min|mins|minute|minutes"),
    ("s²", Dimension(time=2), _F(1), "s2|s^2", ""),
    ("h", TIME, _F(3600), "hr|hrs", "hour|hours"),
    ("day", TIME, _DAY, "d", "day|days"),
    ("week", TIME, 7 * _DAY, "wk|wks", "week|weeks"),
    ("month", TIME, _YEAR / 12, "", "month|months"),
    ("year", TIME, _YEAR, "yr|yrs", "year|years"),
    ("K", TEMPERATURE, _F(1), "", "kelvin"),
    ("°C", TEMPERATURE, _F(1), "° C|℃|degC|deg C", "degrees C|degrees celsius|celsius"),
    ("°F", TEMPERATURE, _F(5, 9), "° F|℉|degF|deg F", "degrees F|degrees fahrenheit|fahrenheit"),
    ("°", ANGLE, _F(math.pi) / 180, "deg", "degree|degrees"),
    ("rad", ANGLE, _F(1), "", "radian|radians"),
    ("N", FORCE, _F(1), "", "newton|newtons"),
    ("kN", FORCE, _F(1000), "", "kilonewton|kilonewtons"),
    ("kgf", FORCE, _GRAVITY, "", ""),
    ("lbf", FORCE, _POUND * _GRAVITY, "", ""),
    ("Pa", PRESSURE, _F(1), "", "pascal|pascals"),
    ("hPa", PRESSURE, _F(100), "mbar", "millibar|millibars"),
    ("kPa", PRESSURE, _F(1000), "", "kilopascal|kilopascals"),
    ("MPa", PRESSURE, _F(1_000_000), "", ""),
    ("GPa", PRESSURE, _F(10**9), "", ""),
    ("bar", PRESSURE, _F(100_000), "", "bar|bars"),
    ("atm", PRESSURE, _F(101_325), "", ""),
    ("psi", PRESSURE, _PSI, "PSI", ""),
    ("J", ENERGY, _F(1), "", "joule|joules"),
    ("kJ", ENERGY, _F(1000), "", ""),
    ("MJ", ENERGY, _F(1_000_000), "", ""),
    ("W", POWER, _F(1), "", "watt|watts"),
    ("kW", POWER, _F(1000), "", "kilowatt|kilowatts"),
    ("A", CURRENT, _F(1), "", "amp|amps|ampere|amperes"),
    ("mA", CURRENT, _F(1, 1000), "", "milliamp|milliamps"),
    ("V", VOLTAGE, _F(1), "", "volt|volts"),
    ("kV", VOLTAGE, _F(1000), "", "kilovolt|kilovolts"),
    ("dS", CONDUCTANCE, _F(1, 10), "", ""),
    ("mS", CONDUCTANCE, _F(1, 1000), "", ""),
    ("Hz", FREQUENCY, _F(1), "", "hertz"),
    ("mph", SPEED, 5280 * _FOOT / 3600, "", ""),
    ("dB(A)", LEVEL, _F(1), "dBA|dB (A)", ""),
    ("%", NUMBER, _F(1, 100), "", "percent|per cent"),
    ("ppm", NUMBER, _F(1, 1_000_000), "", ""),
)
_LIQUID: Final = (  # symbol, share of a gallon in the US and in the UK, words
    ("gal", _F(1), _F(1), "gallon|gallons|gals"),
    ("qt", _F(1, 4), _F(1, 4), "quart|quarts|qts"),
    ("pt", _F(1, 8), _F(1, 8), "pint|pints|pts"),
    ("fl oz", _F(1, 128), _F(1, 160), "fluid ounce|fluid ounces|floz|fl. oz."),
)
_COUNTED: Final = (
    "plant plants|tree trees|shrub shrubs|bush bushes|bulb bulbs|seed seeds|cutting cuttings|vine vines|"
    "stake stakes|tie ties|piece pieces|person people|pass passes|row rows|time times|cut cuts|pot pots"
)
_OFFSETS: Final = {"°C": _F("273.15"), "°F": _F("459.67") * 5 / 9}
_PLURAL: Final = {"day": "days", "week": "weeks", "month": "months", "year": "years", "acre": "acres"}
_POWERS: Final = ((2, "²", "sq", "square", "squared"), (3, "³", "cu", "cubic", "cubed"))

# Which US and UK units a bare word could mean.
AMBIGUOUS: Final[dict[str, str]] = {
    **{word: symbol for symbol, _, _, words in _LIQUID for word in (symbol, *words.split("|"))},
    **dict.fromkeys(("ton", "tons"), "ton"),
    **dict.fromkeys(("gpm", "GPM"), "gal/min"),
}


def _named() -> tuple[dict[str, Unit], dict[str, Unit]]:
    """Return the units by symbol, and by word in small letters."""
    symbols: dict[str, Unit] = {}
    words: dict[str, Unit] = {}
    for symbol, dimension, factor, others, spelled in _ROWS:
        unit = Unit(factor, dimension, symbol, _PLURAL.get(symbol, symbol), _OFFSETS.get(symbol, _F(0)))
        symbols.update(dict.fromkeys((symbol, *filter(None, others.split("|"))), unit))
        words.update(dict.fromkeys(filter(None, spelled.lower().split("|")), unit))
    for symbol, us, uk, spelled in _LIQUID:
        for country, size in (("US", us * _US_GALLON), ("UK", uk * _UK_GALLON)):
            unit = Unit(size, VOLUME, f"{country} {symbol}", f"{country} {symbol}")
            for name in (symbol, *spelled.split("|")):
                before = {"US": ("US", "U.S."), "UK": ("UK", "imp", "imperial")}[country]
                words.update(dict.fromkeys((f"{word} {name}".lower() for word in before), unit))
                words.update(dict.fromkeys((f"{name} {country}".lower(), f"{name} ({country})".lower()), unit))
    for pair in _COUNTED.split("|"):
        one, many = pair.split(" ")
        words.update(dict.fromkeys((one, many), Unit(_F(1), NUMBER, one, many)))
    for power, raised, short, long, after in _POWERS:
        for names in (symbols, words):
            for name, unit in list(names.items()):
                if unit.dimension != LENGTH or not name.isalpha():
                    continue
                metric = unit.symbol.endswith("m")
                printed = f"{unit.symbol}{raised}" if metric else f"{short} {unit.symbol}"
                made = Unit(unit.factor**power, Dimension(length=power), printed, printed)
                names.update(dict.fromkeys((f"{name}{power}", f"{name}{raised}", f"{name}^{power}"), made))
                words.update(dict.fromkeys((f"{before} {name}" for before in (short, f"{short}.", long)), made))
                words[f"{name} {after}"] = made
    return symbols, words


_SYMBOLS, _WORDS = _named()
UNIT_NAMES: Final[tuple[str, ...]] = tuple(dict.fromkeys((*_SYMBOLS, *_WORDS)))


def _pattern() -> re.Pattern[str]:
    """Return what reads one unit name: the longest that stands there, not running on into another word."""
    choices = []
    for name in sorted(UNIT_NAMES, key=lambda name: (-len(name), name)):
        end = r"(?![A-Za-z0-9]|\.[0-9])" if name[-1].isdigit() else r"(?![A-Za-z²³^])" if name[-1].isalpha() else ""
        stop = r"(?:\.(?![0-9]))?" if name[-1].isalpha() else ""
        choices.append((re.escape(name) if name in _SYMBOLS else f"(?i:{re.escape(name)})") + end + stop)
    return re.compile("|".join(choices))


_NAME = _pattern()
_JOIN = re.compile(r" ?(?:(?P<over>/)|(?P<times>[·*])|(?<![A-Za-z])(?P<per>per)(?![A-Za-z])) ?")
_BELOW = re.compile(r"([0-9]{1,9}(?:\.[0-9]{1,6})?) ?")


def _atom(text: str, at: int) -> tuple[Unit, int] | None:
    """Return the unit name that stands at `at`, and where it ends."""
    found = _NAME.match(text, at)
    if found is None:
        return None
    name = found[0]
    if name not in _SYMBOLS and name.lower() not in _WORDS:
        name = name.removesuffix(".")  # `in.` and `ft.` are written with a stop
    return _SYMBOLS.get(name) or _WORDS[name.lower()], found.end()


def _joined(left: Unit, right: Unit, share: Fraction, *, under: bool) -> Unit:
    """Return two units made one: multiplied, or the right one (`share` of them) under the left."""
    sign = -1 if under else 1
    powers = (a + sign * b for a, b in zip(left.dimension, right.dimension, strict=True))
    factor = left.factor / (share * right.factor) if under else left.factor * right.factor
    tail = f"/{'' if share == 1 else f'{float(share):.12g} '}{right.symbol}" if under else f"·{right.symbol}"
    return Unit(factor, Dimension(*powers), left.symbol + tail, left.many + tail)


def scan_unit(text: str, at: int = 0) -> tuple[Unit, int] | None:
    """Return the unit that stands at `at` (`L/m2`, `lb/1000 ft2`, `/m`, `per week`) and where it ends."""
    first = _atom(text, at)
    unit, end = first or (Unit(_F(1), NUMBER, "", ""), at)
    alone = first is None
    while join := _JOIN.match(text, end):
        if alone and end > at and join["times"]:
            break
        start = join.end()
        share = _BELOW.match(text, start) if join["times"] is None and not (alone and join["over"]) else None
        size = _F(share[1]) if share else _F(1)
        following = _atom(text, share.end() if share else start)
        if following is None or size == 0 or (alone and end == at and join["times"]):
            break
        unit, end = _joined(unit, following[0], size, under=join["times"] is None), following[1]
    return (unit, end) if end > at else None


@lru_cache(maxsize=512)
def known_unit(text: str) -> Unit | None:
    """Return the unit a whole text names, or nothing; `1` and an empty text are the plain number."""
    text = text.strip().replace("\u00a0", " ")
    if text in {"", "1"}:
        return Unit(_F(1), NUMBER, "", "")
    found = scan_unit(text.removeprefix("1") if text.startswith("1/") else text)
    whole = len(text) - text.startswith("1/")
    return found[0] if found and found[1] == whole else None


_FIELDS: Final = (
    "mm cm m m2 m3 l ml g kg deg c percent fraction days weeks months years minutes hours seconds "
    "mm_per_day mm_per_week mm_per_month mm_per_year mm_per_h g_per_m2 kg_per_m2 l_per_m2 l_per_h l_per_min "
    "m2_per_h l_per_week g_per_l ml_per_l kg_per_m3 m_per_s m_per_s2 km_per_h db kpa n kn per_m per_m2 kg_per_m "
    "n_per_m g_per_cm l_per_cm mm_per_m n_per_mm2 mj_per_m2 ppm"
)
_FIELD_WORDS: Final = {
    "l": "L", "ml": "mL", "c": "°C", "percent": "%", "fraction": "1", "minutes": "min", "hours": "h",
    "seconds": "s", "db": "dB(A)", "kpa": "kPa", "n": "N", "kn": "kN", "mj": "MJ", "per": "/",
}  # fmt: skip


@cache
def field_unit(field_name: str) -> tuple[str, str | None]:
    """Return the author's key and the unit of a field: `finished_width_mm` → (`finished width`, `mm`)."""
    for suffix in sorted(_FIELDS.split(), key=len, reverse=True):
        key = field_name.removesuffix(f"_{suffix}")
        if key != field_name and key:
            unit = "".join(_FIELD_WORDS.get(part, part) for part in suffix.split("_"))
            return key.replace("_", " "), unit
    return field_name.replace("_", " "), None


class QuantityError(ValueError):
    """A written quantity that cannot be taken: what was seen, why that will not do, and how to mend it.

    `start` and `end` are the offsets of the offending part in the text that was read.
    """

    def __init__(self, what: str, why: str, mend: str, start: int = 0, end: int = 0) -> None:
        super().__init__(f"{what}: {why}; {mend}")
        self.what = what
        self.why = why
        self.mend = mend
        self.start = start
        self.end = end


def unit_named(text: str) -> Unit:
    """Return the unit a whole text names; refuse a name that is not known."""
    unit = known_unit(text)
    if unit is None:
        why = "no unit of that name is known"
        raise QuantityError(f"`{text}` is used as a unit", why, "write a unit such as `mm`", 0, len(text))
    return unit


def kind(unit: Unit) -> str:
    """Return what a unit measures, in words: `a length`, `a measure in g/m²`."""
    if unit.symbol == "%":
        return "a share in %"
    plain = "/" not in unit.symbol and "·" not in unit.symbol
    return KINDS.get(unit.dimension, f"a measure in {unit.symbol}") if plain else f"a measure in {unit.many}"


def tidy(exact: float, scale: float = 0.0) -> float:
    """Return a number without the dust that binary fractions leave in its last places."""
    short = float(f"{exact:.12g}")
    return short if abs(short - exact) <= 1e-14 * max(abs(exact), scale) else exact


def fraction(value: float) -> Fraction:
    """Return a number as the decimal it is written as: 0.29 is 29/100, not its nearest binary fraction."""
    if not math.isfinite(value):
        raise QuantityError(
            "a number without end", f"`{value}` cannot be measured", "write a number of at most 15 digits"
        )
    return Fraction(repr(float(value)))


def _same(source: Unit, target: Unit) -> None:
    """Refuse two units that do not measure the same thing."""
    if source.dimension != target.dimension:
        why = f"{source.symbol or 'a plain number'} and {target.symbol or 'a plain number'} measure different things"
        raise QuantityError(f"{kind(source)} is written", why, f"write {kind(target)}")


def convert(value: float, source: str, target: str) -> float:
    """Return an amount in another unit; temperatures keep their place on the scale."""
    old, new = unit_named(source), unit_named(target)
    _same(old, new)
    exact = (fraction(value) * old.factor + old.offset - new.offset) / new.factor
    return tidy(float(exact), float(old.offset / new.factor))


def convert_difference(value: float, source: str, target: str) -> float:
    """Return a difference or tolerance in another unit: 2 °C of warming is 3.6 °F, not 35.6 °F."""
    old, new = unit_named(source), unit_named(target)
    _same(old, new)
    return tidy(float(fraction(value) * old.factor / new.factor))
