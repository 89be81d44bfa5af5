"""`howto mark`: a page on which to tap marks on a photograph and copy their lines."""

from pathlib import Path
from typing import Annotated

import typer

from howto.cli import report
from howto.cli.options import SHELF, ShelfOption, colour, refuse, say, width
from howto.findings import exit_status
from howto.jobs import new as plans
from howto.jobs.folders import not_an_output
from howto.jobs.staging import Stage
from howto.model.names import on_disk


def mark(
    photo: Annotated[
        Path, typer.Argument(metavar="PHOTO", help="The photograph to mark, such as techniques/pictures/ball.jpg.")
    ],
    to: Annotated[Path, typer.Option("--to", metavar="FOLDER", help="The folder to write the page into.")] = Path(
        "output"
    ),
    shelf: ShelfOption = SHELF,
) -> None:
    """Write a page that opens in any browser: tap the photograph, copy the lines, paste them into a technique."""
    photo = on_disk(photo.parent, photo.name)
    if not photo.is_file():
        there = shelf / "pictures" / photo.name
        near = f" There is `{there}`." if there.is_file() else ""
        raise refuse(f"There is no photograph `{photo}`.{near}")
    if problem := not_an_output(to, shelf):
        raise refuse(problem)
    page = plans.marker(photo, shelf)
    if page.findings:
        typer.echo(report.terminal(page.findings, {}, colour=colour(), width=width()), nl=False, err=True)
        raise typer.Exit(exit_status(page.findings))
    stage = Stage(to)
    try:
        stage.write(page.name, page.text.encode())
        stage.swap_in()
    finally:
        stage.drop()
    say(f"Wrote {to / page.name}. Open it in a browser.")
