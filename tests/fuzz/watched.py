"""A shelf put through the check under watch: what was raised, what hung, and what took too long."""

import re
import shutil
import signal
import traceback
import warnings
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from datetime import date
from pathlib import Path
from time import process_time
from types import FrameType
from typing import Final, Literal

import howto
from howto.findings import Finding, stops
from howto.jobs.check import examine, to_make
from howto.jobs.outputs import make
from tests.fuzz.corpus import Files
from tests.support.source import ROOT

How = Literal["read", "cards", "leaflets", "carousels", "build"]

# Of the processor's own time, over what the shelf took before it was spoiled.
SLOW_S: Final[dict[How, float]] = {"read": 2.0, "cards": 2.0, "leaflets": 2.0, "carousels": 6.0, "build": 12.0}
HANGS_S: Final = 30.0
OURS: Final = "file.our-fault"  # what is told where a rule, a file or a page raised and the rest went on


class HangsError(BaseException):
    """Raised where a run has used more of the processor's time than any may; nothing catches it on the way."""


@dataclass(frozen=True)
class Trouble:
    """What went wrong: in a few words that are the same each time it does, and in full."""

    what: str
    full: str


class Watched:
    """A folder in which one shelf after the other is put through a check."""

    def __init__(self, folder: Path) -> None:
        self.shelf = folder / "shelf"
        self.out = folder / "out"
        shutil.copytree(ROOT / "techniques/pictures", self.shelf / "pictures", ignore=shutil.ignore_patterns("*.py*"))

    def trouble(self, files: Files, how: How, today: date, before: Files | None = None) -> Trouble | None:
        """Return what goes wrong with a shelf; it is slow where it takes much longer than it did `before`."""
        found, taken = self._once(files, how, today)
        if found is not None or taken < SLOW_S[how]:
            return found
        usual = 0.0 if before is None else self._once(before, how, today)[1]
        if taken - usual >= SLOW_S[how]:  # the machine may have had a bad moment: once more
            taken = min(taken, self._once(files, how, today)[1])
        return Trouble(f"slow to {how}", f"{taken:.1f} s") if taken - usual >= SLOW_S[how] else None

    def _once(self, files: Files, how: How, today: date) -> tuple[Trouble | None, float]:
        """Return what was raised by one run, and how much of the processor's time it took."""
        self._written(files)
        start = process_time()
        try:
            with _limited():
                ours = [each for each in self._run(how, today) if each.rule == OURS]
        except (Exception, HangsError) as error:  # noqa: BLE001 - whatever it is, is what is looked for
            return _trouble(error), process_time() - start
        return (Trouble(_short(ours[0].why), ours[0].why) if ours else None), process_time() - start

    def _run(self, how: How, today: date) -> tuple[Finding, ...]:
        """Return the findings of a shelf that is read and checked, then laid out as one kind, or built as all."""
        if how == "build":
            return howto.build_shelf(self.shelf, self.out, today).findings
        examined = examine(self.shelf, today)
        if how == "read" or stops(examined.findings):
            return examined.findings
        return (*examined.findings, *make(to_make(examined, (), (how,), today), None))

    def _written(self, files: Files) -> None:
        """Leave these files on the shelf, with the pictures, and no others."""
        for path in self.shelf.iterdir():
            if path.is_file():
                path.unlink()
            elif path.name != "pictures":
                shutil.rmtree(path)
        shutil.rmtree(self.out, ignore_errors=True)
        for place, text in files.items():
            path = self.shelf / place
            path.parent.mkdir(exist_ok=True)
            path.write_bytes(text.encode("utf-8", "surrogateescape"))


def _trouble(error: BaseException) -> Trouble:
    """Return what an exception comes to: its kind, and the innermost line of ours that it went through."""
    frames = traceback.extract_tb(error.__traceback__)
    ours = [frame for frame in frames if Path(frame.filename).is_relative_to(ROOT / "howto")]
    at = f"{Path(ours[-1].filename).relative_to(ROOT)}:{ours[-1].name}" if ours and _has_place(error) else "anywhere"
    return Trouble(f"{type(error).__name__} in {at}", "".join(traceback.format_exception(error)))


def _short(why: str) -> str:
    """Return what a finding of ours says of an exception, in the words used of one that nothing caught."""
    said = re.search(r"(\w+)(?:: .*)? \((howto/\S+?)(?::\d+)?, (\w+)\)", why)
    return f"{said[1]} in {said[2]}:{said[3]}" if said else why


def _has_place(error: BaseException) -> bool:
    """Tell whether the line says what went wrong: not where time or the stack happened to run out."""
    return not isinstance(error, (HangsError, RecursionError))


@contextmanager
def _limited() -> Iterator[None]:
    """Raise where what is done inside hangs, and take every warning for an exception."""

    def hangs(_: int, __: FrameType | None) -> None:
        raise HangsError

    old = signal.signal(signal.SIGPROF, hangs)
    signal.setitimer(signal.ITIMER_PROF, HANGS_S)
    try:
        with warnings.catch_warnings():
            warnings.simplefilter("error")
            yield
    finally:
        signal.setitimer(signal.ITIMER_PROF, 0)
        signal.signal(signal.SIGPROF, old)
