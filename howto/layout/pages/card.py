"""A training card: what stands on it, and in which order."""

from collections.abc import Iterable, Iterator, Sequence
from datetime import date
from itertools import zip_longest
from typing import Final

from howto.colour import contrast, nearest
from howto.languages import language_of
from howto.languages.form import Labels
from howto.languages.reader import day_told
from howto.layout.pages.numbers import numbers
from howto.model.crew import Colours
from howto.model.prose import Prose, capital, prose
from howto.model.ready import Ready
from howto.model.sheet import (
    Art,
    ArtBlock,
    Block,
    Bullets,
    CautionRow,
    Code,
    Dated,
    Entry,
    Facts,
    Section,
    Sheet,
    StepRow,
)
from howto.model.technique import AnyTechnique, Kit

A5_MM: Final = (148.0, 210.0)  # ISO 216
# What a print that will not fit leaves off, in this order.
LESSER_NUMBERS, LATER_TABLES, FIRST_TABLE = 1, 2, 3
ART_MM: Final = (74.0, 60.0)  # the box a drawing is fitted to, beside the numbers
TEXT_PT, SMALL_PT, LEAST_PT = 10.0, 8.5, 8.0  # common practice, no source
HOME: Final = "../index.html"  # where the list of all cards stands beside a card
MOST_PAGES: Final = 2
AA: Final = 4.5  # W3C, Web Content Accessibility Guidelines 2.2, 1.4.3
SMALL_WORDS: Final = (
    "step",
    "key_point",
    "reason",
    "check",
    "wear",
    "scale",
    "side",
    "page",
    "tick",
    "opens",
    "newest",
    "spare",
    "all_cards",
)


def card_sheet(ready: Ready, arts: Sequence[Art], today: date, printed: Sequence[Art | None] = ()) -> Sheet:
    """Return the card of a technique: A5, two sides at most.

    `printed` are the drawings again, in the colours of white paper.
    """
    drawings = tuple(ArtBlock(art=art, printed=paper) for art, paper in zip_longest(arts, printed))
    technique, crew = ready.technique, ready.crew
    say = language_of(technique.language).labels
    return Sheet(
        template="card",
        leaf="side",
        home=HOME,
        saves_paper=False,
        least_pt=LEAST_PT,
        leading=0.52,
        gap=1.2,
        title_ratio=2.9,
        id=technique.id,
        title=technique.title,
        over=_over(ready, say),
        under=joined(technique.intro),
        language=technique.language,
        width_mm=A5_MM[0],
        height_mm=A5_MM[1],
        text_pt=TEXT_PT,
        small_pt=SMALL_PT,
        most_pages=MOST_PAGES,
        ink=crew.colours.ink,
        ground=crew.colours.ground,
        accent=legible(crew.colours),
        sections=tuple(section for section in _sections(ready, drawings, say) if section.blocks),
        footer=say["footer"],
        stamp=stamp(technique.version, today, technique.language, say),
        words=small_words(say),
    )


def joined(paragraphs: Iterable[Prose]) -> Prose:
    """Return paragraphs run together into one."""
    runs: Prose = ()
    for paragraph in paragraphs:
        runs = (*runs, *prose(" "), *paragraph) if runs else paragraph
    return runs


def legible(colours: Colours) -> str:
    """Return the accent, or the nearest colour to it that can be read on the ground."""
    found = nearest(colours.accent, lambda colour: contrast(colour, colours.ground) >= AA)
    return found or colours.ink


def stamp(version: str, today: date, language: str, say: Labels) -> str:
    """Return the line that tells an old print from a new one."""
    day = day_told(today, language)
    return f"{say['version'].format(version=version)} · {day}" if version else day


def small_words(say: Labels) -> dict[str, str]:
    """Return the labels that a painter sets beside what it paints."""
    return {name: say[name] for name in SMALL_WORDS}


def _over(ready: Ready, say: Labels) -> str:
    """Return the line above the title: family, level, minutes."""
    technique = ready.technique
    parts = [capital(ready.reader.tell(technique.family)), say["level"].format(level=technique.level)]
    if technique.minutes is not None:
        parts.append(say["minutes"].format(minutes=f"{technique.minutes:g}"))
    return " · ".join(parts)


def _sections(ready: Ready, drawings: tuple[ArtBlock, ...], say: Labels) -> Iterator[Section]:
    """Yield the parts of the card in reading order: get ready, keep safe, do, finish."""
    technique = ready.technique
    yield Section(heading="", blocks=(*_about(technique, say), *_code(ready, say)))
    found = numbers(ready, [each.art for each in drawings])
    yield Section(heading=say["setting_out"], blocks=drawings, side=bool(found.beside))
    yield Section(heading=say["numbers"], blocks=_facts(found.beside))
    for at, table in enumerate(found.tables):
        yield Section(heading="", blocks=(table,), spare=LATER_TABLES if at else FIRST_TABLE)
    yield Section(heading=say["tools"], blocks=_kit(technique.tools), side=bool(technique.materials))
    yield Section(heading=say["materials"], blocks=_kit(technique.materials))
    yield Section(
        heading=say["cautions"],
        tone="caution",
        blocks=tuple(
            CautionRow(title=hazard.title, text=hazard.text, wear=hazard.wear) for hazard in technique.cautions
        ),
    )
    yield Section(heading=say["steps"], blocks=tuple(_steps(technique)), fresh=True)
    finish = (Bullets(items=technique.finish, tick=True),) if technique.finish else ()
    yield Section(heading=say["finish"], blocks=finish, side=bool(technique.aftercare))
    yield Section(
        heading=say["aftercare"],
        blocks=tuple(Dated(when=care.when.text, text=care.text) for care in technique.aftercare),
    )
    yield Section(heading=say["more"], blocks=_facts(found.rest), spare=LESSER_NUMBERS)


def _about(technique: AnyTechnique, say: Labels) -> tuple[Block, ...]:
    """Return when it is done, to which plants, and what to know first."""
    lines = (
        (say["season"], technique.season),
        (say["plants"], ", ".join(technique.plants)),
        (say["needs"], ", ".join(need.replace("-", " ") for need in technique.needs)),
    )
    return _facts(tuple(Entry(label=label, value=text) for label, text in lines if text))


def _facts(entries: tuple[Entry, ...]) -> tuple[Block, ...]:
    """Return a block of numbers, or nothing where there are none."""
    return (Facts(entries=entries),) if entries else ()


def _kit(kit: Sequence[Kit]) -> tuple[Block, ...]:
    """Return tools or materials with a box to tick before the van is shut."""
    items = tuple((*prose(item.name, strong=True), *prose(" "), *item.note) for item in kit)
    return (Bullets(items=items, tick=True),) if items else ()


def _steps(technique: AnyTechnique) -> Iterator[StepRow]:
    """Yield the steps, numbered from 1."""
    for number, step in enumerate(technique.steps, 1):
        yield StepRow(
            number=number,
            title=step.title,
            text=step.text,
            key_points=step.key_points,
            reasons=step.reasons,
            checks=step.checks,
        )


def _code(ready: Ready, say: Labels) -> tuple[Block, ...]:
    """Return the code that opens the newest card, where the crew has a web address."""
    web = ready.crew.web.rstrip("/")
    if not web:
        return ()
    return (Code(url=f"{web}/{ready.technique.id}", label=say["newest_label"]),)
