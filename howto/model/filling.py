"""What `{words}` stand for: each measure and figure by its name, as its reader sees it."""

from collections.abc import Mapping, Sequence

from howto.languages.reader import Reader
from howto.model.figure import Figure
from howto.model.measures import Measures
from howto.model.prose import BRACED, Prose, compared
from howto.model.shown import shown, shown_measures

Meanings = Mapping[str, str]  # what stands between the braces, as it is compared, and what it comes to


def values(measures: Measures, figures: Sequence[Figure], reader: Reader) -> dict[str, str]:
    """Return what each `{words}` stands for: figures by name, measures by the author's key and over them."""
    found = {compared(figure.name): shown(figure, reader) for figure in figures}
    for measure in shown_measures(measures, reader):
        found[compared(measure.key)] = measure.value
        if measure.tolerance:
            found[compared(f"{measure.key} tolerance")] = measure.tolerance
    return found


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
    return tuple(
        run.model_copy(update={"text": BRACED.sub(lambda found: known.get(compared(found[1]), found[0]), run.text)})
        for run in words
    )
