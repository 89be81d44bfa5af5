"""`howto new`: a technique, a visit or a shelf to fill in."""

import sys
from pathlib import Path
from typing import Annotated

import typer

from howto.cli.options import SHELF, DateOption, ShelfOption, day, refuse, say
from howto.jobs import new as plans
from howto.jobs.folders import not_a_shelf
from howto.jobs.staging import write_new

new = typer.Typer(
    help="Write a technique, a visit or a whole shelf to fill in.", no_args_is_help=True, add_completion=False
)


@new.command()
def technique(
    name: Annotated[str, typer.Argument(metavar="NAME", help="What it is called, such as `Clip a cone`.")],
    family: Annotated[
        str,
        typer.Option(
            "--family", help="clipping, hedging, espalier, mowing, feeding, watering, soil, planting or safety."
        ),
    ],
    shelf: ShelfOption = SHELF,
) -> None:
    """Write a technique file of one family, with every measure it may have explained beside it."""
    _write(plans.new_technique(shelf, name, family))


@new.command()
def visit(
    site: Annotated[str, typer.Argument(metavar="SITE", help="A label for the garden, never its address.")],
    done: Annotated[
        list[str] | None,
        typer.Option(
            "--done",
            metavar="TECHNIQUE",
            help="A technique done, and what to: `mow-by-thirds: the back lawn, 95 m2`. May be given more than once.",
        ),
    ] = None,
    date: DateOption = None,
    next_visit: Annotated[str, typer.Option("--next", metavar="DATE", help="The next visit, such as 2026-11-25.")] = "",
    words: Annotated[str, typer.Option("--words", metavar="TEXT", help="Your words to the client.")] = "",
    shelf: ShelfOption = SHELF,
) -> None:
    """Write the file of one visit, from which the client's leaflet is made; what is left out is asked for."""
    if problem := not_a_shelf(shelf, ()):
        raise refuse(problem)
    jobs = done or []
    if not jobs and _asks():
        jobs = _asked_jobs(shelf)
        next_visit = next_visit or _asked("When is the next visit, such as 2026-11-25?")
        words = words or _asked("Your words to the client?")
    _write(plans.new_visit(shelf, site, day(date), jobs, next_visit, words))


@new.command("shelf")
def new_shelf(
    folder: Annotated[Path, typer.Argument(metavar="FOLDER", help="The folder to make, such as my-shelf.")],
) -> None:
    """Make a folder with a crew.yaml to fill in and one technique to copy."""
    _write(plans.new_shelf(folder))


def _asks() -> bool:
    """Tell whether there is a person at a terminal to ask."""
    return sys.stdin.isatty()


def _asked_jobs(shelf: Path) -> list[str]:
    """Return the jobs a person types when asked: techniques, and for each what it was done to and how large."""
    say("Techniques on this shelf: " + ", ".join(plans.technique_names(shelf)))
    typed: str = typer.prompt("What was done? Names, with commas between")
    jobs = []
    for name in filter(None, (each.strip() for each in typed.split(","))):
        what = _asked(f"{name}: to what, and where?")
        area = _asked(f"{name}: how large, such as 95 m2?")
        jobs.append(f"{name}: {', '.join(filter(None, (what, area)))}")
    return jobs


def _asked(question: str) -> str:
    """Return what a person types, or nothing where they only press Enter."""
    answer: str = typer.prompt(f"{question} (Enter to leave out)", default="", show_default=False)
    return answer.strip()


def _write(plan: plans.NewFiles) -> None:
    """Write the planned files, or say why not; an existing file is never written over."""
    if plan.problem:
        raise refuse(plan.problem)
    for path, text in plan.files:
        write_new(path, text.encode())
        say(f"Wrote {path}")
    say(plan.next_step)
