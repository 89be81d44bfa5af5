"""Replaces `{words}` in prose by the measure or figure they name, in the crew's units and language."""

from collections.abc import Mapping, Sequence
from typing import Any, Final, TypeVar

from howto.languages.reader import Reader
from howto.model.figure import Figure
from howto.model.measures import Measures
from howto.model.prose import BRACED, Prose, compared
from howto.model.shown import shown, shown_measures
from howto.model.technique import AnyTechnique, Care, Hazard, Kit, Step
from howto.model.value import Value

V = TypeVar("V", bound=Value)

_TOLERANCE: Final = "tolerance"


def values(measures: Measures, figures: Sequence[Figure], reader: Reader) -> dict[str, str]:
    """Return what each `{words}` stands for: figures by name, measures by the author's key and over them."""
    found = {compared(figure.name): shown(figure, reader) for figure in figures}
    for measure in shown_measures(measures, reader):
        found[compared(measure.key)] = measure.value
        if measure.tolerance:
            found[compared(f"{measure.key} {_TOLERANCE}")] = measure.tolerance
    return found


def filled_technique(technique: AnyTechnique, figures: Sequence[Figure], reader: Reader) -> AnyTechnique:
    """Return the technique with every known `{words}` in its prose replaced."""
    known = values(technique.measures, figures, reader)
    return technique.model_copy(
        update={
            "intro": tuple(_filled(paragraph, known) for paragraph in technique.intro),
            "tools": tuple(_kit(kit, known) for kit in technique.tools),
            "materials": tuple(_kit(kit, known) for kit in technique.materials),
            "steps": tuple(_step(step, known) for step in technique.steps),
            "cautions": tuple(_hazard(hazard, known) for hazard in technique.cautions),
            "finish": tuple(_filled(item, known) for item in technique.finish),
            "aftercare": tuple(_care(care, known) for care in technique.aftercare),
        }
    )


def _kit(kit: Kit, known: Mapping[str, str]) -> Kit:
    return _with(kit, note=_filled(kit.note, known))


def _hazard(hazard: Hazard, known: Mapping[str, str]) -> Hazard:
    return _with(hazard, text=_filled(hazard.text, known))


def _care(care: Care, known: Mapping[str, str]) -> Care:
    return _with(care, text=_filled(care.text, known))


def _step(step: Step, known: Mapping[str, str]) -> Step:
    return _with(
        step,
        title=_text(step.title, known),
        text=_filled(step.text, known),
        key_points=tuple(_filled(point, known) for point in step.key_points),
        reasons=tuple(_filled(reason, known) for reason in step.reasons),
        checks=tuple(_filled(check, known) for check in step.checks),
    )


def _with(value: V, **changes: Any) -> V:
    """Return the value with some fields changed."""
    return value.model_copy(update=changes)


def _filled(prose: Prose, known: Mapping[str, str]) -> Prose:
    return tuple(_with(run, text=_text(run.text, known)) for run in prose)


def _text(text: str, known: Mapping[str, str]) -> str:
    return BRACED.sub(lambda match: known.get(compared(match[1]), match[0]), text)
