"""Checks what a shelf says of visits and of people: dates that run backwards, and sign-offs gone stale."""

from collections.abc import Iterator
from datetime import date, timedelta
from difflib import get_close_matches
from typing import Any, Final

from howto.check.place import Sources, noted
from howto.check.twins import is_twin
from howto.findings import Finding, Severity
from howto.model.family import Rule
from howto.model.reference import FORMAT, PRACTICE
from howto.model.shelf import Person, Shelf, SignOff
from howto.span import Span

FILE: Final = "people.yaml"
USUAL_GAP: Final = timedelta(weeks=6)  # ours: only offered in a mend

NEXT_VISIT: Final[Rule[Any]] = Rule(
    name="shelf.next-visit",
    severity=Severity.ERROR,
    statement="A visit's next visit comes after it.",
    why="the leaflet puts the client's tasks before and after that day",
    references=(FORMAT,),
    applies="visits with `next visit:`",
)
SIGN_OFF: Final[Rule[Any]] = Rule(
    name="shelf.sign-off",
    severity=Severity.ADVICE,
    statement="People are signed off for techniques of the shelf, as they now stand.",
    why="a technique that has changed since may need to be shown again; one that is not there helps nobody",
    references=(PRACTICE,),
    applies="`people.yaml`",
)
PEOPLE_RULES: Final = (NEXT_VISIT, SIGN_OFF)


def people_findings(shelf: Shelf, sources: Sources) -> Iterator[Finding]:
    """Yield findings about visits, then about people."""
    for visit in shelf.visits:
        if visit.next_visit is None or visit.next_visit > visit.date:
            continue
        later = visit.date + min(USUAL_GAP, date.max - visit.date)
        span = visit.spans.get("next_visit", Span(visit.path))
        yield noted(
            NEXT_VISIT,
            span,
            sources,
            what=f"the next visit, {visit.next_visit}, is not after this one, {visit.date}",
            why=NEXT_VISIT.why,
            mend=f"write a later day, such as `next visit: {later}`, or take the line out",
        )
    for person in shelf.people:
        for at, signed in enumerate(person.signed_off):
            span = person.spans.get(f"signed_off[{at}]", Span(f"{shelf.root}/{FILE}"))
            yield from _sign_off(shelf, person, signed, span, sources)


def _sign_off(shelf: Shelf, person: Person, signed: SignOff, span: Span, sources: Sources) -> Iterator[Finding]:
    """Yield a finding for a sign-off of no technique, or of an old version of one."""
    technique = shelf.technique(signed.technique)
    if technique is None:
        known = [each.id for each in shelf.techniques if not is_twin(each)]
        near = get_close_matches(signed.technique, known, n=1, cutoff=0.6)
        yield noted(
            SIGN_OFF,
            span,
            sources,
            what=f"{person.name} is signed off for `{signed.technique}`, which is not on the shelf",
            why="only a technique of the shelf has a card to be signed off on",
            mend=f"write `{near[0]}`" if near else "take the line out, or add the technique",
        )
    elif signed.version and technique.version and signed.version != technique.version:
        yield noted(
            SIGN_OFF,
            span,
            sources,
            what=(
                f"{person.name} was shown version {signed.version} of `{technique.id}`; it is now {technique.version}"
            ),
            why=f"the file has changed since {signed.on}",
            mend=f"show them what changed, then write `version: {technique.version}` and the day",
        )
