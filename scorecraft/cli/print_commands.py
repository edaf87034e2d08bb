"""The commands that print: made from the rows of the table of prints."""

from collections.abc import Callable
from pathlib import Path

import click

import scorecraft.cli.telling as telling
from scorecraft.cli.options import Command, Given, pattern_options
from scorecraft.errors import UsageError
from scorecraft.prints.row import Option, Print, Printed


def print_command(row: Print) -> click.Command:
    """Make the command of a print: `scorecraft guide PATTERN`, and the print's options."""

    def command(given: Given, output: str | None, form: str | None, **asked: object) -> int:
        options = {option.key: asked[option.name] for option in row.options}
        return delivered(row, given, output, form, options)

    declared: list[Callable[[Command], Command]] = [
        click.option("-o", "--output", metavar="FILE", help=telling.files(row.forms)),
        *map(click_option, row.options),
        click.option("--as", "form", type=click.Choice(row.forms), help=telling.FORMAT),
    ]
    made: Command = command
    for declare in reversed(declared):
        made = declare(made)
    example = telling.EXAMPLE.format(command=row.command)
    return click.command(row.name, help=row.help, epilog=example)(pattern_options(made))


def click_option(option: Option) -> Callable[[Command], Command]:
    """Declare an option of a print as one of a command."""
    name = f"--{option.name}"
    if option.kind == "flag":
        return click.option(name, is_flag=True, help=option.help)
    if option.kind == "length":
        return click.option(name, callback=millimetres, metavar="LENGTH", help=option.help)
    if option.kind == "choice":
        return click.option(name, type=click.Choice(option.choices), help=option.help)
    shown = option.default is not None
    return click.option(
        name, default=option.default, show_default=shown, metavar=option.shown, help=option.help
    )


def millimetres(ctx: click.Context, param: click.Parameter, value: str | None) -> float | None:
    """Read a length with its unit, like 3mm or 1/8in, in mm; raises UsageError for all else."""
    if value is None:
        return None
    from scorecraft.designing import turn
    from scorecraft.units import LENGTH

    name = str(param.name)
    refused = UsageError(f'"{value}" is not a length', None, f"write --{name} 3mm, with the unit")
    try:
        found = turn(name, value)
    except UsageError as error:
        raise refused from error
    if found.dimension != LENGTH or found.share:
        raise refused
    return found.value


def delivered(
    row: Print, given: Given, output: str | None, form: str | None, options: dict[str, object]
) -> int:
    """Make a print, tell about it, and write it."""
    from scorecraft.cli.output import deliver, patience, tell_unprintable
    from scorecraft.prints.forms import encoded, file_form

    stem = "pattern" if given.pattern == "-" else Path(given.pattern).stem
    target = output or row.file_name(stem, options, form)
    form = file_form(target, form, row.forms)
    with patience(given.quiet or not row.predicts):
        made = row.printed(given.design(), form, options)
    if not given.quiet:
        tell(made)
    data = encoded(made, form)
    if not made.flat:
        tell_unprintable(made.pages)
    deliver(target, data, quiet=given.quiet)
    return 0


def tell(made: Printed) -> None:
    """Say what is to be said about a print, and which larger paper would hold it on one sheet."""
    from scorecraft.cli.output import say

    for each in filter(None, (made.remark, made.caution)):
        say(f"note  {each}", err=True)
    if made.sheets:
        one = f"; --paper {made.larger} holds it on one" if made.larger else ""
        say(f"{made.sheets}{one}", err=True)
