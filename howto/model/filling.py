"""What `{words}` stand for: each measure and figure by its name."""

from collections.abc import Mapping, Sequence

from howto.languages.reader import Reader
from howto.model.figure import Figure
from howto.model.measures import Measures
from howto.model.prose import BRACED, Prose, compared
from howto.model.shown import said_cell, said_measure
from howto.model.technique import Care
from howto.quantities import field_unit
from howto.quantities.amounts import Spread, Words

Meanings = Mapping[str, Words]  # what stands between the braces, as it is compared, and what it comes to


def meanings(measures: Measures, figures: Sequence[Figure]) -> dict[str, Words]:
    """Return what each `{words}` stands for: figures by name, measures by the author's key and over them."""
    found = {compared(figure.name): said_cell(figure.value, figure.unit, figure.digits) for figure in figures}
    for name, value in measures.given().items():
        key, unit = field_unit(name)
        found[compared(key)] = said_measure(value, unit or "")
        if (spread := measures.tolerance(name)) is not None:
            found[compared(f"{key} tolerance")] = str(Spread(spread, unit or ""))
    return found


def values(measures: Measures, figures: Sequence[Figure], reader: Reader) -> dict[str, str]:
    """Return what each `{words}` stands for, as its reader sees it."""
    return {name: reader.filled(words) for name, words in meanings(measures, figures).items()}


def values_by_place(own: Sequence[Meanings]) -> dict[str, Meanings]:
    """Return what `{words}` stand for in what each job was done to, by its field; under "" what all jobs agree on.

    `own` are what they stand for in each job, in order.
    """
    told: dict[str, set[str]] = {}
    for each in own:
        for name, value in each.items():
            told.setdefault(name, set()).add(value)
    agreed = {name: found.pop() for name, found in told.items() if len(found) == 1}
    return {"": agreed, **{f"jobs[{at}].what": each for at, each in enumerate(own)}}


def filled_with(words: Prose, known: Meanings) -> Prose:
    """Return the prose with every known `{words}` replaced; unknown ones stay as they are."""
    return tuple(run.model_copy(update={"text": _filled(run.text, known)}) for run in words)


def filled_care(care: Care, known: Meanings) -> Care:
    """Return a care task that holds its amounts as values: what its `{words}` stand for, and what its author typed."""
    runs, at = [], 0
    for run in care.text:
        end = at + len(run.text)
        parts, last = [], at
        for typed in care.amounts:
            if typed.start < end and typed.end > at:  # one that began in the run before is held there whole
                parts += [_filled(run.text[last - at : max(typed.start - at, 0)], known)]
                parts += [str(typed.amount)] if typed.start >= at else []
                last = min(typed.end, end)
        runs.append(run.model_copy(update={"text": "".join((*parts, _filled(run.text[last - at :], known)))}))
        at = end
    return care.model_copy(update={"text": tuple(runs), "amounts": ()})


def printed(words: Prose, reader: Reader) -> Prose:
    """Return the prose with the amounts it holds as its reader sees them."""
    return tuple(run.model_copy(update={"text": reader.filled(run.text)}) for run in words)


def _filled(text: str, known: Meanings) -> str:
    return BRACED.sub(lambda found: known.get(compared(found[1]), found[0]), text)
