"""A family with a measure of every kind, and a technique file that is right, to be broken in tests of reading."""

from datetime import date
from typing import Annotated, Literal

from pydantic import Field, model_validator

from howto.findings import Finding
from howto.model.family import Family
from howto.model.measures import Measures
from howto.model.technique import AnyTechnique
from howto.read.assemble import assemble
from howto.read.body import located_in, read_words
from howto.span import Located, SourceText, Span


class Gate(Measures):
    """One measure of each kind."""

    shape: Literal["ball", "dome", "flat top"]
    finished_width_mm: float = Field(gt=0, le=10_000, description="across the widest part when done")
    slope_fraction: float | None = Field(default=None, ge=0, lt=1)
    water_l_per_m2: float | None = Field(default=None, ge=1)
    night_c: float | None = Field(default=None, ge=-10, le=30)
    share_percent: float | None = None
    passes: int = Field(default=1, ge=1, le=12)
    double_row: bool = False
    wires_mm: tuple[float, ...] = ()
    sides: tuple[Literal["north", "south"], ...] = ()
    marks: tuple[int, ...] = ()
    cuts: tuple[date, ...] = ()
    first_frost: date | None = None
    label: str = ""
    names: tuple[str, ...] = ()
    cans_ml: tuple[Annotated[float, Field(ge=0, lt=5000)], ...] | None = Field(default=None, min_length=2, max_length=3)
    stakes: int | None = Field(default=None, gt=1)
    depth_mm: float | None = Field(default=None, lt=0)
    code: str | None = Field(default=None, max_length=3)
    rate_per_m: float | None = Field(default=None, multiple_of=0.5)
    low_mm: float | None = None
    high_mm: float | None = None

    @model_validator(mode="after")
    def low_is_below_high(self) -> "Gate":
        """Refuse a low edge over the high one."""
        if self.low_mm is not None and self.high_mm is not None and self.low_mm > self.high_mm:
            raise ValueError(f"Low is {self.low_mm:g} mm and high is {self.high_mm:g} mm")
        return self


FAMILY: Family[Gate] = Family(
    name="clipping",
    title="Clipping",
    about="Shapes for tests.",
    measures=Gate,
    figures=lambda _technique, _today: iter(()),
    rules=(),
    drawings=lambda _technique, _today: (),
    starter=(("shape", "ball"), ("finished width", "900 mm ± 20 mm")),
)
OTHER: Family[Gate] = Family(
    name="hedging",
    title="Hedging",
    about="Another family for tests.",
    measures=Gate,
    figures=lambda _technique, _today: iter(()),
    rules=(),
    drawings=lambda _technique, _today: (),
    starter=(),
)
FAMILIES = {"clipping": FAMILY, "hedging": OTHER}

TEXT = """---
title: Clip a ball
family: clipping
level: 2
minutes: 25
needs: [sharpen-hand-shears]
plants: [Ilex crenata, box]
season: late spring to early autumn
measures:
  shape: ball
  finished width: 900 mm ± 20 mm
waive: {technique.steps: shown twice in the yard}
---

A ball that reads as round from the gate.
It is worth an hour.

## Tools
- Hand shears: sharp, wiped clean
- Gauge stick

## Materials
- Drop sheet: 2

## Steps
1. **Find the circle from above.** Stand over the plant.
   - Key point: Start at the *widest* ring.
   - Reason: Every cut is measured from it.
   - Check: {finished width} twice.
   - Picture: ball.jpg
     - focus: 60 40
     - alt: A ball from above
     - credit: the crew
     - 52 38: widest ring
2. Clip the ring. Then clip the crown.

## Cautions
- **Blades.** Keep the free hand behind. → gloves, eye protection

## Finish
- [ ] The outline is round

## Aftercare
- Within 2 days: water once.
- Never: mow against it.
"""


def source(text: str = TEXT, path: str = "techniques/clipping/clip-a-ball.md") -> SourceText:
    """Return a text as a file of the shelf."""
    return SourceText(path, text)


def read(
    text: str = TEXT, path: str = "techniques/clipping/clip-a-ball.md"
) -> tuple[AnyTechnique | None, tuple[Finding, ...]]:
    """Return what a text is read as."""
    return assemble(source(text, path), FAMILIES, "en")


def told(findings: tuple[Finding, ...]) -> list[tuple[str, int, int, int]]:
    """Return rule, line, first column and the column after the last of each finding."""
    return [(each.rule, each.span.line, each.span.column, each.span.end_column) for each in findings]


def swapped(old: str, new: str) -> str:
    """Return the right text with one part changed; the part must stand in it once."""
    assert TEXT.count(old) == 1, old
    return TEXT.replace(old, new)


def words_of(source: SourceText, first_line: int = 3) -> dict[Span, Located]:
    """Return the place of each letter of the paragraphs from a line on."""
    return located_in(read_words(source, first_line)[0])
