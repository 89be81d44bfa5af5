"""A training card: what stands on it, and in which order."""

import re
from collections.abc import Iterable, Iterator, Sequence
from datetime import date
from typing import Final

from howto.colour import contrast, nearest
from howto.labels import Labels, labels
from howto.model.crew import Colours, Crew
from howto.model.figure import Figure
from howto.model.prose import Prose, prose
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
    Grid,
    Section,
    Sheet,
    StepRow,
)
from howto.model.shown import shown, shown_cell, shown_day, shown_measures
from howto.model.technique import AnyTechnique, Kit

A5_MM: Final = (148.0, 210.0)  # ISO 216
ART_MM: Final = (74.0, 60.0)  # the box a drawing is fitted to, beside the numbers
TEXT_PT, SMALL_PT = 10.0, 8.5  # common practice, no source
MOST_PAGES: Final = 2
AA: Final = 4.5  # W3C, Web Content Accessibility Guidelines 2.2, 1.4.3
PAPER: Final = "#ffffff"
MOST_ACROSS: Final = 12  # cells that stand beside each other across a card
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
    "all_cards",
)
LONGEST_WORKING: Final = 64  # characters of arithmetic that stand under a number


def card_sheet(technique: AnyTechnique, figures: Sequence[Figure], arts: Sequence[Art], today: date) -> Sheet:
    """Return the card of a technique whose `{words}` are filled: A5, two sides at most."""
    say = labels(technique.language)
    crew = technique.crew
    return Sheet(
        kind="card",
        id=technique.id,
        title=technique.title,
        over=_over(technique, say),
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
        sections=tuple(section for section in _sections(technique, figures, arts, say) if section.blocks),
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
    """Return the accent, or the nearest colour to it that can be read on paper and on the ground."""
    found = nearest(
        colours.accent,
        lambda colour: contrast(colour, PAPER) >= AA and contrast(colour, colours.ground) >= AA,
    )
    return found or colours.ink


def stamp(version: str, today: date, language: str, say: Labels) -> str:
    """Return the line that tells an old print from a new one."""
    day = shown_day(today, language)
    return f"{say['version'].format(version=version)} · {day}" if version else day


def small_words(say: Labels) -> dict[str, str]:
    """Return the labels that a painter sets beside what it paints."""
    return {name: say[name] for name in SMALL_WORDS}


def capital(text: str) -> str:
    """Return the text with its first letter large and the rest as it stands."""
    return text[:1].upper() + text[1:]


def grid(figure: Figure, crew: Crew) -> Grid | None:
    """Return a figure's table in the crew's units, or None where it has none.

    A unit that a whole column shares stands in its heading. A table longer than it is wide is turned, so that
    it takes as many lines as it had columns.
    """
    table = figure.table
    if table is None:
        return None
    columns = [
        _column(name, [shown_cell(row[at], unit, crew) for row in table.rows])
        for at, (name, unit) in enumerate(zip(table.columns, table.units, strict=True))
    ]
    caption = capital(figure.label)
    if len(columns) < len(table.rows) <= MOST_ACROSS:
        return Grid(caption=caption, columns=columns[0], rows=tuple(columns[1:]), turned=True)
    across = tuple(zip(*columns, strict=True))
    return Grid(caption=caption, columns=across[0], rows=across[1:])


def _column(name: str, cells: Sequence[str]) -> tuple[str, ...]:
    """Return a heading and its cells, a unit that all cells share moved to the heading."""
    parts = [cell.partition("\u00a0") for cell in cells]
    units = {unit for _, _, unit in parts}
    if len(units) == 1 and "" not in units:
        return (f"{name}, {units.pop()}", *(number for number, _, _ in parts))
    return (name, *cells)


def _over(technique: AnyTechnique, say: Labels) -> str:
    """Return the line above the title: family, level, minutes."""
    parts = [capital(technique.family), say["level"].format(level=technique.level)]
    if technique.minutes is not None:
        parts.append(say["minutes"].format(minutes=f"{technique.minutes:g}"))
    return " · ".join(parts)


def _sections(
    technique: AnyTechnique, figures: Sequence[Figure], arts: Sequence[Art], say: Labels
) -> Iterator[Section]:
    """Yield the parts of the card in reading order: get ready, keep safe, do, finish."""
    yield Section(heading="", blocks=(*_about(technique, say), *_code(technique, say)))
    yield from _numbers(technique, figures, arts, say)
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


def _about(technique: AnyTechnique, say: Labels) -> tuple[Block, ...]:
    """Return when it is done, to which plants, and what to know first."""
    words = (
        (capital(measure.key), measure.value)
        for measure in shown_measures(technique.measures, technique.crew)
        if not _is_number(measure.value)
    )
    lines = (
        *words,
        (say["season"], technique.season),
        (say["plants"], ", ".join(technique.plants)),
        (say["needs"], ", ".join(need.replace("-", " ") for need in technique.needs)),
    )
    entries = tuple(Entry(label=label, value=text) for label, text in lines if text)
    return (Facts(entries=entries),) if entries else ()


def _is_number(value: str) -> bool:
    """Tell whether a printed measure is an amount and not a word."""
    return value.lstrip("−")[:1].isdigit() or value[:1] in "¼½¾"


def _numbers(technique: AnyTechnique, figures: Sequence[Figure], arts: Sequence[Art], say: Labels) -> Iterator[Section]:
    """Yield the drawings with the numbers to set out by beside them, then the rest of the worked numbers."""
    crew = technique.crew
    measures = tuple(
        Entry(label=capital(measure.key), value=measure.value, note=measure.tolerance, headline=True)
        for measure in shown_measures(technique.measures, crew)
        if _is_number(measure.value)
    )
    first = tuple(_entry(figure, crew) for figure in figures if figure.headline and figure.table is None)
    rest = tuple(_entry(figure, crew) for figure in figures if not figure.headline and figure.table is None)
    tables = tuple(table for figure in figures if (table := grid(figure, crew)))
    entries = (*measures, *first)
    facts: tuple[Block, ...] = (Facts(entries=entries),) if entries else ()
    yield Section(heading=say["setting_out"], blocks=tuple(ArtBlock(art=art) for art in arts), side=bool(facts))
    yield Section(heading=say["numbers"], blocks=facts)
    worked: tuple[Block, ...] = (Facts(entries=rest),) if rest else ()
    yield Section(heading=say["worked"], blocks=(*worked, *tables))


def _entry(figure: Figure, crew: Crew) -> Entry:
    """Return a figure with the arithmetic that a person can follow under it, where it is short enough."""
    value = shown(figure, crew)
    return Entry(label=capital(figure.label), value=value, note=_working(figure, value), headline=figure.headline)


def _working(figure: Figure, value: str) -> str:
    """Return the line of working that ends in the value printed, where it is short; else nothing."""
    number = value.split("\u00a0", maxsplit=1)[0]
    for line in figure.working:
        ends = line.rpartition("= ")[2].split()
        if ends and ends[0] == number and len(line) <= LONGEST_WORKING:
            return kept_together(line)
    return ""


def kept_together(working: str) -> str:
    """Return arithmetic in proper signs that breaks before `=` or an operator, never before a unit."""
    for plain, sign in ((" - ", " − "), (" x ", " × "), (" / ", " ÷ ")):
        working = working.replace(plain, sign)
    return re.sub(r"(?<=[\d=÷×−+]) (?=[^=÷×−+])", "\u00a0", working)


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


def _code(technique: AnyTechnique, say: Labels) -> tuple[Block, ...]:
    """Return the code that opens the newest card, where the crew has a web address."""
    web = technique.crew.web.rstrip("/")
    if not web:
        return ()
    label = say["newest_label"].format(version=technique.version)
    return (Code(url=f"{web}/{technique.id}", label=label),)
