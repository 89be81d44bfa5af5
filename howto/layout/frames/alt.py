"""Words for people who cannot see a picture: what is drawn, the marks, the numbers; the most important first."""

from collections.abc import Iterable, Sequence

from howto.languages.form import Labels
from howto.model.technique import Mark

ELLIPSIS = "…"


def within(parts: Iterable[str], limit: int) -> str:
    """Return the parts as sentences, dropping from the first that would pass the limit on.

    A first part that is too long on its own ends at a word with an ellipsis.
    """
    told = ""
    for part in filter(None, (sentence(each) for each in parts)):
        longer = f"{told} {part}" if told else part
        if len(longer) > limit:
            break
        told = longer
    else:
        return told
    if told:
        return told
    first = next(filter(None, (sentence(each) for each in parts)))
    kept = first[: limit - 1]
    whole = kept if first[limit - 1].isspace() else kept.rsplit(" ", 1)[0]
    return whole.rstrip(" ,;:–") + ELLIPSIS


def sentence(text: str) -> str:
    """Return the text on one line, ended like a sentence."""
    flat = " ".join(text.split())
    return flat if not flat or flat[-1] in ".!?…" else f"{flat}."


def mark_sentences(marks: Sequence[Mark], say: Labels) -> tuple[str, ...]:
    """Return each mark with where it stands, as a person would point it out."""
    return tuple(
        say["marked"].format(number=number, place=where(mark, say), text=mark.text)
        for number, mark in enumerate(marks, start=1)
    )


def where(mark: Mark, say: Labels) -> str:
    """Return in which ninth of the picture a mark stands."""
    down, across = (min(2, int(percent * 3 / 100)) for percent in (mark.y_percent, mark.x_percent))
    return say["places"][down][across]
