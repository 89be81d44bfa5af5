"""A technique with what it is judged and worked by: the crew who does the work, and the plants they know."""

from dataclasses import dataclass, field, replace
from typing import Any, Generic, TypeVar

from howto.languages.reader import Reader
from howto.model.crew import Crew
from howto.model.measures import Measures
from howto.model.plants import Plant, PlantBook
from howto.model.reference import Reference
from howto.model.technique import Technique
from howto.span import Span

M = TypeVar("M", bound=Measures, covariant=True)


@dataclass(frozen=True)
class Work(Generic[M]):
    """One technique as this crew does it; figures, rules and drawings take nothing else but the day."""

    technique: Technique[M]
    crew: Crew = field(default_factory=Crew)
    book: PlantBook = field(default_factory=PlantBook)

    @property
    def measures(self) -> M:
        """What the author measured."""
        return self.technique.measures

    @property
    def reader(self) -> Reader:
        """Who reads the pages of this technique: in its own language, and in the crew's units."""
        return self.crew.read_in(self.technique.language)

    @property
    def plants(self) -> tuple[Plant, ...]:
        """The plants of this technique that the book knows, in the order written."""
        return tuple(plant for name in self.technique.plants if (plant := self.book.plant(name)))

    @property
    def book_growth(self) -> tuple[float, Reference] | None:
        """The middle of what the first plant with known growth puts on in a year, in mm, and who says so."""
        for plant in self.plants:
            if (fact := plant.growth_mm_per_year) is not None:
                return fact.middle, fact.reference(f"growth of {plant.botanical}")
        return None

    def spot(self, field: str) -> Span:
        """Return where a field stands in the file."""
        return self.technique.spot(field)

    def having(self, **changes: Any) -> "Work[M]":
        """Return the same work with parts of its technique changed."""
        return replace(self, technique=self.technique.model_copy(update=changes))


AnyWork = Work[Any]
