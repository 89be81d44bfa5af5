"""Letters a frame cannot set: those nobody sees are dropped or replaced, the others are named."""

from collections.abc import Iterator
from typing import Any, Final, TypeVar

from howto.findings import Finding
from howto.fonts import missing
from howto.layout import fit_rules
from howto.layout.frames.shared import finding
from howto.model.prose import Prose, plain
from howto.model.technique import AnyTechnique, Picture
from howto.model.value import Value

V = TypeVar("V")

# Unicode 15: joiners, variation selectors and soft hyphens show nothing; look-alikes show the same.
UNSEEN: Final = dict.fromkeys((0xAD, 0x200B, 0x200C, 0x200D, 0x2060, 0xFE0E, 0xFE0F, 0xFEFF))
ALIKE: Final = {0x2010: "-", 0x2011: "-", 0x2009: "\u202f", 0x2002: " ", 0x2003: " "}
TABLE: Final = UNSEEN | ALIKE
TOLD: Final = ("title", "intro", "tools", "materials", "steps", "cautions", "finish", "aftercare")


def spelled(technique: AnyTechnique) -> AnyTechnique:
    """Return the technique with letters that show nothing left out, and look-alikes in the letters the faces have."""
    return technique.model_copy(update={name: _spelled(getattr(technique, name)) for name in TOLD})


def _spelled(value: V) -> V:
    """Return a value with every text in it spelled so; the names of files stay as they are."""
    found: Any = value
    if isinstance(value, str):
        found = value.translate(TABLE)
    elif isinstance(value, tuple):
        found = tuple(_spelled(each) for each in value)
    elif isinstance(value, Value):
        kept = {"file"} if isinstance(value, Picture) else set()
        names = [name for name in type(value).model_fields if name not in kept]
        found = value.model_copy(update={name: _spelled(getattr(value, name)) for name in names})
    return found  # type: ignore[no-any-return]


def letter_findings(technique: AnyTechnique) -> Iterator[Finding]:
    """Yield a finding for each part of the technique with letters that none of the faces has."""
    for field, text in _texts(technique):
        gaps = missing(text)
        if gaps:
            named = ", ".join(f"“{letter}”" for letter in gaps)
            yield finding(
                fit_rules.LETTER,
                technique,
                field,
                what=f"{named} cannot be printed",
                why="the typefaces of cards and frames have no such letter, and an empty box would stand in its place",
                mend=f"take {named} out, or say it in words",
            )


def _texts(technique: AnyTechnique) -> Iterator[tuple[str, str]]:
    """Yield each part of a technique that frames show, with its field."""
    yield "title", technique.title
    for name in ("tools", "materials"):
        yield name, " ".join(f"{each.name} {plain(each.note)}" for each in getattr(technique, name))
    for at, step in enumerate(technique.steps):
        marks = (mark.text for picture in step.pictures for mark in picture.marks)
        parts = (step.text, *step.key_points, *step.reasons, *step.checks)
        yield f"steps[{at}]", " ".join((step.title, _joined(parts), *marks))
    for at, hazard in enumerate(technique.cautions):
        yield f"cautions[{at}]", " ".join((hazard.title, plain(hazard.text), *hazard.wear))
    yield "finish", _joined(technique.finish)
    yield "aftercare", " ".join(f"{each.when.text} {plain(each.text)}" for each in technique.aftercare)


def _joined(parts: tuple[Prose, ...]) -> str:
    """Return the plain words of several parts."""
    return " ".join(plain(each) for each in parts)
