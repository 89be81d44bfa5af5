"""What a client is to do after a visit, and when: one list made from the aftercare of every job."""

from datetime import date
from typing import Literal

from howto.model.prose import Prose
from howto.model.value import Value
from howto.quantities.amounts import Words

Kind = Literal["within", "after", "every", "season", "month", "next visit", "always"]


class Task(Value):
    """One thing to do, or not to do, and when.

    `sentence` holds its amounts as values, which its reader prints; where they are sums, `added` holds what was added.
    `start` and `end` bound it; `days` is how often it comes round; `asked` the technique's own words for when.
    `what` says what it is for, where a visit did several things. `key` names it over rebuilds and revisions: it
    holds neither dates nor amounts.
    """

    sentence: Prose
    kind: Kind
    do: bool = True
    start: date | None = None
    end: date | None = None
    days: int = 0
    asked: str = ""
    what: tuple[str, ...] = ()
    added: Words = ""
    key: str = ""

    @property
    def day(self) -> date | None:
        """The day that counts: the last one of a task due within days, else the first; None for one without."""
        return self.end if self.kind == "within" else self.start

    @property
    def order(self) -> tuple[bool, date]:
        """What tasks are sorted by: dated ones first, by the day that counts."""
        day = self.day
        return (day is None, day or date.max)


class Plan(Value):
    """All that follows from a visit: what falls before the next visit, what comes later, what never to do."""

    first: tuple[Task, ...] = ()
    later: tuple[Task, ...] = ()
    never: tuple[Task, ...] = ()

    @property
    def tasks(self) -> tuple[Task, ...]:
        """Every task in the order it is printed."""
        return (*self.first, *self.later)
