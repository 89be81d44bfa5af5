from collections.abc import Mapping

import pytest

from howto.quantities.amounts import qty
from howto.read.crew import crew_of
from howto.span import SourceText

CREW = """hemisphere: north
words:
  es:
    Hole depth: hondura del hoyo
    "{} of bark": "{} de corteza"
  mi: {shape: hanga}
"""


def words(text: str) -> Mapping[str, Mapping[str, str]]:
    crew, findings = crew_of(SourceText("crew.yaml", text))
    assert findings == ()
    return crew.words


def told(text: str) -> list[tuple[int, str, str]]:
    return [(each.span.line, each.what, each.mend) for each in crew_of(SourceText("crew.yaml", text))[1]]


def test_a_crews_own_words_are_read_by_language() -> None:
    assert words(CREW) == {
        "es": {"hole depth": "hondura del hoyo", "{} of bark": "{} de corteza"},
        "mi": {"shape": "hanga"},
    }
    assert words("hemisphere: north\nwords:\n") == {}


def test_a_crews_own_words_go_over_ours() -> None:
    crew, _ = crew_of(SourceText("crew.yaml", CREW.replace("Hole depth", "finished width")))
    spanish = crew.read_in("es-MX")
    assert spanish.tell("finished width") == "hondura del hoyo"
    assert spanish.tell(f"{qty(1.5, 'L')} of bark") == "1.5\u00a0L de corteza"
    assert list(spanish.gaps("hole depth")) == ["hole depth"]


@pytest.mark.parametrize(
    ("words", "what", "mend"),
    [
        (
            "  Spanish: {a: b}",
            "`Spanish` does not say which language by its letters",
            "write the letters of the language, such as `es:` or `mi:`",
        ),
        ('  es: {"{} to {}": "{} a"}', "`{} a` has 1 `{}` and `{} to {}` has 2", "write `{}` 2 times after the colon"),
        ('  es: {shape: "{} forma"}', "`{} forma` has 1 `{}` and `shape` has 0", "take the `{}` out"),
        (
            "  es: forma",
            "`es` under `words` holds no `key: value`",
            "write `words:` and under it `  es: {finished width: anchura final}`",
        ),
    ],
)
def test_words_that_cannot_be_used_are_told(words: str, what: str, mend: str) -> None:
    assert told(f"hemisphere: north\nwords:\n{words}\n") == [(3, what, mend)]


def test_a_phrase_without_its_words_is_told() -> None:
    assert told("hemisphere: north\nwords:\n  es: {shape: }\n")[0][1] == "nothing stands after `shape:`"
    assert told("hemisphere: north\nwords: forma\n")[0][1] == "`words` holds no `key: value`"


def test_a_language_without_words_has_none() -> None:
    assert words("hemisphere: north\nwords:\n  es:\n  mi: {shape: hanga}\n") == {"mi": {"shape": "hanga"}}
    assert words("hemisphere: north\nwords:\n") == {}
