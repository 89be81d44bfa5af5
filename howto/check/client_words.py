"""Checks that a client can read what they are given: short sentences, plain words, a grade that most people read."""

import re
from collections.abc import Iterator, Mapping
from dataclasses import replace
from typing import Any, Final, NamedTuple

from howto.check.place import Sources, noted, settled, where_said
from howto.check.readability import Sentence, counts, sentences_of
from howto.findings import Finding, Severity
from howto.guarded import guarded
from howto.languages.glossary import PLAINER
from howto.languages.tags import is_english
from howto.model.family import Rule
from howto.model.prose import BRACED, plain
from howto.model.reference import PRACTICE, Grade, source
from howto.model.shelf import Shelf
from howto.model.technique import AnyTechnique
from howto.model.visit import Visit
from howto.span import Located, Span

GDS: Final = source(Grade.A, "Sentence length: why 25 words is our limit", "UK Government Digital Service", "2014")
FLESCH: Final = source(
    Grade.A, "Flesch Score", "US Department of Veterans Affairs, Health Services Research and Development", "2009"
)
SAMPLE: Final = source(Grade.A, "Checking Readability Level", "University of New Mexico Hospitals")
HIGHEST_GRADE: Final = 8.0  # US hospital practice: University of New Mexico Hospitals
MOST_WORDS: Final = 25  # UK Government Digital Service, 2014
LEAST_SAMPLE: Final = 30  # words, ours: a grade of fewer says nothing; even 300 are few (University of New Mexico)
QUOTED: Final = 6  # words of a long sentence that name it

LONG: Final[Rule[Any]] = Rule(
    name="leaflet.long-sentence",
    severity=Severity.WARNING,
    statement=f"A sentence for a client has {MOST_WORDS} words or fewer.",
    why="of sentences with 14 words nine in ten readers understand all; of those with 43, fewer than one in ten",
    references=(GDS,),
    applies="a visit's words and the aftercare of techniques, in English",
)
GRADE: Final[Rule[Any]] = Rule(
    name="leaflet.grade",
    severity=Severity.WARNING,
    statement=f"A client's text reads at Flesch-Kincaid grade {HIGHEST_GRADE:g} or under.",
    why="most people read at that grade with ease, and a tired one below it",
    references=(FLESCH, SAMPLE),
    applies=f"a visit's words and the aftercare of techniques, in English, of {LEAST_SAMPLE} words or more",
)
TRADE: Final[Rule[Any]] = Rule(
    name="leaflet.trade-word",
    severity=Severity.WARNING,
    statement="A client's text has no trade word that the leaflet cannot explain.",
    why="a client who has to guess a word guesses the task",
    references=(PRACTICE,),
    applies="a visit's words and the aftercare of techniques, in English",
)
CLIENT_RULES: Final = (LONG, GRADE, TRADE)
_HARD: Final = re.compile(rf"(?<![\w-])(?:{'|'.join(map(re.escape, PLAINER))})(?![\w-])", re.IGNORECASE)


class _ClientPassage(NamedTuple):
    """Some words that a client reads, and where their first line stands."""

    text: str
    span: Span
    located: Mapping[Span, Located]


def client_findings(shelf: Shelf, sources: Sources) -> Iterator[Finding]:
    """Yield what a client could not read with ease, in every visit and in the aftercare of every technique."""
    job = "look at how easy its words to the client are"
    for visit in shelf.visits:
        found: list[Finding] = []
        with guarded(found, visit.spans.get("words", Span(visit.path)), job):
            if is_english(visit.language):
                found += _findings(_of_visit(visit), sources, "the words to the client")
        yield from found
    for technique in shelf.techniques:
        found = []
        with guarded(found, technique.spot("aftercare"), job):
            if is_english(technique.language):
                told = _findings(_of_technique(technique), sources, "the aftercare")
                found += settled(technique, told, CLIENT_RULES, sources)
        yield from found


def _of_visit(visit: Visit) -> list[_ClientPassage]:
    home = visit.spans.get("words", Span(visit.path))
    passages = [
        _ClientPassage(_spoken(plain(words)), visit.spans.get(f"words[{at}]", home), visit.located)
        for at, words in enumerate(visit.words)
    ]
    for at, job in enumerate(visit.jobs):
        if job.what:
            span = visit.spans.get(f"jobs[{at}].what", visit.spans.get(f"jobs[{at}]", home))
            passages.append(_ClientPassage(_spoken(job.what), span, visit.located))
    return passages


def _spoken(text: str) -> str:
    """Return a text with a number for each `{words}`, which is what a client reads there."""
    return BRACED.sub("9", text)


def _of_technique(technique: AnyTechnique) -> list[_ClientPassage]:
    return [
        _ClientPassage(_spoken(plain(care.text)), technique.spot(f"aftercare[{at}]"), technique.located)
        for at, care in enumerate(technique.aftercare)
    ]


def _findings(passages: list[_ClientPassage], sources: Sources, what: str) -> Iterator[Finding]:
    """Yield the findings of one text: its long sentences, its grade as a whole, its trade words."""
    for passage in passages:
        yield from (_long(passage, each, sources) for each in sentences_of(passage.text) if each.words > MOST_WORDS)
        for found in _HARD.finditer(passage.text):
            yield _trade(passage, found[0], sources)
    prose = [each for each in passages if len(each.text.split()) > 2]
    text = " ".join(each.text if each.text.rstrip().endswith((".", "!", "?")) else f"{each.text}." for each in prose)
    whole = counts(text)
    if whole.words >= LEAST_SAMPLE and whole.grade > HIGHEST_GRADE:
        yield _grade(prose, text, sources, what)


def _long(passage: _ClientPassage, sentence: Sentence, sources: Sources) -> Finding:
    first = " ".join(sentence.text.split()[:QUOTED])
    return noted(
        LONG,
        _narrowed(passage, sentence.text.split()[:QUOTED]),
        sources,
        f"the sentence that starts `{first}` has {sentence.words} words",
        f"{sentence.words} words, and the most is {MOST_WORDS}; {LONG.why}",
        f"write it as two sentences, each of {MOST_WORDS} words or fewer",
    )


def _grade(passages: list[_ClientPassage], text: str, sources: Sources, what: str) -> Finding:
    found = counts(text)
    hardest = max(passages, key=lambda each: counts(each.text).grade if counts(each.text).words > 5 else 0.0)
    longest = sorted(dict.fromkeys(re.findall(r"[A-Za-z]{9,}", text)), key=len, reverse=True)[:3]
    words = f", and plainer words for {', '.join(f'`{word}`' for word in longest)}" if longest else ""
    finding = noted(
        GRADE,
        hardest.span,
        sources,
        f"the grade of {what} is {found.grade:.1f}",
        f"0.39 x {found.words} words / {found.sentences} sentences + 11.8 x {found.syllables} syllables / "
        f"{found.words} words - 15.59 = {found.grade:.1f}; the highest is {HIGHEST_GRADE:g}; this is the hardest part",
        f"write shorter sentences{words}",
    )
    return replace(finding, reference=str(FLESCH))


def _trade(passage: _ClientPassage, word: str, sources: Sources) -> Finding:
    plainer = PLAINER[word.casefold()]
    return noted(
        TRADE,
        _narrowed(passage, [word]),
        sources,
        f"`{word}` is a trade word",
        TRADE.why,
        f"write `{plainer}`, or say it in words a neighbour would use",
    )


def _narrowed(passage: _ClientPassage, words: list[str]) -> Span:
    """Return where the words stand, as many of them as stand on one line; else the whole passage."""
    found = (where_said(passage.span, " ".join(words[:many]), passage.located) for many in range(len(words), 0, -1))
    return next((each for each in found if each != passage.span), passage.span)
