"""Runs a family's rules, every family's rules for all, and the common ones over a technique."""

from collections.abc import Iterable, Iterator
from dataclasses import replace
from difflib import get_close_matches
from itertools import chain
from typing import Any

from howto.check.claims import CLAIM_RULES
from howto.check.client_words import CLIENT_RULES
from howto.check.common import COMMON_RULES
from howto.check.place import NO_SOURCES, WAIVER, Sources, line_at, placed, settled
from howto.check.shelf import SHELF_RULES
from howto.findings import OUR_FAULT, Finding, Severity, in_order
from howto.guarded import guarded
from howto.model.family import AnyFamily, Breach, Rule
from howto.model.technique import AnyTechnique
from howto.model.work import AnyWork
from howto.span import Span

LATER = frozenset(rule.name for rule in (*CLAIM_RULES, *SHELF_RULES, *CLIENT_RULES))
LAYING_OUT = "fit."  # what will not fit is found while laying out: there it is not a matter of judgement


def check_technique(
    work: AnyWork, family: AnyFamily, families: Iterable[AnyFamily], sources: Sources = NO_SOURCES
) -> tuple[Finding, ...]:
    """Return what breaks a rule of its family, of any family that holds over all, or of every technique.

    `families` is the whole table; `sources` the files by path, from which a finding quotes.
    """
    rules = rules_over(family, families)
    technique, reader = work.technique, work.crew.read_in("en")
    found: list[Finding] = []
    faults: list[Finding] = []
    judged: list[Rule[Any]] = []
    for rule in rules:
        with guarded(faults, technique.spot("title"), f"run the rule `{rule.name}` on this technique"):
            found += (placed(rule, breach, technique, sources, reader) for breach in rule(work))
            judged.append(rule)
    names = {rule.name for rule in rules}
    return in_order([*settled(technique, found, judged, sources), *_strays(technique, names, sources), *faults])


def check_job(
    work: AnyWork, family: AnyFamily, families: Iterable[AnyFamily], sources: Sources, own: Iterable[Finding]
) -> Iterator[Finding]:
    """Yield what a technique breaks with the measures of a visit, and not what its `own` file was told already.

    A measure that the visit leaves as the technique has it is right there: what breaks a rule is the visit's, and
    the mend goes into the visit.
    """
    technique = work.technique
    told = {(finding.rule, finding.what) for finding in own}
    measures = {name: span for name, span in technique.spans.items() if name.split(".")[0] == "measures"}
    written = {span for span in measures.values() if span.path == technique.path}
    borrowed = [span for span in measures.values() if span.path != technique.path]
    for finding in check_technique(work, family, families, sources):
        if finding.span.path != technique.path:
            yield finding
        elif finding.rule == OUR_FAULT and borrowed and (finding.rule, finding.what) not in told:
            yield replace(finding, span=borrowed[0], also=finding.span)
        elif (finding.rule, finding.what) not in told:
            here = finding.span in written and bool(borrowed)
            yield _moved(finding, borrowed[0], sources) if here else finding


def _moved(finding: Finding, span: Span, sources: Sources) -> Finding:
    """Return a finding at a visit's own measure, the technique's beside it."""
    mend = f"under `measures:` of this job, {finding.mend}"
    return replace(finding, span=span, text=line_at(span, sources), mend=mend, also=finding.span)


def rules_over(family: AnyFamily, families: Iterable[AnyFamily]) -> tuple[Rule[Any], ...]:
    """Return the rules that a technique of `family` answers to, each once, in reading order."""
    rules = chain(family.rules, *(each.every for each in families), COMMON_RULES)
    return tuple({rule.name: rule for rule in rules}.values())


def _strays(technique: AnyTechnique, names: set[str], sources: Sources) -> Iterator[Finding]:
    """Yield a finding for each waiver that names no rule this technique answers to."""
    known = sorted(names | LATER)
    for name in technique.waive:
        if name in names or name in LATER:
            continue
        breach = _unbending(name) if name.startswith(LAYING_OUT) else _stray(name, known)
        yield placed(WAIVER, breach, technique, sources)


def _unbending(name: str) -> Breach:
    """Return the breach of a waiver over what fits."""
    return Breach(
        field=f"waive.{name}",
        what=f"`{name}` is waived, and what does not fit cannot be waived",
        why="a reason makes no room: whatever it says, what does not fit would be missing for the reader",
        mend=f"take `{name}` out of `waive:`, and shorten or move what `{name}` names when it is built",
        severity=Severity.WARNING,
    )


def _stray(name: str, known: list[str]) -> Breach:
    """Return the breach of a waiver over a rule that does not look at this technique."""
    near = get_close_matches(name, known, n=1, cutoff=0.6)
    return Breach(
        field=f"waive.{name}",
        what=f"`{name}` is waived, and no rule of that name looks at this technique",
        why="only a rule that a technique answers to can be waived",
        mend=f"write `{near[0]}` in its place" if near else f"take `{name}` out of `waive:`",
        severity=Severity.WARNING,
    )
