"""The shelf: every technique, visit and person a crew keeps, read."""

import unicodedata
from collections.abc import Mapping
from datetime import date

from howto.model.crew import Crew
from howto.model.plants import PlantBook
from howto.model.technique import AnyTechnique
from howto.model.value import Value
from howto.model.visit import Visit
from howto.model.work import AnyWork, Work
from howto.span import SourceText, Span


def folded(name: str) -> str:
    """Return a file's name as a disk may compare it: capitals, and letters with their accents apart, make no odds."""
    return unicodedata.normalize("NFC", name.casefold())


class SignOff(Value):
    """One technique an apprentice was signed off for, and the version they were shown."""

    technique: str
    on: date
    by: str = ""
    version: str = ""


class Person(Value):
    """An apprentice and what they have been signed off for; `spans` says where each field stands (`signed_off[0]`)."""

    name: str
    level: int = 1
    signed_off: tuple[SignOff, ...] = ()
    spans: Mapping[str, Span] = {}


class Shelf(Value):
    """A crew's whole shelf; `sources` are the files it was read from, by the path findings give them.

    `same_pictures` says of a picture's name which other name is that picture too, under a link, copied, or saved again.
    """

    root: str
    crew: Crew = Crew()
    book: PlantBook = PlantBook()
    techniques: tuple[AnyTechnique, ...] = ()
    visits: tuple[Visit, ...] = ()
    people: tuple[Person, ...] = ()
    sources: Mapping[str, SourceText] = {}
    same_pictures: Mapping[str, str] = {}

    def picture(self, file: str) -> str:
        """Return what every name of one picture has in common."""
        return folded(self.same_pictures.get(file, file))

    @property
    def private_pictures(self) -> Mapping[str, Visit]:
        """The visit of each picture that its client gave no leave to publish, by what its names have in common."""
        kept = (each for each in self.visits if not each.may_publish)
        return {self.picture(picture.file): visit for visit in kept for picture in (*visit.before, *visit.after)}

    def work(self, technique: AnyTechnique) -> AnyWork:
        """Return a technique with the crew of this shelf and the plants it knows."""
        return Work(technique, self.crew, self.book)

    def technique(self, id_: str) -> AnyTechnique | None:
        """Return the technique of that id, or None."""
        return next((technique for technique in self.techniques if technique.id == id_), None)
