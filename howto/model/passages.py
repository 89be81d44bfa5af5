"""Every place of a technique and of a visit where a sentence may stand: one walk to read them and to fill them."""

from collections.abc import Callable
from typing import Any, NamedTuple, TypeVar

from howto.model.prose import Prose, plain, prose
from howto.model.technique import AnyTechnique, Care, Hazard, Kit, Picture, Step
from howto.model.value import Value
from howto.model.visit import Job, Visit

Tell = Callable[[str, Prose], Prose]  # a field and its words → the words to put in their place
V = TypeVar("V", bound=Value)


class Written(NamedTuple):
    """A passage of prose; `filled` tells whether `{words}` are replaced in it."""

    field: str
    words: Prose
    filled: bool = True

    @property
    def text(self) -> str:
        """The words without their style."""
        return plain(self.words)


def written(technique: AnyTechnique) -> tuple[Written, ...]:
    """Return every passage of a technique in the order of its file."""
    return (Written("title", prose(technique.title), filled=False), *_gathered(retold, technique))


def written_on(visit: Visit) -> tuple[Written, ...]:
    """Return every passage of a visit's own."""
    return _gathered(retold_visit, visit)


def _gathered(walk: Callable[[Any, Tell], object], value: Value) -> tuple[Written, ...]:
    """Return the passages that a walk comes by."""
    found: list[Written] = []

    def note(field: str, words: Prose) -> Prose:
        found.append(Written(field, words))
        return words

    walk(value, note)
    return tuple(found)


def retold(technique: AnyTechnique, tell: Tell) -> AnyTechnique:
    """Return a technique with each passage told anew; its title is a name, and stays."""
    return _with(
        technique,
        intro=_each("intro", technique.intro, tell),
        tools=tuple(_kit(f"tools[{at}]", kit, tell) for at, kit in enumerate(technique.tools)),
        materials=tuple(_kit(f"materials[{at}]", kit, tell) for at, kit in enumerate(technique.materials)),
        steps=tuple(_step(f"steps[{at}]", step, tell) for at, step in enumerate(technique.steps)),
        cautions=tuple(_hazard(f"cautions[{at}]", each, tell) for at, each in enumerate(technique.cautions)),
        finish=_each("finish", technique.finish, tell),
        aftercare=tuple(_care(f"aftercare[{at}]", care, tell) for at, care in enumerate(technique.aftercare)),
    )


def retold_visit(visit: Visit, tell: Tell) -> Visit:
    """Return a visit with each passage of its own told anew; its site is a label, and stays."""
    return _with(
        visit,
        jobs=tuple(_job(f"jobs[{at}].what", job, tell) for at, job in enumerate(visit.jobs)),
        words=_each("words", visit.words, tell),
        before=_pictures("before", visit.before, tell),
        after=_pictures("after", visit.after, tell),
    )


def _job(field: str, job: Job, tell: Tell) -> Job:
    return _with(job, what=_text(field, job.what, tell))


def _kit(field: str, kit: Kit, tell: Tell) -> Kit:
    return _with(kit, name=_text(field, kit.name, tell), note=tell(field, kit.note))


def _step(field: str, step: Step, tell: Tell) -> Step:
    return _with(
        step,
        title=_text(field, step.title, tell),
        text=tell(field, step.text),
        key_points=_each(f"{field}.key_points", step.key_points, tell),
        reasons=_each(f"{field}.reasons", step.reasons, tell),
        checks=_each(f"{field}.checks", step.checks, tell),
        pictures=_pictures(f"{field}.pictures", step.pictures, tell),
    )


def _pictures(field: str, pictures: tuple[Picture, ...], tell: Tell) -> tuple[Picture, ...]:
    return tuple(_picture(f"{field}[{at}]", picture, tell) for at, picture in enumerate(pictures))


def _picture(field: str, picture: Picture, tell: Tell) -> Picture:
    marks = (_with(mark, text=_text(f"{field}.marks[{at}]", mark.text, tell)) for at, mark in enumerate(picture.marks))
    alt, credit = (_text(f"{field}.{name}", getattr(picture, name), tell) for name in ("alt", "credit"))
    return _with(picture, marks=tuple(marks), alt=alt, credit=credit)


def _hazard(field: str, hazard: Hazard, tell: Tell) -> Hazard:
    title, text = _text(field, hazard.title, tell), tell(field, hazard.text)
    return _with(hazard, title=title, text=text, wear=tuple(_text(field, each, tell) for each in hazard.wear))


def _care(field: str, care: Care, tell: Tell) -> Care:
    return _with(care, text=tell(field, care.text), amounts=())


def _each(field: str, lines: tuple[Prose, ...], tell: Tell) -> tuple[Prose, ...]:
    return tuple(tell(f"{field}[{at}]", line) for at, line in enumerate(lines))


def _text(field: str, text: str, tell: Tell) -> str:
    return plain(tell(field, prose(text)))


def _with(value: V, **changes: object) -> V:
    """Return the value with some fields changed."""
    return value.model_copy(update=changes)
