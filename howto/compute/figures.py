"""The family's figures for one technique, in printing order."""

from datetime import date

from howto.model.family import AnyFamily
from howto.model.figure import Figure
from howto.model.work import AnyWork


def figures_of(work: AnyWork, family: AnyFamily, today: date) -> tuple[Figure, ...]:
    """Return the figures of a technique whose measures have been checked; `today` is the day of the work.

    ValueError if two figures share a name, since `{words}` could then mean either: that is a bug in a family.
    """
    figures = tuple(family.figures(work, today))
    names = [figure.name for figure in figures]
    if twice := sorted({name for name in names if names.count(name) > 1}):
        raise ValueError(f"{family.name}: figures share a name: {', '.join(twice)}")
    return figures
