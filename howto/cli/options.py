"""What several commands share: where the shelf is, which day it is, and how text goes to a terminal."""

import io
import os
import re
import shutil
import sys
from datetime import date, datetime
from enum import StrEnum
from pathlib import Path
from typing import Annotated

import typer

from howto.cli.report import safe

ShelfOption = Annotated[
    Path, typer.Option("--shelf", metavar="FOLDER", help="The folder that holds crew.yaml and the techniques.")
]
DateOption = Annotated[
    datetime | None,
    typer.Option(
        "--date",
        formats=["%Y-%m-%d"],
        metavar="DATE",
        help="The day to work from, such as 2026-03-01. Today if left out.",
    ),
]
PathsArgument = Annotated[
    list[Path] | None,
    typer.Argument(metavar="[PATH]...", help="Files or folders of the shelf. The whole shelf if left out."),
]
StrictOption = Annotated[bool, typer.Option("--strict", help="Let warnings stop a build too, not only errors.")]
SHELF = Path("techniques")
_STEERING = re.compile("[\x00-\x09\x0b-\x1f\x7f-\x9f]")
FIRST_YEAR, LAST_YEAR = 1900, 2999  # as in files


class Form(StrEnum):
    """How a command prints: for people or for programs."""

    TEXT = "text"
    JSON = "json"


FormOption = Annotated[Form, typer.Option("--format", help="text for people, json for programs.")]


def day(given: datetime | None) -> date:
    """Return the day a command works from: the one given, or today; a year too far away is refused."""
    found = given.date() if given else date.today()  # noqa: DTZ011 - the lead's own calendar day
    if FIRST_YEAR <= found.year <= LAST_YEAR:
        return found
    raise refuse(f"`--date {found}` is too far away: the years are {FIRST_YEAR} to {LAST_YEAR}.")


def colour() -> bool:
    """Tell whether to colour text: only on a terminal, and never where NO_COLOR is set (no-color.org)."""
    return _at_terminal() and not os.environ.get("NO_COLOR") and os.environ.get("TERM") != "dumb"


def width() -> int:
    """Return how many columns the terminal has; 100 where there is none."""
    return shutil.get_terminal_size((100, 24)).columns if _at_terminal() else 100


def _at_terminal() -> bool:
    """Tell whether what is printed goes to a terminal; a program may have been started without any output."""
    return sys.stdout is not None and sys.stdout.isatty()


def plain_output() -> None:
    """Let letters that a console cannot show be printed as question marks, instead of ending the program."""
    for stream in (sys.stdout, sys.stderr):
        if isinstance(stream, io.TextIOWrapper):
            stream.reconfigure(errors="replace")


def say(text: str, *, err: bool = False) -> None:
    """Print lines of words, in which nothing can steer the terminal."""
    typer.echo(_STEERING.sub(lambda found: safe(found[0]), text), err=err)


def refuse(message: str) -> typer.Exit:
    """Print why a command line cannot be followed, and return the exit that says so (status 2)."""
    say(message, err=True)
    return typer.Exit(2)
