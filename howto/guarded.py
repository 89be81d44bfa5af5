"""The one place that catches what nobody expected: it becomes a finding that says it is our fault and how to go on.

A stage raises nothing for what an author wrote, so whatever it raises is a mistake of ours. It must cost neither the
findings of the other files nor a traceback on an author's terminal: each file, rule and page is done inside `guarded`.
"""

import os
from collections.abc import Iterator
from contextlib import contextmanager
from contextvars import ContextVar
from pathlib import Path, PurePosixPath
from traceback import extract_tb, print_exception
from typing import Final

from howto.findings import OUR_FAULT, README, Finding, Severity
from howto.span import Span

LOUD: ContextVar[bool] = ContextVar("LOUD", default=False)  # set: nothing is caught, so that tests see it
TRACEBACK: Final = "HOWTO_TRACEBACK"  # an environment variable: where it is set the whole traceback is printed too
COMMAND: Final = Span("")  # the place of what belongs to no file
_LONGEST = 200  # letters of an exception's own words
_HERE = Path(__file__).parent


@contextmanager
def guarded(found: list[Finding], span: Span, job: str) -> Iterator[None]:
    """Do what stands inside, and add a finding at `span` where it breaks off; `job` is such as `work out its figures`.

    What the machine refuses (a full disk, no memory) is no mistake of ours and passes through.
    """
    try:
        yield
    except Exception as problem:
        if LOUD.get() or isinstance(problem, MemoryError) or (isinstance(problem, OSError) and problem.errno):
            raise
        if os.environ.get(TRACEBACK):
            print_exception(problem)
        found.append(_fault(span, job, problem))


def _fault(span: Span, job: str, problem: Exception) -> Finding:
    """Return the finding of an exception that nobody expected."""
    return Finding(
        rule=OUR_FAULT,
        severity=Severity.ERROR,
        span=span,
        text="",
        what=f"`howto` could not {job}",
        why=f"this is a mistake in `howto`, not in what you wrote: {_said(problem)}{_where(problem)}",
        mend=_mend(span.path),
        reference=README,
    )


def _said(problem: Exception) -> str:
    """Return an exception's type and words, on one line and no longer than helps."""
    words = " ".join(str(problem).split())
    short = words if len(words) <= _LONGEST else f"{words[:_LONGEST]}…"
    return f"{type(problem).__name__}: {short}" if short else type(problem).__name__


def _where(problem: Exception) -> str:
    """Return the last of our own lines that an exception came through."""
    for frame in reversed(extract_tb(problem.__traceback__)):
        path = Path(frame.filename)
        if path.is_relative_to(_HERE) and path != Path(__file__):
            return f" ({path.relative_to(_HERE.parent).as_posix()}:{frame.lineno}, {frame.name})"
    return ""


def _mend(path: str) -> str:
    """Return how an author goes on: a file of text is left out by its name, a folder is thinned out."""
    file = PurePosixPath(path)
    sent = f"`{path}` and these lines" if path else "these lines and the command as you typed it"
    send = f"send {sent} to whoever looks after `howto` for you"
    if file.suffix.casefold() in {".md", ".yaml"}:
        left_out = f"to go on, rename the file to `_{file.name}`, which leaves it out (a waiver does not help)"
        return f"{send}; {left_out}. The other files were checked as ever"
    if path and not file.suffix:
        return f"{send}; to go on, move the files that you changed last out of the shelf"
    return send
