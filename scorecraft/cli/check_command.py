"""`scorecraft check`: what is wrong with a design, and what to do."""

import json

import click

from scorecraft.cli.options import Given, pattern_options


@click.command("check")
@pattern_options
@click.option("--json", "as_json", is_flag=True, help="Print everything as JSON.")
@click.option("--quick", is_flag=True, help="Leave the opening model and the bench out.")
@click.option("-v", "--verbose", is_flag=True, help="Show how the loaf's size was found.")
def command(
    given: Given, as_json: bool, quick: bool, verbose: bool,
) -> int:  # fmt: skip
    """Check PATTERN (a file, a shipped name, or -): exit 1 if it cannot be cut as it is."""
    from scorecraft.cli.output import colored, patience
    from scorecraft.report import as_data, report

    design = given.design()
    with patience(given.quiet):
        if as_json:
            told = json.dumps(as_data(design), indent=1, allow_nan=False) + "\n"
        else:
            told = report(design, quiet=given.quiet, verbose=verbose, quick=quick)
    click.echo(told if as_json else colored(told), nl=False)
    return 1 if design.stops else 0
