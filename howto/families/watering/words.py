"""What a technique says in words, for rules that ask for a caution or a step."""

from howto.families.watering.measures import WateringMeasures
from howto.model.prose import plain
from howto.model.technique import Technique


def said(technique: Technique[WateringMeasures]) -> str:
    """Return everything tools, steps, cautions, finish and aftercare say, in small letters."""
    parts = [f"{kit.name} {plain(kit.note)}" for kit in (*technique.tools, *technique.materials)]
    for step in technique.steps:
        parts += [step.title, plain(step.text), *map(plain, (*step.key_points, *step.reasons, *step.checks))]
    parts += [f"{hazard.title} {plain(hazard.text)}" for hazard in technique.cautions]
    parts += [plain(each) for each in technique.finish]
    parts += [f"{care.when.text} {plain(care.text)}" for care in technique.aftercare]
    return " ".join(parts).casefold()


def says(technique: Technique[WateringMeasures], *words: str) -> bool:
    """Tell whether any of the words stands anywhere in the technique."""
    text = said(technique)
    return any(word in text for word in words)
