import pytest
from hypothesis import given
from hypothesis import strategies as st

from howto.layout.text import balance, block_height, fits, length, tied, widest, wrap

HARD = "\u00a0"
letters = st.text(alphabet="abcdefghij klmno-/.5 mm\u00a0", max_size=80)


def test_length_grows_evenly_with_the_size() -> None:
    assert length("Clip 900 mm ± 20 mm", "text", 40) == pytest.approx(357.0)
    assert length("Clip 900 mm ± 20 mm", "text", 4) == pytest.approx(35.7)
    assert length("", "text", 40) == 0


def test_lines_break_at_spaces() -> None:
    assert wrap("Stand over the plant and look down", "text", 40, 330) == ["Stand over the", "plant and look", "down"]


def test_a_short_text_is_one_line_and_no_text_is_an_empty_one() -> None:
    assert wrap("Stem", "text", 40, 400) == ["Stem"]
    assert wrap("", "text", 40, 400) == [""]
    assert wrap("   ", "text", 40, 400) == [""]


def test_written_line_ends_are_kept_and_spaces_run_together() -> None:
    assert wrap("one\ntwo \t three", "text", 40, 400) == ["one", "two three"]


@pytest.mark.parametrize("space", ["\u00a0", "\u202f", "\u2007"])
def test_a_space_that_must_not_break_keeps_number_and_unit(space: str) -> None:
    assert wrap(f"Clip to 900{space}mm", "text", 40, 200) == ["Clip to", f"900{space}mm"]


@pytest.mark.parametrize("unit", ["mm", "m", "L/m2", "%", "g/m²", "ft", "°C"])
def test_a_number_holds_on_to_its_unit_after_a_plain_space(unit: str) -> None:
    assert wrap(f"Clip to 9 {unit}", "text", 40, length("Clip to 9", "text", 40)) == ["Clip to", f"9{HARD}{unit}"]


def test_only_units_are_tied() -> None:
    assert tied("Take 2 men and 3 m of string, 4 minutes, 5 h") == (
        f"Take 2 men and 3{HARD}m of string, 4 minutes, 5{HARD}h"
    )


def test_a_long_word_breaks_after_a_hyphen_or_slash_first() -> None:
    assert wrap("self-contained", "text", 40, 200) == ["self-", "contained"]
    assert wrap("example.org/cards/ball", "text", 40, 240) == ["example.org/", "cards/ball"]


def test_a_range_or_fraction_never_breaks() -> None:
    assert wrap("rows 5–7 or 1/3-way", "text", 40, 90) == ["rows", "5–7", "or", "1/3-", "way"]


def test_a_word_with_nowhere_to_break_breaks_between_letters() -> None:
    assert wrap("aaaaaaaaaa", "text", 40, 81) == ["aaaa", "aaaa", "aa"]
    assert wrap("xx-aaaaaaaaaa", "text", 40, 81) == ["xx-a", "aaaa", "aaaa", "a"]


def test_a_letter_wider_than_the_line_stands_alone() -> None:
    assert wrap("mm", "text", 40, 10) == ["m", "m"]


def test_an_accent_stays_with_its_letter() -> None:
    assert wrap("a\u0301a\u0301", "text", 40, 25) == ["a\u0301", "a\u0301"]


@given(letters, st.integers(60, 500))
def test_no_line_is_too_wide_and_no_letter_is_lost(text: str, width: int) -> None:
    for lines in (wrap(text, "text", 40, width), balance(text, "text", 40, width)):
        assert widest(lines, "text", 40) <= width
        assert "".join(lines).replace(" ", "").replace(HARD, "") == text.replace(" ", "").replace(HARD, "")


@given(letters, st.integers(60, 500))
def test_balancing_adds_no_line(text: str, width: int) -> None:
    assert len(balance(text, "text", 40, width)) == len(wrap(text, "text", 40, width))


def test_balanced_lines_are_even() -> None:
    text = "Lean 3.8° from upright, so light reaches the foot"
    assert wrap(text, "text", 40, 480) == ["Lean 3.8° from upright, so", "light reaches the foot"]
    assert wrap(text, "text", 40, 600) == ["Lean 3.8° from upright, so light", "reaches the foot"]
    assert balance(text, "text", 40, 600) == ["Lean 3.8° from upright,", "so light reaches the foot"]
    assert balance("one\ntwo", "text", 40, 600) == ["one", "two"]


def test_height_of_a_block_runs_from_ascent_to_descent() -> None:
    assert block_height(1, 40) == pytest.approx(40.8)
    assert block_height(3, 40) == pytest.approx(140.8)
    assert block_height(3, 40, leading=1.5) == pytest.approx(160.8)
    assert block_height(0, 40) == 0


def test_fitting_counts_lines_and_width() -> None:
    assert fits("Stand over the plant and look down", "text", 40, 330, 141)
    assert not fits("Stand over the plant and look down", "text", 40, 330, 140)
    assert not fits("mm", "text", 40, 10, 1000)
