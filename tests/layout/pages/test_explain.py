import pytest

from howto.check.readability import counts
from howto.languages.glossary import EXPLAINED, PLAINER
from howto.layout.pages.explain import explained
from howto.model.prose import Run, plain, prose
from howto.model.sheet import Block, Bullets, Dated, Paragraph, Section
from tests.layout.pages.test_plain import sheet


def told(*texts: str, language: str = "en") -> list[str]:
    """Return paragraphs as a leaflet prints them."""
    blocks: tuple[Block, ...] = tuple(Paragraph(text=prose(text)) for text in texts)
    found = explained(sheet(under=(), sections=(Section(heading="", blocks=blocks),), language=language))
    return [plain(block.text) for block in found.sections[0].blocks if isinstance(block, Paragraph)]


def test_a_trade_word_is_explained_where_it_first_stands() -> None:
    assert told("Top up the mulch.", "Keep the mulch off stems.") == [
        "Top up the mulch (a loose layer over the soil, such as bark).",
        "Keep the mulch off stems.",
    ]


def test_one_and_many_are_explained_once() -> None:
    assert told("Wet the root ball.", "All root balls are wet.") == [
        "Wet the root ball (the roots and the soil they hold).",
        "All root balls are wet.",
    ]


def test_a_word_that_the_lead_explains_is_let_be() -> None:
    assert told("Rake the thatch (dead stems) out.") == ["Rake the thatch (dead stems) out."]


def test_a_part_of_a_word_is_no_word() -> None:
    assert told("The leaders-in-waiting and crowning.") == ["The leaders-in-waiting and crowning."]


def test_capitals_do_not_matter_and_names_are_left() -> None:
    assert told("Mulch again.") == ["Mulch (a loose layer over the soil, such as bark) again."]
    runs = (Run(text="Mulch a bed: ", strong=True), Run(text="rake it."))
    found = explained(sheet(under=runs, sections=()))
    assert plain(found.under) == "Mulch a bed: rake it."


def test_other_languages_are_left_as_they_are() -> None:
    assert told("Top up the mulch.", language="es") == ["Top up the mulch."]


def test_the_first_use_is_the_first_in_reading_order() -> None:
    sections = (
        Section(name="done", heading="", blocks=(Bullets(items=(prose("Laid mulch."),)),)),
        Section(heading="", blocks=(Dated(when="now", text=prose("Top up the mulch.")),)),
        Section(heading="", blocks=(Bullets(items=(prose("Do not dig the mulch in."),)),)),
    )
    found = explained(sheet(under=prose("Here is mulch."), sections=sections))
    assert plain(found.under) == "Here is mulch (a loose layer over the soil, such as bark)."
    assert found.sections == sections


@pytest.mark.parametrize("meaning", sorted(set(EXPLAINED.values())))
def test_a_meaning_is_short_and_plain(meaning: str) -> None:
    assert len(meaning.split()) <= 12
    assert counts(meaning).long_words <= 1
    assert not any(word in PLAINER for word in meaning.split())


def test_no_word_is_both_explained_and_refused() -> None:
    assert set(EXPLAINED) & set(PLAINER) == set()
