"""Gathers what any garden of a crew needs in a month, from its shelf, and makes the season letter."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from datetime import date
from pathlib import Path
from typing import Final

from howto.check.twins import is_twin
from howto.families.mowing.formulae import mow_at_mm
from howto.families.mowing.measures import MowingMeasures
from howto.families.watering import garden
from howto.families.watering.garden import GardenWater
from howto.findings import Finding, stops
from howto.jobs.check import Examined, examine
from howto.jobs.garden import BED, NOTHING, each_watering, lawn_need, rain_is_enough
from howto.jobs.staging import Stage
from howto.languages import language_of
from howto.languages.form import Labels
from howto.layout.pages.leaflet import started
from howto.layout.pages.letter import Needs, letter_sheet
from howto.layout.pages.numbers import LONGEST_LARGE
from howto.layout.pages.plain import LONGEST, message
from howto.layout.unset_letters import letter_findings
from howto.model.crew import Crew
from howto.model.due import months_named
from howto.model.prose import Prose, capital, prose
from howto.model.sheet import Entry
from howto.model.shelf import Shelf
from howto.model.shown import shown_cell
from howto.model.technique import AnyTechnique
from howto.render.html import page
from howto.render.pdf import pdf
from howto.seasons import months_of
from howto.span import SourceText, Span

BED_M2: Final = 10.0  # ours: what a client can pace out
CREW_ONLY: Final = frozenset({"safety"})  # trades whose work is no client's business
YEAR_ROUND: Final = 12


@dataclass(frozen=True)
class Letter:
    """A letter made: its words as a message, what was written, and what was found; `stopped` when nothing was."""

    text: str = ""
    written: tuple[str, ...] = ()
    findings: tuple[Finding, ...] = ()
    sources: Mapping[str, SourceText] = field(default_factory=dict)
    stopped: bool = False


def write_letter(root: Path, to: Path, month: date, today: date) -> Letter:
    """Make the letter of a month, named by its first day, into `to`; nothing is written while an error stands."""
    examined = examine(root, month)
    if stops(examined.findings):
        return Letter(findings=examined.findings, sources=examined.sources, stopped=True)
    sheet = letter_sheet(examined.shelf.crew, month, needs_of(examined, month), today)
    found = (*examined.findings, *letter_findings((sheet,), Span(f"{examined.shelf.root}/crew.yaml")))
    if stops(found):
        return Letter(findings=found, sources=examined.sources, stopped=True)
    stage = Stage(to)
    try:
        stage.write(f"letters/{sheet.id}.pdf", pdf(sheet, today)[0])
        stage.write(f"letters/{sheet.id}.html", page(sheet).encode())
        stage.swap_in()
    finally:
        stage.drop()
    return Letter(message(sheet, LONGEST), tuple(sorted(stage.written)), found, examined.sources)


def needs_of(examined: Examined, month: date) -> Needs:
    """Return what gardens need in a month where the crew works."""
    shelf, number = examined.shelf, month.month
    known = [each for each in shelf.techniques if each.family not in CREW_ONLY and not is_twin(each)]
    ready = [examined.ready[each.id].technique for each in known]
    say = language_of(shelf.crew.language).labels
    return Needs(
        care=tuple(dict.fromkeys(line for each in ready for line in _care(each, shelf.crew, number))),
        mowing=tuple(_mowing(ready, shelf.crew, number, say)),
        clip=tuple(_clip(shelf, number)),
        water=tuple(_water(shelf, ready, number, say)),
        work=tuple(capital(each.title) for each in ready if _in_season(each, shelf.crew, number)),
    )


def _care(technique: AnyTechnique, crew: Crew, month: int) -> Iterator[Prose]:
    """Yield the aftercare that falls in the month, with what it is about."""
    for care in technique.aftercare:
        if not care.never and month in months_named(care.when, crew.hemisphere):
            yield (*prose(f"{technique.title}: ", strong=True), *started(care.text))


def _in_season(technique: AnyTechnique, crew: Crew, month: int) -> bool:
    """Tell whether work has a season, and the month is in it."""
    months = months_of(technique.season, crew.hemisphere) or ()
    return month in months and len(months) < YEAR_ROUND


def _mowing(techniques: list[AnyTechnique], crew: Crew, month: int, say: Labels) -> Iterator[str]:
    """Yield how high each lawn of the shelf is kept, and at what height it is cut again."""
    for technique in techniques:
        m = technique.measures
        if isinstance(m, MowingMeasures) and _in_season(technique, crew, month):
            at, to = (shown_cell(each, "mm", crew.reader) for each in (mow_at_mm(m.set_height_mm), m.set_height_mm))
            yield say["letter_mow_at"].format(grass=capital(m.grass or technique.title), at=at, to=to)


def _clip(shelf: Shelf, month: int) -> Iterator[str]:
    """Yield the plants of this shelf that are clipped in the month, each once."""
    named = [name for each in shelf.techniques for name in each.plants]
    named += [name for visit in shelf.visits for job in visit.jobs for name in job.technique.plants]
    found = {plant.botanical: plant for name in named if (plant := shelf.book.plant(name))}
    for plant in found.values():
        if plant.clip_months and month in plant.clip_months.at(shelf.crew.hemisphere):
            yield capital(plant.common[0]) if plant.common else plant.botanical


def _water(shelf: Shelf, techniques: list[AnyTechnique], month: int, say: Labels) -> Iterator[Entry]:
    """Yield how a lawn and a bed are watered, where the crew keeps its climate."""
    grasses = [each.measures.grass or "" for each in techniques if isinstance(each.measures, MowingMeasures)]
    area = shown_cell(BED_M2, "m2", shelf.crew.reader)
    lawn = lawn_need(shelf.crew, month, BED_M2, shelf.book.grass(grasses[0]) if grasses else None)
    bed = garden.garden_water(shelf.crew, month, BED_M2, method=BED)
    for label, need in ((say["letter_lawn"], lawn), (say["letter_bed"].format(area=area), bed)):
        if need is not None and (need is bed or grasses):
            yield _watered(label, need, shelf)


def _watered(label: str, need: GardenWater, shelf: Shelf) -> Entry:
    words = shelf.crew.reader.tell(
        NOTHING if rain_is_enough(need, shelf.crew) else each_watering(need, BED_M2, shelf.crew)[0]
    )
    return Entry(label=label, value=words, headline=len(words) <= LONGEST_LARGE)
