"""The Typer app: every command by name, and what happens where one goes wrong."""

import signal
import sys
from types import FrameType
from typing import NoReturn

import typer

from howto.cli.build import build
from howto.cli.check import check
from howto.cli.figures import figures
from howto.cli.letter import letter
from howto.cli.mark import mark
from howto.cli.new import new
from howto.cli.options import plain_output
from howto.cli.report import safe
from howto.cli.why import why
from howto.findings import OUR_OWN_BUG, Finding
from howto.guarded import COMMAND, guarded
from howto.machine import refusal

app = typer.Typer(
    name="howto",
    help="Keep a garden technique once; check it by arithmetic; print it as a training card, a picture "
    "sequence and a client leaflet.\n\n"
    "A shelf is a folder of text files, one technique each. Start with `howto new shelf my-shelf`, or look "
    "at the demo shelf in `techniques`.",
    no_args_is_help=True,
    add_completion=False,
    rich_markup_mode="markdown",
    pretty_exceptions_enable=False,
)
app.command()(check)
app.command()(build)
app.command()(figures)
app.command()(why)
app.command()(letter)
app.command()(mark)
app.add_typer(new, name="new")


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
