"""How a written quantity is read, left to right: a number, its unit, more parts, and a tolerance.

A text is made plain first, one character for one, so that every place found is a place in the author's text.
"""

import re
from dataclasses import dataclass
from fractions import Fraction
from typing import Final

from howto.quantities.units import NUMBER, QuantityError, Unit, scan_unit, unit_named

LONGEST: Final = 200
_DIGITS: Final = 15
VULGAR: Final = {
    "½": (1, 2), "⅓": (1, 3), "⅔": (2, 3), "¼": (1, 4), "¾": (3, 4), "⅕": (1, 5), "⅖": (2, 5), "⅗": (3, 5),
    "⅘": (4, 5), "⅙": (1, 6), "⅚": (5, 6), "⅛": (1, 8), "⅜": (3, 8), "⅝": (5, 8), "⅞": (7, 8),
}  # fmt: skip
# One character for one, so that offsets stay those of the author's text.
PLAIN: Final = str.maketrans(
    dict.fromkeys("\u00a0\u202f\u2009\u2007\u200a\u2002\u2003\u200b\ufeff\t\n\r", " ")
    | dict.fromkeys("−–—‒‐‑﹣－", "-")
    | dict.fromkeys("′’‘ʹ", "'")
    | dict.fromkeys("″”“ʺ", '"')
    | dict.fromkeys("⁄∕", "/")
    | dict.fromkeys("º˚", "°")
    | {"⋅": "·", "％": "%"}
)
_NUMBER: Final = re.compile(
    r"(?P<whole>[0-9]+)(?: ?- ?| )(?P<top>[0-9]+)/(?P<bottom>[0-9]+)(?![0-9]|\.[0-9])"
    r"|(?P<over>[0-9]+) ?/ ?(?P<under>[0-9]+)(?![0-9]|\.[0-9])"
    rf"|(?P<before>[0-9]+)? ?(?P<vulgar>[{''.join(VULGAR)}])"
    r"|(?P<decimal>[0-9]+(?:\.[0-9]+)?|\.[0-9]+)"
)
_SIGN: Final = re.compile(r"([-+]) ?")
_WITHIN: Final = re.compile(r" ?(?:±|\+ ?/ ?-|\+-|plus or minus(?= )|give or take(?= )) ?", re.IGNORECASE)


_EACH: Final = re.compile(r"(?:an?|each|every) (?=[a-z])", re.IGNORECASE)
_SIDES: Final = re.compile(r" ?(?:[x×*]|by(?= )) ?", re.IGNORECASE)


class Refusal(Exception):  # noqa: N818 - a step on the way to a QuantityError, which has the mend
    """What cannot be read, with texts that might be written in its place."""

    def __init__(self, what: str, why: str, where: tuple[int, int], *offers: str) -> None:
        super().__init__(what)
        self.what, self.why, self.where, self.offers = what, why, where, offers


@dataclass(frozen=True, slots=True)
class Part:
    """One number with the unit after it, if any."""

    number: Fraction
    unit: Unit | None
    start: int
    unit_start: int
    end: int


@dataclass(frozen=True, slots=True)
class Sum:
    """Parts that add up, such as `3 ft 6 in`: the sum in the base of `unit`, or a bare number."""

    total: Fraction
    unit: Unit | None
    parts: tuple[Part, ...]

    @property
    def end(self) -> int:
        """Where the last part ends."""
        return self.parts[-1].end


@dataclass(frozen=True, slots=True)
class Reading:
    """A value with its tolerance in base units, and where they end."""

    value: Sum
    tolerance: Fraction | None
    end: int


def _number(text: str, at: int) -> tuple[Fraction, int] | None:
    """Return the number without a sign that stands at `at`, and where it ends."""
    found = _NUMBER.match(text, at)
    if found is None:
        return None
    if max(map(len, re.findall("[0-9]+", found[0])), default=0) > _DIGITS:
        raise Refusal("a very long number", f"at most {_DIGITS} digits are read", found.span())
    bottom = found["bottom"] or found["under"]
    if bottom and not int(bottom):
        why = "nothing can be divided by zero"
        raise Refusal(f"`{found[0]}` is written", why, found.span(), *swaps(text, found.span(), "1/2"))
    if found["bottom"]:
        number = Fraction(int(found["whole"])) + Fraction(int(found["top"]), int(bottom))
    elif found["under"]:
        number = Fraction(int(found["over"]), int(bottom))
    elif found["vulgar"]:
        number = int(found["before"] or 0) + Fraction(*VULGAR[found["vulgar"]])
    else:
        number = Fraction(found["decimal"])
    return number, found.end()


def part_at(text: str, at: int) -> Part | None:
    """Return the number and unit that stand at `at`."""
    found = _number(text, at)
    if found is None:
        return None
    number, end = found
    for start in (end, end + 1) if text[end : end + 1] in {" ", "-"} else (end,):
        scanned = scan_unit(text, start)
        if scanned:
            return Part(number, scanned[0], at, start, scanned[1])
    return Part(number, None, at, end, end)


def sum_at(text: str, at: int) -> Sum | None:
    """Return the parts that stand at `at`, added up."""
    sign = _SIGN.match(text, at)
    first = part_at(text, sign.end() if sign else at)
    if first is None:
        return None
    parts = [first]
    unit = first.unit
    while unit is not None and (following := part_at(text, past_space(text, parts[-1].end))):
        if not _adds_to(parts[-1], following) or text[following.start] == ".":
            break
        parts.append(following)
    total = sum((part.number * (part.unit.factor if part.unit else 1) for part in parts), Fraction(0))
    return Sum(-total if sign and sign[1] == "-" else total, unit, tuple(parts))


def _adds_to(left: Part, right: Part) -> bool:
    """Tell whether a part is the smaller unit that belongs to the one before it."""
    if left.unit is None or right.unit is None or left.unit.offset:
        return False
    return left.unit.dimension == right.unit.dimension != NUMBER and right.unit.factor < left.unit.factor


def past_space(text: str, at: int) -> int:
    """Return `at`, or the place after the one space that stands there."""
    return at + (text[at : at + 1] == " ")


def refuse_sides(text: str) -> None:
    """Refuse two sides such as `40 x 25 ft` where an area is wanted, and offer the area they make."""
    if area := _area_of_sides(text):
        why = "an area is one number: one side multiplied by the other"
        raise QuantityError(f"`{text.strip()}` is two sides", why, f"write `{area}`", 0, len(text))


def per_each(front: str, rest: str) -> str:
    """Return `5 mm/day` of `5 mm` and `a day`; the front alone where what follows is something else."""
    each = _EACH.match(rest)
    return f"{front}/{rest[each.end() :]}" if each else front


def _area_of_sides(text: str) -> str:
    """Return the area of two sides as an author writes it; empty for anything else."""
    plain = text.translate(PLAIN).strip()
    try:
        one = sum_at(plain, 0)
        times = _SIDES.match(plain, one.end) if one else None
        two = sum_at(plain, times.end()) if times else None
    except Refusal:
        return ""
    if one is None or two is None or two.end < len(plain) or two.unit is None or one.total * two.total <= 0:
        return ""
    metre = unit_named("m")
    if two.unit.dimension != metre.dimension or (one.unit and one.unit.dimension != metre.dimension):
        return ""
    area = two.total * (one.total if one.unit else one.total * two.unit.factor)
    written = "sq ft" if two.unit.symbol in {"in", "ft", "yd"} else "m2"
    return f"{plain_digits(round(area / unit_named(written).factor, 2))} {written}"


def scan(text: str, at: int) -> Reading | None:
    """Return the quantity that stands at `at` in a plain text."""
    value = sum_at(text, at)
    if value is None:
        return None
    within = _WITHIN.match(text, value.end)
    give = sum_at(text, within.end()) if within else None
    if within is None or give is None:
        return Reading(value, None, value.end)
    if give.total < 0:
        why = "a tolerance is measured either way from the value"
        start = give.parts[0].start
        offer = f"{text[: within.end()].rstrip()} {text[start:]}"
        raise Refusal("a tolerance below nothing", why, (within.end(), give.end), offer)
    if value.unit is None and give.unit is not None:
        value = Sum(value.total * give.unit.factor, give.unit, value.parts)
    return Reading(value, _tolerance(text, value, give), give.end)


def _tolerance(text: str, value: Sum, give: Sum) -> Fraction:
    """Return the tolerance in base units; `%` is a share of the value, unless the value is in `%` itself."""
    unit = value.unit or unit_named("1")
    where = (give.parts[0].start, give.end)
    front = text[value.parts[0].start : value.end]
    if give.unit is None:
        if len(value.parts) > 1:
            low = value.parts[-1].unit
            why = "the tolerance does not say which unit it is in"
            offer = f"{text[: give.end]} {low.symbol if low else ''}{text[give.end :]}"
            raise Refusal(f"`{text[slice(*where)]}` has no unit", why, where, offer)
        return give.total * unit.factor
    if give.unit.symbol == "%" and unit.symbol != "%":
        if unit.offset:
            share = abs(value.total / unit.factor) * give.total
            why = "a share of a temperature depends on where its scale starts"
            offer = f"{front} ± {plain_digits(share)} {unit.symbol}"
            raise Refusal(f"`{text[slice(*where)]}` of a temperature", why, where, offer)
        return abs(value.total) * give.total
    if give.unit.dimension != unit.dimension:
        what = f"`{front}` has a tolerance in {give.unit.symbol}"
        raise Refusal(what, "they measure different things", where, front)
    return give.total


def plain_digits(number: Fraction) -> str:
    """Return a number as plain digits that can be read again."""
    return f"{float(number):.10f}".rstrip("0").rstrip(".")


def swaps(text: str, where: tuple[int, int], *replacements: str) -> tuple[str, ...]:
    """Return the text with each of the replacements in one place."""
    return tuple(f"{text[: where[0]]}{new}{text[where[1] :]}".strip() for new in replacements)
