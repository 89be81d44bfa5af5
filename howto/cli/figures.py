"""`howto figures`: a technique's worked arithmetic, line by line."""

from typing import Annotated

import typer

import howto
from howto.cli import report, working
from howto.cli.options import SHELF, DateOption, Form, FormOption, ShelfOption, colour, day, refuse, say, width
from howto.findings import exit_status
from howto.jobs.folders import not_a_shelf


def figures(
    name: Annotated[str, typer.Argument(metavar="TECHNIQUE", help="A technique's or visit's name, or its file.")],
    shelf: ShelfOption = SHELF,
    date: DateOption = None,
    form: FormOption = Form.TEXT,
) -> None:
    """Print the arithmetic of one technique or visit, with who each rule comes from."""
    if problem := not_a_shelf(shelf, ()):
        raise refuse(problem)
    worked = howto.figures_of(shelf, name, day(date))
    if worked.unknown:
        raise refuse(worked.unknown)
    if worked.findings:
        typer.echo(report.terminal(worked.findings, worked.sources, colour=colour(), width=width()), err=True)
    if form is Form.JSON:
        typer.echo(working.figures_as_json(worked.groups, worked.reader))
    else:
        say(working.figures_as_text(worked.groups, worked.reader, width=width()))
    raise typer.Exit(exit_status(worked.findings))
