"""Reads the marks under the hammer pictogram of a glove: EN 388:2016 + A1:2018."""

import re
from dataclasses import dataclass

ABRASION_CYCLES = {1: 100, 2: 500, 3: 2000, 4: 8000}
COUP_INDEX = {1: 1.2, 2: 2.5, 3: 5.0, 4: 10.0, 5: 20.0}
TEAR_N = {1: 10, 2: 25, 3: 50, 4: 75}
PUNCTURE_N = {1: 20, 2: 60, 3: 100, 4: 150}
CUT_N = {"A": 2, "B": 5, "C": 10, "D": 15, "E": 22, "F": 30}
_MARKS = re.compile(r"(?:EN ?388\s*:?\s*)?([0-4X])([0-5X])([0-4X])([0-4X])([A-FX])?([PX])?", re.IGNORECASE)


@dataclass(frozen=True, slots=True)
class Marks:
    """The levels of a glove as marked; None where it was not tested."""

    abrasion: int | None
    coup_cut: int | None
    tear: int | None
    puncture: int | None
    cut: str | None = None
    impact: bool = False


def read_marks(text: str) -> Marks | None:
    """Return the levels of marks such as `4X43DP`, or None where the text is no such mark."""
    found = _MARKS.fullmatch(re.sub(r"[\s\u00a0]+", "", text.replace("EN 388", "EN388")))
    if found is None:
        return None
    abrasion, coup, tear, puncture = (None if found[at] in "Xx" else int(found[at]) for at in range(1, 5))
    cut = found[5].upper() if found[5] and found[5] not in "Xx" else None
    return Marks(abrasion, coup, tear, puncture, cut, (found[6] or "").upper() == "P")


def cut_newtons(marks: Marks) -> int | None:
    """Return the cut force that a glove stands in newtons by the ISO 13997 letter, or None where it has none."""
    return CUT_N[marks.cut] if marks.cut else None
