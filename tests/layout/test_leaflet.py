from datetime import date
from typing import Any, TypeVar

from howto.compute.words import filled_visit
from howto.labels import labels
from howto.layout.leaflet import leaflet_sheet, tasks_of, when_shown
from howto.model.prose import plain, prose
from howto.model.sheet import ArtBlock, Bullets, Dated, Facts, Paragraph, Photo, Section, Sheet
from howto.model.technique import Care, When
from howto.model.visit import Job, Visit
from tests.support import sample

NBSP = "\u00a0"
B = TypeVar("B")


def leaflet(**changes: object) -> Sheet:
    """Return the sample leaflet, with some fields of the visit changed."""
    visit = sample.visit(**changes)
    figures = tuple(sample.figures() for _ in visit.jobs)
    return leaflet_sheet(filled_visit(visit, figures), figures, sample.TODAY)


def part(sheet: Sheet, heading: str) -> Section:
    """Return the section under a heading."""
    return next(section for section in sheet.sections if section.heading == heading)


def blocks(section: Section, kind: type[B]) -> list[B]:
    """Return the blocks of one kind."""
    return [block for block in section.blocks if isinstance(block, kind)]


def job(what: str, *cares: Care, **changes: Any) -> Job:
    """Return a job whose technique asks for this care."""
    return Job(technique=sample.technique(aftercare=cares), what=what, **changes)


def care(text: str, kind: Any, days: int = 0, **changes: Any) -> Care:
    """Return a care task."""
    never = bool(changes.pop("never", False))
    return Care(when=When(text=kind, kind=kind, days=days, **changes), text=prose(text), never=never)


def tasks(*jobs: Job, **changes: object) -> list[tuple[str, str]]:
    """Return when and what of each task of a visit."""
    visit = sample.visit(jobs=jobs, **changes)
    return [(when_shown(task, visit, labels("en")), plain(task.care.text)) for task in tasks_of(visit)]


def test_a_leaflet_is_a4_on_one_sheet_in_at_least_12_point() -> None:
    sheet = leaflet()
    # ISO 216: A4 is 210 × 297 mm; 12 pt at least: RNIB, Clear Print guidelines
    assert (sheet.width_mm, sheet.height_mm, sheet.most_pages) == (210.0, 297.0, 2)
    assert sheet.small_pt == 12.0


def test_large_print_is_never_below_18_point() -> None:
    # 18 pt at least: American Council of the Blind / CCLVI, Large print guidelines
    assert leaflet(large_print=True).small_pt == 18.0


def test_the_parts_answer_what_was_done_what_to_do_what_not_and_whom_to_call() -> None:
    sheet = leaflet()
    assert [section.heading for section in sheet.sections] == [
        "What we did", "What to do, and by when", "Numbers for your garden", "Please do not", "When to call us",
    ]  # fmt: skip
    assert [section.tone for section in sheet.sections] == ["plain", "plain", "plain", "never", "call"]
    assert (sheet.over, sheet.title) == ("Care leaflet · our visit of 14 October 2026", "Orchard end")


def test_what_was_done_says_to_what_how_many_and_how_much() -> None:
    jobs = (
        Job(technique=sample.technique(), what="the pair by the step", count=2, plant="box-leaved holly"),
        Job(technique=sample.technique(title="Mow by thirds"), area_m2=140.0),
        Job(technique=sample.technique(title="Feed"), plant="pear"),
        Job(technique=sample.technique(title="Look round")),
    )
    (done,) = blocks(part(leaflet(jobs=jobs), "What we did"), Bullets)
    assert [plain(item).replace(NBSP, " ") for item in done.items] == [
        "Clip a ball: the pair by the step, 2 × box-leaved holly",
        "Mow by thirds: 140 m²",
        "Feed: pear",
        "Look round",
    ]


def test_tasks_stand_in_order_of_date_and_the_undated_last() -> None:
    found = tasks(
        job("a", care("Sweep.", "always"), care("Feed.", "month", month=3), care("Water.", "within", 2)),
        job("b", care("Look.", "after", 14), care("Open the gate.", "next visit")),
        next_visit=date(2026, 11, 25),
    )
    assert found == [
        ("by 16 October 2026", "Water."),
        ("from 28 October 2026", "Look."),
        ("at our next visit, 25 November 2026", "Open the gate."),
        ("March 2027", "Feed."),
        ("always", "Sweep."),
    ]


def test_repeated_care_says_how_often_and_until_when() -> None:
    found = tasks(
        job("a", care("Water.", "every", 3, until_days=21), care("Mow.", "every", 7)),
    )
    assert found == [("every 3 days until 4 November 2026", "Water."), ("every 7 days", "Mow.")]


def test_a_season_is_written_in_months() -> None:
    found = tasks(job("a", care("Mulch.", "season", season="winter"), care("Feed.", "season", season="spring")))
    assert found == [("December 2026 to February 2027", "Mulch."), ("March to May 2027", "Feed.")]


def test_next_visit_without_a_date_keeps_the_authors_words() -> None:
    assert tasks(job("a", care("Open the gate.", "next visit")), next_visit=None) == [("next visit", "Open the gate.")]


def test_the_same_words_twice_are_one_task_on_the_nearer_date() -> None:
    found = tasks(job("a", care("Water well.", "within", 5)), job("b", care("water well.", "within", 2)))
    assert found == [("by 16 October 2026", "water well.")]


def test_words_with_a_quantity_are_kept_apart_and_say_what_for() -> None:
    jobs = (job("the pear", care("Water 9 L.", "within", 2)), job("the hedge", care("Water 9 L.", "within", 2)))
    found = blocks(part(leaflet(jobs=jobs), "What to do, and by when"), Dated)
    assert [dated.note for dated in found] == ["for the pear", "for the hedge"]


def test_tasks_are_numbered_as_on_the_year_line() -> None:
    section = part(leaflet(), "What to do, and by when")
    assert [dated.number for dated in blocks(section, Dated)] == [1, 2]
    (line,) = blocks(section, ArtBlock)
    assert line.art.alt == (
        "A line of twelve months from 14 October 2026 with each dated task on its day: "
        "1, by 16 October 2026; 2, from 25 November 2026."
    )


def test_a_sentence_that_followed_a_colon_gets_its_capital() -> None:
    section = part(leaflet(jobs=(job("a", care("water once.", "within", 2)),)), "What to do, and by when")
    assert [plain(dated.text) for dated in blocks(section, Dated)] == ["Water once."]


def test_the_next_visit_is_named() -> None:
    (line,) = blocks(part(leaflet(), "What to do, and by when"), Paragraph)
    assert plain(line.text) == "Our next visit: 25 November 2026"


def test_a_visit_that_asks_nothing_says_so() -> None:
    section = part(leaflet(jobs=(job("a"),), next_visit=None), "What to do, and by when")
    assert [plain(block.text) for block in blocks(section, Paragraph)] == ["Nothing needs doing before our next visit."]


def test_only_figures_for_a_client_are_shown() -> None:
    (facts,) = blocks(part(leaflet(), "Numbers for your garden"), Facts)
    assert [(e.label, e.value.replace(NBSP, " "), e.note) for e in facts.entries] == [
        ("Water after the clip", "9 L", ""),
        ("Next clip due", "2 June 2027", ""),
    ]


def test_what_not_to_do_is_said_once() -> None:
    same = care("feed in the week of a clip.", "always", never=True)
    (never,) = blocks(part(leaflet(jobs=(job("a", same), job("b", same))), "Please do not"), Bullets)
    assert [plain(item) for item in never.items] == ["Feed in the week of a clip."]


def test_nothing_forbidden_leaves_no_empty_box() -> None:
    headings = [section.heading for section in leaflet(jobs=(job("a"),)).sections]
    assert "Please do not" not in headings


def test_the_call_box_names_whom_to_ask() -> None:
    paragraphs = blocks(part(leaflet(), "When to call us"), Paragraph)
    assert plain(paragraphs[-1].text) == "Lantern Field crew, 01632 960 014, weekdays 8 to 5"
    crew = sample.CREW.model_copy(update={"contact": ""})
    nameless = leaflet(jobs=(Job(technique=sample.technique(crew=crew)),))
    assert plain(blocks(part(nameless, "When to call us"), Paragraph)[-1].text) == "Lantern Field crew"


def test_photographs_stand_under_their_own_heading() -> None:
    visit: Visit = sample.visit()
    figures = (sample.figures(),)
    photo = Photo(jpeg=b"x", width=40, height=30, alt="The pair, clipped", caption="After")
    sheet = leaflet_sheet(filled_visit(visit, figures), figures, sample.TODAY, (photo,))
    assert part(sheet, "Before and after").blocks == (photo,)


def test_the_leads_own_words_stand_under_the_title() -> None:
    assert plain(leaflet().under).startswith("The two balls have closed up well since spring.")
