from typing import TypeVar

from howto.colour import contrast
from howto.compute.words import filled_technique
from howto.layout.card import card_sheet, grid, kept_together, legible
from howto.model.crew import Colours, Crew
from howto.model.figure import Figure, Table
from howto.model.prose import plain
from howto.model.reference import GEOMETRY
from howto.model.sheet import Bullets, Code, Entry, Facts, Grid, Section, Sheet, StepRow
from tests.support import sample

NBSP = "\u00a0"
B = TypeVar("B")


def card(**changes: object) -> Sheet:
    """Return the sample card, with some fields of the technique changed."""
    technique = filled_technique(sample.technique(**changes), sample.figures())
    return card_sheet(technique, sample.figures(), (sample.art(),), sample.TODAY)


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
        "", "Setting out", "Numbers", "Worked out", "Tools", "Materials", "Caution", "Steps", "Finish standard",
        "Aftercare",
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


def test_measures_and_headline_figures_stand_large_with_tolerance_or_working() -> None:
    (facts,) = blocks(part(card(), "Numbers"), Facts)
    assert [(e.label, e.value.replace(NBSP, " "), e.note.replace(NBSP, " ")) for e in facts.entries] == [
        ("Finished width", "900 mm", "± 20 mm"),
        ("Standing width", "980 mm", ""),
        ("Passes", "2", ""),
        ("Off each side", "40 mm", "(980 mm − 900 mm) ÷ 2 = 40 mm"),
        ("Share of the ball taken off", "23 %", "1 − (900 ÷ 980)³ = 0.2255 = 23 %"),
    ]
    assert all(entry.headline for entry in facts.entries)


def test_a_measure_that_is_a_word_stands_under_the_title() -> None:
    (facts,) = blocks(card().sections[0], Facts)
    assert facts.entries[0] == Entry(label="Shape", value="ball")


def test_other_figures_stand_under_worked_out() -> None:
    (facts,) = blocks(part(card(), "Worked out"), Facts)
    assert [entry.label for entry in facts.entries] == ["Water after the clip", "Next clip due"]


def test_tools_and_finish_have_boxes_to_tick() -> None:
    sheet = card()
    for heading, count in (("Tools", 4), ("Materials", 2), ("Finish standard", 4)):
        (ticks,) = blocks(part(sheet, heading), Bullets)
        assert ticks.tick
        assert len(ticks.items) == count


def test_steps_carry_key_points_reasons_and_checks() -> None:
    steps = blocks(part(card(), "Steps"), StepRow)
    assert [step.number for step in steps] == [1, 2, 3, 4, 5, 6]
    assert plain(steps[1].text).replace(NBSP, " ").endswith("Take 40 mm off each side.")
    assert len(steps[1].key_points) == 2
    assert plain(steps[0].reasons[0]) == "The widest ring is the one line every other cut is measured from."


def test_the_code_opens_the_card_on_the_crews_web_address() -> None:
    (code,) = blocks(card().sections[0], Code)
    assert code.url == "https://lantern-field.example/t/clip-a-ball"
    assert "7f3a91c2" in code.label


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


def test_a_long_table_is_turned_and_its_unit_moves_to_the_heading() -> None:
    (table,) = blocks(part(card(), "Worked out"), Grid)
    assert table.turned
    assert table.columns == ("Height, mm", "150", "300", "450", "600", "750")
    assert table.rows == (("Ring width, mm", "671", "849", "900", "849", "671"),)


def test_a_wide_table_keeps_its_columns_and_mixed_units_stay_in_the_cells() -> None:
    figure = Figure(
        name="t",
        label="stages",
        value=2.0,
        working=("",),
        references=(GEOMETRY,),
        table=Table(
            columns=("Cut", "From", "To"), units=("", "mm", "mm"), rows=((1.0, 1200.0, 900.0), (2.0, 900.0, 600.0))
        ),
    )
    found = grid(figure, Crew())
    assert found is not None
    assert not found.turned
    assert found.caption == "Stages"
    assert found.columns == ("Cut", "From", "To, mm")
    assert found.rows == (("1", f"1.2{NBSP}m", "900"), ("2", f"900{NBSP}mm", "600"))


def test_a_figure_without_table_has_no_grid() -> None:
    assert grid(sample.FIGURES[0], Crew()) is None


def test_working_that_does_not_end_in_the_value_is_left_to_the_figures_command() -> None:
    figure = sample.FIGURES[0].model_copy(update={"working": ("the rest is half of 80 mm",)})
    sheet = card_sheet(sample.technique(), (figure,), (), sample.TODAY)
    (facts,) = blocks(part(sheet, "Numbers"), Facts)
    assert facts.entries[-1].note == ""


def test_working_breaks_before_a_sign_only() -> None:
    assert kept_together("980 mm - 900 mm / 2 x 3 = 40 mm") == (
        f"980{NBSP}mm −{NBSP}900{NBSP}mm ÷{NBSP}2 ×{NBSP}3 ={NBSP}40{NBSP}mm"
    )


def test_a_pale_accent_is_darkened_until_it_can_be_read() -> None:
    assert legible(Colours()) == "#a63d1f"
    found = legible(Colours(accent="#ffcc00"))
    assert contrast(found, "#ffffff") >= 4.5  # W3C, Web Content Accessibility Guidelines 2.2, 1.4.3
    assert contrast(found, Colours().ground) >= 4.5
