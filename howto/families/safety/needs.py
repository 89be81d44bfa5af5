"""What a tool or place asks of the cautions: how it is looked for, what covers it, and the line that mends it."""

import re
from collections.abc import Callable, Iterator
from dataclasses import dataclass, replace
from typing import Any

from howto.families.safety.kit import KitItem
from howto.findings import Severity
from howto.languages.tags import is_english
from howto.model.family import Breach, Rule, line_wanted
from howto.model.prose import plain
from howto.model.reference import Reference
from howto.model.wording import words_of_steps
from howto.model.work import AnyWork
from howto.quantities.amounts import Words


@dataclass(frozen=True, slots=True)
class Ask:
    """Something that was found and asks for a caution.

    Where, what, and where they are not the need's own, the reason, the line to add, and who says so.
    """

    field: str
    seen: Words
    because: Words = ""
    line: str = ""
    severity: Severity | None = None
    reference: Reference | None = None


def on_list(item: KitItem, because: Words = "", line: str = "", severity: Severity | None = None) -> Ask:
    """Return what an item on the list asks for."""
    return Ask(item.field, f"`{item.name}` is on the list", because, line, severity)


@dataclass(frozen=True, slots=True)
class Need:
    """A rule over techniques of every family: what is found asks for a caution about a hazard.

    The cautions cover it when each of the patterns `covers` is found among them; with `anywhere` the steps count too.
    """

    name: str
    severity: Severity
    references: tuple[Reference, ...]
    applies: Words
    must: Words
    why: Words
    hazard: Words
    finds: Callable[[AnyWork], KitItem | Ask | None]
    covers: tuple[str, ...]
    line: str = ""
    anywhere: bool = False

    def missing_caution(self, work: AnyWork) -> Iterator[Breach]:
        """Yield the breach of a need that is there and that no caution covers."""
        found = self.finds(work) if is_english(work.technique.language) else None
        ask = on_list(found) if isinstance(found, KitItem) else found
        said = f"{cautions(work)}\n{steps(work)}" if self.anywhere else cautions(work)
        if ask is None or all(says(pattern).search(said) for pattern in self.covers):
            return
        what = f"{ask.seen}, and no caution speaks of {self.hazard}"
        breach = line_wanted("Cautions", ask.line or self.line, what=what, why=ask.because, field=ask.field)
        yield replace(breach, severity=ask.severity, reference=ask.reference)


def rules_of(*needs: Need) -> tuple[Rule[Any], ...]:
    """Return the needs as rules."""
    return tuple(
        Rule(f"safety.{n.name}", n.severity, n.why, n.references, n.applies, n.missing_caution, n.must) for n in needs
    )


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
