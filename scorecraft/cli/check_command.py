"""`scorecraft check`: what is wrong with a design, and what to do."""

import json

import click

import scorecraft.cli.telling as telling
from scorecraft.cli.options import Given, pattern_options


@click.command("check", epilog=telling.example(telling.EXAMPLES["check"]))
@pattern_options
@click.option("--json", "as_json", is_flag=True, help=telling.AS_JSON)
@click.option("--quick", is_flag=True, help=telling.QUICK)
@click.option("-v", "--verbose", is_flag=True, help=telling.VERBOSE)
def command(
    given: Given, as_json: bool, quick: bool, verbose: bool,
) -> int:  # fmt: skip
    """Check PATTERN (a file, a shipped name, or - for standard input).

    Ends with the one thing to do next. The exit code is 1 where it cannot be cut as it is.
    """
    from scorecraft.cli.next_step import next_step
    from scorecraft.cli.output import colored, patience, say
    from scorecraft.report import as_data, report

    design = given.design()
    with patience(given.quiet):
        if as_json:
            told = json.dumps(as_data(design), indent=1, allow_nan=False) + "\n"
        else:
            told = report(design, quiet=given.quiet, verbose=verbose, quick=quick)
    click.echo(told if as_json else colored(told), nl=False)
    if not (as_json or given.quiet):
        say(f"\n{next_step(design, given)}")
    return 1 if design.stops else 0
