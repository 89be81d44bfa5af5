"""Checks that a visit names no address, phone, e-mail or door code, and that pictures stay with their client."""

from collections.abc import Iterator, Mapping
from dataclasses import replace
from datetime import date
from typing import Any, Final, NamedTuple

from howto.check.place import Sources, noted, settled, where_said
from howto.check.private import given_away
from howto.findings import Finding, Severity
from howto.guarded import guarded
from howto.model.crew import Crew
from howto.model.family import Rule
from howto.model.passages import written
from howto.model.prose import plain
from howto.model.reference import FORMAT
from howto.model.shelf import Shelf, folded
from howto.model.technique import AnyTechnique, Picture
from howto.model.visit import Visit
from howto.span import Located, Span

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
STRANGERS: Final[Rule[Any]] = Rule(
    name="technique.private",
    severity=Severity.ERROR,
    statement="A technique names no address, phone number, e-mail address or door code but the crew's own.",
    why="cards and pictures go out to people who do not know the client",
    references=(FORMAT,),
    applies="a technique's file name and all its words",
)
PRIVACY_RULES: Final = (ADDRESS, PHONE, EMAIL, CODE, PUBLISH, SHARED, STRANGERS)
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

TAKE_OUT: Final = f"take it out; if anyone may know it, say who in a line `waive: {{{STRANGERS.name}: …}}`"


class _Passage(NamedTuple):
    """Some words and where they stand; `label` for the site; of a file's own name, a better `name`."""

    text: str
    span: Span
    label: bool = False
    name: str = ""


def privacy_findings(shelf: Shelf, sources: Sources) -> Iterator[Finding]:
    """Yield what a shelf's visits give away, and pictures that went where they should not."""
    found: list[Finding] = []
    for visit in shelf.visits:
        with guarded(found, Span(visit.path), "look for what gives the client away"):
            for passage in _passages(visit):
                found += _given(passage, shelf.crew, visit.located, sources)
    for technique in shelf.techniques:
        with guarded(found, technique.spot("title"), "look for what gives a client away"):
            located = technique.located
            given = [
                each
                for passage in _said(technique)
                for each in _given(passage, shelf.crew, located, sources, STRANGERS)
            ]
            found += settled(technique, given, (STRANGERS,), sources)
    with guarded(found, Span(shelf.root), "look for pictures that may not go out"):
        found += _unasked(shelf, sources)
        found += _shared(shelf, sources)
    yield from found


def _passages(visit: Visit) -> Iterator[_Passage]:
    """Yield every text of a visit that could be printed or become a file's name."""

    def at(field: str, home: str = "") -> Span:
        return visit.spans.get(field, visit.spans.get(home, Span(visit.path)))

    yield _named(visit.id, visit.path, "by its day and a label, such as `2026-10-14-orchard-end.md`")
    yield _Passage(visit.site, at("site"), label=True)
    for number, job in enumerate(visit.jobs):
        home = f"jobs[{number}]"
        yield _Passage(job.what, at(f"{home}.what", home))
        yield _Passage(job.plant, at(f"{home}.plant", home))
        for name, text in _texts(job.technique):
            yield _Passage(text, at(f"{home}.measures.{name}", home))
    for number, paragraph in enumerate(visit.words):
        yield _Passage(plain(paragraph), at(f"words[{number}]", "words"))
    for name, pictures in (("before", visit.before), ("after", visit.after)):
        for number, picture in enumerate(pictures):
            home = f"{name}[{number}]"
            yield _Passage(_worded(picture), at(home, name))
            yield _Passage(picture.alt, at(f"{home}.alt", home))
            yield _Passage(picture.credit, at(f"{home}.credit", home))


def _said(technique: AnyTechnique) -> Iterator[_Passage]:
    """Yield every text of a technique that could be printed or become a file's name."""
    yield _named(technique.id, technique.path, "by what is done, such as `clip-a-ball.md`")
    for passage in written(technique):
        yield _Passage(passage.text, technique.spot(passage.field))
    for number, plant in enumerate(technique.plants):
        yield _Passage(plant, technique.spot(f"plants[{number}]"))
    for name, text in _texts(technique):
        yield _Passage(text, technique.spot(f"measures.{name}"))


def _named(id_: str, path: str, mend: str) -> _Passage:
    """Return the words of a file's name, a day in front of them left off."""
    words = id_.replace("-", " ")
    try:
        date.fromisoformat(id_[:10])
    except ValueError:
        pass
    else:
        words = words[10:] if id_[10:11] in ("", "-") and id_[4:5] == "-" else words
    return _Passage(words.strip(), Span(path), label=True, name=f"rename the file {mend}")


def _texts(technique: AnyTechnique) -> Iterator[tuple[str, str]]:
    """Yield the measures of a technique that are words of the author's own."""
    return ((name, value) for name, value in technique.measures if isinstance(value, str))


def _worded(picture: Picture) -> str:
    """Return a picture's file name as words."""
    return picture.file.rpartition(".")[0].replace("-", " ").replace("_", " ")


def _given(
    passage: _Passage, crew: Crew, located: Mapping[Span, Located], sources: Sources, rule: Rule[Any] | None = None
) -> Iterator[Finding]:
    """Yield what a passage gives away, under a rule or under that of its kind."""
    for given in given_away(passage.text, crew, label=passage.label):
        span = where_said(passage.span, given.words, located)
        broken = rule or _OF_KIND[given.kind]
        what = f"`{given.words}` {_SAID[given.kind]}" + (", in the file's name" if passage.name else "")
        mend = passage.name or (_MEND[given.kind] if rule is None else TAKE_OUT)
        found = noted(broken, span, sources, what, broken.why, mend)
        yield found if given.sure else replace(found, severity=Severity.WARNING)


def _unasked(shelf: Shelf, sources: Sources) -> Iterator[Finding]:
    """Yield each picture of a step, and the crew's mark, that a visit names too without leave to publish it."""
    kept = shelf.private_pictures
    for file, span in _going_out(shelf):
        visit = kept.get(shelf.picture(file))
        if visit is None:
            continue
        what = (
            f"{_called(shelf, file, visit)} was taken on the visit `{visit.id}`, which does not say that it may go out"
        )
        mend = f"ask the client, then write `may publish: yes` in `{visit.path}`; or take the picture out here"
        found = noted(PUBLISH, span, sources, what, PUBLISH.why, mend)
        yield replace(found, also=visit.spans.get("site", Span(visit.path)))


def _going_out(shelf: Shelf) -> Iterator[tuple[str, Span]]:
    """Yield the pictures that people see who do not know the client, each with its place."""
    for technique in shelf.techniques:
        for at, step in enumerate(technique.steps):
            for number, picture in enumerate(step.pictures):
                yield picture.file, technique.spot(f"steps[{at}].pictures[{number}]")
    if shelf.crew.mark:
        yield f"../{shelf.crew.mark}", shelf.crew.spans.get("mark", Span(f"{shelf.root}/crew.yaml"))


def _called(shelf: Shelf, file: str, visit: Visit) -> str:
    """Return a picture's name, with the one that a visit gives it where that is another."""
    named = [
        picture.file for picture in (*visit.before, *visit.after) if shelf.picture(picture.file) == shelf.picture(file)
    ]
    shown = file.removeprefix("../")
    return f"`{shown}`" if folded(shown) in map(folded, named) else f"`{shown}`, the same picture as `{named[0]}`,"


def _shared(shelf: Shelf, sources: Sources) -> Iterator[Finding]:
    """Yield each picture that visits of two sites name, at the later of them."""
    first: dict[str, tuple[Visit, Span]] = {}
    for visit in shelf.visits:
        for name, pictures in (("before", visit.before), ("after", visit.after)):
            for number, picture in enumerate(pictures):
                span = visit.spans.get(f"{name}[{number}]", visit.spans.get(name, Span(visit.path)))
                other, place = first.setdefault(shelf.picture(picture.file), (visit, span))
                if " ".join(other.site.casefold().split()) == " ".join(visit.site.casefold().split()):
                    continue
                called = _called(shelf, picture.file, other)
                what = f"{called} is a picture of `{other.site}` too"
                mend = f"take `{picture.file}` out here, or out of `{other.path}`"
                yield replace(noted(SHARED, span, sources, what, SHARED.why, mend), also=place)
