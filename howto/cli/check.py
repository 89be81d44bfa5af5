"""`howto check`: report findings, write nothing."""

import typer

import howto
from howto.cli import report
from howto.cli.options import (
    SHELF,
    DateOption,
    Form,
    FormOption,
    PathsArgument,
    ShelfOption,
    StrictOption,
    colour,
    day,
    refuse,
    width,
)
from howto.findings import exit_status
from howto.jobs.folders import not_a_shelf


def check(
    paths: PathsArgument = None,
    shelf: ShelfOption = SHELF,
    date: DateOption = None,
    strict: StrictOption = False,
    form: FormOption = Form.TEXT,
) -> None:
    """Check technique and visit files against the trade's rules, and say how to mend each finding.

    Nothing is written. The exit status is 0 when nothing stops a build, 1 when something does.
    """
    if problem := not_a_shelf(shelf, paths or ()):
        raise refuse(problem)
    examined = howto.check_shelf(shelf, day(date), paths or ())
    if form is Form.JSON:
        typer.echo(report.as_json(examined.findings))
    else:
        typer.echo(report.terminal(examined.findings, examined.sources, colour=colour(), width=width()), nl=False)
    raise typer.Exit(exit_status(examined.findings, strict=strict))
