"""Checks prose against the figures: numbers that disagree, and `{words}` that stand for nothing."""

from collections.abc import Iterator, Sequence
from dataclasses import replace
from difflib import get_close_matches
from typing import Any, Final, NamedTuple

from howto.check.numbers import Claim, claims_in, named_in
from howto.check.place import NO_SOURCES, Sources, line_at, placed, settled, where_said
from howto.findings import Finding, Severity, in_order
from howto.model.family import Breach, Rule
from howto.model.figure import Figure
from howto.model.passages import Written, written
from howto.model.prose import BRACED, compared
from howto.model.reference import FORMAT
from howto.model.shown import shown_measures
from howto.model.technique import AnyTechnique
from howto.model.work import AnyWork
from howto.quantities import field_unit

NUMBER: Final[Rule[Any]] = Rule(
    name="technique.number",
    severity=Severity.ERROR,
    statement="A number in prose that names a measure or a figure agrees with it.",
    why=(
        "a number has one home; typed a second time it drifts. It agrees within the measure's ±, or within half "
        "of its own last digit (but 3 % at most), or for a figure within half a percent"
    ),
    references=(FORMAT,),
    applies="prose that ties a number to the name of a measure or a figure",
)
WORDS: Final[Rule[Any]] = Rule(
    name="technique.words",
    severity=Severity.ERROR,
    statement="Words in braces name a measure that is given, its tolerance, or a figure.",
    why="they are replaced by the number they name; words that name nothing would be printed with their braces",
    references=(FORMAT,),
    applies="prose with `{words}`",
)
BRACES: Final[Rule[Any]] = Rule(
    name="technique.braces",
    severity=Severity.ERROR,
    statement="Every brace in prose has its other half.",
    why="braces stand round the name of a measure or a figure, and mean nothing by themselves",
    references=(FORMAT,),
    applies="prose with braces",
)
CLAIM_RULES: Final = (NUMBER, WORDS, BRACES)


class _Noted(NamedTuple):
    """A breach and the very words it is about."""

    rule: Rule[Any]
    breach: Breach
    needle: str


def check_claims(work: AnyWork, figures: Sequence[Figure], sources: Sources = NO_SOURCES) -> tuple[Finding, ...]:
    """Return where the words of a technique disagree with its measures and its computed `figures`."""
    technique, names = work.technique, _names(work, figures)
    numbers = named_in(work.measures, figures, work.crew.read_in("en"))
    found: list[Finding] = []
    for passage in written(technique):
        noted = [*_braces(passage, names), *_words(passage, technique, names)]
        noted += [_claim(passage, claim) for claim in claims_in(passage.text, numbers)]
        found += [_placed(each, technique, sources) for each in noted]
    return in_order(settled(technique, found, CLAIM_RULES, sources))


def _names(work: AnyWork, figures: Sequence[Figure]) -> dict[str, str]:
    """Return what `{words}` may be, as written, by how they are compared."""
    known: dict[str, str] = {}
    for measure in shown_measures(work.measures, work.reader):
        known[compared(measure.key)] = measure.key
        if measure.tolerance:
            known[compared(f"{measure.key} tolerance")] = f"{measure.key} tolerance"
    for figure in figures:
        known.setdefault(compared(figure.name), figure.name)
    return known


def _claim(passage: Written, claim: Claim) -> _Noted:
    """Return the breach of a number that disagrees."""
    named = claim.named
    kind = "measure" if named.measure else "figure"
    counted = named.unit is None
    breach = Breach(
        field=passage.field,
        what=f"`{claim.written}` disagrees with the {kind} `{named.name}`, {named.shown}",
        why=(
            f"{claim.found} is written here and {named.shown} "
            + ("under `measures:`" if named.measure else "is worked out from the measures")
        ),
        mend=f"write `{{{named.name}}}` in place of `{claim.written}`",
        also=f"measures.{named.field}" if named.field else "",
        severity=Severity.WARNING if counted else None,
    )
    return _Noted(NUMBER, breach, claim.written)


def lone_brace(passage: Written) -> str:
    """Return the first brace of a passage that has no other half in the same style; nothing where each has one."""
    bare = (BRACED.sub("", run.text) for run in passage.words)
    return next((letter for text in bare for letter in text if letter in "{}"), "")


def _braces(passage: Written, names: dict[str, str]) -> Iterator[_Noted]:
    """Yield a breach for a passage in which a brace stands alone."""
    brace = lone_brace(passage)
    if not brace:
        return
    bare = BRACED.sub("", passage.text)
    after = bare.partition("{")[2] if brace == "{" else bare.partition("}")[0]
    near = _near(" ".join(after.split()[:3] if brace == "{" else after.split()[-3:]), names)
    other = "}" if brace == "{" else "{"
    breach = Breach(
        field=passage.field,
        what=f"a `{brace}` without its `{other}`",
        why="braces stand round the name of a measure or a figure",
        mend=f"write `{{{near[0]}}}`" if near else f"write the `{other}`, or take the `{brace}` out",
    )
    yield _Noted(BRACES, breach, brace)


def _words(passage: Written, technique: AnyTechnique, names: dict[str, str]) -> Iterator[_Noted]:
    """Yield a breach for each `{words}` that stand for nothing, or where they are not replaced."""
    for run in passage.words:
        for found in BRACED.finditer(run.text):
            known = compared(found[1]) in names
            if passage.filled and known:
                continue
            breach = (
                _unknown(passage.field, found[1], technique, names)
                if not known
                else Breach(
                    field=passage.field,
                    what=f"`{found[0]}` stands in a name",
                    why="words in braces are replaced wherever a sentence may stand, and not in a name",
                    mend=f"take `{found[0]}` out of the name, and write it in a sentence",
                )
            )
            yield _Noted(WORDS, breach, found[0])


def _unknown(field: str, words: str, technique: AnyTechnique, names: dict[str, str]) -> Breach:
    """Return the breach of words that name no measure and no figure."""
    key = compared(words)
    unit = {
        compared(name): each
        for name, each in (field_unit(each) for each in type(technique.measures).model_fields)
        if name not in {"tolerances", "written"}
    }
    own = key.removesuffix(" tolerance")
    if own in names and own != key:
        why = f"`{own}` is written without a ±"
        mend = f"write a ± after `{own}:` under `measures:`, such as `± 5 %`"
    elif key in unit:
        why = f"`{key}` is not under `measures:`"
        measured = f", in {unit[key]} or the unit you measure in" if unit[key] else ""
        mend = f"write a line `{key}:` with what it is under `measures:`{measured}"
    else:
        near = _near(words, names)
        why = "no measure of this file and no figure worked out from them has that name"
        listed = " or ".join(f"`{{{each}}}`" for each in near)
        mend = f"write {listed}" if near else f"write the words without braces, or one of {_some(names)}"
    return Breach(field=field, what=f"`{{{words}}}` stands for nothing here", why=why, mend=mend)


def _near(words: str, names: dict[str, str]) -> list[str]:
    """Return up to three names nearest to the words."""
    return [names[each] for each in get_close_matches(compared(words)[:80], names, n=3, cutoff=0.6)]


def _some(names: dict[str, str]) -> str:
    """Return the first few names that there are."""
    return ", ".join(f"`{{{each}}}`" for each in tuple(names.values())[:4]) or "the measures given"


def _placed(noted: _Noted, technique: AnyTechnique, sources: Sources) -> Finding:
    """Return the finding at the very words, where the file is at hand and they stand in the passage."""
    finding = placed(noted.rule, noted.breach, technique, sources)
    span = where_said(finding.span, noted.needle, technique.located)
    return replace(finding, span=span, text=line_at(span, sources))
