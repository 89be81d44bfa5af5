"""Finds numbers in prose that are said to be a measure or a figure, and are not.

A number counts as a claim only where the sentence ties it to the name: `a finished width of 950 mm`,
`the finished width must be 950 mm`, `950 mm finished width`. `Within 20 mm of the finished width`, or `20 mm
over the finished width`, claims nothing about the width itself.
"""

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import Final, NamedTuple

from howto.languages.reader import Reader
from howto.model.figure import Figure
from howto.model.measures import Measures
from howto.model.prose import BRACED
from howto.model.shown import shown_cell
from howto.quantities import Quantity, QuantityError, field_unit, find_all, parse

COARSE: Final = 0.03  # ours: `2 ft` is not half a foot wide; no rounding moves a number by more than this share
NEAR: Final = 300  # letters before and after a number among which its name is looked for
DISPLAY: Final = 0.005  # a figure is shown to three digits, so it may be half of the third one out
_SENTENCE: Final = re.compile(r"(?<=[.!?;])\s+")
_GLUE: Final = {"of", "the", "a", "an", "to", "at", "in", "per", "and", "for"}
_MARKS: Final = frozenset(":=–—-(,")
_WORD: Final = re.compile(r"[^\W\d_]+(?:['’][^\W\d_]+)*|\d[\d.]*\d|\d|[^\s\w]")
_RANGE: Final = re.compile(r"\s*(?:to|–|-|and|or)\s*")
_FRACTION: Final = re.compile(r"(\d+)/(\d+)")
_LAST_NUMBER: Final = re.compile(r"(?<![\w./^])(?<!per )(\d+(?:\.(\d+))?)(?![\d./])")


def _folded(word: str) -> str:
    """Return a word as compared: small letters, without the s of a plural."""
    small = word.casefold()
    return small[:-1] if len(small) > 3 and small.endswith("s") and not small.endswith("ss") else small


def _set(words: str) -> frozenset[str]:
    return frozenset(map(_folded, words.split()))


_TIES: Final = _MARKS | _set(
    "is are was be being must should shall will may of at to as about around roughly exactly stays kept keep "
    "set now here comes finishes reads measures equals still also both the"
)
_BACK_TIES: Final = _set("the as is our your its")
_LEADS: Final = _set(
    "the a an of to at this that its their with same full and final until has have need want allow give use make when"
)
_CHANGED: Final = _set("less plus minus more over")
_SAID: Final = _set("is are was must should shall will may")
_BEYOND: Final = _set(
    "beyond past outside inside wider narrower larger smaller more less above below over under off from away apart "
    "longer shorter higher lower deeper taller either each clear short proud"
)
_SMALL: Final = ("two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve")
_UNCOUNTED: Final = _set("each every after first last next another further least most than of no within other about")


@dataclass(frozen=True, slots=True)
class NamedNumber:
    """A measure or figure that prose may name; `unit` is None for a count."""

    name: str
    value: float
    unit: str | None
    tolerance: float
    shown: str
    field: str = ""  # of a measure

    @property
    def measure(self) -> bool:
        """Whether the author wrote it, rather than it being worked out."""
        return bool(self.field)

    @property
    def words(self) -> tuple[str, ...]:
        """The words of the name that carry it, each as compared."""
        return tuple(_folded(word) for word in re.findall(r"\w+", self.name) if word not in _GLUE)


class Claim(NamedTuple):
    """A number in prose that disagrees with what it is said to be."""

    written: str
    named: NamedNumber
    found: str  # the claim in the unit of what it claims


def named_in(measures: Measures, figures: Sequence[Figure], reader: Reader) -> tuple[NamedNumber, ...]:
    """Return every number that prose may name, measures first."""
    found: list[NamedNumber] = []
    for field, value in measures.given().items():
        if isinstance(value, bool) or not isinstance(value, int | float):
            continue
        name, unit = field_unit(field)
        shown = measures.written.get(field) or shown_cell(float(value), unit or "", reader)
        found.append(NamedNumber(name, float(value), unit, measures.tolerance(field) or 0.0, shown, field))
    for figure in figures:
        if isinstance(figure.value, int | float):
            spread = 0.0 if not figure.unit else abs(figure.value) * DISPLAY
            shown = shown_cell(float(figure.value), figure.unit, reader, figure.digits)
            name = figure.name.casefold()
            found.append(NamedNumber(name, float(figure.value), figure.unit or None, spread, shown))
    return tuple(found)


def claims_in(text: str, known: Sequence[NamedNumber]) -> Iterator[Claim]:
    """Yield the numbers in a text that disagree with a measure or figure they are tied to."""
    measured = [each for each in known if each.unit is not None]
    counted = [each for each in known if each.unit is None and each.value == int(each.value)]
    for sentence in _SENTENCE.split(text):
        yield from _amounts(sentence, measured)
        yield from _counts(sentence, counted)


def _amounts(sentence: str, known: Sequence[NamedNumber]) -> Iterator[Claim]:
    """Yield the disagreeing amounts of one sentence."""
    amounts = list(find_all(sentence))
    for at, (start, end, quantity) in enumerate(amounts):
        alike = [each for each in known if _in_unit(quantity, each) is not None]
        tied = _tied(sentence[max(0, start - NEAR) : start], sentence[end : end + NEAR], alike)
        if not tied or any(agrees(quantity, each) for each in tied):
            continue
        first = tied[0]
        if any(_between(first, quantity, other) for other in _range_with(sentence, amounts, at)):
            continue
        yield Claim(quantity.written, first, f"{_in_unit(quantity, first):.6g} {first.unit}")


def _range_with(sentence: str, amounts: Sequence[tuple[int, int, Quantity]], at: int) -> Iterator[Quantity]:
    """Yield the amounts that make a range with one: `400 mm to 600 mm`."""
    for one, two in ((at - 1, at), (at, at + 1)):
        if one >= 0 and two < len(amounts) and _RANGE.fullmatch(sentence[amounts[one][1] : amounts[two][0]]):
            yield amounts[two if one == at else one][2]


def _between(named: NamedNumber, one: Quantity, two: Quantity) -> bool:
    """Tell whether a measure lies in the range of two amounts."""
    ends = [value for each in (one, two) if (value := _in_unit(each, named)) is not None]
    return len(ends) > 1 and min(ends) <= named.value <= max(ends)


def _tied(before: str, after: str, known: Sequence[NamedNumber]) -> list[NamedNumber]:
    """Return what an amount is said to be: the longest names that the words next to it make."""
    left, right = _words(before), _words(after)
    if right and right[0] in _BEYOND:
        return []
    moved = False
    while left and left[-1] in _TIES:
        moved = left.pop() == "to" or moved
    found = [each for each in known if _ends_with(left, each.words, moved=moved)]
    if not found:
        apart = bool(right) and right[0] in _MARKS
        right = _past_ties(right)
        found = [each for each in known if _starts_with(right, each.words, apart=apart)]
    longest = max((len(each.words) for each in found), default=0)
    return [each for each in found if len(each.words) == longest]


def _past_ties(right: list[str]) -> list[str]:
    """Return the words after an amount from where a name may stand: `950 mm, the …`, `950 mm (…`."""
    mark = right[0] if right and right[0] in _MARKS else ""
    rest = right[1:] if mark else right
    start = next((at for at, word in enumerate(rest) if word not in _BACK_TIES), len(rest))
    return rest[start:] if start or mark in {"", "("} else []


def _ends_with(left: Sequence[str], words: tuple[str, ...], *, moved: bool) -> bool:
    """Tell whether the words before an amount end with a name that stands by itself."""
    if not words or not left or left[-1] not in words:
        return False
    tail = [(at, word) for at, word in enumerate(left) if word not in _GLUE][-len(words) :]
    said = tuple(word for _, word in tail)
    turned = said == words[::-1] and "of" in left[tail[0][0] :]  # `the width of the hole`
    if said == words or turned:
        ahead = left[: tail[0][0]]
        if moved and "from" in ahead[-2:]:
            return False  # `from the standing width to 900 mm` says where it goes, not what it is
        return len(words) > 1 or not ahead or ahead[-1] in _LEADS or not ahead[-1].isalpha()
    apart = left[-1] == words[-1] and len(left) > 1 and left[-2] in _LEADS and "from" not in left
    return len(words) > 1 and apart and set(words) <= set(left)


def _starts_with(right: Sequence[str], words: tuple[str, ...], *, apart: bool) -> bool:
    """Tell whether the words after an amount start with a name, which nothing then changes.

    `At 300 mm, the finished width is …` goes on to say something else of the name, so a name set `apart` by a
    mark is followed by no verb.
    """
    size = len(words)
    changed = _CHANGED | _SAID if apart else _CHANGED
    return bool(words) and tuple(right[:size]) == words and not set(right[size : size + 1]) & changed


def _words(text: str) -> list[str]:
    """Return the words and marks of a text as compared, `{words}` as one mark that names nothing."""
    return [_folded(word) for word in _WORD.findall(BRACED.sub(" ¤ ", text))]


def _in_unit(quantity: Quantity, named: NamedNumber) -> float | None:
    """Return an amount in the unit of a measure or figure; None where they measure different things."""
    try:
        return quantity.to(named.unit or "")
    except QuantityError:
        return None


def agrees(quantity: Quantity, named: NamedNumber) -> bool:
    """Tell whether an amount is what it is said to be, within its tolerance or the digits it is written to."""
    value = _in_unit(quantity, named)
    if value is None:
        return False
    apart = abs(value - named.value)
    dust = 1e-9 * max(1.0, abs(named.value))
    rounding = min(_half_digit(quantity, value, named), COARSE * abs(named.value))
    return apart <= max(named.tolerance, rounding) + dust


def _half_digit(quantity: Quantity, value: float, named: NamedNumber) -> float:
    """Return half of the last written digit in the unit of the measure: 0.5 mm for `900 mm`, 12.7 mm for `35 in`."""
    main = re.split(r"±|\+/?-", quantity.written)[0].rstrip()
    if part := _FRACTION.search(main):
        raised = f"{2 * int(part[1]) + 1}/{2 * int(part[2])}"
    elif part := next(reversed(list(_LAST_NUMBER.finditer(main))), None):
        places = len(part[2] or "")
        raised = f"{float(part[1]) + 0.5 * 10.0**-places:.{places + 1}f}"
    else:
        return 0.0
    try:
        moved = parse(main[: part.start()] + raised + main[part.end() :]).to(named.unit or "")
    except QuantityError:
        return 0.0
    return abs(moved - value)


def _counts(sentence: str, known: Sequence[NamedNumber]) -> Iterator[Claim]:
    """Yield the disagreeing counts of one sentence, such as `3 passes` where two are to be made."""
    words = _words(sentence)
    for named in known:
        size = len(named.words)
        for at in range(len(words) - size + 1):
            if not size or tuple(words[at : at + size]) != named.words:
                continue
            word = _count_at(words, at, size)
            if word and _count(word) != named.value:
                yield Claim(word, named, f"{_count(word)}")


def _count_at(words: Sequence[str], at: int, size: int) -> str:
    """Return the count said just before the name at `at`, or after it as in `passes: 3`; "" for none."""
    ahead = words[at - 2] if at > 1 else ""
    if at and _count(words[at - 1]) is not None and ahead not in _UNCOUNTED and not _tail(ahead):
        return words[at - 1]
    rest = words[at + size :]
    told = len(rest) > 1 and rest[0] in {":", "=", "is", "are"} and not any(map(str.isalpha, rest[2:3]))
    return rest[1] if told and _count(rest[1]) is not None else ""


def _count(word: str) -> int | None:
    """Return a whole number over one, written in figures or as a small word; `one` says too many other things."""
    if word in _SMALL:
        return _SMALL.index(word) + 2
    return int(word) if word.isdecimal() and word.isascii() and int(word) > 1 else None


def _tail(ahead: str) -> bool:
    """Tell whether the word before a number makes it part of a range, a sum or a fraction."""
    return ahead in {"to", "-", "–", "/", "±", "+", "×", "x", "or"}
