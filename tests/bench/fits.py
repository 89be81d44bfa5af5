"""Times every fit of a drawing that a check of the shelf asks for; beside another checkout, says whose is better.

Run it by hand: `python tests/bench/fits.py`, or `python tests/bench/fits.py OTHER_CHECKOUT` to fit the same drawings
by the code there too, in the same run. It is no test: times belong to the machine they were taken on.
"""

import pickle
import subprocess
import sys
import tempfile
from collections.abc import Iterator, Sequence
from datetime import UTC, datetime
from math import exp, log
from pathlib import Path
from statistics import fmean, median
from time import process_time
from typing import NamedTuple
from unittest.mock import patch

sys.path.insert(0, sys.argv[2] if sys.argv[1:2] == ["--fit"] else str(Path(__file__).parents[2]))

from howto.jobs import check, outputs
from howto.layout.drawing import diagram
from howto.layout.drawing.look import Look
from howto.layout.frames import shared
from howto.model.sheet import Art
from howto.shapes import DimensionLine, Disc, Drawing, Label, Level

HERE = Path(__file__).parents[2]
WORKER = sys.argv[1:2] == ["--fit"]  # a second process, which fits by the code of the folder named
GROUPS = ((0, 6), (7, 12), (13, 18), (19, 30), (31, 99))  # from and to how many words and discs
EQUAL = 0.001  # worth that differs by less is the same
SHOWN = 12  # of the fits that lost most

Asked = tuple[Drawing, float, float, Look]


class Fit(NamedTuple):
    """What one fit took and gave: `worth` is 0 where the words found no place."""

    name: str
    words: int
    ms: float
    worth: float
    size: float
    scale: float


def asked() -> list[Asked]:
    """Return the arguments of every fit in a check of the shelf, each once, in the order asked."""
    found: dict[Asked, None] = {}

    def noted(*args: object) -> tuple[Art, tuple[str, ...]]:
        found.setdefault(args)  # type: ignore[arg-type]
        return diagram.fit(*args)

    with patch.object(outputs, "fit", noted), patch.object(shared, "fit", noted):
        check.check(HERE / "techniques", datetime.now(UTC).date())
    return list(found)


def fits(wanted: Sequence[Asked]) -> Iterator[Fit]:
    """Fit everything asked for, in the order asked."""
    for drawing, width, height, look in wanted:
        start = process_time()
        diagram.fit.__wrapped__(drawing, width, height, look)
        took = process_time() - start
        best = diagram.best_fit(drawing, width, height, look)
        words = sum(isinstance(shape, DimensionLine | Disc | Label | Level) for shape in drawing.shapes)
        good = (best.worth, best.core.size, best.core.scale) if best else (0.0, 0.0, 0.0)
        yield Fit(f"{drawing.caption} {width:.0f}x{height:.0f}", words, took * 1000, *good)


def fits_by(folder: Path, path: Path) -> list[Fit]:
    """Return what the code in a folder makes of the fits asked for in a file."""
    command = [sys.executable, __file__, "--fit", str(folder), str(path)]
    done = subprocess.run(command, stdout=subprocess.PIPE, cwd=folder, check=True)
    return [Fit(*each) for each in pickle.loads(done.stdout)]  # noqa: S301 - from ourselves


def times(fits: Sequence[Fit]) -> Iterator[str]:
    """Yield the times, by how many words the drawings have."""
    for low, high in GROUPS:
        took = sorted(fit.ms for fit in fits if low <= fit.words <= high)
        if took:
            yield f"  {low:2}-{high:2} words: {len(took):3} fits, median {median(took):6.1f} ms, most {took[-1]:6.1f}"
    yield f"  all: {len(fits)} fits, {sum(fit.ms for fit in fits) / 1000:.2f} s"


def differences(old: Sequence[Fit], new: Sequence[Fit]) -> Iterator[str]:
    """Yield how worth, words and scale differ, and the fits that lost most."""
    both = [(was, fit) for was, fit in zip(old, new, strict=True) if was.worth and fit.worth]
    ratios = sorted((fit.worth / was.worth, fit, was) for was, fit in both)
    better, worse = (sum(sign * (ratio - 1) > EQUAL for ratio, _, _ in ratios) for sign in (1, -1))
    yield f"worth: {better} better, {len(both) - better - worse} equal, {worse} worse"
    yield f"  mean ratio {exp(fmean(log(ratio) for ratio, _, _ in ratios)):.4f}"
    lost = sum(was.worth > fit.worth == 0 for was, fit in zip(old, new, strict=True))
    won = sum(fit.worth > was.worth == 0 for was, fit in zip(old, new, strict=True))
    yield f"placed there and not here: {lost}; here and not there: {won}"
    yield f"words: {sum(b.size > a.size for a, b in both)} larger, {sum(b.size < a.size for a, b in both)} smaller"
    scales = [fit.scale / was.scale for was, fit in both]
    yield f"scale: {sum(each > 1 + EQUAL for each in scales)} larger"
    yield f"  {sum(each < 1 - EQUAL for each in scales)} smaller, mean ratio {exp(fmean(map(log, scales))):.4f}"
    yield f"time: {sum(fit.ms for fit in old) / sum(fit.ms for fit in new):.1f} times faster here"
    for ratio, fit, was in ratios[:SHOWN]:
        yield f"  {ratio:.3f} {fit.name}: size {was.size:g} > {fit.size:g}, scale {was.scale:.4g} > {fit.scale:.4g}"


def main() -> None:
    """Print this checkout's times, and how it differs from another where one is named."""
    if WORKER:
        wanted = pickle.loads(Path(sys.argv[3]).read_bytes())  # noqa: S301 - from ourselves
        sys.stdout.buffer.write(pickle.dumps([tuple(each) for each in fits(wanted)]))
        return
    with tempfile.TemporaryDirectory() as folder:
        path = Path(folder) / "asked"
        path.write_bytes(pickle.dumps(asked()))
        new = fits_by(HERE, path)
        lines = ["here:", *times(new)]
        if sys.argv[1:]:
            old = fits_by(Path(sys.argv[1]).resolve(), path)
            lines += ["there:", *times(old), *differences(old, new)]
    print("\n".join(lines))  # noqa: T201


if __name__ == "__main__":
    main()
