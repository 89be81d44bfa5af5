"""Checks that a visit names no address, phone, e-mail or door code, and that pictures stay with their client."""

from collections.abc import Iterator
from dataclasses import replace
from typing import Any, Final, NamedTuple

from howto.check.place import Sources, noted, where_said
from howto.check.private import given_away
from howto.findings import Finding, Severity
from howto.guarded import guarded
from howto.model.crew import Crew
from howto.model.family import Rule
from howto.model.prose import plain
from howto.model.reference import FORMAT
from howto.model.shelf import Shelf
from howto.model.technique import Picture
from howto.model.visit import Visit
from howto.span import Span

MOST_LINES: Final = 20  # of a passage that are looked through
WHERE: Final = "a visit's file name, site, words, `what`, and the names, descriptions and credits of its pictures"


def _rule(name: str, statement: str, why: str, applies: str = WHERE) -> Rule[Any]:
    return Rule(
        name=f"visit.{name}",
        severity=Severity.ERROR,
        statement=statement,
        why=why,
        references=(FORMAT,),
        applies=applies,
    )


ADDRESS: Final = _rule(
    "address",
    "A site is a label, and no street address stands in a visit.",
    "files are copied and leaflets are passed on; an address in one tells strangers whose garden it is",
)
PHONE: Final = _rule(
    "phone", "No client's phone number stands in a visit.", "a number on a page that is passed on is out of their hands"
)
EMAIL: Final = _rule(
    "email", "No client's e-mail address stands in a visit.", "an address on a page is gathered by whoever sees it"
)
CODE: Final = _rule(
    "door-code",
    "No code, and no place where a key is kept, stands in a visit.",
    "a leaflet on a kitchen table would open the house",
)
PUBLISH: Final = _rule(
    "may-publish",
    "A visit's picture is shown by a technique only where the visit says `may publish: yes`.",
    "a technique's pictures go out to people who do not know the client",
    "pictures of visits that a technique's step shows",
)
SHARED: Final = _rule(
    "shared-picture",
    "A picture belongs to the visits of one site.",
    "one client's leaflet would show another's garden",
    "pictures that two visits name",
)
PRIVACY_RULES: Final = (ADDRESS, PHONE, EMAIL, CODE, PUBLISH, SHARED)
_OF_KIND: Final = {"address": ADDRESS, "phone": PHONE, "email": EMAIL, "door-code": CODE}
_SAID: Final = {
    "address": "looks like a street address",
    "phone": "looks like a phone number",
    "email": "is an e-mail address",
    "door-code": "looks like the way into a house",
}
_MEND: Final = {
    "address": "write a label that only you understand, such as `Orchard end`",
    "phone": "take the number out; the crew's own number belongs in `contact:` of crew.yaml",
    "email": "take it out; the crew's own belongs in `contact:` of crew.yaml",
    "door-code": "take it out, and keep it where only the crew looks",
}


class _Passage(NamedTuple):
    """Some words of a visit and where they stand; `label` for the site, `name` for the file's own name."""

    text: str
    span: Span
    label: bool = False
    name: bool = False


def privacy_findings(shelf: Shelf, sources: Sources) -> Iterator[Finding]:
    """Yield what a shelf's visits give away, and pictures that went where they should not."""
    found: list[Finding] = []
    for visit in shelf.visits:
        with guarded(found, Span(visit.path), "look for what gives the client away"):
            for passage in _passages(visit):
                found += _given(passage, shelf.crew, sources)
    with guarded(found, Span(shelf.root), "look for pictures that may not go out"):
        found += _unasked(shelf, sources)
        found += _shared(shelf, sources)
    yield from found


def _passages(visit: Visit) -> Iterator[_Passage]:
    """Yield every text of a visit that could be printed or become a file's name."""

    def at(field: str, home: str = "") -> Span:
        return visit.spans.get(field, visit.spans.get(home, Span(visit.path)))

    yield _Passage(visit.id[11:].replace("-", " "), Span(visit.path), label=True, name=True)
    yield _Passage(visit.site, at("site"), label=True)
    for number, job in enumerate(visit.jobs):
        yield _Passage(job.what, at(f"jobs[{number}].what", f"jobs[{number}]"))
    for number, paragraph in enumerate(visit.words):
        yield _Passage(plain(paragraph), at(f"words[{number}]", "words"))
    for name, pictures in (("before", visit.before), ("after", visit.after)):
        for number, picture in enumerate(pictures):
            words = " / ".join((_worded(picture), picture.alt, picture.credit))
            yield _Passage(words, at(f"{name}[{number}]", name))


def _worded(picture: Picture) -> str:
    """Return a picture's file name as words."""
    return picture.file.rpartition(".")[0].replace("-", " ").replace("_", " ")


def _given(passage: _Passage, crew: Crew, sources: Sources) -> Iterator[Finding]:
    for given in given_away(passage.text, crew, label=passage.label):
        span = where_said(passage.span, given.words, sources, passage.span.line + MOST_LINES) or passage.span
        what = f"`{given.words}` {_SAID[given.kind]}" + (", in the file's name" if passage.name else "")
        mend = "rename the file by its day and a label, such as `2026-10-14-orchard-end.md`"
        mend = mend if passage.name else _MEND[given.kind]
        rule = _OF_KIND[given.kind]
        found = noted(rule, span, sources, what, rule.why, mend)
        yield found if given.sure else replace(found, severity=Severity.WARNING)


def _unasked(shelf: Shelf, sources: Sources) -> Iterator[Finding]:
    """Yield each picture of a step that a visit names too, without leave to publish it."""
    private = [visit for visit in shelf.visits if not visit.may_publish]
    kept = {picture.file.casefold(): visit for visit in private for picture in (*visit.before, *visit.after)}
    for technique in shelf.techniques:
        for at, step in enumerate(technique.steps):
            for number, picture in enumerate(step.pictures):
                visit = kept.get(picture.file.casefold())
                if visit is None:
                    continue
                span = technique.spot(f"steps[{at}].pictures[{number}]")
                what = f"`{picture.file}` was taken on the visit `{visit.id}`, which does not say that it may go out"
                mend = f"ask the client, then write `may publish: yes` in `{visit.path}`; or take the picture out here"
                found = noted(PUBLISH, span, sources, what, PUBLISH.why, mend)
                yield replace(found, also=visit.spans.get("site", Span(visit.path)))


def _shared(shelf: Shelf, sources: Sources) -> Iterator[Finding]:
    """Yield each picture that visits of two sites name, at the later of them."""
    first: dict[str, tuple[Visit, Span]] = {}
    for visit in shelf.visits:
        for name, pictures in (("before", visit.before), ("after", visit.after)):
            for number, picture in enumerate(pictures):
                span = visit.spans.get(f"{name}[{number}]", visit.spans.get(name, Span(visit.path)))
                other, place = first.setdefault(picture.file.casefold(), (visit, span))
                if " ".join(other.site.casefold().split()) == " ".join(visit.site.casefold().split()):
                    continue
                what = f"`{picture.file}` is a picture of `{other.site}` too"
                mend = f"take `{picture.file}` out here, or out of `{other.path}`"
                yield replace(noted(SHARED, span, sources, what, SHARED.why, mend), also=place)
