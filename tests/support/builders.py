"""Builds whole techniques for tests of rules, and follows the mends that rules offer."""

import re
from collections.abc import Callable, Iterator, Mapping
from dataclasses import replace
from typing import Any, Literal, get_args, get_origin

from howto.findings import Severity
from howto.model.crew import Crew
from howto.model.family import AnyFamily, Breach, Edit, Family, Rule
from howto.model.figure import Figure
from howto.model.measures import Measures
from howto.model.plants import PlantBook
from howto.model.prose import Prose, prose
from howto.model.reference import GEOMETRY, PRACTICE
from howto.model.technique import AnyTechnique, Care, Hazard, Kit, Step, Technique, When
from howto.model.work import AnyWork, Work
from howto.quantities import field_unit, parse_in
from howto.span import Span

BASE: dict[str, Any] = {
    "id": "do-the-work",
    "title": "Do the work",
    "level": 1,
    "minutes": 25.0,
    "intro": (prose("Good work looks even from two sides."),),
    "tools": (Kit(name="Hand shears", note=prose("sharp, wiped clean")),),
    "materials": (Kit(name="Drop sheet", note=prose("1")),),
    "steps": (
        Step(
            title="Stand back and look.",
            text=prose("Look from two sides before starting."),
            key_points=(prose("Find the line first."),),
            reasons=(prose("A line found late is a line cut twice."),),
        ),
        Step(title="Do the work.", text=prose("Go round once, then once more.")),
        Step(title="Clear up.", text=prose("Rake up and take away.")),
    ),
    "cautions": (Hazard(title="Blades.", text=prose("Keep the free hand behind them."), wear=("gloves",)),),
    "finish": (prose("Even from two sides"),),
    "aftercare": (Care(when=When(text="Within 2 days", kind="within", days=2), text=prose("water once")),),
}


def technique(
    family: AnyFamily,
    having: Mapping[str, Any] | None = None,
    /,
    *,
    crew: Crew | None = None,
    book: PlantBook | None = None,
    tolerances: Mapping[str, float] | None = None,
    **measures: Any,
) -> AnyWork:
    """Return a whole technique of a family that says nothing unusual.

    The measures start from the family's starter; `measures` go over them by field name, None taking one out.
    `having` are parts of the technique itself (`{"plants": ("beech",), "level": 2}`), and `tolerances` the ±
    of measures by field name, in the field's unit.
    """
    values, written, spread = _starter(family)
    for field, value in measures.items():
        spread.pop(field, None)
        written.pop(field, None)
        values[field] = value
    given = {field: value for field, value in values.items() if value is not None}
    whole = family.measures(**given, tolerances={**spread, **(tolerances or {})}, written=written)
    parts = {**BASE, "path": f"techniques/{family.name}/do-the-work.md", **(having or {})}
    made: AnyTechnique = Technique(**parts, family=family.name, measures=whole)
    return Work(made, crew or Crew(), book or PlantBook())


def _starter(family: AnyFamily) -> tuple[dict[str, Any], dict[str, str], dict[str, float]]:
    """Return the starter's values, their writing and their tolerances, by field name."""
    values: dict[str, Any] = {}
    written: dict[str, str] = {}
    spread: dict[str, float] = {}
    for key, text in family.starter:
        field = keys_of(family.measures)[key]
        values[field], give = read_measure(family.measures, field, text)
        written[field] = text
        if give is not None:
            spread[field] = give
    return values, written, spread


def read_measure(model: type[Measures], field: str, text: str) -> tuple[Any, float | None]:
    """Return the value and the tolerance of a measure as an author would write it."""
    kinds = set(_kinds(model.model_fields[field].annotation))
    if bool in kinds:
        return text == "yes", None
    if str in kinds or any(get_origin(kind) is Literal for kind in kinds):
        return text, None
    unit = field_unit(field)[1] or ""
    if any(get_origin(kind) is tuple for kind in kinds):
        return tuple(parse_in(each.strip(), unit)[0] for each in text.split(",")), None
    value, give = parse_in(text, unit)
    return (round(value) if int in kinds and float not in kinds else value), give


def keys_of(model: type[Measures]) -> dict[str, str]:
    """Return the field names of measures by the key an author writes."""
    return {field_unit(name)[0]: name for name in model.model_fields if name not in {"tolerances", "written"}}


def _kinds(annotation: Any) -> Iterator[Any]:
    """Yield the types of an annotation, those of a union one by one."""
    if get_origin(annotation) in {Literal, tuple} or not get_args(annotation):
        yield annotation
        return
    for each in get_args(annotation):
        yield from _kinds(each)


def breaches(rule: Rule[Any], broken: AnyWork) -> list[Breach]:
    """Return what a rule finds in a technique."""
    assert rule.check is not None, f"{rule.name} is looked for elsewhere"
    return [_told(each, broken) for each in rule(broken)]


def _told(breach: Breach, work: AnyWork) -> Breach:
    """Return a breach as its author reads it."""
    reader = work.crew.read_in("en")
    what, why, mend = (reader.plain(text) for text in (breach.what, breach.why, breach.mend))
    return replace(breach, what=what, why=why, mend=mend)


def only(rule: Rule[Any], broken: AnyWork) -> Breach:
    """Return the one breach of a rule; none or several fail the test."""
    said = breaches(rule, broken)
    assert len(said) == 1, [each.what for each in said]
    return said[0]


def mended(broken: AnyWork, breach: Breach) -> AnyWork:
    """Return the technique after its mend was followed to the letter."""
    edit = breach.edit
    assert edit is not None, f"no edit comes with: {breach.mend}"
    if edit.section:
        return _with_line(broken, edit)
    if edit.top:
        return broken.having(**{edit.key.replace(" ", "_"): _top(edit)})
    return _with_measure(broken, edit)


def assert_mends(rule: Rule[Any], broken: AnyWork) -> AnyWork:
    """Follow the first mend of a rule that is broken; return what no longer breaks it."""
    found = breaches(rule, broken)
    assert found, f"{rule.name} is not broken"
    whole = mended(broken, found[0])
    left = breaches(rule, whole)
    assert len(left) < len(found), f"the mend leaves it broken: {found[0].mend} → {left[0].what}"
    return whole


def _top(edit: Edit) -> Any:
    """Return the value of a key at the top of a file."""
    if edit.text.startswith("["):
        return tuple(each.strip() for each in edit.text.strip("[]").split(",") if each.strip())
    if edit.key == "level":
        return int(edit.text)
    return float(edit.text) if edit.key == "minutes" else edit.text


def _with_measure(broken: AnyWork, edit: Edit) -> AnyWork:
    """Return the technique with one measure written anew; the family's own bounds are kept."""
    measures: Measures = broken.measures
    model = type(measures)
    field = keys_of(model)[edit.key]
    value, give = read_measure(model, field, edit.text)
    spread = {name: each for name, each in measures.tolerances.items() if name != field}
    if give is not None:
        spread[field] = give
    written = {**measures.written, field: edit.text}
    given = {**measures.given(), field: value}
    return broken.having(measures=model(**given, tolerances=spread, written=written))


def _with_line(broken: AnyWork, edit: Edit) -> AnyWork:
    """Return the technique with one line more at the end of a section."""
    part = edit.section.casefold()
    line = re.sub(r"^(?:[-*]\s+(?:\[[ x]\]\s+)?|\d+\.\s+)", "", edit.text)
    readers: dict[str, Callable[[str], Any]] = {
        "cautions": _hazard,
        "tools": _kit,
        "materials": _kit,
        "steps": _step,
        "finish": prose,
    }
    added = readers[part](line)
    return broken.having(**{part: (*getattr(broken.technique, part), added)})


def _titled(line: str) -> tuple[str, Prose]:
    """Return the bold start of a line, and the rest."""
    found = re.match(r"\*\*(.+?)\*\*\s*(.*)", line)
    assert found, f"no title in bold: {line}"
    return found[1], prose(found[2])


def _hazard(line: str) -> Hazard:
    words, _, wear = line.partition("→")
    title, text = _titled(words.strip())
    return Hazard(title=title, text=text, wear=tuple(each.strip() for each in wear.split(",") if each.strip()))


def _kit(line: str) -> Kit:
    name, _, note = line.partition(":")
    return Kit(name=name.strip(), note=prose(note.strip()))


def _step(line: str) -> Step:
    title, text = _titled(line)
    return Step(title=title, text=text)


# -- a trade of our own, so that the stages can be tested without any of the nine --


class DiggingMeasures(Measures):
    """What an author may write of a hole."""

    shape: Literal["round", "square"] = "round"
    hole_width_mm: float
    hole_depth_mm: float
    settling_mm_per_year: float | None = None
    rounds: int | None = None
    mulch: bool = False


def _deep_enough(hole: Work[DiggingMeasures]) -> Iterator[Breach]:
    """A hole is at least 100 mm deep."""
    if hole.measures.hole_depth_mm < 100:
        yield Breach(
            field="measures.hole_depth_mm",
            what=f"a hole {hole.measures.hole_depth_mm:g} mm deep",
            why="100 mm at least",
            mend="write `hole depth: 100 mm`",
            edit=Edit(key="hole depth", text="100 mm"),
        )


def _not_wider(hole: Work[DiggingMeasures]) -> Iterator[Breach]:
    """A hole is at most a metre wide."""
    if hole.measures.hole_width_mm > 1000:
        yield Breach("measures.hole_width_mm", "over a metre wide", "1000 mm at most", "write 1000 mm")


def _boots(anyone: AnyWork) -> Iterator[Breach]:
    """Whoever uses a spade wears boots."""
    worn = {each for hazard in anyone.technique.cautions for each in hazard.wear}
    if any(kit.name == "Spade" for kit in anyone.technique.tools) and "boots" not in worn:
        line = "- **Feet.** Keep them from under the spade. → boots"
        yield Breach("tools", "a spade and no boots", "feet", f"write `{line}`", Edit(line, section="Cautions"))


DEEP = Rule(
    name="digging.deep",
    severity=Severity.ERROR,
    why="roots go down 100 mm",
    references=(GEOMETRY,),
    applies="every hole",
    check=_deep_enough,
)
WIDE = Rule(
    name="digging.wide",
    severity=Severity.WARNING,
    why="a back reaches 1000 mm",
    references=(PRACTICE,),
    applies="every hole",
    check=_not_wider,
)
BOOTS: Rule[Any] = Rule(
    name="safety.boots",
    severity=Severity.ERROR,
    why="a spade cuts",
    references=(GEOMETRY,),
    applies="techniques of every family that use a spade",
    check=_boots,
    harm=True,
)


def _figures(hole: Work[DiggingMeasures], today: Any) -> Iterator[Figure]:
    del today
    litres = hole.measures.hole_width_mm**2 * hole.measures.hole_depth_mm / 1e6
    yield Figure(
        name="soil out",
        label="Soil out",
        value=litres,
        unit="L",
        working=("width × width × depth",),
        references=(GEOMETRY,),
    )


DIGGING: Family[DiggingMeasures] = Family(
    name="digging",
    title="Digging",
    about="Holes.",
    measures=DiggingMeasures,
    figures=_figures,
    rules=(DEEP, WIDE),
    drawings=lambda technique, today: (),  # noqa: ARG005 - the contract's own names
    starter=(("hole width", "500 mm ± 20 mm"), ("hole depth", "300 mm")),
)
GUARDING: Family[DiggingMeasures] = Family(
    name="guarding",
    title="Guarding",
    about="Feet.",
    measures=DiggingMeasures,
    figures=_figures,
    rules=(),
    drawings=lambda technique, today: (),  # noqa: ARG005 - the contract's own names
    starter=(),
    every=(BOOTS,),
)
TABLE = (DIGGING, GUARDING)


def span(line: int, column: int, end: int, path: str = "techniques/digging/do-the-work.md") -> Span:
    """Return a place in a file."""
    return Span(path, line, column, end)
