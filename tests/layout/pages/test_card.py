from typing import Any, TypeVar

from howto.colour import contrast
from howto.layout.pages.card import card_sheet, legible
from howto.model.crew import Colours
from howto.model.prose import plain
from howto.model.sheet import Bullets, Code, Facts, Section, Sheet, StepRow
from tests.support import sample

NBSP = "\u00a0"
B = TypeVar("B")


def card(**changes: Any) -> Sheet:
    """Return the sample card, with some fields of the technique changed."""
    return card_sheet(sample.ready(**changes), (sample.art(),), sample.TODAY)


def part(sheet: Sheet, heading: str) -> Section:
    """Return the section under a heading."""
    return next(section for section in sheet.sections if section.heading == heading)


def blocks(section: Section, kind: type[B]) -> list[B]:
    """Return the blocks of one kind."""
    return [block for block in section.blocks if isinstance(block, kind)]


def test_a_card_is_a5_and_two_sides_at_most() -> None:
    sheet = card()
    # ISO 216: A5 is 148 × 210 mm
    assert (sheet.width_mm, sheet.height_mm, sheet.most_pages) == (148.0, 210.0, 2)
    assert (sheet.text_pt, sheet.small_pt) == (10.0, 8.5)


def test_the_parts_stand_in_the_order_of_the_work() -> None:
    assert [section.heading for section in card().sections] == [
        "", "Setting out", "Numbers", "", "Tools", "Materials", "Caution", "Steps", "Finish standard", "Aftercare",
        "More numbers",
    ]  # fmt: skip


def test_steps_start_a_fresh_side_and_cautions_come_before_them() -> None:
    sheet = card()
    headings = [section.heading for section in sheet.sections]
    assert part(sheet, "Steps").fresh
    assert headings.index("Caution") < headings.index("Steps")
    assert part(sheet, "Caution").tone == "caution"


def test_the_line_above_the_title_says_family_level_and_minutes() -> None:
    assert card().over == "Clipping · Level 1 · 25 minutes"
    assert card(minutes=None, level=2).over == "Clipping · Level 2"


def test_tools_and_finish_have_boxes_to_tick() -> None:
    sheet = card()
    for heading, count in (("Tools", 4), ("Materials", 2), ("Finish standard", 4)):
        (ticks,) = blocks(part(sheet, heading), Bullets)
        assert ticks.tick
        assert len(ticks.items) == count


def test_the_numbers_that_a_tight_print_leaves_out_stand_last() -> None:
    assert [(section.heading, section.spare) for section in card().sections if section.spare] == [
        ("", 3),
        ("More numbers", 1),
    ]


def test_what_to_know_first_stands_under_the_title() -> None:
    (facts,) = blocks(card(needs=("sharpen-hand-shears",)).sections[0], Facts)
    assert [(entry.label, entry.value) for entry in facts.entries] == [
        ("When", "late spring to early autumn"),
        ("Plants", "ilex crenata"),
        ("Know first", "sharpen hand shears"),
    ]


def test_steps_carry_key_points_reasons_and_checks() -> None:
    steps = blocks(part(card(), "Steps"), StepRow)
    assert [step.number for step in steps] == [1, 2, 3, 4, 5, 6]
    assert plain(steps[1].text).replace(NBSP, " ").endswith("Take 40 mm off each side.")
    assert len(steps[1].key_points) == 2
    assert plain(steps[0].reasons[0]) == "The widest ring is the one line every other cut is measured from."


def test_the_code_opens_the_card_on_the_crews_web_address() -> None:
    (code,) = blocks(card().sections[0], Code)
    assert code.url == "https://lantern-field.example/t/clip-a-ball"
    assert code.label == "The code opens the newest version of this card; where the two differ, use that one."


def test_a_crew_without_web_address_gets_no_code() -> None:
    sheet = card(crew=sample.CREW.model_copy(update={"web": ""}))
    assert not [block for section in sheet.sections for block in section.blocks if isinstance(block, Code)]


def test_the_stamp_tells_version_and_day() -> None:
    assert card().stamp == "Version 7f3a91c2 · 14 October 2026"
    assert card(version="").stamp == "14 October 2026"


def test_the_footer_sends_licensed_work_to_the_licensed() -> None:
    footer = card().footer.casefold()
    for word in ("local codes", "product label", "electrical", "tree climbing", "chainsaw", "chemicals", "licence"):
        assert word in footer


def test_an_empty_part_is_left_out() -> None:
    headings = [section.heading for section in card(materials=(), aftercare=()).sections]
    assert "Materials" not in headings
    assert "Aftercare" not in headings
    assert not part(card(materials=()), "Tools").side


def test_a_pale_accent_is_darkened_until_it_can_be_read() -> None:
    assert legible(Colours()) == "#a63d1f"
    found = legible(Colours(accent="#ffcc00"))
    assert contrast(found, "#ffffff") >= 4.5  # W3C, Web Content Accessibility Guidelines 2.2, 1.4.3
    assert contrast(found, Colours().ground) >= 4.5
