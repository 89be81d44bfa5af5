"""The aftercare of every job of a visit as one list: each task once, on its nearest day, amounts added or kept apart.

The same words from two jobs are one task where their days meet. Amounts are added where they are bought or put on
without saying to what; they stay apart, with what each is for, where each planting has its own.
"""

import re
from collections.abc import Iterable, Iterator, Sequence
from datetime import date, timedelta
from math import isclose
from typing import Final, NamedTuple

from howto.compute.aftercare import Asked, asked_of, clashes, task_findings, window_of
from howto.findings import Finding
from howto.languages import language_of
from howto.languages.form import folded
from howto.languages.reader import Reader, System
from howto.model.prose import Prose
from howto.model.ready import ReadyVisit
from howto.model.task import Plan, Task
from howto.model.visit import Visit
from howto.quantities import Dimension
from howto.quantities.amounts import Held, Scaled, Typed, Word, dimension_of, in_unit, phrase
from howto.quantities.printing import rounded
from howto.quantities.units import convert, unit_named

ADDED: Final[dict[Dimension | None, str]] = {unit_named(unit).dimension: unit for unit in ("L", "kg")}


class _Line(NamedTuple):
    """A line of aftercare, its words with a slot for each kind of amount, and the amounts."""

    asked: Asked
    words: str
    amounts: tuple[Held, ...]

    @property
    def each(self) -> bool:
        """Whether its amounts are for each of several things."""
        return re.search(language_of(self.asked.language).orders.each, folded(self.words)) is not None

    @property
    def bought(self) -> bool:
        """Whether it asks to buy something."""
        return re.match(language_of(self.asked.language).orders.bought, folded(self.words)) is not None


def plan_of(ready: ReadyVisit) -> tuple[Plan, tuple[Finding, ...]]:
    """Return what the client is to do and not to do, and where two jobs contradict each other.

    Of two lines that contradict each other neither is in the plan.
    """
    visit, asked = ready.visit, asked_of(ready)
    pairs = clashes(visit, asked)
    kept = [each for each in asked if not any(each in pair for pair in pairs)]
    asking = [each for each in kept if not each.care.never]
    tasks = sorted(_tasks(asking, ready), key=lambda task: _order(task, visit))
    plan = Plan(
        first=tuple(task for task in tasks if _comes_first(task, visit)),
        later=tuple(task for task in tasks if not _comes_first(task, visit)),
        never=tuple(_bans([each for each in kept if each.care.never], visit, ready.reader)),
    )
    return plan, tuple(task_findings(visit, pairs))


def _order(task: Task, visit: Visit) -> tuple[bool, date]:
    """Return what tasks are sorted by: a season that has begun counts by its last day."""
    begun = task.kind in {"season", "month"} and task.start is not None and task.start <= visit.date
    return (False, task.end) if begun and task.end else task.order


def _comes_first(task: Task, visit: Visit) -> bool:
    """Tell whether a task falls before the next visit, or holds from now on."""
    if visit.next_visit is None or task.kind == "always":
        return True
    return task.day is not None and task.day < visit.next_visit


def _tasks(asked: Sequence[Asked], ready: ReadyVisit) -> Iterator[Task]:
    """Yield the tasks, the same words together."""
    for lines in _alike(asked):
        clusters = list(_clusters(lines, ready))
        for cluster in clusters:
            yield from _merged(cluster, ready, alone=len(clusters) == 1)


def _line(asked: Asked) -> _Line:
    """Return a line with a slot for each amount, in small letters, without its full stop."""
    parts = [part for run in asked.care.text for part in phrase(run.text).parts]
    words = "".join(_slot(part) if isinstance(part, Held) else part for part in parts)
    amounts = tuple(part for part in parts if isinstance(part, Held) and not isinstance(part, Word))
    return _Line(asked, " ".join(words.casefold().split()).rstrip("."), amounts)


def _slot(held: Held) -> str:
    """Return what stands for an amount while words are compared: the kind of it; a word stands for itself."""
    if isinstance(held, Word):
        return held.text
    dimension = dimension_of(held)
    return f"#{held.kind}" if dimension is None else f"#{'.'.join(map(str, dimension))}"


def _alike(asked: Iterable[Asked]) -> Iterable[list[_Line]]:
    """Return the lines of the same words together, in the order of the first of them."""
    groups: dict[str, list[_Line]] = {}
    for line in map(_line, asked):
        groups.setdefault(line.words, []).append(line)
    return groups.values()


def _clusters(lines: Sequence[_Line], ready: ReadyVisit) -> Iterator[list[_Line]]:
    """Yield the lines that are one occasion: from different jobs, on days that meet, and that may be joined."""
    left = list(lines)
    while left:
        cluster = [left.pop(0)]
        for line in tuple(left):
            if all(_joins(line, each, ready) for each in cluster):
                cluster.append(line)
                left.remove(line)
        yield cluster


def _joins(one: _Line, two: _Line, ready: ReadyVisit) -> bool:
    """Tell whether two lines of the same words are one task."""
    visit = ready.visit
    here, there = (window_of(each.asked, visit.date) for each in (one, two))
    meet = here == there if here is None or there is None else here.meets(there)
    if one.asked.job_at == two.asked.job_at or not meet:
        return False
    apart = _apart(one.asked, two.asked)
    rhythm = [(each.asked.care.when.days, each.asked.end(visit.date)) for each in (one, two)]
    repeats = [each.asked.care.when.kind == "every" for each in (one, two)]
    if any(repeats) and not (all(repeats) and (rhythm[0] == rhythm[1] or not apart)):
        return False
    if not one.amounts:
        return True
    if one.each or not _can_add(one):
        return _same(one, two, ready.reader) and (one.each or not apart)
    return one.bought or not apart


def _apart(one: Asked, two: Asked) -> bool:
    """Tell whether two lines are about things that the lead named differently."""
    return bool(one.what and two.what) and one.what.casefold() != two.what.casefold()


def _can_add(line: _Line) -> bool:
    """Tell whether every amount is a volume or a mass."""
    return all(dimension_of(amount) in ADDED for amount in line.amounts)


def _same(one: _Line, two: _Line, reader: Reader) -> bool:
    """Tell whether the amounts of two lines, of the same kinds, are the same, or told alike."""
    pairs = zip(one.amounts, two.amounts, strict=True)
    return all(
        isclose(here.amount, there.amount)
        if isinstance(here, Typed) and isinstance(there, Typed)
        else reader.filled(str(here)) == reader.filled(str(there))
        for here, there in pairs
    )


def _merged(lines: Sequence[_Line], ready: ReadyVisit, *, alone: bool) -> Iterator[Task]:
    """Yield one task for lines that are one, or two where a close rhythm gives way to a wide one.

    Where the same words stand in another task too (not `alone`), each names its job.
    """
    visit = ready.visit
    ordered = sorted(lines, key=lambda line: _task(line.asked, visit).order)
    what = _whats(lines, visit, alone=alone)
    if ordered[0].asked.care.when.kind == "every":
        yield from (task.model_copy(update={"what": what}) for task in _rounds(ordered, visit))
        return
    first = _task(ordered[0].asked, visit)
    summed = _summed(lines, ready.crew.units)
    yield first.model_copy(update={**summed, "what": what, "key": _key(lines, visit)})


def _rounds(lines: Sequence[_Line], visit: Visit) -> Iterator[Task]:
    """Yield what comes round: the closest rhythm until it ends, then each wider one that lasts longer."""
    end = None
    for number, line in enumerate(sorted(lines, key=lambda line: (line.asked.care.when.days, line.asked.job_at))):
        task = _task(line.asked, visit)
        mates = [each for each in lines if each.asked.care.when.days == task.days]
        if number and (line is not mates[0] or end is None or (task.end is not None and task.end <= end)):
            continue
        ends = [each.asked.end(visit.date) for each in mates]
        last = None if None in ends else max(day for day in ends if day is not None)
        start = end + timedelta(days=task.days) if end else task.start
        if last is not None and start is not None and start > last:
            continue
        yield task.model_copy(update={"start": start, "end": last, "key": _key(mates, visit)})
        end = last


def _task(asked: Asked, visit: Visit) -> Task:
    """Return the task of one line."""
    when = asked.care.when
    return Task(
        sentence=asked.care.text,
        do=not asked.care.never,
        kind=when.kind,
        start=max(asked.due.start, visit.date) if asked.due.start else None,
        end=asked.end(visit.date),
        days=when.days,
        asked=when.text,
    )


def _whats(lines: Iterable[_Line], visit: Visit, *, alone: bool = True) -> tuple[str, ...]:
    """Return what the lines are for, each once; nothing where the visit did one thing, or where one is not named."""
    if len(visit.jobs) < 2:
        return ()
    ordered = sorted((line.asked for line in lines), key=lambda asked: asked.job_at)
    named = [asked.what or ("" if alone else asked.job.technique.title) for asked in ordered]
    return tuple(dict.fromkeys(named)) if all(named) else ()


def _key(lines: Sequence[_Line], visit: Visit) -> str:
    """Return the name of a task over rebuilds: its technique, which job of it, and the words as first written."""
    first = min(lines, key=lambda line: (line.asked.job_at, line.asked.care_at)).asked
    id_ = first.job.technique.id
    number = sum(job.technique.id == id_ for job in visit.jobs[: first.job_at]) + 1
    return f"{id_}/{number}/{' '.join(first.written.casefold().split())}"


def _summed(lines: Sequence[_Line], system: System) -> dict[str, object]:
    """Return the sentence with the amounts of all lines added, and what was added; nothing where that is not meant.

    What is added are the numbers that a reader sees, so that the sum holds on paper too.
    """
    first = lines[0]
    if len(lines) < 2 or not first.amounts or not _can_add(first) or first.each:
        return {}
    sums, added = [], []
    for amounts in zip(*(line.amounts for line in lines), strict=True):
        unit = ADDED[dimension_of(amounts[0])]
        shown = [_as_seen(each, unit, system) for each in amounts]
        sums.append(Scaled(sum(shown), unit))
        added.append(" + ".join(str(Scaled(each, unit)) for each in shown))
    return {"sentence": _with_amounts(first.asked.care.text, sums), "added": "; ".join(added)}


def _as_seen(held: Held, unit: str, system: System) -> float:
    """Return an amount in a unit, rounded as its reader is shown it."""
    digits = held.digits if isinstance(held, Scaled) else None
    number, shown_in = rounded(in_unit(held, unit), unit, system, digits)
    return convert(number, shown_in, unit)


def _with_amounts(sentence: Prose, amounts: Sequence[Held]) -> Prose:
    """Return a sentence with other amounts in the places of its own."""
    left = iter(amounts)
    return tuple(
        run.model_copy(
            update={
                "text": "".join(
                    str(next(left)) if isinstance(part, Held) and not isinstance(part, Word) else str(part)
                    for part in phrase(run.text).parts
                )
            }
        )
        for run in sentence
    )


def _bans(asked: Sequence[Asked], visit: Visit, reader: Reader) -> Iterator[Task]:
    """Yield what not to do, the same words and amounts once, with what they are about."""
    for alike in _alike(asked):
        left = alike
        while left:
            lines = [line for line in left if _same(line, left[0], reader)]
            left = [line for line in left if line not in lines]
            yield _task(lines[0].asked, visit).model_copy(update={"what": _whats(lines, visit)})
