"""Checks the `{words}` of a visit's own sentences: each stands for one thing in the jobs it speaks of."""

from collections.abc import Iterator, Sequence
from difflib import get_close_matches
from typing import Any, Final

from howto.check.claims import lone_brace
from howto.check.place import Sources, line_at, where_said
from howto.findings import Finding, Severity, in_order
from howto.model.family import Rule
from howto.model.filling import Meanings, values_by_place
from howto.model.passages import Written, written_on
from howto.model.prose import BRACED, compared
from howto.model.reference import FORMAT
from howto.model.visit import Visit
from howto.span import Span

VISIT_WORDS: Final[Rule[Any]] = Rule(
    name="visit.words",
    severity=Severity.ERROR,
    statement="Words in braces on a visit name a measure or a figure of its jobs, and one that is the same in all.",
    why="they are replaced by the number they name; others would be printed with their braces on the client's leaflet",
    references=(FORMAT,),
    applies="visits with `{words}`",
)
MOST_NAMED: Final = 3


def check_visit_words(visit: Visit, own: Sequence[Meanings], sources: Sources) -> tuple[Finding, ...]:
    """Return where a visit's own words have braces that nothing can be put in the place of.

    `own` are what `{words}` stand for in each of its jobs.
    """
    places = values_by_place(own)
    found: list[Finding] = []
    for passage in written_on(visit):
        known = places.get(passage.field, places[""])
        for needle, what, why, mend in _odd(passage, known, own):
            span = where_said(_spot(visit, passage.field), needle, visit.located)
            found.append(VISIT_WORDS.finding(span, what, why, mend, line_at(span, sources)))
    return in_order(found)


def _spot(visit: Visit, field: str) -> Span:
    """Return where a passage stands, or the part it belongs to."""
    outer = field.rpartition(".")[0]
    return visit.spans.get(field) or visit.spans.get(outer) or visit.spans.get("words") or Span(visit.path)


def _odd(passage: Written, known: Meanings, own: Sequence[Meanings]) -> Iterator[tuple[str, str, str, str]]:
    """Yield the words that cannot be filled, with what they are, why that is wrong, and what to write."""
    for words in (found for run in passage.words for found in BRACED.finditer(run.text)):
        key = compared(words[1])
        if key in known:
            continue
        meant = list(dict.fromkeys(each[key] for each in own if key in each))
        what = f"`{words[0]}` stands for {'more than one thing' if meant else 'nothing'} here"
        if meant:
            why = f"the jobs of this visit have {' and '.join(meant[:MOST_NAMED])}"
            yield words[0], what, why, f"write {' or '.join(f'`{each}`' for each in meant[:MOST_NAMED])}"
            continue
        near = [f"`{{{each}}}`" for each in get_close_matches(key[:80], known, n=MOST_NAMED, cutoff=0.6)]
        mend = f"write {' or '.join(near)}" if near else f"write `{words[1].strip()}` without braces, or take it out"
        yield words[0], what, "no measure or figure of its jobs has that name", mend
    brace = lone_brace(passage)
    if brace:
        other = "}" if brace == "{" else "{"
        what = f"a `{brace}` without its `{other}`"
        why = "braces stand round the name of a measure or a figure"
        yield brace, what, why, f"write the `{other}`, or take the `{brace}` out"
