"""`howto build`: check, then write the outputs."""

import sys
from collections.abc import Iterator
from contextlib import contextmanager
from enum import StrEnum
from pathlib import Path
from typing import Annotated

import typer

import howto
from howto.cli import report
from howto.cli.options import (
    SHELF,
    DateOption,
    PathsArgument,
    ShelfOption,
    StrictOption,
    colour,
    day,
    refuse,
    say,
    width,
)
from howto.findings import exit_status
from howto.jobs.build import Progress
from howto.jobs.folders import not_a_shelf, not_an_output


class Output(StrEnum):
    """The kinds of output a build can be narrowed to."""

    CARDS = "cards"
    CAROUSELS = "carousels"
    LEAFLETS = "leaflets"
    SHELF = "shelf"


def build(
    paths: PathsArgument = None,
    shelf: ShelfOption = SHELF,
    to: Annotated[Path, typer.Option("--to", metavar="FOLDER", help="The folder to write into.")] = Path("output"),
    only: Annotated[
        list[Output] | None, typer.Option("--only", help="Make only this kind. May be given more than once.")
    ] = None,
    date: DateOption = None,
    strict: StrictOption = False,
    text: Annotated[
        bool, typer.Option("--text", help="Print each leaflet as plain text, to paste into a message.")
    ] = False,
) -> None:
    """Check the shelf, then make the training cards, picture sequences, leaflets and the shelf page.

    Nothing is written while something stops the build, and the last good output stays whole until the new
    one is complete.
    """
    if problem := not_a_shelf(shelf, paths or ()) or not_an_output(to, shelf):
        raise refuse(problem)
    kinds = tuple(kind.value for kind in only or Output)
    with _progress() as step:
        built = howto.build_shelf(shelf, to, day(date), paths or (), kinds=kinds, strict=strict, step=step)
    if built.findings:
        typer.echo(
            report.terminal(built.findings, built.sources, colour=colour(), width=width()), nl=False, err=built.stopped
        )
    if built.stopped:
        say(f"Nothing was written to {to}.", err=True)
        raise typer.Exit(exit_status(built.findings, strict=strict))
    if text:
        say("\n\n".join(built.texts))
    say(built.summary(to))


@contextmanager
def _progress() -> Iterator[Progress | None]:
    """Yield what a build calls at each step, drawing a bar on a terminal and nothing elsewhere."""
    if not sys.stderr.isatty():
        yield None
        return
    with typer.progressbar(length=1000, label="Building", file=sys.stderr) as bar:

        def step(done: int, total: int) -> None:
            bar.update(1000 * done // max(total, 1) - bar.pos)

        yield step
