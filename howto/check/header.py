"""Checks of what stands at the top of every technique: title, needs, minutes, season, plants."""

import re
from collections.abc import Iterator
from difflib import get_close_matches
from typing import Final

from howto.findings import Severity
from howto.languages.form import MONTHS
from howto.languages.tags import is_english
from howto.model.family import Breach, Edit, Limit, rule
from howto.model.plants import PlantBook
from howto.model.reference import FORMAT, PRACTICE
from howto.model.work import AnyWork
from howto.seasons import NORTHERN_SEASONS, months_of

LONGEST_TITLE: Final = Limit(unit="", of="characters", reference=FORMAT, high=60)  # ours: two lines on a cover
PACE: Final = Limit(unit="minutes", of="a step", reference=PRACTICE, low=1)
WORKING_DAY: Final = Limit(unit="minutes", reference=PRACTICE, high=480)
_KEPT: Final = ("early", "mid", "late", "to", "until", "till", "and", "or", "fall", "sept")


@rule("technique.title", Severity.WARNING, FORMAT, applies="every technique")
def title(work: AnyWork) -> Iterator[Breach]:
    """The title has at most 60 characters.

    it is printed in large letters on the card and the cover of the pictures, two lines at most
    """
    length = len(work.technique.title)
    if not LONGEST_TITLE.allows(length):
        yield Breach(
            field="title",
            what=f"the title has {length} characters",
            why=f"a title of {LONGEST_TITLE} fits the card and the cover in large letters",
            mend="write a title of 60 characters or fewer, and the rest in the paragraph below it",
        )


@rule("technique.needs", Severity.ERROR, FORMAT, applies="techniques with `needs:`")
def needs(work: AnyWork) -> Iterator[Breach]:
    """A technique does not need itself.

    `needs` are the techniques to know first; nobody could start one that needs itself
    """
    if work.technique.id in work.technique.needs:
        others = ", ".join(each for each in work.technique.needs if each != work.technique.id)
        yield Breach(
            field=f"needs[{work.technique.needs.index(work.technique.id)}]",
            what=f"`{work.technique.id}` needs itself",
            why="nobody could ever start it",
            mend=f"write `needs: [{others}]`",
            edit=Edit(top=True, key="needs", text=f"[{others}]"),
        )


@rule("technique.pace", Severity.ADVICE, PRACTICE, applies="techniques with `minutes:`")
def pace(work: AnyWork) -> Iterator[Breach]:
    """The minutes are at least one a step and at most a working day of 480.

    less than a minute a step leaves no time to look; more than 480 minutes is not one job
    """
    minutes, steps = work.technique.minutes, len(work.technique.steps)
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


@rule("technique.season", Severity.WARNING, FORMAT, applies="techniques in English with `season:`")
def season(work: AnyWork) -> Iterator[Breach]:
    """The season is written in seasons and months, and names at least one where the crew works.

    a season copied from the other half of the world is six months out
    """
    text, hemisphere = work.technique.season.strip(), work.crew.hemisphere
    if not text or not is_english(work.technique.language) or months_of(text, hemisphere):
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


@rule("technique.plants", Severity.ADVICE, FORMAT, applies="techniques with `plants:`")
def plants(work: AnyWork) -> Iterator[Breach]:
    """The plants are ones that the plant book knows.

    growth, clipping months and cautions of a plant are taken from the book; without them nothing is checked
    """
    book = work.book
    if not book.plants and not book.grasses:
        return
    for at, name in enumerate(work.technique.plants):
        if book.plant(name) or book.grass(name):
            continue
        near = _near_plants(work.book, name)
        listed = " or ".join(f"`{each}`" for each in near)
        own = "add it to the shelf's own `plants.yaml`"
        first = near[0] if near else ""
        others = ", ".join(first if each == name else each for each in work.technique.plants)
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
