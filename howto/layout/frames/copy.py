"""What a carousel says, in which order: a technique and its figures → words for covers, steps and lists."""

from collections.abc import Iterator, Sequence

from howto.languages.form import Labels
from howto.layout.frames.cover import Number
from howto.layout.frames.rows import Row
from howto.layout.frames.step import Copy
from howto.model.figure import Figure
from howto.model.prose import Prose, capital, plain
from howto.model.ready import Ready
from howto.model.shown import shown, shown_measures
from howto.model.technique import Kit, Picture, Step

LONGEST_LIST = 40  # characters of a number that a frame shows: three amounts in a row
ENOUGH = 2  # headline figures that fill a cover's chain without help


def step_copy(step: Step, number: int, picture: Picture | None, say: Labels) -> Copy:
    """Return a step's words: text and key points must stand, reasons and checks may."""
    must = [Row(text=plain(step.text))] if plain(step.text) else []
    must += [Row(text=plain(each), label=say["key_point"], face="text-bold") for each in step.key_points]
    may = [Row(text=plain(each), label=say["reason"]) for each in step.reasons]
    may += [Row(text=plain(each), label=say["check"]) for each in step.checks]
    marks = picture.marks if picture else ()
    legend = tuple(Row(text=mark.text, number=at, kind="disc") for at, mark in enumerate(marks, start=1))
    return Copy(number=number, title=bare(step.title), must=tuple(must), may=tuple(may), legend=legend)


def bare(title: str) -> str:
    """Return a title without the full stop it may end with."""
    return title.strip().removesuffix(".").rstrip()


def over_line(ready: Ready, say: Labels) -> str:
    """Return the line above a cover's title: the trade, the level, the time it takes."""
    family = ready.reader.tell(ready.technique.family)
    parts = [capital(family), say["level"].format(level=ready.technique.level)]
    if ready.technique.minutes:
        parts.append(say["minutes"].format(minutes=f"{ready.technique.minutes:g}"))
    return " · ".join(parts)


def cover_numbers(ready: Ready) -> tuple[Number, ...]:
    """Return the numbers for the cover: headline figures, and measures that are one amount where those are too few.

    A figure that is a table stands there with its total, where it has one.
    """
    heads = [_number(each, ready) for each in ready.figures if each.headline and _stands_alone(each)]
    amounts = [each for each in measures(ready) if any(map(str.isdigit, each.value)) and ", " not in each.value]
    return tuple(heads if len(heads) >= ENOUGH else [*heads, *amounts[: ENOUGH + 1 - len(heads)]])


def all_numbers(ready: Ready) -> tuple[Number, ...]:
    """Return the measures, then the figures, each once; tables and long lists stay on the card."""
    told = [each for each in measures(ready) if len(each.value) <= LONGEST_LIST]
    told += [_number(each, ready) for each in ready.figures if not each.table]
    return tuple(dict.fromkeys(told))


def by_weight(ready: Ready) -> tuple[Number, ...]:
    """Return all numbers, those that matter most first: headlines, then amounts, then words."""
    heads = {_number(each, ready).label for each in ready.figures if each.headline}
    own = {each.label for each in measures(ready)}

    def rank(number: Number) -> int:
        amount = any(map(str.isdigit, number.value))
        return 0 if number.label in heads else 3 if not amount else 1 if number.label in own else 2

    return tuple(sorted(all_numbers(ready), key=rank))


def measures(ready: Ready) -> Iterator[Number]:
    """Yield the measures the author wrote, with their tolerances."""
    for each in shown_measures(ready.technique.measures, ready.reader):
        if each.assumed:
            continue
        spread = f" {each.tolerance}" if each.tolerance else ""
        yield Number(capital(each.label), each.value + spread)


def _stands_alone(figure: Figure) -> bool:
    """Tell whether a figure says something without its table."""
    return not figure.table or not isinstance(figure.value, str)


def _number(figure: Figure, ready: Ready) -> Number:
    """Return a figure with its label, in the language of the technique."""
    label = ready.reader.tell(figure.label)
    return Number(capital(label), shown(figure, ready.reader))


def kit(ready: Ready) -> tuple[str, ...]:
    """Return tools and materials, each with its note."""
    return tuple(_item(each) for each in (*ready.technique.tools, *ready.technique.materials))


def _item(each: Kit) -> str:
    """Return a tool with its note: a bare count goes before it, anything else after."""
    note = plain(each.note).strip()
    if note.isdigit():
        return f"{each.name} × {note}"
    return f"{each.name}: {note}" if note else each.name


def sentences(prose: Sequence[Prose]) -> tuple[str, ...]:
    """Return the plain words of several paragraphs."""
    return tuple(plain(each) for each in prose)
