"""What a tool or place asks of the cautions: how it is looked for, what covers it, and the line that mends it."""

import re
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from typing import Any

from howto.families.safety.kit import Item
from howto.findings import Severity
from howto.languages.tags import is_english
from howto.model.family import Breach, Edit, Rule
from howto.model.prose import plain
from howto.model.reference import Reference
from howto.model.wording import words_of_steps
from howto.model.work import AnyWork


@dataclass(frozen=True, slots=True)
class Ask:
    """Something that was found and asks for a caution: where, what, the reason, and the line to add."""

    field: str
    seen: str
    because: str
    line: str
    severity: Severity | None = None
    reference: Reference | None = None


def listed(item: Item | None, because: str, line: str, severity: Severity | None = None) -> Ask | None:
    """Return what an item on the list asks for; nothing where there is none."""
    if item is None:
        return None
    return Ask(item.field, f"`{item.name}` is on the list", because, line, severity)


@dataclass(frozen=True, slots=True)
class Need:
    """One rule over techniques of every family.

    The cautions cover it when each of `covers` is found among them; with `anywhere` the steps count as well.
    """

    name: str
    severity: Severity
    statement: str
    why: str
    references: tuple[Reference, ...]
    applies: str
    hazard: str
    asks: Callable[[AnyWork], Ask | None]
    covers: tuple[re.Pattern[str], ...]
    anywhere: bool = False

    @property
    def rule(self) -> Rule[Any]:
        """The rule as the rulebook holds it."""

        def missing_caution(work: AnyWork) -> Iterator[Breach]:
            yield from breaches(self, work)

        return Rule(
            name=f"safety.{self.name}",
            severity=self.severity,
            statement=self.statement,
            why=self.why,
            references=self.references,
            applies=self.applies,
            check=missing_caution,
        )


def breaches(need: Need, work: AnyWork) -> Iterator[Breach]:
    """Yield the breach of a need that is there and that no caution covers."""
    if not is_english(work.technique.language):
        return
    ask = need.asks(work)
    if ask is None or covered(need, work):
        return
    yield Breach(
        field=ask.field,
        what=f"{ask.seen}, and no caution speaks of {need.hazard}",
        why=ask.because,
        mend=f"add under `## Cautions` the line `{ask.line}`",
        edit=Edit(section="Cautions", text=ask.line),
        severity=ask.severity,
        reference=ask.reference,
    )


def covered(need: Need, work: AnyWork) -> bool:
    """Tell whether the cautions, or with `anywhere` also the steps, cover a need."""
    text = cautions(work)
    if need.anywhere:
        text = f"{text}\n{steps(work)}"
    return all(pattern.search(text) for pattern in need.covers)


def cautions(work: AnyWork) -> str:
    """Return all that the cautions say, what to wear included."""
    return "\n".join(
        f"{hazard.title} {plain(hazard.text)} {', '.join(hazard.wear)}" for hazard in work.technique.cautions
    )


def steps(work: AnyWork) -> str:
    """Return all that the steps say."""
    return "\n".join(words_of_steps((step,)) for step in work.technique.steps)


def says(pattern: str) -> re.Pattern[str]:
    """Return what finds words that cover a hazard, in any case."""
    return re.compile(pattern, re.IGNORECASE)
