"""Stops a run at its n-th change to the files of a folder, by Python's own audit events: as a kill does, or once."""

import os
import sys
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from dataclasses import dataclass, field
from pathlib import Path

CHANGES = frozenset({"os.mkdir", "os.rename", "os.remove", "os.rmdir", "os.symlink", "os.truncate"})
WRITING = os.O_WRONLY | os.O_RDWR


class KilledError(BaseException):
    """The program is no more: whatever it tries to do to files from now on is not done."""


@dataclass
class _Fault:
    folder: str
    at: int
    problem: Callable[[], BaseException]
    lasting: bool
    torn: bool
    seen: list[str] = field(default_factory=list)

    def meets(self, event: str, given: tuple[object, ...]) -> None:
        """Count a change, and stop it where its turn has come."""
        path = str(given[0]) if given else ""
        if not path.startswith(self.folder) or not (event in CHANGES or (event == "open" and _writes(given))):
            return
        self.seen.append(f"{event} {path}")
        if len(self.seen) == self.at and self.torn and event == "open":
            _tear(path)
        if len(self.seen) == self.at or (self.lasting and len(self.seen) > self.at):
            raise self.problem()


_now: list[_Fault] = []


def _writes(given: tuple[object, ...]) -> bool:
    return isinstance(given[2], int) and bool(given[2] & WRITING)


def _hook(event: str, given: tuple[object, ...]) -> None:
    if _now:
        _now[-1].meets(event, given)


sys.addaudithook(_hook)  # it stays, and sees nothing outside `stopped`


def _tear(path: str) -> None:
    """Write a file half, as a kill in the middle of writing does."""
    fault = _now.pop()
    Path(path).write_bytes(b"\xff{half")
    _now.append(fault)


@contextmanager
def stopped(
    folder: Path,
    at: int,
    problem: Callable[[], BaseException] = KilledError,
    *,
    lasting: bool = True,
    torn: bool = False,
) -> Iterator[list[str]]:
    """Raise at the `at`-th change in a folder, and where it is lasting at each one after; yield the changes seen."""
    fault = _Fault(str(folder), at, problem, lasting, torn)
    _now.append(fault)
    try:
        yield fault.seen
    finally:
        _now.remove(fault)
