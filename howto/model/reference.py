"""Who says so: the source that stands beside every number of the trade."""

from enum import StrEnum

from howto.findings import Severity
from howto.model.value import Value


class Grade(StrEnum):
    """How far a source can be leaned on.

    A: university, government, standards body, learned society or published study. B: a column by an officer
    of one, or a reprint. C: trade supplier, contractor or general page. PRACTICE: common practice with no
    source. MEMORY: well known, but no source was read. OURS: a rule of this project's own file format.
    """

    A = "A"
    B = "B"
    C = "C"
    PRACTICE = "practice"
    MEMORY = "memory"
    OURS = "ours"


CEILING = {
    Grade.A: Severity.ERROR,
    Grade.B: Severity.ERROR,
    Grade.C: Severity.WARNING,
    Grade.PRACTICE: Severity.WARNING,
    Grade.MEMORY: Severity.ADVICE,
    Grade.OURS: Severity.ERROR,
}


class Reference(Value):
    """A source: what it is called, who published it, when, and where in it the number stands."""

    title: str
    publisher: str = ""
    year: str = ""
    place: str = ""
    grade: Grade

    def __str__(self) -> str:
        """Return the source as a reader sees it beside a number."""
        if self.grade is Grade.PRACTICE:
            return self.title
        if self.grade is Grade.MEMORY:
            return f"from memory: {self.title}"
        parts = (self.publisher, self.title, self.year, self.place)
        return ", ".join(part for part in parts if part)


def source(grade: Grade, title: str, publisher: str = "", year: str = "", place: str = "") -> Reference:
    """Return a source by its grade, its title, who published it, when, and where in it the number stands."""
    return Reference(title=title, publisher=publisher, year=year, place=place, grade=grade)


PRACTICE = Reference(title="common practice, no source", grade=Grade.PRACTICE)
MEASURED = Reference(title="as measured by the crew", grade=Grade.PRACTICE)
GEOMETRY = Reference(title="plane and solid geometry", place="worked from first principles", grade=Grade.A)
FORMAT = Reference(title="how a technique file is written (README)", publisher="howto", grade=Grade.OURS)


def from_memory(what: str) -> Reference:
    """Return the reference of a value that no source was read for; it may only ever advise."""
    return Reference(title=what, grade=Grade.MEMORY)
