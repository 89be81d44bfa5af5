"""Checks that the crew's colours can be read: by everyone, on their ground; else names the nearest that can."""

import re
from collections.abc import Iterator
from typing import Any, Final

from howto.colour import GRAPHIC_RATIO, TEXT_RATIO, contrast, least_contrast, nearest
from howto.findings import Finding, Severity
from howto.model.crew import Colours
from howto.model.family import Rule
from howto.model.reference import Grade, source
from howto.model.shelf import Shelf
from howto.span import SourceText, Span

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
    span, text = place(shelf, name)
    return READABLE.finding(span, what, why, mend, text)


def _down(ratio: float) -> str:
    """Return a ratio cut, never rounded up: 4.499 is 4.4."""
    return f"{int(ratio * 10) / 10:g}"


def place(shelf: Shelf, name: str) -> tuple[Span, str]:
    """Return where a colour stands in crew.yaml, and what is written there; the file's start where it is not named."""
    source = next((each for path, each in shelf.sources.items() if path.rpartition("/")[2] == "crew.yaml"), None)
    if source is None:
        return Span(f"{shelf.root}/crew.yaml"), ""
    return _written(source, name) or (Span(source.path), "")


def _written(source: SourceText, name: str) -> tuple[Span, str] | None:
    """Return the place and text of the value after a key."""
    key = re.compile(rf"""\b{name}["']?\s*:\s*(?P<value>["']?#?[0-9a-fA-F]{{6}}\b["']?)""")
    for number, line in enumerate(source.lines, start=1):
        found = key.search(line.partition(" # ")[0])
        if found:
            return source.span(number, found.start("value") + 1, found.end("value") + 1), found["value"]
    return None
