"""Replaces `{words}` in prose by the measure or figure they name, in the crew's units and language."""

from collections.abc import Sequence

from howto.languages.reader import Reader
from howto.model.figure import Figure
from howto.model.filling import filled_with, values
from howto.model.passages import retold
from howto.model.technique import AnyTechnique


def filled_technique(technique: AnyTechnique, figures: Sequence[Figure], reader: Reader) -> AnyTechnique:
    """Return the technique with every known `{words}` in it replaced, wherever a sentence may stand."""
    known = values(technique.measures, figures, reader)
    return retold(technique, lambda _, words: filled_with(words, known))
