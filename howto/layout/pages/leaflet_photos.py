"""The photographs of a leaflet: each cut to one shape round its focus, so that before and after stand level."""

from collections.abc import Iterator, Mapping
from typing import Final

from howto.languages import language_of
from howto.layout.frames.crop import cropped
from howto.model.photo import Photograph
from howto.model.sheet import Frame, Pixels
from howto.model.technique import Picture
from howto.model.visit import Visit

WIDE, HIGH = 1040, 780  # px: 4 to 3, and 300 dots an inch at half the line of an A4 page
EDGE: Final = 0.0  # a leaflet shows no marks


def photo_frames(visit: Visit, photos: Mapping[str, Photograph]) -> Iterator[tuple[Frame, str]]:
    """Yield the pictures of a visit with their captions, before and after by turns."""
    say = language_of(visit.language).labels
    pairs = _by_turns(visit.before, visit.after)
    for number, (picture, name) in enumerate(pairs, 1):
        photo = photos.get(picture.file)
        if photo is not None:
            caption = say["before"] if name == "before" else say["after"]
            yield _frame(picture, photo, f"{number:02}", picture.alt or f"{caption}: {visit.site}"), caption


def _by_turns(before: tuple[Picture, ...], after: tuple[Picture, ...]) -> Iterator[tuple[Picture, str]]:
    """Yield the first before, the first after, the second before, and so on."""
    for at in range(max(len(before), len(after))):
        yield from ((picture, "before") for picture in before[at : at + 1])
        yield from ((picture, "after") for picture in after[at : at + 1])


def _frame(picture: Picture, photo: Photograph, name: str, alt: str) -> Frame:
    box = (0.0, 0.0, float(WIDE), float(HIGH))
    crop = cropped(photo, picture, box, EDGE)
    marks = (Pixels(source=picture.file, crop=crop.part, box=crop.box),)
    return Frame(name=name, width=WIDE, height=HIGH, ground="#ffffff", marks=marks, alt=alt, credit=picture.credit)
