"""The aftercare of every job of a visit as one list: each task once, on its nearest day, amounts added or kept apart.

The same words from two jobs are one task where their days meet. Amounts are added where they are bought or put on
without saying to what; they stay apart, with what each is for, where each planting has its own.
"""

import re
from collections.abc import Iterable, Iterator, Sequence
from datetime import date, timedelta
from typing import Final, NamedTuple

from howto.compute.aftercare import Asked, asked_of, clashes, task_findings, window_of
from howto.findings import Finding
from howto.languages import language_of
from howto.model.prose import Prose, plain, prose
from howto.model.ready import ReadyVisit
from howto.model.task import Ban, Plan, Task
from howto.model.visit import Visit
from howto.quantities import Quantity, find_all, parse, show

ADDED: Final = tuple((unit, parse(f"1 {unit}").dimension) for unit in ("L", "kg"))
BOUGHT: Final = re.compile(r"(?:please )?(?:order|buy|get|fetch|keep|have|put by)\b", re.IGNORECASE)
EACH: Final = re.compile(r"\b(?:each|every|per|apiece|a (?:plant|tree|pot|metre|meter|week|day))\b", re.IGNORECASE)


class _Line(NamedTuple):
    """A line with its amounts taken out, so that the same words are told as the same."""

    asked: Asked
    words: str
    amounts: tuple[tuple[int, int, Quantity], ...]


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
        never=tuple(_bans([each for each in kept if each.care.never], visit)),
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
    groups: dict[str, list[_Line]] = {}
    for each in asked:
        line = _line(each)
        groups.setdefault(line.words, []).append(line)
    for lines in groups.values():
        clusters = list(_clusters(lines, ready.visit))
        for cluster in clusters:
            yield from _merged(cluster, ready, alone=len(clusters) == 1)


def _line(asked: Asked) -> _Line:
    """Return a line with `#` for each amount, in small letters, without its full stop."""
    amounts = tuple(find_all(asked.text))
    words, at = [], 0
    for start, end, _ in amounts:
        words += [asked.text[at:start], "#"]
        at = end
    text = "".join((*words, asked.text[at:]))
    return _Line(asked, " ".join(text.casefold().split()).rstrip("."), amounts)


def _clusters(lines: Sequence[_Line], visit: Visit) -> Iterator[list[_Line]]:
    """Yield the lines that are one occasion: from different jobs, on days that meet, and that may be joined."""
    left = list(lines)
    while left:
        cluster = [left.pop(0)]
        for line in tuple(left):
            if all(_joins(line, each, visit) for each in cluster):
                cluster.append(line)
                left.remove(line)
        yield cluster


def _joins(one: _Line, two: _Line, visit: Visit) -> bool:
    """Tell whether two lines of the same words are one task."""
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
    same = [quantity.written for *_, quantity in one.amounts] == [quantity.written for *_, quantity in two.amounts]
    if EACH.search(one.asked.text) or not _can_add(one):
        return same and not (apart and not EACH.search(one.asked.text))
    return bool(BOUGHT.match(one.asked.text)) or not apart


def _apart(one: Asked, two: Asked) -> bool:
    """Tell whether two lines are about things that the lead named differently."""
    return bool(one.what and two.what) and one.what.casefold() != two.what.casefold()


def _can_add(line: _Line) -> bool:
    """Tell whether every amount is a volume or a mass."""
    return all(any(quantity.dimension == kind for _, kind in ADDED) for *_, quantity in line.amounts)


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
    text, note = _summed(lines, first.text, ready)
    yield first.model_copy(update={"text": text, "note": note, "what": what, "key": _key(lines, visit)})


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
        text=asked.care.text,
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


def _summed(lines: Sequence[_Line], text: Prose, ready: ReadyVisit) -> tuple[Prose, str]:
    """Return the words with the amounts of all lines added, and what was added; as they stand where nothing was."""
    first = lines[0]
    adds = len(lines) > 1 and first.amounts and _can_add(first) and not EACH.search(first.asked.text)
    if not adds:
        return text, ""
    system = ready.crew.units
    words, at, parts = [], 0, []
    for number, (start, end, _) in enumerate(first.amounts):
        each = [line.amounts[number][2] for line in lines]
        unit = next(unit for unit, kind in ADDED if each[0].dimension == kind)
        words += [first.asked.text[at:start], show(sum(quantity.to(unit) for quantity in each), unit, system)]
        parts.append(" + ".join(show(quantity.to(unit), unit, system) for quantity in each))
        at = end
    return prose("".join((*words, first.asked.text[at:]))), language_of(ready.visit.language).labels["added"].format(
        sum="; ".join(parts)
    )


def _bans(asked: Sequence[Asked], visit: Visit) -> Iterator[Ban]:
    """Yield what not to do, the same words once, with what they are about."""
    groups: dict[str, list[_Line]] = {}
    for each in asked:
        groups.setdefault(" ".join(plain(each.care.text).casefold().split()).rstrip("."), []).append(_line(each))
    for lines in groups.values():
        yield Ban(text=lines[0].asked.care.text, what=_whats(lines, visit))
