"""Replaces `{words}` in prose by the measure or figure they name, in the crew's units and language."""

from collections.abc import Sequence

from howto.model.figure import Figure
from howto.model.filling import filled_with, values, values_by_place
from howto.model.passages import retold, retold_visit
from howto.model.prose import Prose
from howto.model.shown import shown, shown_cell, shown_day
from howto.model.technique import AnyTechnique
from howto.model.visit import Job, Visit

__all__ = ["filled", "filled_technique", "filled_visit", "shown", "shown_cell", "shown_day", "values"]


def filled(prose: Prose, technique: AnyTechnique, figures: Sequence[Figure]) -> Prose:
    """Return the prose with every known `{words}` replaced; unknown ones stay for the check stage to name."""
    return filled_with(prose, values(technique, figures))


def filled_technique(technique: AnyTechnique, figures: Sequence[Figure]) -> AnyTechnique:
    """Return the technique with every known `{words}` in it replaced, wherever a sentence may stand."""
    known = values(technique, figures)
    return retold(technique, lambda _, words: filled_with(words, known))


def filled_visit(visit: Visit, figures_by_job: Sequence[Sequence[Figure]]) -> Visit:
    """Return the visit with each job filled from its own measures and figures, and the rest from what all agree on."""
    known = values_by_place(visit, figures_by_job)
    told = retold_visit(visit, lambda field, words: filled_with(words, known.get(field, known[""])))
    jobs = tuple(_job(job, figures) for job, figures in zip(told.jobs, figures_by_job, strict=True))
    return told.model_copy(update={"jobs": jobs})


def _job(job: Job, figures: Sequence[Figure]) -> Job:
    return job.model_copy(update={"technique": filled_technique(job.technique, figures)})
