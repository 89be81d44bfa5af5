"""The one gate to what is set: it names the letters of laid-out pages and pictures that no typeface has."""

from collections.abc import Iterable
from typing import Final

from howto.findings import Finding
from howto.fonts import Face, missing
from howto.fonts.letters import SUBSTITUTE, tidied
from howto.layout.fit_rules import LETTER
from howto.model.sheet import Area, Dot, Frame, Pixels, Sheet, Stroke, TextMark
from howto.model.value import Value
from howto.span import Span

NOT_SET: Final = frozenset({"url", "alt", "credit"})  # encoded, read aloud, or told beside a picture


def letter_findings(laid: Iterable[Sheet | Frame], span: Span) -> tuple[Finding, ...]:
    """Return the finding of letters that are laid out and that no typeface has."""
    texts: dict[Face, dict[str, None]] = {}
    for each in laid:
        _gather(each, texts)
    gaps = dict.fromkeys(letter for face, letters in texts.items() for letter in missing("".join(letters), face))
    if not gaps:
        return ()
    named = ", ".join(f"“{letter}”" for letter in gaps)
    what = f"{named} cannot be printed, and “{SUBSTITUTE}” would stand there"
    return (
        LETTER.finding(span, what, LETTER.why, f"take {named} out of its file and of crew.yaml, or say it in words"),
    )


def _gather(value: object, into: dict[Face, dict[str, None]]) -> None:
    """Gather the letters of a value, those of each text under its own face where it has one."""
    if isinstance(value, str):
        into.setdefault("text", {}).update(dict.fromkeys(tidied(value)))
    elif isinstance(value, TextMark):
        into.setdefault(value.face, {}).update(dict.fromkeys(tidied(value.text)))
    elif isinstance(value, Value) and not isinstance(value, Stroke | Area | Dot | Pixels):
        for name in type(value).model_fields:
            if name not in NOT_SET:
                _gather(getattr(value, name), into)
    elif isinstance(value, tuple | list):
        for each in value:
            _gather(each, into)
    elif isinstance(value, dict):
        for each in value.values():
            _gather(each, into)
