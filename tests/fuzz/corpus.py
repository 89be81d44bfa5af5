"""The real files that are spoiled, and small shelves of them: one that is spoiled, with what it needs."""

import re
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from functools import cache
from pathlib import Path
from random import Random
from typing import Final

from tests.fuzz.mutate import mutated
from tests.support.cases import BASES, all_cases
from tests.support.source import ROOT

Files = dict[str, str]  # the text of each file by its place on the shelf

WEIGHTS: Final = {"technique": 10, "visit": 6, "crew": 3, "plants": 1, "grasses": 1, "people": 1}
VISIT: Final = "---\nsite: Orchard end\ndate: 2026-10-14\n{next}done:\n  - technique: {name}\n---\nAll is well.\n"


@dataclass(frozen=True)
class Real:
    """One real file: what it is, what it is called, where it stands on a shelf, its text, and whether it is right."""

    kind: str
    name: str
    place: str
    text: str
    right: bool


@dataclass(frozen=True)
class Tried:
    """A shelf as it was before it was spoiled, and after."""

    before: Files
    after: Files


@cache
def pool() -> dict[str, tuple[Real, ...]]:
    """Return every real file by its kind, in order of their names."""
    shelves = (ROOT / "tests/cases/shelves").glob("*/mended")
    homes = [ROOT / "techniques", *sorted(shelves)]
    paths = [path for home in homes for path in sorted(home.rglob("*")) if path.suffix in {".md", ".yaml"}]
    paths += sorted(BASES.iterdir())
    found = [*(_real(path) for path in paths if path.is_file()), *_of_cases()]
    return {kind: tuple(each for each in found if each.kind == kind) for kind in WEIGHTS}


def _real(path: Path) -> Real:
    """Return a file of the tree, all of which are right."""
    text = path.read_text(encoding="utf-8", errors="surrogateescape")
    if path.suffix == ".yaml":
        return Real(path.stem, path.stem, f"{path.stem}.yaml", text, right=True)
    if path.parent.name == "visits":
        return Real("visit", path.stem, f"visits/{path.stem}.md", text, right=True)
    return _technique(path.stem, text, right=True)


def _of_cases() -> Iterator[Real]:
    """Yield what each case is about, under its slug, and what its mends make of it; and the crew it names."""
    for case in all_cases():
        name = case.name.rpartition("--")[2]
        yield _technique(name, case.text, right=not case.said)
        if case.mended_text is not None:
            yield _technique(name, case.mended_text, right=True)
        if "crew" in case.parts:
            yield Real("crew", "crew", "crew.yaml", case.parts["crew"], right=not case.said)


def _technique(name: str, text: str, *, right: bool) -> Real:
    """Return a technique, in the folder of its family."""
    family = re.search(r"^family:\s*([a-z]+)", text, re.MULTILINE)
    return Real("technique", name, f"{family[1] if family else 'clipping'}/{name}.md", text, right)


def tried(chance: Random, *, gently: bool) -> Tried:
    """Return a shelf to try; where gently, one that may come through the check with one thing in it spoiled."""
    kind = chance.choices(list(WEIGHTS), list(WEIGHTS.values()))[0]
    real = chance.choice([each for each in pool()[kind] if each.right or not gently])
    before = dict(_with_needs(real, chance))
    spoiled = [real.place, *(place for place in before if not gently and chance.random() < 0.1)]
    after = {**before}
    for place in spoiled:
        while after[place] == before[place] or (not gently and chance.random() < 0.7):
            other = chance.choice(pool()[chance.choice((kind, kind, *WEIGHTS))])
            after[place] = mutated(after[place], other.text, chance)
    return Tried(before, after)


def _with_needs(real: Real, chance: Random) -> Iterable[tuple[str, str]]:
    """Yield a file's place and text, and those of what it needs to be read, and to be given to a client."""
    crews = [each for each in pool()["crew"] if each.right]
    yield "crew.yaml", (crews[0] if chance.random() < 0.4 else chance.choice(crews)).text
    wanted = set(re.findall(r"[a-z0-9]+(?:-[a-z0-9]+)+", real.text)) | {_first(real)}
    if real.kind not in {"technique", "visit"}:
        wanted.add(_first(chance.choice([each for each in pool()["technique"] if each.right])))
    found = {each.place: each for each in reversed(pool()["technique"]) if _first(each) in wanted}
    if real.kind == "technique":
        found[real.place] = real
    yield from ((place, each.text) for place, each in found.items())
    if real.kind != "visit" and found:
        name = _first(real if real.kind == "technique" else next(iter(found.values())))
        then = chance.choice(("", "", "next visit: 2026-12-01\n", "next visit: 2027-05-20\n", "language: es\n"))
        yield "visits/2026-10-14-orchard-end.md", VISIT.format(name=name, next=then)
    yield real.place, real.text


def _first(real: Real) -> str:
    """Return the name of a technique's first telling, whatever the language of this one."""
    return real.name.partition(".")[0]
