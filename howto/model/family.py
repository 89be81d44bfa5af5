"""The contract between a trade and the stages: Family, Rule, Limit, Breach, Edit."""

from collections.abc import Callable, Iterator
from dataclasses import dataclass, field
from datetime import date
from typing import Any, Generic, TypeVar

from howto.findings import Finding, Severity
from howto.model.figure import Figure
from howto.model.measures import Measures
from howto.model.reference import CEILING, Reference
from howto.model.technique import Technique
from howto.shapes import Drawing
from howto.span import Span

M = TypeVar("M", bound=Measures)


@dataclass(frozen=True, slots=True)
class Limit:
    """A range the trade set, in `unit`, with who set it."""

    unit: str
    reference: Reference
    low: float | None = None
    high: float | None = None

    def allows(self, value: float) -> bool:
        """Tell whether a value in `unit` keeps the limit; arithmetic dust is forgiven."""
        dust = 1e-9 * max(1.0, abs(value))
        above = self.low is None or value >= self.low - dust
        return above and (self.high is None or value <= self.high + dust)

    def __str__(self) -> str:
        """Return the range as a reader sees it."""
        if self.low is None:
            return f"at most {self.high:g} {self.unit}"
        if self.high is None:
            return f"at least {self.low:g} {self.unit}"
        return f"{self.low:g} to {self.high:g} {self.unit}"


@dataclass(frozen=True, slots=True)
class Edit:
    """A mend that a program can follow: in front matter set `key` to `text`; in the body add a line.

    `key` is what an author writes: `finished width` under `measures:`, or `level`, `season` at the top when
    `top` is set. With `section`, `text` is a whole line to add at the end of that `## section`.
    """

    text: str
    key: str = ""
    section: str = ""
    top: bool = False


@dataclass(frozen=True, slots=True)
class Breach:
    """A rule was broken: which field, what was seen, the arithmetic, and a mend that works.

    `field` is a dotted field name of Technique (`measures.spacing_cm`, `steps[2]`, `cautions`); `severity`
    may soften the rule's own, never harden it; `also` names a second field where two disagree; `reference` is
    who says so where it is not the rule's first source, such as the plant book.
    """

    field: str
    what: str
    why: str
    mend: str
    edit: Edit | None = None
    also: str = ""
    severity: Severity | None = None
    reference: Reference | None = None


def line_wanted(section: str, line: str, *, what: str, why: str, field: str = "", also: str = "") -> Breach:
    """Return the breach of a section that should hold a line and does not; the mend adds it.

    It stands at `field`, else at the section itself.
    """
    mend, edit = f"add under {section}: `{line}`", Edit(section=section, text=line)
    return Breach(field or section.casefold(), what, why, mend, edit, also)


@dataclass(frozen=True, slots=True)
class Rule(Generic[M]):
    """One rule of the trade, as the rulebook prints it and as the check stage runs it.

    `name` is family first (`mowing.one-third`); `why` is the reason, with numbers; `applies` says which
    techniques it looks at. `statement` is what must hold, in one sentence: the first line of `check` where
    it is left out. A rule without a check is looked for while reading or laying out. A rule cannot weigh
    more than its best source allows: an error needs grade A or B, common practice and grade C warn, memory
    advises.
    """

    name: str
    severity: Severity
    why: str
    references: tuple[Reference, ...]
    applies: str
    check: Callable[[Technique[M]], Iterator[Breach]] | None = None
    statement: str = ""

    def __post_init__(self) -> None:
        """Refuse a rule that nobody vouches for, or that weighs more than its sources can carry."""
        if not self.statement:
            said = (self.check.__doc__ if self.check else None) or ""
            object.__setattr__(self, "statement", said.strip().split("\n", 1)[0])
        if not self.statement:
            raise ValueError(f"{self.name}: a rule says what must hold")
        if not self.references:
            raise ValueError(f"{self.name}: a rule names its source")
        order = (Severity.ADVICE, Severity.WARNING, Severity.ERROR)
        ceiling = max(order.index(CEILING[reference.grade]) for reference in self.references)
        if order.index(self.severity) > ceiling:
            raise ValueError(f"{self.name}: {self.severity} is more than its sources can carry")

    def finding(self, span: Span, what: str, why: str, mend: str, text: str = "") -> Finding:
        """Return what was found of this rule at a place; `text` is the line that stands there."""
        return Finding(self.name, self.severity, span, text, what, why, mend, str(self.references[0]))


@dataclass(frozen=True, slots=True)
class Family(Generic[M]):
    """One trade: what an author may write, the figures it computes, its rules and its drawings.

    `every` are rules the family holds over techniques of all families. `starter` are the measures that
    `howto new technique` writes, in the author's words.
    """

    name: str
    title: str
    about: str
    measures: type[M]
    figures: Callable[[Technique[M], date], Iterator[Figure]]
    rules: tuple[Rule[M], ...]
    drawings: Callable[[Technique[M], date], tuple[Drawing, ...]]
    starter: tuple[tuple[str, str], ...]
    every: tuple[Rule[Any], ...] = ()
    tags: tuple[str, ...] = field(default=())


AnyFamily = Family[Any]
