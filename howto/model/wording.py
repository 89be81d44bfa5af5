"""What a technique says, as plain words, for whoever looks for one in it."""

from collections.abc import Iterable

from howto.model.prose import plain
from howto.model.technique import Hazard, Kit, Step
from howto.model.work import AnyWork


def words_of_kit(kits: Iterable[Kit]) -> str:
    """Return the names and notes of tools or materials."""
    return " ".join(f"{kit.name} {plain(kit.note)}" for kit in kits)


def words_of_steps(steps: Iterable[Step]) -> str:
    """Return the titles of steps, what to do, and every key point, reason and check."""
    parts: list[str] = []
    for step in steps:
        parts += [step.title, plain(step.text), *map(plain, (*step.key_points, *step.reasons, *step.checks))]
    return " ".join(parts)


def words_of_cautions(cautions: Iterable[Hazard]) -> str:
    """Return the titles and texts of cautions, without what to wear: soft gloves are no soft tie."""
    return " ".join(f"{hazard.title} {plain(hazard.text)}" for hazard in cautions)


def says(work: AnyWork, *words: str) -> bool:
    """Tell whether any of the words, in small letters, stands anywhere from the tools to the aftercare."""
    technique = work.technique
    parts = (
        words_of_kit((*technique.tools, *technique.materials)),
        words_of_steps(technique.steps),
        words_of_cautions(technique.cautions),
        *map(plain, technique.finish),
        *(f"{care.when.text} {plain(care.text)}" for care in technique.aftercare),
    )
    text = " ".join(parts).casefold()
    return any(word in text for word in words)
