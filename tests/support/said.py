"""What the project says of its own accord: every template that a page or a picture may print, found by running all."""

from collections.abc import Iterator
from functools import cache

from howto.compute.ready import ready
from howto.families import FAMILIES, family
from howto.jobs.check import examine
from howto.languages.reader import Reader
from howto.layout.pages.page_words import card_texts, leaflet_texts
from howto.quantities.amounts import Words
from tests.support.cases import TODAY, all_cases
from tests.support.source import ROOT

UNTOLD = "zxx"  # the tag of no language: whoever reads it is told nothing in their own


def templates() -> frozenset[str]:
    """Return the key of every template that has words in it."""
    return missing(UNTOLD)


@cache
def missing(language: str) -> frozenset[str]:
    """Return the keys of the templates that a language has no words for."""
    reader = Reader(language)
    return frozenset(key for text in _texts() for key in reader.gaps(text))


def share(language: str) -> float:
    """Return what part of all templates a language has words for."""
    return 1 - len(missing(language)) / len(templates())


@cache
def _texts() -> frozenset[Words]:
    """Return what the demo shelf, its leaflets and every case say, and the tags of each trade."""
    return frozenset(_said())


def _said() -> Iterator[Words]:
    for trade in FAMILIES:
        yield from trade.tags
    shelf = examine(ROOT / "techniques", TODAY)
    for each in shelf.ready.values():
        yield from card_texts(each)
    for visit in shelf.visits.values():
        yield from leaflet_texts(visit)
    for case in all_cases():
        work = case.checked.work
        own = work and family(work.technique.family)
        if work and own:
            yield from card_texts(ready(work, own, TODAY))
