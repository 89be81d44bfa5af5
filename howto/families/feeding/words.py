"""What a technique says in words, and numbers written so that a mend keeps its limit."""

from math import floor, log10

from howto.families.feeding.plan import T
from howto.model.prose import plain
from howto.quantities import round_down
from howto.quantities import show_number as num

DIGITS = 4


def said(technique: T) -> str:
    """Return everything tools, materials, steps, cautions, finish and aftercare say, in small letters."""
    parts = [f"{kit.name} {plain(kit.note)}" for kit in (*technique.tools, *technique.materials)]
    for step in technique.steps:
        parts += [step.title, plain(step.text), *map(plain, (*step.key_points, *step.reasons, *step.checks))]
    parts += [f"{hazard.title} {plain(hazard.text)}" for hazard in technique.cautions]
    parts += [plain(each) for each in technique.finish]
    parts += [f"{care.when.text} {plain(care.text)}" for care in technique.aftercare]
    return " ".join(parts).casefold()


def says(technique: T, *words: str) -> bool:
    """Tell whether any of the words stands anywhere in the technique."""
    text = said(technique)
    return any(word in text for word in words)


def at_most(value: float) -> str:
    """Return a number written with four figures and never above `value`."""
    step = 10.0 ** (floor(log10(value)) - DIGITS + 1)
    return num(round_down(value, step), DIGITS + 1)
