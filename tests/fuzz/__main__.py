"""`python -m tests.fuzz --minutes 10`: spoils real files at random, and keeps the smallest that shows each trouble."""

import argparse
import re
import sys
from collections import Counter
from collections.abc import Callable, Iterable, Iterator
from concurrent.futures import ProcessPoolExecutor
from dataclasses import dataclass, field
from datetime import date, timedelta
from itertools import count
from multiprocessing import get_context
from pathlib import Path
from random import Random
from tempfile import TemporaryDirectory
from time import monotonic
from typing import Final

from tests.fuzz.corpus import Files, tried
from tests.fuzz.smallest import smallest
from tests.fuzz.watched import How, Trouble, Watched

SHARES: Final[dict[How, int]] = {"read": 60, "cards": 18, "leaflets": 18, "carousels": 3, "build": 1}
YEAR: Final = date(2026, 1, 1)


@dataclass(frozen=True)
class Found:
    """One kind of trouble: the run that showed it first, and the smallest shelf that does."""

    number: int
    how: How
    today: date
    trouble: Trouble
    files: Files


@dataclass
class Told:
    """What a row of runs came to."""

    runs: Counter[How] = field(default_factory=Counter)
    found: dict[str, Found] = field(default_factory=dict)
    times: Counter[str] = field(default_factory=Counter)

    def add(self, other: "Told") -> None:
        """Take in what another row of runs came to."""
        self.runs += other.runs
        self.times += other.times
        for what, each in other.found.items():
            known = self.found.get(what)
            self.found[what] = each if known is None or _size(each) < _size(known) else known


def _size(found: Found) -> int:
    """Return how many characters a shelf has."""
    return sum(map(len, found.files.values()))


def fuzz(seed: int, numbers: Iterable[int], more: Callable[[], bool]) -> Told:
    """Return what the runs of these numbers came to, one after the other for as long as there is to be more."""
    told = Told()
    with TemporaryDirectory(prefix="howto-fuzz-") as folder:
        watched = Watched(Path(folder))
        for number in numbers:
            if not more():
                break
            chance = Random(f"{seed} {number}")  # noqa: S311 - the same files every time
            how = chance.choices(list(SHARES), list(SHARES.values()))[0]
            shelf = tried(chance, gently=how != "read")
            today = YEAR + timedelta(days=chance.randrange(365))
            told.runs[how] += 1
            trouble = watched.trouble(shelf.after, how, today, shelf.before)
            if trouble is None:
                continue
            told.times[trouble.what] += 1
            if trouble.what not in told.found:
                told.found[trouble.what] = _found(watched, Found(number, how, today, trouble, shelf.after))
    return told


def _found(watched: Watched, first: Found) -> Found:
    """Return a trouble with the smallest shelf that shows it."""

    def still(files: Files) -> bool:
        again = watched.trouble(files, first.how, first.today)
        return again is not None and again.what == first.trouble.what

    files = smallest(first.files, still)
    trouble = watched.trouble(files, first.how, first.today) or first.trouble
    return Found(first.number, first.how, first.today, trouble, files)


def _work(seed: int, worker: int, workers: int, minutes: float, runs: int | None) -> Told:
    """Return what one worker's share of the runs came to."""
    until = monotonic() + minutes * 60
    numbers: Iterator[int] | range = range(worker, runs, workers) if runs is not None else count(worker, workers)
    return fuzz(seed, numbers, lambda: monotonic() < until)


def kept(told: Told, seed: int, to: Path) -> None:
    """Write each trouble into a folder of its own: the shelf that shows it, and what it was."""
    for what, found in sorted(told.found.items()):
        home = to / re.sub(r"[^a-z0-9]+", "-", what.casefold())[:80].strip("-")
        for place, text in found.files.items():
            path = home / place
            path.parent.mkdir(parents=True, exist_ok=True)
            path.write_bytes(text.encode("utf-8", "surrogateescape"))
        said = f"{what}\nseed {seed}, run {found.number}, {found.how} on {found.today}, {told.times[what]} times"
        (home / "trouble.txt").write_text(f"{said}\n\n{found.trouble.full}\n", encoding="utf-8", errors="replace")


def main(words: list[str] | None = None) -> int:
    """Return 1 where any trouble was found, else 0."""
    asked = argparse.ArgumentParser(prog="python -m tests.fuzz", description=__doc__)
    asked.add_argument("--minutes", type=float, default=10.0, help="how long to go on")
    asked.add_argument("--runs", type=int, help="stop after so many runs, even where there is time left")
    asked.add_argument("--seed", type=int, default=0, help="which files: the same for the same number")
    asked.add_argument("--workers", type=int, default=1, help="how many processes")
    asked.add_argument("--to", type=Path, default=Path("tests/fuzz/found"), help="where to keep what was found")
    given = asked.parse_args(words)
    start, told = monotonic(), Told()
    shares = [(given.seed, each, given.workers, given.minutes, given.runs) for each in range(given.workers)]
    if given.workers == 1:
        told.add(_work(*shares[0]))
    else:
        with ProcessPoolExecutor(given.workers, mp_context=get_context("spawn")) as pool:
            for done in [pool.submit(_work, *share) for share in shares]:
                told.add(done.result())
    kept(told, given.seed, given.to)
    for what, times in told.times.most_common():
        print(f"{times:6} × {what}")  # noqa: T201 - a command that tells what it found
    runs, taken = told.runs.total(), monotonic() - start
    parts = ", ".join(f"{number} {how}" for how, number in told.runs.most_common())
    print(f"{runs} runs ({parts}), {runs / taken:.0f} a second: {len(told.found)} troubles")  # noqa: T201
    return int(bool(told.found))


if __name__ == "__main__":
    sys.exit(main())
