"""Checks that the crew's colours can be read: by everyone, on their ground; else names the nearest that can."""

from collections.abc import Iterator
from typing import Any, Final

from howto.check.place import noted
from howto.colour import GRAPHIC_RATIO, TEXT_RATIO, contrast, least_contrast, nearest
from howto.findings import Finding, Severity
from howto.model.crew import Colours
from howto.model.family import Rule
from howto.model.reference import Grade, source
from howto.model.shelf import Shelf
from howto.span import Span

WCAG: Final = source(
    Grade.A,
    "Web Content Accessibility Guidelines 2.2",
    "World Wide Web Consortium",
    "2023",
    "1.4.3 and 1.4.11, level AA",
)
MACHADO: Final = source(
    Grade.A,
    "A physiologically-based model for simulation of color vision deficiency",
    "IEEE Transactions on Visualization and Computer Graphics 15(6)",
    "2009",
)
READABLE: Final[Rule[Any]] = Rule(
    name="shelf.colours",
    severity=Severity.ERROR,
    statement="Ink and accent stand out from the ground at least 4.5 to 1, and 3 to 1 for colour-blind eyes.",
    why="both colour words and marks; about 8 in 100 men see colours differently",
    references=(WCAG, MACHADO),
    applies="`colours:` in crew.yaml",
)
COLOUR_RULES: Final[tuple[Rule[Any], ...]] = (READABLE,)


def colour_findings(shelf: Shelf) -> Iterator[Finding]:
    """Yield a finding for each of the crew's colours that does not stand out from its ground, with one that does."""
    colours = shelf.crew.colours
    for name in ("ink", "accent"):
        own: str = getattr(colours, name)
        if not stands_out(own, colours.ground):
            yield _finding(shelf, name, own, colours)


def stands_out(colour: str, ground: str) -> bool:
    """Tell whether words in a colour make AA on the ground, and its marks do for colour-blind eyes too."""
    return contrast(colour, ground) >= TEXT_RATIO and least_contrast(colour, ground) >= GRAPHIC_RATIO


def _finding(shelf: Shelf, name: str, own: str, colours: Colours) -> Finding:
    """Return the finding of one colour."""
    plain, blind = contrast(own, colours.ground), least_contrast(own, colours.ground)
    what = f"{name} `{own}` stands out {_down(plain)} to 1 from the ground `{colours.ground}`"
    why = (
        f"words need {TEXT_RATIO:g} to 1"
        if plain < TEXT_RATIO
        else (f"colour-blind eyes see {_down(blind)} to 1, and marks need {GRAPHIC_RATIO:g} to 1")
    )
    near = nearest(own, lambda colour: stands_out(colour, colours.ground))
    mend = f'write `{name}: "{near}"`, the nearest that does'
    spans, start = shelf.crew.spans, Span(f"{shelf.root}/crew.yaml")
    span = spans.get(f"colours.{name}") or spans.get("colours") or start
    return noted(READABLE, span, shelf.sources, what, why, mend)


def _down(ratio: float) -> str:
    """Return a ratio cut, never rounded up: 4.499 is 4.4."""
    return f"{int(ratio * 10) / 10:g}"
