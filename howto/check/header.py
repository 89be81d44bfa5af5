"""Checks of what stands at the top of every technique: title, needs, minutes, season, plants."""

import re
from collections.abc import Iterator
from difflib import get_close_matches
from typing import Final

from howto.languages.tags import is_english
from howto.languages.time_words import MONTHS
from howto.model.family import Breach, Edit, Limit
from howto.model.plants import PlantBook
from howto.model.reference import FORMAT, PRACTICE
from howto.model.technique import AnyTechnique
from howto.seasons import NORTHERN_SEASONS, months_of

LONGEST_TITLE: Final = Limit(unit="characters", reference=FORMAT, high=60)  # ours: two lines on a cover
PACE: Final = Limit(unit="minutes a step", reference=PRACTICE, low=1)
WORKING_DAY: Final = Limit(unit="minutes", reference=PRACTICE, high=480)
_KEPT: Final = ("early", "mid", "late", "to", "until", "till", "and", "or", "fall", "sept")


def title(technique: AnyTechnique) -> Iterator[Breach]:
    """The title fits a cover."""
    length = len(technique.title)
    if not LONGEST_TITLE.allows(length):
        yield Breach(
            field="title",
            what=f"the title has {length} characters",
            why=f"a title of {LONGEST_TITLE} fits the card and the cover in large letters",
            mend="write a title of 60 characters or fewer, and the rest in the paragraph below it",
        )


def needs(technique: AnyTechnique) -> Iterator[Breach]:
    """A technique does not need itself."""
    if technique.id in technique.needs:
        others = ", ".join(each for each in technique.needs if each != technique.id)
        yield Breach(
            field=f"needs[{technique.needs.index(technique.id)}]",
            what=f"`{technique.id}` needs itself",
            why="nobody could ever start it",
            mend=f"write `needs: [{others}]`",
            edit=Edit(top=True, key="needs", text=f"[{others}]"),
        )


def pace(technique: AnyTechnique) -> Iterator[Breach]:
    """The minutes suit the number of steps, and a day."""
    minutes, steps = technique.minutes, len(technique.steps)
    if minutes is None or not steps:
        return
    if not PACE.allows(minutes / steps):
        yield Breach(
            field="minutes",
            what=f"{minutes:g} minutes for {steps} steps",
            why=f"{minutes:g} ÷ {steps} = {minutes / steps:.1f} minutes a step; a minute a step at the least is usual",
            mend=f"write `minutes: {steps}` or more, or join steps that are one movement",
            edit=Edit(top=True, key="minutes", text=str(steps)),
        )
    elif not WORKING_DAY.allows(minutes):
        yield Breach(
            field="minutes",
            what=f"{minutes:g} minutes, or {minutes / 60:.1f} hours",
            why="a working day has 8 hours, and a card is one job",
            mend="write the minutes of one part of the work, 480 at most, and make the other parts files of their own",
            edit=Edit(top=True, key="minutes", text="480"),
        )


def season(technique: AnyTechnique) -> Iterator[Breach]:
    """The season names months where the crew works."""
    text, hemisphere = technique.season.strip(), technique.crew.hemisphere
    if not text or not is_english(technique.language) or months_of(text, hemisphere):
        return
    noted = re.fullmatch(r"([^()]+)\(([^()]+)\)", text)
    if noted and (outer := months_of(noted[1], hemisphere)):
        inner, kept = months_of(noted[2], hemisphere), noted[1].strip()
        apart = inner and not set(inner) & set(outer)
        yield Breach(
            field="season",
            what=f"`{text}` names no month in the {hemisphere}" if apart else f"`{text}` is written twice over",
            why=(
                f"no month is both `{kept}` and `{noted[2].strip()}` where this crew works"
                if apart
                else "a season is read as seasons and months, without a note in brackets"
            ),
            mend=f"write `season: {kept}`",
            edit=Edit(top=True, key="season", text=kept),
        )
        return
    near = " ".join(_season_word(word) for word in text.casefold().split())
    better = near if months_of(near, hemisphere) else "any time"
    yield Breach(
        field="season",
        what=f"`{text}` is no season that can be read",
        why="dates are worked out from seasons and months, such as `late spring to early autumn` or `March to May`",
        mend=f"write `season: {better}`, or the months",
        edit=Edit(top=True, key="season", text=better),
    )


def _season_word(word: str) -> str:
    """Return the word of a season or month that a word most likely stands for, or the word itself."""
    known = (*_KEPT, *NORTHERN_SEASONS, *MONTHS)
    return next(iter(get_close_matches(word, known, n=1, cutoff=0.6)), word)


def plants(technique: AnyTechnique) -> Iterator[Breach]:
    """The plants are ones the book knows."""
    book = technique.book
    if not book.plants and not book.grasses:
        return
    for at, name in enumerate(technique.plants):
        if book.plant(name) or book.grass(name):
            continue
        near = _near_plants(technique.book, name)
        listed = " or ".join(f"`{each}`" for each in near)
        own = "add it to the shelf's own `plants.yaml`"
        first = near[0] if near else ""
        others = ", ".join(first if each == name else each for each in technique.plants)
        yield Breach(
            field=f"plants[{at}]",
            what=f"`{name}` is not in the plant book",
            why="what the book knows of a plant, such as its growth and when to clip it, is left out here",
            mend=f"write {listed}, or {own}" if listed else own,
            edit=Edit(top=True, key="plants", text=f"[{others}]") if first else None,
        )


def _near_plants(book: PlantBook, name: str) -> list[str]:
    """Return up to three names of plants or grasses near to `name`, botanical ones with their capital."""
    known = dict.fromkeys((*book.nearest(name), *book.nearest(name, "grass")))
    near = get_close_matches(name.casefold(), known, n=3, cutoff=0.75) or list(known)[:1]
    botanical = {each.botanical.casefold(): each.botanical for each in book.plants}
    botanical |= {each.botanical.casefold(): each.botanical for each in book.grasses}
    return [botanical.get(each, each) for each in near]
