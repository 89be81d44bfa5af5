"""A season letter: what gardens need in a month, for every client of a crew."""

from collections.abc import Iterator, Sequence
from datetime import date
from typing import Final, NamedTuple

from babel.dates import format_skeleton

from howto.languages import language_of
from howto.languages.form import Labels
from howto.languages.reader import locale_of
from howto.layout.pages.card import legible, small_words, stamp
from howto.layout.pages.explain import explained
from howto.layout.pages.leaflet import A4_MM, SMALL_PT, TEXT_PT, call_box
from howto.model.crew import Crew
from howto.model.prose import Prose, prose
from howto.model.sheet import Block, Bullets, Entry, Facts, Paragraph, Section, Sheet

MOST_PAGES: Final = 2


class Needs(NamedTuple):
    """What a month asks for: tasks, mowing, plants to clip, water, and the work that the crew does in it."""

    care: Sequence[Prose] = ()
    mowing: Sequence[str] = ()
    clip: Sequence[str] = ()
    water: Sequence[Entry] = ()
    work: Sequence[str] = ()


def letter_sheet(crew: Crew, month: date, needs: Needs, today: date) -> Sheet:
    """Return the letter of a month, named by its first day."""
    say = language_of(crew.language).labels
    name = format_skeleton("yMMMM", month, locale=locale_of(crew.language))
    sheet = Sheet(
        least_pt=SMALL_PT,
        id=f"{month:%Y-%m}",
        title=say["letter_title"].format(month=name),
        over=f"{say['letter_over']} · {crew.name}",
        under=prose(say["letter_about"]),
        language=crew.language,
        width_mm=A4_MM[0],
        height_mm=A4_MM[1],
        text_pt=TEXT_PT,
        small_pt=SMALL_PT,
        most_pages=MOST_PAGES,
        ink=crew.colours.ink,
        ground=crew.colours.ground,
        accent=legible(crew.colours),
        sections=tuple(section for section in _sections(crew, needs, say) if section.blocks),
        footer=say["leaflet_footer"],
        stamp=stamp("", today, crew.language, say),
        words=small_words(say),
    )
    return explained(sheet)


def _sections(crew: Crew, needs: Needs, say: Labels) -> Iterator[Section]:
    nothing = (Paragraph(text=prose(say["letter_none"])),) if not any(needs) else ()
    yield Section(name="first", heading=say["letter_care"], blocks=(*nothing, *_bullets(needs.care)))
    yield Section(name="mowing", heading=say["letter_mow"], blocks=_bullets([prose(each) for each in needs.mowing]))
    yield Section(name="clip", heading=say["letter_clip"], blocks=_bullets([prose(each) for each in needs.clip]))
    yield Section(name="water", heading=say["letter_water"], blocks=_facts(needs.water))
    yield Section(name="done", heading=say["letter_work"], blocks=_bullets([prose(each) for each in needs.work]))
    yield Section(name="call", heading=say["call"], tone="call", blocks=call_box(crew, crew.reader, say))


def _bullets(items: Sequence[Prose]) -> tuple[Block, ...]:
    return (Bullets(items=tuple(items)),) if items else ()


def _facts(entries: Sequence[Entry]) -> tuple[Block, ...]:
    return (Facts(entries=tuple(entries)),) if entries else ()
