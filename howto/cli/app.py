"""The Typer app: every command by name, and what happens where one goes wrong."""

import signal
import sys
from importlib import import_module
from types import FrameType
from typing import Any, Final, NoReturn

import typer
from typer.core import TyperCommand, TyperGroup
from typer.main import get_command

from howto.cli.options import plain_output
from howto.cli.report import safe
from howto.findings import OUR_OWN_BUG, Finding
from howto.guarded import COMMAND, guarded
from howto.machine import refusal

# each command, where it stands, and what it is for: its libraries are loaded when it is the one asked for
COMMANDS: Final = {
    "check": ("howto.cli.check", "Check technique and visit files, and say how to mend each finding."),
    "build": ("howto.cli.build", "Check the shelf, then make cards, picture sequences, leaflets and the shelf page."),
    "figures": ("howto.cli.figures", "Print the arithmetic of one technique or visit, with its sources."),
    "why": ("howto.cli.why", "Say what a rule asks, why, and who says so."),
    "letter": ("howto.cli.letter", "Write a letter to all clients: what gardens like theirs need in a month."),
    "mark": ("howto.cli.mark", "Write a page on which to tap marks on a photograph."),
    "new": ("howto.cli.new", "Write a technique, a visit or a whole shelf to fill in."),
}


class Commands(TyperGroup):
    """The commands by name; one that is only listed is not loaded."""

    def list_commands(self, ctx: Any) -> list[str]:
        """Return the names in the order of the table."""
        del ctx
        return list(COMMANDS)

    def get_command(self, ctx: Any, cmd_name: str) -> Any:
        """Return a command as help lists it; None for a name that is none."""
        del ctx
        return TyperCommand(cmd_name, help=COMMANDS[cmd_name][1]) if cmd_name in COMMANDS else None

    def resolve_command(self, ctx: Any, args: list[str]) -> tuple[str | None, Any, list[str]]:
        """Return the command that a line starts with, loaded, and the rest of the line."""
        name, command, rest = super().resolve_command(ctx, args)
        return name, _loaded(name) if name in COMMANDS else command, rest


def _loaded(name: str) -> Any:
    """Return a command with all it can do."""
    found = getattr(import_module(COMMANDS[name][0]), name)
    if not isinstance(found, typer.Typer):
        alone = typer.Typer(add_completion=False, rich_markup_mode="markdown", pretty_exceptions_enable=False)
        alone.command(name)(found)
        found = alone
    command = get_command(found)
    command.name = name
    return command


app = typer.Typer(
    name="howto",
    cls=Commands,
    help="Keep a garden technique once; check it by arithmetic; print it as a training card, a picture "
    "sequence and a client leaflet.\n\n"
    "A shelf is a folder of text files, one technique each. Start with `howto new shelf my-shelf`, or look "
    "at the demo shelf in `techniques`.",
    no_args_is_help=True,
    add_completion=False,
    rich_markup_mode="markdown",
    pretty_exceptions_enable=False,
)


@app.callback()
def start() -> None:
    """Take options that belong to no command: there are none."""


STOPPING = tuple(getattr(signal, name) for name in ("SIGTERM", "SIGHUP") if hasattr(signal, name))


def main() -> None:
    """Run the command line; what the machine refuses ends it with status 2, and a signal as Ctrl-C does."""
    plain_output()
    found: list[Finding] = []
    for each in STOPPING:
        if signal.getsignal(each) is not signal.SIG_IGN:  # as under nohup
            signal.signal(each, _stop)
    try:
        with guarded(found, COMMAND, "finish this command"):
            app()
    except (KeyboardInterrupt, BrokenPipeError):
        raise SystemExit(130) from None
    except OSError as problem:  # a full disk is the machine's, not a bug and not an author's slip
        sys.stderr.write(f"{refusal(problem)}\n")
        raise SystemExit(2) from problem
    except MemoryError:
        typer.echo("howto: there is no memory left. Close other programs, or name one file at a time.", err=True)
        raise SystemExit(OUR_OWN_BUG) from None
    if found:
        fault = found[0]
        typer.echo(f"howto: {safe(fault.what)}\n  why:  {safe(fault.why)}\n  mend: {safe(fault.mend)}", err=True)
        raise SystemExit(OUR_OWN_BUG)


def _stop(number: int, _frame: FrameType | None) -> NoReturn:
    """End with everything cleared away; a second signal does not cut that short."""
    for each in STOPPING:
        signal.signal(each, signal.SIG_IGN)
    raise SystemExit(128 + number)
