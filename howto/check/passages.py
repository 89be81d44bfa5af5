"""The written words of a technique, one after the other, each with the field it stands in."""

from collections.abc import Iterator
from typing import NamedTuple

from howto.model.prose import Prose, plain, prose
from howto.model.technique import AnyTechnique, Step


class Written(NamedTuple):
    """A passage of prose; `filled` tells whether `{words}` are replaced in it."""

    field: str
    words: Prose
    filled: bool = True

    @property
    def text(self) -> str:
        """The words without their style."""
        return plain(self.words)


def written(technique: AnyTechnique) -> Iterator[Written]:
    """Yield every passage of a technique in the order of its file."""
    yield Written("title", prose(technique.title), filled=False)
    for at, paragraph in enumerate(technique.intro):
        yield Written(f"intro[{at}]", paragraph)
    for name, kits in (("tools", technique.tools), ("materials", technique.materials)):
        for at, kit in enumerate(kits):
            yield Written(f"{name}[{at}]", prose(kit.name), filled=False)
            yield Written(f"{name}[{at}]", kit.note)
    for at, step in enumerate(technique.steps):
        yield from _of_step(f"steps[{at}]", step)
    for at, caution in enumerate(technique.cautions):
        yield Written(f"cautions[{at}]", prose(caution.title), filled=False)
        yield Written(f"cautions[{at}]", caution.text)
    for at, item in enumerate(technique.finish):
        yield Written(f"finish[{at}]", item)
    for at, care in enumerate(technique.aftercare):
        yield Written(f"aftercare[{at}]", care.text)


def _of_step(field: str, step: Step) -> Iterator[Written]:
    """Yield the passages of one step."""
    yield Written(field, prose(step.title))
    yield Written(field, step.text)
    notes = (("key_points", step.key_points), ("reasons", step.reasons), ("checks", step.checks))
    for name, lines in notes:
        for at, line in enumerate(lines):
            yield Written(f"{field}.{name}[{at}]", line)
