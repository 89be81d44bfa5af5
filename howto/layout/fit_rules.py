"""The rules of what fits: looked for while frames are laid out, so they have no check of their own."""

from typing import Any, Final

from howto.findings import Severity
from howto.model.family import Rule
from howto.model.reference import FORMAT, PRACTICE

FRAME: Final[Rule[Any]] = Rule(
    name="fit.frame",
    severity=Severity.ERROR,
    statement="Every word of a frame stands on it whole, no smaller than 28 px on a frame 1080 px wide.",
    why="a follower reads it on a phone about 65 mm wide, where 28 px is 1.7 mm; words are never cut and never overlap",
    references=(FORMAT,),
    applies="every frame of a carousel",
)
MARK: Final[Rule[Any]] = Rule(
    name="fit.mark",
    severity=Severity.ERROR,
    statement="Every mark of a picture stays in sight in every ratio, with a free place for its number.",
    why="a number that points outside the frame, or lies on another mark, teaches the wrong thing",
    references=(FORMAT,),
    applies="pictures with marks",
)
DRAWING: Final[Rule[Any]] = Rule(
    name="fit.drawing",
    severity=Severity.WARNING,
    statement="The labels of a drawing stand round it without touching.",
    why="where they would touch, the drawing is shown without them",
    references=(FORMAT,),
    applies="every drawing in a frame",
)
SMALL: Final[Rule[Any]] = Rule(
    name="fit.picture-small",
    severity=Severity.WARNING,
    statement="A picture has at least as many pixels as the frame shows of it.",
    why="a picture that is blown up looks soft beside sharp words",
    references=(PRACTICE,),
    applies="every picture in a frame",
)
LETTER: Final[Rule[Any]] = Rule(
    name="fit.letter",
    severity=Severity.ERROR,
    statement="Every letter that is printed is one that the typefaces have.",
    why="a letter they do not have comes out as a block that nobody can read",
    references=(FORMAT,),
    applies="every card, picture, leaflet and letter",
)
CAPTION: Final[Rule[Any]] = Rule(
    name="fit.caption",
    severity=Severity.ERROR,
    statement="The caption is no longer than `caption limit` in crew.yaml allows.",
    why="where it is published a longer one would be cut, and the cautions stand at its end",
    references=(FORMAT,),
    applies="every carousel",
)
PAGE_WORDS: Final[Rule[Any]] = Rule(
    name="fit.page-words",
    severity=Severity.WARNING,
    statement="The labels of measures, figures and drawings are in the language of their page.",
    why="labels come from the arithmetic in English; a client who does not read it cannot tell one number from another",
    references=(FORMAT,),
    applies="cards and leaflets in another language than English",
)

PAGE_RULES: Final[tuple[Rule[Any], ...]] = (PAGE_WORDS,)
FIT_RULES: Final[tuple[Rule[Any], ...]] = (FRAME, MARK, DRAWING, SMALL, LETTER, CAPTION)
