"""`howto mark`: a page on which to tap marks on a photograph and copy their lines."""

from pathlib import Path
from typing import Annotated

import typer

from howto import plans
from howto.cli import report
from howto.cli.options import SHELF, ShelfOption, colour, refuse, say, width
from howto.names import on_disk


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
    page = plans.marker(photo, to, shelf)
    if page.findings:
        typer.echo(report.terminal(page.findings, {}, colour=colour(), width=width()), nl=False, err=True)
        raise typer.Exit(1)
    page.path.parent.mkdir(parents=True, exist_ok=True)
    page.path.write_text(page.text, encoding="utf-8")
    say(f"Wrote {page.path}. Open it in a browser.")
