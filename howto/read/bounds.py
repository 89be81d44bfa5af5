"""What pydantic refused among the measures, in the author's words and the author's unit."""

import re
from collections.abc import Callable, Mapping
from typing import Any, Final, Literal, get_args, get_origin

from annotated_types import Ge, Gt, Le, Lt
from pydantic import ValidationError
from pydantic.fields import FieldInfo

from howto.model.family import AnyFamily
from howto.quantities import QuantityError, convert, field_unit, round_down, round_up
from howto.read.notes import Notes
from howto.span import Span

_UNIT: Final = re.compile(r"[-+−]?[\d.,/½¼¾⅓⅔\s]+(?P<unit>[^\d±+]+?)\s*(?:(?:±|\+).*)?")
_PLAIN_UNITS: Final = {"1": "", None: ""}


def explain_refusal(
    notes: Notes,
    problem: ValidationError,
    family: AnyFamily,
    home: Span,
    spans: Mapping[str, Span],
    skip: set[str],
    written: Mapping[str, str],
) -> None:
    """Note each measure that was refused: one that is missing, one out of bounds, or two that do not agree."""
    for error in problem.errors():
        name = str(error["loc"][0]) if error["loc"] else ""
        if name in skip:
            continue
        if error["type"] == "missing":
            _note_missing(notes, name, family, home)
            continue
        info = family.measures.model_fields.get(name)
        low, high = limits(info) if info else (None, None)
        value = error["input"]
        if info is not None and isinstance(value, int | float) and (low or high):
            _note_bound(notes, name, float(value), (low, high), (spans.get(name, home), written.get(name, "")))
            continue
        why = error["msg"].removeprefix("Value error, ")
        notes.add(
            "measures",
            spans.get(name, home),
            f"`{field_unit(name)[0]}` cannot stand like this" if name else "these measures do not go together",
            why[:1].lower() + why[1:],
            "change the measure so that this holds" if name else "change one of them so that this holds",
        )


Limit = tuple[float, bool]  # the number, and whether it is itself allowed


def limits(info: FieldInfo) -> tuple[Limit | None, Limit | None]:
    """Return the lowest and highest number a field takes."""
    low: Limit | None = None
    high: Limit | None = None
    for each in info.metadata:
        if isinstance(each, Ge):
            low = (float(each.ge), True)  # type: ignore[arg-type]
        elif isinstance(each, Gt):
            low = (float(each.gt), False)  # type: ignore[arg-type]
        elif isinstance(each, Le):
            high = (float(each.le), True)  # type: ignore[arg-type]
        elif isinstance(each, Lt):
            high = (float(each.lt), False)  # type: ignore[arg-type]
    return low, high


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
    notes: Notes, name: str, value: float, bounds: tuple[Limit | None, Limit | None], place: tuple[Span, str]
) -> None:
    """Note a number out of bounds, with the bounds and a number inside them in the author's unit."""
    key, field = field_unit(name)
    unit = authors_unit(place[1], field)
    low, high = _turned(bounds[0], field, unit, round_up), _turned(bounds[1], field, unit, round_down)
    parts = []
    if low:
        parts.append(f"{'at least' if low[1] else 'more than'} {_with(low[0], unit)}")
    if high:
        parts.append(f"{'at most' if high[1] else 'less than'} {_with(high[0], unit)}")
    below = low is not None and bounds[0] is not None and value <= bounds[0][0]
    notes.add(
        "bound",
        place[0],
        f"`{key}` is {place[1] or _with(value, field)}",
        f"`{key}` must be {' and '.join(parts)}",
        f"write `{key}: {_with(_inside(low, high, below=below), unit)}`, or another amount {' and '.join(parts)}",
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
    if below and low is not None:
        if low[1]:
            return round_up(low[0], _step(low[0]))
        middle = (low[0] + high[0]) / 2 if high else low[0] + max(1.0, abs(low[0]))
        return round_down(middle, _step(middle))
    if high is None:
        return 1.0 if low is None else low[0] + 1
    if high[1]:
        return round_down(high[0], _step(high[0]))
    middle = (low[0] + high[0]) / 2 if low else high[0] - max(1.0, abs(high[0]))
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
    return f"{value:.10g}{'' if not name or name.startswith('/') else ' '}{name}"


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
        f"write a line `  {line}` under `measures:`",
    )


def _example(family: AnyFamily, key: str, kind: Any, unit: str | None) -> str:
    """Return what a measure could be: the starter's, the first word of a list, or a number with its unit."""
    starter = dict(family.starter)
    if key in starter:
        return starter[key]
    if get_origin(kind) is Literal:
        return str(get_args(kind)[0])
    if kind is bool:
        return "yes"
    return _with(1.0, unit)
