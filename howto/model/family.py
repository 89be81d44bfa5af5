"""The contract between a trade and the stages: Family, Rule, Limit, Breach, Edit."""

from collections.abc import Callable, Iterator
from dataclasses import dataclass, field
from datetime import date
from decimal import Decimal
from inspect import cleandoc
from math import floor, log10
from typing import Any, Final, Generic, TypeVar

from howto.findings import Finding, Severity
from howto.model.figure import Figure
from howto.model.measures import Measures
from howto.model.reference import CEILING, Reference
from howto.model.work import Work
from howto.quantities import convert, field_unit, round_down, round_up
from howto.quantities.amounts import Amount, Range, Share, Words
from howto.shapes import Drawing
from howto.span import Span

M = TypeVar("M", bound=Measures)


# what a new file of a trade that cuts plants starts with
BLADED_TOOLS: Final = "- Gloves and eye protection\n- Alcohol wipes: to wipe blades clean"
BLADED_CAUTION: Final = "- **Blades.** Keep the free hand clear of every edge. → gloves, eye protection"
SHARE: Final = "share"  # the unit of a limit that is part of a whole, 0 to 1


@dataclass(frozen=True, slots=True)
class Limit:
    """A range the trade set, in `unit` (`SHARE` for a part of a whole), with who set it; `of` says of what."""

    unit: str
    reference: Reference
    low: float | None = None
    high: float | None = None
    of: str = ""

    def allows(self, value: float) -> bool:
        """Tell whether a value in `unit` keeps the limit; arithmetic dust is forgiven."""
        dust = 1e-9 * max(1.0, abs(value))
        above = self.low is None or value >= self.low - dust
        return above and (self.high is None or value <= self.high + dust)

    @property
    def least(self) -> Words:
        """The lower end, as words that hold it."""
        return self._end(self.low)

    @property
    def most(self) -> Words:
        """The upper end, as words that hold it."""
        return self._end(self.high)

    def nearest(self, value: float) -> float:
        """Return the value in `unit` that is nearest to one and keeps the limit."""
        value = value if self.low is None else max(value, self.low)
        return value if self.high is None else min(value, self.high)

    def __str__(self) -> str:
        """Return the range as words that hold its ends."""
        if self.low is None:
            said = f"at most {self.most}"
        elif self.high is None:
            said = f"at least {self.least}"
        elif self.unit in {SHARE, ""}:
            said = f"{self.least} to {self.most}"
        else:
            said = str(Range(self.low, self.high, self.unit))
        return f"{said} {self.of}".rstrip()

    def _end(self, value: float | None) -> Words:
        if value is None:
            return ""
        return str(Share(value) if self.unit == SHARE else Amount(value, self.unit))


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
    what: Words
    why: Words
    mend: Words
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
    why: Words
    references: tuple[Reference, ...]
    applies: str
    check: Callable[[Work[M]], Iterator[Breach]] | None = None
    statement: Words = ""
    harm: bool = False  # it keeps people from being hurt: a waiver of it gives a reason that says how

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

    def __call__(self, work: Work[M]) -> Iterator[Breach]:
        """Yield where a work breaks this rule; nothing for a rule that another stage looks for."""
        if self.check is not None:
            yield from self.check(work)

    def finding(self, span: Span, what: str, why: str, mend: str, text: str = "") -> Finding:
        """Return what was found of this rule at a place; `text` is the line that stands there."""
        return Finding(self.name, self.severity, span, text, what, why, mend, str(self.references[0]))


Check = Callable[[Work[M]], Iterator[Breach]]


def rule(
    name: str, severity: Severity, *references: Reference, applies: str, why: Words = "", **held: Words | Limit
) -> Callable[[Check[M]], Rule[M]]:
    """Return a decorator that makes a check its rule.

    The first line of the check's docstring is the rule's statement, its second paragraph the reason, where `why`
    does not give it. `held` are the amounts that both name between braces: a number stands in its limit alone.
    """

    def made(check: Check[M]) -> Rule[M]:
        statement, _, rest = cleandoc(check.__doc__ or "").partition("\n")
        reason = why or " ".join(rest.split())
        said = [text.format(**held) if held else text for text in (statement, reason)]
        return Rule(name, severity, said[1], references, applies, check, said[0])

    return made


def outside(limit: Limit, work: Work[Any], field: str, *, what: Words, why: Words, also: str = "") -> Iterator[Breach]:
    """Yield the breach of a measure outside its limit; the mend writes the nearest value that keeps it.

    `field` is the measure's name; `what` and `why` may hold `{found}`, `{limit}`, `{least}` and `{most}`.
    """
    value = getattr(work.measures, field)
    if value is None:
        return
    key, unit = field_unit(field)
    theirs = convert(value, unit, limit.unit) if unit and limit.unit not in {SHARE, "", unit} else value
    if limit.allows(theirs):
        return
    bound = limit.nearest(theirs)
    bound = convert(bound, limit.unit, unit) if unit and limit.unit not in {SHARE, "", unit} else bound
    text = typed(bound, unit or "", down=theirs > limit.nearest(theirs))
    held = {"found": Amount(value, unit or "", 4), "limit": limit, "least": limit.least, "most": limit.most}
    more = "" if limit.low is not None and limit.high is not None else " or more" if limit.high is None else " or less"
    yield Breach(
        field=f"measures.{field}",
        also=also,
        what=what.format(**held),
        why=why.format(**held),
        mend=f"write `{key}: {text}`{more}",
        edit=Edit(key=key, text=text),
    )


def typed(value: float, unit: str, *, down: bool = False) -> str:
    """Return a value as its author types it, rounded to six figures inwards: `down` for what may not be more."""
    if not value:
        return f"0 {unit}".strip()
    step = 10.0 ** (floor(log10(abs(value))) - 5)
    near = (round_down if down else round_up)(value, step)
    digits = f"{Decimal(f'{near:.12g}'):f}"  # written out in full: a power of ten is refused where it is read
    return f"{digits}{'' if unit.startswith('/') else ' '}{unit}".strip()


@dataclass(frozen=True, slots=True)
class Family(Generic[M]):
    """One trade: what an author may write, the figures it computes, its rules and its drawings.

    `every` are rules the family holds over techniques of all families. `starter` are the measures, `tools` and
    `caution` the lines that `howto new technique` writes, in the author's words.
    """

    name: str
    title: str
    about: str
    measures: type[M]
    figures: Callable[[Work[M], date], Iterator[Figure]]
    rules: tuple[Rule[M], ...]
    drawings: Callable[[Work[M], date], tuple[Drawing, ...]]
    starter: tuple[tuple[str, str], ...]
    every: tuple[Rule[Any], ...] = ()
    tags: tuple[str, ...] = field(default=())
    tools: str = "- Gloves and eye protection"
    caution: str = "- **Hands and feet.** Keep hands, feet and other people clear. → gloves, eye protection"


AnyFamily = Family[Any]
