"""The one gate to what is set: it names the letters of laid-out pages and pictures that no typeface has."""

from collections.abc import Iterable, Iterator
from typing import Final

from howto.findings import Finding
from howto.fonts import missing
from howto.fonts.letters import SUBSTITUTE, tidied
from howto.layout.fit_rules import LETTER
from howto.model.sheet import Frame, Sheet, Words
from howto.model.value import Value
from howto.span import Span

NOT_SET: Final = frozenset({"url", "alt", "credit"})  # encoded, read aloud, or told beside a picture


def letter_findings(laid: Iterable[Sheet | Frame], span: Span) -> tuple[Finding, ...]:
    """Return the finding of letters that are laid out and that no typeface has."""
    gaps = tuple(dict.fromkeys(letter for each in laid for letter in _gaps(each)))
    if not gaps:
        return ()
    named = ", ".join(f"“{letter}”" for letter in gaps)
    what = f"{named} cannot be printed, and “{SUBSTITUTE}” would stand there"
    return (
        LETTER.finding(span, what, LETTER.why, f"take {named} out of its file and of crew.yaml, or say it in words"),
    )


def _gaps(value: object) -> Iterator[str]:
    """Yield the letters of a value that cannot be set, each text in its own face where it has one."""
    if isinstance(value, str):
        yield from missing(tidied(value))
    elif isinstance(value, Words):
        yield from missing(tidied(value.text), value.face)
    elif isinstance(value, Value):
        for name in type(value).model_fields:
            if name not in NOT_SET:
                yield from _gaps(getattr(value, name))
    elif isinstance(value, tuple | list):
        for each in value:
            yield from _gaps(each)
    elif isinstance(value, dict):
        for each in value.values():
            yield from _gaps(each)
