"""Every measure of every family at its bounds: `python -m tests.bounds --all` tries each with each other.

A trial is a technique with one measure or more set to a bound, to zero, to a word of its list, to yes or no, or left
out. All its figures, rules, drawings and printed numbers are asked for, and each mend is followed to the letter.
"""

import argparse
import math
import re
import sys
from collections.abc import Callable, Iterable, Iterator, Mapping
from dataclasses import replace
from functools import cache
from itertools import combinations, cycle
from pathlib import Path
from random import Random
from typing import Any, Final, Literal, get_args, get_origin

from howto.check.claims import check_claims
from howto.check.common import COMMON_RULES
from howto.check.place import AUTHOR, placed
from howto.check.rules import rules_over
from howto.compute.figures import figures_of
from howto.compute.ready import told, words_of
from howto.compute.words import filled_technique
from howto.families import FAMILIES, family
from howto.languages.reader import Reader
from howto.model.crew import Climate, Crew
from howto.model.family import AnyFamily, Breach
from howto.model.figure import Figure
from howto.model.measures import Measures
from howto.model.shown import shown, shown_cell, shown_measures
from howto.model.work import AnyWork, Work
from howto.quantities import field_unit
from howto.read.measures import plain_kind
from howto.read.shelf import read_shelf
from howto.shapes import Drawing, extent
from tests.support.builders import keys_of, mended, read_measure
from tests.support.cases import TODAY, all_cases, book
from tests.support.source import ROOT

NEAR: Final = 1e-6  # how near to a bound that is not itself allowed
NO_NUMBER: Final = re.compile(r"(?<![^\W\d_])(?:nan|inf)(?![^\W\d_])", re.IGNORECASE)
OFFERED: Final = re.compile(r"`([a-z][a-z ]*): ([^`]+)`")
CLIMATE: Final = Climate(
    max_c=(5, 7, 12, 16, 20, 24, 27, 26, 22, 16, 10, 6),
    min_c=(-2, -1, 2, 5, 9, 13, 15, 14, 11, 7, 2, -1),
    humidity_percent=(82, 78, 72, 68, 68, 66, 64, 66, 72, 78, 82, 84),
    wind_m_per_s=(2.4,) * 12,
    sunshine_hours=(2, 3, 5, 6, 7, 8, 9, 8, 6, 4, 2, 1),
    rain_mm=(55, 50, 52, 60, 75, 70, 60, 62, 64, 70, 68, 0),
)
CREWS: Final = (
    Crew(climate=CLIMATE),
    Crew(units="us", hemisphere="south", latitude_deg=-42.0),
    Crew(units="uk", climate=CLIMATE, coast=True, latitude_deg=66.0, altitude_m=6000.0),
    Crew(hemisphere="south", latitude_deg=-90.0, language="es", soil="clay"),
    Crew(units="us", latitude_deg=0.0, climate=CLIMATE, altitude_m=-430.0),
)
Settings = tuple[tuple[str, Any], ...]  # measures by field name; None leaves one out


def choices(trade: AnyFamily, name: str) -> tuple[Any, ...]:
    """Return what a measure is set to: its bounds, zero, its words, yes and no, and left out where it may be."""
    info = trade.measures.model_fields[name]
    kind = plain_kind(info.annotation)
    left_out = () if info.is_required() else (None,)
    if get_origin(kind) is not tuple:
        return (*_plain(trade, name, kind, info.metadata), *left_out)
    inner = get_args(kind)[0]
    metadata = next((each.metadata for each in get_args(inner) if hasattr(each, "metadata")), ())
    few = _plain(trade, name, plain_kind(inner), metadata)
    lists = [(each,) for each in few] + [few[:2]]
    return (*lists, *left_out)


def _plain(trade: AnyFamily, name: str, kind: Any, metadata: Iterable[Any]) -> tuple[Any, ...]:
    """Return what one value of a kind is set to."""
    if kind is bool:
        return (True, False)
    if get_origin(kind) is Literal:
        return get_args(kind)
    if kind is str:
        return said_for(trade.name, name)
    ends = {
        end: value
        for each in metadata
        for end in ("gt", "ge", "lt", "le")
        if (value := getattr(each, end, None)) is not None
    }
    low = ends["ge"] if "ge" in ends else ends["gt"] + NEAR
    high = ends["le"] if "le" in ends else ends["lt"] - NEAR
    return tuple(dict.fromkeys(kind(each) for each in (low, 0, high) if low <= each <= high))


@cache
def said_for(trade: str, name: str) -> tuple[str, ...]:
    """Return what the techniques at hand write under a measure that is a free text, the first few, and a nought."""
    values = (getattr(each.measures, name) for each in bases()[trade])
    flat = [one for value in values if value for one in ((value,) if isinstance(value, str) else value)]
    return (*list(dict.fromkeys(flat))[:4], "0")


@cache
def bases(*, cases: bool = False) -> Mapping[str, tuple[AnyWork, ...]]:
    """Return the works that trials start from by family: those of the demo shelf, and of the cases if asked."""
    shelf, _ = read_shelf(ROOT / "techniques", {each.name: each for each in FAMILIES})
    read = (case.checked.work for case in (all_cases() if cases else ()))
    found: dict[str, dict[tuple[str, ...], AnyWork]] = {each.name: {} for each in FAMILIES}
    for each in (*(Work(one, book=book()) for one in shelf.techniques), *read):
        if each is not None and each.technique.language == "en":
            found[each.technique.family].setdefault(tuple(each.measures.given()), each)
    return {trade: tuple(each.values()) for trade, each in found.items()}


def alone(trade: AnyFamily) -> Iterator[Settings]:
    """Yield each measure at each of its choices."""
    for name in keys_of(trade.measures).values():
        yield from (((name, value),) for value in choices(trade, name))


def together(trade: AnyFamily) -> Iterator[Settings]:
    """Yield each choice of each measure with each of each other."""
    for (first,), (second,) in combinations(alone(trade), 2):
        if first[0] != second[0]:
            yield first, second


def covering(trade: AnyFamily) -> Iterator[Settings]:
    """Yield all measures set at once, until few choices of each have stood with few of each other."""
    dice = Random(trade.name)  # noqa: S311 - an order that is the same each time, no secret
    few = {name: _few(choices(trade, name)) for name in keys_of(trade.measures).values()}
    placed_at = [(name, at) for name, values in few.items() for at in range(len(values))]
    wanted = [pair for pair in combinations(placed_at, 2) if pair[0][0] != pair[1][0]]
    left = {frozenset(pair) for pair in wanted}
    for pair in wanted:
        if frozenset(pair) not in left:
            continue
        row = set(pair)
        names = [name for name in few if name not in dict(row)]
        for name in dice.sample(names, len(names)):
            found = [sum(frozenset(((name, at), each)) in left for each in row) for at in range(len(few[name]))]
            row.add((name, found.index(max(found))))
        left -= {frozenset(pair) for pair in combinations(row, 2)}
        yield tuple((name, few[name][at]) for name, at in sorted(row))


def _few(values: tuple[Any, ...]) -> tuple[Any, ...]:
    """Return at most four of a measure's choices: the first, one in the middle and the last two."""
    return values if len(values) <= 4 else (values[0], values[len(values) // 2], *values[-2:])


def thrown(trade: AnyFamily, count: int) -> Iterator[Settings]:
    """Yield so many times several measures at choices of theirs, the same ones each time."""
    dice = Random(trade.name)  # noqa: S311 - as above
    names = list(keys_of(trade.measures).values())
    for _ in range(count):
        some = dice.sample(names, dice.randint(3, len(names)))
        yield tuple((name, dice.choice(choices(trade, name))) for name in some)


def set_to(base: AnyWork, settings: Settings, crew: Crew) -> AnyWork:
    """Return a work with measures set as an author would write them, for a crew."""
    measures: Measures = base.measures
    given, written, spread = dict(measures.given()), dict(measures.written), dict(measures.tolerances)
    for name, value in settings:
        for each in (given, written, spread):
            each.pop(name, None)
        if value is not None:
            given[name] = value
            written[name] = as_written(name, value)
    whole = type(measures)(**given, tolerances=spread, written=written)
    return replace(base.having(measures=whole), crew=crew)


def as_written(name: str, value: Any) -> str:
    """Return a value as an author would write it."""
    if isinstance(value, bool):
        return "yes" if value else "no"
    if isinstance(value, tuple):
        return ", ".join(as_written(name, each) for each in value)
    if isinstance(value, str):
        return value
    return f"{value:.10f}".rstrip("0").rstrip(".") + f" {field_unit(name)[1] or ''}".rstrip()


def troubles(work: AnyWork, *, words: bool = True) -> Iterator[tuple[str, str]]:
    """Yield where and what goes wrong in one technique: an exception, what is no number, a mend that is none.

    Without `words`, what looks at its prose alone is left out: that takes as long as all the rest.
    """
    trade, reader = family(work.technique.family), work.reader
    assert trade is not None
    for rule in rules_over(trade, FAMILIES):
        if rule in COMMON_RULES and not words:
            continue
        found, wrong = _tried(lambda each=rule: list(each(work)))  # type: ignore[misc]
        yield from ((rule.name, each) for each in wrong)
        for breach in found or ():
            yield from ((rule.name, each) for each in _of_breach(breach, work, trade, words=words))
            _, wrong = _tried(lambda each=rule, one=breach: placed(each, one, work.technique))  # type: ignore[misc]
            yield from ((rule.name, each) for each in wrong)
    figures, wrong = _tried(lambda: figures_of(work, trade, TODAY))
    yield from (("figures", each) for each in wrong)
    for figure in figures or ():
        _, wrong = _tried(lambda each=figure: _of_figure(each, reader))  # type: ignore[misc]
        yield from ((f"figure {figure.name}", each) for each in wrong)
    _, wrong = _tried(lambda: _of_drawings(trade.drawings(work, TODAY), reader))
    yield from (("drawings", each) for each in wrong)
    _, wrong = _tried(lambda: _sound(*(" ".join(each[:4]) for each in shown_measures(work.measures, reader))))
    yield from (("measures shown", each) for each in wrong)
    if words:
        _, wrong = _tried(lambda: check_claims(work, figures or ()))
        yield from (("claims", each) for each in wrong)
        _, wrong = _tried(lambda: filled_technique(work.technique, figures or (), reader))
        yield from (("filled", each) for each in wrong)


def _tried(act: Callable[[], Any]) -> tuple[Any, list[str]]:
    """Return what an act returns, or what it raised."""
    try:
        return act(), []
    except Exception as problem:  # noqa: BLE001 - whatever it is, it is what we look for
        last = problem.__traceback__
        while last is not None and last.tb_next is not None:
            last = last.tb_next
        place = f"{Path(last.tb_frame.f_code.co_filename).name}:{last.tb_lineno}" if last else ""
        return None, [f"{type(problem).__name__}: {problem} at {place}"]


def _sound(*texts: str) -> None:
    """Refuse a text that prints what is no number."""
    for text in texts:
        if NO_NUMBER.search(text):
            raise AssertionError(f"printed: {text}")


def _finite(*values: Any) -> None:
    """Refuse a number that is none."""
    for value in values:
        if isinstance(value, float) and not math.isfinite(value):
            raise AssertionError(f"no number: {value}")


def _of_figure(figure: Figure, reader: Reader) -> None:
    _finite(figure.value)
    _sound(shown(figure, reader), reader.tell(figure.label), *map(reader.worked, figure.working))
    if figure.table:
        for row in figure.table.rows:
            _finite(*row)
            _sound(*(shown_cell(cell, unit, reader) for cell, unit in zip(row, figure.table.units, strict=True)))


def _of_drawings(drawings: Iterable[Drawing], reader: Reader) -> None:
    for drawing in drawings:
        _finite(*extent(drawing.shapes))
        _sound(*words_of(told(drawing, reader)))


def _of_breach(breach: Breach, work: AnyWork, trade: AnyFamily, *, words: bool) -> Iterator[str]:
    """Yield what is wrong with a breach: its words, a mend that cannot be written, or what its mend leads to."""
    yield from _tried(lambda: _sound(*map(AUTHOR.plain, (breach.what, breach.why, breach.mend))))[1]
    keys = keys_of(trade.measures)
    for key, text in OFFERED.findall(AUTHOR.plain(breach.mend)):
        if key in keys:
            wrong = _tried(lambda k=key, t=text: allowed(trade.measures, keys[k], t))[1]  # type: ignore[misc]
            yield from (f"offers `{key}: {text}`: {each}" for each in wrong)
    if breach.edit is None or (breach.edit.section and not words):
        return
    after, wrong = _tried(lambda: mended(work, breach))
    yield from (f"edit {breach.edit}: {each}" for each in wrong)
    if after is not None:
        for rule in trade.rules:
            wrong += _tried(lambda each=rule: list(each(after)))[1]  # type: ignore[misc]
        wrong += _tried(lambda: figures_of(after, trade, TODAY))[1]
        yield from (f"after the edit {breach.edit.key}: {each}" for each in wrong)


def allowed(model: type[Measures], name: str, text: str) -> None:
    """Refuse a text that cannot stand after a measure's key."""
    value, _ = read_measure(model, name, text)
    model.__pydantic_validator__.validate_assignment(model.model_construct(), name, value)


def tried(base: AnyWork, each: Iterable[Settings], *, words: bool = False) -> Iterator[str]:
    """Yield what goes wrong where a technique is set so, each kind of fault once, the crews taking turns."""
    seen: set[tuple[str, str]] = set()
    for settings, crew in zip(each, cycle(CREWS)):
        for where, what in troubles(set_to(base, settings, crew), words=words):
            kind = (where, re.sub(r"[-\d.]+", "#", what)[:120])
            if kind not in seen:
                seen.add(kind)
                yield f"{where}: {what}\n  {base.technique.id}, crew {CREWS.index(crew)}, {dict(settings)}"


def main() -> int:
    """Try what was asked for, print what goes wrong and how much was tried, and return 1 where something did."""
    ask = argparse.ArgumentParser(prog="python -m tests.bounds", description=(__doc__ or "").partition("\n")[0])
    ask.add_argument("family", nargs="*", default=[each.name for each in FAMILIES])
    ask.add_argument("--all", action="store_true", help="each choice of each measure with each of each other: hours")
    ask.add_argument("--thrown", type=int, default=0, metavar="N", help="several measures at once, N times")
    ask.add_argument("--bases", type=int, default=1, metavar="N", help="from so many techniques of each family")
    said = ask.parse_args()
    wrong = 0
    for name in said.family:
        trade = next(each for each in FAMILIES if each.name == name)
        ways = [alone(trade), covering(trade), thrown(trade, said.thrown), together(trade) if said.all else ()]
        trials = [settings for way in ways for settings in way]
        for base in bases(cases=said.bases > 1)[name][: said.bases]:
            found = list(tried(base, trials))
            wrong += len(found)
            sys.stdout.write("".join(f"{name} {each}\n" for each in found))
            sys.stdout.write(f"{name}: {len(trials)} trials from {base.technique.id}, {len(found)} kinds of fault\n")
            sys.stdout.flush()
    return 1 if wrong else 0


if __name__ == "__main__":
    sys.exit(main())
