from typing import TypeVar

import pytest

from howto.compute.tasks import plan_of
from howto.layout.pages.leaflet import forbidden, leaflet_sheet
from howto.model.crew import Crew
from howto.model.prose import plain, prose
from howto.model.sheet import ArtBlock, Bullets, Dated, Facts, Paragraph, Photo, Section, Sheet
from howto.model.technique import Picture
from howto.model.visit import Job
from tests.support import sample
from tests.support.visits import care, job

NBSP = "\u00a0"
FIRST = "To do before our next visit"
B = TypeVar("B")


def leaflet(photos: tuple[Photo, ...] = (), crew: Crew = sample.CREW, **changes: object) -> Sheet:
    """Return the sample leaflet, with some fields of the visit changed."""
    ready = sample.ready_visit(sample.visit(**changes), crew=crew)
    return leaflet_sheet(ready, plan_of(ready)[0], sample.TODAY, photos)


def part(sheet: Sheet, heading: str) -> Section:
    """Return the section under a heading."""
    return next(section for section in sheet.sections if section.heading == heading)


def blocks(section: Section, kind: type[B]) -> list[B]:
    """Return the blocks of one kind."""
    return [block for block in section.blocks if isinstance(block, kind)]


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
        "What we did", FIRST, "After that", "Numbers for your garden", "Please do not", "When to call us",
    ]  # fmt: skip
    assert [section.tone for section in sheet.sections] == ["plain", "plain", "plain", "plain", "never", "call"]
    assert [section.name for section in sheet.sections] == ["done", "first", "later", "numbers", "never", "call"]
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


def test_words_with_a_quantity_are_kept_apart_and_say_what_for() -> None:
    jobs = (job("the pear", care("Water 9 L.", "within", 2)), job("the hedge", care("Water 9 L.", "within", 2)))
    found = blocks(part(leaflet(jobs=jobs), FIRST), Dated)
    assert [dated.note for dated in found] == ["for the pear", "for the hedge"]


def test_tasks_are_numbered_as_on_the_year_line_and_on_through_both_lists() -> None:
    sheet = leaflet()
    assert [dated.number for name in (FIRST, "After that") for dated in blocks(part(sheet, name), Dated)] == [1, 2]
    (line,) = blocks(part(sheet, FIRST), ArtBlock)
    assert line.art.alt == (
        "A line of twelve months from 14 October 2026 with each dated task on its day: "
        "1, by Friday, 16 October 2026; 2, from Wednesday, 25 November 2026."
    )


def test_a_task_says_when_what_for_and_why_it_is_a_sum() -> None:
    jobs = (
        job("the bed", care("order 80 L of bark", "within", 2)),
        job("the hedge", care("order 120 L of bark", "within", 2)),
    )
    (dated,) = blocks(part(leaflet(jobs=jobs), FIRST), Dated)
    assert (dated.when, plain(dated.text).replace(NBSP, " ")) == ("By Friday, 16 October 2026", "Order 200 L of bark")
    assert dated.note.replace(NBSP, " ") == "for the bed and the hedge; 80 L + 120 L together"


def test_a_sentence_that_followed_a_colon_gets_its_capital() -> None:
    section = part(leaflet(jobs=(job("a", care("water once.", "within", 2)),)), FIRST)
    assert [plain(dated.text) for dated in blocks(section, Dated)] == ["Water once."]


def test_the_next_visit_is_named() -> None:
    (line,) = blocks(part(leaflet(), FIRST), Paragraph)
    assert plain(line.text) == "Our next visit: Wednesday, 25 November 2026"
    heading = "What to do, and by when"
    assert blocks(part(leaflet(next_visit=None), heading), Paragraph) == []


def test_a_visit_that_asks_nothing_says_so() -> None:
    section = part(leaflet(jobs=(job("a"),), next_visit=None), "What to do, and by when")
    assert [plain(block.text) for block in blocks(section, Paragraph)] == ["Nothing needs doing before our next visit."]
    later = leaflet(jobs=(job("a", care("Feed.", "month", month=3)),))
    assert plain(blocks(part(later, FIRST), Paragraph)[0].text) == "Nothing needs doing before our next visit."
    assert len(blocks(part(later, FIRST), ArtBlock)) == 1


def test_only_figures_for_a_client_are_shown() -> None:
    (facts,) = blocks(part(leaflet(), "Numbers for your garden"), Facts)
    assert [(e.label, e.value.replace(NBSP, " "), e.note) for e in facts.entries] == [
        ("Water after the clip", "9 L", ""),
        ("Next clip due", "2 June 2027", ""),
    ]


def test_figures_stand_under_what_they_are_for_where_the_visit_did_several_things() -> None:
    jobs = (job("the pair by the step"), job("", plant="pear"), job("", title="Look round"))
    section = part(leaflet(jobs=jobs), "Numbers for your garden")
    assert [plain(each.text) for each in blocks(section, Paragraph)] == [
        "For the pair by the step", "For pear", "For Look round",
    ]  # fmt: skip
    assert len(blocks(section, Facts)) == 3


def test_a_long_answer_is_not_set_large() -> None:
    long = sample.FIGURES[3].model_copy(update={"value": "two full 9 L cans, twice a week", "unit": ""})
    ready = sample.ready_visit(sample.visit(), [(long,)])
    sheet = leaflet_sheet(ready, plan_of(ready)[0], sample.TODAY)
    (facts,) = blocks(part(sheet, "Numbers for your garden"), Facts)
    assert [entry.headline for entry in facts.entries] == [False]


def test_what_not_to_do_says_what_about_where_the_visit_did_several_things() -> None:
    same, own = care("feed in the week of a clip.", "always", never=True), care("mow it.", "always", never=True)
    (never,) = blocks(part(leaflet(jobs=(job("a", same), job("b", same, own), job("c"))), "Please do not"), Bullets)
    assert [plain(item) for item in never.items] == ["Never feed in the week of a clip. (a and b)", "Never mow it. (b)"]
    (never,) = blocks(part(leaflet(jobs=(job("a", same),)), "Please do not"), Bullets)
    assert [plain(item) for item in never.items] == ["Never feed in the week of a clip."]


@pytest.mark.parametrize(
    ("word", "sentence", "language", "told"),
    [
        ("Never", "feed in the week of a clip", "en", "Never feed in the week of a clip"),
        ("Do not", "Water a wet root ball", "en", "Do not water a wet root ball"),
        ("Never", "do not feed it", "en", "Do not feed it"),
        ("Never", "NPK in a planting hole", "en", "Never NPK in a planting hole"),
        ("Nunca", "abone en la semana del recorte", "es", "Nunca abone en la semana del recorte"),
        ("Nunca", "no abone", "es", "No abone"),
        ("Không bao giờ", "Bón phân", "vi", "Không bao giờ bón phân"),
    ],
)
def test_a_ban_cannot_be_read_as_an_order(word: str, sentence: str, language: str, told: str) -> None:
    assert plain(forbidden(word, prose(sentence), language)) == told


def test_nothing_forbidden_leaves_no_empty_box() -> None:
    headings = [section.heading for section in leaflet(jobs=(job("a"),)).sections]
    assert "Please do not" not in headings


def test_the_call_box_names_whom_to_ask() -> None:
    paragraphs = blocks(part(leaflet(), "When to call us"), Paragraph)
    assert plain(paragraphs[-1].text) == "Who to ask: Lantern Field crew, 01632 960 014, weekdays 8 to 5"
    assert len(blocks(part(leaflet(), "When to call us"), Bullets)[0].items) == 3
    crew = sample.CREW.model_copy(update={"contact": ""})
    nameless = leaflet(crew=crew)
    assert plain(blocks(part(nameless, "When to call us"), Paragraph)[-1].text) == "Who to ask: Lantern Field crew"


def test_photographs_stand_under_their_own_heading() -> None:
    photo = Photo(jpeg=b"x", width=40, height=30, alt="The pair, clipped", caption="After")
    old, new = (Picture(file="old.jpg"),), (Picture(file="new.jpg"),)
    assert part(leaflet((photo,), before=old, after=new), "Before and after").blocks == (photo,)
    assert part(leaflet((photo,), after=new), "After").blocks == (photo,)
    assert part(leaflet((photo,), before=old), "Before").blocks == (photo,)


def test_the_leads_own_words_stand_under_the_title() -> None:
    assert plain(leaflet().under).startswith("The two balls have closed up well since spring.")
