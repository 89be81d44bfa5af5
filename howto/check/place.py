"""Gives a breach its place in the file, and heeds an author's waivers."""

from collections.abc import Iterable, Mapping
from types import MappingProxyType
from typing import Any, Final

from howto.findings import Finding, Severity
from howto.languages.reader import Reader
from howto.model.family import Breach, Rule
from howto.model.reference import FORMAT
from howto.model.technique import AnyTechnique
from howto.quantities.amounts import Words
from howto.span import Located, SourceText, Span

Sources = Mapping[str, SourceText]
NO_SOURCES: Sources = MappingProxyType({})
AUTHOR: Final = Reader()  # whoever writes files: findings are in English
SHORTEST_REASON = 10  # letters; ours: enough to say what keeps people safe instead
_WEIGHT = {Severity.ADVICE: 0, Severity.WARNING: 1, Severity.ERROR: 2}

WAIVER: Rule[Any] = Rule(
    name="technique.waiver",
    severity=Severity.ERROR,
    statement="A waiver names a rule that this technique breaks, and says why that is right here.",
    why=(
        "a waiver that covers nothing hides the next breach of its rule; one over a rule that keeps people "
        f"from harm gives a reason of {SHORTEST_REASON} letters or more"
    ),
    references=(FORMAT,),
    applies="techniques with `waive:`",
)


def placed(
    rule: Rule[Any], breach: Breach, technique: AnyTechnique, sources: Sources = NO_SOURCES, reader: Reader = AUTHOR
) -> Finding:
    """Return the finding of a breach: where its field stands, what is written there, and who says so.

    That is the breach's own source, or else the rule's first.
    """
    span = technique.spot(breach.field)
    return Finding(
        rule=rule.name,
        severity=softer(rule.severity, breach.severity),
        span=span,
        text=line_at(span, sources),
        what=reader.plain(breach.what),
        why=reader.plain(breach.why or lowered(rule.why)),
        mend=reader.plain(breach.mend),
        reference=str(breach.reference or rule.references[0]),
        also=technique.spot(breach.also) if breach.also else None,
    )


def lowered(reason: Words) -> Words:
    """Return a rule's reason as it goes on after other words: a small letter first, no full stop."""
    first = reason[:1].lower() if reason[1:2].islower() or reason[1:2] == " " else reason[:1]
    return first + reason[1:].removesuffix(".")


def noted(rule: Rule[Any], span: Span, sources: Sources, what: str, why: str, mend: str) -> Finding:
    """Return the finding of a rule at a place, with the line that stands there."""
    return rule.finding(span, what, why, mend, line_at(span, sources))


def softer(own: Severity, asked: Severity | None) -> Severity:
    """Return the lighter of a rule's severity and the one a breach asks for; a breach never hardens."""
    return own if asked is None or _WEIGHT[asked] > _WEIGHT[own] else asked


def line_at(span: Span, sources: Sources) -> str:
    """Return the author's line at a place; empty where the file is not at hand."""
    source = sources.get(span.path)
    return source.line(span.line) if source else ""


def where_said(span: Span, words: str, located: Mapping[Span, Located]) -> Span:
    """Return where words stand in the passage at a place; the passage where they do not stand on one line of it."""
    passage = located.get(span)
    return (passage and passage.span_of(words)) or span


def settled(
    technique: AnyTechnique, found: Iterable[Finding], rules: Iterable[Rule[Any]], sources: Sources = NO_SOURCES
) -> tuple[Finding, ...]:
    """Return the findings that no waiver covers, and one for each waiver that does not hold.

    `rules` are those that were judged to give `found`: a waiver of one of them that covers nothing is a
    finding, except over a technique that borrows measures from a visit, which may break less than its own do.
    Any stage may settle its own findings of a technique so.
    """
    judged = {rule.name: rule for rule in rules}
    findings = tuple(found)
    borrowed = any(span.path != technique.path for span in technique.spans.values())
    kept = [finding for finding in findings if finding.rule not in technique.waive]
    for name, reason in technique.waive.items():
        if name not in judged:
            continue
        covered = [finding for finding in findings if finding.rule == name]
        breach = _weak(judged[name], reason, covered) if covered else None if borrowed else _idle(name)
        if breach:
            kept.append(placed(WAIVER, breach, technique, sources))
    return tuple(kept)


def _weak(rule: Rule[Any], reason: str, covered: list[Finding]) -> Breach | None:
    """Return the breach of a waiver whose reason does not carry it, weighing what it would have covered."""
    letters = sum(character.isalnum() for character in reason)
    name, guarded = rule.name, rule.harm
    least = SHORTEST_REASON if guarded else 1
    if letters >= least:
        return None
    first = max(covered, key=lambda finding: _WEIGHT[finding.severity])
    return Breach(
        field=f"waive.{name}",
        what=f"`{name}` is waived with {f'the reason `{reason.strip()}`' if letters else 'no reason'}",
        why=(
            f"without the waiver it says: {first.what}; "
            + (f"a rule about harm needs a reason of {least} letters or more" if guarded else "a waiver says why")
        ),
        mend=(
            f"write after `{name}:` what makes it right here"
            + (f", in {least} letters or more" if guarded else "")
            + ", or take the line out"
        ),
        severity=first.severity,
    )


def _idle(name: str) -> Breach:
    """Return the breach of a waiver that covers nothing."""
    return Breach(
        field=f"waive.{name}",
        what=f"`{name}` is waived, and nothing here breaks it",
        why="a waiver left behind would hide the next breach of this rule",
        mend=f"take `{name}` out of `waive:`",
        severity=Severity.WARNING,
    )
