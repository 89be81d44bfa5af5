"""Rules over all files of a shelf: names, needs, titles, twins, pictures, visits and people."""

from collections import deque
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import replace
from difflib import get_close_matches
from itertools import combinations
from typing import Any, Final, NamedTuple

from howto.check.agree import SAME_PLANT, disagreement
from howto.check.languages import LANGUAGE_RULES, language_findings
from howto.check.people import PEOPLE_RULES, people_findings
from howto.check.pictures import PICTURE_RULES, picture_findings
from howto.check.place import Sources, placed, settled
from howto.check.twins import TWIN, file_name, is_twin, own_name, twin_breaches
from howto.findings import Finding, Severity, in_order
from howto.guarded import guarded
from howto.model.family import Breach, Edit, Rule
from howto.model.figure import Figure
from howto.model.reference import FORMAT, PRACTICE
from howto.model.shelf import Shelf
from howto.model.technique import AnyTechnique
from howto.model.visit import Visit
from howto.span import Span

SAME_NAME: Final[Rule[Any]] = Rule(
    name="shelf.same-name",
    severity=Severity.ERROR,
    statement="No two technique files have the same name, even in different folders, and no two visit files.",
    why="a file's name is what it is called by, and its card, pictures or leaflet are written under it",
    references=(FORMAT,),
    applies="every technique and visit",
)
SAME_TITLE: Final[Rule[Any]] = Rule(
    name="shelf.same-title",
    severity=Severity.WARNING,
    statement="No two techniques have the same title.",
    why="two cards with one title are taken for each other",
    references=(FORMAT,),
    applies="every technique",
)
NEEDS: Final[Rule[Any]] = Rule(
    name="shelf.needs",
    severity=Severity.ERROR,
    statement="What a technique needs is a technique of the shelf.",
    why="the card says what to know first, and links to it",
    references=(FORMAT,),
    applies="techniques with `needs:`",
)
CIRCLE: Final[Rule[Any]] = Rule(
    name="shelf.circle",
    severity=Severity.ERROR,
    statement="Needs do not run in a circle.",
    why="in a circle there is no technique to learn first",
    references=(FORMAT,),
    applies="techniques with `needs:`",
)
LEVEL: Final[Rule[Any]] = Rule(
    name="shelf.level",
    severity=Severity.WARNING,
    statement="A technique's level is at least that of every technique it needs.",
    why="an apprentice in their first season would be sent to a card of the second or third",
    references=(FORMAT, PRACTICE),
    applies="techniques with `needs:`",
)
SHELF_RULES: Final[tuple[Rule[Any], ...]] = (
    SAME_NAME,
    SAME_TITLE,
    NEEDS,
    CIRCLE,
    LEVEL,
    SAME_PLANT,
    TWIN,
    *LANGUAGE_RULES,
    *PICTURE_RULES,
    *PEOPLE_RULES,
)


class _Between(NamedTuple):
    """A breach in a technique, and the place in another file that it disagrees with."""

    technique: AnyTechnique
    rule: Rule[Any]
    breach: Breach
    also: Span | None = None

    def finding(self, sources: Sources) -> Finding:
        """Return the breach with its place, and the other place."""
        finding = placed(self.rule, self.breach, self.technique, sources)
        return replace(finding, also=self.also) if self.also else finding


def check_shelf(shelf: Shelf, figures_by_id: Mapping[str, Sequence[Figure]]) -> tuple[Finding, ...]:
    """Return what is wrong between the files of a shelf; `figures_by_id` are each technique's figures."""
    firsts = tuple(technique for technique in shelf.techniques if not is_twin(technique))
    among = (
        (SAME_NAME, _same_names(shelf.techniques)),
        (SAME_TITLE, _same_titles(firsts)),
        (NEEDS, _needs(firsts)),
        (CIRCLE, _circles(firsts)),
        (LEVEL, _levels(firsts)),
        (SAME_PLANT, _same_plants(shelf, firsts, figures_by_id)),
        (TWIN, _twins(shelf, firsts)),
    )
    whole = (
        (PICTURE_RULES, picture_findings(shelf, shelf.sources)),
        (PEOPLE_RULES, people_findings(shelf, shelf.sources)),
        (LANGUAGE_RULES, language_findings(shelf, shelf.sources)),
        ((SAME_NAME,), _same_visits(shelf.visits)),
    )
    found: list[Finding] = []
    faults: list[Finding] = []
    judged: list[Rule[Any]] = []
    checks = [((rule,), (each.finding(shelf.sources) for each in group)) for rule, group in among]
    for rules, findings in (*checks, *whole):
        names = [rule.name for rule in rules]
        with guarded(faults, Span(shelf.root), f"run `{'`, `'.join(names)}` over the shelf"):
            found += findings
            judged += rules
    kept: list[Finding] = []
    paths = {technique.path for technique in shelf.techniques}
    for technique in shelf.techniques:
        own = (finding for finding in found if finding.span.path == technique.path)
        kept += settled(technique, own, judged, shelf.sources)
    return in_order([*kept, *(finding for finding in found if finding.span.path not in paths), *faults])


def _same_names(techniques: Sequence[AnyTechnique]) -> Iterator[_Between]:
    """Yield each technique whose file has a name that an earlier one has."""
    first: dict[str, AnyTechnique] = {}
    for technique in techniques:
        name = file_name(technique)
        other = first.setdefault(name, technique)
        if other is technique:
            continue
        stem, dot, language = name.partition(".")
        breach = Breach(
            field="",
            what=f"`{name}.md` is the name of `{other.path}` too",
            why=SAME_NAME.why,
            mend=f"rename this file, such as to `{stem}-2{dot}{language}.md`",
        )
        yield _Between(technique, SAME_NAME, breach, also=other.spot(""))


def _same_visits(visits: Sequence[Visit]) -> Iterator[Finding]:
    """Yield each visit whose file has a name that an earlier one has: `.md` and `.MD` are two endings."""
    first: dict[str, Visit] = {}
    for visit in visits:
        other = first.setdefault(visit.id, visit)
        if other is not visit:
            what = f"`{visit.id}` is the name of `{other.path}` too"
            found = SAME_NAME.finding(
                Span(visit.path), what, SAME_NAME.why, f"rename this file, such as to `{visit.id}-2.md`", ""
            )
            yield replace(found, also=Span(other.path))


def _same_titles(techniques: Sequence[AnyTechnique]) -> Iterator[_Between]:
    """Yield each technique with a title that an earlier one has."""
    first: dict[str, AnyTechnique] = {}
    for technique in techniques:
        other = first.setdefault(" ".join(technique.title.casefold().split()), technique)
        if other is technique or own_name(other) == own_name(technique):
            continue
        breach = Breach(
            field="title",
            what=f"`{technique.title}` is the title of `{other.path}` too",
            why=SAME_TITLE.why,
            mend="write in each title what sets it apart, such as the plant or the season",
        )
        yield _Between(technique, SAME_TITLE, breach, also=other.spot("title"))


def _needs(techniques: Sequence[AnyTechnique]) -> Iterator[_Between]:
    """Yield each need that is no technique."""
    ids = sorted({technique.id for technique in techniques})
    for technique in techniques:
        for at, need in enumerate(technique.needs):
            if need in ids:
                continue
            near = get_close_matches(need, [each for each in ids if each != technique.id], n=1, cutoff=0.6)
            kept = [near[0] if near and each == need else each for each in technique.needs]
            kept = list(dict.fromkeys(each for each in kept if each in ids))
            text = f"[{', '.join(kept)}]"
            breach = Breach(
                field=f"needs[{at}]",
                what=f"`{need}` is no technique of this shelf",
                why=NEEDS.why,
                mend=f"write `needs: {text}`" + ("" if near else f", or add a file `{need}.md`"),
                edit=Edit(top=True, key="needs", text=text),
            )
            yield _Between(technique, NEEDS, breach)


def _circles(techniques: Sequence[AnyTechnique]) -> Iterator[_Between]:
    """Yield each circle of needs once, at the first of its techniques in the shelf's order."""
    by_id = {technique.id: technique for technique in techniques}
    told: set[frozenset[str]] = set()
    for technique in techniques:
        ring = _ring(technique.id, by_id)
        if len(ring) < 2 or frozenset(ring) in told:
            continue
        told.add(frozenset(ring))
        second = ring[1]
        others = [each for each in technique.needs if each != second]
        told_ring = ", ".join(f"`{a}` needs `{b}`" for a, b in zip(ring, (*ring[1:], ring[0]), strict=True))
        breach = Breach(
            field=f"needs[{technique.needs.index(second)}]",
            what="needs run in a circle",
            why=told_ring,
            mend=f"write `needs: [{', '.join(others)}]` here, or break the circle in one of the others",
            edit=Edit(top=True, key="needs", text=f"[{', '.join(others)}]"),
        )
        yield _Between(technique, CIRCLE, breach, also=by_id[second].spot("needs"))


def _ring(start: str, by_id: Mapping[str, AnyTechnique]) -> tuple[str, ...]:
    """Return the shortest way along needs from a technique back to itself, or nothing."""
    ways: deque[tuple[str, ...]] = deque([(start,)])
    seen = {start}
    while ways:
        way = ways.popleft()
        here = by_id.get(way[-1])
        for need in here.needs if here else ():
            if need == start:
                return way
            if need not in seen:
                seen.add(need)
                ways.append((*way, need))
    return ()


def _levels(techniques: Sequence[AnyTechnique]) -> Iterator[_Between]:
    """Yield each technique with a level under that of one it needs."""
    by_id = {technique.id: technique for technique in techniques}
    for technique in techniques:
        above = [by_id[need] for need in technique.needs if need in by_id and by_id[need].level > technique.level]
        if not above:
            continue
        highest = max(above, key=lambda each: each.level)
        breach = Breach(
            field="level",
            what=f"level {technique.level}, and it needs `{highest.id}` of level {highest.level}",
            why=LEVEL.why,
            mend=f"write `level: {highest.level}`",
            edit=Edit(top=True, key="level", text=str(highest.level)),
        )
        yield _Between(technique, LEVEL, breach, also=highest.spot("level"))


def _same_plants(
    shelf: Shelf, techniques: Sequence[AnyTechnique], figures_by_id: Mapping[str, Sequence[Figure]]
) -> Iterator[_Between]:
    """Yield the later of each two techniques that disagree about a plant."""
    for there, here in combinations(techniques, 2):
        breach = disagreement(
            shelf.work(here), shelf.work(there), figures_by_id.get(here.id, ()), figures_by_id.get(there.id, ())
        )
        if breach:
            yield _Between(here, SAME_PLANT, breach, also=there.spot(breach.field))


def _twins(shelf: Shelf, firsts: Sequence[AnyTechnique]) -> Iterator[_Between]:
    """Yield where a telling in a second language differs from the first."""
    by_name = {own_name(technique): technique for technique in firsts}
    for technique in shelf.techniques:
        if is_twin(technique):
            first = by_name.get(own_name(technique))
            for breach in twin_breaches(technique, first, shelf.crew.hemisphere):
                yield _Between(technique, TWIN, breach, also=first.spot(breach.field) if first else None)
