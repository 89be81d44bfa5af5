"""What pydantic refused among the measures, in the author's words and the author's unit."""

import re
from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass
from decimal import Decimal
from typing import Any, Final, Literal, get_args, get_origin

from pydantic import ValidationError

from howto.model.family import AnyFamily
from howto.quantities import QuantityError, convert, field_unit, round_down, round_up
from howto.read.notes import Notes
from howto.span import Span

_UNIT: Final = re.compile(r"[-+−]?[\d.,/½¼¾⅓⅔\s]+(?P<unit>[^\d±+]+?)\s*(?:(?:±|\+).*)?")
_PLAIN_UNITS: Final = {"1": "", None: ""}
_ENDS: Final = {"gt": False, "ge": True, "lt": False, "le": True}  # pydantic's bounds; is the number itself allowed?
_LENGTHS: Final = {"too_short": ("at least", "min_length"), "too_long": ("at most", "max_length")}
Limit = tuple[float, bool]  # the number, and whether it is itself allowed


@dataclass(frozen=True, slots=True)
class Read:
    """Where measures stand: the key they are under, the place of each, and what was written."""

    home: Span
    spans: Mapping[str, Span]
    written: Mapping[str, str]

    def place(self, name: str) -> Span:
        """Return where a measure stands."""
        return self.spans.get(name, self.home)


def explain_refusal(notes: Notes, problem: ValidationError, family: AnyFamily, read: Read, skip: set[str]) -> None:
    """Note each measure that was refused: one that is missing, one out of bounds, or two that do not agree.

    Those in `skip` were noted already.
    """
    noted = set(skip)
    for error in problem.errors():
        name = str(error["loc"][0]) if error["loc"] else ""
        if name in noted:
            continue
        noted.add(name)
        value, given = error["input"], error.get("ctx", {})
        if error["type"] == "missing":
            _note_missing(notes, name, family, read.home)
        elif error["type"] in _LENGTHS:
            _note_length(notes, name, read.place(name), error["type"], given)
        elif given.keys() & _ENDS.keys():
            info = family.measures.model_fields[name]
            ends = [given] if len(error["loc"]) > 1 else [_ends_of(each) for each in info.metadata]
            _note_bound(notes, name, float(value), limits(ends), read, in_list=len(error["loc"]) > 1)
        else:
            why = error["msg"].removeprefix("Value error, ")
            notes.add(
                "measures",
                read.place(name),
                f"`{field_unit(name)[0]}` cannot stand like this" if name else "these measures do not go together",
                why[:1].lower() + why[1:],
                "change the measure so that this holds" if name else "change one of them so that this holds",
            )


def _ends_of(constraint: Any) -> dict[str, Any]:
    """Return the bound that a field's constraint sets, by `gt`, `ge`, `lt` or `le`."""
    return {end: bound for end in _ENDS if (bound := getattr(constraint, end, None)) is not None}


def limits(ends: Iterable[Mapping[str, Any]]) -> tuple[Limit | None, Limit | None]:
    """Return the lowest and highest number that bounds allow, each with whether it is itself allowed."""
    found: dict[bool, Limit] = {}
    for each in ends:
        for end in each.keys() & _ENDS.keys():
            found[end.startswith("g")] = (float(each[end]), _ENDS[end])
    return found.get(True), found.get(False)


def _note_length(notes: Notes, name: str, span: Span, kind: str, given: Mapping[str, Any]) -> None:
    """Note a list with too few or too many in it."""
    words, limit = _LENGTHS[kind]
    key = field_unit(name)[0]
    notes.add(
        "bound",
        span,
        f"`{key}` holds {given['actual_length']}",
        f"`{key}` holds {words} {given[limit]}",
        f"write {words} {given[limit]}, with commas between them",
    )


def authors_unit(text: str, unit: str | None) -> str | None:
    """Return the unit an author wrote, where it is one word and turns into the field's; else the field's own."""
    found = _UNIT.fullmatch(text.strip())
    if found is None or unit is None:
        return unit
    try:
        convert(1.0, unit, found["unit"].strip())
    except QuantityError:
        return unit
    return found["unit"].strip()


def _note_bound(
    notes: Notes, name: str, value: float, bounds: tuple[Limit | None, Limit | None], read: Read, *, in_list: bool
) -> None:
    """Note a number out of bounds, with the bounds and a number inside them in the author's unit."""
    key, field = field_unit(name)
    written = "" if in_list else read.written.get(name, "")
    unit = authors_unit(written, field)
    low, high = _turned(bounds[0], field, unit, round_up), _turned(bounds[1], field, unit, round_down)
    parts = []
    if low:
        parts.append(f"{'at least' if low[1] else 'more than'} {_with(low[0], unit)}")
    if high:
        parts.append(f"{'at most' if high[1] else 'less than'} {_with(high[0], unit)}")
    wanted = " and ".join(parts)
    below = low is not None and bounds[0] is not None and value <= bounds[0][0]
    inside = _with(_inside(low, high, below=below), unit)
    notes.add(
        "bound",
        read.place(name),
        f"`{key}` {'has' if in_list else 'is'} {written or _with(value, field)}",
        f"`{key}` must be {wanted}" if not in_list else f"each of `{key}` must be {wanted}",
        f"write `{inside if in_list else f'{key}: {inside}'}`, or another amount {wanted}",
    )


def _turned(
    bound: Limit | None, field: str | None, unit: str | None, inwards: Callable[[float, float], float]
) -> Limit | None:
    """Return a bound in the author's unit, rounded inwards to six figures."""
    if bound is None or field is None or unit is None or field == unit:
        return bound
    exact = convert(bound[0], field, unit)
    return inwards(exact, _step(exact) / 1000), bound[1]


def _inside(low: Limit | None, high: Limit | None, *, below: bool) -> float:
    """Return a number inside the bounds, near the one that was passed, in few figures."""
    passed = low if below else high
    if passed is not None and passed[1]:
        inwards = round_up if below else round_down
        return inwards(passed[0], _step(passed[0]))
    if low is not None and high is not None:
        middle = (low[0] + high[0]) / 2
    elif low is not None:
        middle = low[0] + max(1.0, abs(low[0]))
    else:
        top = high[0] if high else 0.0
        middle = top * 3 / 4 if top > 0 else top - max(1.0, abs(top))
    return round_down(middle, _step(middle))


def _step(value: float) -> float:
    """Return the step that keeps three figures of a number."""
    if value == 0:
        return 1.0
    exponent = int(f"{abs(value):e}".partition("e")[2])
    return float(f"1e{exponent - 2}")


def _with(value: float, unit: str | None) -> str:
    """Return a number with its unit as an author would write it."""
    name = _PLAIN_UNITS.get(unit, unit) or ""
    number = f"{Decimal(f'{value:.10g}'):f}"  # never as a power of ten, which could not be read again
    return f"{number}{'' if not name or name.startswith('/') else ' '}{name}"


def _note_missing(notes: Notes, name: str, family: AnyFamily, home: Span) -> None:
    """Note a measure that must be there, with the line to add."""
    key, unit = field_unit(name)
    info = family.measures.model_fields[name]
    line = f"{key}: {_example(family, key, info.annotation, unit)}"
    about = f": {info.description}" if info.description else ""
    notes.add(
        "missing-measure",
        home,
        f"`{key}` is not among the measures",
        f"{family.name} is worked out from it{about}",
        f"write a line such as `  {line}` under `measures:`, with your own after the colon",
    )


def needed_lines(family: AnyFamily) -> tuple[str, ...]:
    """Return a line for each measure that must be there, as an author would write it."""
    fields = family.measures.model_fields.items()
    needed = ((*field_unit(name), info.annotation) for name, info in fields if info.is_required())
    return tuple(f"{key}: {_example(family, key, kind, unit)}" for key, unit, kind in needed)


def _example(family: AnyFamily, key: str, kind: Any, unit: str | None) -> str:
    """Return what a measure could be: the starter's, the first word of a list, or a number with its unit."""
    starter = dict(family.starter)
    if key in starter:
        return starter[key]
    if get_origin(kind) is Literal:
        return str(get_args(kind)[0])
    return _with(1.0, unit)
