"""Which drawing goes with which step: the one that speaks of the same things, or none."""

import re
from collections.abc import Sequence
from typing import Final

from howto.model.prose import plain
from howto.model.technique import Step
from howto.shapes import DimensionLine, Drawing, Label, Level

WORD: Final = re.compile(r"[^\W\d_]{3,}")
AMOUNT: Final = re.compile(r"\d[\d.,]*\s?[^\W\d_]+|\d[\d.,]*\s?[%°]")
ENDINGS: Final = ("ings", "ing", "ers", "er", "ed", "es", "s", "e")
ENOUGH: Final = 2  # what ties a drawing to a step: a word of its title, an amount, or two words of its text
SHORTEST: Final = 3  # letters that an ending leaves
TITLE_WEIGHT: Final = 3  # a word of a step's title counts as much as three of its text
AMOUNT_WEIGHT: Final = 2  # and so does an amount, which is seldom there by chance
SHOWN_WEIGHT: Final = 1  # what each time a drawing was shown before counts against it
# words that stand in steps of every trade and tell no drawing from another
COMMON: Final = frozenset(
    re.findall(
        r"\w+",
        "about after all and another any are away back before behind both but can come does down each end "
        "every few first for from get goes has have her here his how into its keep last lay leave less let "
        "look made make min more most much must near never new next nor not now off old once one only open "
        "other our out over own past per put right same see set shows side some stay stays still stop take "
        "than that the their them then there these they third this those three time today too top turn two "
        "under until use very was way what when where which while who will with work write you your ",
    )
)


def matched(steps: Sequence[Step | None], drawings: Sequence[Drawing]) -> tuple[int | None, ...]:
    """Return for each step which drawing stands with it, or None where none speaks of what the step does.

    A step given as None has a picture already. A drawing that was shown before gives way to another that says as
    much. Where no step shares a word with any drawing, as where the two are in different languages, the
    drawings stand in the order of the work, which a family keeps.
    """
    about = [_drawing_words(each) for each in drawings]
    said = [None if step is None else [_said(step, words) for words in about] for step in steps]
    if not any(any(scores) for scores in said if scores):
        return tuple(_by_order(at, len(steps), len(drawings)) if step else None for at, step in enumerate(steps))
    shown = [0] * len(drawings)
    found: list[int | None] = []
    for at, scores in enumerate(said):
        order = _by_order(at, len(steps), len(drawings))
        worths = [
            (score - SHOWN_WEIGHT * shown[number], -abs(number - (order or 0)), number)
            for number, score in enumerate(scores or ())
            if score >= ENOUGH
        ]
        best = max(worths)[2] if worths else None
        if best is not None:
            shown[best] += 1
        found.append(best)
    return tuple(found)


def _by_order(at: int, steps: int, drawings: int) -> int | None:
    """Return the drawing that stands as far into the drawings as a step stands into the work; None without any."""
    return min(at * drawings // steps, drawings - 1) if drawings else None


def _said(step: Step, about: frozenset[str]) -> int:
    """Return how much of a step a drawing speaks of."""
    title = _words(step.title) & about
    text = _words(" ".join(map(plain, (step.text, *step.key_points, *step.reasons, *step.checks)))) & about
    amounts = sum(each[0].isdigit() for each in text)
    return TITLE_WEIGHT * len(title) + len(text) + (AMOUNT_WEIGHT - 1) * amounts


def _drawing_words(drawing: Drawing) -> frozenset[str]:
    """Return what a drawing speaks of: its caption, its description and every word on it."""
    labels = [shape.text for shape in drawing.shapes if isinstance(shape, DimensionLine | Label | Level)]
    return _words(" ".join((drawing.caption, drawing.alt, *labels)))


def _words(text: str) -> frozenset[str]:
    """Return the words that can tell one drawing from another, without their endings, and the amounts."""
    told = text.casefold().replace("\u00a0", " ")
    amounts = {each.replace(" ", "") for each in AMOUNT.findall(told)}
    return frozenset({_stem(word) for word in WORD.findall(told) if word not in COMMON} | amounts)


def _stem(word: str) -> str:
    """Return a word without the ending that a plural or a verb puts on it."""
    for ending in ENDINGS:
        if word.endswith(ending) and len(word) - len(ending) >= SHORTEST:
            stem = word.removesuffix(ending)
            return stem[:-1] if len(stem) > SHORTEST and stem[-1] == stem[-2] else stem
    return word
