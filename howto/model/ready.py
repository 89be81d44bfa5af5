"""A checked technique ready to show: made once for a technique and a day, and handed to every page and picture."""

from dataclasses import dataclass

from howto.languages.reader import Reader
from howto.model.crew import Crew
from howto.model.figure import Figure
from howto.model.filling import Meanings, filled_care, meanings
from howto.model.technique import AnyTechnique, Care
from howto.model.visit import Visit
from howto.model.work import AnyWork
from howto.quantities.amounts import Words
from howto.shapes import Drawing


@dataclass(frozen=True)
class Ready:
    """A technique with its `{words}` filled, its figures, and its drawings told.

    `work` is the same as written; `drawn_words` are the words of its drawings before they were told.
    """

    work: AnyWork
    technique: AnyTechnique
    figures: tuple[Figure, ...]
    drawings: tuple[Drawing, ...] = ()
    drawn_words: tuple[Words, ...] = ()

    @property
    def care(self) -> tuple[Care, ...]:
        """The aftercare with its amounts as values, not printed yet."""
        known = meanings(self.work.measures, self.figures)
        return tuple(filled_care(each, known) for each in self.work.technique.aftercare)

    @property
    def crew(self) -> Crew:
        """Who does the work."""
        return self.work.crew

    @property
    def reader(self) -> Reader:
        """Who reads its pages."""
        return self.work.reader


@dataclass(frozen=True)
class ReadyVisit:
    """A visit with each of its jobs ready to show, in the visit's language, and its own `{words}` filled.

    `meanings` are what `{words}` stand for in each job, in order.
    """

    visit: Visit
    jobs: tuple[Ready, ...]
    crew: Crew
    meanings: tuple[Meanings, ...] = ()

    @property
    def reader(self) -> Reader:
        """Who reads the leaflet."""
        return self.crew.read_in(self.visit.language)
