"""What share of all that families, figures, drawings and gardens say each language has words for."""

import pytest

from howto.languages import LANGUAGES
from howto.languages.tags import is_english
from tests.support.said import missing, share, templates

# The share reached; `python -m tests.languages es` lists the missing ones. Words may be added, and none lost.
REACHED = {"es": 0.09, "vi": 0.09, "mi": 0.09}
TOLD = {tag: language.phrases for tag, language in LANGUAGES.items() if not is_english(tag)}


def test_every_language_has_its_share_recorded() -> None:
    assert REACHED.keys() == TOLD.keys()


@pytest.mark.parametrize(("language", "reached"), REACHED.items())
def test_a_language_tells_no_less_than_it_did(language: str, reached: float) -> None:
    assert share(language) >= reached


def test_what_is_missing_is_found_among_all_that_is_said() -> None:
    assert "finished width" in templates()
    for language in TOLD:
        assert missing(language) < templates()
        assert "finished width" not in missing(language)
        assert "sprinkler rate" in missing(language)


@pytest.mark.parametrize("language", TOLD)
def test_a_translation_has_as_many_amounts_as_its_key(language: str) -> None:
    told = TOLD[language]
    assert [key for key, words in told.items() if key.count("{}") != words.count("{}")] == []
    assert [key for key in told if key != " ".join(key.split()).casefold()] == []


@pytest.mark.parametrize("language", TOLD)
def test_every_language_has_words_for_the_same_phrases(language: str) -> None:
    assert TOLD[language].keys() == TOLD["es"].keys()
