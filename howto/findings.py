"""What a check found, where, why, and how to mend it."""

from collections.abc import Iterable
from dataclasses import dataclass
from enum import StrEnum
from typing import Final

from howto.span import Span

OUR_FAULT: Final = "file.our-fault"  # the rule of what broke off through no fault of an author's
README: Final = "howto, how a technique file is written (README)"  # as model.reference.FORMAT prints
OUR_OWN_BUG: Final = 3  # the exit status that says so


class Severity(StrEnum):
    """How much a finding weighs.

    An error stops a build. A warning stops it under `--strict`. Advice never stops anything: it is all that
    a number from memory may give.
    """

    ERROR = "error"
    WARNING = "warning"
    ADVICE = "advice"


@dataclass(frozen=True, slots=True)
class Finding:
    """One observation with its place in a file.

    `what` is what was seen, in the author's words; `why` shows the arithmetic and who says so; `mend` is an
    instruction that works when followed to the letter; `also` is the second place where two disagree.
    """

    rule: str
    severity: Severity
    span: Span
    text: str
    what: str
    why: str
    mend: str
    reference: str = ""
    also: Span | None = None

    @property
    def order(self) -> tuple[str, int, int, str, str]:
        """What findings are sorted by: path, line, column, rule, observation."""
        return (self.span.path, self.span.line, self.span.column, self.rule, self.what)


def in_order(findings: Iterable[Finding]) -> tuple[Finding, ...]:
    """Return the findings sorted for a reader, each once."""
    return tuple(sorted(dict.fromkeys(findings), key=lambda finding: finding.order))


def stops(findings: Iterable[Finding], *, strict: bool = False) -> bool:
    """Tell whether these findings stop a build."""
    halting = {Severity.ERROR, Severity.WARNING} if strict else {Severity.ERROR}
    return any(finding.severity in halting for finding in findings)


def exit_status(findings: Iterable[Finding], *, strict: bool = False) -> int:
    """Return 0 when nothing stops a build, 3 when something broke off that is our own fault, else 1."""
    found = tuple(findings)
    if any(finding.rule == OUR_FAULT for finding in found):
        return OUR_OWN_BUG
    return int(stops(found, strict=strict))
