from howto.model.wording import says, words_of_cautions, words_of_kit, words_of_steps
from tests.support.builders import DIGGING, technique


def test_kit_steps_and_cautions_are_told_in_plain_words() -> None:
    work = technique(DIGGING).technique
    assert words_of_kit(work.tools) == "Hand shears sharp, wiped clean"
    assert words_of_steps(work.steps[:1]) == (
        "Stand back and look. Look from two sides before starting. Find the line first. "
        "A line found late is a line cut twice."
    )
    assert words_of_cautions(work.cautions) == "Blades. Keep the free hand behind them."


def test_a_word_is_found_from_the_tools_to_the_aftercare_but_not_in_what_to_wear() -> None:
    work = technique(DIGGING)
    found = [says(work, word) for word in ("hand shears", "drop sheet", "rake", "free hand", "even", "within 2 days")]
    assert found == [True] * 6
    assert says(work, "water twice", "water once")
    assert not says(work, "gloves")
