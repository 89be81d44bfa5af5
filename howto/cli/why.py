"""`howto why`: a rule, its reason and its reference; with no rule, the whole rulebook."""

from typing import Annotated

import typer

from howto.cli import working
from howto.cli.options import Form, FormOption, refuse, width
from howto.jobs.rulebook import rulebook, rules_named


def why(
    name: Annotated[
        str | None, typer.Argument(metavar="[RULE]", help="A rule's name, such as mowing.one-third.")
    ] = None,
    form: FormOption = Form.TEXT,
) -> None:
    """Say what a rule asks, why, and who says so; with no rule, print the whole rulebook."""
    rules = rulebook()
    if name is not None:
        near = rules_named(name)
        if not near.found:
            raise refuse(near.sentence)
        rules = near.found
    if form is Form.JSON:
        typer.echo(working.rules_as_json(rules))
    elif name is None:
        typer.echo(working.rulebook_as_text(rules, width=width()))
    else:
        typer.echo(working.rules_as_text(rules, width=width()))
