"""A technique as read from its file: steps, tools, measures, cautions, finish and aftercare."""

from collections.abc import Mapping
from typing import Any, Generic, Literal, TypeVar

from pydantic import Field

from howto.model.measures import Measures
from howto.model.prose import Prose
from howto.model.value import Value
from howto.quantities.amounts import Typed
from howto.span import Located, Span

M = TypeVar("M", bound=Measures, covariant=True)


class Kit(Value):
    """A tool or material: its name, and what stood after the colon."""

    name: str
    note: Prose = ()


class Mark(Value):
    """A numbered mark on a picture, in percent of its width and height from the upper left."""

    x_percent: float
    y_percent: float
    text: str


class Picture(Value):
    """A picture file beside the shelf, the point a crop keeps, and the marks on it."""

    file: str
    focus_percent: tuple[float, float] = (50.0, 50.0)
    marks: tuple[Mark, ...] = ()
    alt: str = ""
    credit: str = ""


class Step(Value):
    """One thing to do, with what makes or breaks it and why."""

    title: str
    text: Prose = ()
    key_points: tuple[Prose, ...] = ()
    reasons: tuple[Prose, ...] = ()
    checks: tuple[Prose, ...] = ()
    pictures: tuple[Picture, ...] = ()


class Hazard(Value):
    """A caution: what can hurt, how to keep from it, and what to wear (after the arrow)."""

    title: str
    text: Prose = ()
    wear: tuple[str, ...] = ()


class When(Value):
    """When a care task falls due.

    `within`: at most `days` after the visit. `after`: from `days` on. `every`: each `days`, for `until_days`
    when given. `season` and `month`: the next one after the visit. `next visit`, `always`: as they say.
    """

    text: str
    kind: Literal["within", "after", "every", "season", "month", "next visit", "always"]
    days: int = 0
    until_days: int | None = None
    season: Literal["spring", "summer", "autumn", "winter"] | None = None
    part: Literal["early", "mid", "late"] | None = None
    month: int | None = None


class TypedAmount(Value):
    """An amount that an author typed, and where it stands in the plain words of its sentence."""

    start: int
    end: int
    amount: Typed


class Care(Value):
    """What the client does afterwards, and when; `never` for what they must not do.

    `amounts` are those that stand in the text as its author typed them.
    """

    when: When
    text: Prose
    never: bool = False
    amounts: tuple[TypedAmount, ...] = ()


class Technique(Value, Generic[M]):
    """One technique, whole.

    `spans` says where each part stands, by a dotted field name (`measures.finished_width_mm`, `steps[2]`,
    `steps[2].key_points[0]`, `tools`, `cautions[0]`, `season`); a part that is missing points at the key or
    heading it should stand under. `located` knows the place of each letter of the words that stand at a span.
    `version` names the text it was read from.
    """

    id: str
    title: str
    family: str
    level: int = 1
    minutes: float | None = None
    needs: tuple[str, ...] = ()
    plants: tuple[str, ...] = ()
    season: str = ""
    language: str = "en"
    measures: M
    intro: tuple[Prose, ...] = ()
    tools: tuple[Kit, ...] = ()
    materials: tuple[Kit, ...] = ()
    steps: tuple[Step, ...] = ()
    cautions: tuple[Hazard, ...] = ()
    finish: tuple[Prose, ...] = ()
    aftercare: tuple[Care, ...] = ()
    waive: Mapping[str, str] = {}
    version: str = ""
    path: str = ""
    spans: Mapping[str, Span] = {}
    located: Mapping[Span, Located] = Field(default={}, exclude=True, repr=False)

    def spot(self, field: str) -> Span:
        """Return where a field stands in the file; the nearest part above it where it has no place of its own."""
        while field:
            if field in self.spans:
                return self.spans[field]
            field = field[: max(field.rfind("."), field.rfind("["), 0)]
        return Span(self.path)


AnyTechnique = Technique[Any]
