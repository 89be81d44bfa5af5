"""Twelve visits over a year, in both hemispheres, metric and imperial: the words and dates that their clients get.

`tests/data/gardens` holds one set of techniques, and for each of three crews its `crew.yaml` and visits. What a
client gets stands in `tests/golden/leaflets`, the contradiction of one visit in place of its leaflet.
"""

import shutil
from datetime import date
from functools import cache
from pathlib import Path
from tempfile import mkdtemp
from typing import Any

import pytest
from icalendar import Calendar

from howto.cli.report import listed
from howto.compute.tasks import plan_of
from howto.jobs.check import Examined, examine
from howto.layout.pages.leaflet import leaflet_sheet
from howto.layout.pages.plain import message
from howto.model.ready import ReadyVisit
from howto.model.task import Plan
from howto.render.calendar import calendar
from howto.render.html import page
from howto.render.pdf import pdf
from tests.support.source import ROOT

DATA = ROOT / "tests/data/gardens"
GOLDEN = ROOT / "tests/golden/leaflets"
CREWS = ("north", "south", "us")
NAMES = [f"{crew}/{path.stem}" for crew in CREWS for path in sorted((DATA / crew / "visits").glob("*.md"))]
CLASH = "south/2027-09-01-top-level"
WHOLE = 100_000  # characters: nothing left out


def put_together(crew: str, root: Path) -> Path:
    """Make the shelf of a crew from its own files and the techniques that all share."""
    shutil.copytree(DATA / "techniques", root)
    shutil.copytree(DATA / crew, root, dirs_exist_ok=True)
    return root


@cache
def examined(crew: str) -> Examined:
    """Return the shelf of a crew, read and checked."""
    root = put_together(crew, Path(mkdtemp()) / "shelf")
    found = examine(root, date(2026, 10, 14))
    shutil.rmtree(root.parent)
    return found


def visit_of(name: str) -> tuple[Examined, ReadyVisit, Plan]:
    """Return a visit by its crew and name, with the shelf it stands on and its plan."""
    crew, _, id_ = name.partition("/")
    shelf = examined(crew)
    ready = shelf.visits[id_]
    return shelf, ready, plan_of(ready)[0]


def dates_of(ready: ReadyVisit, plan: Plan) -> str:
    """Return the calendar of a visit, an entry a line."""
    lines = []
    for event in Calendar.from_ical(calendar(ready, plan, ready.visit.date)).walk("VEVENT"):
        repeats: Any = event.get("rrule")
        rule = repeats.to_ical().decode() if repeats else ""
        day = event.decoded("dtstart")
        lines.append(
            " ".join(filter(None, (f"{day:%Y-%m-%d %a}", str(event["summary"]), rule, f"#{event['sequence']}")))
        )
    return "\n".join(lines)


def told(name: str) -> str:
    """Return what the client of a visit is told: the leaflet's words and its dates; or what the lead is told."""
    shelf, ready, plan = visit_of(name)
    visit = ready.visit
    found = [finding for finding in shelf.findings if finding.span.path == visit.path]
    if found:
        root = visit.path.partition("/visits/")[0]
        return listed(found, shelf.sources, width=120).replace(f"{root}/", "")
    sheet = leaflet_sheet(ready, plan, visit.date)
    return f"{message(sheet, WHOLE)}\n\nDATES\n{dates_of(ready, plan)}\n".replace("\u00a0", " ")


def test_there_are_twelve_visits_over_a_year_and_more_in_both_hemispheres_and_units() -> None:
    visits = [visit_of(name)[1].visit for name in NAMES]
    crews = [visit_of(name)[1].crew for name in NAMES]
    assert len(visits) == 12
    assert {crew.hemisphere for crew in crews} == {"north", "south"}
    assert {crew.units for crew in crews} == {"metric", "us"}
    assert (max(visit.date for visit in visits) - min(visit.date for visit in visits)).days > 365
    assert sum(visit.large_print for visit in visits) == 2
    assert any(visit.next_visit is None for visit in visits)


@pytest.mark.parametrize("name", NAMES)
def test_a_client_is_told_these_words_and_dates(name: str, accept: bool) -> None:
    golden = GOLDEN / f"{name.replace('/', '-')}.txt"
    found = told(name)
    if accept:
        golden.parent.mkdir(exist_ok=True)
        golden.write_text(found, encoding="utf-8")
    assert found == golden.read_text(encoding="utf-8")


def test_only_the_visit_that_contradicts_itself_has_a_finding() -> None:
    found = [each for crew in CREWS for each in examined(crew).findings if "/visits/" in each.span.path]
    paths = {Path(each.span.path).stem: each.rule for each in found}
    assert paths == {"2027-09-01-top-level": "leaflet.contradiction"}


@pytest.mark.parametrize("name", [name for name in NAMES if name != CLASH])
def test_a_leaflet_fits_its_paper_at_its_size(name: str) -> None:
    _, ready, plan = visit_of(name)
    visit = ready.visit
    sheet = leaflet_sheet(ready, plan, visit.date)
    _, pages = pdf(sheet, visit.date)
    assert pages <= sheet.most_pages
    assert visit.site in page(sheet)


def test_every_dated_task_is_in_the_calendar_on_the_day_the_leaflet_says() -> None:
    for name in NAMES:
        _, ready, plan = visit_of(name)
        visit = ready.visit
        events = Calendar.from_ical(calendar(ready, plan, visit.date)).walk("VEVENT")
        days = [event.decoded("dtstart") for event in events]
        dated = [task.day for task in plan.tasks if task.day and task.kind != "next visit"]
        assert days[: len(dated)] == [max(day, date.fromordinal(visit.date.toordinal() + 1)) for day in dated]
        assert days[len(dated) :] == ([visit.next_visit] if visit.next_visit else [])
