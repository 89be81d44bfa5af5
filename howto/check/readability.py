"""How easy a text is to read: sentences, words and syllables counted, and the Flesch-Kincaid and SMOG grades.

Flesch-Kincaid: US Department of Veterans Affairs HSR&D, Flesch Score (2009). SMOG: McLaughlin (1969), as set out
by Hunter College CUNY. Counting rules: University of New Mexico Hospitals, Checking Readability Level: numerals,
decimals and shortened words end no sentence.
"""

import re
from dataclasses import dataclass
from math import sqrt

SHORTENED = ("e.g", "i.e", "vs", "dr", "st", "mr", "mrs", "no", "approx")  # never end a sentence
UNITS = ("cm", "mm", "min", "max", "etc", "a.m", "p.m", "in", "ft", "oz", "lb")  # end one before a capital
# Trade words that the vowel rule gets wrong, with their syllables.
TRADE = {
    "secateurs": 3, "topiary": 4, "espalier": 4, "fertiliser": 4, "fertilizer": 4, "deciduous": 4, "perennial": 4,
    "annual": 3, "biennial": 4, "cloche": 1, "propagator": 5, "herbaceous": 3, "nitrogen": 3, "aerate": 3, "acre": 2,
    "litre": 2, "litres": 2, "metre": 2, "metres": 2, "centimetre": 4, "centimetres": 4, "millimetre": 4,
    "millimetres": 4, "area": 3, "areas": 3, "quiet": 2, "iris": 2, "camellia": 4, "magnolia": 4, "every": 2,
    "evenly": 3, "something": 2, "sometimes": 2, "fire": 1, "hours": 1, "hour": 1, "our": 1, "people": 2, "poison": 2,
    "soil": 1, "soils": 1, "trellis": 2, "evergreen": 3, "evergreens": 3, "drainage": 2, "being": 2, "lower": 2,
    "above": 2, "idea": 3, "ideas": 3, "ideal": 3, "create": 2, "lion": 2, "around": 2,
    "seedling": 2, "water": 2, "whole": 1, "seedlings": 2, "vegetable": 4, "clothes": 1,
}  # fmt: skip
_LOOK_BACK = 10  # letters: more than a shortened word has
_WORD = re.compile(r"[^\W_]+(?:[.,:/'’-][^\W_]+)*", re.UNICODE)
_END = re.compile(r"[.!?]+[\"'”’)\]]*(?=\s|$)")
_VOWELS = re.compile(r"[aeiouyàáâäèéêëìíîïòóôöùúûü]+")
_SILENT = (
    re.compile(r"[^aeiouyl]e$|[aeiouy]le$"),  # prune, whole; not needle
    re.compile(r"(?:[^aeiouyszxcglh]|[aeiouy]l|th)es$"),  # leaves; not hedges, branches, needles
    re.compile(r"(?:[^aeiouytdl]|[aeiouyl]l)ed$"),  # clipped, pulled; not planted, bottled
    re.compile(r"[^aeiouyl]e(?:ly|ful|fully|less|ment|ness)s?$"),  # safely, carefully
)
_SPLIT = re.compile(
    r"(?<![tcsg])i(?=o|um|us)|(?<![tcs])i(?=a(?!n$))|(?<=[^lgtcs])i(?=an$)|(?<![gq])u(?=a|ou)|[aeiouy](?=ing$)"
)


@dataclass(frozen=True, slots=True)
class Sentence:
    """A sentence with where it stands in its text, in characters from 0."""

    text: str
    start: int
    end: int

    @property
    def words(self) -> int:
        """How many words it has; a numeral, a hyphenated word and a contraction count as one."""
        return len(words_in(self.text))


@dataclass(frozen=True, slots=True)
class Counts:
    """What a grade is worked from."""

    sentences: int
    words: int
    syllables: int
    long_words: int  # of three syllables or more

    @property
    def grade(self) -> float:
        """The Flesch-Kincaid grade; 0 for an empty text."""
        if not self.sentences or not self.words:
            return 0.0
        return flesch_kincaid(self.words, self.sentences, self.syllables)


def sentences_of(text: str) -> tuple[Sentence, ...]:
    """Return the sentences of a text; a decimal point, a list numeral or a shortened word ends none."""
    found: list[Sentence] = []
    start = 0
    for match in _END.finditer(text):
        if match.end() < len(text) and _goes_on(text, match):
            continue
        found += _sentence(text, start, match.end())
        start = match.end()
    found += _sentence(text, start, len(text))
    return tuple(found)


def _goes_on(text: str, match: re.Match[str]) -> bool:
    """Tell whether a full stop belongs to a shortened word or a list numeral, so that the sentence goes on."""
    if not match.group().startswith("."):
        return False
    last = re.split(r"[^\w.]", text[max(0, match.start() - _LOOK_BACK) : match.start()])[-1].casefold()
    if last in UNITS:
        return text[match.end() :].lstrip()[:1].islower()
    return last in SHORTENED or (last.isdigit() and len(last) < 3 and text[: match.start()].strip() == last)


def _sentence(text: str, start: int, end: int) -> list[Sentence]:
    """Return the stretch as a sentence if any word stands in it."""
    stretch = text[start:end]
    body = stretch.strip()
    if not words_in(body):
        return []
    at = start + stretch.index(body)
    return [Sentence(body, at, at + len(body))]


def words_in(text: str) -> tuple[str, ...]:
    """Return the words of a text, numerals included."""
    return tuple(_WORD.findall(text))


def syllables(word: str) -> int:
    """Return the syllables of an English word by its vowels; a numeral or a symbol has one (Flesch's rule)."""
    parts = [part for part in re.split(r"[-/’']", word.casefold()) if part]
    return max(1, sum(_syllables(part) for part in parts if part not in {"s", "t", "ll", "re", "ve", "d"}))


def _syllables(word: str) -> int:
    if word in TRADE:
        return TRADE[word]
    if not any(letter.isalpha() for letter in word):
        return 1
    groups = len(_VOWELS.findall(word)) + len(_SPLIT.findall(word))
    return max(1, groups - sum(1 for ending in _SILENT if ending.search(word)))


def counts(text: str) -> Counts:
    """Return the counts of a text."""
    words = words_in(text)
    each = [syllables(word) for word in words]
    return Counts(len(sentences_of(text)), len(words), sum(each), sum(1 for count in each if count >= 3))


def flesch_kincaid(words: int, sentences: int, syllable_count: int) -> float:
    """Return the Flesch-Kincaid grade from counts."""
    return 0.39 * words / sentences + 11.8 * syllable_count / words - 15.59


def reading_ease(words: int, sentences: int, syllable_count: int) -> float:
    """Return the Flesch reading ease from counts: 60 to 70 is plain English."""
    return 206.835 - 1.015 * words / sentences - 84.6 * syllable_count / words


def smog(long_words: int, sentences: int) -> float:
    """Return the SMOG grade from the words of three syllables or more and the sentences."""
    return 1.0430 * sqrt(long_words * 30 / sentences) + 3.1291
