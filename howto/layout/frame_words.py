"""The words a carousel and its caption print of their own accord, beside those it shares with the pages."""

from typing import Final, TypedDict


class FrameWords(TypedDict):
    """Every word, in one language; braces are filled by the layout."""

    tools_and_numbers: str
    before_you_start: str
    finish: str
    done_when: str
    afterwards: str
    frame_of: str
    step_of: str
    mark: str
    cover: str
    photograph: str
    wear: str
    local_codes: str
    caution: str
    warning_sign: str


ENGLISH: Final[FrameWords] = {
    "tools_and_numbers": "Tools and numbers",
    "before_you_start": "Before you start",
    "finish": "Finish",
    "done_when": "It is done when",
    "afterwards": "Afterwards",
    "frame_of": "{number} of {count}",
    "step_of": "Step {number} of {count}",
    "mark": "Mark {number}, {place}: {text}",
    "cover": "{title}",
    "photograph": "Photograph: {credit}",
    "wear": "Wear {things}",
    "local_codes": "Follow local codes and the product label. Leave electrical work, tree climbing, chainsaws and "
    "chemicals that need a licence to people who hold one.",
    "caution": "Take care: {cautions}",
    "warning_sign": "Yellow and black warning panel",
}

LANGUAGES: Final[dict[str, FrameWords]] = {"en": ENGLISH}


def frame_words(language: str) -> FrameWords:
    """Return the words of a language tag such as `en-NZ`; English where we have none of its own."""
    return LANGUAGES.get(language.partition("-")[0].casefold(), ENGLISH)
