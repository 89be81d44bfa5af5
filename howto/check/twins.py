"""Tells a technique from its twin in another language, and finds where the two differ."""

import re
from collections.abc import Iterator, Mapping, Sequence
from pathlib import PurePosixPath
from typing import Any, Final

from howto.check.place import AUTHOR
from howto.check.twin_words import numbers_of, words_of
from howto.findings import Severity
from howto.languages.tags import base
from howto.model.family import Breach, Edit, Rule
from howto.model.measures import Measures
from howto.model.reference import FORMAT
from howto.model.shown import shown_cell
from howto.model.technique import AnyTechnique, Step
from howto.quantities import field_unit
from howto.seasons import Hemisphere, months_of

TWIN: Final[Rule[Any]] = Rule(
    name="shelf.twin",
    severity=Severity.ERROR,
    statement=(
        "A technique in a second language has the same measures, figures and pictures as the first, and as many "
        "steps, cautions and tasks, in the same order."
    ),
    why="two people who work side by side from two cards must work to one number and keep from one harm",
    references=(FORMAT,),
    applies="files such as `clip-a-ball.es.md` beside `clip-a-ball.md`",
)
_LANGUAGE: Final = re.compile(r"\.([a-z]{2,3}(?:-[A-Za-z]{2,4})?)$")
PARTS: Final = (
    ("tools", "tools"),
    ("materials", "materials"),
    ("steps", "steps"),
    ("cautions", "cautions"),
    ("finish", "things to tick at the finish"),
    ("aftercare", "aftercare tasks"),
)
NOTES: Final = (("key_points", "key points"), ("reasons", "reasons"), ("checks", "checks"), ("pictures", "pictures"))


def own_name(technique: AnyTechnique) -> str:
    """Return a technique's name without its language: `clip-a-ball` for `clip-a-ball.es.md`."""
    return _LANGUAGE.sub("", file_name(technique))


def is_twin(technique: AnyTechnique) -> bool:
    """Tell whether a technique is another one in a second language."""
    return bool(_LANGUAGE.search(file_name(technique)))


def file_name(technique: AnyTechnique) -> str:
    """Return the name of a technique's file without its ending."""
    return PurePosixPath(technique.path).stem if technique.path else technique.id


def in_first_words(technique: AnyTechnique, techniques: Sequence[AnyTechnique]) -> AnyTechnique:
    """Return a twin's measures in the words of the technique it is a twin of; any other technique as it is.

    So a rule that looks for words reads those of the first telling, and a garden's own measures are judged whatever
    language its leaflet is in.
    """
    first = next((each for each in techniques if not is_twin(each) and each.id == own_name(technique)), None)
    if first is None or not is_twin(technique):
        return technique
    own = {name: span for name, span in technique.spans.items() if span.path != technique.path}
    return first.model_copy(update={"measures": technique.measures, "spans": {**first.spans, **own}})


def twin_breaches(twin: AnyTechnique, first: AnyTechnique | None, hemisphere: Hemisphere) -> Iterator[Breach]:
    """Yield where a twin differs from the technique it is a twin of."""
    name = own_name(twin)
    if first is None:
        yield Breach(
            field="title",
            what=f"no `{name}.md` stands beside this file",
            why="a file with a language in its name is a second telling of the one without",
            mend=f"write `{name}.md` too, or name this file `{name}.md`",
        )
        return
    yield from _language(twin)
    if twin.family != first.family:
        yield _set(first, "family", twin.family, first.family, first.family)
        return
    yield from _header(twin, first, hemisphere)
    yield from _measures(twin, first)
    for part, words in PARTS:
        here, there = getattr(twin, part), getattr(first, part)
        if len(here) != len(there):
            yield _count(part, words, len(here), len(there), first)
    if len(twin.steps) == len(first.steps):
        for at, (step, other) in enumerate(zip(twin.steps, first.steps, strict=True)):
            yield from _step(at, step, other, first)
    if len(twin.cautions) == len(first.cautions):
        yield from _worn(twin, first)
    if len(twin.aftercare) == len(first.aftercare):
        yield from _care(twin, first)
    yield from words_of(twin, first)
    yield from numbers_of(twin, first)


def _language(twin: AnyTechnique) -> Iterator[Breach]:
    """Yield the breach of a file that says another language than its name."""
    found = _LANGUAGE.search(file_name(twin))
    named = found[1] if found else twin.language
    if base(twin.language) != base(named):
        yield Breach(
            field="language",
            what=f"`language` is `{twin.language}`, and the file's name says `{named}`",
            why="what it says is printed and read out in one language",
            mend=f"write `language: {named}`, or rename the file to `{own_name(twin)}.{twin.language}.md`",
            edit=Edit(top=True, key="language", text=named),
        )


def _header(twin: AnyTechnique, first: AnyTechnique, hemisphere: Hemisphere) -> Iterator[Breach]:
    """Yield what the front matter says otherwise: level, minutes, needs, plants, season."""
    if twin.level != first.level:
        yield _set(first, "level", str(twin.level), str(first.level), str(first.level))
    if twin.minutes != first.minutes:
        here, there = ("not given" if each is None else f"{each:g}" for each in (twin.minutes, first.minutes))
        yield _set(first, "minutes", here, there, there if first.minutes is not None else "")
    for key, names, others in (("needs", twin.needs, first.needs), ("plants", twin.plants, first.plants)):
        if tuple(map(str.casefold, names)) != tuple(map(str.casefold, others)):
            here, there = (", ".join(each) or "not given" for each in (names, others))
            yield _set(first, key, here, there, f"[{', '.join(others)}]" if others else "")
    if _months(twin, hemisphere) != _months(first, hemisphere):
        yield Breach(
            field="season",
            what=f"the season is `{twin.season or 'not given'}` here and `{first.season or 'not given'}` in "
            f"`{first.path}`",
            why="both name the same months",
            mend=f"write the months of `season: {first.season}` in this language, or those very words"
            if first.season
            else "take `season` out",
        )


def _months(technique: AnyTechnique, hemisphere: Hemisphere) -> tuple[int, ...] | None:
    """Return the months of a technique's season."""
    return months_of(technique.season, hemisphere) if technique.season else None


def _set(first: AnyTechnique, key: str, here: str, there: str, text: str) -> Breach:
    """Return the breach of a key of the front matter that says something else."""
    return Breach(
        field=key,
        what=f"`{key}` is {here} here and {there} in `{first.path}`",
        why="both say the same work",
        mend=f"write `{key}: {text}`" if text else f"take `{key}` out",
        edit=Edit(top=True, key=key, text=text) if text else None,
    )


def _count(field: str, words: str, here: int, there: int, first: AnyTechnique) -> Breach:
    """Return the breach of a part that has more or fewer lines."""
    return Breach(
        field=field,
        what=f"{here} {words} here and {there} in `{first.path}`",
        why="both say the same work, part by part",
        mend=f"write {there} here, the same ones in the same order",
    )


def _step(at: int, step: Step, other: Step, first: AnyTechnique) -> Iterator[Breach]:
    """Yield what stands under a step in one language alone."""
    for part, words in NOTES:
        here, there = getattr(step, part), getattr(other, part)
        if len(here) != len(there):
            yield _count(f"steps[{at}]", f"{words} in step {at + 1}", len(here), len(there), first)
    for number, (picture, theirs) in enumerate(zip(step.pictures, other.pictures, strict=False)):
        field = f"steps[{at}].pictures[{number}]"
        if picture.file != theirs.file:
            yield Breach(
                field=field,
                what=f"step {at + 1} shows `{picture.file}` here and `{theirs.file}` in `{first.path}`",
                why="both show the same pictures",
                mend=f"write `{theirs.file}`",
            )
            continue
        marks, wanted = ([(m.x_percent, m.y_percent) for m in each.marks] for each in (picture, theirs))
        if marks != wanted:
            points = ", ".join(f"`{x:g} {y:g}`" for x, y in wanted)
            yield Breach(
                field=field,
                what=f"the marks on `{picture.file}` stand elsewhere than in `{first.path}`",
                why="a number on a picture points at the same spot in every language",
                mend=f"write the marks {points}, in that order" if points else "take the marks out",
            )


def _worn(twin: AnyTechnique, first: AnyTechnique) -> Iterator[Breach]:
    """Yield each caution after which more or fewer things are to be worn."""
    for at, (caution, other) in enumerate(zip(twin.cautions, first.cautions, strict=True)):
        if len(caution.wear) != len(other.wear):
            worn = ", ".join(other.wear)
            yield Breach(
                field=f"cautions[{at}]",
                what=f"{len(caution.wear)} things to wear here and {len(other.wear)} in `{first.path}`",
                why="what keeps a hand or an eye whole is the same in every language",
                mend=f"write after the arrow, in this language: {worn}" if worn else "take the arrow and its words out",
            )


def _care(twin: AnyTechnique, first: AnyTechnique) -> Iterator[Breach]:
    """Yield each task that falls due at another time, or is told as one not to do."""
    for at, (care, other) in enumerate(zip(twin.aftercare, first.aftercare, strict=True)):
        apart = {"text": ""}
        if care.never == other.never and (
            care.never or care.when.model_copy(update=apart) == other.when.model_copy(update=apart)
        ):
            continue
        yield Breach(
            field=f"aftercare[{at}].when",
            what=f"`{care.when.text}` here is `{other.when.text}` in `{first.path}`",
            why="both leaflets give a task the same date",
            mend=f"write `{other.when.text}:` in this language, or those very words",
        )


def _measures(twin: AnyTechnique, first: AnyTechnique) -> Iterator[Breach]:
    """Yield the measures that differ."""
    here, there = twin.measures.given(), first.measures.given()
    for field in dict.fromkeys((*there, *here)):
        if here.get(field) == there.get(field) and twin.measures.tolerance(field) == first.measures.tolerance(field):
            continue
        name, _ = field_unit(field)
        theirs = _told(first, field, there)
        yield Breach(
            field=f"measures.{field}",
            what=f"`{name}` is {_told(twin, field, here)} here and {theirs} in `{first.path}`",
            why="a number is the same in every language",
            mend=f"write `{name}: {theirs}`" if field in there else f"take `{name}` out",
        )


def _told(technique: AnyTechnique, field: str, given: Mapping[str, Any]) -> str:
    """Return a measure as its author wrote it."""
    if field not in given:
        return "not given"
    measures: Measures = technique.measures
    value, (_, unit) = given[field], field_unit(field)
    if isinstance(value, bool):
        return "yes" if value else "no"
    plain = isinstance(value, int | float)
    return measures.written.get(field) or (shown_cell(float(value), unit or "", AUTHOR) if plain else str(value))
