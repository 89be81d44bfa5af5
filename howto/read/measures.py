"""A family's measures from what an author wrote under `measures:`: units turned, bounds kept, words matched."""

from datetime import date
from types import NoneType, UnionType
from typing import Annotated, Any, Final, Literal, Union, get_args, get_origin

from pydantic import ValidationError

from howto.model.family import AnyFamily
from howto.model.measures import Measures
from howto.quantities import field_unit
from howto.read.bounds import Read, explain_refusal
from howto.read.nodes import KeyNode, Mapping, Scalar, tidy_key
from howto.read.notes import Notes, short
from howto.read.values import (
    choice_in,
    choice_of,
    date_in,
    date_of,
    place_of,
    printed_in,
    printed_words_in,
    quantity_of,
    text_in,
    unknown_keys,
    words_in,
    yes_in,
)
from howto.span import Span

OWN: Final = ("tolerances", "written")


class Gathered:
    """What was read of the measures so far: values, tolerances and writing by field name, and their places."""

    def __init__(self, before: Measures | None = None) -> None:
        self.values: dict[str, Any] = dict(before.given()) if before else {}
        self.tolerances: dict[str, float] = dict(before.tolerances) if before else {}
        self.written: dict[str, str] = dict(before.written) if before else {}
        self.spans: dict[str, Span] = {}
        self.unread: set[str] = set()  # written, but not understood: not to be called missing


def keys_of(model: type[Measures]) -> dict[str, str]:
    """Return a family's field names by the key an author writes."""
    return {field_unit(name)[0]: name for name in model.model_fields if name not in OWN}


def measures_from(
    notes: Notes,
    node: Mapping | None,
    family: AnyFamily,
    home: Span,
    before: Measures | None = None,
    *,
    damaged: bool = False,
) -> tuple[Measures | None, dict[str, Span]]:
    """Return the measures an author wrote and the place of each by field name.

    `home` is the key they stand under; `before` are measures that these override, as on a visit; `damaged` when
    lines were lost, so that none is called missing.
    """
    keys = keys_of(family.measures)
    gathered = Gathered(before)
    if node is not None:
        meant = unknown_keys(notes, node, list(keys), f"{family.name} measures")
        gathered.unread.update(keys[key] for key in meant)
        known = {tidy_key(key): name for key, name in keys.items()}
        for entry in node:
            if entry.name in known:
                _gather(notes, gathered, entry, known[entry.name], family.measures)
    fields = gathered.values | {"tolerances": gathered.tolerances, "written": gathered.written}
    try:
        measures = family.measures.model_validate(fields)
    except ValidationError as problem:
        lost = {str(error["loc"][0]) for error in problem.errors() if error["type"] == "missing"} if damaged else set()
        read = Read(home, gathered.spans, gathered.written)
        explain_refusal(notes, problem, family, read, gathered.unread | lost)
        return None, gathered.spans
    return (None if gathered.unread else measures), gathered.spans


def _gather(notes: Notes, gathered: Gathered, entry: KeyNode, name: str, model: type[Measures]) -> None:
    """Add one measure to what was gathered; one that cannot be read is noted and kept from being missed."""
    gathered.spans[name] = place_of(entry)
    gathered.tolerances.pop(name, None)
    kind = plain_kind(model.model_fields[name].annotation)
    unit = field_unit(name)[1]
    before = len(notes.found)
    tolerance: float | None = None
    if get_origin(kind) is tuple:
        value: Any = _many(notes, entry, kind, unit)
    elif kind is float or kind is int:
        value, tolerance = _number(notes, entry, unit, whole=kind is int)
    else:
        value = _word(notes, entry, kind)
    if value is None or len(notes.found) > before:
        gathered.unread.add(name)
        gathered.values.pop(name, None)
        return
    gathered.values[name] = value
    if isinstance(entry.value, Scalar):
        gathered.written[name] = " ".join(entry.value.text.split())
    if tolerance is not None:
        gathered.tolerances[name] = tolerance


def plain_kind(annotation: Any) -> Any:
    """Return what a field holds when it holds something: `float | None` is a float."""
    if get_origin(annotation) in (Union, UnionType):
        annotation = next(kind for kind in get_args(annotation) if kind is not NoneType)
    return get_args(annotation)[0] if get_origin(annotation) is Annotated else annotation


def _word(notes: Notes, entry: KeyNode, kind: Any) -> Any:
    """Return a word of a list, a yes or no, a date or a text."""
    if get_origin(kind) is Literal:
        return choice_in(notes, entry, get_args(kind))
    if kind is bool:
        return yes_in(notes, entry)
    if kind is date:
        return date_in(notes, entry)
    return printed_in(notes, entry)


def _number(notes: Notes, entry: KeyNode, unit: str | None, *, whole: bool) -> tuple[float | None, float | None]:
    """Return a quantity in the field's unit with its tolerance; a count is whole and has none."""
    text = text_in(notes, entry)
    if text is None:
        return None, None
    if whole:
        return _count(notes, Scalar(text, place_of(entry)), entry.key.text, unit), None
    return quantity_of(notes, text, place_of(entry), entry.key.text, unit or "1") or (None, None)


def _count(notes: Notes, item: Scalar, key: str, unit: str | None) -> int | None:
    """Return a whole number without a tolerance."""
    found = quantity_of(notes, item.text, item.span, key, unit or "1")
    if found is None or (found[0] == int(found[0]) and found[1] is None):
        return None if found is None else int(found[0])
    notes.add(
        "value",
        item.span,
        f"`{short(item.text)}` is not a whole number",
        f"`{key}` is a count",
        f"write `{key}: {max(1, round(found[0]))}`",
    )
    return None


def _many(notes: Notes, entry: KeyNode, kind: Any, unit: str | None) -> tuple[Any, ...] | None:
    """Return a list of quantities, counts, dates or words."""
    inner = get_args(kind)
    found: list[Any] = []
    before = len(notes.found)
    each = plain_kind(inner[0])
    for item in printed_words_in(notes, entry) if each is str else words_in(notes, entry):
        if each is float:
            value = quantity_of(notes, item.text, item.span, entry.key.text, unit or "1")
            found.append(value and value[0])
        elif each is int:
            found.append(_count(notes, item, entry.key.text, unit))
        elif get_origin(each) is Literal:
            found.append(choice_of(notes, item.text, item.span, entry.key.text, get_args(each)))
        elif each is date:
            found.append(date_of(notes, item.text, item.span, entry.key.text))
        else:
            found.append(item.text)
    if not found and len(notes.found) == before:
        notes.add(
            "value",
            entry.key.span,
            f"nothing is listed after `{entry.key.text}:`",
            "a list of one or more is wanted here",
            f"write it after the colon, or take the line `{entry.key.text}:` out",
        )
    return None if None in found or not found else tuple(found)
