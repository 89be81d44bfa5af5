"""Quantities as a crew writes them: read with their tolerance, converted, and found in prose.

Printing is in `printed` and the table of units in `units`; both are named here so that callers need one import.
"""

import re
from collections.abc import Iterator
from dataclasses import dataclass
from difflib import get_close_matches
from fractions import Fraction
from typing import Final

from howto.quantities.grammar import (
    LONGEST,
    PLAIN,
    Part,
    Reading,
    Refusal,
    Sum,
    part_at,
    past_space,
    per_each,
    plain_digits,
    refuse_sides,
    scan,
    sum_at,
    swaps,
)
from howto.quantities.units import (
    AMBIGUOUS,
    NUMBER,
    UNIT_NAMES,
    Dimension,
    QuantityError,
    Unit,
    fraction,
    kind,
    tidy,
    unit_named,
)

_RANGE: Final = re.compile(r" ?(?:-|\.\.\.?|…|(?<![a-z])(?:to|or|and|up to)(?= )) ?(?=[0-9.])", re.IGNORECASE)
_COMMA: Final = re.compile(
    r"[0-9]+(?:,[0-9]+)+(?:\.[0-9]+)?|[0-9]+(?:\.[0-9]{3})+,[0-9]+|[0-9]+(?: [0-9]{3})+(?![0-9/])"
)
_POWER: Final = re.compile(r"[0-9]+(?:\.[0-9]+)?[eE]([-+]?[0-9]{1,2})(?![A-Za-z0-9])")
_RATIO: Final = re.compile(r"([0-9]+(?:\.[0-9]+)?) ?: ?([0-9]+(?:\.[0-9]+)?)")
_VAGUE: Final = re.compile(
    r"(?:about|around|roughly|approximately|approx\.?|circa|ca\.?|nearly|almost|over|under|above|below|up to|"
    r"at least|at most|more than|less than|max\.?|min\.?|maximum|minimum|between|from|[~≈<>≤≥])(?![a-z]) ?",
    re.IGNORECASE,
)
_COUNT: Final = {
    word: str(number)
    for number, word in enumerate(
        ["one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve"], 1
    )
} | {"a": "1", "an": "1", "half": "1/2", "half a": "1/2", "a half": "1/2"}
_COUNT_WORD: Final = re.compile(r"(half an?|an? half|[a-z]+)(?= |$)", re.IGNORECASE)
_MEANT: Final = {"C": "°C", "F": "°F", "c": "°C", "f": "°F", "dB": "dB(A)", "db": "dB(A)"}
_EXAMPLES: Final = {
    "mm": "900 mm", "cm": "60 cm", "m": "1.2 m", "m²": "140 m2", "L": "9 L", "°C": "30 °C", "°": "45 deg", "kg": "2 kg",
    "%": "25 %", "": "1/3", "week": "6 weeks", "day": "10 days", "month": "3 months", "min": "25 min", "L/m²": "2 L/m2",
    "g/m²": "35 g/m2", "/m": "6/m", "dB(A)": "85 dB(A)", "mm/h": "10 mm/h", "kPa": "200 kPa",
}  # fmt: skip
_FRACTION: Final = re.compile("[/⁄∕½⅓⅔¼¾⅕⅖⅗⅘⅙⅚⅛⅜⅝⅞]")
_BRACES: Final = re.compile(r"\{[^{}]*\}")
_PROSE_NUMBER: Final = re.compile(r"(?<![\w.,:/\-+'])[-+]?(?:[0-9]+|[½⅓⅔¼¾⅕⅖⅗⅘⅙⅚⅛⅜⅝⅞]|\.[0-9]+)")
_NOT_INCHES: Final = re.compile(
    r" (?:an?|the|any|all|each|every|one|two|three|four|turn|place|rows?|half|number|this|that|these|those|its?|"
    r"their|your|our|his|her|my|most|some|both|spring|summer|autumn|fall|winter|early|mid|late|total|case|full|"
    r"january|february|march|april|may|june|july|august|september|october|november|december|[0-9]+)\b",
    re.IGNORECASE,
)
_SMALLER: Final = {"ft": "in", "lb": "oz", "h": "min", "m": "cm", "kg": "g"}
_NO_OFFER: Final = "write a number and its unit, such as `900 mm`"


@dataclass(frozen=True, slots=True)
class Quantity:
    """An amount with what it measures: SI base units, the tolerance either way, and the author's writing."""

    amount: float
    dimension: Dimension
    tolerance: float | None
    written: str

    def to(self, unit: str) -> float:
        """Return the amount in `unit`."""
        target = self._fitting(unit)
        exact = (fraction(self.amount) - target.offset) / target.factor
        return tidy(float(exact), float(target.offset / target.factor))

    def tolerance_in(self, unit: str) -> float | None:
        """Return the tolerance in `unit`, if one was written."""
        target = self._fitting(unit)
        return None if self.tolerance is None else tidy(float(fraction(self.tolerance) / target.factor))

    def _fitting(self, unit: str) -> Unit:
        """Return the unit, which must measure what this quantity does."""
        target = unit_named(unit)
        if target.dimension == self.dimension:
            return target
        what = f"`{self.written}` is written"
        mend = f"write {kind(target)}, such as `{_example(unit)}`"
        raise QuantityError(what, f"{kind(target)} is wanted here", mend, 0, len(self.written))


def _read(text: str) -> tuple[Quantity, Sum]:
    """Return the quantity a whole text says, and the parts it was read from."""
    if len(text) > LONGEST:
        raise Refusal(f"{len(text)} characters are written", f"at most {LONGEST} are read", (0, len(text)))
    plain = text.translate(PLAIN)
    at = len(plain) - len(plain.lstrip(" "))
    plain = plain.rstrip(" ")
    _check_start(plain, at)
    _check_figures(plain)
    found = scan(plain, at)
    if found is None:
        raise Refusal(f"`{plain[at:]}` is written", "a measure starts with a number", (at, len(plain)))
    if found.end < len(plain):
        _explain_rest(plain, found.value, found.end)
    return _quantity(found, text.strip()), found.value


def _quantity(found: Reading, written: str) -> Quantity:
    """Return what was read as a quantity."""
    unit = found.value.unit or unit_named("1")
    tolerance = None if found.tolerance is None else float(found.tolerance)
    return Quantity(float(found.value.total + unit.offset), unit.dimension, tolerance, written)


def _check_start(text: str, at: int) -> None:
    """Refuse what stands before a number."""
    if at >= len(text):
        raise Refusal("nothing is written here", "a number and its unit are wanted", (0, len(text)))
    vague = _VAGUE.match(text, at)
    if vague:
        rest = text[vague.end() :]
        part = part_at(text, vague.end())
        near: tuple[str, ...] = ()
        if part and part.unit and not part.unit.offset and part.end == len(text):
            near = (f"{rest} ± {plain_digits(part.number / 20)} {part.unit.symbol}",)
        what = f"`{vague[0].strip()}` stands before the number"
        raise Refusal(what, "it does not say how near", vague.span(), rest, *near)
    word = _COUNT_WORD.match(text, at)
    if word and word[0].lower() in _COUNT:
        number = _COUNT[word[0].lower()]
        why = "numbers are read as figures"
        raise Refusal(f"`{word[0]}` is written as a word", why, word.span(), *swaps(text, word.span(), number))


def _check_figures(text: str) -> None:
    """Refuse commas, powers of ten and ratios."""
    if grouped := _COMMA.search(text):
        run = grouped[0]
        last = run.rpartition(",")[2]
        if "," in run and "." in run and run.index(".") < run.index(","):
            choices = [run.replace(".", "").replace(",", ".")]
        else:
            choices = [run.replace(",", "").replace(" ", "")] if "," not in run or len(last.split(".")[0]) == 3 else []
            if run.count(",") == 1 and "." not in run:
                choices.append(run.replace(",", ".").rstrip("0").rstrip("."))
        mark = "a comma" if "," in run else "a space"
        why = (
            f"{mark} is read as thousands by some and as a decimal point by others"
            if "," in run
            else ("a space in a number could part two numbers")
        )
        offers = [offer for choice in choices for offer in swaps(text, grouped.span(), choice)]
        raise Refusal(f"`{run}` has {mark} in it", why, grouped.span(), *offers)
    if power := _POWER.search(text):
        offers = [plain_digits(Fraction(power[0]))] if abs(int(power[1])) < 7 else []
        why = "numbers are written out in full"
        raise Refusal(f"`{power[0]}` is a power of ten", why, power.span(), *swaps(text, power.span(), *offers))
    if ratio := _RATIO.search(text):
        left, right = Fraction(ratio[1]), Fraction(ratio[2])
        offer = (plain_digits(left) if right == 1 else f"{plain_digits(left)}/{plain_digits(right)}",) if right else ()
        why = "it does not say which part is measured"
        raise Refusal(f"`{ratio[0]}` is a ratio", why, ratio.span(), *swaps(text, ratio.span(), *offer))


def _explain_rest(text: str, value: Sum, end: int) -> None:
    """Refuse what stands after the quantity, and say what could stand there."""
    last = value.parts[-1]
    if span := _RANGE.match(text, end):
        _refuse_range(text, value, span)
    start = past_space(text, end)
    rest, why = text[start:], "only a number and its unit are read"
    if following := part_at(text, start):
        _refuse_part(text, last, following)
    if last.unit is None or re.match(r"/|per ", rest):
        _refuse_unit(text, start, text[:end])
    raise Refusal(f"`{rest}` stands after the measure", why, (start, len(text)), per_each(text[:end], rest))


def _refuse_part(text: str, left: Part, right: Part) -> None:
    """Refuse a second number that does not belong to the first."""
    one, two = text[left.start : left.end], text[right.start : right.end]
    where = (right.start, right.end)
    if left.unit and right.unit:
        what = f"`{one}` and `{two}` stand together"
        if left.unit.dimension != right.unit.dimension:
            raise Refusal(what, "they measure different things", where, one)
        raise Refusal(what, "parts are added only as a larger unit and then a smaller one", where, f"{two} {one}", one)
    unit = _SMALLER.get(left.unit.symbol, left.unit.symbol) if left.unit else ""
    offers = [f"{text[: right.end]} {unit}{text[right.end :]}", text[: left.end]]
    if left.unit and left.unit.symbol == "in":
        offers.insert(0, f"{plain_digits(left.number)}/{two}")
    raise Refusal(f"`{two}` stands after the measure", "it has no unit that belongs there", where, *offers)


def _refuse_range(text: str, value: Sum, span: re.Match[str]) -> None:
    """Refuse a range, and offer its middle with half its width."""
    other = sum_at(text, span.end())
    where = (value.parts[0].start, other.end if other else len(text))
    offers: tuple[str, ...] = ()
    unit = other.unit if other else None
    if other and value.unit is None and unit is None:
        unit = unit_named("1")
    if other and unit and (value.unit is None or value.unit.dimension == unit.dimension):
        low = value.total / (value.unit.factor if value.unit else 1)
        high = other.total / unit.factor
        if value.unit:
            low = (value.total + value.unit.offset - unit.offset) / unit.factor
        middle, half, symbol = (
            plain_digits((low + high) / 2),
            plain_digits(abs(high - low) / 2),
            f" {unit.many}".rstrip(),
        )
        offers = (f"{middle}{symbol} ± {half}{symbol}" + text[other.end :],)
    what = f"`{text[slice(*where)]}` is a range"
    raise Refusal(what, "one value is wanted, with how far off it may be", where, *offers)


def _refuse_unit(text: str, start: int, front: str) -> None:
    """Refuse a unit that is not known, and offer the nearest."""
    lead = re.compile(r"(?:/|per )? ?(?:[0-9.]+ )?").match(text, start)
    begin = lead.end() if lead else start
    for name in sorted(AMBIGUOUS, key=len, reverse=True):
        where = (begin, begin + len(name))
        if text[slice(*where)].lower() == name.lower() and not text[where[1] : where[1] + 1].isalpha():
            choices = (f"US {AMBIGUOUS[name]}", f"UK {AMBIGUOUS[name]}")
            why = "the US and the UK one differ"
            raise Refusal(f"`{name}` does not say whose", why, where, *swaps(text, where, *choices))
    word = re.compile(r"[^ ±/]*").match(text, begin)
    where = word.span() if word and word[0] else (start, len(text))
    name = text[slice(*where)]
    if re.match(r"(?:/|per ) ?0[0.]* ", text[start:]):
        raise Refusal(
            f"`{text[start:].strip()}` is written", "nothing can be divided by zero", (start, len(text)), front
        )
    offers = (*swaps(text, where, *_nearest(name)), front)
    raise Refusal(f"`{name}` is not a unit known here", "a number is read with its unit", where, *offers[:1])


def _nearest(name: str) -> tuple[str, ...]:
    """Return the known unit that is written most like this one."""
    if not re.search("[A-Za-z°%]", name):
        return ()
    if name in _MEANT:
        return (_MEANT[name],)
    lowered = {known.lower(): known for known in reversed(UNIT_NAMES) if len(known) > 1 or len(name) == 1}
    if name.lower() in lowered:
        return (lowered[name.lower()],)
    return tuple(lowered[near] for near in get_close_matches(name.lower(), lowered, n=1, cutoff=0.78))


def _readable(offers: tuple[str, ...], depth: int = 3) -> Iterator[str]:
    """Yield the offers that can be read, and for one that cannot, those made from it."""
    for offer in offers:
        try:
            _read(offer)
        except Refusal as refusal:
            if depth:
                yield from _readable(refusal.offers, depth - 1)
        else:
            yield offer


def parse(text: str) -> Quantity:
    """Return the quantity a text says, such as `900 mm ± 20 mm`; a bare number has no dimension."""
    return _parse(text)[0]


def _parse(text: str) -> tuple[Quantity, Sum]:
    """Return the quantity a text says and its parts; refuse with a mend that can itself be read."""
    try:
        return _read(text)
    except Refusal as refusal:
        offers = dict.fromkeys(_readable(refusal.offers))
        mend = f"write {' or '.join(f'`{offer}`' for offer in offers)}" if offers else _NO_OFFER
        where = slice(*refusal.where)
        what = refusal.what.replace(f"`{text.translate(PLAIN)[where]}`", f"`{text[where]}`")
        raise QuantityError(what, refusal.why, mend, *refusal.where) from None


def parse_in(text: str, unit: str) -> tuple[float, float | None]:
    """Return the value and the tolerance a text says, in `unit`.

    A bare number is taken only for a plain number; where `%` is wanted it could be a share or a percentage.
    """
    wanted = unit_named(unit)
    if wanted.dimension == unit_named("m2").dimension:
        refuse_sides(text)
    try:
        quantity, value = _parse(text)
    except QuantityError as problem:
        offers = re.findall("`([^`]*)`", problem.mend)
        if any(_fits(offer, unit) for offer in offers):
            raise
        mend = f"write {kind(wanted)}, such as `{_example(unit)}`"
        raise QuantityError(problem.what, problem.why, mend, problem.start, problem.end) from None
    if value.unit is None and (wanted.dimension != NUMBER or (wanted.symbol and not _FRACTION.search(text))):
        number = text.strip()
        mend = f"write `{_with_unit(number, unit)}`"
        raise QuantityError(f"`{number}` has no unit", f"{kind(wanted)} is wanted here", mend, 0, len(text))
    return quantity.to(unit), quantity.tolerance_in(unit)


def _fits(text: str, unit: str) -> bool:
    """Tell whether a text says something that can be turned into `unit`."""
    try:
        parse_in(text, unit)
    except QuantityError:
        return False
    return True


def _example(unit: str) -> str:
    """Return a quantity in a unit, to show what is wanted."""
    return _EXAMPLES.get(unit_named(unit).symbol) or _with_unit("5", unit)


def _with_unit(number: str, unit: str) -> str:
    """Return a number with a unit as an author would write it."""
    return f"{number}{'' if unit.startswith('/') else ' '}{unit}"


def find_all(text: str) -> Iterator[tuple[int, int, Quantity]]:
    """Yield start, end and value of every quantity with a unit in prose.

    Left out: what stands in `{braces}`, bare numbers and counts (`12 plants`), a range whose first number
    has no unit of its own (`600 to 750 mm`), and marks or words that only look like units.
    """
    plain = _BRACES.sub(lambda braces: "\0" * len(braces[0]), text.translate(PLAIN))
    at = 0
    while start := _PROSE_NUMBER.search(plain, at):
        try:
            found = scan(plain, start.start())
        except Refusal:
            found = None
        if found is None:
            at = start.end()
            continue
        at = found.end
        if found.value.unit is None:
            following = _RANGE.match(plain, at)
            skipped = part_at(plain, following.end()) if following else None
            at = skipped.end if skipped else at
        elif _is_meant(text, plain, found):
            end = at - (plain[at - 1] == ".")  # a full stop ends the sentence as well as `in.`
            yield start.start(), end, _quantity(found, text[start.start() : end])


def _is_meant(text: str, plain: str, found: Reading) -> bool:
    """Tell whether a unit found in prose is one: not a quotation mark, `2 in spring`, `the 1980s` or a count."""
    first, last = found.value.parts[0], found.value.parts[-1]
    name = plain[last.unit_start : last.end]
    unit = found.value.unit
    if unit is None or (unit.dimension == NUMBER and unit.symbol not in {"%", "ppm"}):
        return False
    if name in {"'", '"', "''"} and first is last:
        return text[last.unit_start] in "′″"
    if name == "in":
        return not _NOT_INCHES.match(plain, last.end)
    return not (name == "s" and plain[last.unit_start - 1] != " ")
