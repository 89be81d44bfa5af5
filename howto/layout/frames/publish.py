"""The words that go out beside a carousel: caption with tip, figures, cautions and tags; alternative texts."""

import re
from collections.abc import Iterator, Sequence
from typing import Final

from howto.findings import Finding
from howto.languages import language_of
from howto.languages.form import Labels
from howto.layout import fit_rules
from howto.layout.frames.alt import sentence
from howto.layout.frames.copy import bare, cover_numbers
from howto.layout.frames.shared import finding
from howto.model.prose import capital, plain
from howto.model.ready import Ready
from howto.model.sheet import Frame
from howto.model.technique import AnyTechnique

MOST_TAGS: Final = 6  # ours: a short line
LONGEST_TAG: Final = 30  # characters, ours
WORD: Final = re.compile(r"[^\W_]+")


def caption(ready: Ready, tags: Sequence[str] = ()) -> str:
    """Return the caption: opening line, tip with figures, steps, cautions, tags; `tags` are the trade's own.

    It keeps to the crew's `caption limit` by leaving out, in this order, the steps, the end of the opening, the
    tip and the tags. The cautions always stand.
    """
    technique = ready.technique
    say = language_of(technique.language).labels
    kept = {part: text for part, text in _parts(ready, tags, say) if text}
    for least in ("steps", "about", "tip", "tags", "figures"):
        if len(_told(kept)) <= ready.crew.caption_limit:
            break
        kept.pop(least, None)
    return _told(kept)


def _told(parts: dict[str, str]) -> str:
    """Return the parts with a blank line between them."""
    return "\n\n".join(parts.values()) + "\n"


def _parts(ready: Ready, tags: Sequence[str], say: Labels) -> Iterator[tuple[str, str]]:
    """Yield every part of the caption under its name, in reading order."""
    technique = ready.technique
    yield "opening", sentence(bare(technique.title))
    yield "about", " ".join(plain(each) for each in technique.intro)
    numbers = cover_numbers(ready)
    yield "figures", "\n".join(f"{each.label}: {each.value}" for each in numbers)
    yield "tip", _tip(technique, say)
    steps = enumerate(technique.steps, start=1)
    yield "steps", "\n".join(f"{number}. {bare(step.title)}" for number, step in steps)
    yield "cautions", _cautions(technique, say)
    yield "credits", "\n".join(say["photograph"].format(credit=each) for each in _credits(technique))
    told = say["version"].format(version=technique.version) if technique.version else ""
    yield "crew", " · ".join(filter(None, (ready.crew.name, told, ready.crew.web)))
    yield "tags", " ".join(_tags(ready, tags))


def _tip(technique: AnyTechnique, say: Labels) -> str:
    """Return the first key point of the work, with its reason where it has one."""
    for step in technique.steps:
        if step.key_points:
            reason = f"\n{say['reason']}: {plain(step.reasons[0])}" if step.reasons else ""
            return f"{say['key_point']}: {plain(step.key_points[0])}{reason}"
    return ""


def _cautions(technique: AnyTechnique, say: Labels) -> str:
    """Return every caution on a line, and the line about local codes."""
    lines = []
    for each in technique.cautions:
        wear = say["wear_things"].format(things=", ".join(each.wear)) if each.wear else ""
        told = (sentence(part) for part in (bare(each.title), plain(each.text), wear) if part)
        lines.append(" ".join(told))
    lead = say["caution"].format(cautions=lines[0]) if lines else ""
    return "\n".join(filter(None, (lead, *lines[1:], say["leaflet_footer"])))


def _credits(technique: AnyTechnique) -> tuple[str, ...]:
    """Return whom photographs are credited to, each once."""
    found = (picture.credit for step in technique.steps for picture in step.pictures if picture.credit)
    return tuple(dict.fromkeys(found))


def _tags(ready: Ready, own: Sequence[str]) -> tuple[str, ...]:
    """Return short tags from task and plant, their words capital so that a screen reader can tell them apart.

    A family's tags and a plant's common names are English: in another language those without words are left out.
    """
    technique, reader = ready.technique, ready.reader
    known = [plant.common[0] for plant in ready.work.plants[:2] if plant.common]
    told = [reader.tell(text) for text in (technique.family, *known, *own) if not any(reader.gaps(text))]
    named = (_tag(text) for text in (*told[:1], bare(technique.title), *technique.plants[:2], *told[1:]))
    kept: dict[str, str] = {}
    for tag in named:
        if 1 < len(tag) <= LONGEST_TAG:
            kept.setdefault(tag.casefold(), tag)
    return tuple(kept.values())[:MOST_TAGS]


def _tag(text: str) -> str:
    """Return words as one tag: `#ClipABall`."""
    return "#" + "".join(capital(word) for word in WORD.findall(text))


def caption_findings(ready: Ready) -> tuple[Finding, ...]:
    """Return the finding of a caption whose cautions alone are longer than the crew's limit."""
    limit = ready.crew.caption_limit
    over = len(caption(ready)) - limit
    if over <= 0:
        return ()
    what = f"the caption has {limit + over} characters with its opening line and cautions alone"
    why = f"the crew's limit is {limit}"
    mend = (
        f"take at least {over} characters out of `## Cautions`, or write `caption limit: {limit + over}` in crew.yaml"
    )
    return (finding(fit_rules.CAPTION, ready.technique, "cautions", what, why, mend),)


def alt_texts(frames: Sequence[Frame]) -> list[dict[str, str]]:
    """Return each frame's file, what it shows in words, and whom its photograph is credited to."""
    return [
        {"file": f"{frame.name}.jpg", "alt": frame.alt} | ({"credit": frame.credit} if frame.credit else {})
        for frame in frames
    ]
