"""`howto letter`: what gardens need in a month, for all clients."""

import re
from datetime import date as day_of
from pathlib import Path
from typing import Annotated

import typer

from howto.cli import report
from howto.cli.options import SHELF, DateOption, ShelfOption, colour, day, refuse, say, width
from howto.findings import exit_status
from howto.jobs import letter as letters
from howto.jobs.folders import not_a_shelf, not_an_output


def letter(
    month: Annotated[
        str, typer.Option("--month", metavar="MONTH", help="The month, such as 2026-11. The present one if left out.")
    ] = "",
    shelf: ShelfOption = SHELF,
    to: Annotated[Path, typer.Option("--to", metavar="FOLDER", help="The folder to write into.")] = Path("output"),
    date: DateOption = None,
) -> None:
    """Write a letter to all clients: what gardens like theirs need in a month, and print it as a message."""
    if problem := not_a_shelf(shelf, ()) or not_an_output(to, shelf):
        raise refuse(problem)
    first = _first_day(month) if month else day(date).replace(day=1)
    if first is None:
        raise refuse(f"`{month}` is not a month. Write it as year-month, such as 2026-11.")
    made = letters.write_letter(shelf, to, first, day(date))
    if made.stopped:
        typer.echo(report.terminal(made.findings, made.sources, colour=colour(), width=width()), nl=False, err=True)
        say(f"Nothing was written to {to}.", err=True)
        raise typer.Exit(exit_status(made.findings))
    say(made.text)
    say(f"\nWrote {' and '.join(made.written)} in {to}.")


def _first_day(text: str) -> day_of | None:
    """Return the first day of a month written `2026-11`, or None for what is none."""
    found = re.fullmatch(r"(\d{4})-(\d{1,2})", text.strip())
    if found is None or not 1 <= int(found[2]) <= 12 or int(found[1]) < 1:
        return None
    return day_of(int(found[1]), int(found[2]), 1)
