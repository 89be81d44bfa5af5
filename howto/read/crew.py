"""The crew's file read: who works, where, in which units, and how their pages look."""

import re
from collections.abc import Callable
from pathlib import Path
from typing import Any, Final, get_args

from howto.findings import Finding
from howto.model.crew import Climate, Colours, Crew, System
from howto.quantities import field_unit
from howto.read.crew_words import words_of
from howto.read.front_matter import parse_yaml
from howto.read.header import language_in
from howto.read.nodes import KeyNode, Mapping, is_blank
from howto.read.notes import Notes, short, whole_line
from howto.read.text import read_text
from howto.read.values import (
    as_mapping,
    choice_in,
    note_bound,
    place_of,
    printed_in,
    quantity_of,
    text_in,
    unknown_keys,
    whole_in,
    words_in,
    yes_in,
)
from howto.seasons import Hemisphere
from howto.span import SourceText, Span

KEYS: Final = (
    "name",
    "place",
    "hemisphere",
    "latitude",
    "altitude",
    "coast",
    "soil",
    "units",
    "language",
    "currency",
    "colours",
    "contact",
    "web",
    "mark",
    "climate",
    "caption limit",
    "alt limit",
    "words",
)
_LATITUDE: Final = re.compile(
    r"(?P<sign>[+−-]?)(?P<deg>\d{1,3}(?:\.\d+)?)\s*(?:°|º|deg(?:rees)?)?\s*"
    r"(?:(?P<min>\d{1,2}(?:\.\d+)?)\s*['′’]\s*)?(?:\d{1,2}(?:\.\d+)?\s*[\"″”]\s*)?"
    r"(?:(?P<side>[ns])(?:orth|outh)?)?",
    re.IGNORECASE,
)
_COLOUR: Final = re.compile(r"#?(?P<hex>[0-9a-f]{6}|[0-9a-f]{3})", re.IGNORECASE)
_CLIMATE_BOUNDS: Final = {
    "max_c": (-60.0, 60.0),
    "min_c": (-70.0, 50.0),
    "humidity_percent": (1.0, 100.0),
    "wind_m_per_s": (0.0, 40.0),
    "sunshine_hours": (0.0, 24.0),
    "rain_mm": (0.0, 3000.0),
}
_MONTHS: Final = 12


def read_crew(path: Path, shown: str | None = None) -> tuple[Crew, tuple[Finding, ...]]:
    """Return the crew of a file, with defaults for what it does not say or cannot be read."""
    source, findings = read_text(path, shown or path.as_posix())
    if source is None:
        return Crew(), findings
    crew, more = crew_of(source)
    return crew, (*findings, *more)


def crew_of(source: SourceText) -> tuple[Crew, tuple[Finding, ...]]:
    """Return the crew a text describes."""
    node, front = parse_yaml(source)
    notes = Notes(source)
    keys = as_mapping(notes, node, "this file", "`name: The crew`", whole_line(source, 1))
    if keys is None:
        return Crew(), (*front, *notes.findings)
    unknown_keys(notes, keys, KEYS, "the crew")
    found: dict[str, Any] = {}
    spans: dict[str, Span] = {}
    for entry in keys:
        reader = _READERS.get(entry.name)
        if reader is None or is_blank(entry.value):
            continue
        name, read = reader
        value = read(notes, entry)
        if value is not None:
            found[name] = value
            spans[name] = place_of(entry)
            if isinstance(entry.value, Mapping):
                spans.update({f"{name}.{each.name}": place_of(each) for each in entry.value})
    _agree_on_side(notes, keys, found)
    return Crew(spans=spans, **found), (*front, *notes.findings)


def _agree_on_side(notes: Notes, keys: Mapping, found: dict[str, Any]) -> None:
    """Make latitude and hemisphere say the same; note them where they do not."""
    latitude, side = found.pop("latitude", None), found.get("hemisphere")
    if latitude is None:
        if side == "south":
            found["latitude_deg"] = -Crew().latitude_deg
        return
    degrees, written = latitude
    south = written == "s" if written else side == "south"
    found["latitude_deg"] = -abs(degrees) if south else abs(degrees)
    here = "south" if south else "north"
    found.setdefault("hemisphere", here)
    if side is None or side == here:
        return
    one, two = (place_of(entry) for entry in keys if entry.name in ("latitude", "hemisphere"))
    notes.add(
        "hemisphere",
        one,
        f"the latitude lies {here} and the hemisphere is `{side}`",
        "seasons and months are six months apart between the two",
        f"write `hemisphere: {here}`, or `latitude: {abs(degrees):g} {side[0].upper()}`",
        also=two,
    )


def _latitude(notes: Notes, entry: KeyNode) -> tuple[float, str] | None:
    """Return degrees without sign, and `n`, `s` or nothing for the side that was written."""
    text = text_in(notes, entry)
    if text is None:
        return None
    found = _LATITUDE.fullmatch(text)
    if found is None:
        notes.add(
            "value",
            place_of(entry),
            f"`{short(text)}` is not a latitude",
            "a latitude is degrees from the equator, north or south",
            "write degrees and N or S, such as `latitude: 41 S`",
        )
        return None
    degrees = float(found["deg"]) + float(found["min"] or 0) / 60
    side = (found["side"] or "").lower() or ("s" if found["sign"] in ("-", "−") else "")
    if degrees <= 90:
        return degrees, side
    note_bound(notes, place_of(entry), entry.key.text, short(text), ("from 90 S to 90 N", f"45 {side.upper() or 'N'}"))
    return None


def _altitude(notes: Notes, entry: KeyNode) -> float | None:
    """Return height above the sea in metres."""
    text = text_in(notes, entry)
    found = quantity_of(notes, text, place_of(entry), entry.key.text, "m") if text is not None else None
    if found is None or text is None:
        return None
    if -430 <= found[0] <= 6000:
        return found[0]
    note_bound(notes, place_of(entry), entry.key.text, text, ("from -430 m to 6000 m", "30 m"))
    return None


def _units(notes: Notes, entry: KeyNode) -> str | None:
    """Return the system of units."""
    text = text_in(notes, entry)
    if text is not None and text.casefold() in ("imperial", "feet", "feet and inches"):
        notes.add(
            "unknown-word",
            place_of(entry),
            f"`{text}` does not say whose gallon",
            "a US gallon is 3.785 L and a UK gallon 4.546 L",
            f"write `{entry.key.text}: us` or `{entry.key.text}: uk`",
        )
        return None
    return choice_in(notes, entry, get_args(System))


def _colours(notes: Notes, entry: KeyNode) -> Colours | None:
    """Return ink, ground and accent."""
    node = as_mapping(notes, entry.value, "`colours`", 'a line such as `  accent: "#a63d1f"` under it', entry.key.span)
    if node is None:
        return None
    unknown_keys(notes, node, list(Colours.model_fields), "the colours")
    found: dict[str, str] = {}
    for each in node:
        text = text_in(notes, each) if each.name in Colours.model_fields else None
        if text is None:
            continue
        colour = _COLOUR.fullmatch(text)
        if colour is None:
            notes.add(
                "value",
                place_of(each),
                f"`{short(text)}` is not a colour",
                "a colour is # and six signs from 0 to 9 and a to f: two each for red, green and blue",
                f'write one such as `{each.key.text}: "{getattr(Colours(), each.name)}"`',
            )
            continue
        digits = colour["hex"].lower()
        found[each.name] = "#" + (digits if len(digits) == 6 else "".join(2 * digit for digit in digits))
    return Colours(**found)


def _web(notes: Notes, entry: KeyNode) -> str | None:
    """Return the crew's address on the web, whole."""
    text = printed_in(notes, entry, 100)
    if text is None or re.fullmatch(r"https?://[^\s/]+\.[^\s]+", text, re.IGNORECASE):
        return text
    if re.fullmatch(r"[^\s/:]+\.[^\s:]+", text):
        return f"https://{text}"
    notes.add(
        "value",
        place_of(entry),
        f"`{short(text)}` is not an address on the web",
        "the code on a card opens it on a phone",
        "write it as a browser shows it, such as `web: https://thrushfield.example`, or take the line out",
    )
    return None


def _climate(notes: Notes, entry: KeyNode) -> Climate | None:
    """Return twelve monthly means of each kind; None where one that is needed cannot be read."""
    names = {field_unit(name)[0]: name for name in Climate.model_fields}
    example = "lines such as `  max: [5, 7, 12, 16, 20, 24, 27, 26, 22, 16, 10, 6]` under it"
    node = as_mapping(notes, entry.value, "`climate`", example, entry.key.span)
    if node is None:
        return None
    before = len(notes.found)
    meant = unknown_keys(notes, node, list(names), "the climate")
    found: dict[str, tuple[float, ...]] = {}
    for each in node:
        if each.name in names:
            found[names[each.name]] = _twelve(notes, each, names[each.name])
    for key, name in names.items():
        if name not in found and key not in meant and Climate.model_fields[name].is_required():
            notes.add(
                "missing-key",
                entry.key.span,
                f"the climate has no `{key}`",
                "water need is worked out from all of maximum, minimum, humidity, wind and sunshine",
                f"write a line `  {key}:` with twelve numbers, January first, or take `climate:` out",
            )
    if len(notes.found) > before or not _warmer_than_coldest(notes, node, found):
        return None
    return Climate(**found)


def _twelve(notes: Notes, entry: KeyNode, name: str) -> tuple[float, ...]:
    """Return twelve numbers in the field's unit; fewer, noted, where they are not twelve or cannot be read."""
    unit = field_unit(name)[1] or "1"
    low, high = _CLIMATE_BOUNDS[name]
    items = words_in(notes, entry)
    if len(items) != _MONTHS:
        notes.add(
            "twelve-months",
            entry.key.span,
            f"`{entry.key.text}` has {len(items)} numbers",
            "it holds twelve monthly means, January first",
            "write twelve numbers with commas between them",
        )
        return ()
    values: list[float] = []
    for item in items:
        plain = re.fullmatch(r"[+−-]?\d{1,6}(?:\.\d+)?", item.text)
        text = f"{item.text} {unit}" if plain else item.text
        found = quantity_of(notes, text, item.span, entry.key.text, unit)
        if found is not None and not low <= found[0] <= high:
            bound = f"from {low:g} to {high:g} {unit}"
            inside = f"{min(high, max(low, found[0])):g}"
            notes.add(
                "bound",
                item.span,
                f"`{entry.key.text}` has {item.text}",
                f"a month's mean is {bound}",
                f"write a number {bound}, such as {inside}",
            )
        elif found is not None:
            values.append(found[0])
    return tuple(values)


def _warmer_than_coldest(notes: Notes, node: Mapping, found: dict[str, tuple[float, ...]]) -> bool:
    """Tell whether each month's maximum is over its minimum; note the first month where it is not."""
    pairs = zip(found["max_c"], found["min_c"], strict=True)
    wrong = next((month for month, (most, least) in enumerate(pairs) if most < least), None)
    entry, other = node.entry("max"), node.entry("min")
    if wrong is None or entry is None or other is None:
        return True
    pair = found["max_c"][wrong], found["min_c"][wrong]
    notes.add(
        "climate",
        entry.key.span,
        f"month {wrong + 1} has a maximum of {pair[0]:g} °C and a minimum of {pair[1]:g} °C",
        "a month's mean maximum is over its mean minimum",
        f"write the larger number of month {wrong + 1} under `max` and the smaller under `min`",
        also=other.key.span,
    )
    return False


def _choice(kind: Any) -> Callable[[Notes, KeyNode], str | None]:
    """Return a reader of one of a few words."""
    return lambda notes, entry: choice_in(notes, entry, get_args(kind))


def _words(most: int) -> Callable[[Notes, KeyNode], str | None]:
    """Return a reader of words that are printed, of at most so many characters."""
    return lambda notes, entry: printed_in(notes, entry, most)


def _whole(low: int, high: int) -> Callable[[Notes, KeyNode], int | None]:
    """Return a reader of a whole number."""
    return lambda notes, entry: whole_in(notes, entry, low, high)


_READERS: Final[dict[str, tuple[str, Callable[[Notes, KeyNode], Any]]]] = {
    "name": ("name", _words(60)),
    "place": ("place", _words(60)),
    "hemisphere": ("hemisphere", _choice(Hemisphere)),
    "latitude": ("latitude", _latitude),
    "altitude": ("altitude_m", _altitude),
    "coast": ("coast", yes_in),
    "soil": ("soil", _words(60)),
    "units": ("units", _units),
    "language": ("language", language_in),
    "currency": ("currency", _words(5)),
    "colours": ("colours", _colours),
    "contact": ("contact", _words(160)),
    "web": ("web", _web),
    "mark": ("mark", text_in),
    "climate": ("climate", _climate),
    "caption limit": ("caption_limit", _whole(100, 10_000)),
    "alt limit": ("alt_limit", _whole(125, 5_000)),
    "words": ("words", words_of),
}
