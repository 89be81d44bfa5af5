"""Makes a shelf smaller, file by file and line by line, for as long as it still shows the same."""

from collections.abc import Callable
from time import monotonic
from typing import Final

from tests.fuzz.corpus import Files

TRIES: Final = 400
SECONDS: Final = 60.0


def smallest(files: Files, still: Callable[[Files], bool], tries: int = TRIES, seconds: float = SECONDS) -> Files:
    """Return the shelf without the files and lines that it can do without, as far as the tries and the time go."""
    until = monotonic() + seconds
    left = tries

    def shows(fewer: Files) -> bool:
        nonlocal left
        left -= 1
        return left >= 0 and monotonic() < until and still(fewer)

    for place in sorted(files):
        fewer = {each: text for each, text in files.items() if each != place}
        files = fewer if fewer and shows(fewer) else files
    before: Files = {}
    while before != files and left > 0 and monotonic() < until:
        before = files
        for place in sorted(files):
            files = _shorter(files, place, shows)
    return files


def _shorter(files: Files, place: str, shows: Callable[[Files], bool]) -> Files:
    """Return the shelf with one file cut short: half of its lines at once first, and single lines last."""
    lines = files[place].split("\n")
    size = len(lines) // 2
    while size > 0:
        at = 0
        while at < len(lines):
            fewer = [*lines[:at], *lines[at + size :]]
            if shows({**files, place: "\n".join(fewer)}):
                lines = fewer
            else:
                at += size
        size //= 2
    return {**files, place: "\n".join(lines)}
